"""`ptmark archive`: records and photos for each part number, kept, found and proved whole."""

import argparse
import importlib
import os
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.commands import (
    archive_find,
    archive_keep,
    archive_moving,
    archive_roles,
    archive_see,
)
from ptmark.commands.options import Verbs
from ptmark.errors import ArchiveError, PtmarkError

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_place_to", "add_to", "opened", "run"]

_READS = {"find", "show", "history", "map", "log", "export", "backup"}
_MAKES = {"add", "import"}  # of an archive that is not there all others say so


def add_to(verbs: Verbs) -> None:
    """Add the verb and what it can do."""
    made = verbs.add_parser(
        "archive",
        description="Without options the archive lies in the user's folder and is made at the "
        "first use. PTMARK_ARCHIVE_DATABASE and PTMARK_ARCHIVE_STORE name another database and "
        "photo store by URL; passwords belong there, not on the command line.",
    )
    add_place_to(made)
    below = made.add_subparsers(dest="work", required=True, metavar="WORK")
    _add(below)
    for module in (archive_find, archive_see, archive_moving, archive_keep, archive_roles):
        module.add_to(below)
    made.set_defaults(run=run)


def add_place_to(parser: argparse.ArgumentParser) -> None:
    """Add the options that `opened` reads."""
    parser.add_argument("--at", type=Path, metavar="FOLDER", help="an archive in this folder")
    parser.add_argument("--database", default="", metavar="URL", help="another database")
    parser.add_argument("--store", default="", metavar="URL", help="another photo store")
    parser.add_argument("--by", default="", metavar="NAME", help="who works with it")


def run(args: argparse.Namespace) -> int:
    """Open the archive and do the work that was asked for."""
    if hasattr(args, "unopened_run"):
        return int(args.unopened_run(args))
    with opened(args, read_only=_only_reads(args)) as archive:
        return int(args.work_run(archive, args))


def _only_reads(args: argparse.Namespace) -> bool:
    from ptmark.archive.opening import places_of

    _, _, file = places_of(args.at, args.database, args.store)
    if args.work not in _MAKES and file is not None and not file.exists():
        return True
    if args.work == "keep":
        return not (args.rule or args.hold or args.release or args.delete)
    if args.work == "verify":  # it seals what it found whole, where it may
        return file is not None and not os.access(file.parent, os.W_OK)
    return args.work in _READS and not getattr(args, "save", "")


def opened(args: argparse.Namespace, *, read_only: bool = False) -> "Archive":
    """The archive that the options name."""
    made = importlib.import_module("ptmark.archive")
    archive: Archive = made.open_archive(
        args.at, database=args.database, store=args.store, by=args.by, read_only=read_only
    )
    return archive


def _add(below: Verbs) -> None:
    made = below.add_parser("add", help="take records and their photos in")
    made.add_argument(
        "files",
        type=Path,
        nargs="+",
        metavar="RECORD.json",
        help="records; of a folder, every .json file in it",
    )
    made.add_argument("--photos", type=Path, metavar="FOLDER", help="where the photos lie")
    made.add_argument(
        "--replaces",
        default="",
        metavar="SHA256",
        help="file of an unsigned record it replaces",
    )
    made.set_defaults(work_run=_run_add)


def _run_add(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark.archive import add_record

    said = {"new": "taken in", "revised": "revised", "there": "was there already"}
    refused = 0
    for path in _records(args.files):
        try:
            one = add_record(archive, path, args.photos, replaces=args.replaces)
        except PtmarkError as exc:  # the others do not wait for it
            print(f"ptmark: {exc}", file=sys.stderr)
            refused += 1
            continue
        state = said.get(one.state, "a later revision is kept")
        print(f"{one.record_id} revision {one.revision}: {state}; {one.sha256}")
        archive_find.say_of_added(archive, one)
    return int(refused > 0)


def _records(given: list[Path]) -> Iterator[Path]:
    for one in given:
        if not one.is_dir():
            yield one
            continue
        found = sorted(one.glob("*.json"))
        if not found:
            raise ArchiveError(
                "holds no record", where=str(one), mend="name its records' folder"
            )
        yield from found
