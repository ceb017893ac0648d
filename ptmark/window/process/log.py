"""The process log: timers that write into the record's fields, and say when it is time.

A stage that runs is told by its fields alone, so that a draft brings it back running and
undo stops it.
"""

import re
from collections.abc import Callable, Mapping
from datetime import datetime, timedelta
from typing import Any

from ptmark.process import (
    LIMITS,
    STAGES,
    HeldAgainst,
    Stage,
    by_practice,
    deviation_parts,
    judge_time,
    limit_words,
    minutes_of,
)
from ptmark.window.process.own import OwnLimits, Pair, with_pair
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
        self.kept = OwnLimits()
        session.limits_of = self.kept.of

    @property
    def held(self) -> HeldAgainst:
        """What times and conditions are held against."""
        state = self._session.state
        return HeldAgainst.read(state.process if state else None, self._fields())

    def choose(self, practice: str) -> None:
        """Hold them against another practice."""
        new = by_practice(self._process(), practice)
        self._hold(tr("hold the times against {0}", tr(practice)), new)

    def limit_to(self, name: str, pair: Pair) -> None:
        """Give the procedure its own limit, or take it away; kept under its number, if any.

        Raises
        ------
        UsageError
            If the least is over the most.
        """
        limits, procedure = with_pair(self.held.own, name, pair), self.held.procedure
        rest = {k: v for k, v in self._process().items() if k != "limits"}
        new = {**rest, "limits": limits} if limits else rest
        self._hold(tr("limit {0}", inside(name)), new)
        if procedure:
            self.kept.put(procedure, limits)

    def _process(self) -> dict[str, Any]:
        state = self._session.state
        return dict(state.process) if state else {}

    def _hold(self, what: str, process: dict[str, Any]) -> None:
        """Hold the times that a reason was given for against the new limits too."""
        fields = self._fields()
        held, parts = HeldAgainst.read(process, fields), deviation_parts(fields, whole=True)
        for name, told in parts.items():
            if name and told.startswith(", "):
                parts[name] = self._held_against(name, held) + self.reason(name)
        new = {**fields, "deviations": _joined(parts)} if parts else fields
        self._session.change(what, process=process, fields=new)

    @property
    def source(self) -> str:
        """Where the limits are from."""
        held = self.held
        said = from_core(LIMITS[held.practice][0])
        if not held.own:
            return said
        named = ", ".join(tr(name) for name in held.own)
        whose = held.procedure or tr("typed here")
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
        return "" if minutes is None else judge_time(minutes, self.held.limit(stage.name))

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
            why = text.strip().replace(";", ",")
            parts[name] = self._held_against(name, self.held) + why
        if parts.get("", "").lower() == "none":
            parts.pop("")
        what = tr("give the reason for {0}", inside(name))
        self._write(what, {"deviations": _joined(parts)})

    # -- fields -------------------------------------------------------------------------------
    def _held_against(self, name: str, held: HeldAgainst) -> str:
        """A stage's time, the limit it was held against and whose, to stand before a reason."""
        stage = next((one for one in STAGES if one.name == name), None)
        minutes = None if stage is None else self.minutes(stage)
        if stage is None or minutes is None:
            return ": "
        limit, whose = held.limit(name), held.whose(name)
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
        could_be = [at, at - timedelta(days=1)]
        if present.utcoffset() == present.astimezone().utcoffset():
            # By this machine's clock, which is put on or back one night a year: of two times
            # of one name the later, as a stage taken for longer than it was is passed.
            walls = [one.replace(tzinfo=None) for one in could_be]
            could_be = [w.replace(fold=fold).astimezone() for w in walls for fold in (1, 0)]
        return next(one for one in could_be if one <= present + timedelta(seconds=1))


def _joined(parts: Mapping[str, str]) -> str:
    """`deviation_parts` as one text, what names nothing first."""
    rest = {"": parts.get("", "")}
    return "; ".join(f"{name}{told}" for name, told in {**rest, **parts}.items() if told)
