"""Two references at once: the fit against SciPy, its U against sampling, what is refused."""

from dataclasses import replace
from itertools import product

import cv2
import numpy as np
import pytest
from scipy.optimize import least_squares
from scipy.optimize._numdiff import approx_derivative

from ptmark.dye import suggest
from ptmark.errors import ScaleError
from ptmark.scale import (
    CardReference,
    LineReference,
    LinesReference,
    PairReference,
    RectangleReference,
    reference_from_json,
    reference_to_json,
    solve,
)
from ptmark.scale.card import find_cards
from ptmark.scale.joint import JointProblem, Part
from ptmark.scale.maps import PICK_U_PX, SIZE_U_MM
from ptmark.scale.pair import MAX_EN

FIRST_MM, SECOND_MM = (60.0, 40.0), (50.0, 30.0)
TURN, PLACE_MM = 0.5, np.array([40.0, 45.0])
ENDS_MM = np.array([[10.0, 60.0], [70.0, 10.0]])
TRUE_MM = np.hypot(60.0, 50.0)


def corners(size):
    width, height = size
    return np.array([[0.0, 0.0], [width, 0.0], [width, height], [0.0, height]])


def second_place(size=SECOND_MM):
    cos, sin = np.cos(TURN), np.sin(TURN)
    return corners(size) @ np.array([[cos, sin], [-sin, cos]]) + PLACE_MM


def rectangle(points_px, size, **more):
    return RectangleReference(
        corners_px=tuple((float(x), float(y)) for x, y in points_px),
        width_mm=size[0],
        height_mm=size[1],
        **more,
    )


def eye(camera, **more):
    return camera(lean_deg=(12.0, -8.0), turn_deg=20.0, **more)


def pair_of(view, *, height_mm=0.0, offset_mm=0.0, noise=None, grown=(1.0, 1.0)):
    """Both rectangles as seen; ``noise`` of shape (8, 2), px; ``grown``: true over stated."""
    noise = np.zeros((8, 2)) if noise is None else noise
    one = view.project(corners(FIRST_MM) * grown[0]) + noise[:4]
    other = view.project(second_place(np.array(SECOND_MM) * grown[1]), height_mm) + noise[4:]
    return PairReference(
        first=rectangle(one, FIRST_MM),
        second=rectangle(other, SECOND_MM, offset_mm=offset_mm),
    )


def length(surface, ends_px):
    return float(np.hypot(*np.diff(surface.to_mm(ends_px), axis=0)[0]))


def u_of(surface, ends_px):
    return float(np.sqrt(sum(u**2 for u in surface.distance_u(*ends_px).values())))


def test_two_right_references_give_the_truth_and_agree(camera):
    view = eye(camera)
    surface = solve(pair_of(view), view.photo(exif=True))
    assert length(surface, view.project(ENDS_MM)) == pytest.approx(TRUE_MM, rel=1e-7)
    assert surface.reference == surface.beside.reference == "rectangle"
    assert surface.beside.en == pytest.approx(0.0, abs=1e-5)
    assert surface.beside.difference == pytest.approx(0.0, abs=1e-6)


def test_two_are_surer_than_either(camera):
    view = eye(camera)
    pair, photo = pair_of(view), view.photo(exif=True)
    ends = view.project(ENDS_MM)
    both = u_of(solve(pair, photo), ends)
    assert both < min(
        u_of(solve(pair.first, photo), ends), u_of(solve(pair.second, photo), ends)
    )


def test_slopes_of_the_joint_problem(camera):
    """Against SciPy's numerical derivative, the second reference raised and out of true."""
    view = eye(camera)
    photo = view.photo(exif=True)
    pair = pair_of(view, height_mm=2.0, noise=np.random.default_rng(4).normal(0, 1, (8, 2)))
    parts = [
        Part(solve(one, photo).evidence, mm, 0.2)
        for one, mm in ((pair.first, 1.0), (pair.second, 3.0))
    ]
    problem = JointProblem(*parts, alike=True)
    state = problem.start(TURN, PLACE_MM)
    size = 10 + len(state.own)
    numeric = approx_derivative(
        lambda step: problem.residuals(state.stepped(step)),
        np.zeros(size),
        method="3-point",
        abs_step=[1e-6] * 3
        + [1e-4] * 3
        + [1e-6, 1e-3, 1e-3, 1e-6, 1e-6, 1e-4, 1e-4]
        + [1e-4] * (size - 13),
    )
    scale = np.abs(numeric).max(axis=0)
    # A size's error is taken as a whole step of one standard uncertainty, not at its limit.
    assert np.abs(problem.slopes(state) - numeric).max(axis=0) / scale == pytest.approx(
        0.0, abs=3e-3
    )
    no_size = [*range(13), 15, 18]
    off = np.abs(problem.slopes(state) - numeric).max(axis=0) / scale
    assert off[no_size].max() < 1e-6


def written_again(view, seen_px):
    """The same model from scratch, on SciPy's least squares: residuals of 17 unknowns.

    Rotation vector, translation, log focal length, centre, lens term, the second's turn and
    place, four errors of size, each 0 with a standard uncertainty of 1 beforehand.
    """
    middle = np.array([(view.width - 1) / 2, (view.height - 1) / 2])
    diagonal = np.hypot(view.width, view.height)

    def residuals(x):
        focal = view.focal_px * np.exp(x[6])
        matrix = np.array([[focal, 0, x[7]], [0, focal, x[8]], [0, 0, 1.0]])
        one = corners(FIRST_MM) * [
            1 + x[13] * SIZE_U_MM / FIRST_MM[0],
            1 + x[14] * SIZE_U_MM / FIRST_MM[1],
        ]
        other = corners(SECOND_MM) * [
            1 + x[15] * SIZE_U_MM / SECOND_MM[0],
            1 + x[16] * SIZE_U_MM / SECOND_MM[1],
        ]
        cos, sin = np.cos(x[10]), np.sin(x[10])
        other = other @ np.array([[cos, sin], [-sin, cos]]) + x[11:13]
        points = np.column_stack([np.vstack([one, other]), np.zeros(8)])
        seen, _ = cv2.projectPoints(points, x[:3], x[3:6], matrix, None)
        from_middle = seen_px - middle
        r2 = (from_middle**2).sum(axis=1, keepdims=True) / (diagonal / 2) ** 2
        straight = seen_px + from_middle * x[9] * r2
        picks = (seen.reshape(-1, 2) - straight) / PICK_U_PX
        beforehand = [x[6] / 0.03, *((x[7:9] - middle) / (0.01 * diagonal)), x[9] / 0.015]
        return np.concatenate([picks.ravel(), beforehand, x[13:17]])

    rotation, _ = cv2.Rodrigues(view.rotation)
    start = np.concatenate(
        [rotation.ravel(), view.translation, [0.0], middle, [0.0, TURN], PLACE_MM, np.zeros(4)]
    )
    scale = np.array([0.01] * 3 + [1.0] * 3 + [0.01, 1, 1, 0.01, 0.01, 1, 1, 1, 1, 1, 1])
    return least_squares(residuals, start, x_scale=scale, xtol=1e-15, ftol=1e-15, gtol=1e-13)


@pytest.mark.truth
def test_joint_fit_agrees_with_scipy(camera):
    view = eye(camera)
    noise = np.random.default_rng(8).normal(0, 1.0, (8, 2))
    pair = pair_of(view, noise=noise)
    surface = solve(pair, view.photo(exif=True))
    seen = np.array([*pair.first.corners_px, *pair.second.corners_px])
    found = written_again(view, seen)
    ends = view.project(ENDS_MM)

    def of(x):
        rotation, _ = cv2.Rodrigues(x[:3])
        focal = view.focal_px * np.exp(x[6])
        matrix = np.array([[focal, 0, x[7]], [0, focal, x[8]], [0, 0, 1.0]])
        h = np.linalg.inv(matrix @ np.column_stack([rotation[:, :2], x[3:6]]))
        middle = np.array([(view.width - 1) / 2, (view.height - 1) / 2])
        from_middle = ends - middle
        r2 = (from_middle**2).sum(axis=1, keepdims=True) / (
            np.hypot(view.width, view.height) / 2
        ) ** 2
        straight = ends + from_middle * x[9] * r2
        mapped = np.column_stack([straight, np.ones(2)]) @ h.T
        mapped = mapped[:, :2] / mapped[:, 2:]
        return np.hypot(*(mapped[1] - mapped[0]))

    assert length(surface, ends) == pytest.approx(of(found.x), rel=1e-5)
    # JCGM 100:2008, 5.2.2 on SciPy's Jacobian; "map" is our own widening for chi2 > dof.
    slope = approx_derivative(of, found.x, method="3-point").ravel()
    covariance = np.linalg.inv(found.jac.T @ found.jac)
    parts = surface.distance_u(*ends)
    parts.pop("map", None)
    ours = np.sqrt(sum(u**2 for u in parts.values()))
    assert ours == pytest.approx(np.sqrt(slope @ covariance @ slope), rel=2e-3)


@pytest.mark.slow
@pytest.mark.truth
def test_joint_u_and_false_refusals_by_sampling(camera):
    """JCGM 101:2008, 5.9: draw every input, look at the spread of the length.

    The En bound is meant to refuse right pairs in under 1 of 100 (our own aim).
    """
    rng = np.random.default_rng(3)
    off, worst, trials = [], [], 60
    for _ in range(trials):
        told = eye(camera)
        view = eye(camera, focal_px=told.focal_px * np.exp(rng.normal(0, 0.03)))
        grown = 1 + rng.normal(0, SIZE_U_MM, 2) / [FIRST_MM[0], SECOND_MM[0]]
        pair = pair_of(view, noise=rng.normal(0, PICK_U_PX, (8, 2)), grown=grown)
        try:
            surface = solve(pair, told.photo(exif=True))
        except ScaleError:
            worst.append(9.0)
            continue
        ends = view.project(ENDS_MM)
        parts = surface.distance_u(*ends)
        # Neither the lens nor the centre was drawn.
        u = np.sqrt(parts["picking"] ** 2 + parts["reference"] ** 2)
        off.append((length(surface, ends) - TRUE_MM) / u)
        worst.append(surface.beside.en)
    # A spread from 60 trials is known to 1 / sqrt(2 * 59) = 9 %.
    assert np.std(off) == pytest.approx(1.0, abs=0.28)
    assert np.sum(np.array(worst) > MAX_EN) <= 2  # 0.6 of 60 are meant, at most


def test_a_raised_reference_is_refused_unless_its_height_is_given(camera):
    view = eye(camera)
    photo = view.photo(exif=True)
    with pytest.raises(ScaleError, match="contradict each other") as refused:
        solve(pair_of(view, height_mm=6.0), photo)
    assert "lies off the surface" in refused.value.mend
    surface = solve(pair_of(view, height_mm=6.0, offset_mm=6.0), photo)
    assert length(surface, view.project(ENDS_MM)) == pytest.approx(TRUE_MM, rel=1e-6)


def test_a_first_that_is_raised(camera):
    view = eye(camera)
    pair = pair_of(view, height_mm=6.0, offset_mm=6.0)
    turned = PairReference(first=pair.second, second=pair.first)
    surface = solve(turned, view.photo(exif=True))
    assert length(surface, view.project(ENDS_MM)) == pytest.approx(TRUE_MM, rel=1e-6)


def test_a_line_adds_its_length_and_is_refused_where_it_contradicts(camera):
    view = eye(camera)
    photo = view.photo(exif=True)
    flat = pair_of(view).first
    (x0, y0), (x1, y1) = view.project(np.array([[0.0, 60.0], [70.0, 55.0]])).tolist()
    mm = float(np.hypot(70.0, 5.0))
    line = LineReference(ends_px=((x0, y0), (x1, y1)), length_mm=mm)
    both = solve(PairReference(first=line, second=flat), photo)
    assert (both.reference, both.beside.reference) == ("rectangle", "line")
    there = view.project(np.array([[5.0, 62.0], [65.0, 58.0]]))
    assert u_of(both, there) < 0.8 * u_of(solve(flat, photo), there)
    wrong = LineReference(ends_px=line.ends_px, length_mm=1.1 * mm)
    with pytest.raises(ScaleError, match="contradict each other"):
        solve(PairReference(first=flat, second=wrong), photo)


def test_two_lines_beside_a_rectangle(camera):
    view = eye(camera)
    ends = [
        tuple(p)
        for p in view.project(np.array([[0, 60], [70, 60], [80, 0], [80, 45.0]])).tolist()
    ]
    lines = LinesReference(
        first_px=(ends[0], ends[1]), first_mm=70.0, second_px=(ends[2], ends[3]), second_mm=45.0
    )
    pair = PairReference(first=lines, second=pair_of(view).first)
    surface = solve(pair, view.photo(exif=True))
    assert (surface.reference, surface.beside.reference) == ("rectangle", "two lines")
    assert length(surface, view.project(ENDS_MM)) == pytest.approx(TRUE_MM, rel=1e-5)


def test_what_makes_no_pair(camera):
    view = eye(camera)
    photo, flat = view.photo(exif=True), pair_of(view).first
    with pytest.raises(ScaleError, match="given twice"):
        solve(PairReference(first=flat, second=flat), photo)
    with pytest.raises(ScaleError, match="given twice"):
        solve(PairReference(first=CardReference(), second=CardReference()), photo)
    lines = [
        LineReference(ends_px=((100.0, y), (900.0, y)), length_mm=60.0) for y in (200.0, 900.0)
    ]
    with pytest.raises(ScaleError, match="neither reference tells"):
        solve(PairReference(first=lines[0], second=lines[1]), photo)


def test_a_pair_as_json(camera):
    pair = pair_of(eye(camera), offset_mm=1.5)
    document = reference_to_json(pair)
    assert document["second"]["offset_mm"] == 1.5
    assert "offset_mm" not in document["first"]
    assert reference_from_json(document) == pair
    card = CardReference(check_mm=80.1, number=2)
    assert reference_from_json(reference_to_json(card)) == card


def two_cards(card, at_mm, shrunk=1.0, third_mm=None):
    """A drawing of a card of set 1 and one of set 2 below it, printed ``shrunk``, or three."""
    places = [at_mm] if third_mm is None else [at_mm, third_mm]

    class Both(card):
        def drawing(self):
            light, margin, px_per_mm = super().drawing()
            below = round(75 * len(places) * px_per_mm)
            tall = np.full((light.shape[0] + below, light.shape[1]), 184, np.uint8)
            tall[: light.shape[0]] = light
            dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
            side = round(12 * shrunk * px_per_mm / 6) * 6
            inset = ((4, 4), (69.6, 4), (69.6, 37.98), (4, 37.98))
            for i, (place, corner) in enumerate(product(places, inset)):
                square = cv2.aruco.generateImageMarker(dictionary, 4 + i, side)
                square = np.where(square > 0, 204, 8).astype(np.uint8)
                left, top = (np.array(corner) * shrunk + place + margin) * px_per_mm
                white = round(3 * px_per_mm)
                left, top = round(left), round(top)
                tall[top - white : top + side + white, left - white : left + side + white] = 204
                tall[top : top + side, left : left + side] = cv2.GaussianBlur(
                    square, (0, 0), 2.0
                )
            return tall, margin, px_per_mm

    return Both()


@pytest.mark.slow
def test_two_cards_are_found_and_both_used(camera, card):
    view = camera(distance_mm=230.0, lean_deg=(10.0, -8.0), aim_mm=(42.8, 65.0))
    photo = two_cards(card, np.array([0.0, 66.0])).photograph(view, exif=True)
    assert [one.ids for one in find_cards(photo)] == [(0, 1, 2, 3), (4, 5, 6, 7)]
    both, alone = solve(CardReference(), photo), solve(CardReference(number=1), photo)
    assert both.beside is not None
    assert both.beside.en < 1
    assert alone.beside is None
    far = view.project(np.array([[10.0, 115.0], [75.0, 110.0]]))
    assert length(both, far) == pytest.approx(np.hypot(65.0, 5.0), abs=0.1)
    assert u_of(both, far) < 0.8 * u_of(alone, far)
    # What two cards of one print share is not made smaller: independent ones came to 0.71.
    assert both.distance_u(*far)["reference"] > 0.75 * alone.distance_u(*far)["reference"]


@pytest.mark.slow
def test_two_prints_of_one_set_are_two_cards(camera, card):
    """One of them was used and nothing said, though it may lie on another plane."""
    view = camera(distance_mm=230.0, lean_deg=(10.0, -8.0), aim_mm=(42.8, 65.0))
    seen = card().photograph(view).rgb.copy()
    there = replace(view, aim_mm=(42.8, -1.0))  # 66 mm lower on the plane
    lower = view.project(np.array([[0.0, 60.0]]))[0, 1]
    seen[round(lower) :] = card().photograph(there).rgb[round(lower) :]
    photo = view.photo(seen.copy(), exif=True)
    assert [one.ids for one in find_cards(photo)] == [(0, 1, 2, 3)] * 2
    both = solve(CardReference(), photo)
    assert both.beside is not None
    assert both.beside.en < 1
    far = view.project(np.array([[10.0, 115.0], [75.0, 110.0]]))
    assert length(both, far) == pytest.approx(np.hypot(65.0, 5.0), abs=0.1)
    nearer = replace(there, distance_mm=222.0)  # 8 mm above the other
    seen[round(lower) :] = card().photograph(nearer).rgb[round(lower) :]
    with pytest.raises(ScaleError, match="contradict each other"):
        solve(CardReference(), view.photo(seen, exif=True))


@pytest.mark.slow
def test_what_is_printed_on_either_card_is_never_called(camera, card):
    """A red badge on each card, and a red dot of the same size on the surface between them."""
    view = camera(distance_mm=230.0, lean_deg=(10.0, -8.0), aim_mm=(42.8, 65.0))
    rgb = two_cards(card, np.array([0.0, 66.0])).photograph(view).rgb.copy()
    badges, dot = [[42.8, 27.0], [42.8, 93.0]], [42.8, 60.0]
    for at in view.project(np.array([*badges, dot])):
        cv2.circle(rgb, (round(at[0]), round(at[1])), 20, (150, 20, 30), -1, cv2.LINE_AA)
    photo = view.photo(rgb, exif=True)
    found = suggest(photo, solve(CardReference(), photo)).found
    middles = [one.outline_px.mean(axis=0) for one in found]
    assert len(middles) == 1
    assert np.allclose(middles[0], view.project(np.array([dot]))[0], atol=3.0)
    one_only = solve(CardReference(number=1), photo)
    assert [len(corners) for corners in one_only.other_cards_px] == [16]
    assert len(suggest(photo, one_only).found) == 1  # nor on a card that is not used
    untold = replace(one_only, other_cards_px=())
    assert len(suggest(photo, untold).found) == 2  # it is that which keeps the badge out


@pytest.mark.slow
def test_what_is_printed_on_a_third_card_is_never_called(camera, card):
    """Two make the scale; the red badge on the third is no indication, the dot beside it is."""
    view = camera(distance_mm=330.0, lean_deg=(8.0, -6.0), aim_mm=(42.8, 100.0))
    three = two_cards(card, np.array([0.0, 66.0]), third_mm=np.array([0.0, 132.0]))
    rgb = three.photograph(view).rgb.copy()
    badges, dot = [[42.8, 27.0], [42.8, 93.0], [42.8, 159.0]], [42.8, 125.0]
    for at in view.project(np.array([*badges, dot])):
        cv2.circle(rgb, (round(at[0]), round(at[1])), 14, (150, 20, 30), -1, cv2.LINE_AA)
    photo = view.photo(rgb, exif=True)
    assert [one.ids[0] for one in find_cards(photo)] == [0, 4, 8]
    made = solve(CardReference(), photo)
    assert made.beside is not None
    assert len(made.other_cards_px) == 1
    found = suggest(photo, made).found
    assert len(found) == 1
    assert len(suggest(photo, replace(made, other_cards_px=())).found) == 2
    middle = found[0].outline_px.mean(axis=0)
    assert np.allclose(middle, view.project(np.array([dot]))[0], atol=3.0)


@pytest.mark.slow
def test_a_card_copied_smaller_contradicts_the_other(camera, card):
    view = camera(distance_mm=230.0, lean_deg=(10.0, -8.0), aim_mm=(42.8, 65.0))
    photo = two_cards(card, np.array([0.0, 66.0]), shrunk=0.98).photograph(view, exif=True)
    with pytest.raises(ScaleError, match=r"contradict each other.*2\.\d %"):
        solve(CardReference(), photo)
    assert solve(CardReference(number=1), photo).beside is None


@pytest.mark.slow
def test_a_rule_that_reads_itself_and_a_rectangle(camera, rule):
    """Its strokes join the fit beside four corners; drawn and projected, so truth is known."""
    view = camera(lean_deg=(12.0, -8.0), turn_deg=5.0, aim_mm=(50.0, 10.0), distance_mm=190.0)
    photo = rule(length_mm=100.0).photograph(view, exif=True)
    (x0, y0), (x1, y1) = view.project(np.array([[10.0, 1.5], [90.0, 1.5]])).tolist()
    line = LineReference(ends_px=((x0, y0), (x1, y1)), length_mm=80.0)
    size, aside = (30.0, 20.0), np.array([30.0, -30.0])
    noise = np.random.default_rng(2).normal(0, PICK_U_PX, (4, 2))
    flat = rectangle(view.project(corners(size) + aside) + noise, size)
    ends = view.project(np.array([[20.0, 30.0], [80.0, 35.0]]))
    alone = solve(line, photo)
    assert "steps of mm" in alone.reading
    for pair in ((line, flat), (flat, line)):
        both = solve(PairReference(first=pair[0], second=pair[1]), photo)
        assert "steps of mm" in both.reading
        assert both.beside.en < MAX_EN
        u = u_of(both, ends)
        assert abs(length(both, ends) - np.hypot(60.0, 5.0)) < 2 * u
        assert u < min(u_of(alone, ends), u_of(solve(flat, photo), ends))
    # A rectangle that is larger than it is said to be.
    small = rectangle(view.project(corners(size) * 1.15 + aside), size)
    with pytest.raises(ScaleError, match="contradict each other"):
        solve(PairReference(first=line, second=small), photo)
