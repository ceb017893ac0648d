"""The templates of the core's texts, as `ptmark.window.core_texts` matches them.

Taken out of the source: strings and f-strings, their holes numbered, and what the profiles that
ship say. `translations` keeps them in core.txt and their translations in the .ts files.
"""

import ast
import re
import tomllib
from collections.abc import Iterator
from functools import lru_cache
from itertools import product
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
# The window itself, and what only the command line says.
_ELSEWHERE = ("window/", "commands/", "folder/", "criteria/fields", "criteria/reading")
# Rooms whose sentences may come to the window; of all others, their errors may.
_ROOMS = """
archive criteria dye inspection measure photo process record review scale series units
report/wording report/set_growth report/growth_data
"""
# SQL, printed pages, layouts of files, and what `FIELDS` holds above.
_UNSEEN = """
archive/asking archive/chain archive/comparing archive/guarding archive/roles archive/saying
archive/sealing archive/worded
archive/exchange archive/migrations criteria/compare criteria/house_examples photo/_icc
record/fields record/canonical scale/card_pdf scale/calibration_grid
"""
# A hole for what a person wrote, a file or a clause.
_AS_WRITTEN = re.compile(r"\[:12\]|reason\.strip|clause|\bpath\b|\bfile\b|', '\.join\(named\)")
_IS_TEXT = re.compile(
    r"(?=.*[a-z]{2})(?=.*\S \S)(?!\[?\{? ?[\w{}]+ = )(?!.*(\b[A-Z]{5,} \w|\\[dw(]|::|=\w))",
    re.DOTALL,
)
_SAYING = re.compile(r"\b[a-z]{3,} |, [a-z]{4,}| and ")  # more than a name and a number
# What the core puts together of words, where no single string in its source tells the whole.
_MADE = """
crack|microcrack|cavity|pore|porosity|wormhole|inclusion|undercut|overlap|underfill|spatter
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
{0}, taken as one end to end, is {1} long, {2}.
{0}, taken as one end to end, is {1} long, not {2}.
{0}, taken as one end to end, is {1} long and may be {2}.
{0}, taken as one end to end, would be {1} long, {2}.
linear indication {0}|rounded indication {0}|indication {0}|{0} by {1}|{0} to {1}|{0} long
{0} wide|at least {0}|and|or|{0} of one and the same indication|linear indications
rounded indications|indications|{0} indications named {1}|indications named {0}
part number|serial number|inspection|revisions|photos|text|missing|changed|damaged
Size|Relevant|Unless|verified|secondary|memory|conflicting|any|scene|indication
or more linear indications|or more rounded indications|or more indications
each linear indication|each rounded indication|each indication
each linear indication {0}|each rounded indication {0}|each indication {0}
named {0} longer than {1}|{0} (counting those {1})|{0} whose number is {1} in any {2} of weld
{0} whose summed length is {1} in any {2} of weld
{0} whose number is {1} on a frame of {2}, at its worst place and turn
{0} whose summed length is {1} on a frame of {2}, at its worst place and turn
"""


@lru_cache(1)
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
    return isinstance(call.func, ast.Name) and call.func.id.lower().endswith("error")


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
        case ast.Call(func=ast.Name("cast" | "text")):
            yield from ast.walk(node)
        case ast.Call(func=ast.Attribute(ast.Name("re"), "compile")):
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


def core_file() -> str:
    """What stands in core.txt: a template a line, a line break in it as backslash and n."""
    return "".join(one.replace("\n", "\\n") + "\n" for one in core_texts())
