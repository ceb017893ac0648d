"""Changed bits, kills, migrations, two copies, rules: what was acknowledged stays."""

import hashlib
import random
import signal
import sqlite3
import struct
import subprocess
import sys
import time
from contextlib import closing
from dataclasses import replace
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from sqlalchemy import text

from ptmark.archive import (
    Query,
    add_record,
    apply_rules,
    back_up,
    count,
    due,
    export,
    find_all,
    hold,
    keep_for,
    open_archive,
    part_history,
    photos_of,
    place_map,
    place_record,
    record_bytes,
    release,
    repair,
    save_search,
    take_bundles,
    verify,
)
from ptmark.archive.beside import file_key
from ptmark.archive.migrating import NEWEST, at_version, migrate
from ptmark.archive.store import is_content
from ptmark.errors import ArchiveError, ReportError
from ptmark.photo.location import location_of, without_location
from ptmark.record import Signer, key_of, load_record, save_record, sign_record


def lose_bit(path, at):
    path.chmod(0o644)
    data = bytearray(path.read_bytes())
    data[at // 8] ^= 1 << at % 8
    path.write_bytes(data)


def photo_file(archive, record_id="r-1"):
    (photo,) = photos_of(archive, record_id)
    sha256 = photo["sha256"]
    return archive.store.path(f"{sha256[:2]}/{sha256[2:4]}/{sha256}.{photo['suffix']}")


@pytest.mark.slow
def test_any_changed_bit_of_the_database_file_is_found(tmp_path, make):
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        for n in range(3):
            add_record(archive, make(f"r-{n}"))
    file = folder / "archive.sqlite"
    whole = file.read_bytes()
    draw = random.Random(3)  # noqa: S311 - any places do
    missed = []
    for _ in range(25):
        at = draw.randrange(len(whole) * 8)
        lose_bit(file, at)
        try:
            with open_archive(folder, read_only=True) as archive:
                if verify(archive).whole:
                    missed.append(at)
        except ArchiveError:
            pass  # it cannot even be opened, and says so
        file.write_bytes(whole)
    assert missed == []


def rows_of(file, tables=None):
    """All that the tables hold, those of the index of words too, but for its pages.

    ``tables`` names them where the file may not call them tables any more: SQLite lets it pass.
    """
    with closing(sqlite3.connect(f"file:{file}?mode=ro&immutable=1", uri=True)) as raw:
        if tables is None:
            names = raw.execute("SELECT name FROM sqlite_master WHERE type = 'table'")
            tables = {name for (name,) in names} - {"words_data"}
        return {name: raw.execute(f'SELECT * FROM "{name}"').fetchall() for name in tables}  # noqa: S608


@pytest.mark.slow
def test_without_a_seal_only_bits_that_nothing_reads_are_missed(tmp_path, make):
    """As in a large database that was written to since: rows, indexes, pages set free.

    SQLite's own check of the index of words adds up by XOR, in which the same change at two
    places cancels: of its pages some bits are missed.
    """
    folder = tmp_path / "archive"
    with open_archive(folder) as archive:
        for n in range(5):
            day, remarks = ("2001-01-01", "unspeakable " * 200) if n < 3 else ("2026-01-01", "")
            add_record(archive, make(f"r-{n}", day=day, remarks=remarks))
        keep_for(archive, "ten", Query(), 10, "invented contract")
        assert len(apply_rules(archive, date(2026, 6, 1))) == 3
    file = folder / "archive.sqlite"
    whole, rows = file.read_bytes(), rows_of(file)
    assert b"speakab" not in whole  # what was deleted is gone from the index of words too
    draw, used = random.Random(6), [at for at, byte in enumerate(whole) if byte]  # noqa: S311
    found = 0
    for _ in range(30):
        (folder / "archive.seal").unlink(missing_ok=True)
        lose_bit(file, draw.choice(used) * 8 + draw.randrange(8))
        try:
            with open_archive(folder, read_only=True) as archive:
                missed = verify(archive).whole
        except ArchiveError:
            missed = False
        assert not missed or rows_of(file, rows) == rows
        found += not missed
        file.write_bytes(whole)
    assert found > 5


def test_a_page_that_asks_for_more_memory_than_there_is_is_told(tmp_path, make, monkeypatch):
    """As SQLite does where a bit of a length in the index of words has changed."""

    def damaged(_):
        raise MemoryError

    with open_archive(tmp_path / "archive") as archive:
        add_record(archive, make("r-1"))
        monkeypatch.setattr("ptmark.archive.verifying.check_words", damaged)
        (problem,) = verify(archive).problems
    assert (problem.kind, problem.subject) == ("damaged", "database")
    assert "malformed" in problem.says


def test_a_changed_row_is_found_and_mended_from_its_record(archive, make):
    add_record(archive, make())
    for change in (
        "UPDATE inspection SET verdict = 'acceptable'",
        "UPDATE indication SET length_mm = 2.0000000001 WHERE letter = 'A'",
        "UPDATE wording SET text = 'other'",
        "UPDATE part SET key = 'p-18'",
        "UPDATE photo SET bytes = 4999",
        "DELETE FROM revision",
    ):
        with closing(sqlite3.connect(archive.file)) as raw:
            raw.execute(change)
            raw.commit()
        assert not verify(archive).whole, change
        mended, found = repair(archive)
        if not change.startswith("UPDATE part"):  # the row of a part belongs to many records
            assert mended, change
            assert found.whole, (change, found.problems)
        else:
            with archive.writing() as conn:
                conn.execute(text("UPDATE part SET key = 'p-17'"))


def test_lines_of_the_log_cannot_be_changed_or_cut_off_unseen(archive, make):
    add_record(archive, make("r-1"))
    save_search(archive, "all", Query())
    with closing(sqlite3.connect(archive.file)) as raw:
        raw.execute("UPDATE audit SET who = 'somebody' WHERE seq = 1")
        raw.commit()
    assert any("line 1 " in p.says for p in verify(archive).problems)
    with closing(sqlite3.connect(archive.file)) as raw:
        raw.execute("UPDATE audit SET who = 'keeper' WHERE seq = 1")
        raw.execute("DELETE FROM audit WHERE seq = 2")
        raw.execute("DELETE FROM saved_search")
        raw.commit()
    assert any(p.subject == "log" for p in verify(archive).problems)


def test_a_photo_is_mended_from_a_second_copy(archive, make, tmp_path):
    add_record(archive, make("r-1"))
    add_record(archive, make("r-2"))
    assert back_up(archive, tmp_path / "copy") == 2
    lose_bit(photo_file(archive, "r-1"), 777)
    photo_file(archive, "r-2").unlink()
    kinds = sorted(p.kind for p in verify(archive).problems)
    assert kinds == ["changed", "missing"]
    mended, found = repair(archive, tmp_path / "copy")
    assert len(mended) == 2
    assert found.problems == []
    with open_archive(tmp_path / "copy", read_only=True) as copy:
        assert verify(copy).problems == []


def test_a_record_that_went_is_mended_from_a_second_copy(archive, make, tmp_path):
    path = make()
    add_record(archive, path)
    back_up(archive, tmp_path / "copy")
    with closing(sqlite3.connect(archive.file)) as raw:
        raw.execute("UPDATE document SET data = zeroblob(40)")
        raw.commit()
    sha256 = hashlib.sha256(path.read_bytes()).hexdigest()
    archive.store.remove(file_key(sha256))  # else it would be mended from there
    assert not repair(archive)[1].whole
    assert repair(archive, tmp_path / "copy")[1].problems == []
    assert record_bytes(archive, "r-1") == path.read_bytes()


def test_a_backup_cut_off_leaves_the_last_one(archive, make, tmp_path):
    add_record(archive, make("r-1"))
    back_up(archive, tmp_path / "copy")
    add_record(archive, make("r-2"))
    photo_file(archive, "r-2").unlink()
    with pytest.raises(ArchiveError, match="missing or changed"):
        back_up(archive, tmp_path / "copy")
    with open_archive(tmp_path / "copy", read_only=True) as copy:
        assert [hit.record_id for hit in find_all(copy, Query())] == ["r-1"]
        assert verify(copy).whole


def test_nobody_overwrites_what_another_saved(archive, make):
    path = make()
    first = add_record(archive, path)
    record = load_record(path)
    save_record(path, replace(record, fields={**record.fields, "remarks": "mine"}))
    with pytest.raises(ArchiveError, match="another state is kept"):
        add_record(archive, path)
    assert add_record(archive, path, replaces=first.sha256).state == "revised"
    other = replace(record, fields={**record.fields, "remarks": "yours"})
    save_record(path, other)
    with pytest.raises(ArchiveError, match="another state is kept"):
        add_record(archive, path, replaces=first.sha256)  # it was replaced meanwhile
    assert b"mine" in record_bytes(archive, "r-1")
    assert verify(archive).whole


def test_signed_revisions_follow_each_other_and_older_ones_change_nothing(archive, make):
    path = make()
    add_record(archive, path)
    old = path.read_bytes()
    who = Signer(role="examiner", name="Examiner One")
    signed = save_record(path, sign_record(load_record(path), who, key_of(who.name)))
    assert add_record(archive, path).state == "revised"
    early = path.read_bytes()
    save_record(path, replace(signed, fields={**signed.fields, "remarks": "more"}), why="x")
    assert add_record(archive, path).state == "revised"
    late = path.read_bytes()
    path.write_bytes(early)
    assert add_record(archive, path).state == "later"
    path.write_bytes(old)  # not signed: it carries nothing, and nothing carries it
    with pytest.raises(ArchiveError, match="another state is kept"):
        add_record(archive, path)
    assert record_bytes(archive, "r-1") == late
    assert verify(archive).whole


def test_migrations_go_down_and_up_on_a_filled_archive(archive, make):
    path = make(part="Pru\u0308fstu\u0308ck")  # NFD: its keys were other ones
    add_record(archive, path)
    with archive.engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin():
            migrate(conn, "0001")
            assert at_version(conn) == "0001"
            migrate(conn)
            assert at_version(conn) == NEWEST
    assert record_bytes(archive, "r-1") == path.read_bytes()
    assert verify(archive).whole
    with archive.engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin():
            migrate(conn, "base")
            migrate(conn)
    assert count(archive, Query()) == 0
    assert photo_names(archive)  # photos are not the database's to take away


def photo_names(archive):
    return [key for key in archive.store.names() if is_content(key)]


def test_models_and_migrations_give_the_same_tables(archive):
    from sqlalchemy import inspect

    from ptmark.archive.models import Base

    with archive.reading() as conn:
        seen = inspect(conn)
        for name, table in Base.metadata.tables.items():
            there = [c for c in seen.get_columns(name) if "computed" not in c]
            columns = {c["name"]: c["nullable"] for c in there}
            assert columns == {c.name: bool(c.nullable) for c in table.columns}, name
            indexes = {i["name"] for i in seen.get_indexes(name)}
            assert {i.name for i in table.indexes} <= indexes, name


def test_bundles_carry_a_part_over_and_again(archive, make, tmp_path):
    path = make("r-1")
    add_record(archive, path)
    add_record(archive, make("r-2", part="Q-1"))
    export(archive, Query(part="P-17"), tmp_path / "out")
    first = (tmp_path / "out" / "P-17_S-1_r-1.zip").read_bytes()
    export(archive, Query(part="P-17"), tmp_path / "out")
    assert (tmp_path / "out" / "P-17_S-1_r-1.zip").read_bytes() == first
    with open_archive(tmp_path / "second") as second:
        assert [one.state for one in take_bundles(second, tmp_path / "out")] == ["new"]
        assert [one.state for one in take_bundles(second, tmp_path / "out")] == ["there"]
        assert record_bytes(second, "r-1") == path.read_bytes()
        assert verify(second).problems == []


def test_rules_holds_and_retests_decide_what_is_deleted(archive, make):
    add_record(archive, make("old", day="2010-05-01"))
    add_record(archive, make("held", day="2010-05-01", part="H-1"))
    add_record(archive, make("new", day="2026-01-01"))
    day = date(2026, 6, 1)
    assert due(archive, day) == []  # no rule, no deletion
    keep_for(archive, "ten", Query(), 10, "invented contract")
    hold(archive, "claim", Query(part="H-1"), "invented claim")
    assert [one.hit.record_id for one in due(archive, day)] == ["old"]
    keep_for(archive, "thirty", Query(part="P-17"), 30, "invented law")
    assert due(archive, day) == []  # the longest rule counts
    release(archive, "thirty", "was an error")
    photo = photo_file(archive, "old")
    assert [one.hit.record_id for one in apply_rules(archive, day)] == ["old"]
    assert not photo.exists()
    assert {hit.record_id for hit in find_all(archive, Query())} == {"held", "new"}
    assert verify(archive).problems == []


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="no zone can be set here")
@pytest.mark.parametrize(("zone", "gone"), [("west8", []), ("east-14", ["r-1"])])
def test_nothing_is_deleted_while_its_day_lasts_where_the_keeper_is(
    archive, make, monkeypatch, zone, gone
):
    class Clock(datetime):
        @classmethod
        def now(cls, tz=None):
            return datetime(2026, 6, 2, 3, tzinfo=UTC).astimezone(tz)

    add_record(archive, make("r-1", day="2016-06-01"))
    keep_for(archive, "ten", Query(), 10, "invented contract")
    monkeypatch.setattr(sys.modules[due.__module__], "datetime", Clock)
    with monkeypatch.context() as there:
        there.setenv("TZ", zone)
        time.tzset()
        found = [one.hit.record_id for one in apply_rules(archive)]
    time.tzset()
    assert found == gone


def test_what_a_signed_retest_needs_stays(archive, make):
    from ptmark.record import link_to

    first = make("first", day="2010-05-01")
    add_record(archive, first)
    link = link_to(load_record(first), first.name)
    path = make("again", day="2026-01-01", retest_of=link)
    who = Signer(role="examiner", name="Examiner One")
    save_record(path, sign_record(load_record(path), who, key_of(who.name)))
    add_record(archive, path)
    keep_for(archive, "ten", Query(), 10, "invented contract")
    assert due(archive, date(2026, 6, 1)) == []
    assert {one.hit.record_id for one in due(archive, date(2036, 6, 1))} == {"first", "again"}


def test_what_a_retest_of_a_retest_needs_stays(archive, make):
    from ptmark.record import link_to

    link = None
    for name, day in (
        ("first", "2010-05-01"),
        ("second", "2011-05-01"),
        ("third", "2026-01-01"),
    ):
        path = make(name, day=day, retest_of=link)
        if name == "third":  # only this one is signed: it tells of growth since the first
            who = Signer(role="examiner", name="Examiner One")
            save_record(path, sign_record(load_record(path), who, key_of(who.name)))
        add_record(archive, path)
        link = link_to(load_record(path), path.name)
    keep_for(archive, "ten", Query(), 10, "invented contract")
    assert apply_rules(archive, date(2026, 6, 1)) == []
    assert len(apply_rules(archive, date(2036, 6, 1))) == 3
    assert verify(archive).problems == []


def test_no_revision_takes_a_record_out_of_a_hold_or_a_rule(archive, make):
    day = date(2026, 6, 1)
    path = make("held", day="2010-05-01", part="P-17")
    late = make("late", day="2025-05-01")
    first = [add_record(archive, one).sha256 for one in (path, late)]
    hold(archive, "claim", Query(part="P-17", until="2024-12-31"), "invented claim")
    keep_for(archive, "ten", Query(), 10, "invented contract")
    for one, sha256, field in (
        (path, first[0], {"part_number": "P-18"}),  # out of the hold's query
        (late, first[1], {"examination_date": "2001-01-01"}),  # as if its time had run out
    ):
        record = load_record(one)
        save_record(one, replace(record, fields={**record.fields, **field}))
        assert add_record(archive, one, replaces=sha256).state == "revised"
    assert due(archive, day) == []
    assert apply_rules(archive, day) == []
    release(archive, "claim", "settled")
    assert [one.hit.record_id for one in due(archive, day)] == ["held"]
    archive.store.remove(file_key(first[0]))  # what it once said cannot be read any more
    assert due(archive, day) == []


def test_history_and_map_count_by_hand(archive, make):
    # Each record: A from x 0 to 2, B from x 10 to 13, both at y 20 to 20.4.
    for n, day in enumerate(("2024-01-01", "2025-01-01", "2025-06-01")):
        decision = "accept" if n == 2 else "reject"
        add_record(archive, make(f"r-{n}", day=day, serial=f"S-{n}", decision=decision))
    told = part_history(archive, "p-17")
    assert [(p.year, p.inspections, p.indications) for p in told.periods] == [
        ("2024", 1, 2),
        ("2025", 2, 4),
    ]
    assert told.periods[1].reject_rate == 0.5
    assert told.periods[1].mean_mm == 2.5
    assert place_map(archive, "P-17").left_out == 3
    place_record(archive, "r-0", (1, 0, 0, 0, 1, 0))
    place_record(archive, "r-1", (0, -1, 30, 1, 0, 0))  # a quarter turn: (x, y) to (30 - y, x)
    found = place_map(archive, "P-17", box_mm=(0, 0, 40, 40))
    assert found.records == 2
    assert found.counts[20, :3].tolist() == [1, 1, 1]
    assert (
        found.counts[10:14, 9].tolist() == [1, 1, 1, 1] or found.counts[10:14, 9:11].sum() >= 4
    )
    assert found.counts[30].sum() == 0


def test_a_place_is_taken_out_of_the_copy_only():
    # A TIFF header, IFD0 with one GPS pointer, and a GPS directory: 51° 30' N, 0° 7' W.
    def rationals(*values):
        return b"".join(struct.pack("<II", v, 1) for v in values)

    ifd0 = struct.pack("<HHHIII", 1, 0x8825, 4, 1, 26, 0)
    entries = struct.pack("<H", 4)
    entries += struct.pack("<HHI4s", 1, 2, 2, b"N\0\0\0")
    entries += struct.pack("<HHII", 2, 5, 3, 80)
    entries += struct.pack("<HHI4s", 3, 2, 2, b"W\0\0\0")
    entries += struct.pack("<HHII", 4, 5, 3, 104)
    block = b"II*\0" + struct.pack("<I", 8) + ifd0 + entries + struct.pack("<I", 0)
    assert len(block) == 80
    data = b"\xff\xd8..Exif\0\0" + block + rationals(51, 30, 0, 0, 7, 0) + b"picture"
    place = location_of(data)
    assert place.latitude == pytest.approx(51.5)
    assert place.longitude == pytest.approx(-7 / 60)
    copy = without_location(data)
    assert location_of(copy) is None
    assert len(copy) == len(data)
    assert copy.endswith(b"picture")
    assert rationals(51, 30, 0) not in copy
    assert without_location(copy) == copy


def test_a_bundle_without_location_is_not_taken_for_the_original(archive, make, tmp_path):
    add_record(archive, make())
    export(archive, Query(), tmp_path / "out", leave_out_location=True)
    with (
        open_archive(tmp_path / "second") as second,
        pytest.raises((ReportError, ArchiveError), match="missing"),
    ):
        take_bundles(second, tmp_path / "out")


CHILD = """
import sys
from pathlib import Path
from ptmark.archive import add_record, open_archive
with open_archive(Path(sys.argv[1]), by="child") as archive:
    print("open", flush=True)
    for path in sorted(Path(sys.argv[2]).glob(sys.argv[3])):
        add_record(archive, path)
        print(path.stem, flush=True)
"""


def child(folder, records, pattern):
    return subprocess.Popen(
        [sys.executable, "-c", CHILD, str(folder), str(records), pattern],
        stdout=subprocess.PIPE,
        text=True,
        cwd=Path(__file__).parents[2],
    )


@pytest.mark.slow
def test_two_processes_write_at_once_and_one_is_killed(tmp_path, make):
    for n in range(30):
        make(f"a-{n:02d}")
        make(f"b-{n:02d}")
    folder, records = tmp_path / "archive", tmp_path / "records"
    with child(folder, records, "a-*.json") as one, child(folder, records, "b-*.json") as other:
        for _ in range(6):
            one.stdout.readline()
        one.send_signal(signal.SIGKILL)
        said = one.stdout.read().split("\n")[:-1]
        rest = other.communicate(timeout=600)[0].split()[1:]
    assert len(rest) == 30
    with open_archive(folder) as archive:
        there = {hit.record_id for hit in find_all(archive, Query())}
        assert {f"a-{n:02d}" for n in range(5)} | set(said) | set(rest) <= there
        assert verify(archive).whole


def test_a_clock_set_back_harms_nothing(archive, make, monkeypatch):
    add_record(archive, make("r-1"))
    monkeypatch.setattr("ptmark.archive.chain.time_now", lambda: "1999-12-31T23:59:59Z")
    add_record(archive, make("r-2"))
    assert verify(archive).problems == []
    assert count(archive, Query()) == 2


def test_a_full_disk_loses_nothing(archive, make, monkeypatch):
    add_record(archive, make("r-1"))
    path = make("r-2")

    def full(*_args, **_more):
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr("ptmark.archive.store.write_whole", full)
        with pytest.raises(ArchiveError, match="No space left"):
            add_record(archive, path)
    assert verify(archive).problems == []
    assert add_record(archive, path).state == "new"


def test_a_stopped_check_goes_on(archive, make, monkeypatch):
    from ptmark.archive import checking, findings

    for n in range(5):
        add_record(archive, make(f"r-{n}"))
    monkeypatch.setattr(findings, "_NOTED", 0.0)
    monkeypatch.setattr(checking, "CHUNK", 2)
    steps = []

    def stop(done, _total):
        steps.append(done)
        if len(steps) == 2:
            raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        verify(archive, progress=stop)
    later = []
    found = verify(archive, resume=True, progress=lambda done, _total: later.append(done))
    assert (found.records, found.photos) == (5, 5)
    assert later[0] > steps[-1]
