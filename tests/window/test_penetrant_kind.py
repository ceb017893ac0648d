"""The kind of penetrant, chosen where the photo does not tell it."""

import numpy as np
import pytest
from PIL import Image

from ptmark.dye.kind import MODES

pytestmark = [pytest.mark.gui, pytest.mark.slow]


@pytest.fixture
def glowing(tmp_path):
    """Light that a white balance made yellow-green beside paper that it made white."""
    light = np.full((600, 900, 3), (20, 14, 30), np.uint8)
    light[200:212, 150:350] = (180, 235, 110)
    light[450:560, 300:800] = (200, 200, 200)
    Image.fromarray(light).save(tmp_path / "cast.png")
    return tmp_path / "cast.png"


def test_choosing_the_kind_of_penetrant_looks_again_by_it(qtbot, window, glowing):
    choice = window.indications_step.penetrant
    assert not choice.isEnabled()
    with qtbot.waitSignal(window.looking.suggested):
        window.looking.open(glowing)
    assert choice.isEnabled()
    assert (choice.currentData(), window.session.state.marked) == ("", ())
    index = choice.findData("fluorescent")
    with qtbot.waitSignal(window.looking.suggested):
        choice.setCurrentIndex(index)
        choice.activated.emit(index)
    assert window.session.state.mode == "fluorescent"
    assert len(window.session.state.marked) == 1
    window.session.inspection.undo()
    window.session.inspection.undo()
    assert choice.currentData() == ""


def test_the_kinds_to_choose_from_are_those_that_photos_are_looked_at_by(window):
    choice = window.indications_step.penetrant
    kinds = [choice.itemData(row) for row in range(choice.count())]
    assert kinds == ["", *MODES]
