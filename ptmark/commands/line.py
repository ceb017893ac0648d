"""The command line as a whole: which verbs there are, and how an error leaves it."""

import argparse
import os
import sys
from collections.abc import Sequence
from importlib import import_module
from pathlib import Path
from typing import Any

from ptmark import __version__
from ptmark.errors import PtmarkError, UsageError

__all__ = ["parser", "run"]

_VERBS = {  # module of each and what it does, in the order of the help
    "measure": ("measure", "measure the indications in a photo"),
    "watch": ("watch", "measure pictures as they arrive in a folder"),
    "series": ("series", "follow bleed-out through several photos"),
    "rework": ("rework", "compare an area before and after rework"),
    "evaluate": ("evaluate", "judge indications given as outlines in mm"),
    "rejudge": ("rejudge", "judge records again by another profile, and say what changes"),
    "criteria": ("criteria", "list, show, check, compare or start acceptance profiles"),
    "card": ("card", "write the printable scale card (PDF)"),
    "camera": ("camera", "calibrate a camera's lens; list, show or remove its profile"),
    "record": ("record", "say what a record holds and lacks; change, link or sign it"),
    "verify": ("verify", "find any changed byte in records, photos and signed reports"),
    "report": ("report", "make the reports of a record; sign the PDF"),
    "review": ("review", "measure a record's photo again, blind, and compare"),
    "agreement": (
        "agreement",
        "agreement, repeatability and reproducibility over many records",
    ),
    "export": ("export", "write a record as exchange bundle, spreadsheet, outlines or DICOM"),
    "import": ("taking", "take an exchange bundle in, checked whole"),
    "archive": (
        "archive",
        "keep records and photos for each part number; find them; prove them whole",
    ),
}
_CAUTION = (
    "The verdict is an aid: the contract's own code edition governs, and the certified "
    "inspector decides."
)


_OUT = ("json", "csv", "image", "pdf")  # options that name a file to write


class _Once(argparse.Action):
    """Stores what stands behind an option; given twice, one of the two would be lost unseen."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: Any,  # noqa: ANN401 - whatever the option's type makes
        option: str | None = None,
    ) -> None:
        if option and getattr(namespace, self.dest, self.default) is not self.default:
            parser.error(f"argument {option}: given twice")
        setattr(namespace, self.dest, values)


class _Parser(argparse.ArgumentParser):
    """Takes each option that holds one value once; its verbs are parsers of the same kind."""

    def __init__(self, *args: Any, **more: Any) -> None:  # noqa: ANN401 - as argparse has them
        super().__init__(*args, **more)
        self.register("action", None, _Once)
        self.register("action", "store", _Once)


class _Told:
    """Adds a verb with what it does, for the list of all verbs."""

    def __init__(self, verbs: Any, says: str) -> None:  # noqa: ANN401 - argparse keeps it private
        self._verbs, self._says = verbs, says

    def add_parser(self, name: str, **more: Any) -> argparse.ArgumentParser:  # noqa: ANN401
        made: argparse.ArgumentParser = self._verbs.add_parser(name, help=self._says, **more)
        return made


def parser(asked: str | None = None) -> argparse.ArgumentParser:
    """The parser with every verb.

    Where one is ``asked`` for, it is the only one that is loaded; where what is asked for is no
    verb, their names and what they do are enough to say so.
    """
    made = _Parser(
        prog="ptmark",
        description="Measure, judge and document colour-contrast penetrant indications from a "
        "photo. Without a verb the window opens.",
        epilog=_CAUTION,
    )
    made.add_argument("--version", action="version", version=f"ptmark {__version__}")
    verbs = made.add_subparsers(dest="verb", required=True, metavar="VERB")
    for verb, (module, says) in _VERBS.items():
        if asked is None or asked == verb:
            import_module(f"ptmark.commands.{module}").add_to(_Told(verbs, says))
        elif asked not in _VERBS:
            verbs.add_parser(verb, help=says)
    return made


def run(words: Sequence[str]) -> int:
    """Carry out a command line: 0 done, 1 an error that is said in one line, 2 wrong usage."""
    asked = next((word for word in words if word in _VERBS), "")
    args = parser(asked).parse_args(words)
    try:
        _check_files(vars(args))
        code = int(args.run(args))
        sys.stdout.flush()  # or a reader that is gone shows only while Python ends
    except PtmarkError as exc:
        print(f"ptmark: {exc}", file=sys.stderr)
    except BrokenPipeError:  # who reads has read enough, as `head` does: no error of ours
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except OSError as exc:
        where = f"{exc.filename}: " if exc.filename else ""
        print(f"ptmark: {where}{exc.strerror or exc}", file=sys.stderr)
    else:
        return code
    return 1


def _check_files(given: dict[str, Any]) -> None:
    """Refuse to write a file over one that is read, or two into one (UsageError)."""
    taken: dict[Path, str] = {}
    for name, value in given.items():
        for one in value if isinstance(value, list) else [value]:
            if isinstance(one, Path) and name not in _OUT:
                taken[_real(one)] = "read"
    for name in _OUT:
        if isinstance(path := given.get(name), Path):
            if (use := taken.get(_real(path))) is not None:
                raise UsageError(
                    f"is {use} by the same command",
                    where=f"--{name} {path}",
                    mend="choose another name",
                )
            taken[_real(path)] = f"written (--{name})"


def _real(path: Path) -> Path:
    """Where links lead; a link that leads back to itself stays, for its reader to refuse."""
    return Path(os.path.realpath(path))
