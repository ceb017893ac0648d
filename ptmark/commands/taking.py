"""`ptmark import`: take an exchange bundle in, checked whole."""

import argparse
from pathlib import Path

from ptmark.commands.options import Verbs

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "import",
        description="Check every byte of a bundle, its record, signatures and photos, and "
        "write them into a folder of their own. Where anything does not hold, nothing is.",
    )
    made.add_argument("file", type=Path, metavar="FILE.zip")
    made.add_argument("--to", type=Path, required=True, metavar="FOLDER", help="where to")
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Take in and tell where the record lies."""
    from ptmark.report.bundle import take_in

    print(take_in(args.file, args.to))
    return 0
