"""`ptmark camera`: a camera's lens, calibrated once and used for its later photos."""

import argparse
import sys
from pathlib import Path

from ptmark.commands.options import Verbs
from ptmark.errors import UsageError
from ptmark.photo import (
    CameraProfile,
    load_profiles,
    open_photo,
    profiles_folder,
    remove_profile,
    save_profile,
)

__all__ = ["add_to", "run"]


def add_to(verbs: Verbs) -> None:
    """Add the verb."""
    made = verbs.add_parser(
        "camera",
        description="Calibrate a camera once from photos of the calibration grid or of a scale "
        "card. Its later photos of the same zoom, uncropped, are then measured with the lens's "
        "distortion taken out and its uncertainty in the budget.",
    )
    ways = made.add_subparsers(dest="way", required=True, metavar="WAY")
    grid = ways.add_parser("grid", help="write the calibration grid to print (PDF)")
    grid.add_argument("file", type=Path, help="the PDF to write")
    grid.add_argument("--paper", choices=["A4", "Letter"], default="A4")
    calibrate = ways.add_parser("calibrate", help="make and keep the profile of a camera")
    calibrate.add_argument("photos", type=Path, nargs="+", metavar="PHOTO")
    calibrate.add_argument("--name", default="", help="of the profile; else make and model")
    calibrate.add_argument(
        "--grid",
        default="9x6",
        metavar="AxB",
        help="inner corners of another chessboard, along and across (default 9x6)",
    )
    ways.add_parser("list", help="list the profiles that are kept")
    for way, says in (("show", "show a profile"), ("remove", "delete a profile")):
        one = ways.add_parser(way, help=says)
        one.add_argument("name")
    made.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Do what is asked."""
    match args.way:
        case "grid":
            from ptmark.scale import write_grid_pdf

            write_grid_pdf(args.file, args.paper)
            print(f"{args.file}: print it, and lay it flat")
        case "calibrate":
            _calibrate(args)
        case "list":
            profiles = load_profiles()
            for one in profiles:
                print(f"{one.name}: {one.make} {one.model}, {one.photos} photos, {one.made}")
            if not profiles:
                print("no camera is calibrated; see `ptmark camera calibrate --help`")
        case "show":
            _show(_named(args.name))
        case _:
            remove_profile(args.name)
            print(f"{args.name}: removed")
    return 0


def _calibrate(args: argparse.Namespace) -> None:
    from ptmark.scale import calibrate_camera

    def tell(path: Path, found: bool) -> None:  # noqa: FBT001 - a callback
        if not found:
            print(f"{path.name}: neither grid nor card found, passed over", file=sys.stderr)

    profile = calibrate_camera(
        (open_photo(path) for path in args.photos),
        name=args.name,
        grid=_grid(args.grid),
        tell=tell,
    )
    path = save_profile(profile)
    _show(profile)
    print(f"kept as {path}")


def _grid(text: str) -> tuple[int, int]:
    sides = text.lower().split("x")
    if len(sides) != 2 or not all(side.isdecimal() and 3 <= int(side) <= 60 for side in sides):
        raise UsageError(
            f"'{text}' is no grid", where="--grid", mend="two numbers of inner corners, as 9x6"
        )
    return int(sides[0]), int(sides[1])


def _named(name: str) -> CameraProfile:
    for one in load_profiles():
        if one.name == name:
            return one
    raise UsageError(
        f"no camera profile '{name}'",
        where=str(profiles_folder()),
        mend="see `ptmark camera list`",
    )


def _show(one: CameraProfile) -> None:
    corner = one.kappa + one.kappa_2
    print(f"{one.name}: {' '.join(filter(None, (one.make, one.model, one.lens)))}")
    print(f"  pictures          {one.long_px} x {one.short_px} px and other uncropped sizes")
    print(f"  focal length      {one.focal_px:.1f} px, u {100 * one.focal_rel_u:.2g} %")
    print(f"  radial at corner  {100 * corner:+.2f} %, u {100 * one.kappa_u:.2g} %")
    print(f"  misfit            {one.residual_px:.2f} px over {one.photos} photos, {one.made}")
