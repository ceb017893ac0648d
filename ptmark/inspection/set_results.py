"""What follows from the states of all photos of an inspection, up to the record."""

from collections.abc import Sequence
from dataclasses import replace
from functools import cached_property

from ptmark.criteria import Evaluation, evaluate
from ptmark.errors import PtmarkError
from ptmark.hides import Hidden
from ptmark.inspection.at_hand import AtHand
from ptmark.inspection.handing_on import (
    Distances,
    Worked,
    distances_of,
    record_of,
    scene_of,
)
from ptmark.inspection.hiding import hidden_in
from ptmark.inspection.set_sizes import Sizes, sizes_of
from ptmark.inspection.state import Marked, State
from ptmark.measure import Measurement
from ptmark.photo import PhotoInfo
from ptmark.record import Record, joined
from ptmark.scale import SurfaceMap
from ptmark.series import Timed, timed

__all__ = ["Results", "results_of"]


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
        return tuple(distances_of(one) for one in self.photos)

    def evaluations(self, inspection: AtHand) -> list[Evaluation | None]:
        """Each photo judged on its own surface; None where it has no scale, or no criteria."""
        photos = zip(self.photos, self.known, strict=True)
        return [self._judged(one, known, inspection) for one, known in photos]

    def _judged(
        self,
        one: Worked,
        known: Distances,
        inspection: AtHand,
        hidden: Hidden | None = None,
    ) -> Evaluation | None:
        """One of them; ``hidden`` is asked for where it is not given, which may open it."""
        profile = inspection.profile
        if profile is None or one.surface is None:
            return None
        if hidden is None:
            hidden = hidden_in(one, inspection)
        scene = scene_of(one, self.sizes, known=known, hidden=hidden)
        return evaluate(profile, scene, inspection.state.decision_rule)

    def record(self, inspection: AtHand, record_id: str | None, created: str | None) -> Record:
        """The whole set as one record.

        Raises
        ------
        PhotoError
            If a photo is needed again and cannot be opened.
        """
        alone, parts = len(self.photos) == 1, []
        for one, known in zip(self.photos, self.known, strict=True):
            hidden, look = hidden_in(one, inspection), inspection.look_of(one.info)
            # The disposition is that of the set, not of each photo.
            state = one.state if alone else replace(one.state, decision="", decision_reason="")
            part = record_of(
                replace(one, state=state),
                known=known,
                look=look,
                hidden=hidden,
                evaluation=self._judged(one, known, inspection, hidden),
                remarks=inspection.workings.remarks(
                    one.state,
                    one.surface,
                    look,
                    inspection.profile,
                    lambda info=one.info: inspection.photo_of(info),  # type: ignore[misc]
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
        surface = inspection.surface_of(state, info)
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
        one, surface, state.relief_mm, lambda: inspection.photo_of(info), state.marked
    )
