"""Says that a verdict is stale, with the one click that judges again."""

from ptmark.window.bits import Notice, key_button
from ptmark.window.session import Session
from ptmark.window.words import tr

__all__ = ["StaleNotice"]


class StaleNotice(Notice):
    """Says that the verdict is stale, with the one click that judges again."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session, self._watch = session, session.stale
        self.again = key_button(tr("Judge again"), "", self._judge_again)
        self.offer(self.again)
        session.stale.changed.connect(self._show)

    def _judge_again(self) -> None:
        self._watch.accept()
        self._session.judge_again()

    def _show(self) -> None:
        self.say(self._watch.why)
