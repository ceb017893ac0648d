"""`ptmark archive find` and `log`: looking for inspections, and for who changed what."""

import argparse
import json
import re
import sys
from dataclasses import fields, replace
from datetime import date
from typing import TYPE_CHECKING, Any

from ptmark.commands.options import Verbs
from ptmark.errors import UsageError
from ptmark.units import parse_length

if TYPE_CHECKING:
    from ptmark.archive import Added, Archive, Hit, Query
    from ptmark.record import Record

__all__ = [
    "add_query",
    "add_to",
    "query_of",
    "say",
    "say_of_added",
    "told_day",
    "told_doubt",
    "told_length",
]

_ASKED = (
    ("part", "part number; * any letters, ? one"),
    ("serial", "serial number; * and ? as above"),
    ("since", "examined on this day or later, year-month-day"),
    ("until", "examined on this day or earlier"),
    ("verdict", "acceptable, rejectable or undecided"),
    ("disposition", "accept, reject, rework and retest, or refer"),
    ("examiner", "name; * and ? as above"),
    ("procedure", "number; * and ? as above"),
    ("criteria", "name of the profile"),
    ("kind", "an indication of this kind"),
    ("shape", "an indication that is linear or rounded"),
    ("words", "words that stand in it, all of them; a last * takes beginnings"),
    ("photo", "SHA-256 of a photo"),
)

_WORDS = {
    "verdict": ("acceptable", "rejectable", "undecided"),
    "disposition": ("accept", "reject", "rework and retest", "refer"),
    "shape": ("linear", "rounded"),
}


def told_length(mm: float | None, u_mm: float | None, least: bool) -> str:  # noqa: FBT001
    """A length ± U as the archive's commands print it; with ≥ where it is the ``least``."""
    if mm is None:
        return "—"
    sign = "≥ " if least else ""
    return f"{sign}{mm:.2f} mm" if u_mm is None else f"{sign}{mm:.2f} ± {u_mm:.2f} mm"


def say(*pieces: str) -> None:
    """Print one line, pieces with a tab between; a line's end in one breaks none."""
    plain = ("".join(c if c.isprintable() else " " for c in one) for one in pieces)
    if any(pieces):
        print("\t".join(plain))


def told_doubt(record: "Record", hit: "Hit") -> str:
    """What is said where a record is filed under another day than it gives; "" for nothing."""
    from ptmark.archive.derive import is_day_given

    given = record.fields.get("examination_date", "")
    if is_day_given(given, hit.examined_on):
        return ""
    return (
        f"  its examination date, '{given or 'not given'}', is no day: "
        f"it is filed under {hit.examined_on}"
    )


def say_of_added(archive: "Archive", added: "Added") -> None:
    """Say where a record is filed otherwise than it says, and that a rule had deleted it."""
    from ptmark import archive as room

    for hit in room.find(archive, room.Query(record_id=added.record_id)).hits:
        say(told_doubt(room.record_of(archive, hit.record_id), hit))
    if added.state == "new":
        with archive.reading() as conn:
            told = list(room.lines(conn, added.record_id))
        gone = [line.at for line in told if line.action == "deleted"]
        if gone:
            say(f"  a rule deleted it at {gone[-1]}: it is kept again")


def add_query(made: argparse.ArgumentParser) -> None:
    """Options that say what is looked for."""
    for name, says in _ASKED:
        known = _WORDS.get(name)  # a word misspelled finds nothing, and a hold would keep it
        made.add_argument(f"--{name}", default="", choices=known, metavar="TEXT", help=says)
    made.add_argument("--record", dest="record_id", default="", metavar="ID", help="one record")
    made.add_argument(
        "--shortest",
        default="",
        metavar="LENGTH",
        help="an indication this long, or one that may be: those that are told with ≥",
    )
    made.add_argument(
        "--longest", default="", metavar="LENGTH", help="and no more seen of it than this"
    )


def query_of(args: argparse.Namespace) -> "Query":
    """What the options ask."""
    from ptmark.archive import Query

    asked: dict[str, Any] = {one.name: getattr(args, one.name, "") for one in fields(Query)}
    for name, given in (("shortest_mm", args.shortest), ("longest_mm", args.longest)):
        where = f"--{name.removesuffix('_mm')}"
        asked[name] = parse_length(given, where=where) if given else None
    for name in ("since", "until"):
        told_day(asked[name], f"--{name}")
    for one, other in (("since", "until"), ("shortest", "longest")):
        least, most = (asked.get(name, asked.get(f"{name}_mm")) for name in (one, other))
        if least and most and least > most:
            raise UsageError(f"is above --{other}: nothing fits", where=f"--{one}")
    return Query(**asked)


def told_day(given: str, where: str) -> date | None:
    """The day that an option names, None for none; UsageError where it is no day."""
    if not given:
        return None
    if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", given):
        raise UsageError(f"'{given}' is no date", where=where, mend="write year-month-day")
    try:
        return date.fromisoformat(given)
    except ValueError as exc:
        raise UsageError(f"'{given}' is no date ({exc})", where=where) from exc


def _most(given: str) -> int:
    if not given.isdecimal():
        raise argparse.ArgumentTypeError(f"'{given}' is no number from 0 on")
    return int(given)


def add_to(below: Verbs) -> None:
    """Add the works."""
    made = below.add_parser("find", help="find inspections, newest first")
    add_query(made)
    made.add_argument("--format", choices=["text", "json", "csv"], default="text")
    made.add_argument("--limit", type=_most, default=0, metavar="N", help="at most so many")
    made.add_argument("--count", action="store_true", help="only how many")
    made.add_argument("--save", default="", metavar="NAME", help="keep this search")
    made.add_argument("--saved", default="", metavar="NAME", help="a search that was kept")
    made.add_argument("--list", action="store_true", help="the searches that were kept")
    made.set_defaults(work_run=_run_find)
    log = below.add_parser("log", help="who changed what and when")
    log.add_argument("--subject", default="", metavar="ID", help="of one record or name")
    log.set_defaults(work_run=_run_log)


def _run_find(archive: "Archive", args: argparse.Namespace) -> int:
    from itertools import islice

    from ptmark import archive as room

    query = query_of(args)
    _refuse_unused(args, query != room.Query())
    if args.list:
        for name, query in room.saved_searches(archive).items():
            say(name, room.query_to_json(query))
        return 0
    if args.saved:
        given = json.loads(room.query_to_json(query))
        query = replace(room.saved_search(archive, args.saved), **given)
    if args.save:
        room.save_search(archive, args.save, query)
    if args.count:
        print(room.count(archive, query))
        return 0
    hits = list(islice(room.find_all(archive, query), args.limit or None))
    if args.format == "json":
        print(json.dumps([hit.to_json() for hit in hits], ensure_ascii=False, indent=1))
    elif args.format == "csv":
        sys.stdout.write(room.found_csv(hits))
    else:
        for hit in hits:
            length = told_length(hit.longest_mm, hit.longest_u_mm, bool(hit.longest_least))
            say(
                f"{hit.examined_on}  {hit.part}  {hit.serial or '—'}  {hit.record_id}  "
                f"{hit.indications} indications, longest {length}  "
                f"{hit.verdict or 'no verdict'}, {hit.disposition or 'not disposed'}"
            )
        there = room.count(archive, query) if args.limit else len(hits)
        print(f"{len(hits)} of {there}", file=sys.stderr)
    return 0


def _refuse_unused(args: argparse.Namespace, filtered: bool) -> None:  # noqa: FBT001
    """What would change nothing is refused: who asked for it would take it for done."""
    shown = {"--limit": args.limit, "--format": args.format != "text"}
    more = {"--count": args.count, "--save": args.save, "--saved": args.saved}
    for first, others in (
        ("list", {**shown, **more, "a filter": filtered}),
        ("count", shown),
    ):
        unused = [one for one, value in others.items() if value]
        if getattr(args, first) and unused:
            raise UsageError(
                f"{' and '.join(unused)} changes nothing with --{first}",
                where="find",
                mend="leave it out",
            )


def _run_log(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import lines

    with archive.reading() as conn:
        for line in lines(conn, args.subject):
            say(str(line.seq), line.at, line.who, line.action, line.subject, line.detail)
    return 0
