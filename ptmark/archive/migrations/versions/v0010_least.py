"""Which lengths are the least that they can be, read again from the records' files.

A record says so of what runs out of its photo or lies in what is overexposed; the rows did not,
and told such a length as if it were whole. How files are read stands here once more, as later
changes of that are no part of this step.
"""

import json
import re
import zlib
from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"

_SAYS_SO = re.compile(rb'"(?:runs_out|overexposed)"\s*:\s*true')  # hardly any record does
_OWN = ["inspection_id", "kind_key", "shape", "length_mm"]
_ADDED = {"inspection": "longest_least", "indication": "least"}
_MANY = 100


def upgrade() -> None:
    """Add the columns, fill them and make the indexes that lengths are looked for by."""
    for name, column in _ADDED.items():
        new = sa.Column(column, sa.Integer(), nullable=False, server_default="0")
        op.add_column(name, new)
    _guard("DISABLE")
    _fill()
    _guard("ENABLE")
    op.drop_index("ix_indication_own", "indication")
    op.create_index("ix_indication_own", "indication", [*_OWN, "least"])
    alone = sa.text("least = 1")
    op.create_index(
        "ix_indication_least",
        "indication",
        ["kind_key", "shape", "length_mm", "inspection_id", "least"],
        sqlite_where=alone,
        postgresql_where=alone,
    )


def downgrade() -> None:
    """Take them away; the files still say it."""
    op.drop_index("ix_indication_least", "indication")
    op.drop_index("ix_indication_own", "indication")
    for name, column in _ADDED.items():
        op.drop_column(name, column)
    op.create_index("ix_indication_own", "indication", _OWN)


def _guard(how: str) -> None:
    """A server's triggers ask for a line in the log with each change."""
    if op.get_bind().dialect.name == "postgresql":
        for name in _ADDED:
            op.execute(f"ALTER TABLE {name} {how} TRIGGER USER")


def _fill() -> None:
    conn = op.get_bind()
    document = sa.table("document", sa.column("inspection_id"), sa.column("data"))
    numbers = conn.execute(sa.select(document.c.inspection_id)).scalars().all()
    for first in range(0, len(numbers), _MANY):
        mine = document.c.inspection_id.in_(numbers[first : first + _MANY])
        for number, data in conn.execute(sa.select(document).where(mine)).all():
            letters = _letters(bytes(data))
            if letters:
                _mark(conn, number, letters)


def _letters(data: bytes) -> list[str]:
    """Those of a file, deflated; none of one that is damaged, which verifying tells of."""
    try:
        plain = zlib.decompress(data)
        if not _SAYS_SO.search(plain):
            return []
        return _least_in(json.loads(plain.decode("utf-8-sig")))
    except (zlib.error, ValueError, LookupError, TypeError, AttributeError, RecursionError):
        return []


def _least_in(record: dict[str, Any]) -> list[str]:
    """Each letter of a set counts as the photo shows it whose size is that of record."""
    seen = (record.get("together") or {}).get("seen_again", ())
    held = {one["id"]: one["of_record"] for one in seen}
    found: dict[str, bool] = {}
    for number, photo in enumerate([record, *record.get("more_photos", ())], 1):
        for one in photo["indications"]:
            if held.get(one["id"]) in {None, number}:
                more = one.get("runs_out") or one.get("overexposed")
                found.setdefault(one["id"], one["length_mm"] is not None and bool(more))
    return [letter for letter, least in found.items() if least]


def _mark(conn: sa.Connection, number: int, letters: list[str]) -> None:
    one = sa.table("indication", *map(sa.column, ("inspection_id", "letter", "least")))
    mine = sa.and_(one.c.inspection_id == number, one.c.letter.in_(letters))
    conn.execute(sa.update(one).where(mine).values(least=1))
    head = sa.table("inspection", sa.column("id"), sa.column("longest_least"))
    conn.execute(sa.update(head).where(head.c.id == number).values(longest_least=1))
