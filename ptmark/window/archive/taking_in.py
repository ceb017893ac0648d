"""Bundles of another archive taken in: a button, and what came of it in words."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window import dialogs
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.bits import key_button
from ptmark.window.words import from_core, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Added, Archive

__all__ = ["BundlesIn"]

_SAID_WHOLE = 10  # with the reason; of further ones the names alone


class BundlesIn(QWidget):
    """Takes in every bundle of a folder; what is kept already stays as it is.

    Signals: ``told(str)`` what was taken in; ``failed(object)`` an exception.
    """

    told = Signal(str)
    failed = Signal(object)

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self.button = key_button(
            tr("Take bundles in …"),
            "",
            self.take,
            tip=tr("Records and photos of another archive, from the folder it saved them in"),
        )
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.button)

    def take(self) -> None:
        """Ask for the folder and take in what it holds."""
        folder = dialogs.ask_for_folder(self, tr("Folder of the bundles"), Path.home())
        if folder is None:
            return

        refused: list[PtmarkError] = []

        def work(archive: "Archive", _token: Token) -> "list[Added]":
            from ptmark.archive import take_bundles

            return take_bundles(archive, folder, refused)

        def done(added: "list[Added]") -> None:
            new = sum(one.state in {"new", "revised"} for one in added)
            said = tr("{0} records of {1} were taken in, with their photos.", new, len(added))
            if new < len(added):
                said += " " + tr("The others are kept already.")
            if otherwise := [one.record_id for one in added if one.placed_otherwise]:
                said += " " + tr(
                    "Placed otherwise on the part than here, which is kept: {0}.",
                    ", ".join(otherwise),
                )
            if refused:
                said += " " + tr("{0} bundles were refused:", len(refused))
                said += "".join(f"\n{from_core(one)}" for one in refused[:_SAID_WHOLE])
                said += "".join(f"\n{one.where}" for one in refused[_SAID_WHOLE:])
            self.told.emit(said)

        self._door.ask(
            tr("Taking bundles in"),
            work,
            done,
            failed=self.failed.emit,
            key="archive bundles",
        )
