"""From what is picked and typed to a scale reference, and back again."""

from dataclasses import replace
from typing import TYPE_CHECKING

from ptmark.errors import PtmarkError
from ptmark.units import parse_length
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.scale import OnPlane, PipeReference, Reference

__all__ = [
    "KINDS",
    "SAYS",
    "build_reference",
    "offset_of",
    "paired",
    "parted",
    "raised",
    "take_apart",
    "takes_another",
]

Points = list[tuple[float, float]]

KINDS = {
    "card": (tr("Scale card, found by itself"), [tr("Measured check length")]),
    "rectangle": (tr("A rectangle of known size"), [tr("Width (long side)"), tr("Height")]),
    "lines": (tr("Two lines at right angles"), [tr("First line"), tr("Second line")]),
    "line": (tr("One line of known length"), [tr("Length")]),
    "pipe axis": (tr("A pipe or bar: a line along it"), [tr("Outside diameter")]),
    "pipe": (tr("A pipe or bar: its two outer edges"), [tr("Outside diameter")]),
    "pipe rule": (
        tr("A rule lying along a pipe or bar"),
        [tr("Outside diameter"), tr("Length")],
    ),
    "pipe rectangle": (
        tr("A rectangle lying on a pipe or bar"),
        [tr("Outside diameter"), tr("Width (long side)"), tr("Height")],
    ),
    "pipe card": (tr("The scale card lying on a pipe or bar"), [tr("Outside diameter")]),
}

SAYS = {
    "card": tr(
        "The tool's own printed card. Measure its 80 mm check length with callipers, "
        "if you can: it corrects the print and narrows the uncertainty."
    ),
    "rectangle": tr(
        "Four corners, clockwise from the top left. An ID-1 card is 85.60 × 53.98 mm."
    ),
    "lines": tr(
        "Two known lengths in the plane of the surface, at right angles: scale and tilt."
    ),
    "line": tr("Fixes the scale but not the tilt; the unknown tilt widens every uncertainty."),
    "pipe axis": tr(
        "Both outer edges have to be in the picture: they are found beside it. "
        "Lengths are along the surface; where it turns away over 60° they are refused."
    ),
    "pipe": tr(
        "Two points far apart on each outer edge; roughly, where the edge is clear. "
        "Lengths are along the surface; where it turns away over 60° they are refused."
    ),
    "pipe rule": tr(
        "For close-ups: no edge has to be seen. The rule lies on the crown, the "
        "pipe's line nearest to the camera."
    ),
    "pipe rectangle": tr(
        "For close-ups: four corners, clockwise from the top left, then two "
        "points along the pipe, on the line where the rectangle touches it."
    ),
    "pipe card": tr(
        "For close-ups: no edge has to be seen. Pick two points along the pipe, on "
        "the line where the flat card touches it."
    ),
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
        raise PtmarkError(
            tr("points are missing"), where=kind, mend=tr("Pick them on the photo.")
        )
    if kind == "line":
        return scale.LineReference(ends_px=(points[0], points[1]), length_mm=sizes[0])
    if kind.startswith("pipe"):
        return _pipe(kind, points, sizes)
    a, b, c, d = points
    if kind == "rectangle":
        return scale.RectangleReference(
            corners_px=(a, b, c, d), width_mm=sizes[0], height_mm=sizes[1]
        )
    return scale.LinesReference(
        first_px=(a, b), first_mm=sizes[0], second_px=(c, d), second_mm=sizes[1]
    )


def _pipe(kind: str, points: Points, sizes: list[float]) -> "Reference":
    from ptmark import scale

    picked = tuple(points)
    if kind == "pipe":
        return scale.PipeReference(edges_px=picked, diameter_mm=sizes[0])
    if kind == "pipe rule":
        line = scale.LineReference(ends_px=(points[0], points[1]), length_mm=sizes[1])
        return scale.PipeReference(diameter_mm=sizes[0], on=line)
    if kind == "pipe rectangle":
        a, b, c, d, *axis = points
        flat = scale.RectangleReference(
            corners_px=(a, b, c, d), width_mm=sizes[1], height_mm=sizes[2]
        )
        return scale.PipeReference(axis_px=tuple(axis), diameter_mm=sizes[0], on=flat)
    on = scale.CardReference() if kind == "pipe card" else None
    return scale.PipeReference(axis_px=picked, diameter_mm=sizes[0], on=on)


def take_apart(
    reference: "OnPlane | PipeReference",
) -> tuple[str, Points | None, list[float | None]]:
    """Kind, points in photo px and lengths in mm of a reference."""
    from ptmark import scale

    if isinstance(reference, scale.CardReference):
        return "card", None, [reference.check_mm]
    if isinstance(reference, scale.LineReference):
        return "line", list(reference.ends_px), [reference.length_mm]
    if isinstance(reference, scale.PipeReference):
        return _pipe_apart(reference)
    if isinstance(reference, scale.LinesReference):
        points = [*reference.first_px, *reference.second_px]
        return "lines", points, [reference.first_mm, reference.second_mm]
    return (
        "rectangle",
        list(reference.corners_px),
        [reference.width_mm, reference.height_mm],
    )


def _pipe_apart(reference: "PipeReference") -> tuple[str, Points | None, list[float | None]]:
    from ptmark import scale

    diameter = reference.diameter_mm
    if reference.edges_px:  # what lies on it as well is given by the command line only
        return "pipe", list(reference.edges_px), [diameter]
    if isinstance(reference.on, scale.LineReference):
        return "pipe rule", list(reference.on.ends_px), [diameter, reference.on.length_mm]
    if isinstance(reference.on, scale.RectangleReference):
        on = reference.on
        points = [*on.corners_px, *reference.axis_px]
        return "pipe rectangle", points, [diameter, on.width_mm, on.height_mm]
    return "pipe card" if reference.on else "pipe axis", list(reference.axis_px), [diameter]


def raised(reference: "Reference", text: str) -> "Reference":
    """A flat reference that lies as far above the surface as typed; any other as it is.

    Raises
    ------
    PtmarkError
        If the height cannot be read.
    """
    from ptmark import scale

    if isinstance(reference, scale.PipeReference | scale.PairReference):
        return reference
    flat = not text.strip() or text.strip().rstrip("m").strip() in {"0", "0.0"}
    where = tr("Height of the reference")
    height = 0.0 if flat else parse_length(text, where=where, default_unit="mm")
    return replace(reference, offset_mm=height)


def offset_of(reference: "Reference") -> float:
    """How far a reference lies above the surface, mm; 0 for what lies on a pipe."""
    return float(getattr(reference, "offset_mm", 0.0))


def paired(first: "Reference | None", second: "Reference") -> "Reference":
    """Two references as one; the second alone where there is no first.

    A pipe's two edges go with one flat reference that lies on it.

    Raises
    ------
    PtmarkError
        If they do not go together.
    """
    from ptmark.scale import LinesReference, PairReference, PipeReference

    if first is None:
        return second
    for one, other in ((first, second), (second, first)):
        if not takes_another(one) or isinstance(other, PipeReference | PairReference):
            continue
        if isinstance(one, PipeReference):
            if not isinstance(other, LinesReference):
                return replace(one, on=replace(other, offset_mm=0.0))
        elif not isinstance(one, PairReference):
            return PairReference(first=one, second=other)
    raise PtmarkError(
        tr("only a pipe's two outer edges go with a rule, a rectangle or the card on it"),
        where="scale",
        mend=tr("Remove the scale first."),
    )


def takes_another(reference: "Reference | None") -> bool:
    """Whether a second reference may be given beside this one."""
    from ptmark.scale import PairReference, PipeReference

    if isinstance(reference, PipeReference):
        return bool(reference.edges_px) and reference.on is None
    return reference is not None and not isinstance(reference, PairReference)


def parted(
    reference: "Reference",
) -> "tuple[Reference | None, OnPlane | PipeReference]":
    """The first of two references, None where it is one alone, and the one shown to pick on."""
    from ptmark.scale import PairReference, PipeReference

    if isinstance(reference, PairReference):
        return reference.first, reference.second
    if isinstance(reference, PipeReference) and reference.edges_px and reference.on is not None:
        return replace(reference, on=None), reference.on
    return None, reference
