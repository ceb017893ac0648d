"""The inspection record: versioned JSON with a published JSON Schema.

Holds part, procedure, process, photo, scale, indications, evaluation and disposition.
What is written is checked against the schema first; what is read is never half-read. A
signed record that is saved again becomes a new revision, chained to the signed one by hash.
"""

from ptmark.record.build import build_record, given_json
from ptmark.record.cautions import departs, process_cautions
from ptmark.record.entry import Entry, least_of
from ptmark.record.fields import FIELDS
from ptmark.record.figures import FIGURES
from ptmark.record.labels import path_label
from ptmark.record.model import PHOTO_MEMBERS, Record, completeness
from ptmark.record.originals import refuse_original
from ptmark.record.photo_files import find_photo, read_photo
from ptmark.record.revisions import changed_paths, follow, link_to, revision_hash, revisions
from ptmark.record.signing import Signer, fingerprint, key_of, sign_record
from ptmark.record.standards import STANDARDS, lacking
from ptmark.record.store import load_record, record_schema, record_text, save_record
from ptmark.record.together import evaluated_again, joined, scenes_of, worst_verdict
from ptmark.record.verify import verify_document, verify_file

__all__ = [
    "FIELDS",
    "FIGURES",
    "PHOTO_MEMBERS",
    "STANDARDS",
    "Entry",
    "Record",
    "Signer",
    "build_record",
    "changed_paths",
    "completeness",
    "departs",
    "evaluated_again",
    "find_photo",
    "fingerprint",
    "follow",
    "given_json",
    "joined",
    "key_of",
    "lacking",
    "least_of",
    "link_to",
    "load_record",
    "path_label",
    "process_cautions",
    "read_photo",
    "record_schema",
    "record_text",
    "refuse_original",
    "revision_hash",
    "revisions",
    "save_record",
    "scenes_of",
    "sign_record",
    "verify_document",
    "verify_file",
    "worst_verdict",
]
