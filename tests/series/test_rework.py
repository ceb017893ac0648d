"""Before and after rework, on plates whose changes are known."""

import json
from dataclasses import replace

import numpy as np
import pytest

from ptmark.dye import LeftOut
from ptmark.least import Least
from ptmark.photo import Photo
from ptmark.report import rework
from ptmark.report.marks import _dashes
from ptmark.report.rework import rework_json, rework_picture
from ptmark.series import KINDS, compare, register_views

pytestmark = pytest.mark.slow

# Places on the plate, mm.
GONE, STAYED, GROWN, NEW, UNSEEN = (30, 30), (80, 60), (60, 45), (95, 30), (8, 47)


@pytest.fixture(scope="module")
def pair(shop, cameras):
    """The photo after is taken from nearer and does not show the plate's left end."""
    before = shop.Plate(
        discs=[(*GONE, 1.5), (*STAYED, 1.2), (*UNSEEN, 1.0)],
        lines=[(GROWN[0] - 3, GROWN[1], GROWN[0] + 3, GROWN[1], 0.9)],
    )
    after = shop.Plate(
        discs=[(*STAYED, 1.2), (*NEW, 1.0)],
        lines=[(GROWN[0] - 4, GROWN[1], GROWN[0] + 4, GROWN[1], 0.9)],
    )
    near = shop.shot(scale=11.0, turn=4, shift=(-60, 10))
    return (
        shop.frame(before, cameras[0], name="before.jpg"),
        shop.frame(after, near, seed=3, name="after.jpg"),
        near,
    )


@pytest.fixture(scope="module")
def lead(pair):
    return register_views(pair[0].view, pair[1].view)


@pytest.fixture(scope="module")
def changes(pair, lead):
    return compare(pair[0], pair[1], lead)


def letters(frame, camera, place):
    at = camera([place])[0]
    nearest = min(frame.seen, key=lambda one: np.linalg.norm(one.outline_px.mean(axis=0) - at))
    assert np.linalg.norm(nearest.outline_px.mean(axis=0) - at) < 20
    return (nearest.id,)


def test_each_change_is_what_it_is(pair, changes, cameras):
    before, after, near = pair
    told = {one.kind: one for one in changes}
    assert [one.kind for one in changes] == list(KINDS)  # one of each, what needs action first
    assert told["gone"].before == letters(before, cameras[0], GONE)
    assert told["new"].after == letters(after, near, NEW)
    assert told["stayed"].before == letters(before, cameras[0], STAYED)
    assert told["stayed"].after == letters(after, near, STAYED)
    assert told["unclear"].before == letters(before, cameras[0], UNSEEN)
    assert "does not show" in told["unclear"].says


@pytest.mark.truth  # the lengths the plates were drawn with: 8 and 6 mm by 0.9 mm
def test_growth_is_called_by_its_uncertainty(changes):
    grown = next(one for one in changes if one.kind == "grown")
    truth = np.hypot(8, 0.9) - np.hypot(6, 0.9)
    assert abs(grown.difference_mm - truth) <= grown.difference_u_mm
    # ISO/IEC 17043:2010, B.3.1.3: E_n = difference / sqrt(U1**2 + U2**2).
    u = np.hypot(grown.length_before.expanded, grown.length_after.expanded)
    assert grown.ratio == pytest.approx(grown.difference_mm / u)
    assert grown.ratio > 1
    stayed = next(one for one in changes if one.kind == "stayed")
    assert abs(stayed.ratio) <= 1


def test_a_difference_within_u_is_no_growth(shop, cameras):
    frames = [
        shop.frame(shop.Plate(discs=[(60, 45, r)]), cameras[n], seed=n)
        for n, r in enumerate((1.5, 1.51))
    ]
    (only,) = compare(*frames, register_views(frames[0].view, frames[1].view))
    assert only.kind == "stayed"


def test_a_blob_left_out_after_is_unclear_and_not_gone(pair, lead):
    before, after, near = pair
    gone = near([GONE])[0] + np.array([[-9, -9], [9, -9], [9, 9], [-9, 9]])
    blob = LeftOut(outline_px=gone, edge=after.seen[0].edge, reason="too pale")
    found = compare(before, replace(after, left_out=(blob,)), lead)
    assert [one.kind for one in found].count("gone") == 0
    assert any("too pale" in one.says for one in found if one.kind == "unclear")


@pytest.mark.parametrize(
    ("colour", "kind"),
    [
        ((30, 60, 150), "unclear"),  # a blue glove
        ((110, 110, 110), "unclear"),  # bare metal: a quarter of the developer's light
        ((215, 215, 215), "gone"),  # developer
        ((235, 235, 225), "gone"),  # ground bright
    ],
)
def test_a_place_that_is_covered_is_not_gone(pair, lead, cameras, colour, kind):
    before, after, near = pair
    look = after.view.look.copy()
    x, y = (near([GONE])[0] / after.view.look_step).astype(int)
    look[y - 12 : y + 12, x - 12 : x + 12] = colour
    dim = np.rint(look * 0.8).astype(np.uint8)  # a darker photo: the same of each place
    for one in (look, dim):
        shown = replace(after, view=replace(after.view, look=one))
        told = {one.before: one for one in compare(before, shown, lead)}
        here = told[letters(before, cameras[0], GONE)]
        assert here.kind == kind
        assert ("something lies over the place" in here.says) == (kind == "unclear")
        assert sum(one.kind == "unclear" for one in told.values()) == 1 + (kind == "unclear")


def test_a_place_that_light_washes_out_is_not_gone(pair, lead, cameras):
    """What is clipped to white may hold pale dye: glare over a crack is no repair."""
    before, after, near = pair
    x, y = (near([GONE])[0] / after.view.look_step).astype(int)
    for value, kind in ((255, "unclear"), (245, "gone")):
        look = after.view.look.copy()
        look[y - 12 : y + 12, x - 12 : x + 12] = value
        shown = replace(after, view=replace(after.view, look=look))
        told = {one.before: one for one in compare(before, shown, lead)}
        here = told[letters(before, cameras[0], GONE)]
        assert here.kind == kind
        assert ("so bright" in here.says) == (kind == "unclear")


def cut_short(frame, name):
    """The frame with one indication that something may cover an end of."""
    seen = [
        replace(one, measurement=replace(one.measurement, least={Least.COVERED}))
        if one.id == name
        else one
        for one in frame.seen
    ]
    return replace(frame, seen=tuple(seen))


def test_what_is_not_shown_whole_is_neither_grown_nor_stayed(pair, lead, changes):
    before, after, _ = pair
    told = {one.kind: one for one in changes}
    grown, stayed = told["grown"], told["stayed"]
    first = compare(cut_short(before, grown.before[0]), after, lead)
    (one,) = [one for one in first if one.before == grown.before]
    assert (one.kind, one.least_before, one.least_after) == ("unclear", True, False)
    second = compare(before, cut_short(after, stayed.after[0]), lead)
    (one,) = [one for one in second if one.after == stayed.after]
    assert (one.kind, one.least_before, one.least_after) == ("unclear", False, True)
    data = rework_json(second, before, after, lead)
    assert [row["length_after_is_least"] for row in data["unclear"]] == [False, True]
    # A length that is at least so much longer has grown.
    third = compare(before, cut_short(after, grown.after[0]), lead)
    assert [one.kind for one in third if one.after == grown.after] == ["grown"]


def test_data_and_picture_show_every_change(pair, lead, changes):
    before, after, _ = pair
    data = json.loads(json.dumps(rework_json(changes, before, after, lead), allow_nan=False))
    assert {kind: len(data[kind]) for kind in KINDS} == dict.fromkeys(KINDS, 1)
    assert data["registration"]["inliers"] == lead.inliers
    assert 0 < data["registration"]["u_mm"] < 0.1
    assert data["registration"]["u_px"] * after.surface.mm_per_px() == pytest.approx(
        data["registration"]["u_mm"], rel=0.2
    )
    blank = [
        Photo.from_array(np.full((*f.view.size[::-1], 3), 200, np.uint8)).rgb
        for f in (before, after)
    ]
    picture = rework_picture(changes, (before, blank[0]), (after, blank[1]), lead)
    assert picture.shape[1] > 2 * before.view.size[0]
    marked = (picture != 200).any(axis=-1)
    for frame, left in ((before, 0), (after, before.view.size[0] + 24)):
        for one in frame.seen:
            x, y = one.outline_px.mean(axis=0)
            top = picture.shape[0]  # the head's height is found by the first blank row
            head = next(r for r in range(top) if (picture[r, 5] == 200).all())
            inner = picture[round(y) + head, round(x) + left]
            assert (inner == 200).all()  # no mark hides an indication
            around = marked[
                round(y) + head - 60 : round(y) + head + 60,
                max(0, round(x) + left - 60) : round(x) + left + 60,
            ]
            assert around.sum() > 50
    red, green, blue = (picture[..., k].astype(int) for k in range(3))
    assert not ((red > green + 40) & (red > blue + 40)).any()


def test_each_kind_has_a_ring_and_a_sign_of_its_own(pair, lead, changes, monkeypatch):
    """Told apart without colour: WCAG 2.2, success criterion 1.4.1."""
    before, after, _ = pair
    rings, plates, lines = [], [], []

    def told(kept, draw):
        return lambda *given: kept.append(given) or draw(*given)

    monkeypatch.setattr(rework, "draw_ring", told(rings, rework.draw_ring))
    monkeypatch.setattr(rework, "plate_picture", told(plates, rework.plate_picture))
    monkeypatch.setattr(rework, "draw_styled", told(lines, rework.draw_styled))
    blank = np.full((*before.view.size[::-1], 3), 200, np.uint8)
    rework_picture(changes, (before, blank), (after, blank.copy()), lead)
    assert len({given[-1] for given in rings}) == len(KINDS)
    assert len({given[0].split()[1] for given in plates}) == len(KINDS)
    assert [given[-1] for given in lines] == [rework._STYLES[kind] for kind in KINDS]  # legend


def test_a_line_of_dashes_and_dots_has_both():
    line = np.array([[0.0, 0.0], [600.0, 0.0]])
    sizes = {round(float(np.ptp(piece[:, 0]))) for piece in _dashes(line, (7.0, 3.0, 0.4, 3.0))}
    pieces = _dashes(line, (7.0, 3.0, 0.4, 3.0))
    assert len(pieces) == 2 * round(600 / 13.4)
    assert sizes == {7, 0}  # px, drawn with round ends
    (one, two) = _dashes(line, (4.0, 2.0))[:2]
    assert two[0, 0] - one[0, 0] == pytest.approx(6.0)
