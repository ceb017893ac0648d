"""The demo photos hold what is said of them: checked with OpenCV, SciPy, Shapely, scikit-image.

Nothing of ptmark measures here, so the photos can stand as an outside check of ptmark.
"""

import ast
import json
import subprocess
import sys
from pathlib import Path

import cv2
import numpy as np
import pytest
import shapely
from PIL import Image
from scipy.spatial import ConvexHull
from scipy.spatial.distance import pdist
from skimage import measure

FOLDER = Path(__file__).resolve().parents[2] / "sample_images"
NAMES = ("good", "rejectable", "undecided", "hard")
pytestmark = pytest.mark.truth


@pytest.fixture(scope="module", params=NAMES)
def truth(request):
    return json.loads((FOLDER / f"{request.param}.json").read_text(encoding="utf-8"))


def lens(truth):
    """OpenCV's matrix and distortion vector (k1, k2, p1, p2, k3) of the demo camera."""
    focal = truth["camera"]["focal_px"]
    matrix = np.array([[focal, 0, 2015.5], [0, focal, 1511.5], [0, 0, 1.0]])
    return matrix, np.array([truth["camera"]["k1"], 0, 0, 0, 0])


def straight(truth, points_px):
    """Image points without the lens's bend, as ray directions (x, y, 1)."""
    matrix, bend = lens(truth)
    seen = cv2.undistortPoints(np.array(points_px, float).reshape(-1, 1, 2), matrix, bend)
    return np.column_stack([seen.reshape(-1, 2), np.ones(len(seen))])


def to_plate(truth, points_px, *, on_weld):
    """Walk each ray from the camera to the plate, or to the weld on it; mm."""
    camera, crown = truth["camera"], truth["crown"]
    place = np.array(camera["place_mm"])
    ray = straight(truth, points_px) @ np.array(camera["axes"])
    height = np.zeros(len(ray))
    for _ in range(8):
        met = place + ((-height - place[2]) / ray[:, 2])[:, np.newaxis] * ray
        share = np.clip(np.abs(met[:, 1]) / crown["half_width_mm"], 0, 1)
        height = on_weld * crown["height_mm"] * np.cos(np.pi / 2 * share) ** 2
    return met[:, :2]


def longest(points):
    return pdist(points[ConvexHull(points).vertices]).max()


def test_stated_lengths_come_back_through_the_camera(truth):
    for one in truth["indications"]:
        outline = to_plate(truth, one["outline_px"], on_weld=True)
        assert longest(outline) == pytest.approx(one["length_mm"], abs=0.003)
        assert np.abs(outline - one["outline_mm"]).max() < 0.002


def test_stated_widths_are_those_of_the_largest_inscribed_circle(truth):
    for one in truth["indications"]:
        outline = shapely.Polygon(one["outline_mm"])
        assert outline.is_valid
        radius = shapely.maximum_inscribed_circle(outline, tolerance=1e-4).length  # GEOS
        assert one["width_mm"] == pytest.approx(2 * radius, abs=0.02)
        assert one["path_mm"] >= one["length_mm"] - 1e-6


def test_card_and_rule_keep_their_size_on_the_plate(truth):
    card = to_plate(truth, truth["card"]["corners_px"], on_weld=False)
    sides = np.linalg.norm(np.roll(card, -1, axis=0) - card, axis=1)
    # ISO/IEC 7810:2019, ID-1: 85.60 mm by 53.98 mm.
    assert sides == pytest.approx([85.60, 53.98, 85.60, 53.98], abs=0.002)
    diagonals = np.linalg.norm(card[2:] - card[:2], axis=1)
    assert diagonals[0] == pytest.approx(diagonals[1], abs=0.002)  # right angles
    line = to_plate(truth, truth["line"]["ends_px"], on_weld=False)
    assert np.linalg.norm(line[1] - line[0]) == pytest.approx(150.0, abs=0.002)


def test_the_markers_lie_where_the_card_says(truth):
    picture = cv2.imread(str(FOLDER / truth["photo"]), cv2.IMREAD_GRAYSCALE)
    detector = cv2.aruco.ArucoDetector(cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50))
    corners, ids, _ = detector.detectMarkers(picture)
    assert sorted(ids.ravel().tolist()) == [0, 1, 2, 3]
    found = {int(i): c.reshape(4, 2) for i, c in zip(ids.ravel(), corners, strict=True)}
    outer = np.array([found[n][n] for n in range(4)])  # ids and corners both run clockwise
    matrix, bend = lens(truth)
    flat = straight(truth, truth["card"]["corners_px"])[:, :2].astype(np.float32)
    card = np.array([(0, 0), (85.6, 0), (85.6, 53.98), (0, 53.98)], np.float32)
    to_rays = cv2.getPerspectiveTransform(card, flat)
    inset = np.array([(4, 4), (81.6, 4), (81.6, 49.98), (4, 49.98)], float).reshape(-1, 1, 2)
    rays = cv2.perspectiveTransform(inset, to_rays).reshape(-1, 2)
    rays = np.column_stack([rays, np.ones(4)])
    wanted, _ = cv2.projectPoints(rays, np.zeros(3), np.zeros(3), matrix, bend)
    # The detector's own corners, not refined, are good to about two pixels.
    assert np.abs(outer - wanted.reshape(-1, 2)).max() < 2.5


def test_the_dye_ends_at_half_contrast_where_the_outline_runs(truth):
    coded = np.asarray(Image.open(FOLDER / truth["photo"]))[..., 1] / 255
    # IEC 61966-2-1, decoding.
    light = np.where(coded <= 0.04045, coded / 12.92, ((coded + 0.055) / 1.055) ** 2.4)
    for one in truth["indications"]:
        outline = np.array(one["outline_px"])
        if one["kind"] == "crack" or one["length_mm"] < 1.5:
            continue  # blur lowers the plateau of what is thin
        low = np.floor(outline.min(axis=0)).astype(int) - 20
        high = np.ceil(outline.max(axis=0)).astype(int) + 20
        crop = light[low[1] : high[1], low[0] : high[0]]
        shape = shapely.Polygon(outline - low)
        y, x = np.mgrid[: crop.shape[0], : crop.shape[1]]
        core = shapely.contains_xy(shape.buffer(-6), x, y)
        around = ~shapely.contains_xy(shape.buffer(8), x, y)
        half = (np.median(crop[core]) + np.median(crop[around])) / 2
        rings = [c[:, ::-1] for c in measure.find_contours(crop, half) if len(c) > 20]
        seen = max((shapely.Polygon(c) for c in rings), key=lambda p: p.area)
        shift = (seen.area - shape.area) / shape.length
        assert abs(shift) < 0.5  # px, mean move along the normal
        assert shapely.distance(seen.centroid, shape.centroid) < 0.5


def test_every_picture_opens_whole_and_says_that_it_is_rendered(truth):
    path = FOLDER / truth["photo"]
    assert path.stat().st_size <= 1.5e6
    with Image.open(path) as picture:
        picture.load()
        assert (picture.format, picture.size) == ("JPEG", (4032, 3024))
        tags = picture.getexif()
    assert "rendered" in tags[0x010E]
    assert "invented" in tags[0x010E]
    assert tags[0x010F] == "ptmark demo"
    # EXIF 2.32, FocalLengthIn35mmFilm, against the focal length that made the picture:
    # the diagonal of 36 mm x 24 mm film is 43.27 mm, the value is a whole number.
    film = truth["camera"]["focal_px"] / np.hypot(4032, 3024) * np.hypot(36, 24)
    assert tags.get_ifd(0x8769)[0xA405] == round(film)
    assert "rendered" in truth["says"]


def test_the_photos_stay_small_together():
    assert sum(p.stat().st_size for p in FOLDER.glob("*.jpg")) <= 6e6


def test_the_script_is_independent_of_what_it_checks():
    scripts = sorted(FOLDER.glob("*.py"))
    assert [p.name for p in scripts if p.name == "render.py"]
    for path in scripts:
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = [a.name for a in node.names] if isinstance(node, ast.Import) else []
            names += [node.module or ""] if isinstance(node, ast.ImportFrom) else []
            assert not [n for n in names if n.split(".")[0] == "ptmark"], path.name


@pytest.mark.slow
def test_the_script_makes_what_is_shipped(tmp_path):
    program = (
        "import json, sys\n"
        "sys.path.insert(0, sys.argv[1])\n"
        "import render as made\n"
        "from scenes import camera\n"
        "from PIL import Image\n"
        "good, *_, hard = made.SCENES\n"
        "built = {s.name: made.build(s) for s in (good, hard)}\n"
        "facts = {s.name: made.truth(s, built[s.name][0], camera(s)) for s in (good, hard)}\n"
        "made.build = lambda scene: built[scene.name]  # as it was: facts draw no number\n"
        "pixels, _ = made.render(hard, shrink=12)\n"
        "Image.fromarray(pixels).save('small.png')\n"
        "print(json.dumps(facts))\n"
    )
    command = [sys.executable, "-c", program, str(FOLDER)]
    done = subprocess.run(command, cwd=tmp_path, check=True, capture_output=True, text=True)
    made = json.loads(done.stdout)
    for name in ("good", "hard"):
        shipped = json.loads((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
        assert made[name].keys() == shipped.keys()
        for one, kept in zip(made[name]["indications"], shipped["indications"], strict=True):
            assert one["length_mm"] == pytest.approx(kept["length_mm"], abs=1e-3)
            assert np.allclose(one["outline_px"], kept["outline_px"], atol=0.01)
        assert made[name]["card"] == shipped["card"]
    small = np.asarray(Image.open(tmp_path / "small.png"), dtype=float)
    shipped = cv2.imread(str(FOLDER / "hard.jpg"), cv2.IMREAD_COLOR_RGB)
    reduced = cv2.resize(shipped, small.shape[1::-1], interpolation=cv2.INTER_AREA)
    assert np.abs(small - reduced).mean() < 2.0  # grey levels of 255
