"""Cautions of the process log: each beside the field it is about, with room for the reason."""

import re
from functools import partial

from PySide6.QtWidgets import QLabel, QWidget

from ptmark.process import CHECKED, cautions, tells_fluorescent
from ptmark.window.bits import CommitEdit, Notice, quiet
from ptmark.window.process.log import ProcessLog
from ptmark.window.session import Session
from ptmark.window.words import day, from_core, inside, tr

__all__ = ["ProcessCautions"]

_DATE = re.compile(r"\d{4}-\d\d-\d\d")


class CautionRow(Notice):
    """One caution: a triangle, a sentence, and a line for why it was done all the same."""

    def __init__(self, label: str) -> None:
        super().__init__()
        self.reason = CommitEdit()
        self.reason.setAccessibleName(tr("Why, all the same: {0}", inside(label)))
        self.reason.setPlaceholderText(tr("why all the same; it goes into the deviations"))
        self.put_under(self.reason)


class ProcessCautions:
    """Holds the rows by field; ``summary`` names the fields that have one."""

    def __init__(self, session: Session, log: ProcessLog) -> None:
        self._session, self._log = session, log
        self.summary: QLabel = quiet()
        self.named: list[str] = []  # of the fields that have one now
        self.rows = {key: CautionRow(label) for key, label in CHECKED.items()}
        for key, row in self.rows.items():
            row.reason.committed.connect(partial(log.give_reason, CHECKED[key]))

    def beside(self, key: str) -> QWidget | None:
        """What belongs under this field, hidden while there is nothing to say."""
        return self.rows.get(key)

    def refresh(self) -> None:
        """Look at every field again."""
        state = self._session.state
        if state is None:
            return
        found = cautions(
            state.fields,
            self._log.held.conditions,
            fluorescent=self._fluorescent(),
            today=self._log.clock().date(),
        )
        for key, row in self.rows.items():
            row.say(_shown(found.get(key, "")))
            row.reason.show_text(self._log.reason(CHECKED[key]))
        self.named = [label for key, label in CHECKED.items() if key in found]
        named = ", ".join(tr(label) for label in self.named)
        self.summary.setText(tr("To look at below: {0}.", named) if named else "")
        self.summary.setVisible(bool(named))

    def _fluorescent(self) -> bool:
        """As chosen for the photo, or as the fields tell; recognising takes too long."""
        state = self._session.state
        if state is None or state.mode:
            return state is not None and state.mode == "fluorescent"
        return tells_fluorescent(state.fields)


def _shown(said: str) -> str:
    """In the window's language, dates with the day first where it has them so."""
    return _DATE.sub(lambda found: day(found[0]), from_core(said))
