"""Signatures of examiner and reviewer: Ed25519 (RFC 8032) over a record's canonical JSON.

A signature covers the revision without history (chained by ``previous``), seal (worked out)
and signatures, the signatures that stood before it, and its own head: role, name,
qualification, time, photo hashes, public key. The key says that the same holder signed; that
the holder is the named person is known only where the fingerprint was compared with them.
"""

import hashlib
import os
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from ptmark.errors import RecordError
from ptmark.places import user_folder
from ptmark.record.canonical import canonical_json
from ptmark.record.model import Record
from ptmark.record.revisions import time_now

if TYPE_CHECKING:
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

__all__ = ["Signer", "fingerprint", "key_of", "photo_hashes", "sign_record", "signature_holds"]

Document = dict[str, Any]

_SCHEMA = "ptmark-signature/1"
_ROLES = ("examiner", "reviewer")


@dataclass(frozen=True, slots=True, kw_only=True)
class Signer:
    """Who signs: ``role`` "examiner" or "reviewer"; ``qualification`` scheme, level, number."""

    role: str
    name: str
    qualification: str = ""


def fingerprint(key: str) -> str:
    """A public key (hexadecimal) as people compare it: SHA-256, 16 digits in groups of four.

    Examples
    --------
    >>> fingerprint("00" * 32)
    '6668 7aad f862 bd77'
    """
    whole = hashlib.sha256(bytes.fromhex(key)).hexdigest()
    return " ".join(whole[at : at + 4] for at in range(0, 16, 4))


def key_of(name: str, folder: Path | None = None) -> "Ed25519PrivateKey":
    """The signing key of a person on this machine; made at the first use.

    Parameters
    ----------
    name : str
        The signer; each name has its own key.
    folder : Path or None
        Where keys lie, mode 700; ``keys`` in the user's folder if None. Key files have
        mode 600 (PKCS #8, PEM) and are not encrypted: the account keeps them.

    Raises
    ------
    RecordError
        If the key cannot be read, or others may read it.
    """
    folder = folder or user_folder() / "keys"
    stem = hashlib.sha256(" ".join(name.split()).casefold().encode()).hexdigest()[:16]
    path = folder / f"{stem}.pem"
    try:
        if not path.exists():
            _make(path)
        return _read(path)
    except (OSError, ValueError, TypeError) as exc:
        raise RecordError(
            f"the signing key cannot be used ({exc})", where=str(path), mend="mend its folder"
        ) from exc


def _make(path: Path) -> None:
    from cryptography.hazmat.primitives import serialization
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

    data = Ed25519PrivateKey.generate().private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )
    path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    beside = path.with_suffix(f".{os.getpid()}.part")
    handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
    try:
        with os.fdopen(handle, "wb") as out:
            out.write(data)
            out.flush()
            os.fsync(out.fileno())
        with suppress(FileExistsError):  # another start was quicker: its key is the key
            os.link(beside, path)
    finally:
        beside.unlink(missing_ok=True)


def _read(path: Path) -> "Ed25519PrivateKey":
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
    from cryptography.hazmat.primitives.serialization import load_pem_private_key

    if os.name == "posix" and path.stat().st_mode & 0o077:
        raise RecordError(
            "others on this machine may read the signing key",
            where=str(path),
            mend="take their permission away (mode 600), and sign with a new key if in doubt",
        )
    key = load_pem_private_key(path.read_bytes(), password=None)
    if not isinstance(key, Ed25519PrivateKey):
        raise TypeError("it is no Ed25519 key")
    return key


def photo_hashes(document: Document) -> list[str]:
    """SHA-256 of every photo that a revision rests on, each once, its own first."""
    own = [document, *document.get("more_photos", ())]
    reviewed = [str(one["photo"]) for one in document.get("reviews", ())]
    return list(dict.fromkeys([*(str(one["photo"]["sha256"]) for one in own), *reviewed]))


def sign_record(
    record: Record, who: Signer, key: "Ed25519PrivateKey", *, at: str | None = None
) -> Record:
    """The record with one more signature.

    Raises
    ------
    RecordError
        If the role is unknown, or the signer has no name.
    """
    if who.role not in _ROLES or not who.name.strip():
        raise RecordError(
            f"'{who.role}' named '{who.name}' cannot sign",
            where="signature",
            mend="give a name, and examiner or reviewer as the role",
        )
    document = record.to_json()
    head = {
        "schema": _SCHEMA,
        "role": who.role,
        "name": who.name.strip(),
        "qualification": who.qualification.strip(),
        "time": at or time_now(),
        "photos": photo_hashes(document),
        "key": key.public_key().public_bytes_raw().hex(),
    }
    value = key.sign(_covered(document, record.signatures, head)).hex()
    return replace(record, signatures=[*record.signatures, {**head, "value": value}])


def signature_holds(document: Document, number: int) -> bool:
    """Whether a revision's signature with this number (from 0) fits the revision."""
    from cryptography.exceptions import InvalidSignature
    from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

    one = document["signatures"][number]
    head = {name: value for name, value in one.items() if name != "value"}
    try:
        key = Ed25519PublicKey.from_public_bytes(bytes.fromhex(one["key"]))
        message = _covered(document, document["signatures"][:number], head)
        key.verify(bytes.fromhex(one["value"]), message)
    except (InvalidSignature, ValueError):
        return False
    return bool(head["photos"] == photo_hashes(document))


def _covered(document: Document, before: list[Document], head: Document) -> bytes:
    outside = {"history", "seal", "signatures"}
    content = {name: value for name, value in document.items() if name not in outside}
    return canonical_json({"record": content, "before": before, "signed": head})
