"""`ptmark record`: check a record and say what it holds and what is missing."""

import argparse
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.record import completeness, load_record

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "record",
        help="check a record and say what is missing",
        description="Read a record, check it against its schema and list what it lacks.",
    )
    made.add_argument("file", type=Path)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Read, check, tell."""
    record = load_record(args.file)
    verdict = "no verdict" if record.evaluation is None else record.evaluation["verdict"]
    print(f"{args.file}: whole; {len(record.indications)} indications, {verdict}")
    for lack in completeness(record):
        print(f"  missing: {lack}")
    return 0
