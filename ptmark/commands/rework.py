"""`ptmark rework`: what has gone, stayed, grown or is new after rework."""

import argparse
from pathlib import Path

from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs, read_marks
from ptmark.commands.writing import write_json
from ptmark.folder import inspected
from ptmark.inspection.several import frame_of, minutes_given
from ptmark.photo import open_photo
from ptmark.series import GONE, KINDS, Change, Registration, compare, register_views

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "rework",
        description="Compare two photos of one area: which indications have gone, stayed, "
        "grown or are new. Growth is called only beyond the combined uncertainty.",
    )
    made.add_argument("before", type=Path, metavar="BEFORE")
    made.add_argument("after", type=Path, metavar="AFTER")
    made.add_argument(
        "--minutes", metavar="M,M", help="minutes since the developer of each photo"
    )
    made.add_argument(
        "--marks",
        nargs=2,
        metavar="X,Y,X,Y,…",
        help="four or more marks that both photos show: places in BEFORE, then in AFTER, px",
    )
    made.add_argument(
        "--card-stays", action="store_true", help="the scale card was not moved meanwhile"
    )
    made.add_argument("--json", type=Path, metavar="FILE", help="write the lists")
    made.add_argument("--image", type=Path, metavar="FILE", help="write both photos, marked")
    add_measuring(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure both, match, write, tell."""
    asked, marks = read_asked(args), read_marks(args.marks, 2)
    minutes: list[float | None] = [None, None]
    if args.minutes is not None:
        minutes = [*minutes_given(args.minutes, 2)]
    before, after = (
        frame_of(inspected(path, asked), at)
        for path, at in zip((args.before, args.after), minutes, strict=True)
    )
    pair = (marks[0], marks[1]) if marks else None
    lead = register_views(before.view, after.view, marks=pair, card_stays=args.card_stays)
    changes = compare(before, after, lead)
    if args.json or args.image:
        from ptmark.report.annotate import write_image
        from ptmark.report.rework import rework_json, rework_picture

        if args.json:
            write_json(args.json, rework_json(changes, before, after, lead))
        if args.image:
            one, other = open_photo(args.before), open_photo(args.after)
            picture = rework_picture(changes, (before, one.rgb), (after, other.rgb), lead)
            write_image(args.image, picture)
    _print(changes, lead)
    return 0


def _print(changes: tuple[Change, ...], lead: Registration) -> None:
    from ptmark.report.growth_data import laid_over
    from ptmark.report.rework import change_words

    print(f"{laid_over(lead)} {lead.card}".rstrip())
    for kind in KINDS:
        members = [one for one in changes if one.kind == kind]
        print(f"{kind}: {len(members)}")
        for one in members:
            print(f"  {change_words(one)}")
        if kind == "gone" and members:
            print(f"  caution: {GONE}")
    for caution in lead.cautions:
        print(f"  caution: {caution}")
