"""Parts, serials, inspections, documents, revisions, photos, indications, audit log."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None

_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
_KEY = sa.Text().with_variant(sa.Text(collation="C"), "postgresql")
_TEXT = sa.Text()
_HASH = sa.String(64)


def _columns(*names: str, kind: "sa.types.TypeEngine[str]" = _TEXT) -> "list[sa.Column[str]]":
    return [sa.Column(name, kind, nullable=False) for name in names]


def _owner() -> "sa.Column[int]":
    return sa.Column("inspection_id", _ID, sa.ForeignKey("inspection.id"), primary_key=True)


def _numbers(*names: str) -> "list[sa.Column[float]]":
    return [sa.Column(name, sa.Float(), nullable=True) for name in names]


def upgrade() -> None:
    """Make the tables."""
    _parts()
    op.create_table("document", _owner(), sa.Column("data", sa.LargeBinary(), nullable=False))
    op.create_table(
        "revision",
        _owner(),
        sa.Column("number", sa.Integer(), primary_key=True, autoincrement=False),
        *_columns("sha256", kind=_HASH),
        *_columns("at", "by", "why"),
        sa.Column("signatures", sa.Integer(), nullable=False),
    )
    op.create_table(
        "photo",
        sa.Column("sha256", _HASH, primary_key=True),
        *_columns("suffix", kind=sa.String(8)),
        sa.Column("bytes", sa.BigInteger(), nullable=False),
    )
    op.create_table(
        "inspection_photo",
        _owner(),
        sa.Column("place", sa.Integer(), primary_key=True, autoincrement=False),
        sa.Column("sha256", _HASH, sa.ForeignKey("photo.sha256"), nullable=False, index=True),
        *_columns("name"),
    )
    op.create_table(
        "indication",
        _owner(),
        sa.Column("letter", sa.String(32), primary_key=True),
        *_columns("kind"),
        sa.Column("kind_key", _KEY, nullable=False, index=True),
        *_columns("shape", "relevance", "verdict"),
        *_numbers("length_mm", "length_u_mm", "width_mm", "x_mm", "y_mm"),
        *_numbers("x1_mm", "y1_mm", "x2_mm", "y2_mm"),
    )
    op.create_index("ix_indication_length", "indication", ["length_mm"])
    op.create_table("wording", _owner(), *_columns("text"))
    op.create_table(
        "audit",
        sa.Column("seq", _ID, primary_key=True, autoincrement=False),
        *_columns("at", "who", "action"),
        sa.Column("subject", _TEXT, nullable=False, index=True),
        *_columns("detail"),
        *_columns("previous", "sha256", kind=_HASH),
    )
    _words()


def _parts() -> None:
    op.create_table(
        "part",
        sa.Column("id", _ID, primary_key=True),
        sa.Column("number", _TEXT, nullable=False, unique=True),
        sa.Column("key", _KEY, nullable=False, index=True),
    )
    op.create_table(
        "serial",
        sa.Column("id", _ID, primary_key=True),
        sa.Column("part_id", _ID, sa.ForeignKey("part.id"), nullable=False),
        *_columns("number"),
        sa.Column("key", _KEY, nullable=False, index=True),
    )
    op.create_index("ix_serial_part", "serial", ["part_id", "number"], unique=True)
    op.create_table(
        "inspection",
        sa.Column("id", _ID, primary_key=True),
        sa.Column("record_id", _TEXT, nullable=False, unique=True),
        sa.Column("part_id", _ID, sa.ForeignKey("part.id"), nullable=False),
        sa.Column("serial_id", _ID, sa.ForeignKey("serial.id"), nullable=False),
        *_columns("sha256", kind=_HASH),
        sa.Column("revision", sa.Integer(), nullable=False),
        sa.Column("signatures", sa.Integer(), nullable=False),
        *_columns("created"),
        *_columns("examined_on", kind=_KEY),
        *_columns("examiner"),
        *_columns("examiner_key", kind=_KEY),
        *_columns("procedure"),
        *_columns("procedure_key", "profile", kind=_KEY),
        *_columns("verdict", "disposition", "datum"),
        sa.Column("retest_of", _TEXT, nullable=True, index=True),
        sa.Column("indications", sa.Integer(), nullable=False),
        *_numbers("longest_mm"),
    )
    for name in ("part_id", "serial_id", "examiner_key", "procedure_key", "profile"):
        short = name.removesuffix("_id").removesuffix("_key")
        op.create_index(f"ix_inspection_{short}", "inspection", [name, "examined_on", "id"])
    op.create_index("ix_inspection_date", "inspection", ["examined_on", "id"])


def _words() -> None:
    if op.get_bind().dialect.name == "sqlite":
        op.execute(
            "CREATE VIRTUAL TABLE words USING fts5(text, content='wording', "
            "content_rowid='inspection_id', tokenize='unicode61')"
        )
    else:
        op.execute("CREATE INDEX ix_wording ON wording USING gin (to_tsvector('simple', text))")


def downgrade() -> None:
    """Take the tables away, and with them the index, never the photos."""
    if op.get_bind().dialect.name == "sqlite":
        op.execute("DROP TABLE words")
    tables = ("audit", "wording", "indication", "inspection_photo", "photo", "revision")
    for name in (*tables, "document", "inspection", "serial", "part"):
        op.drop_table(name)
