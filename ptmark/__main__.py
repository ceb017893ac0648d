"""Start ptmark: with a verb the command line, without one (or with a photo) the window."""

import sys
from pathlib import Path

from ptmark import __version__
from ptmark.errors import PtmarkError

__all__ = ["main"]

_PICTURES = {".jpg", ".jpeg", ".png", ".tif", ".tiff", ".webp", ".heic", ".heif"}


def main(argv: list[str] | None = None) -> int:
    """Carry out one command line; returns the exit code (0 done, 1 failed, 2 wrong usage)."""
    words = sys.argv[1:] if argv is None else argv
    if not words or (len(words) == 1 and Path(words[0]).suffix.lower() in _PICTURES):
        return _open_window(Path(words[0]) if words else None)
    if words == ["--version"]:
        print(f"ptmark {__version__}")  # noqa: T201
        return 0
    from ptmark.commands.line import run

    return run(words)


def _open_window(photo: Path | None) -> int:
    from ptmark.window.app import run

    try:
        return run(photo)
    except PtmarkError as exc:
        print(f"ptmark: {exc}", file=sys.stderr)  # noqa: T201
        return 1


if __name__ == "__main__":
    sys.exit(main())
