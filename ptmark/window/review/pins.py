"""Places in the photo that a reviewer speaks of, and the first's outlines beside the own."""

from collections.abc import Iterable, Sequence
from math import cos, pi, sin
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QPointF
from PySide6.QtGui import QPolygonF

from ptmark.window.parts import Parts
from ptmark.window.review.case import ReviewCase
from ptmark.window.review.page import ReviewPage
from ptmark.window.tools.tool import Tool
from ptmark.window.view.marks import Mark
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.review import Comparison

__all__ = ["Pins"]

_CORNERS = 24
_RADIUS = 1 / 60  # share of the photo's longer side


class Pins(QObject):
    """Shows remarks and the first's outlines over the photo at hand; picks a remark's place."""

    def __init__(self, window: Parts, case: ReviewCase, page: ReviewPage) -> None:
        super().__init__(page)
        self._window, self._case, self._page = window, case, page
        self._next = ""
        window.session.changed.connect(self.show)
        window.turning.turned.connect(self._on_turned)

    def pick(self) -> None:
        """Let the next click in the photo be the place of the remark."""
        tool, window = _PinTool(), self._window

        def done(at: tuple[float, float]) -> None:
            window.bench.stop()
            self._page.set_place(at)
            window.session.go("Record")
            self._page.text.setFocus()

        tool.finished.connect(done)
        window.bench.start("pin", tool)

    def bring_told(self, row: int) -> None:
        """Bring the place of a remark of the last review into sight."""
        opened = self._case.opened
        if opened is not None and 0 <= row < len(opened.told):
            self.bring(opened.told[row][1], tr("remark {0}", row + 1))

    def bring(self, photo: int, name: str) -> None:
        """Turn to a photo of the set (-1: stay) and bring a mark into sight there."""
        inspection = self._window.session.inspection
        if inspection is None or photo in {-1, inspection.photos.number}:
            self._window.view.bring(name)
        else:
            self._next = name
            self._window.turning.turn_to(photo)

    def _on_turned(self) -> None:
        name, self._next = self._next, ""
        self.show()
        self._window.view.bring(name)

    def show(self) -> None:
        """Show what belongs to the photo at hand."""
        inspection, opened = self._window.session.inspection, self._case.opened
        if inspection is None or inspection.photo is None or opened is None:
            self._window.view.show_beside([])
            return
        info = inspection.photo.info
        shas = [one.photo_sha256 for one in opened.blinds]
        number = shas.index(info.sha256) if info.sha256 in shas else -1
        if self._case.phase in {"told", "mending"}:
            places = [(i, at) for i, (_, n, at) in enumerate(opened.told, 1) if n == number]
        else:
            said = enumerate(self._case.remarks, 1)
            places = [(i, one.at_px) for i, one in said if one.photo == info.sha256]
        radius = max(info.width, info.height) * _RADIUS
        marks = _pin_marks([(i, at) for i, at in places if at is not None], radius)
        if 0 <= number < len(self._case.firsts):
            agreed = _agreed(self._case.compared[number])
            marks = [*_first_marks(self._case.firsts[number], agreed), *marks]
        self._window.view.show_beside(marks)


class _PinTool(Tool):
    """One click names a place; ``finished`` hands over (x, y), photo px."""

    def hint(self) -> str:
        return tr("Click the place that the remark is about; Esc leaves it without a place.")

    def press(self, at: QPointF) -> None:
        self.finished.emit((at.x(), at.y()))


def _pin_marks(places: Iterable[tuple[int, tuple[float, float]]], radius: float) -> list[Mark]:
    """A ring round each place, with the number of its remark."""
    made = []
    for number, (x, y) in places:
        turns = [2 * pi * step / _CORNERS for step in range(_CORNERS)]
        ring = [QPointF(x + radius * cos(t), y + radius * sin(t)) for t in turns]
        made.append(Mark(tr("remark {0}", number), QPolygonF(ring), "remark"))
    return made


def _agreed(compared: "Comparison") -> set[str]:
    """Letters of the first that the own measurement bears too and agrees with."""
    return {
        pair.first
        for pair in compared.pairs
        if pair.first == pair.second
        and all(two is None or (two.en or 0) <= 1 for two in (pair.length, pair.width))
    }


def _first_marks(
    outlines: Iterable[tuple[str, Sequence[Sequence[float]]]], agreed: set[str]
) -> list[Mark]:
    """The first's outlines, told apart by line style; where they differ, by a label too."""
    made = []
    for name, points in outlines:
        outline = QPolygonF([QPointF(x, y) for x, y in points])
        made.append(Mark(tr("first {0}", name), outline, "first", told=name not in agreed))
    return made
