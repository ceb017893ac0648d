"""Keep the window's translations: texts out of the source into .ts, and .ts into .qm.

    python packaging/translations.py            # update every .ts, then write its .qm
    python packaging/translations.py --check    # say what is missing or stale; 1 if anything

A text is the first argument of ``tr`` in ptmark/window, or one of the words below that come
from the record, the criteria or the log and are shown as they are kept.
"""

import ast
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path

import PySide6

from ptmark.record import FIELDS

ROOT = Path(__file__).resolve().parents[1]
LANGUAGES = ROOT / "resources" / "languages"
_CONTEXT = "ptmark"
_KEPT_WORDS = """
Photo|Scale|Indications|Verdict|Record
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
Leave
"""


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


def read(path: Path) -> dict[str, str]:
    """The translations of a .ts file, by their English."""
    if not path.is_file():
        return {}
    messages = ET.parse(path).getroot().iter("message")  # noqa: S314 - our own file
    return {one.findtext("source", ""): one.findtext("translation", "") for one in messages}


def update(path: Path) -> list[str]:
    """Write the .ts with today's texts; returns those without a translation."""
    known, today = read(path), texts()
    root = ET.Element("TS", version="2.1", language=path.stem, sourcelanguage="en")
    context = ET.SubElement(root, "context")
    ET.SubElement(context, "name").text = _CONTEXT
    for text in today:
        message = ET.SubElement(context, "message")
        ET.SubElement(message, "source").text = text
        made = ET.SubElement(message, "translation")
        if known.get(text):
            made.text = known[text]
        else:
            made.set("type", "unfinished")
    ET.indent(root)
    head = '<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n'
    path.write_text(head + ET.tostring(root, encoding="unicode") + "\n", encoding="utf-8")
    return [text for text in today if not known.get(text)]


def release(path: Path, to: Path) -> None:
    """Write the .qm that the window reads."""
    tool = Path(PySide6.__file__).with_name("lrelease")
    tool = tool if tool.is_file() else tool.with_suffix(".exe")
    subprocess.run([tool, "-silent", path, "-qm", to], check=True)  # noqa: S603


def main() -> int:
    """Update or check every language."""
    lacking = False
    for path in sorted(LANGUAGES.glob("*.ts")):
        shipped = path.with_suffix(".qm")
        if "--check" in sys.argv[1:]:
            known = read(path)
            missing = [text for text in texts() if not known.get(text)]
            with tempfile.TemporaryDirectory() as folder:
                release(path, fresh := Path(folder) / shipped.name)
                stale = fresh.read_bytes() != shipped.read_bytes()
            lacking = lacking or bool(missing) or stale
        else:
            missing, stale = update(path), False
            release(path, shipped)
        print(f"{path.name}: {len(missing)} without a translation" + ", .qm is stale" * stale)
        for text in missing:
            print(f"    {text!r}")
    return int(lacking)


if __name__ == "__main__":
    sys.exit(main())
