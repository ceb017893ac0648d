"""What the look left out: by reason with counts, the most dye-like first, a few at a time.

What the pointer is over, or the arrow keys are at, stands out in the photo.
"""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import (
    QEvent,
    QObject,
    QPointF,
    Qt,
    Signal,
)
from PySide6.QtGui import QPolygonF
from PySide6.QtWidgets import (
    QAbstractItemView,
    QTreeWidgetItem,
    QVBoxLayout,
    QWidget,
)

from ptmark.window.bits import quiet
from ptmark.window.edges import Tick, TreeOf
from ptmark.window.indications.hands import Hands
from ptmark.window.reading_order import reveal
from ptmark.window.session import Session
from ptmark.window.words import from_core, tr
from ptmark.window.workers import Token
from ptmark.window.wrapped import Wrapped

if TYPE_CHECKING:
    from ptmark.dye import LeftOut

__all__ = ["LeftOutList", "dye_likeness"]

_AT_ONCE = 6  # of one reason; a click on the last line shows twice as many
_NUMBER = Qt.ItemDataRole.UserRole
_SAID = Qt.ItemDataRole.UserRole + 1
_SIDE = 48  # px that a blob is reduced to for a glance at its colour


class LeftOutList(QWidget):
    """Signals: ``shown_changed()`` when the photo is to show other blobs.

    ``pointed(str, bool)`` with the name of the blob's mark in the photo, "" for none, and
    whether it is to be brought into sight.
    """

    shown_changed = Signal()
    pointed = Signal(str, bool)

    def __init__(self, session: Session, hands: Hands) -> None:
        super().__init__()
        self._session, self._hands = session, hands
        self._of: tuple[object, ...] = ()
        self._scores: dict[int, float] = {}
        self._more: dict[str, int] = {}
        self._taken: dict[int, str] = {}
        self.switch = Tick()
        self.switch.setMinimumHeight(28)
        self.switch.toggled.connect(lambda _: self._tell())
        self._hint = quiet(tr("A click or Enter takes one back as an indication."))
        self.tree = TreeOf()
        self.tree.setHeaderHidden(True)
        self.tree.setAccessibleName(tr("Left out, by reason"))
        self.tree.setMinimumHeight(170)
        self.tree.setItemDelegate(Wrapped(self.tree))
        self.tree.setWordWrap(True)
        self.tree.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.tree.setMouseTracking(True)
        self.tree.viewport().installEventFilter(self)
        self.tree.itemEntered.connect(lambda item: self._point(item, bring=False))
        self.tree.currentItemChanged.connect(lambda item, _: self._point(item, bring=True))
        self.tree.itemClicked.connect(self._on_item)
        self.tree.itemActivated.connect(self._on_item)
        self.tree.itemExpanded.connect(lambda _: self.shown_changed.emit())
        self.tree.itemCollapsed.connect(lambda _: self.shown_changed.emit())
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        for widget in (self.switch, self._hint, self.tree):
            column.addWidget(widget)

    def shown(self) -> Sequence[int]:
        """Numbers of the blobs that the photo is to show: those under an open reason."""
        if not self.switch.isChecked():
            return ()
        numbers = []
        for group in self._groups():
            for at in range(group.childCount() if group.isExpanded() else 0):
                item = group.child(at)
                number = item.data(0, _NUMBER) if item is not None else None
                if isinstance(number, int) and number not in self._taken:
                    numbers.append(number)
        return numbers

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802 - Qt's name
        if event.type() == QEvent.Type.Leave:
            self._point(None, bring=False)
        return super().eventFilter(watched, event)

    def _point(self, item: QTreeWidgetItem | None, *, bring: bool) -> None:
        number = None if item is None else item.data(0, _NUMBER)
        known = isinstance(number, int) and number not in self._taken
        self.pointed.emit(f"left {number}" if known else "", bring and self.tree.hasFocus())
        if bring and self.tree.hasFocus():
            reveal(self.tree)

    def refresh(self) -> None:
        """Show what the last look left out within the examined area."""
        inspection = self._session.inspection
        blobs = inspection.left_out if inspection else ()
        area = inspection.state.area_px if inspection else None
        if (blobs, area) != self._of:
            if not self._of or self._of[0] is not blobs:
                self._scores, self._more = {}, {}
                self._score(blobs)
            self._of = (blobs, area)
            self._fill(afresh=True)
        taken = inspection.taken_back() if inspection else {}
        if taken != self._taken:
            self._taken = taken
            for group in self._groups():
                self._say_taken(group)
            self.shown_changed.emit()
        self.switch.setEnabled(bool(blobs))
        self._show_tree()

    def _tell(self) -> None:
        self._show_tree()
        self.shown_changed.emit()

    def _show_tree(self) -> None:
        shown = self.switch.isChecked() and self.switch.isEnabled()
        self.tree.setVisible(shown)
        self._hint.setVisible(shown)

    def _fill(self, *, afresh: bool = False) -> None:
        inspection = self._session.inspection
        blobs = inspection.left_out if inspection else ()
        area = inspection.state.area_px if inspection else None
        inside = [n for n, blob in enumerate(blobs) if area is None or _within(blob, area)]
        away = len(blobs) - len(inside)
        beyond = tr(", {0} more outside the examined area", away) if away else ""
        self.switch.setText(tr("Show the {0} left out{1}", len(inside), beyond))
        inside.sort(key=lambda n: -self._scores.get(n, 0.0))
        groups: dict[str, list[int]] = {}
        for number in inside:
            groups.setdefault(_kind_of(blobs[number].reason), []).append(number)
        open_ones = set() if afresh else self._open()
        self.tree.clear()
        for at, (reason, numbers) in enumerate(groups.items()):
            self._add_group(reason, numbers, blobs)
            group = self.tree.topLevelItem(at)
            if group is not None:
                group.setExpanded(reason in open_ones if open_ones else at == 0)

    def _open(self) -> set[str]:
        return {str(g.data(0, _NUMBER)) for g in self._groups() if g.isExpanded()}

    def _groups(self) -> list[QTreeWidgetItem]:
        made = [self.tree.topLevelItem(n) for n in range(self.tree.topLevelItemCount())]
        return [group for group in made if group is not None]

    def _add_group(self, reason: str, numbers: list[int], blobs: "Sequence[LeftOut]") -> None:
        group = QTreeWidgetItem([f"{len(numbers)} ×  {from_core(reason)}"])
        group.setData(0, _NUMBER, reason)
        group.setToolTip(0, from_core(reason))
        few = self._more.get(reason, _AT_ONCE)
        for number in numbers[:few]:
            blob = blobs[number]
            said = from_core(blob.reason)
            item = QTreeWidgetItem()
            item.setData(0, _NUMBER, number)
            item.setData(0, _SAID, f"{said}, {self._size(blob)}")
            item.setToolTip(0, said)
            group.addChild(item)
        self._say_taken(group)
        if len(numbers) > few:
            group.addChild(
                QTreeWidgetItem([tr("{0} more, less like dye …", len(numbers) - few)])
            )
        self.tree.addTopLevelItem(group)

    def _say_taken(self, group: QTreeWidgetItem) -> None:
        """Tell of each blob of a reason whether it was taken back, under which letter."""
        for at in range(group.childCount()):
            item = group.child(at)
            if item is not None and (said := item.data(0, _SAID)):
                letter = self._taken.get(item.data(0, _NUMBER))
                item.setText(0, tr("{0}: taken as {1}", said, letter) if letter else said)

    def _size(self, blob: "LeftOut") -> str:
        inspection = self._session.inspection
        surface = inspection.surface if inspection else None
        if inspection and inspection.is_whole_area(blob):
            return tr("the whole area: mark out a smaller one, or trace by hand")
        box = blob.outline_px.max(axis=0) - blob.outline_px.min(axis=0)
        across = float(box.max())
        if surface is None:
            return tr("{0:.0f} px", across)
        return tr("about {0:.1f} mm", across * surface.mm_per_px(blob.outline_px.mean(axis=0)))

    def _on_item(self, item: QTreeWidgetItem) -> None:
        number, group = item.data(0, _NUMBER), item.parent()
        if isinstance(number, int):
            self._hands.take_left_out(number)
        elif group is not None:
            reason = str(group.data(0, _NUMBER))
            at, row = self.tree.indexOfTopLevelItem(group), group.indexOfChild(item)
            self._more[reason] = 2 * self._more.get(reason, _AT_ONCE)
            self._fill()
            self.shown_changed.emit()
            again = self.tree.topLevelItem(at)
            first = again.child(row) if again is not None else None
            if first is not None:  # the arrow keys go on from where they were
                self.tree.setCurrentItem(first)

    def _score(self, blobs: "Sequence[LeftOut]") -> None:
        inspection = self._session.inspection
        photo = inspection.photo if inspection else None
        if photo is None or len(blobs) < 2:
            return

        def work(token: Token) -> dict[int, float]:
            made = {}
            for number, blob in enumerate(blobs):
                token.check()
                made[number] = dye_likeness(photo.rgb, blob.outline_px)
            return made

        def done(scores: dict[int, float]) -> None:
            if self._of and self._of[0] is blobs:
                self._scores = scores
                self._fill(afresh=True)
                self.shown_changed.emit()

        self._session.workers.start("", work, done, key="left out")


def dye_likeness(rgb: Any, outline_px: Any) -> float:  # noqa: ANN401 - ndarrays
    """How much redder a blob is than what surrounds it: a difference of log ratios.

    ``rgb`` has shape (H, W, 3), ``outline_px`` shape (N, 2), px; a glance, no measurement.
    """
    import cv2
    import numpy as np

    from ptmark.dye.contrast import redness

    low, high = outline_px.min(axis=0), outline_px.max(axis=0)
    margin = 4 + 0.3 * (high - low)
    left, top = np.maximum(low - margin, 0).astype(int).tolist()
    right, bottom = np.ceil(high + margin + 1).astype(int).tolist()
    step = max(1, int(max(high - low)) // _SIDE)
    crop = np.ascontiguousarray(rgb[top:bottom:step, left:right:step])
    if min(crop.shape[:2]) < 3:
        return 0.0
    red, inside = redness(crop), np.zeros(crop.shape[:2], np.uint8)
    cv2.fillPoly(inside, [np.round((outline_px - (left, top)) / step).astype(np.int32)], 1)
    around = cv2.dilate(inside, np.ones((5, 5), np.uint8)) == 0
    if not inside.any() or not around.any():
        return 0.0
    return float(np.median(red[inside > 0]) - np.median(red[around]))


def _within(blob: "LeftOut", area: tuple[tuple[float, float], ...]) -> bool:
    x, y = blob.outline_px.mean(axis=0).tolist()
    shape = QPolygonF([QPointF(*corner) for corner in area])
    return shape.containsPoint(QPointF(x, y), Qt.FillRule.OddEvenFill)


def _kind_of(reason: str) -> str:
    """The reason without what differs from blob to blob, such as a share."""
    head, _, tail = reason.partition(":")
    return head if any(letter.isdigit() for letter in tail) else reason
