"""One evaluation under way: both readings of the scene, and how a finding is made of them."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from math import erf, sqrt
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Array
from ptmark.criteria.limits import Limit, per_mm
from ptmark.criteria.profile import Profile
from ptmark.criteria.readings import Readings
from ptmark.criteria.result import Finding
from ptmark.criteria.rules import Bands, RelevantRule, Rule
from ptmark.criteria.scene import Judged, Scene
from ptmark.criteria.view import LEAST, PLAIN, WORST, Item, View
from ptmark.criteria.wording import amount, bound, measured, named

__all__ = ["NO", "OPEN", "YES", "Answers", "Case", "Figures", "conformity"]

YES, OPEN, NO = 1, 0, -1
_MOST_APART = 50  # indications whose gaps are all looked at to tell one
Answers = npt.NDArray[np.int64]


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
    views: Readings
    guarded: bool
    known: dict[tuple[str, int], Array] = field(default_factory=dict)  # edge distances
    answered: dict[tuple[str, int], Answers] = field(default_factory=dict)  # by rule, reading

    @property
    def unit(self) -> str:
        return self.profile.unit

    @property
    def plain(self) -> View:
        return self.views.view(PLAIN)

    @property
    def worst(self) -> View:
        return self.views.view(WORST)

    @property
    def single(self) -> View:
        """The worst that rules which look at one indication at a time may look at."""
        return self.views.single(WORST)

    @property
    def most(self) -> View:
        """The worst that rules which count or add up may look at."""
        return self.views.most()

    def limit(self, reject: Limit | Bands) -> Limit | str:
        """The limit for this part, or what is missing to know it, in a sentence."""
        if isinstance(reject, Limit):
            return reject
        size = self.size_of_part(reject.by)
        if size is None:
            return f"The limit depends on the {reject.by} of the part: give {reject.by}_mm."
        found = reject.at(size)
        if found is None:
            told = amount(size, self.unit)
            return f"The table of limits has no band for a {reject.by} of {told}."
        return found

    def lines(self, name: str) -> list[Array]:
        """The lines of that name that the scene gives, in the unit of the profile."""
        return [line * per_mm(self.unit) for line in self.scene.edges.get(name, ())]

    def size_of_part(self, by: str) -> float | None:
        """Thickness or diameter of the part in the unit of the profile, where given."""
        scene = self.scene
        size = scene.thickness_mm if by == "thickness" else scene.diameter_mm
        return None if size is None else size * per_mm(self.unit)

    def left_open(self, rule: RelevantRule, says: str) -> list[Finding]:
        """Undecided for want of what ``says`` names, unless nothing is there to be judged."""
        views = [self.plain, self.single] if self.guarded else [self.plain]
        if any(view.members(rule.of, rule.named) for view in views):
            return [self.finding(rule, "undecided", says)]
        nothing = "There is no relevant indication that this rule looks at."
        return [self.finding(rule, "acceptable", nothing)]

    def finding(
        self,
        rule: Rule,
        verdict: str,
        says: str,
        *,
        ids: Sequence[str] = (),
        figures: Figures | None = None,
        sketch: Array | None = None,
        probability: float | None = None,
    ) -> Finding:
        """Make a finding; its figures default to zeros where nothing was measured.

        ``probability`` is that of conformity.
        """
        value, u, limit, unit = figures or Figures(0.0, 0.0, 0.0, self.unit)
        if rule.note and verdict != "acceptable":
            says += f" Note: {rule.note.rstrip('.')}."
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
            says=says,
            sketch=points,
            conformity=probability,
        )

    def doubts(self, item: Item, shape: str) -> list[str]:
        """Why an item of the worst reading is no such item in the plain one; empty if it is."""
        plain, who = self.plain.by_ids.get(item.ids), named(item.ids)
        whole = self.plain.items[self.plain.places[item.ids[0]]]
        rest = tuple(name for name in whole.ids if name not in item.ids)
        if plain is None and len(rest) + len(item.ids) == len(whole.ids):
            gap, wanted = self._gap_between(item.ids, rest)
            others = named(rest)
            if gap:
                return [
                    f"{who} may count apart from {others} (a gap of {gap}; {wanted} makes them "
                    "one)"
                ]
            return [f"{who} may count apart from {others}"]
        if item.parts > 1 or plain is None:
            gap, wanted = self._gap_told(item)
            if item.parts > 1 and gap:
                return [
                    f"{who} may count as one or apart (a gap of {gap}; {wanted} makes them one)"
                ]
            if item.parts > 1:
                return [f"{who} may count as one or apart"]
            if gap:
                return [f"{who} may count as one (a gap of {gap}; {wanted} makes them one)"]
            return [f"{who} may count as one"]
        told = []
        relevance = self.profile.relevance
        if relevance is not None and not plain.relevant:
            value = measured(plain.length, plain.u, self.unit, against=relevance.relevant.value)
            wanted = bound(relevance.relevant)
            told.append(f"{who} may be relevant ({value}, relevant if {wanted})")
        if not plain.is_of(shape):
            at = plain.length * self.profile.shape.linear.value / plain.ratio
            length = measured(plain.length, plain.u, self.unit, against=at)
            width = measured(plain.width, plain.width_u, self.unit, against=0.0)
            told.append(
                f"{who} may be {shape} ({plain.ratio_told}: {length} by {width}; so "
                f"wide, it is linear from {amount(at, self.unit)} of length on)"
            )
        return told

    def _gap_told(self, item: Item) -> tuple[str, str]:
        """The gap on which it hangs whether parts merge, and the one wanted; "" if many."""
        import shapely

        merge, as_one = self.profile.merge, item.ids in self.plain.by_ids
        reading = LEAST if as_one else PLAIN
        view = self.views.view(reading)
        own = sorted({view.places[name] for name in item.ids})
        if merge is None or not 1 < len(own) <= _MOST_APART:
            return "", ""
        items = [view.items[k] for k in own]
        first, second = np.triu_indices(len(own), 1)
        shapes = view.shapes[own]
        gaps = shapely.distance(shapes[first], shapes[second])
        may = merge.factor * np.array([one.length - reading * one.u for one in items])
        may = np.minimum(may[first], may[second])
        over = np.abs(gaps - may) if as_one else gaps - may
        k = int(over.argmin())  # the pair nearest to merging, or merged only by others
        u = (items[first[k]].place_u + items[second[k]].place_u) / 2
        return self._gap_words(float(gaps[k]), u, float(may[k]))

    def _gap_between(self, one: tuple[str, ...], other: tuple[str, ...]) -> tuple[str, str]:
        """The gap between two items that as measured are one, and the one wanted."""
        import shapely

        view = self.single
        place = {item.ids: k for k, item in enumerate(view.items)}
        if one not in place or other not in place or self.profile.merge is None:
            return "", ""
        pair = [place[one], place[other]]
        gap = float(shapely.distance(*view.shapes[pair]))
        items = [view.items[k] for k in pair]
        may = self.profile.merge.factor * min(item.length - item.u for item in items)
        return self._gap_words(gap, sum(item.place_u for item in items) / 2, may)

    def _gap_words(self, gap: float, u: float, may: float) -> tuple[str, str]:
        operator = "" if self.profile.merge is None else self.profile.merge.operator
        limit = amount(may, self.unit)
        wanted = f"{limit} or less" if operator == "<=" else f"less than {limit}"
        return measured(gap, u, self.unit, against=may), wanted
