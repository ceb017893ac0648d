"""What lies on a rendered photo and is no indication; and dye that is none.

Figures of reflectance and absorption are plausible ones: common practice, no source.
"""

import cv2
import numpy as np
from stress_scenes import cloud

RUST = np.array([0.35, 0.7, 1.0], np.float32)  # absorption by colour
INKS = {
    "blue pen": np.array([2.2, 1.4, 0.35], np.float32),
    "black pen": np.array([2.4, 2.5, 2.5], np.float32),
    "red pen": np.array([0.12, 2.0, 1.5], np.float32),
}
TAPES = np.array([[0.72, 0.60, 0.36], [0.10, 0.22, 0.55], [0.80, 0.66, 0.08], [0.5, 0.5, 0.5]])


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
        _stroke(scene, box, at + np.array([-run, run]), scene.rng.uniform(0.5, 1.0), ink)

    return put


def _stroke(scene, box, ends_mm, wide_mm, ink):
    ends = np.round(scene.px(ends_mm)).astype(int).tolist()
    width = max(2, int(scene.px(wide_mm)))
    mask = _drawn(scene, box, lambda m: cv2.line(m, *ends, 90, width, cv2.LINE_AA), 1.0)
    scene.base[box] *= np.exp(-mask * INKS[ink])


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


def _cloth(scene):
    """A red glove or sleeve that reaches in from a side, with folds and a weave."""
    wide, high = (s * scene.condition.mm_per_px for s in scene.size)
    side = int(scene.rng.integers(3))
    at = np.array([[0.0, 0.3 * high], [wide, 0.6 * high], [0.4 * wide, 0.0]][side])
    at = at + scene.rng.uniform(-15, 15, 2) * [side == 2, side != 2]
    scene.taken.append((float(at[0]), float(at[1]), 46.0))
    box = _box(scene, at, 46)
    centre = np.round(scene.px(at)).astype(int).tolist()
    size = np.round(scene.px([36, 22] if side != 2 else [22, 36])).astype(int).tolist()
    mask = _drawn(scene, box, lambda m: cv2.ellipse(m, centre, size, 0, 0, 360, 100, -1), 3)
    shape = (mask.shape[1], mask.shape[0])
    folds = 1 + 0.25 * cloud(scene.rng, shape, scene.px(5), 3)
    weave = 1 + 0.10 * cloud(scene.rng, shape, 5)
    red = np.array([0.42, 0.05, 0.06], np.float32) * scene.rng.uniform(0.6, 1.2)
    red = red * (folds * weave).clip(0.2)[..., None]
    scene.base[box] = scene.base[box] * (1 - mask) + mask * red


def _fibres(scene):
    """Red threads of cloth: thin, curled, of one width, with blunt ends."""
    at, box = _corner(scene, 12)

    def draw(mask):
        for _ in range(3):
            start, turn = scene.rng.normal(0, 3, 2), scene.rng.uniform(0, 6.28)
            bend = scene.rng.uniform(-0.5, 0.5) + 0.1 * np.cumsum(scene.rng.normal(0, 1, 60))
            angle = turn + np.cumsum(bend) * 0.1
            steps = np.column_stack([np.cos(angle), np.sin(angle)]) * 0.12
            way = np.round(scene.px(at + start + np.cumsum(steps, axis=0)) * 16).astype(int)
            cv2.polylines(mask, [way], False, 100, 3, cv2.LINE_AA, 4)

    scene.base[box] *= np.exp(-_drawn(scene, box, draw, 0.8) * INKS["red pen"])


def _run(scene):
    """A drop of dye that ran down: a round head, a pale tail with a dark rim."""
    at, box = _corner(scene, 15)
    head = np.round(scene.px(at)).astype(int)
    width, length = scene.px(scene.rng.uniform(1.0, 2.0)), scene.px(scene.rng.uniform(6, 12))
    tail = tuple((head - [0, int(length)]).tolist())

    def draw(mask):
        cv2.line(mask, tail, tuple(head.tolist()), 35, int(width), cv2.LINE_AA)
        cv2.circle(mask, tuple(head.tolist()), int(width), 100, -1, cv2.LINE_AA)

    scene.dye[box] += 1.6 * _drawn(scene, box, draw, 3)[..., 0]


def _beside_weld(scene):
    """A welder's red pen marks: ticks square to the weld, beside its toes."""
    wide = scene.size[0] * scene.condition.mm_per_px
    for y in (0.36, 0.54):
        at = np.array(
            [scene.rng.uniform(20, wide - 20), y * scene.size[1] * scene.condition.mm_per_px]
        )
        scene.taken.append((float(at[0]), float(at[1]), 8.0))
        box = _box(scene, at, 8)
        _stroke(scene, box, at + np.array([[0, -4], [0, 4]]), 0.7, "red pen")


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
    "red cloth": _cloth,
    "red fibres": _fibres,
    "dye that ran": _run,
    "red pen by a weld": _beside_weld,
}
