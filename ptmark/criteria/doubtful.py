"""Neighbours that may count as one or apart, for rules that count or add up.

Within the uncertainty a cluster of the worst reading may be any parting of it into what the
least reading takes as one at least: merging only ever grows with lengths and falls with gaps.
Neither reading need be the one that rejects most: as one they are fewer, and a ring of pores is
shorter end to end than its pores are together; apart, each may be too short to be relevant.

So a rule that counts or adds up is asked of a bound. There the cluster stands as often as it
may have parts, each time in its whole extent, whole length and either shape, and all of them
together add as much as any parting can. Whatever item a true state has, it has at least one
part of its own in the bound, which lies where the item lies, is as long, and is looked at by
every rule that looks at the item; what the bound does not hit no true state hits. How much a
parting can add: with m items of two parts or more, none of them longer than the whole, and the
rest alone, m wholes and the longest that remain.
"""

from dataclasses import replace
from itertools import pairwise

import numpy as np

from ptmark.criteria.view import Item, View

__all__ = ["at_most"]


def at_most(own: View, least: View, share: float) -> View:
    """A worse reading, with its doubtful items as many and as much as they may be.

    Parameters
    ----------
    own, least : View
        Readings that add a share of every U to each length, and take it off.
    share : float
        That share.
    """
    parts = np.unique(np.stack([own.owner, least.owner], axis=1), axis=0)
    counts = np.bincount(parts[:, 0], minlength=len(own.items))
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
        unit=own.unit,
        owner=(ends - counts)[own.owner],
    )


def _as_many(item: Item, lengths: list[float]) -> list[Item]:
    """An item once for each of its parts, which are so long at most, and ascend."""
    count = len(lengths)
    most = _most_added(item.length, lengths) / count
    return [replace(item, linear=True, rounded=True, parts=count, adds=most)] * count


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
