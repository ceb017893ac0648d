"""Keep the window's translations: texts out of the source into .ts, and .ts into .qm.

    python .run/packaging/translations.py            # update every .ts, then write its .qm
    python .run/packaging/translations.py --check    # say what is missing or stale

A text of the window is the first argument of ``tr`` in ptmark/window, or one of the words below
that come from the record, the criteria or the log and are shown as they are kept. A text of the
core is a template, found by `core_templates`; all of them stand in core.txt.
"""

import ast
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from functools import lru_cache
from pathlib import Path

import PySide6

from ptmark.record import FIELDS

sys.path.insert(0, str(Path(__file__).parent))  # where this file is loaded by its path
from core_templates import core_file, core_texts

ROOT = Path(__file__).resolve().parents[2]
LANGUAGES = ROOT / "resources" / "languages"
CORE = LANGUAGES / "core.txt"
_KEPT_WORDS = """
Photo|Scale|Indications|Verdict|Record|Review
acceptable|rejectable|undecided|to look at|taken|not relevant|non-relevant
false|dropped|left out
accept|reject|rework and retest|refer|linear|rounded|shape|relevance|verdict|relevant
card|rectangle|line|pipe|two lines|line on a pipe|examiner|reviewer
Cleaned|Dry to the eye|Penetrant on|Removal begun|Wiped clean
Developer on|Developer dry|Final look
Drying|Penetrant dwell|Evaporation|Development
common practice|ASME V, welds and castings|ASME V, wrought|ISO 3452-1
to review|not signed|signed|returned|needs photo|not readable
Review it blind|Go on with it as its examiner|Done measuring|Earlier record|Next record|Records
edge|hand|lens|map|picking|reference|relief|sampling|tilt|focal length|touching line
Leave|Good|Hard|Rejectable|Undecided
"""
# The names of keys as Qt shows them, shorter than in its own translations.
_KEYS = [
    "Ctrl",
    "Shift",
    "Alt",
    "Return",
    "Del",
    "Ins",
    "Esc",
    "Backspace",
    "PgUp",
    "PgDown",
    "Left",
    "Right",
    "Up",
    "Down",
]


@lru_cache(1)
def texts() -> list[str]:
    """Every text of the window, sorted."""
    found = {text for line in _KEPT_WORDS.strip().splitlines() for text in line.split("|")}
    for field in FIELDS:
        found |= {field.label, field.hint, field.group} - {""}
    for path in (ROOT / "ptmark" / "window").rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
                continue
            first = node.args[0] if node.func.id == "tr" and node.args else None
            if isinstance(first, ast.Constant):
                found.add(str(first.value))
    return sorted(found)


def wanted() -> dict[str, list[str]]:
    """What is to be translated, by the context it is looked up in."""
    return {"ptmark": texts(), "core": core_texts(), "QShortcut": _KEYS}


def read(path: Path) -> dict[tuple[str, str], str]:
    """The translations of a .ts file, by context and English."""
    if not path.is_file():
        return {}
    root = ET.parse(path).getroot()  # noqa: S314 - our own file
    return {
        (context.findtext("name", ""), one.findtext("source", "")): one.findtext(
            "translation", ""
        )
        for context in root.iter("context")
        for one in context.iter("message")
    }


def missing(known: dict[tuple[str, str], str]) -> list[str]:
    """Those without a translation."""
    return [
        text
        for name, all_of in wanted().items()
        for text in all_of
        if not known.get((name, text))
    ]


def update(path: Path) -> list[str]:
    """Write the .ts with today's texts; returns those without a translation."""
    known = read(path)
    root = ET.Element("TS", version="2.1", language=path.stem, sourcelanguage="en")
    for name, all_of in wanted().items():
        context = ET.SubElement(root, "context")
        ET.SubElement(context, "name").text = name
        for text in all_of:
            message = ET.SubElement(context, "message")
            ET.SubElement(message, "source").text = text
            made = ET.SubElement(message, "translation")
            made.text = known.get((name, text)) or None
            if made.text is None:
                made.set("type", "unfinished")
    ET.indent(root)
    head = '<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n'
    path.write_text(head + ET.tostring(root, encoding="unicode") + "\n", encoding="utf-8")
    return missing(known)


def release(path: Path, to: Path) -> None:
    """Write the .qm that the window reads."""
    tool = Path(PySide6.__file__).with_name("lrelease")
    tool = tool if tool.is_file() else tool.with_suffix(".exe")
    subprocess.run([tool, "-silent", path, "-qm", to], check=True)  # noqa: S603


def main() -> int:
    """Update or check every language."""
    if "--check" in sys.argv[1:]:
        lacking = CORE.read_text(encoding="utf-8") != core_file()
        print("core.txt" + ": stale" * lacking)
    else:
        CORE.write_text(core_file(), encoding="utf-8")
        lacking = False
    for path in sorted(LANGUAGES.glob("*.ts")):
        shipped = path.with_suffix(".qm")
        if "--check" in sys.argv[1:]:
            left = missing(read(path))
            with tempfile.TemporaryDirectory() as folder:
                release(path, fresh := Path(folder) / shipped.name)
                stale = fresh.read_bytes() != shipped.read_bytes()
            lacking = lacking or bool(left) or stale
        else:
            left, stale = update(path), False
            release(path, shipped)
        print(f"{path.name}: {len(left)} without a translation" + ", .qm is stale" * stale)
        for text in left:
            print(f"    {text!r}")
    return int(lacking)


if __name__ == "__main__":
    sys.exit(main())
