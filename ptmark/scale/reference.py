"""What the user gives as the scale: plain data, saved with the record and undone with it.

Points are ``(x, y)`` in px of the upright photo; lengths in mm.
"""

from dataclasses import dataclass

__all__ = [
    "CardReference",
    "LineReference",
    "LinesReference",
    "Point",
    "RectangleReference",
    "Reference",
]

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardReference:
    """The printed scale card, found by its markers.

    ``check_mm`` is the measured value of the card's printed 80 mm check length (callipers),
    or None where it was not measured; it corrects the printed size and narrows its uncertainty.
    """

    check_mm: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class RectangleReference:
    """A rectangle of known size: four corners clockwise from the top left as it lies on x."""

    corners_px: tuple[Point, Point, Point, Point]
    width_mm: float
    height_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesReference:
    """Two lines of known length at right angles, in any place on the surface."""

    first_px: tuple[Point, Point]
    first_mm: float
    second_px: tuple[Point, Point]
    second_mm: float


@dataclass(frozen=True, slots=True, kw_only=True)
class LineReference:
    """One line of known length; fixes the scale but not the tilt."""

    ends_px: tuple[Point, Point]
    length_mm: float


Reference = CardReference | RectangleReference | LinesReference | LineReference
