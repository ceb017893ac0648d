"""From what is picked and typed to a scale reference, and back again."""

from typing import TYPE_CHECKING

from ptmark.errors import PtmarkError
from ptmark.units import parse_length

if TYPE_CHECKING:
    from ptmark.scale import Reference

__all__ = ["KINDS", "build_reference", "take_apart"]

Points = list[tuple[float, float]]

KINDS = {
    "card": ("Scale card, found by itself", ["Measured check length"]),
    "rectangle": ("A rectangle of known size", ["Width (long side)", "Height"]),
    "lines": ("Two lines at right angles", ["First line", "Second line"]),
    "line": ("One line of known length", ["Length"]),
    "pipe": ("A pipe or bar of known diameter", ["Outside diameter"]),
}


def build_reference(kind: str, points: Points | None, texts: list[str]) -> "Reference":
    """A reference from points in photo px and typed lengths.

    Raises
    ------
    PtmarkError
        If a length cannot be read (its label is named) or points are missing.
    """
    from ptmark import scale

    labels = KINDS[kind][1]
    if kind == "card":
        typed = texts[0].strip()
        check = parse_length(typed, where=labels[0], default_unit="mm") if typed else None
        return scale.CardReference(check_mm=check)
    sizes = [parse_length(text, where=label) for text, label in zip(texts, labels, strict=True)]
    if points is None:
        raise PtmarkError("points are missing", where=kind, mend="Pick them on the photo.")
    if kind == "line":
        return scale.LineReference(ends_px=(points[0], points[1]), length_mm=sizes[0])
    a, b, c, d = points
    if kind == "pipe":
        return scale.PipeReference(edges_px=(a, b, c, d), diameter_mm=sizes[0])
    if kind == "rectangle":
        return scale.RectangleReference(
            corners_px=(a, b, c, d), width_mm=sizes[0], height_mm=sizes[1]
        )
    return scale.LinesReference(
        first_px=(a, b), first_mm=sizes[0], second_px=(c, d), second_mm=sizes[1]
    )


def take_apart(reference: "Reference") -> tuple[str, Points | None, list[float | None]]:
    """Kind, points in photo px and lengths in mm of a reference."""
    from ptmark import scale

    if isinstance(reference, scale.CardReference):
        return "card", None, [reference.check_mm]
    if isinstance(reference, scale.LineReference):
        return "line", list(reference.ends_px), [reference.length_mm]
    if isinstance(reference, scale.PipeReference):
        return "pipe", list(reference.edges_px), [reference.diameter_mm]
    if isinstance(reference, scale.LinesReference):
        points = [*reference.first_px, *reference.second_px]
        return "lines", points, [reference.first_mm, reference.second_mm]
    return (
        "rectangle",
        list(reference.corners_px),
        [reference.width_mm, reference.height_mm],
    )
