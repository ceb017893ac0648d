"""Plain records of an invented part, as two people might have measured it."""

from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from ptmark.record import Signer, key_of, load_record, sign_record

OLD = Path(__file__).parents[1] / "record" / "written" / "record-1.json"
SCALE = 0.05  # mm per px


def indication(base, name, centre, size, length=None, shape="rounded", u=0.1):
    """A rectangle of ``size`` (px) round ``centre`` (px)."""
    (x, y), (w, h) = centre, (size[0] / 2, size[1] / 2)
    px = [[x - w, y - h], [x + w, y - h], [x + w, y + h], [x - w, y + h]]
    value = size[0] * SCALE if length is None else length
    return {
        **base,
        "id": name,
        "outline_px": px,
        "outline_mm": (np.array(px) * SCALE).round(3).tolist(),
        "length_mm": value,
        "length_u_mm": u,
        "width_mm": size[1] * SCALE,
        "width_u_mm": u,
        "shape": shape,
    }


@pytest.fixture
def first():
    """A crack A, a pore B, a speck C; A decided the verdict."""
    record = load_record(OLD)
    base = record.indications[0]
    rows = [
        indication(base, "A", (300, 200), (160, 10), shape="linear"),
        indication(base, "B", (700, 400), (40, 40)),
        indication(base, "C", (900, 800), (12, 12)),
    ]
    fields = {**record.fields, "examiner": "first"}
    return replace(record, indications=rows, fields=fields)


@pytest.fixture
def second(first):
    """The same part: the letters differ, C was not seen, D is new, A reads longer."""
    base = first.indications[0]
    rows = [
        indication(base, "B", (302, 200), (166, 11), shape="linear"),
        indication(base, "A", (700, 401), (40, 40)),
        indication(base, "D", (1200, 300), (20, 20)),
    ]
    evaluation = {
        **first.evaluation,
        "verdict": "undecided",
        "findings": [
            {**first.evaluation["findings"][0], "indications": ["B"], "verdict": "undecided"}
        ],
    }
    fields = {**first.fields, "examiner": "second"}
    return replace(first, id="r-2", indications=rows, evaluation=evaluation, fields=fields)


@pytest.fixture
def signed(first, tmp_path):
    who = Signer(role="examiner", name="first")
    return sign_record(first, who, key_of("first", tmp_path / "keys"))
