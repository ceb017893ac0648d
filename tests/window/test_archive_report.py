"""The report of a kept retest tells its story, though both files bore the same name."""

import shutil
from dataclasses import replace

import pytest

from ptmark.archive import add_record, open_archive
from ptmark.inspection import Inspection
from ptmark.record import link_to, save_record
from ptmark.scale import CardReference
from ptmark.window.archive.opened import write_report

pytestmark = pytest.mark.slow


def test_a_kept_retest_tells_what_was_before(scene_file, tmp_path, pages_of):
    work = Inspection()
    work.open(scene_file)
    work.set_reference(CardReference())
    work.set_suggestions(work.look())
    first = work.to_record()
    last = replace(first, id="retest", retest_of=link_to(first, "weld.json"))
    archive = open_archive(tmp_path / "archive")
    for name, record in (("one", first), ("two", last)):
        (tmp_path / name).mkdir()
        shutil.copy(scene_file, tmp_path / name)
        save_record(tmp_path / name / "weld.json", record)
        add_record(archive, tmp_path / name / "weld.json")
        shutil.rmtree(tmp_path / name)
    write_report(archive, last, tmp_path / "r.pdf")
    orphan = replace(last, retest_of={**last.retest_of, "sha256": "0" * 64})
    write_report(archive, orphan, tmp_path / "o.pdf")
    archive.close()
    said = {name: " ".join(pages_of(tmp_path / name)) for name in ("r.pdf", "o.pdf")}
    assert "First test" in said["r.pdf"]
    assert "Retest 1" in said["r.pdf"]
    assert said["r.pdf"].count("Remains:") == 3
    assert "not at hand for this report" in said["o.pdf"]
