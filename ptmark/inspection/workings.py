"""What follows from decisions, for every photo of an inspection: worked out once and kept.

Nothing here holds pixels. A photo that is not at hand is opened again where its pixels are
needed, one at a time.
"""

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import replace

import numpy as np
import numpy.typing as npt

from ptmark.criteria import Profile
from ptmark.dye import (
    LeftOut,
    Remark,
    covered_remark,
    dense_remark,
    dull_remark,
    ends_covered,
    is_overexposed,
    is_uneven,
    reach_card,
    uneven_remark,
    unseen_remark,
)
from ptmark.errors import OutlineError, ScaleError
from ptmark.inspection.again import open_again
from ptmark.inspection.area import outside_remark
from ptmark.inspection.hollow import hollow_remark, is_hollow
from ptmark.inspection.looking_over import crown_remark, on_weld_remark, remarks_on
from ptmark.inspection.photo_facts import PhotoFacts
from ptmark.inspection.searched import Searched
from ptmark.inspection.state import Marked, State
from ptmark.least import Least, those
from ptmark.measure import Conditions, Measurement, measure_outlines
from ptmark.photo import CameraProfile, Photo, PhotoInfo
from ptmark.scale import Reference, SurfaceMap, solve

__all__ = ["Workings"]

Look = tuple[tuple[LeftOut, ...], float | None]  # left out, haze
_NO_LOOK: Look = ((), None)
_Array = npt.NDArray[np.float64]
_Question = Callable[[Photo, Sequence[_Array]], list[bool]]  # of outlines in a photo


def _of_each(asked: Callable[[Photo, _Array], bool]) -> _Question:
    return lambda photo, outlines_px: [asked(photo, one) for one in outlines_px]


_OVEREXPOSED, _HOLLOW, _UNEVEN = map(_of_each, (is_overexposed, is_hollow, is_uneven))


class Workings:
    """Surfaces, measurements, remarks and the last look, by photo.

    What stands in a key by `id` is kept in the value too, so that no other object can take
    its number.
    """

    def __init__(self) -> None:
        self._solved: dict[
            tuple[int, str, CameraProfile | None], tuple[Reference, SurfaceMap | ScaleError]
        ] = {}
        self._measured: dict[
            tuple[int, int, float | None], tuple[Marked, SurfaceMap, Measurement]
        ] = {}
        self._remarked: dict[str, tuple[tuple[object, ...], tuple[Remark, ...]]] = {}
        self._looks: dict[str, Look] = {}
        self.searched = Searched()
        self._told: dict[tuple[_Question, int], tuple[object, bool]] = {}
        self.facts = PhotoFacts()

    def copy(self) -> "Workings":
        """The same on its own, for a worker thread."""
        other = Workings()
        other._solved = dict(self._solved)
        other._measured, other._remarked = dict(self._measured), dict(self._remarked)
        other._looks, other._told = dict(self._looks), dict(self._told)
        other.searched = self.searched.copy()
        other.facts = self.facts.copy()
        return other

    def learn(self, other: "Workings") -> None:
        """Take over what a copy has worked out."""
        self._solved.update(other._solved)
        self._measured.update(other._measured)
        self._remarked.update(other._remarked)
        self._told.update(other._told)
        self.facts.learn(other.facts)

    def begin(self, sha256: str) -> None:
        """Forget everything but the surfaces of this photo."""
        kept = {key: one for key, one in list(self._solved.items()) if key[1] == sha256}
        self.__init__()  # type: ignore[misc]
        self._solved = kept

    def solve(self, reference: Reference, photo: Photo) -> SurfaceMap:
        """The surface that a reference gives; ScaleError where it is refused."""
        key = (id(reference), photo.info.sha256, photo.info.calibrated)
        try:
            made = solve(reference, photo)
        except ScaleError as exc:
            self._solved[key] = (reference, exc)
            raise
        self._solved[key] = (reference, made)
        return made

    def surface(self, reference: Reference, info: PhotoInfo, photo: Photo | None) -> SurfaceMap:
        """The same, as it was solved before where it was; opens the photo where need be.

        Raises
        ------
        ScaleError
            If the reference is refused.
        PhotoError
            If the photo is needed and cannot be opened.
        """
        kept = self._solved.get((id(reference), info.sha256, info.calibrated))
        if kept is None:
            return self.solve(reference, photo or open_again(info))
        if isinstance(kept[1], ScaleError):
            raise kept[1]
        return kept[1]

    def measurement(
        self,
        one: Marked,
        surface: SurfaceMap,
        relief_mm: float | None,
        photo: Callable[[], Photo],
        beside: Sequence[Marked] = (),
    ) -> Measurement:
        """Measured values of an outline, kept until outline, edge or surface change.

        Those ``beside`` it are measured on the same occasion, which costs less than alone.
        ``photo`` is called where the light about one of them is not known.
        """
        kept = self._kept(one, surface, relief_mm)
        if kept is not None:
            return kept
        others = [m for m in beside if m is not one]
        missing = [m for m in others if self._kept(m, surface, relief_mm) is None]
        try:
            self._measure([one, *missing], surface, relief_mm, photo)
        except OutlineError:
            if not missing:
                raise
            for other in missing:  # one of them cannot be measured
                with suppress(OutlineError):
                    self._measure([other], surface, relief_mm, photo)
            self._measure([one], surface, relief_mm, photo)
        return self._measured[id(one.outline_px), id(surface), relief_mm][2]

    def _kept(
        self, one: Marked, surface: SurfaceMap, relief_mm: float | None
    ) -> Measurement | None:
        kept = self._measured.get((id(one.outline_px), id(surface), relief_mm))
        return None if kept is None or kept[0].edge is not one.edge else kept[2]

    def _measure(
        self,
        marked: Sequence[Marked],
        surface: SurfaceMap,
        relief_mm: float | None,
        photo: Callable[[], Photo],
    ) -> None:
        outlines, edges = [one.outline_px for one in marked], [one.edge for one in marked]
        conditions = Conditions(relief_mm=relief_mm)
        made = measure_outlines(outlines, surface, edges, conditions)
        bright = self._which(_OVEREXPOSED, outlines, photo)
        hidden = self._hidden(marked, surface, photo)
        for one, found, overexposed in zip(marked, made, bright, strict=True):
            key = (id(one.outline_px), id(surface), relief_mm)
            covered = one.id in hidden and not one.traced_anew
            seen = those({Least.OVEREXPOSED: overexposed, Least.COVERED: covered})
            self._measured[key] = (one, surface, replace(found, least=found.least | seen))

    def measurement_in_view(
        self,
        one: Marked,
        surface: SurfaceMap,
        relief_mm: float | None,
        photo: Callable[[], Photo],
        beside: Sequence[Marked] = (),
    ) -> Measurement | None:
        """The same; None where a pipe's surface turns away too far there."""
        if not surface.flat and not surface.in_view(one.outline_px):
            return None
        return self.measurement(one, surface, relief_mm, photo, beside)

    def look_of(self, info: PhotoInfo) -> Look:
        """What the last look at a photo left out, and its haze; nothing before the first."""
        return self._looks.get(info.sha256, _NO_LOOK)

    def keep_look(self, info: PhotoInfo, look: Look) -> None:
        """Keep a look for when the photo is left."""
        self._looks[info.sha256] = look

    def remarks(
        self,
        state: State,
        surface: SurfaceMap | None,
        look: Look,
        profile: Profile | None,
        photo: Callable[[], Photo],
    ) -> tuple[Remark, ...]:
        """Remarks on the photo of a state; ``photo`` is called where they are not kept."""
        sha256 = "" if state.info is None else state.info.sha256
        weld = crown_remark(state)
        key = (surface, look[1], profile, state.area_px, state.mode, weld)
        kept = self._remarked.get(sha256)
        if kept is None or kept[0] != key:
            made = remarks_on(photo(), state, surface, look[1], profile)
            kept = self._remarked[sha256] = (key, made)
        more = (
            unseen_remark(look[0]),
            dense_remark(one.reason for one in look[0]),
            dull_remark(one.reason for one in look[0]),
            covered_remark(self._covered(state, surface, photo)),
            hollow_remark(self._hollow_ones(state, photo)),
            uneven_remark(self._uneven(state, photo)),
            on_weld_remark(state, surface),
            outside_remark(state),
        )
        return (*kept[1], *(one for one in more if one is not None))

    def _covered(
        self, state: State, surface: SurfaceMap | None, photo: Callable[[], Photo]
    ) -> list[str]:
        """Letters of those that something covers an end of, where their sizes do not say so."""
        counted = [one for one in state.marked if one.standing != "dropped"]
        marked = [one for one in counted if surface is None or one.traced_anew]
        hidden = self._hidden(marked, surface, photo)
        return [one.id for one in marked if one.id in hidden]

    def _hidden(
        self, marked: Sequence[Marked], surface: SurfaceMap | None, photo: Callable[[], Photo]
    ) -> set[str]:
        """Letters of the indications that something covers an end of."""
        told = set(self._letters(ends_covered, marked, photo))
        if surface is not None:
            reach = reach_card(surface, [one.outline_px for one in marked])
            told |= {one.id for one, holds in zip(marked, reach, strict=True) if holds}
        return told

    def _hollow_ones(self, state: State, photo: Callable[[], Photo]) -> list[str]:
        """Letters of the outlines by hand that enclose a clean middle."""
        drawn = [
            one for one in state.marked if one.edge.by_person and one.standing != "dropped"
        ]
        return self._letters(_HOLLOW, drawn, photo)

    def _uneven(self, state: State, photo: Callable[[], Photo]) -> list[str]:
        """Letters of the suggestions that hold far less dye in most of them."""
        unseen = [one for one in state.marked if one.standing == "suggested"]
        return self._letters(_UNEVEN, unseen, photo)

    def _letters(
        self, asked: _Question, marked: Sequence[Marked], photo: Callable[[], Photo]
    ) -> list[str]:
        told = self._which(asked, [one.outline_px for one in marked], photo)
        return [one.id for one, holds in zip(marked, told, strict=True) if holds]

    def _which(
        self,
        asked: _Question,
        outlines_px: Sequence[_Array],
        photo: Callable[[], Photo],
    ) -> list[bool]:
        """What is asked of each outline; ``photo`` is called where one is not known."""
        new = [one for one in outlines_px if (asked, id(one)) not in self._told]
        if new:
            told = zip(new, asked(photo(), new), strict=True)
            self._told.update({(asked, id(one)): (one, holds) for one, holds in told})
        return [self._told[asked, id(one)][1] for one in outlines_px]
