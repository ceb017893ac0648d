"""Rings of dye, cut open, so that what goes round is measured as the line that it is.

An outline has one rim. Taken by its outer one, a crack that closes on itself would be as wide
as what it encloses and pass for something round, and what lies within it would be lost.
"""

from typing import NamedTuple

import cv2
import numpy as np
import numpy.typing as npt

__all__ = ["opened"]

Bytes = npt.NDArray[np.uint8]
Float = npt.NDArray[np.float32]
Ints = npt.NDArray[np.int32]

# A hole is developer where it is so wide and some of it so white. Own choice: blur fills what
# is narrower, and a pale middle of thick dye keeps more of the plateau.
LEAST_PX, MOST_DYE = 4, 0.2
_CUT_PX = 3  # wide enough that half contrast lies on both sides of it
_MOST_HOLES = 40  # the largest; a stain of more is no ring


class _Hole(NamedTuple):
    """Developer that dye goes round: where that begins, shape (N, 2), and its width, px."""

    chain: Ints
    width: float


def opened(relative: Float, near: Bytes) -> Float:
    """Amounts of dye over its plateau, with each ring cut where it is thinnest.

    Parameters
    ----------
    relative : ndarray of shape (H, W)
    near : ndarray of shape (H, W)
        1 where a blob may lie.

    Returns
    -------
    ndarray of shape (H, W)
        ``relative`` itself where no dye goes round a hole; else a copy, 0 along the cuts.
    """
    mask = (relative > 0.5).view(np.uint8) & near
    rims, tree = cv2.findContours(mask, cv2.RETR_CCOMP, cv2.CHAIN_APPROX_NONE)
    if not rims:
        return relative
    chains = [np.asarray(one, np.int32).reshape(-1, 2) for one in rims]
    parents = np.asarray(tree).reshape(-1, 4)[:, 3]
    found: dict[int, list[_Hole]] = {}
    for i in np.flatnonzero(parents >= 0).tolist():
        hole = _hole(chains[i], relative)
        if hole is not None:
            found.setdefault(int(parents[i]), []).append(hole)
    if not found:
        return relative
    made = relative.copy()
    for parent, holes in found.items():
        holes.sort(key=lambda one: -one.width)
        _cut(made, chains[parent], holes[:_MOST_HOLES])
    return made


def _hole(chain: Ints, relative: Float) -> _Hole | None:
    """The hole in a chain that runs on the dye round it; None where it is no developer."""
    x, y, width, height = cv2.boundingRect(chain)
    if min(width, height) < LEAST_PX + 2:
        return None
    inside = np.zeros((height + 2, width + 2), np.uint8)
    cv2.drawContours(inside, [chain], 0, 1, cv2.FILLED, offset=(1 - x, 1 - y))
    own = relative[y : y + height, x : x + width][inside[1:-1, 1:-1] > 0]
    if own.min() >= MOST_DYE:
        return None
    deep = float(cv2.distanceTransform(inside, cv2.DIST_L2, 5).max())
    return _Hole(chain, 2 * (deep - 1))


def _cut(relative: Float, rim: Ints, holes: list[_Hole]) -> None:
    """Cut from each hole to what is open already, the nearest one first, in place.

    A hole narrower than the dye that parts it from there is the pale middle of something round.
    """
    x, y, width, height = cv2.boundingRect(rim)
    left, top = max(x - 1, 0), max(y - 1, 0)
    room = relative[top : y + height + 1, left : x + width + 1]
    dye = np.zeros(room.shape, np.uint8)
    cv2.drawContours(dye, [rim], 0, 1, cv2.FILLED, offset=(-left, -top))
    rest = [one._replace(chain=one.chain - (left, top)) for one in holes]
    while rest and not dye.all():
        away, nearest = cv2.distanceTransformWithLabels(
            dye, cv2.DIST_L2, 5, labelType=cv2.DIST_LABEL_PIXEL
        )
        far = [away[one.chain[:, 1], one.chain[:, 0]] for one in rest]
        least = [float(one.min()) for one in far]
        fits = [i for i, one in enumerate(rest) if least[i] <= one.width]
        if not fits:
            return
        number = min(fits, key=lambda i: least[i])
        at = rest[number].chain[int(far[number].argmin())]
        rows, columns = np.nonzero((dye == 0) & (nearest == nearest[at[1], at[0]]))
        ends = (int(at[0]), int(at[1])), (int(columns[0]), int(rows[0]))
        cv2.line(room, *ends, 0.0, _CUT_PX)
        cv2.line(dye, *ends, 0, _CUT_PX)
        cv2.drawContours(dye, [rest.pop(number).chain], 0, 0, cv2.FILLED)
