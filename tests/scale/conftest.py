"""A simulated camera (OpenCV's projection) and a rendered scale card."""

from dataclasses import dataclass, field
from pathlib import Path

import cv2
import numpy as np
import pytest

from ptmark.photo import Photo, PhotoInfo

# The card's drawing, written down again from the project's design rather than imported.
CARD_MM = (85.60, 53.98)
MARKERS_MM = {0: (4.0, 4.0), 1: (69.6, 4.0), 2: (69.6, 37.98), 3: (4.0, 37.98)}


@dataclass(frozen=True)
class Camera:
    """A pinhole camera over the plane z = 0; camera height along its axis in mm."""

    width: int = 2000
    height: int = 1500
    focal_px: float = 1450.0
    distance_mm: float = 160.0
    lean_deg: tuple[float, float] = (0.0, 0.0)
    turn_deg: float = 0.0
    aim_mm: tuple[float, float] = (42.8, 27.0)

    @property
    def rotation(self):
        turn, _ = cv2.Rodrigues(np.array([0.0, 0.0, np.radians(self.turn_deg)]))
        lean, _ = cv2.Rodrigues(np.radians([*self.lean_deg, 0.0]))
        return lean @ turn

    @property
    def translation(self):
        return np.array([0, 0, self.distance_mm]) - self.rotation @ [*self.aim_mm, 0.0]

    @property
    def matrix(self):
        centre = ((self.width - 1) / 2, (self.height - 1) / 2)
        return np.array(
            [[self.focal_px, 0, centre[0]], [0, self.focal_px, centre[1]], [0, 0, 1]]
        )

    def project(self, points_mm, height_mm=0.0):
        """Points of shape (N, 2) on the plane, or ``height_mm`` over it, to px."""
        points = np.column_stack([points_mm, np.full(len(points_mm), -height_mm)]).astype(float)
        rotation, _ = cv2.Rodrigues(self.rotation)
        seen, _ = cv2.projectPoints(points, rotation, self.translation, self.matrix, None)
        return seen.reshape(-1, 2)

    def to_px(self):
        """Homography plane to picture, shape (3, 3)."""
        return self.matrix @ np.column_stack([self.rotation[:, :2], self.translation])

    def photo(self, rgb=None, *, exif=False):
        """A photo of this camera; black where no pixels are given."""
        if rgb is None:
            rgb = np.zeros((self.height, self.width, 3), np.uint8)
        info = PhotoInfo(
            path=Path("made.png"),
            sha256="0" * 64,
            bytes=0,
            format="PNG",
            width=self.width,
            height=self.height,
            focal_px=self.focal_px if exif else None,
        )
        return Photo(info, rgb)


@dataclass
class Card:
    """A card to render; ``covers`` are rectangles in mm (x, y, w, h) of a grey rule over it."""

    hidden: tuple[int, ...] = ()
    covers: list[tuple[float, float, float, float]] = field(default_factory=list)
    side_mm: float = 12.0

    def drawing(self):
        """Linear light as uint8; the card with some surface about it, margin and px per mm."""
        margin, px_per_mm = 6.0, 50.0  # all of the card's figures are multiples of 0.02 mm
        size = (np.array(CARD_MM)[::-1] + 2 * margin) * px_per_mm
        light = np.full(np.round(size).astype(int), 184, np.uint8)

        def box(x, y, w, h, value):
            at = (np.array([x, y, x + w, y + h]) + margin) * px_per_mm
            x0, y0, x1, y1 = np.maximum(np.round(at), 0)
            light[int(y0) : int(y1), int(x0) : int(x1)] = value

        box(0, 0, *CARD_MM, 204)
        dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
        module = self.side_mm / 6
        grow = (self.side_mm - 12.0) / 2
        for marker, (x, y) in MARKERS_MM.items():
            if marker in self.hidden:
                continue
            bits = cv2.aruco.generateImageMarker(dictionary, marker, 6) > 0
            box(x - grow, y - grow, self.side_mm, self.side_mm, 8)
            for row, column in zip(*np.nonzero(bits), strict=True):
                box(x - grow + column * module, y - grow + row * module, module, module, 204)
        for x, y, w, h in self.covers:
            box(x, y, w, h, 102)
        # Soft over about one pixel of what it is drawn into, or aligned edges would jump.
        return cv2.GaussianBlur(light, (0, 0), 2.0), margin, px_per_mm

    def photograph(self, camera, *, blur_px=1.2, noise=0.01, shade=0.0, seed=1, exif=False):
        """The card as this camera sees it, sRGB; drawn at twice the size and averaged."""
        light, margin, px_per_mm = self.drawing()
        # Drawing pixels (centre to centre) to plane mm, then plane to twice the picture.
        to_mm = np.array(
            [
                [1 / px_per_mm, 0, 0.5 / px_per_mm - margin],
                [0, 1 / px_per_mm, 0.5 / px_per_mm - margin],
                [0, 0, 1],
            ]
        )
        double = np.array([[2, 0, 0.5], [0, 2, 0.5], [0, 0, 1]])
        size = (2 * camera.width, 2 * camera.height)
        seen = cv2.warpPerspective(
            light,
            double @ camera.to_px() @ to_mm,
            size,
            borderValue=184,
            flags=cv2.INTER_LINEAR,
        )
        seen = cv2.resize(seen, (camera.width, camera.height), interpolation=cv2.INTER_AREA)
        seen = cv2.GaussianBlur(seen.astype(np.float32) / 255, (0, 0), blur_px)
        seen = seen * np.linspace(1, 1 - shade, camera.width, dtype=np.float32)
        seen = seen + np.random.default_rng(seed).normal(0, noise, seen.shape) * np.sqrt(seen)
        coded = np.where(
            seen <= 0.0031308, 12.92 * seen, 1.055 * np.abs(seen) ** (1 / 2.4) - 0.055
        )
        grey = np.clip(np.round(coded * 255), 0, 255).astype(np.uint8)
        rgb = np.ascontiguousarray(np.repeat(grey[..., None], 3, axis=2))
        return camera.photo(rgb, exif=exif)


@pytest.fixture
def camera():
    return Camera


@pytest.fixture
def card():
    return Card


def marker_squares():
    """Corners of all four markers, mm, shape (16, 2), from the design's figures."""
    square = np.array([[0, 0], [12, 0], [12, 12], [0, 12]], float)
    return np.vstack([square + MARKERS_MM[i] for i in range(4)])


@pytest.fixture
def squares_mm():
    return marker_squares()


# Steel rules as makers engrave them (common practice, no source): step in mm, length of
# strokes in mm by the count they stand at, longest count first.
RULES = {
    "mm": (1.0, {10: 5.0, 5: 3.8, 1: 2.6}),
    "1/2 mm": (0.5, {20: 5.5, 10: 4.6, 2: 3.2, 1: 2.2}),
    "1/16 in": (25.4 / 16, {16: 7.0, 8: 5.6, 4: 4.4, 2: 3.4, 1: 2.5}),
    "1/32 in": (25.4 / 32, {32: 7.0, 16: 5.8, 8: 4.8, 4: 3.9, 2: 3.0, 1: 2.2}),
    "1/64 in": (25.4 / 64, {64: 7.0, 32: 6.0, 16: 5.0, 8: 4.2, 4: 3.4, 2: 2.7, 1: 2.0}),
}


@dataclass
class Rule(Card):
    """A steel rule to render: its graduated edge is y = 0, strokes run to positive y."""

    kind: str = "mm"
    length_mm: float = 100.0
    stroke_mm: float = 0.14

    def drawing(self):
        margin, px_per_mm = 12.0, 40.0
        step, lengths = RULES[self.kind]
        size = np.array([30.0, self.length_mm + 10.0]) + 2 * margin
        light = np.full(np.round(size * px_per_mm).astype(int), 176, np.uint8)

        def box(x, y, w, h, value):
            # Drawn with sixteenths of a pixel: strokes of inches fall between pixels.
            at = (np.array([[x, y], [x + w, y + h]]) + margin) * px_per_mm - 0.5
            corners = np.round(at * 16).astype(int)
            points = np.column_stack([corners[[0, 1, 1, 0], 0], corners[[0, 0, 1, 1], 1]])
            cv2.fillPoly(light, [points], value, cv2.LINE_AA, 4)

        box(-5, -0.4, self.length_mm + 10, 25, 110)
        for n in range(int(self.length_mm / step + 1e-9) + 1):
            reach = next(mm for count, mm in lengths.items() if n % count == 0)
            box(n * step - self.stroke_mm / 2, 0, self.stroke_mm, reach, 22)
        for n in range(0, int(self.length_mm), 10):
            at = (np.array([n - 1.5, 12.0]) + margin) * px_per_mm
            cv2.putText(light, str(n // 10), at.astype(int), 0, 3.0, 25, 8)
        return cv2.GaussianBlur(light, (0, 0), 1.5), margin, px_per_mm


@pytest.fixture
def rule():
    return Rule


MARGIN_MM, PX_PER_MM = 12.0, 40.0


@dataclass
class Numbered(Card):
    """A rule of any step, lengths of strokes by count, and numerals every so many mm.

    ``worn`` is the share of it that is rubbed off, in patches.
    """

    step_mm: float = 1.0
    reach: dict[int, float] = field(default_factory=lambda: {1: 3.0})
    every_mm: float = 10.0
    by: int = 1
    high_mm: float = 2.4
    font: int = cv2.FONT_HERSHEY_SIMPLEX
    length_mm: float = 100.0
    stroke_mm: float = 0.12
    worn: float = 0.0

    def drawing(self):
        size = np.array([30.0, self.length_mm + 10.0]) + 2 * MARGIN_MM
        light = np.full(np.round(size * PX_PER_MM).astype(int), 176, np.uint8)
        self._box(light, -5, -0.4, self.length_mm + 10, 25, 110)
        bare = light.copy()
        for n in range(int(self.length_mm / self.step_mm + 1e-9) + 1):
            reach = self.reach[max(count for count in self.reach if n % count == 0)]
            at = n * self.step_mm - self.stroke_mm / 2
            self._box(light, at, 0, self.stroke_mm, reach, 22)
        count = int((self.length_mm - 1) / self.every_mm) if self.every_mm else 0
        for n in range(1, count + 1):
            self._write(light, str(n * self.by), n * self.every_mm)
        if self.worn:
            grain = np.random.default_rng(3).normal(size=np.array(light.shape) // 20 + 1)
            patches = cv2.resize(cv2.GaussianBlur(grain, (0, 0), 3), light.shape[::-1])
            gone = patches > np.quantile(patches, 1 - self.worn)
            light[gone] = bare[gone]
        return cv2.GaussianBlur(light, (0, 0), 1.5), MARGIN_MM, PX_PER_MM

    def _box(self, light, x, y, w, h, value):
        # Drawn with sixteenths of a pixel: strokes of inches fall between pixels.
        at = (np.array([[x, y], [x + w, y + h]]) + MARGIN_MM) * PX_PER_MM - 0.5
        corners = np.round(at * 16).astype(int)
        points = np.column_stack([corners[[0, 1, 1, 0], 0], corners[[0, 0, 1, 1], 1]])
        cv2.fillPoly(light, [points], value, cv2.LINE_AA, 4)

    def _write(self, light, word, at_mm):
        high = self.high_mm * PX_PER_MM
        scale, thick = high / 21, max(1, int(high / 10))
        (wide, _), _ = cv2.getTextSize(word, self.font, scale, thick)
        left = (at_mm + MARGIN_MM) * PX_PER_MM - wide / 2
        low = (max(self.reach.values()) + 0.8 + MARGIN_MM) * PX_PER_MM + high
        at = (int(left), int(low))
        cv2.putText(light, word, at, self.font, scale, 25, thick, cv2.LINE_AA)


@pytest.fixture
def numbered():
    return Numbered
