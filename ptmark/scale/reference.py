"""What the user gives as the scale: plain data, saved with the record and undone with it.

Points are ``(x, y)`` in px of the upright photo; lengths in mm. ``offset_mm`` is how far a flat
reference lies nearer the camera than the surface: a thick card, a card on a step.
"""

from dataclasses import asdict, dataclass
from typing import Any

from ptmark.errors import ScaleError

__all__ = [
    "CardReference",
    "Flat",
    "LineReference",
    "LinesReference",
    "OnPlane",
    "PairReference",
    "PipeReference",
    "Point",
    "RectangleReference",
    "Reference",
    "reference_from_json",
    "reference_to_json",
]

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class CardReference:
    """The printed scale card, found by its markers.

    ``check_mm`` is the measured value of the card's printed 80 mm check length (callipers),
    or None where it was not measured; it corrects the printed size and narrows its uncertainty.
    ``number`` is the card's set; None for every card in the photo, of which two are used.
    """

    check_mm: float | None = None
    number: int | None = None
    offset_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RectangleReference:
    """A rectangle of known size: four corners clockwise from the top left as it lies on x."""

    corners_px: tuple[Point, Point, Point, Point]
    width_mm: float
    height_mm: float
    offset_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LinesReference:
    """Two lines of known length at right angles, in any place on the surface."""

    first_px: tuple[Point, Point]
    first_mm: float
    second_px: tuple[Point, Point]
    second_mm: float
    offset_mm: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class LineReference:
    """One line of known length; fixes the scale but not the tilt."""

    ends_px: tuple[Point, Point]
    length_mm: float
    offset_mm: float = 0.0


# What can lie on a pipe: along it, or touching it.
Flat = CardReference | RectangleReference | LineReference
# What can lie on a plane.
OnPlane = Flat | LinesReference


@dataclass(frozen=True, slots=True, kw_only=True)
class PipeReference:
    """A pipe or bar of known outside diameter, and what shows where it lies.

    Either ``edges_px``: two points on one outer edge, two on the other. Or ``axis_px``: two
    points of a line along the pipe. With ``on``, a flat reference that lies on the pipe, the
    line is where that touches it (left out where ``on`` is itself a line along the pipe);
    without, the edges are found in the photo.
    """

    edges_px: tuple[Point, ...] = ()
    diameter_mm: float
    axis_px: tuple[Point, ...] = ()
    on: Flat | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PairReference:
    """Two flat references on one surface, at least one of which tells how it leans."""

    first: OnPlane
    second: OnPlane


Reference = OnPlane | PipeReference | PairReference

_KINDS: dict[str, type[Reference]] = {
    "card": CardReference,
    "rectangle": RectangleReference,
    "two lines": LinesReference,
    "line": LineReference,
    "pipe": PipeReference,
    "pair": PairReference,
}


def reference_to_json(reference: Reference) -> dict[str, Any]:
    """Plain JSON of a reference; ``kind`` says which.

    Examples
    --------
    >>> reference_to_json(LineReference(ends_px=((0.0, 1.0), (2.0, 3.0)), length_mm=5.0))
    {'kind': 'line', 'ends_px': [[0.0, 1.0], [2.0, 3.0]], 'length_mm': 5.0}
    """
    kind = next(name for name, made in _KINDS.items() if isinstance(reference, made))
    members = {
        key: _lists(value)
        for key, value in asdict(reference).items()
        if (key, value) not in (("offset_mm", 0.0), ("number", None))
    }
    if isinstance(reference, PipeReference):
        members["on"] = None if reference.on is None else reference_to_json(reference.on)
        members = {key: value for key, value in members.items() if value}
    if isinstance(reference, PairReference):
        for name in ("first", "second"):
            members[name] = reference_to_json(getattr(reference, name))
    return {"kind": kind} | members


def reference_from_json(document: dict[str, Any]) -> Reference:
    """Rebuild a reference from `reference_to_json`.

    Raises
    ------
    ScaleError
        If the kind is unknown or a member is missing, left over or of the wrong shape.
    """
    kind = document.get("kind")
    if kind not in _KINDS:
        raise ScaleError(f"unknown kind of reference {kind!r}", where="scale")
    members = {key: value for key, value in document.items() if key != "kind"}
    try:
        return _KINDS[kind](**{key: _points(key, value) for key, value in members.items()})
    except (TypeError, ValueError) as exc:
        raise ScaleError(f"a {kind} reference that does not fit: {exc}", where="scale") from exc


def _lists(value: Any) -> Any:  # noqa: ANN401 - JSON
    return [_lists(item) for item in value] if isinstance(value, tuple) else value


def _points(key: str, value: Any) -> Any:  # noqa: ANN401 - JSON
    if key in {"on", "first", "second"}:
        return None if value is None else reference_from_json(value)
    if key == "number":
        return None if value is None else int(value)
    if not key.endswith("_px"):
        return None if value is None else float(value)
    points = tuple((float(x), float(y)) for x, y in value)
    wanted = 4 if key in {"corners_px", "edges_px"} else 2
    if len(points) != wanted and (points or key not in {"edges_px", "axis_px"}):
        raise ValueError(f"{key} has {len(points)} points, not {wanted}")
    return points
