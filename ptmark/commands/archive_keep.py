"""`ptmark archive keep`: how long records are kept, holds, and deletion by rule."""

import argparse
from datetime import datetime
from typing import TYPE_CHECKING

from ptmark.commands.archive_find import add_query, query_of, say, told_day
from ptmark.commands.options import Verbs
from ptmark.errors import UsageError

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_to"]

_TAKES = {
    "rule": ("years", "reason", "a filter"),
    "hold": ("reason", "a filter"),
    "release": ("reason",),
    "due": ("on",),
    "delete": ("on",),
}


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
    _refuse_unused(args, asked != room.Query())
    if args.rule:
        room.keep_for(archive, args.rule, asked, args.years, args.reason)
        say(f"rule {args.rule} is set; it fits {room.count(archive, asked)} records now")
    elif args.hold:
        room.hold(archive, args.hold, asked, args.reason)
        say(f"hold {args.hold} is set; it fits {room.count(archive, asked)} records now")
    elif args.release:
        room.release(archive, args.release, args.reason)
        say(f"{args.release} is taken away; the log keeps it and why")
    elif args.due or args.delete:
        _due(archive, args)
    else:
        for kind, rows in room.keeping(archive).items():
            for row in rows:
                years = f", {row['years']:g} years" if kind == "rule" else ""
                say(f"{kind} {row['name']}{years}: {row['query']}; {row['reason']}")
    return 0


def _refuse_unused(args: argparse.Namespace, filtered: bool) -> None:  # noqa: FBT001
    """What would change nothing is refused: who asked for it would take it for done."""
    work = next((one for one in _TAKES if getattr(args, one, "")), "")
    if filtered and (args.due or args.delete):
        raise UsageError(
            "what is due is all that the rules tell: no filter narrows it",
            where="keep",
            mend="leave the filters out, or set a hold on what is to stay",
        )
    given = {one: getattr(args, one) for one in ("years", "reason", "on")}
    given["a filter"] = filtered
    unused = [one for one, value in given.items() if value and one not in _TAKES.get(work, ())]
    if unused:
        raise UsageError(
            f"{' and '.join(unused)} changes nothing "
            + (f"with --{work}" if work else "alone"),
            where="keep",
            mend="leave it out, or name a --rule or a --hold",
        )


def _due(archive: "Archive", args: argparse.Namespace) -> None:
    from ptmark import archive as room

    day = told_day(args.on, "--on")
    if args.delete and day is not None and day > datetime.now().astimezone().date():
        raise UsageError(
            f"{day} is yet to come: nothing is deleted before its time",
            where="--on",
            mend="--due tells what will be due by then",
        )
    found = room.apply_rules(archive, day) if args.delete else room.due(archive, day)
    verb = "deleted" if args.delete else "may be deleted"
    for one in found:
        hit = one.hit
        say(f"{hit.examined_on}  {hit.part}  {hit.record_id}: {verb} by rule {one.rule}")
    print(f"{len(found)} records {verb}")
