"""`ptmark measure`: from scale to report, without a hand on it."""

import argparse
from pathlib import Path
from typing import Any

from ptmark.commands import together
from ptmark.commands.folder import add_options, check_options, measure_folder
from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs
from ptmark.errors import UsageError
from ptmark.folder import inspected
from ptmark.inspection import Inspection
from ptmark.inspection.saving import save_inspection
from ptmark.record import Record, least_of, process_cautions

__all__ = ["add_to", "run"]

_MOST_FINDINGS = 8  # told of a verdict


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "measure",
        description="Measure the indications in a photo, in every photo of a folder, or in "
        "several photos of one inspection (--together). The "
        "scale comes from the printed card where no line or rectangle is given.",
    )
    made.add_argument(
        "photos",
        type=Path,
        nargs="+",
        metavar="PHOTO",
        help="a photo, a folder of them, or several photos with --together",
    )
    add_measuring(made)
    made.add_argument("--json", type=Path, metavar="FILE", help="write the record")
    made.add_argument("--image", type=Path, metavar="FILE", help="write the annotated image")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write the report")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the table")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    add_options(made)
    together.add_options(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure one photo or one set, write what was asked for, print; or take a whole folder."""
    if args.together:
        return _together(args)
    if len(args.photos) > 1 or args.match:
        raise UsageError(
            "--match is for a set" if args.match else f"{len(args.photos)} photos given",
            mend="add --together where they show one part, else name their folder",
        )
    asked = read_asked(args)
    (args.photo,) = args.photos
    check_options(args)
    if args.photo.is_dir():
        return measure_folder(args, asked)
    return _finish(args, inspected(args.photo, asked))


def _together(args: argparse.Namespace) -> int:
    if args.out or args.jobs is not None or args.retry:
        raise UsageError("--out, --jobs and --retry are for a folder", where="--together")
    lines = together.lines_by_photo(args)
    asked = read_asked(args)
    made = together.inspected_together(args.photos, asked, lines, match=args.match)
    return _finish(args, made)


def _finish(args: argparse.Namespace, inspection: Inspection) -> int:
    record = inspection.to_record()
    _write(args, inspection, record)
    _print(record)
    return 0


def _write(args: argparse.Namespace, inspection: Inspection, record: Record) -> None:
    if args.json:
        record = save_inspection(args.json, inspection, record)
    if args.image or args.pdf:
        from ptmark.report.annotate import write_images
        from ptmark.report.pages.whole import write_pdf

        if args.image:
            write_images(args.image, record, inspection.photos.opened())
        if args.pdf:
            more = inspection.photos.opened()
            photo = next(more)
            path = photo.info.path
            write_pdf(args.pdf, record, photo.rgb, path, paper=args.paper, more=more)
    if args.csv:
        from ptmark.report.table import write_csv

        write_csv(args.csv, record)


def _print(record: Record) -> None:
    """The table as text: what a person at a terminal wants to see first."""
    for view in record.views():
        _print_photo(view)
    for caution in process_cautions(record):
        print(f"  caution: {caution}")
    if record.together is None:
        return
    from ptmark.report.wording import sized

    print(f"the set of {len(record.views())} photos: {record.verdict or 'no verdict'}")
    shown = record.rows()
    for one in record.together["seen_again"]:
        sizes = ", ".join(
            f"{sized(shown[size['photo'], one['id']], 'length')} in photo {size['photo']}"
            for size in one["sizes"]
            if size["length_mm"] is not None
        )
        print(f"  {one['id']:>3}  {sizes}; of record: photo {one['of_record']}")
    for caution in record.together["cautions"]:
        print(f"  caution: {caution}")


def _print_photo(record: Record) -> None:
    from ptmark.report.wording import judged_in, sized

    photo, scale = record.photo["file"], record.scale
    inches = judged_in(record) == "in"
    if scale["reference"] is None:
        print(f"{photo}: no scale, {len(record.indications)} indications not measured")
    else:
        print(f"{photo}: scale from {scale['reference']}, {scale['mm_per_px']:.4f} mm/px")
    for one in record.indications if scale["reference"] is not None else ():
        if one["length_mm"] is None:
            print(f"  {one['id']:>3}  not measured: the surface turns away too far there")
            continue
        least = "≥ " if any(least_of(one).values()) else ""
        length = f"{least + format(one['length_mm'], '.2f'):>7} ± {one['length_u_mm']:.2f} mm"
        width = f"{least + format(one['width_mm'], '.2f'):>6} ± {one['width_u_mm']:.2f} mm"
        if inches:
            length += f" ({sized(one, 'length', 'in')})"
        print(f"  {one['id']:>3}  {one['shape']:8}  length {length}  width {width}")
    if not record.indications:
        print("  no indication called")
    if record.left_out:
        print(f"  {len(record.left_out)} blobs left out, with reasons in the record")
    if record.evaluation is not None:
        _print_verdict(record, record.evaluation)
    for caution in record.cautions:
        print(f"  caution: {caution}")


def _print_verdict(record: Record, evaluation: dict[str, Any]) -> None:
    """The verdict with the findings that made it, of many the first."""
    from ptmark.report.wording import deciding

    print(f"  {evaluation['profile']}: {evaluation['verdict']}")
    found = deciding(record)
    for one in found[:_MOST_FINDINGS]:
        print(f"    {one['says']}" + (f" ({one['clause']})" if one["clause"] else ""))
    if len(found) > _MOST_FINDINGS:
        print(f"    and {len(found) - _MOST_FINDINGS} more, in the record")
