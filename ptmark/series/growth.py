"""Bleed-out over time: each indication's length and area against minutes since the developer.

Measured points only: no published law of growth exists, so none is fitted.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from ptmark.errors import PtmarkError, SeriesError
from ptmark.measure import Quantity
from ptmark.series.frame import Frame, length_and_area
from ptmark.series.places import Place, places_of
from ptmark.series.register import register_views
from ptmark.series.registration import Registration
from ptmark.series.window import Choice, Window, choose
from ptmark.series.words import missing_words

__all__ = ["Curve", "Growth", "Reading", "growth_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """One measured point of a curve.

    ``photo`` indexes `Growth.frames`; ``parts`` are the letters the photo's own indications
    have. Length runs from end to end of all parts; area is theirs together.
    """

    photo: int
    minutes: float
    parts: tuple[str, ...]
    length: Quantity
    area: Quantity


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
    be registered, with the reason. ``choice`` indexes ``frames``.
    """

    frames: tuple[Frame, ...]
    base: int
    to_base: tuple[Registration | None, ...]
    curves: tuple[Curve, ...]
    window: Window
    choice: Choice
    left_out: tuple[tuple[str, str], ...] = ()
    cautions: tuple[str, ...] = ()


def growth_of(frames: Sequence[Frame], window: Window, *, card_stays: bool = False) -> Growth:
    """Follow every indication through photos taken during development.

    Parameters
    ----------
    frames : sequence of Frame
        With minutes, in any order.
    window : Window
        When the procedure has indications judged.
    card_stays : bool
        As in `register_views`.

    Returns
    -------
    Growth
        The base is the photo to be evaluated, or the last one where none is; its letters name
        the curves.

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
    if len(set(known)) < len(known):
        raise SeriesError("two photos have the same time", mend="give each its own minutes")
    order = sorted(frames, key=lambda frame: frame.minutes or 0.0)
    chosen = choose(sorted(known), window).index
    base = order[-1 if chosen is None else chosen]
    kept, leads, left_out = _registered(order, base, card_stays=card_stays)
    choice = choose([frame.minutes or 0.0 for frame in kept], window)
    places = places_of(kept, leads)
    at = kept.index(base)
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
        left_out=tuple(left_out),
        cautions=tuple(cautions),
    )


def _registered(
    order: Sequence[Frame], base: Frame, *, card_stays: bool
) -> tuple[list[Frame], list[Registration | None], list[tuple[str, str]]]:
    kept: list[Frame] = []
    leads: list[Registration | None] = []
    left_out: list[tuple[str, str]] = []
    reason: PtmarkError | None = None
    for frame in order:
        lead = None
        if frame is not base:
            try:
                lead = register_views(frame.view, base.view, card_stays=card_stays)
            except SeriesError as exc:
                left_out.append((frame.name, exc.what))
                reason = exc
                continue
        kept.append(frame)
        leads.append(lead)
    if len(kept) < 2 and reason is not None:
        raise SeriesError(f"no photo fits {base.name}: {reason.what}", mend=reason.mend)
    return kept, leads, left_out


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
            lead = leads[number]
            there = place.around_px if lead is None else lead.to_a(place.around_px)
            missing[number] = missing_words(frame, there)
            continue
        length, area = length_and_area(parts, frame)
        readings.append(
            Reading(
                photo=number,
                minutes=frame.minutes or 0.0,
                parts=tuple(one.id for one in parts),
                length=length,
                area=area,
            )
        )
    notes = []
    counts = [len(one.parts) for one in readings]
    if max(counts) > 1:
        told = ", ".join(f"{len(r.parts)} at {r.minutes:g} min" for r in readings)
        notes.append(f"number of parts: {told}; length from end to end of all")
    if not place.sure:
        notes.append("another indication lies so near that the two may be mixed up")
    return replace(
        Curve(id=name, readings=tuple(readings), missing=missing), notes=tuple(notes)
    )
