"""Fill an archive with invented records through the archive's own rows, many in a transaction.

Ten indications a record, twenty records a part number; no photos but one row each, as photos
cost nothing to a search. The rows are those that taking the records in would write.
"""

import hashlib
import json
import random

from sqlalchemy import insert, text

from ptmark.archive import chain
from ptmark.archive.derive import derived, fold
from ptmark.archive.rows import table
from ptmark.archive.tails import tail_rows

PER_RECORD = 10


def record_document(number, parts):
    """The JSON document of an invented record; the same for the same number."""
    draw = random.Random(number)  # noqa: S311
    letters = [chr(65 + n) for n in range(PER_RECORD)]
    rows = [indication(letter, draw) for letter in letters]
    return {
        "schema": "ptmark-record/2",
        "id": f"record-{number:07d}",
        "created": "2026-01-01T00:00:00Z",
        "revision": 1,
        "software": "invented",
        "fields": {
            "part_number": f"P-{number % parts:05d}",
            "serial_number": f"S-{number // 2}",
            "examination_date": f"20{draw.randrange(10, 26)}-{draw.randrange(1, 13):02d}-15",
            "examiner": f"Examiner {draw.randrange(40)}",
            "procedure": f"PT-{draw.randrange(12)}",
            "remarks": f"invented batch {draw.randrange(1000)}",
        },
        "photo": {"file": "x.jpg", "sha256": hashlib.sha256(b"%d" % number).hexdigest()},
        "indications": rows,
        "evaluation": {
            "profile": "invented-1",
            "verdict": draw.choice(["acceptable", "rejectable"]),
            "findings": [],
        },
        "disposition": {"decision": draw.choice(["accept", "reject"]), "reason": ""},
        "retest_of": None,
        "signatures": [],
    }


def indication(letter, draw):
    """The members of an indication that rows are made of, mm."""
    length, x, y = draw.uniform(0.5, 9), draw.uniform(0, 200), draw.uniform(0, 100)
    return {
        "id": letter,
        "kind": draw.choice(["crack", "pore", "lack of fusion"]),
        "shape": "linear",
        "relevance": "",
        "note": "",
        "reason": "",
        "length_mm": length,
        "length_u_mm": 0.1,
        "width_mm": 0.3,
        "centre_mm": [x, y],
        "ends_mm": [[x - length / 2, y], [x + length / 2, y]],
    }


def fill(archive, count, parts, start=0):
    """Add records ``start`` to ``count``."""
    for first in range(start, count, 2000):
        with archive.writing() as conn:
            _batch(archive, conn, range(first, min(first + 2000, count)), parts)


def _batch(archive, conn, numbers, parts):
    many = {name: [] for name in ("part", "serial", "inspection", "document", "wording")}
    many |= {
        name: [] for name in ("revision", "photo", "inspection_photo", "indication", "audit")
    }
    many |= {"part_tail": [], "serial_tail": []}
    seq, previous = chain.head(conn)
    for number in numbers:
        document = record_document(number, parts)
        data = json.dumps(document).encode()
        rows = derived(document, data)
        key = {"inspection_id": number + 1}
        part, serial = number % parts + 1, number + 1
        if number < parts:
            many["part"].append({"id": part, "number": rows.part, "key": fold(rows.part)})
            many["part_tail"] += tail_rows(part, fold(rows.part))
        many["serial_tail"] += tail_rows(serial, fold(rows.serial))
        many["serial"].append(
            {"id": serial, "part_id": part, "number": rows.serial, "key": fold(rows.serial)}
        )
        own = {"id": number + 1, "part_id": part, "serial_id": serial}
        many["inspection"].append(rows.inspection | own)
        many["document"].append(key | {"data": _deflated(data)})
        many["wording"].append(key | {"text": rows.text})
        many["revision"] += [key | one for one in rows.revisions]
        many["indication"] += [key | one for one in rows.indications]
        many["inspection_photo"] += [key | one for one in rows.photos]
        many["photo"] += [{"sha256": rows.photos[0]["sha256"], "suffix": "jpg", "bytes": 1}]
        detail = json.dumps({"sha256": rows.inspection["sha256"]})
        name = rows.inspection["record_id"]
        line = chain.Line(seq + 1, "2026", "fill", "added", name, detail, previous, "")
        seq, previous = seq + 1, chain.link(line)
        whole = {one: getattr(line, one) for one in chain.Line.__slots__}
        many["audit"].append(whole | {"sha256": previous})
    for name, rows in many.items():
        if rows:
            conn.execute(insert(table(name)), rows)
    conn.execute(
        text(
            "INSERT INTO words(rowid, text) SELECT place, text FROM places "
            "WHERE inspection_id BETWEEN :a AND :b"
        ),
        {"a": numbers[0] + 1, "b": numbers[-1] + 1},
    )


def _deflated(data):
    import zlib

    return zlib.compress(data, 1)
