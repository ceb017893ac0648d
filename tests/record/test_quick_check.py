"""What the quick check accepts, the full validator accepts, and the other way round."""

import copy
import json
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from ptmark.record.check import _accepted, record_schema

# jsonschema is the reference here: an implementation of its own of JSON Schema 2020-12.
FILES = sorted((Path(__file__).parents[2] / "tests").rglob("*record*.json"))
ODD = (None, True, -1, 1.5, 1.0, 10**20, "", "x" * 5000, [], [[]], {}, {"a": 1}, float("nan"))


def places(value, path=()):
    yield path
    if isinstance(value, dict):
        for name, one in value.items():
            yield from places(one, (*path, name))
    elif isinstance(value, list):
        for number, one in enumerate(value[:2]):
            yield from places(one, (*path, number))


def documents():
    for file in FILES:
        told = json.loads(file.read_text("utf-8"))
        if isinstance(told, dict) and str(told.get("schema", "")).startswith("ptmark-record/"):
            yield told


def test_the_quick_check_never_accepts_more():
    whole = next(documents(), None)
    if whole is None:
        pytest.skip("no record among the test files")
    full = Draft202012Validator(record_schema(int(whole["schema"][-1])))
    assert _accepted(whole)
    for number, path in enumerate(places(whole)):
        if not path or path == ("schema",):
            continue
        for value in (ODD[number % len(ODD)], ODD[(number * 5 + 3) % len(ODD)]):
            odd = copy.deepcopy(whole)
            at = odd
            for step in path[:-1]:
                at = at[step]
            at[path[-1]] = value
            assert not _accepted(odd) or full.is_valid(odd), (path, value)
