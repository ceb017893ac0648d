"""The reviewer's way on the command line, with a real second measurement."""

import json
import shutil

import pytest

from ptmark.__main__ import main
from ptmark.record import load_record, verify_file


def run(*words):
    return main([str(word) for word in words])


@pytest.mark.slow
def test_measure_sign_review_study(photo_file, tmp_path, monkeypatch, capsys):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "own"))
    photo = shutil.copy(photo_file, tmp_path / photo_file.name)
    kept = tmp_path / "r.json"
    assert run("measure", photo, "--criteria", "iso-23277-2", "--json", kept) == 0
    enter = (
        "--outcome",
        "returned",
        "--remark",
        "360,370=look at the part",
        "--name",
        "second",
    )
    assert run("review", kept, *enter) == 1
    assert "examiner has not signed" in capsys.readouterr().err
    assert run("record", kept, "--sign", "examiner", "--name", "first") == 0
    # The reviewer's own scale: a line of 85.6 mm along the card's upper edge (12 px to the mm).
    line = ("--line", "179.5,839.5,1206.7,839.5=85.6mm")
    capsys.readouterr()
    assert run("review", kept, photo, *line, *enter, "--json", tmp_path / "c.json") == 0
    said = capsys.readouterr().out
    assert "scale from line" in said
    (told,) = json.loads((tmp_path / "c.json").read_text("utf-8"))
    assert {pair["first"] for pair in told["pairs"]} == {"A", "B", "C"}
    assert all(pair["length_mm"]["en"] < 1 for pair in told["pairs"])
    record = load_record(kept)
    assert record.reviews[0]["remarks"] == [{"at_px": [360, 370], "text": "look at the part"}]
    assert record.change["why"] == "review: returned"
    assert run("review", kept, "--outcome", "signed", "--name", "third") == 0
    record = load_record(kept)
    assert [one["role"] for one in record.signatures] == ["reviewer"]
    assert all(one.holds is not False for one in verify_file(kept, tmp_path))
    study = ("--pdf", tmp_path / "s.pdf", "--csv", tmp_path / "s.csv")
    capsys.readouterr()
    assert run("agreement", kept, *study) == 0
    assert "limits of agreement" in capsys.readouterr().out
    assert (tmp_path / "s.pdf").read_bytes().startswith(b"%PDF")
