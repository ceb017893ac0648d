"""For every hand and eye: names for screen readers, targets to touch, small screens."""

import importlib.util
from itertools import pairwise
from pathlib import Path

import pytest
from PySide6.QtCore import QPoint, QRect, Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractSpinBox,
    QComboBox,
    QLabel,
    QLineEdit,
    QRadioButton,
    QStyle,
    QStyleOptionFrame,
    QWidget,
)

from ptmark.dye import Suggestions
from ptmark.record import FIELDS
from ptmark.window import aloud, bits, dialogs, told
from ptmark.window.bits import Choice
from ptmark.window.headings import Heading
from ptmark.window.keys_page import KeysPage
from ptmark.window.reading_order import in_reading_order
from ptmark.window.step_strip import in_lines
from ptmark.window.view.photo_view import PhotoView

_SPEC = importlib.util.spec_from_file_location(
    "screenshots_pages", Path(__file__).parents[1] / "benchmarks" / "screenshots_pages.py"
)
shots = importlib.util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(shots)


def controls(window):
    """What can have the focus and shows."""
    for one in window.findChildren(QWidget):
        if one.isVisible() and one.focusPolicy() != Qt.FocusPolicy.NoFocus:
            yield one


def spoken(widget):
    """What a screen reader is told as the name (Qt's accessibility tree)."""
    return QAccessible.queryAccessibleInterface(widget).text(QAccessible.Text.Name)


def test_every_control_of_every_step_has_a_name_and_room_to_touch(opened, idle):
    # WCAG 2.2, success criteria 4.1.2 (name) and 2.5.8 (24 by 24 CSS px at least).
    looked_at, nameless, small = 0, [], []
    for step in opened.pages:
        opened.session.go(step)
        idle()
        for one in controls(opened):
            looked_at += 1
            what = f"{step}: {type(one).__name__} in {type(one.parent()).__name__}"
            if not spoken(one).strip():
                nameless.append(what)
            target = isinstance(one, QAbstractButton | QComboBox | QLineEdit)
            inner = isinstance(one.parent(), QComboBox)  # the list around it is the target
            if target and not inner and min(one.width(), one.height()) < 24:
                small.append(f"{what}: {spoken(one)}, {one.width()} x {one.height()}")
    assert looked_at > 150
    assert nameless == []
    assert small == []


def photo_share(window):
    seen = window.view.visibleRegion().boundingRect()
    return seen.width() * seen.height() / (window.width() * window.height())


@pytest.fixture
def resized(qtbot, idle):
    """Make the window so large, and wait until all in it has its place."""

    def to(window, width, height):
        window.resize(width, height)
        qtbot.waitUntil(lambda: (window.width(), window.height()) == (width, height))
        idle()

    return to


def scrolls_sideways(page):
    bar = page.horizontalScrollBar()
    return bar.isVisible() and bar.maximum() > 0


WAYS = {
    (1280, 800): "beside",
    (640, 400): "turns",  # 1280 x 800 at 200 %
    (960, 540): "turns",  # 1920 x 1080 at 200 %
    (800, 1280): "under",
    (1920, 1080): "beside",
}


@pytest.mark.slow
def test_every_step_has_half_the_window_for_the_photo_and_no_sideways_scroll(
    opened, resized, idle
):
    for size, way in WAYS.items():
        resized(opened, *size)
        assert (opened.width(), opened.height()) == size  # nothing in it asks for more
        assert opened.arrangement.way == way
        for step, page in opened.pages.items():
            opened.session.go(step)
            opened.arrangement.bring(page)
            idle()
            assert page.isVisible()
            assert not scrolls_sideways(page), (size, step)
            if way == "turns":
                QTest.keyClick(opened, Qt.Key.Key_F6)
                idle()
            assert photo_share(opened) >= 0.5, (size, step)


def test_one_key_goes_to_the_top_of_the_page_and_later_to_where_it_was_left(opened, resized):
    resized(opened, 1280, 800)
    for step, page in list(opened.pages.items())[2:]:
        opened.session.go(step)
        opened.view.setFocus()
        QTest.keyClick(opened.view, Qt.Key.Key_F6)
        first, *_, last = in_reading_order(page)
        assert opened.focusWidget() is first, step
        last.setFocus()
        QTest.keyClick(opened, Qt.Key.Key_F6)
        assert opened.focusWidget() is opened.view
        QTest.keyClick(opened.view, Qt.Key.Key_F6)
        assert opened.focusWidget() is last, step


def test_what_a_step_has_or_lacks_is_read_whole_on_every_screen(opened, resized):
    for size in WAYS:
        resized(opened, *size)
        for step, button in opened.strip.buttons.items():
            assert " ".join(button.shown()) == button.line, (size, step)
            assert button.line
        assert opened.strip.buttons["Record"].line == "9 fields missing"
    narrow = opened.strip.buttons["Scale"]
    metrics = narrow.fontMetrics()
    said = in_lines("refused for a reason that is long", metrics, 90, 2)
    assert len(said) == 2
    assert said[1].endswith("…")


def test_on_a_small_screen_outlines_are_taken_and_dropped_by_touch_on_the_photo(
    opened, resized
):
    resized(opened, 640, 400)
    opened.session.go("Indications")
    first, second = (m.id for m in opened.session.state.marked[:2])
    opened.session.select(first)
    buttons = {
        b.accessibleName(): b for b in opened.arrangement.bar.findChildren(QAbstractButton)
    }
    for name in ("Take", "Drop", "Page", "Next step"):
        button = buttons[name]
        assert button.visibleRegion().boundingRect() == button.rect()  # whole and in sight
        assert button.height() >= 24
    buttons["Take"].click()
    opened.session.select(second)
    buttons["Drop"].click()
    standing = {m.id: m.standing for m in opened.session.state.marked}
    assert (standing[first], standing[second]) == ("taken", "dropped")
    buttons["Next step"].click()
    assert opened.session.step == "Verdict"
    assert opened.verdict_step.isVisible()  # words, so the page comes first


def test_a_tool_brings_the_photo_and_leaves_it_to_the_page_that_called(opened, resized):
    resized(opened, 640, 400)
    opened.session.go("Scale")
    assert opened.scale_step.isVisible()
    opened.scale_step.choose("line")
    assert opened.view.isVisible()
    assert not opened.scale_step.isVisible()
    opened.bench.stop()
    assert opened.scale_step.isVisible()


def test_a_window_made_large_again_shows_photo_and_page_side_by_side(opened, resized):
    resized(opened, 640, 400)
    assert opened.arrangement.bar.isVisible()
    resized(opened, 1280, 800)
    opened.session.go("Indications")
    assert opened.view.isVisible()
    assert opened.indications_step.isVisible()
    assert "Ctrl+Z" in opened.photo_row.undo_button.text()
    assert not opened.arrangement.bar.isVisible()


def box(widget, window):
    return QRect(widget.mapTo(window, QPoint(0, 0)), widget.size())


def against_reading(one, other, window):
    """Whether the way from one to the other goes up in a column or back in a row."""
    a, b = box(one, window), box(other, window)
    up = b.bottom() <= a.top() and b.left() < a.right() and a.left() < b.right()
    back = b.right() <= a.left() and b.top() < a.bottom() and a.top() < b.bottom()
    return up or back


def tabbed(window, page):
    """Where Tab leads, once round the window; only what lies in the page."""
    first = next(iter(in_reading_order(page)))
    first.setFocus()
    way = [first]
    for _ in range(300):
        if isinstance(window.focusWidget(), PhotoView):
            window.view.set_tool(None)
        QTest.keyClick(window.focusWidget(), Qt.Key.Key_Tab)
        if window.focusWidget() is first:
            break
        way.append(window.focusWidget())
    else:
        raise AssertionError("Tab does not come round")
    return [one for one in way if page.isAncestorOf(one)]


def reachable(page):
    """What Tab has to reach: everything that can be worked, a group of choices once."""
    for one in controls(page):
        inner = isinstance(one.parent(), QComboBox | QAbstractItemView | QAbstractSpinBox)
        told = one.focusPolicy() & Qt.FocusPolicy.TabFocus and one.isEnabled()
        told = told and one.focusProxy() is None
        if told and not inner and not (isinstance(one, QRadioButton) and not one.isChecked()):
            yield one


def look_through(window, page, name):
    nameless = [
        type(one).__name__
        for one in controls(page)
        if not spoken(one).strip() and not (isinstance(one, QLabel) and not one.text())
    ]
    assert nameless == [], name
    way = tabbed(window, page)
    assert {*reachable(page)} <= {*way}, name
    told = [(spoken(a), spoken(b)) for a, b in pairwise(way) if against_reading(a, b, window)]
    assert told == [], name
    return len(way)


@pytest.mark.slow
@pytest.mark.qt_log_ignore("This plugin does not support")  # without a screen
def test_review_archive_and_house_pages_have_names_and_are_walked_as_they_are_read(
    window, idle, scene_file, tmp_path
):
    # WCAG 2.2, success criteria 4.1.2 (name), 2.1.1 (keyboard) and 2.4.3 (focus order).
    walked = {}
    for name in shots.pages(window, shots.records_for(tmp_path, scene_file)):
        idle()
        page = window.archive.pages.currentWidget() if name.startswith("archive") else window
        walked[name] = look_through(window, page, name)
    archive = window.archive
    for name, show in (
        ("check", archive.show_check),
        ("map", lambda: archive.show_map("DEMO-7")),
        ("filters", lambda: (archive.open(), archive.found.bar.filters_button.click())),
        ("table", archive.found.turn_view),
    ):
        show()
        idle()
        walked[name] = look_through(window, archive.pages.currentWidget(), name)
    archive.leave()
    window.session.go("Verdict")
    criteria = window.verdict_step.criteria
    criteria.write_button.click()
    for at in ("", *range(len(criteria.form.draft.rules))):
        criteria.form.parts.choose(at)
        idle()
        walked[f"rule {at}"] = look_through(criteria.form, criteria.form, f"rule {at}")
    window.photo_row.keys_button.click()
    keys = next(w for w in window.findChildren(KeysPage))
    walked["keys"] = look_through(keys, keys, "keys")
    assert len(walked) >= 18
    assert min(walked.values()) >= 2


def cut_off(page):
    """Controls that reach beyond the page they stand on, sideways."""
    for one in controls(page):
        inner = isinstance(one.parent(), QComboBox | QAbstractItemView)
        if not inner and box(one, page).right() > page.width():
            yield spoken(one)


@pytest.mark.slow
def test_on_a_small_screen_nothing_of_the_archive_is_cut_off(
    window, idle, scene_file, tmp_path, monkeypatch, resized
):
    resized(window, 640, 400)
    archive, seen = window.archive, []
    for name in shots.pages(window, shots.records_for(tmp_path, scene_file)):
        idle()
        if name.startswith("archive"):
            assert list(cut_off(archive.pages.currentWidget())) == [], name
            assert not window.arrangement.bar.isVisible()  # there is no photo to turn to
            seen.append(name)
    for name, show in (
        ("map", lambda: archive.show_map("DEMO-7")),
        ("check", archive.show_check),
    ):
        show()
        idle()
        assert list(cut_off(archive.pages.currentWidget())) == [], name
    archive.open()
    idle()
    nowhere = scene_file / "records.csv"  # a file is no folder
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: nowhere)
    archive.found.export.save_list()
    idle()
    assert "Choose another folder" in archive.found.said_below.text.text()
    archive.leave()
    assert window.arrangement.bar.isVisible()
    assert len(seen) == 3


@pytest.mark.qt_log_ignore("This plugin does not support")  # without a screen
def test_windows_beside_the_work_fit_a_small_screen(window, idle):
    criteria = window.verdict_step.criteria
    criteria.write_button.click()
    window.photo_row.keys_button.click()
    for one in (criteria.form, next(iter(window.findChildren(KeysPage)))):
        one.resize(640, 400)
        idle()
        assert (one.width(), one.height()) == (640, 400)
    form = criteria.form
    for button in (form.save_button, form.close_button):
        assert button.visibleRegion().boundingRect() == button.rect()


def of(widget):
    """What a screen reader gets of a widget."""
    return QAccessible.queryAccessibleInterface(widget)


def test_a_screen_reader_gets_steps_lists_and_values(opened, idle):
    """Roles and names as QAccessible hands them to the system's bridge."""
    texts = QAccessible.Text
    steps = [of(button) for button in opened.strip.buttons.values()]
    assert {one.role() for one in steps} == {QAccessible.Role.RadioButton}  # one of five
    assert steps[2].text(texts.Name) == "Step 3, Indications: 3 to look at, 0 taken"
    # On Linux Qt gives a list's shown row for its name, so what it is must be its description.
    for box_ in opened.findChildren(Choice):
        assert of(box_).text(texts.Description) == box_.accessibleName()
    table = of(opened.indications_step.table)
    cells = [table.child(n) for n in range(table.childCount())]
    heads = [c for c in cells if c.role() == QAccessible.Role.ColumnHeader]
    assert [one.text(texts.Name) for one in heads][:3] == [
        "Indication", "Shape", "Length ± U, mm",
    ]  # fmt: skip
    shown = [c.text(texts.Name) for c in cells if c.role() == QAccessible.Role.Cell]
    first = opened.session.state.marked[0].id
    made = opened.session.judgement.measured[first].length
    size = f"{made.value:.2f} ± {made.expanded:.2f}"
    assert size in shown
    # The row whole, in one breath: letter, length with U and unit, and how it stands.
    (told,) = [one for one in shown if one.startswith(f"{first}, ")]
    assert f", {size} mm, not looked at" in told
    opened.session.select(first)
    opened.hands.take()
    idle()
    assert steps[2].text(texts.Name) == "Step 3, Indications: 2 to look at, 1 taken"


def test_a_verdict_that_changes_and_a_notice_are_spoken(opened, idle, monkeypatch):
    said = []
    for room in (told, bits):
        monkeypatch.setattr(room, "say_aloud", lambda _, text: said.append(text))
    session = opened.session
    session.change("choose the criteria", profile="iso-23277-2")
    idle()
    assert said.count("Verdict: rejectable") == 1
    session.undo()
    idle()
    session.redo()
    idle()
    assert said.count("Verdict: rejectable") == 2
    crack = next(m.id for m in session.state.marked if "linear" in kind_of(session, m.id))
    session.inspection.edit(crack, standing="dropped")
    idle()
    assert said.count("Verdict: acceptable") == 1
    session.inspection.edit(crack, note="a thread")  # no other verdict: nothing is said of it
    idle()
    assert said.count("Verdict: acceptable") == 1
    opened.bench.pick("line")
    (first,) = [text for text in said if "first end" in text]
    assert first.endswith("By keys: arrows steer, Space sets a point.")
    QTest.keyClick(opened.view, Qt.Key.Key_Right)
    assert [text for text in said if "first end" in text] == [first]
    QTest.keyClick(opened.view, Qt.Key.Key_Space)
    QTest.keyClick(opened.view, Qt.Key.Key_Right)
    assert len([text for text in said if "second end" in text]) == 1
    opened.bench.stop()
    session.go("Record")
    opened.record_step.saved.say("Saved one.json")
    assert said[-1] == "Saved one.json"
    opened.scale_step.notice.say("of a page that nobody sees")
    assert said[-1] == "Saved one.json"


def kind_of(session, name):
    return session.judgement.measured[name].shape


def test_a_screen_reader_is_told_what_the_photo_is_and_shows(window, opened, idle):
    texts, view = QAccessible.Text, opened.view
    photo = of(view)
    assert photo.role() == QAccessible.Role.Graphic
    opened.session.go("Record")
    opened.record_step.decision.setFocus()
    first = opened.session.state.marked[0].id
    opened.session.select(first)
    idle()
    QTest.qWait(1)
    assert photo.text(texts.Name) == "Photo scene.png"
    told = photo.text(texts.Description)
    (row,) = [r.spoken for r in opened.indications_step.table.order.model.rows if r.id == first]
    assert row.endswith(" mm, not looked at")  # without criteria nothing more is known of it
    assert told.startswith(f"Selected: {row}. Indications: 3 to look at, 0 taken. Scale: card")
    view.setFocus()
    opened.session.select()
    idle()
    QTest.qWait(1)
    assert photo.text(texts.Description) == told  # a change would be read whole
    opened.record_step.decision.setFocus()
    idle()
    QTest.qWait(1)
    assert photo.text(texts.Description).startswith("Indications: 3 to look at")
    assert of(opened).role() == QAccessible.Role.Window
    assert of(opened.record_step).text(texts.Name) == "Record"
    fields = of(opened.record_step.fields["penetrant"].parentWidget())
    assert fields.role() == QAccessible.Role.Grouping
    assert fields.text(texts.Name) in {h.text() for h in opened.findChildren(Heading)}


def test_what_was_taken_dropped_and_undone_is_spoken(opened, idle, monkeypatch):
    said = []
    monkeypatch.setattr(told, "say_aloud", lambda _, text: text and said.append(text))
    opened.session.go("Verdict")
    opened.session.go("Indications")
    assert "Step 3, Indications: 3 to look at, 0 taken" in said
    first, second = (m.id for m in opened.session.state.marked[:2])
    opened.session.select(first)
    opened.hands.take()
    assert f"{first}: taken." in said
    opened.session.select(second)
    opened.hands.drop()
    assert f"{second}: dropped." in said
    opened.session.undo()
    assert said[-1] == f"{second}: not looked at."
    count = len(said)
    inspection = opened.session.inspection
    inspection.set_suggestions(Suggestions(found=(), left_out=()))
    assert said[count:] == []  # what another look no longer finds was deleted by nobody
    opened.session.undo()
    opened.view.setFocus()
    square = [(300.0, 900.0), (380.0, 900.0), (380.0, 980.0), (300.0, 980.0)]
    count = len(said)
    opened.hands.add(square, "free", 1.0)
    idle()
    QTest.qWait(50)
    idle()
    (drawn,) = [text for text in said[count:] if text.endswith("taken")]
    assert "mm" in drawn  # not told before its size is known
    assert "no scale" not in drawn
    opened.session.undo()
    opened.looking.suggested.emit()
    idle()
    QTest.qWait(1)
    assert "Indications: 2 to look at, 1 taken." in said


def test_a_text_that_is_spoken_stays_until_it_can_be_asked_for(opened, monkeypatch):
    monkeypatch.setattr(QAccessible, "isActive", lambda: True)
    before = set(opened.findChildren(QWidget))
    for text in ("first", "second"):
        aloud.say_aloud(opened.foot, text)
    made = [one for one in opened.findChildren(QWidget) if one not in before]
    if not aloud._OVER_BUS:
        assert made == []  # an announcement leaves nothing behind
        return
    assert [of(one).text(QAccessible.Text.Name) for one in made] == ["first", "second"]
    assert {of(one).role() for one in made} == {QAccessible.Role.Notification}
    assert all(one.isVisible() and one.size().isEmpty() for one in made)
    assert not {*made} & {*in_reading_order(opened)}


def test_keys_go_from_heading_to_heading_of_the_long_form(opened):
    opened.session.go("Record")
    page = opened.record_step
    names = [h.text() for h in page.findChildren(Heading) if h.isVisible()]
    page.decision.setFocus()
    seen = []
    for _ in range(40):
        QTest.keyClick(opened.focusWidget(), Qt.Key.Key_F7)
        now = opened.focusWidget()
        if now is page.decision:
            break
        seen.append(now)
        where = now.mapTo(page.viewport(), now.rect().center())
        assert page.viewport().rect().contains(where), spoken(now)
        if now is page.fields["purpose"]:  # the part is in sight with its heading on top
            (head,) = (h for h in page.findChildren(Heading) if h.text() == "Procedure")
            assert head.mapTo(page.viewport(), QPoint(0, 0)).y() == 0
    else:
        raise AssertionError("the keys do not come round")
    firsts = {field.group: field.key for field in reversed(FIELDS)}.values()
    assert {page.fields[key] for key in firsts} <= {*seen}
    assert len(firsts) >= 5
    assert len(seen) <= len(names)
    assert seen == sorted(seen, key=list(in_reading_order(page)).index)
    last = seen[-1]
    QTest.keyClick(opened.focusWidget(), Qt.Key.Key_F7, Qt.KeyboardModifier.ShiftModifier)
    assert opened.focusWidget() is last
    after = list(in_reading_order(page))
    after[after.index(last) + 1].setFocus()  # from within a part, back to where it begins
    QTest.keyClick(opened.focusWidget(), Qt.Key.Key_F7, Qt.KeyboardModifier.ShiftModifier)
    assert opened.focusWidget() is last


def room_for_hint(edit):
    option = QStyleOptionFrame()
    edit.initStyleOption(option)
    inner = edit.style().subElementRect(QStyle.SubElement.SE_LineEditContents, option, edit)
    return inner.width() - 4  # Qt's own 2 px on each side of the text


def test_no_hint_of_the_record_is_cut_in_either_language(opened, texts, resized, idle):
    resized(opened, 1280, 800)
    opened.session.go("Record")
    idle()
    german = {text: de for (_, text), de in texts.read(texts.LANGUAGES / "de.ts").items()}
    fields, cut = opened.record_step.fields, []
    hints = {field.key: field.hint for field in FIELDS if field.hint}
    for key, hint in hints.items():
        for text in (hint, german[hint]):
            if fields[key].fontMetrics().horizontalAdvance(text) > room_for_hint(fields[key]):
                cut.append((key, text))
    assert len(hints) > 40
    assert cut == []
