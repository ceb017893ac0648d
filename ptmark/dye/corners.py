"""Whether a photo was smoothed: corners of the card's squares, printed sharp, are rounded."""

from weakref import WeakKeyDictionary

import numpy as np
import numpy.typing as npt

from ptmark.dye.sharpness import (
    FREE_MM,
    MARKER_MM,
    QUARTERS,
    STEP_PX,
    edge_profile,
    edge_profiles,
    halo_of_card,
    light_on_card,
    marker_places,
)
from ptmark.photo import Photo
from ptmark.scale import SurfaceMap

__all__ = ["MOST_CUT", "is_filtered", "rounding_of_card"]

Array = npt.NDArray[np.float64]

_KEPT: WeakKeyDictionary[Photo, tuple[SurfaceMap, float | None]] = WeakKeyDictionary()
# Corners of the card's squares cut by more than blur does, px: 123 rendered photos as taken at
# most 0.26, a median of 5 px 0.5 to 1.05, of 9 px and the smoothing of skin 1.4 to 2.
MOST_CUT = 0.4
# Bright rims beside the card's ink, over its contrast: the same photos at most 0.25. Smoothed
# by a bilateral filter and then sharpened by 2.5, eight have 0.29 to 1.41: what passed wrongly
# of them lay in those of 0.36 and more.
HELD_HALO = 0.33
_CUT_BY_BLUR = 0.77
_CORNER_MM = 1.3  # along each side; the ink's inner corner lies 2 mm inside
_LOOK_MM, _MOST_OFF_MM = 1.4, 0.55  # so far off, the look still begins in the ink, 2 mm wide
_OUTWARD = np.array([[-1.0, 0.0], [0.0, -1.0], [1.0, 0.0], [0.0, 1.0]])  # of left, top, …


def is_filtered(photo: Photo, surface: SurfaceMap) -> bool:
    """Whether the card tells that filters took thin ends away, or hide that they did.

    By its cut corners, or by the rims of a sharpening that makes smoothed ones square again.
    """
    cut, halo = rounding_of_card(photo, surface), halo_of_card(photo, surface)
    return (cut or 0.0) > MOST_CUT or (halo or 0.0) > HELD_HALO


def rounding_of_card(photo: Photo, surface: SurfaceMap) -> float | None:
    """How far the corners of the card's squares are cut, beyond what blur does, px.

    Parameters
    ----------
    photo : Photo
    surface : SurfaceMap
        Made from the card: its frame is the card's.

    Returns
    -------
    float or None
        Along the corner's bisector; None where too few edges or corners are clear.

    Notes
    -----
    A corner blurred by a Gaussian of standard deviation s holds half of the ink 0.77 s inside
    it: there each of its two edges passes the root of a half (own derivation). Median filters
    and the smoothing of skin cut it farther, as they do thin ends.
    """
    kept = _KEPT.get(photo)
    if kept is None or kept[0] is not surface:
        kept = _KEPT[photo] = surface, _rounding(photo, surface)
    return kept[1]


def _rounding(photo: Photo, surface: SurfaceMap) -> float | None:
    squares = _as_they_lie(photo, surface)
    at, ways = _sides(squares)
    sides = light_on_card(photo, surface, at, ways, FREE_MM)
    corners = light_on_card(photo, surface, *_bisectors(squares), _CORNER_MM)
    if sides is None or corners is None:
        return None
    side, corner = edge_profile(sides), edge_profile(corners)
    if side is None or corner is None:
        return None
    blur = (_place(side, 0.75) - _place(side, 0.25)) / QUARTERS
    cut = np.sqrt(2) * _place(side, 0.5) - _place(corner, 0.5)
    return float(cut - _CUT_BY_BLUR * blur)


def _as_they_lie(photo: Photo, surface: SurfaceMap) -> Array:
    """Left, top, right and bottom of the clear squares, mm, (M, 4).

    A print of another size, or a card above the surface, has them elsewhere than the layout.
    """
    drawn = np.array([(x, y, x + MARKER_MM, y + MARKER_MM) for x, y in marker_places()])
    at, ways = _sides(drawn)
    light = light_on_card(photo, surface, at, ways, _LOOK_MM)
    if light is None:
        return drawn[:0]
    per_mm = np.linalg.norm(surface.to_px(at + 0.1 * ways) - surface.to_px(at), axis=1) / 0.1
    off = [np.nan if np.isnan(one[0]) else _place(one, 0.5) for one in edge_profiles(light)]
    outwards = (np.array(off) / per_mm).reshape(-1, 2, 4).mean(axis=1)
    found = (np.abs(outwards) < _MOST_OFF_MM).all(axis=1)  # nor where it is unknown
    return np.asarray((drawn + outwards * _OUTWARD.sum(axis=1))[found])


def _sides(squares: Array) -> tuple[Array, Array]:
    """Two places on each side of squares (M, 4), and the way out, both (8 M, 2), mm."""
    low, high = squares[:, None, :2], squares[:, None, 2:]
    corners = np.concatenate([low, high], axis=1)
    places = []
    for part in (0.3, 0.7):
        along = (1 - part) * corners[:, 0] + part * corners[:, 1]
        left, top, right, bottom = squares.T
        for x, y in (
            (left, along[:, 1]),
            (along[:, 0], top),
            (right, along[:, 1]),
            (along[:, 0], bottom),
        ):
            places.append(np.stack([x, y], axis=1))
    at = np.stack(places, axis=1).reshape(-1, 2)
    return at, np.tile(_OUTWARD, (2 * len(squares), 1))


def _bisectors(squares: Array) -> tuple[Array, Array]:
    """The corners of squares (M, 4), and the way out along the bisector, both (4 M, 2), mm."""
    at = squares[:, [[0, 1], [2, 1], [2, 3], [0, 3]]].reshape(-1, 2)
    ways = np.array([[-1.0, -1.0], [1.0, -1.0], [1.0, 1.0], [-1.0, 1.0]])
    return at, np.tile(ways, (len(squares), 1))


def _place(profile: Array, level: float) -> float:
    """Where a profile first passes a level, px outwards from its middle."""
    after = max(int(np.argmax(profile >= level)), 1)
    part = (level - profile[after - 1]) / max(float(np.diff(profile)[after - 1]), 1e-6)
    return float((after - 1 + part - (len(profile) - 1) / 2) * STEP_PX)
