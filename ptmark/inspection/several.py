"""Several inspections of one area side by side: their frames and their times."""

from collections.abc import Sequence

import numpy as np

from ptmark.dye import LeftOut
from ptmark.errors import SeriesError, UsageError
from ptmark.inspection.whole import Inspection
from ptmark.photo import PhotoInfo
from ptmark.series import (
    Frame,
    Seen,
    minutes_since,
    places_of,
    register_views,
    view_of,
)

__all__ = ["frame_of", "minutes_given", "minutes_taken", "same_in_set"]


def frame_of(inspection: Inspection, minutes: float | None = None) -> Frame:
    """An inspection as a frame of a series; it holds no pixels.

    Parameters
    ----------
    inspection : Inspection
        With photo, scale and outlines; dropped ones do not count, but are no bare place.
    minutes : float, min, optional
        Since the developer was dry (wet) or applied (dry).

    Raises
    ------
    SeriesError
        If the photo or its scale is missing.
    """
    photo, surface, state = inspection.photo, inspection.surface, inspection.state
    if photo is None or surface is None:
        name = "" if photo is None else photo.info.path.name
        raise SeriesError(
            "a photo without a scale", where=name, mend="give each photo a scale reference"
        )
    area = None if state.area_px is None else np.array(state.area_px, float)
    seen = []
    for one in inspection.counted:
        made = inspection.measurement(one)
        if made is not None:
            seen.append(
                Seen(id=one.id, outline_px=one.outline_px, edge=one.edge, measurement=made)
            )
    dropped = (
        LeftOut(outline_px=one.outline_px, edge=one.edge, reason="dropped by the inspector")
        for one in state.marked
        if one.standing == "dropped"
    )
    about = np.array([one.outline_px.mean(axis=0) for one in seen], float)
    return Frame(
        view=view_of(photo, surface, area, about.reshape(-1, 2)),
        surface=surface,
        seen=tuple(seen),
        left_out=(*inspection.left_out, *dropped),
        minutes=minutes,
        relief_mm=state.relief_mm,
        area_px=area,
    )


def same_in_set(inspection: Inspection) -> dict[str, str]:
    """Which outlines of the photo at hand are surely indications of another photo of the set.

    Photos are registered to the one at hand by what their surfaces show, and outlines matched
    by place; where that is refused or not sure, a person says it. Takes some hundred
    milliseconds a photo: for a worker.

    Returns
    -------
    dict of str to str
        The letter here and the letter there; those that bear one letter already are left out.
    """
    here, hands = inspection.photos.number, inspection.twin()
    try:
        base = frame_of(hands)
    except SeriesError:
        return {}
    found: dict[str, str] = {}
    for number in range(len(inspection.photos)):
        if number == here:
            continue
        hands.photos.turn_to(number)
        try:
            other = frame_of(hands)
            places = places_of([base, other], [None, register_views(other.view, base.view)])
        except SeriesError:
            continue
        for one in places:
            mine, theirs = ([seen.id for seen in part] for part in one.parts)
            if one.sure and len(mine) == len(theirs) == 1 and mine != theirs:
                found.setdefault(mine[0], theirs[0])
    known = set(inspection.photos.candidates(""))
    return {mine: theirs for mine, theirs in found.items() if theirs in known}


def minutes_given(text: str, count: int) -> list[float]:
    """Minutes from ``2,5,10``, one for each photo.

    Raises
    ------
    UsageError
        If they are no numbers from 0 to 1440, or not as many as photos.

    Examples
    --------
    >>> minutes_given("2, 5,10", 3)
    [2.0, 5.0, 10.0]
    """
    where = "--minutes"
    try:
        minutes = [float(word) for word in text.replace(";", ",").split(",")]
    except ValueError as exc:
        raise UsageError(
            f"'{text}' are not numbers", where=where, mend="write minutes, such as 2,5,10"
        ) from exc
    if len(minutes) != count:
        raise UsageError(
            f"{len(minutes)} times for {count} photos", where=where, mend="give one for each"
        )
    if not all(0 <= one <= 1440 for one in minutes):  # also refuses what is no number
        raise UsageError("minutes run from 0 to 1440", where=where)
    return minutes


def minutes_taken(infos: Sequence[PhotoInfo], developed: str) -> list[float]:
    """Minutes from the camera's clock, since a time given by its own clock.

    Parameters
    ----------
    infos : sequence of PhotoInfo
    developed : str
        ``2026-01-15T10:00`` or ``10:00`` (of the first photo's day), seconds if wanted.

    Raises
    ------
    UsageError
        If the time cannot be read.
    SeriesError
        If a photo has no time or was taken before; an edited photo often has none.

    Examples
    --------
    >>> from pathlib import Path
    >>> from ptmark.photo import Camera
    >>> info = PhotoInfo(path=Path("a"), sha256="", bytes=0, format="", width=1, height=1,
    ...                  camera=Camera(taken="2026-01-15T10:12:30+01:00"))
    >>> minutes_taken([info], "10:00")
    [12.5]
    """
    return minutes_since(developed, [(info.path.name, info.camera.taken) for info in infos])
