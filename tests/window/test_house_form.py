"""House rules are written in a window of their own, tried at once, and a changed file shows."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QComboBox,
    QLineEdit,
    QListWidget,
    QPushButton,
    QTableWidget,
)

from ptmark.criteria import load_profile

pytestmark = [
    pytest.mark.gui,
    pytest.mark.slow,
    pytest.mark.qt_log_ignore("This plugin does not support"),  # without a screen
]


@pytest.fixture
def judged(opened, idle):
    """The scene under ISO 23277 level 2: the crack of 21 mm rejectable."""
    opened.session.go("Verdict")
    opened.session.change("choose the criteria", profile="iso-23277-2")
    idle()
    return opened


@pytest.fixture
def form(judged, qtbot, tried):
    judged.verdict_step.criteria.write_button.click()
    made = judged.verdict_step.criteria.form
    tried()
    return made


@pytest.fixture
def tried(qtbot, window, idle):
    """Wait until the rules have been tried on what is typed."""

    def wait() -> None:
        form = window.verdict_step.criteria.form
        qtbot.waitUntil(lambda: not form.preview._soon.isActive())
        idle()

    return wait


def type_into(qtbot, field, text):
    edit = field.findChildren(QLineEdit)[0]
    edit.setFocus()
    edit.selectAll()
    qtbot.keyClicks(edit, text)


def rule_of(form, name):
    return next(n for n, rule in enumerate(form.draft.rules) if rule.text("id") == name)


def test_rules_are_named_tried_saved_and_chosen(form, judged, qtbot, tried, home):
    assert "Examples: rejectable" in form.preview.says.text()
    form.parts.choose(rule_of(form, "linear"))
    type_into(qtbot, form.fields.fields["reject"], "40")
    tried()
    assert "longer than 40 mm" in form.fields._says.text()
    # the crack and the row of examples are shorter than 40 mm, all else is within its limit
    assert form.preview.says.text() == "Examples: acceptable · This inspection: acceptable"
    form.parts.choose("")
    type_into(qtbot, form.fields.fields["name"], "drawing-1")
    type_into(qtbot, form.fields.fields["title"], "Invented drawing-1")
    form.save_button.click()
    tried()
    path = home / "criteria" / "drawing-1.toml"
    assert judged.session.state.profile == str(path)
    assert judged.session.judgement.evaluation.checksum == load_profile(path).checksum
    assert judged.verdict_step.verdict.text() == "Acceptable"
    assert judged.verdict_step.profile.currentData() == str(path)


def test_a_fault_stands_beside_its_field_with_the_mend_and_nothing_is_saved(
    form, qtbot, tried, home
):
    nth = rule_of(form, "linear")
    form.parts.choose(nth)
    type_into(qtbot, form.fields.fields["reject"], "four")
    tried()
    assert "'four mm' is not an amount" in form.fields.fields["reject"].fault.replace("> ", "")
    assert form.fields.fields["clause"].fault == ""
    assert form.preview.says.text() == "Nothing is judged until every rule is complete."
    form.save_button.click()
    assert not (home / "criteria").exists()
    form.parts.choose(nth)  # saving has gone to the first fault, the missing name
    type_into(qtbot, form.fields.fields["reject"], "4")
    assert form.fields.fields["reject"].fault == ""


def test_another_unit_converts_nothing_and_asks_for_every_figure_again(form, qtbot, tried):
    form.parts.choose("")
    box = form.fields.fields["unit"].box
    box.setFocus()
    qtbot.keyClick(box, Qt.Key.Key_Down)
    tried()
    assert form.draft.top.text("unit") == "in"
    nth = rule_of(form, "linear")
    form.parts.choose(nth)
    assert form.draft.rules[nth].text("reject") == "> 4 mm"
    assert "has unit 'mm'" in form.fields.fields["reject"].fault
    type_into(qtbot, form.fields.fields["reject"], "3/16")
    assert form.draft.rules[nth].text("reject") == "> 3/16 in"
    assert form.fields.fields["reject"].fault == ""


def test_rules_are_added_moved_and_taken_away_by_key(form, qtbot, tried):
    before = [rule.text("id") for rule in form.draft.rules]
    parts = form.parts
    parts.kind.setCurrentIndex(parts.kind.findData("row"))
    parts.add_button.setFocus()
    qtbot.keyClick(parts.add_button, Qt.Key.Key_Space)
    assert [rule.text("id") for rule in form.draft.rules] == [*before, "row"]
    assert "filled in" in form.fields.fields["gap"].fault
    parts.up_button.setFocus()
    qtbot.keyClick(parts.up_button, Qt.Key.Key_Space)
    assert form.draft.rules[-2].text("id") == "row"
    assert parts.at == len(before) - 1
    parts.away_button.setFocus()
    qtbot.keyClick(parts.away_button, Qt.Key.Key_Space)
    assert [rule.text("id") for rule in form.draft.rules] == before


def test_a_table_of_limits_takes_the_place_of_the_limit(form, qtbot, tried):
    nth = rule_of(form, "linear")
    form.parts.choose(nth)
    form.fields.fields["bands"]._add.click()
    tried()
    bands = form.fields.fields["bands"]
    assert "reject" not in form.fields.fields
    numbers = [edit for edit in bands.findChildren(QLineEdit) if edit.isVisible()]
    for edit, text in zip(numbers, ("", "7"), strict=True):
        edit.setFocus()
        qtbot.keyClicks(edit, text)
    assert form.draft.rules[nth].values["bands"] == [{"reject": "> 7 mm"}]
    assert "more than 7 mm" in form.fields._says.text()


def strip_says(window, step):
    """What the strip says of a step, to those who read and to those who listen."""
    (button,) = [
        one
        for one in window.strip.findChildren(QAbstractButton)
        if getattr(one, "title", "") == step
    ]
    assert button.line in button.accessibleName()
    return button.line


def test_every_caution_can_be_written_and_taken_out(form):
    form.parts.choose("")
    field = form.fields.fields["cautions"]
    field.edit.setPlainText("The first.\n\n  The second, longer.  \nThe third.")
    assert form.draft.top.values["cautions"] == [
        "The first.",
        "The second, longer.",
        "The third.",
    ]
    form.fields.show_part(form.draft, "")
    assert form.fields.fields["cautions"].edit.toPlainText().count("\n") == 2
    form.fields.fields["cautions"].edit.setPlainText("")
    assert "cautions" not in form.draft.top.values


def test_examples_are_added_turned_named_and_removed(form, tried):
    preview = form.preview
    examples, table = preview.examples, preview.table
    many = len(examples.rows)
    examples.add_button.click()
    assert len(examples.rows) == table.rowCount() == many + 1
    assert len({one.id for one in examples.rows}) == many + 1
    row = table.currentRow()
    for nth, text in ((1, "9"), (2, "1"), (3, "-20"), (4, "50"), (5, "30"), (7, "104")):
        table.item(row, nth).setText(text)
    made = examples.rows[row]
    assert (made.length, made.width, made.x, made.y) == (9, 1, -20, 50)
    assert (made.turn_deg, made.kind) == (30, "104")
    tried()
    shown = [preview.findings.list.item(n).text() for n in range(preview.findings.list.count())]
    assert any(made.id in text and "104" in text for text in shown)
    table.item(row, 5).setText("steep")
    assert preview.notice.isVisibleTo(preview)
    assert examples.rows[row].turn_deg == 30
    table.setCurrentCell(0, 1)
    first = examples.rows[0].id
    examples.remove_button.click()
    assert first not in {one.id for one in examples.rows}
    for _ in range(many):
        examples.remove_button.click()
    assert examples.rows == ()
    assert not examples.remove_button.isEnabled()
    tried()
    assert "Examples: acceptable" in preview.says.text()


def test_an_example_made_longer_is_judged_at_once(form, qtbot, tried):
    table = form.preview.table
    before = form.preview.findings.list.count()
    table.item(1, 1).setText("9")  # B: 9 mm by 2 mm is linear, and longer than 4 mm
    tried()
    rows = [form.preview.findings.list.item(n).text() for n in range(before)]
    assert any("B" in row and "rejectable" in row for row in rows)
    table.item(1, 2).setText("-3")
    assert form.preview.notice.isVisibleTo(form.preview)
    assert table.item(1, 2).text() == "2"


def test_everything_has_a_name_to_be_read_out_and_is_reached_by_key(form, judged):
    for kind in (QComboBox, QLineEdit, QListWidget, QTableWidget, QPushButton):
        for widget in form.findChildren(kind):
            if widget.isVisible() and not isinstance(widget.parent(), QComboBox):
                said = widget.accessibleName() or (
                    widget.text() if isinstance(widget, QPushButton) else ""
                )
                assert said, widget
                assert widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    assert form.minimumSizeHint().width() <= 1280
    assert form.minimumSizeHint().height() <= 760  # 800 px without the title bar


def test_a_finding_shows_its_sketch(judged, qtbot):
    page = judged.verdict_step
    page.findings.setFocus()
    page.findings.setCurrentRow(1)
    page.findings.setCurrentRow(0)
    sketch = page._found.sketch
    assert sketch.isVisibleTo(page)
    image = sketch.picture
    blue = sum(
        image.pixelColor(x, y).blue() - image.pixelColor(x, y).red() > 80
        for x in range(0, image.width(), 2)
        for y in range(0, image.height(), 2)
    )
    assert blue > 100  # the outline and its caliper, in our blue and cyan
    assert "mm long" in sketch.accessibleName()


def test_rules_changed_after_the_verdict_make_it_stale_until_judged_again(
    form, judged, qtbot, tried, idle, home
):
    form.parts.choose("")
    type_into(qtbot, form.fields.fields["name"], "drawing-2")
    type_into(qtbot, form.fields.fields["title"], "Invented drawing-2")
    form.save_button.click()
    tried()
    path = home / "criteria" / "drawing-2.toml"
    page = judged.verdict_step
    assert page.verdict.text() == "Rejectable"
    assert not page.stale.isVisibleTo(page)

    path.write_text(path.read_text() + "\n# a remark changes nothing\n")
    judged.session.stale.look()
    assert judged.session.stale.why == ""

    path.write_text(path.read_text().replace('"> 4 mm"', '"> 40 mm"'))
    judged.session.stale.look()
    assert "stale" in page.stale.text.text()
    assert page.stale.isVisibleTo(page)
    assert "stale" in strip_says(judged, "Verdict")
    assert judged.record_step.stale.isVisibleTo(judged.record_step)
    assert page.verdict.text() == "Rejectable"  # as it was made, until a person asks

    page.stale.again.click()
    idle()
    assert strip_says(judged, "Verdict") == "acceptable"
    assert page.verdict.text() == "Acceptable"
    assert not page.stale.isVisibleTo(page)


def test_rules_changed_since_the_record_gone_on_with_are_said_until_taken(judged, idle):
    page, made = judged.verdict_step, judged.session.judgement.evaluation
    told = {"profile": made.profile, "checksum": made.checksum}
    judged.session.stale.began_with(told)
    assert not page.stale.isVisibleTo(page)
    judged.session.stale.began_with(told | {"checksum": "0" * 64})  # as they were then
    assert page.stale.isVisibleTo(page)
    assert "since the record was judged" in page.stale.text.text()
    page.stale.again.click()
    idle()
    assert not page.stale.isVisibleTo(page)
