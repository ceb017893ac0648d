"""`ptmark measure PHOTO PHOTO … --together`: one inspection of several photos."""

import argparse
from pathlib import Path

from ptmark.commands.options import read_lines
from ptmark.errors import ScaleError, UsageError
from ptmark.folder import Asked, pictures_in, take_asked
from ptmark.inspection import Inspection
from ptmark.inspection.several import same_in_set
from ptmark.scale import CardReference, Reference

__all__ = ["add_options", "inspected_together", "lines_by_photo"]

_ONE_PHOTO = ("rectangle", "area", "weld", "pipe")


def add_options(made: argparse.ArgumentParser) -> None:
    """Add the options of a set."""
    many = made.add_argument_group("several photos of one inspection")
    many.add_argument(
        "--together",
        action="store_true",
        help="overview and close-ups as one inspection with one record; a photo without the "
        "card is kept as a picture, or takes --line N:X1,Y1,X2,Y2=LENGTH",
    )
    many.add_argument(
        "--match",
        action="store_true",
        help="give what several photos surely show one letter; look at what it says",
    )


def lines_by_photo(args: argparse.Namespace) -> dict[int, Reference]:
    """The lines given for photos of a set by their numbers from 1; taken out of ``args``.

    Raises
    ------
    UsageError
        If an option holds px without saying of which photo, or names no photo.
    """
    for name in _ONE_PHOTO:
        if getattr(args, name):
            raise UsageError(
                "holds pixels of one photo",
                where=f"--{name}",
                mend="measure that photo alone, or use the window",
            )
    texts: dict[int, list[str]] = {}
    for text in args.line or ():
        number, sign, line = text.partition(":")
        if not sign or not number.isdecimal() or not 1 <= int(number) <= len(args.photos):
            raise UsageError(
                f"'{text}' does not say which photo it is in",
                where="--line",
                mend=f"write N:X1,Y1,X2,Y2=LENGTH, N from 1 to {len(args.photos)}",
            )
        texts.setdefault(int(number), []).append(line)
    args.line = None
    return {number: read_lines(lines) for number, lines in texts.items()}


def inspected_together(
    paths: list[Path], asked: Asked, lines: dict[int, Reference], *, match: bool
) -> Inspection:
    """Open each photo in turn, set its scale, look; the first is at hand in the end.

    Raises
    ------
    PtmarkError
        If the profile or a photo is refused, or no photo shows a scale.
    """
    files = [one for path in paths for one in (pictures_in(path) if path.is_dir() else [path])]
    inspection = take_asked(Inspection(), asked)
    for number, path in enumerate(files, 1):
        inspection.photos.add(asked.opened(path))
        _set_scale(inspection, lines.get(number) or asked.reference)
        inspection.set_suggestions(inspection.look())
        if match and number > 1:
            inspection.photos.join(same_in_set(inspection))
    if all(one.reference is None for one in inspection.state.photos):
        raise ScaleError(
            "no photo shows the scale card", mend="give --line N:X1,Y1,X2,Y2=LENGTH"
        )
    inspection.photos.turn_to(0)
    return inspection


def _set_scale(inspection: Inspection, reference: Reference) -> None:
    try:
        inspection.set_reference(reference)
    except ScaleError:
        if not isinstance(reference, CardReference):
            raise
