"""Photos of an independent renderer, with what is true of them.

    python tests/benchmarks/unseen.py FOLDER [--level usual] [--photos N] [--seed S]

Writes LEVEL-SEED.jpg beside LEVEL-SEED.json: image size, an area to examine, two marks of a
rule, the four corners of a scale card (each picked with some 1.2 px of error), and every
indication's outline in px with its sizes in mm. The same seed gives the same bytes. Nothing of
ptmark, nor of the other sets' renderers, is used; what an outline is: `unseen_dye.py`.

Rendered is not real: the parts, shops, dyes and cameras are invented.
"""

import argparse
import json
from pathlib import Path

import cv2
import numpy as np
import shapely
import unseen_marks as marks
from unseen_camera import COARSE, developed, exposed, finer, lamps, pose, shades
from unseen_dye import sizes, true_outline
from unseen_part import KINDS, bench, clouds, make
from unseen_plan import LEVELS, REDS, indications, plan

PICK_PX = 0.85  # deviation of a pick along each axis
OVER = 3  # the dye is seen at so many points a pixel, along each axis


def surface(rng, level, photo):
    """The part with what lies on it: part, dye, area and references, all in mm."""
    view = np.array(photo.size_px) * photo.mm_per_px
    kind = "plate" if level == "easy" and rng.random() < 0.5 else str(rng.choice(KINDS))
    spare = 1.2 + photo.tilt_deg / 60  # a camera that leans sees more
    part = make(rng, view * spare, kind, photo.coat)
    wide, high = view / 2
    bottom = high - 64  # above it the area, below it the rule and the card
    area = shapely.box(-0.80 * wide, -0.76 * high, 0.80 * wide, max(bottom - 16, 10 - high))
    dyes = indications(rng, level, photo, part, area)
    if photo.haze:
        haze = photo.haze * np.clip(0.6 + 0.5 * clouds(rng, part.relief.shape, 35), 0, 2)
        part.paint *= 1 - haze[..., None] * (1 - np.array(REDS[rng.integers(4)], np.float32))
    _clutter(rng, part, area, photo.clutter)
    bench(rng, part, view, level)
    corners = marks.card(
        part, np.array([rng.uniform(-0.2, 0.2) * wide, high - 34]), rng.normal(0, 0.06)
    )
    long = 150 if wide > 95 else 100
    ends = marks.rule(rng, part, np.array([-long / 2, bottom - 11]), rng.normal(0, 0.02), long)
    return part, dyes, area, corners, ends


def _clutter(rng, part, area, level):
    """What lies about: each apart from the indications and from what lies there already."""
    left, top, right, bottom = area.bounds

    def somewhere(radius):
        for _ in range(30):
            place = np.array([rng.uniform(left, right), rng.uniform(top, bottom)])
            disc = shapely.Point(place).buffer(radius + 2)
            if not any(disc.intersects(t) for t in part.taken):
                part.taken.append(disc)
                return place
        return None

    def put(chance, radius, what):
        place = somewhere(radius) if rng.random() < chance else None
        if place is not None:
            what(place)

    if level and part.weld_half and rng.random() < 0.5:
        marks.heat_tint(rng, part)
    colours = ("black", "blue") if level < 2 else tuple(marks.PENS)
    text = "".join(rng.choice(list("ABCDEFHKLNRSTUX0123456789"), 4))
    put(
        0.6, 14, lambda p: marks.written(rng, part, p - (10, -2), text, stamped=bool(level > 1))
    )
    for _ in range(level + 1):
        put(0.6, 13, lambda p: marks.pen(rng, part, p, str(rng.choice(colours))))
        put(0.5 * (level > 0), 9, lambda p: marks.rust(rng, part, p, rng.uniform(0.2, 0.8)))
        put(0.6 * (level > 0), 6, lambda p: marks.fibre(rng, part, p))
    put(0.3 * (level > 1), 18, lambda p: marks.tape(rng, part, p))
    if level > 2 and rng.random() < 0.5:
        side = right if rng.random() < 0.5 else left
        tip = np.array([side * 0.93, rng.uniform(top, bottom)])
        way = shapely.LineString([tip, (side * 3, tip[1] - 10)]).buffer(11)
        if not any(way.intersects(t) for t in part.taken):
            marks.finger(rng, part, tip, (side * 3, tip[1] - 10))


def seen(rng, part, dyes, photo, camera):
    """The linear picture (H, W, 3), 1 is full."""
    x, y = camera.seen(part)
    towards = np.array([*rng.normal(0, 0.5, 2), 1.0])
    lit, gx, gy = shades(part, towards)
    at = part.cells(np.stack([x, y], -1)).astype(np.float32)
    at = (finer(at[..., 0]), finer(at[..., 1]))
    light = cv2.remap(part.paint, *at, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    dense = np.zeros(light.shape[:2], np.float32)
    for dye in dyes:
        _add(dense, dye, x, y, part, camera)
    red = np.array(REDS[rng.integers(len(REDS))], np.float32)
    light *= 1 - dense[..., None] * (1 - red)
    light *= cv2.remap(lit, *at, cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)[..., None]
    if photo.glare:
        light += _glare(rng, part, (gx, gy), (x, y), at) * photo.glare
    light *= finer(lamps(rng, x, y, photo))
    middle = light[light.shape[0] // 5 : light.shape[0] // 2, ::4]
    return light * (photo.white / np.percentile(middle[::4].max(axis=-1), 96))


def _glare(rng, part, slopes, seen_at, at):
    """What bare metal mirrors of a lamp, (H, W, 1): where slope and place suit each other."""
    x, y = seen_at
    hx, hy = (finer((z - rng.uniform(-60, 60)) / 350) for z in (x, y - 20))
    gx, gy = (cv2.remap(g, *at, cv2.INTER_LINEAR) for g in slopes)
    bare = 1 - cv2.remap(part.cover, *at, cv2.INTER_LINEAR)
    shine = np.exp(-((gx - hx) ** 2 + (gy - hy) ** 2) / 0.02)
    return ((0.15 + bare) * shine)[..., None]


def _add(dense, dye, x, y, part, camera):
    """Put one indication's dye into the picture's, at `OVER` points a pixel along each axis."""
    low, high = dye.bounds()
    box = np.array([low, (high[0], low[1]), high, (low[0], high[1])])
    px = (
        np.vstack([camera.project(np.c_[box, np.full(4, h)]) for h in (0, part.crown)]) / COARSE
    )
    c0, r0 = np.maximum(np.floor(px.min(axis=0)).astype(int) - 2, 0)
    c1, r1 = np.minimum(np.ceil(px.max(axis=0)).astype(int) + 3, (x.shape[1], x.shape[0]))
    if c1 <= c0 or r1 <= r0:
        return
    here = (slice(r0, r1), slice(c0, c1))
    field = dye.field(*(finer(z[here], COARSE * OVER) for z in (x, y)))
    small = cv2.resize(field, None, fx=1 / OVER, fy=1 / OVER, interpolation=cv2.INTER_AREA)
    view = dense[r0 * COARSE : r1 * COARSE, c0 * COARSE : c1 * COARSE]
    np.maximum(view, small, out=view)


def truth_of(dyes, part, camera):
    """What is true of the indications, as the truth sets tell it."""
    told = []
    for n, dye in enumerate(dyes, 1):
        outline = true_outline(dye)
        ring = np.array(outline.exterior.coords)[:-1]
        col, row = np.round(part.cells(ring)).astype(int).T
        px = camera.project(np.c_[ring, part.height[row, col]])
        faded = sizes(true_outline(dye, 0.1), dye)["length_mm"]
        told.append(
            {"id": n, "kind": dye.kind}
            | {k: round(v, 4) for k, v in sizes(outline, dye).items()}
            | {"faded_mm": round(faded, 4), "strength": round(dye.strength, 3)}
            | {"soft_mm": round(dye.soft_mm, 3), "outline_px": np.round(px, 2).tolist()}
        )
    return told


def scene(level, seed, view=None):
    """Encoded JPEG and truth of one photo; ``view`` gives its size, px, and mm a pixel."""
    rng = np.random.default_rng([seed, LEVELS.index(level), 20417])
    photo = plan(rng, level)
    photo.size_px, photo.mm_per_px = view or (photo.size_px, photo.mm_per_px)
    part, dyes, area, corners, ends = surface(rng, level, photo)
    corner = np.array(area.exterior.coords)[:4]
    camera = pose(rng, photo, np.vstack([corner, corners, ends]))
    picture = developed(exposed(rng, seen(rng, part, dyes, photo, camera), photo), photo)
    half = cv2.IMWRITE_JPEG_SAMPLING_FACTOR_420
    sampling = half if photo.halved_colour else cv2.IMWRITE_JPEG_SAMPLING_FACTOR_444
    how = [cv2.IMWRITE_JPEG_QUALITY, photo.quality, cv2.IMWRITE_JPEG_SAMPLING_FACTOR, sampling]
    done, jpeg = cv2.imencode(".jpg", picture, how)
    if not done:
        raise RuntimeError(f"{level} {seed}: the picture could not be encoded")

    def picked(points, deviation=PICK_PX):
        flat = camera.project(np.c_[points, np.zeros(len(points))])
        return np.round(flat + rng.normal(0, deviation, flat.shape), 2).tolist()

    truth = {
        "level": level,
        "seed": seed,
        "width": photo.size_px[0],
        "height": photo.size_px[1],
        "line": {"points": picked(ends), "mm": float(np.hypot(*(ends[1] - ends[0])))},
        "rectangle": {"points": picked(corners), "mm": list(marks.CARD_MM)},
        "area": picked(corner, 0.0),
        "tilt_deg": photo.tilt_deg,
        "working_distance_mm": camera.distance,
        "crown_mm": part.crown,
        "k1": camera.k1,
        "focal_px": camera.focal,
        "part": part.kind,
        "taken": {k: v for k, v in vars(photo).items() if k not in {"size_px", "cast"}},
        "indications": truth_of(dyes, part, camera),
    }
    return jpeg.tobytes(), truth


def main():
    ap = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    ap.add_argument("folder", type=Path)
    ap.add_argument(
        "--level",
        choices=LEVELS,
        action="append",
        help="may be told again; all of them without",
    )
    ap.add_argument("--photos", type=int, default=1)
    ap.add_argument("--seed", type=int, default=1)
    told = ap.parse_args()
    told.folder.mkdir(parents=True, exist_ok=True)
    for level in told.level or LEVELS:
        for seed in range(told.seed, told.seed + told.photos):
            jpeg, truth = scene(level, seed)
            name = told.folder / f"{level}-{seed:04d}"
            name.with_suffix(".jpg").write_bytes(jpeg)
            truth = {"photo": f"{name.name}.jpg", **truth}
            name.with_suffix(".json").write_text(json.dumps(truth), encoding="utf-8")
            print(name.name, len(truth["indications"]), "indications", flush=True)


if __name__ == "__main__":
    main()
