"""`ptmark record`: what a record holds and lacks; change a field, link a retest, sign."""

import argparse
from dataclasses import replace
from pathlib import Path

from ptmark.commands.options import PRACTICES, Verbs, add_practice, read_fields
from ptmark.criteria.rule_files import why_stale
from ptmark.errors import UsageError
from ptmark.process import by_practice
from ptmark.record import (
    STANDARDS,
    Record,
    Signer,
    completeness,
    fingerprint,
    key_of,
    lacking,
    link_to,
    load_record,
    process_cautions,
    save_record,
    sign_record,
    verify_file,
)
from ptmark.report.retest import retest_doubts

__all__ = ["add_signer", "add_to", "refuse_damaged", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "record",
        description="Read a record, check it against its schema and list what it lacks. A "
        "signed record that is changed becomes a new revision, chained to the signed one.",
    )
    made.add_argument("file", type=Path)
    made.add_argument(
        "--field", action="append", default=[], metavar="KEY=TEXT", help="set a field"
    )
    add_practice(made)
    made.add_argument(
        "--retest-of", type=Path, metavar="FILE", help="the record before the rework"
    )
    made.add_argument(
        "--standard", choices=sorted(STANDARDS), help="list what this standard's report lacks"
    )
    made.add_argument("--by", default="", metavar="NAME", help="who changes it")
    made.add_argument("--why", default="", metavar="TEXT", help="the reason of the change")
    made.add_argument("--sign", choices=["examiner", "reviewer"], help="sign in this role")
    add_signer(made)
    made.set_defaults(run=run)


def add_signer(made: argparse.ArgumentParser) -> None:
    """The options that name a signer."""
    made.add_argument("--name", default="", metavar="NAME", help="who signs")
    made.add_argument(
        "--qualification", default="", metavar="TEXT", help="scheme, level, number"
    )


def run(args: argparse.Namespace) -> int:
    """Read, change and sign where asked to, tell."""
    if (args.name or args.qualification) and not args.sign:
        raise UsageError("names who signs", where="--name", mend="give --sign examiner too")
    record = load_record(args.file)
    changed = _changed(record, args)
    if changed is not record or args.sign:
        refuse_damaged(args.file)
    if changed is not record:
        record = save_record(args.file, changed, by=args.by, why=args.why)
    if args.sign:
        record = _signed(args.file, record, args)
    views, verdict = record.views(), record.verdict or "no verdict"
    count = len({one["id"] for view in views for one in view.indications})
    where = f" in {len(views)} photos" if len(views) > 1 else ""
    print(f"{args.file}: revision {record.revision}; {count} indications{where}, {verdict}")
    if stale := why_stale(record.evaluation):
        print(f"  stale: {stale}")
    if record.change is not None:
        change = record.change
        print(f"  changed by {change['by']}, {change['at']}: {change['why']}")
        print(f"    {', '.join(change['what'])}")
    for one in record.signatures:
        print(f"  signed: {one['role']} {one['name']}, {one['time']}")
    _print_open(record, args.standard)
    return 0


def _print_open(record: Record, by: str | None) -> None:
    """What it lacks, and what of the process lies outside the usual limits."""
    if by:
        standard = STANDARDS[by]
        print(f"  by {standard.title} ({standard.sure}; the contract's edition governs):")
    for lack in lacking(record, by) if by else completeness(record):
        print(f"  missing: {lack}")
    for said in process_cautions(record):
        print(f"  caution: {said}")


def refuse_damaged(path: Path) -> None:
    """A record that was tampered with is neither changed nor signed."""
    wrong = next((one for one in verify_file(path) if one.holds is False), None)
    if wrong is not None:
        raise UsageError(
            f"{wrong.where} {wrong.says}",
            where=str(path),
            mend="see all of it with `ptmark verify`, and take a whole copy",
        )


def _changed(record: Record, args: argparse.Namespace) -> Record:
    fields = {**record.fields, **read_fields(args.field)}
    fields = {key: value for key, value in fields.items() if value.strip()}
    process = record.process
    if args.practice:
        process = by_practice(process, PRACTICES[args.practice]) or None
    if args.retest_of is None:
        same = (fields, process or None) == (record.fields, record.process or None)
        return record if same else replace(record, fields=fields, process=process)
    earlier = load_record(args.retest_of)
    if earlier.id == record.id:
        raise UsageError("a record is no retest of itself", where="--retest-of")
    link = link_to(earlier, args.retest_of.name)
    linked = replace(record, fields=fields, process=process, retest_of=link)
    for doubt in retest_doubts(earlier, linked):
        print(f"  look: {doubt}")
    return linked


def _signed(path: Path, record: Record, args: argparse.Namespace) -> Record:
    name = args.name or record.fields.get(args.sign, "")
    if not name.strip():
        raise UsageError("nobody is named to sign", where="--sign", mend="give --name")
    qualification = args.qualification or record.fields.get(f"{args.sign}_certificate", "")
    who = Signer(role=args.sign, name=name, qualification=qualification)
    made = save_record(path, sign_record(record, who, key_of(name)))
    print(f"signed by {name}; key {fingerprint(made.signatures[-1]['key'])}")
    return made
