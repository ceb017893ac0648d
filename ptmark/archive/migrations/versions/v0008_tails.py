"""Numbers found by their middle or end, and indications by kind and shape, at one cost each.

A pattern that begins with ``*`` was tried on every number, and a kind and a shape that exclude
each other were looked for in every row of the kind.
"""

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"

_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
_KEY = sa.Text().with_variant(sa.Text(collation="C"), "postgresql")
_LETTERS = 16
_MANY = 2000
_RIGHTS = {
    "ptmark_reader": "SELECT",
    "ptmark_inspector": "INSERT",
    "ptmark_keeper": "DELETE",
}


def upgrade() -> None:
    """Make the tables from the numbers that are there, and the index."""
    for name in ("part", "serial"):
        op.create_table(
            f"{name}_tail",
            sa.Column("tail", _KEY, primary_key=True),
            sa.Column("owner", _ID, sa.ForeignKey(f"{name}.id"), primary_key=True),
            sa.Column("place", sa.Integer(), primary_key=True, autoincrement=False),
            sqlite_with_rowid=False,
        )
        _fill(name)
        _grant(f"{name}_tail")
    columns = ["kind_key", "shape", "length_mm", "inspection_id"]
    op.create_index("ix_indication_both", "indication", columns)


def downgrade() -> None:
    """Take them away."""
    op.drop_index("ix_indication_both", "indication")
    op.drop_table("serial_tail")
    op.drop_table("part_tail")


def _fill(name: str) -> None:
    conn = op.get_bind()
    own = sa.table(name, sa.column("id"), sa.column("key"))
    tail = sa.table(f"{name}_tail", *map(sa.column, ("tail", "owner", "place")))
    for chunk in conn.execute(sa.select(own.c.id, own.c.key)).partitions(_MANY):
        rows = [
            {"tail": key[place : place + _LETTERS], "owner": number, "place": place}
            for number, key in ((one.id, one.key.partition("\0")[0]) for one in chunk)
            for place in range(len(key))
        ]
        if rows:
            conn.execute(sa.insert(tail), rows)


def _grant(name: str) -> None:
    """To the roles, where they were set before."""
    conn = op.get_bind()
    if conn.dialect.name != "postgresql":
        return
    for role, right in _RIGHTS.items():
        if conn.execute(sa.text("SELECT to_regrole(:role)"), {"role": role}).scalar():
            op.execute(f"GRANT {right} ON {name} TO {role}")
