"""The times of the process and their limits, as figures with where they come from.

The job's procedure and the maker's sheet govern.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from ptmark.process.reading import minutes

__all__ = ["LIMITS", "STAGES", "Limit", "Stage", "judge_time", "limit_words", "minutes_of"]


@dataclass(frozen=True)
class Stage:
    """One timed stage; the fields are keys of `ptmark.record.FIELDS`, "" where none is kept.

    ``begin`` and ``end`` are what the person does then. Where no start is kept, the times
    stand in ``time_field`` beside what is typed there.
    """

    name: str
    begin: str
    end: str
    start_field: str
    end_field: str
    time_field: str


@dataclass(frozen=True)
class Limit:
    """Least and most minutes, None where there is none."""

    least: float | None
    most: float | None


STAGES = (
    Stage("Drying", "Cleaned", "Dry to the eye", "", "", "pre_cleaning"),
    Stage("Penetrant dwell", "Penetrant on", "Removal begun",
          "penetration_start", "penetration_end", "penetration_time"),
    Stage("Evaporation", "Wiped clean", "Developer on", "", "", "removal_drying"),
    Stage("Development", "Developer dry", "Final look",
          "developer_dry_at", "final_look", "development_time"),
)  # fmt: skip

# By name: what is said of the source, then a limit for each stage.
LIMITS: dict[str, tuple[str, dict[str, Limit]]] = {
    "common practice": (
        "Common practice, no source; temperature and light as in ISO 3452-1 and ISO 3059.",
        {
            "Drying": Limit(None, None),
            "Penetrant dwell": Limit(10, None),
            "Evaporation": Limit(1, 2),
            "Development": Limit(10, None),
        },
    ),
    "ASME V, welds and castings": (
        "ASME BPVC Section V, Article 6: Table T-672 (2007 edition), 10 to 52 °C; T-676.1. "
        "Second-hand figures; the 2 h limit of the dwell is from a weak source.",
        {
            "Drying": Limit(None, None),
            "Penetrant dwell": Limit(5, 120),
            "Evaporation": Limit(None, None),
            "Development": Limit(10, 60),
        },
    ),
    "ASME V, wrought": (
        "ASME BPVC Section V, Article 6: Table T-672 (2007 edition), 10 to 52 °C; T-676.1. "
        "Second-hand figures; the 2 h limit of the dwell is from a weak source.",
        {
            "Drying": Limit(None, None),
            "Penetrant dwell": Limit(10, 120),
            "Evaporation": Limit(None, None),
            "Development": Limit(10, 60),
        },
    ),
    "ISO 3452-1": (
        "ISO 3452-1, 8.4.2 (2020 text): dwell, and never under the maker's time; 8.6: "
        "development, second-hand figures, longer by agreement.",
        {
            "Drying": Limit(None, None),
            "Penetrant dwell": Limit(5, 60),
            "Evaporation": Limit(None, None),
            "Development": Limit(10, 30),
        },
    ),
}


def judge_time(minutes: float, limit: Limit) -> str:
    """How a time stands: "early", "good" or "late"; "" where there is no limit at all.

    Examples
    --------
    >>> judge_time(4, Limit(5, 60)), judge_time(5, Limit(5, 60)), judge_time(61, Limit(5, 60))
    ('early', 'good', 'late')
    >>> judge_time(3, Limit(None, None))
    ''
    """
    if limit.least is None and limit.most is None:
        return ""
    if limit.least is not None and minutes < limit.least:
        return "early"
    if limit.most is not None and minutes > limit.most:
        return "late"
    return "good"


def minutes_of(fields: Mapping[str, str], stage: Stage) -> float | None:
    """How long a stage took by the record's fields; None where no minutes are told.

    Examples
    --------
    >>> minutes_of({"development_time": "2 min"}, STAGES[3])
    2.0
    """
    found = minutes(fields.get(stage.time_field, ""))
    # a method may have minutes of its own before those of the timer
    at = 0 if stage.start_field else -1
    return found[at] if found else None


def limit_words(limit: Limit) -> str:
    """A limit as the record has it, in English and in minutes.

    Examples
    --------
    >>> limit_words(Limit(10, None)), limit_words(Limit(None, 2)), limit_words(Limit(5, 60))
    ('at least 10 min', 'at most 2 min', '5 to 60 min')
    """
    if limit.least is None and limit.most is None:
        return "no limit"
    if limit.most is None:
        return f"at least {limit.least:g} min"
    if limit.least is None:
        return f"at most {limit.most:g} min"
    return f"{limit.least:g} to {limit.most:g} min"
