"""Whether the rules have changed since the verdict shown was made, and judging again."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from ptmark.errors import PtmarkError
from ptmark.window.bits import Notice, key_button
from ptmark.window.words import tr

if TYPE_CHECKING:
    from ptmark.criteria import Evaluation
    from ptmark.window.session import Session

__all__ = ["StaleNotice", "StaleWatch"]

_EVERY_MS = 1500


class StaleWatch(QObject):
    """Looks at the profile's file now and then; ``changed()`` when ``why`` has changed."""

    changed = Signal()

    def __init__(self, session: "Session") -> None:
        super().__init__(session)
        self._session = session
        self.why = ""  # in words, "" while the verdict is that of the rules as they are now
        self._seen: object = None
        self._of: Evaluation | None = None
        self._timer = QTimer(self, interval=_EVERY_MS)
        self._timer.timeout.connect(self.look)
        self._timer.start()
        session.judged.connect(self.look)

    def look(self) -> None:
        """Compare now; the file is only read where its time or size has changed."""
        why = self._found()
        if why is not None and why != self.why:
            self.why = why
            self.changed.emit()

    def _found(self) -> str | None:
        """Why the verdict is stale, "" where it is not, None where nothing has moved."""
        inspection = self._session.inspection
        made = self._session.judgement.evaluation
        if inspection is None or made is None or not inspection.state.profile:
            return ""
        from ptmark.criteria import load_profile, profile_stamp

        name = inspection.state.profile
        stamp = (name, profile_stamp(name))
        if stamp == self._seen and made is self._of:
            return None
        self._seen, self._of = stamp, made
        try:
            now = load_profile(name)
        except PtmarkError as exc:
            return tr(
                "The rules can no longer be used, so this verdict stands on none. {0}", exc
            )
        if now.name == made.profile and now.checksum != made.checksum:
            return tr("The rules have been changed since this verdict was made: it is stale.")
        return ""


class StaleNotice(Notice):
    """Says that the verdict is stale, with the one click that judges again."""

    def __init__(self, session: "Session") -> None:
        super().__init__()
        self._watch = session.stale
        self.again = key_button(tr("Judge again"), "", session.judge_again)
        self.offer(self.again)
        session.stale.changed.connect(self._show)

    def _show(self) -> None:
        self.say(self._watch.why)
