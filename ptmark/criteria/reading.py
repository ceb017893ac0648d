"""A scene from the JSON that ``ptmark measure`` writes, or from less."""

from collections.abc import Mapping
from typing import Any, NamedTuple

from ptmark.criteria.apart import Apart
from ptmark.criteria.fields import (
    edges_of,
    number_of,
    points_of,
    refuse_other_names,
    shares_of,
    text_of,
    truth_of,
)
from ptmark.criteria.geometry import Array
from ptmark.criteria.outlines import read_at_once
from ptmark.criteria.rough import (
    ROUGHNESS,
    ROUNDING_MM,
    Rough,
    agreed,
    measured_closely,
    roughly,
)
from ptmark.criteria.scene import NEAR_DEG, Judged, Scene
from ptmark.errors import CriteriaError, OutlineError
from ptmark.hides import Hidden, Hides, that_hide
from ptmark.least import Least, those

__all__ = ["scene_from_json"]

_MOST_INDICATIONS = 100_000
_DEPARTS_MM = 0.01
_SETTINGS = ("weld_length_mm", "thickness_mm", "diameter_mm", "weld_direction_deg", "edges_mm")
_OF_EACH = ("outline_mm", "length_u_mm", "width_u_mm", "edge_u_mm")
_RELEVANCE = ("", "relevant", "non-relevant", "false")
_NUMBERS = ("length_mm", "path_mm", "width_mm", *_OF_EACH[1:], "far_u")
_TEXTS = ("kind", "relevance", "reason")
_LEAST = tuple(why.value for why in Least)  # to walk an enumeration costs ten times as much
_NOTHING_STATED: dict[str, float | None] = dict.fromkeys(_NUMBERS)
_NOTHING_SAID = dict.fromkeys((*_TEXTS, "shape"), "")
# What an evaluation said of it before it was a finding.
_NO_COLOUR = (
    "The photo holds no colour, so that nothing is marked in it tells nothing. Take it "
    "in colour, or trace what is there by hand. Until then it is not acceptable."
)
_LINEAR = 3.0  # in widths, as `ptmark measure` states a shape
_FEW = 300  # so many are all measured closely at once


def scene_from_json(document: Mapping[str, Any]) -> Scene:
    """Read the shape that ``ptmark measure --json`` writes, or less.

    Each of ``indications`` needs ``id`` and ``outline_mm``, and takes ``length_u_mm``,
    ``width_u_mm`` and ``edge_u_mm`` (how well the place of the edges is known from there; 0
    where absent), ``near_u`` and ``far_u`` (see `Judged`), ``kind``, ``relevance``, ``reason``
    and true for each reason of `Least`; the top level takes ``weld_length_mm``,
    ``thickness_mm``, ``diameter_mm``, ``weld_direction_deg`` and ``edges_mm``: lines as lists
    of [x, y], either a list of free edges or an object of lines or lists of them by name
    ("edge" is a free edge). The outline is what is judged: length, path and width are taken
    from it by `ptmark.measure`, so that sizes, gaps and windows cannot contradict each other. A
    stated ``length_mm``, ``path_mm`` or ``width_mm`` is taken only where it is the same figure
    less coarsely rounded, within 0.002 mm of the outline's (1 % for the path), so that a file
    from ``ptmark measure`` is judged as it was measured. A length or width that departs by more
    than 0.01 mm and its own uncertainty is noted as a caution. Widths and paths of many
    outlines are measured only where something hangs on them (`ptmark.criteria.rough`). Of a
    photo with a scale (``scale.reference``) an outline may be null: it was not measured.
    ``conditions`` tell by the reasons of `Hides` what the photo cannot show: how many places,
    or true. Whatever else it holds is left alone, but for what says that its lengths are in
    another unit, and for a key that stands in place of one that is read, such as ``length_u``:
    passed over, either would make a verdict milder.

    Raises
    ------
    CriteriaError
        Naming the indication and the key, for what is missing, doubled or no measurement.
    """
    if not isinstance(document, Mapping):
        raise CriteriaError("the document must be a JSON object", where="document")
    refuse_other_names(document, _SETTINGS, "document")
    listed = document.get("indications")
    if not isinstance(listed, list):
        raise CriteriaError(
            "must be a list" + ("" if "indications" in document else ", but is missing"),
            where="indications",
            mend='write "indications": [{"id": "A", "outline_mm": [[0, 0], [4, 0], [4, 1]]}]',
        )
    if len(listed) > _MOST_INDICATIONS:
        raise CriteriaError(
            f"{len(listed)} indications are more than {_MOST_INDICATIONS}", where="indications"
        )
    read, unmeasured = _read_all(listed, may_lack=_holds_a_map(document))
    notes: list[str] = []
    known = Apart.of([one.outline for one in read])
    rough = roughly([one.outline for one in read], known) if read else []
    return Scene(
        indications=tuple(
            _judged(one, size, notes, closely=len(read) <= _FEW)
            for one, size in zip(read, rough, strict=True)
        ),
        weld_length_mm=number_of(document, "weld_length_mm", "document", positive=True),
        thickness_mm=number_of(document, "thickness_mm", "document", positive=True),
        diameter_mm=number_of(document, "diameter_mm", "document", positive=True),
        weld_direction_deg=number_of(document, "weld_direction_deg", "document"),
        edges=edges_of(document.get("edges_mm")),
        notes=tuple(notes),
        unmeasured=unmeasured,
        hidden=_hidden(document),
        known=known,
    )


def _hidden(document: Mapping[str, Any]) -> Hidden:
    conditions = document.get("conditions")
    if not isinstance(conditions, Mapping):
        conditions = {}
    told: dict[Hides, int | bool] = {
        why: int(number_of(conditions, why, "conditions", least=0.0) or 0)
        if why.is_counted
        else truth_of(conditions, why, "conditions")
        for why in Hides
    }
    return that_hide(told | ({Hides.COLOURLESS: True} if _said_so(document) else {}))


def _said_so(document: Mapping[str, Any]) -> bool:
    """Whether an older record's evaluation tells of a photo without colour."""
    evaluation = document.get("evaluation")
    said = evaluation.get("cautions") if isinstance(evaluation, Mapping) else None
    return isinstance(said, list) and _NO_COLOUR in said


def _holds_a_map(document: Mapping[str, Any]) -> bool:
    """Whether it is of a photo with a scale, so that what has no outline was not measurable."""
    scale = document.get("scale")
    return isinstance(scale, Mapping) and bool(scale.get("reference"))


def _read_all(listed: list[object], *, may_lack: bool) -> tuple[list["_Read"], tuple[str, ...]]:
    """All indications, each id once, and the ids of those that were not measured."""
    read: list[_Read] = []
    unmeasured: list[str] = []
    seen: set[str] = set()
    outlines = read_at_once([_outline_in(data) for data in listed])
    for nth, (data, outline) in enumerate(zip(listed, outlines, strict=True)):
        where = f"indications[{nth}]"
        if may_lack and isinstance(data, Mapping) and data.get("outline_mm", ...) is None:
            name = _name_of(data, where)
            unmeasured.append(name)
        else:
            one = _read(data, where, outline)
            name = one.id
            read.append(one)
        if name in seen:
            raise CriteriaError(
                f"id '{name}' is used twice",
                where=where,
                mend="give each indication an id of its own",
            )
        seen.add(name)
    return read, tuple(unmeasured)


class _Read(NamedTuple):
    """One indication as written, checked but not yet measured."""

    id: str
    outline: Array
    numbers: dict[str, float | None]
    texts: dict[str, str]
    least: frozenset[Least]
    near_u: tuple[float, ...]


def _outline_in(data: object) -> object:
    return data.get("outline_mm") if isinstance(data, Mapping) else None


def _read(data: object, where: str, outline: Array | None) -> _Read:
    """One indication; ``outline`` is its own, None where that is still to be looked at."""
    if not isinstance(data, Mapping):
        raise CriteriaError(
            f"must be an object, got {data!r:.40}",
            where=where,
            mend="""write {"id": "A", "outline_mm": [[0, 0], [4, 0], [4, 1]]}""",
        )
    name = _name_of(data, where)
    where = f"indication {name:.40}"
    refuse_other_names(data, _OF_EACH, where)
    if outline is None:
        outline = _outline(data, f"{where}, outline_mm")
    numbers = _NOTHING_STATED | {
        key: number_of(data, key, where, least=0.0 if "_u" in key else None)
        for key in _NUMBERS
        if key in data
    }
    texts = _NOTHING_SAID | {
        key: text_of(data, key, where) for key in _NOTHING_SAID if key in data
    }
    if texts["relevance"] not in _RELEVANCE:
        raise CriteriaError(
            f"'{texts['relevance']:.40}' is unknown",
            where=f"{where}, relevance",
            mend="write non-relevant or false, with a reason, or leave it out",
        )
    least = those({why: truth_of(data, why, where) for why in _LEAST if why in data})
    near_u = shares_of(data, "near_u", where, len(NEAR_DEG))
    return _Read(name, outline, numbers, texts, least, near_u)


def _name_of(data: Mapping[str, Any], where: str) -> str:
    name = text_of(data, "id", where)
    if not name:
        raise CriteriaError(
            "id must be text, but is missing or empty",
            where=where,
            mend='give it one, such as "id": "A"',
        )
    return name


def _outline(data: Mapping[str, Any], where: str) -> Array:
    from ptmark.measure.geometry import as_outline

    try:
        return as_outline(points_of(data.get("outline_mm"), where))
    except OutlineError as error:
        raise CriteriaError(
            error.what,
            where=where,
            mend="list its corners in order, once round the indication",
        ) from error


def _judged(one: _Read, rough: Rough, notes: list[str], *, closely: bool) -> Judged:
    stated = one.numbers
    length_u, width_u = stated["length_u_mm"] or 0.0, stated["width_u_mm"] or 0.0
    rough.stated = stated["width_mm"], stated["path_mm"]
    _note(notes, one, "length_mm", rough.length, length_u)
    if not closely and not _is_within(stated["width_mm"], rough.widths, width_u):
        closely = True
    width, path = rough.widths[1], rough.length
    if closely:
        measured, way = measured_closely(one.outline, rough.length)
        _note(notes, one, "width_mm", measured, width_u)
        width = agreed(stated["width_mm"], measured, ROUNDING_MM)
        path = agreed(stated["path_mm"], way, ROUGHNESS * way)
        _note_shape(notes, one, max(rough.length, way), measured)
    return Judged(
        id=one.id,
        outline_mm=one.outline,
        length=agreed(stated["length_mm"], rough.length, ROUNDING_MM),
        path=path,
        width=width,
        length_u=length_u,
        width_u=width_u,
        edge_u=stated["edge_u_mm"] or 0.0,
        near_u=one.near_u,
        far_u=stated["far_u"] or 0.0,
        least=one.least,
        kind=one.texts["kind"],
        relevance=one.texts["relevance"],
        reason=one.texts["reason"],
        rough=None if closely else rough,
    )


def _note_shape(notes: list[str], one: _Read, long: float, wide: float) -> None:
    """Keep the word that a stated shape is clearly another than the outline's."""
    off = {"linear": long < 0.95 * _LINEAR * wide, "rounded": long > 1.05 * _LINEAR * wide}
    if off.get(one.texts["shape"], False):
        notes.append(
            f"Indication {one.id} is stated to be {one.texts['shape']}, but its outline is "
            f"{long / wide:.2f} times as long as wide; the outline was judged."
        )


def _is_within(stated: float | None, bounds: tuple[float, float], u: float) -> bool:
    """Whether a stated width needs no closer look: it lies between the quick bounds."""
    slack = max(_DEPARTS_MM, u)
    return stated is None or bounds[0] - slack <= stated <= bounds[1] + slack


def _note(notes: list[str], one: _Read, key: str, measured: float, u: float) -> None:
    """Keep the word that a stated figure departs from the outline's."""
    stated = one.numbers[key]
    if stated is not None and abs(stated - measured) > max(_DEPARTS_MM, u):
        notes.append(
            f"Indication {one.id} states {key} {stated:g}, but its outline measures "
            f"{measured:.2f} mm; the outline was judged."
        )
