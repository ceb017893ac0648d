"""The list of indications: sort, filter, edit in place, copy; and what was left out."""

import re
from dataclasses import replace

import numpy as np
import pytest
import shapely
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QLineEdit

from ptmark.dye import EdgeQuality, LeftOut
from ptmark.window.indications.left_out import dye_likeness
from ptmark.window.indications.model import COLUMNS
from ptmark.window.wording import in_words, size_in_words

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
CONTROL = Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def table(opened):
    return opened.indications_step.table


def letters(table):
    return [row.id for row in table.order.shown]


def click_head(qtbot, table, column):
    head = table.horizontalHeader()
    at = QPoint(head.sectionViewportPosition(column) + 8, head.height() // 2)
    qtbot.mouseClick(head.viewport(), LEFT, pos=at)


def test_a_click_on_a_head_sorts_by_the_numbers_and_a_third_click_ends_it(qtbot, opened, table):
    given = letters(table)
    measured = opened.session.judgement.measured
    by_length = sorted(given, key=lambda name: measured[name].length.value)
    click_head(qtbot, table, 2)
    assert letters(table) == by_length
    click_head(qtbot, table, 2)
    assert letters(table) == by_length[::-1]
    click_head(qtbot, table, 2)
    assert letters(table) == given


def test_keys_follow_the_list_as_it_is_sorted(qtbot, opened, table):
    click_head(qtbot, table, 2)
    order = letters(table)
    opened.session.select(order[0])
    qtbot.keyClick(opened.view, KEY.Key_Down)
    assert opened.session.selected == (order[1],)
    table.setFocus()
    qtbot.keyClick(table, KEY.Key_Return)
    assert opened.session.inspection.marked(order[1]).standing == "taken"
    assert opened.session.selected == (order[2],)


def choose(choice, value):
    choice.setCurrentIndex(choice.findData(value))
    choice.activated.emit(choice.currentIndex())


def filters(opened):
    from ptmark.window.indications.list_filter import ListFilter

    return opened.indications_step.findChild(ListFilter)


def test_filters_hide_and_what_is_hidden_cannot_be_dropped(qtbot, opened, table):
    shapes = {row.id: row.shape for row in table.order.shown}
    assert sorted(shapes.values()) == ["linear", "rounded", "rounded"]
    table.selectAll()
    chooser = filters(opened)
    choose(chooser.choices["shape"], "rounded")
    rounded = [name for name, shape in shapes.items() if shape == "rounded"]
    assert letters(table) == rounded
    assert set(opened.session.selected) == set(rounded)
    assert chooser.hidden.text().startswith("1 hidden")
    qtbot.keyClick(table, KEY.Key_Delete)
    standing = {m.id: m.standing for m in opened.session.state.marked}
    assert [name for name, how in standing.items() if how == "dropped"] == rounded
    choose(chooser.choices["shape"], "")
    choose(chooser.choices["verdict"], "dropped")
    assert letters(table) == rounded
    choose(chooser.choices["verdict"], "")
    choose(chooser.choices["relevance"], "yes")
    assert letters(table) == [name for name in shapes if name not in rounded]


def test_one_chosen_on_the_photo_comes_back_into_the_list(qtbot, opened, table):
    (linear,) = [row.id for row in table.order.shown if row.shape == "linear"]
    choose(filters(opened).choices["shape"], "rounded")
    opened.session.select(linear)
    assert linear in letters(table)
    assert filters(opened).choices["shape"].currentIndex() == 0


def test_note_and_kind_are_edited_in_place_by_keys_and_undone(qtbot, opened, table):
    inspection = opened.session.inspection
    name = letters(table)[1]
    for column, text, member in (("Note", "near the toe", "note"), ("Kind", "crack", "kind")):
        opened.session.select(name)
        table.setFocus()
        table.setCurrentIndex(table.order.index(1, COLUMNS.index(column)))
        qtbot.keyClick(table, KEY.Key_F2)
        editor = table.viewport().findChildren(QLineEdit)[-1]
        qtbot.keyClicks(editor, text)
        qtbot.keyClick(editor, KEY.Key_Return)
        qtbot.waitUntil(lambda m=member, t=text: getattr(inspection.marked(name), m) == t)
    row = letters(table).index(name)
    assert table.order.index(row, COLUMNS.index("Kind")).data() == "crack"
    assert inspection.marked(name).standing == "suggested"  # Enter went to the editor
    qtbot.keyClick(opened, KEY.Key_Z, CONTROL)
    assert inspection.marked(name).kind == ""
    assert inspection.marked(name).note == "near the toe"


def test_the_table_is_copied_as_cells_that_no_spreadsheet_runs(qtbot, opened, table):
    inspection = opened.session.inspection
    first, second, _ = letters(table)
    inspection.edit(first, note="=1+1\tand\nmore")
    qtbot.waitUntil(lambda: not opened.session.workers.any_running())
    opened.session.select(first, second)
    table.setFocus()
    qtbot.keyClick(table, KEY.Key_C, CONTROL)
    lines = QGuiApplication.clipboard().text().splitlines()
    assert len(lines) == 3
    cells = [line.split("\t") for line in lines]
    assert {len(row) for row in cells} == {13}
    made = opened.session.judgement.measured[first]
    length = made.length
    around = [one.expanded for one in (made.path, made.width, made.ratio)]
    assert list(map(float, cells[1][10:])) == pytest.approx(around, abs=0.006)
    assert cells[1][0] == first
    assert float(cells[1][2]) == pytest.approx(length.value, abs=0.006)
    assert float(cells[1][3]) == pytest.approx(length.expanded, abs=0.006)
    assert cells[1][9] == "'=1+1 and more"
    opened.session.select()
    filters(opened).copy_button.click()
    assert len(QGuiApplication.clipboard().text().splitlines()) == 4


def square(x, y, side=12.0):
    return np.array([[x, y], [x + side, y], [x + side, y + side], [x, y + side]])


def test_300_left_out_are_a_few_lines_with_the_most_dye_like_first(qtbot, opened, idle):
    inspection, page = opened.session.inspection, opened.indications_step
    edge = EdgeQuality(shift_px=1.0, noise_px=1.0)
    pale = [
        LeftOut(outline_px=square(40 + 20 * (n % 20), 500 + 20 * (n // 20)), edge=edge,
                reason=f"too pale: {n % 9} % of full dye")
        for n in range(199)
    ]  # fmt: skip
    dye = LeftOut(outline_px=square(892, 412), edge=edge, reason="too pale: 9 % of full dye")
    other = [
        LeftOut(outline_px=square(40 + 14 * n, 60), edge=edge, reason="no edge: it fades")
        for n in range(100)
    ]
    inspection.left_out = (*other, *pale, dye)  # the last one lies on the big dot
    page.refresh()
    page.left_out.switch.click()
    idle()
    tree = page.left_out.tree
    groups = [tree.topLevelItem(n) for n in range(tree.topLevelItemCount())]
    assert [g.text(0) for g in groups] == ["200 ×  too pale", "100 ×  no edge: it fades"]
    lines = len(groups) + sum(g.childCount() for g in groups)
    assert lines <= 20
    assert page.left_out_shown()[0] == 299
    assert len(page.left_out_shown()) == 6
    tree.itemClicked.emit(groups[0].child(6), 0)
    assert tree.topLevelItem(0).childCount() == 13
    assert tree.currentItem().text(0) == tree.topLevelItem(0).child(6).text(0)
    opened.session.change(
        "area", area_px=((800.0, 300.0), (1000, 300), (1000, 500), (800, 500))
    )
    assert tree.topLevelItem(0).text(0) == "1 ×  too pale"
    assert "299 more outside" in page.left_out.switch.text()
    square_px = shapely.box(800, 300, 1000, 500)
    away = [
        one.id
        for one in opened.session.state.marked
        if not square_px.intersects(shapely.Polygon(one.outline_px))
    ]
    assert f"judged all the same: {', '.join(away)}." in page._says.text()


def test_dye_is_more_like_dye_than_shade_or_ink():
    rgb = np.full((60, 60, 3), (230, 228, 226), np.uint8)
    rgb[20:32, 20:32] = (186, 24, 58)
    dye = dye_likeness(rgb, square(20, 20))
    rgb[20:32, 20:32] = (60, 60, 60)
    ink = dye_likeness(rgb, square(20, 20))
    assert dye > 1
    assert abs(ink) < 0.1


def test_no_size_in_the_list_stands_without_its_uncertainty(opened, table):
    measured, model = opened.session.judgement.measured, table.order.model
    for row in table.order.shown:
        made = measured[row.id]
        sizes = (made.length, made.width, made.ratio, made.path)
        for at, one in zip((2, 3, 4, 8), sizes, strict=True):
            value, around = map(float, row.cells[at].split(" ± "))
            assert (value, around) == pytest.approx((one.value, one.expanded), abs=0.006)
            assert "± U" in model.headerData(at, Qt.Orientation.Horizontal)


def test_what_the_photos_edge_cuts_short_shows_the_least_it_can_be(opened, idle, table):
    session = opened.session
    name = max(letters(table), key=lambda one: session.judgement.measured[one].length.value)
    before = {row.id: row for row in table.order.shown}
    told = re.findall(
        r"([0-9.]+) ± ([0-9.]+) mm", in_words(session.judgement.measured[name], "mm")
    )
    assert len(told) == 4  # length, width, path and area
    out = tuple(
        replace(one, outline_px=one.outline_px - one.outline_px.min(axis=0) * [1, 0])
        if one.id == name
        else one
        for one in session.state.marked
    )
    session.change("move it to the left edge", marked=out)
    idle()
    for row in table.order.shown:
        assert row.cells[2].startswith("≥ ") == (row.id == name)
        assert ("at least" in row.spoken) == (row.id == name)
    (at,) = [n for n, row in enumerate(table.order.shown) if row.id == name]
    tip = table.order.index(at, 2).data(Qt.ItemDataRole.ToolTipRole)
    assert "Ends at the photo's edge" in tip
    assert "at least" not in before[name].spoken
    assert "at least" in size_in_words(session.judgement.measured[name], "mm")
