"""An index by which an inspection is asked for its indications without reading their rows.

Inspections met on the way through the dates were asked by the rows of all their indications,
which took five times as long.
"""

from alembic import op

revision = "0009"
down_revision = "0008"


def upgrade() -> None:
    """Make it."""
    columns = ["inspection_id", "kind_key", "shape", "length_mm"]
    op.create_index("ix_indication_own", "indication", columns)


def downgrade() -> None:
    """Take it away."""
    op.drop_index("ix_indication_own", "indication")
