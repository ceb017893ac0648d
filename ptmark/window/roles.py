"""What a piece is to a screen reader, where Qt would call it a filler or nothing at all."""

from functools import cache

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAccessibleWidget, QSplitter, QStackedWidget, QWidget
from shiboken6 import isValid

__all__ = ["Role", "Stack", "tell_handles", "tell_role"]

Role = QAccessible.Role
_ROLE = "told_role"  # the property that holds it
# Qt deletes each with its widget, and would do it twice where Python had let go of it before.
_held: list[QAccessibleWidget] = []


def tell_role(widget: QWidget, role: QAccessible.Role) -> None:
    """Give a widget its role; where the widget is made, so before anybody has asked for it."""
    _ask_here()
    widget.setProperty(_ROLE, role.value)


def tell_handles(split: QSplitter) -> None:
    """Say what the parts of a splitter are dragged apart by; Qt's own word is no role."""
    for at in range(1, split.count()):
        tell_role(split.handle(at), Role.Separator)


def _made(_class: str, of: QObject) -> QAccessibleWidget | None:
    """What a reader is given of an object that was told its role; None leaves it to Qt."""
    role = of.property(_ROLE)
    if role is None or not isinstance(of, QWidget):
        return None
    if len(_held) % 64 == 63:
        _held[:] = [one for one in _held if isValid(one)]
    _held.append(QAccessibleWidget(of, Role(role)))
    return _held[-1]


@cache
def _ask_here() -> None:
    """Have Qt ask here before its own, which is there once there is an application."""
    QAccessible.installFactory(_made)


class Stack(QStackedWidget):
    """Pages of which one shows; no layers are spoken of each time that the focus crosses."""

    def __init__(self) -> None:
        super().__init__()
        tell_role(self, Role.Client)
