"""An empty cell has a word for a screen reader: silence is taken for the end of the row."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QTableWidget, QTableWidgetItem

from ptmark.archive import Hit, Page
from ptmark.window.archive.model import HitModel
from ptmark.window.cells import Cell

pytestmark = pytest.mark.gui


def spoken(table):
    face = QAccessible.queryAccessibleInterface(table)
    cells = [face.child(n) for n in range(face.childCount())]
    wanted = QAccessible.Role.Cell
    return [one.text(QAccessible.Text.Name) for one in cells if one.role() == wanted]


def test_an_empty_cell_is_said_to_be_empty_until_it_holds_words(qtbot):
    table = QTableWidget(1, 3)
    qtbot.addWidget(table)
    table.setItem(0, 0, Cell("A"))
    table.setItem(0, 1, Cell(""))
    table.setItem(0, 2, QTableWidgetItem(""))  # as Qt has it
    assert spoken(table) == ["A", "empty", ""]
    table.item(0, 1).setText("6 mm")
    assert spoken(table)[1] == "6 mm"


def test_what_is_set_to_be_spoken_is(qtbot):
    cell = Cell("6 mm")
    cell.setData(Qt.ItemDataRole.AccessibleTextRole, "6 mm, changes")
    assert cell.data(Qt.ItemDataRole.AccessibleTextRole) == "6 mm, changes"
    assert cell.data(Qt.ItemDataRole.DisplayRole) == "6 mm"


def test_no_cell_of_the_list_of_indications_is_silent(opened):
    told = spoken(opened.indications_step.table)
    assert len(told) > 9
    assert "empty" in told  # kind and note, of which none is given
    assert all(told)


def test_no_cell_of_what_the_archive_found_is_silent(qtbot):
    given = {"record_id": "r-1", "revision": 1, "signatures": 0, "indications": 0, "number": 1}
    hit = Hit(**(dict.fromkeys(Hit._fields, "") | given | {"longest_mm": None}))
    model = HitModel()
    model.begin(Page([hit], None))
    cells = [model.index(0, column) for column in range(model.columnCount())]
    told = [model.data(cell, Qt.ItemDataRole.AccessibleTextRole) for cell in cells]
    assert "empty" in told  # serial, disposition, examiner: none is in the record
    assert all(told)
