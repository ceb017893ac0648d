"""Whether a record's file and photos are as they were written and signed, and where not."""

import re
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from ptmark.errors import RecordError
from ptmark.record.canonical import spelled_once
from ptmark.record.check import check_document
from ptmark.record.photo_files import find_photo
from ptmark.record.revisions import revision_hash, seal_of
from ptmark.record.signing import fingerprint, photo_hashes, signature_holds
from ptmark.record.store import parsed, read_bytes, set_out

__all__ = ["Found", "verify_document", "verify_file"]

Document = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Found:
    """One thing looked at: ``where`` it stands, what it ``says``, whether it ``holds``.

    ``holds`` is None where there was nothing to check against, such as no signature.
    """

    where: str
    says: str
    holds: bool | None


def verify_file(
    path: Path, photos: Path | None = None, keys: tuple[str, ...] = ()
) -> list[Found]:
    """Check every revision's form, seal, chain and signatures, and the photos.

    Parameters
    ----------
    path : Path
        A record's file.
    photos : Path or None
        Folder to look for the photos in, by name, then by content; None leaves them out.
    keys : tuple of str
        Fingerprints that are trusted. Where given, the newest revision must be signed with
        one of them: nothing else tells a record that was signed again by another.

    Returns
    -------
    list of Found
        In the order of the file; all is well where none has ``holds`` False.

    Raises
    ------
    RecordError
        If the file cannot be read at all.
    """
    data = read_bytes(path)
    try:
        document = parsed(data, path.name)
    except RecordError as exc:
        return [Found(_place(data, exc), exc.what, holds=False)]
    found = verify_document(document, data)
    if not isinstance(document, dict):
        return found
    newest = _newest(document)
    if keys:
        found.append(_trusted(newest, found, {"".join(key.split()).lower() for key in keys}))
    return found if photos is None else [*found, *_photos(newest, photos)]


def verify_document(
    document: Any,  # noqa: ANN401 - whatever JSON holds
    data: bytes,
    *,
    fits: bool = False,
) -> list[Found]:
    """Check what was parsed from a record's bytes, as `verify_file` does.

    Parameters
    ----------
    document : dict
    data : bytes
    fits : bool
        Whether it is known to fit its schema, as after `Record.from_json`.
    """
    if not isinstance(document, dict):
        return [Found("file", "is not an inspection record", holds=False)]
    with spelled_once():
        return _verified(document, data, fits=fits)


def _verified(document: Document, data: bytes, *, fits: bool) -> list[Found]:
    found = _layout(document, data)
    history = document.get("history", [])
    if not isinstance(history, list) or not all(isinstance(one, dict) for one in history):
        return [*found, Found("history", "is no list of revisions", holds=False)]
    before: Document | None = None
    for one in history:
        found += _revision(one, None if fits else one, before)
        before = one
    return found + _revision(_newest(document), None if fits else document, before)


def _newest(document: Document) -> Document:
    return {name: value for name, value in document.items() if name != "history"}


def _layout(document: Document, data: bytes) -> list[Found]:
    """The file's bytes must be those that writing its own content again would give."""
    again = set_out(document).encode("utf-8", "surrogatepass")
    if again == data:
        return [Found("file", f"{len(data)} bytes, set out as written", holds=True)]
    pairs = zip(again, data, strict=False)
    at = next((n for n, (a, b) in enumerate(pairs) if a != b), min(len(again), len(data)))
    says = f"byte {at} ({_member(data, at)}) is not as this program writes it"
    return [Found("file", says, holds=False)]


def _place(data: bytes, exc: RecordError) -> str:
    """Where reading stopped: the byte and the member it stands in."""
    if (byte := re.search(r"\(byte (\d+)\)", exc.what)) is not None:
        at = int(byte[1])
    elif (line := re.search(r"line (\d+), column (\d+)", exc.what)) is not None:
        lines = data.split(b"\n")[: int(line[1])]
        row = lines[-1].decode("utf-8", "replace")[: int(line[2]) - 1]
        at = sum(len(one) + 1 for one in lines[:-1]) + len(row.encode())
    else:
        return "file"
    return f"file, byte {at} ({_member(data, at)})"


def _member(data: bytes, at: int) -> str:
    """The top-level member, and the row where it has rows, that a byte stands in."""
    head = data[:at].decode("latin-1")
    head += data[at:].split(b"\n", 1)[0].decode("latin-1")
    names = list(re.finditer(r'^ "(\w+)"', head, re.MULTILINE))
    if not names:
        return "top"
    rows = head.count("\n  ", names[-1].end())
    return f"{names[-1][1]}, row {rows}" if rows else names[-1][1]


def _revision(one: Document, whole: Document | None, before: Document | None) -> list[Found]:
    """One revision; ``whole`` is what its schema is checked on, with the history if any."""
    where = f"revision {one.get('revision')}"
    try:
        if whole is not None:
            check_document(whole, where=where)
    except RecordError as exc:
        form = [Found(exc.where, exc.what, holds=False)]
        return form + _sealed(one, where)  # the seal may tell more exactly
    found = _sealed(one, where)
    try:
        return [*found, *_chained(one, before, where), *_signed(one, where)]
    except RecordError as exc:  # content that has no canonical JSON
        return [*found, Found(where, exc.what, holds=False)]


def _chained(one: Document, before: Document | None, where: str) -> list[Found]:
    previous = one.get("previous")
    if before is None:
        says = "the revision before it is missing"
        return [] if previous is None else [Found(where, says, holds=False)]
    number = before.get("revision")
    follows = isinstance(number, int) and one["revision"] == number + 1
    follows = follows and one["id"] == before.get("id") and previous == revision_hash(before)
    says = "follows the one before" if follows else "does not follow the one before it"
    return [Found(where, says, holds=follows)]


def _signed(one: Document, where: str) -> list[Found]:
    found = []
    for number, signature in enumerate(one.get("signatures", [])):
        holds = signature_holds(one, number)
        who = f"{signature['role']} {signature['name']}, {signature['time']}, "
        who += f"key {fingerprint(signature['key'])}"
        says = f"signed by {who}" if holds else f"the signature does not fit: {who}"
        found.append(Found(f"{where}, signature {number + 1}", says, holds=holds))
    return found or [Found(where, "is not signed", holds=None)]


def _sealed(one: Document, where: str) -> list[Found]:
    seal = one.get("seal")
    if not isinstance(seal, dict) or not isinstance(seal.get("parts"), dict):
        older = one.get("schema") == "ptmark-record/1"  # had none
        return [Found(where, "has no seal to find changes by", holds=None if older else False)]
    try:
        now = seal_of(one)
    except RecordError as exc:
        return [Found(where, exc.what, holds=False)]
    whole, now = now["sha256"], now["parts"]
    was = seal["parts"]
    differ = [path for path in now | was if now.get(path) != was.get(path)]
    if whole == seal.get("sha256"):
        if not differ:
            return [Found(where, f"seal holds, SHA-256 {whole}", holds=True)]
        return [Found(f"{where}, seal", f"was changed itself: {differ[0]}", holds=False)]
    if not differ:
        return [Found(f"{where}, seal", "its SHA-256 was changed", holds=False)]
    shown = ", ".join(differ[:5]) + (f" and {len(differ) - 5} more" if differ[5:] else "")
    return [Found(f"{where}, {differ[0]}", f"was changed since saving: {shown}", holds=False)]


def _trusted(newest: Document, found: list[Found], keys: set[str]) -> Found:
    signatures = (
        [] if any(one.holds is False for one in found) else newest.get("signatures", [])
    )
    used = {"".join(fingerprint(one["key"]).split()) for one in signatures}
    holds = bool(keys & used)
    says = "is signed with a trusted key" if holds else "is not signed with a trusted key"
    return Found(f"revision {newest.get('revision')}", says, holds=holds)


def _photos(newest: Document, folder: Path) -> list[Found]:
    found = []
    try:
        own = [one["photo"] for one in (newest, *newest.get("more_photos", ()))]
        names = {str(one["sha256"]): str(one["file"]) for one in own}
        hashes = photo_hashes(newest)
    except (KeyError, TypeError):
        return [Found("photo", "the record does not tell which photo", holds=False)]
    for sha256 in hashes:
        name = names.get(sha256, "")
        there = find_photo(folder, name, sha256)
        if there is not None:
            found.append(Found(f"photo {there.name}", f"SHA-256 {sha256}", holds=True))
        elif name and (folder / name).is_file():
            found.append(
                Found(f"photo {name}", "is not the one of the record: changed", holds=False)
            )
        else:
            says = f"no file in {folder} has SHA-256 {sha256}"
            found.append(Found(f"photo {name}".strip(), says, holds=False))
    return found
