"""Tables of the archive: part numbers, serials, inspections, revisions, photos, indications.

What counts is `Document` (a record's file, byte for byte) and the photo store; every other
column of part, serial, their tails, inspection, revision, indication and wording is worked out
from them and can be worked out again. Keys are folded texts for searching; texts stand as they
were typed. Lengths in mm; dates and times ISO 8601.
"""

from sqlalchemy import BigInteger, ForeignKey, Index, Integer, LargeBinary, String, Text, text
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

__all__ = [
    "TAIL_LETTERS",
    "AuditEntry",
    "Base",
    "Document",
    "Hold",
    "Indication",
    "Inspection",
    "InspectionPhoto",
    "Part",
    "PartTail",
    "Photo",
    "Placement",
    "Revision",
    "Rule",
    "SavedSearch",
    "Serial",
    "SerialTail",
    "Wording",
]

TAIL_LETTERS = 16  # an end begins with so many at most; what is asked beyond them is compared
_ID = BigInteger().with_variant(Integer, "sqlite")  # SQLite numbers only INTEGER keys by itself
_IS_LEAST = text("least = 1")
_KEY = Text().with_variant(Text(collation="C"), "postgresql")  # prefixes are ranges of bytes


def _of_inspection() -> Mapped[int]:
    return mapped_column(_ID, ForeignKey("inspection.id"), primary_key=True)


class Base(DeclarativeBase):
    """Root of the tables."""


class Part(Base):
    """A part number as it is spelled in records."""

    __tablename__ = "part"
    id: Mapped[int] = mapped_column(_ID, primary_key=True)
    number: Mapped[str] = mapped_column(Text, unique=True)
    key: Mapped[str] = mapped_column(_KEY, index=True)


class Serial(Base):
    """A serial number of a part; empty where the record gives none."""

    __tablename__ = "serial"
    __table_args__ = (Index("ix_serial_part", "part_id", "number", unique=True),)
    id: Mapped[int] = mapped_column(_ID, primary_key=True)
    part_id: Mapped[int] = mapped_column(ForeignKey("part.id"))
    number: Mapped[str] = mapped_column(Text)
    key: Mapped[str] = mapped_column(_KEY, index=True)


class _Tail:
    """The end of a key from ``place`` on; the table is its own index."""

    __table_args__ = {"sqlite_with_rowid": False}  # noqa: RUF012 - as SQLAlchemy takes it
    tail: Mapped[str] = mapped_column(_KEY, primary_key=True)


class PartTail(_Tail, Base):
    """Ends of part numbers."""

    __tablename__ = "part_tail"
    owner: Mapped[int] = mapped_column(_ID, ForeignKey("part.id"), primary_key=True)
    place: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)


class SerialTail(_Tail, Base):
    """Ends of serial numbers."""

    __tablename__ = "serial_tail"
    owner: Mapped[int] = mapped_column(_ID, ForeignKey("serial.id"), primary_key=True)
    place: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)


class Inspection(Base):
    """One record in its newest revision; ``sha256`` is that of the file's bytes.

    ``longest_least`` is 1 where one of its indications may be longer than the longest, else 0.
    """

    __tablename__ = "inspection"
    __table_args__ = (
        Index("ix_inspection_part", "part_id", "examined_on", "id"),
        Index("ix_inspection_serial", "serial_id", "examined_on", "id"),
        Index("ix_inspection_date", "examined_on", "id"),
        Index("ix_inspection_examiner", "examiner_key", "examined_on", "id"),
        Index("ix_inspection_procedure", "procedure_key", "examined_on", "id"),
        Index("ix_inspection_profile", "profile", "examined_on", "id"),
        Index("ix_inspection_verdict", "verdict", "examined_on", "id"),
        Index("ix_inspection_disposition", "disposition", "examined_on", "id"),
        Index("ix_inspection_decided", "verdict", "disposition", "examined_on", "id"),
    )
    id: Mapped[int] = mapped_column(_ID, primary_key=True)
    record_id: Mapped[str] = mapped_column(Text, unique=True)
    part_id: Mapped[int] = mapped_column(ForeignKey("part.id"))
    serial_id: Mapped[int] = mapped_column(ForeignKey("serial.id"))
    sha256: Mapped[str] = mapped_column(String(64))
    revision: Mapped[int]
    signatures: Mapped[int]
    created: Mapped[str] = mapped_column(Text)
    examined_on: Mapped[str] = mapped_column(_KEY)
    examiner: Mapped[str] = mapped_column(Text)
    examiner_key: Mapped[str] = mapped_column(_KEY)
    procedure: Mapped[str] = mapped_column(Text)
    procedure_key: Mapped[str] = mapped_column(_KEY)
    profile: Mapped[str] = mapped_column(_KEY)
    verdict: Mapped[str] = mapped_column(Text)
    disposition: Mapped[str] = mapped_column(Text)
    datum: Mapped[str] = mapped_column(Text)
    retest_of: Mapped[str | None] = mapped_column(Text, index=True)
    indications: Mapped[int]
    longest_mm: Mapped[float | None]
    longest_u_mm: Mapped[float | None]
    longest_least: Mapped[int]


class Document(Base):
    """A record's file as it was given, deflated (zlib)."""

    __tablename__ = "document"
    inspection_id: Mapped[int] = _of_inspection()
    data: Mapped[bytes] = mapped_column(LargeBinary)


class Revision(Base):
    """Every revision of a record; ``sha256`` is the hash that the next one holds."""

    __tablename__ = "revision"
    inspection_id: Mapped[int] = _of_inspection()
    number: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    sha256: Mapped[str] = mapped_column(String(64))
    at: Mapped[str] = mapped_column(Text)
    by: Mapped[str] = mapped_column(Text)
    why: Mapped[str] = mapped_column(Text)
    signatures: Mapped[int]


class Photo(Base):
    """A photo in the store, by the SHA-256 of its bytes."""

    __tablename__ = "photo"
    sha256: Mapped[str] = mapped_column(String(64), primary_key=True)
    suffix: Mapped[str] = mapped_column(String(8))
    bytes: Mapped[int] = mapped_column(BigInteger)


class InspectionPhoto(Base):
    """A photo that a revision of the record rests on; ``place`` 0 is its own."""

    __tablename__ = "inspection_photo"
    inspection_id: Mapped[int] = _of_inspection()
    place: Mapped[int] = mapped_column(primary_key=True, autoincrement=False)
    sha256: Mapped[str] = mapped_column(ForeignKey("photo.sha256"), index=True)
    name: Mapped[str] = mapped_column(Text)


class Indication(Base):
    """One indication of the newest revision; centre and ends in mm on the surface.

    ``least`` is 1 where its sizes are the least that they can be (`record.least_of`), else 0.
    """

    __tablename__ = "indication"
    __table_args__ = (
        Index("ix_indication_kind", "kind_key", "length_mm", "shape", "inspection_id"),
        Index("ix_indication_length", "length_mm", "shape", "inspection_id"),
        Index("ix_indication_shape", "shape", "length_mm", "inspection_id"),
        Index("ix_indication_both", "kind_key", "shape", "length_mm", "inspection_id"),
        Index("ix_indication_own", "inspection_id", "kind_key", "shape", "length_mm", "least"),
        Index(
            "ix_indication_least",
            *("kind_key", "shape", "length_mm", "inspection_id", "least"),
            sqlite_where=_IS_LEAST,
            postgresql_where=_IS_LEAST,
        ),
    )
    inspection_id: Mapped[int] = _of_inspection()
    letter: Mapped[str] = mapped_column(String(32), primary_key=True)
    kind: Mapped[str] = mapped_column(Text)
    kind_key: Mapped[str] = mapped_column(_KEY)
    shape: Mapped[str] = mapped_column(Text)
    relevance: Mapped[str] = mapped_column(Text)
    verdict: Mapped[str] = mapped_column(Text)
    length_mm: Mapped[float | None]
    length_u_mm: Mapped[float | None]
    width_mm: Mapped[float | None]
    x_mm: Mapped[float | None]
    y_mm: Mapped[float | None]
    x1_mm: Mapped[float | None]
    y1_mm: Mapped[float | None]
    x2_mm: Mapped[float | None]
    y2_mm: Mapped[float | None]
    least: Mapped[int]


class Wording(Base):
    """All that a person wrote into a record, for searching."""

    __tablename__ = "wording"
    inspection_id: Mapped[int] = _of_inspection()
    text: Mapped[str] = mapped_column(Text)


class AuditEntry(Base):
    """One line of the audit log, chained by hash."""

    __tablename__ = "audit"
    seq: Mapped[int] = mapped_column(_ID, primary_key=True, autoincrement=False)
    at: Mapped[str] = mapped_column(Text)
    who: Mapped[str] = mapped_column(Text)
    action: Mapped[str] = mapped_column(Text)
    subject: Mapped[str] = mapped_column(Text, index=True)
    detail: Mapped[str] = mapped_column(Text)
    previous: Mapped[str] = mapped_column(String(64))
    sha256: Mapped[str] = mapped_column(String(64))


class SavedSearch(Base):
    """A query by its name, as JSON."""

    __tablename__ = "saved_search"
    name: Mapped[str] = mapped_column(Text, primary_key=True)
    query: Mapped[str] = mapped_column(Text)


class Rule(Base):
    """How long records that fit a query are kept, years from the examination."""

    __tablename__ = "rule"
    name: Mapped[str] = mapped_column(Text, primary_key=True)
    query: Mapped[str] = mapped_column(Text)
    years: Mapped[float]
    reason: Mapped[str] = mapped_column(Text)


class Hold(Base):
    """Records that fit a query are not deleted as long as the hold stands."""

    __tablename__ = "hold"
    name: Mapped[str] = mapped_column(Text, primary_key=True)
    query: Mapped[str] = mapped_column(Text)
    reason: Mapped[str] = mapped_column(Text)


class Placement(Base):
    """From a record's surface to the part's frame, mm: X = a x + b y + c, Y = d x + e y + f."""

    __tablename__ = "placement"
    record_id: Mapped[str] = mapped_column(Text, primary_key=True)
    a: Mapped[float]
    b: Mapped[float]
    c: Mapped[float]
    d: Mapped[float]
    e: Mapped[float]
    f: Mapped[float]
    why: Mapped[str] = mapped_column(Text)
