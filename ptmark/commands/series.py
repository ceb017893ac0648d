"""`ptmark series`: how indications grow in photos taken during development."""

import argparse
from pathlib import Path

from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs
from ptmark.commands.writing import write_json
from ptmark.errors import UsageError
from ptmark.folder import inspected
from ptmark.inspection.several import frame_of, minutes_given, minutes_taken
from ptmark.photo import read_info
from ptmark.series import WINDOWS, Growth, growth_of, read_window

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "series",
        description="Follow each indication through photos of one area taken during "
        "development: length and area against minutes, measured points only, and which photo "
        "falls in the time to evaluate.",
    )
    made.add_argument("photos", type=Path, nargs="+", metavar="PHOTO")
    time = made.add_mutually_exclusive_group(required=True)
    time.add_argument(
        "--minutes", metavar="M,M,…", help="minutes since the developer, one for each photo"
    )
    time.add_argument(
        "--developed",
        metavar="TIME",
        help="when the developer was dry, by the camera's clock (10:05), which gives the rest",
    )
    made.add_argument(
        "--window",
        default="asme-v",
        metavar="NAME|FIRST-LAST",
        help=f"minutes in which to evaluate: {', '.join(WINDOWS)}, or such as 10-30 (asme-v)",
    )
    made.add_argument(
        "--card-stays", action="store_true", help="the scale card was not moved meanwhile"
    )
    made.add_argument("--json", type=Path, metavar="FILE", help="write the curves")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the measured points")
    made.add_argument("--image", type=Path, metavar="FILE", help="write the plot")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write plot and points on paper")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    add_measuring(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure each photo, match, write, tell."""
    window, asked = read_window(args.window), read_asked(args)
    photos: list[Path] = args.photos
    if len(photos) < 2:
        raise UsageError("one photo is no series", where="series", mend="name two or more")
    if args.minutes is not None:
        minutes = minutes_given(args.minutes, len(photos))
    else:
        minutes = minutes_taken([read_info(path) for path in photos], args.developed)
    frames = [
        frame_of(inspected(path, asked), at) for path, at in zip(photos, minutes, strict=True)
    ]
    growth = growth_of(frames, window, card_stays=args.card_stays)
    _write(args, growth)
    _print(growth)
    return 0


def _write(args: argparse.Namespace, growth: Growth) -> None:
    from ptmark.report.annotate import write_image
    from ptmark.report.growth import growth_picture
    from ptmark.report.growth_data import growth_json, write_growth_csv
    from ptmark.report.growth_pdf import write_growth_pdf

    if args.json:
        write_json(args.json, growth_json(growth))
    if args.csv:
        write_growth_csv(args.csv, growth)
    if args.image:
        write_image(args.image, growth_picture(growth))
    if args.pdf:
        write_growth_pdf(args.pdf, growth, paper=args.paper)


def _print(growth: Growth) -> None:
    for name, why in growth.left_out:
        print(f"  left out: {name}: {why}")
    for curve in growth.curves:
        told = ", ".join(
            f"{one.minutes:g} min {one.length.value:.2f} ± {one.length.expanded:.2f} mm"
            for one in curve.readings
        )
        print(f"  {curve.id:>3}  {told}")
        for note in curve.notes:
            print(f"       {note}")
    index = growth.choice.index
    name = "no photo" if index is None else growth.frames[index].name
    print(f"evaluate {name}: {growth.choice.says}")
    for caution in growth.cautions:
        print(f"  caution: {caution}")
