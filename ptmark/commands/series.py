"""`ptmark series`: how indications grow in photos taken during development."""

import argparse
import sys
from pathlib import Path

from ptmark.commands.measuring import add_measuring, read_asked
from ptmark.commands.options import Verbs, read_marks
from ptmark.commands.writing import write_json
from ptmark.dye import recognise
from ptmark.errors import PhotoError, ScaleError, SeriesError, UsageError
from ptmark.folder import Asked, inspected
from ptmark.inspection.several import frame_of, minutes_given, minutes_taken
from ptmark.photo import read_info
from ptmark.series import WINDOWS, Frame, Growth, growth_of, read_window

_BAD = (PhotoError, ScaleError, SeriesError)  # of one photo: the others go on
LeftOut = list[tuple[str, str]]  # names and reasons

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
    made.add_argument(
        "--marks",
        action="append",
        metavar="X,Y,X,Y,…",
        help="four or more marks that all photos show, px: give it once for each photo, the "
        "same marks in the same order",
    )
    made.add_argument("--json", type=Path, metavar="FILE", help="write the curves")
    made.add_argument("--csv", type=Path, metavar="FILE", help="write the measured points")
    made.add_argument("--image", type=Path, metavar="FILE", help="write the plot")
    made.add_argument("--pdf", type=Path, metavar="FILE", help="write plot and points on paper")
    made.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    add_measuring(made)
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Measure each photo, match, write, tell; 1 where a photo was left out."""
    window, asked = read_window(args.window), read_asked(args)
    photos: list[Path] = args.photos
    if len(photos) < 2:
        raise UsageError("one photo is no series", where="series", mend="name two or more")
    marks = read_marks(args.marks, len(photos))
    left_out: LeftOut = []
    minutes = _minutes(args, photos, left_out)
    frames = _frames(photos, minutes, asked, left_out)
    if len(frames) < 2:
        told = "; ".join(f"{name}: {why}" for name, why in left_out)
        raise SeriesError(
            f"{len(frames)} of {len(photos)} photos can be used, which is no series ({told})",
            mend="give two or more, each with its scale",
        )
    growth = growth_of(
        list(frames.values()),
        window,
        card_stays=args.card_stays,
        marks=[marks[number] for number in frames] if marks else (),
        left_out=left_out,
    )
    _write(args, growth)
    _print(growth)
    return 1 if growth.left_out else 0


def _minutes(
    args: argparse.Namespace, photos: list[Path], left_out: LeftOut
) -> dict[int, float]:
    """Minutes by a photo's number; what does not tell them goes to ``left_out``."""
    if args.minutes is not None:
        return dict(enumerate(minutes_given(args.minutes, len(photos))))
    infos = {}
    for number, path in enumerate(photos):
        try:
            info = read_info(path)
            minutes_taken([info], "00:00")  # of its own day: refused only if it has no time
            infos[number] = info
        except _BAD as exc:
            left_out.append((path.name, exc.what))
    taken = minutes_taken(list(infos.values()), args.developed) if infos else []
    return dict(zip(infos, taken, strict=True))


def _frames(
    photos: list[Path], minutes: dict[int, float], asked: Asked, left_out: LeftOut
) -> dict[int, Frame]:
    """Frames by a photo's number; what cannot be measured goes to ``left_out``.

    Raises
    ------
    UsageError
        If two photos are one picture of two times: one of them must be wrong.
    """
    good: dict[str, int] = {}
    frames: dict[int, Frame] = {}
    for number, at in minutes.items():
        try:
            other = good.setdefault(read_info(photos[number]).sha256, number)
        except PhotoError as exc:
            left_out.append((photos[number].name, exc.what))
            continue
        if other != number and minutes[other] == at:
            why = f"it is the same picture as {photos[other].name}"
            left_out.append((photos[number].name, why))
        elif other != number:
            raise UsageError(
                f"holds the same picture as {photos[other]}, so one of their times is wrong",
                where=str(photos[number]),
                mend="name each picture once",
            )
    kinds: dict[int, str] = {}
    for number in good.values():
        try:
            inspection = inspected(photos[number], asked)
            frames[number] = frame_of(inspection, minutes[number])
        except _BAD as exc:
            left_out.append((photos[number].name, exc.what))
            continue
        if inspection.photo is not None:
            kinds[number] = inspection.state.mode or recognise(inspection.photo)
    for number, why in _of_other_light(kinds).items():
        left_out.append((photos[number].name, why))
        del frames[number]
    return frames


def _of_other_light(kinds: dict[int, str]) -> dict[int, str]:
    """Which photos are not of the kind that most are, and why they are left out.

    Examples
    --------
    >>> _of_other_light({0: "colour contrast", 1: "colour contrast", 2: "fluorescent"})
    {2: 'it is fluorescent, the others colour contrast: their sizes do not compare'}
    """
    most = max(kinds.values(), key=list(kinds.values()).count, default="")
    return {
        number: f"it is {kind}, the others {most}: their sizes do not compare"
        for number, kind in kinds.items()
        if kind != most
    }


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
        print(f"ptmark: left out: {name}: {why}", file=sys.stderr)
    for curve in growth.curves:
        told = ", ".join(
            f"{one.minutes:g} min {'≥ ' * one.is_least}{one.length.value:.2f} "
            f"± {one.length.expanded:.2f} mm"
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
