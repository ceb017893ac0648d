"""A record's facts in a reader's words: the one place where its numbers become text.

Image, PDF and CSV all speak through this module, so that they cannot say different things.
"""

from typing import Any

from ptmark.least import Least
from ptmark.record import Record, departs, least_of
from ptmark.units import MM_PER_IN

__all__ = [
    "AID",
    "CONTRIBUTIONS",
    "EMPTY",
    "SAFETY",
    "STRICTEST",
    "VERDICT_SIGN",
    "called",
    "conformity_words",
    "criteria_line",
    "deciding",
    "decision_rule_words",
    "disposition_words",
    "judged_in",
    "limit_words",
    "measured",
    "plain_words",
    "scale_line",
    "shape_words",
    "sized",
    "standing",
    "table_note",
]

EMPTY = "—"

STRICTEST = ("rejectable", "undecided", "acceptable")
_DIGITS = {"in": 3, "mm2": 1, "in2": 3, "%": 1}
_UNITS = {"1": "", "mm2": "mm²", "in2": "in²"}

VERDICT_SIGN = {"rejectable": "✗", "undecided": "?", "acceptable": "✓"}

AID = (
    "The verdict is an aid. The contract's own edition of the code, local rules and the "
    "certified inspector decide.",
    "The examiner's near and colour vision, and the light at the surface, must be qualified "
    "as the procedure asks.",
)

# Hazards of solvent-removable penetrant testing: common practice of safety data sheets.
SAFETY = (
    "Many penetrants, removers and developers are flammable, as liquid and as spray mist: keep "
    "them from sparks, flames, welding, grinding and hot or energised parts, keep the amounts "
    "small and put used cloths into a closed metal container.",
    "Ventilate well, confined spaces above all; wear gloves and eye protection; read the "
    "safety data sheets.",
    "Let hot parts cool into the procedure's temperature range before penetrant or remover "
    "touches them.",
)

_TABLE_NOTE = (
    "U: expanded uncertainty, k = 2 (about 95 %). Length: largest distance across the outline; "
    "path: along it; width: largest circle within it; ratio: the greater of length and path, "
    "over width."
)
_LEAST_NOTES = {
    Least.RUNS_OUT: " ≥: it ends at the photo's edge, so this is the least it can be.",
    Least.COVERED: " ≥: something may cover an end of it, so this is the least it can be.",
    Least.ENDS_UNSURE: " ≥: its ends may not show in haze, rust, grain, a red reflection, "
    "beside paint or where the file lost its colour, so this is the least it can be.",
    Least.OVEREXPOSED: " ≥: it lies on overexposed developer, so this is the least it can be.",
}

# What the parts of a length's budget stand for.
CONTRIBUTIONS = {
    "reference": "size of the scale reference itself",
    "picking": "where the reference was picked in the photo",
    "map": "fit of the map from photo to surface",
    "edge": "where the dye ends, between 40 % and 60 % of its contrast",
    "sampling": "image noise and pixels along the outline",
    "tilt": "unknown tilt of the camera",
    "relief": "height of the indication above the plane of the scale",
    "lens": "distortion of the lens",
    "focal length": "how far a pipe bulges towards the camera, by the focal length",
    "touching line": "where the flat reference touches the pipe",
}


def measured(value: float | None, u: float | None = None, unit: str = "mm") -> str:
    """A value with its expanded uncertainty and its unit.

    Two decimals in mm, three in inches and where U is below 0.01; counts as they are.

    Examples
    --------
    >>> measured(8.004, 0.1), measured(0.2561, 0.0042, ""), measured(None)
    ('8.00 ± 0.10 mm', '0.256 ± 0.004', '—')
    >>> measured(3.0, 0.0, "1"), measured(0.25, 0.02, "in"), measured(12.5, unit="mm2")
    ('3', '0.250 ± 0.020 in', '12.5 mm²')
    """
    if value is None:
        return EMPTY
    if unit == "1" and not u:
        return f"{value:g}"
    digits = _DIGITS.get(unit, 2)
    if u is not None and 0 < u < 0.01:
        digits = max(digits, 3)
    pair = f"{value:.{digits}f}" + (f" ± {u:.{digits}f}" if u else "")
    return f"{pair} {_UNITS.get(unit, unit)}".rstrip()


def sized(
    indication: dict[str, Any], what: str, unit: str = "mm", *, named: bool = True
) -> str:
    """A row's ``length``, ``path`` or ``width`` in mm or in; "≥" where that is the least.

    Examples
    --------
    >>> crack = {"length_mm": 5.781, "length_u_mm": 0.1, "runs_out": True}
    >>> sized(crack, "length"), sized(crack, "length", "in", named=False)
    ('≥ 5.78 ± 0.10 mm', '≥ 0.228 ± 0.004')
    """
    by = MM_PER_IN if unit == "in" else 1.0
    names = (f"{what}_mm", f"{what}_u_mm")
    value, u = (None if indication[one] is None else indication[one] / by for one in names)
    words = measured(value, u, unit).removesuffix("" if named else f" {unit}")
    return f"≥ {words}" if any(least_of(indication).values()) and words != EMPTY else words


def table_note(record: Record) -> str:
    """What the columns of the table of indications stand for."""
    told = {name for one in record.indications for name, so in least_of(one).items() if so}
    return _TABLE_NOTE + "".join(note for why, note in _LEAST_NOTES.items() if why in told)


def plain_words(record: Record) -> str:
    """What ± means, for a reader who has never met it, at the record's own first length.

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> rows = [{"length_mm": None}, {"length_mm": 9.2, "length_u_mm": 0.17}]
    >>> plain_words(SimpleNamespace(indications=rows))[:56]
    '9.20 ± 0.17 mm means: the true length lies between 9.03 '
    """
    sized = (one for one in record.indications if one["length_mm"] and one["length_u_mm"])
    first = next(sized, {"length_mm": 8.0, "length_u_mm": 0.1})
    length, u = first["length_mm"], first["length_u_mm"]
    low, high = (measured(one, unit="") for one in (max(0.0, length - u), length + u))
    return (
        f"{measured(length, u)} means: the true length lies between {low} and {high} mm, in "
        "about 95 of 100 such measurements."
    )


def limit_words(limit: float | None, unit: str) -> str:
    """A limit as the code gives it, never rounded.

    Examples
    --------
    >>> limit_words(4.8, "mm"), limit_words(0.1875, "in"), limit_words(3.0, "1")
    ('4.8 mm', '0.1875 in', '3')
    """
    return EMPTY if limit is None else f"{limit:g} {_UNITS.get(unit, unit)}".rstrip()


def shape_words(indication: dict[str, Any]) -> str:
    """Shape class and, where the inspector named one, the kind."""
    shape = indication["shape"] or EMPTY
    if indication["shape_sure"] is False:
        shape += " (not sure)"
    return f"{shape}, {indication['kind']}" if indication["kind"] else str(shape)


def standing(record: Record, indication: dict[str, Any]) -> str:
    """How one indication stands, in one word.

    "non-relevant" or "false" where the inspector set it aside with a reason; else the
    strictest verdict of the findings that name it, "non-relevant" where the code's threshold
    leaves it out; "" where there is no evaluation or no finding names it.
    """
    if indication["relevance"] and indication["reason"].strip():
        return str(indication["relevance"])
    if record.evaluation is None:
        return ""
    name = indication["id"]
    found = {f["verdict"] for f in record.evaluation["findings"] if name in f["indications"]}
    strictest = next((v for v in STRICTEST if v in found), "")
    below = record.evaluation["relevance"].get(name, "").startswith("not relevant")
    return "non-relevant" if below and strictest in {"", "acceptable"} else strictest


def called(record: Record) -> dict[str, str]:
    """`standing` of every indication, by its letter."""
    return {one["id"]: standing(record, one) for one in record.indications}


def decision_rule_words(record: Record) -> str:
    """How the measurement uncertainty was taken in the verdict."""
    if (evaluation := _any_evaluation(record)) is None:
        return EMPTY
    if evaluation["decision_rule"] == "simple":
        return "simple acceptance: the measured value alone is compared with the limit"
    return (
        "guarded acceptance: acceptable only where value + U is within the limit; "
        "U is the expanded uncertainty, k = 2"
    )


def criteria_line(record: Record) -> str:
    """Title and edition of the acceptance criteria."""
    if (evaluation := _any_evaluation(record)) is None:
        return "none chosen"
    edition = evaluation["edition"]
    title = evaluation["title"] or evaluation["profile"]
    return f"{title}, {edition}" if edition and edition not in title else str(title)


def _any_evaluation(record: Record) -> dict[str, Any] | None:
    """That of the first photo that is judged; all are judged by the same criteria."""
    return next((v.evaluation for v in record.views() if v.evaluation is not None), None)


def scale_line(record: Record) -> str:
    """What fixed the scale, how fine it is, and how the camera stood."""
    scale = record.scale
    if scale["reference"] is None:
        return "none set"
    parts = [str(scale["reference"])]
    if scale["mm_per_px"]:
        parts.append(f"{scale['mm_per_px']:.4f} mm per pixel at the reference")
    if scale["tilt_deg"] is not None:
        parts.append(f"tilt {scale['tilt_deg']:.1f}°")
    else:
        parts.append("tilt not known")
    if scale["working_distance_mm"] is not None:
        parts.append(f"distance {scale['working_distance_mm']:.0f} mm")
    parts += [
        f"fitted with a second reference ({one['reference']}), which differs by "
        f"{100 * one['difference']:+.2f} %, En {one['en']:.2f}"
        for one in scale.get("references") or ()
        if one["en"] is not None and one["difference"] is not None
    ]
    return ", ".join(parts)


def deciding(record: Record) -> list[dict[str, Any]]:
    """The findings that made the verdict, those farthest beyond or nearest to a limit first.

    Of several photos each says which photo it is of.
    """
    views = record.views()
    made = [
        f if len(views) == 1 else {**f, "says": f"Photo {number}: {f['says']}"}
        for number, view in enumerate(views, 1)
        for f in (view.evaluation or {"findings": ()})["findings"]
        if f["verdict"] == record.verdict
    ]
    return sorted(made, key=lambda f: -_share_of_limit(f))


def _share_of_limit(finding: dict[str, Any]) -> float:
    value, limit = finding["value"], finding["limit"]
    return (value + (finding["u"] or 0.0)) / limit if value is not None and limit else 0.0


def judged_in(record: Record) -> str:
    """The unit that the criteria's figures are in, "mm" or "in"; without any, "mm"."""
    views = (view.evaluation or {"findings": ()} for view in record.views())
    units = {found["unit"] for view in views for found in view["findings"]}
    return "in" if units & {"in", "in2"} else "mm"


def conformity_words(chance: float) -> str:
    """A probability of conformity, never written as quite sure.

    Examples
    --------
    >>> conformity_words(0.9999), conformity_words(0.0), conformity_words(0.875)
    ('more than 99.9 %', 'less than 0.1 %', '87.5 %')
    """
    if chance > 0.999:
        return "more than 99.9 %"
    return "less than 0.1 %" if chance < 0.001 else f"{100 * chance:.1f} %"


def disposition_words(record: Record) -> str:
    """What the inspector decided, with the reason."""
    decision, reason = record.disposition["decision"], record.disposition["reason"].strip()
    if not decision:
        return "not decided yet"
    if departs(record.verdict, decision, reason):
        away = "there is no verdict" if record.verdict is None else "departs from the verdict"
        return f"{decision} ({away}; no reason given)"
    return f"{decision} ({reason})" if reason else decision
