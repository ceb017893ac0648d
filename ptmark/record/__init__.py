"""The inspection record: versioned JSON with a published JSON Schema.

Holds part, procedure, process, photo, scale, indications, evaluation and disposition.
What is written is checked against the schema first; what is read is never half-read.
"""

from ptmark.record.build import Entry, build_record
from ptmark.record.fields import FIELDS, Field
from ptmark.record.model import Record, completeness
from ptmark.record.store import load_record, record_schema, record_text, save_record

__all__ = [
    "FIELDS",
    "Entry",
    "Field",
    "Record",
    "build_record",
    "completeness",
    "load_record",
    "record_schema",
    "record_text",
    "save_record",
]
