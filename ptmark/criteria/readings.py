"""The scene as one reading takes it: the plain one, or the worst that the uncertainty allows.

Plain: every length, width and gap as measured. Worst: every outline grown by half its
expanded uncertainty U all round, so that its length gains U and a gap loses half of each
neighbour's U; frames and stretches of weld reach farther by the share that distances may be
shorter, clusters are as much larger; what may be relevant is relevant; what may be linear is
linear and what may be rounded is rounded, both at once. Every rule rejects more readily as
members are added, sizes grow and gaps shrink, so a rule that does not reject the worst reading
rejects none between.
Least: the opposite of worst; what a rule hits even there it hits for certain, as an exemption
must before it may make a verdict milder.

Map and relief make a length wrong by a share of it, so U of merged neighbours, end to end, is
that share of the whole with what else the least sure member has.

Shape is judged by the length, or by the path along the centre line where that is longer by
more than the roughness of tracing it. Merged neighbours: length end to end; width that of the
widest member; linear where a member is, or where the end-to-end length makes it so. Amounts
are in the unit of the profile.
"""

from collections.abc import Sequence
from dataclasses import replace
from functools import cached_property
from itertools import starmap
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.apart import Apart
from ptmark.criteria.doubtful import apart, at_most, in_either_shape, together
from ptmark.criteria.geometry import Array, Indices, calipers, rings
from ptmark.criteria.kinds import number_of
from ptmark.criteria.limits import per_mm
from ptmark.criteria.merge import merged
from ptmark.criteria.parted import Parted
from ptmark.criteria.profile import Profile
from ptmark.criteria.rules import JoinRule
from ptmark.criteria.scene import NEAR_DEG, Judged
from ptmark.criteria.shaping import Shaping
from ptmark.criteria.view import LEAST, MILDEST, PLAIN, WORST, Flags, Item, View

__all__ = ["Readings"]


class Readings:
    """The readings of the same indications, each made when first asked for.

    ``known`` holds their outlines in mm where these are made already.
    """

    def __init__(
        self, profile: Profile, judged: Sequence[Judged], known: Apart | None = None
    ) -> None:
        scale = per_mm(profile.unit)
        self._profile = profile
        self._ids: list[tuple[str, ...]] = [(one.id,) for one in judged]
        self._kinds: list[tuple[str, ...]] = [
            (kind,) if kind else () for kind in (number_of(one.kind) for one in judged)
        ]
        outlines = [one.outline_mm for one in judged]
        if known is None or profile.unit != "mm" or not known.is_of(outlines):
            known = Apart.of([outline * scale for outline in outlines])
        self._apart = known
        self._u = np.array([one.length_u for one in judged], dtype=float) * scale
        self._edge_u = np.array([one.edge_u for one in judged], dtype=float) * scale
        places = [one.length_u if one.place_u is None else one.place_u for one in judged]
        self._place_u = np.array(places, dtype=float) * scale
        none = (0.0,) * len(NEAR_DEG)
        near = np.array([one.near_u or none for one in judged], dtype=float)
        # a direction between two is taken as the worse of them
        self._near = np.maximum(near, np.roll(near, -1, axis=-1)).reshape(-1, len(none))
        self._far = max((one.far_u for one in judged), default=0.0)
        self._shaping = Shaping(judged, scale, profile.shape.linear)
        self._rules = profile.all_rules
        self._left = np.zeros(len(judged), dtype=bool)
        self._parted: dict[float, Parted] = {}
        self._made: dict[float, View] = {}
        self._bounds: dict[float, View] = {}

    def view(self, reading: float) -> View:
        """The reading `PLAIN`, `WORST`, `LEAST`, or one that takes a share of every U.

        Where no U is given all are one.
        """
        if self._exact:
            reading = PLAIN
        if reading not in self._made:
            self._made[reading] = self._view(reading, self._items(reading))
        return self._made[reading]

    def most(self, share: float = WORST) -> View:
        """What rules that count or add up look at: `view`, doubtful items as many as may be."""
        if share not in self._bounds:
            own = self.view(share)
            merges = self._profile.merge is not None and not self._exact
            self._bounds[share] = at_most(own, self.view(-share), share) if merges else own
        return self._bounds[share]

    def leave(self, rejected: Flags) -> None:
        """Look at no parting of what holds an indication that is rejected as measured.

        The verdict is known there, and the densest crowds are such.
        """
        self._left = rejected

    def single(self, reading: int) -> View:
        """What rules that look at one indication at a time look at.

        `view`; in `WORST`, after its items, those that doubtful neighbours may be besides
        (`ptmark.criteria.doubtful`); in `MILDEST` the same items at their least.
        """
        if reading == MILDEST:
            return self._mildest
        return self._single if reading == WORST else self.view(reading)

    @cached_property
    def whose(self) -> Indices:
        """Which item of the worst reading each of `single` belongs to."""
        own = self._items(WORST)
        firsts = np.array([cluster[0] for cluster in self._besides], dtype=np.int64)
        return np.concatenate([np.arange(len(own.sizes)), own.owner[firsts]])

    def may_be_one(self, place: int) -> bool:
        """Whether an item of `single` in `WORST` can be: its members merge by themselves."""
        besides = place - len(self._items(WORST).sizes)
        if besides < 0:
            return True
        return len(self._among(WORST, np.array(self._besides[besides]))) == 1

    @cached_property
    def _single(self) -> View:
        own = in_either_shape(self.view(WORST), self._parts)
        if not self._besides:
            return own
        return together(own, self._view(WORST, Parted(self._besides)))

    @cached_property
    def _mildest(self) -> View:
        view = self._view(LEAST, Parted([*self._items(WORST).clusters, *self._besides]))
        pairs = zip(view.items, self._single.items, strict=True)
        return replace(view, items=tuple(one._replace(parts=own.parts) for one, own in pairs))

    @cached_property
    def _besides(self) -> list[tuple[int, ...]]:
        return apart(self._items(WORST).owner, self._parts)

    @cached_property
    def _parts(self) -> Indices:
        """The part that each indication surely belongs to; all of an item that is not asked.

        Not asked is what lies apart, what is left, and, but for exemptions, what may have
        either shape as a whole.
        """
        own = self._items(WORST)
        asked = np.flatnonzero((own.sizes > 1) & ~own.some(self._left)).tolist()
        if not any(isinstance(rule, JoinRule) and rule.exempt for rule in self._rules):
            items = self.view(WORST).items
            asked = [k for k in asked if not (items[k].linear and items[k].rounded)]
        parts = own.owner.copy()
        if asked and not self._exact:
            members, _ = own.members(np.array(asked))
            for k, cluster in enumerate(self._among(LEAST, members)):
                parts[members[list(cluster)]] = len(own.sizes) + k
        return parts

    @cached_property
    def _exact(self) -> bool:
        known = (self._u, self._place_u, self._edge_u, self._near, self._shaping.width_u)
        return not self._far and not any(u.any() for u in known)

    def _items(self, reading: float) -> Parted:
        if reading not in self._parted:
            self._parted[reading] = Parted(self._clusters(reading))
        return self._parted[reading]

    def _view(self, reading: float, parted: Parted) -> View:
        shapes, hulls = self._united(parted)
        ends = self._ends(parted, hulls)
        end_to_end = np.array([length for length, _ in ends])
        shaped = self._shaping.taken(reading).of(parted, end_to_end)
        most, edge_u = self._of_lengths(parted, ends), parted.most(self._edge_u)
        place_u = parted.most(self._place_u)
        lengths = np.maximum(shaped.length + reading * most, 0.0)
        relevant, relevance = np.ones(len(lengths), dtype=bool), self._profile.relevance
        if relevance is not None:
            relevant = relevance.relevant.hit_all(lengths)
        columns: dict[str, list[Any]] = {
            "ids": parted.gathered(self._ids),
            "ends": [pair for _, pair in ends],
            "length": lengths.tolist(),
            "u": most.tolist(),
            "edge_u": edge_u.tolist(),
            "place_u": place_u.tolist(),
            "width": shaped.width.tolist(),
            "width_u": parted.most(self._shaping.width_u).tolist(),
            "ratio": shaped.ratio.tolist(),
            "linear": shaped.linear.tolist(),
            "rounded": shaped.rounded.tolist(),
            "relevant": relevant.tolist(),
            "adds": lengths.tolist(),
            "close": shaped.close.tolist(),
            "parts": [1] * len(lengths),
            "kinds": parted.gathered(self._kinds),
        }
        in_order = (columns[name] for name in Item._fields)
        return View(
            items=tuple(starmap(Item, zip(*in_order, strict=True))),
            shapes=shapes,
            hull_shapes=hulls,
            growth=reading * place_u / 2,
            nearer=reading * (place_u / 2 + edge_u),
            stretched=max(1.0 + reading * self._far, 0.1),
            unit=self._profile.unit,
            owner=parted.owner,
        )

    def _clusters(self, reading: float) -> list[tuple[int, ...]]:
        if self._profile.merge is None:
            return [(index,) for index in range(len(self._ids))]
        # longer and nearer to each other than as measured: what merges there merges here
        begun = self._items(PLAIN).owner if reading > PLAIN else None
        lengths, grow = self._lengths(reading)
        return merged(
            self._apart, lengths, grow, self._profile.merge, self._profile.unit, begun
        )

    def _among(self, reading: float, some: Indices) -> list[tuple[int, ...]]:
        """Clusters of some indications by themselves, as positions in ``some``."""
        if self._profile.merge is None:
            return [(place,) for place in range(len(some))]
        lengths, grow = self._lengths(reading)
        rule, unit = self._profile.merge, self._profile.unit
        return merged(self._apart.shapes[some], lengths[some], grow[some], rule, unit)

    def _lengths(self, reading: float) -> tuple[Array, Array]:
        """How long each is in a reading, and by how much grown all round."""
        lengths = np.maximum(self._shaping.length + reading * self._u, 0.0)
        return lengths, reading * self._place_u / 2

    def _of_lengths(self, parted: Parted, ends: list[tuple[float, Array]]) -> Array:
        """U of the length of each item: its own, or of several that from end to end."""
        u = parted.most(self._u)
        several = parted.several
        if not len(several) or not self._near.any():
            return np.where(parted.sizes > 1, np.maximum(u, parted.most(self._place_u)), u)
        own, way = self._apart.ends, _direction([pair for _, pair in self._apart.ends])
        of_map = self._near[np.arange(len(own)), way] * [length for length, _ in own]
        rest = parted.most(np.sqrt(np.maximum(self._place_u**2 - of_map**2, 0.0)))
        most = np.stack([parted.most(share) for share in self._near.T], axis=1)
        whole = [ends[k] for k in several.tolist()]
        of_map = most[several, _direction([pair for _, pair in whole])]
        of_map *= [length for length, _ in whole]
        least = np.maximum(u, parted.most(self._place_u))[several]
        u[several] = np.maximum(least, np.hypot(rest[several], of_map))
        return u

    def _united(self, parted: Parted) -> tuple[npt.NDArray[Any], npt.NDArray[Any]]:
        """One shape for each cluster, and its hull; those of single ones are known."""
        import shapely

        shapes, hulls = self._apart.shapes[parted.first], self._apart.hull_shapes[parted.first]
        members, which = parted.members(parted.several)
        several = shapely.multipolygons(self._apart.shapes[members], indices=which)
        shapes[parted.several], hulls[parted.several] = several, shapely.convex_hull(several)
        return shapes, hulls

    def _ends(self, parted: Parted, hulls: npt.NDArray[Any]) -> list[tuple[float, Array]]:
        """The caliper of each cluster and its ends; those of single ones are known."""
        made = [self._apart.ends[first] for first in parted.first.tolist()]
        found = calipers(rings(hulls[parted.several]))
        for k, pair in zip(parted.several.tolist(), found, strict=True):
            made[k] = pair
        return made


def _direction(pairs: Sequence[Array]) -> Indices:
    """Of `NEAR_DEG`, which each way of shape (2, 2) lies at or beyond."""
    across = np.diff(np.array(pairs, dtype=float).reshape(-1, 2, 2), axis=1)[:, 0]
    turn = np.degrees(np.arctan2(across[:, 1], across[:, 0])) % 180.0
    return np.asarray(turn // NEAR_DEG[1], dtype=np.int64) % len(NEAR_DEG)
