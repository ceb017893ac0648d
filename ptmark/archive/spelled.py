"""Statements that SQLAlchemy spells once and the driver then runs: a tenth of the cost each."""

from dataclasses import dataclass
from typing import Any

from sqlalchemy import Connection, CursorResult, Dialect, Executable

__all__ = ["Spelled", "all_rows", "answer", "put", "spelled"]


@dataclass(frozen=True, slots=True)
class Spelled:
    """SQL for one driver; ``names``: its values in order, None where it takes them by name."""

    sql: str
    names: tuple[str, ...] | None
    fixed: dict[str, Any]  # values that SQLAlchemy itself put in

    def bound(self, values: dict[str, Any]) -> Any:  # noqa: ANN401 - as the driver takes them
        """Values as the driver takes them; more than it asks for does no harm."""
        whole = {**self.fixed, **values}
        return whole if self.names is None else tuple(map(whole.__getitem__, self.names))


def spelled(statement: Executable, dialect: Dialect) -> Spelled:
    """A statement's SQL and what values it asks for."""
    made = statement.compile(dialect=dialect)  # type: ignore[attr-defined]
    names = tuple(made.positiontup) if made.positional else None
    fixed = {name: one.value for name, one in made.binds.items() if not one.required}
    return Spelled(str(made), names, fixed)


def answer(conn: Connection, what: Spelled, values: dict[str, Any]) -> CursorResult[Any]:
    """What a statement gives within a transaction."""
    return conn.exec_driver_sql(what.sql, what.bound(values))


def all_rows(conn: Connection, what: Spelled, values: dict[str, Any]) -> list[Any]:
    """All that a statement gives within a transaction; of a file, by the driver itself."""
    if conn.dialect.name != "sqlite":
        return list(answer(conn, what, values).all())  # at once: one by one costs thrice
    cursor = conn.connection.cursor()
    cursor.execute(what.sql, what.bound(values))
    rows: list[Any] = cursor.fetchall()  # type: ignore[assignment]
    return rows


def put(conn: Connection, what: Spelled, rows: list[dict[str, Any]]) -> None:
    """Run a statement for each row within a transaction."""
    bound = [what.bound(one) for one in rows]
    if conn.dialect.name == "sqlite":
        conn.connection.cursor().executemany(what.sql, bound)
    else:  # SQLAlchemy tells a connection that was cut
        conn.exec_driver_sql(what.sql, bound)
