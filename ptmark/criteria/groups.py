"""Rules that look at several indications at once: rows, windows, frames, stretches, shares."""

from collections.abc import Callable
from dataclasses import replace
from math import cos, inf, radians, sin

import numpy as np

from ptmark.criteria.aligned import longest_aligned
from ptmark.criteria.case import Case, Figures
from ptmark.criteria.geometry import Array, Indices, caliper_ends, hull_of
from ptmark.criteria.limits import Limit, all_hold, per_mm, tolerance_in
from ptmark.criteria.outcome import NOTHING, Outcome, how_closely, too_few, what_decides
from ptmark.criteria.result import Finding
from ptmark.criteria.rows import longest_row
from ptmark.criteria.rules import (
    Bands,
    FrameRule,
    GroupRule,
    RowRule,
    ShareRule,
    StretchRule,
    WindowRule,
)
from ptmark.criteria.stretch import heaviest_stretch
from ptmark.criteria.turned import Bounds
from ptmark.criteria.view import View
from ptmark.criteria.wording import amount, bound, counted, listed, of_kinds
from ptmark.criteria.worst import worst_rectangle

__all__ = [
    "by_frame",
    "by_row",
    "by_share",
    "by_stretch",
    "by_window",
    "judged_group",
    "linked",
]

_FEW = 24  # up to so many indications the heaviest set of all is found, not only enough


def by_row(case: Case, rule: RowRule) -> list[Finding]:
    """Judge the longest row of neighbours that one straight line crosses."""
    if rule.reject is not None:
        return _by_length(case, rule, rule.reject)

    def look(view: View) -> Outcome:
        chosen = view.members(rule.of, rule.named)
        if not chosen:
            return NOTHING
        near, hulls = linked(case, view, rule.gap, chosen), [view.hulls[k] for k in chosen]
        row = longest_row(hulls, near, rule.number.least_number, tolerance_in(case.unit))
        members = tuple(chosen[k] for k in row.members)
        return Outcome(len(members), members, _in_line(rule), row.line)

    return [judged_group(case, rule, rule.number, look)]


def _by_length(case: Case, rule: RowRule, reject: Limit | Bands) -> list[Finding]:
    """Judge the longest row of so many by its length from end to end."""
    limit = case.limit(reject)
    if isinstance(limit, str):
        return case.left_open(rule, limit)

    def look(view: View) -> Outcome:
        chosen = view.members(rule.of, rule.named)
        if not chosen:
            return NOTHING
        near, hulls = linked(case, view, rule.gap, chosen), [view.hulls[k] for k in chosen]
        least, band = rule.number.least_number, tolerance_in(case.unit)
        found = longest_aligned(hulls, near, least, limit.value / view.stretched, band)
        if found.row is None:
            return replace(NOTHING, proven=found.proven)
        members = tuple(chosen[k] for k in found.row.members)
        return Outcome(
            found.length * view.stretched,
            members,
            _in_line(rule),
            found.row.line,
            found.proven,
            sum_told="end to end",
        )

    return [judged_group(case, rule, limit, look)]


def _in_line(rule: RowRule) -> str:
    return f"in a line with gaps of {bound(rule.gap, of_length=False)}"


def linked(case: Case, view: View, gap: Limit, chosen: list[int]) -> Indices:
    """Pairs of positions in ``chosen`` whose gap the rule allows."""
    band = tolerance_in(case.unit)
    pairs, gaps = view.links(chosen, gap.value + band)
    return np.asarray(pairs[all_hold(gap.operator, gaps - gap.value, band)])


def by_window(case: Case, rule: WindowRule) -> list[Finding]:
    """Judge the number in the worst rectangle of limited area and longest side."""

    def look(view: View) -> Outcome:
        longest = rule.longest * view.stretched
        bounds = Bounds(longest, longest, rule.area * view.stretched**2)
        found = _rectangle(case, view, rule, rule.number, bounds, "number")
        unit = case.unit
        within = f", within {rule.area:g} {unit}2 and {rule.longest:g} {unit}"
        return replace(found, place=found.place + within if found.members else "")

    return [judged_group(case, rule, rule.number, look)]


def by_frame(case: Case, rule: FrameRule) -> list[Finding]:
    """Judge the number or the summed length on the frame at its worst place and turn."""
    limit = case.limit(rule.reject)
    if isinstance(limit, str):
        return case.left_open(rule, limit)

    def look(view: View) -> Outcome:
        sides = (side * view.stretched for side in rule.sides)
        return _rectangle(case, view, rule, limit, Bounds(*sides), rule.what)

    return [judged_group(case, rule, limit, look)]


def _rectangle(
    case: Case, view: View, rule: GroupRule, limit: Limit, bounds: Bounds, what: str
) -> Outcome:
    chosen = view.members(rule.of, rule.named)
    if not chosen:
        return NOTHING
    band = tolerance_in(case.unit)
    items = [view.items[k] for k in chosen]
    weights = np.array([item.adds if what == "length" else 1.0 for item in items])
    enough = limit.least_number if what == "number" else limit.value + 2 * band
    found = worst_rectangle(
        [view.hulls[k] for k in chosen],
        weights,
        bounds,
        enough=inf if len(chosen) <= _FEW else enough,
        band=band,
    )
    sides = sorted(np.hypot(*np.diff(found.corners[:3], axis=0).T), reverse=True)
    size = " by ".join(amount(float(side), case.unit) for side in sides)
    members = tuple(chosen[k] for k in found.members)
    return Outcome(
        found.total, members, f"in a rectangle of {size}", found.corners, found.proven
    )


def by_stretch(case: Case, rule: StretchRule) -> list[Finding]:
    """Judge the number or the summed diameters in the worst stretch of weld."""
    limit = case.limit(rule.reject)
    if isinstance(limit, str):
        return case.left_open(rule, limit)

    def look(view: View) -> Outcome:
        chosen = [
            k
            for k in view.members(rule.of, rule.named)
            if rule.counted is None or rule.counted.hit(view.items[k].length)
        ]
        if not chosen:
            return NOTHING
        run = _run_of_weld(case)
        along = [view.hulls[k] @ run for k in chosen]
        low, high = np.array([a.min() for a in along]), np.array([a.max() for a in along])
        lengths = np.array([view.items[k].adds for k in chosen])
        weights = lengths if rule.what == "length" else np.ones(len(chosen))
        reach = rule.stretch * view.stretched + tolerance_in(case.unit)
        total, reached = heaviest_stretch(low, high, weights, reach)
        members = tuple(chosen[k] for k in reached)
        points = np.concatenate([view.hulls[k] for k in members])
        line = points[[int((points @ run).argmin()), int((points @ run).argmax())]]
        return Outcome(total, members, f"in {rule.stretch:g} {case.unit} of weld", line)

    return [judged_group(case, rule, limit, look)]


def _run_of_weld(case: Case) -> Array:
    """Unit vector along the weld: as given, else from one to the other of the farthest two."""
    if case.scene.weld_direction_deg is not None:
        angle = radians(case.scene.weld_direction_deg)
        return np.array([cos(angle), sin(angle)])
    hull = hull_of(np.concatenate(case.plain.hulls))
    length, ends = caliper_ends(hull)
    return (ends[1] - ends[0]) / length if length > 0 else np.array([1.0, 0.0])


def by_share(case: Case, rule: ShareRule) -> list[Finding]:
    """Judge the summed lengths as a share of the weld's length."""
    if case.scene.weld_length_mm is None:
        says = "The limit is a share of the weld's length: give weld_length_mm."
        return case.left_open(rule, says)
    limit = case.limit(rule.reject)
    if isinstance(limit, str):
        return case.left_open(rule, limit)
    whole = case.scene.weld_length_mm * per_mm(case.unit)

    def look(view: View) -> Outcome:
        chosen = tuple(view.members(rule.of, rule.named))
        total = sum(view.items[k].adds for k in chosen)
        share, no_sketch = 100 * total / whole, np.empty((0, 2))
        return Outcome(share, chosen, "", no_sketch, after=" of the weld's length")

    return [judged_group(case, rule, limit, look)]


def judged_group(
    case: Case, rule: GroupRule, limit: Limit, look: Callable[[View], Outcome]
) -> Finding:
    """Judge the plain reading, then what the worst one adds."""
    shape, word = rule.of, "rejectable" if rule.verdict == "rejectable" else "left open"
    plain = look(case.plain)
    rejected = limit.hit(plain.value)
    worst = look(case.most) if case.guarded and not rejected else plain
    doubtful = not rejected and (limit.hit(worst.value) or not worst.proven)
    seen, view = (worst, case.most) if doubtful else (plain, case.plain)
    ids = list(dict.fromkeys(one for k in seen.members for one in view.items[k].ids))
    head = counted(len(seen.members), shape) + (f" {seen.place}" if seen.place else "")
    if limit.unit != "1" and seen.members:
        head += f", {seen.sum_told} {amount(seen.value, limit.unit, apart_from=limit.value)}"
        head += seen.after
    if len(ids) > 0:
        head += f" ({listed(ids)})"
    rule_says = f"{bound(limit, of_length=False)} would be {word}"
    if rejected:
        says = f"{head}: {bound(limit, of_length=False)} is {word}."
        verdict = rule.verdict
    elif doubtful:
        says = f"At worst {head}; {rule_says}. {what_decides(case, shape, plain, worst)}"
        says += how_closely(case, limit, worst, look)
        verdict = "undecided"
    else:
        says = f"At most {head}; {rule_says}."
        if not ids:
            nothing = f"{head.replace('no ', 'no relevant ', 1)}{of_kinds(rule.named)}"
            says = f"There is {too_few(case, rule) or nothing}; {rule_says}."
        verdict = "acceptable"
    figures = Figures(plain.value, max(worst.value - plain.value, 0.0), limit.value, limit.unit)
    return case.finding(
        rule,
        verdict,
        says[:1].upper() + says[1:],
        ids=ids,
        figures=figures,
        sketch=seen.sketch if len(seen.sketch) else None,
    )
