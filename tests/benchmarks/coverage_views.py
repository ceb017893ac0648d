"""The conditions of the coverage set: one thing changed at a time, three difficulties, all."""

from dataclasses import replace

import numpy as np
from coverage_scenes import View

USUAL = View()
TOLD = ", told"  # the same photos as without it
# How hard a photo is: from where to where each thing varies. Own choice, in the likeness of
# photos taken with care, as they are taken, and in a hurry at a bad place.
DIFFICULTIES = {
    "easy photos": {"distance_mm": (185, 200), "tilt_deg": (2, 6), "blur_px": (0.7, 1.0)}
    | {"noise": (0.002, 0.005), "quality": (90, 97), "gradient": (1.0, 1.3)}
    | {"crown_mm": (0, 0), "k1": (-0.002, 0.002), "strength": (0.7, 1.0), "soft": (0.05, 0.08)},
    "usual photos": {"distance_mm": (165, 225), "tilt_deg": (3, 18), "blur_px": (0.8, 1.5)}
    | {"noise": (0.004, 0.010), "quality": (80, 95), "gradient": (1.0, 2.0)}
    | {"crown_mm": (0, 2.0), "k1": (-0.01, 0.01), "strength": (0.5, 1.0), "soft": (0.05, 0.10)},
    "hard photos": {"distance_mm": (165, 300), "tilt_deg": (8, 32), "blur_px": (1.0, 2.2)}
    | {"noise": (0.008, 0.020), "quality": (60, 85), "gradient": (1.5, 3.0)}
    | {"crown_mm": (0, 2.2), "k1": (-0.03, 0.03), "strength": (0.3, 1.0), "soft": (0.06, 0.14)},
}
AT_RANDOM = (*DIFFICULTIES, "all at random")


def views():
    """Each condition: the usual photo with one thing changed, then everything at random."""
    yield USUAL
    for distance in (130, 300, 400):
        yield replace(USUAL, name=f"distance {distance} mm", distance_mm=float(distance))
    for tilt in (0, 25, 35):
        yield replace(USUAL, name=f"tilt {tilt} degrees", tilt_deg=float(tilt))
    for blur in (0.6, 2.0, 3.0):
        yield replace(USUAL, name=f"blur {blur:g} px", blur_px=blur)
    for noise in (0.015, 0.03):
        yield replace(USUAL, name=f"noise {100 * noise:g} %", noise=noise)
    for quality in (60, 75, 98):
        yield replace(USUAL, name=f"JPEG quality {quality}", quality=quality)
    yield from _of_light_and_form()
    yield from _of_camera()
    yield replace(USUAL, name="soft edges", soft_mm=(0.2, 0.4))
    yield replace(USUAL, name="pale", strength=(0.25, 0.45))
    yield replace(USUAL, name="no EXIF focal length", tells_focal=False)
    for name in AT_RANDOM:
        yield replace(USUAL, name=name)


def _of_light_and_form():
    yield replace(USUAL, name="warm light", cast=(1.0, 0.80, 0.55))
    yield replace(USUAL, name="cool light", cast=(0.80, 0.95, 1.0))
    yield replace(USUAL, name="gradient 3:1", gradient=3.0)
    for height in (0, 2, 3):
        yield replace(USUAL, name=f"crown {height} mm", crown_mm=float(height))
    for height in (0, 2, 3):
        told = f"crown {height} mm{TOLD}"
        yield replace(USUAL, name=told, crown_mm=float(height), tells_crown=True)


def _of_camera():
    for k1 in (-0.03, 0.03):
        yield replace(USUAL, name=f"k1 {k1:+g}", k1=k1)
    for megapixels, blur in ((3, 0.8), (24, 1.5), (48, 2.1)):
        yield replace(
            USUAL, name=f"{megapixels} megapixels", megapixels=megapixels, blur_px=blur
        )


def drawn(view, seed):
    """The view of one photo: where things are at random, they are drawn anew."""
    rng = np.random.default_rng(70_000 + seed)
    if view.name in DIFFICULTIES:
        drawn_from = {
            name: float(rng.uniform(*ends)) for name, ends in DIFFICULTIES[view.name].items()
        }
        soft, lowest = drawn_from.pop("soft"), drawn_from.pop("strength")
        whole = {"quality": round(drawn_from.pop("quality")), "strength": (lowest, 1.0)}
        return replace(view, soft_mm=(soft, 1.5 * soft), **whole, **drawn_from)
    if view.name != "all at random":
        return view
    soft = rng.uniform(0.04, 0.2)
    return replace(
        view,
        megapixels=float(rng.choice([8, 12, 16])),
        distance_mm=float(rng.uniform(130, 400)),
        tilt_deg=float(rng.uniform(0, 35)),
        blur_px=float(rng.uniform(0.6, 2.2)),
        noise=float(rng.uniform(0.003, 0.02)),
        quality=int(rng.integers(60, 99)),
        cast=tuple(rng.uniform((0.8, 0.8, 0.55), (1.0, 1.0, 1.1))),
        gradient=float(rng.uniform(1.0, 3.0)),
        crown_mm=float(rng.uniform(0, 2.5)),
        k1=float(rng.uniform(-0.02, 0.02)),
        soft_mm=(soft, 1.5 * soft),
        strength=(0.3, 1.0),
        tells_focal=bool(rng.random() < 0.7),
    )
