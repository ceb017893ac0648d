"""Work beside the window: run in a thread pool, told of in signals, dropped when cancelled."""

import traceback
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Qt, QThreadPool, Signal, Slot

from ptmark.errors import PtmarkError

__all__ = ["CancelledError", "Job", "Token", "Workers"]


class CancelledError(Exception):
    """Raised inside the work at its next look at the token; never reaches the window."""


class Token:
    """What the work holds of its job: asks whether to go on, says how far it is."""

    def __init__(self, tell: Callable[[str, object], None]) -> None:
        self.cancelled = False
        self._tell = tell

    def check(self) -> None:
        """Stop here if the job was cancelled."""
        if self.cancelled:
            raise CancelledError

    def progress(self, share: float) -> None:
        """Say how much is done, 0 to 1."""
        self.check()
        self._tell("progress", share)

    def partial(self, value: object) -> None:
        """Hand over something worth showing before the end."""
        self.check()
        self._tell("partial", value)


class Job:
    """One piece of work; ``name`` is what the window shows while it runs, "" for nothing."""

    def __init__(
        self,
        name: str,
        work: Callable[[Token], Any],
        tell: Callable[["Job", str, object], None],
    ) -> None:
        self.name = name
        self.share: float | None = None
        self.token = Token(lambda kind, value: tell(self, kind, value))
        self._work = work
        self._tell = tell
        self.done: Callable[[Any], None] | None = None
        self.failed: Callable[[Exception], None] | None = None
        self.partial: Callable[[Any], None] | None = None

    def run(self) -> None:
        try:
            self.token.check()
            result = self._work(self.token)
        except CancelledError:
            self._tell(self, "ended", None)
        except Exception as exc:  # noqa: BLE001 - a fault in a thread must reach the window
            self._tell(self, "failed", exc)
        else:
            self._tell(self, "done", result)

    def cancel(self) -> None:
        self.token.cancelled = True

    def let_go(self) -> None:
        """Drop what the work held, photos above all: Qt's objects do not break circles."""
        self._work = _nothing
        self._tell = self.token._tell = _nothing
        self.done = self.failed = self.partial = None


def _nothing(*_: object) -> None:
    """Stands where a job's work was."""


class Workers(QObject):
    """Runs jobs and delivers their results in the window's thread.

    Signals: ``changed()`` when a job starts, moves on or ends.
    """

    changed = Signal()
    _message = Signal(object, str, object)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(max(4, self._pool.maxThreadCount()))
        self._running: list[tuple[str, Job]] = []
        self._shut = False
        self._message.connect(self._deliver, Qt.ConnectionType.QueuedConnection)

    def start(
        self,
        name: str,
        work: Callable[[Token], Any],
        done: Callable[[Any], None] | None = None,
        *,
        failed: Callable[[Exception], None] | None = None,
        partial: Callable[[Any], None] | None = None,
        key: str = "",
    ) -> Job:
        """Run ``work`` beside the window; a new job with the same ``key`` cancels the old.

        Nothing runs any more once all is shut down, though a timer may still ask for it.
        """
        if self._shut:
            job = Job(name, _nothing, _nothing)
            job.cancel()
            return job
        if key:
            self.cancel(key)
        job = Job(name, work, self._message.emit)
        job.done, job.failed, job.partial = done, failed, partial
        self._running.append((key, job))
        self._pool.start(job.run)  # a QRunnable of ours the pool would keep for good
        self.changed.emit()
        return job

    def cancel(self, key: str | None = None) -> None:
        """Cancel the jobs with this key, or all that show a name; they deliver nothing more."""
        for its_key, job in self._running:
            if its_key == key or (key is None and job.name):
                job.cancel()
        self.changed.emit()

    @property
    def shown(self) -> list[Job]:
        """The jobs that the window should tell of."""
        return [job for _, job in self._running if job.name and not job.token.cancelled]

    def any_running(self) -> bool:
        """Whether anything is under way, cancelled or not."""
        return bool(self._running)

    def busy(self, key: str) -> bool:
        """Whether a job with this key is under way."""
        return any(k == key and not job.token.cancelled for k, job in self._running)

    def shut_down(self) -> None:
        """Cancel what can be and wait for the rest, so that no thread outlives the window."""
        self._shut = True
        for _, job in self._running:
            if job.name:
                job.cancel()
        self._pool.waitForDone(10_000)

    @Slot(object, str, object)
    def _deliver(self, job: Job, kind: str, value: object) -> None:
        if kind in {"done", "failed", "ended"}:
            self._running = [(k, one) for k, one in self._running if one is not job]
        if not job.token.cancelled:
            self._hand_over(job, kind, value)
        if kind in {"done", "failed", "ended"}:
            job.let_go()
        self.changed.emit()

    def _hand_over(self, job: Job, kind: str, value: object) -> None:
        if kind == "progress":
            job.share = float(value)  # type: ignore[arg-type]
        elif kind == "partial" and job.partial:
            job.partial(value)
        elif kind == "done" and job.done:
            job.done(value)
        elif kind == "failed" and isinstance(value, Exception):
            if not isinstance(value, (PtmarkError, OSError)):
                traceback.print_exception(value)
            if job.failed:
                job.failed(value)
