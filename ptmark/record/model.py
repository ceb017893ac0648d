"""The record's content: plain data that mirrors its JSON, checked by the published schema."""

from dataclasses import dataclass, field, fields
from typing import Any

from ptmark.record.check import SCHEMA_NAME, check_document
from ptmark.record.fields import FIELDS, Field
from ptmark.record.migrate import migrated

__all__ = ["FIELDS", "Field", "Record", "completeness"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """One inspection of one photo; every member is JSON-ready.

    Members and units are those of ``resources/schema/record-2.schema.json``: points in px of
    the upright photo (x right, y down, (0, 0) the centre of the top-left pixel) or mm on the
    surface; lengths in mm; ``…_u…`` expanded uncertainties, k = 2; budgets hold standard
    uncertainties. What is not known is None.
    """

    id: str
    created: str
    fields: dict[str, str]
    photo: dict[str, Any]
    scale: dict[str, Any]
    conditions: dict[str, Any]
    area_px: list[list[float]] | None
    indications: list[dict[str, Any]]
    left_out: list[dict[str, Any]]
    evaluation: dict[str, Any] | None
    disposition: dict[str, str]  # {"decision": "", "reason": ""}
    cautions: list[str] = field(default_factory=list)
    revision: int = 1
    software: str = ""
    weld_length_mm: float | None = None
    thickness_mm: float | None = None
    weld_direction_deg: float | None = None
    retest_of: dict[str, Any] | None = None
    reviews: list[dict[str, Any]] = field(default_factory=list)
    previous: str | None = None
    change: dict[str, Any] | None = None
    signatures: list[dict[str, Any]] = field(default_factory=list)
    history: list[dict[str, Any]] = field(default_factory=list)  # oldest first

    def to_json(self) -> dict[str, Any]:
        """The record as a JSON document, schema version first, keys in one fixed order."""
        head = ("id", "created", "revision", "software")
        rest = (one.name for one in fields(self) if one.name not in head)
        return {
            "schema": SCHEMA_NAME,
            **{name: getattr(self, name) for name in (*head, *rest)},
        }

    @classmethod
    def from_json(cls, document: dict[str, Any], *, where: str = "record") -> "Record":
        """Rebuild a record, of whatever version; whether its seal holds is for `verify_file`.

        Raises
        ------
        RecordError
            If the document does not fit the schema; it names the field that does not fit.
        """
        check_document(document, where=where)
        for number, earlier in enumerate(document.get("history", ()), 1):
            check_document(earlier, where=f"{where}, history revision {number}")
        now = migrated(document)
        return cls(**{k: v for k, v in now.items() if k not in {"schema", "seal"}})


def completeness(record: Record) -> list[Field]:
    """The needed fields that are still empty, in the report's order.

    Examples
    --------
    >>> bare = dict(photo={}, scale={}, conditions={}, area_px=None, indications=[])
    >>> bare |= dict(left_out=[], evaluation=None, disposition={}, id="1", created="")
    >>> [f.key for f in completeness(Record(fields={"part_number": "P-1"}, **bare))][:2]
    ['examined_area', 'procedure']
    """
    return [one for one in FIELDS if one.needed and not record.fields.get(one.key, "").strip()]
