"""What an inspection hands on: its scene to the criteria, its whole to the record."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import atan2, degrees, hypot
from types import MappingProxyType
from typing import Any, NamedTuple

import numpy as np

from ptmark.criteria import Evaluation, Judged, Scene
from ptmark.dye import LeftOut, Remark
from ptmark.hides import Hidden
from ptmark.inspection.distances import Shares, shares_of
from ptmark.inspection.edges import edge_u_of, edges_of
from ptmark.inspection.state import Marked, State
from ptmark.measure import Conditions, Measurement
from ptmark.photo import PhotoInfo
from ptmark.record import Entry, Record, build_record, given_json
from ptmark.scale import SurfaceMap

__all__ = [
    "Distances",
    "Worked",
    "chosen_of",
    "distances_of",
    "record_of",
    "scene_of",
    "weld_of",
]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Worked:
    """One photo of the set with what follows from its state; ``surface`` None without scale."""

    state: State
    info: PhotoInfo
    surface: SurfaceMap | None
    measured: tuple[tuple[Marked, Measurement | None], ...]


class Distances(NamedTuple):
    """By letter, how well distances from an indication are known; see `Judged`."""

    edge_u: Mapping[str, float]
    shares: Mapping[str, Shares]


def distances_of(photo: Worked) -> Distances:
    """Those of one photo; none without a surface."""
    state, surface, measured = photo.state, photo.surface, photo.measured
    if surface is None:
        return Distances({}, {})
    return Distances(
        edge_u_of(measured, state, surface), shares_of(measured, surface, state.relief_mm)
    )


def scene_of(
    photo: Worked,
    sizes: Mapping[str, Measurement] = MappingProxyType({}),
    *,
    known: Distances,
    hidden: Hidden,
) -> Scene:
    """The indications as the criteria take them, with what leaves a verdict open.

    ``sizes`` holds, by letter, the measurement that an indication's length, path and width are
    taken from where another photo of the set shows it too; its place stays this photo's.
    """
    state, surface, measured = photo.state, photo.surface, photo.measured
    length_mm, direction_deg = weld_of(state, surface)
    return Scene(
        indications=tuple(
            _judged(
                one,
                made,
                sizes.get(one.id, made),
                known.edge_u.get(one.id, 0.0),
                known.shares.get(one.id, ((), 0.0)),
            )
            for one, made in measured
            if made is not None
        ),
        weld_length_mm=length_mm,
        weld_direction_deg=direction_deg,
        thickness_mm=state.thickness_mm,
        diameter_mm=state.diameter_mm,
        edges={} if surface is None else edges_of(state, surface),
        unmeasured=tuple(one.id for one, made in measured if made is None),
        hidden=hidden,
    )


def weld_of(state: State, surface: SurfaceMap | None) -> tuple[float | None, float | None]:
    """Length in mm and course in degrees on the surface of the examined weld, where known.

    A typed length goes before that of the marked line.
    """
    if state.weld_px is None or surface is None:
        return state.weld_length_mm, None
    start, end = surface.to_mm(np.array(state.weld_px, float))
    across, down = (end - start).tolist()
    length_mm = state.weld_length_mm or hypot(across, down)
    return length_mm, degrees(atan2(down, across))


def record_of(
    photo: Worked,
    *,
    known: Distances,
    look: tuple[Sequence[LeftOut], float | None],
    hidden: Hidden,
    evaluation: Evaluation | None,
    remarks: Sequence[Remark],
    stamp: tuple[str | None, str | None],
) -> Record:
    """One photo's part of the inspection as a record; what is missing stays empty there.

    ``look`` is what the last look left out, and its haze; ``hidden`` why the photo may not show
    all that is there. ``stamp`` is its id and its time, new where None.
    """
    state, surface = photo.state, photo.surface
    weld_length_mm, weld_direction_deg = weld_of(state, surface)
    edges = {} if surface is None else edges_of(state, surface)
    return build_record(
        info=photo.info,
        surface=surface,
        reference=state.reference,
        entries=[
            _entry(one, made, known.edge_u.get(one.id), known.shares.get(one.id))
            for one, made in photo.measured
        ],
        left_out=look[0],
        hidden=hidden,
        evaluation=evaluation,
        conditions=Conditions(relief_mm=state.relief_mm),
        fields=state.fields,
        area_px=state.area_px,
        decision=state.decision,
        decision_reason=state.decision_reason,
        haze=look[1],
        remarks=[one.says for one in remarks],
        record_id=stamp[0],
        created=stamp[1],
        weld_length_mm=weld_length_mm,
        weld_direction_deg=weld_direction_deg,
        thickness_mm=state.thickness_mm,
        diameter_mm=state.diameter_mm,
        edges=edges,
        given=given_json(
            mode=state.mode,
            edges_px=state.edges_px,
            weld_px=state.weld_px,
            weld_length_mm=state.weld_length_mm,
            dropped=[_entry(one, None) for one in state.marked if one.standing == "dropped"],
        ),
    )


def chosen_of(state: State, *, judged: bool) -> dict[str, Any] | None:
    """What was chosen for all photos and stands nowhere else in the record; None if nothing.

    ``judged`` tells whether the record holds a verdict, which names its profile.
    """
    made: dict[str, Any] = {}
    if state.profile and not judged:
        made |= {"profile": state.profile, "decision_rule": state.decision_rule}
    if state.sizes_from:
        made["sizes_from"] = dict(state.sizes_from)
    if state.carried:
        made["carried"] = sorted(state.carried)
    return made or None


def _judged(
    one: Marked,
    made: Measurement,
    size: Measurement,
    edge_u: float,
    shares: Shares,
) -> Judged:
    return Judged(
        id=one.id,
        outline_mm=made.outline_mm,
        length=size.length.value,
        path=size.path.value,
        width=size.width.value,
        length_u=size.length.expanded,
        width_u=size.width.expanded,
        edge_u=edge_u,
        place_u=made.length.expanded,
        near_u=shares[0],
        far_u=shares[1],
        least=size.least,
        kind=one.kind,
        relevance=one.relevance,
        reason=one.reason,
    )


def _entry(
    one: Marked,
    made: Measurement | None,
    edge_u: float | None = None,
    shares: Shares | None = None,
) -> Entry:
    return Entry(
        id=one.id,
        outline_px=one.outline_px,
        edge=one.edge,
        measurement=made,
        standing=one.standing,
        edge_u=edge_u,
        shares=shares,
        confidence=one.confidence,
        kind=one.kind,
        note=one.note,
        relevance=one.relevance,
        reason=one.reason,
    )
