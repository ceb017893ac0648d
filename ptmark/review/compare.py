"""Two measurements of the same part, indication by indication."""

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt
import shapely
from scipy.optimize import linear_sum_assignment

from ptmark.criteria import SEVERITY
from ptmark.en import en_number
from ptmark.record import Record

__all__ = ["Compared", "Comparison", "Pair", "compare_records", "en_number"]

Array = npt.NDArray[np.float64]
Indication = dict[str, Any]

_LEAST_IOU = 0.05  # outlines that share less are not taken for the same indication


@dataclass(frozen=True, slots=True)
class Compared:
    """One quantity measured twice; mm, expanded uncertainties with k = 2."""

    first: float
    first_u: float
    second: float
    second_u: float

    @property
    def difference(self) -> float:
        """Second minus first, mm."""
        return self.second - self.first

    @property
    def en(self) -> float | None:
        """See `en_number`."""
        return en_number(self.first, self.first_u, self.second, self.second_u)

    def to_json(self) -> dict[str, float | None]:
        """As the record's schema has it."""
        return {
            "first": self.first,
            "first_u": self.first_u,
            "second": self.second,
            "second_u": self.second_u,
            "difference": round(self.difference, 4),
            "en": None if self.en is None else round(self.en, 4),
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """One indication in both records.

    ``first`` and ``second`` are its letters; ``iou`` is shared over joined area of the two
    outlines, 0 to 1; ``shapes`` and ``verdicts`` are the first's and the second's, the verdict
    the strictest of the findings that name it, None where there is none. ``outline_px`` is
    the second outline, points (x, y) in px of the second's photo.
    """

    first: str
    second: str
    iou: float
    length: Compared | None
    width: Compared | None
    shapes: tuple[str | None, str | None]
    verdicts: tuple[str | None, str | None]
    outline_px: list[list[float]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Two records side by side.

    ``frame`` is "px" where both measured the same photo, "mm" where the second took its own:
    outlines then meet only as far as the two scale references lay in the same place.
    """

    frame: str
    pairs: tuple[Pair, ...]
    only_first: tuple[str, ...]
    only_second: tuple[Indication, ...]
    verdicts: tuple[str | None, str | None]
    photo_sha256: str
    scale: str | None

    def to_json(self) -> dict[str, Any]:
        """As the record's schema has it within a review."""
        return {
            "photo": self.photo_sha256,
            "frame": self.frame,
            "scale": self.scale,
            "pairs": [
                {
                    "first": pair.first,
                    "second": pair.second,
                    "iou": round(pair.iou, 4),
                    "length_mm": None if pair.length is None else pair.length.to_json(),
                    "width_mm": None if pair.width is None else pair.width.to_json(),
                    "shapes": list(pair.shapes),
                    "verdicts": list(pair.verdicts),
                    "outline_px": pair.outline_px,
                }
                for pair in self.pairs
            ],
            "only_first": list(self.only_first),
            "only_second": [
                {name: one[name] for name in ("id", "length_mm", "outline_px")}
                for one in self.only_second
            ],
            "verdicts": list(self.verdicts),
        }

    @property
    def disagreements(self) -> list[str]:
        """What a reader must look at, in words; empty where the two agree throughout."""
        said = [f"{name} was found by the first only" for name in self.only_first]
        said += [f"{one['id']} was found by the second only" for one in self.only_second]
        for pair in self.pairs:
            for what, two in (("length", pair.length), ("width", pair.width)):
                if two is not None and two.en is not None and two.en > 1:
                    said.append(f"{what} of {pair.first}: En = {two.en:.2f}, above 1")
            for what, (one, other) in (("shape", pair.shapes), ("verdict", pair.verdicts)):
                if one != other:
                    said.append(f"{what} of {pair.first}: {one or 'none'}, {other or 'none'}")
        if self.verdicts[0] != self.verdicts[1]:
            one, other = self.verdicts
            said.append(f"verdict of the whole: {one or 'none'}, {other or 'none'}")
        return said


def compare_records(first: Record, second: Record) -> Comparison:
    """Match the indications of two records by their outlines and compare them.

    Outlines are matched one to one so that the sum of shared over joined area is greatest.
    """
    same = first.photo["sha256"] == second.photo["sha256"]
    frame = "px" if same else "mm"
    shapes = [_shapes(record, frame) for record in (first, second)]
    ious = _ious(*shapes)
    rows, columns = linear_sum_assignment(-ious)
    met = [(i, j) for i, j in zip(rows, columns, strict=True) if ious[i, j] >= _LEAST_IOU]
    called = [_called(record) for record in (first, second)]
    pairs = tuple(
        _pair(first.indications[i], second.indications[j], float(ious[i, j]), called)
        for i, j in met
    )
    mine, theirs = {i for i, _ in met}, {j for _, j in met}
    verdict = [
        None if r.evaluation is None else r.evaluation["verdict"] for r in (first, second)
    ]
    return Comparison(
        frame=frame,
        pairs=pairs,
        only_first=tuple(
            one["id"] for number, one in enumerate(first.indications) if number not in mine
        ),
        only_second=tuple(
            one for number, one in enumerate(second.indications) if number not in theirs
        ),
        verdicts=(verdict[0], verdict[1]),
        photo_sha256=str(second.photo["sha256"]),
        scale=second.scale["reference"],
    )


def _shapes(record: Record, frame: str) -> npt.NDArray[np.object_]:
    """The outlines as polygons; an empty one where there is none in this frame."""
    made = np.empty(len(record.indications), dtype=object)
    for number, one in enumerate(record.indications):
        points = one[f"outline_{frame}"]
        made[number] = shapely.make_valid(shapely.Polygon(points if points else None))
    return made


def _ious(
    first: npt.NDArray[np.object_], second: npt.NDArray[np.object_]
) -> npt.NDArray[np.float64]:
    """Shared over joined area of each with each; only those that meet are worked out."""
    made = np.zeros((len(first), len(second)))
    if made.size == 0:
        return made
    pairs = shapely.STRtree(list(second)).query(list(first), predicate="intersects")
    for i, j in pairs.T:
        joined = first[i].union(second[j]).area
        made[i, j] = first[i].intersection(second[j]).area / joined if joined > 0 else 0.0
    return made


def _pair(
    first: Indication, second: Indication, iou: float, called: list[dict[str, str]]
) -> Pair:
    names = first["id"], second["id"]
    return Pair(
        first=names[0],
        second=names[1],
        iou=min(iou, 1.0),
        length=_compared(first, second, "length"),
        width=_compared(first, second, "width"),
        shapes=(first["shape"], second["shape"]),
        verdicts=(called[0].get(names[0]), called[1].get(names[1])),
        outline_px=second["outline_px"],
    )


def _compared(first: Indication, second: Indication, name: str) -> Compared | None:
    values = [one[key] for one in (first, second) for key in (f"{name}_mm", f"{name}_u_mm")]
    return None if None in values else Compared(*values)


def _called(record: Record) -> dict[str, str]:
    """By letter, the strictest verdict of the findings that name it."""
    findings = [] if record.evaluation is None else record.evaluation["findings"]
    made: dict[str, str] = {}
    for verdict in SEVERITY:
        for one in findings:
            if one["verdict"] == verdict:
                made |= dict.fromkeys(one["indications"], verdict)
    return made
