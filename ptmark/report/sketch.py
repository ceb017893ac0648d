"""A sketch of one finding: what shows it, drawn over the outlines, as SVG or as a picture.

Both come from the same plan in mm (surface frame, x right, y down), so they show the same: the
outlines (those of the finding solid, the others dotted), the line that crosses a row, the
window at its worst place, the caliper of a single one, the gaps that made several one. The
same finding and outlines always give the same bytes.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise
from typing import Protocol

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.report.palette import CYAN, DEEP_BLUE, INK, NAVY, PAPER, QUIET, Color

__all__ = ["Outlined", "finding_picture", "finding_svg"]

Picture = npt.NDArray[np.uint8]
Array = npt.NDArray[np.float64]

_WIDE, _HIGH = 600, 450  # px, or units of the SVG's own frame
_ROOM = 0.12  # free at each side, as a share of the shorter side
_LEAST_MM = 2.0  # shown at least
_HALO = 5  # px of paper around a letter, so that it is read across a line
_FACE = cv2.FONT_HERSHEY_SIMPLEX
_LETTER, _LINE = 9, 16  # px that a letter takes, across and up
_LONGEST = 16  # letters of a name; longer ones are cut
_FEW_NAMES = 12
_MOST_SHOWN = 400  # outlines; a crowd beyond that is not told apart at this size


class Outlined(Protocol):
    """What a sketch needs of an indication; `ptmark.criteria.Judged` has it."""

    @property
    def id(self) -> str: ...

    @property
    def outline_mm(self) -> Array: ...


class Shown(Protocol):
    """What a sketch needs of a finding; `ptmark.criteria.Finding` has it."""

    @property
    def indications(self) -> tuple[str, ...]: ...

    @property
    def sketch(self) -> tuple[tuple[float, float], ...]: ...

    @property
    def says(self) -> str: ...


@dataclass(frozen=True, slots=True)
class _Stroke:
    """Points in the sketch's own frame, shape (N, 2), and how they are drawn."""

    points: Array
    color: Color
    width: float
    dash: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class _Plan:
    strokes: list[_Stroke]
    letters: list[tuple[str, float, float]]


def finding_svg(finding: Shown, indications: Sequence[Outlined]) -> str:
    """Draw the sketch of a finding as an SVG document of 600 by 450 units.

    ``indications`` are those of the scene that was judged, outlines in mm on the surface; a
    finding that names none of them, such as "no indication", gives an empty frame.

    Examples
    --------
    >>> from ptmark.criteria import evaluate, load_profile, scene_from_json
    >>> square = [[0, 0], [9, 0], [9, 9], [0, 9]]
    >>> scene = scene_from_json({"indications": [{"id": "A", "outline_mm": square}]})
    >>> result = evaluate(load_profile("iso-23277-1"), scene)
    >>> finding_svg(result.findings[0], scene.indications)[:4]
    '<svg'
    """
    plan = _planned(finding, indications)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDE} {_HIGH}" '
        f'width="{_WIDE}" height="{_HIGH}" role="img">',
        f"<title>{escape(finding.says)}</title>",
        f'<rect width="{_WIDE}" height="{_HIGH}" fill="{_hex(PAPER)}"/>',
    ]
    for stroke in plan.strokes:
        points = " ".join(f"{x:.2f},{y:.2f}" for x, y in stroke.points.tolist())
        dash = (
            ""
            if stroke.dash is None
            else f' stroke-dasharray="{stroke.dash[0]} {stroke.dash[1]}"'
        )
        lines.append(
            f'<polyline points="{points}" fill="none" stroke="{_hex(stroke.color)}" '
            f'stroke-width="{stroke.width:g}" stroke-linejoin="round"{dash}/>'
        )
    for name, x, y in plan.letters:
        halo = f' stroke="{_hex(PAPER)}" stroke-width="{_HALO}"'
        for color, under in ((PAPER, halo), (INK, "")):  # not every viewer knows paint-order
            lines.append(
                f'<text x="{x:.2f}" y="{y:.2f}" font-family="sans-serif" font-size="16" '
                f'fill="{_hex(color)}"{under}>{escape(name)}</text>'
            )
    return "\n".join([*lines, "</svg>", ""])


def finding_picture(
    finding: Shown, indications: Sequence[Outlined], *, lettering: float = 1.0
) -> Picture:
    """Draw the same sketch as an RGB picture of shape (450, 600, 3), uint8.

    ``lettering`` makes the letters larger where the picture is to be shown smaller.
    """
    plan = _planned(finding, indications)
    picture = np.full((_HIGH, _WIDE, 3), PAPER, dtype=np.uint8)
    for stroke in plan.strokes:
        for part in _dashes(stroke):
            fixed = np.round(part * 16).astype(np.int32)  # sixteenths of a pixel
            width = max(1, round(stroke.width))
            cv2.polylines(picture, [fixed], False, stroke.color, width, cv2.LINE_AA, 4)  # noqa: FBT003
    for name, x, y in plan.letters:
        plain = name.encode("ascii", "replace").decode()
        at = (round(x), round(y))
        size, pen = 0.5 * lettering, round(lettering)
        for color, thick in ((PAPER, pen + _HALO), (INK, pen)):
            cv2.putText(picture, plain, at, _FACE, size, color, thick, cv2.LINE_AA)
    return picture


def _planned(finding: Shown, indications: Sequence[Outlined]) -> _Plan:
    named = set(finding.indications)
    own = [one for one in indications if one.id in named][:_MOST_SHOWN]
    mark = np.array(finding.sketch, dtype=float).reshape(-1, 2)
    seen = [mark, *(one.outline_mm for one in own)]
    points = np.concatenate(seen)
    if not len(points):
        return _Plan([], [])
    corner, zoom = _view(points)
    far = corner + np.array([_WIDE, _HIGH]) / zoom

    def placed(mm: Array) -> Array:
        return (mm - corner) * zoom

    def ring(one: Outlined) -> Array:
        return placed(np.concatenate([one.outline_mm, one.outline_mm[:1]]))

    others = [
        one
        for one in indications
        if one.id not in named
        and (one.outline_mm.max(axis=0) >= corner).all()
        and (one.outline_mm.min(axis=0) <= far).all()
    ]
    strokes = [_Stroke(ring(one), QUIET, 1.0, (2, 4)) for one in others[:_MOST_SHOWN]]
    strokes += [_Stroke(ring(one), DEEP_BLUE, 2.0) for one in own]
    joins = []
    if len(mark) == 2:  # a row or a caliper; the gaps between its members are the finding
        joins = [_Stroke(placed(gap), NAVY, 3.0) for gap in _gaps(own)]
    if len(mark) > 1:
        closed = mark if len(mark) == 2 else np.concatenate([mark, mark[:1]])
        joins += [
            _Stroke(placed(closed), NAVY, 4.0),
            _Stroke(placed(closed), CYAN, 2.0, (10, 6)),
        ]
    strokes += joins
    letters = _letters([(one.id, ring(one)) for one in own], joins)
    bar, text = _bar(zoom)
    return _Plan([*strokes, bar], [*letters, text])


def _letters(
    rings: Sequence[tuple[str, Array]], joins: Sequence[_Stroke]
) -> list[tuple[str, float, float]]:
    """What is written and where; in a crowd no name that would lie across another."""
    made: list[tuple[str, float, float]] = []
    for whole, ring in rings:
        name = whole if len(whole) <= _LONGEST else f"{whole[: _LONGEST - 2]}.."
        places = _letter_places(ring, joins, _LETTER * len(name))
        free = [place for place in places if not any(_meets(name, *place, one) for one in made)]
        if free or len(rings) <= _FEW_NAMES:
            made.append((name, *(free or places)[0]))
    return made


def _meets(name: str, x: float, y: float, other: tuple[str, float, float]) -> bool:
    """Whether a name at a place lies across another."""
    apart = x - other[1]
    room = len(other[0]) if apart > 0 else len(name)
    return abs(apart) < _LETTER * room and abs(y - other[2]) < _LINE


def _letter_places(
    ring: Array, joins: Sequence[_Stroke], wide: int
) -> list[tuple[float, float]]:
    """Where a name's left foot may go: at corners of its outline, farthest from lines first."""
    low, high = ring.min(axis=0), ring.max(axis=0)
    corners = [
        (high[0] + 3, high[1]),
        (low[0] - 6 - wide, high[1] + 8),
        (low[0] - 6 - wide, low[1] + 3),
        (high[0] + 3, low[1] + 8),
    ]
    places = np.clip(np.array(corners), (4, 16), (_WIDE - 31 - wide, _HIGH - 26))
    lines = [
        start + (end - start) * share
        for one in joins
        for start, end in pairwise(one.points)
        for share in np.linspace(0, 1, 40)
    ]
    order = np.arange(len(places))
    if lines:
        middles = places + np.array([wide / 2 + 3.5, -8])
        free = np.linalg.norm(middles[:, None] - np.array(lines)[None], axis=2).min(axis=1)
        order = np.argsort(-np.minimum(free, 25), kind="stable")
    return [(float(places[k, 0]), float(places[k, 1])) for k in order]


def _view(points: Array) -> tuple[Array, float]:
    """Top-left corner in mm and units a mm."""
    low, high = points.min(axis=0), points.max(axis=0)
    room = np.maximum(high - low, _LEAST_MM)
    zoom = float(min(np.array([_WIDE, _HIGH]) * (1 - 2 * _ROOM) / room))
    return (low + high) / 2 - np.array([_WIDE, _HIGH]) / zoom / 2, zoom


def _gaps(own: Sequence[Outlined]) -> list[Array]:
    """The shortest bridge to each next outline, along the way that joins them most shortly."""
    import shapely

    if not 1 < len(own) <= 64:
        return []
    shapes = [shapely.Polygon(one.outline_mm) for one in own]
    joined, left, bridges = [shapes[0]], shapes[1:], []
    while left:
        apart = np.array([[shapely.distance(one, other) for other in left] for one in joined])
        first, second = divmod(int(apart.argmin()), len(left))
        if apart[first, second] > 0:
            line = shapely.shortest_line(joined[first], left[second])
            bridges.append(shapely.get_coordinates(line))
        joined.append(left.pop(second))
    return bridges


def _bar(zoom: float) -> tuple[_Stroke, tuple[str, float, float]]:
    """A scale bar of a round length, at the bottom left, and its words."""
    most = 0.3 * _WIDE / zoom
    power = 10.0 ** np.floor(np.log10(most))
    length = float(power * max(step for step in (1, 2, 5) if step * power <= most))
    ends = np.array([[12.0, _HIGH - 10.0], [12.0 + length * zoom, _HIGH - 10.0]])
    return _Stroke(ends, INK, 3.0), (f"{length:g} mm", 12.0, _HIGH - 16.0)


def _dashes(stroke: _Stroke) -> list[Array]:
    """The drawn parts of a stroke; whole where it has no dash."""
    if stroke.dash is None:
        return [stroke.points]
    on, off = stroke.dash
    parts = []
    for start, end in pairwise(stroke.points):
        length = float(np.hypot(*(end - start)))
        begins = np.arange(0.0, max(length, 1e-9), on + off)
        along = (end - start) / max(length, 1e-9)
        parts += [
            np.array([start + along * begin, start + along * min(begin + on, length)])
            for begin in begins.tolist()
        ]
    return parts


def _hex(color: Color) -> str:
    return "#{:02x}{:02x}{:02x}".format(*color)
