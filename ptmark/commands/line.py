"""The command line as a whole: which verbs there are, and how an error leaves it."""

import argparse
import sys
from collections.abc import Sequence
from importlib import import_module

from ptmark import __version__
from ptmark.errors import PtmarkError

__all__ = ["parser", "run"]

_MODULES = {  # of each verb, in the order of the help
    "measure": "measure",
    "watch": "watch",
    "series": "series",
    "rework": "rework",
    "evaluate": "evaluate",
    "rejudge": "rejudge",
    "criteria": "criteria",
    "card": "card",
    "camera": "camera",
    "record": "record",
    "verify": "verify",
    "report": "report",
    "review": "review",
    "agreement": "agreement",
    "export": "export",
    "import": "taking",
    "archive": "archive",
}
_CAUTION = (
    "The verdict is an aid: the contract's own code edition governs, and the certified "
    "inspector decides."
)


def parser(verb: str = "") -> argparse.ArgumentParser:
    """The parser with every verb, or with the one that is asked for, which loads it alone."""
    made = argparse.ArgumentParser(
        prog="ptmark",
        description="Measure, judge and document colour-contrast penetrant indications from a "
        "photo. Without a verb the window opens.",
        epilog=_CAUTION,
    )
    made.add_argument("--version", action="version", version=f"ptmark {__version__}")
    verbs = made.add_subparsers(dest="verb", required=True, metavar="VERB")
    modules = [_MODULES[verb]] if verb in _MODULES else _MODULES.values()
    for module in modules:
        import_module(f"ptmark.commands.{module}").add_to(verbs)
    return made


def run(words: Sequence[str]) -> int:
    """Carry out a command line: 0 done, 1 an error that is said in one line, 2 wrong usage."""
    args = parser(words[0] if words else "").parse_args(words)
    try:
        return int(args.run(args))
    except PtmarkError as exc:
        print(f"ptmark: {exc}", file=sys.stderr)
    except OSError as exc:
        where = f"{exc.filename}: " if exc.filename else ""
        print(f"ptmark: {where}{exc.strerror or exc}", file=sys.stderr)
    return 1
