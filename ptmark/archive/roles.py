"""Who may do what on a server: four roles, each with all that the one before it may.

A reader sees everything. An inspector takes records in, revises those that are not signed,
saves searches and lays records on their part. A reviewer revises signed ones too. A keeper sets
rules and holds, deletes by rule and repairs. PostgreSQL enforces it, whatever program asks.
"""

from sqlalchemy import Connection, text

from ptmark.archive.chain import LOCK
from ptmark.archive.guarding import guard
from ptmark.archive.opening import Archive
from ptmark.errors import ArchiveError

__all__ = ["give_role", "logins", "may_hold", "set_roles", "take_role"]

ROLES = ("reader", "inspector", "reviewer", "keeper")

_CHILDREN = "document, wording, revision, inspection_photo, indication"
_TAILS = "part_tail, serial_tail"
_GRANTS = {
    "reader": {"SELECT": "ALL TABLES IN SCHEMA {schema}"},
    "inspector": {
        "INSERT": f"part, serial, inspection, photo, audit, {_TAILS}, {_CHILDREN}",
        "UPDATE": "inspection",
        "DELETE": _CHILDREN,
        "INSERT, DELETE": "saved_search, placement",
        "USAGE": "SEQUENCE part_id_seq, serial_id_seq, inspection_id_seq",
    },
    "reviewer": {},
    "keeper": {
        "INSERT, DELETE": "rule, hold",
        "DELETE": f"inspection, photo, {_TAILS}",
        "UPDATE": "photo",
    },
}


def set_roles(archive: Archive) -> None:
    """Make the four roles, grant them what they may and set the database's rules anew.

    Done again, it changes nothing.

    Raises
    ------
    ArchiveError
        If the archive is no PostgreSQL, or this login may not make roles.
    """
    _on_server(archive)
    with archive.writing(alone=True) as conn:
        quote = conn.dialect.identifier_preparer.quote
        schema = quote(str(conn.execute(text("SELECT current_schema()")).scalar_one()))
        conn.exec_driver_sql(f"REVOKE CREATE ON SCHEMA {schema} FROM PUBLIC")
        below = ""
        for role, grants in _GRANTS.items():
            name = f"ptmark_{role}"
            if not _there(conn, name):
                conn.exec_driver_sql(f"CREATE ROLE {name} NOLOGIN")
            conn.exec_driver_sql(f"GRANT USAGE ON SCHEMA {schema} TO {name}")
            for right, places in grants.items():
                where = places.format(schema=schema)
                conn.exec_driver_sql(f"GRANT {right} ON {where} TO {name}")
            if below:
                conn.exec_driver_sql(f"GRANT {below} TO {name}")
            below = name
        guard(conn, LOCK)
        archive.log(conn, "set roles", "roles")


def give_role(archive: Archive, role: str, login: str) -> None:
    """Give a login of the server a role.

    Raises
    ------
    ArchiveError
        If the archive is no PostgreSQL, there is no such role or login, or it may not be given.
    """
    _change(archive, "GRANT {name} TO {login}", "gave role", role, login)


def take_role(archive: Archive, role: str, login: str) -> None:
    """Take a role from a login; raises as `give_role` does."""
    _change(archive, "REVOKE {name} FROM {login}", "took role", role, login)


def logins(archive: Archive) -> dict[str, list[str]]:
    """Logins by the role given to them; no roles where none are set.

    Raises
    ------
    ArchiveError
        If the archive is no PostgreSQL.
    """
    _on_server(archive)
    members = text(
        "SELECT m.rolname FROM pg_auth_members a JOIN pg_roles m ON m.oid = a.member "
        "JOIN pg_roles r ON r.oid = a.roleid WHERE r.rolname = :name "
        "AND m.rolname NOT LIKE 'ptmark\\_%' ORDER BY 1"
    )
    with archive.reading() as conn:
        return {
            role: list(conn.execute(members, {"name": f"ptmark_{role}"}).scalars())
            for role in ROLES
            if _there(conn, f"ptmark_{role}")
        }


def may_hold(archive: Archive) -> bool:
    """Whether this login may set rules and holds; of a file, whoever may write it may."""
    if archive.engine.dialect.name != "postgresql":
        return True
    asked = text("SELECT has_table_privilege('hold', 'INSERT')")
    with archive.reading() as conn:
        return bool(conn.execute(asked).scalar_one())


def _there(conn: Connection, name: str) -> bool:
    asked = text("SELECT 1 FROM pg_roles WHERE rolname = :name")
    return conn.execute(asked, {"name": name}).first() is not None


def _on_server(archive: Archive) -> None:
    if archive.engine.dialect.name != "postgresql":
        raise ArchiveError(
            "a file has no roles: who may write the file may change all that is in it",
            where=str(archive.file or archive.engine.url),
            mend="let the folder's permissions decide, or keep the archive on PostgreSQL",
        )


def _change(archive: Archive, said: str, action: str, role: str, login: str) -> None:
    _on_server(archive)
    if role not in ROLES:
        raise ArchiveError(f"'{role}' is no role", mend=f"one of {', '.join(ROLES)}")
    name = f"ptmark_{role}"
    with archive.writing() as conn:
        for one, mend in ((name, "set the roles first"), (login, "make the login first")):
            if not _there(conn, one):
                raise ArchiveError("the server has no such role or login", where=one, mend=mend)
        quote = conn.dialect.identifier_preparer.quote
        conn.exec_driver_sql(said.format(name=name, login=quote(login)))
        archive.log(conn, action, login, role=role)
