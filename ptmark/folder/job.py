"""What is done with one photo of many, and what comes of it."""

import hashlib
import json
import os
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path

import cv2
import numpy as np

from ptmark import __version__
from ptmark.criteria import load_profile
from ptmark.dye import look_ahead
from ptmark.errors import PtmarkError
from ptmark.folder.table import COLUMNS, coded, rows_of, rows_of_failed
from ptmark.inspection import Inspection
from ptmark.inspection.area import check_area
from ptmark.inspection.state import EdgeLine
from ptmark.photo import Photo, open_photo, profiles_folder
from ptmark.process import PRACTICE, by_practice
from ptmark.scale import CardReference, Reference, reference_to_json

__all__ = [
    "Asked",
    "Outcome",
    "content_key",
    "failed",
    "inspected",
    "look_over",
    "measured",
    "take_asked",
]

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """How every photo is to be measured; lengths in mm, points in px of the upright photo.

    ``lens`` says whether a profile of the camera's lens is used where one fits.
    """

    reference: Reference = field(default_factory=CardReference)
    area_px: tuple[Point, ...] | None = None
    weld_px: tuple[Point, Point] | None = None
    profile: str = ""
    decision_rule: str = "guarded"
    fields: dict[str, str] = field(default_factory=dict)
    practice: str = PRACTICE
    relief_mm: float | None = None
    weld_length_mm: float | None = None
    thickness_mm: float | None = None
    diameter_mm: float | None = None
    edges_px: tuple[EdgeLine, ...] = ()
    mode: str = ""
    lens: bool = True

    def key(self) -> str:
        """Short digest: the same only where the same photos give the same results."""
        told = {
            "version": __version__,
            "reference": reference_to_json(self.reference),
            "places": [self.area_px, self.weld_px],
            "profile": load_profile(self.profile).checksum if self.profile else "",
            "rest": [
                self.decision_rule,
                sorted(self.fields.items()),
                self.practice,
                self.relief_mm,
                self.mode,
                self.lens,
            ],
            "sizes": [self.weld_length_mm, self.thickness_mm, self.diameter_mm],
            "edges": self.edges_px,
            "cameras": _camera_profiles() if self.lens else [],
            "columns": COLUMNS,
        }
        return hashlib.sha256(json.dumps(told, sort_keys=True).encode()).hexdigest()[:16]

    def opened(self, path: Path) -> Photo:
        """A photo as it is to be measured; PhotoError where it cannot be opened."""
        photo = open_photo(path)
        return photo if self.lens else photo.with_lens(None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What came of one photo.

    ``key`` is its SHA-256, or a word and its name's where its content is not known. ``line`` is
    its JSON line and ``table`` its rows of CSV, ready to write; ``error`` is "" where it was
    measured.
    """

    path: Path
    key: str
    line: bytes
    table: bytes
    error: str = ""

    @property
    def unread(self) -> bool:
        """Whether it is not known what the file holds."""
        return len(self.key) != 64


def inspected(path: Path, asked: Asked) -> Inspection:
    """Open a photo, set its scale, look and suggest.

    Raises
    ------
    PtmarkError
        If the profile, the photo or the reference is refused.
    """
    inspection = take_asked(Inspection(), asked)
    look_over(inspection, asked.opened(path), asked)
    return inspection


def look_over(inspection: Inspection, photo: Photo, asked: Asked) -> None:
    """Set the photo and its scale, look and suggest.

    Where OpenCV may use more than one thread, the coarse look is taken while the reference is
    found, which leaves most of the other processor idle.

    Raises
    ------
    PtmarkError
        If the reference or the area is refused.
    """
    area = None if asked.area_px is None else np.array(asked.area_px, float)
    if asked.area_px is not None:
        check_area(asked.area_px, photo.info)
    inspection.set_photo(photo)
    with ThreadPoolExecutor(1) as beside:
        alone = cv2.getNumThreads() == 1
        look = None if alone else beside.submit(look_ahead, photo, area, asked.mode)
        inspection.set_reference(asked.reference)
        if asked.area_px is not None:
            inspection.change("mark the examined area", area_px=asked.area_px)
        if asked.weld_px is not None:
            inspection.change("mark the weld", weld_px=asked.weld_px)
        if asked.edges_px:
            inspection.change("mark the edges", edges_px=asked.edges_px)
        ahead = None if look is None else look.result()
    inspection.set_suggestions(inspection.look(ahead))


def take_asked(inspection: Inspection, asked: Asked) -> Inspection:
    """Give an inspection what holds for every photo; a profile is refused before the work."""
    inspection.change(
        "take what was asked for",
        profile=asked.profile,
        decision_rule=asked.decision_rule,
        fields=dict(asked.fields),
        process=by_practice(None, asked.practice),
        relief_mm=asked.relief_mm,
        weld_length_mm=asked.weld_length_mm,
        thickness_mm=asked.thickness_mm,
        diameter_mm=asked.diameter_mm,
        mode=asked.mode,
    )
    _ = inspection.profile  # loads it
    return inspection


def measured(path: Path, asked: Asked) -> Outcome:
    """Measure one photo; whatever goes wrong becomes its error."""
    before = _stamp(path)
    try:
        record = inspected(path, asked).to_record()
        line = json.dumps(record.to_json(), ensure_ascii=False, allow_nan=False)
    except PtmarkError as exc:
        if _stamp(path) not in {before, ""}:
            return _changed(path, before)
        return failed(path, exc.what, exc.mend)
    except MemoryError:
        return failed(path, "it needs more memory than there is", "run fewer jobs at once")
    except Exception as exc:  # noqa: BLE001 - a fault of ours must not stop the other photos
        return failed(path, f"a fault in ptmark: {type(exc).__name__}: {exc}")
    return Outcome(
        path=path,
        key=record.photo["sha256"],
        line=coded(line + "\n"),
        table=rows_of(record),
    )


def failed(path: Path, what: str, mend: str = "") -> Outcome:
    """The outcome of a photo that could not be measured."""
    return _failed(path, content_key(path), what, mend)


def _changed(path: Path, stamp: str) -> Outcome:
    """Of a photo that was still being written: what failed is not the content it has now."""
    what = "the file changed while it was read"
    mend = "run the same command again once its copy has ended"
    return _failed(path, f"changed {_named(path)} {stamp}", what, mend)


def _failed(path: Path, key: str, what: str, mend: str) -> Outcome:
    sha256 = key if len(key) == 64 else ""
    document = {
        "photo": {"file": path.name, "sha256": sha256},
        "error": {"what": what, "mend": mend},
    }
    return Outcome(
        path=path,
        key=key,
        line=coded(json.dumps(document, ensure_ascii=False) + "\n"),
        table=rows_of_failed(path.name, sha256, what),
        error=what,
    )


def content_key(path: Path) -> str:
    """SHA-256 of a file's content; "unreadable" and its name's where it cannot be read."""
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError:
        return f"unreadable {_named(path)}"


def _named(path: Path) -> str:
    """A file's name as letters and digits: it may hold line breaks, and bytes that are no text.

    Examples
    --------
    >>> _named(Path("a.jpg"))
    '509b0d4641a7c3ba'
    """
    return hashlib.sha256(os.fsencode(path.name)).hexdigest()[:16]


def _stamp(path: Path) -> str:
    """Size and time of a file, which change while it is written; "" where it is not there."""
    try:
        stat = path.stat()
    except OSError:
        return ""
    return f"{stat.st_size} {stat.st_mtime_ns}"


def _camera_profiles() -> list[str]:
    """SHA-256 of each camera's profile: what is in one changes lengths."""
    files = sorted(profiles_folder().glob("*.json"))
    return [content_key(path) for path in files]
