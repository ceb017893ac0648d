"""Bleed-out over time on a plate whose dye grows by figures of our own."""

import csv
import json
from dataclasses import replace

import numpy as np
import pytest

from ptmark.errors import SeriesError, UsageError
from ptmark.least import Least
from ptmark.report.growth import growth_picture
from ptmark.report.growth_data import growth_json, write_growth_csv
from ptmark.report.growth_pdf import write_growth_pdf
from ptmark.series import WINDOWS, choose, growth_of, read_window

MINUTES = (2.0, 5.0, 12.0, 25.0, 75.0)
RADIUS = {2.0: 0.7, 5.0: 1.0, 12.0: 1.4, 25.0: 1.8, 75.0: 2.2}  # of a pore, mm
LENGTH = {2.0: 6.0, 5.0: 7.0, 12.0: 8.0, 25.0: 9.0, 75.0: 10.0}  # of a crack, mm


def plate_at(shop, minutes):
    """One pore, one crack, two pores that flow together at 25 min, one that shows late."""
    r, length = RADIUS[minutes], LENGTH[minutes]
    discs = [(30, 30, r), (80, 55, 0.9 * r), (82.9, 55, 0.9 * r)]
    if minutes >= 12:
        discs.append((95, 30, 0.8))
    return shop.Plate(discs=discs, lines=[(60 - length / 2, 40, 60 + length / 2, 40, 0.9)])


@pytest.fixture(scope="module")
def frames(shop, cameras):
    return [
        shop.frame(plate_at(shop, m), cameras[n % 3], minutes=m, seed=n, name=f"at-{m:g}.jpg")
        for n, m in enumerate(MINUTES)
    ]


@pytest.fixture(scope="module")
def growth(frames):
    return growth_of(frames[::-1], WINDOWS["asme-v"])  # any order will do


def curve_at(growth, x, y, cameras):
    """The curve whose readings lie at a place of the plate, mm."""
    base = growth.frames[growth.base]
    camera = cameras[MINUTES.index(base.minutes) % 3]
    at = camera([[x, y]])[0]
    near = {one.id: np.linalg.norm(one.outline_px.mean(axis=0) - at) for one in base.seen}
    name = min(near, key=near.get)
    return next(curve for curve in growth.curves if name in curve.id.split("+"))


@pytest.mark.slow
@pytest.mark.truth  # the sizes the plate was drawn with
@pytest.mark.parametrize("case", ["pore", "crack"])
def test_curves_follow_the_truth_within_u(growth, cameras, case):
    curve = curve_at(growth, *{"pore": (30, 30), "crack": (60, 40)}[case], cameras)
    assert [one.minutes for one in curve.readings] == list(MINUTES)
    for one in curve.readings:
        if case == "pore":
            length, area = 2 * RADIUS[one.minutes], np.pi * RADIUS[one.minutes] ** 2
        else:
            length = np.hypot(LENGTH[one.minutes], 0.9)  # caliper of a rectangle: its diagonal
            area = 0.9 * LENGTH[one.minutes]
        assert abs(one.length.value - length) <= max(one.length.expanded, 0.1)
        assert abs(one.area.value - area) <= one.area.expanded
        assert one.length.expanded < 0.5
    assert curve.missing == {}


@pytest.mark.slow
def test_two_that_flow_together_are_one_curve_measured_end_to_end(growth, cameras):
    curve = curve_at(growth, 81.5, 55, cameras)
    parts = {one.minutes: len(one.parts) for one in curve.readings}
    assert parts == {2.0: 2, 5.0: 2, 12.0: 2, 25.0: 1, 75.0: 1}
    assert "number of parts" in curve.notes[0]
    for one in curve.readings:
        across = 2.9 + 2 * 0.9 * RADIUS[one.minutes]  # outer edge to outer edge
        assert one.length.value == pytest.approx(across, abs=max(one.length.expanded, 0.1))
        if len(one.parts) == 2:
            area = 2 * np.pi * (0.9 * RADIUS[one.minutes]) ** 2
            assert abs(one.area.value - area) <= one.area.expanded


@pytest.mark.slow
def test_one_that_shows_late_says_so(growth, cameras):
    curve = curve_at(growth, 95, 30, cameras)
    assert [one.minutes for one in curve.readings] == [12.0, 25.0, 75.0]
    assert {MINUTES[n]: why for n, why in curve.missing.items()} == {
        2.0: "nothing was called there",
        5.0: "nothing was called there",
    }
    assert len(growth.curves) == 4


@pytest.mark.slow
def test_the_photo_in_the_window_is_named_and_gives_the_letters(growth):
    assert growth.frames[growth.choice.index].minutes == 25.0
    assert growth.base == growth.choice.index
    letters = {one.id for one in growth.frames[growth.base].seen}
    assert {curve.id for curve in growth.curves} == letters


@pytest.mark.slow
def test_a_photo_of_another_area_is_left_out_with_its_reason(shop, cameras, frames):
    stray = shop.frame(shop.Plate(seed=50), cameras[1], minutes=8.0, name="stray.jpg")
    made = growth_of([*frames[2:4], stray], WINDOWS["asme-v"])
    assert [name for name, _ in made.left_out] == ["stray.jpg"]
    assert len(made.frames) == 2
    with pytest.raises(SeriesError, match="no photo fits"):
        growth_of([frames[0], stray], WINDOWS["asme-v"])
    late = replace(stray, minutes=50.0)  # the last one in the window, so the base at first
    made = growth_of([*frames[2:4], late], WINDOWS["asme-v"], left_out=[("a.jpg", "torn")])
    assert [name for name, _ in made.left_out] == ["a.jpg", "stray.jpg"]
    assert made.frames[made.base].minutes == made.frames[made.choice.index].minutes == 25.0


@pytest.mark.slow
def test_times_that_cannot_be_are_refused(frames):
    with pytest.raises(SeriesError, match="no series"):
        growth_of(frames[:1], WINDOWS["asme-v"])
    with pytest.raises(SeriesError, match="same time"):
        growth_of([frames[0], frames[0]], WINDOWS["asme-v"])
    with pytest.raises(SeriesError, match="no time"):
        growth_of([frames[0], replace(frames[1], minutes=None)], WINDOWS["asme-v"])


@pytest.mark.slow
def test_data_csv_and_plot_hold_the_same_figures(growth, tmp_path, pages_of):
    data = json.loads(json.dumps(growth_json(growth), allow_nan=False))
    assert data["evaluate"]["file"] == "at-25.jpg"
    assert data["window"]["source"].startswith("ASME BPVC V, T-676")
    path = tmp_path / "growth.csv"
    write_growth_csv(path, growth)
    with path.open(newline="", encoding="utf-8-sig") as file:
        rows = list(csv.DictReader(file))
    told = [
        (curve["id"], one["file"], one["length_mm"], one["area_u_mm2"])
        for curve in data["indications"]
        for one in curve["readings"]
    ]
    assert told == [
        (r["indication"], r["file"], float(r["length_mm"]), float(r["area_u_mm2"]))
        for r in rows
    ]
    papers = [tmp_path / "one.pdf", tmp_path / "two.pdf"]
    for paper in papers:
        write_growth_pdf(paper, growth)
    assert papers[0].read_bytes() == papers[1].read_bytes()
    text = "".join(pages_of(papers[0]))
    assert all(f"{float(row['length_mm']):.2f} ±" in text for row in rows)
    picture = growth_picture(growth)
    assert picture.shape[1] == 1600
    ink = (picture == (20, 66, 190)).all(axis=-1)  # deep blue of the palette
    assert ink.sum() > 500
    red, green, blue = (picture[..., k].astype(int) for k in range(3))
    assert not ((red > green + 40) & (red > blue + 40)).any()  # our marks are never red


@pytest.mark.slow
def test_a_length_that_may_go_on_is_told_as_the_least(frames, growth, tmp_path, pages_of):
    """A hand over half of a crack at 12 min is no dip of its curve."""
    short = frames[2].seen[0]
    cut = replace(short, measurement=replace(short.measurement, least={Least.COVERED}))
    hand = replace(frames[2], seen=(cut, *frames[2].seen[1:]))
    made = growth_of([*frames[:2], hand, *frames[3:]], WINDOWS["asme-v"])
    least = [(c, one) for c in made.curves for one in c.readings if one.is_least]
    ((curve, reading),) = least
    assert (reading.minutes, short.id in reading.parts) == (12.0, True)
    assert any(note.startswith("at 12 min the least that it can be") for note in curve.notes)
    write_growth_csv(tmp_path / "g.csv", made)
    with (tmp_path / "g.csv").open(newline="", encoding="utf-8-sig") as file:
        rows = [r for r in csv.DictReader(file) if r["is_least"] == "True"]
    assert [(r["indication"], r["minutes"]) for r in rows] == [(curve.id, "12.0")]
    write_growth_pdf(tmp_path / "g.pdf", made)
    text = "".join(pages_of(tmp_path / "g.pdf"))
    assert f"≥ {reading.length.value:.2f} ±" in text


# ASME BPVC V T-676.1: 10 to 60 min; ISO 3452-1: 10 to 30 min (from memory). Both ends belong.
@pytest.mark.truth
@pytest.mark.parametrize(
    ("minutes", "window", "index"),
    [
        ([2, 9.9], "asme-v", None),
        ([2, 10], "asme-v", 1),
        ([2, 60, 60.1], "asme-v", 1),
        ([61, 90], "asme-v", None),
        ([12, 30, 31], "iso-3452-1", 1),
        ([40, 20, 5], "iso-3452-1", 1),
        ([7, 9, 11], "8-10", 1),
    ],
)
def test_the_photo_to_evaluate(minutes, window, index):
    choice = choose(minutes, read_window(window))
    assert choice.index == index
    assert ("no photo" in choice.says) == (index is None)


@pytest.mark.parametrize("text", ["", "10", "20-10", "a-b", "asme"])
def test_a_window_that_is_none_is_refused(text):
    with pytest.raises(UsageError, match="no time window"):
        read_window(text)
