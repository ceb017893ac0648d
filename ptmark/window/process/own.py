"""A procedure's own limits: typed once, kept under its number, in place of the standard's.

A figure that is not typed is the standard's still. A limit may also be none at all.
"""

import json
import math
from collections.abc import Mapping
from contextlib import suppress
from threading import Lock
from typing import Any

from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.process import STAGES, TEMPERATURE
from ptmark.window.words import tr

__all__ = ["NO_LIMIT", "OwnLimits", "read_figure", "with_pair"]

NO_LIMIT = math.inf  # a least or most that is none, as a person typed it
_LIMITED = (*(stage.name for stage in STAGES), TEMPERATURE)
_SIDES = ("least", "most")

# A least and a most figure, min or °C, None where the standard's holds.
Pair = tuple[float | None, float | None]
# By what they limit, as the record has it: None for no limit.
Limits = Mapping[str, Mapping[str, float | None]]


class OwnLimits:
    """Read when first needed, one file for all procedures."""

    def __init__(self) -> None:
        self._all: dict[str, Limits] | None = None
        self._writing = Lock()

    def of(self, procedure: str) -> Limits:
        """The limits kept for a procedure; of no procedure where it has none."""
        if self._all is None:
            self._all = _read()
        return self._all.get(procedure.strip().casefold(), {})

    def put(self, procedure: str, limits: Limits) -> None:
        """Keep these for a procedure, in place of what was kept."""
        self.of(procedure)  # reads what is kept
        self._all = {**(self._all or {}), procedure.strip().casefold(): limits}

    def save(self) -> None:
        """Write all, for a worker. Of two at once the later writes what was put last."""
        with self._writing:
            made = {
                number: {
                    name: [_told(pair, side) for side in _SIDES] for name, pair in own.items()
                }
                for number, own in (self._all or {}).items()
                if own
            }
            write_whole(_file(), json.dumps(made, indent=1).encode())


def with_pair(limits: Limits, name: str, pair: Pair) -> Limits:
    """The limits with this pair; with two times None without any of that name.

    Raises
    ------
    UsageError
        If the least is over the most.

    Examples
    --------
    >>> with_pair({}, "Drying", (15.0, NO_LIMIT))
    {'Drying': {'least': 15.0, 'most': None}}
    >>> with_pair({"Drying": {"most": 15.0}}, "Drying", (None, None))
    {}
    """
    least, most = pair
    finite = [v for v in pair if v is not None and math.isfinite(v)]
    if len(finite) == 2 and finite[0] > finite[1]:
        raise UsageError(
            tr("{0}: {1:g} at least is over {2:g} at most", tr(name), least, most),
            mend=tr("exchange the two"),
        )
    kept = {one: figures for one, figures in limits.items() if one != name}
    given = {
        side: None if math.isinf(figure) else figure
        for side, figure in zip(_SIDES, pair, strict=True)
        if figure is not None
    }
    return {**kept, name: given} if given else kept


def read_figure(text: str, name: str) -> float | None:
    """A typed figure; None where nothing is typed, `NO_LIMIT` for "none".

    Raises
    ------
    UsageError
        If it is no number.

    Examples
    --------
    >>> read_figure("12,5", "Drying"), read_figure(" ", "Drying"), read_figure("none", "Drying")
    (12.5, None, inf)
    """
    text = text.strip().lower()
    if not text:
        return None
    if text in {"none", tr("none")}:
        return NO_LIMIT
    try:
        figure = float(text.replace(",", ".").replace("−", "-"))
    except ValueError:
        figure = math.nan
    if not math.isfinite(figure) or (figure < 0 and name != TEMPERATURE):
        raise UsageError(
            tr("{0}: “{1}” is no limit", tr(name), text),
            mend=tr("type a number, or “none” for no limit, or nothing for the standard's"),
        )
    return figure


def _told(pair: Mapping[str, float | None], side: str) -> float | str | None:
    if side not in pair:
        return None
    return "none" if pair[side] is None else pair[side]


def _file() -> Any:  # noqa: ANN401 - a Path
    return user_folder() / "procedures.json"


def _read() -> dict[str, Limits]:
    """What was kept; what cannot be read is left out."""
    try:
        kept: Any = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    made: dict[str, Limits] = {}
    for number, own in kept.items() if isinstance(kept, dict) else ():
        limits: Limits = {}
        for name, pair in own.items() if isinstance(own, dict) else ():
            if name in _LIMITED and isinstance(pair, list) and len(pair) == 2:
                least, most = (NO_LIMIT if v == "none" else v for v in pair)
                if all(v is None or isinstance(v, int | float) for v in (least, most)):
                    with suppress(UsageError):
                        limits = with_pair(limits, name, (least, most))
        made[str(number)] = limits
    return made
