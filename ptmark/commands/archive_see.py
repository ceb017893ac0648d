"""`ptmark archive show`, `history`, `map` and `place`: what was seen, when and where."""

import argparse
import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

from ptmark.commands.archive_find import say, told_doubt, told_length
from ptmark.commands.options import Verbs, read_points
from ptmark.commands.writing import write_json
from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.units import parse_length

if TYPE_CHECKING:
    from ptmark.archive import Archive

__all__ = ["add_to"]


def add_to(below: Verbs) -> None:
    """Add the works."""
    made = below.add_parser("show", help="what is kept of a record; write its file")
    made.add_argument("record", metavar="ID")
    made.add_argument("--to", type=Path, metavar="FILE", help="write the record's file here")
    made.set_defaults(work_run=_run_show)
    _add_history(below)
    _add_map(below)


def _run_show(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room
    from ptmark.photo.location import has_makers_note, location_of, places_named

    data = room.record_bytes(archive, args.record)
    if args.to:
        write_whole(args.to, data)
        return 0
    (hit,) = room.find(archive, room.Query(record_id=args.record)).hits
    by = f" by {hit.examiner}" if hit.examiner else ""
    say(f"{hit.part}  {hit.serial or '—'}  examined on {hit.examined_on}{by}")
    say(told_doubt(room.record_of(archive, args.record), hit))
    print(f"  revision {hit.revision}, {hit.signatures} signatures; file {hit.sha256}")
    for one in room.indications_of(archive, args.record):
        length = told_length(one["length_mm"], one["length_u_mm"], bool(one["least"]))
        say(f"  {one['letter']}: {one['kind'] or 'no kind'}, {one['shape']}, {length}")
    for photo in room.photos_of(archive, args.record):
        key = room.key_for(photo["sha256"], photo["suffix"])
        where = archive.store.path(key) or f"{archive.store.url}/{key}"
        say(f"  photo {photo['name'] or photo['sha256']}: {where}")
        whole = archive.store.read(key)
        if (place := location_of(whole)) is not None:
            print(
                f"    taken at {place.latitude:.5f}, {place.longitude:.5f}, as the photo says"
            )
        if names := places_named(whole):
            say(f"    names a place: {', '.join(names)}")
        if has_makers_note(whole):
            print("    its camera's maker left a note of its own in it, which may hold a place")
    return 0


def _add_history(below: Verbs) -> None:
    made = below.add_parser("history", help="a part number over the years, or one serial")
    made.add_argument("part", metavar="PART")
    made.add_argument("--serial", default="", metavar="TEXT", help="only this serial")
    made.add_argument("--json", action="store_true", help="as JSON")
    made.set_defaults(work_run=_run_history)


def _run_history(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room

    if args.serial:
        hits, periods = room.serial_history(archive, args.part, args.serial), []
    else:
        told = room.part_history(archive, args.part)
        hits, periods = told.hits, told.periods
    if args.json:
        years = [{**one._asdict(), "reject_rate": one.reject_rate} for one in periods]
        print(json.dumps({"years": years, "inspections": [one.to_json() for one in hits]}))
        return 0
    for one in periods:
        rate = "—" if one.reject_rate is None else f"{one.reject_rate:.0%}"
        longest = told_length(one.longest_mm, one.longest_u_mm, one.longest_least)
        print(
            f"{one.year}: {one.inspections} inspections, {one.indications} indications, "
            f"longest {longest}, rejected {one.rejected} of {one.disposed} ({rate})"
        )
    for hit in hits:
        again = f", retest of {hit.retest_of}" if hit.retest_of else ""
        say(
            f"{hit.examined_on}  {hit.serial or '—'}  {hit.record_id}  "
            f"{hit.indications} indications, {hit.verdict or 'no verdict'}, "
            f"{hit.disposition or 'not disposed'}{again}"
        )
    return 0


def _add_map(below: Verbs) -> None:
    made = below.add_parser("map", help="indications of all serials laid over each other")
    made.add_argument("part", metavar="PART")
    made.add_argument("--datum", default="", metavar="TEXT", help="records with this datum")
    made.add_argument("--cell", default="1 mm", metavar="LENGTH", help="size of a cell")
    made.add_argument("--image", type=Path, metavar="FILE", help="write it as a picture")
    made.add_argument("--json", type=Path, metavar="FILE", help="write counts and places")
    made.set_defaults(work_run=_run_map)
    place = below.add_parser("place", help="say where a record lies on its part")
    place.add_argument("record", metavar="ID")
    place.add_argument(
        "--map",
        required=True,
        metavar="A,B,C,D,E,F",
        help="X = Ax + By + C, Y = Dx + Ey + F, mm",
    )
    place.add_argument("--why", default="", metavar="TEXT", help="how it was found")
    place.set_defaults(work_run=_run_place)


def _run_map(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room
    from ptmark.report.encoding import ENDINGS, encoded
    from ptmark.report.table import save

    cell = parse_length(args.cell, where="--cell")
    found = room.place_map(archive, args.part, datum=args.datum, cell_mm=cell)
    if args.json:
        seen = [asdict(one) for one in found.seen]
        counts = found.counts.tolist()
        told = {"box_mm": found.box_mm, "cell_mm": cell, "counts": counts, "seen": seen}
        write_json(args.json, told)
    if args.image:
        ending = args.image.suffix.lower()
        if ending not in ENDINGS:
            raise UsageError(f"'{args.image.name}' is no picture", mend="write .png or .jpg")
        save(args.image, encoded(room.density_picture(found), ending))
    print(
        f"{len(found.seen)} indications of {found.records} records; most in a cell: "
        f"{int(found.counts.max())}; {found.left_out} records left out, as their place on the "
        "part is not known (give --datum, or `ptmark archive place`)"
    )
    return 0


def _run_place(archive: "Archive", args: argparse.Namespace) -> int:
    from ptmark import archive as room

    pairs = read_points(args.map, "--map", least=3, exactly=True)
    room.record_bytes(archive, args.record)  # refuses one that is not there
    room.place_record(archive, args.record, tuple(v for pair in pairs for v in pair), args.why)
    return 0
