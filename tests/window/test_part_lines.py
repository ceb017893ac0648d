"""A line of the part: asked for by the rules, marked on the photo, judged, kept, removed."""

import pytest
from PySide6.QtCore import QPointF, Qt

pytestmark = [pytest.mark.gui, pytest.mark.slow]

RULES = """\
name = "house"
title = "House rules, invented"
edition = "1"
unit = "mm"
source = "drawing, invented"
governs = "The contract governs."
[shape]
linear = "> 3"
clause = "1"
sure = "memory"
[[rule]]
id = "near"
kind = "edge"
clause = "2"
sure = "memory"
of = "rounded"
reject = "< 20 mm"
[[rule]]
id = "table"
kind = "size"
clause = "3"
sure = "memory"
of = "rounded"
by = "diameter"
bands = [{ up_to = "<= 50 mm", reject = "> 1 mm" }, { reject = "> 9 mm" }]
"""


@pytest.fixture
def asked(opened, idle, tmp_path):
    path = tmp_path / "house.toml"
    path.write_text(RULES)
    opened.session.go("Verdict")
    opened.session.change("choose the criteria", profile=str(path))
    idle()
    return opened


def click(qtbot, window, x, y):
    where = window.view.port.to_widget(QPointF(x, y)).toPoint()
    qtbot.mouseClick(window.view, Qt.MouseButton.LeftButton, pos=where)


def verdicts(window, rule):
    made = window.session.judgement.evaluation
    return {one.verdict for one in made.findings if one.rule == rule}


def test_a_marked_edge_decides_what_was_open(asked, qtbot, idle):
    page = asked.verdict_step
    lines = page.part_lines
    assert lines.isVisible()
    assert "edge" in lines.says.text()
    assert verdicts(asked, "near") == {"undecided"}
    lines.mark_button.click()
    # the dots of the scene lie at (700, 250) and (900, 420), 8 px a mm, radius 12 and 20 px
    click(qtbot, asked, 1000, 100)
    click(qtbot, asked, 1000, 600)
    qtbot.keyClick(asked.view, Qt.Key.Key_Return)
    idle()
    ((name, points),) = asked.session.state.edges_px
    assert name == "edge"
    assert [x for x, _ in points] == pytest.approx([1000, 1000], abs=1.5)
    found = {
        one.indications: one
        for one in asked.session.judgement.evaluation.findings
        if one.rule == "near"
    }
    apart = sorted(one.value for one in found.values())
    assert apart == pytest.approx([10.0, 36.0], abs=0.5)  # (100 - 20) and (300 - 12) px
    assert verdicts(asked, "near") == {"rejectable", "acceptable"}
    assert not lines.says.isVisible()
    assert [says for _, says in asked.view.guides.edges] == ["edge"]
    qtbot.keyClick(asked, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    idle()
    assert asked.session.state.edges_px == ()
    assert verdicts(asked, "near") == {"undecided"}


def test_the_diameter_is_asked_for_only_where_a_rule_goes_by_it(asked, idle):
    page = asked.verdict_step
    assert page.sizes["diameter_mm"].isVisible()
    assert verdicts(asked, "table") == {"undecided"}
    page._set_size("diameter_mm", "Diameter of the part", "40 mm")
    idle()
    assert verdicts(asked, "table") == {"rejectable"}
    page._set_size("diameter_mm", "Diameter of the part", "")
    asked.session.change("choose the criteria", profile="iso-23277-2")
    idle()
    assert not page.sizes["diameter_mm"].isVisible()
    assert not page.part_lines.isVisible()


def test_its_lines_can_be_removed(asked, idle):
    asked.session.change(
        "mark",
        edges_px=(("edge", ((10.0, 10.0), (10.0, 90.0))), ("rim", ((5.0, 5.0), (9.0, 9.0)))),
    )
    idle()
    lines = asked.verdict_step.part_lines
    assert lines.which.count() == 2
    lines.remove_button.click()
    assert [name for name, _ in asked.session.state.edges_px] == ["rim"]
