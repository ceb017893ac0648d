"""One indication on its way into the record."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality
from ptmark.least import Least
from ptmark.measure import Measurement
from ptmark.record.plain import points
from ptmark.scale import SurfaceMap

__all__ = ["Entry", "least_of", "places_px"]

Array = npt.NDArray[np.float64]


def least_of(indication: Mapping[str, Any]) -> dict[str, bool]:
    """Whether each reason holds why a row's sizes are the least that they can be.

    Examples
    --------
    >>> least_of({"length_mm": 5.781, "overexposed": True})
    {'runs_out': False, 'overexposed': True, 'covered': False, 'ends_unsure': False}
    """
    return {why.value: bool(indication.get(why)) for why in Least}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Entry:
    """One indication as it goes into the record.

    ``outline_px`` of shape (N, 2) px of the upright photo; ``measurement`` is None where there
    is no surface. ``standing`` is "suggested" (not looked at) or "taken"; ``confidence`` 0 to 1
    or None; ``edge_u`` (k = 2, mm) is how well its distance to marked lines is known, None
    where there are none; ``shares`` (k = 2) are `Judged`'s ``near_u`` and ``far_u``;
    ``relevance`` is "", "non-relevant" or "false", the latter two with a
    ``reason``.
    """

    id: str
    outline_px: Array
    edge: EdgeQuality
    measurement: Measurement | None = None
    standing: str = "taken"
    confidence: float | None = None
    kind: str = ""
    note: str = ""
    relevance: str = ""
    reason: str = ""
    edge_u: float | None = None
    shares: tuple[tuple[float, ...], float] | None = None


def places_px(
    entries: Sequence[Entry], surface: SurfaceMap | None
) -> dict[str, list[list[float]]]:
    """By letter, px: the centre, and after it both ends where it is measured.

    All are mapped at once: one alone costs as much.
    """
    made = {one.id: one.measurement for one in entries if one.measurement is not None}
    if surface is None or not made:
        return {one.id: _middle_px(one) for one in entries}
    mm = np.array([(one.centre_mm, *one.ends_mm) for one in made.values()], dtype=float)
    px = surface.to_px(mm.reshape(-1, 2)).reshape(-1, 3, 2)
    places = {name: points(at, 2) for name, at in zip(made, px, strict=True)}
    return {one.id: places.get(one.id) or _middle_px(one) for one in entries}


def _middle_px(one: Entry) -> list[list[float]]:
    return points([(one.outline_px.min(axis=0) + one.outline_px.max(axis=0)) / 2], 2)
