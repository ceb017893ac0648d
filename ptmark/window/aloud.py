"""What a screen reader says by itself, though nobody moved to it.

Readers over AT-SPI before 2023 know no announcements and are silent at them; a notification
that appears is spoken by these and by newer ones, so on such systems it is one.
"""

import sys

from PySide6.QtCore import QTimer
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QWidget

from ptmark.window.roles import Role, tell_role

__all__ = ["say_aloud"]

_KEPT_MS = 10_000  # a reader asks for the words some time after it was told of them
_OVER_BUS = sys.platform.startswith("linux")


def say_aloud(by: QWidget, text: str) -> None:
    """Have a text spoken once what is being read has ended; nothing where nobody listens."""
    if not text or not QAccessible.isActive():
        return
    if not _OVER_BUS:
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(by, text))
        return
    said = QWidget()  # one for each text, else the next would take its place
    tell_role(said, Role.Notification)
    said.setAccessibleName(text)
    said.setParent(by.window())
    said.resize(0, 0)
    said.show()
    QTimer.singleShot(_KEPT_MS, said, said.deleteLater)
