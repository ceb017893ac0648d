"""What makes each length uncertain: a bar for each indication, and what would help."""

from typing import Any

from reportlab.graphics.shapes import Drawing, Rect, String
from reportlab.platypus import Flowable, Spacer

from ptmark.record import Record
from ptmark.report.palette import INK, PALE, contrast
from ptmark.report.pdf_style import BOLD, PLAIN, color, text

__all__ = ["budget_chart", "what_helps"]

_MOST = 24
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
}
_OTHER = ("o", (185, 195, 205))
# Which act lowers which part: follows from how the part arises (the design's decision 5).
_HELPS = {
    "edge": "a sharper photo, closer and steady, in even light",
    "map": "a larger scale reference, or one nearer to the indication",
    "reference": "the card's check length measured with callipers and entered",
    "picking": "reference points picked again with the loupe, or the printed card",
    "tilt": "the card or a rectangle in place of one line, and a photo taken square-on",
    "relief": "the crown's height entered, or the reference laid level with the indication",
    "sampling": "more pixels to the millimetre: go closer",
    "lens": "the indication and the reference nearer to the middle of the photo",
}


def what_helps(budget: dict[str, float]) -> str:
    """What would lower the greatest part of a length's uncertainty, in words.

    Examples
    --------
    >>> what_helps({"edge": 0.03, "map": 0.01})
    'edge (90 %): a sharper photo, closer and steady, in even light'
    """
    whole = sum(part**2 for part in budget.values())
    if not whole > 0:
        return ""
    name = max(budget, key=lambda one: budget[one])
    share = 100 * budget[name] ** 2 / whole
    return f"{name} ({share:.0f} %): {_HELPS.get(name, 'see the parts below')}"


def budget_chart(record: Record, width: float) -> list[Flowable]:
    """Shares of the variance of each length, and what would help; none where none is known."""
    rated = [one for one in record.indications if one["budget"]][:_MOST]
    if not rated:
        return []
    names = list(dict.fromkeys(name for one in rated for name in one["budget"]))
    legend = "  ".join(f"{_INKS.get(name, _OTHER)[0]} {name}" for name in names)
    helps: dict[str, list[str]] = {}
    for one in rated:
        helps.setdefault(what_helps(one["budget"]), []).append(one["id"])
    helps.pop("", None)
    merged = _by_part(helps)
    return [
        Spacer(1, 4),
        text("Shares of the variance of each length:", 8),
        _bars(rated, width),
        text(legend, 7, quiet=True),
        *([text("What would make the numbers surer:", 8, bold=True)] if merged else []),
        *(text(f"• {', '.join(ids)}: {said}") for said, ids in merged.items()),
    ]


def _by_part(helps: dict[str, list[str]]) -> dict[str, list[str]]:
    """The same advice once, whatever its share."""
    merged: dict[str, list[str]] = {}
    for said, ids in helps.items():
        name, _, act = said.partition(": ")
        part = name.partition(" (")[0]
        merged.setdefault(f"mostly {part}; {act}", []).extend(ids)
    return merged


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
