"""The process log: timers that write into the record's fields, and say when it is time.

A stage that runs is told by its fields alone, so that a draft brings it back running and
undo stops it.
"""

import math
import re
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

from ptmark.process import (
    CONDITIONS,
    LIMITS,
    STAGES,
    Conditions,
    Limit,
    Stage,
    deviation_parts,
    judge_time,
    limit_words,
    minutes_of,
)
from ptmark.window.process.own import TEMPERATURE, OwnLimits, over
from ptmark.window.session import Session
from ptmark.window.words import from_core, inside, tr

__all__ = ["ProcessLog", "now"]

_CLOCK = re.compile(r"\b(\d{1,2}):(\d{2})(?::(\d{2}))?")
_BEGUN = re.compile(r"\bbegun (\d{2}:\d{2}:\d{2})$")
_TIMED = re.compile(r"\d+(?:[.,]\d+)? min \([\d:]{8} to [\d:]{8}\)$")


def now() -> datetime:
    """The time on the wall: what a person would write into the record."""
    return datetime.now().astimezone()


class ProcessLog:
    """Reads and writes the times of one inspection's fields."""

    def __init__(self, session: Session, clock: Callable[[], datetime] = now) -> None:
        self._session = session
        self.clock = clock
        self.practice = next(iter(LIMITS))
        self.own = OwnLimits()

    @property
    def procedure(self) -> str:
        """The number of the procedure as the record has it."""
        return self._fields().get("procedure", "").strip()

    def limit(self, stage: Stage) -> Limit:
        """The limit of a stage: the procedure's own, else by the practice that is chosen."""
        return over(self.standard(stage.name), self.own.of(self.procedure).get(stage.name))

    def standard(self, name: str) -> Limit:
        """The limit of a stage, or of `TEMPERATURE` in °C, by the practice alone."""
        if name == TEMPERATURE:
            return Limit(*CONDITIONS[self.practice].temperature)
        return LIMITS[self.practice][1][name]

    @property
    def conditions(self) -> Conditions:
        """Temperature and light by the practice, with the procedure's own temperatures."""
        held = CONDITIONS[self.practice]
        own = self.own.of(self.procedure).get(TEMPERATURE)
        if own is None:
            return held
        limit = over(Limit(*held.temperature), own)
        named = self.procedure
        return replace(
            held,
            temperature=(
                -math.inf if limit.least is None else limit.least,
                math.inf if limit.most is None else limit.most,
            ),
            on_temperature=f"procedure {named}" if named else "typed here",
            outside="",
            cold="",
        )

    @property
    def source(self) -> str:
        """Where the limits are from."""
        own = self.own.of(self.procedure)
        said = from_core(LIMITS[self.practice][0])
        if not own:
            return said
        named = ", ".join(tr(name) for name in own)
        whose = self.procedure or tr("typed here")
        return tr("By the procedure ({0}): {1}. Else: {2}", whose, named, said)

    def begun_at(self, stage: Stage) -> datetime | None:
        """When a stage that still runs was begun; None where it does not run."""
        fields = self._fields()
        if stage.start_field:
            ended = fields.get(stage.end_field, "").strip()
            text = "" if ended else fields.get(stage.start_field, "")
        else:
            found = _BEGUN.search(fields.get(stage.time_field, ""))
            text = found[1] if found else ""
        return self._today(text)

    def minutes(self, stage: Stage) -> float | None:
        """How long it has run so far, or ran; None where it was not timed."""
        begun = self.begun_at(stage)
        if begun is not None:
            return (self.clock() - begun).total_seconds() / 60
        return minutes_of(self._fields(), stage)

    def standing(self, stage: Stage) -> str:
        """How it stands, "early", "good" or "late", by the chosen limits; else ""."""
        minutes = self.minutes(stage)
        return "" if minutes is None else judge_time(minutes, self.limit(stage))

    def begin(self, stage: Stage) -> None:
        """Begin, or begin afresh."""
        at = self.clock().strftime("%H:%M:%S")
        if stage.start_field:
            new = {stage.start_field: at, stage.end_field: "", stage.time_field: ""}
        else:
            new = {stage.time_field: f"{self._typed(stage)}begun {at}"}
        self._write(tr("begin {0}", inside(stage.name)), new)

    def end(self, stage: Stage) -> None:
        """End what runs; the time goes into the record in minutes."""
        begun, minutes = self.begun_at(stage), self.minutes(stage)
        if begun is None or minutes is None:
            return
        at, said = self.clock().strftime("%H:%M:%S"), f"{minutes:.1f} min"
        if stage.end_field:
            new = {stage.end_field: at, stage.time_field: said}
        else:
            said = f"{said} ({begun:%H:%M:%S} to {at})"
            new = {stage.time_field: f"{self._typed(stage)}{said}"}
        self._write(tr("end {0}", inside(stage.name)), new)

    def reason(self, name: str) -> str:
        """Why a stage or a field was outside its limits, as the inspector has it."""
        return deviation_parts(self._fields()).get(name, "")

    def give_reason(self, name: str, text: str) -> None:
        """Keep the reason, under the stage's or the field's name, among the deviations."""
        parts = deviation_parts(self._fields(), whole=True)
        parts.pop(name, None)
        if text.strip():
            parts[name] = self._held_against(name) + text.strip().replace(";", ",")
        rest = parts.pop("", "")
        rest = "" if rest.lower() == "none" else rest
        named = [f"{name}{told}" for name, told in parts.items()]
        new = "; ".join([*([rest] if rest else []), *named])
        self._write(tr("give the reason for {0}", inside(name)), {"deviations": new})

    def renew_reasons(self) -> None:
        """Hold the times that a reason was given for against the limits as they are now."""
        for name, told in deviation_parts(self._fields(), whole=True).items():
            reason = self.reason(name)
            if name and told.startswith(", ") and told != self._held_against(name) + reason:
                self.give_reason(name, reason)

    # -- fields -------------------------------------------------------------------------------
    def _held_against(self, name: str) -> str:
        """A stage's time, the limit it was held against and whose, to stand before a reason."""
        stage = next((one for one in STAGES if one.name == name), None)
        minutes = None if stage is None else self.minutes(stage)
        if stage is None or minutes is None:
            return ": "
        limit, own = self.limit(stage), stage.name in self.own.of(self.procedure)
        whose = f"procedure {self.procedure}" if own else self.practice
        whose = whose.replace(";", ",").replace(": ", " ").strip()
        return f", {minutes:.1f} min against {limit_words(limit)} ({whose}): "

    def _typed(self, stage: Stage) -> str:
        """What a person typed where the times go too, such as the method."""
        text = self._fields().get(stage.time_field, "").strip()
        for times in (_BEGUN, _TIMED):
            text = times.sub("", text).strip().rstrip(";")
        return f"{text}; " if text else ""

    def _fields(self) -> dict[str, str]:
        state = self._session.state
        return state.fields if state else {}

    def _write(self, what: str, new: dict[str, str]) -> None:
        self._session.fill_in(what, new)

    def _today(self, text: str) -> datetime | None:
        """A time of day as the last such time; stages end within the day."""
        found = _CLOCK.search(text)
        if found is None:
            return None
        hour, minute, second = (int(part or 0) for part in found.groups())
        if hour > 23 or minute > 59 or second > 59:
            return None
        present = self.clock()
        at = present.replace(hour=hour, minute=minute, second=second, microsecond=0)
        return at if at <= present + timedelta(seconds=1) else at - timedelta(days=1)
