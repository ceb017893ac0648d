"""What many records tell of those who measure: pairs of reviews, and repeated records."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

from ptmark.errors import RecordError
from ptmark.record import Record
from ptmark.review.agreement import Agreement, Precision, limits_of_agreement, precision
from ptmark.review.compare import compare_records

__all__ = ["Level", "Study", "study_of"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """One indication that several operators measured: its photo, letter and precision."""

    photo: str
    letter: str
    precision: Precision


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """Lengths across many records, mm.

    ``pairs`` are (first, second) of every reviewed indication, from the newest review by each
    reviewer; ``agreement`` is None with fewer than two. ``en_above_1`` counts pairs that
    disagree by their own uncertainties. ``levels`` are the indications that two operators or
    more measured, one of them twice; ``pooled`` is the root mean square over them, weighted
    by degrees of freedom, None where there are none.
    """

    records: int
    pairs: tuple[tuple[float, float], ...]
    agreement: Agreement | None
    en_above_1: int
    missed: int
    levels: tuple[Level, ...]
    pooled: tuple[float, float] | None

    @property
    def rows(self) -> list[tuple[str, str, int, int, float, float, float]]:
        """Photo, letter, operators, results, mean, repeatability, reproducibility."""
        return [
            (
                one.photo,
                one.letter,
                one.precision.operators,
                one.precision.results,
                one.precision.mean,
                one.precision.repeatability,
                one.precision.reproducibility,
            )
            for one in self.levels
        ]


def study_of(records: Sequence[Record]) -> Study:
    """Gather agreement and precision from records.

    Reviews inside each record give pairs. Records of the same photo by different examiners
    (field ``examiner``; without it the record counts for nobody) give levels.

    Raises
    ------
    RecordError
        If they hold neither a review with a measured pair nor two records of one photo.
    """
    pairs, en_above_1, missed = _reviews(records)
    levels = _levels(records)
    if not pairs and not levels:
        raise RecordError(
            "neither a review nor a photo that two examiners measured, one of them twice",
            where="study",
            mend="review records, or let two examiners measure the same photos",
        )
    return Study(
        records=len(records),
        pairs=tuple(pairs),
        agreement=limits_of_agreement(pairs) if len(pairs) > 1 else None,
        en_above_1=en_above_1,
        missed=missed,
        levels=tuple(levels),
        pooled=_pooled(levels),
    )


def _reviews(records: Sequence[Record]) -> tuple[list[tuple[float, float]], int, int]:
    pairs, above, missed = [], 0, 0
    for record in records:
        newest = {one["reviewer"]: one for one in record.reviews}
        for review in newest.values():
            missed += len(review["only_first"]) + len(review["only_second"])
            for pair in review["pairs"]:
                two = pair["length_mm"]
                if two is not None:
                    pairs.append((two["first"], two["second"]))
                    above += bool(two["en"] is not None and two["en"] > 1)
    return pairs, above, missed


def _levels(records: Sequence[Record]) -> list[Level]:
    photos: dict[str, list[Record]] = defaultdict(list)
    for record in records:
        if record.fields.get("examiner", "").strip():
            for view in record.views():
                photos[str(view.photo["sha256"])].append(view)
    found = []
    for same in photos.values():
        groups: dict[str, dict[str, list[float]]] = defaultdict(lambda: defaultdict(list))
        for record in same:
            for pair in compare_records(same[0], record).pairs:
                if pair.length is not None:
                    operator = record.fields["examiner"].strip()
                    groups[pair.first][operator].append(pair.length.second)
        for letter, by_operator in groups.items():
            results = sum(len(row) for row in by_operator.values())
            if len(by_operator) >= 2 and results > len(by_operator):
                file = str(same[0].photo["file"])
                found.append(Level(photo=file, letter=letter, precision=precision(by_operator)))
    return found


def _pooled(levels: Sequence[Level]) -> tuple[float, float] | None:
    """Repeatability and reproducibility over all levels."""
    if not levels:
        return None
    inside = [
        (one.precision, one.precision.results - one.precision.operators) for one in levels
    ]
    free = sum(count for _, count in inside)
    within = sum(count * one.repeatability**2 for one, count in inside) / free
    weights = [(one, one.operators - 1) for one, _ in inside]
    among = sum(count * one.between**2 for one, count in weights) / sum(c for _, c in weights)
    return sqrt(within), sqrt(within + among)
