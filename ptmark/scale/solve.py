"""From a scale reference to a `SurfaceMap`."""

from typing import TYPE_CHECKING

from ptmark.errors import ScaleError
from ptmark.scale.card_map import solve_card
from ptmark.scale.lines import solve_line, solve_lines
from ptmark.scale.pipe import solve_edges
from ptmark.scale.pipe_touch import touching_map
from ptmark.scale.rectangle import solve_rectangle
from ptmark.scale.reference import (
    CardReference,
    LineReference,
    LinesReference,
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
        contradict the rectangle as seen.
    """
    match reference:
        case CardReference():
            return solve_card(reference, photo)
        case RectangleReference():
            return solve_rectangle(reference, photo)
        case LinesReference():
            return solve_lines(reference, photo)
        case LineReference():
            return solve_line(reference, photo)
        case PipeReference():
            if reference.on is None:
                return solve_edges(reference, photo)
            return touching_map(reference, solve(reference.on, photo), photo)
        case _:
            raise ScaleError(f"{type(reference).__name__} is no scale reference", where="scale")
