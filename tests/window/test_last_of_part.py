"""A part number brings back what its last inspection had: offered, and taken by one click."""

import pytest

from ptmark.archive import add_record, open_archive
from ptmark.inspection import Inspection
from ptmark.record import save_record
from ptmark.scale import CardReference

pytestmark = pytest.mark.gui

FIELDS = {
    "part_number": "DEMO-40",
    "serial_number": "S1",
    "material": "1.4301",
    "procedure": "P-7",
    "penetrant_batch": "B1, 2027-01",
    "surface_temperature": "21 °C",
    "remarks": "one wipe-off",
}


@pytest.fixture
def record(scene_file):
    made = Inspection()
    made.open(scene_file)
    made.set_reference(CardReference())
    made.change("fill in", fields=FIELDS, profile="iso-23277-1", thickness_mm=12.0)
    return made.to_record(record_id="1" * 32, created="2026-03-04T05:06:07Z")


@pytest.fixture
def part_field(window, idle):
    def enter(number):
        window.part_form.fields["part_number"].setText(number)
        window.part_form.fields["part_number"].commit()
        idle()

    return enter


def assert_offered_then_taken(qtbot, window):
    session, offer = window.session, window.part_form.part_offer
    qtbot.waitUntil(offer.isVisible, timeout=20_000)
    assert "2026-03-04" in offer.text.text()
    assert "serial S1" in offer.text.text()
    assert session.state.fields == {"part_number": "DEMO-40"}  # nothing comes by itself
    offer.take_button.click()
    state = session.state
    assert state.fields == {"part_number": "DEMO-40", "material": "1.4301", "procedure": "P-7"}
    assert (state.profile, state.thickness_mm) == ("iso-23277-1", 12.0)
    assert state.carried == {"material", "procedure", "profile", "thickness_mm"}
    assert not offer.isVisible()
    page = window.verdict_step
    assert page.form.labelForField(page.sizes["thickness_mm"]).text() == "Thickness · kept"
    assert "Thickness" in window.record_step.kept.text.text()
    page.sizes["thickness_mm"].setText("10 mm")
    page.sizes["thickness_mm"].commit()
    assert (session.state.thickness_mm, "thickness_mm" in session.state.carried) == (10, False)
    assert page.form.labelForField(page.sizes["thickness_mm"]).text() == "Thickness"
    session.undo()
    assert "thickness_mm" in session.state.carried
    session.undo()
    assert session.state.fields == {"part_number": "DEMO-40"}
    assert session.state.profile == ""


def test_from_the_archive(qtbot, window, part_field, home, record, scene_file, tmp_path):
    path = tmp_path / "r.json"
    save_record(path, record)
    with open_archive() as archive:
        add_record(archive, path, scene_file.parent)
    part_field("no such part")
    assert not window.part_form.part_offer.isVisible()
    part_field("DEMO-4*")  # no wildcard here: it is the number of a part
    assert not window.part_form.part_offer.isVisible()
    part_field("DEMO-40")
    assert_offered_then_taken(qtbot, window)


def test_from_the_record_saved_last(qtbot, window, part_field, idle, record, tmp_path, home):
    path = tmp_path / "saved.json"
    part_field("DEMO-40")
    save_record(path, record)
    window.saving.saved.emit([path])
    idle()
    assert not (home / "archive").exists()
    part_field("")
    part_field("DEMO-40")
    assert "saved.json" in window.part_form.part_offer.text.text()
    assert_offered_then_taken(qtbot, window)
    path.unlink()
    part_field("")
    part_field("DEMO-40")
    assert not window.part_form.part_offer.isVisible()
