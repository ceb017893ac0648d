"""Renderer of the coverage set: a card, a rule and indications under a camera, sizes known.

Shares no code with ptmark. The plate is z = 0, the camera stands at z > 0; a weld of raised
cosine form may run along x. Lengths in mm are taken along the plate; px count from the centre
of the top-left pixel. Light is linear until it is coded, and dye is mixed in linearly. An
indication ends at half of the dye that it holds itself, before the lens blurs it.
"""

import io
from dataclasses import dataclass, field

import cv2
import numpy as np
from coverage_camera import CROWN_HALF_MM, FILM_MM, Eye, crown
from PIL import Image
from stress_scenes import RED_DYES, chain_distance, cloud, line

CARD_MM = (85.60, 53.98)  # ISO/IEC 7810, ID-1
MARKERS_MM = ((4.0, 4.0), (69.6, 4.0), (69.6, 37.98), (4.0, 37.98))  # as on the printed card
RULE_MM = (166.0, 14.0)
FINE = 25.0  # px a mm of drawings


@dataclass(frozen=True, kw_only=True)
class View:
    """One condition; the defaults are a usual photo."""

    name: str = "usual"
    megapixels: float = 12.0
    distance_mm: float = 200.0
    tilt_deg: float = 12.0
    blur_px: float = 1.1
    noise: float = 0.006
    quality: int = 88
    cast: tuple[float, float, float] = (1.0, 1.0, 1.0)
    gradient: float = 1.4
    crown_mm: float = 1.0
    k1: float = 0.008  # x' = x (1 + k1 r^2), r in focal lengths
    soft_mm: tuple[float, float] = (0.05, 0.12)
    strength: tuple[float, float] = (0.5, 1.0)
    tells_focal: bool = True
    tells_crown: bool = False  # whether the user gives the crown's height
    count: int = 26


@dataclass(frozen=True, kw_only=True, eq=False)
class Truth:
    """One indication: outline in px of shape (N, 2), true length and width in mm."""

    kind: str
    outline_px: np.ndarray
    length_mm: float
    width_mm: float
    strength: float


@dataclass(eq=False)
class Scene:
    """What lies under the camera and where."""

    view: View
    rng: np.random.Generator
    eye: Eye = None
    truths: list = field(default_factory=list)
    taken: list = field(default_factory=list)

    def __post_init__(self):
        self.eye = Eye(self.view, self.rng)
        d = self.view.distance_mm
        self.card_at = np.array([-0.05 * d - 0.5 * CARD_MM[0], 0.5 * d * 0.86])
        self.rule_mm = 150 if d >= 160 else 100
        self.rule_at = np.array([-0.5 * self.rule_mm - 5, -0.36 * d + RULE_MM[1]])
        self.card_at[1] = min(self.card_at[1], 15.0 + CARD_MM[1] + 0.1 * d)

    def place(self, kind, at_mm):
        """Point of a print's own frame (x right, y down) on the plate, shape (N, 3)."""
        corner = self.card_at if kind == "card" else self.rule_at
        flat = corner + np.asarray(at_mm, float) * [1, -1]
        return np.column_stack([flat, np.zeros(len(flat))])

    def seen(self, flat):
        """Points on the plate's plan, raised onto the weld, as px."""
        return self.eye.to_px(np.column_stack([flat, crown(flat[:, 1], self.view.crown_mm)]))

    def window(self, px, margin):
        """Columns and rows round some px, inside the photo; None where they lie outside."""
        low = np.maximum(np.floor(px.min(axis=0)).astype(int) - margin, 0)
        top = np.minimum(np.ceil(px.max(axis=0)).astype(int) + margin + 1, self.eye.size)
        return None if (top - low < 4).any() else (slice(low[1], top[1]), slice(low[0], top[0]))

    def rays(self, window, parts, crown_mm):
        """Where rays through a window's pixels meet, mm: parts x parts of them a pixel."""
        rows, columns = np.mgrid[window]
        at = self.eye.meet(columns, rows, crown_mm)
        down, right = np.gradient(at, axis=(0, 1))
        shifts = (np.arange(parts) + 0.5) / parts - 0.5
        for dy in shifts:
            for dx in shifts:
                yield np.float32(at + dx * right + dy * down)


def photograph(view, seed):
    """JPEG bytes, the truths, and picks: rectangle (4, 2), line (2, 2) and its mm."""
    rng = np.random.default_rng(seed)
    scene = Scene(view, rng)
    wide, high = scene.eye.size
    coarse = 0.3 * wide / view.distance_mm
    mottle = 0.02 * cloud(rng, (wide, high), 5 * coarse) + 0.01 * cloud(
        rng, (wide, high), coarse
    )
    light = (0.80 * (1 + mottle))[..., None] * np.array([1.0, 0.985, 0.965], np.float32)
    amount = np.zeros((high, wide), np.float32)
    for number in range(view.count):
        _indicate(scene, KINDS[number % len(KINDS)], amount)
    stops = 1 - np.exp(-2.6 * RED_DYES[seed % len(RED_DYES)])
    light *= 1 - amount[..., None] * stops
    for kind, drawing in (("card", _card_drawing()), ("rule", _rule_drawing(scene.rule_mm))):
        _lay_print(scene, kind, drawing, light)
    blob = _develop(scene, light)
    corners = scene.eye.to_px(
        scene.place("card", [(0, 0), (CARD_MM[0], 0), CARD_MM, (0, CARD_MM[1])])
    )
    ends = scene.eye.to_px(scene.place("rule", [(5.0, 1.5), (5.0 + scene.rule_mm, 1.5)]))
    noise = [rng.normal(0, 1.2, (n, 2)) for n in (4, 2)]
    return blob, scene.truths, corners + noise[0], ends + noise[1], float(scene.rule_mm)


KINDS = ("crack", "pore", "curve", "short", "pore", "star", "crack", "short")


def _indicate(scene, kind, amount):
    rng, view = scene.rng, scene.view
    reach = {"crack": 6.5, "curve": 5.0, "short": 2.5, "pore": 2.2, "star": 4.0}[kind]
    at = _free_place(scene, reach)
    if at is None:
        return
    angle, half = rng.uniform(0, np.pi), rng.uniform(0.12, 0.35)
    if kind == "pore":
        size = rng.uniform(0.8, 3.6)
        off = 0.08 * size * np.array([np.cos(angle), np.sin(angle)])
        ways, radii = np.array([[at - off, at + off]]), np.array([0.42 * size])
    elif kind == "star":
        arms = [line(rng, at, rng.uniform(3, 6), angle + n * np.pi / 3) for n in range(3)]
        ways = np.concatenate([arm[len(arm) // 2 :] for arm in arms])
        radii = np.full(len(ways), half)
    else:
        long = {"crack": (4, 12), "curve": (4, 9), "short": (1.5, 4)}[kind]
        ways = line(rng, at, rng.uniform(*long), angle, 0.3 if kind == "curve" else 0.03)
        radii = half * (0.65 + 0.35 * np.sin(np.linspace(0.1, np.pi - 0.1, len(ways))))
    strength, soft = rng.uniform(*view.strength), rng.uniform(*view.soft_mm)
    seen = _to_half(radii, soft)
    outline, width = _shape(ways, seen)
    px = scene.seen(outline)
    scene.truths.append(
        Truth(
            kind=kind,
            outline_px=px,
            length_mm=_caliper(ways, seen),
            width_mm=width,
            strength=strength,
        )
    )
    window = scene.window(px, int(6 * soft * scene.eye.focal / view.distance_mm) + 3)
    share = np.zeros(amount[window].shape)
    for there in scene.rays(window, 2, view.crown_mm):
        depth = chain_distance(there[..., 0], there[..., 1], ways, radii) / soft
        share += 0.25 / (1 + np.exp(np.clip(1.702 * depth, -60, 60)))
    np.maximum(amount[window], strength * share, out=amount[window], casting="same_kind")


def _free_place(scene, reach):
    """Plan place with ``reach`` mm of room, in view, clear of card, rule and the others."""
    rng, d = scene.rng, scene.view.distance_mm
    for _ in range(300):
        at = rng.uniform([-0.55 * d, -0.4 * d], [0.55 * d, 0.4 * d])
        if scene.view.crown_mm and rng.random() < 0.4:
            at[1] = rng.uniform(-CROWN_HALF_MM, CROWN_HALF_MM)
        px = scene.seen(at + reach * np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]))
        if (px < 20).any() or (px > np.array(scene.eye.size) - 20).any():
            continue
        boxes = ((scene.card_at, CARD_MM), (scene.rule_at, RULE_MM))
        clear = reach + 3.0
        if any(
            -clear < at[0] - c[0] < w + clear and -clear < c[1] - at[1] < h + clear
            for c, (w, h) in boxes
        ):
            continue
        if all(np.hypot(*(at - other)) > reach + r + 2.0 for other, r in scene.taken):
            scene.taken.append((at, reach))
            return at
    return None


def _to_half(radii, soft):
    """Radii at which the dye is half of what the middle of the way holds."""
    full = 1 / (1 + np.exp(-1.702 * radii / soft))
    return radii + soft / 1.702 * np.log(2 / full - 1)


def _caliper(ways, radii):
    """Largest distance in a union of capsules, exact: of centres, plus both radii."""
    centres, own = ways.reshape(-1, 2), np.repeat(radii, 2)
    apart = np.hypot(*np.moveaxis(centres[:, None] - centres, -1, 0))
    return float((apart + own[:, None] + own).max())


def _shape(ways, radii):
    """Outline of the union on the plan, shape (N, 2), and its largest inscribed circle."""
    reach = float(radii.max())
    low = ways.reshape(-1, 2).min(axis=0) - reach - 0.1
    top = ways.reshape(-1, 2).max(axis=0) + reach + 0.1
    step = max(reach / 40, float((top - low).max()) / 1500)
    mask, deep = _depth(low, top, step, ways, radii)
    row, column = np.unravel_index(int(deep.argmax()), deep.shape)
    middle, close = low + step * np.array([column, row]), 1.4 * step * deep.max()
    fine = close / 400
    _, deep = _depth(middle - close, middle + close, fine, ways, radii)
    deep = deep[300:501, 300:501]  # round its middle: farther out the rim lies out of sight
    rims, _ = cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)
    rim = max(rims, key=len).reshape(-1, 2)
    every = max(1, len(rim) // 300)
    return low + step * rim[::every], float(2 * fine * (float(deep.max()) - 0.5))


def _depth(low, top, step, ways, radii):
    """What lies inside on a grid, and how deep, in its steps."""
    x, y = np.meshgrid(*(np.arange(a, b, step) for a, b in zip(low, top, strict=True)))
    mask = np.uint8(chain_distance(np.float32(x), np.float32(y), ways, radii) < 0)
    return mask, cv2.distanceTransform(mask, cv2.DIST_L2, cv2.DIST_MASK_PRECISE)


def _card_drawing():
    """The card's face as light, FINE px a mm."""
    face = np.full([round(FINE * n) for n in CARD_MM[::-1]], 0.82, np.float32)
    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    side = round(12 * FINE)
    for marker, (x, y) in enumerate(MARKERS_MM):
        left, top = round(x * FINE), round(y * FINE)
        bits = cv2.aruco.generateImageMarker(dictionary, marker, side)
        face[top : top + side, left : left + side] = np.where(bits > 0, 0.82, 0.03)
    return face


def _rule_drawing(long_mm):
    """A steel rule in millimetres, its strokes from y = 0, FINE px a mm."""
    face = np.full((round(RULE_MM[1] * FINE), round((long_mm + 10) * FINE)), 0.42, np.float32)
    for step in range(long_mm + 1):
        deep = 7.0 if step % 10 == 0 else 5.0 if step % 5 == 0 else 3.5
        middle, half = (5 + step) * FINE, 0.075 * FINE
        left, right = round(middle - half), round(middle + half)
        face[: round(deep * FINE), left:right] = 0.05
    return face


def _lay_print(scene, kind, drawing, light):
    high, wide = np.array(drawing.shape) / FINE
    edge = scene.place(kind, [(0, 0), (wide, 0), (wide, high), (0, high)])
    window = scene.window(scene.eye.to_px(edge), 2)
    total, share = np.zeros(light[window].shape[:2]), np.zeros(light[window].shape[:2])
    corner = edge[0, :2]
    for there in scene.rays(window, 4, 0.0):  # prints lie beside the weld
        x = np.float32((there[..., 0] - corner[0]) * FINE - 0.5)
        y = np.float32((corner[1] - there[..., 1]) * FINE - 0.5)
        on = (x > -0.5) & (y > -0.5) & (x < FINE * wide - 0.5) & (y < FINE * high - 0.5)
        seen = cv2.remap(drawing, x, y, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
        total += np.where(on, seen, 0) / 16
        share += on / 16
    kept = light[window] * (1 - share)[..., None]
    light[window] = kept + total[..., None].astype(np.float32)


def _develop(scene, light):
    """Uneven light, lens, grain, coding, JPEG."""
    rng, view = scene.rng, scene.view
    wide, high = scene.eye.size
    turn = rng.uniform(0, 2 * np.pi)
    x = np.linspace(-1, 1, wide, dtype=np.float32)
    y = np.linspace(-1, 1, high, dtype=np.float32)[:, None]
    ramp = (x * np.cos(turn) + y * np.sin(turn)) / (abs(np.cos(turn)) + abs(np.sin(turn)))
    light *= (0.92 * view.gradient ** ((ramp - 1) / 2)).astype(np.float32)[..., None]
    light *= np.array(view.cast, np.float32)
    seen = cv2.GaussianBlur(light, (0, 0), view.blur_px)
    grain = rng.standard_normal(seen.shape, dtype=np.float32)
    seen += view.noise * grain * np.sqrt(np.maximum(seen, 0.02))
    np.clip(seen, 0, 1, out=seen)
    coded = np.where(seen <= 0.0031308, 12.92 * seen, 1.055 * seen ** (1 / 2.4) - 0.055)
    tags = Image.Exif()
    if view.tells_focal:
        tags.get_ifd(0x8769)[0xA405] = FILM_MM
    held = io.BytesIO()
    Image.fromarray(np.uint8(np.round(coded * 255))).save(
        held, "JPEG", quality=view.quality, subsampling=2, exif=tags
    )
    return held.getvalue()
