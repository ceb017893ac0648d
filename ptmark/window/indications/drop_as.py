"""Drop what is no dye with its reason in one click: what has the colour of dye and is none."""

from functools import partial

from PySide6.QtWidgets import QGridLayout, QWidget

from ptmark.window.bits import quiet
from ptmark.window.edges import Push
from ptmark.window.indications.hands import Hands
from ptmark.window.words import tr

__all__ = ["REASONS", "DropAs"]

# As a person would type them, in the language of the window; each goes into the record.
REASONS = (tr("Red pen"), tr("Thread"), tr("Dye that ran"), tr("Stain or print"))


class DropAs(QWidget):
    """A button for each reason; one click drops what is selected and goes on."""

    def __init__(self, hands: Hands) -> None:
        super().__init__()
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(6)
        grid.addWidget(quiet(tr("Drop it with its reason:")), 0, 0, 1, 2)
        self.buttons = {}
        for at, reason in enumerate(REASONS):
            button = Push(reason)
            button.setAccessibleName(tr("Drop it as: {0}", reason))
            button.setMinimumHeight(28)
            button.clicked.connect(partial(hands.drop_as, reason))
            grid.addWidget(button, 1 + at // 2, at % 2)
            self.buttons[reason] = button
