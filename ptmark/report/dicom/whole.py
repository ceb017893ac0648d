"""A photo as a DICOM visible-light image with its measurements, as DICONDE has it.

ASTM E2339 (DICONDE) keeps the information model of DICOM and names its patient a component: the
same tags, other words. Group 0014 is DICONDE's own and stands in DICOM PS3.6. The text of
E2339 was not to hand: which of our fields goes under which tag, and how an indication's sizes
lie inside its sequence, is from memory of the tags' names. The image itself is a VL
Photographic Image (PS3.3, A.32.4) and is checked as such.
"""

import io
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import NAMESPACE_OID, uuid5

import numpy as np
import numpy.typing as npt

from ptmark.errors import ReportError
from ptmark.photo import Photo
from ptmark.record import FIELDS, Record, revision_hash
from ptmark.report.dicom.indications import indications
from ptmark.report.dicom.pixels import put_pixels
from ptmark.report.dicom.text import line, note, person
from ptmark.report.set_words import numbered
from ptmark.report.table import save
from ptmark.report.verdict_words import verdict_line
from ptmark.report.wording import (
    AID,
    criteria_line,
    decision_rule_words,
    disposition_words,
    scale_line,
)

if TYPE_CHECKING:
    from pydicom import Dataset

__all__ = ["dicom_bytes", "write_dicom"]


def write_dicom(path: Path, record: Record, photos: Iterable[Photo]) -> list[Path]:
    """Write each photo as a file, FILE, FILE-2 …, all of one study and series.

    Parameters
    ----------
    path : Path
    record : Record
    photos : iterable of Photo
        The record's, in its order; one at a time is held.

    Returns
    -------
    list of Path
        The files written.

    Raises
    ------
    ReportError
        If a photo is not the record's or cannot be put in, or a file cannot be written.
    """
    made = []
    for number, photo in enumerate(photos):
        target = numbered(path, number)
        save(target, dicom_bytes(record, number, photo.rgb, photo.info.path))
        made.append(target)
    return made


def dicom_bytes(
    record: Record, number: int, rgb: npt.NDArray[np.uint8], original: Path | None
) -> bytes:
    """One photo of the record, counted from 0, as a DICOM file: the same bytes each time.

    Parameters
    ----------
    record : Record
    number : int
    rgb : ndarray of shape (H, W, 3), uint8
        The upright photo in sRGB.
    original : Path or None
        Its file; an upright sRGB JPEG of the usual kind goes in byte for byte, anything else
        as the pixels of ``rgb``.

    Raises
    ------
    ReportError
        If the picture's size, or the file's content, is not that of the record.
    """
    from pydicom import Dataset, FileMetaDataset
    from pydicom.uid import UID, VLPhotographicImageStorage

    view = record.views()[number]
    size = (view.photo["width"], view.photo["height"])
    if (rgb.shape[1], rgb.shape[0]) != size:
        raise ReportError(
            f"the photo has {rgb.shape[1]} × {rgb.shape[0]} px, the record's {size[0]} × "
            f"{size[1]}",
            where=view.photo["file"],
            mend="give the photo that was measured",
        )
    made = Dataset()
    made.SpecificCharacterSet = "ISO_IR 192"
    made.SOPClassUID = VLPhotographicImageStorage
    made.SOPInstanceUID = _uid(f"{revision_hash(record.to_json())} {number}")
    _component(made, record)
    _study(made, record)
    _image(made, record, view, number)
    made.IndicationSequence = indications(view)
    made.file_meta = FileMetaDataset()
    syntax = put_pixels(made, view.photo, rgb, original)
    made.file_meta.TransferSyntaxUID = UID(syntax)
    out = io.BytesIO()
    made.save_as(out, enforce_file_format=True)
    return out.getvalue()


def _uid(name: str) -> str:
    """A UID from a name (PS3.5, B.2: a UUID as a decimal number under 2.25)."""
    return f"2.25.{uuid5(NAMESPACE_OID, f'ptmark {name}').int}"


def _component(made: "Dataset", record: Record) -> None:
    """What DICOM calls the patient: the part, and what it is made of."""
    told = record.fields.get
    number, serial = told("part_number", ""), told("serial_number", "")
    made.PatientName = person(told("part_name", "") or number)
    made.PatientID = line(" / ".join(one for one in (number, serial) if one) or record.id)
    made.PatientBirthDate = made.PatientSex = ""
    made.PatientComments = note(_listed(record, "drawing_number", "weld_number", "dimensions"))
    if (grade := note(told("material", ""), 1024)) != "":
        made.MaterialGrade = grade
    if record.thickness_mm is not None:
        made.MaterialThickness = f"{record.thickness_mm:.6g}"
    if (kept := _listed(record, "heat_number", "surface_condition")) != "":
        made.MaterialNotes = note(kept)
    if (stage := note(told("production_stage", ""), 1024)) != "":
        made.ComponentManufacturingProcedure = stage


def _study(made: "Dataset", record: Record) -> None:
    """The examination: when, by which procedure, by whom."""
    told = record.fields.get
    made.StudyInstanceUID, made.SeriesInstanceUID = (
        _uid(record.id),
        _uid(f"{record.id} photos"),
    )
    made.StudyDate, made.StudyTime = _date_time(record.created)
    made.StudyID = line(told("job_number", ""), 16)
    made.AccessionNumber = made.ReferringPhysicianName = ""
    made.StudyDescription = "Penetrant inspection"
    made.Modality = "XC"  # PS3.3, C.7.3.1.1.1: a photographic camera
    made.SeriesNumber = 1
    made.Laterality = ""  # of no part that comes in pairs
    made.SeriesDescription = line(told("examined_area", "") or "Penetrant inspection")
    procedure = " ".join(
        one for one in (told("procedure", ""), told("procedure_revision", "")) if one
    )
    made.ProtocolName = line(procedure or "not given")
    made.OperatorsName = person(told("examiner", ""))
    conditions = _listed(record, "illuminance", "surface_temperature", "system_designation")
    if conditions:
        made.ActualEnvironmentalConditions = note(conditions, 1024)


def _image(made: "Dataset", record: Record, view: Record, number: int) -> None:
    made.Manufacturer = line(str((view.photo.get("camera") or {}).get("make") or ""))
    made.ManufacturerModelName = line(
        str((view.photo.get("camera") or {}).get("model") or "not known")
    )
    made.SoftwareVersions = line(record.software or "ptmark")
    made.InstanceNumber = number + 1
    made.PatientOrientation = ""
    made.ContentDate, made.ContentTime = made.StudyDate, made.StudyTime
    made.ImageType = ["ORIGINAL", "PRIMARY"]
    made.AcquisitionContextSequence = []
    made.BurnedInAnnotation = "NO"
    word, sentence = verdict_line(view)
    made.ImageComments = note(
        "\n".join(
            (
                f"Record {record.id}, revision {record.revision}, SHA-256 "
                f"{revision_hash(record.to_json())}",
                f"Photo {view.photo['file']}, SHA-256 {view.photo['sha256']}",
                f"Scale: {scale_line(view)}",
                f"Verdict: {word}. {sentence}",
                f"Criteria: {criteria_line(view)}",
                f"Decision rule: {decision_rule_words(view)}",
                f"Disposition: {disposition_words(record)}",
                AID[0],
            )
        )
    )


def _listed(record: Record, *keys: str) -> str:
    """The fields that are filled in, with their labels."""
    labels = {one.key: one.label for one in FIELDS}
    pairs = ((labels[key], record.fields.get(key, "").strip()) for key in keys)
    return "; ".join(f"{label}: {said}" for label, said in pairs if said)


def _date_time(stamp: str) -> tuple[str, str]:
    """``2026-01-02T03:04:05Z`` as DICOM writes it."""
    digits = "".join(c for c in stamp if c.isdigit())
    return digits[:8], digits[8:14]
