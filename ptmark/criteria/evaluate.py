"""From a profile and a scene to the verdict, rule by rule."""

from collections.abc import Callable
from typing import Any

import numpy as np

from ptmark.criteria.case import YES, Case, Figures
from ptmark.criteria.clusters import by_cluster
from ptmark.criteria.groups import by_frame, by_row, by_share, by_stretch, by_window
from ptmark.criteria.joining import looks_at_one, with_parts
from ptmark.criteria.joins import by_join, by_part
from ptmark.criteria.leaves import answers
from ptmark.criteria.profile import Profile
from ptmark.criteria.readings import Readings
from ptmark.criteria.result import SEVERITY, Evaluation, Finding
from ptmark.criteria.rules import (
    ClusterRule,
    EdgeRule,
    FrameRule,
    JoinRule,
    KindRule,
    PartRule,
    RelevantRule,
    RowRule,
    Rule,
    ShapeRule,
    ShareRule,
    SingleRule,
    SizeRule,
    StretchRule,
    WindowRule,
)
from ptmark.criteria.scene import Judged, Scene
from ptmark.criteria.singles import by_edge, by_kind, by_shape, by_size, unknown_kinds
from ptmark.criteria.touching import Pair, as_one, touching
from ptmark.criteria.unjudged import not_judged
from ptmark.criteria.view import PLAIN, Flags
from ptmark.criteria.wording import amount, bound, listed, measured, named
from ptmark.errors import CriteriaError

__all__ = ["evaluate"]

_DECISION_RULES = ("guarded", "simple")
_JUDGES: dict[type[Rule], Callable[[Case, Any], list[Finding]]] = {
    SizeRule: by_size,
    ShapeRule: by_shape,
    EdgeRule: by_edge,
    KindRule: by_kind,
    JoinRule: lambda case, rule: by_join(case, rule, _judge),
    PartRule: by_part,
    RowRule: by_row,
    ClusterRule: by_cluster,
    WindowRule: by_window,
    FrameRule: by_frame,
    StretchRule: by_stretch,
    ShareRule: by_share,
}
_MAY_BE_RELEVANT = " Within U it may be, so the rules were also tried with it."
_NO_DIRECTION = (
    "The run of the weld was taken from the two indications farthest apart; "
    "give weld_direction_deg where that is not so."
)


def evaluate(profile: Profile, scene: Scene, decision_rule: str = "guarded") -> Evaluation:
    """Judge a scene by a profile.

    Parameters
    ----------
    profile : Profile
    scene : Scene
        Lengths in mm; converted to the profile's unit by 25.4 mm to the inch, exactly.
    decision_rule : str
        "simple" is the code's plain reading. "guarded" gives the same where that rejects, and
        leaves undecided what only the worst case within the expanded uncertainty rejects
        (`ptmark.criteria.readings`, `ptmark.criteria.doubtful`). Where every U is 0 they agree.

    Returns
    -------
    Evaluation
        Its verdict is the worst of its findings; what no rule can judge leaves it undecided
        at the best (`ptmark.criteria.unjudged`), and so do touching pieces of what as one
        would be judged more strictly (`ptmark.criteria.touching`).

    Raises
    ------
    CriteriaError
        If the decision rule is unknown.

    Notes
    -----
    Guarded acceptance is never laxer than simple, whatever the profile. Each rule asks the
    plain reading first, both in the same way: what that hits gets the same finding in both,
    and so does what lacks a figure of the scene. Only what it does not hit is looked at again,
    which can but turn acceptable into undecided. A rule that takes others together is the
    least or the greatest of theirs, neither of which falls where they rise. An exemption alone
    makes a verdict milder, and there guarded asks for more: that it holds at the least as well.
    """
    if decision_rule not in _DECISION_RULES:
        raise CriteriaError(
            f"'{decision_rule}' is no decision rule", where="decision", mend="guarded or simple"
        )
    judged = tuple(one for one in scene.indications if not _set_aside(one))

    def begun(by: Profile) -> Case:
        return _begun(by, scene, judged, guarded=decision_rule == "guarded")

    case = begun(profile)
    findings, pairs = _findings(case), touching(case)
    findings += as_one(case, pairs, _worst(findings), lambda by: _findings(begun(by)))
    return Evaluation(
        profile=profile.name,
        title=profile.title,
        edition=profile.edition,
        decision_rule=decision_rule,
        verdict=_worst(findings),
        findings=tuple(findings),
        relevance=_relevance_told(case),
        shape=_shape_told(case),
        cautions=(*profile.cautions, *scene.notes, *_assumed(case, pairs)),
        checksum=profile.checksum,
    )


def _begun(
    profile: Profile, scene: Scene, judged: tuple[Judged, ...], *, guarded: bool
) -> Case:
    views = Readings(profile, judged, scene.known)
    case = Case(profile=profile, scene=scene, judged=judged, views=views, guarded=guarded)
    if guarded and judged:
        views.leave(_rejected(case))
    return case


def _worst(findings: list[Finding]) -> str:
    return max((one.verdict for one in findings), key=SEVERITY.index)


def _rejected(case: Case) -> Flags:
    """Which indications a rule that looks at one at a time rejects as measured, shape (M,)."""
    hit = np.zeros(len(case.plain.items), dtype=bool)
    for rule in case.profile.rules:
        if not isinstance(rule, SingleRule | KindRule | JoinRule) or not looks_at_one(rule):
            continue
        if rule.verdict == "rejectable":
            hit |= answers(case, rule, PLAIN) == YES
    return np.asarray(hit[case.plain.owner])


def _set_aside(one: Judged) -> bool:
    """Whether the inspector took it out of the judgement, which needs a reason."""
    return one.relevance in {"non-relevant", "false"} and bool(one.reason.strip())


def _findings(case: Case) -> list[Finding]:
    unjudged = not_judged(case)
    if not case.judged:
        left = len(case.scene.indications)
        if unjudged and not left:  # that nothing is there cannot be told then
            return unjudged
        says = (
            f"All {left} indications are set aside by the inspector, with reasons."
            if left
            else "There are no indications."
        )
        nothing = Rule(id="none", clause="", sure="verified")
        return [case.finding(nothing, "acceptable", says), *unjudged]
    made: list[Finding] = _not_relevant(case) + unjudged
    by_name = [rule for rule in with_parts(case.profile.rules) if _goes_by_name(rule)]
    if by_name:
        made += unknown_kinds(case, by_name[0])
    for rule in case.profile.rules:
        made += _judge(case, rule)
    return made


def _judge(case: Case, rule: Rule) -> list[Finding]:
    return _JUDGES[type(rule)](case, rule)


def _goes_by_name(rule: Rule) -> bool:
    named = isinstance(rule, RelevantRule) and bool(rule.named)
    return named or isinstance(rule, KindRule)


def _not_relevant(case: Case) -> list[Finding]:
    """One finding for each indication that the code's threshold leaves out."""
    rule = case.profile.relevance
    if rule is None:
        return []
    limit, wanted = rule.relevant, bound(rule.relevant)
    return [
        case.finding(
            rule,
            "acceptable",
            f"Indication {named(item.ids)} is "
            f"{measured(item.length, item.u, case.unit, against=limit.value)} long, not "
            f"{wanted}: not relevant."
            + (_MAY_BE_RELEVANT if case.guarded and limit.hit(item.length + item.u) else ""),
            ids=item.ids,
            figures=Figures(item.length, item.u, limit.value, case.unit),
            sketch=item.ends,
        )
        for item in case.plain.items
        if not item.relevant
    ]


def _relevance_told(case: Case) -> dict[str, str]:
    told = {}
    for one in case.scene.indications:
        if _set_aside(one):
            told[one.id] = f"{one.relevance}, set by the inspector: {one.reason.strip()}"
    rule = case.profile.relevance
    wanted = bound(rule.relevant) if rule is not None else ""
    for item in case.plain.items:
        taken = "relevant" if item.relevant else "not relevant"
        if rule is None:
            why = "the criteria have no threshold"
        else:
            size = measured(item.length, item.u, case.unit, against=rule.relevant.value)
            why = f"{size}, relevant if {wanted}"
        told |= dict.fromkeys(item.ids, f"{taken}: {why}")
    for one in case.judged:
        if one.relevance in {"non-relevant", "false"}:
            told[one.id] += f"; set as {one.relevance} without a reason, so it is judged"
    return {one.id: told[one.id] for one in case.scene.indications}


def _shape_told(case: Case) -> dict[str, str]:
    limit = case.profile.shape.linear
    told: dict[str, str] = {}
    worst = {ids: item for item in case.worst.items for ids in item.ids}
    for item in case.plain.items:
        taken = "linear" if item.linear else "rounded"
        text = f"{taken}: {item.ratio_told}, linear if {limit.operator} {limit.value:g}"
        at_worst = worst[item.ids[0]]
        if case.guarded and item.u > 0 and at_worst.linear and at_worst.rounded:
            text += "; within the uncertainty it may be either, and both are judged"
        if len(item.ids) > 1:
            length = amount(item.length, case.unit)
            text += f"; {', '.join(item.ids)} taken as one, {length} end to end"
        told |= dict.fromkeys(item.ids, text)
    return told


def _assumed(case: Case, pairs: list[Pair]) -> list[str]:
    """What was assumed for want of data, for the report to repeat."""
    stretches = any(isinstance(rule, StretchRule) for rule in case.profile.all_rules)
    undirected = case.scene.weld_direction_deg is None and len(case.judged) > 1
    no_direction = [_NO_DIRECTION] if stretches and undirected else []
    return [*_apart(pairs), *_unlimited(case), *no_direction]


def _apart(pairs: list[Pair]) -> list[str]:
    """Which pieces of what may be one indication are each judged by its own length."""
    if not pairs:
        return []
    return [
        "Judged apart by these criteria, though for all that is known the outlines touch or "
        f"overlap: {listed([named(pair) for pair in pairs])}. Trace as one what is one "
        "indication."
    ]


def _unlimited(case: Case) -> list[str]:
    """Which indications pass at any length, since no rule asks how long one of the shape is."""
    told = []
    for shape in ("linear", "rounded"):
        if any(_asks_length(rule, shape) for rule in with_parts(case.profile.rules)):
            continue
        items = (case.plain.items[k] for k in case.plain.members(shape))
        if names := [name for item in items for name in item.ids]:
            told.append(
                f"No rule of these criteria limits the length of a single {shape} indication, "
                f"such as {listed(names)}."
            )
    return told


def _asks_length(rule: Rule, shape: str) -> bool:
    match rule:
        case SizeRule() | ShapeRule() | ShareRule():
            pass
        case FrameRule(what="length") | StretchRule(what="length"):
            pass
        case _:
            return False
    return not rule.named and rule.of in {shape, "any"}
