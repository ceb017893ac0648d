"""Registration against the homographies the photos were made with."""

from dataclasses import replace

import numpy as np
import pytest
from skimage.transform import ProjectiveTransform

from ptmark.errors import SeriesError
from ptmark.scale import RectangleReference, solve
from ptmark.series import Registration, register, register_views, view_of
from ptmark.series.features import View
from ptmark.series.fit import covariance_of, place_slopes, refined

pytestmark = pytest.mark.slow
GRID_MM = np.array([(x, y) for x in range(10, 111, 10) for y in range(10, 81, 10)], float)


@pytest.fixture(scope="module")
def plate(shop):
    return shop.Plate(discs=[(30, 30, 1.5), (80, 60, 1.0)], lines=[(50, 40, 58, 44, 0.8)])


@pytest.fixture(scope="module")
def photos(shop, plate, cameras):
    return [shop.photograph(plate, camera, seed=n) for n, camera in enumerate(cameras)]


@pytest.fixture(scope="module")
def views(photos):
    return [view_of(photo) for photo in photos]


# The truth is the pair of homographies in scikit-image's ProjectiveTransform.
@pytest.mark.truth
@pytest.mark.parametrize(("a", "b"), [(0, 1), (1, 2), (2, 0)])
def test_places_are_found_again_within_their_uncertainty(views, cameras, a, b):
    made = register_views(views[a], views[b])
    truth = cameras[b](GRID_MM)
    off = np.linalg.norm(made.to_b(cameras[a](GRID_MM)) - truth, axis=1)
    assert off.max() < 0.3  # px, some 0.02 mm
    assert (off <= 2 * np.sqrt(2) * made.u_px(cameras[a](GRID_MM))).all()
    assert made.by == "features"
    assert made.inliers > 100
    assert 0 < made.residual_px < 1
    back = made.to_a(made.to_b(cameras[a](GRID_MM)))
    assert back == pytest.approx(cameras[a](GRID_MM), abs=1e-6)


def test_dye_that_spreads_or_goes_changes_nothing(shop, plate, views, cameras):
    other = shop.photograph(
        replace(plate, discs=[(30, 30, 4.0)], lines=[]), cameras[1], seed=7, quality=70
    )
    made = register_views(views[0], view_of(other))
    off = made.to_b(cameras[0](GRID_MM)) - cameras[1](GRID_MM)
    assert np.linalg.norm(off, axis=1).max() < 0.5


def test_another_plate_is_refused_with_its_figures(shop, views, cameras):
    other = view_of(shop.photograph(shop.Plate(seed=99), cameras[1], name="other"))
    with pytest.raises(SeriesError, match=r"\d+ of \d+ points agree, within|alike"):
        register_views(views[0], other)


def test_a_blank_photo_is_refused(views):
    from ptmark.photo import Photo

    blank = view_of(Photo.from_array(np.full((600, 800, 3), 190, np.uint8), name="blank"))
    with pytest.raises(SeriesError, match="no place of the surface"):
        register_views(views[0], blank)


def test_a_mirrored_photo_is_refused(photos, views):
    from ptmark.photo import Photo

    mirrored = view_of(Photo.from_array(photos[0].rgb[:, ::-1], name="mirrored"))
    with pytest.raises(SeriesError):
        register_views(views[0], mirrored)


@pytest.fixture(scope="module")
def surface(shop):
    """A surface of the rectangle on the plate, as if it had been moved on it."""

    def made(photo, camera, moved_mm=(0.0, 0.0)):
        corners = tuple(map(tuple, camera(shop.rectangle_mm + np.array(moved_mm))))
        given = RectangleReference(corners_px=corners, width_mm=80.0, height_mm=60.0)
        return solve(given, photo)

    return made


@pytest.fixture(scope="module")
def with_card(surface):
    """A view whose surface claims to be the card's, and whose points are not masked by it."""

    seen = {}

    def made(photo, camera, moved_mm=(0.0, 0.0)):
        view = seen.get(id(photo)) or seen.setdefault(id(photo), view_of(photo))
        card = replace(surface(photo, camera, moved_mm), reference="card")
        return replace(view, surface=card)

    return made


def test_a_card_that_lay_still_is_told(with_card, photos, cameras):
    made = register_views(with_card(photos[0], cameras[0]), with_card(photos[1], cameras[1]))
    assert "did not move" in made.card
    assert made.cautions == ()


def test_a_card_that_moved_is_told_and_not_used(with_card, photos, cameras):
    a = with_card(photos[0], cameras[0])
    b = with_card(photos[1], cameras[1], (3.0, 4.0))
    made = register_views(a, b, card_stays=True)
    assert made.by == "features"
    assert "moved by about 5.0 mm" in made.card  # 3-4-5 triangle


def test_scales_that_disagree_are_told(surface, views, photos, cameras):
    big = surface(photos[1], cameras[1])
    wrong = replace(big, h=np.diag([1.1, 1.1, 1.0]) @ big.h)  # mm 10 % too long
    a = replace(views[0], surface=surface(photos[0], cameras[0]))
    made = register_views(a, replace(views[1], surface=wrong))
    assert "10.0 % more" in made.cautions[0]


def test_the_users_word_that_the_card_stayed_gives_its_frame(shop, with_card, cameras):
    photos = [shop.photograph(shop.Plate(seed=n), cameras[n], name=str(n)) for n in (0, 1)]
    a, b = (with_card(photo, cameras[n]) for n, photo in enumerate(photos))
    with pytest.raises(SeriesError):
        register_views(a, b)  # another developer coat: nothing is alike
    made = register_views(a, b, card_stays=True)
    assert made.by == "card"
    assert "user's word" in made.card
    off = np.linalg.norm(made.to_b(cameras[0](GRID_MM)) - cameras[1](GRID_MM), axis=1)
    u = made.u_px(cameras[0](GRID_MM))
    assert (off <= 2 * np.sqrt(2) * u).all()
    assert off.max() < 1.0


def test_nothing_on_the_card_is_looked_at(surface, photos, cameras):
    card = replace(surface(photos[0], cameras[0]), reference="card")
    inside = card.to_mm(view_of(photos[0], card).points_px)
    on_it = ((inside >= 0) & (inside <= [80, 60])).all(axis=1)
    assert len(inside) > 50
    assert not on_it.any()


OFFS = [(-1.0, -2.0), (1.0, 2.0), (0.0, 0.0), (1.5, -1.5)]  # corners of a numeral, mm


def laid(shop, cameras, seed, label, number):
    """A photo with one indication and a label, as a frame has it."""
    plate = shop.Plate(seed=seed, discs=[(60, 35, 1.5)], label=label)
    photo = shop.photograph(plate, cameras[number], seed=number, name=f"{number}.jpg")
    return view_of(photo, about_px=cameras[number]([[60.0, 35.0]]))


def test_a_label_that_was_moved_is_not_followed(shop, cameras):
    a = laid(shop, cameras, 1, (25, 70), 0)
    b = laid(shop, cameras, 1, (28, 66), 1)
    made = register_views(a, b)
    off = np.linalg.norm(made.to_b(cameras[0](GRID_MM)) - cameras[1](GRID_MM), axis=1)
    assert off.max() < 0.5


def test_a_label_alone_is_refused(shop, cameras):
    a = laid(shop, cameras, 1, (25, 70), 0)
    b = laid(shop, cameras, 2, (28, 66), 1)  # a new coat: only the label is alike
    with pytest.raises(SeriesError):
        register_views(a, b)
    made = register_views(
        replace(a, about_px=a.about_px[:0]), replace(b, about_px=b.about_px[:0])
    )
    label = cameras[1]([[28.0, 66.0], [88.0, 80.0]])  # nothing to lie round: it is followed
    assert made.to_b(cameras[0]([[25.0, 70.0], [85.0, 84.0]])) == pytest.approx(label, abs=1)


RULE_MM = np.array([[10.0 * n + dx, 70.0 + dy] for n in range(1, 12) for dx, dy in OFFS])
LABEL_MM = np.array([[95.0 + 3 * n, 12.0 + dy] for n in range(4) for _, dy in OFFS])
SURFACE_MM = np.random.RandomState(6).uniform([5, 5], [115, 60], (60, 2))  # any seed


@pytest.mark.parametrize("same", [False, True])
def test_rule_and_label_alike_beside_two_parts_are_no_common_surface(cameras, same):
    """The rule leaves the plane beside it open, which the label and a chance pair then fix."""
    rng = np.random.RandomState(7)  # the seed does not matter
    many = len(RULE_MM) + len(LABEL_MM) + len(SURFACE_MM)
    described = np.abs(rng.normal(size=(many, 128))).astype(np.float32)
    other = described.copy()
    if not same:
        other[-len(SURFACE_MM) :] = np.abs(rng.normal(size=(len(SURFACE_MM), 128)))
    places = np.vstack([RULE_MM, LABEL_MM, SURFACE_MM])
    views = [
        View(
            name=name,
            size=(1200, 900),
            points_px=camera(places),
            descriptors=of / np.linalg.norm(of, axis=1, keepdims=True),
            step=1.0,
            about_px=camera([[30.0, 45.0], [60.0, 40.0], [85.0, 50.0]]),
        )
        for name, camera, of in zip("ab", cameras, (described, other), strict=False)
    ]
    if same:
        there = register_views(*views).to_b(cameras[0](GRID_MM))
        assert there == pytest.approx(cameras[1](GRID_MM), abs=0.1)
    else:
        with pytest.raises(SeriesError, match="as a rule or a label does"):
            register_views(*views)


def test_two_scales_help_where_little_is_alike(shop, cameras, surface):
    """A new coat of developer; only a few stamped marks round the area are the same."""
    marks = [(22, 20), (98, 18), (97, 78), (20, 77)]
    views = []
    for number in (0, 1):
        plate = shop.Plate(seed=number + 20, discs=[(60, 45, 1.5)], stamps=marks)
        photo = shop.photograph(plate, cameras[number], seed=number, name=f"{number}.jpg")
        about = cameras[number]([[60.0, 45.0]])
        views.append(view_of(photo, surface(photo, cameras[number]), about_px=about))
    made = register_views(*views)
    off = np.linalg.norm(made.to_b(cameras[0](GRID_MM)) - cameras[1](GRID_MM), axis=1)
    assert (off <= 2 * np.sqrt(2) * made.u_px(cameras[0](GRID_MM))).all()
    assert off.max() < 3  # px, 0.3 mm
    assert made.by == "features and scales"
    assert made.inliers >= 10
    # Without scales the same photos have too little in common.
    with pytest.raises(SeriesError, match=r"agree|alike|beside"):
        register_views(*(replace(view, surface=None) for view in views))


MARKS_MM = np.array([[15, 12], [105, 14], [100, 80], [12, 78], [60, 45]], float)


def test_marks_by_hand_stand_in_for_texture(shop, cameras):
    photos = [shop.photograph(shop.Plate(seed=n), cameras[n], name=str(n)) for n in (0, 1)]
    picks = np.random.RandomState(5).normal(0, 1.0, (2, 5, 2))  # the seed does not matter
    marks = (cameras[0](MARKS_MM) + picks[0], cameras[1](MARKS_MM) + picks[1])
    made = register(photos[0], photos[1], marks=marks)
    assert made.by == "marks"
    off = np.linalg.norm(made.to_b(cameras[0](GRID_MM)) - cameras[1](GRID_MM), axis=1)
    assert (off <= 2 * np.sqrt(2) * made.u_px(cameras[0](GRID_MM))).mean() >= 0.95


@pytest.mark.parametrize(
    ("marks", "says"),
    [
        (MARKS_MM[:3], "3 marks"),
        (np.array([[0, 0], [10, 10], [20, 20], [30, 30]], float), "one line"),
        (MARKS_MM[[0, 1, 3, 2]], "no view"),
    ],
)
def test_marks_that_cannot_be_are_refused(views, cameras, marks, says):
    to = MARKS_MM[: len(marks)]
    with pytest.raises(SeriesError, match=says):
        register_views(views[0], views[1], marks=(cameras[0](marks), cameras[1](to)))


# JCGM 101: the spread of repeated fits is the reference for the propagated covariance.
@pytest.mark.truth
def test_the_covariance_agrees_with_repeated_fits():
    rng = np.random.RandomState(2)  # the seed does not matter
    truth = ProjectiveTransform(
        matrix=np.array([[0.9, 0.1, 30], [-0.08, 1.1, 9], [5e-5, 3e-5, 1]])
    )
    source = rng.uniform(0, 1500, (60, 2))
    at = np.array([[700.0, 500.0], [1500.0, 0.0]])
    places, claimed = [], []
    for _ in range(300):
        target = truth(source) + rng.normal(0, 0.8, source.shape)
        h, inside = refined(truth.params, source, target, np.ones(60, bool), 1e3)
        covariance, residual = covariance_of(h, source, target)
        made = Registration(
            h=h, covariance=covariance, by="features", inliers=60, matches=60, residual_px=0.0
        )
        places.append(made.to_b(at))
        claimed.append(made.u_px(at))
        assert inside.all()
    assert residual == pytest.approx(0.8 * np.sqrt(2), rel=0.25)
    seen = np.sqrt((np.std(places, axis=0) ** 2).mean(axis=1))
    assert np.mean(claimed, axis=0) == pytest.approx(seen, rel=0.1)


def test_slopes_are_those_of_differences():
    h = np.array([[0.9, 0.1, 30], [-0.08, 1.1, 9], [5e-5, 3e-5, 1]])
    at = np.array([[100.0, 900.0], [1200.0, 40.0]])
    slopes = place_slopes(h, at)
    for entry in range(8):
        step = np.zeros(9)
        step[entry] = max(abs(h.ravel()[entry]), 1e-6) * 1e-6
        ahead = ProjectiveTransform(matrix=h + step.reshape(3, 3))(at)
        behind = ProjectiveTransform(matrix=h - step.reshape(3, 3))(at)
        slope = (ahead - behind) / (2 * step[entry])
        assert slopes[:, :, entry] == pytest.approx(slope, rel=1e-5, abs=1e-6)
