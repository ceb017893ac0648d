"""One evaluation under way: both readings of the scene, and how a finding is made of them."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import erf, sqrt
from typing import NamedTuple

from ptmark.criteria.geometry import Array
from ptmark.criteria.limits import per_mm
from ptmark.criteria.profile import Profile
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import Rule
from ptmark.criteria.scene import Judged, Scene
from ptmark.criteria.view import Item, View
from ptmark.criteria.wording import amount, bound, measured

__all__ = ["Case", "Figures", "conformity"]


def conformity(value: float, u: float, limit: float) -> float | None:
    """Probability that the true value is at most ``limit``; None where ``u`` is 0.

    Normal distribution about the measured value with standard uncertainty ``u / 2``
    (JCGM 106:2012, clause 7, one-sided upper limit).
    """
    if u <= 0:
        return None
    return 0.5 * (1.0 + erf((limit - value) / (u / 2) / sqrt(2)))


class Figures(NamedTuple):
    """Value, expanded uncertainty, limit, and the unit of all three."""

    value: float
    u: float
    limit: float
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Case:
    """What every rule looks at; amounts in the unit of the profile."""

    profile: Profile
    scene: Scene
    judged: tuple[Judged, ...]
    plain: View
    worst: View
    guarded: bool

    @property
    def unit(self) -> str:
        return self.profile.unit

    def finding(
        self,
        rule: Rule,
        verdict: str,
        says: str,
        *,
        ids: Sequence[str] = (),
        figures: Figures | None = None,
        sketch: Array | None = None,
    ) -> Finding:
        """Make a finding; its figures default to zeros where nothing was measured."""
        value, u, limit, unit = figures or Figures(0.0, 0.0, 0.0, self.unit)
        points = (
            () if sketch is None else tuple(map(tuple, (sketch / per_mm(self.unit)).tolist()))
        )
        return Finding(
            rule=rule.id,
            clause=rule.clause,
            indications=tuple(ids),
            value=value,
            u=u,
            limit=limit,
            unit=unit,
            verdict=verdict,
            says=f"{says} Note: {rule.note}."
            if rule.note and verdict != "acceptable"
            else says,
            sketch=points,
        )

    def doubts(self, item: Item, shape: str) -> list[str]:
        """Why an item of the worst reading is no such item in the plain one; empty if it is."""
        plain = self.plain.by_ids.get(item.ids)
        if plain is None:
            return [f"{' and '.join(item.ids)} may count as one"]
        told = []
        relevance = self.profile.relevance
        if relevance is not None and not plain.relevant:
            value = measured(plain.length, plain.u, self.unit, against=relevance.relevant.value)
            wanted = bound(relevance.relevant)
            told.append(f"{plain.ids[0]} may be relevant ({value}, relevant if {wanted})")
        if not plain.is_of(shape):
            told.append(
                f"{plain.ids[0]} may be {shape} ({plain.ratio:.2f} times as long as wide, its "
                f"length known to {amount(plain.u, self.unit, apart_from=0.0)})"
            )
        return told
