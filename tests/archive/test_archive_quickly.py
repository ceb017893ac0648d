"""A record's rows without parsing what is long: the same rows, or none."""

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from ptmark.archive.derive import derived
from ptmark.archive.proving import hash_of
from ptmark.archive.quickly import derived_quickly

WRITTEN = Path(__file__).parents[1] / "record" / "written"


@pytest.fixture
def judge():
    with closing(sqlite3.connect("")) as one:
        yield one


@pytest.mark.parametrize("version", [2, 3])
def test_written_records_give_the_same_rows(judge, version):
    data = (WRITTEN / f"record-{version}.json").read_bytes()
    quick = derived_quickly(data, judge)
    assert quick == derived(json.loads(data), data)
    assert hash_of(quick, b"") == hash_of(derived(json.loads(data), data), b"")


def test_a_record_without_seals_is_left_to_the_whole_way(judge):
    data = (WRITTEN / "record-1.json").read_bytes()
    assert derived(json.loads(data), data).revisions[0]["sha256"]  # of all that it holds
    assert derived_quickly(data, judge) is None


def test_the_long_is_not_read_at_all(judge, make, monkeypatch):
    data = make(count=3).read_bytes()
    read = []
    real = json.loads
    monkeypatch.setattr(json, "loads", lambda text: read.append(text) or real(text))
    assert derived_quickly(data, judge) is not None
    (text,) = read
    assert b'"outline_px": []' in text
    assert b'"outline_mm": []' in text
    assert b'"parts": {}' in text
    assert text.count(b"[[") == data.count(b"[[") - 6  # both outlines of three; ends stay


# Each put in place of an outline: JSON or not, told as `json.loads` tells it, or not at all.
ODD = [
    '[[1, 2], [3, 4]], "kind": "dent"',  # what stands behind it counts
    '[["a]], ", 1]]',
    "[[1, 2], [3, 4",
    "[[01, 2]]",
    "[[1.2.3, 2]]",
    "[[1 2]]",
    "[[1, 2],]",
    "[[]]",
    "[[[1, 2]]]",
    "[[NaN, 1]]",
    '[[{"kind": [[5]]}]]',
    '[["\\"outline_px\\": [[1]]", 3]]',
    '{"parts": {"a": {"b": 1}}}',
    '{"parts": {"a": "}"}}',
]


@pytest.mark.parametrize("odd", ODD)
@pytest.mark.parametrize("where", ["outline_px", "outline_mm"])
def test_odd_outlines_never_lead_to_other_rows(judge, make, odd, where):
    whole = make(count=1).read_text("utf-8")
    at = whole.index(f'"{where}": ') + len(where) + 4
    end = whole.index("]]", at) + 2
    data = (whole[:at] + odd + whole[end:]).encode()
    assert data != whole.encode()
    try:
        expected = derived(json.loads(data), data)
    except ValueError:  # json.JSONDecodeError
        expected = None
    quick = derived_quickly(data, judge)
    assert quick is None or quick == expected
    if expected is not None and odd == ODD[0]:
        assert quick == expected
        assert quick.indications[0]["kind"] == expected.indications[0]["kind"]


@pytest.mark.parametrize("data", [b"", b"[]", b"{}", b"\xff", b"[" * 100_000, b'{"seal": 1}'])
def test_what_is_no_record_has_no_rows(judge, data):
    assert derived_quickly(data, judge) is None
