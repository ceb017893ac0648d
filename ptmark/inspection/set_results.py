"""What follows from the states of all photos of an inspection, up to the record."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property

from ptmark.criteria import Evaluation, Scene, evaluate
from ptmark.errors import PtmarkError, ScaleError
from ptmark.inspection.again import open_again
from ptmark.inspection.at_hand import AtHand
from ptmark.inspection.handing_on import Blind, Distances, distances_of, record_of, scene_of
from ptmark.inspection.set_sizes import Sizes, sizes_of
from ptmark.inspection.state import Marked, State
from ptmark.inspection.workings import Look
from ptmark.measure import Measurement
from ptmark.photo import Photo, PhotoInfo
from ptmark.record import Record, joined
from ptmark.scale import SurfaceMap
from ptmark.series import Timed, timed

__all__ = [
    "Results",
    "Worked",
    "blind_of",
    "look_of",
    "results_of",
]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Worked:
    """One photo of the set with what follows from its state; ``surface`` None without scale."""

    state: State
    info: PhotoInfo
    surface: SurfaceMap | None
    measured: tuple[tuple[Marked, Measurement | None], ...]


class Results:
    """The photos of a set, worked out, and what their letters join."""

    def __init__(
        self, photos: Sequence[Worked], sizes_from: dict[str, str], times: Timed | None = None
    ) -> None:
        self.photos = tuple(photos)
        self._sizes_from = sizes_from
        self._times = times if times is not None and times.is_series else None

    @cached_property
    def seen_again(self) -> dict[str, Sizes]:
        """The indications that several photos show, by letter."""
        shown: dict[str, list[tuple[int, Measurement | None]]] = {}
        for number, photo in enumerate(self.photos):
            for one, made in photo.measured:
                shown.setdefault(one.id, []).append((number, made))
        numbers = {photo.info.sha256: number for number, photo in enumerate(self.photos)}
        return {
            name: sizes_of(places, numbers.get(self._sizes_from.get(name, "")), self._times)
            for name, places in shown.items()
            if len(places) > 1
        }

    @property
    def sizes(self) -> dict[str, Measurement]:
        """The size of record of each of them that is measured."""
        found = self.seen_again.items()
        return {name: size for name, one in found if (size := one.size) is not None}

    @cached_property
    def known(self) -> tuple[Distances, ...]:
        """How well distances are known in each photo, for its verdict and its record."""
        return tuple(distances_of(one.measured, one.state, one.surface) for one in self.photos)

    def evaluations(self, inspection: AtHand) -> list[Evaluation | None]:
        """Each photo judged on its own surface; None where it has no scale, or no criteria."""
        profile, rule = inspection.profile, inspection.state.decision_rule
        return [
            None
            if profile is None or one.surface is None
            else evaluate(profile, self._scene(one, known, inspection), rule)
            for one, known in zip(self.photos, self.known, strict=True)
        ]

    def _scene(self, one: Worked, known: Distances, inspection: AtHand) -> Scene:
        return scene_of(
            one.measured,
            one.state,
            one.surface,
            self.sizes,
            known=known,
            left_out=look_of(inspection, one.info)[0],
            blind=blind_of(inspection, one.info, one.state, one.surface, one.measured),
        )

    def record(self, inspection: AtHand, record_id: str | None, created: str | None) -> Record:
        """The whole set as one record.

        Raises
        ------
        PhotoError
            If a photo is needed again and cannot be opened.
        """
        alone, parts = len(self.photos) == 1, []
        judged = self.evaluations(inspection)
        for one, known, evaluation in zip(self.photos, self.known, judged, strict=True):
            look = look_of(inspection, one.info)
            # The disposition is that of the set, not of each photo.
            state = one.state if alone else replace(one.state, decision="", decision_reason="")
            part = record_of(
                one.measured,
                state,
                info=one.info,
                surface=one.surface,
                known=known,
                look=look,
                blind=blind_of(inspection, one.info, one.state, one.surface, one.measured),
                evaluation=evaluation,
                remarks=inspection.workings.remarks(
                    one.state,
                    one.surface,
                    look,
                    inspection.profile,
                    lambda info=one.info: _photo_of(inspection, info),  # type: ignore[misc]
                ),
                stamp=(record_id, created),
            )
            parts.append(part)
        again = {name: (one.of_record, one.chosen) for name, one in self.seen_again.items()}
        told = (inspection.state.decision, inspection.state.decision_reason)
        minutes = () if self._times is None else self._times.minutes
        return parts[0] if alone else joined(parts, again, told, minutes)


def results_of(inspection: AtHand) -> Results:
    """Work out every photo of an inspection.

    Raises
    ------
    PhotoError
        If a photo is needed again for its scale and cannot be opened.
    """
    here = inspection.photo
    if here is None:
        return Results((), {})
    made = []
    for state in inspection.state.photos:
        info = state.info or here.info
        surface = _surface_of(inspection, state, info)
        measured = tuple(
            (one, _measured(inspection, one, surface, state, info))
            for one in state.marked
            if one.standing != "dropped"
        )
        made.append(Worked(state=state, info=info, surface=surface, measured=measured))
    return Results(made, inspection.state.sizes_from, _times(made, inspection))


def _times(photos: Sequence[Worked], inspection: AtHand) -> Timed | None:
    """When the photos were taken; None where that is not known of each of them."""
    profile = inspection.profile
    taken = [(one.info.path.name, one.info.camera.taken) for one in photos]
    try:
        developed = inspection.state.fields.get("developer_dry_at", "")
        return timed(developed, taken, "" if profile is None else profile.name)
    except PtmarkError:
        return None


def _is_here(inspection: AtHand, info: PhotoInfo) -> bool:
    return inspection.photo is not None and inspection.photo.info.sha256 == info.sha256


def _surface_of(inspection: AtHand, state: State, info: PhotoInfo) -> SurfaceMap | None:
    if _is_here(inspection, info):
        return inspection.surface
    if state.reference is None:
        return None
    try:
        return inspection.workings.surface(state.reference, info, None)
    except ScaleError:
        return None


def _measured(
    inspection: AtHand,
    one: Marked,
    surface: SurfaceMap | None,
    state: State,
    info: PhotoInfo,
) -> Measurement | None:
    if surface is None:
        return None
    return inspection.workings.measurement_in_view(
        one, surface, state.relief_mm, lambda: _photo_of(inspection, info), state.marked
    )


def look_of(inspection: AtHand, info: PhotoInfo) -> Look:
    """What the last look at a photo of the set left out, and its haze."""
    if _is_here(inspection, info):
        return inspection.left_out, inspection.haze
    return inspection.workings.look_of(info)


def blind_of(
    inspection: AtHand,
    info: PhotoInfo,
    state: State,
    surface: SurfaceMap | None,
    marked: Sequence[object],
) -> Blind:
    """What a photo of the set cannot show; it is opened once where that is not known."""

    def photo() -> Photo:
        return _photo_of(inspection, info)

    known, searched = inspection.workings.blindness, inspection.workings.searched
    colourless = not marked and known.colourless(info, photo)
    unlooked = not state.marked and not searched.whole(info.sha256, state)
    return Blind(
        colourless=colourless,
        overexposed=known.overexposed(state, info, photo),
        smoothed=known.smoothed(state, surface, info, photo),
        coarse=known.coarse(state, surface) and not _is_overview(inspection, info, state),
        unlooked=unlooked and not colourless,  # which says why
        unlooked_part=bool(state.marked) and searched.leaves_out(info.sha256, state),
    )


def _is_overview(inspection: AtHand, info: PhotoInfo, state: State) -> bool:
    """Whether photos that are not coarse show every indication that this one shows, if any."""
    names, chosen, here = _letters(state), inspection.state.sizes_from, inspection.photo
    if not names or any(chosen.get(name) == info.sha256 for name in names):
        return False
    close: set[str] = set()
    for other in inspection.state.photos:
        of = other.info or (None if here is None else here.info)
        if of is None or of.sha256 == info.sha256:
            continue
        surface = _surface_of(inspection, other, of)
        if surface is not None and not inspection.workings.blindness.coarse(other, surface):
            close |= _letters(other)
    return names <= close


def _letters(state: State) -> set[str]:
    return {one.id for one in state.marked if one.standing != "dropped"}


def _photo_of(inspection: AtHand, info: PhotoInfo) -> Photo:
    here = inspection.photo
    return here if here is not None and _is_here(inspection, info) else open_again(info)
