"""The vocabulary that composes every profile: one small dataclass a kind of rule.

Amounts are in the unit of the profile. ``of`` says which indications a rule looks at:
"linear", "rounded" or "any"; ``named`` narrows that to what the inspector has named as one of
the listed ISO 6520-1 numbers. What hits a rule gets its ``verdict``: "rejectable", or
"undecided" where the inspector must look. ``sure`` says how well the figures are known:
"verified", "secondary", "memory" or "conflicting". `ptmark.criteria.vocabulary` tells the keys
of each kind in a file.
"""

from dataclasses import dataclass

from ptmark.criteria.limits import Limit

__all__ = [
    "Band",
    "Bands",
    "ClusterRule",
    "EdgeRule",
    "FrameRule",
    "GroupRule",
    "JoinRule",
    "KindRule",
    "Merge",
    "PartRule",
    "Relevance",
    "RelevantRule",
    "RowRule",
    "Rule",
    "ShapeRule",
    "ShapeTest",
    "ShareRule",
    "SingleRule",
    "SizeRule",
    "StretchRule",
    "WindowRule",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """One row of a table: the limit for parts whose thickness or diameter hits ``up_to``."""

    up_to: Limit | None  # None: whatever lies above the band before
    reject: Limit


@dataclass(frozen=True, slots=True, kw_only=True)
class Bands:
    """A table of limits by the part's "thickness" or "diameter", the thinnest band first."""

    by: str
    rows: tuple[Band, ...]

    @property
    def value(self) -> float:
        """The least of its limits."""
        return min(row.reject.value for row in self.rows)

    def at(self, size: float) -> Limit | None:
        """The limit for a part of this size; None above the last band."""
        return next(
            (row.reject for row in self.rows if row.up_to is None or row.up_to.hit(size)), None
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule:
    """What every rule carries."""

    id: str
    clause: str
    sure: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeTest(Rule):
    """Linear where the longer of length and path hits ``linear`` times the width."""

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
class RelevantRule(Rule):
    """A rule on the relevant indications ``of`` a shape, or on those ``named`` so."""

    of: str = "any"
    named: tuple[str, ...] = ()
    verdict: str = "rejectable"


@dataclass(frozen=True, slots=True, kw_only=True)
class SingleRule(RelevantRule):
    """A rule that looks at one relevant indication at a time."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeRule(SingleRule):
    """Reject where the length hits ``reject``, or a share of the thickness if that is less."""

    reject: Limit | Bands
    thickness_share: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ShapeRule(SingleRule):
    """Every relevant indication of a shape gets ``verdict``, whatever its size."""


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRule(SingleRule):
    """Reject where the distance to a named line of the scene hits ``reject``."""

    reject: Limit | Bands
    line: str = "edge"


@dataclass(frozen=True, slots=True, kw_only=True)
class KindRule(Rule):
    """Every indication named as one of ``kinds`` (ISO 6520-1) gets ``verdict``, any size."""

    kinds: tuple[str, ...]
    verdict: str = "rejectable"


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRule(Rule):
    """Holds where the part's "thickness" or "diameter" hits ``size``; only inside a join."""

    by: str
    size: Limit
    verdict: str = "rejectable"


@dataclass(frozen=True, slots=True, kw_only=True)
class GroupRule(RelevantRule):
    """A rule that looks at several relevant indications at once."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RowRule(GroupRule):
    """Reject ``number`` in a line whose gaps, edge to edge, hit ``gap``.

    With ``reject``, only where such a row is also that long from end to end.
    """

    number: Limit
    gap: Limit
    reject: Limit | Bands | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClusterRule(GroupRule):
    """Reject by ``what`` ("length" end to end or "area" of the hull) of a cluster.

    A cluster is ``number`` or more that hang together by gaps, edge to edge, that hit ``gap``.
    """

    number: Limit
    gap: Limit
    what: str
    reject: Limit | Bands


@dataclass(frozen=True, slots=True, kw_only=True)
class WindowRule(GroupRule):
    """Reject ``number`` in any rectangle up to ``area`` with no side above ``longest``."""

    number: Limit
    area: float
    longest: float


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameRule(GroupRule):
    """Reject by ``what`` ("number" or "length") on a frame of fixed sides, worst place."""

    what: str
    reject: Limit | Bands
    sides: tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class StretchRule(GroupRule):
    """Reject by ``what`` in any ``stretch`` of weld; only sizes that hit ``counted`` count."""

    what: str
    reject: Limit | Bands
    stretch: float
    counted: Limit | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ShareRule(GroupRule):
    """Reject where the summed lengths hit a percentage of the weld's length."""

    reject: Limit | Bands


@dataclass(frozen=True, slots=True, kw_only=True)
class JoinRule(Rule):
    """Other rules taken together; those it takes no longer judge by themselves.

    ``how`` is "all-of", "any-of" or "unless" (any of ``rules``, where none of ``exempt``
    holds). ``each`` asks it of one and the same indication, else of the scene as a whole.
    """

    how: str
    rules: tuple[Rule, ...]
    exempt: tuple[Rule, ...] = ()
    each: bool = True
    verdict: str = "rejectable"
