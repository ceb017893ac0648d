"""The inspections found, for the table and the gallery alike; more come as one scrolls."""

from typing import TYPE_CHECKING, Any

from PySide6.QtCore import (
    QAbstractTableModel,
    QModelIndex,
    QObject,
    QPersistentModelIndex,
    Qt,
    QTimer,
    Signal,
)
from PySide6.QtGui import QGuiApplication

from ptmark.window.archive.before import told_hit
from ptmark.window.archive.pictures import Glance
from ptmark.window.cells import EMPTY
from ptmark.window.glyphs import glyph_icon
from ptmark.window.words import day, format_length, tr

if TYPE_CHECKING:
    from ptmark.archive import Hit, Page

__all__ = ["GLANCE", "HEADS", "HIT", "LONGEST", "HitModel", "Index", "length_text"]

HEADS = (
    tr("Part number"),
    tr("Serial"),
    tr("Examined on"),
    tr("Verdict"),
    tr("Disposition"),
    tr("Indications"),
    tr("Longest"),
    tr("Examiner"),
    tr("Procedure"),
    tr("Criteria"),
    tr("Record"),
)
HIT = Qt.ItemDataRole.UserRole
GLANCE = Qt.ItemDataRole.UserRole + 1
LONGEST = 6  # its column
_VERDICT, _COUNT = 3, 5
_NONE = QModelIndex()
Index = QModelIndex | QPersistentModelIndex


class HitModel(QAbstractTableModel):
    """Holds the hits read so far.

    Signals: ``more_asked(object)`` with where the next page begins; ``glances_asked(object)``
    with the hits whose picture and lengths are about to show; ``walked(int)`` the row that one
    went to from the page of another.
    """

    more_asked = Signal(object)
    glances_asked = Signal(object)
    walked = Signal(int)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.hits: list[Hit] = []
        self.unit = "mm"
        self._after: tuple[str, int] | None = None
        self._asked = False
        self._glances: dict[str, Glance | None] = {}  # None: asked for
        self._wanted: dict[str, Hit] = {}
        self._soon = QTimer(self, singleShot=True, interval=30)
        self._soon.timeout.connect(self._ask_glances)

    # -- what comes in ------------------------------------------------------------------------
    def begin(self, page: "Page") -> None:
        """Show the first page of another search."""
        self.beginResetModel()
        self.hits, self._after, self._asked = list(page.hits), page.after, False
        self._glances, self._wanted = {}, {}
        self.endResetModel()

    def add(self, page: "Page") -> None:
        """Show the page after those that are there."""
        self._asked, self._after = False, page.after
        if page.hits:
            first = len(self.hits)
            self.beginInsertRows(_NONE, first, first + len(page.hits) - 1)
            self.hits += page.hits
            self.endInsertRows()

    def show_glance(self, one: Glance) -> None:
        """Show picture and lengths of one hit."""
        self._glances[one.record_id] = one
        for row, hit in enumerate(self.hits):
            if hit.record_id == one.record_id:
                index = self.index(row, 0)
                self.dataChanged.emit(index, index)

    def want(self, row: int) -> None:
        """A hit is about to show: its picture is needed."""
        hit = self.hits[row]
        if hit.record_id not in self._glances:
            self._glances[hit.record_id] = None
            self._wanted[hit.record_id] = hit
            self._soon.start()

    def _ask_glances(self) -> None:
        wanted, self._wanted = list(self._wanted.values()), {}
        if wanted:
            self.glances_asked.emit(wanted)

    @property
    def has_more(self) -> bool:
        """Whether the list goes on behind what was read."""
        return self._after is not None

    # -- Qt -----------------------------------------------------------------------------------
    def canFetchMore(self, parent: Index = _NONE) -> bool:  # noqa: N802 - Qt's name
        return not parent.isValid() and self._after is not None and not self._asked

    def fetchMore(self, parent: Index = _NONE) -> None:  # noqa: N802 - Qt's name
        if self.canFetchMore(parent):
            self._asked = True
            self.more_asked.emit(self._after)

    def rowCount(self, parent: Index = _NONE) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(self.hits)

    def columnCount(self, parent: Index = _NONE) -> int:  # noqa: N802 - Qt's name
        return 0 if parent.isValid() else len(HEADS)

    def headerData(  # noqa: N802 - Qt's name
        self, section: int, orientation: Qt.Orientation, role: int = 0
    ) -> Any:  # noqa: ANN401 - Qt's own
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return HEADS[section]
        return None

    def _before(self, hit: "Hit") -> "Hit | None":
        """The record that it is a retest of, where it is among those found."""
        hits = self.hits if hit.retest_of else ()
        return next((one for one in hits if one.record_id == hit.retest_of), None)

    def data(self, index: Index, role: int = 0) -> Any:  # noqa: ANN401 - Qt's own
        hit = self.hits[index.row()]
        if role == HIT:
            return hit
        if role == GLANCE:
            return self._glances.get(hit.record_id)
        if role == Qt.ItemDataRole.DisplayRole:
            return _cells(hit, self.unit)[index.column()]
        if role == Qt.ItemDataRole.ToolTipRole:
            before = self._before(hit) if index.column() == len(HEADS) - 1 else None
            shown = _cells(hit, self.unit)[index.column()]
            return shown if before is None else tr("Retest of {0}", told_hit(before))
        if role == Qt.ItemDataRole.AccessibleTextRole:
            cell = _cells(hit, self.unit)[index.column()]
            return self._spoken(hit) if index.column() == 0 else cell or EMPTY
        if (
            role == Qt.ItemDataRole.DecorationRole
            and index.column() == _VERDICT
            and hit.verdict
        ):
            return glyph_icon(hit.verdict, QGuiApplication.palette())
        if role == Qt.ItemDataRole.TextAlignmentRole and index.column() in {_COUNT, LONGEST}:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        return None

    def _spoken(self, hit: "Hit") -> str:
        serial = tr(", serial {0}", hit.serial) if hit.serial else ""
        return tr(
            "{0}{1}, {2}, {3}, {4} indications",
            hit.part or tr("no part number"),
            serial,
            day(hit.examined_on),
            tr(hit.verdict or tr("no verdict")),
            hit.indications,
        )


def _cells(hit: "Hit", unit: str) -> tuple[str, ...]:
    longest = ""
    if hit.longest_mm is not None:
        longest = length_text(
            hit.longest_mm, hit.longest_u_mm, unit, least=bool(hit.longest_least)
        )
    return (
        hit.part or tr("not given"),
        hit.serial,
        day(hit.examined_on),
        tr(hit.verdict or "none"),
        tr(hit.disposition) if hit.disposition else "",
        str(hit.indications),
        longest,
        hit.examiner,
        hit.procedure,
        hit.profile,
        (tr("retest, ") if hit.retest_of else "")
        + tr("revision {0}", hit.revision)
        + (tr(", signed {0}×", hit.signatures) if hit.signatures else ""),
    )


def length_text(mm: float | None, u_mm: float | None, unit: str, *, least: bool) -> str:
    """A length ± U, the unit once; with ≥ where it is the ``least`` that it can be."""
    if mm is None:
        return tr("no length")
    sign, told = "≥ " if least else "", format_length(mm, unit)
    if u_mm is None:
        return sign + told
    return f"{sign}{told.rpartition(' ')[0]} ± {format_length(u_mm, unit)}"
