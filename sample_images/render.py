"""Render the demo photos and write what is truly in them.

    python sample_images/render.py [NAME ...] [--into FOLDER]

Writes NAME.jpg and NAME.json. Nothing of ptmark is imported: the sizes come from the shapes
that were drawn, so the photos can check the measuring code from outside it.
"""

import argparse
import json
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
from optics import FOCAL_35MM, Camera, develop
from PIL import Image
from plate import CROWN_HALF_MM, CROWN_MM, Picture, Plate, crown
from prints import CARD_MM, RULE_ZERO_MM, card, label, lettering, rule
from scenes import PART, SCENES, SHOP, Scene, camera, shapes

SAYS = "rendered demo, not a photograph: part, shop and indications are invented"
ROWS = 252  # rows in work at a time
SHIFTS = ((-0.25, -0.25), (0.25, -0.25), (-0.25, 0.25), (0.25, 0.25))


def build(scene: Scene) -> tuple[Plate, np.random.Generator]:
    """Lay the scene: the same seed gives the same plate."""
    rng = np.random.default_rng(scene.seed)
    prints = (
        rule((-128, 47), rng.uniform(-1.5, 1.5), rng),
        card((39, 47), rng.uniform(-3, 3)),
        label((-118, 73), rng.uniform(-2, 2), ("rendered demo", PART, SHOP, "all invented")),
    )
    plate = Plate(
        shapes=shapes(scene, rng),
        prints=prints,
        rng=rng,
        haze=scene.haze,
        stains=scene.stains,
        mark=(lettering(scene.weld, 9), (-112.0, -34.0)),
    )
    return plate, rng


def meet(eye: Camera, ray: Picture) -> tuple[Picture, Picture]:
    """Where rays meet the plate or the weld on it, mm."""
    x = y = np.zeros(ray.shape[:2], dtype=np.float32)
    height = np.zeros_like(y)
    for _ in range(4):  # the weld is low: the meeting place settles at once
        reach = (-height - eye.place[2]) / ray[..., 2]
        x = (eye.place[0] + reach * ray[..., 0]).astype(np.float32)
        y = (eye.place[1] + reach * ray[..., 1]).astype(np.float32)
        height = crown(y).astype(np.float32)
    return x, y


def expose(scene: Scene, plate: Plate, eye: Camera) -> Picture:
    """Linear light on the sensor: four rays a pixel, each met with the plate or the weld."""
    wide, high = eye.size
    light = np.zeros((high, wide, 3), dtype=np.float32)
    for first in range(0, high, ROWS):
        rows = slice(first, min(first + ROWS, high))
        for shift in SHIFTS:
            ray = eye.rays(rows, shift)
            x, y = meet(eye, ray)
            fall = 1 - scene.light[0] * x / 100 - scene.light[1] * y / 100
            off_axis = np.einsum("hwc,c->hw", ray, eye.axes[2]) / np.linalg.norm(ray, axis=-1)
            level = fall * (0.25 + 0.75 * off_axis**4) * 0.92
            light[rows] += plate.reflect(x, y) * level[..., np.newaxis] / len(SHIFTS)
    return light * np.array(scene.cast, dtype=np.float32)


def truth(scene: Scene, plate: Plate, eye: Camera) -> dict[str, Any]:
    """What is in the photo: sizes in mm on the plate, places in px."""

    def px(points: npt.ArrayLike) -> list[list[float]]:
        flat = np.asarray(points, dtype=np.float64)
        raised = np.column_stack([flat, -crown(flat[:, 1])])
        return [[round(float(v), 3) for v in p] for p in eye.to_px(raised)]

    ruler, sheet = plate.prints[0], plate.prints[1]
    wide, high = CARD_MM
    return {
        "photo": f"{scene.name}.jpg",
        "says": SAYS,
        "part": PART,
        "weld": scene.weld,
        "expects": scene.expects,
        "camera": {
            "focal_px": eye.focal,
            "k1": eye.k1,
            "tilt_deg": eye.tilt,
            "distance_mm": eye.distance,
            "place_mm": eye.place.round(6).tolist(),
            "axes": eye.axes.round(9).tolist(),
        },
        "crown": {
            "half_width_mm": CROWN_HALF_MM,
            "height_mm": CROWN_MM,
            "form": "raised cosine",
        },
        "card": {
            "corners_px": px(sheet.to_plate([(0, 0), (wide, 0), (wide, high), (0, high)])),
            "width_mm": wide,
            "height_mm": high,
        },
        "line": {
            "ends_px": px(ruler.to_plate([(RULE_ZERO_MM, 0.0), (RULE_ZERO_MM + 150, 0.0)])),
            "length_mm": 150.0,
        },
        "area_px": px(scene.area),
        "indications": [
            {
                "kind": one.kind,
                "length_mm": round(one.length, 4),
                "path_mm": round(one.path, 4),
                "width_mm": round(one.width, 4),
                "strength": one.strength,
                "outline_mm": one.outline.round(4).tolist(),
                "outline_px": px(one.outline),
            }
            for one in plate.shapes
        ],
    }


def render(scene: Scene, shrink: int = 1) -> tuple[npt.NDArray[np.uint8], dict[str, Any]]:
    """Pixels of shape (H, W, 3), sRGB-coded, and the truth of one scene."""
    eye = camera(scene, shrink)
    plate, rng = build(scene)
    blur = scene.blur_px if shrink == 1 else 0.5
    light = expose(scene, plate, eye)
    return develop(light, rng, blur_px=blur, noise=scene.noise), truth(scene, plate, eye)


def exif() -> Image.Exif:
    """Camera data as a phone would write them, and that this is no photograph."""
    tags = Image.Exif()
    tags[0x010E] = SAYS
    tags[0x010F], tags[0x0110] = "ptmark demo", "rendered"
    tags[0x0112] = 1
    tags[0x0132] = "2026:01:15 10:00:00"
    tags.get_ifd(0x8769).update({0x9003: "2026:01:15 10:00:00", 0xA405: FOCAL_35MM})
    return tags


def main() -> None:
    """Render what is asked for, or all."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("names", nargs="*", help="scenes to render; all where none is named")
    ask.add_argument("--into", type=Path, default=Path(__file__).resolve().parent)
    asked = ask.parse_args()
    for scene in SCENES:
        if asked.names and scene.name not in asked.names:
            continue
        pixels, facts = render(scene)
        target = asked.into / f"{scene.name}.jpg"
        Image.fromarray(pixels).save(target, quality=90, subsampling=2, exif=exif())
        target.with_suffix(".json").write_text(json.dumps(facts) + "\n", encoding="utf-8")
        print(f"{target}: {len(facts['indications'])} indications")


if __name__ == "__main__":
    main()
