"""Linear crops, reduced levels, photos from arrays, and what opening costs."""

import hashlib
import subprocess
import sys
import threading
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from skimage.measure import block_reduce

import ptmark.photo
from ptmark.errors import PhotoError
from ptmark.photo import Photo, open_photo, srgb_to_linear

ROOT = Path(ptmark.photo.__file__).parents[2]


@pytest.fixture
def photo(scene):
    return Photo.from_array(scene, name="scene", focal_px=900.0)


def test_photo_from_an_array(scene, photo):
    assert np.array_equal(photo.rgb, scene)
    assert scene.flags.writeable  # copied, so the caller's own stays as it was
    assert not np.shares_memory(photo.rgb, scene)
    assert photo.info.sha256 == hashlib.sha256(scene.tobytes()).hexdigest()
    assert (photo.info.width, photo.info.height, photo.info.focal_px) == (80, 48, 900.0)
    with pytest.raises(ValueError, match="read-only"):
        photo.rgb[0, 0] = 0


@pytest.mark.parametrize(
    "pixels",
    [
        np.zeros((4, 4), np.uint8),
        np.zeros((4, 4, 4), np.uint8),
        np.zeros((4, 4, 3), float),
        np.zeros((0, 4, 3), np.uint8),
    ],
)
def test_array_that_is_no_picture(pixels):
    with pytest.raises(PhotoError, match=r"made: pixels must have shape \(H, W, 3\)"):
        Photo.from_array(pixels, name="made")


@pytest.mark.parametrize(
    ("box", "rows", "columns"),
    [
        ((0, 0, 80, 48), slice(0, 48), slice(0, 80)),
        ((3, 5, 10, 9), slice(5, 9), slice(3, 10)),
        ((-4, -6, 5, 7), slice(0, 7), slice(0, 5)),
        ((70, 40, 900, 900), slice(40, 48), slice(70, 80)),
    ],
)
def test_linear_light_of_a_box(scene, photo, box, rows, columns):
    light = photo.linear(box)
    assert light.dtype == np.float32
    assert np.array_equal(light, srgb_to_linear(scene[rows, columns]))


@pytest.mark.parametrize("box", [(5, 5, 5, 9), (80, 0, 90, 9), (-9, -9, 0, 0), (9, 9, 3, 3)])
def test_box_without_a_pixel(photo, box):
    with pytest.raises(
        PhotoError, match=r"scene: the box .* holds no pixel of the 80 x 48 photo"
    ):
        photo.linear(box)


@pytest.mark.parametrize("factor", [2, 4, 8])
@pytest.mark.parametrize(("height", "width"), [(48, 80), (16, 8)])
def test_levels_are_block_means(factor, height, width):
    pixels = np.random.default_rng(41).integers(0, 256, (height, width, 3), dtype=np.uint8)
    level = Photo.from_array(pixels).reduced(factor)
    expected = block_reduce(pixels, (factor, factor, 1), np.mean)
    assert level.shape == expected.shape
    assert np.abs(level - expected).max() <= 0.5 + 1e-6  # the nearest code
    assert not level.flags.writeable


@pytest.mark.parametrize("factor", [2, 4, 8])
@pytest.mark.parametrize(("height", "width"), [(49, 81), (50, 87), (7, 7), (1, 1), (3, 40)])
def test_partial_blocks_are_the_mean_of_what_there_is(factor, height, width):
    pixels = np.random.default_rng(42).integers(0, 256, (height, width, 3), dtype=np.uint8)
    level = Photo.from_array(pixels).reduced(factor)
    rows, columns = -(-height // factor), -(-width // factor)
    assert level.shape == (rows, columns, 3)
    for y in range(rows):
        for x in range(columns):
            block = pixels[y * factor : (y + 1) * factor, x * factor : (x + 1) * factor]
            assert np.abs(level[y, x] - block.mean(axis=(0, 1))).max() <= 0.5 + 1e-6


def test_levels_are_kept(photo):
    assert photo.reduced(4) is photo.reduced(4)
    assert photo.reduced(1) is photo.rgb


@pytest.mark.parametrize("factor", [0, 3, 16, -2])
def test_other_levels_are_refused(photo, factor):
    with pytest.raises(PhotoError, match=f"reduced by 1, 2, 4 or 8, got {factor}"):
        photo.reduced(factor)


def test_levels_from_many_threads_are_one():
    photo = Photo.from_array(np.zeros((1200, 1600, 3), np.uint8))
    found = []
    threads = [
        threading.Thread(target=lambda: found.append(photo.reduced(2))) for _ in range(6)
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(found) == 6
    assert len({id(level) for level in found}) == 1


def run(code, *args):
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", code, *map(str, args)],
        capture_output=True,
        text=True,
        cwd=ROOT,
        check=True,
    )
    assert not done.stderr
    return done.stdout.split()


def test_import_stays_light():
    heavy = run(
        "import sys, ptmark.photo;"
        "names = {'scipy', 'shapely', 'PySide6', 'PIL', 'pillow_heif', 'cv2'};"
        "print(*(names & set(sys.modules)))"
    )
    assert heavy == []


@pytest.mark.slow
@pytest.mark.skipif(
    not Path("/proc/self/status").exists(), reason="needs Linux to count memory"
)
@pytest.mark.parametrize(
    ("name", "times"), [("a.jpg", 1.0), ("a.png", 1.0), ("turned.jpg", 2.0)]
)
def test_memory_of_48_megapixels(keep, name, times):
    image = Image.linear_gradient("L").resize((8000, 6000)).convert("RGB")
    exif = Image.Exif()
    exif[0x0112] = 6 if name == "turned.jpg" else 1
    path = keep(image, name, exif=exif, **({"compress_level": 1} if name == "a.png" else {}))
    del image
    peak = (
        "import re, sys, cv2, pathlib, ptmark.photo as p;"
        "status = pathlib.Path('/proc/self/status');"
        "peak = lambda: int(re.search(r'VmHWM:\\s*(\\d+)', status.read_text())[1]) * 1024;"
        "before = peak(); photo = p.open_photo(pathlib.Path(sys.argv[1]));"
        "print(peak() - before, photo.rgb.nbytes, photo.info.bytes)"
    )
    used, decoded, stored = map(int, run(peak, path))
    assert decoded == 144_000_000
    assert used < times * decoded + stored + 40e6


@pytest.mark.slow
def test_no_guard_of_a_library_refuses_or_warns(keep):
    image = Image.new("L", (14000, 13000), 200)  # 182 megapixels, beyond Pillow's own limit
    path = keep(image, "a.png", compress_level=1)
    shape = run(
        "import pathlib, sys, ptmark.photo as p;"
        "print(*p.open_photo(pathlib.Path(sys.argv[1])).rgb.shape)",
        path,
    )
    assert shape == ["13000", "14000", "3"]


def test_the_original_is_never_written(keep, jpeg_bytes):
    path = keep(jpeg_bytes, "a.jpg")
    path.chmod(0o444)
    before = path.stat()
    open_photo(path).reduced(2)
    assert path.read_bytes() == jpeg_bytes
    assert path.stat().st_mtime_ns == before.st_mtime_ns
    assert [p.name for p in path.parent.iterdir()] == ["a.jpg"]
