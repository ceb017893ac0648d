"""From an inspection's objects to its record: everything a second person needs."""

import uuid
from collections.abc import Iterable, Mapping, Sequence
from datetime import UTC, datetime
from types import MappingProxyType
from typing import Any

import numpy as np
import numpy.typing as npt

import ptmark
from ptmark.criteria import Evaluation
from ptmark.dye import LeftOut
from ptmark.errors import RecordError
from ptmark.hides import Hidden
from ptmark.least import Least
from ptmark.measure import Conditions
from ptmark.photo import PhotoInfo
from ptmark.record.cautions import cautions_of
from ptmark.record.entry import Entry, places_px
from ptmark.record.figures import figures_json
from ptmark.record.model import Record
from ptmark.record.plain import (
    OUTLINE_DIGITS,
    edge_json,
    evaluation_json,
    lens_json,
    number,
    photo_json,
    points,
    scale_json,
    share,
)
from ptmark.scale import Reference, SurfaceMap

__all__ = ["build_record", "given_json"]

Array = npt.NDArray[np.float64]


def build_record(  # noqa: PLR0913 - one argument for each part of the record, by name
    *,
    info: PhotoInfo,
    surface: SurfaceMap | None,
    reference: Reference | None = None,
    entries: Sequence[Entry],
    left_out: Sequence[LeftOut],
    hidden: Hidden = MappingProxyType({}),
    evaluation: Evaluation | None,
    conditions: Conditions,
    fields: dict[str, str],
    area_px: Iterable[Sequence[float]] | Array | None,
    decision: str,
    decision_reason: str,
    haze: float | None,
    remarks: Sequence[str] = (),
    record_id: str | None = None,
    created: str | None = None,
    weld_length_mm: float | None = None,
    thickness_mm: float | None = None,
    weld_direction_deg: float | None = None,
    diameter_mm: float | None = None,
    edges: Mapping[str, Sequence[Array]] = MappingProxyType({}),
    given: dict[str, Any] | None = None,
) -> Record:
    """Gather everything a second person needs to repeat the inspection.

    Parameters
    ----------
    info : PhotoInfo
        The photo's facts; its folder is left out of the record.
    surface : SurfaceMap or None
        The map that was measured with; None where no scale is set.
    reference : Reference or None
        What the user gave as the scale; kept as plain data.
    entries : sequence of Entry
    left_out : sequence of LeftOut
        Blobs the suggestions left out.
    hidden : mapping of Hides to int
        Why the photo may not show all that is there.
    evaluation : Evaluation or None
    conditions : Conditions
    fields : dict of str to str
        By the keys of `FIELDS`; empty ones are left out.
    area_px : points (x, y), shape (N, 2), or None
        The examined area, px of the upright photo.
    decision, decision_reason : str
        The disposition.
    haze : float or None
        Background pinkness, 0 to 1.
    remarks : sequence of str
        What was said of the photo; they become cautions.
    record_id, created : str or None
        Given where a record is made again; else a new random UUID and the time now (UTC).
    weld_length_mm, thickness_mm, diameter_mm : float or None
        What rules were told of the weld and the part, mm.
    weld_direction_deg : float or None
        The weld's run, from the surface's x axis towards its y axis.
    edges : mapping of str to lines of shape (N, 2), mm
        The lines that rules go by, such as a free edge, by name.
    given : dict or None
        What else the inspector gave for the photo, see `given_json`.

    Returns
    -------
    Record

    Raises
    ------
    RecordError
        If two indications carry the same letter.
    """
    letters = [one.id for one in entries]
    if len(set(letters)) != len(letters):
        twin = next(name for name in letters if letters.count(name) > 1)
        raise RecordError(f"the letter {twin} stands for two indications", where="record")
    now = datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")
    places = places_px(entries, surface)
    return Record(
        id=record_id or str(uuid.uuid4()),
        created=created or now,
        fields={key: text for key, text in fields.items() if text.strip()},
        photo=photo_json(info),
        scale=scale_json(surface, reference) | lens_json(info),
        conditions={
            "relief_mm": number(conditions.relief_mm, 6),
            "haze": share(haze),
            **{why.value: count if why.is_counted else True for why, count in hidden.items()},
        },
        area_px=None if area_px is None else points(area_px, 2),
        indications=[_indication(one, places[one.id]) for one in entries],
        left_out=[
            {"outline_px": points(b.outline_px, OUTLINE_DIGITS), "reason": b.reason}
            for b in left_out
        ],
        evaluation=None if evaluation is None else evaluation_json(evaluation),
        disposition={"decision": decision, "reason": decision_reason},
        cautions=cautions_of(
            surface,
            entries,
            evaluation,
            (decision, decision_reason),
            remarks,
            (given or {}).get("dropped", ()),
        ),
        software=f"ptmark {ptmark.__version__}",
        weld_length_mm=number(weld_length_mm, 6),
        thickness_mm=number(thickness_mm, 6),
        weld_direction_deg=number(weld_direction_deg, 4),
        diameter_mm=number(diameter_mm, 6),
        edges_mm={name: [points(line, 4) for line in lines] for name, lines in edges.items()}
        or None,
        given=given,
    )


def given_json(
    *,
    mode: str,
    weld_px: Iterable[Sequence[float]] | None,
    weld_length_mm: float | None,
    dropped: Sequence[Entry],
    edges_px: Sequence[tuple[str, Iterable[Sequence[float]]]] = (),
) -> dict[str, Any] | None:
    """What the inspector gave for a photo and no other member holds; None where nothing.

    Parameters
    ----------
    mode : str
        Kind of penetrant the photo was looked at for; "" where it was recognised.
    weld_px : two points (x, y), or None
        On the weld's middle, px.
    weld_length_mm : float or None
        As typed.
    dropped : sequence of Entry
        What the inspector dropped.
    edges_px : sequence of (name, points)
        The marked lines that rules go by, such as a free edge.
    """
    if not (mode or weld_px or dropped or edges_px):
        return None
    edges = [{"name": name, "points_px": points(line, 2)} for name, line in edges_px]
    return {
        **({"edges": edges} if edges else {}),
        "mode": mode,
        "weld_px": None if weld_px is None else points(weld_px, 2),
        "weld_length_mm": number(weld_length_mm, 6),
        "dropped": [
            {
                "id": one.id,
                "outline_px": points(one.outline_px, OUTLINE_DIGITS),
                "edge": edge_json(one.edge),
                "source": one.edge.source,
                "confidence": share(one.confidence),
                "kind": one.kind,
                "note": one.note,
                "relevance": one.relevance,
                "reason": one.reason,
            }
            for one in dropped
        ],
    }


def _indication(one: Entry, at_px: list[list[float]]) -> dict[str, Any]:
    made = one.measurement
    return {
        "id": one.id,
        **figures_json(made),
        **({} if one.edge_u is None else {"edge_u_mm": number(one.edge_u, 4)}),
        **_shares(one),
        **{why.value: True for why in Least if made is not None and why in made.least},
        "outline_px": points(one.outline_px, OUTLINE_DIGITS),
        "centre_px": at_px[0],
        "ends_px": at_px[1:] or None,
        "edge": edge_json(one.edge),
        "source": one.edge.source,
        "standing": one.standing,
        "confidence": share(one.confidence),
        "kind": one.kind,
        "note": one.note,
        "relevance": one.relevance,
        "reason": one.reason,
    }


def _shares(one: Entry) -> dict[str, Any]:
    """How well distances about it and from it are known, as `Judged` has them."""
    if one.shares is None:
        return {}
    near_u, far_u = one.shares
    return {"near_u": [number(share, 6) for share in near_u], "far_u": number(far_u, 6)}
