"""The options that say how a photo is to be measured, the same for one photo and for many."""

import argparse
import re
from dataclasses import replace

from ptmark.commands.options import (
    PRACTICES,
    add_practice,
    read_fields,
    read_lines,
    read_pipe,
    read_points,
    read_rectangle,
)
from ptmark.errors import UsageError
from ptmark.folder import Asked
from ptmark.inspection.state import EdgeLine
from ptmark.scale import CardReference, LinesReference, OnPlane, PairReference, Reference
from ptmark.units import parse_length

__all__ = ["add_measuring", "read_asked"]


def add_measuring(made: argparse.ArgumentParser) -> None:
    """Add the options of scale, area, part and criteria."""
    made.add_argument(
        "--line",
        action="append",
        metavar="X1,Y1,X2,Y2=LENGTH",
        help="a line of known length (150mm, 6in); twice: two lines at right angles",
    )
    made.add_argument(
        "--rectangle",
        action="append",
        metavar="X1,Y1,…,X4,Y4=WxH",
        help="four corners, clockwise from the top left, of a rectangle (85.6x53.98mm); twice: "
        "two rectangles, both used",
    )
    made.add_argument(
        "--card",
        action="store_true",
        help="with --line or --rectangle: the scale card lies in the photo too; both are used",
    )
    made.add_argument("--check", metavar="LENGTH", help="measured check length of the card")
    made.add_argument(
        "--offset",
        action="append",
        metavar="LENGTH",
        help="how far the reference lies above the surface: a thick card, a card on a step "
        "(1.5mm); once for each of two references (card, rectangle, line), 0 where it is flat",
    )
    made.add_argument(
        "--pipe",
        metavar="[X1,Y1,…=]DIAMETER",
        help="a pipe or bar of known outside diameter: two points on one of its outer edges, "
        "two on the other (X1,Y1,…,X4,Y4=168.3mm); two points along it, and the edges are "
        "found; with --line, the rule lies along its crown (168.3mm is enough); with "
        "--rectangle or --card-on-pipe, two points along the pipe where that touches it; with "
        "any of these, two points on each edge are the surest where both are seen",
    )
    made.add_argument(
        "--card-on-pipe", action="store_true", help="with --pipe: the scale card lies on it"
    )
    made.add_argument("--area", metavar="X,Y,X,Y,…", help="the examined area, px")
    made.add_argument(
        "--type",
        choices=["colour-contrast", "fluorescent"],
        default="",
        help="kind of penetrant; recognised from each photo where not given",
    )
    made.add_argument(
        "--relief",
        metavar="LENGTH",
        help="height of the weld crown above the surface that the scale lies on",
    )
    made.add_argument(
        "--no-camera",
        action="store_true",
        help="leave out the profile of the camera's lens (ptmark camera), where one fits",
    )
    made.add_argument(
        "--weld", metavar="X1,Y1,X2,Y2", help="two points on the weld's middle, px"
    )
    made.add_argument("--weld-length", metavar="LENGTH", help="length of weld in the area")
    made.add_argument("--thickness", metavar="LENGTH", help="thickness of the part")
    made.add_argument("--diameter", metavar="LENGTH", help="diameter of the part")
    made.add_argument(
        "--edge",
        action="append",
        default=[],
        metavar="[NAME=]X1,Y1,X2,Y2,…",
        help="a free edge of the part that rules go by, two or more points on it, px; another "
        "line by its NAME in the rule; once for each line",
    )
    made.add_argument("--criteria", default="", metavar="PROFILE", help="see: ptmark criteria")
    made.add_argument("--decision", choices=["guarded", "simple"], default="guarded")
    made.add_argument(
        "--field", action="append", default=[], metavar="KEY=TEXT", help="a field of the record"
    )
    add_practice(made)


def read_asked(args: argparse.Namespace) -> Asked:
    """What the options say.

    Raises
    ------
    UsageError
        If one of them cannot be read.
    """
    area = read_points(args.area, "--area", least=3) if args.area else None
    return Asked(
        reference=_reference(args),
        area_px=None if area is None else tuple(area),
        weld_px=_weld(args.weld) if args.weld else None,
        profile=args.criteria,
        decision_rule=args.decision,
        mode=args.type.replace("-", " "),
        lens=not args.no_camera,
        fields=read_fields(args.field),
        practice=PRACTICES[args.practice or "common-practice"],
        relief_mm=_height(args.relief, "--relief"),
        weld_length_mm=_length(args.weld_length, "--weld-length"),
        thickness_mm=_length(args.thickness, "--thickness"),
        diameter_mm=_length(args.diameter, "--diameter"),
        edges_px=tuple(_edge(text) for text in args.edge),
    )


def _weld(text: str) -> tuple[tuple[float, float], tuple[float, float]]:
    start, end = read_points(text, "--weld", least=2, exactly=True)
    if start == end:
        raise UsageError("both points are the same", where="--weld", mend="give two points")
    return start, end


def _edge(text: str) -> EdgeLine:
    name, sign, points = text.rpartition("=")
    if sign and not name.strip():
        raise UsageError("has no name before =", where="--edge", mend="NAME=X1,Y1,X2,Y2")
    return name.strip() or "edge", tuple(read_points(points, "--edge", least=2))


def _length(text: str | None, where: str) -> float | None:
    return None if text is None else parse_length(text, where=where)


def _height(text: str | None, where: str) -> float | None:
    if text is not None and re.fullmatch(r"0+([.,]0*)?\s*(mm|cm|in)?", text.strip()):
        return 0.0  # a flat surface is a statement of its own
    return _length(text, where)


def _reference(args: argparse.Namespace) -> Reference:
    flats = _flats(args)
    card = isinstance(flats[0], CardReference)
    if args.card_on_pipe and not (args.pipe and card and len(flats) == 1):
        raise UsageError(
            "the card lies on no pipe",
            where="--card-on-pipe",
            mend="add --pipe, and leave out --line and --rectangle",
        )
    if args.check and args.pipe and not args.card_on_pipe:
        raise UsageError("holds for the card", where="--check", mend="add --card-on-pipe")
    if args.pipe:
        return _on_pipe(args, None if card and not args.card_on_pipe else flats)
    flats = _raised(flats, args.offset or [])
    if len(flats) == 1:
        return flats[0]
    return PairReference(first=flats[0], second=flats[1])


def _flats(args: argparse.Namespace) -> list[OnPlane]:
    """The one or two references that lie flat, the surest first."""
    flats: list[OnPlane] = [read_rectangle(text) for text in args.rectangle or ()]
    if args.line:
        flats.append(read_lines(args.line))
    if args.check and flats and not args.card:
        raise UsageError("holds for the card", where="--check", mend="add --card")
    if args.card or not flats:
        flats.insert(0, CardReference(check_mm=_length(args.check, "--check")))
    if len(flats) > 2:
        raise UsageError(f"{len(flats)} references given", where="scale", mend="give two")
    return flats


def _on_pipe(args: argparse.Namespace, flats: list[OnPlane] | None) -> Reference:
    if args.offset:
        raise UsageError("is for flat surfaces", where="--offset", mend="leave out --pipe")
    if flats is None:
        return read_pipe(args.pipe, None)
    if len(flats) > 1 or isinstance(flats[0], LinesReference):
        raise UsageError(
            "two references given", where="--pipe", mend="give one line, along the pipe"
        )
    return read_pipe(args.pipe, flats[0])


def _raised(flats: list[OnPlane], texts: list[str]) -> list[OnPlane]:
    """The references, each as far above the surface as was given."""
    if not texts:
        return flats
    if len(texts) != len(flats):
        raise UsageError(
            f"{len(texts)} given for {len(flats)} references",
            where="--offset",
            mend="give one for each: card, rectangle, line; 0 where it lies flat",
        )
    heights = [_height(text, "--offset") or 0.0 for text in texts]
    return [replace(one, offset_mm=mm) for one, mm in zip(flats, heights, strict=True)]
