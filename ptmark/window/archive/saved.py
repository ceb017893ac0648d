"""Saved searches: run by choosing one, kept and deleted beside the filters."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from ptmark.window.archive.door import ArchiveDoor
from ptmark.window.bits import Choice, CommitEdit, key_button
from ptmark.window.indications.kinds import kind_shown
from ptmark.window.words import format_length, tr

if TYPE_CHECKING:
    from ptmark.archive import Archive, Query

__all__ = ["SavedSearches", "asked_in_words"]


class SavedSearches(QWidget):
    """A name to keep the search under; ``choice`` stands beside the search line.

    Signals: ``run(object)`` a query that was chosen; ``wanted()`` the search of now is to be
    kept: answer with `keep`; ``failed(object)`` an exception; ``told(str)`` what was done.
    """

    run = Signal(object)
    wanted = Signal()
    failed = Signal(object)
    told = Signal(str)

    def __init__(self, door: ArchiveDoor) -> None:
        super().__init__()
        self._door = door
        self._known: dict[str, Query] = {}
        self._chosen = ""  # the one that a new name would be for
        self.choice = Choice(tr("Saved searches"))
        self.choice.setMinimumHeight(34)
        self.choice.setMaximumWidth(230)
        self.choice.activated.connect(self._on_chosen)
        self.name = CommitEdit()
        self.name.setPlaceholderText(tr("name of this search"))
        self.name.setAccessibleName(tr("Name to save this search under"))
        self.name.setMaxLength(80)
        self.name.setFixedWidth(260)
        self.name.textChanged.connect(lambda _: self._enable())
        self.name.returnPressed.connect(self._want)
        self.save_button = key_button(tr("Save this search"), "", self._want)
        self.rename_button = key_button(tr("Rename it"), "", self._rename)
        self.drop_button = key_button(tr("Delete it"), "", self._drop)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 6, 0, 0)
        for widget in (self.name, self.save_button, self.rename_button, self.drop_button):
            row.addWidget(widget)
        row.addStretch(1)
        self._show({})

    def read(self) -> None:
        """Read again what is saved."""

        def work(archive: "Archive", _token: object) -> "dict[str, Query]":
            from ptmark.archive import saved_searches

            return saved_searches(archive)

        self._door.ask("", work, self._show, failed=self.failed.emit, key="archive saved")

    def keep(self, query: "Query") -> None:
        """Keep a query under the name that was typed; one of that name is replaced."""
        name = self.name.text().strip()

        def work(archive: "Archive", _token: object) -> "dict[str, Query]":
            from ptmark.archive import save_search, saved_searches

            save_search(archive, name, query)
            return saved_searches(archive)

        self._change(work, tr("The search is saved as “{0}”.", name))

    def follow(self, asked: "Query") -> None:
        """What is asked now; the list names a saved search only while that is it."""
        if self._known.get(str(self.choice.currentData() or "")) != asked:
            self.choice.setCurrentIndex(0)

    def _rename(self) -> None:
        before, name = self._chosen, self.name.text().strip()
        query = self._known[before]

        def work(archive: "Archive", _token: object) -> "dict[str, Query]":
            from ptmark.archive import drop_search, save_search, saved_searches

            save_search(archive, name, query)
            drop_search(archive, before)
            return saved_searches(archive)

        self._change(work, tr("The saved search “{0}” is “{1}” now.", before, name))

    def _drop(self) -> None:
        name = self.name.text().strip()

        def work(archive: "Archive", _token: object) -> "dict[str, Query]":
            from ptmark.archive import drop_search, saved_searches

            drop_search(archive, name)
            return saved_searches(archive)

        self._change(work, tr("The saved search “{0}” is deleted; no record is.", name))

    def _change(self, work: Any, said: str) -> None:  # noqa: ANN401 - as the door takes it
        def done(known: "dict[str, Query]") -> None:
            self._chosen = self.name.text().strip()
            self._show(known)
            self.name.setFocus()  # the button that had it may be greyed out now
            self.told.emit(said)

        self._door.ask("", work, done, failed=self.failed.emit, key="archive saved")

    def _want(self) -> None:
        if self.name.text().strip():
            self.wanted.emit()

    def _show(self, known: "dict[str, Query]") -> None:
        self._known = known
        self.choice.clear()
        self.choice.addItem(tr("Saved searches"), "")
        for name, query in known.items():
            self.choice.addItem(name, name)
            row = self.choice.count() - 1
            self.choice.setItemData(
                row, asked_in_words(query), 3
            )  # Qt.ItemDataRole.ToolTipRole
        self.choice.setEnabled(bool(known))
        self.choice.setToolTip(
            "" if known else tr("None yet: “Filters” has where to save one.")
        )
        self._enable()

    def _on_chosen(self, row: int) -> None:
        name = str(self.choice.itemData(row) or "")
        if name in self._known:
            self._chosen = name
            self.name.setText(name)
            self.run.emit(self._known[name])

    def _enable(self) -> None:
        name = self.name.text().strip()
        self.save_button.setEnabled(bool(name))
        self.drop_button.setEnabled(name in self._known)
        new = bool(name) and name not in self._known
        self.rename_button.setEnabled(new and self._chosen in self._known)


def asked_in_words(query: "Query", unit: str = "mm") -> str:
    """What a query asks, as one reads it."""
    shown = (
        (tr("part number {0}"), query.part),
        (tr("serial {0}"), query.serial),
        (tr("examined from {0}"), query.since),
        (tr("examined up to {0}"), query.until),
        (tr("verdict {0}"), tr(query.verdict) if query.verdict else ""),
        (tr("disposition {0}"), tr(query.disposition) if query.disposition else ""),
        (tr("examiner {0}"), query.examiner),
        (tr("procedure {0}"), query.procedure),
        (tr("criteria {0}"), query.criteria),
        (tr("kind {0}"), kind_shown(query.kind)),
        (tr("shape {0}"), tr(query.shape) if query.shape else ""),
        (tr("length from {0}"), _length(query.shortest_mm, unit)),
        (tr("length up to {0}"), _length(query.longest_mm, unit)),
        (tr("words {0}"), query.words),
        (tr("photo {0}"), query.photo),
        (tr("record {0}"), query.record_id),
    )
    return ", ".join(text.format(said) for text, said in shown if said) or tr("every record")


def _length(mm: float | None, unit: str) -> str:
    return "" if mm is None else format_length(mm, unit)
