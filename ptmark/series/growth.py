"""Bleed-out over time: each indication's length and area against minutes since the developer.

Measured points only: no published law of growth exists, so none is fitted.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
import numpy.typing as npt

from ptmark.errors import SeriesError
from ptmark.measure import Quantity
from ptmark.series.frame import Frame, is_least, length_and_area
from ptmark.series.places import Place, places_of
from ptmark.series.register import register_views
from ptmark.series.registration import Registration
from ptmark.series.window import Choice, Window, choose
from ptmark.series.words import missing_words

__all__ = ["Curve", "Growth", "Reading", "growth_of"]

Array = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One measured point of a curve.

    ``photo`` indexes `Growth.frames`; ``parts`` are the letters the photo's own indications
    have. Length runs from end to end of all parts; area is theirs together; both may be the
    least that they can be.
    """

    photo: int
    minutes: float
    parts: tuple[str, ...]
    length: Quantity
    area: Quantity
    is_least: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """The readings of one place, in order of time; ``missing`` says why a photo has none."""

    id: str
    readings: tuple[Reading, ...]
    missing: dict[int, str]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Growth:
    """A whole series.

    ``frames`` are the photos that could be used, in order of time; ``to_base`` leads from each
    to photo ``base`` (None for the base itself). ``left_out`` names the photos that could not
    be used, with the reason. ``choice`` indexes ``frames``.
    """

    frames: tuple[Frame, ...]
    base: int
    to_base: tuple[Registration | None, ...]
    curves: tuple[Curve, ...]
    window: Window
    choice: Choice
    left_out: tuple[tuple[str, str], ...] = ()
    cautions: tuple[str, ...] = ()


def growth_of(
    frames: Sequence[Frame],
    window: Window,
    *,
    card_stays: bool = False,
    marks: Sequence[Array] = (),
    left_out: Sequence[tuple[str, str]] = (),
) -> Growth:
    """Follow every indication through photos taken during development.

    Parameters
    ----------
    frames : sequence of Frame
        With minutes, in any order.
    window : Window
        When the procedure has indications judged.
    card_stays : bool
        As in `register_views`.
    marks : sequence of ndarray of shape (N, 2), px
        The same marks in each of ``frames``; none where the surface is to tell.
    left_out : sequence of (str, str)
        Photos that gave no frame, with the reason.

    Returns
    -------
    Growth
        The base is the photo to be evaluated, or the last one where none is; its letters name
        the curves. A photo that none of the others fits is left out, be it the base.

    Raises
    ------
    SeriesError
        If fewer than two photos are left, a photo has no time, or two have the same.
    """
    times = [frame.minutes for frame in frames]
    if len(frames) < 2:
        raise SeriesError(f"{len(frames)} photo is no series", mend="give two or more")
    known = [minutes for minutes in times if minutes is not None]
    if len(known) < len(frames) or not np.isfinite(known).all():
        raise SeriesError(
            "a photo has no time since the developer", mend="give the minutes of each"
        )
    order = sorted(range(len(frames)), key=lambda number: known[number])
    for one, other in pairwise(order):
        if known[one] == known[other]:
            raise SeriesError(
                "two photos have the same time",
                where=f"{frames[one].name}, {frames[other].name}",
                mend="leave out one of them, or give each its own minutes",
            )

    def lead_of(number: int, base: int) -> Registration:
        pair = (marks[number], marks[base]) if marks else None
        a, b = frames[number].view, frames[base].view
        return register_views(a, b, marks=pair, card_stays=card_stays)

    kept, leads, strays = _registered(frames, order, window, lead_of)
    choice = choose([frame.minutes or 0.0 for frame in kept], window)
    places = places_of(kept, leads)
    at = leads.index(None)
    names = _names(places, at)
    curves = [
        _curve(place, name, kept, leads) for place, name in zip(places, names, strict=True)
    ]
    cautions = [
        f"{frame.name}: {text}"
        for frame, lead in zip(kept, leads, strict=True)
        if lead is not None
        for text in lead.cautions
    ]
    return Growth(
        frames=tuple(kept),
        base=at,
        to_base=tuple(leads),
        curves=tuple(sorted(curves, key=lambda curve: (len(curve.id), curve.id))),
        window=window,
        choice=choice,
        left_out=(*left_out, *strays),
        cautions=tuple(cautions),
    )


def _registered(
    frames: Sequence[Frame],
    order: list[int],
    window: Window,
    lead_of: Callable[[int, int], Registration],
) -> tuple[list[Frame], list[Registration | None], list[tuple[str, str]]]:
    """The frames that fit the base, by time; what leads to it, None for itself; the others."""
    alone: list[tuple[str, str]] = []
    first: SeriesError | None = None
    while len(order) > 1:
        base = _base([frames[number].minutes or 0.0 for number in order], order, window)
        leads, reasons = _leads(order, base, lead_of)
        if len(leads) > 1:
            strays = [(frames[number].name, why.what) for number, why in reasons.items()]
            kept = [number for number in order if number in leads]
            used = [frames[number] for number in kept]
            return used, [leads[number] for number in kept], alone + strays
        name, last = frames[base].name, list(reasons.values())[-1]
        said = f"no photo fits {name}: {last.what}"
        first = first or SeriesError(said, mend=last.mend)
        alone.append((name, f"no other photo fits it: {last.what}"))
        order = [number for number in order if number != base]
    raise first or SeriesError("one photo is no series", mend="give two or more")


def _base(minutes: list[float], order: list[int], window: Window) -> int:
    """The photo to be evaluated, or the last one where none is."""
    chosen = choose(minutes, window).index
    return order[-1 if chosen is None else chosen]


def _leads(
    order: list[int], base: int, lead_of: Callable[[int, int], Registration]
) -> tuple[dict[int, Registration | None], dict[int, SeriesError]]:
    """What leads from each photo to the base (None for itself), and why from others nothing."""
    leads: dict[int, Registration | None] = {base: None}
    reasons: dict[int, SeriesError] = {}
    for number in order:
        if number != base:
            try:
                leads[number] = lead_of(number, base)
            except SeriesError as exc:
                reasons[number] = exc
    return leads, reasons


def _names(places: Sequence[Place], base: int) -> list[str]:
    """The base's letters; what the base does not show is numbered X1, X2 …"""
    names, others = [], 0
    for place in places:
        own = place.parts[base]
        if own:
            names.append("+".join(one.id for one in own))
        else:
            others += 1
            names.append(f"X{others}")
    return names


def _curve(
    place: Place, name: str, frames: Sequence[Frame], leads: Sequence[Registration | None]
) -> Curve:
    readings, missing = [], {}
    for number, (frame, parts) in enumerate(zip(frames, place.parts, strict=True)):
        if not parts:
            missing[number] = _missing(place, number, frames, leads)
            continue
        length, area = length_and_area(parts, frame)
        readings.append(
            Reading(
                photo=number,
                minutes=frame.minutes or 0.0,
                parts=tuple(one.id for one in parts),
                length=length,
                area=area,
                is_least=is_least(parts),
            )
        )
    notes = []
    counts = [len(one.parts) for one in readings]
    if max(counts) > 1:
        told = ", ".join(f"{len(r.parts)} at {r.minutes:g} min" for r in readings)
        notes.append(f"number of parts: {told}; length from end to end of all")
    least = ", ".join(f"{one.minutes:g}" for one in readings if one.is_least)
    if least:
        notes.append(f"at {least} min the least that it can be, as not all of it may be shown")
    if not place.sure:
        notes.append("another indication lies so near that the two may be mixed up")
    return replace(
        Curve(id=name, readings=tuple(readings), missing=missing), notes=tuple(notes)
    )


def _missing(
    place: Place, number: int, frames: Sequence[Frame], leads: Sequence[Registration | None]
) -> str:
    """Why a photo has no reading of a place, told by one that has: the base, or the first."""
    shown = [other for other, parts in enumerate(place.parts) if parts]
    known = leads.index(None) if leads.index(None) in shown else shown[0]

    def to_known(points_px: Array) -> Array:
        here, there = leads[number], leads[known]
        in_base = points_px if here is None else here.to_b(points_px)
        return in_base if there is None else there.to_a(in_base)

    lead = leads[number]
    around = place.around_px if lead is None else lead.to_a(place.around_px)
    return missing_words(frames[number], around, frames[known], to_known)[0]
