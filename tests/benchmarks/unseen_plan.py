"""What a photo of the unseen set holds: light, camera, coat and indications, by level."""

from dataclasses import dataclass

import numpy as np
import shapely
from unseen_dye import Dye, blot, branched, crack, frayed, moved, star

LEVELS = ("easy", "usual", "hard", "shop")
REDS = (  # blue, green, red: carmine, scarlet, crimson, magenta, deep, light, cold
    (0.05, 0.02, 0.50),
    (0.03, 0.04, 0.60),
    (0.045, 0.015, 0.42),
    (0.16, 0.04, 0.55),
    (0.03, 0.015, 0.32),
    (0.12, 0.07, 0.62),
    (0.11, 0.02, 0.40),
)
SIZES_PX = ((2592, 1944), (3264, 2448), (3840, 2880), (4032, 3024))


@dataclass(kw_only=True)
class Plan:
    """How one photo is taken; see `plan` for what each level allows."""

    size_px: tuple
    mm_per_px: float
    tilt_deg: float
    coat: str
    haze: float
    gradient: float
    cast: tuple
    two_lights: bool
    head_lamp: bool
    shadows: int
    glare: float
    blur: float
    motion: float
    grain: float
    tone: str
    sharpen: float
    colour_blur: float
    quality: int
    halved_colour: bool
    white: float
    count: int
    faint: float
    clutter: int


def plan(rng, level):
    """Draw a photo's conditions; every level allows what the one before does, and more."""
    k = LEVELS.index(level)
    size = SIZES_PX[rng.integers(len(SIZES_PX))]
    if k and rng.random() < 0.25:
        size = size[::-1]
    warm = rng.normal(0, (0.01, 0.04, 0.07, 0.12)[k])
    coats = (("thick",), ("thick", "sprayed", "brushed"))[min(k, 1)]
    gradient = rng.uniform(1, (1.2, 1.7, 2.3, 3.0)[k])
    head_lamp = bool(rng.random() < (0, 0, 0.15, 0.3)[k])
    if head_lamp:
        gradient **= 0.4  # the lamp falls off by itself; both would be darker than a shop is
    tones = ("plain", "contrast", "power", "shoulder", "lifted")
    return Plan(
        size_px=size,
        mm_per_px=rng.uniform(0.06, 0.08) * (1 if max(size) > 3000 else 1.12),
        tilt_deg=rng.uniform(0, (8, 18, 26, 30)[k]),
        coat=rng.choice(coats if k < 2 or rng.random() < 0.6 else ("thin",)),
        haze=rng.uniform(0, (0.0, 0.03, 0.06, 0.08)[k]),
        gradient=gradient,
        cast=(1 - warm, 1 + rng.normal(0, 0.015), 1 + warm),
        two_lights=bool(rng.random() < (0, 0, 0.2, 0.35)[k]),
        head_lamp=head_lamp,
        shadows=0 if head_lamp else int(rng.integers(0, (1, 2, 2, 3)[k])),
        glare=rng.uniform(0, (0, 0.1, 0.3, 0.6)[k]),
        blur=rng.uniform(0.7, (1.1, 1.3, 1.6, 1.9)[k]),
        motion=float(rng.integers(3, 8)) if rng.random() < (0, 0, 0.15, 0.3)[k] else 0.0,
        grain=rng.uniform(0.003, (0.008, 0.015, 0.025, 0.035)[k]),
        tone=str(rng.choice(tones[: 2 + 3 * min(k, 1)])),
        sharpen=rng.uniform(0, (0.3, 0.6, 0.9, 1.1)[k]),
        colour_blur=rng.uniform(0.4, (0.6, 0.9, 1.1, 1.3)[k]),
        quality=int(rng.integers((88, 78, 68, 60)[k], 96)),
        halved_colour=bool(rng.random() < 0.7),
        white=rng.uniform((0.7, 0.6, 0.5, 0.4)[k], 0.85),
        count=int(rng.integers((4, 6, 7, 8)[k], (7, 10, 12, 13)[k])),
        faint=(0.0, 0.2, 0.3, 0.35)[k],
        clutter=k,
    )


def _kinds(level):
    easy = (
        "crack",
        "crack",
        "short crack",
        "curved crack",
        "star crack",
        "pore",
        "pore",
        "speck",
    )
    more = ("crack", "toe crack", "cross crack", "aligned pore", "branched crack", "hairline")
    rare = ("broken line", "cluster", "crater", "large pore", "hairline", "toe crack", "pore")
    k = LEVELS.index(level)
    return easy + more * (k > 0) + rare * (k > 1) + ("hairline", "broken line") * (k > 2)


def _fade(rng, level):
    """How far the dye of a tip fades out, mm."""
    return rng.uniform(0.05, (0.2, 0.4, 0.6, 0.8)[LEVELS.index(level)])


SHAPES = {
    "crack": lambda r, f: crack(
        r, length=r.uniform(5, 22), width=r.uniform(0.3, 0.9), fade_mm=f
    ),
    "short crack": lambda r, f: crack(
        r, length=r.uniform(1.6, 5), width=r.uniform(0.3, 0.6), fade_mm=f
    ),
    "toe crack": lambda r, f: crack(
        r, length=r.uniform(4, 20), width=r.uniform(0.3, 0.7), wander=0.05, fade_mm=f
    ),
    "cross crack": lambda r, f: crack(
        r, length=r.uniform(3, 10), width=r.uniform(0.3, 0.8), fade_mm=f
    ),
    "curved crack": lambda r, f: crack(
        r,
        length=r.uniform(6, 16),
        width=r.uniform(0.35, 0.9),
        bend=r.uniform(0.8, 2.6),
        fade_mm=f,
    ),
    "hairline": lambda r, f: crack(
        r, length=r.uniform(3, 12), width=r.uniform(0.18, 0.28), wander=0.2, fade_mm=f
    ),
    "branched crack": lambda r, f: branched(
        r, length=r.uniform(7, 18), width=r.uniform(0.35, 0.8), fade_mm=f
    ),
    "star crack": lambda r, _f: star(r, size=r.uniform(4, 9), width=r.uniform(0.4, 0.9)),
    "crater": lambda r, _f: star(r, size=r.uniform(2.5, 5), width=r.uniform(0.3, 0.6)),
    "pore": lambda r, _f: blot(r, size=r.uniform(1.0, 3.5)),
    "large pore": lambda r, _f: blot(r, size=r.uniform(4.5, 7)),
    "speck": lambda r, _f: blot(r, size=r.uniform(0.4, 0.9)),
}


def indications(rng, level, photo, part, area):
    """Dye in the area (a shapely polygon, mm), apart from each other and from what is taken."""
    found, tries = [], 0
    kinds = _kinds(level)
    while len(found) < photo.count and tries < 400:
        tries += 1
        kind = str(rng.choice(kinds))
        faint = rng.random() < photo.faint
        strength = rng.uniform(0.30, 0.54) if faint else rng.uniform(0.6, 1.0)
        place, angle = _place(rng, kind, part, area)
        made = [
            _dye(rng, level, kind, strength, strokes)
            for strokes in _group(rng, level, kind, place, angle)
        ]
        shapes = [_reach(dye) for dye in made]
        whole = shapely.unary_union(shapes)
        near = whole.buffer(2.5)
        if not area.contains(whole.buffer(1.5)) or any(near.intersects(t) for t in part.taken):
            continue
        part.taken.append(whole)
        found.extend(made)
    return found


def _reach(dye):
    return shapely.unary_union(
        [
            (
                shapely.LineString(s.line) if len(s.line) > 1 else shapely.Point(s.line[0])
            ).buffer(float(s.half.max()))
            for s in dye.strokes
        ]
    )


def _place(rng, kind, part, area):
    """Where and how an indication lies: those of welds on the weld, if there is one."""
    left, top, right, bottom = area.bounds
    place = np.array([rng.uniform(left, right), rng.uniform(top, bottom)])
    angle = rng.uniform(0, np.pi)
    if part.weld_half:
        if kind == "toe crack":
            side = rng.choice([-1, 1])
            place[1] = part.weld_y + side * (part.weld_half + rng.uniform(-0.2, 1.0))
            angle = rng.normal(0, 0.06)
        elif kind == "cross crack":
            place[1] = part.weld_y + rng.uniform(-0.5, 0.5) * part.weld_half
            angle = np.pi / 2 + rng.normal(0, 0.2)
        elif kind == "crater" or rng.random() < 0.25:
            place[1] = part.weld_y + rng.uniform(-0.7, 0.7) * part.weld_half
    return place, angle


def _group(rng, level, kind, place, angle):
    """Strokes of each indication: one, or those of a row, a cluster, a broken line."""
    fade = _fade(rng, level)
    if kind == "aligned pore":
        count, size = int(rng.integers(3, 7)), rng.uniform(0.8, 1.8)
        step = size + rng.uniform(1.2, 3.0)
        at = [((n - count / 2) * step, rng.normal(0, 0.1)) for n in range(count)]
        each = [blot(rng, size=size * rng.uniform(0.8, 1.15)) for _ in at]
    elif kind == "cluster":
        at = _scattered(rng, int(rng.integers(5, 12)))
        each = [blot(rng, size=rng.uniform(0.6, 1.5)) for _ in at]
    elif kind == "broken line":
        long = rng.uniform(1.6, 4, int(rng.integers(2, 5)))
        gaps = rng.uniform(1.0, 2.2, len(long)) + fade
        starts = np.cumsum(long + gaps) - long / 2
        at = [(s - starts.mean(), rng.normal(0, 0.08)) for s in starts]
        wide = rng.uniform(0.25, 0.5)
        each = [crack(rng, length=n, width=wide, fade_mm=fade) for n in long]
    else:
        at, each = [(0.0, 0.0)], [SHAPES[kind](rng, fade)]
    return [
        moved(moved(s, 0.0, np.array(p)), angle, place) for s, p in zip(each, at, strict=True)
    ]


def _scattered(rng, count):
    """Places of pores at least 2.6 mm from each other."""
    at = [np.zeros(2)]
    while len(at) < count:
        new = rng.normal(0, 3.2, 2)
        if min(np.hypot(*(new - a)) for a in at) > 2.6:
            at.append(new)
    return at


def _dye(rng, level, kind, strength, strokes):
    """The indication with its edge: the thinner, the sharper."""
    thick = 2 * max(float(s.half.max()) for s in strokes)
    soft = min(rng.uniform(0.04, 0.12), 0.3 * thick)
    halo = LEVELS.index(level) > 1 and rng.random() < 0.2
    return Dye(
        kind=kind,
        strength=float(
            max(strength, 0.4) if kind == "hairline" and level != "shop" else strength
        ),
        soft_mm=float(soft),
        strokes=strokes,
        halo=float(rng.uniform(0.08, 0.22)) if halo else 0.0,
        halo_mm=float(rng.uniform(0.4, 1.2)),
        waves=frayed(rng, soft),
    )
