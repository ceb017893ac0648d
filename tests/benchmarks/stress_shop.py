"""What the shop adds to a rendered photo: surface, light, distractors, camera.

Figures of reflectance and absorption are plausible ones: common practice, no source.
"""

import cv2
import numpy as np
from stress_scenes import RED_DYES, STEEL, Scene, cloud, indicate

RUST = np.array([0.35, 0.7, 1.0], np.float32)  # absorption by colour
INKS = {
    "blue pen": np.array([2.2, 1.4, 0.35], np.float32),
    "black pen": np.array([2.4, 2.5, 2.5], np.float32),
    "red pen": np.array([0.12, 2.0, 1.5], np.float32),
}
TAPES = np.array([[0.72, 0.60, 0.36], [0.10, 0.22, 0.55], [0.80, 0.66, 0.08], [0.5, 0.5, 0.5]])


def render(condition, seed, extra=None):
    """Pixels (H, W, 3) uint8 RGB after JPEG, and the truths."""
    scene = Scene(condition, np.random.default_rng(seed))
    rng, size = scene.rng, scene.size
    _surface(scene)
    for what in condition.distractors:
        for _ in range(1 if what == "reference" else 3):
            DISTRACT[what](scene)
    spots = [_spot(scene) for _ in range(condition.glare)]
    if extra is None:
        for number in range(condition.count):
            indicate(scene, condition.kinds[number % len(condition.kinds)])
    else:
        extra(scene)
    if condition.haze:
        _haze(scene)
    dye = RED_DYES[seed % len(RED_DYES)]
    seen = scene.base
    seen *= scene.light[..., None]
    for channel in range(3):
        seen[..., channel] *= cv2.exp(-scene.dye * float(dye[channel]))
    _illuminate(scene, seen, spots)
    return _camera(condition, rng, seen, size), scene.truths


def _surface(scene):
    rng, size, c = scene.rng, scene.size, scene.condition
    mottle = 0.02 * cloud(rng, size, scene.px(6)) + 0.012 * cloud(rng, size, scene.px(1.0))
    scene.base *= (1 + mottle)[..., None] * np.array([1.0, 0.985, 0.965], np.float32)
    grey = cloud(rng, size, scene.px(9))
    cover = np.clip(1 - 0.10 * (grey - 1.0).clip(0), 0, 1)
    if c.thin:
        edge = np.quantile(grey[::16, ::16], 1 - c.thin)
        cover = np.clip(1 - 0.75 * (grey - edge + 0.3).clip(0) / 0.9, 0.15, 1)
    brush = cloud(rng, size, 8.0, 12)[..., None]
    cover = cover[..., None].astype(np.float32)
    scene.base *= cover
    scene.base += (1 - cover) * STEEL * (1 + 0.08 * brush)
    if c.toes:
        for y in (0.38, 0.52):
            _toe(scene, y * size[1])


def _toe(scene, y):
    """A weld's toe: a dark crease, light on the slope above, dye left in the crease."""
    wide, high = scene.size
    x = np.arange(wide, dtype=np.float32)
    course = y + 8 * np.sin(x / 97) + 4 * np.sin(x / 31)
    away = (np.arange(high, dtype=np.float32)[:, None] - course) * scene.condition.mm_per_px
    scene.light *= (
        1 - 0.28 * np.exp(-((away / 0.35) ** 2)) + 0.10 * np.exp(-(((away - 2) / 1.5) ** 2))
    )
    scene.light *= 1 + 0.05 * np.cos(x / scene.px(1.9) * 2 * np.pi) * np.exp(-((away / 4) ** 2))
    left = 0.5 + 0.5 * np.sin(x / 140 + y)
    scene.dye += (0.06 * left * np.exp(-((away / 0.7) ** 2))).astype(np.float32)


def _haze(scene):
    rng, size = scene.rng, scene.size
    pink = (1 + 0.6 * cloud(rng, size, scene.px(10))).clip(0)
    pink *= 1 + 0.25 * cloud(rng, size, scene.px(1.2), 12)  # wiped in one direction
    scene.dye += (scene.condition.haze * pink.clip(0)).astype(np.float32)


def _spot(scene):
    """A glare's place and size, half the photo's width and height their unit."""
    at, size = scene.rng.uniform(-0.9, 0.9, 2), scene.rng.uniform(0.02, 0.09, 2)
    middle = (at + 1) / 2 * np.array(scene.size) * scene.condition.mm_per_px
    reach = float((size * np.array(scene.size)).max() / 2 * scene.condition.mm_per_px)
    scene.taken.append((float(middle[0]), float(middle[1]), 1.5 * reach))
    return at, size


def _illuminate(scene, seen, spots):
    rng, c, (wide, high) = scene.rng, scene.condition, scene.size
    x = np.linspace(-1, 1, wide, dtype=np.float32)[None]
    y = np.linspace(-1, 1, high, dtype=np.float32)[:, None]
    turn = rng.uniform(0, 2 * np.pi)
    ramp = (x * np.cos(turn) + y * np.sin(turn)) / (abs(np.cos(turn)) + abs(np.sin(turn)))
    light = c.gradient ** ((ramp - 1) / 2)
    if c.shadow < 1:
        for _ in range(3):
            a, off = rng.uniform(0, 2 * np.pi), rng.uniform(-0.5, 0.5)
            far = (x * np.cos(a) + y * np.sin(a) - off) * wide / 2 / 2.5
            band = 1 / (1 + np.exp(np.clip(far, -30, 30))) * (far > -260)
            light = light * (1 - (1 - c.shadow) * band)
    seen *= (c.exposure * light)[..., None] * np.array(c.cast, np.float32)
    for at, size in spots:
        spot = np.exp(-(((x - at[0]) / size[0]) ** 2 + ((y - at[1]) / size[1]) ** 2))
        seen += (1.4 * spot)[..., None]


def _camera(c, rng, seen, size):
    if c.motion_px:
        length = int(c.motion_px) | 1
        kernel = np.zeros((length, length), np.float32)
        angle = rng.uniform(0, np.pi)
        half = np.array([np.cos(angle), np.sin(angle)]) * (length - 1) / 2
        middle = (length - 1) / 2
        ends = [tuple(np.round(middle + s * half).astype(int).tolist()) for s in (-1, 1)]
        cv2.line(kernel, ends[0], ends[1], 1.0, 1, cv2.LINE_AA)
        seen = cv2.filter2D(seen, -1, kernel / kernel.sum())
    seen = cv2.GaussianBlur(seen, (0, 0), c.blur_px)
    tile = rng.standard_normal((size[1] // 2, size[0] // 2, 3), dtype=np.float32)
    grain = np.tile(cv2.GaussianBlur(tile, (0, 0), 0.6), (2, 2, 1))
    grain *= c.grain * 2
    grain *= np.sqrt(seen.clip(0.01, None))
    seen = (seen + grain).clip(0, 1)
    coded = np.where(seen <= 0.0031308, 12.92 * seen, 1.055 * cv2.pow(seen, 1 / 2.4) - 0.055)
    eight = np.rint(coded * 255).astype(np.uint8)
    asked = [
        cv2.IMWRITE_JPEG_QUALITY,
        c.quality,
        cv2.IMWRITE_JPEG_SAMPLING_FACTOR,
        cv2.IMWRITE_JPEG_SAMPLING_FACTOR_420,
    ]
    _, packed = cv2.imencode(".jpg", np.ascontiguousarray(eight[..., ::-1]), asked)
    return np.ascontiguousarray(cv2.imdecode(packed, cv2.IMREAD_COLOR)[..., ::-1])


def _corner(scene, reach_mm):
    """Where a distractor goes, noted as taken so that it hides no indication; and its box."""
    wide, high = (s * scene.condition.mm_per_px for s in scene.size)
    at = scene.rng.uniform([reach_mm, reach_mm], [wide - reach_mm, high - reach_mm])
    scene.taken.append((float(at[0]), float(at[1]), reach_mm))
    return at, _box(scene, at, reach_mm)


def _box(scene, at, reach_mm):
    low = np.maximum(scene.px(at - reach_mm).astype(int), 0)
    top = scene.px(at + reach_mm).astype(int)
    return np.s_[low[1] : top[1], low[0] : top[0]]


def _drawn(scene, box, draw, blur):
    """What ``draw`` paints on a mask of the whole photo, blurred and cut to the box."""
    mask = np.zeros(scene.dye.shape, np.uint8)
    draw(mask)
    return cv2.GaussianBlur(mask[box].astype(np.float32) / 100, (0, 0), blur)[..., None]


def _rust(scene):
    at, box = _corner(scene, 14)

    def draw(mask):
        for _ in range(6):
            centre = np.round(scene.px(at + scene.rng.normal(0, 4, 2))).astype(int).tolist()
            size = np.round(scene.px(scene.rng.uniform(0.6, 2.5, 2))).astype(int).tolist()
            depth = scene.rng.uniform(30, 130)
            cv2.ellipse(mask, centre, size, scene.rng.uniform(0, 180), 0, 360, depth, -1)

    scene.base[box] *= np.exp(-_drawn(scene, box, draw, 4) * RUST)


def _pen(ink):
    def put(scene):
        at, box = _corner(scene, 14)
        angle = scene.rng.uniform(0, np.pi)
        run = np.array([np.cos(angle), np.sin(angle)]) * scene.rng.uniform(4, 11)
        ends = [tuple(np.round(scene.px(at + s * run)).astype(int).tolist()) for s in (-1, 1)]
        width = max(2, int(scene.px(scene.rng.uniform(0.5, 1.0))))
        mask = _drawn(scene, box, lambda m: cv2.line(m, *ends, 90, width, cv2.LINE_AA), 1.0)
        scene.base[box] *= np.exp(-mask * INKS[ink])

    return put


def _tape(scene):
    at, box = _corner(scene, 26)
    corners = cv2.boxPoints((scene.px(at), scene.px([38, 12]), scene.rng.uniform(0, 180)))
    mask = _drawn(scene, box, lambda m: cv2.fillPoly(m, [corners.astype(int)], 100), 0.8)
    colour = TAPES[scene.rng.integers(len(TAPES))].astype(np.float32)
    scene.base[box] = scene.base[box] * (1 - mask) + mask * colour


def _stamp(scene):
    at, box = _corner(scene, 17)
    where = (int(scene.px(at[0] - 13)), int(scene.px(at[1])))
    text = f"W{scene.rng.integers(100, 999)}"

    def draw(mask):
        cv2.putText(mask, text, where, cv2.FONT_HERSHEY_SIMPLEX, 4.5, 100, 9, cv2.LINE_AA)

    mask = _drawn(scene, box, draw, 1.5)[..., 0]
    lit = mask - np.roll(mask, (4, 4), (0, 1))
    scene.light[box] *= 1 - 0.3 * mask + 0.25 * lit


def _tint(scene):
    """Heat tint through thin developer: straw, brown, purple, blue, along one band."""
    _, box = _corner(scene, 24)
    high, wide = scene.base[box].shape[:2]
    y = (np.arange(high, dtype=np.float32)[:, None] - high / 2) / scene.px(9)
    x = (np.arange(wide, dtype=np.float32)[None] - wide / 2) / scene.px(16)
    colours = np.array([[0.1, 0.2, 0.5], [0.3, 0.5, 0.9], [0.4, 0.7, 0.5], [0.7, 0.5, 0.1]])
    for k, colour in enumerate(colours):
        bump = 0.35 * np.exp(-(((y - (k - 1.5) * 0.45) / 0.3) ** 2) - x**4)
        scene.base[box] *= np.exp(-bump[..., None] * colour.astype(np.float32))


def _finger(scene):
    wide, high = (s * scene.condition.mm_per_px for s in scene.size)
    at = np.array([scene.rng.uniform(30, wide - 30), high])
    scene.taken.append((float(at[0]), float(at[1]), 36.0))
    box = _box(scene, at, 36)
    centre = np.round(scene.px(at)).astype(int).tolist()
    size, lean = np.round(scene.px([8.5, 30])).astype(int).tolist(), scene.rng.uniform(-15, 15)
    mask = _drawn(scene, box, lambda m: cv2.ellipse(m, centre, size, lean, 0, 360, 100, -1), 6)
    skin = np.array([0.52, 0.29, 0.21], np.float32) * scene.rng.uniform(0.5, 1.1)
    grain = cloud(scene.rng, (mask.shape[1], mask.shape[0]), 12)[..., None]
    scene.base[box] = scene.base[box] * (1 - mask) + mask * skin * (1 + 0.06 * grain)


def _reference(scene):
    """A card of four black squares and a rule with ticks."""
    at = scene.px(_corner(scene, 55)[0])
    low = np.round(at - scene.px([43, 27])).astype(int)
    side, wide, high = (round(float(scene.px(v))) for v in (12, 85.6, 54))
    x, y = low.tolist()
    scene.base[y : y + high, x : x + wide] = 0.88
    for dx, dy in ((4, 4), (69.6, 4), (4, 38), (69.6, 38)):
        sx, sy = x + round(float(scene.px(dx))), y + round(float(scene.px(dy)))
        scene.base[sy : sy + side, sx : sx + side] = 0.04
        cell = side // 6
        bits = scene.rng.integers(0, 2, (4, 4)).repeat(cell, 0).repeat(cell, 1)
        patch = scene.base[sy + cell : sy + 5 * cell, sx + cell : sx + 5 * cell]
        patch[...] = np.where(bits[: patch.shape[0], : patch.shape[1], None], 0.88, 0.04)
    for tick in range(80):
        tx = x + round(float(scene.px(tick)))
        scene.base[y + high : y + high + (60 if tick % 10 == 0 else 30), tx : tx + 4] = 0.05


DISTRACT = {
    "rust": _rust,
    **{ink: _pen(ink) for ink in INKS},
    "tape": _tape,
    "stamp": _stamp,
    "heat tint": _tint,
    "finger": _finger,
    "reference": _reference,
}
