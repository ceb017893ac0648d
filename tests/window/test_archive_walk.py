"""The archive's pages as somebody walks through them: no hindrance that once was comes back."""

import hashlib
import io
from dataclasses import replace
from datetime import date

import pytest
from PIL import Image
from PySide6.QtCore import QItemSelectionModel, QPoint, Qt

from ptmark.archive import (
    Page,
    Query,
    add_record,
    find,
    keep_for,
    key_for,
    open_archive,
    photos_of,
    place_map,
    save_search,
    saved_searches,
    seen_by_cell,
)
from ptmark.record import Signer, key_of, load_record, save_record, sign_record
from ptmark.window import dialogs
from ptmark.window.archive.gallery import _lengths, told_below
from ptmark.window.archive.map_cell import CellModel, told_cell
from ptmark.window.archive.model import GLANCE, LONGEST, HitModel
from ptmark.window.archive.plot import HistoryPlot
from ptmark.window.archive.standing import read_state

pytestmark = [pytest.mark.gui, pytest.mark.slow]


def ask(idle, desk, text):
    desk.found.bar.line.setText(text)
    idle()


def hit_of(record_id):
    with open_archive(read_only=True) as archive:
        return find(archive, Query(record_id=record_id)).hits[0]


def photo_file(home, record_id):
    with open_archive(read_only=True) as archive:
        (photo,) = photos_of(archive, record_id)
    return home / "archive" / "photos" / key_for(photo["sha256"], photo["suffix"])


# -- the keyboard -----------------------------------------------------------------------------
def test_escape_leads_back_also_where_the_focus_was_greyed_out(qtbot, idle, window, desk):
    desk.show_check()
    idle()
    page = desk.check
    form = page.holds
    form.name.setText("claim 7")
    form.reason.setText("invented")
    form.set_button.setFocus()
    form.set_button.click()
    idle()
    assert page.isAncestorOf(window.focusWidget())  # not thrown out to the steps
    page.check_button.setFocus()
    page.check_button.click()
    assert page.stop_button.hasFocus()
    idle()
    assert page.check_button.hasFocus()
    window.strip.setFocus()  # wherever it is
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert desk.found.isVisible()
    qtbot.keyClick(window, Qt.Key.Key_Escape)
    assert desk.pages.isHidden()
    assert not desk._escape.isEnabled()  # the photo has its own use for it


def test_keys_do_not_change_the_work_while_the_archive_hides_it(qtbot, opened, idle):
    session = opened.session
    session.go("Scale")
    session.change("fill in", fields={"part_number": "P-77"})
    opened.archive.open()
    idle()
    line = opened.archive.found.bar.line
    line.setText("P-")
    for key in (Qt.Key.Key_Z, Qt.Key.Key_Right, Qt.Key.Key_Left):
        for widget in (line, opened.archive.found.gallery):
            widget.setFocus()
            qtbot.keyClick(widget, key, Qt.KeyboardModifier.ControlModifier)
    assert session.state.fields["part_number"] == "P-77"
    assert session.step == "Scale"
    assert opened.foot.hint.text() == ""  # the step's keys do nothing here
    opened.archive.leave()
    assert "Choose a reference" in opened.foot.hint.text()
    qtbot.keyClick(opened, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert "part_number" not in session.state.fields
    qtbot.keyClick(opened, Qt.Key.Key_Right, Qt.KeyboardModifier.ControlModifier)
    assert session.step == "Indications"


def test_the_way_to_the_work_and_back_keeps_list_and_selection(
    idle, desk, made, tmp_path, monkeypatch
):
    monkeypatch.setattr("ptmark.window.archive.found._PAGE", 2)
    ask(idle, desk, "P-")
    found = desk.found
    while found.model.canFetchMore():
        found.model.fetchMore()
        idle()
    found.table.setCurrentIndex(found.model.index(4, 0))
    chosen = found.chosen
    desk.leave()
    desk.open()
    idle()
    assert found.chosen == chosen
    assert len(found.model.hits) == 6
    desk.leave()
    with open_archive() as archive:  # what was kept meanwhile shows
        add_record(archive, made(tmp_path / "new", "r-9", part="P-3", day="2026-09-01"))
    desk.open()
    idle()
    assert found.model.hits[0].record_id == "r-9"


def test_each_way_back_leads_to_what_was_looked_at_there(idle, desk):
    desk.show_record(hit_of("r-0"))
    idle()
    desk.record.part_button.click()
    idle()
    history = desk.history
    assert [hit.record_id for hit in history.model.hits] == ["r-4", "r-2", "r-0"]
    history.table.setCurrentIndex(history.model.index(1, 0))
    history.table.activated.emit(history.table.currentIndex())
    idle()
    desk.record.serial_button.click()
    idle()
    assert [hit.record_id for hit in history.model.hits] == ["r-2"]
    desk.back()
    assert desk.record.record.id == "r-2"
    desk.back()
    idle()
    assert [hit.record_id for hit in history.model.hits] == ["r-4", "r-2", "r-0"]
    assert history.table.currentIndex().row() == 1
    desk.back()
    idle()
    assert desk.record.record.id == "r-0"
    desk.back()
    assert desk.found.isVisible()


def test_one_goes_from_record_to_record_in_the_order_of_the_list(qtbot, idle, desk, window):
    ask(idle, desk, "P-")
    found, page, walk = desk.found, desk.record, desk.record.neighbours
    found.table.activated.emit(found.model.index(0, 0))
    idle()
    seen = [page.record.id]
    assert not walk.before_button.isEnabled()
    assert walk.place.text() == "1 of 6"
    while walk.next_button.isEnabled():
        qtbot.keyClick(window, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
        idle()
        seen.append(page.record.id)
    assert seen == [f"r-{n}" for n in (5, 4, 3, 2, 1, 0)]
    assert walk.place.text() == "6 of 6"
    walk.before_button.click()
    idle()
    assert page.record.id == "r-1"
    assert found.chosen.record_id == "r-1"  # the list goes along, as does its selection
    assert {one.row() for one in found.table.selectedIndexes()} == {4}
    assert found.gallery.currentIndex().row() == 4
    page.part_button.click()  # and back to the record that was come to
    idle()
    desk.back()
    idle()
    assert page.record.id == "r-1"
    assert walk.place.text() == "5 of 6"
    page.part_button.click()
    idle()
    history = desk.history
    history.table.activated.emit(history.model.index(0, 0))
    idle()
    assert (page.record.id, walk.place.text()) == ("r-5", "1 of 3")
    qtbot.keyClick(window, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    idle()
    assert page.record.id == "r-3"
    desk.show_record(hit_of("r-0"))  # from no list
    idle()
    assert walk.isHidden()
    qtbot.keyClick(window, Qt.Key.Key_Up, Qt.KeyboardModifier.ControlModifier)
    idle()
    assert page.record.id == "r-0"


def test_records_selected_to_be_exported_stay_so_while_one_walks(idle, desk):
    ask(idle, desk, "P-")
    found, walk = desk.found, desk.record.neighbours
    chosen, flags = found.table.selectionModel(), QItemSelectionModel.SelectionFlag
    chosen.select(found.model.index(1, 0), flags.ClearAndSelect | flags.Rows)
    chosen.select(found.model.index(3, 0), flags.Select | flags.Rows)
    found.table.activated.emit(found.model.index(1, 0))
    idle()
    walk.next_button.click()
    idle()
    assert found.chosen.record_id == "r-3"  # the third
    assert {one.row() for one in found.table.selectedIndexes()} == {1, 3}


def test_one_goes_on_beyond_what_the_list_has_read(qtbot, desk):
    with open_archive(read_only=True) as archive:
        first = find(archive, Query(), limit=2)
        then = find(archive, Query(), after=first.after, limit=9)
    model, walk = HitModel(), desk.record.neighbours
    model.begin(first)
    walk.follow(first.hits[0], model)
    assert walk.place.text() == "1 of more than 2"
    with qtbot.waitSignal(model.more_asked):
        walk.follow(first.hits[1], model)
    assert not walk.next_button.isEnabled()
    model.add(then)
    assert walk.place.text() == "2 of 6"
    with qtbot.waitSignal(walk.chosen) as chosen:
        walk.next_button.click()
    assert chosen.args == [then.hits[0]]


# -- lengths ----------------------------------------------------------------------------------
def test_what_may_be_longer_is_shown_so_on_every_page(
    qtbot, idle, desk, made, tmp_path, window
):
    path = made(tmp_path / "cut", "r-9", part="P-9", fields={"location_datum": "hole A"})
    record = load_record(path)
    rows = [{**record.indications[0], "runs_out": True}, record.indications[1]]  # 2 and 3 mm
    save_record(path, replace(record, indications=rows))
    with open_archive() as archive:
        add_record(archive, path)
    found = desk.found
    cases = ("mm", "≥ 3.00 ± 0.10 mm", "≥ 2.00"), ("in", "≥ 0.118", "≥ 0.07")
    for unit, longest, short in cases:
        window.session.unit = unit
        ask(idle, desk, "P-")
        ask(idle, desk, "P-9")
        assert longest in found.model.index(0, LONGEST).data()
        found.model.want(0)
        qtbot.waitUntil(lambda: found.model.index(0, 0).data(GLANCE) is not None)
        lines = _lengths(found.model.index(0, 0).data(GLANCE), unit)
        assert lines[0].startswith("B  3.00" if unit == "mm" else "B  0.118")
        assert lines[1].startswith(f"A  {short}")
        desk.show_record(found.model.hits[0])
        idle()
        told = desk.record.facts.text().splitlines()
        assert any(short in line and line.endswith(unit) for line in told), told
        assert sum("≥" in line for line in told) == 1
        desk.show_history("P-9", "")
        idle()
        assert longest in desk.history.plot.describe()
        with open_archive(read_only=True) as archive:
            (here, *_) = seen_by_cell(place_map(archive, "P-9", datum="hole A")).values()
        assert short in told_cell("", here, unit)
        cell = CellModel()
        cell.begin(Page(found.model.hits, None))
        cell.show_cell(here, unit)
        assert f"A crack {short}" in cell.index(0, LONGEST).data()
        desk.open()
    found.bar.texts["shortest_mm"].setText("40 mm")
    found.bar.texts["shortest_mm"].commit()
    found.bar.line.setText("")
    idle()
    assert [hit.record_id for hit in found.model.hits] == ["r-9"]


def test_one_year_is_one_year(idle, desk):
    with open_archive() as archive:
        keep_for(archive, "short", Query(part="P-2"), 1, "invented")
        keep_for(archive, "half", Query(part="P-3"), 1.5, "invented")
        rows = {row[1]: row[3] for row in read_state(archive).rows}
    assert (rows["short"], rows["half"], rows["contract"]) == (
        "1 year",
        "1.5 years",
        "10 years",
    )


# -- what the search says -----------------------------------------------------------------
def test_a_filter_is_told_of_also_while_it_is_hidden(idle, desk):
    found = desk.found
    found.bar.texts["serial"].setText("S-4")
    found.bar.texts["serial"].commit()
    ask(idle, desk, "P-1")
    said = "1 record whose part number begins with P-1 that fit the filters, newest first."
    assert found.count.text() == said
    found.bar.texts["serial"].setText("S-5")  # of P-2
    found.bar.texts["serial"].commit()
    idle()
    assert found.count.text() == "No record fits both the line and the filters."
    found.bar.clear()
    idle()
    assert found.count.text() == "6 records, newest first."


def test_a_number_in_quotation_marks_is_the_whole_one(idle, desk, made, tmp_path):
    with open_archive() as archive:
        add_record(archive, made(tmp_path / "more", "r-17", part="P-17"))
        save_search(archive, "only P-1", Query(part="P-1"))
    ask(idle, desk, "P-1")
    assert {hit.part for hit in desk.found.model.hits} == {"P-1", "P-17"}
    ask(idle, desk, '"P-1"')
    assert {hit.part for hit in desk.found.model.hits} == {"P-1"}
    assert desk.found.found == Query(part="P-1")
    ask(idle, desk, '"P-"')  # nothing is called so; words are not asked instead
    assert desk.found.views.currentWidget() is desk.found.nothing
    desk.found.saved.read()
    idle()
    choice = desk.found.saved.choice
    row = choice.findData("only P-1")
    choice.setCurrentIndex(row)
    choice.activated.emit(row)
    idle()
    assert desk.found.found == Query(part="P-1")  # as it was saved, not what begins so
    assert choice.currentText() == "only P-1"
    ask(idle, desk, "P-2")
    assert choice.currentText() == "Saved searches"  # it is not what shows any more


def test_a_saved_search_is_renamed(idle, desk):
    ask(idle, desk, "P-2")
    saved = desk.found.saved
    saved.name.setText("twos")
    assert not saved.rename_button.isEnabled()  # nothing has the name that it would give up
    saved.save_button.click()
    idle()
    ask(idle, desk, "P-1")
    saved.name.setText("all of P-2")
    saved.rename_button.click()
    idle()
    with open_archive() as archive:
        assert saved_searches(archive) == {"all of P-2": Query(part="P-2*")}
    assert not saved.rename_button.isEnabled()


def test_nothing_is_offered_for_export_before_something_is_found(window, idle, monkeypatch):
    monkeypatch.setenv("PTMARK_ARCHIVE_DATABASE", "sqlite:////dev/null/x/archive.sqlite")
    window.archive.open()
    idle()
    found = window.archive.found
    assert not found.export.list_button.isEnabled()
    assert not found.turn_button.isEnabled()


def test_pictures_and_rows_name_a_retest(desk):
    one = hit_of("r-0")._replace(retest_of="r-1", disposition="reject", verdict="rejectable")
    assert told_below(one)[1].endswith("rejectable, retest, reject")
    desk.found.model.hits[0] = one
    shown = desk.found.model.index(0, desk.found.model.columnCount() - 1).data()
    assert shown.startswith("retest, revision 1")  # the end is cut off first


# -- the originals ------------------------------------------------------------------------
def test_a_record_proves_its_originals_and_hands_them_out(
    idle, desk, home, tmp_path, monkeypatch
):
    desk.show_record(hit_of("r-0"))
    idle()
    page = desk.record
    original = (tmp_path / "records" / "r-0.jpg").read_bytes()
    told = page.proof.text.text()
    assert hashlib.sha256(original).hexdigest() in told.replace(" ", "")
    assert "r-0.jpg is the original, byte for byte" in told
    assert "nobody has signed it" in told
    path = tmp_path / "records" / "r-0.json"
    who = Signer(role="examiner", name="A. Example (invented)", qualification="none")
    save_record(path, sign_record(load_record(path), who, key_of(who.name)))
    with open_archive() as archive:
        add_record(archive, path, replaces=hit_of("r-0").sha256)
    desk.show_record(hit_of("r-0"))
    idle()
    told = page.proof.text.text()
    assert "signed by examiner A. Example (invented) on 20" in told
    assert "nobody" not in told
    out = tmp_path / "copy.jpg"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: out)
    page.original_button.click()
    idle()
    assert out.read_bytes() == original


@pytest.mark.parametrize("harm", ["missing", "changed"])
def test_a_lost_photo_is_named_and_its_record_told_all_the_same(idle, desk, home, harm):
    photo = photo_file(home, "r-0")
    photo.chmod(0o644)
    if harm == "missing":
        photo.unlink()
    else:
        photo.write_bytes(photo.read_bytes()[:-1] + b"?")
    desk.show_record(hit_of("r-0"))
    idle()
    page = desk.record
    assert "P-1, serial S-0" in page.facts.text()
    assert page.part_button.isEnabled()
    told = page.proof.text.text()
    assert harm in told
    assert "ptmark archive repair --from FOLDER" in told
    assert "is the original" not in told
    assert page.said.isHidden()  # said once


def test_a_record_deleted_meanwhile_is_named_as_one_knows_it(idle, desk):
    from ptmark.archive import apply_rules, keep_for

    hit = hit_of("r-1")
    with open_archive() as archive:
        keep_for(archive, "short", Query(part="P-2"), 1, "invented")
        assert apply_rules(archive, date(2040, 1, 1))
    desk.show_record(hit)
    idle()
    said = desk.record.said.text.text()
    assert said.startswith("P-2, S-1, 2026-02-01: is not in the archive any more")
    assert "Search again" in said


# -- the place map ------------------------------------------------------------------------
def test_the_map_lies_over_the_photo_of_the_last_examination(idle, desk, made, tmp_path):
    """Not over that of the record that was taken in last."""
    for name, day, shade in (("new", "2026-08-01", 200), ("old", "2020-01-01", 60)):
        out = io.BytesIO()
        Image.new("RGB", (400, 300), (shade,) * 3).save(out, "PNG")
        path = made(
            tmp_path / name, name, part="P-9", serial=f"S-{name}", day=day,
            photo=out.getvalue(), fields={"location_datum": "hole A"},
        )  # fmt: skip
        record = load_record(path)
        flat = [[0.1, 0, 0], [0, 0.1, 0], [0, 0, 1]]
        record = replace(record, scale={**record.scale, "homography": flat})
        save_record(path, record)
        with open_archive() as archive:
            add_record(archive, path)
    desk.show_map("P-9")
    idle()
    page = desk.map
    assert "serial S-new, 2026-08-01" in page.says.text()
    ground = page._made.picture.pixelColor(3, 3)  # no cell lies there
    assert ground.red() > 150


def test_a_cell_tells_what_each_record_shows_in_it(idle, desk, made, tmp_path):
    with open_archive() as archive:
        for n in range(9):
            path = made(
                tmp_path / "cell", f"c-{n}", part="P-8", serial=f"S-{n}", count=1,
                fields={"location_datum": "hole A"},
            )  # fmt: skip
            add_record(archive, path)
    desk.show_map("P-8")
    idle()
    page = desk.map
    assert "9 indications, the longest 2.00 ± 0.10 mm" in page.of_cell.text()
    head = page.table.horizontalHeader()
    shown = [c for c in range(page.model.columnCount()) if not page.table.isColumnHidden(c)]
    shown.sort(key=head.visualIndex)
    names = [page.model.headerData(c, Qt.Orientation.Horizontal) for c in shown[:4]]
    assert names == ["Serial", "Examined on", "Seen here", "Verdict"]
    rows = [page.model.index(n, shown[2]).data() for n in range(page.model.rowCount())]
    assert rows == ["A crack 2.00 ± 0.10 mm"] * 9


def test_in_a_tall_window_the_map_lies_above_its_table(qtbot, idle, window, desk):
    desk.show_map("P-1")
    idle()
    page = desk.map

    def table_at():
        return page.table.mapTo(page, QPoint(0, 0))

    window.resize(1280, 800)
    qtbot.waitUntil(lambda: table_at().x() > 0.5 * page.width())
    window.resize(800, 1280)
    qtbot.waitUntil(lambda: table_at().x() < 20)
    assert page.table.width() > 700
    assert page.view.width() > 700
    assert page.view.geometry().bottom() < table_at().y()


def test_a_plot_without_dispositions_says_so(qtbot, idle, desk):
    desk.show_history("P-1", "")
    idle()
    plot = desk.history.plot
    assert plot.rates_head().endswith("share of those disposed of")
    bare = HistoryPlot()
    qtbot.addWidget(bare)
    bare.show_periods([one._replace(disposed=0, rejected=0) for one in plot._periods], "mm")
    assert "no record tells its disposition yet" in bare.rates_head()


# -- keeping ------------------------------------------------------------------------------
def test_what_could_not_be_kept_is_brought_into_sight(opened, idle, tmp_path, monkeypatch):
    opened.resize(1024, 700)
    (tmp_path / "drive").write_bytes(b"")
    monkeypatch.setenv(
        "PTMARK_ARCHIVE_DATABASE", f"sqlite:///{tmp_path / 'drive' / 'x' / 'archive.sqlite'}"
    )
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "weld.json")
    keep = opened.record_step.archive
    keep.keep()
    idle()
    assert "drive" in keep.said.text.text()
    assert keep.said.visibleRegion().boundingRect() == keep.said.rect()


# -- order, selection, another archive ----------------------------------------------------
def test_what_was_found_is_put_in_another_order(idle, desk, monkeypatch):
    monkeypatch.setattr("ptmark.window.archive.found._PAGE", 2)
    found = desk.found

    def shown(name):
        found.order.setCurrentIndex(found.order.findData(name))
        found.order.activated.emit(found.order.currentIndex())
        idle()
        return [hit.record_id for hit in found.model.hits]

    # r-0 to r-5 in the order of their dates, with 1, 2, 3, 1, 2, 3 indications of 2, 3, 4 mm
    assert shown("oldest") == [f"r-{n}" for n in range(6)]
    assert found.count.text() == "6 records, oldest first."
    assert shown("longest") == ["r-5", "r-2", "r-4", "r-1", "r-3", "r-0"]
    assert shown("part") == ["r-0", "r-2", "r-4", "r-1", "r-3", "r-5"]
    assert shown("newest") == [f"r-{5 - n}" for n in range(6)]  # page by page again
    monkeypatch.setattr("ptmark.window.archive.found._COUNTED", 3)
    assert shown("longest") == ["r-5", "r-4", "r-3"]
    assert "the newest 3 of them longest indication first" in found.count.text()


def test_a_selection_is_exported_and_taken_into_another_archive(
    qtbot, idle, desk, tmp_path, monkeypatch
):
    found, export, out = desk.found, desk.found.export, tmp_path / "bundles"
    view = found.gallery
    rows = [n for n, hit in enumerate(found.model.hits) if hit.record_id in {"r-1", "r-4"}]
    for n, row in enumerate(rows):
        held = Qt.KeyboardModifier.ControlModifier if n else Qt.KeyboardModifier.NoModifier
        index = found.model.index(row, 0)
        view.scrollTo(index)
        where = view.visualRect(index).center()
        qtbot.mouseClick(view.viewport(), Qt.MouseButton.LeftButton, held, where)
    assert export.bundles_button.accessibleName() == "Save 2 bundles …"
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: tmp_path / "list.csv")
    export.list_button.click()
    idle()
    assert len((tmp_path / "list.csv").read_text().splitlines()) == 3  # a head and two
    monkeypatch.setattr(dialogs, "ask_for_folder", lambda *_: out)
    export.bundles_button.click()
    idle()
    assert sorted(one.stem for one in out.glob("*.zip")) == ["P-1_S-4_r-4", "P-2_S-1_r-1"]
    assert "2 records with 2 photos" in found.said_below.text.text()
    ask(idle, desk, "P-1")
    assert export.bundles_button.accessibleName() == "Save bundles …"  # all of them again
    found.bar.clear()
    idle()
    # taken in where they are not
    for name in ("P-2_S-1_r-1", "P-1_S-4_r-4"):
        (out / f"{name}.zip").rename(tmp_path / f"{name}.zip")
    desk.door.close()
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "other"))
    (tmp_path / "P-2_S-1_r-1.zip").rename(out / "P-2_S-1_r-1.zip")
    for taken, told in ((["r-1"], "1 records of 1"), (["r-4", "r-1"], "1 records of 2")):
        desk.show_check()
        idle()
        desk.check.bundles.button.click()
        idle()
        assert told in desk.check.said.text.text()
        assert [hit.record_id for hit in found.model.hits] == taken  # without asking again
        if len(taken) == 1:
            (tmp_path / "P-1_S-4_r-4.zip").rename(out / "P-1_S-4_r-4.zip")
    assert "The others are kept already" in desk.check.said.text.text()
    for name in ("bad-1.zip", "bad-2.ZIP"):
        (out / name).write_bytes(b"no bundle, invented")
    desk.check.bundles.button.click()
    idle()
    said = desk.check.said.text.text()
    assert "0 records of 2" in said
    assert "2 bundles were refused" in said
    assert all(str(out / name) in said for name in ("bad-1.zip", "bad-2.ZIP"))
    monkeypatch.setattr(dialogs, "ask_for_folder", lambda *_: tmp_path / "records")
    desk.check.bundles.button.click()
    idle()
    assert "holds no bundle" in desk.check.said.text.text()


# -- going about on the map ---------------------------------------------------------------
def test_a_click_beside_a_small_cell_means_it_and_shift_goes_to_the_next(qtbot, idle, desk):
    desk.show_map("P-2")
    idle()
    page, view = desk.map, desk.map.view
    # r-1 and r-3 show A at x 0 to 2 mm, r-1 B at x 10 to 13, both at y 20 to 20.4 mm
    page.cell.setText("0.1 mm")
    page.cell.commit()
    idle()
    places = page._made.places
    x0, y0, *_ = places.box_mm

    def place(x, y):
        return view.centre_of(int((y - y0) / 0.1 + 0.5), int((x - x0) / 0.1 + 0.5))

    on_a = place(1.0, 20.2)
    assert view._rect(0, 0).width() < 8  # px: small
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=on_a + QPoint(0, 6))
    idle()
    assert {hit.record_id for hit in page.model.hits} == {"r-1", "r-3"}
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=place(5.0, 18.0))
    idle()
    assert page.model.hits == []  # too far from anything to be meant
    view.choose(*view.cell_at(on_a.toPointF()))
    before = view.cell
    for _ in range(40):  # over the rest of A, then B, and no further
        qtbot.keyClick(view, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
        assert places.counts[view.cell]
    idle()
    assert view.cell[1] > before[1] + 80
    assert [hit.record_id for hit in page.model.hits] == ["r-1"]


def test_a_saved_map_shows_its_drawing_which_stays_for_the_part(
    idle, desk, tmp_path, monkeypatch
):
    drawing, out = tmp_path / "drawing.png", tmp_path / "map.png"
    Image.new("RGB", (200, 200), (40, 160, 40)).save(drawing)
    page = desk.map
    desk.show_map("P-2")
    idle()
    monkeypatch.setattr(dialogs, "ask_for_photo", lambda *_: drawing)
    page.ground.setCurrentIndex(page.ground.findData("drawing"))
    page.ground.activated.emit(page.ground.currentIndex())
    page.place.setText("-50, -50")
    page.width_edit.setText("200 mm")
    page.width_edit.commit()
    idle()
    monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_: out)
    page.save_button.click()
    idle()
    with Image.open(out) as picture:
        red, green, blue = picture.convert("RGB").getpixel((60, 60))
    assert green > red + 80
    assert green > blue + 80
    desk.show_map("P-2")
    idle()
    assert page.ground.currentData() == "drawing"
    assert page._made.picture.pixelColor(5, 5).green() > 120
    desk.show_map("P-1")
    idle()
    assert page.ground.currentData() == "photo"  # it is no drawing of this part
