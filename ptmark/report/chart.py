"""A plain line chart of measured points with their uncertainty, in the report's colours.

Lines differ by style and letter as well as by colour.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, log10

import cv2
import numpy as np
import numpy.typing as npt

from ptmark.report.lettering import font
from ptmark.report.marks import draw_styled
from ptmark.report.palette import INK, NAVY, PAPER, SHADE, Ink

__all__ = ["Chart", "Line", "draw_chart"]

Picture = npt.NDArray[np.uint8]
Array = npt.NDArray[np.float64]
_APART = 1.1  # heights of text between two letters
_LONGEST = 12  # letters
_GRID = (176, 188, 206)
Text = tuple[float, float, str, str, float]  # x, y, text, PIL anchor, size in px


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Line:
    """One curve: points of shape (N, 3), each x, y and the half-length U of its bar."""

    name: str
    points: Array
    ink: Ink
    style: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """Curves over minutes; ``span`` is shaded, ``marked`` gets an upright line."""

    title: str
    lines: tuple[Line, ...]
    span: tuple[float, float]
    marked: float | None = None


def draw_chart(chart: Chart, width: int, height: int, unit: float) -> Picture:
    """Draw a chart, shape (height, width, 3); ``unit`` is the size of ordinary text, px."""
    picture = np.empty((height, width, 3), np.uint8)
    picture[:] = PAPER
    every = np.concatenate([line.points for line in chart.lines] or [np.zeros((1, 3))])
    to_x = _axis(np.append(every[:, 0], chart.marked or 0.0))
    to_y = _axis(every[:, 1] + every[:, 2])
    frame = _Frame((4 * unit, 3 * unit, width - 6.5 * unit, height - 4 * unit), to_x, to_y)
    texts = _ground(picture, chart, frame, unit)
    for line in chart.lines:
        _curve(picture, line, frame, unit)
    texts += _letters(chart.lines, frame, unit)
    return _with_text(picture, texts)


@dataclass(frozen=True, slots=True)
class _Frame:
    """Where the axes lie, px, with their ticks from 0."""

    box: tuple[float, float, float, float]
    x_ticks: tuple[float, ...]
    y_ticks: tuple[float, ...]

    def at(self, x: float, y: float) -> tuple[float, float]:
        left, top, right, low = self.box
        return (
            left + (right - left) * x / self.x_ticks[-1],
            low - (low - top) * y / self.y_ticks[-1],
        )


def _axis(values: Array) -> tuple[float, ...]:
    """Ticks from 0 beyond the largest value, by 1, 2 or 5 times a power of ten."""
    most = max(float(values.max()), 1e-6) * 1.05
    power = 10.0 ** floor(log10(most / 4))
    step = next(f * power for f in (1, 2, 5, 10) if most / (f * power) <= 6)
    return tuple(round(step * n, 12) for n in range(ceil(most / step) + 1))


def _ground(picture: Picture, chart: Chart, frame: _Frame, unit: float) -> list[Text]:
    left, top, right, low = frame.box
    start, end = (min(max(v, 0.0), frame.x_ticks[-1]) for v in chart.span)
    if end > start:
        box = (*frame.at(start, 0), *frame.at(end, 0))
        cv2.rectangle(
            picture, (round(box[0]), round(top)), (round(box[2]), round(low)), SHADE, -1
        )
    texts: list[Text] = [
        (left, 0.9 * unit, chart.title, "la", 1.1 * unit),
        ((left + right) / 2, low + 2.1 * unit, "Minutes since the developer", "ma", unit),
    ]
    for tick in frame.y_ticks:
        y = frame.at(0, tick)[1]
        cv2.line(picture, (round(left), round(y)), (round(right), round(y)), _GRID, 1)
        texts.append((left - 0.4 * unit, y, f"{tick:g}", "rm", 0.9 * unit))
    for tick in frame.x_ticks:
        x = frame.at(tick, 0)[0]
        cv2.line(picture, (round(x), round(low)), (round(x), round(low + 0.3 * unit)), INK, 1)
        texts.append((x, low + 0.5 * unit, f"{tick:g}", "ma", 0.9 * unit))
    if chart.marked is not None:
        x = frame.at(chart.marked, 0)[0]
        ends = np.array([[x, top], [x, low]])
        draw_styled(picture, ends, Ink(NAVY, PAPER), 2.0, "long")
        texts.append((x, top - 0.2 * unit, "evaluate", "mb", 0.85 * unit))
    return texts


def _curve(picture: Picture, line: Line, frame: _Frame, unit: float) -> None:
    places = np.array([frame.at(x, y) for x, y, _ in line.points])
    if len(places) > 1:
        draw_styled(picture, places, line.ink, 0.11 * unit, line.style)
    for (x, y, u), place in zip(line.points, places, strict=True):
        for end in (y - u, y + u):
            tip = frame.at(x, max(end, 0.0))
            _stroke(picture, place, tip, line.ink)
            _stroke(picture, (tip[0] - 5, tip[1]), (tip[0] + 5, tip[1]), line.ink)
        centre = (round(place[0] * 16), round(place[1] * 16))
        cv2.circle(picture, centre, round(0.27 * unit * 16), line.ink.line, -1, cv2.LINE_AA, 4)


def _stroke(picture: Picture, start: Sequence[float], end: Sequence[float], ink: Ink) -> None:
    first, last = ((round(p[0] * 16), round(p[1] * 16)) for p in (start, end))
    cv2.line(picture, first, last, ink.line, 2, cv2.LINE_AA, 4)


def _letters(lines: Sequence[Line], frame: _Frame, unit: float) -> list[Text]:
    """Each curve's letter right of its last point; curves that end together share one text."""
    ends = sorted(
        (*frame.at(line.points[-1, 0], line.points[-1, 1]), line.name) for line in lines
    )
    ends.sort(key=lambda end: end[1])
    groups: list[tuple[float, float, list[str]]] = []
    for x, y, name in ends:
        near = [g for g in groups if abs(g[0] - x) < unit and abs(g[1] - y) < _APART * unit]
        if near:
            near[-1][2].append(name)
        else:
            groups.append((x, y, [name]))
    return [(x + 0.6 * unit, y, _joined(names), "lm", unit) for x, y, names in groups]


def _joined(names: list[str]) -> str:
    """Names that fit beside the frame."""
    text = ", ".join(sorted(names))
    return text if len(text) <= _LONGEST else f"{text[: _LONGEST - 1]}…"


def _with_text(picture: Picture, texts: Sequence[Text]) -> Picture:
    from PIL import Image, ImageDraw

    image = Image.fromarray(picture)
    draw = ImageDraw.Draw(image)
    for x, y, text, anchor, size in texts:
        draw.text((x, y), text, fill=INK, font=font(size), anchor=anchor)
    return np.array(image)
