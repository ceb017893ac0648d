"""Parts of the unseen set: metal, form and developer on a raster of the surface.

The raster's cells are `CELL` mm wide, rows and columns grow with y and x, and the middle is
the origin.
Albedos are linear, 0 to 1, in the order of OpenCV (blue, green, red).
"""

from dataclasses import dataclass, field

import cv2
import numpy as np
import shapely

CELL = 0.085
METALS = (  # blue, green, red
    (0.30, 0.31, 0.32),
    (0.22, 0.23, 0.24),
    (0.38, 0.38, 0.38),
    (0.16, 0.17, 0.19),
    (0.26, 0.30, 0.34),
)
BENCHES = (  # grey, dark, wood, blue, green, steel, cardboard
    (0.10, 0.10, 0.10),
    (0.02, 0.02, 0.02),
    (0.10, 0.20, 0.34),
    (0.35, 0.14, 0.05),
    (0.10, 0.25, 0.06),
    (0.40, 0.40, 0.40),
    (0.22, 0.36, 0.48),
)
KINDS = ("bead", "fillet", "lap", "tube", "casting", "machined", "ground flush", "plate")


@dataclass(kw_only=True)
class Part:
    """What the raster holds; heights in mm, of which ``height`` moves points in the photo."""

    kind: str
    paint: np.ndarray  # (H, W, 3)
    relief: np.ndarray  # (H, W), shades only
    height: np.ndarray  # (H, W), shades and moves
    cover: np.ndarray  # (H, W), the developer's, 0 to 1
    weld_y: float = 0.0
    weld_half: float = 0.0
    crown: float = 0.0
    taken: list = field(default_factory=list)  # shapely shapes in mm where nothing may lie

    def cells(self, points):
        """From mm to column and row of the raster."""
        rows, cols = self.relief.shape
        return np.asarray(points, float) / CELL + np.array([cols - 1, rows - 1]) / 2

    def grid(self):
        """Coordinates x (W,) and y (H, 1) of the cells in mm."""
        rows, cols = self.relief.shape
        x = (np.arange(cols, dtype=np.float32) - (cols - 1) / 2) * CELL
        y = (np.arange(rows, dtype=np.float32) - (rows - 1) / 2) * CELL
        return x, y[:, None]


def clouds(rng, shape, scale_mm, *, stretch=(1.0, 1.0), octaves=3):
    """Smooth noise of about unit deviation, the largest waves ``scale_mm`` long."""
    rows, cols = shape
    total = np.zeros(shape, np.float32)
    for n in range(octaves):
        size = scale_mm / CELL / 2**n
        small = (
            max(int(rows / (size * stretch[1])), 2) + 1,
            max(int(cols / (size * stretch[0])), 2) + 1,
        )
        small = (min(small[0], rows), min(small[1], cols))
        noise = rng.standard_normal(small, dtype=np.float32)
        total += cv2.resize(noise, (cols, rows), interpolation=cv2.INTER_CUBIC) * 0.6**n
    return total / max(float(total.std()), 1e-6)


def make(rng, size_mm, kind, coat):
    """A part that fills the size; ``coat`` names its developer."""
    shape = (int(size_mm[1] / CELL), int(size_mm[0] / CELL))
    flat = np.zeros(shape, np.float32)
    metal = np.array(METALS[rng.integers(len(METALS))], np.float32)
    grain = 1 + 0.10 * clouds(rng, shape, 1.2, stretch=(8, 0.4)) + 0.06 * clouds(rng, shape, 30)
    part = Part(
        kind=kind,
        paint=np.maximum(metal * grain[..., None], 0.02),
        relief=flat,
        height=flat.copy(),
        cover=flat.copy(),
    )
    FORMS[kind](rng, part)
    _developed(rng, part, coat)
    return part


def _middle(rng, part):
    """Where a weld runs: in the part of the view above the scale card."""
    return -0.14 * part.relief.shape[0] * CELL + rng.uniform(-9, 9)


def _bead(rng, part):
    x, y = part.grid()
    half, crown = rng.uniform(4, 7.5), rng.uniform(0.6, 2.0)
    middle = _middle(rng, part)
    wave = 0.5 * np.sin(x / rng.uniform(9, 20) + 1) + 0.3 * np.sin(x / rng.uniform(3, 6))
    across = (y - middle - wave) / half
    inside = np.clip(1 - across**2, 0, None)
    part.height += crown * np.sqrt(inside) * (1 - np.exp(-inside * 6))
    period = rng.uniform(1.0, 2.4)
    uneven = 0.35 * clouds(rng, part.relief.shape, 7)
    ripple = np.sin(2 * np.pi * (x + 2.2 * np.abs(across) ** 1.8 + uneven) / period)
    part.relief += rng.uniform(0.015, 0.05) * ripple * np.clip(inside * 3, 0, 1)
    toe = np.exp(-(((np.abs(across) - 1) * half / 0.35) ** 2))
    part.relief -= 0.10 * toe
    part.weld_y, part.weld_half, part.crown = middle, half, crown
    _spatter(rng, part, rng.integers(0, 18))


def _fillet(rng, part):
    x, y = part.grid()
    middle, half = _middle(rng, part), rng.uniform(3.5, 6)
    wave = 0.35 * np.sin(x / rng.uniform(6, 15)) + 0.2 * np.sin(x / 2.7)
    across = y - middle - wave
    part.relief += np.where(across < -half, -0.35 * (across + half), 0).astype(np.float32)
    bent = np.clip((half - across) / (2 * half), 0, 1)
    part.relief += 0.35 * half * bent**2 * (across > -half)
    ripple = np.sin(2 * np.pi * (x + 0.05 * across**2) / rng.uniform(1.2, 2.6))
    part.relief += 0.05 * ripple * np.clip(1.5 - np.abs(across) / half * 1.5, 0, 1)
    for side in (-half, half):
        part.relief -= 0.08 * np.exp(-(((across - side) / 0.35) ** 2))
    part.weld_y, part.weld_half = middle, half
    _spatter(rng, part, rng.integers(4, 25))


def _lap(rng, part):
    _x, y = part.grid()
    middle = _middle(rng, part)
    across = y - middle
    part.relief += 1.4 / (1 + np.exp(np.clip(across / 0.35, -40, 40)))
    part.cover -= 0.25 * np.exp(-((across / 1.0) ** 2))  # the step's face takes less
    part.taken.append(shapely.box(-400, middle - 1.5, 400, middle + 1.0))
    part.weld_y, part.weld_half = middle + 3, 1.5


def _tube(rng, part):
    _x, y = part.grid()
    radius = rng.uniform(110, 200)
    part.relief += np.sqrt(np.clip(radius**2 - np.minimum(np.abs(y + 10), 90) ** 2, 1, None))
    if rng.random() < 0.6:
        _bead(rng, part)


def _casting(rng, part):
    shape = part.relief.shape
    part.relief += 0.030 * clouds(rng, shape, 2.2) + 0.02 * clouds(rng, shape, 0.6)
    part.relief += 0.5 * clouds(rng, shape, 60, octaves=1)
    for _ in range(rng.integers(1, 4)):
        _hole(rng, part, raised=True)


def _machined(rng, part):
    x, y = part.grid()
    if rng.random() < 0.5:
        far = np.hypot(x - rng.uniform(-60, 60), y - rng.uniform(-150, 150))
    else:
        far = y + 0.12 * x
    part.relief += 0.006 * np.sin(2 * np.pi * far / rng.uniform(0.5, 1.2))
    part.relief += 0.004 * np.sin(2 * np.pi * far / rng.uniform(2, 4))
    for _ in range(rng.integers(1, 5)):
        _hole(rng, part, raised=False)


def _ground(rng, part):
    scratches = clouds(rng, part.relief.shape, 0.6, stretch=(14, 0.5))
    part.relief += 0.006 * scratches
    part.weld_y, part.weld_half = _middle(rng, part), 6.0


def _plate(rng, part):
    part.relief += 0.004 * clouds(rng, part.relief.shape, 2)


FORMS = dict(
    zip(KINDS, (_bead, _fillet, _lap, _tube, _casting, _machined, _ground, _plate), strict=True)
)


def _spatter(rng, part, count):
    for _ in range(count):
        place = rng.uniform((-120, -60), (120, 40))
        _bump(part, place, rng.uniform(0.25, 0.9), 0.5)


def _bump(part, place, radius, tall):
    col, row = np.round(part.cells(place)).astype(int)
    reach = int(3 * radius / CELL)
    rows = slice(max(row - reach, 0), row + reach)
    cols = slice(max(col - reach, 0), col + reach)
    x, y = part.grid()
    off = np.hypot(x[cols] - place[0], y[rows] - place[1])
    if off.size:
        part.relief[rows, cols] += tall * radius * np.clip(1 - (off / radius) ** 2, 0, None)


def _hole(rng, part, *, raised):
    """A drilled hole, some with a thread's rings; in castings on a boss."""
    place = rng.uniform((-100, -60), (100, 20))
    radius = rng.uniform(2.5, 7)
    x, y = part.grid()
    off = np.hypot(x - place[0], y - place[1])
    if raised:
        part.relief += 1.2 / (1 + np.exp(np.clip((off - radius * 2) / 0.5, -40, 40)))
    inside = off < radius
    rings = 0.6 + 0.4 * np.sin(2 * np.pi * off / 0.8) if rng.random() < 0.5 else 1.0
    dark = np.where(inside, 0.12 * rings, 1)[..., None]
    part.paint *= dark.astype(np.float32)
    part.cover -= np.where(inside, 1.5 * np.clip((radius - off) / 0.6, 0, 1), 0)
    part.relief -= 0.5 * np.clip((radius + 0.4 - off) / 0.8, 0, 1)
    part.taken.append(shapely.Point(place).buffer(radius * (2 if raised else 1) + 1.5))


def _developed(rng, part, coat):
    """Cover the part: thick, thin, brushed or sprayed."""
    shape = part.relief.shape
    base = {"thick": 0.97, "thin": 0.72, "brushed": 0.88, "sprayed": 0.90}[coat]
    base += rng.uniform(-0.03, 0.03)
    cover = base + 0.035 * clouds(rng, shape, 25)
    if coat == "brushed":
        cover += 0.045 * clouds(rng, shape, 3.0, stretch=(14, 0.5))
    if coat == "thin":
        cover += 0.06 * clouds(rng, shape, 9)
    if coat in {"sprayed", "thin"}:
        dots = clouds(rng, shape, 0.35, octaves=2)
        cover += 0.035 * dots + 0.10 * np.clip(clouds(rng, shape, 0.9, octaves=1) - 2, 0, 1)
    if rng.random() < 0.5:
        cover = _runs(rng, part, cover)
    low = part.relief - cv2.GaussianBlur(part.relief, (0, 0), 1.2 / CELL)
    cover += np.clip(-low * 0.5, -0.1, 0.1)  # it stays in hollows and leaves the tops
    part.cover = np.clip(part.cover + cover, 0, 0.995).astype(np.float32)
    white = np.array([0.86, 0.87, 0.87]) * rng.uniform(0.96, 1.02, 3)
    white = white.astype(np.float32) * (1 + 0.012 * clouds(rng, shape, 0.4))[..., None]
    part.paint += (white - part.paint) * part.cover[..., None]


def _runs(rng, part, cover):
    """Where it ran down: streaks with a thicker rim and foot."""
    x, y = part.grid()
    for _ in range(rng.integers(2, 7)):
        left, top = rng.uniform(-120, 120), rng.uniform(-80, 20)
        wide, long = rng.uniform(0.8, 2.5), rng.uniform(15, 60)
        off = np.abs(x - left - 0.8 * np.sin(y / 9 + left)) / wide
        along = np.clip((y - top) / 4, 0, 1) * np.clip((top + long - y) / 1.5, 0, 1)
        cover += 0.05 * np.exp(-((off - 1) ** 2) * 8) * along - 0.03 * (off < 1) * along
    return cover


def bench(rng, part, view_mm, level):
    """Lay the bench beside the part: some of its sides run aslant through the view."""
    rows, cols = part.relief.shape
    spare = np.array([cols, rows, cols, rows]) * CELL - np.tile(view_mm, 2)
    back = np.where(rng.random(4) < 0.6, spare / 2 + rng.uniform(-5, 8, 4), 0) / CELL
    corners = np.array([[0, 0], [cols, 0], [cols, rows], [0, rows]], float)
    inward = np.array([[1, 1], [-1, 1], [-1, -1], [1, -1]])
    corners += inward * back[[[0, 1], [2, 1], [2, 3], [0, 3]]] + rng.normal(0, 20, (4, 2))
    mask = np.zeros((rows, cols), np.uint8)
    cv2.fillPoly(mask, [np.round(corners).astype(np.int32)], 255)
    choice = rng.integers(2) if level == "easy" else rng.integers(len(BENCHES))
    colour = np.array(BENCHES[choice], np.float32)
    rough = 1 + 0.15 * clouds(rng, (rows, cols), 6, stretch=(5, 0.6))
    shadow = cv2.GaussianBlur(mask, (0, 0), 2.0 / CELL).astype(np.float32) / 255
    shadow = np.roll(shadow, (int(2 / CELL), int(1.5 / CELL)), (0, 1))
    under = np.maximum(colour * (rough * (1 - 0.6 * shadow))[..., None], 0.004)
    share = cv2.GaussianBlur(mask, (0, 0), 0.15 / CELL).astype(np.float32)[..., None] / 255
    part.paint = under + (part.paint - under) * share
    for layer in (part.cover, part.relief, part.height):
        np.multiply(layer, share[..., 0], out=layer)
