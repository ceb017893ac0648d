"""Another part of the same number: its number and the next serial by one key, as an offer."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from ptmark.window.bits import key_button
from ptmark.window.last_of_part import LastOfPart
from ptmark.window.words import tr

__all__ = ["PartAgain"]


class PartAgain(QWidget):
    """Shows only while there is a part before and none here.

    Signals: ``taken(str)`` with what to say of it, ``serial_asked()`` where the serial number
    is left to the person.
    """

    taken = Signal(str)
    serial_asked = Signal()

    def __init__(self, last: LastOfPart, window: QWidget | None = None) -> None:
        super().__init__()
        self._last = last
        tip = tr("What the drawing and the procedure say of such parts comes with it, marked")
        self.again_button = key_button(
            tr("Same part number, next serial"), "Ctrl+G", self._again, tip=tip, window=window
        )
        other = tr("Same part number, another serial")
        self.other_button = key_button(other, "", self._other, tip=tip)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.again_button)
        column.addWidget(self.other_button)
        last.changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """Show what is offered."""
        again = self._last.again
        self.setVisible(again is not None)
        self.again_button.setEnabled(again is not None)
        if again is not None:
            part, serial = again
            both = tr("{0} again, serial {1}", part, serial)
            self.again_button.say(both if serial else tr("{0} again", part))
            self.other_button.say(tr("{0} again, another serial", part))
            self.other_button.setVisible(bool(serial))

    def _again(self) -> None:
        again = self._last.again
        if again is None:
            return
        self._last.take_again(count_on=True)
        if again[1]:
            self.taken.emit(tr("{0}, serial {1}: read it on the part.", *again))
        else:
            self.serial_asked.emit()

    def _other(self) -> None:
        self._last.take_again(count_on=False)
        self.serial_asked.emit()
