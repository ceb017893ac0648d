"""How well an outline's place is known, from the outline's own edge."""

from dataclasses import dataclass
from math import sqrt

__all__ = ["BY_PERSON", "LEVEL_DIVISOR", "EdgeQuality", "unsharpened"]

BY_PERSON = ("hand", "snapped")  # the sources of outlines that a person's hand made

# The half-contrast level itself is known to about a tenth of the contrast: the shift between
# 40 and 60 % is the half-width of a rectangular distribution (JCGM 100:2008, 4.3.7).
LEVEL_DIVISOR = sqrt(3)
# A bright rim beside an outline, as a share of its half level, from which it tells of
# sharpening, and how much steeper the edge is for it: an unsharp mask of amount a, twice as
# wide as the blur, makes edges 1 + 0.55 a times as steep and rims 0.18 a of the contrast high
# (a step blurred by Gaussians). Half levels: 22 rendered photos as taken reach 0.19, of
# outlines that were sharpened by 2.5 most have 0.4 to 0.8.
_LEAST_RIM, _STEEPER_PER_RIM = 0.25, 1.5


def unsharpened(shift_px: float, left_outside: float) -> float:
    """An edge's shift without the sharpening that a bright rim beside it tells of, px.

    Examples
    --------
    >>> unsharpened(0.4, -0.2), round(unsharpened(0.4, -0.6), 9)
    (0.4, 0.76)
    """
    rim = max(0.0, min(-left_outside, 3 * (-left_outside - _LEAST_RIM)))
    return shift_px * (1 + _STEEPER_PER_RIM * rim)


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeQuality:
    """Quality of one outline's edge, all in px of the full-size photo.

    Attributes
    ----------
    shift_px : float
        How far the outline moves along its normal, on average, between 40 % and 60 % of the
        contrast, halved: the ambiguity of the half-contrast level (common to all its points).
    noise_px : float
        Standard deviation of one vertex along its normal from image noise (independent).
    end_shift_px : float or None
        The same for each end of the greatest length, where the outline often tapers and its
        end is less sure than its flanks, with the doubt of where a tip that fades out ends
        (`ptmark.dye.tips`); None where it was not taken: as ``shift_px``.
    source : str
        "suggested", "snapped" (by hand, drawn to the edge) or "hand" (free hand or points).
    operator_px : float or None
        Standard uncertainty of one end by the operator's hand, where it is known from repeat
        traces; None where the default for ``source`` holds.
    operator_free : int or None
        Degrees of freedom that this rests on; None where it was not kept.
    traces_px : tuple of float
        Greatest lengths of the traces that one person made of it, the outline's own first;
        empty where it was not traced again.
    ends_unsure : bool
        Whether it was suggested in something else (`ptmark.dye.within`, `ptmark.dye.part`), in
        grain (`ptmark.dye.same_dye`) or where the file lost its colour (there and in
        `ptmark.dye.pieces`), so that its ends may not show.
    """

    shift_px: float
    noise_px: float
    source: str = "suggested"
    end_shift_px: float | None = None
    operator_px: float | None = None
    traces_px: tuple[float, ...] = ()
    operator_free: int | None = None
    ends_unsure: bool = False

    @property
    def by_person(self) -> bool:
        """Whether a person's hand made the outline."""
        return self.source in BY_PERSON

    def __post_init__(self) -> None:
        object.__setattr__(self, "traces_px", tuple(self.traces_px))  # a list, out of a file
