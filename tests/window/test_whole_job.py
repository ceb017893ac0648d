"""The whole job by mouse and keyboard, from the photo to three files, and back by undo."""

import json
from math import hypot

import cv2
import jsonschema
import pytest
from PySide6.QtCore import QPointF, Qt

from ptmark.inspection.draft import draft_to_json
from ptmark.record import load_record, record_schema
from ptmark.window import dialogs

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
CONTROL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
# The scene's truth (conftest): cv2.line has round ends, so its length grows by its width.
CRACK_MM = (hypot(160, 30) + 8) / 8
BIG_DOT_MM = 2 * 20 / 8


def click(qtbot, window, x, y):
    where = window.view.port.to_widget(QPointF(x, y)).toPoint()
    qtbot.mouseClick(window.view, LEFT, pos=where)


def near_small_dot(outline):
    x, y = outline.mean(axis=0)
    return hypot(x - 700, y - 250) < 20


def open_by_key(qtbot, window, idle, path, monkeypatch):
    monkeypatch.setattr(dialogs, "ask_for_photo", lambda *_: path)
    with qtbot.waitSignal(window.looking.suggested):
        qtbot.keyClick(window, KEY.Key_O, CONTROL)
    idle()


def choose(qtbot, box, data):
    """Choose in a combo box by keys, as a person without a mouse would."""
    box.setFocus()
    down = box.findData(data) > box.currentIndex()
    while box.currentData() != data:
        qtbot.keyClick(box, KEY.Key_Down if down else KEY.Key_Up)


def test_from_photo_to_saved_report(
    qtbot, window, idle, scene_file, tmp_path, monkeypatch, pages_of
):
    open_by_key(qtbot, window, idle, scene_file, monkeypatch)
    inspection = window.session.inspection

    # The card was found by itself; the scene has 8 px for each mm.
    assert inspection.surface.reference == "card"
    assert inspection.surface.mm_per_px() == pytest.approx(1 / 8, rel=2e-3)
    assert window.session.step == "Indications"
    assert [m.standing for m in inspection.state.marked] == ["suggested"] * 3

    # One key each: take, or drop the small dot; the selection goes on by itself.
    names = [m.id for m in inspection.state.marked]
    dropped = next(m.id for m in inspection.state.marked if near_small_dot(m.outline_px))
    for key in (KEY.Key_Return, KEY.Key_Space, KEY.Key_Return):
        (name,) = window.session.selected
        qtbot.keyClick(window.view, KEY.Key_Delete if name == dropped else key)
    standing = {m.id: m.standing for m in inspection.state.marked}
    assert standing == {name: "dropped" if name == dropped else "taken" for name in names}

    # The crack's length within its stated uncertainty of what was drawn.
    idle()
    lengths = [window.session.judgement.measured[name].length for name in names]
    crack = max(lengths, key=lambda length: length.value)
    assert abs(crack.value - CRACK_MM) <= crack.expanded

    # Trace the big dot along its edge, by keyboard shortcut and mouse.
    qtbot.keyClick(window, KEY.Key_T)
    for dx, dy in ((20, 0), (0, 20), (-20, 0), (0, -20)):
        click(qtbot, window, 900 + dx, 420 + dy)
    qtbot.keyClick(window.view, KEY.Key_Return)
    qtbot.waitUntil(lambda: len(inspection.state.marked) == 4)
    qtbot.keyClick(window.view, KEY.Key_Escape)
    idle()
    traced = inspection.state.marked[-1]
    assert traced.edge.source == "snapped"
    measured = window.session.judgement.measured[traced.id].length
    assert abs(measured.value - BIG_DOT_MM) <= measured.expanded + 0.02

    # The criteria: the verdict follows, rule by rule.
    qtbot.keyClick(window, KEY.Key_4, CONTROL)
    choose(qtbot, window.verdict_step.profile, "iso-23277-2")
    idle()
    assert window.verdict_step.verdict.text() == "Rejectable"
    assert window.verdict_step.findings.count() > 0

    # The fields, the disposition, the files.
    qtbot.keyClick(window, KEY.Key_5, CONTROL)
    for key, text in (("part_number", "DEMO-7"), ("examiner", "invented")):
        edit = window.record_step.fields[key]
        edit.setFocus()
        qtbot.keyClicks(edit, text)
        qtbot.keyClick(edit, KEY.Key_Return)
    choose(qtbot, window.record_step.decision, "reject")
    target = tmp_path / "out" / "weld.json"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: target)
    with qtbot.waitSignal(window.saving.saved):
        qtbot.keyClick(window, KEY.Key_S, CONTROL)

    document = json.loads(target.read_text(encoding="utf-8"))
    jsonschema.validate(document, record_schema())
    record = load_record(target)
    assert record.fields["part_number"] == "DEMO-7"
    assert record.disposition["decision"] == "reject"
    assert record.evaluation["verdict"] == "rejectable"
    assert dropped not in {one["id"] for one in record.indications}
    image = cv2.imread(str(target.with_suffix(".png")))
    assert image is not None
    assert image.shape[1] >= 1600
    text = "\n".join(pages_of(target.with_suffix(".pdf")))
    assert "DEMO-7" in text
    assert "rejectable" in text.lower()
    # What is saved needs no draft any more.
    idle()
    assert not window.session.autosave.path.exists()


def test_undo_and_redo_go_through_everything(qtbot, opened, idle):
    inspection, session = opened.session.inspection, opened.session
    begin = draft_to_json(inspection)
    name = inspection.state.marked[0].id
    qtbot.keyClick(opened.view, KEY.Key_Return)
    qtbot.keyClick(opened.view, KEY.Key_Delete)
    qtbot.keyClick(opened, KEY.Key_1, CONTROL)  # a plain letter works on its own page alone
    qtbot.keyClick(opened, KEY.Key_A)
    for x, y in ((200, 150), (1100, 150), (1100, 600), (200, 600)):
        click(qtbot, opened, x, y)
    qtbot.keyClick(opened.view, KEY.Key_Return)
    qtbot.keyClick(opened, KEY.Key_3, CONTROL)
    qtbot.keyClick(opened, KEY.Key_O)
    for x, y in ((500, 100), (560, 100), (560, 140), (500, 140)):
        click(qtbot, opened, x, y)
    qtbot.keyClick(opened.view, KEY.Key_Return)
    qtbot.waitUntil(lambda: len(inspection.state.marked) == 4)
    session.select(name)
    opened.indications_step.relevance.setFocus()
    qtbot.keyClick(opened.indications_step.relevance, KEY.Key_Down)
    qtbot.keyClick(opened, KEY.Key_4, CONTROL)
    choose(qtbot, opened.verdict_step.profile, "asme-viii-1-app-8")
    opened.verdict_step.rules["simple"].click()
    qtbot.keyClick(opened, KEY.Key_5, CONTROL)
    choose(qtbot, opened.record_step.decision, "refer")
    edit = opened.record_step.fields["part_number"]
    edit.setFocus()
    qtbot.keyClicks(edit, "X1")
    qtbot.keyClick(edit, KEY.Key_Return)
    end = draft_to_json(inspection)
    assert end["area_px"] is not None
    assert end["decision"] == "refer"
    assert end["marked"][0]["relevance"] == "non-relevant"

    steps = 0
    while draft_to_json(inspection) != begin and steps < 100:
        assert inspection.undo_name, "undo ran out before it was back at the beginning"
        qtbot.keyClick(edit, KEY.Key_Z, CONTROL)  # with the focus in a text field, too
        steps += 1
    assert 8 <= steps < 100
    assert edit.text() == ""
    for _ in range(steps):
        qtbot.keyClick(edit, KEY.Key_Z, CONTROL | SHIFT)
    assert inspection.redo_name == ""
    assert draft_to_json(inspection) == end


def test_points_are_dragged_and_deleted_and_come_back(qtbot, opened, idle):
    inspection = opened.session.inspection
    name = inspection.state.marked[0].id
    opened.session.select(name)
    before = inspection.marked(name).outline_px
    opened.view.bring(name)
    qtbot.keyClick(opened, KEY.Key_E)
    tool = opened.view.tool
    start = tool.points[tool.handles()[0]]
    a = opened.view.port.to_widget(start).toPoint()
    qtbot.mousePress(opened.view, LEFT, pos=a)
    b = a + QPointF(-12, -9).toPoint()
    qtbot.mouseMove(opened.view, b)
    qtbot.mouseRelease(opened.view, LEFT, pos=b)
    qtbot.waitUntil(lambda: inspection.marked(name).outline_px is not before)
    moved = inspection.marked(name)
    assert moved.edge.source == "hand"
    idle()
    qtbot.keyClick(opened.view, KEY.Key_Escape)
    qtbot.keyClick(opened, KEY.Key_Z, CONTROL)
    assert inspection.marked(name).outline_px is before
    qtbot.keyClick(opened.view, KEY.Key_Delete)
    # the program found it: it counts no longer, and the record tells of it
    assert name not in {m.id for m in inspection.counted}
    assert [one["id"] for one in inspection.to_record().given["dropped"]] == [name]
    qtbot.keyClick(opened, KEY.Key_Z, CONTROL)
    assert inspection.marked(name).outline_px is before


def test_what_lies_outside_the_examined_area_is_not_called(qtbot, opened, idle):
    inspection = opened.session.inspection
    qtbot.keyClick(opened, KEY.Key_1, CONTROL)
    qtbot.keyClick(opened, KEY.Key_A)
    for x, y in ((600, 150), (1050, 150), (1050, 560), (600, 560)):
        click(qtbot, opened, x, y)
    click(qtbot, opened, 600, 150)  # the first corner closes it
    assert len(inspection.state.area_px) == 4
    qtbot.keyClick(opened, KEY.Key_3, CONTROL)
    with qtbot.waitSignal(opened.looking.suggested):
        qtbot.keyClick(opened, KEY.Key_L)
    assert len(inspection.state.marked) == 2  # the two dots; the crack lies outside


def test_selection_is_one_in_list_and_photo(qtbot, opened):
    state = opened.session.state
    click(qtbot, opened, 900, 420)
    (name,) = opened.session.selected
    rows = opened.indications_step.table.selectionModel().selectedRows()
    assert [state.marked[index.row()].id for index in rows] == [name]
    opened.indications_step.table.selectRow(0)
    assert opened.view.selected == frozenset({state.marked[0].id})


def test_several_are_dropped_at_once_and_come_back_at_once(qtbot, opened):
    inspection = opened.session.inspection
    opened.indications_step.table.selectAll()
    qtbot.keyClick(opened.indications_step.table, KEY.Key_Delete)
    assert [m.standing for m in inspection.state.marked] == ["dropped"] * 3
    assert inspection.undo_name == "drop A, B, C"
    inspection.undo()
    assert [m.standing for m in inspection.state.marked] == ["suggested"] * 3


def test_an_outline_still_being_refined_does_not_land_on_the_next_photo(
    qtbot, opened, idle, scene_without_card
):
    opened.hands.add([(880, 400), (920, 400), (920, 440), (880, 440)], "points", 1.0)
    with qtbot.waitSignal(opened.looking.opened):
        opened.open(scene_without_card)
    idle()
    assert all(m.confidence is not None for m in opened.session.state.marked)


def test_from_open_photo_to_saved_report_in_eight_keys(
    qtbot, window, idle, scene_file, tmp_path, monkeypatch
):
    """With a card and three indications, the criteria kept from the inspection before."""
    window.session.inspection.change("choose the criteria", profile="iso-23277-2")
    open_by_key(qtbot, window, idle, scene_file, monkeypatch)
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "quick.json")
    keys = [(KEY.Key_Return, Qt.KeyboardModifier.NoModifier)] * 3 + [(KEY.Key_S, CONTROL)]
    with qtbot.waitSignal(window.saving.saved):
        for key, modifiers in keys:
            qtbot.keyClick(window.view, key, modifiers)
    assert 1 + len(keys) <= 8  # Ctrl+O comes first
    record = load_record(tmp_path / "quick.json")
    assert [one["standing"] for one in record.indications] == ["taken"] * 3
    assert record.evaluation["verdict"] == "rejectable"
