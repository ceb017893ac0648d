"""What many records tell of those who measure: pairs of reviews, and repeated records."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import sqrt
from statistics import variance

from ptmark.errors import RecordError
from ptmark.record import Record
from ptmark.review.agreement import Agreement, Precision, limits_of_agreement, precision
from ptmark.review.compare import compare_records

__all__ = ["Level", "Operator", "Study", "study_of"]

PROGRAM = "the program, outlines left as it found them"


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """One indication that several operators measured: its photo, letter and precision."""

    photo: str
    letter: str
    precision: Precision


@dataclass(frozen=True, slots=True, kw_only=True)
class Operator:
    """One who measured indications again: how many, in how many results, and s_r in mm.

    The repeatability is the root mean square of the standard deviations of each indication's
    results, weighted by their degrees of freedom (ISO 5725-2:1994, 7.4.5, one laboratory).
    """

    name: str
    indications: int
    results: int
    repeatability: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """Lengths across many records, mm.

    ``pairs`` are (first, second) of every reviewed indication, from the newest review by each
    reviewer; ``agreement`` is None with fewer than two. ``en_above_1`` counts pairs that
    disagree by their own uncertainties. ``levels`` are the indications that two operators or
    more measured, one of them twice; ``pooled`` is the root mean square over them, weighted
    by degrees of freedom, None where there are none. ``operators`` are examiners, reviewers
    and the program itself, each alone.
    """

    records: int
    pairs: tuple[tuple[float, float], ...]
    agreement: Agreement | None
    en_above_1: int
    missed: int
    levels: tuple[Level, ...]
    pooled: tuple[float, float] | None
    operators: tuple[Operator, ...] = ()

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
        operators=tuple(_operators(records)),
    )


def _reviews(records: Sequence[Record]) -> tuple[list[tuple[float, float]], int, int]:
    pairs, above, missed = [], 0, 0
    for record in records:
        newest = {(one["reviewer"], one["photo"]): one for one in record.reviews}
        for review in newest.values():
            missed += len(review["only_first"]) + len(review["only_second"])
            for pair in review["pairs"]:
                two = pair["length_mm"]
                if two is not None:
                    pairs.append((two["first"], two["second"]))
                    above += bool(two["en"] is not None and two["en"] > 1)
    return pairs, above, missed


def _by_photo(records: Sequence[Record]) -> dict[str, list[Record]]:
    """The records of each photo that somebody is named for, by its SHA-256."""
    photos: dict[str, list[Record]] = defaultdict(list)
    for record in records:
        if record.fields.get("examiner", "").strip():
            for view in record.views():
                photos[str(view.photo["sha256"])].append(view)
    return photos


def _operators(records: Sequence[Record]) -> list[Operator]:
    """Each one's own spread; what a reviewer keeps as a record too counts once."""
    told: dict[str, dict[tuple[str, str], list[float]]] = defaultdict(lambda: defaultdict(list))
    for sha256, same in _by_photo(records).items():
        letters = []
        for record in same:
            rows = {row["id"]: row for row in record.indications}
            pairs = [p for p in compare_records(same[0], record).pairs if p.length is not None]
            letters.append({pair.second: pair.first for pair in pairs})
            for pair in pairs:
                place, length = (sha256, pair.first), rows[pair.second]["length_mm"]
                told[record.fields["examiner"].strip()][place].append(length)
                if rows[pair.second]["source"] == "suggested":
                    told[PROGRAM][place].append(length)
        for record, known in zip(same, letters, strict=True):
            for review in record.reviews:
                for pair in review["pairs"] if review["photo"] == sha256 else ():
                    letter, two = known.get(pair["first"]), pair["length_mm"]
                    if letter is None or two is None:
                        continue
                    results = told[review["reviewer"].strip()][sha256, letter]
                    if two["second"] not in results:
                        results.append(two["second"])
    names = sorted(told, key=lambda name: (name == PROGRAM, name))
    made = (_operator(name, told[name].values()) for name in names)
    return [one for one in made if one is not None]


def _operator(name: str, places: Iterable[Sequence[float]]) -> Operator | None:
    """None for who measured nothing again."""
    again = [results for results in places if len(results) > 1]
    if not again:
        return None
    free = sum(len(results) - 1 for results in again)
    squares = sum((len(results) - 1) * variance(results) for results in again)
    return Operator(
        name=name,
        indications=len(again),
        results=sum(len(results) for results in again),
        repeatability=sqrt(squares / free),
    )


def _levels(records: Sequence[Record]) -> list[Level]:
    found = []
    for same in _by_photo(records).values():
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
