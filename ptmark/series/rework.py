"""Before and after rework: what has gone, stayed, grown or is new."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot

from ptmark.measure import Quantity
from ptmark.series.frame import Frame, Seen, is_least, length_and_area
from ptmark.series.places import Place, places_of
from ptmark.series.registration import Registration
from ptmark.series.words import missing_words

__all__ = ["GONE", "KINDS", "Change", "compare"]

KINDS = ("new", "grown", "stayed", "unclear", "gone")
# Of a white cover `hidden` sees nothing.
GONE = (
    "Gone holds only where the photo after shows the place bare and under developer: a cover "
    "as white as developer is not seen."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """What became of one place.

    Attributes
    ----------
    kind : str
        One of `KINDS`. "unclear" where one of the photos cannot tell: it does not show the
        place, or not all of what is there; something lies over it, or light washes it out; a
        blob there was left out.
    before, after : tuple of str
        Letters of the parts in each photo.
    length_before, length_after : Quantity or None, mm
    least_before, least_after : bool
        Whether that length is the least that it can be.
    difference_mm, difference_u_mm : float or None
        After less before, and its expanded uncertainty.
    ratio : float or None
        Difference over its expanded uncertainty, as the E_n number of ISO/IEC 17043:2010,
        B.3.1.3 e): above 1 it has grown.
    says : str
    """

    kind: str
    before: tuple[str, ...]
    after: tuple[str, ...]
    length_before: Quantity | None = None
    length_after: Quantity | None = None
    least_before: bool = False
    least_after: bool = False
    difference_mm: float | None = None
    difference_u_mm: float | None = None
    ratio: float | None = None
    says: str = ""


def compare(before: Frame, after: Frame, leads: Registration) -> tuple[Change, ...]:
    """Compare two photos of one area.

    Parameters
    ----------
    before, after : Frame
    leads : Registration
        From the photo before to the one after.

    Returns
    -------
    tuple of Change
        By `KINDS`, what needs action first; within each in reading order.

    Notes
    -----
    ``U(difference) = sqrt(U_before**2 + U_after**2)``: what the two share (the same card, the
    same relief) is taken as independent, which makes U rather too large than too small.
    """
    places = places_of((before, after), (leads, None))
    changes = [_change(place, before, after, leads) for place in places]
    return tuple(sorted(changes, key=lambda change: KINDS.index(change.kind)))


def _change(place: Place, before: Frame, after: Frame, leads: Registration) -> Change:
    was, now = place.parts
    if was and now:
        return _stayed(place, was, now, before, after)
    if now:
        there = leads.to_a(place.around_px)
        words, bare = missing_words(before, there, after, leads.to_b)
        return Change(
            kind="new" if bare else "unclear",
            before=(),
            after=_letters(now),
            length_after=length_and_area(now, after)[0],
            least_after=is_least(now),
            says=f"in the photo before, {words}",
        )
    words, bare = missing_words(after, place.around_px, before, leads.to_a)
    return Change(
        kind="gone" if bare else "unclear",
        before=_letters(was),
        after=(),
        length_before=length_and_area(was, before)[0],
        least_before=is_least(was),
        says=f"in the photo after, {words}",
    )


def _stayed(
    place: Place, was: Sequence[Seen], now: Sequence[Seen], before: Frame, after: Frame
) -> Change:
    old, new = length_and_area(was, before)[0], length_and_area(now, after)[0]
    change, u = new.value - old.value, hypot(old.expanded, new.expanded)
    ratio = change / u if u > 0 else (0.0 if change == 0 else float("inf"))
    kind, words = _judged(ratio, least_before=is_least(was), least_after=is_least(now))
    if len(was) != len(now):
        words += f"; parts: {len(was)} before, {len(now)} after, from end to end"
    if not place.sure:
        words += "; another indication lies so near that the two may be mixed up"
    return Change(
        kind=kind,
        before=_letters(was),
        after=_letters(now),
        length_before=old,
        length_after=new,
        least_before=is_least(was),
        least_after=is_least(now),
        difference_mm=change,
        difference_u_mm=u,
        ratio=ratio,
        says=words,
    )


def _judged(ratio: float, *, least_before: bool, least_after: bool) -> tuple[str, str]:
    """Kind and words of a change; a photo that does not show all of it cannot tell."""
    if ratio > 1:
        if least_before:
            return "unclear", "longer, but the photo before may not show all of it"
        return "grown", "longer by more than the combined uncertainty"
    if least_after:
        return "unclear", "the photo after may not show all of it"
    if ratio < -1:
        return "stayed", "shorter by more than the combined uncertainty"
    return "stayed", "no change beyond the combined uncertainty"


def _letters(parts: Sequence[Seen]) -> tuple[str, ...]:
    return tuple(one.id for one in parts)
