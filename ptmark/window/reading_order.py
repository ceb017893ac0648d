"""The order in which Tab goes through a window: that of its layout, whenever a piece was made.

Qt's own order is that in which the pieces came into the window, so a page made later, or a
notice with a button, would stand behind all that was there before.
"""

from collections.abc import Iterator

from PySide6.QtCore import QRect, Qt
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QLayout,
    QRadioButton,
    QScrollArea,
    QSplitter,
    QStackedWidget,
    QWidget,
)

__all__ = ["in_order", "in_reading_order", "reveal", "stands", "step_focus"]

_AIR = 12  # px above and below what is scrolled to
_WHOLE = (QAbstractItemView, QComboBox)  # what they are made of is no place of its own


def in_reading_order(widget: QWidget) -> Iterator[QWidget]:
    """What Tab leads to in a widget, as it is laid out.

    Of radio buttons that exclude each other the chosen one stands for all: arrow keys go on.
    """
    return filter(stands, in_order(widget))


def in_order(widget: QWidget) -> Iterator[QWidget]:
    """A widget and all that shows in it, as it is laid out."""
    if widget.isHidden():
        return
    yield widget
    if not isinstance(widget, _WHOLE):
        for child in _children(widget):
            yield from in_order(child)


def step_focus(window: QWidget, *, forward: bool) -> bool:
    """Give the focus to the next piece or the one before; False where it is at none of them."""
    places, now = list(in_reading_order(window)), window.focusWidget()
    if now not in places:
        return False
    at = places.index(now) + (1 if forward else -1)
    reason = Qt.FocusReason
    there = places[at % len(places)]
    there.setFocus(reason.TabFocusReason if forward else reason.BacktabFocusReason)
    reveal(there)  # Qt scrolls only where the page held the focus already
    return True


def reveal(widget: QWidget) -> None:
    """Scroll the pages that hold a widget until it is in sight; of a list its current row."""
    box = widget.rect()
    if isinstance(widget, QAbstractItemView) and widget.currentIndex().isValid():
        widget.scrollTo(widget.currentIndex())
        row = widget.visualRect(widget.currentIndex())
        box = QRect(widget.viewport().mapTo(widget, row.topLeft()), row.size())
    page = widget.parentWidget()
    while page is not None:
        inner = page.widget() if isinstance(page, QScrollArea) else None
        if isinstance(page, QScrollArea) and inner is not None:
            middle = widget.mapTo(inner, box.center())
            page.ensureVisible(middle.x(), middle.y(), 0, box.height() // 2 + _AIR)
        page = page.parentWidget()


def stands(widget: QWidget) -> bool:
    """Whether Tab leads to it; a piece with a proxy hands the focus on."""
    takes = bool(widget.focusPolicy() & Qt.FocusPolicy.TabFocus)
    if not widget.isEnabled() or not takes or _there(widget.focusProxy()):
        return False
    if not isinstance(widget, QRadioButton) or widget.isChecked():
        return True
    group = widget.group()
    return not _there(group) or not _there(group.checkedButton())


def _there(one: object) -> bool:
    """Whether Qt gave anything; its stubs do not know that it may not."""
    return one is not None


def _children(widget: QWidget) -> list[QWidget]:
    """Widgets in a widget, those in its layout first."""
    there: list[QWidget | None] = []
    if isinstance(widget, QScrollArea):
        there = [widget.widget()]
    elif isinstance(widget, QStackedWidget):
        there = [widget.currentWidget()]
    elif isinstance(widget, QSplitter):
        there = [widget.widget(at) for at in range(widget.count())]
    elif (layout := widget.layout()) is not None:
        there = list(_laid(layout))
    told = [one for one in there if one is not None]
    if isinstance(widget, QScrollArea | QStackedWidget | QSplitter):
        return told
    beside = widget.findChildren(QWidget, options=Qt.FindChildOption.FindDirectChildrenOnly)
    return told + [one for one in beside if one not in told and not one.isWindow()]


def _laid(layout: QLayout) -> Iterator[QWidget | None]:
    for at in range(layout.count()):
        item = layout.itemAt(at)
        if item is not None and (inner := item.layout()) is not None:
            yield from _laid(inner)
        elif item is not None:
            yield item.widget()
