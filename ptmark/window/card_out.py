"""The scale card to print, where one is needed: on the first page and at the scale."""

from pathlib import Path

from PySide6.QtCore import QLocale
from PySide6.QtWidgets import QVBoxLayout, QWidget

from ptmark.window import dialogs
from ptmark.window.bits import Notice, key_button
from ptmark.window.saved_files import FileOut
from ptmark.window.words import tr
from ptmark.window.workers import Token, Workers

__all__ = ["CardOut", "paper_of"]


class CardOut(QWidget):
    """A button that asks where, and what became of it."""

    def __init__(self, workers: Workers) -> None:
        super().__init__()
        self._workers = workers
        self.button = key_button(
            tr("Save the scale card to print …"), "", self.save,
            tip=tr("A PDF of the card that is found in a photo by itself"),
        )  # fmt: skip
        self.says = Notice()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.button)
        column.addWidget(self.says)

    def save(self) -> None:
        """Write it where the person says."""
        kinds = tr("PDF (*.pdf)")
        asked = dialogs.ask_where_to_save(self, Path.home() / "scale-card.pdf", kinds)
        if asked is None:
            return
        path, paper = asked.with_suffix(".pdf"), paper_of(QLocale.system())

        def work(_token: Token) -> None:
            from ptmark.scale import write_card_pdf

            write_card_pdf(path, paper)

        def done(_: object) -> None:
            self.says.say(
                tr(
                    "Saved {0}. Print it at 100 %, not fitted to the page, and measure its "
                    "check length with callipers: that goes into the Scale step, once.",
                    path.name,
                ),
                "done",
            )
            self.says.offer(FileOut(path))
            self.says.bring()

        def failed(exc: Exception) -> None:
            self.says.offer()
            self.says.say_error(exc)

        self._workers.start(tr("Writing {0}", path.name), work, done, failed=failed, key="card")


def paper_of(locale: QLocale) -> str:
    """The paper that printers hold where this locale is used, in `write_card_pdf`'s words."""
    us = QLocale.MeasurementSystem.ImperialUSSystem
    return "Letter" if locale.measurementSystem() == us else "A4"
