"""`ptmark measure`: one photo from scale to report, without a hand on it."""

import argparse
import re
from pathlib import Path

from ptmark.commands.options import Verbs, read_lines, read_points, read_rectangle
from ptmark.errors import UsageError
from ptmark.inspection import Inspection
from ptmark.record import FIELDS, Record, save_record
from ptmark.scale import CardReference
from ptmark.units import parse_length

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "measure",
        help="measure the indications in a photo",
        description="Measure the indications in a photo. The scale comes from the printed card "
        "where no line or rectangle is given.",
    )
    made.add_argument("photo", type=Path)
    scale = made.add_mutually_exclusive_group()
    scale.add_argument(
        "--line",
        action="append",
        metavar="X1,Y1,X2,Y2=LENGTH",
        help="a line of known length (150mm, 6in); twice: two lines at right angles",
    )
    scale.add_argument(
        "--rectangle",
        metavar="X1,Y1,…,X4,Y4=WxH",
        help="four corners, clockwise from the top left, of a rectangle (85.6x53.98mm)",
    )
    scale.add_argument("--check", metavar="LENGTH", help="measured check length of the card")
    made.add_argument("--area", metavar="X,Y,X,Y,…", help="the examined area, px")
    made.add_argument(
        "--relief", metavar="LENGTH", help="height of the weld crown above the scale"
    )
    made.add_argument(
        "--weld", metavar="X1,Y1,X2,Y2", help="two points on the weld's middle, px"
    )
    made.add_argument("--weld-length", metavar="LENGTH", help="length of weld in the area")
    made.add_argument("--thickness", metavar="LENGTH", help="thickness of the part")
    made.add_argument("--criteria", default="", metavar="PROFILE", help="see: ptmark criteria")
    made.add_argument("--decision", choices=["guarded", "simple"], default="guarded")
    made.add_argument(
        "--field", action="append", default=[], metavar="KEY=TEXT", help="a field of the record"
    )
    made.add_argument("--json", type=Path, metavar="FILE", help="write the record")
    made.add_argument("--image", type=Path, metavar="FILE", help="write the annotated image")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write the report")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the table")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure, write what was asked for, print the table."""
    inspection = Inspection()
    changes = _given(args)
    inspection.change("take the command line", **changes)
    _ = inspection.profile  # a profile that cannot be used is refused before the work
    inspection.open(args.photo)
    inspection.set_reference(_reference(args))
    if args.area:
        area = read_points(args.area, "--area", least=3)
        inspection.change("mark the examined area", area_px=tuple(area))
    if args.weld:
        inspection.change("mark the weld", weld_px=_weld(args.weld))
    inspection.set_suggestions(inspection.look())
    record = inspection.to_record()
    _write(args, inspection, record)
    _print(record)
    return 0


def _given(args: argparse.Namespace) -> dict[str, object]:
    known = {field.key for field in FIELDS}
    fields = {}
    for text in args.field:
        key, sign, value = text.partition("=")
        if not sign or key not in known:
            raise UsageError(
                f"'{text}' is no field",
                where="--field",
                mend=f"write KEY=TEXT, KEY one of {', '.join(sorted(known))}",
            )
        fields[key] = value
    return {
        "profile": args.criteria,
        "decision_rule": args.decision,
        "fields": fields,
        "relief_mm": _relief(args.relief),
        "weld_length_mm": _length(args.weld_length, "--weld-length"),
        "thickness_mm": _length(args.thickness, "--thickness"),
    }


def _weld(text: str) -> tuple[tuple[float, float], tuple[float, float]]:
    start, end = read_points(text, "--weld", least=2, exactly=True)
    if start == end:
        raise UsageError("both points are the same", where="--weld", mend="give two points")
    return start, end


def _length(text: str | None, where: str) -> float | None:
    return None if text is None else parse_length(text, where=where)


def _relief(text: str | None) -> float | None:
    if text is not None and re.fullmatch(r"0+([.,]0*)?\s*(mm|cm|in)?", text.strip()):
        return 0.0  # a flat surface is a statement of its own
    return _length(text, "--relief")


def _reference(args: argparse.Namespace):  # type: ignore[no-untyped-def]  # noqa: ANN202
    if args.line:
        return read_lines(args.line)
    if args.rectangle:
        return read_rectangle(args.rectangle)
    return CardReference(check_mm=_length(args.check, "--check"))


def _write(args: argparse.Namespace, inspection: Inspection, record: Record) -> None:
    if args.json:
        save_record(args.json, record)
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
