"""`ptmark agreement`: how far examiners and reviewers agree over many records."""

import argparse
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.record import Record, load_record

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "agreement",
        description="Gather the reviews in records, and records of one photo by several "
        "examiners (field examiner), into one study of the lengths.",
    )
    made.add_argument("files", type=Path, nargs="+", metavar="RECORD")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write the page")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the table")
    made.add_argument(
        "--keep-hand",
        action="store_true",
        help="records of one photo by one examiner: keep how far the same outlines, traced "
        "again, spread, as that examiner's own uncertainty of a traced end",
    )
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Gather, write, tell."""
    from ptmark.report.study import write_study_csv, write_study_pdf
    from ptmark.review import study_of

    records = [load_record(path) for path in args.files]
    if args.keep_hand:
        _keep_hand(records)
        if not (args.pdf or args.csv):
            return 0
    study = study_of(records)
    if args.pdf:
        write_study_pdf(args.pdf, study, paper=args.paper)
    if args.csv:
        write_study_csv(args.csv, study)
    print(f"{study.records} records, {len(study.pairs)} lengths measured twice")
    if study.agreement is not None:
        one = study.agreement
        print(f"  second minus first: mean {one.mean:+.3f} mm, SD {one.sd:.3f} mm")
        print(f"  limits of agreement: {one.lower:+.3f} to {one.upper:+.3f} mm")
        print(f"  En above 1: {study.en_above_1}; found by one only: {study.missed}")
    if study.pooled is not None:
        within, among = study.pooled
        print(f"  repeatability {within:.3f} mm, reproducibility {among:.3f} mm")
    for who in study.operators:
        print(f"  {who.name}: {who.repeatability:.3f} mm, of {who.indications} measured again")
    return 0


def _keep_hand(records: list[Record]) -> None:
    from ptmark.measure import keep_hands
    from ptmark.review import hands_in

    found = hands_in(records)
    keep_hands(found)
    for examiner, by_source in found.items():
        for source, hand in by_source.items():
            how = "free hand" if source == "hand" else "drawn to the edge"
            print(
                f"{examiner}, {how}: {hand.px:.2f} px an end, {hand.free} degrees of freedom; "
                "kept for the outlines that this examiner traces from now on"
            )
