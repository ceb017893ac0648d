"""Where a procedure's own limits are typed, beside those of the standard."""

from functools import partial

from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from ptmark.errors import UsageError
from ptmark.process import STAGES, TEMPERATURE
from ptmark.window.bits import CommitEdit, Notice, key_button, plain, quiet
from ptmark.window.process.log import ProcessLog
from ptmark.window.process.own import read_figure
from ptmark.window.session import Session
from ptmark.window.words import number, tr

__all__ = ["OwnLimitsForm"]

_ROWS = (*((stage.name, "min") for stage in STAGES), (TEMPERATURE, "°C"))


class OwnLimitsForm(QWidget):
    """Folded away until it is asked for; the standard's figures show in the empty fields."""

    def __init__(self, session: Session, log: ProcessLog) -> None:
        super().__init__()
        self._session, self._log = session, log
        self.turn_button = key_button(tr("Limits of the procedure …"), "", self._turn)
        self._whole = QWidget()
        self._whose = plain()
        self.notice = Notice()
        grid = QGridLayout()
        grid.addWidget(quiet(tr("at least"), wraps=False), 0, 1)
        grid.addWidget(quiet(tr("at most"), wraps=False), 0, 2)
        self.edits: dict[str, tuple[CommitEdit, CommitEdit]] = {}
        for row, (name, unit) in enumerate(_ROWS, 1):
            grid.addWidget(QLabel(tr(name)), row, 0)
            pair = (CommitEdit(), CommitEdit())
            for column, (edit, side) in enumerate(
                zip(pair, (tr("at least"), tr("at most")), strict=True), 1
            ):
                edit.setAccessibleName(f"{tr(name)}, {side}, {unit}")
                edit.committed.connect(partial(self._take, name))
                grid.addWidget(edit, row, column)
            grid.addWidget(quiet(unit, wraps=False), row, 3)
            self.edits[name] = pair
        inner = QVBoxLayout(self._whole)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.addWidget(self._whose)
        inner.addLayout(grid)
        inner.addWidget(self.notice)
        column_of = QVBoxLayout(self)
        column_of.setContentsMargins(0, 0, 0, 0)
        column_of.addWidget(self.turn_button)
        column_of.addWidget(self._whole)
        self._whole.hide()

    def _turn(self) -> None:
        self._whole.setVisible(self._whole.isHidden())
        self.refresh()

    def _take(self, name: str, _text: str) -> None:
        try:
            least, most = (read_figure(edit.text(), name) for edit in self.edits[name])
            self._log.limit_to(name, (least, most))
        except UsageError as exc:
            self.notice.say_error(exc)
            return
        self.notice.say("")
        self._session.workers.start(
            "",
            lambda _token: self._log.kept.save(),
            failed=lambda exc: self.notice.say(tr("The limits could not be kept: {0}", exc)),
        )

    def refresh(self) -> None:
        """Show the figures of the procedure that the record names."""
        if self._whole.isHidden():
            return
        held = self._log.held
        procedure = held.procedure
        self._whose.setText(
            tr("Of procedure {0}. An empty field leaves the standard's figure.", procedure)
            if procedure
            else tr("The record names no procedure yet; these hold until it names one.")
        )
        for name, edits in self.edits.items():
            own, usual = held.own.get(name, {}), held.usual(name)
            for edit, side, figure in zip(
                edits, ("least", "most"), (usual.least, usual.most), strict=True
            ):
                edit.show_text(_shown(own[side]) if side in own else "")
                edit.setPlaceholderText(_shown(figure))


def _shown(figure: float | None) -> str:
    return tr("none") if figure is None else number(figure, "g")
