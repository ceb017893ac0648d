"""Reading what stands behind an option: points, lengths, sizes."""

import argparse
import re
from math import isfinite
from typing import TYPE_CHECKING

import numpy as np
import numpy.typing as npt

from ptmark.errors import UsageError
from ptmark.process import LIMITS, STAGES, minutes_of
from ptmark.record import FIELDS
from ptmark.scale import (
    Flat,
    LineReference,
    LinesReference,
    PipeReference,
    RectangleReference,
)
from ptmark.units import parse_length

if TYPE_CHECKING:
    Verbs = argparse._SubParsersAction[argparse.ArgumentParser]
else:
    Verbs = object

__all__ = [
    "PRACTICES",
    "Verbs",
    "add_practice",
    "read_fields",
    "read_line",
    "read_lines",
    "read_marks",
    "read_pipe",
    "read_points",
    "read_rectangle",
]

Point = tuple[float, float]
# Practices that a process is held against, by names to type.
PRACTICES = {name.lower().replace(",", "").replace(" ", "-"): name for name in LIMITS}


def add_practice(made: argparse.ArgumentParser) -> None:
    """The option that names what the process is held against."""
    made.add_argument(
        "--practice",
        choices=list(PRACTICES),
        help="whose limits of times, temperature and light the process is held against "
        "(common-practice)",
    )


def read_points(text: str, where: str, *, least: int, exactly: bool = False) -> list[Point]:
    """Points from ``X1,Y1,X2,Y2,…``, px; UsageError where they are not numbers or too few."""
    try:
        values = [float(word) for word in re.split(r"[,;\s]+", text.strip()) if word]
    except ValueError as exc:
        raise UsageError(
            f"'{text}' are not numbers", where=where, mend="write X1,Y1,X2,Y2,… in pixels"
        ) from exc
    count = len(values) // 2
    if len(values) % 2 or count < least or (exactly and count != least):
        need = f"{least} points" if exactly else f"at least {least} points"
        raise UsageError(f"{len(values)} numbers given", where=where, mend=f"give {need} x,y")
    if not all(isfinite(v) for v in values):
        raise UsageError("a coordinate is not finite", where=where, mend="give pixels")
    return list(zip(values[::2], values[1::2], strict=True))


def read_marks(texts: list[str] | None, photos: int) -> list[npt.NDArray[np.float64]]:
    """The same marks in each photo from ``--marks``, px; none where it was not given.

    Raises
    ------
    UsageError
        If they are not there for each photo, or not as many in each.
    """
    if texts is None:
        return []
    if len(texts) != photos:
        raise UsageError(
            f"given {len(texts)} times for {photos} photos",
            where="--marks",
            mend="give it once for each photo",
        )
    marks = [np.array(read_points(text, "--marks", least=4), float) for text in texts]
    counts = [len(one) for one in marks]
    if len(set(counts)) > 1:
        raise UsageError(
            f"{' and '.join(map(str, counts))} marks",
            where="--marks",
            mend="give the same marks in the same order",
        )
    return marks


def read_fields(texts: list[str]) -> dict[str, str]:
    """Fields of the record from ``KEY=TEXT``; UsageError where a key is none."""
    known = {field.key for field in FIELDS}
    fields = {}
    for text in texts:
        key, sign, value = text.partition("=")
        if not sign or key not in known:
            raise UsageError(
                f"'{text}' is no field",
                where="--field",
                mend=f"write KEY=TEXT, KEY one of {', '.join(sorted(known))}",
            )
        fields[key] = value
    return _checked_times(fields)


def _checked_times(fields: dict[str, str]) -> dict[str, str]:
    """A time without its unit would be held against no limit."""
    for stage in STAGES:
        key = stage.time_field
        told = bool(stage.start_field) and any(map(str.isdigit, fields.get(key, "")))
        if told and minutes_of(fields, stage) is None:
            raise UsageError(
                f"'{fields[key]}' is no time in minutes",
                where=f"--field {key}",
                mend="write the unit, such as 12 min",
            )
    return fields


def _split(text: str, where: str, form: str) -> tuple[str, str]:
    head, sign, tail = text.partition("=")
    if not sign:
        raise UsageError(f"'{text}' has no '='", where=where, mend=f"write {form}")
    return head, tail


def read_line(text: str, where: str = "--line") -> LineReference:
    """A line reference from ``X1,Y1,X2,Y2=LENGTHmm``."""
    head, tail = _split(text, where, "X1,Y1,X2,Y2=150mm")
    first, second = read_points(head, where, least=2, exactly=True)
    return LineReference(ends_px=(first, second), length_mm=parse_length(tail, where=where))


def read_lines(texts: list[str]) -> LineReference | LinesReference:
    """One line, or two lines at right angles where the option stands twice."""
    lines = [read_line(text) for text in texts]
    if len(lines) == 1:
        return lines[0]
    if len(lines) != 2:
        raise UsageError(f"{len(lines)} lines given", where="--line", mend="give one or two")
    return LinesReference(
        first_px=lines[0].ends_px,
        first_mm=lines[0].length_mm,
        second_px=lines[1].ends_px,
        second_mm=lines[1].length_mm,
    )


def read_pipe(text: str, on: Flat | None) -> PipeReference:
    """A pipe from ``POINTS=DIAMETERmm``.

    Four points: two on each outer edge. Two: a line along the pipe. None: with ``on`` a line
    along it.

    Raises
    ------
    UsageError
        If the points or the diameter cannot be read, or do not go together with ``on``.
    """
    where = "--pipe"
    head, sign, tail = text.rpartition("=")
    diameter = parse_length(tail, where=where)
    points = tuple(read_points(head, where, least=2)) if sign else ()
    if len(points) == 4:
        return PipeReference(edges_px=points, diameter_mm=diameter, on=on)
    if len(points) == 2 or (not points and isinstance(on, LineReference)):
        return PipeReference(axis_px=points, diameter_mm=diameter, on=on)
    if on is None:
        mend = "give two points on each outer edge, or two on a line along the pipe"
    else:
        mend = (
            "give two points along the pipe, where the reference touches it, or two on each "
            "outer edge"
        )
    raise UsageError(f"{len(points)} points given", where=where, mend=mend)


def read_rectangle(text: str) -> RectangleReference:
    """A rectangle reference from ``X1,Y1,…,X4,Y4=WIDTHxHEIGHTmm``."""
    where = "--rectangle"
    head, tail = _split(text, where, "X1,Y1,…,X4,Y4=85.6x53.98mm")
    a, b, c, d = read_points(head, where, least=4, exactly=True)
    sizes = re.split(r"\s*[x×]\s*", tail.strip())
    if len(sizes) != 2:
        raise UsageError(
            f"'{tail}' is not WIDTHxHEIGHT", where=where, mend="write 85.6x53.98mm"
        )
    unit = "in" if re.search(r"(in|\"|″)\s*$", sizes[1]) else "mm"
    return RectangleReference(
        corners_px=(a, b, c, d),
        width_mm=parse_length(sizes[0], where=where, default_unit=unit),
        height_mm=parse_length(sizes[1], where=where),
    )
