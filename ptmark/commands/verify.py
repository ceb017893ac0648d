"""`ptmark verify`: whether records and photos are as they were written and signed."""

import argparse
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.record import verify_file

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "verify",
        description="Check form, seal, chain and signatures of every revision, and the photos; "
        "of a PDF its signatures. "
        "Exit code 1 where something does not hold. A signature tells that the same key "
        "signed; whose key it is, is known where its fingerprint was compared in person.",
    )
    made.add_argument("files", type=Path, nargs="+", metavar="FILE")
    made.add_argument("--photos", type=Path, metavar="FOLDER", help="look for the photos here")
    made.add_argument(
        "--key",
        action="append",
        default=[],
        metavar="FINGERPRINT",
        help="the newest revision must be signed with this key, or one of these",
    )
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Tell of each thing looked at; 1 where any does not hold."""
    whole = True
    for path in args.files:
        if path.suffix.lower() == ".pdf":
            whole = _pdf(path) and whole
            continue
        found = verify_file(path, args.photos, tuple(args.key))
        wrong = sum(one.holds is False for one in found)
        print(f"{path}: {'WRONG' if wrong else 'nothing wrong found'}")
        for one in found:
            sign = {True: "ok", False: "WRONG", None: "-"}[one.holds]
            print(f"  {sign:5}  {one.where}: {one.says}")
        whole = whole and not wrong
    return 0 if whole else 1


def _pdf(path: Path) -> bool:
    from ptmark.report.pages.sign import check_pdf

    found = check_pdf(path)
    wrong = not found or not all(one.holds for one in found)
    print(f"{path}: {'WRONG' if wrong else 'nothing wrong found'}")
    for one in found:
        print(f"  {'ok' if one.holds else 'WRONG':5}  signed by {one.signer}: {one.says}")
        print(f"         certificate SHA-256 {one.certificate}")
        print(f"         time: {one.stamped or 'of the clock of whoever signed'}")
    if not found:
        print("  WRONG  it carries no signature")
    return not wrong
