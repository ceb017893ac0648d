"""Revisions: what a signed record becomes when it is saved again.

All revisions lie in one file, so that `write_whole` keeps them whole together: the newest at
the top level, the earlier ones in ``history``, oldest first, each exactly as it was written.
``previous`` holds the hash of the revision before: SHA-256 over the canonical JSON (RFC 8785)
of its document, signatures included, without the members ``history`` (chained already) and
``seal`` (worked out from the rest). The seal holds that hash and a short one for each part,
so that a changed byte can be traced to its field. Only a signature keeps a person from
making all of them again.
"""

import hashlib
from dataclasses import replace
from datetime import UTC, datetime
from typing import Any

from ptmark.errors import RecordError
from ptmark.record.canonical import canonical_json, digest, joined
from ptmark.record.model import Record

__all__ = [
    "changed_paths",
    "follow",
    "link_to",
    "revision_hash",
    "revisions",
    "seal_of",
    "time_now",
]

Document = dict[str, Any]

_OUTSIDE = ("history", "seal")
# What tells of the revision itself, not of the inspection.
_OWN = {"schema", "software", "revision", "previous", "change", "signatures", *_OUTSIDE}
_DEEP = 3  # fields.remarks, indications.B.length_mm, evaluation.findings.0


def time_now() -> str:
    """The time now, ISO 8601, UTC, to the second."""
    return datetime.now(UTC).isoformat(timespec="seconds").replace("+00:00", "Z")


def revision_hash(document: Document) -> str:
    """The hash that the next revision holds as ``previous``."""
    return digest({k: v for k, v in document.items() if k not in _OUTSIDE})


def _parts(document: Document) -> dict[str, str]:
    """The first 12 hexadecimal digits of the SHA-256 of each part, by its path.

    Lists of objects go by their ``id`` where each has its own, else by number from 0.
    """
    return seal_of(document)["parts"]  # type: ignore[no-any-return]


def _walk(value: object, path: str, depth: int, found: dict[str, str]) -> bytes:
    """Note each part's hash; the value's canonical JSON, put together from theirs."""
    below: dict[str, object] = {}
    if isinstance(value, dict):
        below = {str(key): one for key, one in value.items()}
    elif isinstance(value, list) and value and all(isinstance(one, dict) for one in value):
        names = [str(one.get("id", number)) for number, one in enumerate(value)]
        if len(set(names)) < len(names):
            names = [str(number) for number in range(len(value))]
        below = dict(zip(names, value, strict=True))
    if not below or depth >= _DEEP:
        text = canonical_json(value)
        found[path] = _sha256(text)[:12]
        return text
    texts = {key: _walk(one, f"{path}.{key}", depth + 1, found) for key, one in below.items()}
    return joined(texts) if isinstance(value, dict) else b"[%s]" % b",".join(texts.values())


def _sha256(text: bytes) -> str:
    return hashlib.sha256(text).hexdigest()


def seal_of(document: Document) -> Document:
    """The seal of one revision: its `revision_hash` and its `parts`, both in one walk."""
    found: dict[str, str] = {}
    texts = {
        # A photo of the set is walked as deep as the first one is.
        name: _walk(value, name, -1 if name == "more_photos" else 1, found)
        for name, value in document.items()
        if name not in _OUTSIDE
    }
    return {"sha256": _sha256(joined(texts)), "parts": found}


def changed_paths(before: Document, after: Document) -> list[str]:
    """Paths of the parts that differ; an indication that came or went is named as a whole."""
    old, new = (_telling(one) for one in (before, after))
    left, right = _parts(old), _parts(new)
    paths = [p for p in (left | right) if left.get(p) != right.get(p)]
    return list(dict.fromkeys(_whole(path, left, right) for path in paths))


def _telling(document: Document) -> Document:
    """What tells of the inspection; what an earlier version lacked is the same as empty."""
    whole = {"more_photos": [], "together": None, "given": None, "chosen": None, **document}
    return {name: value for name, value in whole.items() if name not in _OWN}


def _whole(path: str, left: dict[str, str], right: dict[str, str]) -> str:
    """The highest part of a path that stands on one side only."""
    names = path.split(".")
    for count in range(1, len(names)):
        head = ".".join(names[:count])
        if head in left or head in right:  # null or empty on one side
            return head
        there = [any(p.startswith(f"{head}.") for p in side) for side in (left, right)]
        if count > 1 and not all(there):
            return head
    return path


def revisions(record: Record) -> list[Document]:
    """Documents of all revisions, oldest first, the record's own last."""
    newest = {k: v for k, v in record.to_json().items() if k != "history"}
    return [*record.history, newest]


def link_to(record: Record, file: str) -> Document:
    """What the record of a retest holds as ``retest_of``: id, revision, hash, file name."""
    return {
        "id": record.id,
        "revision": record.revision,
        "sha256": revision_hash(record.to_json()),
        "file": file,
    }


def follow(before: Record, after: Record, *, by: str = "", why: str = "") -> Record:
    """The record to write where ``before`` lies and ``after`` is to be saved.

    Parameters
    ----------
    before, after : Record
        Of one inspection. ``after`` may have been made afresh: revisions, reviews and the
        link to an earlier record are then taken from ``before``.
    by, why : str
        Who changed it and for what reason; without them the examiner, and "not given".

    Returns
    -------
    Record
        ``after`` itself where it already carries ``before`` (more signatures, a later
        revision); ``before`` where nothing differs; else a new revision where ``before`` is
        signed or holds what a reviewer entered, or the same revision, still open, where not.

    Raises
    ------
    RecordError
        If the two are of different inspections.
    """
    if before.id != after.id:
        raise RecordError(
            f"holds the signed record {before.id} of another inspection",
            where="record",
            mend="choose another name; what was signed stays",
        )
    if _carries(after, before):
        return after
    kept: Document = {
        "reviews": after.reviews or before.reviews,
        "retest_of": after.retest_of or before.retest_of,
        "created": before.created,
    }
    after = replace(after, **kept)
    if not changed_paths(before.to_json(), after.to_json()):
        return before
    is_closed = bool(before.signatures) or (
        after.reviews == before.reviews and _holds_new_review(before)
    )
    history, number = list(before.history), before.revision
    told = before.change or {}
    if is_closed:
        *_, newest = revisions(before)
        history = [*history, {**newest, "seal": seal_of(newest)}]
        number, told = number + 1, {}
    if not history:
        return replace(after, revision=number, signatures=[])
    change = {
        "by": by or told.get("by") or after.fields.get("examiner", "").strip() or "not given",
        "why": why or told.get("why") or "not given",
        "at": time_now(),
        "what": changed_paths(history[-1], after.to_json()),
    }
    return replace(
        after,
        revision=number,
        previous=revision_hash(history[-1]),
        change=change,
        history=history,
        signatures=[],
    )


def _holds_new_review(record: Record) -> bool:
    """Whether this revision is a reviewer's: another one's change would go by that name."""
    return bool(record.history) and record.reviews != record.history[-1].get("reviews", [])


def _carries(after: Record, before: Record) -> bool:
    """Whether ``after`` is ``before`` with more signatures, or a later revision of it."""
    if after.history[: len(before.history)] != before.history:
        return False
    if after.revision == before.revision and after.previous == before.previous:
        count = len(before.signatures)
        same = replace(after, signatures=after.signatures[:count]).to_json()
        return revision_hash(same) == revision_hash(before.to_json())
    mine = revision_hash(before.to_json())
    return any(revision_hash(one) == mine for one in after.history)
