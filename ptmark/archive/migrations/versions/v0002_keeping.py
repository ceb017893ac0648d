"""Saved searches, how long records are kept, holds, and where a record lies on its part."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def _named(name: str) -> "sa.Column[str]":
    return sa.Column(name, sa.Text(), primary_key=True)


def _text(name: str) -> "sa.Column[str]":
    return sa.Column(name, sa.Text(), nullable=False)


def upgrade() -> None:
    """Make the tables."""
    op.create_table("saved_search", _named("name"), _text("query"))
    op.create_table(
        "rule",
        _named("name"),
        _text("query"),
        sa.Column("years", sa.Float(), nullable=False),
        _text("reason"),
    )
    op.create_table("hold", _named("name"), _text("query"), _text("reason"))
    op.create_table(
        "placement",
        _named("record_id"),
        *(sa.Column(name, sa.Float(), nullable=False) for name in "abcdef"),
        _text("why"),
    )


def downgrade() -> None:
    """Take them away; what was entered in them is lost, records and photos are not."""
    for name in ("placement", "hold", "rule", "saved_search"):
        op.drop_table(name)
