"""The place map as a picture: cells from pale cyan to deep blue, over a drawing where given."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.archive.placing import PlaceMap
from ptmark.errors import ArchiveError
from ptmark.report.lettering import font
from ptmark.report.palette import DEEP_BLUE, INK, NAVY, PALE, PAPER

__all__ = ["density_picture", "laid_out", "shaded"]

Picture = npt.NDArray[np.uint8]
_MARGIN = 44  # px
_COVER = 0.75  # how much of the ground a full cell hides


def density_picture(
    places: PlaceMap, *, width: int = 900, ground: Picture | None = None
) -> Picture:
    """Draw a place map, shape (height, width, 3), with its scale and its largest count.

    Parameters
    ----------
    places : PlaceMap
    width : int
        Of the picture, px.
    ground : ndarray of shape (H, W, 3), uint8, or None
        Drawing or photo of exactly the map's box, x right, y down.

    Raises
    ------
    ArchiveError
        If the picture would be too narrow to draw in.
    """
    if width < 4 * _MARGIN:
        raise ArchiveError(f"{width} px are too few to draw in", where="width")
    inside = shaded(places, width - 2 * _MARGIN, ground)
    high = inside.shape[0]
    picture = np.empty((high + 2 * _MARGIN, width, 3), np.uint8)
    picture[:] = PAPER
    picture[_MARGIN : _MARGIN + high, _MARGIN:-_MARGIN] = inside
    corners = ((_MARGIN - 1, _MARGIN - 1), (width - _MARGIN, _MARGIN + high))
    cv2.rectangle(picture, *corners, NAVY, 1)
    return _told(picture, places, int(places.counts.max()))


def shaded(places: PlaceMap, width: int, ground: Picture | None = None) -> Picture:
    """The map's box alone, shape (height, width, 3): its cells over the ground."""
    x0, y0, x1, y1 = places.box_mm
    high = max(round(width * (y1 - y0) / (x1 - x0)), 1)
    inside = np.empty((high, width, 3), np.float32)
    inside[:] = PAPER
    if ground is not None:
        inside[:] = cv2.resize(ground, (width, high), interpolation=cv2.INTER_AREA)
    share = cv2.resize(
        (places.counts / max(int(places.counts.max()), 1)).astype(np.float32),
        (width, high),
        interpolation=cv2.INTER_NEAREST,
    )[..., None]
    color = np.array(PALE, np.float32) + share * (np.array(DEEP_BLUE) - np.array(PALE))
    cover = np.where(share > 0, _COVER, 0.0)
    return np.asarray(np.round(inside * (1 - cover) + color * cover), np.uint8)


def laid_out(
    photo: Picture, to_part: npt.ArrayLike, places: PlaceMap, *, width: int = 1200
) -> Picture:
    """A photo or drawing as the ground of a map: of exactly its box, seen straight on.

    Parameters
    ----------
    photo : ndarray of shape (H, W, 3), uint8
    to_part : array of shape (3, 3)
        From its pixels, (0, 0) the centre of the first, to mm of the part's frame.
    places : PlaceMap
    width : int
        Of what is given back, px; what the photo does not show is paper.

    Raises
    ------
    ArchiveError
        If the matrix maps the photo to a line.
    """
    x0, y0, x1, y1 = places.box_mm
    scale = width / (x1 - x0)
    high = max(round(scale * (y1 - y0)), 1)
    # the box begins at the corner of the first pixel, half a pixel before its centre
    to_box = np.array([[scale, 0, -x0 * scale - 0.5], [0, scale, -y0 * scale - 0.5], [0, 0, 1]])
    matrix = to_box @ np.asarray(to_part, float)
    if not np.isfinite(matrix).all() or abs(np.linalg.det(matrix)) < 1e-12:
        raise ArchiveError("the photo cannot be laid on the part", where="ground")
    laid = cv2.warpPerspective(
        photo, matrix, (width, high), flags=cv2.INTER_LINEAR, borderValue=PAPER
    )
    return np.asarray(laid, np.uint8)


def _told(picture: Picture, places: PlaceMap, most: int) -> Picture:
    from PIL import Image, ImageDraw

    x0, y0, x1, y1 = places.box_mm
    image = Image.fromarray(picture)
    draw = ImageDraw.Draw(image)
    small = font(14)
    head = f"{len(places.seen)} indications of {places.records} records; "
    head += f"darkest: {most} records in a cell of {places.cell_mm:g} mm"
    draw.text((_MARGIN, 12), head, fill=INK, font=small)
    foot = f"x {x0:g} to {x1:g} mm, y {y0:g} to {y1:g} mm (down)"
    draw.text((_MARGIN, picture.shape[0] - 32), foot, fill=INK, font=small)
    return np.asarray(image)
