"""The vocabulary that composes every profile: one small dataclass a kind of rule.

Amounts are in the unit of the profile. ``of`` says which indications a rule looks at:
"linear", "rounded" or "any". ``sure`` says how well its figures are known: "verified",
"secondary", "memory" or "conflicting".
"""

from dataclasses import dataclass

from ptmark.criteria.limits import Limit

__all__ = [
    "FrameRule",
    "KindRule",
    "Merge",
    "Relevance",
    "RowRule",
    "Rule",
    "ShapeRule",
    "ShapeTest",
    "ShareRule",
    "SizeRule",
    "StretchRule",
    "WindowRule",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What every rule carries."""

    id: str
    clause: str
    sure: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeTest(Rule):
    """Linear where the longer of length and path hits ``ratio`` times the width."""

    linear: Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Relevance(Rule):
    """Only indications whose length hits ``relevant`` are judged by the rules of size."""

    relevant: Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Merge(Rule):
    """Neighbours count as one where the gap hits ``factor`` times the smaller one's length."""

    operator: str
    factor: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRule(Rule):
    """Reject where the length hits ``reject``, or a share of the thickness if that is less."""

    of: str
    reject: Limit
    thickness_share: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeRule(Rule):
    """Every relevant indication of a shape gets ``verdict``, whatever its size."""

    of: str
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class KindRule(Rule):
    """Every indication named as one of ``kinds`` (ISO 6520-1) gets ``verdict``, any size."""

    kinds: tuple[str, ...]
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RowRule(Rule):
    """Give ``number`` in a line whose gaps, edge to edge, hit ``gap`` the verdict."""

    of: str
    number: Limit
    gap: Limit
    verdict: str = "rejectable"


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowRule(Rule):
    """Reject ``number`` in any rectangle up to ``area`` with no side above ``longest``."""

    of: str
    number: Limit
    area: float
    longest: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameRule(Rule):
    """Reject by ``what`` ("number" or "length") on a frame of fixed sides, worst place."""

    of: str
    what: str
    reject: Limit
    sides: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchRule(Rule):
    """Reject by ``what`` in any ``stretch`` of weld; only sizes that hit ``counted`` count."""

    of: str
    what: str
    reject: Limit
    stretch: float
    counted: Limit | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareRule(Rule):
    """Reject where the summed lengths hit a percentage of the weld's length."""

    of: str
    reject: Limit
