"""From a scale reference to a `SurfaceMap`."""

from dataclasses import replace
from typing import TYPE_CHECKING

from ptmark.errors import ScaleError
from ptmark.scale.card import find_cards
from ptmark.scale.card_map import solve_card, usable_cards
from ptmark.scale.lines import solve_line, solve_lines
from ptmark.scale.offset import set_back
from ptmark.scale.pair import solve_pair
from ptmark.scale.pipe import solve_edges
from ptmark.scale.pipe_touch import touching_map
from ptmark.scale.rectangle import solve_rectangle
from ptmark.scale.reference import (
    CardReference,
    LineReference,
    LinesReference,
    OnPlane,
    PairReference,
    PipeReference,
    RectangleReference,
    Reference,
)
from ptmark.scale.surface import SurfaceMap

if TYPE_CHECKING:
    from ptmark.photo import Photo

__all__ = ["solve"]


def solve(reference: Reference, photo: "Photo") -> SurfaceMap:
    """Make the map of a reference.

    Parameters
    ----------
    reference : Reference
        Points in px of the upright photo, lengths in mm.
    photo : Photo
        Its pixels are looked at for the card, a rule's strokes and a pipe's edges.

    Raises
    ------
    ScaleError
        If the card is not found, or the picks or lengths are degenerate: coincident,
        collinear, crossing, outside the photo, no numbers, an absurd scale, or sides that
        contradict the rectangle as seen; or if two references contradict each other.
    """
    return replace(_solved(reference, photo), frame_px=(photo.info.width, photo.info.height))


def _solved(reference: Reference, photo: "Photo") -> SurfaceMap:
    match reference:
        case PairReference(first=first, second=second):
            _check_two(first, second)
            alone = [(one, _alone(one, photo)) for one in (first, second)]
            return solve_pair(alone[0], alone[1], photo.info.path.name)
        case CardReference():
            return _cards(reference, photo)
        case PipeReference():
            if reference.on is None:
                return solve_edges(reference, photo)
            if reference.on.offset_mm:
                raise ScaleError(
                    "an offset is for flat surfaces", where="scale", mend="lay it on the pipe"
                )
            return touching_map(reference, _alone(reference.on, photo), photo)
        case _:
            return set_back(_alone(reference, photo), reference.offset_mm)


def _check_two(first: OnPlane, second: OnPlane) -> None:
    """Refuse one reference given twice: it would count double."""
    same = replace(first, offset_mm=0.0) == replace(second, offset_mm=0.0)
    if isinstance(first, CardReference) and isinstance(second, CardReference):
        same = first.number == second.number or None in {first.number, second.number}
    if same:
        raise ScaleError(
            "the same reference is given twice",
            where="scale",
            mend="give another one; two cards of different sets are found by themselves",
        )


def _alone(reference: OnPlane, photo: "Photo") -> SurfaceMap:
    """The map of a flat reference's own plane."""
    match reference:
        case CardReference():
            return solve_card(reference, photo)
        case RectangleReference():
            return solve_rectangle(reference, photo)
        case LinesReference():
            return solve_lines(reference, photo)
        case LineReference():
            return solve_line(reference, photo)
        case _:
            raise ScaleError(f"{type(reference).__name__} is no scale reference", where="scale")


def _cards(reference: CardReference, photo: "Photo") -> SurfaceMap:
    """The map of the card, or of the first two where the photo shows several."""
    seen = find_cards(photo)
    found = usable_cards(reference, seen)
    others = tuple(
        one.corners_px.reshape(-1, 2)
        for one in seen
        if all(one is not used for used in found[:2])
    )
    if len(found) < 2:
        made = solve_card(reference, photo, found[0] if found else None)
        return replace(set_back(made, reference.offset_mm), other_cards_px=others)
    given = [replace(reference, number=one.number) for one in found[:2]]
    alone = [(g, solve_card(g, photo, one)) for g, one in zip(given, found, strict=False)]
    made = replace(solve_pair(alone[0], alone[1], photo.info.path.name), other_cards_px=others)
    if len(found) == 2:
        return made
    unused = ", ".join(str(one.number) for one in found[2:])
    says = f"more than two scale cards: set {unused} not used. Leave two in the picture"
    return replace(made, cautions=(*made.cautions, says))
