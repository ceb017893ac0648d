"""The record's content: plain data that mirrors its JSON, checked by the published schema."""

from dataclasses import dataclass, field
from typing import Any

__all__ = ["FIELDS", "Field", "Record"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """One field of the report that a person fills in."""

    key: str
    label: str
    group: str
    hint: str = ""
    needed: bool = False


# Filled in by ptmark.record; keys are stable, they stand in the JSON.
FIELDS: tuple[Field, ...] = (
    Field(key="part_number", label="Part number", group="Part", needed=True),
    Field(key="serial_number", label="Serial number", group="Part"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """One inspection of one photo; every member is JSON-ready (see the schema)."""

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

    def to_json(self) -> dict[str, Any]:
        """The record as a JSON document, schema version included."""
        raise NotImplementedError

    @classmethod
    def from_json(cls, document: dict[str, Any]) -> "Record":
        """Rebuild a record; RecordError names the field that does not fit."""
        raise NotImplementedError
