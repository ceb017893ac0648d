"""The record's content: plain data that mirrors its JSON, checked by the published schema."""

from dataclasses import dataclass, field, fields, replace
from typing import Any

from ptmark.record.check import SCHEMA_NAME, check_document
from ptmark.record.fields import FIELDS, Field
from ptmark.record.migrate import migrated

__all__ = ["PHOTO_MEMBERS", "Record", "completeness"]

# What each photo of a set has of its own.
PHOTO_MEMBERS = (
    "photo",
    "scale",
    "conditions",
    "area_px",
    "indications",
    "left_out",
    "evaluation",
    "cautions",
    "weld_length_mm",
    "thickness_mm",
    "weld_direction_deg",
    "diameter_mm",
    "edges_mm",
    "given",
)
_SINCE_3 = ("more_photos", "together", "diameter_mm", "edges_mm", "given", "chosen", "process")
# Left out where they hold nothing, so that what was signed without them keeps its hash.
_MAY_LACK = ("diameter_mm", "edges_mm", "given", "chosen", "process")


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """One inspection, of one photo or of several; every member is JSON-ready.

    ``photo`` to ``evaluation`` stand for the first photo, ``more_photos`` for the others;
    `views` gives each photo as a record of one.

    Members and units are those of ``resources/schema/record-3.schema.json``: points in px of
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
    diameter_mm: float | None = None
    edges_mm: dict[str, list[list[list[float]]]] | None = None
    given: dict[str, Any] | None = None
    chosen: dict[str, Any] | None = None
    process: dict[str, Any] | None = None
    more_photos: list[dict[str, Any]] = field(default_factory=list)
    together: dict[str, Any] | None = None
    retest_of: dict[str, Any] | None = None
    reviews: list[dict[str, Any]] = field(default_factory=list)
    previous: str | None = None
    change: dict[str, Any] | None = None
    signatures: list[dict[str, Any]] = field(default_factory=list)
    history: list[dict[str, Any]] = field(default_factory=list)  # oldest first

    schema: str = SCHEMA_NAME  # the version it is written in

    def rows(self) -> dict[tuple[int, str], dict[str, Any]]:
        """Each photo's indications, by the photo's number, from 1, and letter."""
        return {
            (number, one["id"]): one
            for number, view in enumerate(self.views(), 1)
            for one in view.indications
        }

    def views(self) -> "list[Record]":
        """Each photo as a record of one, in the set's order; ``[self]`` where there is one."""
        if not self.more_photos:
            return [self]
        alone: dict[str, Any] = {"more_photos": [], "together": None}
        others: list[dict[str, Any]] = [
            {name: one.get(name) for name in PHOTO_MEMBERS} for one in self.more_photos
        ]
        return [replace(self, **own, **alone) for own in ({}, *others)]

    @property
    def verdict(self) -> str | None:
        """The verdict, of a set the worst of its photos; None where there is none."""
        told = self.together if self.more_photos else self.evaluation
        return None if told is None else told["verdict"]

    def to_json(self) -> dict[str, Any]:
        """The record as a JSON document, schema version first, keys in one fixed order.

        What was read in version 2 is written in it again, so that its hash and signatures
        hold, until it holds what only a later version can say.
        """
        head = ("schema", "id", "created", "revision", "software")
        rest = (one.name for one in fields(self) if one.name not in head)
        document = {
            name: one
            for name in (*head, *rest)
            if (one := getattr(self, name)) is not None or name not in _MAY_LACK
        }
        if self.schema == "ptmark-record/2" and not any(document.get(n) for n in _SINCE_3):
            return {name: one for name, one in document.items() if name not in _SINCE_3}
        return {**document, "schema": SCHEMA_NAME}

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
        return cls(**{name: one for name, one in now.items() if name != "seal"})


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
