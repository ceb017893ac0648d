"""Clusters: indications that hang together by small gaps, judged by what they take up.

Which belong together is no choice: they are the connected parts of all pairs whose gap the
rule allows. More members, larger outlines and smaller gaps only join parts and widen their
hulls, so neither the length end to end nor the area of the hull falls, and the worst reading
is a bound.
"""

from dataclasses import replace

import numpy as np

from ptmark.criteria.case import Case
from ptmark.criteria.crowd import united
from ptmark.criteria.geometry import Indices, caliper_ends, hull_of
from ptmark.criteria.groups import judged_group, linked
from ptmark.criteria.outcome import NOTHING, Outcome
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import ClusterRule
from ptmark.criteria.view import View
from ptmark.criteria.wording import bound

__all__ = ["by_cluster"]


def by_cluster(case: Case, rule: ClusterRule) -> list[Finding]:
    """Judge the cluster of so many that takes up most."""
    limit = case.limit(rule.reject)
    if isinstance(limit, str):
        return case.left_open(rule, limit)

    def look(view: View) -> Outcome:
        chosen = view.members(rule.of, rule.named)
        best = NOTHING
        for part in _parts(chosen, linked(case, view, rule.gap, chosen) if chosen else None):
            if not rule.number.hit(len(part)):
                continue
            found = _measured(view, part, rule.what)
            best = found if found.value > best.value else best
        gaps = bound(rule.gap, of_length=False)
        return (
            replace(best, place=f"that hang together by gaps of {gaps}")
            if best.members
            else best
        )

    return [judged_group(case, rule, limit, look)]


def _parts(chosen: list[int], links: Indices | None) -> list[list[int]]:
    """The connected parts of ``chosen``; ``links`` are pairs of positions in it."""
    if links is None:
        return []
    label = united(np.arange(len(chosen)), links)
    order = np.argsort(label, kind="stable")
    cuts = np.flatnonzero(np.diff(label[order])) + 1
    return [[chosen[k] for k in part] for part in np.split(order, cuts)]


def _measured(view: View, part: list[int], what: str) -> Outcome:
    hull = hull_of(np.concatenate([view.hulls[k] for k in part]))
    if what == "length":
        length, ends = caliper_ends(hull)
        length *= view.stretched
        return Outcome(length, tuple(part), "", ends, sum_told="end to end")
    x, y = (hull - hull[0]).T
    area = abs(float(x @ np.roll(y, -1) - y @ np.roll(x, -1))) / 2 * view.stretched**2
    return Outcome(area, tuple(part), "", hull, sum_told="in a hull of")
