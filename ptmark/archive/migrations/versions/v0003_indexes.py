"""Indexes that answer by themselves what kinds, lengths, verdicts and dispositions fit."""

from alembic import op

revision = "0003"
down_revision = "0002"

_LENGTHS = ("length_mm", "shape", "inspection_id")
_DECIDED = ("verdict", "disposition")


def upgrade() -> None:
    """Make them in place of those that led to every row."""
    op.drop_index("ix_indication_kind_key", "indication")
    op.drop_index("ix_indication_length", "indication")
    op.create_index("ix_indication_kind", "indication", ["kind_key", *_LENGTHS])
    op.create_index("ix_indication_length", "indication", [*_LENGTHS])
    for name in _DECIDED:
        op.create_index(f"ix_inspection_{name}", "inspection", [name, "examined_on", "id"])


def downgrade() -> None:
    """Make the earlier ones again."""
    for name in _DECIDED:
        op.drop_index(f"ix_inspection_{name}", "inspection")
    op.drop_index("ix_indication_kind", "indication")
    op.drop_index("ix_indication_length", "indication")
    op.create_index("ix_indication_kind_key", "indication", ["kind_key"])
    op.create_index("ix_indication_length", "indication", ["length_mm"])
