"""What lies on the parts of the unseen set and is no dye, drawn on the surface's raster.

Red ink, red threads and drops of dye are left out: nothing in a photo tells them from dye.
"""

import cv2
import numpy as np
from unseen_part import CELL, clouds

CARD_MM = (85.60, 53.98)  # ISO/IEC 7810 ID-1
MARKER_MM, INSET_MM = 12.0, 4.0
FINE = 16  # sixteenths of a cell, for drawing
PENS = {  # blue, green, red
    "blue": (0.35, 0.08, 0.04),
    "black": (0.03, 0.03, 0.03),
    "violet": (0.40, 0.06, 0.17),
    "green": (0.10, 0.25, 0.04),
}
TAPES = ((0.20, 0.45, 0.62), (0.55, 0.60, 0.62), (0.45, 0.20, 0.06), (0.30, 0.62, 0.72))
SKINS = ((0.22, 0.30, 0.52), (0.10, 0.16, 0.30), (0.05, 0.08, 0.16))


def lay(part, mask, colour, share=1.0, view=...):
    """Mix a colour into the paint where the mask, 0 to 1, says; the developer goes."""
    mask = (mask * np.float32(share))[..., None]
    paint, cover = part.paint[view], part.cover[view]
    paint += (np.asarray(colour, np.float32) - paint) * mask
    cover *= 1 - mask[..., 0]


def _view(part, points, margin_mm):
    """Rows and columns of the raster round points in mm."""
    cells = part.cells(points)
    rows, cols = part.relief.shape
    lo = np.clip(np.floor(cells.min(axis=0) - margin_mm / CELL), 0, (cols - 2, rows - 2))
    hi = np.clip(np.ceil(cells.max(axis=0) + margin_mm / CELL), lo + 2, (cols, rows))
    (left, top), (right, bottom) = lo.astype(int), hi.astype(int)
    return slice(top, bottom), slice(left, right)


def _drawn(part, points, margin_mm, draw, soft_mm=0.06):
    """What ``draw(mask, to_cells)`` draws near the points: mask, 0 to 1, and its view."""
    view = _view(part, points, margin_mm)
    corner = np.array([view[1].start, view[0].start])
    mask = np.zeros(part.relief[view].shape, np.uint8)
    draw(mask, lambda mm: part.cells(mm) - corner)
    return cv2.GaussianBlur(mask, (0, 0), soft_mm / CELL + 0.3).astype(np.float32) / 255, view


def _poly(cells):
    return [np.round(np.asarray(cells) * FINE).astype(np.int32)]


def stroke(part, points, width_mm, colour, share=1.0):
    """A line of one width with round ends."""
    thick = max(round(width_mm / CELL), 1)

    def draw(mask, to_cells):
        cv2.polylines(mask, _poly(to_cells(points)), False, 255, thick, cv2.LINE_AA, 4)

    mask, view = _drawn(part, points, width_mm + 1, draw)
    lay(part, mask, colour, share, view)


def pen(rng, part, place, colour):
    """A pen's line, ring or arrow near a place."""
    u = np.linspace(0, 1, 30)
    if rng.random() < 0.4:
        radius = rng.uniform(4, 9)
        turn = 2 * np.pi * u * rng.uniform(0.9, 1.1)
        points = place + radius * np.stack([np.cos(turn), 0.7 * np.sin(turn)], 1)
    else:
        turn, long = rng.uniform(0, np.pi), rng.uniform(8, 26)
        points = place + np.outer((u - 0.5) * long, [np.cos(turn), np.sin(turn)])
        points = points + 0.4 * np.sin(u * 5)[:, None]
    stroke(part, points, rng.uniform(0.4, 1.5), PENS[colour], rng.uniform(0.7, 0.95))


def written(rng, part, place, text, *, stamped):
    """Figures: written black, or stamped, so that they shade and hold developer."""
    size = rng.uniform(4, 7) / CELL / 22

    def draw(mask, to_cells):
        at = tuple(round(float(c)) for c in to_cells(place))
        cv2.putText(
            mask, text, at, cv2.FONT_HERSHEY_SIMPLEX, size, 255, int(size * 3), cv2.LINE_AA
        )

    mask, view = _drawn(
        part, place + np.array([[0, -9], [34, 4]]), 1, draw, 0.12 if stamped else 0.05
    )
    if stamped:
        part.relief[view] -= 0.25 * mask
        lay(part, mask, (0.25, 0.25, 0.26), 0.25, view)
    else:
        lay(part, mask, PENS["black"], 0.9, view)


def rust(rng, part, place, share):
    """A stain that eats its way with a ragged edge, brown to orange."""
    radius = rng.uniform(2, 9)
    x, y = part.grid()
    view = _view(part, place[None], 2.6 * radius)
    x, y = x[view[1]], y[view[0]]
    off = np.hypot(x - place[0], (y - place[1]) * rng.uniform(0.8, 1.6)) / radius
    near = 1 - off + 0.3 * clouds(rng, off.shape, 4)
    mask = np.clip(near * rng.uniform(1, 3), 0, 1) * (off < 2)
    tone = rng.uniform(0, 1)
    colour = (0.02 + 0.02 * tone, 0.07 + 0.09 * tone, 0.20 + 0.18 * tone)
    lay(part, mask.astype(np.float32), colour, share, view)


def heat_tint(rng, part):
    """Straw, brown, violet, blue beside a weld, as far as the developer lets it through."""
    _x, y = part.grid()
    off = np.abs(y - part.weld_y) - part.weld_half
    for far, colour in (
        (3.0, (0.45, 0.20, 0.16)),
        (5.5, (0.22, 0.16, 0.26)),
        (8.0, (0.12, 0.28, 0.42)),
    ):
        mask = np.exp(-(((off - far) / 1.5) ** 2)).astype(np.float32)
        lay(part, mask, colour, rng.uniform(0.04, 0.14))


def tape(rng, part, place):
    """A strip with straight sides, thick enough to cast an edge."""
    turn, long, wide = rng.uniform(0, np.pi), rng.uniform(25, 60), rng.uniform(9, 19)
    way = np.array([np.cos(turn), np.sin(turn)])
    side = np.array([-way[1], way[0]])
    corners = [place + a * way * long / 2 + b * side * wide / 2 for a, b in _CORNERS]

    def draw(mask, to_cells):
        cv2.fillPoly(mask, _poly(to_cells(corners)), 255, cv2.LINE_AA, 4)

    mask, view = _drawn(part, corners, 1, draw)
    lay(part, mask, TAPES[rng.integers(len(TAPES))], rng.uniform(0.85, 1), view)
    part.relief[view] += 0.12 * mask


_CORNERS = ((-1, -1), (1, -1), (1, 1), (-1, 1))


def finger(rng, part, place, towards):
    """A finger that comes from outside; its tip lies at the place."""
    wide = rng.uniform(13, 17)
    way = np.asarray(towards, float) - place
    end = place + way / np.linalg.norm(way) * 120
    tone = np.array(SKINS[rng.integers(len(SKINS))])
    view = _view(part, [place, end], wide)
    mask = np.zeros(part.relief[view].shape, np.uint8)
    line = _poly(part.cells([place, end]) - (view[1].start, view[0].start))
    cv2.polylines(mask, line, False, 255, int(wide / CELL), cv2.LINE_AA, 4)
    round_ = cv2.GaussianBlur(mask, (0, 0), 3 / CELL).astype(np.float32) / 255
    shadow = np.roll(cv2.GaussianBlur(mask, (0, 0), 1.5 / CELL), (20, 15), (0, 1))
    paint = part.paint[view]
    paint *= (1 - 0.45 * shadow.astype(np.float32) / 255)[..., None]
    folds = 1 + 0.05 * clouds(rng, mask.shape, 1.5)
    soft = cv2.GaussianBlur(mask, (0, 0), 1.0).astype(np.float32) / 255
    body = tone.astype(np.float32) * ((0.35 + 0.75 * round_) * folds)[..., None]
    paint += (body - paint) * soft[..., None]
    part.cover[view] *= 1 - soft


def fibre(rng, part, place):
    """A grey thread of cloth, curled."""
    u = np.linspace(0, 1, 40)
    turn = np.cumsum(rng.normal(0, 0.25, 40)) + rng.uniform(0, 6)
    long = rng.uniform(3, 14)
    points = place + np.cumsum(np.stack([np.cos(turn), np.sin(turn)], 1) * long / 40, axis=0)
    grey = rng.uniform(0.05, 0.4)
    stroke(part, points + 0 * u[:, None], 0.1, (grey, grey, grey), rng.uniform(0.5, 0.9))


def card(part, middle, angle):
    """The scale card of ID-1 size; its corners in mm, clockwise from the top left."""
    per = 20  # px a mm of its own picture
    wide, high = (round(side * per) for side in CARD_MM)
    picture = np.full((high, wide), 215, np.uint8)
    kinds = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    size, inset = round(MARKER_MM * per), round(INSET_MM * per)
    places = ((0, 0), (1, 0), (1, 1), (0, 1))
    for n, (right, down) in enumerate(places):
        left = wide - inset - size if right else inset
        top = high - inset - size if down else inset
        drawn = cv2.aruco.generateImageMarker(kinds, n, size)
        picture[top : top + size, left : left + size] = np.where(drawn > 127, 215, 8)
    for mm in range(41):
        left, long = round((22.8 + mm) * per), (5 if mm % 5 else 8) * per // 2
        picture[high - inset - long : high - inset, left - 2 : left + 2] = 20
    c, s = np.cos(angle), np.sin(angle)
    turn = np.array([[c, -s], [s, c]])
    corners = middle + (np.array(places) - 0.5) * CARD_MM @ turn.T
    source = np.array([[0, 0], [wide, 0], [wide, high]], np.float32) - 0.5
    view = _view(part, corners, 4)
    target = part.cells(corners[:3]) - (view[1].start, view[0].start)
    warp = cv2.getAffineTransform(source, target.astype(np.float32))
    small = cv2.GaussianBlur(picture, (0, 0), 0.4 * per * CELL)
    where = part.relief[view].shape[::-1]
    on = cv2.warpAffine(np.full_like(picture, 255), warp, where, flags=cv2.INTER_LINEAR)
    shown = cv2.warpAffine(small, warp, where, flags=cv2.INTER_LINEAR)
    share = (on.astype(np.float32) / 255)[..., None]
    shadow = np.roll(cv2.GaussianBlur(on, (0, 0), 0.5 / CELL), (4, 4), (0, 1))
    paint = part.paint[view]
    paint *= (1 - 0.25 * shadow.astype(np.float32) / 255)[..., None]
    light = (shown.astype(np.float32) / 255)[..., None] * np.array([0.97, 1.0, 1.0], np.float32)
    paint += (light - paint) * share
    _flat(part, share[..., 0], view)
    return corners


def _flat(part, share, view):
    """What lies there is flat and no developer."""
    for layer in (part.relief[view], part.height[view], part.cover[view]):
        np.multiply(layer, 1 - share, out=layer)


def rule(rng, part, start, angle, length=150):
    """A steel rule with strokes each mm; the middles of the feet of 0 and the last, mm."""
    way = np.array([np.cos(angle), np.sin(angle)])
    side = np.array([-way[1], way[0]])
    ends = (start - 4 * way - side, start + (length + 4) * way - side)
    corners = [*ends, ends[1] + 15 * side, ends[0] + 15 * side]

    def body(mask, to_cells):
        cv2.fillPoly(mask, _poly(to_cells(corners)), 255, cv2.LINE_AA, 4)

    mask, view = _drawn(part, corners, 1, body, 0.02)
    grey = rng.uniform(0.25, 0.5)
    part.paint[view] *= (1 - 0.3 * np.roll(mask, (6, 6), (0, 1)))[..., None]
    lay(part, mask, (grey, grey, grey), 1.0, view)
    _flat(part, mask, view)

    def strokes(mask, to_cells):
        for mm in range(length + 1):
            long = 6 if mm % 10 == 0 else 4.5 if mm % 5 == 0 else 3
            foot = start + mm * way
            line = _poly(to_cells([foot, foot + long * side]))
            cv2.polylines(mask, line, False, 255, 2, cv2.LINE_AA, 4)
            if mm % 10 == 0:
                at = tuple(round(float(c)) for c in to_cells(foot + 9.5 * side - way))
                figure = str(mm // 10)
                cv2.putText(
                    mask, figure, at, cv2.FONT_HERSHEY_SIMPLEX, 0.9, 255, 2, cv2.LINE_AA
                )

    mask, view = _drawn(part, corners, 1, strokes, 0.01)
    lay(part, mask, (0.03, 0.03, 0.03), 0.95, view)
    return np.array([start, start + length * way])
