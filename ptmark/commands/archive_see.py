"""`ptmark archive show`: what is kept of one record."""

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.commands.options import Verbs
from ptmark.files import write_whole

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_to"]


def add_to(below: Verbs) -> None:
    """Add the works."""
    made = below.add_parser("show", help="what is kept of a record; write its file")
    made.add_argument("record", metavar="ID")
    made.add_argument("--to", type=Path, metavar="FILE", help="write the record's file here")
    made.set_defaults(work_run=_run_show)


def _run_show(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room

    data = room.record_bytes(archive, args.record)
    if args.to:
        write_whole(args.to, data)
        return 0
    (hit,) = room.find(archive, room.Query(record_id=args.record)).hits
    print(f"{hit.part}  {hit.serial or '—'}  examined on {hit.examined_on} by {hit.examiner}")
    print(f"  revision {hit.revision}, {hit.signatures} signatures; file {hit.sha256}")
    for one in room.indications_of(archive, args.record):
        length = "—" if one["length_mm"] is None else f"{one['length_mm']:.2f} mm"
        print(f"  {one['letter']}: {one['kind'] or 'no kind'}, {one['shape']}, {length}")
    for photo in room.photos_of(archive, args.record):
        key = room.key_for(photo["sha256"], photo["suffix"])
        where = archive.store.path(key) or f"{archive.store.url}/{key}"
        print(f"  photo {photo['name'] or photo['sha256']}: {where}")
    sys.stdout.flush()
    return 0
