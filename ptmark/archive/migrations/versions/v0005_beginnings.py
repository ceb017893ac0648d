"""An index of the beginnings of words, so that they are found as whole words are."""

from alembic import op

revision = "0005"
down_revision = "0004"

_LENGTHS = "1 2 3 4 5 6 7 8"  # letters


def upgrade() -> None:
    """Make the index of words anew with them; PostgreSQL's finds beginnings by itself."""
    _make(f", prefix='{_LENGTHS}'")


def downgrade() -> None:
    """Make it anew without."""
    _make("")


def _make(more: str) -> None:
    if op.get_bind().dialect.name == "sqlite":
        op.execute("DROP TABLE words")
        op.execute(
            "CREATE VIRTUAL TABLE words USING fts5(text, content='wording', "
            f"content_rowid='inspection_id', tokenize='unicode61'{more})"
        )
        op.execute("INSERT INTO words(words) VALUES ('rebuild')")
