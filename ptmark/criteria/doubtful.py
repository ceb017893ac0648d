"""Neighbours that may count as one or apart.

Within the uncertainty a cluster of the worst reading may be any parting of it into what the
least reading takes as one at least: merging only ever grows with lengths and falls with gaps.
Neither reading need be the one that rejects most: as one they are fewer, and a ring of pores is
shorter end to end than its pores are together; apart, each may be too short to be relevant.

A rule that looks at one indication at a time is asked of every item that any parting has
(`apart`). The whole is the longest of them, the nearest to any line, and relevant if one is;
but a line beside a round pore may be one rounded indication with it, which a larger limit
passes, and linear apart. Of more than `_MOST_PARTS` parts the whole is asked, in either shape.

A rule that counts or adds up is asked of a bound. There the cluster stands as often as it
may have parts, each time in its whole extent, whole length and either shape, and all of them
together add as much as any parting can. Whatever item a true state has, it has at least one
part of its own in the bound, which lies where the item lies, is as long, and is looked at by
every rule that looks at the item; what the bound does not hit no true state hits. How much a
parting can add: with m items of two parts or more, none of them longer than the whole, and the
rest alone, m wholes and the longest that remain.
"""

from dataclasses import replace
from itertools import chain, combinations, pairwise
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.criteria.geometry import Indices
from ptmark.criteria.view import Item, View

__all__ = ["apart", "at_most", "in_either_shape", "together"]

_MOST_PARTS = 4  # whose every parting is looked at


def apart(own: Indices, least: Indices) -> list[tuple[int, ...]]:
    """What the indications of one item may be besides: each cluster of some of its parts.

    Parameters
    ----------
    own, least : ndarray of shape (M,)
        The item of each indication in the worst and in the least reading.

    Examples
    --------
    >>> apart(np.array([0, 0, 0, 1]), np.array([0, 0, 1, 2]))
    [(0, 1), (2,)]
    """
    parts, counts = _parts(own, least)
    if (counts == 1).all():
        return []
    by_part = np.split(np.argsort(least, kind="stable"), np.cumsum(np.bincount(least))[:-1])
    found = []
    for k in np.flatnonzero((counts > 1) & (counts <= _MOST_PARTS)).tolist():
        of_it = [by_part[part].tolist() for part in parts[parts[:, 0] == k, 1]]
        for size in range(1, len(of_it)):
            for some in combinations(of_it, size):
                found.append(tuple(sorted(chain.from_iterable(some))))
    return found


def in_either_shape(view: View, least: Indices) -> View:
    """A worse reading whose items of more parts than are looked at may have either shape."""
    _, counts = _parts(view.owner, least)
    many = np.flatnonzero(counts > _MOST_PARTS).tolist()
    if not many:
        return view
    items = list(view.items)
    for k in many:
        items[k] = items[k]._replace(linear=True, rounded=True, parts=int(counts[k]))
    return replace(view, items=tuple(items))


def together(first: View, more: View) -> View:
    """The items of one view, then those of another; the indications go by the first."""

    def both(own: npt.NDArray[Any], others: npt.NDArray[Any]) -> npt.NDArray[Any]:
        return np.concatenate([own, others])

    return replace(
        first,
        items=(*first.items, *more.items),
        shapes=both(first.shapes, more.shapes),
        hull_shapes=both(first.hull_shapes, more.hull_shapes),
        growth=both(first.growth, more.growth),
        nearer=both(first.nearer, more.nearer),
    )


def _parts(own: Indices, least: Indices) -> tuple[Indices, Indices]:
    """Each item with each of its parts, (P, 2), and how many parts each item has."""
    parts = np.unique(np.stack([own, least], axis=1), axis=0)
    return parts, np.bincount(parts[:, 0])


def at_most(own: View, least: View, share: float) -> View:
    """A worse reading, with its doubtful items as many and as much as they may be.

    Parameters
    ----------
    own, least : View
        Readings that add a share of every U to each length, and take it off.
    share : float
        That share.
    """
    parts, counts = _parts(own.owner, least.owner)
    if (counts == 1).all():
        return own
    ends = np.cumsum(counts)
    items: list[Item] = []
    for item, (begin, end) in zip(own.items, pairwise([0, *ends.tolist()]), strict=True):
        of_it = [least.items[k] for k in parts[begin:end, 1].tolist()]
        lengths = sorted(part.length + 2 * share * part.u for part in of_it)
        items += _as_many(item, lengths) if len(of_it) > 1 else [item]
    which = np.repeat(np.arange(len(counts)), counts)
    return View(
        items=tuple(items),
        shapes=own.shapes[which],
        hull_shapes=own.hull_shapes[which],
        growth=own.growth[which],
        nearer=own.nearer[which],
        stretched=own.stretched,
        unit=own.unit,
        owner=(ends - counts)[own.owner],
    )


def _as_many(item: Item, lengths: list[float]) -> list[Item]:
    """An item once for each of its parts, which are so long at most, and ascend."""
    count = len(lengths)
    most = _most_added(item.length, lengths) / count
    return [item._replace(linear=True, rounded=True, parts=count, adds=most)] * count


def _most_added(whole: float, lengths: list[float]) -> float:
    """The most that the items of any parting add; ``lengths`` of the parts ascend.

    Examples
    --------
    >>> _most_added(9.0, [4.0, 4.0]), _most_added(7.0, [4.0, 4.0]), _most_added(9.0, [2, 4, 4])
    (9.0, 8.0, 13.0)
    """
    count = len(lengths)
    alone = np.concatenate([[0.0], np.cumsum(lengths[::-1])])
    wholes = np.arange(count // 2 + 1)
    return float((wholes * whole + alone[count - 2 * wholes]).max())
