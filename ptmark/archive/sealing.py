"""The seal: SHA-256 of the whole database file, for one end of the audit log.

SQLite's own check and the rows worked out anew find every changed bit that anything reads. What
is left are bytes nothing reads, such as the rest of a half-full page; the seal finds those too,
as long as nothing was written since: every write adds to the log, so the same end of the log
means the same file.
"""

import hashlib
import json
import sqlite3
from pathlib import Path
from typing import Any

from sqlalchemy import Engine

from ptmark.archive import chain
from ptmark.files import write_whole

__all__ = ["seal", "seal_holds"]


def seal(engine: Engine, file: Path) -> bool:
    """Seal the database; False where it may only be read, or another works with it just now.

    Opening one for writing may set its mark for that in the file (a copy has none), and a
    reader cannot hold writers off.
    """
    if "mode" in engine.url.query:
        return False
    found = _state(engine, file)
    if found is None:
        return False
    write_whole(file.with_suffix(".seal"), json.dumps(found).encode())
    return True


def seal_holds(engine: Engine, file: Path) -> bool | None:
    """Whether the file is as it was sealed; None where it was written to since, or never."""
    try:
        sealed = json.loads(file.with_suffix(".seal").read_text("utf-8"))
    except (OSError, ValueError):
        return None
    now = _state(engine, file)
    if now is None or not isinstance(sealed, dict) or sealed.get("log") != now["log"]:
        return None
    return bool(sealed.get("sha256") == now["sha256"])


def _state(engine: Engine, file: Path) -> dict[str, Any] | None:
    """End of the log and hash of the file, with writers held off; None where that fails."""
    raw = engine.raw_connection()
    try:
        busy = raw.cursor().execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()[0]
    except sqlite3.Error:  # a full disk or a damaged file: what is read next will tell
        return None
    finally:
        raw.close()
    if busy:
        return None
    with engine.connect() as plain:
        conn = plain.execution_options(write=True)
        with conn.begin() as held:
            wal = Path(f"{file}-wal")
            if wal.exists() and wal.stat().st_size:
                return None  # another wrote in between
            log = list(chain.head(conn))
            with file.open("rb") as whole:
                sha256 = hashlib.file_digest(whole, "sha256").hexdigest()
            held.rollback()
    return {"log": log, "sha256": sha256}
