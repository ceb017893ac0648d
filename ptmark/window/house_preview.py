"""What the rules say at once: of example indications that can be changed, and of this part."""

from dataclasses import replace
from typing import TYPE_CHECKING, Any, NamedTuple

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QHeaderView, QTableWidget, QTableWidgetItem, QVBoxLayout, QWidget

from ptmark.criteria.house_examples import EXAMPLES, Example, example_scene
from ptmark.errors import PtmarkError
from ptmark.units import parse_length
from ptmark.window.bits import Choice, Notice, heading, plain, quiet
from ptmark.window.findings import Findings
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation, Profile, Scene

__all__ = ["HousePreview"]

_COLUMNS = ("length", "width", "x", "y", "u")
_HEADS = ("", tr("Length"), tr("Width"), "x", "y", "U")


class _Tried(NamedTuple):
    """One evaluation with its scene."""

    scene: "Scene"
    evaluation: "Evaluation"


class HousePreview(QWidget):
    """Applies a profile to examples and to the inspection at hand, beside the window."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._profile: Profile | None = None
        self._decision = "guarded"
        self._examples: tuple[Example, ...] = EXAMPLES
        self._tried: dict[str, _Tried] = {}
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("What these rules say")))
        self.says = plain()
        column.addWidget(self.says)
        self.which = Choice(tr("Which indications to show"))
        self.which.addItem(tr("The examples below"), "examples")
        self.which.addItem(tr("The indications of this inspection"), "inspection")
        self.which.activated.connect(lambda _: self._show())
        column.addWidget(self.which)
        self.findings = Findings(tr("What these rules say, finding by finding"), 100, 140)
        column.addWidget(self.findings, 1)
        column.addWidget(
            quiet(tr("Examples, invented, in mm; change one and see what follows."))
        )
        self.notice = Notice()
        column.addWidget(self.notice)
        self.table = self._made_table()
        column.addWidget(self.table)
        self._soon = QTimer(self, singleShot=True, interval=150)
        self._soon.timeout.connect(self._try)
        session.judged.connect(self._soon.start)

    def _made_table(self) -> QTableWidget:
        table = QTableWidget(len(EXAMPLES), len(_HEADS))
        table.setAccessibleName(tr("Example indications"))
        table.setHorizontalHeaderLabels(list(_HEADS))
        table.verticalHeader().hide()
        table.verticalHeader().setDefaultSectionSize(24)
        table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Stretch)
        table.horizontalHeader().setSectionResizeMode(
            0, QHeaderView.ResizeMode.ResizeToContents
        )
        table.setTabKeyNavigation(False)
        table.setFixedHeight(24 * (len(EXAMPLES) + 1) + 10)
        self._fill(table)
        table.cellChanged.connect(self._change)
        return table

    def _fill(self, table: QTableWidget) -> None:
        table.blockSignals(True)  # noqa: FBT003 - Qt takes it so
        for row, one in enumerate(self._examples):
            name = QTableWidgetItem(one.id)
            name.setFlags(Qt.ItemFlag.ItemIsEnabled)
            table.setItem(row, 0, name)
            for nth, key in enumerate(_COLUMNS, start=1):
                table.setItem(row, nth, QTableWidgetItem(f"{getattr(one, key):g}"))
        table.blockSignals(False)  # noqa: FBT003 - Qt takes it so

    def _change(self, row: int, nth: int) -> None:
        item = self.table.item(row, nth)
        key = _COLUMNS[nth - 1]
        try:
            value = _read(item.text() if item else "", key)
        except PtmarkError as exc:
            self.notice.say_error(exc)
        else:
            self.notice.say("")
            rows = list(self._examples)
            changed: dict[str, Any] = {key: value}
            rows[row] = replace(rows[row], **changed)
            self._examples = tuple(rows)
            self._soon.start()
        self._fill(self.table)

    def show_rules(self, profile: "Profile | None", decision: str) -> None:
        """Try these rules; None says that they are not yet complete."""
        self._profile, self._decision = profile, decision
        self._soon.start()

    def _try(self) -> None:
        profile, decision = self._profile, self._decision
        if profile is None:
            self._tried = {}
            self._show()
            return
        scenes = {"examples": example_scene(self._examples)}
        if (own := self._session.judgement.scene) is not None:
            scenes["inspection"] = own

        def work(token: Token) -> dict[str, _Tried]:
            from ptmark.criteria import evaluate

            made = {}
            for name, scene in scenes.items():
                token.check()
                made[name] = _Tried(scene, evaluate(profile, scene, decision))
            return made

        def done(made: dict[str, _Tried]) -> None:
            self._tried = made
            self._show()

        self._session.workers.start(
            "", work, done, failed=self._say_failed, key="try house rules"
        )

    def _say_failed(self, exc: Exception) -> None:
        self._tried = {}
        self.says.setText(str(exc))

    def _show(self) -> None:
        if self._profile is None:
            self.says.setText(tr("Nothing is judged until every rule is complete."))
        else:
            parts = []
            for name, words in (
                ("examples", "Examples"),
                ("inspection", tr("This inspection")),
            ):
                tried = self._tried.get(name)
                told = tried.evaluation.verdict if tried else tr("not measured yet")
                parts.append(f"{words}: {told}")
            self.says.setText(" · ".join(parts))
        shown = self._tried.get(self.which.currentData())
        self.findings.show_all(
            shown.evaluation if shown else None, shown.scene if shown else None
        )
        self.findings.choose_first()


def _read(text: str, key: str) -> float:
    """A length in mm; a size must be above zero, a place may be anywhere."""
    if key in {"x", "y"} and text.strip().startswith("-"):
        return -parse_length(text.strip()[1:], where=key, default_unit="mm")
    if key == "u" and text.strip() in {"", "0"}:
        return 0.0
    if key in {"x", "y"} and not text.strip(" 0.,"):
        return 0.0
    return parse_length(text, where=key, default_unit="mm")
