"""Lines of a list are as high as their words need, also once a bar to scroll by has come."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QListWidgetItem, QWidget

from ptmark.window.findings import Findings
from ptmark.window.glyphs import glyph_icon

pytestmark = pytest.mark.gui

SAYS = (
    "Rounded indication A is 1.00 mm ± 0.09 mm long, not longer than 6 mm.\n"
    "Table 1 · acceptable · conforms with probability > 99 %"
)
ROWS = 6  # more than fit, so that the bar takes room from the words
SIGN = 18 + 4 * 3  # px, the sign in front, and room on both sides of it and of the words


@pytest.mark.parametrize("width", range(300, 460, 2))
def test_no_word_of_a_finding_is_left_out(qtbot, width):
    host, made = QWidget(), Findings()
    qtbot.addWidget(host)
    made.setParent(host)
    made.sketch.hide()
    made.resize(width, 170)
    host.show()
    for _ in range(ROWS):
        made.list.addItem(QListWidgetItem(glyph_icon("acceptable", made.palette()), SAYS))
    qtbot.waitUntil(made.list.verticalScrollBar().isVisible)
    QApplication.processEvents()
    room = made.list.viewport().width() - 2 * made.list.spacing() - SIGN
    flags = Qt.TextFlag.TextWordWrap
    need = made.list.fontMetrics().boundingRect(0, 0, room, 10_000, flags, SAYS).height()
    heights = [made.list.visualItemRect(made.list.item(n)).height() for n in range(ROWS)]
    assert min(heights) >= need
