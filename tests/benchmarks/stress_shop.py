"""What the shop adds to a rendered photo: surface, light, camera.

Figures of reflectance and absorption are plausible ones: common practice, no source.
"""

import cv2
import numpy as np
from stress_distract import DISTRACT
from stress_scenes import RED_DYES, STEEL, Scene, cloud, indicate


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
