"""How well distances between indications are known: as a share of them, from map and relief."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from ptmark.criteria.scene import NEAR_DEG
from ptmark.inspection.state import Marked
from ptmark.measure import Measurement
from ptmark.measure.relief import relief_u_mm
from ptmark.scale import SurfaceMap

__all__ = ["Shares", "shares_of"]

Shares = tuple[tuple[float, ...], float]
Array = npt.NDArray[np.float64]


def shares_of(
    measured: Sequence[tuple[Marked, Measurement | None]],
    surface: SurfaceMap,
    relief_mm: float | None,
) -> dict[str, Shares]:
    """By letter the shares ``near_u`` and ``far_u`` of `Judged`, k = 2.

    Near: of its own length, laid in each direction. Far: of the ways from its middle to those
    of the outermost indications; 0 where it is alone.
    """
    found = [(one.id, made) for one, made in measured if made is not None]
    if not found:
        return {}
    ends = np.array([made.ends_mm for _, made in found], dtype=float)
    middles, half = ends.mean(axis=1), np.hypot(*(ends[:, 1] - ends[:, 0]).T)[:, None] / 2
    turns = np.radians(NEAR_DEG)
    outer = middles[np.unique([*middles.argmin(axis=0), *middles.argmax(axis=0)])]
    ways = [half * [np.cos(turn), np.sin(turn)] for turn in turns]
    near = [np.stack([middles - way, middles + way], axis=1) for way in ways]
    far = [np.stack([middles, np.broadcast_to(one, middles.shape)], axis=1) for one in outer]
    shares = _shares(np.concatenate([*near, *far]), surface, relief_mm)
    shares = shares.reshape(len(near) + len(far), len(found))
    most = shares[len(near) :].max(axis=0).tolist()
    own = zip(shares[: len(near)].T.tolist(), most, strict=True)
    names = (name for name, _ in found)
    return {name: (tuple(each), one) for name, (each, one) in zip(names, own, strict=True)}


def _shares(ways: Array, surface: SurfaceMap, relief_mm: float | None) -> Array:
    """Expanded uncertainty over distance of K ways, (K, 2, 2) mm; 0 where they have none."""
    ways_px = surface.to_px(ways.reshape(-1, 2)).reshape(ways.shape)
    squares = relief_u_mm(ways_px, surface, relief_mm) ** 2
    for u in surface.distances_u(ways_px).values():
        squares = squares + u**2
    apart = np.hypot(*(ways[:, 1] - ways[:, 0]).T)
    known = np.isfinite(squares) & (apart > 0)
    return np.where(known, 2 * np.sqrt(squares) / np.where(known, apart, 1.0), 0.0)
