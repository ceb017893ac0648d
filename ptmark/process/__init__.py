"""The process as a record's fields tell it, held against the figures of the trade."""

from ptmark.process.checks import CHECKED, CONDITIONS, cautions
from ptmark.process.held import PRACTICE, TEMPERATURE, HeldAgainst, by_practice
from ptmark.process.limits import (
    LIMITS,
    STAGES,
    Limit,
    Stage,
    judge_time,
    limit_words,
    minutes_of,
)
from ptmark.process.told import deviation_parts, process_told, tells_fluorescent

__all__ = [
    "CHECKED",
    "CONDITIONS",
    "LIMITS",
    "PRACTICE",
    "STAGES",
    "TEMPERATURE",
    "HeldAgainst",
    "Limit",
    "Stage",
    "by_practice",
    "cautions",
    "deviation_parts",
    "judge_time",
    "limit_words",
    "minutes_of",
    "process_told",
    "tells_fluorescent",
]
