"""Many writers on PostgreSQL, and connections that are cut in the middle."""

import random
import threading
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from types import SimpleNamespace

import pytest
from sqlalchemy import event

from ptmark.archive import Query, add_record, find_all, lines, open_archive, verify
from ptmark.archive.store import FolderStore, key_for
from ptmark.errors import ArchiveError

CUT = (
    "SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity "
    "WHERE application_name = 'ptmark'"
)
ASKED = 20
ENDS = 600  # s: ends a test that hangs, and no other


@pytest.fixture
def place(postgres, tmp_path):
    """Where an archive on the server lies; its database is empty."""
    return {"database": postgres.cleared(), "store": str(tmp_path / "photos")}


def asked_until_taken(archive, path):
    """Ask again where all tries were cut, as a person would."""
    for _ in range(ASKED):
        with suppress(ArchiveError):
            return add_record(archive, path)
    return add_record(archive, path)


@pytest.mark.slow
def test_eight_writers_whose_connections_are_cut_lose_and_double_nothing(postgres, place, make):
    paths = [make(f"r-{n:03d}", serial=f"S-{n // 2}", count=1) for n in range(32)]
    acknowledged, done = Counter(), threading.Event()
    opened = threading.Barrier(9, timeout=ENDS)
    enough = threading.Event()

    def work(turn):
        with open_archive(**place, by=f"writer {turn}") as archive:
            opened.wait()
            for number, path in enumerate(paths):
                if turn in {number % 8, (number + 1) % 8}:  # two meet in each record
                    if number >= 24:  # however quick the machine, some are cut on the way
                        assert enough.wait(ENDS)
                    acknowledged[asked_until_taken(archive, path).record_id] += 1

    def cut():
        draw, cuts = random.Random(1), 0  # noqa: S311 - any moments do
        opened.wait()
        # However slow the machine, a record has more tries than there are cuts.
        while cuts < ASKED and not done.wait(draw.uniform(0.02, 0.2)):
            cuts += postgres.sql(f"{CUT} AND random() < 0.2")[0][0]
            if cuts >= 8:
                enough.set()
        return cuts

    with ThreadPoolExecutor(9) as pool:
        cutting = pool.submit(cut)
        writers = [pool.submit(work, turn) for turn in range(8)]
        try:
            for one in writers:
                one.result()
        finally:
            done.set()
        assert cutting.result() >= 8
    names = {path.stem for path in paths}
    assert acknowledged.keys() == names
    with open_archive(**place) as archive:
        assert Counter(hit.record_id for hit in find_all(archive, Query())) == Counter(names)
        with archive.reading() as conn:
            told = Counter(one.subject for one in lines(conn) if one.action == "added")
        assert told == Counter(names)
        # Lines of writers that were cut off before the database took them may lie there.
        assert {p.kind for p in verify(archive).problems} <= {"orphaned"}


def test_a_connection_cut_while_opening_is_made_again(postgres, place, monkeypatch):
    from ptmark.archive import opening

    cuts = []
    real = opening.at_version

    def cut_once(conn):
        if not cuts:
            cuts.append(postgres.sql(CUT)[0][0])
        return real(conn)

    monkeypatch.setattr(opening, "at_version", cut_once)
    with open_archive(**place, by="ines") as archive:
        assert archive.by == "ines (archive_owner)"
        assert find_all(archive, Query()) is not None
    assert cuts[0] >= 1


def test_a_cut_between_a_commit_and_its_answer_doubles_nothing(postgres, place, make):
    # Nobody can tell then whether it was committed; the next try finds out.
    with open_archive(**place) as archive:
        cuts = []

        @event.listens_for(archive.engine, "commit")
        def _cut(conn):
            if conn.get_execution_options().get("write") and not cuts:
                raw = conn.connection.dbapi_connection
                raw.commit()  # the commit takes place …
                raw.execute("SELECT 1")
                cuts.append(postgres.sql(CUT)[0][0])  # … and its answer is lost

        assert add_record(archive, make()).state == "there"
        assert cuts[0] >= 1
        with archive.reading() as conn:
            assert [one.action for one in lines(conn)] == ["added"]
        assert verify(archive).problems == []


def test_a_server_that_is_gone_is_said_at_once_and_clearly(tmp_path, monkeypatch):
    waits = []
    clock = SimpleNamespace(sleep=waits.append)
    monkeypatch.setattr("ptmark.archive.server.time", clock)
    url = f"postgresql://nobody@/none?host={tmp_path}"
    with pytest.raises(ArchiveError, match="see that the server runs"):
        open_archive(database=url, store=str(tmp_path / "photos"))
    assert len(waits) == 7
    assert 6 < sum(waits) < 13  # s: a server that restarts is back by then


def test_a_put_that_is_cut_off_takes_away_nothing_that_another_put(tmp_path, monkeypatch):
    # Two writers meet in one new photo; the first of them to end may rest on it from then on.
    from ptmark.archive import store as room

    store, key, data = FolderStore(tmp_path), key_for("ab" * 32, "jpg"), b"photo" * 1000

    def another_is_quicker(folder):
        folder.mkdir(parents=True)
        (tmp_path / key).write_bytes(data)

    def cut_off(*_args):
        raise KeyboardInterrupt

    monkeypatch.setattr(room, "make_folder", another_is_quicker)
    monkeypatch.setattr(room, "write_whole", cut_off)
    with pytest.raises(KeyboardInterrupt):
        store.put(key, data)
    assert store.read(key) == data
