"""The timers on the Record page: one row a stage, with a sign, words and a beep."""

from collections.abc import Callable
from datetime import datetime
from functools import partial

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QApplication, QGridLayout, QLabel, QVBoxLayout, QWidget

from ptmark.process import LIMITS, STAGES, Limit, Stage
from ptmark.window.bits import Choice, CommitEdit, heading, key_button, plain, quiet
from ptmark.window.glyphs import glyph_pixmap
from ptmark.window.process.cautions import ProcessCautions
from ptmark.window.process.log import ProcessLog
from ptmark.window.process.own_form import OwnLimitsForm
from ptmark.window.session import Session
from ptmark.window.words import inside, tr

__all__ = ["ProcessTimers"]

_WORDS = {
    "early": tr("too early"),
    "good": tr("within the limits"),
    "late": tr("too late"),
    "": tr("no limit"),
}
_SIGNS = {"early": "undecided", "good": "done", "late": "look", "": ""}
_KEYS = ("Ctrl+Alt+1", "Ctrl+Alt+2", "Ctrl+Alt+3", "Ctrl+Alt+4")


class ProcessTimers(QWidget):
    """Beeps once when the least time is reached and once when the most is passed.

    Only for what was begun by its button here: a time typed by hand, or brought back with a
    record, tells of the past.
    """

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__()
        self._session = session
        self.log = ProcessLog(session)
        self._last: dict[str, str] = {}
        self._by_button: dict[str, datetime | None] = {}  # when
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Process log")))
        self.practice = Choice(tr("Limits of the times"))
        for name in LIMITS:
            self.practice.addItem(tr(name), name)
        self.practice.activated.connect(self._choose)
        column.addWidget(self.practice)
        self._source = quiet()
        column.addWidget(self._source)
        self.own_form = OwnLimitsForm(session, self.log)
        column.addWidget(self.own_form)
        self.rows = {
            s.name: self._row(s, k, window) for s, k in zip(STAGES, _KEYS, strict=True)
        }
        for row in self.rows.values():
            column.addWidget(row.whole)
        self.cautions = ProcessCautions(session, self.log)
        column.addWidget(self.cautions.summary)
        column.addWidget(
            quiet(tr("The procedure and the maker's sheet govern; these limits only remind."))
        )
        self._tick = QTimer(self, interval=1000)
        self._tick.timeout.connect(self._beat)
        session.changed.connect(self.refresh)
        self.refresh()

    def _row(self, stage: Stage, key: str, window: QWidget) -> "_Row":
        row = _Row(stage, key, partial(self._press, stage), window)
        row.reason.committed.connect(partial(self.log.give_reason, stage.name))
        return row

    def _choose(self, _row: int) -> None:
        self._last.clear()
        self.log.choose(self.practice.currentData())

    def _press(self, stage: Stage) -> None:
        if self.log.begun_at(stage) is None:
            self._last.pop(stage.name, None)
            self.log.begin(stage)
            self._by_button[stage.name] = self.log.begun_at(stage)
        else:
            self.log.end(stage)

    def _beat(self) -> None:
        """Once a second while something runs."""
        for stage in STAGES:
            standing = self.log.standing(stage)
            before = self._last.get(stage.name, standing)
            begun = self.log.begun_at(stage)
            timed = begun is not None and begun == self._by_button.get(stage.name)
            if timed and standing != before:
                QApplication.beep()
            self._last[stage.name] = standing
        self.refresh()

    def without_reason(self) -> list[str]:
        """What ended outside its limits, or has a caution, and nobody has said why."""
        log = self.log
        outside = [
            stage.name
            for stage in STAGES
            if log.begun_at(stage) is None and log.standing(stage) in {"early", "late"}
        ]
        found = [*outside, *self.cautions.named]
        return [tr(name) for name in found if not log.reason(name)]

    def refresh(self) -> None:
        """Show every stage as it stands."""
        held = self.log.held
        self.practice.setCurrentIndex(self.practice.findData(held.practice))
        self._source.setText(self.log.source)
        running = False
        for stage in STAGES:
            begun = self.log.begun_at(stage)
            running = running or begun is not None
            self.rows[stage.name].show_stage(
                self.log.minutes(stage),
                self.log.standing(stage),
                held.limit(stage.name),
                self.log.reason(stage.name),
                runs=begun is not None,
            )
        self.cautions.refresh()
        self.own_form.refresh()
        if running != self._tick.isActive():
            self._tick.start() if running else self._tick.stop()


class _Row:
    """One stage: button, time and sign, and the reason where it is outside its limits."""

    def __init__(
        self, stage: Stage, key: str, press: Callable[[], None], window: QWidget
    ) -> None:
        self._stage = stage
        self.whole = QWidget()
        grid = QGridLayout(self.whole)
        grid.setContentsMargins(0, 2, 0, 2)
        grid.setColumnStretch(2, 1)
        self.button = key_button(tr(stage.begin), key, press, window=window)
        self.button.setMinimumWidth(210)
        self.sign, self.says = QLabel(), plain()
        self.sign.setFixedSize(20, 20)
        self.reason = CommitEdit()
        self.reason.setAccessibleName(tr("Why {0} was outside its limits", inside(stage.name)))
        self.reason.setPlaceholderText(tr("why; it goes into the deviations"))
        grid.addWidget(self.button, 0, 0)
        grid.addWidget(self.sign, 0, 1, Qt.AlignmentFlag.AlignVCenter)
        grid.addWidget(self.says, 0, 2)
        grid.addWidget(self.reason, 1, 0, 1, 3)

    def show_stage(
        self, minutes: float | None, standing: str, limit: Limit, reason: str, *, runs: bool
    ) -> None:
        """Show how long it has run, and how that stands to its limits."""
        stage = self._stage
        text = tr(stage.end if runs else stage.begin)
        self.button.say(text)
        self.button.setAccessibleName(f"{text}: {inside(stage.name)}")
        timed = "" if minutes is None else f" {_clock(minutes)}"
        how = "" if minutes is None else f", {_WORDS[standing]}"
        self.says.setText(f"{tr(stage.name)}{timed}{how}. {_range(limit)}")
        sign = "" if minutes is None else _SIGNS[standing]
        self.sign.setPixmap(glyph_pixmap(sign, self.whole.palette(), 18))
        self.sign.setAccessibleName(
            _WORDS[standing] if minutes is not None else tr("not timed")
        )
        outside = minutes is not None and standing in {"early", "late"} and not runs
        self.reason.setVisible(outside or standing == "late")
        self.reason.show_text(reason)


def _clock(minutes: float) -> str:
    """Minutes as m:ss.

    Examples
    --------
    >>> _clock(10.5), _clock(0.01)
    ('10:30', '0:00')
    """
    seconds = int(60 * minutes + 1e-6)
    return f"{seconds // 60}:{seconds % 60:02d}"


def _range(limit: Limit) -> str:
    if limit.least is None and limit.most is None:
        return tr("No figure.")
    if limit.most is None:
        return tr("At least {0:g}\u00a0min.", limit.least)
    if limit.least is None:
        return tr("At most {0:g}\u00a0min.", limit.most)
    return tr("{0:g} to {1:g}\u00a0min.", limit.least, limit.most)
