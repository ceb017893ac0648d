"""What the archive keeps of a part number, judged again by other rules."""

import pytest

from ptmark.commands.line import run

LEVEL_1 = "iso-23277-1"


@pytest.fixture
def kept(make, tmp_path, capsys):
    """Two serials of one part number in an archive, and one of another."""
    place = tmp_path / "archive"
    made = [
        make(name, part=part, serial=serial)
        for name, part, serial in (
            ("a", "P-17", "S-1"),
            ("b", "P-17", "S-2"),
            ("c", "Q-1", "S-1"),
        )
    ]
    assert run(["archive", "--at", str(place), "add", *map(str, made)]) == 0
    capsys.readouterr()
    return place


def test_every_record_of_a_part_number_is_judged_again(kept, tmp_path, capsys):
    table = tmp_path / "out.csv"
    words = ["rejudge", "--part", "p-17", "--at", str(kept), "--criteria", LEVEL_1]
    assert run([*words, "--csv", str(table)]) == 0
    said = capsys.readouterr().out
    assert "2 judged" in said
    assert "P-17, serial S-1, " in said
    assert "P-17, serial S-2, " in said
    assert "Q-1" not in said + table.read_text()
    assert run(["rejudge", "--part", "*", "--at", str(kept), "--criteria", LEVEL_1]) == 0
    assert "3 judged" in capsys.readouterr().out


def test_without_records_and_part_number_it_says_what_to_name(kept, capsys):
    assert run(["rejudge", "--criteria", LEVEL_1]) == 1
    assert "name files, folders or --part NUMBER" in capsys.readouterr().err
    assert run(["rejudge", "--part", "none", "--at", str(kept), "--criteria", LEVEL_1]) == 1
    assert "there is no record to judge" in capsys.readouterr().err
