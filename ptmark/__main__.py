"""Start ptmark: with a verb the command line, without one the window.

The window also opens on a photo, on a record, or on a folder of records (written with a slash,
such as ``records/``, so that no folder is taken for a verb).
"""

import os
import sys
from io import TextIOWrapper
from pathlib import Path

from ptmark import __version__
from ptmark.endings import names_a_picture
from ptmark.errors import PtmarkError

__all__ = ["main"]


def main(argv: list[str] | None = None) -> int:
    """Carry out one command line; returns the exit code (0 done, 1 failed, 2 wrong usage)."""
    words = sys.argv[1:] if argv is None else argv
    if not words or (len(words) == 1 and _for_window(words[0])):
        return _open_window(Path(words[0]) if words else None)
    if words == ["--version"]:
        print(f"ptmark {__version__}")  # noqa: T201
        return 0
    from ptmark.commands.line import run

    _print_anything()
    return run(words)


def _print_anything() -> None:
    """Let a terminal that lacks a sign show its code rather than break off."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _for_window(word: str) -> bool:
    path = Path(word)
    is_shown = names_a_picture(path) or path.suffix.lower() == ".json"
    return is_shown or (os.sep in word and path.is_dir())


def _open_window(path: Path | None) -> int:
    from ptmark.window.app import run

    try:
        return run(path)
    except PtmarkError as exc:
        print(f"ptmark: {exc}", file=sys.stderr)  # noqa: T201
        return 1


if __name__ == "__main__":
    sys.exit(main())
