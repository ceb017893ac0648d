"""The fields of one part of house rules: the head, a step, or one rule."""

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from ptmark.criteria.house import ProfileDraft
from ptmark.criteria.house_check import Checked
from ptmark.criteria.parameter import COMMON, Parameter, RuleKind
from ptmark.window.bits import heading, plain, quiet
from ptmark.window.house.bands import BandsField
from ptmark.window.house.fields import Field, field_for
from ptmark.window.roles import Role, tell_role
from ptmark.window.words import from_core, tr

__all__ = ["PartFields", "part_title"]

_TOP = (
    Parameter(name="name", holds="text", says=tr("Name: small letters, digits, dots, hyphens")),
    Parameter(name="title", holds="text", says=tr("Title, as lists and reports show it")),
    Parameter(name="edition", holds="text", says=tr("Edition or revision it is written from")),
    Parameter(name="source", holds="text", says=tr("Source: drawing, order, page")),
    Parameter(name="governs", holds="text", says=tr("What governs")),
    Parameter(
        name="unit", holds="choice", says=tr("Unit of every figure"), options=("mm", "in")
    ),
    Parameter(
        name="cautions",
        holds="cautions",
        says=tr("Cautions to show with every verdict, one in each line"),
        required=False,
    ),
)
_REBUILDS = {"unit", "what", "bands"}  # what other fields show hangs on these


class PartFields(QScrollArea):
    """Shows one part of a draft and writes into it what is typed.

    Signals: ``edited()`` after every change.
    """

    edited = Signal()

    def __init__(self) -> None:
        super().__init__()
        tell_role(self, Role.Form)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setMinimumWidth(470)
        self.fields: dict[str, Field] = {}
        self._draft = ProfileDraft()
        self._at: str | int = ""
        self._says = plain()

    def show_part(self, draft: ProfileDraft, at: str | int) -> None:
        """Show the head (""), a step or a rule."""
        self._draft, self._at = draft, at
        inner = QWidget()
        column = QVBoxLayout(inner)
        column.setContentsMargins(8, 0, 8, 8)
        column.setSpacing(2)
        column.addWidget(heading(part_title(draft, at)))
        kind = draft.kind_of(at)
        self._says = plain()
        if kind is not None:
            column.addWidget(quiet(f"{from_core(kind.says)}."))
            column.addWidget(self._says)
            column.addSpacing(8)
        self.fields = {}
        for one in self._asked(kind):
            field = self._field(one, kind)
            field.edited.connect(lambda value, name=one.name: self._put(name, value))
            self.fields[one.name] = field
            column.addWidget(field)
        column.addStretch(1)
        self.setWidget(inner)
        self.setAccessibleName(part_title(draft, at))

    def show_checked(self, checked: Checked) -> None:
        """Put every fault of this part beside its field, and the rule in words above."""
        says = checked.says.get(self._at)
        self._says.setText(from_core(says) if says else tr("Not yet complete."))
        mine = [fault for fault in checked.faults if fault.place.table == self._at]
        for name, field in self.fields.items():
            told = [
                (tr("row {0}: ", fault.place.row) if fault.place.row else "")
                + from_core(fault.what)
                + (f"; {from_core(fault.mend)}" if fault.mend else "")
                for fault in mine
                if fault.place.key == name or (not fault.place.key and name == "id")
            ]
            field.say_fault("\n".join(told))

    def _asked(self, kind: RuleKind | None) -> list[Parameter]:
        if kind is None and self._at == "":
            return list(_TOP)
        own = kind.parameters if kind is not None else ()
        table = self._draft.table(self._at)
        gone = {one.instead for one in own if one.instead and one.name in table.values}
        if "bands" not in table.values:
            gone |= {"by"} if any(one.name == "bands" for one in own) else set()
        names = [one for one in COMMON if one.name == "id" and isinstance(self._at, int)]
        rest = [one for one in COMMON if one.name != "id"]
        return [*names, *(one for one in own if one.name not in gone), *rest]

    def _field(self, one: Parameter, kind: RuleKind | None) -> Field:
        table = self._draft.table(self._at)
        unit = "in" if self._draft.top.text("unit") == "in" else "mm"
        what = table.text("what") or "length"
        value = table.values.get(one.name)
        if one.holds == "bands" and kind is not None:
            reject = kind.parameter("reject")
            return BandsField(one, value, reject, (unit, reject.unit_in(unit, what)))
        return field_for(one, value, one.unit_in(unit, what))

    def _put(self, name: str, value: object) -> None:
        table = self._draft.table(self._at)
        had = name in table.values
        table.put(name, value)
        if name == "bands" and "bands" in table.values:
            table.put("reject", "")
        if name == "bands" and "bands" not in table.values:
            table.put("by", "")
        self.edited.emit()
        turned = name != "bands" or had != ("bands" in table.values)
        if name in _REBUILDS and turned:
            # not from within the signal of a field that would go
            QTimer.singleShot(0, self, lambda: self._again(name))

    def _again(self, name: str) -> None:
        self.show_part(self._draft, self._at)
        self.edited.emit()
        if name in self.fields:
            self.fields[name].begin()


def part_title(draft: ProfileDraft, at: str | int) -> str:
    """What a part is called in the list and above its fields."""
    if at == "":
        return tr("About these rules")
    kind = draft.kind_of(at)
    table = draft.table(at)
    title = from_core(kind.title) if kind is not None else table.text("kind") or tr("Rule")
    return f"{at + 1}. {title}: {table.text('id')}" if isinstance(at, int) else title
