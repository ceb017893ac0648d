"""The inspection record: versioned JSON with a published JSON Schema.

Holds part, procedure, process, photo, scale, indications, evaluation and disposition.
What is written is checked against the schema first; what is read is never half-read.
"""

from ptmark.record.model import FIELDS, Field, Record
from ptmark.record.store import load_record, record_schema, save_record

__all__ = ["FIELDS", "Field", "Record", "load_record", "record_schema", "save_record"]
