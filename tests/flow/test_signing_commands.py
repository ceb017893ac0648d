"""Signing, changing and verifying a record from the command line."""

from pathlib import Path

import pytest

from ptmark.__main__ import main
from ptmark.record import fingerprint, load_record

OLD = Path(__file__).parents[1] / "record" / "written" / "record-1.json"


@pytest.fixture
def kept(tmp_path, monkeypatch):
    monkeypatch.setenv("PTMARK_HOME", str(tmp_path / "own"))
    path = tmp_path / "r.json"
    path.write_bytes(OLD.read_bytes())
    return path


def run(*words):
    return main([str(word) for word in words])


def test_sign_change_sign_and_verify(kept, capsys):
    assert run("record", kept, "--sign", "examiner", "--name", "first") == 0
    why = ("--by", "first", "--why", "forgotten")
    assert run("record", kept, "--field", "material=steel", *why) == 0
    assert run("record", kept, "--sign", "reviewer", "--name", "second") == 0
    capsys.readouterr()
    assert run("verify", kept) == 0
    said = capsys.readouterr().out
    assert "nothing wrong found" in said
    assert said.count("signed by") == 2
    record = load_record(kept)
    assert record.revision == 2
    assert record.change["what"] == ["fields.material"]
    assert record.change["why"] == "forgotten"
    key = fingerprint(record.signatures[0]["key"])
    assert key in said
    assert run("verify", kept, "--key", key) == 0
    assert run("verify", kept, "--key", "0" * 16) == 1


def test_a_tampered_record_fails_and_is_neither_signed_nor_changed(kept, capsys):
    run("record", kept, "--sign", "examiner", "--name", "first")
    whole = kept.read_bytes()
    kept.write_bytes(whole.replace(b'"P-17"', b'"P-71"'))
    capsys.readouterr()
    assert run("verify", kept, OLD) == 1
    said = capsys.readouterr().out
    assert "WRONG  revision 1, fields.part_number" in said
    assert f"{OLD}: nothing wrong found" in said
    tampered = kept.read_bytes()
    assert run("record", kept, "--sign", "reviewer", "--name", "second") == 1
    assert run("record", kept, "--field", "material=steel") == 1
    assert "part_number" in capsys.readouterr().err
    assert kept.read_bytes() == tampered


def test_a_photo_that_is_missing_or_another_fails(kept, tmp_path, capsys):
    assert run("verify", kept, "--photos", tmp_path) == 1
    (tmp_path / "invented weld.jpg").write_bytes(b"another")
    assert run("verify", kept, "--photos", tmp_path) == 1
    assert "changed" in capsys.readouterr().out


def test_a_retest_is_linked(kept, tmp_path, capsys):
    later = tmp_path / "later.json"
    later.write_bytes(kept.read_bytes().replace(b'"r-1"', b'"r-2"'))
    assert run("record", later, "--retest-of", kept) == 0
    link = load_record(later).retest_of
    assert (link["id"], link["file"], link["revision"]) == ("r-1", "r.json", 1)
    assert run("record", later, "--retest-of", later) == 1
    assert "no retest of itself" in capsys.readouterr().err


@pytest.mark.parametrize("words", [("--sign", "examiner"), ("--field", "colour=red")])
def test_what_cannot_be_done_is_said(kept, words, capsys):
    assert run("record", kept, *words) == 1
    assert "ptmark: --" in capsys.readouterr().err
