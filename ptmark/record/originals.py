"""The photos of a record are originals: no report is written over one."""

import hashlib
from pathlib import Path

from ptmark.errors import RecordError
from ptmark.record.model import Record

__all__ = ["refuse_original"]


def refuse_original(path: Path, record: Record) -> None:
    """Refuse to write where a photo of the record lies, whatever the file is called.

    Raises
    ------
    RecordError
        If the file there holds the content of one of the record's photos.
    """
    if not path.is_file():
        return
    size = path.stat().st_size
    hashes = {one.photo["sha256"] for one in record.views() if one.photo["bytes"] == size}
    if not hashes:
        return
    with path.open("rb") as file:
        if hashlib.file_digest(file, "sha256").hexdigest() in hashes:
            raise RecordError(
                "is the photo itself, which is never written over",
                where=str(path),
                mend="choose another name",
            )
