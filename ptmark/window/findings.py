"""Every finding of an evaluation, the worst first, and the sketch of the one chosen."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QListWidgetItem, QVBoxLayout, QWidget

from ptmark.window.edges import ListOf
from ptmark.window.glyphs import glyph_icon
from ptmark.window.judging import STRICTEST
from ptmark.window.reading_order import reveal
from ptmark.window.sketch_view import SketchView
from ptmark.window.words import from_core, tr
from ptmark.window.wrapped import wrap

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation, Finding, Scene

__all__ = ["Findings"]

_FINDING = Qt.ItemDataRole.UserRole.value + 1


class Findings(QWidget):
    """A list and a sketch.

    Signals: ``chosen(object)`` with the `Finding` that a person chose, None where the list
    was filled anew.
    """

    chosen = Signal(object)

    def __init__(
        self, name: str = tr("Findings, rule by rule"), least: int = 150, sketch: int = 180
    ) -> None:
        super().__init__()
        self._scene: Scene | None = None
        self.list = ListOf()
        wrap(self.list)
        self.list.setAccessibleName(name)
        self.list.setMinimumHeight(least)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setIconSize(QSize(18, 18))
        self.list.setSpacing(2)
        self.list.currentItemChanged.connect(lambda item, _: self._choose(item))
        self.list.itemClicked.connect(self._choose)
        self.sketch = SketchView(sketch)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.list, 1)
        column.addWidget(self.sketch, 1)

    @property
    def current(self) -> "Finding | None":
        """The finding whose sketch is shown."""
        if self.list.currentRow() < 0:
            return None
        found: Finding = self.list.currentItem().data(_FINDING)
        return found

    def show_all(self, made: "Evaluation | None", scene: "Scene | None") -> None:
        """List the findings of an evaluation of a scene; the chosen one stays where it can."""
        before = self.current
        self._scene = scene
        self.list.blockSignals(True)  # noqa: FBT003 - Qt takes it so
        self.list.clear()
        again = None
        findings = made.findings if made is not None else ()
        for one in sorted(findings, key=lambda f: STRICTEST.index(f.verdict)):
            below = [from_core(one.clause), tr(one.verdict), _conformity(one.conformity)]
            text = f"{from_core(one.says)}\n{' · '.join(part for part in below if part)}"
            item = QListWidgetItem(glyph_icon(one.verdict, self.palette()), text)
            item.setData(Qt.ItemDataRole.UserRole, one.indications)
            item.setData(_FINDING, one)
            self.list.addItem(item)
            same = before is not None and _same(before, one)
            if same and again is None:
                again = item
        if again is not None:
            self.list.setCurrentItem(again)
        self.list.blockSignals(False)  # noqa: FBT003 - Qt takes it so
        self.sketch.show_finding(self.current, scene)
        self.chosen.emit(None)

    def choose_first(self) -> None:
        """Show the sketch of the worst finding without anybody's click."""
        if self.list.currentRow() < 0 and self.list.count():
            self.list.blockSignals(True)  # noqa: FBT003 - Qt takes it so
            self.list.setCurrentRow(0)
            self.list.blockSignals(False)  # noqa: FBT003 - Qt takes it so
            self.sketch.show_finding(self.list.item(0).data(_FINDING), self._scene)

    def _choose(self, item: QListWidgetItem | None) -> None:
        if item is not None:
            finding = item.data(_FINDING)
            self.sketch.show_finding(finding, self._scene)
            self.list.scrollToItem(item)
            if self.list.hasFocus():
                reveal(self.list)
            self.chosen.emit(finding)


def _same(one: "Finding", other: "Finding") -> bool:
    return (one.rule, one.indications) == (other.rule, other.indications)


def _conformity(share: float | None) -> str:
    """The probability of conformity (JCGM 106) in words; "" where there is no uncertainty."""
    if share is None:
        return ""
    shown = "< 1 %" if share < 0.01 else "> 99 %" if share > 0.99 else f"{100 * share:.0f} %"
    return tr("conforms with probability {0}", shown)
