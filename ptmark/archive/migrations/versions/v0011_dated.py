"""The index of words numbered by the day of examination, so that it lists the newest first.

By the numbers of inspections, words that many have were all listed before a page could be
sorted. It keeps beginnings of words of up to sixteen letters, too: longer ones than eight were
put together from all texts that have one. A server keeps what it makes of a text for that: it
made it again of every text that it asked for words.
"""

from alembic import op

revision = "0011"
down_revision = "0010"

# Digits of other scripts were taken for a day, and anything where a record told no time.
_DAYS = {
    "sqlite": """
UPDATE inspection SET examined_on = CASE
    WHEN created GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]*'
    THEN substr(created, 1, 10) ELSE '0000-00-00' END
WHERE examined_on NOT GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'
""",
    "postgresql": """
UPDATE inspection SET examined_on = CASE WHEN created ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}'
    THEN substr(created, 1, 10) ELSE '0000-00-00' END
WHERE examined_on !~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'
""",
}
_PLACES = """
CREATE VIEW places AS SELECT
    (99999999 - CAST(replace(examined_on, '-', '') AS INTEGER)) * 4294967296
        + 4294967295 - id AS place, text, inspection_id
FROM inspection JOIN wording ON inspection_id = id ORDER BY examined_on DESC, id DESC
"""


def upgrade() -> None:
    """Make the index of words anew, and mend the days that it goes by."""
    guarded = op.get_bind().dialect.name == "postgresql"
    if guarded:  # its triggers ask for a line in the log with each change of an inspection
        op.execute("ALTER TABLE inspection DISABLE TRIGGER USER")
    op.execute(_DAYS[op.get_bind().dialect.name])
    if guarded:
        op.execute("ALTER TABLE inspection ENABLE TRIGGER USER")
        op.execute("DROP INDEX ix_wording")
        op.execute(
            "ALTER TABLE wording ADD COLUMN vector tsvector"
            " GENERATED ALWAYS AS (to_tsvector('simple', text)) STORED"
        )
        op.execute("CREATE INDEX ix_wording ON wording USING gin (vector)")
        return
    op.execute("DROP TABLE words")
    op.execute(_PLACES)
    _make("places", "place", 16)


def downgrade() -> None:
    """Number it by inspections again; days that were none stay mended."""
    if op.get_bind().dialect.name == "sqlite":
        op.execute("DROP TABLE words")
        op.execute("DROP VIEW places")
        _make("wording", "inspection_id", 8)
    else:
        op.execute("ALTER TABLE wording DROP COLUMN vector")  # and its index
        op.execute("CREATE INDEX ix_wording ON wording USING gin (to_tsvector('simple', text))")


def _make(content: str, number: str, letters: int) -> None:
    lengths = " ".join(str(one) for one in range(1, letters + 1))
    op.execute(
        f"CREATE VIRTUAL TABLE words USING fts5(text, content='{content}', "
        f"content_rowid='{number}', tokenize='unicode61', prefix='{lengths}')"
    )
    op.execute("INSERT INTO words(words) VALUES ('rebuild')")
