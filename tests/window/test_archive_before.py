"""From a retest in the archive to the test before it; no day is claimed that is not told."""

from dataclasses import replace

import pytest

from ptmark.archive import Query, add_record, find, open_archive
from ptmark.inspection import Inspection
from ptmark.record import link_to, save_record
from ptmark.window.archive.opened import read_hit

pytestmark = pytest.mark.gui


def made(scene_file, **fields):
    work = Inspection()
    work.open(scene_file)
    return replace(work.to_record(), fields={"part_number": "DEMO-9", **fields})


def kept(archive, folder, scene_file, record):
    path = folder / f"{record.id}.json"
    save_record(path, record)
    add_record(archive, path, photos=scene_file.parent)
    return find(archive, Query(record_id=record.id)).hits[0]


def test_the_test_before_is_one_click_away_and_back(idle, window, scene_file, tmp_path):
    first = made(scene_file, examination_date="2018-03-05", serial_number="S-1")
    last = replace(first, id="retest", retest_of=link_to(first, "one.json"))
    with open_archive() as archive:
        before = kept(archive, tmp_path, scene_file, first)
        after = kept(archive, tmp_path, scene_file, last)
    page = window.archive.record
    window.archive.open()
    window.archive.show_record(after)
    idle()
    assert page.before_button.isVisible()
    page.before_button.click()
    idle()
    assert page.record.id == before.record_id
    assert not page.before_button.isVisible()  # the first test of all
    window.archive.back()
    idle()
    assert page.record.id == after.record_id


@pytest.mark.parametrize(
    ("given", "said", "unsaid"),
    [
        ("2018-03-05", "Examined on 2018-03-05 by A. Example", "filed"),
        ("", "No examination date is given: filed under ", "Examined on"),
        ("in spring", "“in spring”, is no day: it is filed under ", "Examined on"),
    ],
)
def test_only_a_day_that_the_record_tells_is_said_to_be_that_of_the_examination(
    home, qapp, scene_file, tmp_path, given, said, unsaid
):
    record = made(scene_file, examination_date=given, examiner="A. Example")
    with open_archive() as archive:
        hit = kept(archive, tmp_path, scene_file, record)
        told = read_hit(archive, hit, "mm").told
    assert said in told
    assert unsaid not in told
    assert "A. Example" in told
