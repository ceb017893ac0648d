"""How far a long run is: a bar on a terminal, and only the messages elsewhere."""

import sys
from pathlib import Path
from time import monotonic
from types import TracebackType

__all__ = ["Bar", "shown"]

_WIDTH = 28


def shown(path: Path) -> str:
    r"""A path on one line that any terminal can print.

    Examples
    --------
    >>> shown(Path("new\nline.jpg"))
    'new\\nline.jpg'
    """
    text = str(path).encode("utf-8", "backslashreplace").decode()
    return "".join(one if one.isprintable() else ascii(one)[1:-1] for one in text)


class Bar:
    """A line on stderr that is drawn anew; nothing is drawn where stderr is no terminal."""

    def __init__(self, total: int, done: int = 0) -> None:
        self._total, self._done, self._new = total, done, 0
        self._start = monotonic()
        self._drawn = sys.stderr.isatty()

    def __enter__(self) -> "Bar":
        self._draw()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._drawn:
            print(file=sys.stderr)

    def step(self) -> None:
        """One more is done."""
        self._done += 1
        self._new += 1
        self._draw()

    def say(self, text: str) -> None:
        """A message above the bar."""
        clear = "\r\x1b[K" if self._drawn else ""
        print(f"{clear}ptmark: {text}", file=sys.stderr, flush=True)
        self._draw()

    def _draw(self) -> None:
        if not self._drawn:
            return
        share = self._done / self._total if self._total else 1.0
        full = round(_WIDTH * share)
        line = f"{'#' * full}{'.' * (_WIDTH - full)} {self._done} of {self._total}"
        if self._new >= 2 and self._done < self._total:
            left = (monotonic() - self._start) / self._new * (self._total - self._done)
            line += f", about {left:.0f} s" if left < 90 else f", about {left / 60:.0f} min"
        print(f"\r\x1b[K{line}", end="", file=sys.stderr, flush=True)
