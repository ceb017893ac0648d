"""Camera profiles: the lens they find, where they fit, and what they do to lengths."""

import io
import json
from dataclasses import replace
from pathlib import Path

import cv2
import numpy as np
import pytest
from PIL import Image

from ptmark.commands.line import run
from ptmark.errors import PhotoError, ScaleError
from ptmark.photo import Camera, CameraProfile, load_profiles, open_photo, save_profile
from ptmark.scale import RectangleReference, solve
from ptmark.scale.calibrate import View, fit_lens
from ptmark.scale.plane import Lens

GRID = np.stack(np.meshgrid(np.arange(9), np.arange(6)), -1).reshape(-1, 2) * 25.0
CHESSBOARDS = Path("/usr/share/doc/opencv-doc/examples/data")


@pytest.fixture(autouse=True)
def _own_home(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "home"))


def _profile(**changes: object) -> CameraProfile:
    plain = CameraProfile(
        name="shop-camera", make="Shop", model="One", lens="", focal_mm=5.0,
        focal_35mm_mm=26.0, digital_zoom=None, long_px=1600, short_px=1200, focal_px=1240.0,
        focal_rel_u=0.01, centre_u=0.005, kappa=0.03, kappa_2=-0.01, kappa_u=0.002, photos=9,
        residual_px=0.3, made="2026-01-02",
    )  # fmt: skip
    return replace(plain, **changes)  # type: ignore[arg-type]


@pytest.mark.truth
def test_lens_is_that_of_the_photos_by_opencvs_projection() -> None:
    # cv2.projectPoints and cv2.undistortPoints (Brown 1971's model) are the reference.
    random = np.random.default_rng(1)
    k = np.array([[1550.0, 0, 1004.0], [0, 1550.0, 745.0], [0, 0, 1]])
    radial = np.array([0.08, -0.05, 0.0, 0.0, 0.0])
    views: list[View] = []
    while len(views) < 8:
        at = [random.uniform(-120, 20), random.uniform(-80, 20), random.uniform(230, 400)]
        turn = random.normal(0, 0.35, 3)
        seen, _ = cv2.projectPoints(np.c_[GRID, np.zeros(54)], turn, np.array(at), k, radial)
        seen = seen.reshape(-1, 2)
        if (seen > 0).all() and (seen < [1999, 1499]).all():
            views.append(View(seen + random.normal(0, 0.1, seen.shape), GRID))
    fit = fit_lens(views, 2000, 1500)
    assert abs(fit.focal_px / 1550 - 1) < 4 * max(fit.focal_rel_u, 1e-3)
    places = np.array([[60.0, 60], [1940, 1440], [1000, 750], [500, 350], [1900, 80]])
    straight = cv2.undistortPoints(places.reshape(-1, 1, 2), k, radial, P=k).reshape(-1, 2)
    assert np.abs(fit.lens.undistort(places) - straight).max() < 2.0
    bent = np.abs(straight - places).max()
    assert bent > 15


@pytest.mark.truth
@pytest.mark.slow
def test_real_chessboards_give_the_lens_that_opencv_finds() -> None:
    # Photos: OpenCV's samples/data/left*.jpg, Debian package opencv-doc, 25 mm squares.
    if not CHESSBOARDS.is_dir():
        pytest.skip("Debian's package opencv-doc is not installed")
    views = []
    for path in sorted(CHESSBOARDS.glob("left0*.jpg")):
        grey = cv2.imread(str(path), cv2.IMREAD_GRAYSCALE)
        found, corners = cv2.findChessboardCornersSB(grey, (9, 6))
        if found:
            views.append(View(np.asarray(corners, float).reshape(-1, 2), GRID))
    fit = fit_lens(views, 640, 480)
    flat = [np.c_[GRID, np.zeros(54)].astype(np.float32)] * len(views)
    seen = [one.seen_px.astype(np.float32).reshape(-1, 1, 2) for one in views]
    flags = cv2.CALIB_FIX_K3 | cv2.CALIB_ZERO_TANGENT_DIST
    start = np.array([[500.0, 0, 319.5], [0, 500.0, 239.5], [0, 0, 1]])
    _, k, _, _, _ = cv2.calibrateCamera(flat, seen, (640, 480), start, np.zeros(5), flags=flags)
    assert fit.focal_px == pytest.approx(float(k[0, 0]), rel=0.01)
    assert fit.residual_px < 0.5


def test_two_radial_terms_invert_and_have_the_slope_of_differences() -> None:
    lens = Lens((999.5, 749.5), 1250.0, 0.12, -0.05)
    points = np.array([[10.0, 20], [1900, 1400], [999.5, 749.5], [600, 1300]])
    assert np.allclose(lens.distort(lens.undistort(points)), points, atol=1e-6)
    for i, step in enumerate(np.eye(2) * 1e-3):
        slope = (lens.undistort(points + step) - lens.undistort(points - step)) / 2e-3
        assert np.allclose(lens.jacobian(points)[:, :, i], slope, atol=1e-8)


def _picture(path: Path, camera: Camera, size: tuple[int, int]) -> Path:
    exif = Image.Exif()
    exif[0x010F], exif[0x0110] = camera.make, camera.model
    shot = exif.get_ifd(0x8769)
    shot[0x920A], shot[0xA405] = camera.focal_mm, int(camera.focal_35mm_mm or 0)
    shot[0xA002], shot[0xA003] = 1600, 1200
    out = io.BytesIO()
    Image.new("RGB", size, "white").save(out, "JPEG", exif=exif)
    path.write_bytes(out.getvalue())
    return path


def test_a_profile_is_used_for_its_own_camera_uncropped_only(tmp_path: Path) -> None:
    camera = Camera(make="Shop", model="One", focal_mm=5.0, focal_35mm_mm=26.0)
    save_profile(_profile())
    whole = _picture(tmp_path / "a.jpg", camera, (1600, 1200))
    assert open_photo(whole).info.calibrated == load_profiles()[0]
    for name, other, size in (
        ("zoomed", replace(camera, focal_mm=9.0), (1600, 1200)),
        ("model", replace(camera, model="Two"), (1600, 1200)),
        ("cropped", camera, (1500, 1200)),
    ):
        assert (
            open_photo(_picture(tmp_path / f"{name}.jpg", other, size)).info.calibrated is None
        )


def test_a_damaged_profile_is_told_and_does_not_keep_a_photo_from_opening(
    tmp_path: Path,
) -> None:
    path = save_profile(_profile())
    text = json.loads(path.read_text())
    for member, value in (("kappa", "much"), ("long_px", -1), ("kappa_u", None)):
        path.write_text(json.dumps(text | {member: value}))
        with pytest.raises(PhotoError, match=member):
            load_profiles()
    camera = Camera(make="Shop", model="One", focal_mm=5.0, focal_35mm_mm=26.0)
    photo = open_photo(_picture(tmp_path / "a.jpg", camera, (1600, 1200)))
    assert photo.info.calibrated is None


@pytest.mark.truth
def test_a_profile_takes_the_lens_out_of_lengths(tmp_path: Path) -> None:
    """A bent picture of a plate, its far end at the corner; cv2.projectPoints is the truth."""
    camera = Camera(make="Shop", model="One", focal_mm=5.0, focal_35mm_mm=26.0)
    picture = _picture(tmp_path / "a.jpg", camera, (1600, 1200))
    lens = Lens((799.5, 599.5), 1000.0, 0.03, -0.01)
    plate = np.array([[0.0, 0], [80, 0], [80, 50], [0, 50]])
    line = np.array([[-90.0, -70.0], [-60.0, -70.0]])
    k = np.array([[1240.0, 0, 799.5], [0, 1240.0, 599.5], [0, 0, 1]])
    ideal, _ = cv2.projectPoints(
        np.c_[np.vstack([plate, line]), np.zeros(6)],
        np.array([0.3, -0.2, 0.1]), np.array([-10.0, -10.0, 220.0]), k, np.zeros(5),
    )  # fmt: skip
    seen = lens.distort(ideal.reshape(-1, 2))
    reference = RectangleReference(
        corners_px=tuple(map(tuple, seen[:4])), width_mm=80.0, height_mm=50.0
    )
    found = {}
    for known in (False, True):
        if known:
            save_profile(_profile())
        surface = solve(reference, open_photo(picture))
        ends = surface.to_mm(seen[4:])
        lens_u = surface.distance_u(seen[4], seen[5])["lens"]
        found[known] = abs(float(np.hypot(*(ends[1] - ends[0]))) - 30.0), lens_u
    assert found[True][0] < 0.02 < found[False][0]
    assert found[True][1] < found[False][1] / 2
    assert found[False][0] < 3 * found[False][1]


def test_too_few_or_only_central_photos_are_refused() -> None:
    view = View(GRID + 700, GRID)
    with pytest.raises(ScaleError, match="5 are needed"):
        fit_lens([view] * 4, 2000, 1500)
    with pytest.raises(ScaleError, match="corners"):
        fit_lens([view] * 6, 2000, 1500)


def _shot(seed: int) -> np.ndarray:
    """The printed grid from somewhere, by cv2's projection and warping."""
    board = np.kron((np.indices((7, 10)).sum(0) % 2) * 255, np.ones((50, 50))).astype(np.uint8)
    board = cv2.copyMakeBorder(board, 60, 60, 60, 60, cv2.BORDER_CONSTANT, value=255)
    random = np.random.default_rng(seed)
    size = np.array([620, 470])
    flat = np.c_[np.array([[0, 0], [620, 0], [620, 470], [0, 470]]) - size / 2, np.zeros(4)]
    k = np.array([[620.0, 0, 399.5], [0, 620.0, 299.5], [0, 0, 1]])
    aside = [random.uniform(-160, 160), random.uniform(-110, 110), random.uniform(640, 760)]
    seen, _ = cv2.projectPoints(flat, random.normal(0, 0.3, 3), np.array(aside), k, np.zeros(5))
    corners = np.array([[0, 0], [620, 0], [620, 470], [0, 470]], np.float32)
    h = cv2.getPerspectiveTransform(corners, seen.reshape(4, 2).astype(np.float32))
    grey = cv2.warpPerspective(board, h, (800, 600), borderValue=200, flags=cv2.INTER_AREA)
    return cv2.GaussianBlur(grey, (0, 0), 0.7)


@pytest.mark.slow
def test_the_command_calibrates_lists_and_removes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    exif = Image.Exif()
    exif[0x010F], exif[0x0110] = "Shop", "One"
    paths = []
    for seed in range(6):
        path = tmp_path / f"{seed}.jpg"
        Image.fromarray(_shot(seed)).convert("RGB").save(path, quality=92, exif=exif)
        paths.append(str(path))
    assert run(["camera", "calibrate", *paths, "--name", "bench"]) == 0
    profile = load_profiles()[0]
    assert profile.focal_px == pytest.approx(620, rel=0.02)
    assert abs(profile.kappa + profile.kappa_2) < 0.01
    assert run(["camera", "list"]) == run(["camera", "show", "bench"]) == 0
    assert "bench: Shop One" in capsys.readouterr().out
    assert open_photo(tmp_path / "0.jpg").info.calibrated == profile
    assert run(["camera", "remove", "bench"]) == 0
    assert load_profiles() == []
    assert run(["camera", "show", "bench"]) == 1
    assert run(["camera", "grid", str(tmp_path / "grid.pdf")]) == 0
    assert (tmp_path / "grid.pdf").read_bytes().startswith(b"%PDF")
