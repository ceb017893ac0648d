"""How long records are kept: rules, holds, and deletion by rule only.

A record may go when every rule that fits it has run out, no hold fits it, and no signed record
that stays is a retest of it, or of a retest of it. Rules and holds are asked of every state in
which the record was ever taken in, so that no revision takes it out of one. A photo goes with
the last record that rests on it.
"""

import json
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from sqlalchemy import Connection, delete, select, text

from ptmark.archive.beside import file_key, states
from ptmark.archive.chain import lines
from ptmark.archive.derive import derived
from ptmark.archive.finding import Hit, find_all
from ptmark.archive.named import all_named, drop_named, set_named
from ptmark.archive.opening import Archive, open_archive
from ptmark.archive.query import Query, query_from_json, query_to_json
from ptmark.archive.rereading import sha256_of
from ptmark.archive.rows import clear_rows, note_photos, table, write_rows
from ptmark.archive.small import forget_deleted
from ptmark.archive.store import key_for
from ptmark.errors import ArchiveError, PtmarkError
from ptmark.record.store import parsed

__all__ = ["Due", "apply_rules", "due", "hold", "keep_for", "keeping", "release"]


_MOST_YEARS = 10_000  # a day has no more
Kept = dict[str, list[dict[str, object]]]  # the rows of rules and of holds


@dataclass(frozen=True, slots=True)
class Due:
    """A record whose time has run out, and the rule that kept it longest."""

    hit: Hit
    rule: str


def keep_for(archive: Archive, name: str, query: Query, years: float, reason: str) -> None:
    """Set a rule: what fits is kept so many years from its examination.

    Raises
    ------
    ArchiveError
        If there is no reason, the time is not positive or no number, or another rule or hold
        has the name.
    """
    if not reason.strip() or not 0 < years < _MOST_YEARS:
        raise ArchiveError(
            f"{years} years with the reason '{reason}' is no rule",
            where=name,
            mend=f"give years from above 0 to below {_MOST_YEARS} and the contract or law that "
            "asks for them",
        )
    row = {"name": name, "query": query_to_json(query), "years": float(years), "reason": reason}
    _set(archive, "rule", row)


def hold(archive: Archive, name: str, query: Query, reason: str) -> None:
    """Set a hold: nothing that fits is deleted, whatever the rules say.

    Raises
    ------
    ArchiveError
        If there is no reason, or another rule or hold has the name.
    """
    if not reason.strip():
        raise ArchiveError("a hold needs a reason", where=name)
    _set(archive, "hold", {"name": name, "query": query_to_json(query), "reason": reason})


def _set(archive: Archive, kind: str, row: dict[str, object]) -> None:
    """Set it where that lets go of nothing which another one of its name keeps."""
    name = str(row["name"])
    if not name.strip():
        raise ArchiveError(f"a {kind} needs a name", where="keep")
    for other, rows in keeping(archive).items():
        for one in rows:
            if one["name"] == name and (other, one["query"]) != (kind, row["query"]):
                raise ArchiveError(
                    f"there is a {other} of this name, which keeps {one['query']}",
                    where=name,
                    mend="choose another name, or take that one away first",
                )
    set_named(archive, kind, row)


def release(archive: Archive, name: str, why: str) -> None:
    """Take a hold or a rule away; the log keeps it and why.

    Raises
    ------
    ArchiveError
        If there is none of this name, or no reason.
    """
    if not why.strip():
        raise ArchiveError("taking it away needs a reason", where=name)
    if not (drop_named(archive, "hold", name, why) or drop_named(archive, "rule", name, why)):
        raise ArchiveError("there is no such rule or hold", where=name)


def keeping(archive: Archive) -> Kept:
    """All rules and holds."""
    with archive.reading() as conn:
        return _kept_by(conn)


def _kept_by(conn: Connection) -> Kept:
    return {name: list(all_named(conn, name).values()) for name in ("rule", "hold")}


def due(archive: Archive, on: date | None = None) -> list[Due]:
    """Records that may be deleted on a day (the keeper's today if None), oldest first."""
    day = on or datetime.now().astimezone().date()
    told = keeping(archive)
    candidates, kept = _judged(archive, told, day)
    left = {name: one for name, one in candidates.items() if name not in kept}
    for name in _kept_before(archive, set(left), told, day):
        del left[name]
    with archive.reading() as conn:
        while needed := left.keys() & _tested_again(conn, set(left)):
            left = {name: one for name, one in left.items() if name not in needed}
    return sorted(left.values(), key=lambda one: (one.hit.examined_on, one.hit.number))


def _judged(archive: Archive, told: Kept, day: date) -> tuple[dict[str, Due], set[str]]:
    """What rules have run out for, and what a rule or a hold keeps, by an archive."""
    gone: dict[str, Due] = {}
    kept: set[str] = set()
    for rule in sorted(told["rule"], key=lambda rule: float(str(rule["years"]))):
        end = _years_before(day, float(str(rule["years"])))
        for hit in find_all(archive, query_from_json(str(rule["query"]))):
            if hit.examined_on < end:
                gone[hit.record_id] = Due(hit, str(rule["name"]))
            else:
                kept.add(hit.record_id)
    for one in told["hold"]:
        kept |= {hit.record_id for hit in find_all(archive, query_from_json(str(one["query"])))}
    return gone, kept


def _kept_before(archive: Archive, records: set[str], told: Kept, day: date) -> set[str]:
    """Those of the records that an earlier state keeps; an unreadable one might, so it does."""
    with archive.reading() as conn:
        files = {name: states(lines(conn, name)).get(name, [])[:-1] for name in records}
    owner = {sha256: name for name, own in files.items() for sha256 in own}
    lost: set[str] = set()
    with TemporaryDirectory() as place, open_archive(Path(place)) as earlier:
        with earlier.writing() as conn:  # asked as every archive is, so that it means the same
            for sha256, name in owner.items():
                try:
                    _write_state(conn, sha256, archive.store.read(file_key(sha256)))
                except (OSError, PtmarkError):
                    lost.add(name)
        return lost | {owner[one] for one in _judged(earlier, told, day)[1]}


def _write_state(conn: Connection, sha256: str, data: bytes) -> None:
    """A state's rows, named by its file, as a record may have had several."""
    if sha256_of(data) != sha256:
        raise ArchiveError("is not what was taken in", where=sha256)
    rows = derived(parsed(data, sha256), data)
    photos = [{"sha256": one["sha256"], "suffix": "", "bytes": 0} for one in rows.photos]
    note_photos(conn, photos)
    write_rows(conn, replace(rows, inspection={**rows.inspection, "record_id": sha256}), data)


def _years_before(day: date, years: float) -> str:
    """The day so many years before; 29 February becomes the day before 1 March."""
    whole, rest = int(years), years - int(years)
    year = max(day.year - whole, 1)
    try:
        back = day.replace(year=year)
    except ValueError:
        back = day.replace(year=year, day=28)
    return date.fromordinal(max(back.toordinal() - round(rest * 365.25), 1)).isoformat()


def _tested_again(conn: Connection, going: set[str]) -> set[str]:
    """Records that signed ones which stay are a retest of, and what those are a retest of."""
    one = table("inspection")
    chosen = select(one.c.record_id, one.c.retest_of, one.c.signatures)
    rows = conn.execute(chosen.where(one.c.retest_of.is_not(None))).all()
    earlier = {row.record_id: str(row.retest_of) for row in rows}
    needed: set[str] = set()
    for row in rows:
        name = row.record_id if row.signatures and row.record_id not in going else ""
        while (name := earlier.get(name, "")) and name not in needed:
            needed.add(name)
    return needed


def _still_due(conn: Connection, one: Due, told: Kept) -> bool:
    """In the turn of its deletion: no rule, hold or signed retest came meanwhile."""
    kept = _tested_again(conn, set())  # retests that go are gone by now
    return _kept_by(conn) == told and one.hit.record_id not in kept


def apply_rules(archive: Archive, on: date | None = None) -> list[Due]:
    """Delete what is due; each deletion is logged with its rule before anything goes.

    Returns
    -------
    list of Due
        What was deleted.
    """
    gone = []
    told = keeping(archive)
    for one in reversed(due(archive, on)):  # a retest goes before what it rests on
        with archive.writing(alone=True) as conn:
            if not _still_due(conn, one, told):
                continue  # the next run judges it by what was set meanwhile
            files = states(lines(conn, one.hit.record_id)).get(one.hit.record_id, [])
            photos = _delete(conn, one.hit)
            if photos is None:
                continue  # it was revised or deleted meanwhile
            archive.log(
                conn,
                "deleted",
                one.hit.record_id,
                rule=one.rule,
                sha256=one.hit.sha256,
                files=sorted([*photos, *map(file_key, files)]),
            )
        gone.append(one)
    _sweep(archive)
    return gone[::-1]


def _sweep(archive: Archive) -> None:
    """Take away files and words of what was deleted, now or in a run that was cut off."""
    with archive.writing(alone=True) as conn:  # nobody takes such a file in meanwhile
        if archive.file is not None:  # its index of words only marks what was deleted
            archive.file.with_suffix(".seal").unlink(missing_ok=True)  # no line tells of this
            conn.execute(text("INSERT INTO words(words) VALUES ('optimize')"))
        told = list(lines(conn))
        photo = table("photo")
        kept = {key_for(*row) for row in conn.execute(select(photo.c.sha256, photo.c.suffix))}
        kept |= {file_key(one) for own in states(told).values() for one in own}
        for line in told:
            if line.action == "deleted":
                for key in set(json.loads(line.detail).get("files", ())) - kept:
                    archive.store.remove(key)
    forget_deleted(archive)


def _delete(conn: Connection, hit: Hit) -> list[str] | None:
    """Take a record's rows away; keys of the photos that no other record rests on."""
    inspection, link, photo = table("inspection"), table("inspection_photo"), table("photo")
    mine = inspection.c.id == hit.number
    if conn.execute(select(inspection.c.sha256).where(mine)).scalar() != hit.sha256:
        return None
    chosen = select(photo.c.sha256, photo.c.suffix).join(link, link.c.sha256 == photo.c.sha256)
    rows = conn.execute(chosen.where(link.c.inspection_id == hit.number)).all()
    clear_rows(conn, hit.number)
    conn.execute(delete(inspection).where(mine))
    lone = []
    for sha256, suffix in rows:
        if conn.execute(select(link.c.place).where(link.c.sha256 == sha256)).first() is None:
            conn.execute(delete(photo).where(photo.c.sha256 == sha256))
            lone.append(key_for(sha256, suffix))
    return lone
