"""`ptmark archive keep`: how long records are kept, holds, and deletion by rule."""

import argparse
from typing import TYPE_CHECKING

from ptmark.commands.archive_find import add_query, query_of, told_day
from ptmark.commands.options import Verbs
from ptmark.errors import UsageError

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_to"]


def add_to(below: Verbs) -> None:
    """Add the work."""
    made = below.add_parser(
        "keep",
        help="rules, holds, and what is due",
        description="Without options: the rules and holds. Nothing is deleted but by rule, and "
        "nothing that a hold or a signed retest needs. How long records must be kept, the "
        "contract and local law decide.",
    )
    add_query(made)
    one = made.add_mutually_exclusive_group()
    one.add_argument("--rule", default="", metavar="NAME", help="keep what is asked for")
    made.add_argument("--years", type=float, default=0.0, metavar="N", help="for so many years")
    one.add_argument("--hold", default="", metavar="NAME", help="delete none of what is asked")
    one.add_argument("--release", default="", metavar="NAME", help="take a rule or hold away")
    made.add_argument("--reason", default="", metavar="TEXT", help="why")
    one.add_argument("--due", action="store_true", help="what may be deleted")
    one.add_argument("--delete", action="store_true", help="delete all that is due")
    made.add_argument("--on", default="", metavar="DATE", help="as of this day; today without")
    made.set_defaults(work_run=_run)


def _run(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room

    asked = query_of(args)
    if (args.due or args.delete) and asked != room.Query():
        raise UsageError(
            "what is due is all that the rules tell: no filter narrows it",
            where="keep",
            mend="leave the filters out, or set a hold on what is to stay",
        )
    if args.rule:
        room.keep_for(archive, args.rule, asked, args.years, args.reason)
    elif args.hold:
        room.hold(archive, args.hold, asked, args.reason)
    elif args.release:
        room.release(archive, args.release, args.reason)
    elif args.due or args.delete:
        day = told_day(args.on, "--on")
        found = room.apply_rules(archive, day) if args.delete else room.due(archive, day)
        verb = "deleted" if args.delete else "may be deleted"
        for one in found:
            hit = one.hit
            print(f"{hit.examined_on}  {hit.part}  {hit.record_id}: {verb} by rule {one.rule}")
        print(f"{len(found)} records {verb}")
    else:
        for kind, rows in room.keeping(archive).items():
            for row in rows:
                years = f", {row['years']:g} years" if kind == "rule" else ""
                print(f"{kind} {row['name']}{years}: {row['query']}; {row['reason']}")
    return 0
