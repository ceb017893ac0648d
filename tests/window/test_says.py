"""What the engine says: remarks on the photo, haze, and the budget with its advice."""

from math import hypot

import cv2
import pytest
from PySide6.QtGui import QColor

from ptmark.window.indications.budget_bars import BudgetBars
from ptmark.window.palette import tone

pytestmark = pytest.mark.gui


def test_bars_are_as_long_as_the_parts_and_the_small_ones_stand_together(qtbot):
    bars = BudgetBars()
    qtbot.addWidget(bars)
    bars.show_budget({"edge": 0.04, "map": 0.08, "lens": 0.001, "tilt": 0.002}, "mm")
    bars.resize(400, bars.height())
    names = [name for name, _, _ in bars._rows]
    assert names == ["map", "edge", "others"]
    # JCGM 100:2008, 5.1.2: independent contributions add in quadrature.
    assert bars._rows[2][2] == f"{hypot(0.001, 0.002):.3f} mm"
    image = bars.grab().toImage()
    accent = tone("accent", bars.palette())
    ratio = image.devicePixelRatio()
    lengths = []
    for at in range(2):
        y = int((at * 20 + 10) * ratio)
        lengths.append(
            sum(image.pixelColor(x, y) == QColor(accent) for x in range(image.width()))
        )
    assert lengths[1] / lengths[0] == pytest.approx(0.5, abs=0.03)


@pytest.mark.slow
def test_the_chosen_indication_shows_its_budget_and_what_would_help(qtbot, opened, idle):
    page, session = opened.indications_step, opened.session
    name = session.state.marked[0].id
    session.select(name)
    idle()
    assert not page.budget.isHidden()
    budget = session.judgement.measured[name].length.budget
    assert page.budget.bars._rows[0][0] == max(budget, key=budget.get)
    # JCGM 100:2008, 5.1.2: a part's share is that of its square.
    share = 100 * max(budget.values()) ** 2 / sum(u * u for u in budget.values())
    assert f"{share:.0f} %" in page.budget.advice.text()
    session.turn_unit()
    assert page.budget.bars._rows[0][2].endswith(" in")
    session.select()
    assert page.budget.isHidden()


@pytest.mark.slow
def test_a_blurred_photo_is_remarked_on_with_the_mend_and_a_good_one_after_it_is_not(
    qtbot, opened, idle, scene_file, tmp_path
):
    remarks = opened.photo_step.remarks
    before = [n.text.text() for n in remarks.notices if not n.isHidden()]
    blurred = tmp_path / "blurred.png"
    cv2.imwrite(str(blurred), cv2.GaussianBlur(cv2.imread(str(scene_file)), (0, 0), 9))
    with qtbot.waitSignal(opened.looking.suggested):
        opened.open(blurred)
    idle()
    said = [n.text.text() for n in remarks.notices if not n.isHidden()]
    assert any("focus" in text for text in said)
    assert said == [one.says for one in opened.session.inspection.remarks()]
    assert remarks.haze.text().startswith("Haze of the background")
    assert said != before
