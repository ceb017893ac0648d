"""The place map as a picture: cells from pale cyan to deep blue, over a drawing where given."""

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.archive.history import PlaceMap
from ptmark.errors import ArchiveError
from ptmark.report.lettering import font
from ptmark.report.palette import DEEP_BLUE, INK, NAVY, PALE, PAPER

__all__ = ["density_picture"]

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
    x0, y0, x1, y1 = places.box_mm
    wide = width - 2 * _MARGIN
    high = max(round(wide * (y1 - y0) / (x1 - x0)), 1)
    inside = np.empty((high, wide, 3), np.float32)
    inside[:] = PAPER
    if ground is not None:
        inside[:] = cv2.resize(ground, (wide, high), interpolation=cv2.INTER_AREA)
    most = int(places.counts.max())
    share = cv2.resize(
        (places.counts / max(most, 1)).astype(np.float32),
        (wide, high),
        interpolation=cv2.INTER_NEAREST,
    )[..., None]
    color = np.array(PALE, np.float32) + share * (np.array(DEEP_BLUE) - np.array(PALE))
    cover = np.where(share > 0, _COVER, 0.0)
    picture = np.empty((high + 2 * _MARGIN, width, 3), np.uint8)
    picture[:] = PAPER
    picture[_MARGIN : _MARGIN + high, _MARGIN:-_MARGIN] = np.round(
        inside * (1 - cover) + color * cover
    ).astype(np.uint8)
    corners = ((_MARGIN - 1, _MARGIN - 1), (width - _MARGIN, _MARGIN + high))
    cv2.rectangle(picture, *corners, NAVY, 1)
    return _told(picture, places, most)


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
