"""Keep the window's translations: texts out of the source into .ts, and .ts into .qm.

    python .run/packaging/translations.py            # update every .ts, then write its .qm
    python .run/packaging/translations.py --check    # say what is missing or stale

A text of the window is the first argument of ``tr`` in ptmark/window, or one of the words below
that come from the record, the criteria or the log and are shown as they are kept. A text of the
core is a template, as `ptmark.window.core_texts` matches them; all of them stand in core.txt.
"""

import ast
import re
import subprocess
import sys
import tempfile
import tomllib
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from itertools import product
from pathlib import Path

import PySide6

from ptmark.record import FIELDS

ROOT = Path(__file__).resolve().parents[2]
LANGUAGES = ROOT / "resources" / "languages"
CORE = LANGUAGES / "core.txt"
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

# The window itself, and what only the command line says.
_ELSEWHERE = ("window/", "commands/", "folder/", "criteria/fields", "criteria/reading")
# Rooms whose sentences may come to the window; of all others, their errors may.
_ROOMS = """
archive criteria dye inspection measure photo record review scale series units report/wording
"""
# SQL, printed pages, layouts of files, and what `FIELDS` holds above.
_UNSEEN = """
archive/asking archive/chain archive/comparing archive/guarding archive/roles archive/sealing
archive/exchange archive/migrations criteria/compare criteria/house_examples photo/_icc
record/fields record/canonical scale/card_pdf scale/calibration_grid
"""
# A hole for what a person wrote, a file or a clause.
_AS_WRITTEN = re.compile(r"reason\.strip|clause|\bpath\b|\bfile\b|', '\.join\(named\)")
_IS_TEXT = re.compile(
    r"(?=.*[a-z]{2})(?=.*\S \S)(?!\[?\{? ?[\w{}]+ = )(?!.*(\b[A-Z]{5,} \w|\\[dw(]|::|=\w))",
    re.DOTALL,
)
_SAYING = re.compile(r"\b[a-z]{3,} |, [a-z]{4,}| and ")  # more than a name and a number
# What the core puts together of words, where no single string in its source tells the whole.
_MADE = """
linear|rounded|relevant|acceptable|rejectable|undecided|non-relevant|false|thickness|diameter
width|height|length|number|area|together|card|rectangle|line|pipe|strip|reference|larger|smaller
earlier|later|none|guarded|simple|examiner|reviewer|first|second|seal|long|wide|Gone|Kept|New
1 linear indication|1 rounded indication|1 indication|no linear indication|no indication
no rounded indication|{0} linear indications|{0} rounded indications|{0} indications
no relevant linear indication|no relevant rounded indication|no relevant indication
{0}; a relevant linear indication is {1}.|{0}; a relevant rounded indication is {1}.
{0} named ISO 6520-1 {1}|{0} in a line with gaps of {1}|{0} in a rectangle of {1}
{0} in {1} of weld|{0} that hang together by gaps of {1}|{0}, end to end {1}|{0} ({1})
{0}, in a hull of {1}|{0}, together {1}|{0} of the weld's length|{0}, taken as one end to end
linear indication {0}|rounded indication {0}|indication {0}|{0} by {1}|{0} to {1}|{0} long
{0} wide|at least {0}|and|or|{0} of one and the same indication|linear indications
rounded indications|indications|{0} indications named {1}|indications named {0}
or more linear indications|or more rounded indications|or more indications
each linear indication|each rounded indication|each indication
each linear indication {0}|each rounded indication {0}|each indication {0}
named {0} longer than {1}|{0} (counting those {1})|{0} whose number is {1} in any {2} of weld
{0} whose summed length is {1} in any {2} of weld
{0} whose number is {1} on a frame of {2}, at its worst place and turn
{0} whose summed length is {1} on a frame of {2}, at its worst place and turn
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


def core_texts() -> list[str]:
    """Every template of the core, sorted."""
    found = {text for line in _MADE.strip("\n").splitlines() for text in line.split("|")}
    core = ROOT / "ptmark"
    for path in core.rglob("*.py"):
        name = path.relative_to(core).with_suffix("").as_posix()
        if not name.startswith(_ELSEWHERE):
            told = name.startswith(tuple(_ROOMS.split()))
            told = told and not name.startswith(tuple(_UNSEEN.split()))
            found |= set(_of_module(ast.parse(path.read_text(encoding="utf-8")), told=told))
    for path in (ROOT / "resources" / "criteria").rglob("*.toml"):
        found |= set(_of_profile(tomllib.loads(path.read_text(encoding="utf-8"))))
    return sorted(found)


def _of_module(tree: ast.Module, *, told: bool) -> Iterator[str]:
    """The templates of its errors; those of all its strings where they are ``told``."""
    passed = {id(one) for node in ast.walk(tree) for one in _not_shown(node)}
    errors = [one for one in ast.walk(tree) if isinstance(one, ast.Call) and _makes_error(one)]
    for part in [tree] if told else errors:
        for one in ast.walk(part):
            if id(one) not in passed:
                found = (text.strip(" ;,") for text in _templates(one))
                yield from filter(_IS_TEXT.match, found)


def _makes_error(call: ast.Call) -> bool:
    return isinstance(call.func, ast.Name) and call.func.id.endswith("Error")


def _not_shown(node: ast.AST) -> Iterator[ast.AST]:
    """Parts that are no text: documentation, types, what is compared, pieces of f-strings."""
    match node:
        case ast.Expr(value=ast.Constant()):
            yield node.value
        case ast.JoinedStr():
            yield from node.values
            specs = [one for one in ast.walk(node) if isinstance(one, ast.FormattedValue)]
            yield from (one.format_spec for one in specs if one.format_spec)
        case ast.arg(annotation=ast.AST()) | ast.AnnAssign():
            yield from ast.walk(node.annotation)
        case ast.FunctionDef(returns=ast.AST()):
            yield from ast.walk(node.returns)
        case ast.Compare():
            yield from ast.walk(node)
        case ast.Call() if ast.unparse(node.func) in {"cast", "re.compile", "text"}:
            yield from ast.walk(node)


def _templates(node: ast.AST) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        named = iter(range(99))
        yield re.sub(r"\{[a-z_]+\}", lambda _: f"{{{next(named)}}}", node.value)
    elif isinstance(node, ast.JoinedStr):
        for parts in product(*(_choices(one) for one in node.values)):
            number = iter(range(99))
            made = "".join(
                one if isinstance(one, str) else f"{{{next(number)}{_mark(one)}}}"
                for one in parts
            )
            yield re.sub(r"'\{(\d+)\}'", r"'{\1!s}'", made)  # what somebody typed is quoted


def _choices(part: ast.expr) -> list[str | ast.expr]:
    """What may stand in one place of an f-string: a hole, or words of a condition."""
    if isinstance(part, ast.Constant):
        return [str(part.value)]
    value = part.value if isinstance(part, ast.FormattedValue) else part
    either = [value]
    if isinstance(value, ast.IfExp):
        either = [value.body, value.orelse]
    elif isinstance(value, ast.BoolOp):
        either = value.values
    return [str(one.value) if isinstance(one, ast.Constant) else one for one in either]


def _mark(hole: ast.expr) -> str:
    return "!s" if _AS_WRITTEN.search(ast.unparse(hole)) else ""


def _of_profile(table: dict[str, object]) -> Iterator[str]:
    for key, value in table.items():
        if isinstance(value, list):
            for one in value:
                if isinstance(one, dict):
                    yield from _of_profile(one)
                elif key == "cautions":
                    yield str(one)
        elif isinstance(value, dict):
            yield from _of_profile(value)
        elif key in {"title", "note", "edition", "clause"} and _SAYING.search(str(value)):
            yield str(value).rstrip(".")


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


def core_file() -> str:
    """What stands in core.txt: a template a line, a line break in it as backslash and n."""
    return "".join(one.replace("\n", "\\n") + "\n" for one in core_texts())


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
