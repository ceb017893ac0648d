"""What makes each length uncertain: a bar for each indication, and what would help."""

from typing import Any

from reportlab.graphics.shapes import Drawing, Rect, String
from reportlab.platypus import Flowable, KeepTogether, Spacer

from ptmark.measure import advice, dominant, hand_words, shares
from ptmark.record import Record
from ptmark.report.pages.style import BOLD, PLAIN, color, text
from ptmark.report.palette import INK, PALE, contrast

__all__ = ["budget_chart"]

_MOST = 24
# JCGM 100:2008, G.4.3: a standard uncertainty taken from bounds counts as known.
_ALL_OTHERS = (
    "Degrees of freedom: those told of picking by hand; all other parts count as known, "
    "without limit (JCGM 100, G.4.3)."
)
_ROW, _BAR = 12.0, 9.0  # points
# Neither red, pink nor white; a letter in each tells them apart without colour.
_INKS: dict[str, tuple[str, tuple[int, int, int]]] = {
    "edge": ("E", (20, 66, 190)),
    "map": ("M", (0, 150, 190)),
    "reference": ("R", (4, 20, 48)),
    "picking": ("P", (96, 125, 160)),
    "tilt": ("T", (0, 110, 100)),
    "relief": ("H", (110, 100, 30)),
    "sampling": ("S", (150, 170, 190)),
    "lens": ("L", (70, 80, 95)),
    "focal length": ("F", (60, 120, 220)),
    "touching line": ("C", (60, 40, 120)),
}
_OTHER = ("o", (185, 195, 205))


def budget_chart(record: Record, width: float) -> list[Flowable]:
    """Shares of the variance of each length, and what would help; none where none is known."""
    rated = [one for one in record.indications if one["budget"]][:_MOST]
    if not rated:
        return []
    names = list(dict.fromkeys(name for one in rated for name in one["budget"]))
    legend = "  ".join(f"{_INKS.get(name, _OTHER)[0]} {name}" for name in names)
    merged = _by_part(rated, str(record.scale.get("reference", "")))
    chart = [
        Spacer(1, 4),
        text("Shares of the variance of each length:", 8),
        _bars(rated, width),
        text(legend, 7, quiet=True),
        *_freedom(rated),
    ]
    told = [text(f"• {', '.join(ids)}: {said}") for said, ids in merged.items()]
    if not told:
        return [KeepTogether(chart)]
    head = text("What would make the numbers surer:", 8, bold=True)
    return [KeepTogether(chart), KeepTogether([head, told[0]]), *told[1:]]


def _by_part(rated: list[dict[str, Any]], reference: str) -> dict[str, list[str]]:
    """The advice once for all whose greatest part is the same, with the largest share of it."""
    alike: dict[str, list[dict[str, Any]]] = {}
    for one in rated:
        if advice(one["budget"]):
            alike.setdefault(dominant(one["budget"]), []).append(one)
    merged: dict[str, list[str]] = {}
    for name, group in alike.items():
        worst = max(group, key=lambda one: shares(one["budget"])[name])
        told = advice(worst["budget"], reference)
        said = told if len(group) == 1 else told.replace(": ", ": up to ", 1)
        merged[said] = [one["id"] for one in group]
    return merged


def _freedom(rated: list[dict[str, Any]]) -> list[Flowable]:
    """Where a hand's share in "picking" comes from, with its degrees of freedom."""
    by_words: dict[str, list[str]] = {}
    for one in rated:
        edge = one["edge"]
        said = hand_words(one["source"], edge.get("operator_px"), edge.get("operator_free"))
        if said:
            by_words.setdefault(said, []).append(one["id"])
    told = [
        text(f"picking, {', '.join(ids)}: {s}.", 7, quiet=True) for s, ids in by_words.items()
    ]
    return [*told, text(_ALL_OTHERS, 7, quiet=True)]


def _bars(rated: list[dict[str, Any]], width: float) -> Drawing:
    left, right = 0.07 * width, 0.12 * width
    made = Drawing(width, _ROW * len(rated) + 2)
    for number, one in enumerate(rated):
        low = _ROW * (len(rated) - 1 - number) + 2
        made.add(_word(2, low + 2, one["id"], INK, BOLD))
        made.add(_word(width - right + 5, low + 2, f"U {one['length_u_mm']:.2f} mm", INK))
        whole = sum(part**2 for part in one["budget"].values()) or 1.0
        at = left
        for name, part in one["budget"].items():
            long = part**2 / whole * (width - left - right)
            sign, ink = _INKS.get(name, _OTHER)
            bar = Rect(at, low, long, _BAR)
            bar.fillColor, bar.strokeColor = color(ink), None
            made.add(bar)
            if long > 9:
                shown = PALE if contrast(PALE, ink) > contrast(INK, ink) else INK
                made.add(_word(at + long / 2 - 2.5, low + 2, sign, shown, BOLD))
            at += long
    return made


def _word(
    x: float, y: float, said: str, ink: tuple[int, int, int], face: str = PLAIN
) -> String:
    return String(x, y, said, fontName=face, fontSize=7, fillColor=color(ink))
