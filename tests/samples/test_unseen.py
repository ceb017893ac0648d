"""The unseen set's truth is true: closed forms, OpenCV's camera, and what a picture shows.

Nothing of ptmark is asked, so the set can stand as an outside check of ptmark.
"""

import ast
import sys
from pathlib import Path

import cv2
import numpy as np
import pytest
import shapely

BENCHMARKS = Path(__file__).resolve().parents[1] / "benchmarks"
SMALL = (660, 780), 0.167  # px, and mm a pixel: quick, and the card and the rule have room
pytestmark = pytest.mark.truth


@pytest.fixture(scope="module", autouse=True)
def importable():
    sys.path.insert(0, str(BENCHMARKS))
    yield
    sys.path.remove(str(BENCHMARKS))


@pytest.fixture(scope="module")
def small():
    import unseen

    return unseen.scene("easy", 3, SMALL)


def dye(line, half, share, soft_mm=0.05):
    from unseen_dye import Dye, Stroke

    stroke = Stroke(line=np.array(line, float), half=np.array(half), share=np.array(share))
    return Dye(kind="crack", strength=0.4, soft_mm=soft_mm, strokes=[stroke])


@pytest.mark.parametrize("angle", [0.0, 0.4, 1.2])
def test_a_stroke_of_one_width_is_a_rounded_box(angle):
    from unseen_dye import sizes, true_outline

    end = 3.0 * np.array([np.cos(angle), np.sin(angle)])
    made = dye([-end, end], [0.3, 0.3], [1.0, 1.0])
    got = sizes(true_outline(made), made)
    assert got["length_mm"] == pytest.approx(6.6, abs=0.012)
    assert got["width_mm"] == pytest.approx(0.6, abs=0.012)
    assert got["area_mm2"] == pytest.approx(6 * 0.6 + np.pi * 0.09, rel=0.015)
    assert got["path_mm"] == pytest.approx(6.6, abs=0.012)


def test_a_tip_that_fades_ends_in_the_middle_of_its_fading():
    from unseen_dye import sizes, true_outline

    made = dye([(-4, 0), (-3, 0), (3, 0), (4, 0)], [0.2] * 4, [0.0, 1.0, 1.0, 0.0])
    assert sizes(true_outline(made), made)["length_mm"] == pytest.approx(7.0, abs=0.015)


def test_the_camera_is_opencvs():
    from types import SimpleNamespace

    from unseen_camera import pose

    photo = SimpleNamespace(size_px=(660, 780), mm_per_px=0.167, tilt_deg=25.0)
    camera = pose(np.random.default_rng(5), photo, np.array([[-30.0, -40.0], [30.0, 40.0]]))
    points = np.random.default_rng(6).uniform((-40, -50, 0), (40, 50, 2), (50, 3))
    middle = ((camera.width - 1) / 2, (camera.height - 1) / 2)
    matrix = np.array([[camera.focal, 0, middle[0]], [0, camera.focal, middle[1]], [0, 0, 1.0]])
    expected, _ = cv2.projectPoints(
        points * (1, 1, -1),
        cv2.Rodrigues(camera.turn)[0],
        np.array([0.0, 0.0, camera.distance]),
        matrix,
        np.array([camera.k1, 0, 0, 0, 0]),
    )
    assert np.abs(camera.project(points) - expected[:, 0]).max() < 1e-6
    normal = camera.turn @ (0, 0, 1)
    assert np.degrees(np.arccos(normal[2])) == pytest.approx(25.0)


def test_what_a_pixel_sees_lies_where_its_point_is_projected():
    from types import SimpleNamespace

    from unseen_camera import COARSE, pose
    from unseen_part import make

    rng = np.random.default_rng(2)
    photo = SimpleNamespace(size_px=(400, 320), mm_per_px=0.15, tilt_deg=20.0)
    part = make(rng, (90.0, 70.0), "bead", "thick")
    camera = pose(rng, photo, np.array([[-20.0, -15.0], [20.0, 15.0]]))
    x, y = camera.seen(part)
    at = part.cells(np.stack([x, y], -1)).astype(np.float32)
    over = cv2.remap(part.height, at[..., 0], at[..., 1], cv2.INTER_LINEAR)
    assert over.max() > 0.5
    back = camera.project(np.stack([x, y, over], -1).reshape(-1, 3))
    first = (COARSE - 1) / 2
    cols, rows = np.meshgrid(np.arange(100) * COARSE + first, np.arange(80) * COARSE + first)
    off = np.hypot(back[:, 0] - cols.ravel(), back[:, 1] - rows.ravel())
    assert np.percentile(off, 99) < 0.1  # a bead's steep toe is where the rest lies
    assert off.max() < 1.0


def test_the_same_seed_gives_the_same_bytes(small):
    import unseen

    assert unseen.scene("easy", 3, SMALL) == small


def test_the_outlines_lie_on_the_red_in_the_picture(small):
    jpeg, truth = small
    picture = cv2.imdecode(np.frombuffer(jpeg, np.uint8), cv2.IMREAD_COLOR).astype(float)
    red = picture[..., 2] - picture[..., 1]
    ours = [o for o in truth["indications"] if o["width_mm"] > 0.6]
    assert ours
    for one in ours:
        inside, near = np.zeros(red.shape, np.uint8), np.zeros(red.shape, np.uint8)
        ring = [np.round(np.array(one["outline_px"])).astype(np.int32)]
        cv2.fillPoly(inside, ring, 1)
        near = cv2.dilate(inside, np.ones((25, 25))) - cv2.dilate(inside, np.ones((9, 9)))
        assert red[inside > 0].mean() > red[near > 0].mean() + 8


def test_sizes_are_those_of_the_outline_in_the_picture(small):
    truth = small[1]
    corners = np.array(truth["rectangle"]["points"], np.float32)
    wide, high = truth["rectangle"]["mm"]
    card = np.array([[0, 0], [wide, 0], [wide, high], [0, high]], np.float32)
    to_mm = cv2.getPerspectiveTransform(corners, card)
    for one in truth["indications"]:
        ring = np.array(one["outline_px"], np.float32)[:, None]
        polygon = shapely.Polygon(cv2.perspectiveTransform(ring, to_mm)[:, 0])
        longest = shapely.minimum_bounding_radius(polygon) * 2
        assert one["length_mm"] == pytest.approx(longest, rel=0.08, abs=0.1)
        assert one["width_mm"] <= one["length_mm"] <= one["path_mm"] + 1e-9


def test_the_renderer_imports_nothing_of_ptmark_nor_of_other_renderers():
    for path in BENCHMARKS.glob("unseen*.py"):
        tree = ast.parse(path.read_text(encoding="utf-8"))
        names = {a.name for n in ast.walk(tree) if isinstance(n, ast.Import) for a in n.names}
        names |= {n.module for n in ast.walk(tree) if isinstance(n, ast.ImportFrom)}
        assert not any(
            name.startswith(("ptmark", "stress", "coverage", "pipe_scenes")) for name in names
        )
