"""What phones, messengers and editors do to a photo, and what becomes of its lengths.

    python tests/benchmarks/altered.py TRUTH [--only WORD,WORD] [--do NAME,NAME] [--card]
                                       [--write FOLDER]

TRUTH is a folder of NAME.jpg beside NAME.json, as `verdict_truth.py` takes it. Each photo is
altered as named (all of `ALTERATIONS` by default), its truth along with it, and measured the
whole way by its rectangle, or by its card. A line for each alteration: found of 1.5 mm and
longer, called falsely, lengths within U, those too short by more, the most by which one is,
both in U, median U and error, how many photos the card holds open. ``--write`` keeps photos and
truth in a folder for each, for ``verdict_truth.py --truth FOLDER/NAME``.
"""

import argparse
import json
import tempfile
from functools import partial
from pathlib import Path

import cv2
import numpy as np
from stress import COUNTED_MM, match
from verdict_truth import of_folder, rectangle

from ptmark.dye.corners import is_filtered
from ptmark.inspection import Inspection
from ptmark.scale import CardReference

WAYS = {"area": cv2.INTER_AREA, "linear": cv2.INTER_LINEAR, "lanczos": cv2.INTER_LANCZOS4}


def smaller(bgr, share, way="area"):
    """So many times as large; by lines and Lanczos the edges stay as they fall, unfiltered."""
    return cv2.resize(bgr, None, fx=share, fy=share, interpolation=WAYS[way])


def sent(bgr, longest):
    """No longer than so many px, as a messenger sends it."""
    return smaller(bgr, min(1.0, longest / max(bgr.shape[:2])))


def sharpened(bgr, amount, sigma):
    """An unsharp mask."""
    return cv2.addWeighted(bgr, 1 + amount, cv2.GaussianBlur(bgr, (0, 0), sigma), -amount, 0)


def bilateral(bgr, amount=0.0, sigma=1.0):
    """A filter that keeps edges, then an unsharp mask."""
    calm = cv2.bilateralFilter(bgr, 9, 25, 5)
    return sharpened(calm, amount, sigma) if amount else calm


def skin(bgr, strength=1.0):
    """Skin smoothed: two filters that keep edges, laid over what was."""
    calm = cv2.bilateralFilter(cv2.bilateralFilter(bgr, 9, 40, 7), 9, 40, 7)
    return cv2.addWeighted(calm, strength, bgr, 1 - strength, 0)


def zoomed(bgr, times):
    """A digital zoom: made smaller by half of it as the sensor's pixels are, then enlarged."""
    few = smaller(bgr, 1 / times)
    return cv2.resize(few, bgr.shape[1::-1], interpolation=cv2.INTER_CUBIC)


def denoised(bgr):
    """Non-local means, as programs clear grain."""
    return cv2.fastNlMeansDenoisingColored(bgr, None, 4, 4, 5, 15)


# What is done, and the quality of the JPEG it is saved at.
ALTERATIONS = {
    "nothing": (lambda bgr: bgr, 95),
    "1600 px": (partial(sent, longest=1600), 75),
    "1280 px": (partial(sent, longest=1280), 70),
    **{
        f"{share:g} {way}": (partial(smaller, share=share, way=way), quality)
        for share, quality in ((0.5, 92), (0.37, 85), (0.3, 80), (0.25, 75))
        for way in WAYS
    },
    "median 3": (lambda bgr: cv2.medianBlur(bgr, 3), 95),
    "median 5": (lambda bgr: cv2.medianBlur(bgr, 5), 95),
    "bilateral": (bilateral, 95),
    "bilateral mask 1": (partial(bilateral, amount=1.0), 95),
    "bilateral mask 2.5": (partial(bilateral, amount=2.5, sigma=3.0), 95),
    "skin": (skin, 95),
    "skin by half": (partial(skin, strength=0.5), 95),
    "non-local means": (denoised, 95),
    "mask 2": (partial(sharpened, amount=2.0, sigma=2.0), 95),
    "zoom 2": (partial(zoomed, times=2.0), 95),
    "zoom 4": (partial(zoomed, times=4.0), 95),
}


def write(path, folder, name):
    """A photo of the truth, altered, with its truth; the file of that truth."""
    alter, quality = ALTERATIONS[name]
    bgr = cv2.imread(str(path.with_suffix(".jpg")))
    made = np.ascontiguousarray(alter(bgr))
    across = np.array(made.shape[1::-1]) / np.array(bgr.shape[1::-1])

    def along(points):
        return (((np.array(points) + 0.5) * across) - 0.5).tolist()

    told = json.loads(path.read_text())
    told["width"], told["height"] = made.shape[1], made.shape[0]
    for key in ("line", "rectangle"):
        told[key]["points"] = along(told[key]["points"])
    told["area"] = along(told["area"])
    for one in told["indications"]:
        one["outline_px"] = along(one["outline_px"])
    folder.mkdir(parents=True, exist_ok=True)
    saved = folder / path.name
    cv2.imwrite(str(saved.with_suffix(".jpg")), made, [cv2.IMWRITE_JPEG_QUALITY, quality])
    saved.write_text(json.dumps(told))
    return saved


def lengths(shot, *, by_card):
    """(true, measured or None) of each indication, how many calls match none, whether held."""
    own = Inspection()
    own.set_photo(shot.photo)
    own.set_reference(CardReference() if by_card else rectangle(shot, 1.0))
    own.change("mark the area", area_px=shot.area, relief_mm=None)
    own.set_suggestions(own.look())
    every = own.state.marked
    index, wrong = match(shot.truths, every)
    made = [own.measurement(every[n]) if n >= 0 else None for n in index]
    held = by_card and is_filtered(shot.photo, own.surface)
    return list(zip(shot.truths, made, strict=True)), len(wrong), held


def main():
    """Print a line for each alteration."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("truth", type=Path)
    ask.add_argument("--only", default="", help="photos with one of these words, by commas")
    ask.add_argument("--do", default=",".join(ALTERATIONS), help="alterations, by commas")
    ask.add_argument("--card", action="store_true", help="by the card, not the rectangle")
    ask.add_argument("--write", type=Path, help="keep the altered photos here")
    asked = ask.parse_args()
    folder = asked.write or Path(tempfile.mkdtemp())
    print(f"{'':<20}  found  false  within  short   most      U   error  held")
    for name in asked.do.split(","):
        rows, false, held, photos = [], 0, 0, 0
        for path in sorted(asked.truth.glob("*.json")):
            if any(word in path.stem for word in asked.only.split(",")):
                write(path, folder / name.replace(" ", "-"), name)
        for shot in of_folder(folder / name.replace(" ", "-"), [""]):
            each, wrong, is_held = lengths(shot, by_card=asked.card)
            rows, false = rows + each, false + wrong
            held, photos = held + is_held, photos + 1
        print(f"{name:<20}  {told(rows)}  {held} of {photos}; {false} false", flush=True)


def told(rows):
    """The figures of a line."""
    counted = [made is not None for one, made in rows if one.length_mm >= COUNTED_MM]
    pairs = [(made.length, one.length_mm) for one, made in rows if made is not None]
    off = np.array([size.value - true for size, true in pairs])
    most = np.array([size.expanded for size, _ in pairs])
    least = np.array([bool(made.least) for _, made in rows if made is not None])
    within, short = np.abs(off) <= most, (off < -most) & ~least
    return (
        f"{sum(counted)} of {len(counted)}  {within.mean():.3f}  {short.sum()}  "
        f"{(-off / most).max():.2f}  {np.median(most):.3f}  {np.median(off):+.3f}"
    )


if __name__ == "__main__":
    main()
