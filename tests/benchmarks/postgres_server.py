"""A PostgreSQL of one's own: Debian's programs, a temporary folder, a unix socket, no network.

    with Server() as server:
        url = server.database()

PostgreSQL refuses to run as root; for root it runs as the account `postgres` of the package.
"""

import os
import shutil
import subprocess
import tempfile
from itertools import count
from pathlib import Path

OWNER = "archive_owner"


def programs():
    """Folder of the newest PostgreSQL's programs; None where there is none."""
    found = sorted(
        Path("/usr/lib/postgresql").glob("*/bin/initdb"), key=lambda one: int(one.parts[4])
    )
    return found[-1].parent if found else None


class Server:
    """Data with page checksums and fsync as PostgreSQL has it by default."""

    def __init__(self, *settings):
        self.bin = programs()
        self.folder = Path(tempfile.mkdtemp(prefix="ptmark-pg-"))
        self.settings = settings
        self._names = count(1)
        self._again = ""

    def __enter__(self):
        if os.geteuid() == 0:
            shutil.chown(self.folder, "postgres")
        self.folder.chmod(0o755)
        self.run(
            "initdb", "-k", "-N", "-U", OWNER, "--auth=trust", "-E", "UTF8", "--locale=C.UTF-8"
        )
        self.start()
        return self

    def __exit__(self, *_error):
        self.run("pg_ctl", "stop", "-m", "immediate", check=False)
        shutil.rmtree(self.folder, ignore_errors=True)

    def run(self, program, *arguments, check=True):
        """Run a program of the server on its data."""
        command = [self.bin / program, "-D", self.folder / "data", *arguments]
        if os.geteuid() == 0:
            command = ["runuser", "-u", "postgres", "--", *command]
        quiet = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
        return subprocess.run(command, check=check, cwd=self.folder, **quiet)

    def start(self):
        """Start it, and wait until it answers."""
        options = ["-k", str(self.folder), "-c", "listen_addresses=''"]
        for one in self.settings:
            options += ["-c", one]
        log = str(self.folder / "log")
        self.run("pg_ctl", "-w", "-l", log, "-o", " ".join(options), "start")

    def tool(self, program, *arguments):
        """Run a client program, such as pg_dump, as the owner."""
        own = os.environ | {"PGHOST": str(self.folder), "PGUSER": OWNER}
        return subprocess.run([self.bin / program, *arguments], check=True, env=own)

    def url(self, name, user=OWNER):
        """The database's URL for a user."""
        return f"postgresql+psycopg://{user}@/{name}?host={self.folder}"

    def database(self):
        """Make a database; its URL."""
        name = f"archive_{next(self._names)}"
        self.sql(f"CREATE DATABASE {name} TEMPLATE template0")
        return self.url(name)

    def cleared(self):
        """The URL of one database that is used again and again, with nothing in it."""
        if not self._again:
            self._again = self.database()
            return self._again
        name = self._again.partition("?")[0].rpartition("/")[2]
        rows = self.sql(
            "SELECT string_agg(quote_ident(tablename), ',') FROM pg_tables "
            "WHERE schemaname = 'public' AND tablename <> 'alembic_version'",
            name,
        )
        # The rules of the archive forbid it to everyone who does not set this.
        self.sql(
            f"SET session_replication_role = replica; TRUNCATE {rows[0][0]} RESTART IDENTITY",
            name,
        )
        return self._again

    def sql(self, said, name="postgres"):
        """Let the owner say something; rows where there are any."""
        import psycopg

        with psycopg.connect(
            host=str(self.folder), user=OWNER, dbname=name, autocommit=True
        ) as conn:
            done = conn.execute(said)
            return done.fetchall() if done.description else []
