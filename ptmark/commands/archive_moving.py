"""`ptmark archive verify`: everything read again."""

import argparse
import sys
from collections.abc import Callable
from typing import TYPE_CHECKING

from ptmark.commands.options import Verbs

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_to"]


def add_to(below: Verbs) -> None:
    """Add the works."""
    made = below.add_parser("verify", help="read everything again; exit code 1 if it differs")
    made.add_argument("--resume", action="store_true", help="go on where a stopped run came to")
    made.set_defaults(work_run=_run_verify)


def _run_verify(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import verify

    found = verify(archive, resume=args.resume, progress=_counter())
    for one in found.problems:
        print(f"{one.kind}: {one.subject}: {one.says}")
    said = "whole" if found.whole else "NOT whole"
    print(
        f"{found.records} records and {found.photos} photos read, {found.bytes} bytes: {said}"
    )
    return 0 if found.whole else 1


def _counter() -> Callable[[int, int], None] | None:
    """How far it is, on a terminal only."""
    if not sys.stderr.isatty():
        return None

    def say(done: int, total: int) -> None:
        print(f"\r{done} of {total}", end="", file=sys.stderr, flush=True)

    return say
