"""`ptmark export`: a record in the formats that others read."""

import argparse
from collections.abc import Iterator
from itertools import islice
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.commands.photos import photo_of, photos_of
from ptmark.commands.record import refuse_damaged
from ptmark.errors import UsageError
from ptmark.photo import Photo
from ptmark.record import load_record

__all__ = ["add_to", "run"]

_ENDINGS = (".zip", ".xlsx", ".geojson", ".coco.json", ".dcm")


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "export",
        description="The ending says the format: .zip the exchange bundle with record, photos, "
        "reports, schema and checksums; .xlsx a spreadsheet; .geojson the outlines in mm, a "
        "file for each photo; .coco.json the outlines of one or many records for training; "
        ".dcm a DICOM image (DICONDE) with the measurements, a file for each photo.",
    )
    made.add_argument("files", type=Path, nargs="+", metavar="RECORD")
    made.add_argument("--to", type=Path, required=True, metavar="FILE", help="where to")
    made.add_argument("--photos", type=Path, metavar="FOLDER", help="where the photos lie")
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Write by the ending."""
    name = args.to.name.lower()
    ending = next((one for one in _ENDINGS if name.endswith(one)), None)
    if ending is None:
        raise UsageError(
            f"'{args.to.name}' has no known ending",
            where="--to",
            mend=f"use {', '.join(_ENDINGS)}",
        )
    if ending != ".coco.json" and len(args.files) > 1:
        raise UsageError(f"{len(args.files)} records given", mend=f"give one for {ending}")
    for path in args.files:
        refuse_damaged(path)
    records = [load_record(path) for path in args.files]
    record = records[0]
    if ending == ".coco.json":
        from ptmark.report.outlines import write_coco

        write_coco(args.to, records)
    elif ending == ".geojson":
        from ptmark.report.outlines import write_geo

        write_geo(args.to, record)
    elif ending == ".xlsx":
        from ptmark.report.sheet import write_sheet

        write_sheet(args.to, record)
    elif ending == ".dcm":
        from ptmark.report.dicom.whole import write_dicom

        write_dicom(args.to, record, photos_of(record, args.files[0], args.photos))
    else:
        from ptmark.report.bundle import write_bundle

        photo = photo_of(record, args.files[0], args.photos)
        beside = photo.info.path.absolute().parent

        def more() -> Iterator[Photo]:
            return islice(photos_of(record, args.files[0], args.photos), 1, None)

        write_bundle(args.to, record, photo.rgb, photo.info.path, beside, more)
    return 0
