"""How sharp a photo is: the blur of edges that are known, or taken, to be sharp in truth."""

from weakref import WeakKeyDictionary

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.dye.quick import median
from ptmark.photo import Photo, srgb_to_linear
from ptmark.scale import CARD_HEIGHT_MM, CARD_WIDTH_MM, SurfaceMap

__all__ = [
    "FREE_MM",
    "MARKER_MM",
    "QUARTERS",
    "STEP_PX",
    "blur_of_card",
    "blur_of_edges",
    "blurs_of_card",
    "edge_profile",
    "edge_profiles",
    "halo_of_card",
    "ink_of_card",
    "light_on_card",
    "marker_places",
]

Array = npt.NDArray[np.float64]
_Across = tuple[Array, npt.NDArray[np.bool_]] | None

_KEPT: WeakKeyDictionary[Photo, tuple[SurfaceMap, _Across]] = WeakKeyDictionary()

MARKER_MM, _INSET_MM, FREE_MM = 12.0, 4.0, 1.8  # the card's layout; ink is 2 mm wide
_INK_MM, _LEAST_APART_PX = 2.0, 12.0
_LEAST_EDGES = 4
_REACH_PX, _LEAST_REACH_PX = 24, 4
STEP_PX = 0.25
QUARTERS = 1.349  # way of a Gaussian edge from 25 to 75 %, in standard deviations
_LEAST_CONTRAST = 0.08  # linear light
# What a shadow leaves of the light, and how alike in R, G and B; black ink leaves a tenth at
# most, and dye of 30 % takes a fifth less of red than of green. Own choice.
_LEAST_SHADED, _SHADE_ALIKE = 0.15, 0.12
_ACROSS, _CELLS = 500, 12  # a glance so many px wide; the strongest edge of each part of it


def blur_of_card(photo: Photo, surface: SurfaceMap) -> float | None:
    """Blur of the card's marker borders, which are printed sharp.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap
        Made from the card: its frame is the card's.

    Returns
    -------
    float or None
        Standard deviation of the edge, px, in the worse of two directions at right angles, so
        that a moved camera shows too; None where too few edges are clear.
    """
    return max(blurs_of_card(photo, surface), default=None)


def blurs_of_card(photo: Photo, surface: SurfaceMap) -> list[float]:
    """The same of each of the two directions whose edges are clear: none, one or two."""
    across = _across_card(photo, surface)
    if across is None:
        return []
    light, sideways = across
    blurs = _blurs(light)
    both = [blurs[one & np.isfinite(blurs)] for one in (sideways, ~sideways)]
    return [float(median(one)) for one in both if len(one) >= _LEAST_EDGES]


def halo_of_card(photo: Photo, surface: SurfaceMap) -> float | None:
    """How far light beside the card's ink lies above its white, which sharpening makes it.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap
        Made from the card: its frame is the card's.

    Returns
    -------
    float or None
        Highest place of the median profile across the markers' borders, as a share of the
        contrast, in linear green light; None where too few are clear.
    """
    across = _across_card(photo, surface)
    if across is None:
        return None
    profile = edge_profile(across[0])
    return None if profile is None else float(profile.max()) - 1


def edge_profile(light: Array) -> Array | None:
    """Median green light across edges, lines (N, samples, 3): 0 in the ink, 1 on the white.

    None where too few are clear.
    """
    every = edge_profiles(light)
    clear = np.isfinite(every[:, 0])
    return median(every[clear].T) if clear.sum() >= _LEAST_EDGES else None


def edge_profiles(light: Array) -> Array:
    """The same of each line, shape (N, samples); NaN where it is not clear."""
    green = light[..., 1]
    fifth = green.shape[1] // 5
    ink, white = (median(one) for one in (green[:, :fifth], green[:, -fifth:]))
    contrast = np.where(white - ink >= _LEAST_CONTRAST, white - ink, np.nan)
    return np.asarray((green - ink[:, None]) / contrast[:, None])


def ink_of_card(photo: Photo, surface: SurfaceMap) -> float | None:
    """Light of the card's black ink over that of its white, which a veil of light raises.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap
        Made from the card: its frame is the card's.

    Returns
    -------
    float or None
        Median over the markers' borders, in linear green light; None where the ink is too
        narrow to be told from its blur.
    """
    places, ways = _card_edges()
    ink, white = (surface.to_px(places + far * ways) for far in (-_INK_MM / 2, FREE_MM))
    if float(np.linalg.norm(white - ink, axis=1).min()) < _LEAST_APART_PX:
        return None
    size = np.array(photo.rgb.shape[1::-1])
    lights = []
    for at in (ink, white):
        x, y = np.clip(np.round(at).astype(int), 0, size - 1).T
        lights.append(srgb_to_linear(photo.rgb[y, x])[:, 1].astype(np.float64))
    return float(np.median(lights[0] / np.maximum(lights[1], 1e-3)))


def _across_card(photo: Photo, surface: SurfaceMap) -> _Across:
    """Light from ink to white, as `light_on_card`, and which lines run sideways on the card."""
    kept = _KEPT.get(photo)
    if kept is None or kept[0] is not surface:
        places, ways = _card_edges()
        light = light_on_card(photo, surface, places, ways, FREE_MM)
        across = None if light is None else (light, ways[:, 0] != 0)
        kept = _KEPT[photo] = surface, across
    return kept[1]


def light_on_card(
    photo: Photo, surface: SurfaceMap, at: Array, ways: Array, reach_mm: float
) -> Array | None:
    """Linear light along lines on the card, shape (N, samples, 3); NaN beyond the photo.

    Through places (N, 2) mm, along ways (N, 2), so far to both sides and `STEP_PX` apart; None
    where there are no places or they are too few pixels apart.
    """
    if not len(at):
        return None
    here = surface.to_px(at)
    outward = surface.to_px(at + 0.1 * ways) - here
    per_mm = np.linalg.norm(outward, axis=1) / 0.1
    reach = min(_REACH_PX, reach_mm * float(per_mm.min()))
    return None if reach < _LEAST_REACH_PX else _across(photo, here, outward, reach)


def _card_edges() -> tuple[Array, Array]:
    """Places on the outer borders of the four markers, and the way out, shape (32, 2), mm."""
    places, ways = [], []
    for x, y in marker_places():
        for part in (0.3, 0.7):
            along = part * MARKER_MM
            places += [(x + along, y), (x + along, y + MARKER_MM)]
            places += [(x, y + along), (x + MARKER_MM, y + along)]
            ways += [(0, -1), (0, 1), (-1, 0), (1, 0)]
    return np.array(places, float), np.array(ways, float)


def marker_places() -> list[tuple[float, float]]:
    """Top left corners of the four markers, mm."""
    right, low = CARD_WIDTH_MM - _INSET_MM - MARKER_MM, CARD_HEIGHT_MM - _INSET_MM - MARKER_MM
    return [(x, y) for x in (_INSET_MM, right) for y in (_INSET_MM, low)]


def blur_of_edges(photo: Photo) -> float | None:
    """Blur of the sharpest strong edges anywhere in the photo.

    Returns
    -------
    float or None
        Standard deviation of the edge, px: the lower quartile over the strongest edge of each
        part of the photo, since some of them are soft in truth; None where there are few.
        Those of shadows are left out.
    """
    stride = max(3, round(photo.info.width / _ACROSS))
    glance = np.ascontiguousarray(photo.rgb[::stride, ::stride])
    grey = cv2.cvtColor(glance, cv2.COLOR_RGB2GRAY)
    right = cv2.Sobel(grey, cv2.CV_32F, 1, 0)
    down = cv2.Sobel(grey, cv2.CV_32F, 0, 1)
    steep = cv2.magnitude(right, down)
    steep[:4], steep[-4:], steep[:, :4], steep[:, -4:] = 0, 0, 0, 0
    height, width = grey.shape
    if min(height, width) < _CELLS:
        return None
    places, ways = [], []
    for row in np.array_split(np.arange(height), _CELLS):
        for column in np.array_split(np.arange(width), _CELLS):
            part = steep[row[0] : row[-1] + 1, column[0] : column[-1] + 1]
            y, x = np.unravel_index(int(part.argmax()), part.shape)
            y, x = y + row[0], x + column[0]
            if steep[y, x] > 100:
                places.append((stride * x, stride * y))
                ways.append((right[y, x], down[y, x]))
    if not places:
        return None
    reach = max(_REACH_PX, 3 * stride)
    light = _across(photo, np.array(places, float), np.array(ways, float), reach)
    clear = _blurs(light)[~_is_shade(light)]
    clear = clear[np.isfinite(clear)]
    return float(np.percentile(clear, 25)) if len(clear) >= 8 else None


def _across(photo: Photo, at: Array, ways: Array, reach: float) -> Array:
    """Linear light along lines across edges, shape (N, samples, 3); NaN beyond the photo."""
    ways = ways / np.linalg.norm(ways, axis=1, keepdims=True)
    offsets = np.arange(-reach, reach + 1e-9, STEP_PX)
    lines = (at[:, None] + offsets[None, :, None] * ways[:, None]).astype(np.float32)
    code = cv2.remap(photo.rgb, lines[..., 0], lines[..., 1], cv2.INTER_LINEAR)
    light = srgb_to_linear(np.asarray(code, np.uint8)).astype(np.float64)
    height, width = photo.rgb.shape[:2]
    x, y = lines[:, [0, -1], 0], lines[:, [0, -1], 1]
    outside = (np.minimum(x, y).min(axis=1) < 0) | (
        np.maximum(x - (width - 1), y - (height - 1)).max(axis=1) > 0
    )
    light[outside] = np.nan
    return light


def _ends(light: Array) -> tuple[Array, Array]:
    """Light on either side of edges, (N, …), of lines across them (N, samples, …)."""
    quarter = light.shape[1] // 4
    return light[:, :quarter].mean(axis=1), light[:, -quarter:].mean(axis=1)


def _is_shade(light: Array) -> npt.NDArray[np.bool_]:
    """Whether edges, (N, samples, 3), may be a shadow's: dimmer in all colours alike."""
    one, other = _ends(light)
    left = np.minimum(one, other) / np.maximum(np.maximum(one, other), 1e-3)
    return np.asarray(
        (left.min(axis=1) > _LEAST_SHADED)
        & (np.ptp(left, axis=1) < _SHADE_ALIKE * left.max(axis=1))
    )


def _blurs(light: Array) -> Array:
    """Blur across edges of lines (N, samples, 3), px, shape (N,); NaN where no clear step."""
    green = light[..., 1]
    quarter = green.shape[1] // 4
    ends = _ends(green)
    step = ends[1] - ends[0]
    share = (green - ends[0][:, None]) / np.where(step == 0, 1, step)[:, None]
    between = np.count_nonzero((share > 0.25) & (share < 0.75), axis=1) * STEP_PX
    rough = np.abs(share[:, :quarter]).max(axis=1), np.abs(share[:, -quarter:] - 1).max(axis=1)
    clear = (np.abs(step) >= _LEAST_CONTRAST) & (np.maximum(*rough) <= 0.4)
    return np.where(clear, between / QUARTERS, np.nan)
