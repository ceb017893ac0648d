"""What a screen reader says by itself, though nobody moved to it."""

from PySide6.QtCore import QObject
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent

__all__ = ["say_aloud"]


def say_aloud(by: QObject, text: str) -> None:
    """Have a text spoken once what is being read has ended; nothing where nobody listens."""
    if text and QAccessible.isActive():
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(by, text))
