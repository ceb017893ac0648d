"""`ptmark archive verify`, `repair`, `rebuild`, `backup`, `export` and `import`."""

import argparse
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.commands.archive_find import add_query, query_of, say_of_added
from ptmark.commands.options import Verbs
from ptmark.errors import PtmarkError

if TYPE_CHECKING:
    from ptmark.archive import Archive, Verified

__all__ = ["add_to"]


def add_to(below: Verbs) -> None:
    """Add the works."""
    made = below.add_parser("verify", help="read everything again; exit code 1 if it differs")
    made.add_argument("--resume", action="store_true", help="go on where a stopped run came to")
    made.set_defaults(work_run=_run_verify)
    made = below.add_parser("repair", help="mend what verify finds")
    made.add_argument("--from", dest="copy", type=Path, metavar="FOLDER", help="a second copy")
    made.set_defaults(work_run=_run_repair)
    made = below.add_parser(
        "rebuild", help="make a lost or broken database from the photo store"
    )
    made.set_defaults(unopened_run=_run_rebuild)
    made = below.add_parser("backup", help="a second copy, made while the archive is in use")
    made.add_argument("folder", type=Path, metavar="FOLDER")
    made.set_defaults(work_run=_run_backup)
    made = below.add_parser("export", help="write bundles of what is found")
    add_query(made)
    made.add_argument("--to", type=Path, required=True, metavar="FOLDER", help="where to")
    made.add_argument(
        "--without-location", action="store_true", help="copies of the photos without the place"
    )
    made.set_defaults(work_run=_run_export)
    made = below.add_parser("import", help="take bundles in")
    made.add_argument("given", type=Path, metavar="FILE.zip|FOLDER")
    made.set_defaults(work_run=_run_import)


def _run_verify(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import verify

    found = verify(archive, resume=args.resume, progress=_counter())
    return _told(found)


def _told(found: "Verified") -> int:
    for one in found.problems:
        print(f"{one.kind}: {one.subject}: {one.says}")
    said = "whole" if found.whole else "NOT whole"
    print(
        f"{found.records} records and {found.photos} photos read, {found.bytes} bytes: {said}"
    )
    return 0 if found.whole else 1


def _counter() -> Callable[[int, int], None] | None:
    """How far it is, on a terminal only."""
    if not sys.stderr.isatty():
        return None

    def say(done: int, total: int) -> None:
        print(f"\r{done} of {total}", end="", file=sys.stderr, flush=True)

    return say


def _run_repair(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import repair

    mended, found = repair(archive, args.copy)
    for subject in mended:
        print(f"mended: {subject}")
    if not found.whole:
        print("what is left: repair --from another copy, or `ptmark archive rebuild`")
    return _told(found)


def _run_rebuild(args: argparse.Namespace) -> int:
    from ptmark.archive import rebuild

    found = rebuild(args.at, database=args.database, store=args.store, by=args.by)
    if found is None:
        print("the database is whole: nothing was changed")
        return 0
    print(f"{found.records} records and {found.lines} lines of the log were made again")
    if found.aside is not None:
        print(f"the database that was there is kept as {found.aside}")
    for name in found.lost:
        print(f"missing: {name}: its file is not whole in the store")
    for key in found.damaged:
        print(f"damaged: log: {key} cannot be read; it was left as it is")
    for key in found.untold:
        print(f"orphaned: {key}: no line of the log that is left tells of this record's file")
    for number in found.broken:
        print(f"changed: log: line {number} does not fit the chain; another may be missing")
    return 1 if found.lost or found.broken or found.damaged else 0


def _run_backup(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import back_up

    print(f"{back_up(archive, args.folder)} photos and the database are in {args.folder}")
    return 0


def _run_export(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import export

    made = export(archive, query_of(args), args.to, leave_out_location=args.without_location)
    print(f"{made.records} records with {made.photos} photos are in {args.to}")
    if made.deleted:
        print(f"  a rule deleted {made.deleted} more meanwhile: they are not there")
    if args.without_location:
        print(
            "  copies from which a place or a maker's own note was taken out: "
            f"{made.places_left_out}; the originals are untouched"
        )
    return 0


def _run_import(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import take_bundles

    refused: list[PtmarkError] = []
    for one in take_bundles(archive, args.given, refused):
        print(f"{one.record_id} revision {one.revision}: {one.state}")
        if one.placed_otherwise:
            print(
                "  its bundle places it otherwise on the part: this archive's own place is "
                "kept (`ptmark archive place` sets another)"
            )
        say_of_added(archive, one)
    for error in refused:
        print(f"ptmark: {error}", file=sys.stderr)
    return int(bool(refused))
