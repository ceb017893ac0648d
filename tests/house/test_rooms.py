"""What the rooms promise at their doors: no Qt left of the window, exports that hold."""

import importlib
import json
import pkgutil
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

import ptmark
from ptmark.hides import Hides
from ptmark.least import Least

ROOT = Path(__file__).resolve().parents[2]
ROOMS = ("photo", "scale", "dye", "measure", "criteria", "record", "report", "commands")
NAMES = [
    module.name
    for module in pkgutil.walk_packages(ptmark.__path__, "ptmark.")
    if not module.name.startswith(("ptmark._shipped", "ptmark.__main__"))
]
PACKAGES = [
    "ptmark",
    *(m.name for m in pkgutil.walk_packages(ptmark.__path__, "ptmark.") if m.ispkg),
]


def test_no_room_but_the_window_loads_qt():
    # In a fresh process and module by module: a package whose __init__ is clean may hide it.
    program = (
        "import importlib, json, sys\n"
        "seen = []\n"
        "for name in json.loads(sys.argv[1]):\n"
        "    importlib.import_module(name)\n"
        "    seen.append([name, 'PySide6' in sys.modules])\n"
        "print(json.dumps(seen))\n"
    )
    names = [n for n in NAMES if not n.startswith("ptmark.window")]
    done = subprocess.run(
        [sys.executable, "-c", program, json.dumps(names)],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    )
    walked = json.loads(done.stdout)
    for room in ROOMS:
        assert sum(name.startswith(f"ptmark.{room}.") for name, _ in walked) >= 2, room
    assert [name for name, loaded in walked if loaded] == []


@pytest.mark.parametrize("name", NAMES)
def test_exports_exist_and_stand_in_order(name):
    module = importlib.import_module(name)
    exports = getattr(module, "__all__", [])
    assert len(set(exports)) == len(exports)
    assert [e for e in exports if not hasattr(module, e)] == []
    # Constants, then classes, then functions, each by the alphabet.
    assert exports == sorted(exports, key=lambda e: (not e.isupper(), not e[0].isupper(), e))


@pytest.mark.parametrize("name", PACKAGES)
def test_packages_export_all_that_they_show(name):
    package = importlib.import_module(name)
    shown = {
        key
        for key, value in vars(package).items()
        if not key.startswith("_") and not isinstance(value, ModuleType)
    }
    exports = {e for e in getattr(package, "__all__", []) if not e.startswith("__")}
    assert shown <= exports


@pytest.mark.parametrize(
    ("name", "table"),
    [
        ("criteria.unjudged", "_LEAST"),
        ("record.cautions", "_LEAST"),
        ("report.wording", "_LEAST_NOTES"),
        ("report.dicom.indications", "_LEAST"),
        ("window.indications.model", "_LEAST"),
    ],
)
def test_every_reason_why_a_size_is_the_least_has_its_words(name, table):
    # One without its finding would let pass what may be any longer than is seen of it.
    assert set(getattr(importlib.import_module(f"ptmark.{name}"), table)) == set(Least)


def test_every_reason_why_a_photo_hides_has_its_finding_and_its_field():
    from ptmark.criteria.unjudged import _HIDES
    from ptmark.record import record_schema

    assert set(_HIDES) == set(Hides)
    told = set(record_schema()["$defs"]["conditions"]["properties"]) - {"relief_mm", "haze"}
    assert told == set(Hides)


@pytest.mark.parametrize("name", ["ptmark", *NAMES])
def test_every_module_says_what_it_is_for(name):
    assert (importlib.import_module(name).__doc__ or "").strip()
