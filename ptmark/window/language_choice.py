"""Which language the window speaks, chosen where work begins; it holds from the next start."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from ptmark.window import words
from ptmark.window.bits import Choice, quiet
from ptmark.window.words import LANGUAGES, tr

__all__ = ["LanguageChoice"]


class LanguageChoice(QWidget):
    """A list of languages, each by its own name."""

    def __init__(self) -> None:
        super().__init__()
        self.choice = Choice(tr("Language of the window"))
        for code, name in LANGUAGES.items():
            self.choice.addItem(name, code)
        self.choice.setCurrentIndex(self.choice.findData(words.language))
        self.choice.activated.connect(lambda _: self._choose())
        self.said = quiet(tr("Reports and records stay in English."))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.choice)
        row.addWidget(self.said, 1)

    def _choose(self) -> None:
        try:
            words.choose(self.choice.currentData())
        except OSError as exc:
            self.said.setText(tr("Not kept: {0}", exc))
            return
        self.said.setText(tr("{0} from the next start on.", self.choice.currentText()))
