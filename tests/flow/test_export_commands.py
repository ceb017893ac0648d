"""Reports and exports of a kept record from the command line."""

import json
import shutil
from pathlib import Path

import pydicom
import pytest

from ptmark.__main__ import main


def run(*words):
    return main([str(word) for word in words])


@pytest.mark.slow
def test_report_export_import(photo_file, tmp_path, capsys):
    photo = shutil.copy(photo_file, tmp_path / photo_file.name)
    kept = tmp_path / "r.json"
    assert run("measure", photo, "--json", kept, "--pdf", tmp_path / "a.pdf") == 0
    assert run("report", kept, "--pdf", tmp_path / "b.pdf", "--csv", tmp_path / "b.csv") == 0
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()
    for ending in ("zip", "xlsx", "geojson", "coco.json", "dcm"):
        assert run("export", kept, "--to", tmp_path / f"x.{ending}") == 0
    assert len(json.loads((tmp_path / "x.geojson").read_text("utf-8"))["features"]) == 3
    assert len(pydicom.dcmread(tmp_path / "x.dcm").IndicationSequence) == 3
    capsys.readouterr()
    assert run("import", tmp_path / "x.zip", "--to", tmp_path / "in") == 0
    taken = capsys.readouterr().out.strip()
    assert run("verify", taken, "--photos", Path(taken).parent / "photos") == 0
    assert run("export", taken, "--to", tmp_path / "y.zip") == 0
    assert (tmp_path / "x.zip").read_bytes() == (tmp_path / "y.zip").read_bytes()


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("export", "R", "--to", "x.odd"), "no known ending"),
        (("export", "R", "R", "--to", "x.xlsx"), "2 records given"),
        (("export", "R", "--to", "x.zip"), "is not there (the record names"),
        (("report", "R"), "nothing to write"),
        (("report", "R", "--csv", "x.csv", "--sign", "c.p12"), "only the PDF is signed"),
        (("report", "R", "--pdf", "x.pdf"), "is not there (the record names"),
        (("report", "R", "--pdf", "x.pdf", "--time-stamp", "https://x"), "with a signature"),
        (("export", "R", "--to", "x.dcm"), "is not there (the record names"),
        (("import", "R", "--to", "in"), "no whole ZIP"),
    ],
)
def test_what_cannot_be_written_is_said(words, says, tmp_path, capsys, monkeypatch):
    old = Path(__file__).parents[1] / "record" / "written" / "record-1.json"
    shutil.copy(old, tmp_path / "R")
    monkeypatch.chdir(tmp_path)
    assert main(list(words)) == 1
    assert says in capsys.readouterr().err
    assert [p.name for p in tmp_path.iterdir()] == ["R"]
