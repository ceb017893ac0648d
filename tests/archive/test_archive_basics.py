"""Taking in, finding and proving whole."""

import pytest

from ptmark.__main__ import main
from ptmark.archive import (
    Query,
    add_record,
    count,
    find,
    find_all,
    open_archive,
    part_history,
    photos_of,
    record_bytes,
    save_search,
    saved_search,
    verify,
)
from ptmark.errors import ArchiveError


def test_what_is_taken_in_comes_back_byte_for_byte(archive, make):
    path = make()
    assert add_record(archive, path).state == "new"
    assert add_record(archive, path).state == "there"
    assert record_bytes(archive, "r-1") == path.read_bytes()
    (photo,) = photos_of(archive, "r-1")
    key = f"{photo['sha256'][:2]}/{photo['sha256'][2:4]}/{photo['sha256']}.jpg"
    assert archive.store.read(key) == path.with_suffix(".jpg").read_bytes()
    found = verify(archive)
    assert found.problems == []
    assert (found.records, found.photos) == (1, 1)


@pytest.mark.parametrize(
    ("query", "names"),
    [
        (Query(), {"r-1", "r-2", "r-3"}),
        (Query(part="p-17"), {"r-1", "r-2"}),
        (Query(part="P-1*"), {"r-1", "r-2"}),
        (Query(part="?-2*"), {"r-3"}),
        (Query(part="%"), set()),
        (Query(part="P-17", serial="s-2"), {"r-2"}),
        (Query(since="2026-03-02"), {"r-2", "r-3"}),
        (Query(until="2026-03-02"), {"r-1", "r-2"}),
        (Query(verdict="acceptable"), {"r-3"}),
        (Query(disposition="reject"), {"r-1", "r-2"}),
        (Query(examiner="examiner two"), {"r-3"}),
        (Query(procedure="PT-*"), {"r-1", "r-2", "r-3"}),
        (Query(criteria="invented-1"), {"r-1", "r-2", "r-3"}),
        (Query(kind="pore"), {"r-1", "r-2"}),
        (Query(kind="pore", longest_mm=2.5), set()),
        (Query(shortest_mm=2.5, longest_mm=3.5), {"r-1", "r-2"}),
        (Query(words="größer wel*"), {"r-2"}),
        (Query(words='"; DROP'), set()),
    ],
)
def test_finding(archive, make, query, names):
    add_record(archive, make("r-1"))
    add_record(archive, make("r-2", serial="S-2", day="2026-03-02", remarks="größer, weld 3"))
    add_record(
        archive,
        make(
            "r-3",
            part="Q-23",
            day="2026-03-03",
            count=1,
            verdict="acceptable",
            decision="accept",
            examiner="Examiner Two",
        ),
    )
    assert {hit.record_id for hit in find_all(archive, query)} == names
    assert count(archive, query) == len(names)


def test_pages_are_newest_first_and_meet_without_gap(archive, make):
    for n in range(7):
        add_record(archive, make(f"r-{n}", day=f"2026-03-0{1 + n // 2}"))
    seen, after = [], None
    while True:
        page = find(archive, Query(), after=after, limit=3)
        seen += [(hit.examined_on, hit.number) for hit in page.hits]
        after = page.after
        if after is None:
            break
    assert len(seen) == 7
    assert seen == sorted(seen, reverse=True)


def test_searches_are_kept(archive):
    save_search(archive, "cracks", Query(kind="crack", shortest_mm=2.0))
    assert saved_search(archive, "cracks") == Query(kind="crack", shortest_mm=2.0)
    with pytest.raises(ArchiveError, match="no search is saved"):
        saved_search(archive, "pores")
    assert verify(archive).whole


def test_a_missing_photo_is_refused_and_nothing_is_left(archive, make):
    path = make()
    path.with_suffix(".jpg").unlink()
    with pytest.raises(ArchiveError, match="is not there"):
        add_record(archive, path)
    assert count(archive, Query()) == 0


def test_a_tampered_record_is_refused(archive, make):
    path = make()
    path.write_text(path.read_text("utf-8").replace("invented weld", "invented wild"), "utf-8")
    with pytest.raises(ArchiveError, match="changed since saving"):
        add_record(archive, path)


def test_read_only_needs_an_archive(tmp_path):
    with pytest.raises(ArchiveError, match="there is no archive"):
        open_archive(tmp_path / "none", read_only=True)


def test_an_accented_number_is_one_number_however_it_was_typed(archive, make):
    one, two = "Pr\u00fcfst\u00fcck", "Pru\u0308fstu\u0308ck"  # NFC and NFD
    add_record(archive, make("r-1", part=one))
    add_record(archive, make("r-2", part=two))
    for said in (one, two, one.upper(), two[:4] + "*"):
        there = {hit.record_id for hit in find_all(archive, Query(part=said))}
        assert there == {"r-1", "r-2"}, said
    assert len(part_history(archive, two).hits) == 2
    assert verify(archive).problems == []


def test_what_is_no_text_is_refused_in_one_error(archive):
    with pytest.raises(ArchiveError, match="is no text"):
        find(archive, Query(part="\udcff"))  # a byte of the command line that is no UTF-8
    assert find(archive, Query(words="a\0b")).hits == []


def test_a_folder_is_taken_in_and_a_bad_file_stops_no_other(tmp_path, make, capsys):
    for n in range(3):
        make(f"r-{n}")
    folder, at = tmp_path / "records", ["archive", "--at", str(tmp_path / "an archive")]
    assert main([*at, "add", str(folder)]) == 0
    assert capsys.readouterr().out.count("taken in") == 3
    (folder / "a.json").write_text("{}")
    make("r-3")
    assert main([*at, "add", str(folder)]) == 1
    said = capsys.readouterr()
    assert said.out.count("was there already") == 3
    assert said.out.count("taken in") == 1
    assert "a.json" in said.err
    assert main([*at, "add", str(tmp_path / "an archive")]) == 1
    assert "holds no record" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("given", "code", "says"),
    [
        (["--since", "yesterday"], 1, "is no date"),
        (["--until", "2026-02-30"], 1, "is no date"),
        (["--limit", "-1"], 2, "no number"),
    ],
)
def test_what_cannot_be_asked_is_said(tmp_path, make, capsys, given, code, says):
    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make())
    try:
        told = main(["archive", "--at", str(tmp_path / "archive"), "find", *given])
    except SystemExit as left:
        told = left.code
    assert told in {code, 2}
    assert says in capsys.readouterr().err


@pytest.mark.parametrize("database", ["nothing://secret@there/x", "secret"])
def test_a_database_of_no_known_kind_is_refused_without_its_password(database, tmp_path):
    with pytest.raises(ArchiveError, match="names no database") as refused:
        open_archive(tmp_path, database=database)
    assert "secret" not in str(refused.value)
