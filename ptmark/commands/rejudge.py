"""``ptmark rejudge``: records judged again, and what changes.

By another profile or edition where one is named, else each by the present text of the rules
that it names: what is asked without a word more is whether a verdict still stands. Without
files it judges what the archive keeps of a part number.

The records are read, never written: a verdict that stands in a record changes only where a
person judges it again there.
"""

import argparse
import json
from collections import Counter
from collections.abc import Callable, Iterator
from functools import partial
from pathlib import Path
from typing import Any, NamedTuple

from ptmark.commands.archive import add_place_to, opened
from ptmark.criteria import (
    SEVERITY,
    Change,
    Evaluation,
    Profile,
    changes,
    evaluation_to_json,
    is_stale,
    load_profile,
)
from ptmark.criteria.rule_files import rules_again
from ptmark.errors import CriteriaError, PtmarkError, UsageError
from ptmark.files import csv_text, write_whole
from ptmark.record import Record, evaluated_again, load_record

__all__ = ["add_to", "run"]

_HEAD = (
    "record",
    "part_number",
    "what",
    "before",
    "after",
    "rule_before",
    "rule_after",
    "criteria",
)
_OWN = "Each record by the rules that it names, as they stand now (--criteria names others):"


class _Judged(NamedTuple):
    """One photo of a record, judged again; ``photo`` is its number from 1, 0 where alone."""

    where: str
    record: Record
    photo: int
    profile: Profile
    after: Evaluation
    rows: list[Change]
    stale: bool

    @property
    def name(self) -> str:
        return f"{self.where}, photo {self.photo}" if self.photo else self.where


def add_to(subparsers: Any) -> None:  # noqa: ANN401 - argparse keeps its class private
    """Add the verb to the command line."""
    parser = subparsers.add_parser(
        "rejudge",
        description="Judge records again by another profile or edition, or each by its own as "
        "that stands now, and list what changes, verdict and indication by indication. The "
        "records stay as they are. With --part alone, what the archive keeps of that part "
        "number is judged; --at, --database and --store name another archive than your own.",
    )
    parser.add_argument(
        "paths",
        type=Path,
        nargs="*",
        metavar="RECORD|FOLDER",
        help="records, or folders of them; none for the archive",
    )
    parser.add_argument(
        "--criteria",
        metavar="PROFILE",
        help="a name, or a file ending in .toml; by default the present text of the rules that "
        "each record names",
    )
    parser.add_argument(
        "--part",
        metavar="NUMBER",
        help="only records of this part number; in the archive * stands for any letters",
    )
    add_place_to(parser)
    parser.add_argument(
        "--decision",
        choices=("guarded", "simple"),
        help="decision rule; by default the one that each record was judged with",
    )
    parser.add_argument("--csv", type=Path, metavar="FILE", help="write every row here")
    parser.add_argument("--json", type=Path, metavar="FILE", help="write the evaluations here")
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Judge, print what changes; 0, or 1 where a file could not be judged."""
    given = None if args.criteria is None else load_profile(args.criteria)
    judged, failed = [], []
    for where, named, read in _records(args):
        try:
            record = read()
            if not args.paths or args.part in (None, record.fields.get("part_number", "")):
                profile = given or _present_rules(where, record)
                judged += _again(where, record, profile, args.decision)
        except PtmarkError as exc:
            if named:
                raise
            failed.append(f"{where}: not judged: {exc.what}")
    if not judged and not failed:
        raise UsageError("there is no record to judge", where="rejudge")
    if args.csv is not None:
        write_whole(args.csv, _csv(judged).encode())
    if args.json is not None:
        write_whole(args.json, (json.dumps(_json(judged), indent=1) + "\n").encode())
    print(_OWN if given is None else f"By {given.title} ({given.edition}):")
    for one in judged:
        print(_told(one, named=given is None))
    for line in failed:
        print(line)
    print(_table(judged))
    moved = sum(one.rows[0].differs for one in judged)
    print(f"{len(judged)} judged, the verdict of {moved} changes; {len(failed)} not judged")
    return 1 if failed else 0


def _records(args: argparse.Namespace) -> Iterator[tuple[str, bool, Callable[[], Record]]]:
    """Where each record lies, whether it was named itself, and how it is read."""
    if args.paths:
        for path, named in _files(args.paths):
            yield str(path), named, partial(load_record, path)
        return
    if not args.part:
        raise UsageError(
            "no record is named", where="rejudge", mend="name files, folders or --part NUMBER"
        )
    from ptmark.archive import Query, find_all, record_of

    with opened(args, read_only=True) as archive:
        for hit in find_all(archive, Query(part=args.part)):
            part, serial = hit.part or "no part number", hit.serial or "none"
            where = f"{part}, serial {serial}, {hit.record_id}"
            yield where, False, partial(record_of, archive, hit.record_id)


def _files(paths: list[Path]) -> list[tuple[Path, bool]]:
    """Each file once, and whether it was named itself; folders are not entered deeper."""
    found: dict[Path, bool] = {}
    for path in paths:
        if path.is_dir():
            for inside in sorted(path.glob("*.json")):
                found.setdefault(inside, False)
        else:
            found[path] = True
    return list(found.items())


def _present_rules(where: str, record: Record) -> Profile:
    """The rules that the record was judged by, as they stand now under that name."""
    views = record.views()
    named = next((view.evaluation for view in views if view.evaluation is not None), None)
    if named is None:
        raise CriteriaError(
            "was not judged yet, so it names no rules",
            where=where,
            mend="name them with --criteria",
        )
    try:
        return load_profile(rules_again(named))
    except CriteriaError as error:
        raise CriteriaError(
            f"its rules '{named['profile']}' are not to be had here: {error.what}",
            where=where,
            mend="put their file back, or name others with --criteria",
        ) from error


def _again(where: str, record: Record, profile: Profile, decision: str | None) -> list[_Judged]:
    """Each photo of the record that can be judged, with what changes."""
    made = []
    for number, view, after in evaluated_again(record, profile, decision):
        before = view.evaluation
        same = before is not None and before.get("profile") == profile.name
        one = _Judged(
            where,
            view,
            number,
            profile,
            after,
            changes(before, evaluation_to_json(after)),
            stale=same and before is not None and is_stale(before, profile),
        )
        made.append(one)
    return made


def _told(one: _Judged, *, named: bool) -> str:
    verdict = one.rows[0]
    by = f", by {one.profile.title} ({one.profile.edition})" if named else ""
    lines = [f"{one.name}{by}: {_step(verdict)}"]
    if one.stale:
        lines[0] += "; the profile has changed since, so the verdict in the record is stale"
    lines += [f"  {row.what}: {_step(row)}" for row in one.rows[1:] if row.differs]
    return "\n".join(lines)


def _table(judged: list[_Judged]) -> str:
    """How many records went from which verdict (rows) to which (columns)."""
    counts = Counter((one.rows[0].before, one.rows[0].after) for one in judged)
    befores = [name for name in ("not judged", *SEVERITY) if any(b == name for b, _ in counts)]
    lines = ["", f"{'before':12}{''.join(f'{name:>12}' for name in SEVERITY)}"]
    for before in befores:
        lines.append(f"{before:12}{''.join(f'{counts[before, a]:12}' for a in SEVERITY)}")
    return "\n".join([*lines, ""])


def _step(row: Change) -> str:
    if not row.differs:
        return f"{row.after}, as before"
    why = f" by {row.rule_after}" if row.rule_after else ""
    return f"{row.before} -> {row.after}{why}"


def _csv(judged: list[_Judged]) -> str:
    rows: list[tuple[str, ...]] = [_HEAD]
    for one in judged:
        for row in one.rows:
            rules = (row.rule_before, row.rule_after, one.profile.name)
            part = one.record.fields.get("part_number", "")
            rows.append((one.name, part, row.what, row.before, row.after, *rules))
    return csv_text(rows, end="\n")


def _json(judged: list[_Judged]) -> dict[str, Any]:
    return {
        "records": [
            {
                "file": one.where,
                **({"photo": one.photo} if one.photo else {}),
                "id": one.record.id,
                "part_number": one.record.fields.get("part_number", ""),
                "stale": one.stale,
                "before": one.record.evaluation,
                "after": evaluation_to_json(one.after),
            }
            for one in judged
        ]
    }
