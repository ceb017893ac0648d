"""Shapes of the demo indications and their true sizes, in mm on the plate.

Plate frame: x right along the weld, y down across it, mm. A shape is a distance function:
negative inside, zero on the true outline, where the dye stands at half its plateau.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import cv2
import numpy as np
import numpy.typing as npt

Array = npt.NDArray[np.float64]
Distance = Callable[[Array], Array]
GRID_PER_MM = 50


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Shape:
    """One indication: what it is, where its dye ends and how large it truly is.

    ``outline`` of shape (N, 2), mm; ``strength`` 0 to 1 is the plateau's depth in green,
    ``soft`` the width of the edge's logistic, mm. Length is the largest distance between two
    outline points, width the diameter of the largest inscribed circle.
    """

    kind: str
    outline: Array
    distance: Distance
    length: float
    path: float
    width: float
    strength: float
    soft: float


def crack(
    way: Sequence[tuple[float, float]],
    radius: float,
    rng: np.random.Generator,
    *,
    strength: float = 0.9,
    soft: float = 0.09,
) -> Shape:
    """A line along ``way`` that wanders a little and is thinner towards its round ends."""
    centre = _wander(np.array(way, float), rng)
    along = np.linspace(0.0, 1.0, len(centre))
    radii = radius * (0.7 + 0.3 * np.sqrt(np.sin(np.pi * along).clip(0)))

    def distance(points: Array) -> Array:
        return _chain(points, centre, radii)

    line = float(np.linalg.norm(np.diff(centre, axis=0), axis=1).sum())
    path = line + float(radii[0] + radii[-1])
    box = (centre.min(axis=0) - 2 * radius, centre.max(axis=0) + 2 * radius)
    return _made("crack", distance, box, strength=strength, soft=soft, path=path)


def pore(
    at: tuple[float, float],
    length: float,
    rng: np.random.Generator,
    *,
    aspect: float = 0.85,
    strength: float = 0.92,
    soft: float = 0.09,
) -> Shape:
    """A rounded blot of the stated true length."""
    centre, turn = np.array(at, float), rng.uniform(0, np.pi)
    waves = [(k, rng.uniform(0, 0.02), rng.uniform(0, 2 * np.pi)) for k in (2, 3, 5)]

    def scaled(size: float) -> Distance:
        def distance(points: Array) -> Array:
            away = points - centre
            angle = np.arctan2(away[..., 1], away[..., 0]) - turn
            radius = 1 / np.hypot(np.cos(angle), np.sin(angle) / aspect)
            for k, height, phase in waves:
                radius = radius * (1 + height * np.cos(k * angle + phase))
            return np.asarray(np.linalg.norm(away, axis=-1) - size * radius)

        return distance

    box = (centre - 0.7 * length, centre + 0.7 * length)
    first = _made("pore", scaled(length / 2), box, strength=strength, soft=soft)
    exact = scaled(length / 2 * length / first.length)
    return _made("pore", exact, box, strength=strength, soft=soft)


def _made(
    kind: str,
    distance: Distance,
    box: tuple[Array, Array],
    *,
    strength: float,
    soft: float,
    path: float | None = None,
) -> Shape:
    outline, width = _outline(distance, box)
    apart = outline[:, np.newaxis] - outline
    length = float(np.sqrt((apart**2).sum(axis=-1)).max())
    return Shape(
        kind=kind,
        outline=outline,
        distance=distance,
        length=length,
        path=length if path is None else path,
        width=width,
        strength=strength,
        soft=soft,
    )


def _outline(distance: Distance, box: tuple[Array, Array]) -> tuple[Array, float]:
    """Trace the zero level about every 0.08 mm; also the inscribed circle's diameter."""
    low, high = box[0] - 0.5, box[1] + 0.5
    x = np.arange(low[0], high[0], 1 / GRID_PER_MM)
    y = np.arange(low[1], high[1], 1 / GRID_PER_MM)
    grid = np.stack(np.meshgrid(x, y), axis=-1)
    depth = distance(grid)
    found, _ = cv2.findContours(
        (depth < 0).astype(np.uint8), cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE
    )
    rough = max(found, key=cv2.contourArea).reshape(-1, 2)
    dense = _onto(distance, low + rough / GRID_PER_MM)
    inside = grid[depth < 0.85 * depth.min()]
    inside = inside[:: max(1, len(inside) // 1500)]
    nearest = np.linalg.norm(inside[:, np.newaxis] - dense, axis=-1).min(axis=1)
    return dense[::4], 2 * float(nearest.max())


def _onto(distance: Distance, points: Array) -> Array:
    """Move points to the zero level by Newton's steps along the slope."""
    step = 1e-4
    ways = step * np.eye(2)
    for _ in range(4):
        slope = np.stack([distance(points + w) - distance(points - w) for w in ways], axis=-1)
        slope /= 2 * step
        square = (slope**2).sum(axis=-1, keepdims=True).clip(0.05)
        points = points - distance(points)[:, np.newaxis] * slope / square
    return points


def _wander(way: Array, rng: np.random.Generator) -> Array:
    """Resample a way every 0.4 mm and let it jitter across itself, its ends kept."""
    gaps = np.linalg.norm(np.diff(way, axis=0), axis=1)
    at = np.concatenate([[0.0], np.cumsum(gaps)])
    count = max(4, int(at[-1] / 0.4))
    fine = np.linspace(0, at[-1], count)
    line = np.stack([np.interp(fine, at, way[:, k]) for k in (0, 1)], axis=-1)
    line = cv2.GaussianBlur(line, (1, 5), 1.0, borderType=cv2.BORDER_REPLICATE)
    jitter = cv2.GaussianBlur(rng.normal(0, 0.35, (count, 1)), (1, 7), 1.5)
    normal = np.gradient(line, axis=0)[:, ::-1] * (1, -1)
    normal /= np.linalg.norm(normal, axis=1, keepdims=True)
    fade = np.sin(np.pi * np.linspace(0, 1, count))[:, np.newaxis].clip(0)
    return np.asarray(line + normal * jitter * fade, dtype=np.float64)


def _chain(points: Array, centre: Array, radii: Array) -> Array:
    """Distance to a chain of segments, each as thick as the radii at its ends."""
    best = np.full(points.shape[:-1], np.inf)
    for a, b, ra, rb in zip(centre[:-1], centre[1:], radii[:-1], radii[1:], strict=True):
        span = b - a
        t = (((points - a) @ span) / (span @ span)).clip(0, 1)
        away = np.linalg.norm(points - a - t[..., np.newaxis] * span, axis=-1)
        np.minimum(best, away - (ra + t * (rb - ra)), out=best)
    return best
