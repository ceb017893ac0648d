"""The command line as a whole: which verbs there are, and how an error leaves it."""

import argparse
import sys
from collections.abc import Sequence

from ptmark import __version__
from ptmark.commands import (
    agreement,
    archive,
    camera,
    card,
    criteria,
    evaluate,
    export,
    measure,
    record,
    rejudge,
    report,
    review,
    rework,
    series,
    taking,
    verify,
    watch,
)
from ptmark.errors import PtmarkError

__all__ = ["parser", "run"]

_VERBS = (
    measure,
    watch,
    series,
    rework,
    evaluate,
    rejudge,
    criteria,
    card,
    camera,
    record,
    verify,
    report,
    review,
    agreement,
    export,
    taking,
    archive,
)
_CAUTION = (
    "The verdict is an aid: the contract's own code edition governs, and the certified "
    "inspector decides."
)


def parser() -> argparse.ArgumentParser:
    """The parser with every verb."""
    made = argparse.ArgumentParser(
        prog="ptmark",
        description="Measure, judge and document colour-contrast penetrant indications from a "
        "photo. Without a verb the window opens.",
        epilog=_CAUTION,
    )
    made.add_argument("--version", action="version", version=f"ptmark {__version__}")
    verbs = made.add_subparsers(dest="verb", required=True, metavar="VERB")
    for verb in _VERBS:
        verb.add_to(verbs)
    return made


def run(words: Sequence[str]) -> int:
    """Carry out a command line: 0 done, 1 an error that is said in one line, 2 wrong usage."""
    args = parser().parse_args(words)
    try:
        return int(args.run(args))
    except PtmarkError as exc:
        print(f"ptmark: {exc}", file=sys.stderr)
    except OSError as exc:
        where = f"{exc.filename}: " if exc.filename else ""
        print(f"ptmark: {where}{exc.strerror or exc}", file=sys.stderr)
    return 1
