"""Indexes by which what no record has costs nothing to look for.

A verdict and a disposition that exclude each other, and a shape that no indication has, were
looked for in every row.
"""

from alembic import op

revision = "0007"
down_revision = "0006"


def upgrade() -> None:
    """Make them beside the others: those lead through the dates by one of the two alone."""
    op.create_index(
        "ix_inspection_decided",
        "inspection",
        ["verdict", "disposition", "examined_on", "id"],
    )
    op.create_index(
        "ix_indication_shape", "indication", ["shape", "length_mm", "inspection_id"]
    )


def downgrade() -> None:
    """Take them away."""
    op.drop_index("ix_indication_shape", "indication")
    op.drop_index("ix_inspection_decided", "inspection")
