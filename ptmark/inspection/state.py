"""What a person decides of one inspection, immutable."""

from collections.abc import Container, Sequence
from dataclasses import dataclass, field, fields, replace
from typing import Any

import numpy as np
import numpy.typing as npt

from ptmark.dye import EdgeQuality, Suggestions
from ptmark.errors import OutlineError
from ptmark.inspection.carrying import NEXT_PART
from ptmark.photo import PhotoInfo
from ptmark.record.plain import EDGE_DIGITS, OUTLINE_DIGITS
from ptmark.scale import Reference

__all__ = [
    "DISPOSITIONS",
    "Marked",
    "State",
    "check_outline",
    "free_letter",
    "letter",
    "overlap",
    "with_suggested",
]

Array = npt.NDArray[np.float64]
EdgeLine = tuple[str, tuple[tuple[float, float], ...]]  # name, points in px
# What all photos of an inspection have in common.
SHARED = (
    "profile",
    "decision_rule",
    "fields",
    "process",
    "carried",
    "decision",
    "decision_reason",
    "retest_of",
    "sizes_from",
)
DISPOSITIONS = ("", "accept", "reject", "rework and retest", "refer")


def letter(number: int) -> str:
    """Name of the indication with this number from 0: A … Z, AA, AB …

    Examples
    --------
    >>> letter(0), letter(25), letter(26), letter(701), letter(702)
    ('A', 'Z', 'AA', 'ZZ', 'AAA')
    """
    name = ""
    number += 1
    while number:
        number, digit = divmod(number - 1, 26)
        name = chr(ord("A") + digit) + name
    return name


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Marked:
    """An outline in the photo with what a person says of it.

    ``standing`` is "suggested" (not looked at yet), "taken" or "dropped"; the verdict counts
    the first two. ``relevance`` is "", "non-relevant" or "false", the latter two with a reason.

    Outline and edge are taken as finely as a record holds them, 0.01 px and 0.0001 px, so that
    going on with a record gives its numbers again.
    """

    id: str
    outline_px: Array
    edge: EdgeQuality
    standing: str = "suggested"
    confidence: float | None = None
    kind: str = ""
    note: str = ""
    relevance: str = ""
    reason: str = ""

    def __post_init__(self) -> None:
        outline_px, edge = np.round(self.outline_px, OUTLINE_DIGITS), _rounded_edge(self.edge)
        # What is fine as it is stays the same object: measurements are kept by it.
        if not np.array_equal(outline_px, self.outline_px):
            object.__setattr__(self, "outline_px", outline_px)
        if edge != self.edge:
            object.__setattr__(self, "edge", edge)

    @property
    def traced_anew(self) -> bool:
        """Whether a person traced all of it, and so has seen where it ends."""
        return self.edge.by_person and self.confidence is None


def _rounded_edge(edge: EdgeQuality) -> EdgeQuality:
    """An edge's figures to 0.0001 px."""
    traces = tuple(round(one, EDGE_DIGITS) for one in edge.traces_px)
    sizes: dict[str, Any] = {
        one.name: round(value, EDGE_DIGITS)
        for one in fields(edge)
        if isinstance(value := getattr(edge, one.name), float)
    }
    return replace(edge, traces_px=traces, **sizes)


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """Everything a person decides; immutable, so that undo is a step back to the one before.

    A state tells of one photo, the one at hand (``info``), and of what the whole inspection
    shares (`SHARED`). The other photos of the set stand in ``before`` and ``after``, each as a
    state of its own, of which only the photo's own part counts. ``sizes_from`` holds, by
    letter, the SHA-256 of the photo that the inspector chose to take a size from. ``retest_of``
    is the record's link to an earlier one, as `ptmark.record.link_to` makes it. ``process`` is
    what times and conditions are held against, as the record has it; empty for common practice.
    ``carried`` names the fields, and "profile", that come from an earlier inspection and that
    nobody has looked at since.

    ``weld_px`` are two points on the weld's centre line, px: its course, and its length where
    ``weld_length_mm`` is not given. ``edges_px`` are lines on the part that rules go by, each
    with its name ("edge" is a free edge) and its points, px. ``mode`` is one of
    `ptmark.dye.kind.MODES`, or "" to recognise it from the photo.
    """

    reference: Reference | None = None
    area_px: tuple[tuple[float, float], ...] | None = None
    marked: tuple[Marked, ...] = ()
    profile: str = ""
    decision_rule: str = "guarded"
    relief_mm: float | None = None
    weld_px: tuple[tuple[float, float], tuple[float, float]] | None = None
    weld_length_mm: float | None = None
    thickness_mm: float | None = None
    diameter_mm: float | None = None
    edges_px: tuple[EdgeLine, ...] = ()
    fields: dict[str, str] = field(default_factory=dict)
    process: dict[str, Any] = field(default_factory=dict)
    carried: frozenset[str] = frozenset()
    decision: str = ""
    decision_reason: str = ""
    retest_of: dict[str, Any] | None = None
    mode: str = ""
    info: PhotoInfo | None = None
    before: tuple["State", ...] = ()
    after: tuple["State", ...] = ()
    sizes_from: dict[str, str] = field(default_factory=dict)

    @property
    def photos(self) -> tuple["State", ...]:
        """One state for each photo of the set, in its order, with what is shared filled in."""
        shared: dict[str, Any] = {name: getattr(self, name) for name in SHARED}
        alone: dict[str, Any] = {**shared, "before": (), "after": ()}
        return tuple(replace(one, **alone) for one in (*self.before, self, *self.after))

    @property
    def letters(self) -> set[str]:
        """Every letter that an outline of the set bears."""
        photos = (*self.before, self, *self.after)
        return {one.id for photo in photos for one in photo.marked}

    def at(self, number: int, photos: "Sequence[State] | None" = None) -> "State":
        """The state with another photo, numbered from 0, at hand; of other photos if given."""
        photos = self.photos if photos is None else tuple(photos)
        shared: dict[str, Any] = {name: getattr(self, name) for name in SHARED}
        return replace(
            photos[number],
            **shared,
            before=tuple(photos[:number]),
            after=tuple(photos[number + 1 :]),
        )

    def for_another_photo(self) -> "State":
        """What holds of another photo of the same part before anybody has looked at it."""
        return State(
            mode=self.mode,
            relief_mm=self.relief_mm,
            thickness_mm=self.thickness_mm,
            diameter_mm=self.diameter_mm,
            **{name: getattr(self, name) for name in SHARED},
        )

    def for_next_part(self) -> "State":
        """What holds of the next part too (`NEXT_PART`), marked as carried over.

        Nothing that was seen, measured, timed or decided on this part is among it.
        """
        fields = {key: text for key, text in self.fields.items() if key in NEXT_PART}
        return State(
            profile=self.profile,
            decision_rule=self.decision_rule,
            mode=self.mode,
            fields=fields,
            process=self.process,
            carried=frozenset(fields) | ({"profile"} if self.profile else set()),
        )


def free_letter(used: Container[str]) -> str:
    """The first letter that is not used."""
    number = 0
    while letter(number) in used:
        number += 1
    return letter(number)


def with_suggested(state: State, found: Suggestions) -> tuple[Marked, ...]:
    """Suggestions in place of those not looked at yet; what a person touched stays."""
    kept = [m for m in state.marked if m.standing != "suggested"]
    made = list(kept)
    used = replace(state, marked=tuple(kept)).letters
    for one in found.found:
        if not any(overlap(one.outline_px, other.outline_px) for other in kept):
            new = Marked(
                id=free_letter(used),
                outline_px=one.outline_px,
                edge=one.edge,
                confidence=one.confidence,
            )
            made.append(new)
            used.add(new.id)
    return tuple(made)


def check_outline(outline_px: Array) -> None:
    """Refuse what is no outline of at least 3 finite points (OutlineError)."""
    if outline_px.ndim != 2 or outline_px.shape[1] != 2 or len(outline_px) < 3:
        raise OutlineError(
            f"an outline needs at least 3 points (x, y), got shape {outline_px.shape}"
        )
    if not np.isfinite(outline_px).all():
        raise OutlineError("the outline has a point that is not a number")


def overlap(a: Array, b: Array) -> bool:
    """Whether two outlines share at least a third of the smaller's area."""
    from shapely import Polygon, make_valid

    first, second = make_valid(Polygon(a)), make_valid(Polygon(b))
    smaller = min(first.area, second.area)
    return bool(first.intersection(second).area > smaller / 3) if smaller > 0 else False
