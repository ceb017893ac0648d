"""How far an operator's hand strays, from outlines that the same person traced again.

Kept in ``hands.json`` of the user's folder, by examiner and by how an outline was made.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from math import sqrt

import numpy as np

from ptmark.dye import EdgeQuality
from ptmark.errors import RecordError
from ptmark.files import write_whole
from ptmark.places import user_folder

__all__ = [
    "BY_PERSON",
    "LEAST_FREE",
    "Hand",
    "Hands",
    "keep_hands",
    "kept_hands",
    "pooled_hand",
    "with_own_hand",
]

BY_PERSON = ("hand", "snapped")
_FILE = "hands.json"

# Fewer degrees of freedom say less of a person than the default does. Own choice.
LEAST_FREE = 5
_COVERED = 0.9545  # what k = 2 covers of a normal distribution


@dataclass(frozen=True, slots=True)
class Hand:
    """One person's standard uncertainty of one traced end, px, and what it rests on."""

    px: float
    free: int


Hands = dict[str, dict[str, Hand]]  # by examiner, then by source, one of `BY_PERSON`


def pooled_hand(repeats: Sequence[Sequence[float]]) -> Hand:
    """A person's hand from lengths traced again, each inner sequence of one indication, px.

    Raises
    ------
    RecordError
        If there are too few repeats.

    Notes
    -----
    The experimental variances of all indications, weighted by their degrees of freedom
    (JCGM 100:2008, 4.2.4 and H.3.6), halved, since two independent ends make a length. A
    standard deviation from few repeats is widened so that k = 2 still covers: Student's t for
    its degrees of freedom over 2 (JCGM 100:2008, G.3.2 and Table G.2).

    Examples
    --------
    The pooled variance is (2 + 2 + 8) / 6 = 2 px², one end's deviation 1 px; Table G.2 gives
    2.52 for six degrees of freedom at 95.45 %.

    >>> hand = pooled_hand([[100.0, 102.0], [50.0, 49.0, 51.0], [80.0, 82.0, 78.0, 80.0]])
    >>> round(hand.px, 3), hand.free
    (1.258, 6)
    """
    rows = [np.asarray(row, dtype=float) for row in repeats if len(row) > 1]
    free = sum(len(row) - 1 for row in rows)
    if free < LEAST_FREE:
        raise RecordError(
            f"{free} repeats of traced outlines, {LEAST_FREE} are needed",
            where="hand",
            mend="trace the same indications again, in records of their own",
        )
    from scipy.stats import t

    squares = sum(float(((row - row.mean()) ** 2).sum()) for row in rows)
    widened = float(t.ppf((1 + _COVERED) / 2, free)) / 2
    return Hand(px=sqrt(squares / free / 2) * widened, free=free)


def keep_hands(hands: Hands) -> None:
    """Keep them for the measurements to come, beside those of other examiners."""
    known = kept_hands() | hands
    plain = {
        who: {source: asdict(hand) for source, hand in by_source.items()}
        for who, by_source in known.items()
    }
    text = json.dumps(plain, indent=1, ensure_ascii=False, sort_keys=True)
    write_whole(user_folder() / _FILE, text.encode())


def kept_hands() -> Hands:
    """What was kept; nothing where there is none.

    Raises
    ------
    RecordError
        If the file cannot be read.
    """
    path = user_folder() / _FILE
    if not path.exists():
        return {}
    try:
        plain = json.loads(path.read_text(encoding="utf-8"))
        return {
            who: {source: Hand(**hand) for source, hand in by_source.items()}
            for who, by_source in plain.items()
        }
    except (ValueError, TypeError, AttributeError, OSError) as exc:
        raise RecordError(
            f"cannot be read: {exc}", where=str(path), mend="delete it; the default holds then"
        ) from exc


def with_own_hand(edge: EdgeQuality, fields: Mapping[str, str]) -> EdgeQuality:
    """An edge that a person made, with the figure kept for the examiner in the fields."""
    if edge.source not in BY_PERSON:
        return edge
    own = kept_hands().get(fields.get("examiner", "").strip(), {}).get(edge.source)
    return edge if own is None else replace(edge, operator_px=own.px)
