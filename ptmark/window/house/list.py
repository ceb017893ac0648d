"""The parts of house rules in their order: each in words, with its faults counted."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QListWidgetItem, QVBoxLayout, QWidget

from ptmark.criteria import rule_kinds, step_kinds
from ptmark.criteria.house import ProfileDraft, TableDraft
from ptmark.criteria.house_check import Checked
from ptmark.window.bits import Choice, heading, key_button
from ptmark.window.edges import ListOf
from ptmark.window.glyphs import glyph_icon
from ptmark.window.house.part import part_title
from ptmark.window.words import from_core, tr
from ptmark.window.wrapped import wrap

__all__ = ["PartList"]

_AT = Qt.ItemDataRole.UserRole


class PartList(QWidget):
    """Chooses a part; adds, moves and takes away rules and steps.

    Signals: ``chosen()`` when another part is to be shown; ``changed()`` when the draft has
    other parts than before.
    """

    chosen = Signal()
    changed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self._draft = ProfileDraft()
        self.parts = ListOf()
        self.parts.setAccessibleName(tr("Parts of these rules"))
        wrap(self.parts)
        self.parts.setIconSize(QSize(18, 18))
        self.parts.setSpacing(1)
        self.parts.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.parts.currentItemChanged.connect(lambda *_: self._show())
        self.setFocusProxy(self.parts)
        self.kind = Choice(tr("Kind of rule to add"))
        for row, kind in enumerate(step_kinds()):
            self.kind.addItem(tr("{0} (once)", from_core(kind.title)), f"[{kind.name}]")
            self.kind.setItemData(row, from_core(kind.says), Qt.ItemDataRole.ToolTipRole)
        for row, kind in enumerate(rule_kinds(), start=self.kind.count()):
            self.kind.addItem(from_core(kind.title), kind.name)
            self.kind.setItemData(row, from_core(kind.says), Qt.ItemDataRole.ToolTipRole)
        self.kind.setCurrentIndex(self.kind.findData("size"))
        self.add_button = key_button(tr("Add"), "", self._add)
        self.up_button = key_button(
            tr("Up"), "", lambda: self._move(-1), tip=tr("Move this rule up")
        )
        self.down_button = key_button(
            tr("Down"), "", lambda: self._move(1), tip=tr("Move it down")
        )
        self.away_button = key_button(tr("Take away"), "", self._take_away)
        adding, moving = QHBoxLayout(), QHBoxLayout()
        adding.addWidget(self.kind, 1)
        adding.addWidget(self.add_button)
        for button in (self.up_button, self.down_button, self.away_button):
            moving.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Rules, in order")))
        column.addWidget(self.parts, 1)
        column.addLayout(moving)
        column.addLayout(adding)

    @property
    def at(self) -> str | int:
        """Which part is chosen: "" for the head, a step's name, or a rule's number from 0."""
        if self.parts.currentRow() < 0:
            return ""
        found: str | int = self.parts.currentItem().data(_AT)
        return found

    def fill(self, draft: ProfileDraft, at: str | int) -> None:
        """List the parts of a draft and choose one."""
        self._draft = draft
        self.parts.blockSignals(True)  # noqa: FBT003 - Qt takes it so
        self.parts.clear()
        for place in ("", *(name for name, _ in draft.tables())):
            item = QListWidgetItem()
            item.setData(_AT, place)
            self.parts.addItem(item)
        self.parts.blockSignals(False)  # noqa: FBT003 - Qt takes it so
        self.choose(at)

    def choose(self, at: str | int) -> None:
        """Choose a part."""
        for row in range(self.parts.count()):
            if self.parts.item(row).data(_AT) == at:
                self.parts.setCurrentRow(row)
        self._show()

    def label(self, checked: Checked) -> None:
        """Say of each part what it does, or how much is still to be done to it."""
        for row in range(self.parts.count()):
            item = self.parts.item(row)
            at = item.data(_AT)
            faults = sum(fault.place.table == at for fault in checked.faults)
            said = from_core(checked.says.get(at, ""))
            if faults:
                said = tr("{0} to mend or fill in", faults)
            elif at == "":
                top = self._draft.top
                said = tr("{0}, in {1}", top.text("title"), top.text("unit"))
            item.setText(f"{part_title(self._draft, at)}\n{said}")
            item.setIcon(glyph_icon("look" if faults else "done", self.palette()))

    def _show(self) -> None:
        at = self.at
        rule = isinstance(at, int)
        self.up_button.setEnabled(rule and at != 0)
        self.down_button.setEnabled(rule and at != len(self._draft.rules) - 1)
        self.away_button.setEnabled(rule or at in {"relevance", "merge"})
        self.chosen.emit()

    def _add(self) -> None:
        chosen = self.kind.currentData()
        name = chosen.strip("[]")
        if chosen == name:
            self._after(self._draft.add(name))
        else:
            self._draft.steps.setdefault(name, TableDraft())
            self._after(name)

    def _move(self, by: int) -> None:
        at = self.at
        if isinstance(at, int):
            self._after(self._draft.move(at, by))

    def _take_away(self) -> None:
        at = self.at
        if isinstance(at, int):
            del self._draft.rules[at]
            left = len(self._draft.rules)
            self._after(min(at, left - 1) if left else "")
        else:
            self._draft.steps.pop(at, None)
            self._after("")

    def _after(self, at: str | int) -> None:
        self.fill(self._draft, at)
        self.changed.emit()
