"""Indications of the unseen set: dye that bled out of strokes and blots, and its truth.

Surface frame: mm, x right, y down, origin in the middle of the view. A field is the dye's
density, 0 to 1 times the indication's strength; the white under it is mixed with the dye by it,
in linear light. The true outline is where the field passes half of the indication's own
plateau, which is its strength. A tip that fades linearly to nothing so ends in the middle of
its fading.
"""

from dataclasses import dataclass, field

import cv2
import numpy as np
import shapely

GRID_MM = 0.02  # raster on which outlines are found; a contour on it is right to half of that
SIMPLE_MM = 0.006  # how far an outline's points may leave it


@dataclass(frozen=True, kw_only=True)
class Stroke:
    """Centre line (N, 2) in mm, with half width in mm and share of the strength (N,)."""

    line: np.ndarray
    half: np.ndarray
    share: np.ndarray


@dataclass(kw_only=True)
class Dye:
    """One indication: its strokes, and the waves that fray its edge."""

    kind: str
    strength: float
    soft_mm: float
    strokes: list
    halo: float = 0.0  # pale bleed-out round it, a share of the strength below one half
    halo_mm: float = 1.0
    waves: np.ndarray = field(default_factory=lambda: np.zeros((0, 4)))

    def bounds(self):
        """Least and greatest x and y, mm, with all that the field reaches."""
        reach = self.soft_mm + 0.2 + (3.5 * self.halo_mm if self.halo else 0.0)
        low = [(s.line - s.half[:, None]).min(axis=0) for s in self.strokes]
        high = [(s.line + s.half[:, None]).max(axis=0) for s in self.strokes]
        return np.min(low, axis=0) - reach, np.max(high, axis=0) + reach

    def field(self, x, y):
        """Density at points, arrays (H, W) in mm that run nearly like a grid."""
        out = np.zeros(x.shape, np.float32)
        fray = sum((a * np.sin(u * x + v * y + p) for a, u, v, p in self.waves), np.zeros(1))
        fray = np.broadcast_to(fray, x.shape)
        to_index = _index_map(x, y)
        for stroke in self.strokes:
            for n in range(max(len(stroke.line) - 1, 1)):
                self._segment(out, (x, y, fray), stroke, n, to_index)
        return out * np.float32(self.strength)

    def _segment(self, out, at, stroke, n, to_index):
        last = min(n + 1, len(stroke.line) - 1)
        a, b = stroke.line[n], stroke.line[last]
        ra, rb = stroke.half[n], stroke.half[last]
        reach = max(ra, rb) + self.soft_mm + 0.2 + (3.5 * self.halo_mm if self.halo else 0.0)
        box = np.array(
            [np.minimum(a, b) - reach, np.maximum(a, b) + reach, (a[0], b[1]), (b[0], a[1])]
        )
        box = np.array([box[0], (box[0][0], box[1][1]), box[1], (box[1][0], box[0][1])])
        cells = box @ to_index[:, :2].T + to_index[:, 2]
        lo = np.maximum(np.floor(cells.min(axis=0)).astype(int) - 2, 0)
        hi = np.ceil(cells.max(axis=0)).astype(int) + 3
        view = (slice(lo[1], max(hi[1], 0)), slice(lo[0], max(hi[0], 0)))
        x, y, fray = (z[view] for z in at)
        if not x.size:
            return
        way = b - a
        square = float(way @ way)
        t = 0.0
        if square > 0:
            t = np.clip(((x - a[0]) * way[0] + (y - a[1]) * way[1]) / square, 0, 1)
        off = np.hypot(x - a[0] - t * way[0], y - a[1] - t * way[1])
        inside = ra + t * (rb - ra) + fray - off
        share = stroke.share[n] + t * (stroke.share[last] - stroke.share[n])
        step = np.clip(0.5 + inside / (2 * self.soft_mm), 0, 1)
        dense = share * step * step * (3 - 2 * step)
        if self.halo:
            dense = np.maximum(dense, share * self.halo * np.exp(-((off / self.halo_mm) ** 2)))
        np.maximum(out[view], dense, out=out[view])


def _index_map(x, y):
    """From mm to column and row, (2, 3), as corners and middle of the arrays say."""
    rows, cols = x.shape
    picks = [(0, 0), (0, cols - 1), (rows - 1, 0), (rows - 1, cols - 1), (rows // 2, cols // 2)]
    mm = np.array([(x[p], y[p], 1.0) for p in picks])
    index = np.array([(c, r) for r, c in picks], float)
    return np.linalg.lstsq(mm, index, rcond=None)[0].T


def true_outline(dye, share=0.5):
    """Largest polygon, mm, inside of which the field passes a share of the strength."""
    low, high = dye.bounds()
    xs, ys = (np.arange(low[k], high[k] + GRID_MM, GRID_MM) for k in (0, 1))
    dense = dye.field(*np.meshgrid(xs, ys))
    finer = cv2.resize(dense, None, fx=4, fy=4, interpolation=cv2.INTER_LINEAR)
    inside = (finer >= dye.strength * share).astype(np.uint8)
    rings, _ = cv2.findContours(inside, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    ring = max(rings, key=cv2.contourArea)[:, 0].astype(float)
    ring = (ring + 0.5) / 4 - 0.5  # to cells of the field, whose centres stand at whole numbers
    polygon = shapely.make_valid(shapely.Polygon(low + ring * GRID_MM))
    polygon = polygon.buffer(GRID_MM / 8)  # the contour runs through the outermost inner cells
    return max(shapely.get_parts(polygon.simplify(SIMPLE_MM)), key=lambda p: p.area)


def sizes(polygon, dye):
    """Length, path, width and area of an outline in mm."""
    hull = np.array(polygon.convex_hull.exterior.coords)
    length = float(np.linalg.norm(hull[:, None] - hull[None], axis=-1).max())
    width = 2 * shapely.length(shapely.maximum_inscribed_circle(polygon, tolerance=0.005))
    path = length
    if len(dye.strokes) == 1 and len(dye.strokes[0].line) > 1:
        path = max(length, shapely.LineString(dye.strokes[0].line).length)
    names = ("length_mm", "path_mm", "width_mm", "area_mm2")
    return dict(zip(names, (length, path, float(width), polygon.area), strict=True))


def frayed(rng, soft_mm, size=1.0):
    """Waves (6, 4) of amplitude, two wave numbers and phase, 0.15 to 0.9 mm long."""
    wave = 2 * np.pi / rng.uniform(0.15, 0.9, 6)
    turn = rng.uniform(0, 2 * np.pi, 6)
    rows = [wave * np.cos(turn), wave * np.sin(turn), rng.uniform(0, 2 * np.pi, 6)]
    return np.stack([rng.uniform(0.05, 0.2, 6) * soft_mm * size, *rows], axis=1)


def walk(rng, length, wander, bend=0.0, step=0.25):
    """A centre line through the origin that wanders, (N, 2), and its share of way, (N,)."""
    count = max(int(np.ceil(length / step)) + 1, 5)
    u = np.linspace(0, 1, count)
    turn = rng.normal(0, 1, count)
    kernel = np.hanning(max(int(count * 0.15) | 1, 3) + 2)
    turn = np.convolve(turn, kernel / np.sqrt((kernel**2).sum()), "same")
    angle = bend * (u - 0.5) + wander * turn
    line = np.stack([np.cos(angle), np.sin(angle)], 1)[1:] * (length / (count - 1))
    line = np.vstack([np.zeros(2), np.cumsum(line, axis=0)])
    return line - line.mean(axis=0), u


def tapered(rng, line, u, width, fade_mm):
    """A stroke whose width tapers towards both ends and whose dye fades over ``fade_mm``."""
    total = shapely.LineString(line).length
    end = np.minimum(u, 1 - u) * total
    long = rng.uniform(0.15, 0.5) * total
    profile = np.clip(end / long, 0, 1) ** rng.uniform(0.4, 0.8)
    uneven = 1 + 0.18 * np.interp(u, np.linspace(0, 1, 9), rng.normal(0, 1, 9))
    half = width / 2 * np.clip(uneven, 0.5, 1.5) * (0.3 + 0.7 * profile)
    share = np.clip(end / fade_mm, 0, 1) if fade_mm > 0 else np.ones(len(u))
    return Stroke(line=line, half=half, share=share)


def dense_ends(line, u, fade_mm):
    """The line with points added over the fading, so that it is linear in mm."""
    total = shapely.LineString(line).length
    ends = np.array([0.25, 0.5, 1.0]) * fade_mm / total
    more = np.unique(np.concatenate([u, ends[ends < 0.5], 1 - ends[ends < 0.5]]))
    return np.stack([np.interp(more, u, line[:, k]) for k in (0, 1)], axis=1), more


def crack(rng, *, length, width, wander=0.12, bend=0.0, fade_mm=0.3):
    """Strokes of one crack about the origin along x."""
    fade_mm = min(fade_mm, 0.2 * length)
    line, u = walk(rng, length + fade_mm, wander, bend)
    line, u = dense_ends(line, u, fade_mm)
    return [tapered(rng, line, u, width, fade_mm)]


def branched(rng, *, length, width, fade_mm=0.3):
    """A crack with one or two branches that leave it at 25 to 60 degrees."""
    strokes = crack(rng, length=length, width=width, fade_mm=fade_mm)
    stem = strokes[0].line
    for _ in range(rng.integers(1, 3)):
        foot = rng.integers(len(stem) // 4, 3 * len(stem) // 4)
        turn = np.radians(rng.uniform(25, 60)) * rng.choice([-1, 1])
        strokes.append(_arm(rng, stem[foot], turn, length * rng.uniform(0.2, 0.4), width * 0.8))
    return strokes


def star(rng, *, size, width):
    """Arms out of one place, three to six."""
    count = rng.integers(3, 7)
    turns = np.linspace(0, 2 * np.pi, count, endpoint=False) + rng.normal(0, 0.2, count)
    return [_arm(rng, np.zeros(2), t, size / 2 * rng.uniform(0.6, 1), width) for t in turns]


def _arm(rng, foot, turn, length, width):
    line, u = walk(rng, length, 0.1)
    line = (line - line[0]) @ turned(turn) + foot
    half = width / 2 * np.clip((1 - u) * 2.5, 0.25, 1)
    return Stroke(line=line, half=half, share=np.clip((1 - u) * length / 0.2, 0, 1))


def blot(rng, *, size):
    """A pore: overlapping discs in a heap about the origin, ``size`` mm across."""
    count = int(rng.integers(1, 5))
    strokes = []
    for n in range(count):
        radius = size / 2 * (1 if n == 0 else rng.uniform(0.5, 0.85))
        turn, far = rng.uniform(0, 2 * np.pi), (0 if n == 0 else size * rng.uniform(0.1, 0.28))
        place = np.array([[np.cos(turn), np.sin(turn)]]) * far
        strokes.append(Stroke(line=place, half=np.array([radius]), share=np.ones(1)))
    return strokes


def turned(angle):
    """Matrix that turns rows (x, y) by an angle, rad."""
    c, s = np.cos(angle), np.sin(angle)
    return np.array([[c, s], [-s, c]])


def moved(strokes, angle, place):
    """Strokes turned about the origin and set down at a place, mm."""
    return [
        Stroke(line=s.line @ turned(angle) + place, half=s.half, share=s.share) for s in strokes
    ]
