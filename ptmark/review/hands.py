"""Each examiner's own hand, from records of the same photo that the same person made again.

What is found here is kept by `ptmark.measure.keep_hands`.
"""

from collections import defaultdict
from collections.abc import Iterator, Sequence

import numpy as np

from ptmark.dye import BY_PERSON
from ptmark.errors import RecordError
from ptmark.measure import Hands, caliper, pooled_hand
from ptmark.record import Record
from ptmark.review.compare import compare_records

__all__ = ["hands_in"]


def hands_in(records: Sequence[Record]) -> Hands:
    """Pool the repeats of each examiner who traced enough of them.

    Repeats are indications of one photo in several records by one examiner (field
    ``examiner``), matched by their outlines and all made the same way. Lengths are taken in
    px, so that the scale has no part in them.

    Raises
    ------
    RecordError
        If nobody traced enough again.
    """
    lengths: dict[tuple[str, str], list[list[float]]] = defaultdict(list)
    for examiner, same in _of_one_person(records):
        for source, row in _repeats(same):
            lengths[examiner, source].append(row)
    found: Hands = defaultdict(dict)
    short: RecordError | None = None
    for (examiner, source), rows in lengths.items():
        try:
            found[examiner][source] = pooled_hand(rows)
        except RecordError as exc:
            short = exc
    if not found:
        raise short or RecordError(
            "no examiner traced the indications of one photo again",
            where="hand",
            mend="give records of the same photo by the same examiner",
        )
    return dict(found)


def _of_one_person(records: Sequence[Record]) -> Iterator[tuple[str, list[Record]]]:
    groups: dict[tuple[str, str], list[Record]] = defaultdict(list)
    for record in records:
        if examiner := record.fields.get("examiner", "").strip():
            groups[examiner, str(record.photo["sha256"])].append(record)
    for (examiner, _photo), same in groups.items():
        if len({record.id for record in same}) > 1:
            yield examiner, same


def _repeats(same: Sequence[Record]) -> Iterator[tuple[str, list[float]]]:
    """Lengths of each indication of the first record, with how they were all traced."""
    traced = {str(one["id"]): [one] for one in same[0].indications}
    for other in same[1:]:
        by_letter = {str(one["id"]): one for one in other.indications}
        for pair in compare_records(same[0], other).pairs:
            traced[pair.first].append(by_letter[pair.second])
    for ones in traced.values():
        sources = {str(one["source"]) for one in ones}
        if len(ones) > 1 and len(sources) == 1 and (source := sources.pop()) in BY_PERSON:
            yield source, [caliper(np.array(one["outline_px"], float))[0] for one in ones]
