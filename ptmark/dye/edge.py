"""How well an outline's place is known, from the outline's own edge."""

from dataclasses import dataclass

__all__ = ["BY_PERSON", "EdgeQuality"]

BY_PERSON = ("hand", "snapped")  # the sources of outlines that a person's hand made


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
        end is less sure than its flanks; None where it was not taken: as ``shift_px``.
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
        Whether it was suggested in something reddish, where its ends may not show
        (`ptmark.dye.within`).
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
