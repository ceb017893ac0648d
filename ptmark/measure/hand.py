"""How far an operator's hand strays, from outlines that the same person traced again.

Kept in ``hands.json`` of the user's folder, by examiner and by how an outline was made.
"""

import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass, replace
from math import sqrt

import numpy as np

from ptmark.dye import BY_PERSON, EdgeQuality
from ptmark.errors import RecordError
from ptmark.files import write_whole
from ptmark.measure.budget import OPERATOR_PX
from ptmark.places import user_folder

__all__ = [
    "Hand",
    "Hands",
    "hand_of",
    "hand_words",
    "keep_hands",
    "kept_hands",
    "pooled_hand",
    "with_own_hand",
]

_FILE = "hands.json"

# Fewer degrees of freedom say less of a person than the default does; of the very inspection at
# hand they may be fewer, for Student's t widens what they give. Own choice.
LEAST_FREE, LEAST_FREE_HERE = 5, 2
_COVERED = 0.9545  # what k = 2 covers of a normal distribution


@dataclass(frozen=True, slots=True)
class Hand:
    """One person's standard uncertainty of one traced end, px, and what it rests on."""

    px: float
    free: int


Hands = dict[str, dict[str, Hand]]  # by examiner, then by source, one of `ptmark.dye.BY_PERSON`


def pooled_hand(repeats: Sequence[Sequence[float]], least: int = LEAST_FREE) -> Hand:
    """A person's hand from lengths traced again, each inner sequence of one indication, px.

    ``least`` is how many degrees of freedom they need to have.

    Raises
    ------
    RecordError
        If there are too few repeats.

    Notes
    -----
    The experimental variances of all indications, weighted by their degrees of freedom
    (JCGM 100:2008, 4.2.4 and H.3.6), halved, since two independent ends make a length. A
    standard deviation from few repeats is widened so that k = 2 still covers: Student's t for
    its degrees of freedom over 2 (JCGM 100:2008, G.3.2 and Table G.2). In a sum with others
    this never states less than t for the effective degrees of freedom of the sum does (G.4.1).

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
    if free < least:
        raise RecordError(
            f"{free} repeats of traced outlines, {least} are needed",
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


def hand_of(edges: Iterable[EdgeQuality], source: str) -> Hand | None:
    """A hand from what was traced again in one inspection; None where it is too little.

    Examples
    --------
    >>> twice = EdgeQuality(shift_px=0.5, noise_px=0.1, source="hand", traces_px=(99.0, 101.0))
    >>> hand_of([twice], "hand"), hand_of([twice, twice], "hand").free
    (None, 2)
    """
    repeats = [edge.traces_px for edge in edges if edge.source == source]
    if sum(len(row) - 1 for row in repeats if row) < LEAST_FREE_HERE:
        return None
    return pooled_hand(repeats, LEAST_FREE_HERE)


def with_own_hand(
    edge: EdgeQuality, fields: Mapping[str, str], others: Iterable[EdgeQuality] = ()
) -> EdgeQuality:
    """An edge that a person made, with what is known of that person's hand.

    From the ``others`` that were traced again in this inspection, or the figure kept for the
    examiner in the fields, whichever has more degrees of freedom.
    """
    if not edge.by_person:
        return edge
    kept = kept_hands().get(fields.get("examiner", "").strip(), {}).get(edge.source)
    known = [hand for hand in (hand_of(others, edge.source), kept) if hand is not None]
    if not known:
        return edge
    best = max(known, key=lambda hand: hand.free)
    return replace(edge, operator_px=best.px, operator_free=best.free)


def hand_words(source: str, operator_px: float | None, free: int | None) -> str:
    """Where the share of an operator's hand in "picking" comes from; "" where no hand drew it.

    Parameters
    ----------
    source : str
        How the outline was made, as in `ptmark.dye.EdgeQuality`, whose ``operator_px`` and
        ``operator_free`` the others are.

    Examples
    --------
    >>> hand_words("hand", 0.31, 6)
    'each end by hand strays by 0.31 px, estimated from repeat traces: 6 degrees of freedom'
    >>> hand_words("snapped", None, None)
    'each end by hand strays by 0.5 px, a stated default: not traced again'
    >>> hand_words("suggested", None, None)
    ''
    """
    if source not in BY_PERSON:
        return ""
    if operator_px is None:
        default = OPERATOR_PX.get(source, OPERATOR_PX["hand"])
        return f"each end by hand strays by {default} px, a stated default: not traced again"
    if not free:
        return f"each end by hand strays by {operator_px:.2f} px, estimated from repeat traces"
    return (
        f"each end by hand strays by {operator_px:.2f} px, estimated from repeat traces: "
        f"{free} degrees of freedom"
    )
