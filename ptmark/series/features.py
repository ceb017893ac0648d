"""Points of a photo that can be found again in another: the surface's own texture.

Pixel frame as in `ptmark.photo`. The red channel is looked at: dye hardly shows in it, so that
bleed-out and rework change little of what is matched.
"""

from dataclasses import dataclass, field

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

__all__ = ["View", "view_of"]

Array = npt.NDArray[np.float64]
Bytes = npt.NDArray[np.uint8]

# A picture this wide shows texture of some tenths of a millimetre in a photo of a weld, and
# its blur, noise and JPEG blocks hardly. Common practice, no source.
LOOK_PX = 1600
MOST_POINTS = 4000
LOOK_STEP = 3  # pixels of that picture to one of the small one kept for colours
_CARD_MARGIN_MM = 7.0  # markers lie 4 mm in from the card's edge, and it throws a shadow


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class View:
    """What is needed of a photo to register it; the photo itself may be dropped.

    Attributes
    ----------
    name : str
    size : (int, int)
        Width and height of the upright photo, px.
    points_px : ndarray of shape (N, 2)
        Places in the full-size photo.
    descriptors : ndarray of shape (N, 128), float32
    step : float
        Full-size px a pixel of the picture that was looked at.
    surface : SurfaceMap or None
    about_px : ndarray of shape (M, 2)
        Middles of the indications: what is registered must lie round them.
    look : ndarray of shape (H, W, 3), uint8
        A small picture of the photo, for colours.
    look_step : float
        Full-size px a pixel of it.
    """

    name: str
    size: tuple[int, int]
    points_px: Array
    descriptors: npt.NDArray[np.float32]
    step: float
    surface: SurfaceMap | None = None
    about_px: Array = field(default_factory=lambda: np.zeros((0, 2)))
    look: Bytes = field(default_factory=lambda: np.zeros((0, 0, 3), np.uint8))
    look_step: float = 1.0


def view_of(
    photo: Photo,
    surface: SurfaceMap | None = None,
    area_px: Array | None = None,
    about_px: Array | None = None,
) -> View:
    """Find the points of a photo.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap, optional
        Where it comes from the scale card, nothing on the card is taken: cards are moved.
    area_px : ndarray of shape (N, 2), px, optional
        Only points in this polygon are taken.
    about_px : ndarray of shape (M, 2), px, optional
        Middles of the indications.

    Notes
    -----
    Scale-invariant features (Lowe 2004, "Distinctive image features from scale-invariant
    keypoints") on the red channel over its local mean and spread, since developer is nearly
    white and its texture weak; root of the normalised descriptor (Arandjelovic and Zisserman
    2012, "Three things everyone should know to improve object retrieval").
    """
    factor = next((f for f in (8, 4, 2) if photo.info.width / f >= LOOK_PX), 1)
    level = photo.reduced(factor)
    red = np.ascontiguousarray(level[..., 0])
    small = (max(1, level.shape[1] // LOOK_STEP), max(1, level.shape[0] // LOOK_STEP))
    mask = _mask(red.shape[:2], factor, surface, area_px)
    finder = cv2.SIFT.create(nfeatures=MOST_POINTS, contrastThreshold=0.02)
    found, raw = finder.detectAndCompute(_evened(red), mask)
    places = np.array([one.pt for one in found], np.float64).reshape(-1, 2)
    described = np.zeros((0, 128), np.float32)
    if len(found):
        described = np.asarray(raw, np.float32)
        described = np.sqrt(described / np.maximum(described.sum(1, keepdims=True), 1e-9))
    return View(
        name=photo.info.path.name,
        size=(photo.info.width, photo.info.height),
        points_px=(places + 0.5) * factor - 0.5,
        descriptors=described,
        step=float(factor),
        surface=surface,
        about_px=np.zeros((0, 2)) if about_px is None else about_px,
        look=np.asarray(cv2.resize(level, small, interpolation=cv2.INTER_AREA), np.uint8),
        look_step=photo.info.width / small[0],
    )


def _evened(channel: Bytes) -> Bytes:
    """The channel over its local mean and spread: weak texture stands out like strong."""
    light = channel.astype(np.float32)
    mean = cv2.GaussianBlur(light, (0, 0), 20)
    spread = cv2.sqrt(cv2.GaussianBlur((light - mean) ** 2, (0, 0), 20))
    return np.asarray(np.clip(128 + 40 * (light - mean) / (spread + 2.0), 0, 255), np.uint8)


def _mask(
    shape: tuple[int, ...], factor: int, surface: SurfaceMap | None, area_px: Array | None
) -> Bytes:
    mask = np.full(shape, 255, np.uint8)
    if area_px is not None:
        mask[:] = 0
        cv2.fillPoly(mask, [_small(area_px, factor)], 255)
    if surface is not None and surface.reference == "card":
        hull = cv2.convexHull(_small(surface.reference_px, factor))
        card = np.zeros_like(mask)
        cv2.fillConvexPoly(card, hull, 1)
        reach = max(3, round(_CARD_MARGIN_MM / surface.mm_per_px() / factor))
        disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * reach + 1, 2 * reach + 1))
        mask[cv2.dilate(card, disc) > 0] = 0
    return mask


def _small(points_px: Array, factor: int) -> npt.NDArray[np.int32]:
    small = (np.asarray(points_px, np.float64) + 0.5) / factor - 0.5
    return np.asarray(np.rint(small), np.int32).reshape(-1, 1, 2)
