"""What the rules say at once: of example indications that can be changed, and of this part."""

from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QVBoxLayout, QWidget

from ptmark.criteria.house_examples import example_scene
from ptmark.window.bits import Choice, heading, plain
from ptmark.window.findings import Findings
from ptmark.window.house.examples import ExampleTable
from ptmark.window.session import Session
from ptmark.window.words import from_core, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation, Profile, Scene

__all__ = ["HousePreview"]


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
        self.examples = ExampleTable()
        self.examples.changed.connect(self._changed)
        self.table, self.notice = self.examples.table, self.examples.notice
        column.addWidget(self.examples)
        self._soon = QTimer(self, singleShot=True, interval=150)
        self._soon.timeout.connect(self._try)
        session.judged.connect(self._soon.start)

    def _changed(self) -> None:
        self._soon.start()

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
        scenes = {"examples": example_scene(self.examples.rows)}
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
        self.says.setText(from_core(exc))

    def _show(self) -> None:
        if self._profile is None:
            self.says.setText(tr("Nothing is judged until every rule is complete."))
        else:
            parts = []
            for name, words in (
                ("examples", tr("Examples")),
                ("inspection", tr("This inspection")),
            ):
                tried = self._tried.get(name)
                told = tr(tried.evaluation.verdict) if tried else tr("not measured yet")
                parts.append(f"{words}: {told}")
            self.says.setText(" · ".join(parts))
        shown = self._tried.get(self.which.currentData())
        self.findings.show_all(
            shown.evaluation if shown else None, shown.scene if shown else None
        )
        self.findings.choose_first()
