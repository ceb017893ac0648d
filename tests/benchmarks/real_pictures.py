"""What is called in real pictures that hold no dye, and in printed red on white.

    python tests/benchmarks/real_pictures.py [FOLDER ...]

Goes through the colour pictures that scikit-image and OpenCV's documentation carry (Debian's
opencv-doc), or through the folders given, and prints for each how many outlines are called and
how many blobs are left out. None of them shows dye, so each call is one that a person would
have to drop; what is red on white in them (a logo, print) is called by right.
"""

import argparse
from pathlib import Path

import numpy as np
import skimage

from ptmark.dye import suggest
from ptmark.errors import PhotoError
from ptmark.photo import open_photo

FOLDERS = (Path(skimage.__file__).parent / "data", Path("/usr/share/doc/opencv-doc/examples"))
ENDINGS = {".jpg", ".jpeg", ".png", ".tif"}
GREY = 8  # codes between the channels


def colour_pictures(folders):
    """Photos of the folders that have colour; what cannot be opened is passed over."""
    for folder in folders:
        for path in sorted(folder.rglob("*")):
            if path.suffix.lower() not in ENDINGS:
                continue
            try:
                photo = open_photo(path)
            except PhotoError:
                continue
            if np.mean(np.ptp(photo.rgb[::4, ::4], axis=2) < GREY) < 0.98:
                yield photo


def main() -> None:
    """Print the table."""
    ask = argparse.ArgumentParser(description=__doc__.split("\n", maxsplit=1)[0])
    ask.add_argument("folders", nargs="*", type=Path)
    folders = ask.parse_args().folders or FOLDERS
    calls = []
    print(f"{'picture':<36}{'size':>12}{'called':>8}{'left out':>10}")
    for photo in colour_pictures(folders):
        seen, info = suggest(photo), photo.info
        calls.append(len(seen.found))
        size = f"{info.width}x{info.height}"
        print(f"{info.path.name:<36}{size:>12}{calls[-1]:>8}{len(seen.left_out):>10}")
    print(f"{len(calls)} pictures, {sum(one == 0 for one in calls)} of them without a call")


if __name__ == "__main__":
    main()
