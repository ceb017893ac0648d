"""A table of limits by the part's thickness or diameter, row by row."""

from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from ptmark.criteria.parameter import Parameter
from ptmark.window.bits import key_button, quiet
from ptmark.window.house.fields import AmountEdit, Field
from ptmark.window.words import tr

__all__ = ["BandsField"]


class BandsField(Field):
    """Rows of "up to" and a limit; the last one holds for all above.

    ``unit`` is that of the size of the part, ``wanted`` that of the limit.
    """

    def __init__(
        self, one: Parameter, value: object, reject: Parameter, units: tuple[str, str]
    ) -> None:
        super().__init__(one.name, one.says, needed=False)
        self._one, self._reject, self._units = one, reject, units
        self._rows: list[dict[str, str]] = [
            dict(row) for row in (value if isinstance(value, list) else [])
        ]
        self._place = QVBoxLayout()
        self._add = key_button(tr("Add a row"), "", self._add_row)
        column = QVBoxLayout()
        column.addLayout(self._place)
        column.addWidget(self._add)
        column.addWidget(
            quiet(tr("The thinnest first. A last row without “up to” holds above."))
        )
        self.row.addLayout(column)
        self._fill()

    def _fill(self) -> None:
        while self._place.count():
            item = self._place.takeAt(0)
            if item is not None and (old := item.widget()) is not None:
                old.deleteLater()
        for nth, row in enumerate(self._rows):
            self._place.addWidget(self._line(nth, row))
        self._add.setText(
            tr("Add a row") if self._rows else tr("Use a table in place of one limit")
        )

    def _line(self, nth: int, row: dict[str, str]) -> QWidget:
        line = QWidget()
        across = QHBoxLayout(line)
        across.setContentsMargins(0, 0, 0, 0)
        unit, wanted = self._units
        up_to = AmountEdit(
            tr("Row {0}, up to", nth + 1), row.get("up_to", ""), unit, ("<=", "<")
        )
        limit = AmountEdit(
            tr("Row {0}, limit", nth + 1), row.get("reject", ""), wanted, self._reject.operators
        )
        up_to.edited.connect(lambda text: self._put(nth, "up_to", text))
        limit.edited.connect(lambda text: self._put(nth, "reject", text))
        away = key_button("−", "", lambda: self._take_away(nth), tip=tr("Take this row away"))
        away.setAccessibleName(tr("Take row {0} away", nth + 1))
        away.setFixedWidth(32)
        for part in (up_to, QLabel(":"), limit, away):
            across.addWidget(part, 1 if isinstance(part, AmountEdit) else 0)
        return line

    def _put(self, nth: int, key: str, text: str) -> None:
        if text:
            self._rows[nth][key] = text
        else:
            self._rows[nth].pop(key, None)
        self._tell()

    def _add_row(self) -> None:
        self._rows.append({})
        self._fill()
        self._tell()

    def _take_away(self, nth: int) -> None:
        del self._rows[nth]
        self._fill()
        self._tell()

    def _tell(self) -> None:
        self.edited.emit([dict(row) for row in self._rows])
