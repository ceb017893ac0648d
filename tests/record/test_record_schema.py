import copy
import json
from dataclasses import replace

import jsonschema
import pytest
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey

from ptmark.errors import RecordError
from ptmark.record import (
    PHOTO_MEMBERS,
    Record,
    Signer,
    build_record,
    record_schema,
    record_text,
    sign_record,
)

HEX = "0123456789abcdef" * 4
NOW = "2026-01-02T03:04:05Z"
COMPARED = dict.fromkeys(("first", "first_u", "second", "second_u", "difference", "en"), 0.5)
REVIEW = {
    "reviewer": "second",
    "qualification": "",
    "time": NOW,
    "of": HEX,
    "outcome": "returned",
    "photo": HEX,
    "frame": "px",
    "scale": "rectangle",
    "pairs": [
        {
            "first": "A",
            "second": "B",
            "iou": 0.9,
            "length_mm": COMPARED,
            "width_mm": None,
            "shapes": ["linear", None],
            "verdicts": ["rejectable", None],
            "outline_px": [[0, 0], [1, 0], [1, 1]],
        }
    ],
    "only_first": ["B"],
    "only_second": [{"id": "C", "length_mm": None, "outline_px": [[0, 0]]}],
    "verdicts": ["rejectable", None],
    "remarks": [{"at_px": [3, 4], "text": "blurred here"}],
}


SIZE = {"photo": 1, "length_mm": 8.0, "length_u_mm": 0.1, "width_mm": 0.5}
SIZE |= {"width_u_mm": 0.1, "en": None}
EDGE = {
    "shift_px": 0.4,
    "noise_px": 0.1,
    "end_shift_px": 0.6,
    "operator_px": 0.3,
    "operator_free": 4,
}
EDGE |= {"traces_px": [88.4, 89.1, 88.0]}
DROPPED = {"id": "X", "outline_px": [[0, 0], [1, 0], [1, 1]], "edge": EDGE, "source": "hand"}
DROPPED |= {"confidence": 0.3, "kind": "", "note": "", "relevance": "", "reason": "a scratch"}
KNOWN = {"edge_u_mm": 0.2, "near_u": [0.02] * 6, "far_u": 0.01}
GIVEN = {"mode": "fluorescent", "weld_px": [[0, 1], [2, 3]], "weld_length_mm": 120.0}
GIVEN |= {"dropped": [DROPPED], "edges": [{"name": "rim", "points_px": [[0, 1], [2, 3]]}]}
CHOSEN = {"profile": "invented-1", "decision_rule": "simple", "sizes_from": {"A": HEX}}
CHOSEN |= {"carried": ["procedure"]}
OWN_LIMITS = {"Penetrant dwell": {"least": 15.0, "most": None}}
PROCESS = {"practice": "ISO 3452-1", "limits": OWN_LIMITS}
AGAIN = {"id": "A", "of_record": 1, "chosen": False, "sizes": [SIZE, {**SIZE, "photo": 2}]}


@pytest.fixture
def document(record):
    """A document in which every kind of member stands."""
    link = {"id": "r-0", "revision": 1, "sha256": HEX, "file": "r-0.json"}
    made = sign_record(
        replace(
            record,
            given=GIVEN,
            diameter_mm=60.0,
            edges_mm={"rim": [[[0.0, 1.0], [2.0, 3.0]]]},
            indications=[{**record.indications[0], **KNOWN}, *record.indications[1:]],
            chosen=CHOSEN,
            process=PROCESS,
            more_photos=[{name: getattr(record, name) for name in PHOTO_MEMBERS}],
            together={"verdict": "rejectable", "seen_again": [AGAIN], "cautions": ["x"]},
            reviews=[REVIEW],
            retest_of=link,
            previous=HEX,
            change={"by": "x", "why": "y", "at": NOW, "what": ["fields"]},
        ),
        Signer(role="examiner", name="first"),
        Ed25519PrivateKey.from_private_bytes(bytes(32)),
    )
    return json.loads(record_text(made))


def test_the_schema_itself_is_sound_draft_2020_12():
    schema = record_schema()
    assert schema["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    jsonschema.Draft202012Validator.check_schema(schema)  # jsonschema's own metaschema


def test_written_records_fit_the_schema(document, parts):
    validator = jsonschema.Draft202012Validator(record_schema())
    validator.validate(document)
    bare = build_record(
        **{
            **parts,
            **dict.fromkeys(("surface", "reference", "evaluation", "area_px", "haze")),
            "entries": [],
            "left_out": [],
            "fields": {},
            "decision": "",
        }
    )
    validator.validate(json.loads(json.dumps(bare.to_json())))


def objects(node, path=()):
    """Paths of every object whose keys the schema fixes."""
    free = {
        "fields",
        "camera",
        "sizes_from",
        "budget",
        "width_budget",
        "relevance",
        "shape",
        "parts",
        "edges_mm",
    }
    fixed = not (path and path[-1] in free) and path[-2:] != ("scale", "given")
    if isinstance(node, dict) and fixed:
        yield path
        for key, value in node.items():
            yield from objects(value, (*path, key))
    elif isinstance(node, list) and node and isinstance(node[0], dict):
        yield from objects(node[0], (*path, 0))


def at(document, path):
    for step in path:
        document = document[step]
    return document


OPTIONAL = {
    ("photo", name)
    for name in ("bytes", "format", "orientation", "color_profile", "focal_px", "camera")
} | {("evaluation", "findings", 0, name) for name in ("conformity", "sketch_mm")}
OPTIONAL |= {("more_photos", 0, *path) for path in OPTIONAL}
OPTIONAL |= {("history",), ("seal",), ("given",), ("chosen",), ("more_photos", 0, "given")}
OPTIONAL |= {("chosen", name) for name in CHOSEN}
OPTIONAL |= {("process",), *(("process", name) for name in PROCESS)}
OPTIONAL |= {("process", "limits", "Penetrant dwell", side) for side in ("least", "most")}
OPTIONAL |= {("process", "limits", "Penetrant dwell")}
OPTIONAL |= {
    (*at, name) for at in ((), ("more_photos", 0)) for name in ("diameter_mm", "edges_mm")
}
OPTIONAL |= {("given", "edges"), *(("indications", 0, name) for name in KNOWN)}
OPTIONAL |= {
    ("given", "dropped", 0, "edge", name)
    for name in ("end_shift_px", "operator_px", "operator_free", "traces_px")
}


def test_every_required_key_is_missed_and_every_odd_key_refused(document):
    tried = 0
    for path in objects(document):
        odd = copy.deepcopy(document)
        at(odd, path)["odd_key"] = 1
        with pytest.raises(RecordError, match="odd_key"):
            Record.from_json(odd)
        for key in at(document, path):
            less = copy.deepcopy(document)
            del at(less, path)[key]
            tried += 1
            if (*path, key) in OPTIONAL:
                Record.from_json(less)
            else:
                with pytest.raises(RecordError):
                    Record.from_json(less)
    assert tried > 200  # the walk went into photo, scale, indications, findings, reviews, …


MUTATIONS = [
    (("id",), ""),
    (("id",), "../up"),
    (("created",), "yesterday"),
    (("created",), "2026-01-02T03:04:05+02:00"),
    (("revision",), 0),
    (("revision",), 1.5),
    (("fields",), {"Part": "P"}),
    (("fields",), {"part_number": 5}),
    (("photo", "sha256"), "AB" * 32),
    (("photo", "width"), 0),
    (("photo", "width"), True),
    (("photo", "orientation"), 9),
    (("scale", "reference"), "guess"),
    (("scale", "mm_per_px"), 0),
    (("scale", "mm_per_px"), "0.05"),
    (("scale", "tilt_deg"), 91),
    (("scale", "homography"), [[1, 0, 0], [0, 1, 0]]),
    (("scale", "given"), []),
    (("conditions", "haze"), 1.2),
    (("weld_length_mm",), -1),
    (("area_px",), [[0, 0], [1, 1]]),
    (("indications", 0, "id"), "A B"),
    (("indications", 0, "length_mm"), -0.1),
    (("indications", 0, "length_u_mm"), "0.1"),
    (("indications", 0, "shape"), "oval"),
    (("indications", 0, "standing"), "dropped"),
    (("indications", 0, "source"), "guess"),
    (("indications", 0, "relevance"), "relevant"),
    (("indications", 0, "confidence"), 1.01),
    (("indications", 0, "budget"), {"edge": -0.1}),
    (("indications", 0, "ends_mm"), [[0, 0]]),
    (("indications", 0, "outline_px"), [[0, 0], [1, 0], [1]]),
    (("indications", 0, "outline_px"), [[0, 0], [1, 0], [1, "1"]]),
    (("indications", 0, "outline_px"), [[0, 0], [1, 0], [1, 1], [0, 1, 2]]),
    (("indications", 0, "outline_px"), [[0, 0], [1, 0], [1, 1], [0, True]]),
    (("indications", 0, "outline_px"), [[0, 0], [1, 0], [1, 1], [0, 2e6]]),
    (("indications", 0, "outline_px"), [[0, 0], [1, 0], [1, 1], [0, None]]),
    (("indications", 0, "outline_mm"), [[0, 0], [1, 0], [1, 1], 3]),
    (("left_out", 0, "reason"), None),
    (("evaluation", "verdict"), "accept"),
    (("evaluation", "decision_rule"), "lenient"),
    (("evaluation", "findings", 0, "verdict"), "maybe"),
    (("evaluation", "findings", 0, "u"), -1),
    (("evaluation", "findings", 0, "indications"), "A"),
    (("evaluation", "findings", 0, "conformity"), 2),
    (("indications", 0, "edge", "shift_px"), -1),
    (("given",), []),
    (("given", "mode"), "guess"),
    (("given", "weld_px"), [[0, 1]]),
    (("given", "weld_length_mm"), 0),
    (("given", "edges", 0, "name"), ""),
    (("given", "edges", 0, "points_px"), [[0, 1]]),
    (("diameter_mm",), 0),
    (("edges_mm",), {"rim": [[[0, 1]]]}),
    (("indications", 0, "edge_u_mm"), -1),
    (("indications", 0, "near_u"), [0.02]),
    (("indications", 0, "far_u"), "0"),
    (("given", "dropped", 0, "id"), "A B"),
    (("given", "dropped", 0, "edge", "end_shift_px"), "0"),
    (("given", "dropped", 0, "outline_px"), [[0, 0], [1, 1]]),
    (("chosen", "decision_rule"), "lenient"),
    (("chosen", "sizes_from"), {"A": "00"}),
    (("chosen", "carried"), ["Part number"]),
    (("process", "practice"), ""),
    (("process", "limits", "Penetrant dwell", "least"), "15"),
    (("process", "limits", "Penetrant dwell"), [15, None]),
    (("disposition", "decision"), "ship it"),
    (("cautions",), [1]),
    (("retest_of", "id"), "../up"),
    (("previous",), "00"),
    (("change", "what"), "fields"),
    (("signatures", 0, "role"), "owner"),
    (("signatures", 0, "key"), HEX.upper()),
    (("signatures", 0, "value"), HEX),
    (("signatures", 0, "schema"), "ptmark-signature/0"),
    (("reviews", 0, "outcome"), "waved through"),
    (("reviews", 0, "pairs", 0, "iou"), 1.5),
    (("reviews", 0, "pairs", 0, "length_mm"), {"first": 1}),
    (("reviews", 0, "verdicts"), ["rejectable"]),
    (("reviews", 0, "remarks", 0, "text"), ""),
    (("seal", "sha256"), ""),
]


@pytest.mark.parametrize(("path", "value"), MUTATIONS)
def test_a_field_that_does_not_fit_is_named(document, path, value):
    Record.from_json(document)
    at(document, path[:-1])[path[-1]] = value
    with pytest.raises(RecordError) as caught:
        Record.from_json(document, where="file.json")
    named = "".join(f"[{p}]" if isinstance(p, int) else f".{p}" for p in path).lstrip(".")
    assert caught.value.where.startswith(f"file.json, {named}")
    assert caught.value.mend


def test_cutting_long_outlines_for_speed_hides_no_fault(document):
    """Each point of a long outline is looked at, however late it stands."""
    schema = jsonschema.Draft202012Validator(record_schema())
    long = [[i * 0.5, 1.0] for i in range(5000)]
    document["indications"][0]["outline_px"] = long
    Record.from_json(document)
    for place, bad in ((4999, [0.0]), (2500, [0.0, "x"]), (3, [float("1e7"), 0.0])):
        document["indications"][0]["outline_px"] = [*long[:place], bad, *long[place + 1 :]]
        assert not schema.is_valid(document)
        with pytest.raises(RecordError, match=r".") as caught:
            Record.from_json(document)
        assert f"outline_px[{place}]" in caught.value.where


def test_a_speck_may_be_left_out_but_is_no_indication(document):
    document["left_out"][0]["outline_px"] = [[1.0, 2.0]]
    Record.from_json(document)
    document["indications"][0]["outline_px"] = [[1.0, 2.0], [2.0, 2.0]]
    with pytest.raises(RecordError, match="too short"):
        Record.from_json(document)


@pytest.mark.parametrize("odd", [None, 3, "text", [], {}, {"schema": "ptmark-record/9"}])
def test_what_is_no_record_of_this_version_is_refused(odd):
    with pytest.raises(RecordError, match=r"not an inspection record|unknown version"):
        Record.from_json(odd)
