"""Photos of developed pipes with dye lines of known length: rays that meet a cylinder.

Nothing of ptmark is in here: a pinhole with one radial term, a cylinder, lines drawn on its
unwrapped surface, shade towards the limb, a background, blur, grain.
"""

from dataclasses import dataclass

import cv2
import numpy as np

# What phones hold, in mm of a 36 x 24 mm picture: mostly the main camera, some wide, some tele.
# Common practice, no source.
PHONES_MM, PHONES_SHARE = (14, 24, 26, 28, 50, 70), (0.08, 0.27, 0.27, 0.18, 0.12, 0.08)
FULL_FRAME_DIAGONAL_MM = 43.27


@dataclass
class Line:
    """A dye line on the unwrapped pipe: its middle (mm round, mm along), way, length, width."""

    middle: np.ndarray
    way: float
    length: float
    width: float

    def ends(self):
        half = (self.length - self.width) / 2 * np.array([np.cos(self.way), np.sin(self.way)])
        return np.array([self.middle - half, self.middle + half])


class Scene:
    """A camera before a pipe; ``told_focal`` px is what EXIF would say."""

    def __init__(self, rng, size=(2400, 1800), *, phones=False, diameter=None):
        self.rng, self.size = rng, size
        self.diameter = diameter or float(np.exp(rng.uniform(np.log(60), np.log(600))))
        # What the user types: within 0.5 % of the truth.
        self.told_diameter = self.diameter / (1 + rng.uniform(-0.005, 0.005))
        diagonal = float(np.hypot(*size))
        film = float(rng.choice(PHONES_MM, p=PHONES_SHARE)) if phones else 26.0
        self.told_focal = film / FULL_FRAME_DIAGONAL_MM * diagonal
        self.focal = self.told_focal * float(np.exp(0.03 * rng.normal()))
        self.middle = (np.array(size) - 1) / 2
        self.centre = self.middle + rng.normal(0, 0.01 * diagonal, 2)
        self.k1 = float(rng.normal(0, 0.015)) / (diagonal / 2) ** 2
        lean, turn = np.radians(rng.uniform(-15, 15)), rng.uniform(0, 2 * np.pi)
        self.axis = np.array(
            [np.cos(lean) * np.cos(turn), np.cos(lean) * np.sin(turn), np.sin(lean)]
        )
        radius, share = self.diameter / 2, rng.uniform(0.55, 0.8)
        half = share * size[1] / 2 / self.focal  # tangent of half the angle the pipe fills
        off = radius / np.sin(np.arctan(half))
        aside = rng.uniform(-0.04, 0.04, 2) * self.diameter
        origin = np.array([*aside, off])
        foot = origin - (origin @ self.axis) * self.axis
        self.origin, self.off = origin, float(np.linalg.norm(foot))
        self.near = -foot / self.off
        self.side = np.cross(self.near, self.axis)
        self.limb = np.arccos(radius / self.off)  # angle round the axis where sight touches
        self.lines = []

    def place(self, flat, height=0.0):
        """Places in space of (mm round, mm along), shape (N, 2)."""
        flat, radius = np.atleast_2d(flat), self.diameter / 2
        angle = flat[:, :1] / radius
        out = np.cos(angle) * self.near + np.sin(angle) * self.side
        return self.origin + flat[:, 1:] * self.axis + (radius + height) * out

    def see(self, places):
        """px of places in space."""
        straight = self.focal * places[:, :2] / places[:, 2:] + self.centre
        bent = straight - self.middle
        for _ in range(20):
            bent = (straight - self.middle) / (1 + self.k1 * (bent**2).sum(1, keepdims=True))
        return bent + self.middle

    def edges(self):
        """Two points on either edge, well inside the picture, shape (4, 2) px."""
        radius, span = self.diameter / 2, self.span()
        angles = [-self.limb, self.limb]
        return np.vstack(
            [self.see(self.place([[a * radius, -span], [a * radius, span]])) for a in angles]
        )

    def span(self):
        """mm along the axis that stay in the picture to either side."""
        for share in np.linspace(1.0, 0.02, 60):
            far = share * self.off
            rim = [
                [a * self.limb * self.diameter / 2, s * far]
                for a in (-1, 0, 1)
                for s in (-1, 1)
            ]
            seen = self.see(self.place(rim))
            if ((seen > 30) & (seen < np.array(self.size) - 30)).all():
                return far
        raise ValueError("the pipe does not fit")

    def turned(self, flat):
        """Degrees between the surface's normal and the line of sight."""
        place = self.place(flat)
        angle = np.atleast_2d(flat)[:, :1] / (self.diameter / 2)
        out = np.cos(angle) * self.near + np.sin(angle) * self.side
        back = -place / np.linalg.norm(place, axis=1, keepdims=True)
        return np.degrees(np.arccos((back * out).sum(1)))

    def draw_lines(self, count, most_turned=58.0):
        """Add lines that do not touch and turn away no more than ``most_turned``."""
        px = (self.off - self.diameter / 2) / self.focal  # mm where nearest
        span, tries = 0.8 * self.span(), 0
        while len(self.lines) < count and tries < 400:
            tries += 1
            length = px * float(self.rng.uniform(45, 160))
            width = max(px * 8.0, length * float(self.rng.uniform(0.06, 0.14)))
            round_mm = self.rng.uniform(-1, 1) * self.limb * self.diameter / 2
            line = Line(
                np.array([round_mm, self.rng.uniform(-span, span)]),
                float(self.rng.uniform(0, np.pi)),
                length,
                width,
            )
            ends = line.ends()
            apart = [np.linalg.norm(line.middle - one.middle) for one in self.lines]
            if (self.turned(ends) < most_turned).all() and min(apart, default=1e9) > 260 * px:
                self.lines.append(line)

    def render(self, *, quality_light=1.0):
        """The photo, uint8 (H, W, 3)."""
        wide, high = self.size
        y, x = np.mgrid[0:high, 0:wide].astype(np.float32)
        x, y = x - self.middle[0], y - self.middle[1]
        bend = 1 + self.k1 * (x**2 + y**2)
        dx = (x * bend + self.middle[0] - self.centre[0]) / self.focal
        dy = (y * bend + self.middle[1] - self.centre[1]) / self.focal
        frame = np.array([self.side, self.axis, -self.near])
        a, b, c = (row[0] * dx + row[1] * dy + row[2] for row in frame)
        radius = self.diameter / 2
        sight = np.arctan2(np.abs(a), c)
        grow = np.hypot(*np.gradient(sight))
        cover = np.clip((np.arcsin(radius / self.off) - sight) / grow + 0.5, 0, 1)
        square = a**2 + c**2
        root = np.maximum((c * self.off) ** 2 - square * (self.off**2 - radius**2), 0)
        far = (c * self.off - np.sqrt(root)) / square
        angle = np.arctan2(a * far, self.off - c * far)
        along = b * far - float(self.origin @ self.axis)
        light = self._light(angle, quality_light)
        for line in self.lines:
            light = self._dye(light, line, radius * angle, along)
        ground = self._ground(x, y)
        light = light * cover[..., None] + ground * (1 - cover[..., None])
        light = cv2.GaussianBlur(
            light.astype(np.float32), (0, 0), float(self.rng.uniform(0.8, 1.3))
        )
        light = light + self.rng.normal(0, 0.006, light.shape)
        return np.uint8(np.round(255 * np.clip(light, 0, 1) ** (1 / 2.2)))

    def _light(self, angle, strength):
        lamp = self.rng.uniform(-0.5, 0.5)
        shade = 0.45 + 0.5 * np.clip(np.cos(angle - lamp), 0, 1)
        grain = cv2.GaussianBlur(
            self.rng.normal(0, 0.05, angle.shape).astype(np.float32), (0, 0), 2
        )
        white = np.array([0.80, 0.79, 0.76]) * strength
        return (shade * (1 + grain))[..., None] * white

    def _dye(self, light, line, round_mm, along):
        u, v = round_mm - line.middle[0], along - line.middle[1]
        way = np.array([np.cos(line.way), np.sin(line.way)])
        t, s = u * way[0] + v * way[1], v * way[0] - u * way[1]
        half = (line.length - line.width) / 2
        out = np.hypot(np.maximum(np.abs(t) - half, 0), s) - line.width / 2
        soft = line.width / 4
        amount = np.clip(0.5 - out / soft, 0, 1)[..., None]
        return light * (1 - amount * np.array([0.35, 0.93, 0.90]))

    def _ground(self, x, y):
        level = self.rng.uniform(0.02, 0.25)
        tint = np.array([1.0, 0.97, 0.92])
        wave = 1 + 0.2 * np.sin(x / 300 + self.rng.uniform(0, 6)) * np.cos(y / 230)
        return (level * wave)[..., None] * tint
