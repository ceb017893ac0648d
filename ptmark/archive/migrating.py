"""The database's shape: the migrations that lie in the package, run by Alembic.

There is no ``env.py``: this module stands in for it, so that an archive by any URL is brought
up through the connection that is open already.
"""

from pathlib import Path
from threading import Lock
from typing import Any

from sqlalchemy import Connection, inspect, text

from ptmark.archive.chain import LOCK
from ptmark.archive.guarding import guard

__all__ = ["NEWEST", "at_version", "migrate"]

NEWEST = "0011"
_ONE_AT_A_TIME = Lock()  # Alembic's steps work through module-wide names


def at_version(conn: Connection) -> str:
    """The migration the database stands at; "" for an empty one."""
    if not inspect(conn).has_table("alembic_version"):
        return ""
    return str(conn.execute(text("SELECT version_num FROM alembic_version")).scalar() or "")


def migrate(conn: Connection, to: str = NEWEST) -> None:
    """Bring the database up or down to a migration ("base": none) in this transaction."""
    from alembic.config import Config
    from alembic.runtime.environment import EnvironmentContext
    from alembic.script import ScriptDirectory

    folder = Path(__file__).parent / "migrations"
    config = Config()
    config.set_main_option("script_location", str(folder))
    config.set_main_option("path_separator", "os")
    scripts = ScriptDirectory(str(folder))
    known = [one.revision for one in scripts.walk_revisions()]  # newest first
    now = at_version(conn)
    down = to == "base" or (now in known and known.index(to) > known.index(now))

    def steps(revision: Any, _context: object) -> Any:  # noqa: ANN401 - Alembic's own types
        if down:
            return scripts._downgrade_revs(to, revision)
        return scripts._upgrade_revs(to, revision)

    with _ONE_AT_A_TIME, EnvironmentContext(config, scripts, fn=steps) as context:
        context.configure(connection=conn)
        context.run_migrations()
    if to == NEWEST:
        guard(conn, LOCK)
