"""One field of the form for house rules: what is asked, where to type it, its unit, its fault.

Values go in and out as a profile writes them: ``> 5 mm``, ``["100", "401"]``.
"""

import re
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from ptmark.criteria.parameter import Parameter
from ptmark.window.bits import Choice, plain
from ptmark.window.edges import Line, Notes
from ptmark.window.indications.kinds import kind_kept, kind_shown
from ptmark.window.palette import tone
from ptmark.window.words import from_core, tr

__all__ = ["AmountEdit", "Field", "field_for"]

_SPLIT = re.compile(r"\s*(>=|<=|>|<)?\s*(.*?)\s*(mm2|in2|mm|in|%)?\s*")
_OPERATORS = {
    ">": tr("more than"),
    ">=": tr("at least"),
    "<": tr("less than"),
    "<=": tr("at most"),
}
_UNITS = {"1": "", "mm2": "mm²", "in2": "in²"}


class Field(QWidget):
    """Label above, input below it, the fault under that.

    Signals: ``edited(object)`` with the new value when a person has changed it, "" or [] where
    it was emptied.
    """

    edited = Signal(object)

    def __init__(self, name: str, says: str, *, needed: bool) -> None:
        super().__init__()
        self.name = name
        says = from_core(says)
        label = QLabel(says if needed else tr("{0} (may be left out)", says))
        label.setWordWrap(True)
        self.says = says
        self.row = QHBoxLayout()
        self.row.setSpacing(6)
        self._fault = plain()
        self._fault.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 6)
        column.setSpacing(3)
        column.addWidget(label)
        column.addLayout(self.row)
        column.addWidget(self._fault)

    def say_fault(self, text: str) -> None:
        """Show what is wrong here with its mend; nothing takes it away."""
        if text != self._fault.text():
            palette = QGuiApplication.palette()
            palette.setColor(self._fault.foregroundRole(), tone("rejectable", palette))
            self._fault.setPalette(palette)
            self._fault.setText(text)
        self._fault.setVisible(bool(text))
        self.setAccessibleDescription(text)
        for child in self.inputs():
            child.setAccessibleDescription(text)

    @property
    def fault(self) -> str:
        return self._fault.text()

    def inputs(self) -> list[QWidget]:
        """What takes the keyboard."""
        return [*self.findChildren(QLineEdit), *self.findChildren(Choice)]

    def begin(self) -> None:
        """Put the keyboard into its first input."""
        first = self.row.itemAt(0)
        if first is not None and (widget := first.widget()) is not None:
            widget.setFocus()


class TextField(Field):
    """One line of text; a list of texts where ``many``, with commas between them."""

    def __init__(
        self, name: str, says: str, value: object, *, needed: bool, many: bool
    ) -> None:
        super().__init__(name, says, needed=needed)
        shown = str(value or "")
        if isinstance(value, list):
            shown = ", ".join(kind_shown(one) for one in value)
        edit = Line("" if shown == "?" else shown)
        edit.setAccessibleName(self.says)
        edit.setMinimumHeight(28)
        edit.setCursorPosition(0)
        edit.textEdited.connect(lambda text: self.edited.emit(_parts(text) if many else text))
        self.row.addWidget(edit)


class LinesField(Field):
    """Texts, one in each line."""

    def __init__(self, one: Parameter, value: object) -> None:
        super().__init__(one.name, one.says, needed=one.required)
        self.edit = Notes("\n".join(value) if isinstance(value, list) else "")
        self.edit.setAccessibleName(self.says)
        self.edit.setTabChangesFocus(True)
        self.edit.setFixedHeight(5 * self.edit.fontMetrics().lineSpacing() + 12)
        self.edit.textChanged.connect(self._tell)
        self.row.addWidget(self.edit)

    def inputs(self) -> list[QWidget]:
        return [self.edit]

    def _tell(self) -> None:
        lines = self.edit.toPlainText().splitlines()
        self.edited.emit([line.strip() for line in lines if line.strip()])


class ChoiceField(Field):
    """One of several words; what may be left out shows what holds then."""

    def __init__(self, one: Parameter, value: object) -> None:
        super().__init__(one.name, one.says, needed=one.required)
        self.box = Choice(self.says)
        unset = (
            tr("choose …")
            if one.required
            else tr("{0} (as usual)", from_core(one.default)).strip()
        )
        self.box.addItem(unset, "")
        for option in one.options:
            self.box.addItem(from_core(option), option)
        self.box.setCurrentIndex(max(0, self.box.findData(value)))
        self.box.activated.connect(lambda _: self.edited.emit(self.box.currentData()))
        self.row.addWidget(self.box, 1)


class AmountEdit(QWidget):
    """An operator, a number and a unit that stand for such as ``> 5 mm``.

    Signals: ``edited(str)`` with the text as a profile writes it, "" where there is no number.
    """

    edited = Signal(str)

    def __init__(self, says: str, value: str, unit: str, operators: tuple[str, ...]) -> None:
        super().__init__()
        found = _SPLIT.fullmatch(value)
        operator, number, written = found.groups() if found else ("", value, "")
        self._unit = unit
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        self._operator = Choice(tr("{0}: over or under", says))
        for one in operators:
            self._operator.addItem(_OPERATORS[one], one)
        if operator and operator not in operators:
            self._operator.addItem(_OPERATORS[operator], operator)
        self._operator.setCurrentIndex(max(0, self._operator.findData(operator)))
        self._operator.activated.connect(lambda _: self._tell())
        self._operator.setVisible(bool(operators))
        self.number = Line("" if number == "?" else number)
        self.number.setMinimumHeight(28)
        self.number.setMinimumWidth(56)
        spoken = _UNITS.get(unit, unit)
        self.number.setAccessibleName(tr("{0}, in {1}", says, spoken) if spoken else says)
        self.number.textEdited.connect(lambda _: self._tell())
        # a figure in another unit is never converted: it is shown as it was written
        was = written or "1"
        self._shown = QLabel(_UNITS.get(was, was) if number not in {"", "?"} else spoken)
        self.setFocusProxy(self.number)
        row.addWidget(self._operator)
        row.addWidget(self.number, 1)
        row.addWidget(self._shown)

    def _tell(self) -> None:
        self._shown.setText(_UNITS.get(self._unit, self._unit))
        number = self.number.text().strip().replace(",", ".")
        operator = self._operator.currentData() or ""
        unit = "" if self._unit == "1" else self._unit
        self.edited.emit(" ".join(p for p in (operator, number, unit) if p) if number else "")


class AmountField(Field):
    """One amount, or a pair of them."""

    def __init__(self, one: Parameter, value: object, unit: str) -> None:
        super().__init__(one.name, one.says, needed=one.required)
        self._pair = one.holds == "amounts"
        values = value if isinstance(value, list) else [str(value or "")]
        self._values = [*values, "", ""][: 2 if self._pair else 1]
        for place, text in enumerate(self._values):
            says = tr("{0}, {1} of 2", self.says, place + 1) if self._pair else self.says
            edit = AmountEdit(says, text, unit, one.operators)
            edit.edited.connect(lambda made, at=place: self._tell(at, made))
            self.row.addWidget(edit, 1)

    def _tell(self, place: int, text: str) -> None:
        self._values[place] = text
        if self._pair:
            self.edited.emit(list(self._values) if any(self._values) else [])
        else:
            self.edited.emit(text)


def field_for(one: Parameter, value: Any, unit: str) -> Field:  # noqa: ANN401 - as TOML has it
    """The field for a key of a rule; ``unit`` is what its amounts are written in."""
    if one.holds == "choice":
        return ChoiceField(one, value)
    if one.holds == "cautions":
        return LinesField(one, value)
    if one.holds in {"limit", "number", "amount", "amounts"}:
        return AmountField(one, value, unit)
    many = one.holds in {"kinds", "rules"}
    return TextField(one.name, one.says, value, needed=one.required, many=many)


def _parts(text: str) -> list[str]:
    return [part for part in (kind_kept(one) for one in text.split(",")) if part]
