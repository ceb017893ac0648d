"""A procedure's own limits: typed once, kept under its number, in place of the standard's.

A figure that is not typed is the standard's still. A limit may also be none at all.
"""

import json
import math
from typing import Any

from ptmark.errors import UsageError
from ptmark.files import write_whole
from ptmark.places import user_folder
from ptmark.process import STAGES, Limit
from ptmark.window.words import tr

__all__ = ["NO_LIMIT", "TEMPERATURE", "OwnLimits", "over", "read_figure"]

TEMPERATURE = "Surface temperature"
NO_LIMIT = math.inf  # a least or most that is none, as a person typed it
_LIMITED = (*(stage.name for stage in STAGES), TEMPERATURE)

# A least and a most figure, min or °C, None where the standard's holds.
Pair = tuple[float | None, float | None]


class OwnLimits:
    """Read when first needed, one file for all procedures."""

    def __init__(self) -> None:
        self._all: dict[str, dict[str, Pair]] | None = None

    def of(self, procedure: str) -> dict[str, Pair]:
        """The figures of a procedure by what they limit; of no procedure where it has none."""
        if self._all is None:
            self._all = _read()
        return self._all.get(procedure.strip().casefold(), {})

    def put(self, procedure: str, name: str, pair: Pair) -> None:
        """Give a procedure its own figures, or take them away with two times None.

        Raises
        ------
        UsageError
            If the least is over the most.
        """
        least, most = pair
        finite = [v for v in pair if v is not None and math.isfinite(v)]
        if len(finite) == 2 and finite[0] > finite[1]:
            raise UsageError(
                tr("{0}: {1:g} at least is over {2:g} at most", tr(name), least, most),
                mend=tr("exchange the two"),
            )
        kept = dict(self.of(procedure))
        kept.pop(name, None)
        if pair != (None, None):
            kept[name] = pair
        everything = self._all if self._all is not None else {}
        self._all = {**everything, procedure.strip().casefold(): kept}

    def save(self) -> None:
        """Write all of them; for a worker."""
        made = {
            number: {name: [_told(v) for v in pair] for name, pair in own.items()}
            for number, own in (self._all or {}).items()
            if own
        }
        write_whole(_file(), json.dumps(made, indent=1).encode())


def over(standard: Limit, own: Pair | None) -> Limit:
    """A limit with a procedure's own figures in place of the standard's.

    Examples
    --------
    >>> over(Limit(10, None), (15.0, None)), over(Limit(5, 60), (None, NO_LIMIT))
    (Limit(least=15.0, most=None), Limit(least=5, most=None))
    """
    if own is None:
        return standard
    figures = []
    for mine, usual in zip(own, (standard.least, standard.most), strict=True):
        figures.append(usual if mine is None else None if math.isinf(mine) else mine)
    return Limit(*figures)


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


def _told(figure: float | None) -> float | str | None:
    return "none" if figure is not None and math.isinf(figure) else figure


def _file() -> Any:  # noqa: ANN401 - a Path
    return user_folder() / "procedures.json"


def _read() -> dict[str, dict[str, Pair]]:
    """What was kept; what cannot be read is left out."""
    try:
        kept: Any = json.loads(_file().read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    made: dict[str, dict[str, Pair]] = {}
    for number, own in kept.items() if isinstance(kept, dict) else ():
        made[str(number)] = {}
        for name, pair in own.items() if isinstance(own, dict) else ():
            if name in _LIMITED and isinstance(pair, list) and len(pair) == 2:
                least, most = (NO_LIMIT if v == "none" else v for v in pair)
                if all(v is None or isinstance(v, int | float) for v in (least, most)):
                    made[str(number)][name] = (least, most)
    return made
