"""An S3 store, asked of moto's server: photos, checks, repair, uploads that are cut off."""

import hashlib
import socket
import threading
from collections import Counter
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress

import pytest

from ptmark.archive import (
    Query,
    add_record,
    back_up,
    export,
    find_all,
    key_for,
    lines,
    open_archive,
    open_store,
    photos_of,
    rebuild,
    record_bytes,
    repair,
    verify,
)
from ptmark.errors import ArchiveError

pytest.importorskip("s3fs", reason="s3fs is not installed (ptmark[server])")
moto_server = pytest.importorskip("moto.server", reason="moto is not installed")


class Way:
    """A way to a server that breaks off once so many bytes of a connection went up."""

    def __init__(self, port):
        self.most, self.cuts, self._to = None, 0, port
        self._heard = socket.create_server(("127.0.0.1", 0))
        self.port = self._heard.getsockname()[1]
        threading.Thread(target=self._serve, daemon=True).start()

    def close(self):
        self._heard.close()

    def _serve(self):
        with suppress(OSError):
            while True:
                here, _ = self._heard.accept()
                there = socket.create_connection(("127.0.0.1", self._to))
                for pair in ((here, there), (there, here)):
                    up = pair[0] is here
                    threading.Thread(target=self._pass, args=(*pair, up), daemon=True).start()

    def _pass(self, source, to, up):
        passed = 0
        with suppress(OSError):
            while data := source.recv(4096):
                passed += len(data)
                if up and self.most is not None and passed > self.most:
                    self.cuts += 1
                    break
                to.sendall(data)
        for one in (source, to):
            with suppress(OSError):
                one.shutdown(socket.SHUT_RDWR)
            one.close()


@pytest.fixture(scope="module")
def s3():
    server = moto_server.ThreadedMotoServer(ip_address="127.0.0.1", port=0, verbose=False)
    server.start()
    way = Way(server.get_host_and_port()[1])
    yield way
    way.close()
    server.stop()


@pytest.fixture
def url(s3, monkeypatch, tmp_path):
    """URL of an empty store, reached as a user would set it up."""
    import s3fs

    for name, value in {
        "AWS_ENDPOINT_URL": f"http://127.0.0.1:{s3.port}",
        "AWS_ACCESS_KEY_ID": "invented",
        "AWS_SECRET_ACCESS_KEY": "invented",
        "AWS_DEFAULT_REGION": "us-east-1",
        "AWS_MAX_ATTEMPTS": "2",
    }.items():
        monkeypatch.setenv(name, value)
    s3fs.S3FileSystem.clear_instance_cache()
    bucket = "b-" + hashlib.sha256(str(tmp_path).encode()).hexdigest()[:16]
    s3fs.S3FileSystem().mkdir(bucket)
    s3.most = None
    return f"s3://{bucket}/photos"


@pytest.fixture
def kept(url, tmp_path):
    """An archive whose photos are in the S3 store."""
    with open_archive(tmp_path / "archive", store=url, by="keeper") as archive:
        yield archive


def key_of_photo(archive, record_id):
    (photo,) = photos_of(archive, record_id)
    return key_for(photo["sha256"], photo["suffix"])


def test_a_photo_comes_back_byte_for_byte_and_is_put_once(url):
    store, key = open_store(url), key_for("ab" * 32, "jpg")
    assert not store.has(key)
    with pytest.raises(FileNotFoundError):
        store.read(key)
    assert list(store.names()) == []
    store.put(key, b"photo")
    store.put(key, b"photo")
    assert (store.read(key), store.size(key), store.has(key)) == (b"photo", 5, True)
    store.put("log/00000000/00/a.json", b"{}")
    assert list(store.names()) == [key, "log/00000000/00/a.json"]
    assert list(store.names("log")) == ["log/00000000/00/a.json"]
    store.remove(key)
    store.remove(key)
    assert not store.has(key)


def test_an_archive_on_s3_is_verified_and_mended_from_a_copy(kept, make, tmp_path, url):
    path = make("r-1")
    assert add_record(kept, path).state == "new"
    assert add_record(kept, path).state == "there"
    add_record(kept, make("r-2"))
    assert record_bytes(kept, "r-1") == path.read_bytes()
    found = verify(kept)
    assert (found.problems, found.photos) == ([], 2)
    assert back_up(kept, tmp_path / "copy") == 2
    changed, gone = key_of_photo(kept, "r-1"), key_of_photo(kept, "r-2")
    whole = kept.store.read(changed)
    kept.store._files.pipe_file(kept.store._at(changed), bytes([whole[0] ^ 1]) + whole[1:])
    kept.store.remove(gone)
    assert sorted(p.kind for p in verify(kept).problems) == ["changed", "missing"]
    mended, found = repair(kept, tmp_path / "copy")
    assert len(mended) == 2
    assert found.problems == []
    (tmp_path / "archive" / "archive.sqlite").unlink()
    assert rebuild(tmp_path / "archive", store=url).records == 2


def test_a_photo_that_is_not_in_a_far_store_is_named(kept, make, tmp_path, url):
    add_record(kept, make("r-1"))
    (photo,) = photos_of(kept, "r-1")
    key = key_for(photo["sha256"], photo["suffix"])
    kept.store.remove(key)
    with pytest.raises(ArchiveError) as caught:
        export(kept, Query(), tmp_path / "out")
    assert caught.value.where == f"{url}/{key}"


def test_taking_in_asks_a_far_store_no_more_than_it_must(kept, make, monkeypatch):
    add_record(kept, make("r-1"))
    asked = []
    real = type(kept.store._files)._call_s3

    async def noted(self, method, *args, **kwargs):
        asked.append(method)
        return await real(self, method, *args, **kwargs)

    monkeypatch.setattr(type(kept.store._files), "_call_s3", noted)
    add_record(kept, make("r-2"))
    # Photo and file: is it there, put it, is it still there; the log's end, its new line.
    assert Counter(asked) == {
        "get_object": 2,
        "put_object": 3,
        "head_object": 2,
        "list_objects_v2": 1,
    }


def test_a_store_that_answers_with_errors_is_said_and_nothing_is_lost(
    kept, make, monkeypatch, url
):
    add_record(kept, make("r-1"))
    files = type(kept.store._files)
    real = files._call_s3

    def failing(*methods):
        async def answered(self, method, *args, **kwargs):
            if method in methods:  # as s3fs translates 500, InternalError
                raise OSError(121, "An error occurred (InternalError)")
            return await real(self, method, *args, **kwargs)

        monkeypatch.setattr(files, "_call_s3", answered)

    for method in ("get_object", "put_object", "head_object", "list_objects_v2"):
        failing(method)
        with pytest.raises(ArchiveError, match="InternalError") as caught:
            add_record(kept, make("r-2"))
        assert caught.value.where == url
        assert "can be reached" in caught.value.mend
    failing("list_objects_v2")
    assert [(one.kind, one.subject) for one in verify(kept).problems] == [("damaged", "store")]
    failing("get_object")
    assert {one.kind for one in verify(kept).problems} >= {"damaged"}
    failing()
    assert {one.kind for one in verify(kept).problems} <= {"orphaned"}
    assert add_record(kept, make("r-2")).state == "new"
    assert {one.kind for one in verify(kept).problems} <= {"orphaned"}


@pytest.mark.slow
def test_an_upload_that_is_cut_off_leaves_nothing_and_is_said(s3, kept, make):
    add_record(kept, make("r-1"))
    photo = b"photo" * 100_000
    digest = hashlib.sha256(photo).hexdigest()
    path = make("r-2", photo=photo)
    s3.most, s3.cuts = 200_000, 0
    with pytest.raises(ArchiveError, match="cannot be read or written"):
        add_record(kept, path)
    assert s3.cuts > 0
    s3.most = None
    assert not kept.store.has(key_for(digest, "jpg"))
    assert verify(kept).problems == []
    assert [hit.record_id for hit in find_all(kept, Query())] == ["r-1"]
    assert add_record(kept, path).state == "new"
    assert verify(kept).problems == []


@pytest.mark.slow
def test_writers_meet_on_a_server_with_an_s3_store(url, postgres, make):
    paths = [make(f"r-{n}", count=1) for n in range(5)]
    place = {"database": postgres.cleared(), "store": url}

    def work(turn):
        with open_archive(**place, by=f"writer {turn}") as archive:
            return [add_record(archive, path).state for path in paths]

    with ThreadPoolExecutor(2) as pool:
        states = Counter(one for own in pool.map(work, range(2)) for one in own)
    assert states == {"new": 5, "there": 5}
    with open_archive(**place) as archive:
        with archive.reading() as conn:
            assert len(list(lines(conn))) == 5
        assert verify(archive).problems == []
