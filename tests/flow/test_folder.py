"""A folder of photos: every photo once, whatever is killed, broken or stands there twice."""

import csv
import errno
import hashlib
import io
import json
import os
import signal
import subprocess
import sys
import time
from collections import Counter
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import cv2
import numpy as np
import pytest
from PIL import Image

from ptmark.__main__ import main
from ptmark.commands.folder import say_below, take
from ptmark.commands.progress import Bar
from ptmark.dye import look_ahead
from ptmark.errors import PhotoError, RecordError, UsageError
from ptmark.folder import Arrivals, Asked, Book, Outcome, Pool, measured, pictures_in
from ptmark.folder.job import content_key, failed, inspected
from ptmark.folder.table import COLUMNS, rows_of
from ptmark.least import Least

CHILD = "import sys; from ptmark.__main__ import main; sys.exit(main(sys.argv[1:]))"
# Stops in the middle of the fifth photo: its results are durable, and not yet called finished.
STOPPING = """
import sys, time
from ptmark.__main__ import main
from ptmark.folder import book
sync, finished = book.Book._sync, []

def stop(file):
    finished.append(file.name.endswith("finished.txt"))
    if sum(finished) == 6:  # the head, four photos, this one
        print("stopped", flush=True)
        time.sleep(3600)
    sync(file)

book.Book._sync, book._EVERY = staticmethod(stop), -1.0
sys.exit(main(sys.argv[1:]))
"""


@pytest.fixture
def folder(photo_file, tmp_path):
    """Six photos of different content (PNG readers stop at IEND) and one cut short."""
    made = tmp_path / "from the phone"
    made.mkdir()
    whole = photo_file.read_bytes()
    for number in range(6):
        (made / f"p{number}.png").write_bytes(whole + bytes([number]))
    (made / "cut.png").write_bytes(whole[: len(whole) // 2])
    (made / "notes.txt").write_text("no picture", encoding="utf-8")
    return made


def lines(out):
    return [json.loads(one) for one in (out / "results.jsonl").read_text().splitlines()]


def rows(out):
    with (out / "table.csv").open(newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file))


@pytest.mark.slow
def test_one_broken_photo_stops_nothing_and_all_are_there(folder, tmp_path, capsys):
    out = tmp_path / "out"
    words = ["measure", str(folder), "--out", str(out), "--jobs", "2"]
    assert main([*words, "--criteria", "iso-23277-2"]) == 1
    said = capsys.readouterr()
    assert "cut.png" in said.err
    assert "\r" not in said.err  # no bar where there is no terminal
    found = {one["photo"]["file"]: one for one in lines(out)}
    assert sorted(found) == ["cut.png", *(f"p{n}.png" for n in range(6))]
    assert "error" in found["cut.png"]
    for number in range(6):
        one = found[f"p{number}.png"]
        assert one["evaluation"]["verdict"] == "rejectable"
        assert max(i["length_mm"] for i in one["indications"]) == pytest.approx(20, abs=0.1)
    table = rows(out)
    assert {row["file"] for row in table} == set(found)
    assert [row["error"] != "" for row in table if row["file"] == "cut.png"] == [True]
    # A second run finds everything finished and changes nothing.
    before = [(out / n).read_bytes() for n in ("results.jsonl", "table.csv", "finished.txt")]
    assert main([*words, "--criteria", "iso-23277-2"]) == 0
    after = [(out / n).read_bytes() for n in ("results.jsonl", "table.csv", "finished.txt")]
    assert after == before
    assert "1 of them failed: --retry" in capsys.readouterr().out
    # Other settings may not be mixed in.
    assert main(words) == 1
    assert "other settings" in capsys.readouterr().err


@pytest.mark.parametrize("area", [None, ((0.0, 0.0), (2000.0, 0.0), (2000.0, 1400.0))])
def test_looking_while_the_card_is_sought_changes_nothing(photo_file, area, monkeypatch):
    ahead = []
    monkeypatch.setattr(
        "ptmark.folder.job.look_ahead", lambda *asked: ahead.append(1) or look_ahead(*asked)
    )
    before, made = cv2.getNumThreads(), []
    try:
        for threads in (1, 2):
            cv2.setNumThreads(threads)
            one = json.loads(measured(photo_file, Asked(area_px=area)).line)
            made.append({k: v for k, v in one.items() if k not in {"id", "created", "seal"}})
    finally:
        cv2.setNumThreads(before)
    assert len(ahead) == 1
    assert made[0] == made[1]
    assert made[0]["indications"]


@pytest.mark.slow
def test_a_killed_run_goes_on_with_nothing_twice_and_nothing_lost(folder, tmp_path):
    out = tmp_path / "out"
    words = ["measure", str(folder), "--out", str(out), "--jobs", "1"]
    with subprocess.Popen(
        [sys.executable, "-c", STOPPING, *words],
        stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True,
    ) as child:  # fmt: skip
        assert "stopped\n" in iter(child.stdout.readline, "")
        child.kill()
    finished = len(state(out)) - 1
    assert finished == 4
    assert len(lines(out)) == 5  # what is not called finished is cut off
    with (out / "results.jsonl").open("ab") as file:
        file.write(b'{"photo": {"file": "half')
    with (out / "table.csv").open("ab") as file:
        file.write(b"half,")
    with (out / "finished.txt").open("ab") as file:
        file.write(b"0123")
    command = [sys.executable, "-c", CHILD, *words]
    done = subprocess.run(command, check=False, capture_output=True, text=True)
    assert done.returncode == 0  # the broken photo was before the kill
    assert f"{finished} finished before" in done.stdout
    assert sorted(one["photo"]["file"] for one in lines(out)) == sorted(
        ["cut.png", *(f"p{n}.png" for n in range(6))]
    )
    per_photo = Counter(row["file"] for row in rows(out))
    assert per_photo == {"cut.png": 1} | {f"p{n}.png": 3 for n in range(6)}


def state(out):
    return [line for line in (out / "finished.txt").read_bytes().split(b"\n")[:-1] if line]


class Stuck(Asked):
    """Keeps the worker that takes it busy until it is killed."""

    def __reduce__(self):
        return time.sleep, (3600,)


@pytest.mark.slow
def test_a_process_that_dies_takes_only_its_photo_with_it(photo_file, tmp_path):
    photos = [tmp_path / f"{n}.png" for n in range(3)]
    for number, path in enumerate(photos):
        path.write_bytes(photo_file.read_bytes() + bytes([number]))
    with Pool(1, Stuck()) as pool:
        pool.give(photos)
        pool._asked = Asked()  # who comes in its place
        (hand,) = pool._hands
        os.kill(hand.process.pid, signal.SIGKILL)
        got = []
        while pool.in_work:
            got += pool.collect()
    assert [one.path for one in got] == photos
    assert [bool(one.error) for one in got] == [True, False, False]
    assert "ended with -9" in got[0].error


def outcome(name, key="a" * 64):
    return Outcome(path=Path(name), key=key, line=b'{"n": 1}\n', table=b"x\r\n")


@pytest.mark.skipif(not Path("/proc/self/environ").exists(), reason="tells it on Linux only")
def test_workers_keep_freed_memory_and_nothing_else_does(photo_file):
    # mallopt(3) of the GNU C library: read from the environment when a process begins
    with Pool(1, Asked()) as pool:
        pool.give([photo_file])
        while not pool.collect():
            pass
        told = Path(f"/proc/{pool._hands[0].process.pid}/environ").read_bytes().split(b"\0")
        assert b"MALLOC_MMAP_MAX_=0" in told
    assert "MALLOC_MMAP_MAX_" not in os.environ


def test_the_book_takes_each_content_once(tmp_path):
    with Book(tmp_path, "s") as book:
        assert book.write(outcome("a"))
        assert not book.write(outcome("b"))
    assert (tmp_path / "results.jsonl").read_bytes() == b'{"n": 1}\n'
    with Book(tmp_path, "s") as book:
        assert book.has("a" * 64)


def test_a_name_that_is_no_text_stops_nothing(tmp_path, capsys):
    """Linux takes any bytes for a name; a lone one came to be \udcff (PEP 383)."""
    name = os.fsdecode(b"bad\xff\n.jpg")
    (tmp_path / name).write_bytes(b"no picture")
    got = measured(tmp_path / name, Asked())
    assert json.loads(got.line)["photo"]["file"] == name
    assert got.line.count(b"\n") == 1
    row = next(csv.reader(io.StringIO(got.table.decode(), newline="")))
    assert row[0] == "bad\\udcff\n.jpg"
    with Book(tmp_path / "out", "settings") as book:
        take(got, book, Bar(1))
    assert "bad\\udcff\\n.jpg: " in capsys.readouterr().err


@pytest.mark.parametrize(
    "name", [b"a\nb.jpg", b"a\tb.jpg", b"a\xff.jpg", "a\u2028.jpg".encode()]
)
def test_a_photo_that_cannot_be_read_keeps_the_book_whole(tmp_path, name):
    """Its name is all that is known of it, and may hold what parts the lines of the book."""
    gone = measured(tmp_path / os.fsdecode(name), Asked())
    assert gone.error
    with Book(tmp_path, "s") as book:
        book.write(gone)
    with Book(tmp_path, "s") as book:
        assert book.failed(gone.key)
        assert len(book) == 1


def test_a_photo_that_grew_while_it_was_read_is_measured_by_the_next_run(tmp_path, monkeypatch):
    """What failed is not what lies there now, whose SHA-256 must not be called finished."""
    photo = tmp_path / "copied.jpg"
    photo.write_bytes(b"\xff\xd8 the first half")

    def opened(path):
        path.write_bytes(b"\xff\xd8 the first half and the second")
        raise PhotoError("the file is truncated", where=str(path))

    monkeypatch.setattr("ptmark.folder.job.open_photo", opened)
    got = measured(photo, Asked())
    assert "changed while it was read" in got.error
    assert json.loads(got.line)["photo"]["sha256"] == ""
    with Book(tmp_path, "s") as book:
        book.write(got)
        assert not book.has(content_key(photo))


def test_a_link_that_leads_nowhere_is_told_and_not_passed_over(tmp_path):
    (tmp_path / "lost.jpg").symlink_to("gone.jpg")
    (tmp_path / "loop.jpg").symlink_to("loop.jpg")
    (tmp_path / "folder.jpg").mkdir()
    (tmp_path / "to a folder.jpg").symlink_to("folder.jpg")
    assert [path.name for path in pictures_in(tmp_path)] == ["loop.jpg", "lost.jpg"]
    assert "no such file" in measured(tmp_path / "lost.jpg", Asked()).error
    assert Arrivals(tmp_path, patience_s=0).poll() == []  # what comes later is waited for


def test_the_table_says_which_sizes_are_the_least_that_they_can_be(photo_file):
    """A length alone would read as the whole where a hand lies over the rest."""
    record = inspected(photo_file, Asked()).to_record()
    first, *others = record.indications
    record = replace(record, indications=[first | {"covered": True}, *others])
    told = csv.DictReader(io.StringIO(rows_of(record).decode(), newline=""), COLUMNS)
    least = [[name for name in Least if row[name] == "True"] for row in told]
    assert least == [["covered"], *[[] for _ in others]]


def test_a_book_is_not_gone_on_with_by_another_lens(tmp_path, monkeypatch):
    """A camera's profile changes every length; without one none is read."""
    monkeypatch.setattr("ptmark.folder.job.profiles_folder", lambda: tmp_path)
    with_lens, without = Asked().key(), Asked(lens=False).key()
    (tmp_path / "phone.json").write_text("{}", encoding="utf-8")
    assert Asked().key() != with_lens
    assert Asked(lens=False).key() == without


def test_failures_are_tried_again_when_asked(tmp_path):
    missing = failed(tmp_path / "gone.jpg", "not there")
    assert missing.key.startswith("unreadable ")
    with Book(tmp_path, "s") as book:
        book.write(missing)
    with Book(tmp_path, "s") as book:
        assert book.has(missing.key)
        assert book.failed(missing.key)
    with Book(tmp_path, "s", retry=True) as book:
        assert not book.has(missing.key)


@pytest.mark.parametrize("place", ["results.jsonl", "table.csv", "finished.txt"])
@pytest.mark.parametrize("cut", [1, 5, 9])
def test_the_book_survives_what_a_kill_leaves(tmp_path, place, cut):
    with Book(tmp_path, "s") as book:
        book.write(outcome("a"))
    sizes = {n: (tmp_path / n).stat().st_size for n in ("results.jsonl", "table.csv")}
    whole = (tmp_path / "finished.txt").read_bytes()
    with (tmp_path / place).open("ab") as file:
        file.write(b"b" * 64 + b"\tmeasured\t"[:cut])
    with Book(tmp_path, "s") as book:
        assert len(book) == 1
    assert {n: (tmp_path / n).stat().st_size for n in sizes} == sizes
    assert (tmp_path / "finished.txt").read_bytes() == whole


def test_a_full_disk_is_told_and_the_book_goes_on(tmp_path, monkeypatch):
    def full(number):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    book = Book(tmp_path, "s")
    with monkeypatch.context() as patched:
        patched.setattr(os, "fsync", full)
        with pytest.raises(RecordError, match=r"No space left.*goes on") as told, book:
            book.write(outcome("a"))  # tells of it by itself where that took long
    assert told.value.where == str(tmp_path)
    with Book(tmp_path, "s") as book:
        assert not book.has("a" * 64)
        assert book.write(outcome("a"))
    assert (tmp_path / "results.jsonl").read_bytes() == outcome("a").line


def test_a_book_that_was_changed_or_is_in_use_is_refused(tmp_path):
    with Book(tmp_path, "s") as book:
        book.write(outcome("a"))
        book.commit()
        with pytest.raises(UsageError, match="another run"):
            Book(tmp_path, "s")
    (tmp_path / "results.jsonl").write_bytes(b"")
    with pytest.raises(UsageError, match="shorter"):
        Book(tmp_path, "s")
    (tmp_path / "finished.txt").write_bytes(b"something else\n")
    with pytest.raises(UsageError, match="no list"):
        Book(tmp_path, "s")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["FOLDER"], "--out"),
        (["FOLDER", "--out", "OUT", "--json", "a.json"], "--json"),
        (["FOLDER", "--out", "OUT", "--jobs", "0"], "--jobs"),
        (["PHOTO", "--out", "OUT"], "for a folder"),
        (["EMPTY", "--out", "OUT"], "no picture"),
    ],
)
def test_options_that_do_not_fit_are_refused(photo_file, tmp_path, capsys, words, says):
    (tmp_path / "empty").mkdir()
    names = {
        "FOLDER": photo_file.parent,
        "PHOTO": photo_file,
        "EMPTY": tmp_path / "empty",
        "OUT": tmp_path / "out",
    }
    assert main(["measure", *(str(names.get(word, word)) for word in words)]) == 1
    assert says in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_picture_is_told_of_when_it_is_whole(photo_file, tmp_path):
    arrivals, data = Arrivals(tmp_path), photo_file.read_bytes()
    path = tmp_path / "new.png"
    path.write_bytes(data[:2000])
    assert arrivals.poll() == []  # seen for the first time
    path.write_bytes(data[:9000])
    assert arrivals.poll() == []  # it grows
    assert arrivals.poll() == []  # it has stopped, but does not open
    path.write_bytes(data)
    assert arrivals.poll() == []
    assert arrivals.poll() == [path]
    assert arrivals.poll() == []  # told once
    path.write_bytes(data + b"x")
    assert [arrivals.poll(), arrivals.poll()] == [[], [path]]  # another content, told again


def test_a_copy_whose_room_is_made_beforehand_is_waited_for(tmp_path):
    rgb = np.random.RandomState(1).randint(0, 255, (64, 64, 3), np.uint8)
    data = cv2.imencode(".webp", rgb)[1].tobytes()  # its header alone tells how long it is
    path = tmp_path / "new.webp"
    path.write_bytes(data[:900].ljust(len(data), b"\0"))
    arrivals = Arrivals(tmp_path)
    assert [arrivals.poll(), arrivals.poll()] == [[], []]
    path.write_bytes(data)
    assert [arrivals.poll(), arrivals.poll()] == [[], [path]]


def test_an_avif_is_measured_with_the_folder_and_kept_as_it_came(photo_file, tmp_path):
    inbox, out = tmp_path / "in", tmp_path / "out"
    inbox.mkdir()
    path = inbox / "sent.AVIF"
    with Image.open(photo_file) as scene:
        scene.convert("RGB").save(path, "AVIF", quality=90)
    arrivals = Arrivals(inbox)
    assert [arrivals.poll(), arrivals.poll()] == [[], [path]]
    assert main(["measure", str(inbox), "--out", str(out)]) == 0
    (line,) = lines(out)
    assert line["photo"]["sha256"] == hashlib.sha256(path.read_bytes()).hexdigest()


def test_a_copy_that_stalled_is_told_of_in_the_end(photo_file, tmp_path):
    (tmp_path / "half.png").write_bytes(photo_file.read_bytes()[:5000])
    arrivals = Arrivals(tmp_path, patience_s=0.0)
    assert [arrivals.poll(), arrivals.poll()] == [[], [tmp_path / "half.png"]]


@pytest.mark.slow
@pytest.mark.skipif(os.name == "nt", reason="Windows has no SIGINT for one child")
def test_watching_measures_what_arrives_and_ends_cleanly(photo_file, tmp_path):
    inbox, out = tmp_path / "in", tmp_path / "out"
    inbox.mkdir()
    command = [sys.executable, "-c", CHILD, "watch", str(inbox), "--out", str(out)]
    command += ["--every", "0.1"]
    child = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
    try:
        assert "watching" in child.stdout.readline()
        (inbox / "first.png").write_bytes(photo_file.read_bytes())
        assert "first.png: measured" in child.stdout.readline()
        child.send_signal(signal.SIGINT)
        _, err = child.communicate(timeout=600)
    finally:
        child.kill()
        child.wait()
    assert child.returncode == 0
    assert "stopped watching" in err
    assert "Traceback" not in err
    assert [one["photo"]["file"] for one in lines(out)] == ["first.png"]


def test_a_share_that_is_gone_for_a_while_is_waited_for(tmp_path):
    inbox, elsewhere = tmp_path / "in", tmp_path / "elsewhere"
    inbox.mkdir()
    (inbox / "a.jpg").write_bytes(b"no picture")
    arrivals = Arrivals(inbox, patience_s=0)
    arrivals.poll()
    assert [path.name for path in arrivals.poll()] == ["a.jpg"]
    inbox.rename(elsewhere)
    assert arrivals.poll() == []
    assert arrivals.away == os.strerror(errno.ENOENT)
    elsewhere.rename(inbox)
    (inbox / "b.jpg").write_bytes(b"no picture either")
    arrivals.poll()
    assert [path.name for path in arrivals.poll()] == ["b.jpg"]  # the first was told of
    assert arrivals.away == ""


def test_a_photo_that_went_with_its_share_is_measured_when_it_is_back(
    photo_file, tmp_path, monkeypatch
):
    inbox, elsewhere, given = tmp_path / "in", tmp_path / "elsewhere", []
    inbox.mkdir()
    (inbox / "a.png").write_bytes(photo_file.read_bytes())

    class Worker(Pool):
        looks = 0

        def give(self, photos):
            given.extend(photos)

        def collect(self, timeout=None):
            self.looks += 1
            if len(given) == 2 or self.looks == 40:
                signal.raise_signal(signal.SIGINT)
            if len(given) == 1 and not elsewhere.exists():
                inbox.rename(elsewhere)
                return [failed(given[0], "there is no such file")]
            if not inbox.exists():
                elsewhere.rename(inbox)
                elsewhere.mkdir()  # it has been away
            return []

    monkeypatch.setattr("ptmark.commands.watch.Pool", Worker)
    main(["watch", str(inbox), "--out", str(tmp_path / "out"), "--every", "0.05"])
    assert [path.name for path in given] == ["a.png", "a.png"]


def test_pictures_in_folders_below_are_told_of(tmp_path, capsys):
    for name in ("with", "without", ".hidden"):
        (tmp_path / name).mkdir()
    for place in ("with", ".hidden"):
        (tmp_path / place / "a.jpg").write_bytes(b"")
    say_below(tmp_path, Bar(1))
    (said,) = capsys.readouterr().err.splitlines()
    assert str(tmp_path / "with") in said
    assert main(["measure", str(tmp_path), "--out", str(tmp_path / "out")]) == 1
    assert f"name a folder below: {tmp_path / 'with'}" in capsys.readouterr().err


# Python prints and forgets what is raised in `__del__` (language reference, data model).
def test_a_stop_that_python_swallowed_still_ends_the_watching(tmp_path, monkeypatch, capsys):
    class Clearing(Arrivals):
        looks = 0

        def poll(self):
            self.looks += 1
            assert self.looks == 1
            with suppress(KeyboardInterrupt):
                signal.raise_signal(signal.SIGINT)
            return super().poll()

    monkeypatch.setattr("ptmark.commands.watch.Arrivals", Clearing)
    assert (
        main(["watch", str(tmp_path), "--out", str(tmp_path / "out"), "--every", "0.05"]) == 0
    )
    assert "stopped watching" in capsys.readouterr().err
