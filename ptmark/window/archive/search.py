"""The search line and the filters below it, and what they ask of the archive."""

import re
from calendar import monthrange
from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QSignalBlocker, QTimer, Signal
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLabel, QVBoxLayout, QWidget

from ptmark.errors import UsageError
from ptmark.units import parse_length
from ptmark.window.bits import Choice, CommitEdit, key_button
from ptmark.window.indications.kinds import kind_kept, kind_shown
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.archive import Query

__all__ = ["SearchBar", "as_words", "whole_day"]

_TEXTS = (
    ("serial", tr("Serial"), "S-1*"),
    ("since", tr("Examined from"), tr("year-month-day")),
    ("until", tr("to"), tr("year-month-day")),
    ("examiner", tr("Examiner"), tr("name, or its beginning with *")),
    ("procedure", tr("Procedure"), "PT-*"),
    ("criteria", tr("Criteria"), tr("name, or its beginning with *")),
    ("kind", tr("Kind"), kind_shown("crack")),
    ("shortest_mm", tr("Length from"), tr("2 mm")),
    ("longest_mm", tr("to"), tr("5 mm")),
)
_CHOICES = (
    ("verdict", tr("Verdict"), ("acceptable", "rejectable", "undecided")),
    ("disposition", tr("Disposition"), ("accept", "reject", "rework and retest", "refer")),
    ("shape", tr("Shape"), ("linear", "rounded")),
)
_ACROSS = 6  # fields in a row
_DAY = re.compile(r"(\d{4})(?:-(\d\d))?(?:-(\d\d))?")


class SearchBar(QWidget):
    """Asks while one types.

    Signals: ``asked()`` when line or filters have changed.
    """

    asked = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.line = CommitEdit()
        self.line.setPlaceholderText(
            tr("Part number, as far as you know it (* and ? for the rest), or words of records")
        )
        self.line.setAccessibleName(tr("Search the archive"))
        self.line.setMinimumHeight(34)
        self._pause = QTimer(self, singleShot=True, interval=120)
        self._pause.timeout.connect(self.asked)
        self.line.textChanged.connect(lambda _: self._pause.start())
        self.filters_button = key_button(
            tr("Filters"), "Alt+F", self._turn_filters, window=self
        )
        self.clear_button = key_button(tr("Clear all"), "", self.clear)
        self.row = QHBoxLayout()
        self.row.addWidget(self.line, 1)
        self.row.addWidget(self.filters_button)
        self.row.addWidget(self.clear_button)
        self.texts: dict[str, CommitEdit] = {}
        self.choices: dict[str, Choice] = {}
        self.filters = QWidget()
        self._below = QVBoxLayout(self.filters)
        self._below.setContentsMargins(0, 0, 0, 0)
        self._lay_filters()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addLayout(self.row)
        column.addWidget(self.filters)
        self.filters.hide()

    def _lay_filters(self) -> None:
        grid = QGridLayout()
        self._below.addLayout(grid)
        widgets: list[tuple[str, QWidget]] = []
        for name, label, hint in _TEXTS:
            edit = CommitEdit()
            edit.setPlaceholderText(hint)
            said = {"until": tr("Examined up to"), "longest_mm": tr("Length up to")}.get(
                name, label
            )
            edit.setAccessibleName(tr("Filter: {0}", said))
            edit.committed.connect(lambda _: self.asked.emit())
            self.texts[name] = edit
            widgets.append((label, edit))
        for name, label, values in _CHOICES:
            choice = Choice(tr("Filter: {0}", label))
            choice.addItem(tr("any"), "")
            for value in values:
                choice.addItem(tr(value), value)
            choice.activated.connect(lambda _: self.asked.emit())
            self.choices[name] = choice
            widgets.append((label, choice))
        for number, (label, widget) in enumerate(widgets):
            row, column = divmod(number, _ACROSS)
            text = QLabel(label)
            text.setBuddy(widget)
            grid.addWidget(text, 2 * row, column)
            grid.addWidget(widget, 2 * row + 1, column)

    def put_under_filters(self, widget: QWidget) -> None:
        """Put something below the filters, shown and hidden with them."""
        self._below.addWidget(widget)

    def _turn_filters(self) -> None:
        shown = self.filters.isHidden()
        self.filters.setVisible(shown)
        if shown:
            self.texts["serial"].setFocus()
        else:
            self.line.setFocus()

    # -- what is asked ------------------------------------------------------------------------
    @property
    def asks_nothing(self) -> bool:
        """Whether everything is left open."""
        return not (self.line.text().strip() or self.filtered)

    @property
    def filtered(self) -> bool:
        """Whether a filter is set, shown or not."""
        texts = any(edit.text().strip() for edit in self.texts.values())
        return texts or any(choice.currentIndex() > 0 for choice in self.choices.values())

    @property
    def whole(self) -> bool:
        """Whether the line is a whole part number, in quotation marks."""
        line = self.line.text().strip()
        return len(line) > 2 and line[0] == line[-1] == '"'

    def query(self, unit: str) -> "Query":
        """What is asked, the line as the beginning of a part number.

        Raises
        ------
        UsageError
            If a date or a length cannot be read; it names the field.
        """
        from ptmark.archive import Query

        texts = {name: edit.text().strip() for name, edit in self.texts.items()}
        asked: dict[str, str | float | None] = {
            name: text for name, text in texts.items() if not name.endswith("_mm")
        }
        asked["kind"] = kind_kept(texts["kind"])
        asked["since"] = whole_day(texts["since"], tr("Examined from"), last=False)
        asked["until"] = whole_day(texts["until"], tr("Examined up to"), last=True)
        for name, label in (
            ("shortest_mm", tr("Length from")),
            ("longest_mm", tr("Length up to")),
        ):
            given = texts[name]
            asked[name] = parse_length(given, where=label, default_unit=unit) if given else None
        asked.update({name: str(box.currentData()) for name, box in self.choices.items()})
        line = self.line.text().strip()
        if self.whole:
            line = line[1:-1]
        elif line and not set(line) & {"*", "?"}:
            line += "*"
        return Query(part=line, **asked)  # type: ignore[arg-type]

    def show_query(self, query: "Query") -> None:
        """Show a saved search as if it had been typed."""
        with QSignalBlocker(self.line):
            self.line.setText(_as_line(query.part) or query.words)
        for name, edit in self.texts.items():
            value = getattr(query, name)
            shown = tr("{0:g} mm", value) if isinstance(value, float | int) else value or ""
            edit.show_text(kind_shown(shown) if name == "kind" else shown)
        for name, choice in self.choices.items():
            choice.setCurrentIndex(max(choice.findData(getattr(query, name)), 0))
        self.filters.setVisible(self.filtered or self.filters.isVisible())
        self.asked.emit()

    def clear(self) -> None:
        """Leave everything open."""
        from ptmark.archive import Query

        self.show_query(Query())
        self.line.setFocus()


def _as_line(part: str) -> str:
    """A pattern of part numbers as one types it.

    Examples
    --------
    >>> _as_line("P-1*"), _as_line("P-1"), _as_line("P-*7*")
    ('P-1', '"P-1"', 'P-*7*')
    """
    begun = part.removesuffix("*")
    if set(begun) & {"*", "?"} or not begun:
        return part
    return begun if begun != part else f'"{part}"'


def as_words(query: "Query") -> "Query":
    """The same query with its line taken as words of the record, the last one begun."""
    line = query.part.strip()
    return replace(query, part="", words=line if line.endswith("*") else f"{line}*")


def whole_day(said: str, where: str, *, last: bool) -> str:
    """A day from a year, a month or a day: the first one of it, or the last.

    Examples
    --------
    >>> whole_day("2024-02", "to", last=True), whole_day("2024", "from", last=False)
    ('2024-02-29', '2024-01-01')
    """
    if not said:
        return ""
    found = _DAY.fullmatch(said)
    if found is not None:
        year, month, day = found.groups()
        number = int(month or (12 if last else 1))
        if int(year) >= 1 and 1 <= number <= 12:
            most = monthrange(int(year), number)[1]
            of_month = int(day) if day else most if last else 1
            if 1 <= of_month <= most:
                return f"{year}-{number:02}-{of_month:02}"
    raise UsageError(tr("'{0}' is no day", said), where=where, mend=tr("give it as 2026-03-31"))
