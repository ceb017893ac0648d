"""The verdict follows every change at once, rule by rule; nothing changes by accident."""

from dataclasses import replace
from math import cos, hypot, pi, sin

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication

from ptmark.errors import CriteriaError

pytestmark = [pytest.mark.gui, pytest.mark.slow]


@pytest.fixture
def judged(opened, idle):
    """The scene under ISO 23277 level 2: the crack rejectable, the dots within it."""
    opened.session.go("Verdict")
    opened.session.change("choose the criteria", profile="iso-23277-2")
    idle()
    return opened


def crack_of(window):
    measured = window.session.judgement.measured
    return max(measured, key=lambda name: measured[name].length.value)


def test_dropping_the_crack_changes_the_verdict_and_undo_changes_it_back(judged, idle):
    page = judged.verdict_step
    assert page.verdict.text() == "Rejectable"
    judged.session.select(crack_of(judged))
    judged.hands.drop()
    idle()
    assert page.verdict.text() == "Acceptable"
    judged.session.undo()
    idle()
    assert page.verdict.text() == "Rejectable"


def test_one_click_drops_with_a_reason_and_taking_it_again_judges_it(judged, idle):
    crack = crack_of(judged)
    judged.session.go("Indications")
    judged.session.select(crack)
    judged.indications_step.drop_as.buttons["Red pen"].click()
    idle()
    assert judged.verdict_step.verdict.text() == "Acceptable"
    (kept,) = judged.session.inspection.to_record().given["dropped"]
    assert (kept["id"], kept["reason"]) == (crack, "Red pen")
    judged.session.select(crack)
    judged.hands.take()
    idle()
    assert judged.verdict_step.verdict.text() == "Rejectable"
    assert judged.session.state.marked[0].reason == ""


def test_setting_aside_needs_a_reason(judged, idle, qtbot):
    crack = crack_of(judged)
    judged.session.go("Indications")
    judged.session.select(crack)
    page = judged.indications_step
    page.relevance.setFocus()
    qtbot.keyClick(page.relevance, Qt.Key.Key_Down)
    idle()
    assert judged.session.judgement.evaluation.verdict == "rejectable"
    page.reason.setFocus()
    qtbot.keyClicks(page.reason, "scratch, gone after wiping")
    qtbot.keyClick(page.reason, Qt.Key.Key_Return)
    idle()
    assert judged.session.judgement.evaluation.verdict == "acceptable"
    assert judged.session.inspection.marked(crack).reason == "scratch, gone after wiping"


def test_a_finding_selects_its_indications(judged, qtbot):
    findings = judged.verdict_step.findings
    findings.setFocus()
    row = next(
        r
        for r in range(findings.count())
        if findings.item(r).data(Qt.ItemDataRole.UserRole) == (crack_of(judged),)
    )
    findings.setCurrentRow((row + 1) % findings.count())
    findings.setCurrentRow(row)
    assert judged.session.selected == (crack_of(judged),)


def test_the_worst_stands_first_and_every_finding_names_clause_and_verdict(judged):
    findings = judged.verdict_step.findings
    texts = [findings.item(row).text() for row in range(findings.count())]
    made = judged.session.judgement.evaluation.findings
    assert len(texts) == len(made)
    assert "rejectable" in texts[0]
    for one in made:
        assert any(one.says in text and one.clause in text for text in texts)


def test_the_wheel_over_a_choice_without_focus_changes_nothing(judged):
    page = judged.verdict_step
    judged.view.setFocus()
    before = page.profile.currentIndex()
    where = QPointF(20, 10)
    wheel = QWheelEvent(
        where, page.profile.mapToGlobal(where), QPoint(), QPoint(0, -120),
        Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(page.profile, wheel)
    assert page.profile.currentIndex() == before
    assert judged.session.state.profile == "iso-23277-2"


def test_lengths_that_cannot_be_read_are_said_in_place(judged, qtbot):
    page = judged.verdict_step
    edit = page.sizes["weld_length_mm"]
    edit.setFocus()
    qtbot.keyClicks(edit, "12 in")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    assert judged.session.state.weld_length_mm == pytest.approx(304.8)  # 25.4 mm to the inch
    edit.selectAll()
    qtbot.keyClicks(edit, "far")
    qtbot.keyClick(edit, Qt.Key.Key_Return)
    assert "'far' is not a length" in page.size_notice.text.text()
    assert judged.session.state.weld_length_mm == pytest.approx(304.8)


def test_keys_of_the_indications_sleep_in_other_steps(judged, qtbot):
    judged.session.select(crack_of(judged))
    before = judged.session.state
    judged.view.setFocus()
    qtbot.keyClick(judged.view, Qt.Key.Key_Delete)
    assert judged.session.state is before


def test_cautions_stand_at_verdict_and_record(judged):
    from PySide6.QtWidgets import QLabel

    for page, words in (
        (judged.verdict_step, ("certified inspector decides", "edition")),
        (judged.record_step, ("certified inspector decides", "flammable", "Ventilate")),
    ):
        text = " ".join(label.text() for label in page.findChildren(QLabel))
        assert all(word in text for word in words)


def test_inches_are_shown_where_asked_and_limits_keep_their_own_unit(judged, qtbot):
    crack = crack_of(judged)
    mm = judged.session.judgement.measured[crack].length.value
    model = judged.indications_step.table.model()
    row = [m.id for m in judged.session.state.marked].index(crack)
    qtbot.keyClick(judged, Qt.Key.Key_U)
    shown = model.data(model.index(row, 2))
    assert float(shown.split(" ")[0]) == pytest.approx(mm / 25.4, abs=0.0006)
    assert judged.session.judgement.evaluation.findings[0].unit == "mm"


def test_an_outline_that_crosses_itself_is_judged_by_its_greatest_length(judged, idle):
    bow = [(500.0, 100.0), (560.0, 140.0), (560.0, 100.0), (500.0, 141.0)]
    judged.hands.add(bow, "points", 0.5)
    idle()
    name = judged.session.state.marked[-1].id
    length = judged.session.judgement.measured[name].length
    assert abs(length.value - hypot(60, 41) / 8) <= length.expanded  # 8 px for each mm
    assert judged.session.judgement.evaluation is not None


def test_the_dispositions_offered_are_those_of_the_record(judged):
    from ptmark.inspection.state import DISPOSITIONS

    box = judged.record_step.decision
    assert tuple(box.itemData(row) for row in range(box.count())) == DISPOSITIONS


def drop_all(judged):
    marked = judged.session.state.marked
    dropped = tuple(replace(one, standing="dropped") for one in marked)
    judged.session.change("drop", marked=dropped)


def test_what_no_rule_can_judge_is_named_at_the_verdict(judged, idle, monkeypatch):
    monkeypatch.setattr("ptmark.inspection.hiding.unseen_places", lambda _: 2)
    drop_all(judged)
    idle()
    page = judged.verdict_step
    assert page.verdict.text() == "Undecided"
    why = page._why.text()
    assert "2 of them were not looked at closely" in why
    assert why.endswith("repeat the test.")
    assert page.findings.count() == 1


def test_what_is_left_open_says_what_would_help_most(judged, idle):
    # ISO 23277:2015, table 1: a rounded indication of level 2 up to 6 mm; 8 px for each mm
    turns = [2 * pi * k / 24 for k in range(24)]
    round_one = [(520 + 24 * cos(t), 120 + 24 * sin(t)) for t in turns]
    judged.session.change("drop all", marked=())
    judged.hands.add(round_one, "points", 0.5)
    idle()
    page = judged.verdict_step
    assert page.verdict.text() == "Undecided"
    assert page._why.text().startswith("Left open by: Table 1 (A). What would narrow")
    assert "of it is the points" in page._why.text()


def test_what_keeps_the_verdict_from_being_made_is_said(judged, idle, monkeypatch):
    def refuse(_):
        raise CriteriaError("the rules were changed", mend="choose them again")

    monkeypatch.setattr("ptmark.inspection.Inspection.evaluation", refuse)
    judged.session.change("turn", decision_rule="simple")
    idle()
    assert judged.verdict_step.verdict.text() == "No verdict yet"
    assert judged.verdict_step._why.text() == "the rules were changed. choose them again"


def test_rework_of_what_is_acceptable_asks_why(judged, idle):
    drop_all(judged)
    judged.session.change("decide", decision="rework and retest")
    idle()
    assert "give the reason" in judged.record_step.departs.text.text()
