"""A part number brings back what its last inspection had: offered, and taken by one click."""

import shutil

import pytest
from PySide6.QtCore import Qt

from ptmark.archive import add_record, open_archive
from ptmark.inspection import Inspection
from ptmark.record import save_record
from ptmark.scale import CardReference
from ptmark.window.main_window import MainWindow

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
    qtbot.waitUntil(offer.isVisible)
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


def enter(window, idle, **fields):
    for key, text in fields.items():
        window.part_form.fields[key].setText(text)
        window.part_form.fields[key].commit()
    idle()


def test_the_next_part_of_the_same_number_by_one_key(qtbot, opened, idle, tmp_path):
    """Number and next serial are offered, nothing seen goes along, and the serial is marked."""
    window, session = opened, opened.session
    enter(window, idle, part_number="DEMO-40", serial_number="S-099")
    session.fill_in("fill in", {"material": "1.4301", "remarks": "one pore", "job_number": "7"})
    session.change("decide", decision="reject", thickness_mm=12.0)
    assert not window.part_form.again.again_button.isEnabled()
    other = tmp_path / "other.png"
    shutil.copy(session.inspection.photo.info.path, other)
    with other.open("ab") as file:
        file.write(b"another file")
    with qtbot.waitSignal(window.looking.suggested):
        window.open(other)
    idle()
    assert session.step == "Indications"
    assert "part_number" not in session.state.fields  # nothing comes by itself
    assert "serial_number" not in session.state.fields
    qtbot.keyClick(window.focusWidget(), Qt.Key.Key_G, Qt.KeyboardModifier.ControlModifier)
    state = session.state
    assert state.fields == {
        "part_number": "DEMO-40", "serial_number": "S-100", "material": "1.4301",
    }  # fmt: skip
    assert (state.decision, state.thickness_mm) == ("", 12.0)
    assert {m.standing for m in state.marked} == {"suggested"}
    assert state.carried == {"serial_number", "material", "thickness_mm"}
    assert "DEMO-40, serial S-100: read it on the part." in window.foot.hint.text()
    assert "Serial S-100 was counted on" in window.record_step.kept.text.text()
    session.go("Photo")
    edit = window.part_form.fields["serial_number"]
    assert window.part_form._form.labelForField(edit).text() == "Serial number · counted on"
    assert not window.part_form.again.isVisible()
    enter(window, idle, serial_number="S-104")
    assert "serial_number" not in session.state.carried
    session.undo()
    session.undo()
    assert session.state.fields == {}
    assert window.part_form.again.isVisible()


def test_a_serial_that_cannot_be_counted_on_is_asked_for(qtbot, opened, idle):
    window = opened
    enter(window, idle, part_number="DEMO-40", serial_number="12-R")
    window.next_part()
    idle()
    again = window.part_form.again
    assert again.again_button.accessibleName() == "DEMO-40 again"
    assert not again.other_button.isVisible()
    again.again_button.click()
    assert window.session.state.fields == {"part_number": "DEMO-40"}
    assert window.focusWidget() is window.part_form.fields["serial_number"]


def test_the_part_saved_last_is_offered_at_the_next_start(
    qtbot, window, idle, record, tmp_path
):
    path = tmp_path / "saved.json"
    enter(window, idle, part_number="DEMO-40")
    save_record(path, record)
    window.saving.saved.emit([path])
    idle()
    later = MainWindow()
    qtbot.addWidget(later)
    later.show()
    later.begin(None)
    again = later.part_form.again
    qtbot.waitUntil(again.isVisible)
    assert again.again_button.accessibleName() == "DEMO-40 again, serial S2"
    assert later.session.state.fields == {}
    qtbot.waitUntil(lambda: not later.session.workers.any_running())
