"""The process as a record's fields tell it, held against the figures of the trade."""

from ptmark.record.process.checks import CHECKED, CONDITIONS, Conditions, cautions
from ptmark.record.process.limits import (
    LIMITS,
    STAGES,
    Limit,
    Stage,
    judge_time,
    limit_words,
    minutes_of,
)
from ptmark.record.process.told import deviation_parts, process_told, tells_fluorescent

__all__ = [
    "CHECKED",
    "CONDITIONS",
    "LIMITS",
    "STAGES",
    "Conditions",
    "Limit",
    "Stage",
    "cautions",
    "deviation_parts",
    "judge_time",
    "limit_words",
    "minutes_of",
    "process_told",
    "tells_fluorescent",
]
