"""ptmark on the demo photos: lengths within their stated uncertainty, verdicts as drawn.

The truth is that of the renderer, which shares no code with ptmark; see test_truth.py.
"""

import json
from pathlib import Path

import numpy as np
import pytest
import shapely

from ptmark.inspection import Inspection
from ptmark.scale import CardReference

FOLDER = Path(__file__).resolve().parents[2] / "sample_images"
NAMES = ("good", "rejectable", "undecided", "hard")
pytestmark = [pytest.mark.truth, pytest.mark.slow]


@pytest.fixture(scope="module", params=NAMES)
def measured(request):
    """A demo photo worked through as `ptmark measure` does, with its truth."""
    truth = json.loads((FOLDER / f"{request.param}.json").read_text(encoding="utf-8"))
    inspection = Inspection()
    inspection.open(FOLDER / truth["photo"])
    inspection.set_reference(CardReference())
    inspection.set_suggestions(inspection.look())
    return inspection, truth


def pairs(inspection, truth):
    """Each called indication with the true ones that it overlaps."""
    true = [(one, shapely.Polygon(one["outline_px"])) for one in truth["indications"]]
    for called in inspection.counted:
        shape = shapely.make_valid(shapely.Polygon(called.outline_px))
        yield inspection.measurement(called), [one for one, p in true if p.intersects(shape)]


def test_each_indication_is_called_once_and_nothing_else(measured):
    inspection, truth = measured
    assert all(len(hits) == 1 for _, hits in pairs(inspection, truth))
    called = [hits[0]["outline_px"][0] for _, hits in pairs(inspection, truth)]
    wanted = [one["outline_px"][0] for one in truth["indications"] if one["length_mm"] >= 1.5]
    assert len({tuple(c) for c in called}) == len(called)
    assert [one for one in wanted if one not in called] == []


def test_lengths_lie_within_their_uncertainty(measured):
    for made, (one, *_) in pairs(*measured):
        assert made.length.value == pytest.approx(one["length_mm"], abs=made.length.expanded)
        assert made.length.expanded < 0.05 * one["length_mm"] + 0.3  # says something, too
        assert made.shape == ("linear" if one["kind"] == "crack" else "rounded")


def test_widths_lie_about_their_uncertainty(measured):
    # k = 2 leaves one value in twenty outside (JCGM 100:2008, 6.3.3); half as far again, about
    # one in four hundred. Twenty widths on four photos: none may lie that far out.
    for made, (one, *_) in pairs(*measured):
        assert abs(made.width.value - one["width_mm"]) <= 1.5 * made.width.expanded


def test_tilt_and_distance_are_those_of_the_camera(measured):
    inspection, truth = measured
    camera = truth["camera"]
    # Off by what the rounding of the EXIF focal length to a whole mm leaves open: 1 in 52.
    assert inspection.surface.tilt_deg == pytest.approx(camera["tilt_deg"], abs=1.5)
    rule = inspection.surface.to_mm(np.array(truth["line"]["ends_px"]))
    assert np.linalg.norm(rule[1] - rule[0]) == pytest.approx(150.0, rel=0.01)
    assert inspection.surface.working_distance_mm == pytest.approx(
        camera["distance_mm"], rel=0.1
    )


@pytest.mark.parametrize("profile", ["iso-23277-2", "asme-viii-1-app-8"])
def test_the_verdict_is_the_one_that_was_drawn(measured, profile):
    inspection, truth = measured
    inspection.change("choose the criteria", profile=profile)
    assert inspection.evaluation().verdict == truth["expects"][profile]
