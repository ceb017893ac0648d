"""Worker processes that measure photos; one that dies takes only its own photo with it."""

import multiprocessing
import os
from collections import deque
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from pathlib import Path
from types import TracebackType

from ptmark.folder.job import Asked, Outcome, failed, measured

__all__ = ["Pool"]

# GNU C library, mallopt(3): no memory mapped for one array alone, none given back below 4 GiB;
# NumPy's linear algebra (OpenBLAS), which would wait for a second thread at each small matrix.
_SETTINGS = {
    "MALLOC_MMAP_MAX_": "0",
    "MALLOC_TRIM_THRESHOLD_": str(4 << 30),
    "OPENBLAS_NUM_THREADS": "1",
}


_AHEAD = 2  # photos a worker holds: one in work, one to go on with while results are written


@dataclass(slots=True)
class _Hand:
    """One worker process, the pipe to it and its photos, the first of which is in work."""

    process: BaseProcess
    pipe: Connection
    photos: deque[Path] = field(default_factory=deque)


class Pool:
    """Up to ``jobs`` processes, started afresh (spawn) when there is work for them.

    Processes, not threads: decoding frees the interpreter's lock, measuring does not. Each has
    OpenCV on one thread, so that the jobs do not fight for the same cores.
    """

    def __init__(self, jobs: int, asked: Asked) -> None:
        self._jobs, self._asked = jobs, asked
        self._start = multiprocessing.get_context("spawn")
        self._queue: deque[Path] = deque()
        self._hands: list[_Hand] = []

    def __enter__(self) -> "Pool":
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close(kill=kind is not None)

    @property
    def in_work(self) -> int:
        """Photos that were given and not collected yet."""
        return len(self._queue) + sum(len(hand.photos) for hand in self._hands)

    def give(self, photos: Sequence[Path]) -> None:
        """Put photos at the end of the queue."""
        self._queue.extend(photos)
        self._hand_out()

    def collect(self, timeout: float | None = None) -> list[Outcome]:
        """Wait for finished photos, at most ``timeout`` s; the list may be empty."""
        busy = {hand.pipe: hand for hand in self._hands if hand.photos}
        ready = wait(list(busy), timeout) if busy else []
        outcomes = [self._take(hand) for pipe, hand in busy.items() if pipe in ready]
        self._hand_out()
        return outcomes

    def close(self, *, kill: bool = False) -> None:
        """Let the processes end, or end them where photos are in work."""
        for hand in self._hands:
            hand.pipe.close()  # a worker ends when its pipe does
            if kill or hand.photos:
                hand.process.terminate()
        for hand in self._hands:
            hand.process.join()
        self._hands.clear()
        self._queue.clear()

    def _hand_out(self) -> None:
        while self._queue:
            hand = min(self._hands, key=lambda one: len(one.photos), default=None)
            if (hand is None or hand.photos) and len(self._hands) < self._jobs:
                hand = self._hire()
            if hand is None or len(hand.photos) >= self._most():
                return
            photo = self._queue.popleft()
            try:
                hand.pipe.send(photo)
            except OSError:
                self._queue.appendleft(photo)
                if hand.photos:
                    return  # of which it died is told when it is collected
                self._dismiss(hand)  # it died idle: another takes the photo
            else:
                hand.photos.append(photo)

    def _most(self) -> int:
        """How many photos a worker may hold: the last ones go where they are done first."""
        return _AHEAD if len(self._queue) > self._jobs else 1

    def _hire(self) -> _Hand:
        ours, theirs = self._start.Pipe()
        process = self._start.Process(target=_serve, args=(theirs, self._asked), daemon=True)
        with _settled():
            process.start()
        theirs.close()  # so that its death ends our side
        hand = _Hand(process, ours)
        self._hands.append(hand)
        return hand

    def _take(self, hand: _Hand) -> Outcome:
        photo = hand.photos.popleft()
        try:
            outcome: Outcome = hand.pipe.recv()
        except (EOFError, OSError):
            code = self._dismiss(hand)
            self._queue.extendleft(reversed(hand.photos))  # it had not begun with these
            return failed(
                photo,
                f"the process that measured it ended with {code}",
                "look at it alone, or run fewer jobs where memory is short",
            )
        return outcome

    def _dismiss(self, hand: _Hand) -> int | None:
        self._hands.remove(hand)
        hand.pipe.close()
        hand.process.join()
        return hand.process.exitcode


@contextmanager
def _settled() -> Iterator[None]:
    """Have processes that start meanwhile keep freed memory for the next photo, on one thread.

    Else every photo's pages are given back and asked for anew, which costs as much as decoding
    it. Libraries read these when a process begins; where they are others, nothing happens.
    """
    before = {name: os.environ.get(name) for name in _SETTINGS}
    os.environ.update(_SETTINGS)
    try:
        yield
    finally:
        for name, value in before.items():
            if value is None:
                del os.environ[name]
            else:
                os.environ[name] = value


def _serve(pipe: Connection, asked: Asked) -> None:
    """Life of a worker: measure what comes through the pipe until it ends."""
    import gc
    import signal

    import cv2

    signal.signal(signal.SIGINT, signal.SIG_IGN)  # Ctrl-C is the parent's to answer
    cv2.setNumThreads(1)
    gc.freeze()  # libraries stay: to look through them for garbage costs 2 ms a photo
    while True:
        try:
            photo = pipe.recv()
            pipe.send(measured(photo, asked))
        except (EOFError, OSError):
            return
