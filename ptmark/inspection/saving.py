"""Saving an inspection's record so that it can be gone on with."""

from pathlib import Path

from ptmark.criteria.rule_files import note_place
from ptmark.inspection.whole import Inspection
from ptmark.record import Record, save_record

__all__ = ["save_inspection"]


def save_inspection(
    path: Path, inspection: Inspection, record: Record, *, by: str = "", why: str = ""
) -> Record:
    """Write what the inspection gave as its record, as `save_record` does.

    The record names its rules without their place, so where their file lies is noted beside it.
    """
    profile = inspection.profile
    saved = save_record(path, record, by=by, why=why)
    if saved.evaluation is not None and profile is not None:
        note_place(inspection.state.profile, profile)
    return saved
