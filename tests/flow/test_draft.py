"""A draft brings an inspection back, or says why not."""

import json
import shutil

import numpy as np
import pytest

from ptmark.dye import EdgeQuality
from ptmark.errors import PhotoError, RecordError
from ptmark.inspection import Inspection
from ptmark.inspection.draft import draft_to_json, restore_draft
from ptmark.scale import CardReference


@pytest.fixture
def work(photo_file, tmp_path):
    copy = tmp_path / "photo.png"
    shutil.copy(photo_file, copy)
    made = Inspection()
    made.open(copy)
    made.set_reference(CardReference())
    made.change(
        "fill in",
        profile="iso-23277-2",
        relief_mm=0.0,
        fields={"part_number": "DEMO-7"},
        area_px=((180.0, 240.0), (1100.0, 240.0), (1100.0, 600.0)),
    )
    outline = np.array([[300.0, 450.0], [340.25, 450.0], [340.0, 470.5]])
    made.add(
        outline, EdgeQuality(shift_px=0.5, noise_px=0.2, source="snapped", end_shift_px=0.9)
    )
    return made


def test_everything_comes_back(work):
    document = json.loads(json.dumps(draft_to_json(work)))
    again = Inspection()
    restore_draft(again, document)
    assert again.photo.info.sha256 == work.photo.info.sha256
    assert draft_to_json(again) == document
    assert again.surface is not None
    one, other = again.state.marked[0], work.state.marked[0]
    assert one.edge == other.edge
    assert again.measurement(one).length == work.measurement(other).length


def test_an_empty_draft_comes_back_empty():
    again = Inspection()
    restore_draft(again, draft_to_json(Inspection()))
    assert again.photo is None


def test_a_photo_that_is_gone_is_said(work):
    document = draft_to_json(work)
    work.photo.info.path.unlink()
    with pytest.raises(PhotoError):
        restore_draft(Inspection(), document)


def test_a_photo_that_changed_is_said(work):
    document = draft_to_json(work)
    path = work.photo.info.path
    path.write_bytes(path.read_bytes() + b"x")
    with pytest.raises(RecordError, match="changed"):
        restore_draft(Inspection(), document)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda d: d.pop("marked"),
        lambda d: d.update(schema="ptmark-draft/99"),
        lambda d: d.update(marked=[{"id": "A"}]),
        lambda d: d.update(area_px=[[1]]),
    ],
)
def test_what_does_not_fit_is_one_clear_error(work, spoil):
    document = draft_to_json(work)
    spoil(document)
    with pytest.raises(RecordError, match="draft"):
        restore_draft(Inspection(), document)
