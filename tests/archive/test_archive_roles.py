"""Roles on PostgreSQL: each tried by logging in and attempting what is forbidden."""

# ruff: noqa: S608 - writing such SQL is what is tried

import json
from contextlib import closing
from dataclasses import replace

import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from sqlalchemy.engine import make_url

from ptmark.__main__ import main
from ptmark.archive import (
    Query,
    add_record,
    apply_rules,
    chain,
    count,
    find,
    hold,
    keep_for,
    logins,
    may_hold,
    open_archive,
    place_record,
    release,
    repair,
    save_search,
    set_roles,
    take_role,
    verify,
)
from ptmark.errors import ArchiveError
from ptmark.record import Signer, load_record, save_record, sign_record
from ptmark.record.revisions import time_now

psycopg = pytest.importorskip("psycopg")

LOGINS = {"reader": "rita", "inspector": "ines", "reviewer": "rolf", "keeper": "karl"}


@pytest.fixture(scope="module")
def photos(tmp_path_factory):
    """The photo store of all logins."""
    return str(tmp_path_factory.mktemp("photos"))


@pytest.fixture(scope="module")
def roles(postgres, photos):
    """URL, by login name, of an archive with its roles set and one login of each."""
    url = postgres.database()
    for login in (*LOGINS.values(), "nemo"):
        postgres.sql(f"CREATE ROLE {login} LOGIN")
    at = ["archive", "--database", url, "--store", photos]
    assert main([*at, "roles", "--set"]) == 0
    for role, login in LOGINS.items():
        assert main([*at, "roles", "--give", role, login]) == 0
    by = {
        login: make_url(url).set(username=login).render_as_string()
        for login in (*LOGINS.values(), "nemo")
    }
    return by | {"owner": url}


@pytest.fixture(scope="module")
def as_login(roles, photos):
    """Opens the archive by a login."""
    return lambda login: open_archive(database=roles[login], store=photos)


@pytest.fixture(scope="module")
def raw(roles):
    """Says one thing to the database by a login; what came back, or the SQLSTATE."""

    def say(login, said):
        url = make_url(roles[login])
        place = {"host": url.query["host"], "dbname": url.database, "user": url.username}
        with closing(psycopg.connect(**place)) as conn:
            try:
                done = conn.execute(said)
                found = done.fetchall() if done.description else done.rowcount
                conn.commit()
            except psycopg.Error as error:
                return error.sqlstate
            return found

    return say


@pytest.fixture(scope="module")
def signed_as(as_login, make_in, tmp_path_factory):
    """Makes a signed record by its id and has an inspector take it into the archive."""

    def made(name):
        path = make_in(tmp_path_factory.mktemp("signed"), name)
        key = Ed25519PrivateKey.generate()
        save_record(
            path, sign_record(load_record(path), Signer(role="examiner", name="One"), key)
        )
        with as_login("ines") as archive:
            assert add_record(archive, path).state == "new"
        return path

    return made


@pytest.fixture(scope="module")
def signed(signed_as):
    """A signed record in the archive, which no test revises."""
    return signed_as("r-signed")


def test_the_window_is_told_who_may_set_a_hold(as_login):
    told = {}
    for login in ("rita", "ines", "rolf", "karl"):
        with as_login(login) as archive:
            told[login] = may_hold(archive)
    assert told == {"rita": False, "ines": False, "rolf": False, "karl": True}


DENIED = "42501"  # insufficient_privilege, PostgreSQL 15 appendix A
OF_SIGNED = "(SELECT id FROM inspection WHERE record_id = 'r-signed' AND signatures > 0)"


@pytest.mark.parametrize("login", ["rita", "ines", "rolf", "karl"])
@pytest.mark.parametrize(
    "said",
    [
        "UPDATE audit SET who = 'another'",
        "DELETE FROM audit",
        "TRUNCATE audit",
        "ALTER TABLE audit DISABLE TRIGGER ALL",
        "DROP TRIGGER ptmark_kept ON audit",
        "SET session_replication_role = replica",
        "CREATE TABLE mine (a int)",
        "UPDATE alembic_version SET version_num = '9999'",
        "DELETE FROM part",
        "UPDATE part SET number = 'P-2'",
        "UPDATE serial SET number = 'S-2'",
        "TRUNCATE inspection CASCADE",
        "UPDATE rule SET years = 0.1",
        "GRANT ptmark_keeper TO nemo",
        "CREATE OR REPLACE FUNCTION ptmark_is(asked text) RETURNS boolean "
        "LANGUAGE sql AS 'SELECT true'",
    ],
)
def test_nobody_but_the_owner_gets_around_the_rules(raw, signed, login, said):
    assert raw(login, said) == DENIED


@pytest.mark.parametrize("login", ["rita", "ines"])
@pytest.mark.parametrize(
    "said",
    [
        f"UPDATE inspection SET verdict = 'acceptable' WHERE id = {OF_SIGNED}",
        f"UPDATE inspection SET signatures = 0 WHERE id = {OF_SIGNED}",
        f"DELETE FROM document WHERE inspection_id = {OF_SIGNED}",
        f"UPDATE document SET data = '' WHERE inspection_id = {OF_SIGNED}",
        f"DELETE FROM indication WHERE inspection_id = {OF_SIGNED}",
        f"INSERT INTO revision SELECT inspection_id, 9, sha256, at, 'x', why, 1 FROM revision "
        f"WHERE inspection_id = {OF_SIGNED}",
        f"DELETE FROM inspection_photo WHERE inspection_id = {OF_SIGNED}",
        f"DELETE FROM inspection WHERE id = {OF_SIGNED}",
        "DELETE FROM photo",
        "UPDATE photo SET bytes = 0",
        "INSERT INTO rule VALUES ('soon', '{}', 0.1, 'x')",
        "DELETE FROM hold",
    ],
)
def test_a_reader_and_an_inspector_cannot_touch_what_is_signed(raw, signed, login, said):
    assert raw(login, said) == DENIED


def test_a_photo_that_a_record_needs_is_not_deleted_for_a_keeper_either(raw, signed):
    for login in ("karl", "owner"):
        assert raw(login, "DELETE FROM photo") == "23503"  # foreign_key_violation


def line(raw, who, action, subject, detail):
    """SQL of a line that fits the chain, as somebody would write who knows how it is made."""
    seq, previous = raw("rita", "SELECT seq, sha256 FROM audit ORDER BY seq DESC LIMIT 1")[0]
    said = json.dumps(detail, sort_keys=True)
    bare = chain.Line(seq + 1, time_now(), who, action, subject, said, previous, "")
    values = [getattr(bare, name) for name in chain.Line.__slots__[:-1]] + [chain.link(bare)]
    quoted = ", ".join(
        str(one) if isinstance(one, int) else f"'{str(one).replace(chr(39), chr(39) * 2)}'"
        for one in values
    )
    return f"INSERT INTO audit VALUES ({quoted})"


def test_a_line_of_the_log_says_who_and_only_what_was_done(raw, signed):
    name = load_record(signed).id
    sha256 = raw("rita", f"SELECT sha256 FROM inspection WHERE record_id = '{name}'")[0][0]
    told = {"sha256": sha256}
    assert raw("ines", line(raw, "rolf", "added", name, told)) == DENIED
    assert raw("ines", line(raw, "ines", "deleted", name, told)) == DENIED
    assert raw("ines", line(raw, "ines", "dropped hold", "claim", {})) == DENIED
    assert raw("karl", line(raw, "karl", "deleted", name, told)) == "P0001"  # it is there
    assert raw("ines", line(raw, "ines", "revised", name, {"sha256": "0" * 64})) == "P0001"
    assert raw("ines", line(raw, "ines", "added", "r-none", told)) == "P0001"
    torn = line(raw, "ines", "added", name, told).replace(", 'added'", ", 'revised'")
    assert raw("ines", torn) == "P0001"
    assert raw("ines", line(raw, "ines", "noted", name, {})) == 1  # so it was no slip above


def test_an_unsigned_record_changes_only_with_a_line(raw, as_login, make):
    with as_login("ines") as archive:
        add_record(archive, make("r-open", part="P-open"))
    change = "UPDATE inspection SET verdict = 'acceptable' WHERE record_id = 'r-open'"
    assert raw("ines", change) == "P0001"
    mine = "(SELECT id FROM inspection WHERE record_id = 'r-open')"
    assert raw("ines", f"DELETE FROM indication WHERE inspection_id = {mine}") == "P0001"
    gone = "DELETE FROM inspection WHERE record_id = 'r-open'"
    assert raw("karl", gone) == "23503"


@pytest.mark.parametrize(
    ("login", "said"),
    [
        ("ines", "DELETE FROM placement WHERE record_id = 'r-signed'"),
        ("ines", "DELETE FROM saved_search WHERE name = 'all'"),
        ("ines", "INSERT INTO saved_search VALUES ('other', '{}')"),
        ("karl", "DELETE FROM hold WHERE name = 'claim'"),
        ("karl", "INSERT INTO rule VALUES ('soon', '{}', 0.1, 'x')"),
        ("owner", "UPDATE hold SET query = '{\"part\": \"none\"}' WHERE name = 'claim'"),
    ],
)
def test_rules_holds_searches_and_places_change_only_with_a_line(
    raw, as_login, signed, login, said
):
    with as_login("karl") as archive:
        hold(archive, "claim", Query(part="P-none"), "invented claim")
        place_record(archive, "r-signed", (1, 0, 0, 0, 1, 0))
        save_search(archive, "all", Query())
        assert raw(login, said) == "P0001"  # raise_exception, PostgreSQL 15 appendix A
        release(archive, "claim", "settled")  # with its line it may
        wrong = {one.subject for one in verify(archive).problems}
    assert not wrong & {"hold", "rule", "saved_search", "placement"}


def test_a_stranger_sees_nothing(raw, as_login):
    assert raw("nemo", "SELECT * FROM inspection") == DENIED
    with pytest.raises(ArchiveError, match="permission denied"):
        as_login("nemo")


def test_each_role_can_do_its_own_work_through_the_archive(as_login, make, signed_as):
    signed = signed_as("r-revised")
    name = load_record(signed).id
    path = make("r-own", part="P-own", day="2001-01-01")
    with as_login("rita") as archive:
        assert count(archive, Query(record_id=name)) == 1
        with pytest.raises(ArchiveError, match="permission denied"):
            add_record(archive, path)
    with as_login("ines") as archive:
        assert archive.by == "ines" or archive.by.endswith("(ines)")
        assert add_record(archive, path).state == "new"
        save_search(archive, "mine", Query(kind="crack"))
        record = load_record(signed)
        save_record(
            signed, replace(record, fields={**record.fields, "remarks": "more"}), why="x"
        )
        with pytest.raises(ArchiveError, match="role of a reviewer"):
            add_record(archive, signed)
        with pytest.raises(ArchiveError, match="permission denied"):
            keep_for(archive, "ten", Query(part="P-own"), 10, "invented law")
    with as_login("rolf") as archive:
        assert add_record(archive, signed).state == "revised"
        with pytest.raises(ArchiveError, match="permission denied"):
            hold(archive, "claim", Query(), "invented claim")
        with pytest.raises(ArchiveError, match="admin option"):
            set_roles(archive)
    with as_login("karl") as archive:
        keep_for(archive, "ten", Query(part="P-own"), 10, "invented law")
        assert [one.hit.record_id for one in apply_rules(archive)] == ["r-own"]
        _, found = repair(archive)  # the line that was written past the archive has no file
        assert found.problems == []


def test_a_role_that_was_taken_is_gone(as_login, roles, photos, capsys):
    at = ["archive", "--database", roles["owner"], "--store", photos, "roles"]
    assert main([*at, "--take", "reader", "rita"]) == 0
    assert "reader: nobody" in capsys.readouterr().out
    with pytest.raises(ArchiveError, match="permission denied"):
        as_login("rita")
    assert main([*at, "--give", "reader", "rita"]) == 0
    assert "reader: rita" in capsys.readouterr().out
    with as_login("rita") as archive:
        assert find(archive, Query()) is not None
    with as_login("owner") as archive:
        assert logins(archive)["keeper"] == ["karl"]
        with pytest.raises(ArchiveError, match="no such role or login"):
            take_role(archive, "reader", "nobody-at-all")


def test_a_file_has_no_roles(archive):
    with pytest.raises(ArchiveError, match="a file has no roles"):
        set_roles(archive)
