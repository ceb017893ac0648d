"""`ptmark card`: write the printable scale card as a PDF."""

import argparse
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.scale import write_card_pdf

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "card",
        description="Write the printable scale card. Print it at 100 %, measure its check "
        "length with callipers and lay it beside the indication, in the same plane.",
    )
    made.add_argument("file", type=Path, help="the PDF to write")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    made.add_argument(
        "--set",
        type=int,
        default=1,
        metavar="N",
        help="markers of another set (2, 3, …), for a second card in the same photo",
    )
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Write it."""
    write_card_pdf(args.file, args.paper, args.set)
    print(f"{args.file}: print at 100 %, then measure the check length with callipers")
    return 0
