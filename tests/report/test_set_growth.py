"""Bleed-out plotted from a record: the record's own numbers at its photos' own times."""

from types import SimpleNamespace

import numpy as np
import pytest

from ptmark.report import set_growth
from ptmark.report.chart import Chart, Line, draw_chart
from ptmark.report.growth import curve_look
from ptmark.report.pages.set import _why_of_record
from ptmark.report.palette import NAVY
from ptmark.report.set_growth import bleedout


def one(letter, length, area):
    return {
        "id": letter,
        "length_mm": length,
        "length_u_mm": None if length is None else 0.1,
        "area_mm2": area,
        "area_u_mm2": None if area is None else 0.3,
    }


def record(photos, developed="10:00", profile="iso-23277-2"):
    """A record of photos, each the time it was taken and its indications."""
    views = tuple(
        SimpleNamespace(
            photo={"file": f"{number}.jpg", "camera": {"taken": taken}}, indications=shown
        )
        for number, (taken, shown) in enumerate(photos, 1)
    )
    return SimpleNamespace(
        views=lambda: views,
        fields={"developer_dry_at": developed},
        evaluation={"profile": profile},
    )


LATE = ("2026-01-15T10:25:00", [one("A", 9.0, 8.0), one("C", 2.0, 3.0)])
EARLY = ("2026-01-15T10:04:30", [one("A", 8.0, 5.0), one("B", 1.0, 1.0), one("D", None, None)])


def test_points_are_the_records_own_in_order_of_time(monkeypatch):
    drawn = []

    def keep(chart, width, height, unit):
        drawn.append(chart)
        return np.zeros((height, width, 3), np.uint8)

    monkeypatch.setattr(set_growth, "draw_chart", keep)
    made = bleedout(record([LATE, EARLY]))
    assert made.picture is not None
    length, area = drawn
    # B, C and D stand in one photo each, so that there is nothing to follow
    assert [line.name for line in length.lines] == ["A"]
    # minutes by hand: 10:04:30 and 10:25:00 less 10:00
    assert length.lines[0].points.tolist() == [[4.5, 8.0, 0.1], [25.0, 9.0, 0.1]]
    assert area.lines[0].points.tolist() == [[4.5, 5.0, 0.3], [25.0, 8.0, 0.3]]


def test_the_plot_is_drawn_and_says_what_it_is():
    made = bleedout(record([EARLY, LATE]))
    assert made.picture.shape[1:] == (1600, 3)
    assert (made.picture < 128).any()
    assert "10:00" in made.says
    assert "Measured points only" in made.says


@pytest.mark.parametrize(
    ("taken", "profile", "says"),
    [  # ISO 3452-1: 10 to 30 min; ASME V, T-676.1: 10 to 60 min
        (
            "10:30",
            "iso-23277-2",
            "To evaluate: 2.jpg, taken at 30 min, the last photo within 10",
        ),
        ("10:31", "iso-23277-2", "No photo to evaluate: no photo was taken within 10 to 30"),
        ("10:31", "asme-viii-1-app-8", "To evaluate: 2.jpg, taken at 31 min"),
        (
            "11:00",
            "",
            "To evaluate: 2.jpg, taken at 60 min, the last photo within 10 to 60 min",
        ),
        ("10:09", "", "No photo to evaluate: no photo was taken within 10 to 60 min"),
    ],
)
def test_the_photo_to_evaluate_is_named_by_the_time_of_the_criteria(taken, profile, says):
    made = bleedout(record([EARLY, (f"2026-01-15T{taken}:00", LATE[1])], profile=profile))
    assert made.says.startswith(says)


@pytest.mark.parametrize(
    ("photos", "developed", "why"),
    [
        ([EARLY, LATE], "", "does not say when the developer was dry"),
        ([EARLY, LATE], "noon", "'noon' is no time"),
        ([EARLY, LATE], "10:10", "1.jpg: was taken -5.5 min after"),
        ([EARLY, ("", LATE[1])], "10:00", "2.jpg: the photo does not tell when"),
        ([EARLY, (EARLY[0], LATE[1])], "10:00", "no indication bears one letter"),
        ([EARLY], "10:00", "no indication bears one letter"),
    ],
)
def test_where_nothing_can_be_plotted_the_reason_is_told(photos, developed, why):
    made = bleedout(record(photos, developed))
    assert made.picture is None
    assert why in made.says


def test_the_time_to_evaluate_is_drawn_where_no_curve_reaches_it():
    points = np.array([[2.0, 1.0, 0.1], [10.0, 2.0, 0.1]])
    ink, style = curve_look(0)
    line = Line(name="A", points=points, ink=ink, style=style)
    made = draw_chart(
        Chart(title="", lines=(line,), span=(10.0, 60.0), marked=60.0), 800, 400, 20.0
    )
    dark = (made == NAVY).all(axis=-1).sum(axis=0)
    assert dark.max() > 100  # the upright line, in dashes, of a frame some 260 px high


@pytest.mark.parametrize(
    ("held", "says"),
    [
        (2, "in the photo to be evaluated"),  # at 25 min, within 10 to 30
        (1, "as the photo to be evaluated shows less, or not all of it"),
        (None, "least uncertain"),  # photos without a scale: none is of record, and none shown
    ],
)
def test_why_a_size_is_of_record_is_said(held, says):
    again = {"of_record": held, "chosen": False, "sizes": [{"en": None}]}
    assert _why_of_record(record([EARLY, LATE]), again) == says
