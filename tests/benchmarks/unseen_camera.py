"""The camera of the unseen set: pose, light, lens, sensor and what a phone does to a picture.

Camera frame: x right, y down, z forward; a point of the surface (x, y), mm, that stands ``h``
over it lies at ``R (x, y, -h) + (0, 0, D)``. Pixel frame: (0, 0) is the centre of the
top-left pixel.
"""

from dataclasses import dataclass

import cv2
import numpy as np
from unseen_part import CELL

COARSE = 4  # the rays are worked out for every fourth pixel, between them linearly


@dataclass(frozen=True, kw_only=True)
class Camera:
    """Pinhole with one radial term; sizes in px, mm and rad."""

    width: int
    height: int
    focal: float
    k1: float
    distance: float
    turn: np.ndarray  # (3, 3)
    tilt_deg: float

    def project(self, xyh):
        """Pixels (N, 2) of points (N, 3): x, y and height over the surface, mm."""
        at = np.asarray(xyh, float) * (1, 1, -1) @ self.turn.T + (0, 0, self.distance)
        flat = at[:, :2] / at[:, 2:]
        bent = flat * (1 + self.k1 * (flat**2).sum(axis=1, keepdims=True))
        return bent * self.focal + np.array([self.width - 1, self.height - 1]) / 2

    def seen(self, part):
        """Surface coordinates x, y of the pixels, mm, (height / 4, width / 4)."""
        cols = np.arange(self.width // COARSE) * COARSE + (COARSE - 1) / 2
        rows = np.arange(self.height // COARSE) * COARSE + (COARSE - 1) / 2
        u, v = np.meshgrid(
            (cols - (self.width - 1) / 2) / self.focal,
            (rows - (self.height - 1) / 2) / self.focal,
        )
        straight = np.stack([u, v])
        for _ in range(4):
            straight = np.stack([u, v]) / (1 + self.k1 * (straight**2).sum(axis=0))
        rays = np.stack([*straight, np.ones_like(u)], axis=-1) @ self.turn
        start = -self.distance * self.turn[2]
        over = np.zeros_like(u)
        small = cv2.resize(part.height, None, fx=0.25, fy=0.25, interpolation=cv2.INTER_AREA)
        for _ in range(4):
            far = (-over - start[2]) / rays[..., 2]
            x, y = start[0] + far * rays[..., 0], start[1] + far * rays[..., 1]
            at = (part.cells(np.stack([x, y], -1)) / 4 - 0.375).astype(np.float32)
            over = cv2.remap(small, at[..., 0], at[..., 1], cv2.INTER_LINEAR)
        return x.astype(np.float32), y.astype(np.float32)


def pose(rng, photo, points):
    """A camera that leans anywhere, rolled a little, with all points (N, 2) in view."""
    width, height = photo.size_px
    focal, k1 = rng.uniform(0.68, 0.85) * max(width, height), rng.normal(0, 0.004)
    for n in range(100):
        lean, roll = rng.uniform(0, 2 * np.pi), rng.normal(0, 0.05)
        axis = np.array([np.cos(lean), np.sin(lean), 0.0]) * np.radians(photo.tilt_deg)
        turn = cv2.Rodrigues(np.array([0.0, 0.0, roll]))[0] @ cv2.Rodrigues(axis)[0]
        camera = Camera(
            width=width,
            height=height,
            focal=focal,
            k1=k1,
            distance=focal * photo.mm_per_px * (1 + 0.02 * n),
            turn=turn,
            tilt_deg=photo.tilt_deg,
        )
        px = camera.project(np.c_[points, np.zeros(len(points))])
        if (px > 30).all() and (px < np.array(photo.size_px) - 30).all():
            return camera
    raise ValueError(f"no place for a camera that sees all at {photo.size_px} px")


def finer(coarse, factor=COARSE):
    """A map of the coarse grid at every pixel (or at ``factor`` points to each cell)."""
    return cv2.resize(coarse, None, fx=factor, fy=factor, interpolation=cv2.INTER_LINEAR)


def shades(part, towards):
    """How light falls on the raster's slopes, 1 on the flat; ``towards`` (3,) to the lamp."""
    form = part.relief + part.height
    gx = cv2.Sobel(form, cv2.CV_32F, 1, 0, ksize=3, scale=1 / 8 / CELL)
    gy = cv2.Sobel(form, cv2.CV_32F, 0, 1, ksize=3, scale=1 / 8 / CELL)
    lit = (towards[2] - gx * towards[0] - gy * towards[1]) / towards[2]
    lit /= np.sqrt(1 + gx**2 + gy**2)
    return np.clip(lit, 0.15, 1.8), gx, gy


def lamps(rng, x, y, plan):
    """Light on the coarse grid, (H, W, 3), that the plan asks for; blue, green, red."""
    span = float(x.max() - x.min())
    turn = rng.uniform(0, 2 * np.pi)
    along = (x * np.cos(turn) + y * np.sin(turn)) / span
    first = np.exp(np.log(plan.gradient) * along)[..., None] * np.ones(3, np.float32)
    light = first * np.array(plan.cast, np.float32)
    if plan.two_lights:
        other = np.array([1.35, 1.0, 0.72], np.float32)
        share = 1 / (1 + np.exp(-5 * (x * np.sin(turn) - y * np.cos(turn)) / span))[..., None]
        light = light * (share * other + (1 - share) / other)
    if plan.head_lamp:
        off = np.hypot(x - rng.uniform(-30, 30), (y - rng.uniform(-40, 10)) * 1.1)
        radius, edge = rng.uniform(60, 90), rng.uniform(3, 12)
        light = (
            light
            * (0.45 + 0.75 / (1 + np.exp(np.clip((off - radius) / edge, -40, 40))))[..., None]
        )
    for _ in range(plan.shadows):
        light = light * _shadow(rng, x, y)
    return light.astype(np.float32)


def _shadow(rng, x, y):
    """A hard shadow, half-plane or bar, a little blue with what lights it still."""
    turn, soft = rng.uniform(0, 2 * np.pi), rng.uniform(0.3, 2.5)
    off = x * np.cos(turn) + y * np.sin(turn) - rng.uniform(-50, 50)
    if rng.random() < 0.5:
        off = np.abs(off) - rng.uniform(6, 25)
    dark = rng.uniform(0.35, 0.65)
    share = 1 / (1 + np.exp(np.clip(off / soft * 2, -40, 40)))[..., None]
    return 1 - share * (1 - dark * np.array([1.06, 1.0, 0.95]))


def exposed(rng, light, plan):
    """Lens and sensor: linear light (H, W, 3) blurred, with grain; 1 is full."""
    light = cv2.GaussianBlur(light, (0, 0), plan.blur)
    if plan.motion:
        size = int(plan.motion) | 1
        kernel = np.zeros((size, size), np.float32)
        turn = rng.uniform(0, np.pi)
        way = np.array([np.cos(turn), np.sin(turn)]) * (size - 1) / 2
        ends = [tuple(round(float(c) * 256) for c in (size // 2 + s * way)) for s in (-1, 1)]
        cv2.line(kernel, *ends, 1.0, 1, cv2.LINE_8, 8)
        light = cv2.filter2D(light, -1, kernel / kernel.sum())
    noise = rng.standard_normal(light.shape, dtype=np.float32)
    noise = cv2.GaussianBlur(noise, (0, 0), 0.6) * 1.9  # demosaicking joins neighbours
    return light + noise * np.sqrt(plan.grain**2 * np.clip(light, 0, 1) + (plan.grain / 6) ** 2)


def developed(linear, plan):
    """Tone curve, sharpening and colour smoothing; 8 bit."""
    light = np.clip(linear, 0, 1.0)
    low = light * 12.92
    shown = np.where(light <= 0.0031308, low, 1.055 * light ** (1 / 2.4) - 0.055)
    if plan.tone == "contrast":
        shown = shown + 0.10 * np.sin((shown - 0.5) * 2 * np.pi) / np.pi * 1.6
    elif plan.tone == "power":
        shown = light ** (1 / 2.2)
    elif plan.tone == "shoulder":
        shown = shown * 1.12 / (1 + 0.12 * shown)
    elif plan.tone == "lifted":
        shown = 0.04 + 0.96 * shown**0.92
    shown = np.clip(shown, 0, 1).astype(np.float32)
    parts = list(cv2.split(cv2.cvtColor(shown, cv2.COLOR_BGR2YCrCb)))
    parts[1:] = [cv2.GaussianBlur(p, (0, 0), plan.colour_blur) for p in parts[1:]]
    if plan.sharpen:
        parts[0] += plan.sharpen * (parts[0] - cv2.GaussianBlur(parts[0], (0, 0), 1.3))
    shown = cv2.cvtColor(cv2.merge(parts), cv2.COLOR_YCrCb2BGR)
    return np.round(np.clip(shown, 0, 1) * 255).astype(np.uint8)
