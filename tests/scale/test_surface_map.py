"""The map, its derivatives and its uncertainty against OpenCV, scikit-image and sampling."""

import cv2
import numpy as np
import pytest
from scipy.spatial.transform import Rotation
from skimage.transform import ProjectiveTransform

from ptmark.scale import CardReference, RectangleReference, SurfaceMap, solve
from ptmark.scale.fit import fit_plane
from ptmark.scale.maps import camera_priors
from ptmark.scale.plane import (
    Lens,
    apply_homography,
    fit_homography,
    focal_from_homography,
    pose_from_homography,
    rotation_from_vector,
)
from ptmark.scale.problem import Problem, State

PLAIN = Lens((999.5, 749.5), 1250.0)
BENT = Lens((999.5, 749.5), 1250.0, 0.03)
SOME_PX = np.array([[100.0, 60.0], [999.5, 749.5], [1900.0, 200.0], [640.3, 1390.8]])


def made_map(camera, lens=PLAIN, covariance=None):
    h = np.linalg.inv(camera(lean_deg=(20.0, -9.0), turn_deg=12.0).to_px())
    return SurfaceMap(
        h=h / h[2, 2],
        covariance=covariance or {},
        reference="card",
        reference_px=SOME_PX,
        lens=lens,
    )


@pytest.mark.truth
def test_map_agrees_with_opencv_and_scikit_image(camera):
    surface = made_map(camera)
    # OpenCV perspectiveTransform and scikit-image ProjectiveTransform: independent references.
    by_opencv = cv2.perspectiveTransform(SOME_PX[None], surface.h)[0]
    by_skimage = ProjectiveTransform(surface.h)(SOME_PX)
    np.testing.assert_allclose(surface.to_mm(SOME_PX), by_opencv, rtol=1e-12)
    np.testing.assert_allclose(surface.to_mm(SOME_PX), by_skimage, rtol=1e-12)


@pytest.mark.truth
@pytest.mark.parametrize("noise_px", [0.0, 0.3])
def test_homography_from_points_agrees_with_scikit_image(camera, noise_px):
    plane = np.array([[0, 0], [80, 0], [80, 50], [0, 50], [30, 20], [61, 44]], float)
    seen = camera(lean_deg=(25.0, 10.0)).project(plane)
    seen = seen + np.random.default_rng(3).normal(0, noise_px, seen.shape)
    ours = fit_homography(plane, seen)
    # scikit-image's estimate: the same normalised direct linear transform.
    theirs = ProjectiveTransform.from_estimate(plane, seen).params
    np.testing.assert_allclose(
        apply_homography(ours, plane), ProjectiveTransform(theirs)(plane), atol=1e-3
    )


@pytest.mark.parametrize("lens", [PLAIN, BENT, Lens((999.5, 749.5), 1250.0, -0.05)])
def test_there_and_back(camera, lens):
    surface = made_map(camera, lens)
    np.testing.assert_allclose(surface.to_px(surface.to_mm(SOME_PX)), SOME_PX, atol=1e-6)


@pytest.mark.parametrize("lens", [PLAIN, BENT])
def test_jacobian_is_the_numeric_derivative(camera, lens):
    surface = made_map(camera, lens)
    step = 1e-3
    for axis in (0, 1):
        shift = np.eye(2)[axis] * step
        numeric = (surface.to_mm(SOME_PX + shift) - surface.to_mm(SOME_PX - shift)) / (2 * step)
        np.testing.assert_allclose(surface.jacobian(SOME_PX)[:, :, axis], numeric, rtol=1e-6)


def test_local_scale_is_the_root_of_the_area_factor(camera):
    surface = made_map(camera)
    at = SOME_PX[2]
    square = surface.to_mm(at + np.array([[-1, -1], [1, -1], [1, 1], [-1, 1]]))
    area = abs(cv2.contourArea(square.astype(np.float32)))
    assert surface.mm_per_px(at) == pytest.approx(np.sqrt(area / 4), rel=1e-3)


@pytest.mark.truth
def test_turns_are_rodrigues(camera):
    for vector in ([0.3, -0.2, 1.1], [0.0, 0.0, 0.0], [1e-12, 0.0, 0.0], [0.0, 3.0, 0.0]):
        # SciPy's Rotation: independent reference.
        wanted = Rotation.from_rotvec(vector).as_matrix()
        np.testing.assert_allclose(rotation_from_vector(np.array(vector)), wanted, atol=1e-12)


def test_pose_and_focal_length_come_back_from_a_homography(camera):
    eye = camera(lean_deg=(22.0, 13.0), turn_deg=-40.0, distance_mm=190.0)
    centre = eye.matrix[:2, 2]
    assert focal_from_homography(eye.to_px(), centre) == pytest.approx(1450.0, rel=1e-6)
    pose = pose_from_homography(-3.0 * eye.to_px(), 1450.0, centre)
    np.testing.assert_allclose(pose.rotation, eye.rotation, atol=1e-9)
    assert pose.distance_mm == pytest.approx(190.0)
    height = -(eye.rotation.T @ eye.translation)  # the camera's centre, z into the surface
    np.testing.assert_allclose(pose.camera_mm, height * [1, 1, -1], atol=1e-6)
    assert focal_from_homography(camera().to_px(), centre) is None


def distance(surface, ends):
    a, b = surface.to_mm(ends)
    return float(np.hypot(*(b - a)))


def test_distance_uncertainty_is_the_spread_of_sampled_maps(camera):
    """Draw the nine parameters from their covariance; JCGM 101:2008 against JCGM 100:2008."""
    rng = np.random.default_rng(11)
    base = made_map(camera, BENT)
    root = rng.normal(size=(9, 9)) * 1e-3
    size = np.append(np.abs(base.h.ravel()[:8]), 0.03)
    covariance = (root @ root.T) * np.outer(size, size)
    surface = made_map(camera, BENT, {"picking": covariance})
    ends = SOME_PX[[0, 3]]
    drawn = []
    for step in rng.multivariate_normal(np.zeros(9), covariance, 4000):
        h = base.h + np.append(step[:8], 0).reshape(3, 3)
        lens = Lens(BENT.centre, BENT.radius_px, BENT.kappa + step[8])
        a, b = apply_homography(h, lens.undistort(ends))
        drawn.append(np.hypot(*(b - a)))
    assert surface.distance_u(*ends)["picking"] == pytest.approx(np.std(drawn), rel=0.05)


def test_coincident_points_have_no_distance_uncertainty(camera):
    surface = made_map(camera, PLAIN, {"picking": np.eye(9) * 1e-6})
    assert surface.distance_u(SOME_PX[0], SOME_PX[0]) == {"picking": 0.0}


RECTANGLE_MM = np.array([[0, 0], [60, 0], [60, 40], [0, 40]], float)
FAR_MM = np.array([[-20.0, -35.0], [45.0, -30.0]])


@pytest.mark.slow
def test_rectangle_covariance_is_the_spread_of_picks(camera):
    """Pick the corners 400 times: the budget's "picking" is the spread that is seen."""
    rng = np.random.default_rng(5)
    eye = camera(lean_deg=(15.0, -20.0), aim_mm=(30.0, 5.0))
    true_px, ends = eye.project(RECTANGLE_MM), eye.project(FAR_MM)
    photo = eye.photo(exif=True)
    seen, stated, inside = [], [], 0
    for _ in range(400):
        corners = true_px + rng.normal(0, 1.2, true_px.shape)
        reference = RectangleReference(
            corners_px=tuple(map(tuple, corners)), width_mm=60.0, height_mm=40.0
        )
        surface = solve(reference, photo)
        seen.append(distance(surface, ends))
        u = surface.distance_u(*ends)
        stated.append(u["picking"])
        combined = np.sqrt(sum(v**2 for v in u.values()))
        inside += abs(seen[-1] - np.hypot(*(FAR_MM[1] - FAR_MM[0]))) <= 2 * combined
    assert np.median(stated) == pytest.approx(np.std(seen), rel=0.15)
    assert inside / 400 > 0.95
    assert np.mean(seen) == pytest.approx(np.hypot(*(FAR_MM[1] - FAR_MM[0])), abs=0.15)


def test_parts_of_the_budget_are_named(camera, card):
    surface = solve(CardReference(), card().photograph(camera(lean_deg=(12.0, 0.0))))
    assert {"picking", "lens", "reference"} <= set(surface.covariance)
    for matrix in surface.covariance.values():
        scaled = matrix / np.sqrt(np.outer(np.diag(matrix), np.diag(matrix)).clip(1e-300))
        assert np.linalg.eigvalsh(scaled).min() > -1e-6


def test_lens_term_is_found_where_the_card_shows_it(camera, card):
    """Bend a photo by a known term and measure about the card."""
    eye = camera(aim_mm=(75.0, 50.0), distance_mm=130.0, lean_deg=(15.0, 5.0))
    straight = card().photograph(eye, noise=0.003)
    lens = Lens.of_picture(eye.width, eye.height)
    bend = Lens(lens.centre, lens.radius_px, 0.03)
    x, y = np.meshgrid(np.arange(eye.width, dtype=float), np.arange(eye.height, dtype=float))
    source = bend.undistort(np.stack([x, y], axis=-1)).astype(np.float32)
    bent = cv2.remap(
        straight.rgb,
        source[..., 0],
        source[..., 1],
        cv2.INTER_CUBIC,
        borderMode=cv2.BORDER_REPLICATE,
    )
    surface = solve(CardReference(), eye.photo(bent))
    assert surface.lens.kappa == pytest.approx(0.03, abs=0.01)
    ends_mm = np.array([[90.0, 20.0], [130.0, 80.0]])
    ends = bend.distort(eye.project(ends_mm))
    u = surface.distance_u(*ends)
    off = distance(surface, ends) - np.hypot(*(ends_mm[1] - ends_mm[0]))
    assert abs(off) < 2 * np.sqrt(sum(v**2 for v in u.values()))
    assert abs(off) < 0.5


@pytest.mark.parametrize("understated", [1.0, 4.0])
def test_misfit_beyond_the_picking_noise_is_its_own_part(camera, squares_mm, understated):
    """Noise four times what is stated shows in the residuals and makes the budget true."""
    rng = np.random.default_rng(21)
    eye = camera(lean_deg=(15.0, 10.0))
    ends = eye.project(np.array([[-30.0, -30.0], [100.0, 20.0]]))
    pose = pose_from_homography(eye.to_px(), 1450.0, eye.matrix[:2, 2])
    photo = eye.photo(exif=True)
    seen, stated = [], []
    for _ in range(60):
        picks = eye.project(squares_mm) + rng.normal(0, 0.3 * understated, squares_mm.shape)
        problem = Problem(
            picks,
            np.full(16, 0.3),
            lambda _own: squares_mm,
            camera_priors(photo),
            Lens.of_picture(eye.width, eye.height),
        )
        fit = fit_plane(problem, State(pose, 0.0, np.zeros(0)))
        surface = SurfaceMap(
            h=fit.pose.to_mm(),
            covariance=fit.covariance,
            reference="card",
            reference_px=picks,
            lens=fit.lens,
        )
        seen.append(distance(surface, ends))
        u = surface.distance_u(*ends)
        stated.append(np.hypot(u["picking"], u.get("map", 0.0)))
        if understated > 1:
            assert u["map"] > u["picking"]
    assert np.mean(stated) == pytest.approx(np.std(seen), rel=0.3)
