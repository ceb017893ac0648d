"""What was found, handed on: as a table, as JSON, or as bundles with the photos."""

import json
from collections.abc import Iterable
from dataclasses import astuple
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from ptmark.window import dialogs
from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.bits import key_button
from ptmark.window.edges import Tick
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.archive import Archive, Exported, Hit, Query

__all__ = ["HitsExport"]


_ALL = tr("All records found, as a table (CSV) or as JSON")


class HitsExport(QWidget):
    """Buttons for it; it exports what is selected, or all that fits the search, shown or not.

    Signals: ``told(str)`` what was written; ``failed(object)`` an exception.
    """

    told = Signal(str)
    failed = Signal(object)

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self.query: Query | None = None
        self._chosen: list[Hit] = []  # more than one; else all that fits is exported
        self.list_button = key_button(
            tr("Save the list …"),
            "",
            self.save_list,
            tip=_ALL,
        )
        self.bundles_button = key_button(
            tr("Save bundles …"),
            "",
            self.save_bundles,
            tip=tr("One ZIP for each record found, with its photos, schema and checksums"),
        )
        self.without_place = Tick(tr("without the place in photos"))
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
        self.choose([])
        for widget in (self.list_button, self.bundles_button, self.without_place):
            widget.setEnabled(query is not None)

    def choose(self, hits: "list[Hit]") -> None:
        """Take what is selected; fewer than two select nothing, as one row always is."""
        self._chosen = hits if len(hits) > 1 else []
        number = len(self._chosen)
        self.list_button.say(
            tr("Save {0} as a list …", number) if number else tr("Save the list …"),
            tr("The records selected, as a table (CSV) or as JSON") if number else _ALL,
        )
        self.bundles_button.say(
            tr("Save {0} bundles …", number) if number else tr("Save bundles …")
        )

    def save_list(self) -> None:
        """Ask where to, then write every hit as CSV or JSON by the name's ending."""
        query, chosen = self.query, self._chosen
        kinds = f"{tr('Table')} (*.csv);;JSON (*.json)"
        path = dialogs.ask_where_to_save(self, Path.home() / "records.csv", kinds)
        if path is None or query is None:
            return
        if path.suffix.lower() not in {".csv", ".json"}:
            path = path.with_name(f"{path.name}.csv")

        def work(archive: "Archive", token: Token) -> int:
            from ptmark.archive import find_all

            return _write_list(chosen or find_all(archive, query), path, token)

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
        query, chosen = self.query, self._chosen
        folder = dialogs.ask_for_folder(self, tr("Folder for the bundles"), Path.home())
        if folder is None or query is None:
            return
        leave_out = self.without_place.isChecked()

        def work(archive: "Archive", token: Token) -> "Exported":
            from ptmark.archive import Exported, Query, export

            made = Exported(0, 0, 0)
            for one in [Query(record_id=hit.record_id) for hit in chosen] or [query]:
                token.check()
                more = export(archive, one, folder, leave_out_location=leave_out)
                made = Exported(*map(sum, zip(astuple(made), astuple(more), strict=True)))
            return made

        def done(made: "Exported") -> None:
            said = tr(
                "{0} records with {1} photos are in {2}.", made.records, made.photos, folder
            )
            if made.deleted:
                said += " " + tr("A rule deleted {0} more meanwhile.", made.deleted)
            if leave_out:
                said += " " + tr(
                    "Copies without their place: {0}; the originals are untouched.",
                    made.places_left_out,
                )
            self.told.emit(said)

        self._door.ask(
            tr("Writing bundles"), work, done, failed=self.failed.emit, key="archive bundles"
        )


def _write_list(found: "Iterable[Hit]", path: Path, token: Token) -> int:
    from ptmark.archive import found_csv
    from ptmark.report.table import save

    hits = []
    for hit in found:
        token.check()
        hits.append(hit)
    if path.suffix.lower() == ".json":
        rows = [hit.to_json() for hit in hits]
        text = json.dumps(rows, ensure_ascii=False, indent=1) + "\n"
    else:
        text = found_csv(hits)
    save(path, text.encode())
    return len(hits)
