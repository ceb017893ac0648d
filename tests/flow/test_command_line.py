"""The command line as a script sees it."""

import json
import os
import subprocess
import sys

import jsonschema
import pytest

from ptmark.__main__ import main
from ptmark.commands.options import read_line, read_lines, read_points, read_rectangle
from ptmark.errors import UsageError
from ptmark.record import record_schema
from ptmark.scale import LinesReference


def test_measure_writes_what_it_was_asked_for(photo_file, tmp_path, capsys):
    files = {name: tmp_path / name for name in ("r.json", "a.png", "r.pdf", "t.csv")}
    code = main(
        [
            "measure",
            str(photo_file),
            "--criteria",
            "iso-23277-2",
            "--field",
            "part_number=DEMO-7",
            "--json",
            str(files["r.json"]),
            "--image",
            str(files["a.png"]),
            "--pdf",
            str(files["r.pdf"]),
            "--csv",
            str(files["t.csv"]),
        ]
    )
    assert code == 0
    assert all(path.stat().st_size > 100 for path in files.values())
    record = json.loads(files["r.json"].read_text())
    jsonschema.validate(record, record_schema())
    assert record["evaluation"]["verdict"] == "rejectable"
    assert record["fields"]["part_number"] == "DEMO-7"
    out = capsys.readouterr().out
    assert "rejectable" in out
    assert "longer than 4 mm. (Table 1)" in out  # ISO 23277:2015, level 2, linear
    again = tmp_path / "again.json"
    assert (
        main(
            [
                "evaluate",
                str(files["r.json"]),
                "--criteria",
                "iso-23277-2",
                "--json",
                str(again),
            ]
        )
        == 0
    )
    assert json.loads(again.read_text())["evaluation"]["verdict"] == "rejectable"
    assert main(["record", str(files["r.json"])]) == 0


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["measure", "nowhere.jpg"], "nowhere.jpg"),
        (["measure", "PHOTO", "--line", "1,2,3=5mm"], "--line"),
        (["measure", "PHOTO", "--line", "0,0,0,0=5mm"], "ptmark:"),
        (["measure", "PHOTO", "--rectangle", "1,2,3,4=5mm"], "--rectangle"),
        (["measure", "PHOTO", "--area", "1,2"], "--area"),
        (["measure", "PHOTO", "--area", "9,9,300,300,300,9,9,300"], "sides cross"),
        (["measure", "PHOTO", "--area", "9,9,50,50,300,300"], "sides cross"),
        (["measure", "PHOTO", "--area", "9999,9,10999,9,9999,900"], "nothing of the photo"),
        (["measure", "PHOTO", "--criteria", "nothing-such"], "nothing-such"),
        (["measure", "PHOTO", "--field", "nonsense"], "--field"),
        (["measure", "PHOTO", "--relief", "high"], "--relief"),
        (["measure", "PHOTO", "--image", "a.bmpx"], "a.bmpx"),
        (["record", "nowhere.json"], "nowhere.json"),
        (["record", "nowhere.json", "--name", "A. Tester"], "--sign"),
        (["measure", "PHOTO", "--json", "one", "--csv", "./one"], "--csv one"),
    ],
)
def test_bad_words_give_one_line_and_leave_nothing(
    photo_file, tmp_path, capsys, monkeypatch, words, says
):
    monkeypatch.chdir(tmp_path)
    code = main([str(photo_file) if word == "PHOTO" else word for word in words])
    said = capsys.readouterr().err
    assert code == 1
    assert says in said
    assert len(said.strip().splitlines()) == 1
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("option", ["--image", "--pdf", "--csv", "--json"])
def test_nothing_is_written_over_the_photo(photo_file, capsys, option):
    before = photo_file.read_bytes()
    assert main(["measure", str(photo_file), option, str(photo_file)]) == 1
    assert "is read by the same command" in capsys.readouterr().err
    assert photo_file.read_bytes() == before


def test_an_option_of_one_value_given_twice_is_refused(photo_file, tmp_path, capsys):
    words = ["--json", str(tmp_path / "a.json"), "--json", str(tmp_path / "b.json")]
    with pytest.raises(SystemExit) as ended:
        main(["measure", str(photo_file), *words])
    assert ended.value.code == 2
    assert "--json: given twice" in capsys.readouterr().err


def test_a_photo_without_a_card_says_what_to_do(tmp_path, capsys):
    import cv2
    import numpy as np

    blank = tmp_path / "blank.png"
    cv2.imwrite(str(blank), np.full((600, 800, 3), 200, np.uint8))
    assert main(["measure", str(blank)]) == 1
    assert "card" in capsys.readouterr().err


def test_lines_and_rectangles_are_read():
    assert read_line("1,2,3,4=6in").length_mm == pytest.approx(152.4)  # 25.4 mm exactly
    two = read_lines(["0,0,10,0=5mm", "0,0,0,10=5mm"])
    assert isinstance(two, LinesReference)
    box = read_rectangle("0,0,9,0,9,5,0,5=3.370x2.125in")
    assert (box.width_mm, box.height_mm) == pytest.approx((85.598, 53.975))
    assert read_points("1,2 3,4;5,6", "--area", least=3) == [(1, 2), (3, 4), (5, 6)]
    with pytest.raises(UsageError, match="one or two"):
        read_lines(["0,0,1,0=5mm"] * 3)


def test_the_weld_line_gives_its_length_and_course(photo_file, tmp_path):
    out = tmp_path / "r.json"
    words = ["measure", str(photo_file), "--weld", "240,360,720,360", "--json", str(out)]
    assert main(words) == 0
    record = json.loads(out.read_text())
    assert record["weld_length_mm"] == pytest.approx(40.0, abs=0.3)  # drawn: 480 px at 12 px/mm
    assert record["weld_direction_deg"] == pytest.approx(0.0, abs=0.5)


@pytest.mark.skipif(sys.platform == "win32", reason="its pipes end otherwise")
def test_a_reader_that_has_read_enough_is_no_error():
    reading, writing = os.pipe()
    os.close(reading)  # as `| head` does once it has its lines; POSIX write(): EPIPE
    words = [sys.executable, "-m", "ptmark", "criteria"]
    done = subprocess.run(words, stdout=writing, stderr=subprocess.PIPE, check=False)
    os.close(writing)
    assert (done.returncode, done.stderr) == (1, b"")


def test_card_pdf(tmp_path):
    assert main(["card", str(tmp_path / "card.pdf"), "--paper", "Letter"]) == 0
    assert (tmp_path / "card.pdf").read_bytes().startswith(b"%PDF")


def test_version(capsys):
    assert main(["--version"]) == 0
    assert capsys.readouterr().out.startswith("ptmark ")
