"""Renderer of the stress set: one condition of the shop at a time, with known indications.

Shares no code with ptmark. Light is linear until the camera codes it; dye dims each colour by
exp(-k d), as ink does. Lengths in mm, places in mm from the photo's top-left corner.
"""

from dataclasses import dataclass, field

import cv2
import numpy as np

SIZE = (4032, 3024)  # as phones take them, so that the coarse look works as on real photos
STEEL = np.array([0.30, 0.295, 0.285], np.float32)
RED_DYES = np.array([[0.10, 1.0, 0.75], [0.14, 1.0, 0.95], [0.22, 1.0, 0.85]], np.float32)


@dataclass(frozen=True, kw_only=True)
class Condition:
    """What is hard about a photo; the defaults are an easy one."""

    name: str
    kinds: tuple[str, ...] = ("crack", "pore", "crack", "pore", "row", "star", "curve")
    strength: tuple[float, float] = (0.8, 1.0)
    gradient: float = 1.3  # brightest light over darkest
    shadow: float = 1.0  # light that is left in a cast shadow
    cast: tuple[float, float, float] = (1.0, 1.0, 1.0)
    thin: float = 0.0  # share of the surface where metal shows
    haze: float = 0.0  # density of dye left over, mean
    toes: bool = False
    glare: int = 0  # spots
    grain: float = 0.005
    motion_px: float = 0.0
    blur_px: float = 1.1
    quality: int = 88
    distractors: tuple[str, ...] = ()
    mm_per_px: float = 0.07
    exposure: float = 0.85
    count: int = 30
    file: str = ""  # by way of which file, see `stress_files`


@dataclass(frozen=True, kw_only=True, eq=False)
class Truth:
    """One indication: outline in px of shape (N, 2), length in mm, share of full dye."""

    kind: str
    outline_px: np.ndarray
    length_mm: float
    strength: float


@dataclass(eq=False)
class Scene:
    """Planes under work: reflectance (H, W, 3), dye density (H, W), and the truths so far."""

    condition: Condition
    rng: np.random.Generator
    size: tuple[int, int] = SIZE
    truths: list[Truth] = field(default_factory=list)

    def __post_init__(self):
        wide, high = self.size
        self.dye = np.zeros((high, wide), np.float32)
        self.base = np.full((high, wide, 3), 0.78, np.float32)
        self.light = np.ones((high, wide), np.float32)
        self.taken: list[tuple[float, float, float]] = []

    def px(self, mm):
        return np.asarray(mm, float) / self.condition.mm_per_px


def cloud(rng, size, coarse_px, stretch=1.0):
    """Smooth noise, mean 0 and spread 1, made small and enlarged."""
    step = max(1, int(coarse_px / 4))
    shape = (size[1] // step + 9, size[0] // step + 9)
    small = rng.standard_normal(shape, dtype=np.float32)
    sigma = coarse_px / step
    small = cv2.GaussianBlur(small, (0, 0), sigmaX=sigma * stretch, sigmaY=sigma)
    small = (small - small.mean()) / small.std()
    return cv2.resize(small, size, interpolation=cv2.INTER_LINEAR)


def chain_distance(x, y, ways, radii):
    """Distance to a set of capsules, negative inside; x, y of one shape, ways (M, 2, 2)."""
    best = np.full(x.shape, np.inf, np.float32)
    for (a, b), radius in zip(ways.astype(np.float32), radii, strict=True):
        along = b - a
        square = max(float(along @ along), 1e-12)
        right, down = x - a[0], y - a[1]
        part = ((right * along[0] + down * along[1]) / square).clip(0, 1)
        away = cv2.magnitude(right - part * along[0], down - part * along[1])
        np.minimum(best, away - np.float32(radius), out=best)
    return best


def lay(scene, kind, ways, radii, strength, soft_mm=0.07):
    """Lay one indication's dye and note its truth; ways in mm."""
    scale = scene.condition.mm_per_px
    ways, radii = np.asarray(ways, float), np.asarray(radii, float)
    reach = radii.max() + 5 * soft_mm
    low = np.floor((ways.reshape(-1, 2).min(axis=0) - reach) / scale).astype(int)
    top = np.ceil((ways.reshape(-1, 2).max(axis=0) + reach) / scale).astype(int) + 1
    share = np.zeros((top[1] - low[1], top[0] - low[0]))
    columns, rows = np.meshgrid(np.arange(low[0], top[0]), np.arange(low[1], top[1]))
    for dx, dy in ((-0.25, -0.25), (0.25, -0.25), (-0.25, 0.25), (0.25, 0.25)):
        x, y = (columns + 0.5 + dx) * scale, (rows + 0.5 + dy) * scale
        depth = chain_distance(_float(x), _float(y), ways, radii) / soft_mm
        share += 0.25 / (1 + np.exp(np.clip(1.702 * depth, -60, 60)))
    window = scene.dye[low[1] : top[1], low[0] : top[0]]
    np.maximum(window, -np.log(1 - 0.93 * strength * share).astype(np.float32), out=window)
    outline = _outline(low, top, ways, radii, scale)
    apart = outline[:, None] - outline
    length = float(np.sqrt((apart**2).sum(-1)).max()) * scale
    scene.truths.append(
        Truth(kind=kind, outline_px=outline, length_mm=length, strength=strength)
    )


def _float(values):
    return np.ascontiguousarray(values, np.float32)


def _outline(low, top, ways, radii, scale):
    """The zero level at 4 samples a pixel, px with (0, 0) a pixel's centre."""
    fine = 4
    x = np.arange(low[0] * fine, top[0] * fine) / fine
    y = np.arange(low[1] * fine, top[1] * fine) / fine
    columns, rows = np.meshgrid(x * scale, y * scale)
    depth = chain_distance(_float(columns), _float(rows), ways, radii)
    rims, _ = cv2.findContours(
        (depth < 0).astype(np.uint8), cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE
    )
    rim = max(rims, key=len).reshape(-1, 2)[::4]
    return np.column_stack([x[rim[:, 0]], y[rim[:, 1]]]) - 0.5


def line(rng, at, length, angle, bend=0.0):
    """A wandering way of capsules centred on ``at``."""
    steps = max(3, int(length / 0.7))
    t = np.linspace(-0.5, 0.5, steps + 1)
    side = bend * length * (0.25 - t**2) * 4
    side[1:-1] += rng.normal(0, 0.06, steps - 1)
    turn = np.array([[np.cos(angle), np.sin(angle)], [-np.sin(angle), np.cos(angle)]])
    points = np.column_stack([t * length, side]) @ turn + at
    return np.stack([points[:-1], points[1:]], axis=1)


def indicate(scene, kind):
    """Put one indication (or one group) of a kind where there is room."""
    put, reach = KINDS[kind]
    at = _free_place(scene, reach)
    if at is not None:
        strength = float(scene.rng.uniform(*scene.condition.strength))
        put(scene, kind, at, float(scene.rng.uniform(0, np.pi)), strength)


def _crack(scene, kind, at, angle, strength):
    rng = scene.rng
    way = line(rng, at, rng.uniform(1.7, 12), angle, 0.3 if kind == "curve" else 0.03)
    taper = 0.65 + 0.35 * np.sin(np.linspace(0.1, np.pi - 0.1, len(way)))
    radii = rng.uniform(0.28, 0.8) / 2 * taper
    if kind == "hairline":
        radii = np.full(len(way), rng.uniform(2.0, 3.0) * scene.condition.mm_per_px / 2)
    lay(scene, kind, way, radii, strength)


def _one_pore(scene, kind, at, angle, strength):
    _pore(scene, at, scene.rng.uniform(1.6, 4.5), strength, kind)


def _star(scene, kind, at, angle, strength):
    arms = [line(scene.rng, at, 0.01, 0)]
    for arm in range(int(scene.rng.integers(3, 6))):
        way = line(scene.rng, at, scene.rng.uniform(2.5, 6), angle + arm * np.pi / 3, 0)
        arms.append(way[len(way) // 2 :])
    ways = np.concatenate(arms)
    lay(scene, kind, ways, np.full(len(ways), scene.rng.uniform(0.15, 0.3)), strength)


def _broken(scene, kind, at, angle, strength):
    lengths, gaps = scene.rng.uniform(1.7, 3.5, 4), scene.rng.uniform(0.5, 0.9, 4)
    run = np.array([np.cos(angle), np.sin(angle)])
    start = -(lengths.sum() + gaps.sum()) / 2
    for part, gap in zip(lengths, gaps, strict=True):
        way = line(scene.rng, at + run * (start + part / 2), part - 0.4, angle)
        lay(scene, kind, way, np.full(len(way), 0.2), strength)
        start += part + gap


def _row(scene, kind, at, angle, strength):
    run = np.array([np.cos(angle), np.sin(angle)])
    for step in range(-2, 3):
        length = scene.rng.uniform(1.55, 2.0)
        _pore(scene, at + run * step * 2.9, length, strength, kind)


def _cluster(scene, kind, at, angle, strength):
    for i in (-1, 0, 1):
        for j in (-1, 0, 1):
            place = at + 2.9 * np.array([i, j]) + scene.rng.uniform(-0.3, 0.3, 2)
            _pore(scene, place, scene.rng.uniform(1.55, 2.0), strength, kind)


def _touching(scene, kind, at, angle, strength):
    first = line(scene.rng, at, scene.rng.uniform(4, 8), angle)
    side = first[-1, 1] + np.array([0.9, 0.0])
    ways = np.concatenate([first, np.stack([[side, side + 0.01]])])
    radii = np.r_[np.full(len(first), 0.3), scene.rng.uniform(0.8, 1.3)]
    lay(scene, kind, ways, radii, strength)


# How each kind is put, and how much room it takes, mm.
KINDS = {
    "crack": (_crack, 7),
    "curve": (_crack, 6),
    "hairline": (_crack, 7),
    "pore": (_one_pore, 3),
    "star": (_star, 4),
    "broken": (_broken, 9),
    "row": (_row, 9),
    "cluster": (_cluster, 9),
    "touching": (_touching, 9),
}


def _pore(scene, at, length, strength, kind):
    angle = scene.rng.uniform(0, np.pi)
    off = 0.08 * length * np.array([np.cos(angle), np.sin(angle)])
    lay(scene, kind, [[at - off, at + off]], [0.42 * length], strength)


def _free_place(scene, reach):
    """A place at least ``reach`` mm from the border and from what is there; None if full."""
    wide, high = (s * scene.condition.mm_per_px for s in scene.size)
    for _ in range(200):
        at = scene.rng.uniform([reach + 3, reach + 3], [wide - reach - 3, high - reach - 3])
        if all(np.hypot(at[0] - x, at[1] - y) > reach + r + 1.5 for x, y, r in scene.taken):
            scene.taken.append((float(at[0]), float(at[1]), reach))
            return at
    return None
