"""Bundles are called so that a person can tell them, and no two alike."""

import pytest

from ptmark.archive import Query, add_record, export, find, open_archive, take_bundles
from ptmark.archive.exchange import bundle_name


@pytest.mark.parametrize(
    ("part", "serial", "name"),
    [
        ("P-17", "S-1", "P-17_S-1_r-1.zip"),
        ("Pru\u0308f 5/8", "", "Pr\u00fcf-5-8_r-1.zip"),  # one character, on any system
        ("..\\..\\etc", "a:b*?", "etc_a-b_r-1.zip"),
        ("CON", "", "CON_r-1.zip"),
        ("", "", "r-1.zip"),
        ("\u00fc" * 200, "x" * 200, "\u00fc" * 30 + "_" + "x" * 60 + "_r-1.zip"),
    ],
)
def test_a_bundle_tells_part_and_serial(make, tmp_path, part, serial, name):
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make("r-1", part=part, serial=serial))
        (hit,) = find(archive, Query()).hits
        assert bundle_name(hit) == name
        export(archive, Query(), tmp_path / "out")
    assert len(name.encode()) <= 255  # bytes, POSIX NAME_MAX of ext4, XFS, APFS and NTFS
    assert not set(name) & set('<>:"/\\|?*')  # Microsoft: Naming Files, Paths, and Namespaces
    assert [one.name for one in (tmp_path / "out").iterdir()] == [name]


def test_records_of_one_part_and_serial_do_not_replace_each_other(tmp_path, make):
    with open_archive(tmp_path / "archive") as archive:
        for name in ("r-1", "r-2"):
            add_record(archive, make(name))
        export(archive, Query(), tmp_path / "out")
    with open_archive(tmp_path / "second") as second:
        assert [one.state for one in take_bundles(second, tmp_path / "out")] == ["new", "new"]
