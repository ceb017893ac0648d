"""Pictures of reviewing and of the archive, for `screenshots`."""

import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

from ptmark.archive import Query, add_record, find, open_archive
from ptmark.inspection import Inspection
from ptmark.record import Record, Signer, key_of, load_record, save_record, sign_record
from ptmark.review import Remark, compare_records, reviewed
from ptmark.scale import CardReference
from ptmark.window.main_window import MainWindow

__all__ = ["pages", "records_for"]

EXAMINER = Signer(
    role="examiner", name="A. Example (invented)", qualification="level 2, no. 0 (invented)"
)
FIELDS = {
    "part_name": "Nozzle N2, second course (invented)",
    "part_number": "DEMO-7",
    "serial_number": "0012",
    "weld_number": "W2",
    "procedure": "PT-1 (invented)",
    "examiner": EXAMINER.name,
    "examination_date": "2026-03-02",
}


def records_for(folder: Path, photo: Path) -> Path:
    """A folder of records of one photo, in the states that a review can find them in."""
    made = folder / "records"
    made.mkdir(parents=True)
    shutil.copy(photo, made)
    work = Inspection()
    work.open(made / photo.name)
    work.set_reference(CardReference())
    work.set_suggestions(work.look())
    work.change("fill in", profile="iso-23277-2", fields=FIELDS)
    longest = max(work.state.marked, key=lambda one: len(one.outline_px))
    outline = longest.outline_px.copy()
    outline[outline[:, 0].argmax()] += (14.0, 2.0)  # so that the reviewer finds a difference
    work.edit(longest.id, outline_px=outline)
    record = work.to_record()
    for number, name in enumerate(("to review", "returned", "not signed")):
        fields = {**FIELDS, "serial_number": f"{12 + number:04}"}
        one = replace(record, id=f"r-{number}", fields=fields)
        path = made / f"weld W2 {name}.json"
        save_record(path, one if name == "not signed" else signed(one))
        if name == "returned":
            enter_return(path)
    (made / "weld W2 cut short.json").write_text('{"schema": "ptmark-record/3", ')
    return made


def signed(record: Record) -> Record:
    """The record signed by its examiner."""
    return sign_record(record, EXAMINER, key_of(EXAMINER.name))


def enter_return(path: Path) -> None:
    """The record returned by a reviewer, with two remarks."""
    record = load_record(path)
    x, y = record.indications[0]["outline_px"][0]
    remarks = (
        Remark(text="Trace the right end again: dye runs on beyond the outline.", at_px=(x, y)),
        Remark(text="The dwell time is not stated."),
    )
    made = reviewed(
        record,
        compare_records(record, replace(record, id="second")),
        reviewer="B. Example (invented)",
        outcome="returned",
        remarks=remarks,
    )
    save_record(path, made, by="B. Example (invented)", why="review: returned")


def pages(window: MainWindow, records: Path) -> Iterator[str]:
    """Lead the window through reviewing and the archive; a name where a picture is due."""
    review, session = window.review, window.session
    review.open(records)
    yield "worklist"
    review.open(records / "weld W2 returned.json")
    yield "review-returned"
    review.open(records / "weld W2 to review.json")
    yield "review-waiting"
    review.begin()
    yield "review-blind-photo"
    session.go("Record")
    yield "review-blind"
    x, y = session.state.marked[0].outline_px[0] if session.state else (0.0, 0.0)
    review.case.remark("Dye runs on beyond the right end.", (float(x), float(y)))
    review.case.finish()
    yield "review-beside"
    review.page.ensureWidgetVisible(review.page.outcomes["new photo asked"])
    yield "review-decision"
    review.page.outcomes["signed"].click()
    yield "review-not-named"
    review.page.who.name.setText("B. Example (invented)")
    review.page.outcomes["signed"].click()
    yield "review-decided"
    review.leave()
    archive = open_archive()
    for path in sorted(records.glob("weld W2 [tnr]*.json")):
        add_record(archive, path)
    hit = find(archive, Query(part="DEMO-7")).hits[0]
    archive.close()
    window.archive.open()
    yield "archive-found"
    window.archive.show_record(hit)
    yield "archive-record"
    window.archive.show_history("DEMO-7", "")
    yield "archive-history"
