"""`ptmark measure`: from scale to report, without a hand on it."""

import argparse
from pathlib import Path

from ptmark.commands.folder import add_options, check_options, measure_folder
from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs
from ptmark.errors import UsageError
from ptmark.folder import inspected
from ptmark.inspection import Inspection
from ptmark.record import Record, save_record

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "measure",
        help="measure the indications in a photo",
        description="Measure the indications in a photo, or in every photo of a folder. The "
        "scale comes from the printed card where no line or rectangle is given.",
    )
    made.add_argument("photo", type=Path, metavar="PHOTO", help="a photo, or a folder of them")
    add_measuring(made)
    made.add_argument("--json", type=Path, metavar="FILE", help="write the record")
    made.add_argument("--image", type=Path, metavar="FILE", help="write the annotated image")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write the report")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the table")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    add_options(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure one photo, write what was asked for, print the table; or take a whole folder."""
    asked = read_asked(args)
    check_options(args)
    if args.photo.is_dir():
        return measure_folder(args, asked)
    inspection = inspected(args.photo, asked)
    record = inspection.to_record()
    _write(args, inspection, record)
    _print(record)
    return 0


def _write(args: argparse.Namespace, inspection: Inspection, record: Record) -> None:
    if args.json:
        record = save_record(args.json, record)
    if args.image or args.pdf:
        from ptmark.report import annotated_image, write_image, write_pdf

        photo = inspection.photo
        if photo is None:
            raise UsageError("there is no photo", mend="name a photo")
        if args.image:
            write_image(args.image, annotated_image(record, photo.rgb))
        if args.pdf:
            write_pdf(args.pdf, record, photo.rgb, photo.info.path, paper=args.paper)
    if args.csv:
        from ptmark.report import write_csv

        write_csv(args.csv, record)


def _print(record: Record) -> None:
    """The table as text: what a person at a terminal wants to see first."""
    photo, scale = record.photo["file"], record.scale
    print(f"{photo}: scale from {scale['reference']}, {scale['mm_per_px']:.4f} mm/px")
    for one in record.indications:
        length = f"{one['length_mm']:7.2f} ± {one['length_u_mm']:.2f} mm"
        width = f"{one['width_mm']:6.2f} ± {one['width_u_mm']:.2f} mm"
        print(f"  {one['id']:>3}  {one['shape']:8}  length {length}  width {width}")
    if not record.indications:
        print("  no indication called")
    if record.left_out:
        print(f"  {len(record.left_out)} blobs left out, with reasons in the record")
    if record.evaluation is not None:
        print(f"  {record.evaluation['profile']}: {record.evaluation['verdict']}")
    for caution in record.cautions:
        print(f"  caution: {caution}")
