"""Several photos in one record: joined, and judged as one set."""

from collections.abc import Iterator, Mapping, Sequence, Set
from dataclasses import replace
from typing import Any

from ptmark.criteria import Evaluation, Profile, Scene, evaluate, scene_from_json
from ptmark.en import en_number
from ptmark.least import those
from ptmark.record.cautions import DEPARTS, departs
from ptmark.record.entry import least_of
from ptmark.record.model import PHOTO_MEMBERS, Record

__all__ = ["evaluated_again", "joined", "scenes_of", "worst_verdict"]

# What the criteria cannot see across photos.
ONE_BY_ONE = (
    "Each photo is judged on its own surface: rules over a length of weld, an area or a row of "
    "indications do not count those of different photos together."
)
_SIZE = ("length_mm", "length_u_mm", "width_mm", "width_u_mm")


def worst_verdict(photos: Sequence[tuple[str | None, Set[str]]]) -> str | None:
    """The verdict of a set.

    Parameters
    ----------
    photos : sequence of (str or None, set of str)
        The verdict of each photo, None where it cannot be judged, and its indications' letters.

    Returns
    -------
    str or None
        The worst of the photos'. A photo that cannot be judged takes no part where every
        indication in it is judged in another; else there is no verdict, unless a photo is
        rejectable as it is.

    Examples
    --------
    >>> worst_verdict([("acceptable", {"A"}), ("undecided", {"B"})])
    'undecided'
    >>> worst_verdict([(None, {"A"}), ("acceptable", {"A", "B"})])  # an overview, no scale
    'acceptable'
    >>> worst_verdict([(None, {"A"}), ("acceptable", {"B"})])
    """
    given = {verdict for verdict, _ in photos if verdict is not None}
    judged: set[str] = set().union(*(names for verdict, names in photos if verdict is not None))
    if "rejectable" in given:
        return "rejectable"
    if not given or any(verdict is None and names - judged for verdict, names in photos):
        return None
    return "undecided" if "undecided" in given else "acceptable"


def joined(
    parts: Sequence[Record],
    again: Mapping[str, tuple[int | None, bool]],
    disposition: tuple[str, str],
    minutes: Sequence[float] = (),
) -> Record:
    """Records of one photo each as one record of them all.

    Parameters
    ----------
    parts : sequence of Record
        In the order of the set, without disposition.
    again : mapping of str to (int or None, bool)
        By letter that several photos show: the number from 0 of the photo whose size counts,
        None where none is measured, and whether the inspector chose it.
    disposition : (str, str)
        Decision and reason.
    minutes : sequence of float
        Of photos that follow the bleed-out: when each was taken. That an earlier one shows
        less is no contradiction then.
    """
    verdicts = [(one.verdict, {row["id"] for row in one.indications}) for one in parts]
    verdict = worst_verdict(verdicts)
    seen = [_seen_again(name, parts, how) for name, how in again.items()]
    cautions = [ONE_BY_ONE, *_unjudged(parts, verdicts), *_apart(seen, minutes)]
    if departs(verdict, *disposition):
        cautions.append(DEPARTS)
    others = [{name: getattr(one, name) for name in PHOTO_MEMBERS} for one in parts[1:]]
    told: dict[str, Any] = {"verdict": verdict, "seen_again": seen, "cautions": cautions}
    decision, reason = disposition
    return replace(
        parts[0],
        more_photos=others,
        together=told,
        disposition={"decision": decision, "reason": reason},
    )


def _seen_again(
    name: str, parts: Sequence[Record], how: tuple[int | None, bool]
) -> dict[str, Any]:
    of_record, chosen = how
    rows = {
        number: row
        for number, part in enumerate(parts)
        for row in part.indications
        if row["id"] == name
    }
    held = None if of_record is None else rows[of_record]
    sizes = [
        {"photo": number + 1, **{one: row[one] for one in _SIZE}, "en": _en(row, held)}
        for number, row in rows.items()
    ]
    number = None if of_record is None else of_record + 1
    return {"id": name, "of_record": number, "chosen": chosen, "sizes": sizes}


def _en(row: Mapping[str, Any], held: Mapping[str, Any] | None) -> float | None:
    if held is None or row is held or row["length_mm"] is None:
        return None
    en = en_number(row["length_mm"], row["length_u_mm"], held["length_mm"], held["length_u_mm"])
    return None if en is None else round(en, 4)


def _unjudged(
    parts: Sequence[Record], verdicts: Sequence[tuple[str | None, Set[str]]]
) -> list[str]:
    """What is to be said of photos without a verdict, where others have one."""
    judged = [names for verdict, names in verdicts if verdict is not None]
    if not judged:
        return []
    there: set[str] = set().union(*judged)
    said = []
    for number, (part, (verdict, names)) in enumerate(zip(parts, verdicts, strict=True), 1):
        if verdict is not None:
            continue
        which = f"Photo {number} ({part.photo['file']}) cannot be judged"
        open_ = sorted(names - there)
        if open_:
            said.append(f"{which}, and nothing else judges {', '.join(open_)}: set its scale.")
        elif names:
            said.append(f"{which}; the sizes of its indications come from other photos.")
        else:
            said.append(f"{which}; it shows no indication and is kept as a picture only.")
    return said


def _apart(seen: Sequence[Mapping[str, Any]], minutes: Sequence[float]) -> list[str]:
    said = []
    for one in seen:
        held = {size["photo"]: size["length_mm"] for size in one["sizes"]}
        for size in one["sizes"]:
            if size["en"] is not None and size["en"] > 1:
                here, there = size["photo"], one["of_record"]
                shorter = size["length_mm"] < held[there]
                if minutes and shorter and minutes[here - 1] < minutes[there - 1]:
                    continue
                said.append(
                    f"{one['id']}: photo {size['photo']} shows {size['length_mm']:.2f} mm, "
                    f"which departs from the size of record (photo {one['of_record']}) by more "
                    f"than both uncertainties allow (En {size['en']:.1f}): look again."
                )
    return said


def scenes_of(record: Record) -> list[Scene]:
    """What the criteria judge of each photo, sizes of record in place of the photo's own.

    A photo without a scale has no places; its scene is empty.

    Raises
    ------
    CriteriaError
        If a record of one photo has no scale.
    """
    views = record.views()
    if len(views) == 1:
        return [scene_from_json(record.to_json())]
    rows = [{row["id"]: row for row in view.indications} for view in views]
    held = {
        one["id"]: rows[one["of_record"] - 1][one["id"]]
        for one in (record.together or {})["seen_again"]
        if one["of_record"] is not None
    }
    return [_scene(view, held) for view in views]


def evaluated_again(
    record: Record, profile: Profile, decision: str | None = None
) -> Iterator[tuple[int, Record, Evaluation]]:
    """Each photo of the record that can be judged, by another profile.

    Gives the photo's number in the set (0 where the record has one photo), its part of the
    record and the evaluation; the decision rule is the one it was judged with before, unless
    ``decision`` names one. A photo of a set that has no scale is passed over.
    """
    views = record.views()
    for number, (view, scene) in enumerate(zip(views, scenes_of(record), strict=True), 1):
        if len(views) > 1 and view.scale["reference"] is None:
            continue
        rule = decision or (view.evaluation or {}).get("decision_rule", "guarded")
        yield number if len(views) > 1 else 0, view, evaluate(profile, scene, rule)


def _scene(view: Record, held: Mapping[str, Mapping[str, Any]]) -> Scene:
    if view.scale["reference"] is None:
        return Scene(indications=())
    scene = scene_from_json(view.to_json())
    judged = tuple(
        one
        if one.id not in held
        else replace(one, place_u=one.length_u, **_sizes(held[one.id]))
        for one in scene.indications
    )
    return replace(scene, indications=judged)


def _sizes(row: Mapping[str, Any]) -> dict[str, Any]:
    return {
        "length": row["length_mm"],
        "path": row["path_mm"],
        "width": row["width_mm"],
        "length_u": row["length_u_mm"],
        "width_u": row["width_u_mm"],
        "least": those(least_of(row)),
        "rough": None,
    }
