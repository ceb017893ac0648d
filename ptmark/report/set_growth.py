"""Bleed-out in the photos of one inspection: measured points against minutes, none fitted.

An indication is followed by its letter, which says that it is one in several photos.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from ptmark.errors import PtmarkError, SeriesError
from ptmark.record import Record, least_of
from ptmark.report.chart import Chart, Line, draw_chart
from ptmark.report.growth import MOST_CURVES, curve_look
from ptmark.report.growth_data import MEASURED_ONLY
from ptmark.series import Timed, Window, timed

__all__ = ["Bleedout", "bleedout", "times_of"]

Picture = npt.NDArray[np.uint8]
Points = dict[str, list[tuple[float, float, float]]]  # by letter: minutes, value, U

_WIDE, _HIGH, _UNIT = 1600, 700, 20.0


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Bleedout:
    """``picture`` of shape (H, 1600, 3) with both plots, None where there is nothing to plot.

    ``says`` is what it shows, or why there is none.
    """

    picture: Picture | None
    says: str


def bleedout(record: Record) -> Bleedout:
    """Length and area against minutes of what several photos of a record show.

    The minutes are those from the field "Developer dry at" to when each photo was taken, both
    by the camera's clock. Which photo is to be evaluated goes by the standard that belongs to
    the criteria, as a record does not hold its procedure's own time.
    """
    views = record.views()
    developed = record.fields.get("developer_dry_at", "").strip()
    if not developed:
        return _nothing("the record does not say when the developer was dry")
    try:
        times = times_of(record)
    except PtmarkError as exc:
        whose = f"{exc.where}: " if isinstance(exc, SeriesError) else ""
        return _nothing(f"{whose}{exc.what}")
    minutes, window, choice = times.minutes, times.window, times.choice
    length = _points(views, minutes, "length_mm", "length_u_mm")
    area = _points(views, minutes, "area_mm2", "area_u_mm2")
    if not length:
        return _nothing("no indication bears one letter in two photos of different times")
    by_size = sorted(length, key=lambda name: -max(y for _, y, _ in length[name]))
    shown = by_size[:MOST_CURVES]
    marked = None if choice.index is None else minutes[choice.index]
    plots = [
        draw_chart(_chart(title, points, shown, window, marked), _WIDE // 2, _HIGH, _UNIT)
        for title, points in (("Length, mm", length), ("Area, mm²", area))
    ]
    evaluate = f"No photo to evaluate: {choice.says}"
    if choice.index is not None:
        evaluate = f"To evaluate: {views[choice.index].photo['file']}, {choice.says}"
    says = [
        evaluate,
        "The time to evaluate is shaded; the procedure's own governs.",
        f"Minutes from when the developer was dry ({developed}) to each photo, both by the "
        "camera's clock.",
        f"{MEASURED_ONLY} Bars: ± U (k = 2).",
    ]
    least = _least(views, minutes, shown)
    if least:
        says.append(f"The photo may not show all of it, so at least: {least}.")
    if len(shown) < len(length):
        says.append(f"The {len(shown)} longest are drawn.")
    return Bleedout(picture=np.concatenate(plots, axis=1), says=" ".join(says))


def times_of(record: Record) -> Timed:
    """When the photos of a record were taken; PtmarkError where that is not known."""
    taken = [
        (view.photo["file"], str((view.photo.get("camera") or {}).get("taken") or ""))
        for view in record.views()
    ]
    profile = str((record.evaluation or {}).get("profile", ""))
    return timed(record.fields.get("developer_dry_at", ""), taken, profile)


def _nothing(why: str) -> Bleedout:
    return Bleedout(picture=None, says=f"Bleed-out over time is not plotted: {why}.")


def _points(
    views: list[Record], minutes: Sequence[float], value: str, uncertainty: str
) -> Points:
    """What each letter measures in the photos that show it, in order of time."""
    found: Points = {}
    for at, view in sorted(zip(minutes, views, strict=True), key=lambda pair: pair[0]):
        for one in view.indications:
            if one[value] is not None:
                found.setdefault(one["id"], []).append((at, one[value], one[uncertainty]))
    return {name: made for name, made in found.items() if len({at for at, _, _ in made}) > 1}


def _least(views: list[Record], minutes: Sequence[float], shown: list[str]) -> str:
    """The points whose sizes are the least that they can be, such as ``A at 10 min``."""
    told = [
        f"{one['id']} at {at:g} min"
        for at, view in sorted(zip(minutes, views, strict=True), key=lambda pair: pair[0])
        for one in view.indications
        if one["id"] in shown and any(least_of(one).values())
    ]
    return ", ".join(told)


def _chart(
    title: str, points: Points, shown: list[str], window: Window, marked: float | None
) -> Chart:
    lines = []
    for number, name in enumerate(shown):
        ink, style = curve_look(number)
        lines.append(Line(name=name, points=np.array(points[name]), ink=ink, style=style))
    span = (window.first, window.last)
    return Chart(title=title, lines=tuple(lines), span=span, marked=marked)
