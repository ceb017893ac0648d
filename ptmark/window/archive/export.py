"""What was found, handed on: as a table, as JSON, or as bundles with the photos."""

import json
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget

from ptmark.window import dialogs
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.bits import key_button
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Exported, Query

__all__ = ["HitsExport"]


class HitsExport(QWidget):
    """Buttons for it; it exports all that fits the search, not only what is shown so far.

    Signals: ``told(str)`` what was written; ``failed(object)`` an exception.
    """

    told = Signal(str)
    failed = Signal(object)

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self.query: Query | None = None
        self.list_button = key_button(
            tr("Save the list …"),
            "",
            self.save_list,
            tip=tr("All records found, as a table (CSV) or as JSON"),
        )
        self.bundles_button = key_button(
            tr("Save bundles …"),
            "",
            self.save_bundles,
            tip=tr("One ZIP for each record found, with its photos, schema and checksums"),
        )
        self.without_place = QCheckBox(tr("without the place in photos"))
        self.without_place.setToolTip(
            tr("The bundles then hold copies of the photos; the originals keep their place")
        )
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        for widget in (self.list_button, self.bundles_button, self.without_place):
            row.addWidget(widget)

    def offer(self, query: "Query | None") -> None:
        """Take what is to be exported; None where there is nothing."""
        self.query = query
        for widget in (self.list_button, self.bundles_button, self.without_place):
            widget.setEnabled(query is not None)

    def save_list(self) -> None:
        """Ask where to, then write every hit as CSV or JSON by the name's ending."""
        query = self.query
        kinds = f"{tr('Table')} (*.csv);;JSON (*.json)"
        path = dialogs.ask_where_to_save(self, Path.home() / "records.csv", kinds)
        if path is None or query is None:
            return
        if path.suffix.lower() not in {".csv", ".json"}:
            path = path.with_name(f"{path.name}.csv")

        def work(archive: "Archive", token: Token) -> int:
            return _write_list(archive, query, path, token)

        def done(number: int) -> None:
            self.told.emit(tr("{0} records are in {1}.", number, path))

        self._door.ask(
            tr("Writing {0}", path.name),
            work,
            done,
            failed=self.failed.emit,
            key="archive list",
        )

    def save_bundles(self) -> None:
        """Ask for a folder, then write a bundle for each hit into it."""
        query = self.query
        folder = dialogs.ask_for_folder(self, tr("Folder for the bundles"), Path.home())
        if folder is None or query is None:
            return
        leave_out = self.without_place.isChecked()

        def work(archive: "Archive", _token: Token) -> "Exported":
            from ptmark.archive import export

            return export(archive, query, folder, leave_out_location=leave_out)

        def done(made: "Exported") -> None:
            said = tr(
                "{0} records with {1} photos are in {2}.", made.records, made.photos, folder
            )
            if leave_out:
                said += " " + tr(
                    "Copies without their place: {0}; the originals are untouched.",
                    made.places_left_out,
                )
            self.told.emit(said)

        self._door.ask(
            tr("Writing bundles"), work, done, failed=self.failed.emit, key="archive bundles"
        )


def _write_list(archive: "Archive", query: "Query", path: Path, token: Token) -> int:
    from ptmark.archive import find_all, found_csv
    from ptmark.report.table import save

    hits = []
    for hit in find_all(archive, query):
        token.check()
        hits.append(hit)
    if path.suffix.lower() == ".json":
        rows = [hit.to_json() for hit in hits]
        text = json.dumps(rows, ensure_ascii=False, indent=1) + "\n"
    else:
        text = found_csv(hits)
    save(path, text.encode())
    return len(hits)
