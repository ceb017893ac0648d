"""What the scale card, seen in both photos, tells: a common frame only if it did not move."""

from collections.abc import Callable

import numpy as np
import numpy.typing as npt

from ptmark.errors import SeriesError
from ptmark.scale import SurfaceMap
from ptmark.scale.plane import apply_homography
from ptmark.series.features import View
from ptmark.series.scaled import map_of_motion

__all__ = ["card_map", "card_words"]

Array = npt.NDArray[np.float64]

_STILL_MM = 0.3  # a card that is moved by hand moves farther. Common practice, no source.
_TOLD_MM = 1.0
_SCALES_AGREE = 0.02


def card_map(a: View, b: View) -> tuple[Array, Array]:
    """Homography from a to b and its covariance (8, 8), as if the card lay still.

    Raises
    ------
    SeriesError
        If not both maps come from the card.
    """
    one, other = _cards(a, b)
    if one is None or other is None:
        raise SeriesError(
            "not both photos show the card", where=f"{a.name}, {b.name}", mend="name marks"
        )
    return map_of_motion(a, b)


def card_words(
    h: Array, u_px: Callable[[Array], Array], a: View, b: View
) -> tuple[str, tuple[str, ...]]:
    """Whether the card moved, and whether the two scales agree, told by a registration."""
    one, other = _cards(a, b)
    cautions = _scale_cautions(h, a, b)
    if one is None or other is None:
        return "", cautions
    corners = one.reference_px
    there = one.to_mm(corners)  # in the card's own frame, which is that of b's map too
    carried = other.to_mm(apply_homography(h, corners))
    off = float(np.sqrt(((carried - there) ** 2).sum(axis=1).mean()))
    u_mm = float(np.sqrt((u_px(corners) ** 2).mean() * 2)) * other.mm_per_px()
    limit = max(_STILL_MM, 3 * u_mm)
    if limit > _TOLD_MM:
        words = f"Whether the card moved cannot be told to better than {limit:.1f} mm."
        return words, cautions
    if off <= limit:
        return f"The card did not move between the photos (within {limit:.1f} mm).", cautions
    words = (
        f"The card moved by about {off:.1f} mm on the surface between the photos, so its frame "
        "is not common to them: they are registered by the surface itself."
    )
    return words, cautions


def _scale_cautions(h: Array, a: View, b: View) -> tuple[str, ...]:
    """The same area must have the same size in mm in both photos."""
    if a.surface is None or b.surface is None:
        return ()
    middle = np.array(a.size, float) / 2
    box = middle + np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]) * min(a.size) * 0.05
    there = apply_homography(h, box)
    if not (a.surface.in_view(box) and b.surface.in_view(there)):
        return ()
    ratio = float(np.sqrt(_area(b.surface.to_mm(there)) / _area(a.surface.to_mm(box))))
    if abs(ratio - 1) <= _SCALES_AGREE:
        return ()
    more = "more" if ratio > 1 else "less"
    return (
        f"the same area measures {100 * abs(ratio - 1):.1f} % {more} in the second photo: "
        "check both scale references",
    )


def _area(box: Array) -> float:
    x, y = box.T
    return float(abs(x @ np.roll(y, -1) - y @ np.roll(x, -1)) / 2)


def _cards(a: View, b: View) -> tuple[SurfaceMap | None, SurfaceMap | None]:
    return _card(a.surface), _card(b.surface)


def _card(surface: SurfaceMap | None) -> SurfaceMap | None:
    return surface if surface is not None and surface.reference == "card" else None
