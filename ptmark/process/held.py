"""What a process is held against: a practice by name, and the procedure's own limits."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from ptmark.process.checks import CONDITIONS, Conditions
from ptmark.process.limits import LIMITS, Limit

__all__ = ["PRACTICE", "TEMPERATURE", "HeldAgainst", "by_practice"]

PRACTICE = "common practice"  # where a record names none
TEMPERATURE = "Surface temperature"  # limited as the stages are, °C


def by_practice(process: Mapping[str, Any] | None, practice: str) -> dict[str, Any]:
    """A record's ``process`` held against another practice; common practice is not named.

    Examples
    --------
    >>> by_practice({"practice": "ISO 3452-1", "limits": {}}, "ASME V, wrought")
    {'limits': {}, 'practice': 'ASME V, wrought'}
    >>> by_practice({"practice": "ISO 3452-1"}, "common practice")
    {}
    """
    rest = {key: value for key, value in (process or {}).items() if key != "practice"}
    return rest if practice == PRACTICE else {**rest, "practice": practice}


@dataclass(frozen=True)
class HeldAgainst:
    """A practice of `LIMITS`, with a procedure's own limits in place of its.

    ``own`` holds, by stage or `TEMPERATURE`, what the procedure gives of "least" and "most",
    min or °C, None for no limit; what it does not give is the practice's still.
    """

    practice: str = PRACTICE
    own: Mapping[str, Mapping[str, float | None]] = field(default_factory=dict)
    procedure: str = ""
    unknown: str = ""  # the practice a record names where this version has no such

    @classmethod
    def read(
        cls, process: Mapping[str, Any] | None, fields: Mapping[str, str]
    ) -> "HeldAgainst":
        """As `ptmark.record.Record` has it; ``fields`` name the procedure.

        Examples
        --------
        >>> held = HeldAgainst.read({"limits": {"Drying": {"least": 5}}}, {"procedure": "P-7"})
        >>> held.limit("Drying"), held.whose("Drying"), held.whose("Development")
        (Limit(least=5, most=None), 'procedure P-7', 'common practice')
        """
        told = process or {}
        named = str(told.get("practice", PRACTICE))
        known = named if named in LIMITS else PRACTICE
        return cls(
            practice=known,
            own=told.get("limits", {}),
            procedure=fields.get("procedure", "").strip(),
            unknown="" if known == named else named,
        )

    def usual(self, name: str) -> Limit:
        """The limit of a stage, min, or of `TEMPERATURE`, °C, by the practice alone."""
        if name == TEMPERATURE:
            return Limit(*CONDITIONS[self.practice].temperature)
        return LIMITS[self.practice][1][name]

    def limit(self, name: str) -> Limit:
        """The limit that holds: the procedure's own, else the practice's."""
        own, usual = self.own.get(name, {}), self.usual(name)
        return Limit(own.get("least", usual.least), own.get("most", usual.most))

    def whose(self, name: str) -> str:
        """Whose limit that is, as the record has it."""
        if name not in self.own:
            return self.practice
        return f"procedure {self.procedure}" if self.procedure else "typed here"

    @property
    def conditions(self) -> Conditions:
        """Temperature and light by the practice, with the procedure's own temperatures."""
        held = CONDITIONS[self.practice]
        if TEMPERATURE not in self.own:
            return held
        limit = self.limit(TEMPERATURE)
        return replace(
            held,
            temperature=(
                -math.inf if limit.least is None else limit.least,
                math.inf if limit.most is None else limit.most,
            ),
            on_temperature=self.whose(TEMPERATURE),
            outside="",
            cold="",
        )
