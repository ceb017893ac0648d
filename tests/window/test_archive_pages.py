"""Pages of the archive on a shelf of invented records: searches kept, exports, map, check."""

import csv
import io
import json
import shutil
import zipfile
from datetime import date

import numpy as np
import pytest
from PIL import Image
from PySide6.QtCore import QPoint, Qt

from ptmark.archive import (
    Query,
    add_record,
    due,
    find,
    keep_for,
    keeping,
    laid_out,
    lines,
    open_archive,
    place_map,
    saved_searches,
)
from ptmark.errors import ArchiveError
from ptmark.window import dialogs
from ptmark.window.archive.map_ground import why_empty
from ptmark.window.words import day

pytestmark = [pytest.mark.gui, pytest.mark.slow]


def ask(idle, desk, text):
    desk.found.bar.line.setText(text)
    idle()


def test_a_search_is_saved_run_and_deleted(idle, desk):
    found = desk.found
    found.bar.texts["kind"].setText("pore")
    found.bar.texts["kind"].commit()
    ask(idle, desk, "P-2")
    hits = [hit.record_id for hit in found.model.hits]
    assert hits == ["r-5", "r-1"]  # B and C are pores; r-1 has B, r-5 B and C, r-3 only A
    found.saved.name.setText("pores of P-2")
    found.saved.save_button.click()
    idle()
    with open_archive() as archive:
        assert saved_searches(archive) == {"pores of P-2": Query(part="P-2*", kind="pore")}
    found.bar.clear()
    idle()
    assert len(found.model.hits) == 6
    row = found.saved.choice.findData("pores of P-2")
    found.saved.choice.setCurrentIndex(row)
    found.saved.choice.activated.emit(row)
    idle()
    assert [hit.record_id for hit in found.model.hits] == hits
    assert found.bar.texts["kind"].text() == "pore"
    found.saved.drop_button.click()
    idle()
    with open_archive() as archive:
        assert saved_searches(archive) == {}
    assert found.saved.choice.count() == 1


def test_what_is_found_is_exported(idle, desk, tmp_path, monkeypatch):
    ask(idle, desk, "P-1")
    export = desk.found.export
    for name in ("hits.csv", "hits.json"):
        path = tmp_path / name
        monkeypatch.setattr(dialogs, "ask_where_to_save", lambda *_, path=path: path)
        export.list_button.click()
        idle()
    rows = list(csv.DictReader(io.StringIO((tmp_path / "hits.csv").read_text("utf-8"))))
    assert [row["record_id"] for row in rows] == ["r-4", "r-2", "r-0"]
    assert [row["record_id"] for row in json.loads((tmp_path / "hits.json").read_text())] == [
        row["record_id"] for row in rows
    ]
    monkeypatch.setattr(dialogs, "ask_for_folder", lambda *_: tmp_path / "bundles")
    export.bundles_button.click()
    idle()
    bundles = sorted((tmp_path / "bundles").glob("*.zip"))
    assert [one.stem for one in bundles] == ["P-1_S-0_r-0", "P-1_S-2_r-2", "P-1_S-4_r-4"]
    original = (tmp_path / "records" / "r-0.json").read_bytes()
    with zipfile.ZipFile(bundles[0]) as bundle:
        assert bundle.read("record.json") == original
    assert "3" in desk.found.said_below.text.text()
    ask(idle, desk, "no such part")
    assert not export.list_button.isEnabled()
    assert desk.found.views.currentWidget() is desk.found.nothing


def test_an_archive_whose_disk_is_away_is_no_new_one_and_is_opened_once_it_is_back(desk):
    folder = desk.door._opened().file.parent
    away = folder.rename(folder.with_name("away"))
    with pytest.raises(ArchiveError, match="moved, replaced or taken away"):
        desk.door._opened()
    assert not folder.exists()  # an empty one would look as if all were lost
    away.rename(folder)
    before = desk.door._opened()
    shutil.copy(before.file, folder / "again")
    (folder / "again").replace(before.file)  # as one that was made again
    assert desk.door._opened() is not before


def test_what_cannot_be_exported_says_which_file_beside_the_button(
    idle, desk, tmp_path, monkeypatch
):
    ask(idle, desk, "P-1")
    found = desk.found
    (tmp_path / "file").write_bytes(b"")  # no folder, so that nothing can be written into it
    monkeypatch.setattr(dialogs, "ask_for_folder", lambda *_: tmp_path / "file")
    found.export.bundles_button.click()
    idle()
    said = found.said_below
    assert "cannot be written" in said.text.text()
    assert str(tmp_path / "file" / "P-1_S-4_r-4.zip") in said.text.text()
    button = found.export.bundles_button
    gap = button.mapTo(found, QPoint(0, 0)).y() - said.geometry().bottom()
    assert 0 <= gap < 40  # px: the error stands over what caused it


def test_a_place_leads_to_its_records(qtbot, idle, desk):
    desk.show_map("P-2")
    idle()
    page = desk.map
    assert page.datum.currentData() == "hole A"
    # r-1 and r-3 give the datum; A of both crosses x 0 to 2 mm at y 20, r-5 gives none
    page.view.choose(*cell_of(page, 0.5, 20.0))
    idle()
    assert {hit.record_id for hit in page.model.hits} == {"r-1", "r-3"}
    assert "2.00 ± 0.10 mm" in page.of_cell.text()
    page.view.choose(*cell_of(page, 12.5, 20.0))  # B from x 10 to 13, of r-1 only
    idle()
    assert [hit.record_id for hit in page.model.hits] == ["r-1"]
    assert "1 records are left out" in page.says.text()
    where = page.view.centre_of(*cell_of(page, 0.5, 20.0))
    qtbot.mouseClick(page.view, Qt.MouseButton.LeftButton, pos=where)
    idle()
    assert len(page.model.hits) == 2
    qtbot.keyClick(page.view, Qt.Key.Key_Return)
    assert page.table.hasFocus() or page.table.currentIndex().row() == 0
    with qtbot.waitSignal(page.opened) as opened:
        qtbot.keyClick(page.table, Qt.Key.Key_Return)
    assert opened.args[0].record_id == "r-3"  # the newer one first
    idle()
    assert desk.record.isVisible()
    desk.back()
    assert desk.map.isVisible()


def cell_of(page, x, y):
    places = page._made.places
    x0, y0, *_ = places.box_mm
    return int((y - y0) // places.cell_mm), int((x - x0) // places.cell_mm)


def test_a_part_without_a_datum_says_what_would_help(idle, desk):
    desk.show_map("P-2")
    idle()
    desk.map.datum.setCurrentIndex(desk.map.datum.count() - 1)
    desk.map.draw()
    idle()
    assert "None of the 3 records" in desk.map.said.text.text()
    assert why_empty(1).startswith("The one record does not say")
    assert desk.map.view.cell_at(desk.map.view.rect().center().toPointF()) is None


def test_a_drawing_is_laid_where_it_belongs(shelf):
    """A pixel of known place on the part lands in the middle of its own cell."""
    with open_archive() as archive:
        places = place_map(archive, "P-1", datum="hole A", box_mm=(0, 10, 20, 30))
    drawing = np.full((40, 40, 3), 255, np.uint8)
    drawing[21, 7] = (0, 0, 0)  # half a millimetre a pixel: x 3.5 to 4, y 20.5 to 21 mm
    matrix = [[0.5, 0, 0.25], [0, 0.5, 10.25], [0, 0, 1]]
    ground = laid_out(drawing, matrix, places, width=400)  # 20 px a millimetre
    row, column = np.argwhere(ground[..., 0] < 100).mean(axis=0)
    assert (column + 0.5) / 20 == pytest.approx(3.75, abs=0.03)
    assert 10 + (row + 0.5) / 20 == pytest.approx(20.75, abs=0.03)


def test_the_check_tells_what_is_missing_and_can_be_stopped(qtbot, idle, desk, home):
    desk.show_check()
    idle()
    page = desk.check
    assert page.keeping.rowCount() == 2
    assert "contract, invented" in page.keeping.item(0, 4).text()
    assert page.keeping.item(1, 2).text() == "serial S-4"
    page.check_button.click()
    idle()
    assert "All are as they were taken in" in page.said.text.text()
    assert page.problems.isHidden()
    photo = next(iter((home / "archive" / "photos").rglob("*.jpg")))
    photo.chmod(0o644)
    photo.unlink()
    page.check_button.click()
    idle()
    told = [page.problems.item(0, column).text() for column in range(2)]
    with open_archive(read_only=True) as archive:
        (hit,) = find(archive, Query(photo=photo.stem)).hits
    assert told == [
        "missing",
        f"{hit.part}, {hit.serial}, {hit.examined_on}, photo {photo.stem[:12]}…",
    ]
    with qtbot.waitSignal(page.opened) as opened:
        page.problems.itemActivated.emit(page.problems.item(0, 2))
    assert opened.args[0] == hit
    desk.back()
    assert "1 are missing" in page.said.text.text()
    page.check_button.click()
    page.stop_button.click()
    idle()
    assert not page.running
    assert "Stopped" in page.said.text.text()
    page.resume_button.click()
    idle()
    assert "1 are missing" in page.said.text.text()


def test_an_archive_out_of_reach_says_so(idle, window, monkeypatch, tmp_path):
    (tmp_path / "drive").write_bytes(b"")  # stands where its folder should be
    monkeypatch.setenv(
        "PTMARK_ARCHIVE_DATABASE", f"sqlite:///{tmp_path / 'drive' / 'x' / 'archive.sqlite'}"
    )
    window.archive.open()
    idle()
    said = window.archive.found.said.text.text()
    assert "drive" in said
    assert window.archive.found.count.text() == ""
    window.archive.found.check_asked.emit()
    idle()
    assert "drive" in window.archive.check.said.text.text()


def test_a_hold_is_set_on_what_was_searched_for_and_taken_away(idle, desk):
    ask(idle, desk, "P-2")
    desk.show_check()
    idle()
    form = desk.check.holds
    assert "part number P-2*" in form.which.text()
    form.name.setText("claim 7")
    assert not form.set_button.isEnabled()  # never without a reason
    form.reason.setText("letter of 2026-05-01, invented")
    form.set_button.click()
    idle()
    assert "claim 7" in desk.check.said.text.text()
    assert desk.check.keeping.rowCount() == 3
    with open_archive() as archive:
        held = {one["name"]: one for one in keeping(archive)["hold"]}
        keep_for(archive, "short", Query(), 1, "invented")
        gone = {one.hit.part for one in due(archive, date(2040, 1, 1))}
    assert json.loads(held["claim 7"]["query"]) == {"part": "P-2*"}
    assert gone == {"P-1"}
    desk.check.keeping.selectRow(
        next(n for n in range(3) if desk.check.keeping.item(n, 1).text() == "claim 7")
    )
    assert form.name.text() == "claim 7"
    assert not form.release_button.isEnabled()
    form.reason.setText("settled, invented")
    assert not form.set_button.isEnabled()  # it would take the place of the hold there is
    form.release_button.click()
    idle()
    with open_archive() as archive:
        assert {one["name"] for one in keeping(archive)["hold"]} == {"claim"}
        with archive.reading() as conn:
            last = list(lines(conn))[-1]
    assert (last.action, last.subject) == ("dropped hold", "claim 7")
    assert json.loads(last.detail)["why"] == "settled, invented"


def test_only_the_keepers_role_may_set_a_hold(idle, desk, monkeypatch):
    monkeypatch.setattr("ptmark.archive.may_hold", lambda _: False)
    desk.show_check()
    idle()
    form = desk.check.holds
    for edit in (form.name, form.reason):
        edit.setText("x")
        assert not edit.isEnabled()
    assert not form.set_button.isEnabled()
    assert "keeper" in form.which.text()


def test_very_many_are_counted_only_when_asked(idle, desk, monkeypatch):
    monkeypatch.setattr("ptmark.window.archive.found._COUNTED", 2)
    monkeypatch.setattr("ptmark.window.archive.found._PAGE", 2)
    ask(idle, desk, "P-")
    found = desk.found
    assert found.count.text().startswith("More than 2 records whose part number begins")
    found.all_button.click()
    idle()
    assert found.count.text().startswith("6 records whose part number begins")
    assert found.all_button.isHidden()
    ask(idle, desk, "P-9")
    assert found.all_button.isHidden()


def test_a_search_that_stops_says_how_far_back_it_looked(idle, desk, monkeypatch):
    """The oldest of six fits, and each stretch is of two."""
    monkeypatch.setattr("ptmark.archive.asking._FEW", 0)
    monkeypatch.setattr("ptmark.archive.paging._FAR", 2)
    monkeypatch.setattr("ptmark.window.archive.further._WAITED", 0.0)
    with open_archive(read_only=True) as archive:
        days = [hit.examined_on for hit in find(archive, Query()).hits]
        found_first = find(archive, Query(serial="*-0", kind="crack")).hits
    assert [hit.record_id for hit in found_first] == ["r-0"]
    assert found_first[0].examined_on == days[-1]
    found = desk.found
    found.views.hide()  # a list in sight reads on by itself
    found.bar.texts["serial"].setText("*-0")
    found.bar.texts["serial"].commit()
    found.bar.texts["kind"].setText("crack")
    found.bar.texts["kind"].commit()
    idle()
    told = []
    while not found.further_button.isHidden():
        assert found.views.currentWidget() is not found.nothing
        told.append(found.count.text())
        assert len(told) < 9
        found.further_button.click()
        idle()
    told_of = (
        "Examined after {0}: no record fit the filters. The rest has not been looked through"
    )
    assert told == [f"{told_of} yet.".format(day(days[n])) for n in (2, 4)]
    assert [hit.record_id for hit in found.model.hits] == ["r-0"]
    assert found.count.text().startswith("1 record fit the filters, newest first")
    assert found.export.list_button.isEnabled()


def test_a_makers_note_is_told_beside_the_place(idle, desk, tmp_path, made):
    exif = Image.Exif()
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 30.0, 0.0), 3: "W", 4: (0.0, 7.0, 0.0)})
    noted = Image.Exif()
    noted.get_ifd(0x8769)[0x927C] = b"invented note of a maker"
    told = {}
    for name, own in (("placed", exif), ("noted", noted), ("bare", Image.Exif())):
        out = io.BytesIO()
        Image.new("RGB", (64, 48)).save(out, "JPEG", exif=own)
        with open_archive() as archive:
            add_record(archive, made(tmp_path / name, name, photo=out.getvalue()))
            (hit,) = find(archive, Query(record_id=name)).hits
        desk.show_record(hit)
        idle()
        notice = desk.record.location
        told[name] = notice.text.text() if notice.isVisibleTo(desk.record) else ""
    assert "51.50000, -0.11667" in told["placed"]
    assert "maker" not in told["placed"]
    assert "maker" in told["noted"]
    assert "noted.jpg" in told["noted"]
    assert told["bare"] == ""
