"""Before and after: another photo of the same area laid over the one at hand."""

from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QSignalBlocker, Qt
from PySide6.QtWidgets import QHBoxLayout, QSlider, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError, SeriesError
from ptmark.window import dialogs
from ptmark.window.bits import Choice, key_button, plain
from ptmark.window.memory import Memory
from ptmark.window.session import Session
from ptmark.window.view.levels import PhotoLevels, build_levels
from ptmark.window.view.photo_view import PhotoView
from ptmark.window.words import from_core, sentence, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.inspection import Inspection
    from ptmark.photo import Photo
    from ptmark.scale import SurfaceMap

__all__ = ["TwoPhotos", "laid_over"]

_MOST_PX = 24e6  # of the picture that is laid over
_WIDEST = 32_000  # px; cv2.warpPerspective takes no larger picture
_STEPS = 1000  # of the slider


class TwoPhotos(QWidget):
    """A row under the photo: which other photo, the slider, and how well they lie together."""

    def __init__(
        self, session: Session, view: PhotoView, memory: Memory, window: QWidget
    ) -> None:
        super().__init__()
        self._session, self._view, self._memory = session, view, memory
        self._of = ""  # SHA-256 of the photo that it is laid over
        self.on = False
        self.choice = Choice(tr("The other photo"))
        self.choice.activated.connect(lambda _: self._take(self.choice.currentData()))
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setRange(0, _STEPS)
        self.slider.setPageStep(_STEPS // 10)
        self.slider.setMinimumHeight(30)
        self.slider.setAccessibleName(tr("Line between the two photos"))
        self.slider.valueChanged.connect(lambda value: view.curtain.put(value / _STEPS))
        view.curtain.moved.connect(self._on_moved)
        self.says = plain()
        self.says.setMinimumHeight(2 * self.says.fontMetrics().height())
        self.close_button = key_button(tr("One photo again"), "", self.turn)
        row = QHBoxLayout()
        row.addWidget(self.choice)
        row.addWidget(self.slider, 1)
        row.addWidget(self.close_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 4, 8, 0)
        column.addLayout(row)
        column.addWidget(self.says)
        self._window = window
        self.hide()
        session.photo_shown.connect(self._on_photo)

    def turn(self) -> None:
        """Two photos, or one again."""
        if self.on:
            self._put_away()
            return
        if not self._session.has_photo:
            return
        self.on = True
        self.show()
        self._fill()
        self.slider.setFocus()
        self._take(self.choice.currentData())

    def _fill(self) -> None:
        inspection = self._session.inspection
        self.choice.clear()
        if inspection is not None:
            for number, info in enumerate(inspection.photos.infos):
                if number != inspection.photos.number:
                    self.choice.addItem(info.path.name, info.path)
            if inspection.state.retest_of is not None:
                self.choice.addItem(tr("The test before"), inspection.state.retest_of)
                self._name_before(inspection.state.retest_of)
        self.choice.addItem(tr("Another photo …"), None)

    def _name_before(self, link: dict[str, Any]) -> None:
        """Say date and verdict of the test before, once they are looked up."""
        info = self._session.state.info if self._session.state else None
        folder = None if info is None else info.path.parent

        def done(told: str) -> None:
            at = self.choice.findText(tr("The test before"))
            if told and at >= 0:
                self.choice.setItemText(at, tr("The test before: {0}", told))

        from ptmark.window.archive.before import told_briefly

        self._session.workers.start(
            "", lambda _: told_briefly(link, folder), done, key="name before"
        )

    def _take(self, path: "Path | dict[str, Any] | None") -> None:
        if path is None:
            path = dialogs.ask_for_photo(self._window, self._memory.folder)
            if path is None:
                self._put_away() if self._view.curtain.levels is None else self._fill()
                return
            self.choice.insertItem(0, path.name, path)
            self.choice.setCurrentIndex(0)
        self._lay(path)

    def _lay(self, path: "Path | dict[str, Any]") -> None:
        """Lay a photo over the one at hand, or that of the test which a retest links to."""
        inspection = self._session.inspection
        if inspection is None or inspection.photo is None:
            return
        here, surface, about = inspection.photo, inspection.surface, _about(inspection)
        self._of = here.info.sha256
        self.says.setText(tr("Laying it over the photo …"))

        shown = path.name if isinstance(path, Path) else tr("The test before")

        def work(token: Token) -> tuple[PhotoLevels, str]:
            with ExitStack() as held:
                other = _opened(path, held)
                token.check()
                return laid_over(other, here, surface, about)

        def done(got: tuple[PhotoLevels, str]) -> None:
            levels, said = got
            now = self._session.inspection
            if self.on and now is not None and now.photo is here:
                self._view.curtain.hang(levels, (shown, here.info.path.name))
                self._on_moved(self._view.curtain.share)
                self.says.setText(said)

        def failed(exc: Exception) -> None:
            self._view.curtain.hang(None)
            self._view.update()
            known = isinstance(exc, PtmarkError)
            said = from_core(exc) if known else tr("Cannot be shown: {0}", exc)
            self.says.setText(said)

        name = tr("Laying {0} over the photo", shown)
        self._session.workers.start(name, work, done, failed=failed, key="two photos")

    def _on_moved(self, share: float) -> None:
        with QSignalBlocker(self.slider):
            self.slider.setValue(round(share * _STEPS))
        self._view.update()

    def _on_photo(self, levels: PhotoLevels | None) -> None:
        """Another photo at hand: what was laid over the one before goes."""
        inspection = self._session.inspection
        photo = inspection.photo if inspection else None
        if self.on and (levels is None or photo is None or photo.info.sha256 != self._of):
            self._put_away()

    def _put_away(self) -> None:
        self.on = False
        self._session.workers.cancel(tr("two photos"))
        self._view.curtain.hang(None)
        self._view.update()
        self.hide()
        self._view.setFocus()


def _opened(path: "Path | dict[str, Any]", held: ExitStack) -> "Photo":
    if isinstance(path, Path):
        from ptmark.photo import open_photo

        return open_photo(path)
    from ptmark.archive import open_archive
    from ptmark.window.archive.opened import photo_before

    return photo_before(held.enter_context(open_archive(read_only=True)), path, held)


def _about(inspection: "Inspection") -> Any:  # noqa: ANN401 - ndarray
    """Middles of the indications, px, shape (N, 2), or the corners of the examined area."""
    import numpy as np

    middles = [one.outline_px.mean(axis=0) for one in inspection.counted]
    return np.array(middles or inspection.state.area_px or [], float).reshape(-1, 2)


def laid_over(
    other: "Photo",
    here: "Photo",
    surface: "SurfaceMap | None",
    about_px: Any = None,  # noqa: ANN401 - ndarray, see _grown
) -> tuple[PhotoLevels, str]:
    """Another photo in the frame of the one at hand, and in words how well it lies there.

    Parameters
    ----------
    other, here : Photo
    surface : SurfaceMap or None
        Of the photo at hand; what lies on its scale card takes no part, for cards are moved.
    about_px : ndarray of shape (N, 2), px, optional
        What the common surface must lie round in the photo at hand; else its middle half.

    Notes
    -----
    Registered by `ptmark.series.register`. Where that is refused the other photo is only
    fitted into the frame, and this is said.
    """
    import numpy as np

    from ptmark.series import register_views, view_of

    frame = (here.info.width, here.info.height)
    if about_px is None or not len(about_px):
        shares = np.linspace(0.25, 0.75, 5)
        about_px = np.array([(x * frame[0], y * frame[1]) for x in shares for y in shares])
    try:
        lead = register_views(view_of(other), view_of(here, surface, None, about_px))
    except SeriesError as exc:
        h = _fitted((other.info.width, other.info.height), frame)
        said = tr("They do not lie over each other, place by place: {0}", exc)
    else:
        h = lead.h
        middle = np.array([[other.info.width / 2, other.info.height / 2]])
        off = 2 * float(lead.u_px(middle)[0])
        cautions = [from_core(one) for one in lead.cautions]
        said = " ".join([
            tr(
                "Laid over each other, on the surface only: {0} points agree, in the middle "
                "within {1:.1f} px.",
                lead.inliers,
                off,
            ),
            *(sentence(one) for one in cautions),
        ])  # fmt: skip
    return build_levels(_warped(other, h, frame), size=frame), said


def _warped(other: "Photo", h: Any, frame: tuple[int, int]) -> Any:  # noqa: ANN401 - ndarrays
    """The other photo bent by a homography into a frame, reduced where it is too large."""
    import cv2
    import numpy as np

    few, small = _shrink(*frame), _shrink(other.info.width, other.info.height)
    size = (-(-frame[0] // few), -(-frame[1] // few))
    return cv2.warpPerspective(
        np.ascontiguousarray(other.reduced(small)),
        np.linalg.inv(_grown(few)) @ h @ _grown(small),
        size,
        flags=cv2.INTER_LINEAR,
        borderValue=(90, 94, 100),
    )


def _shrink(width: int, height: int) -> int:
    """The least factor, of those a photo can be reduced by, that makes it small enough."""
    factor = 1
    while width * height / factor**2 > _MOST_PX or max(width, height) / factor > _WIDEST:
        factor *= 2
    return factor


def _grown(factor: int) -> Any:  # noqa: ANN401 - ndarray, NumPy loads with the first photo
    """From px of a picture reduced by a factor to px of the whole, both from pixel centres."""
    import numpy as np

    shift = (factor - 1) / 2
    return np.array([[factor, 0, shift], [0, factor, shift], [0, 0, 1.0]])


def _fitted(size: tuple[int, int], frame: tuple[int, int]) -> Any:  # noqa: ANN401 - see above
    """A picture as large as it goes into a frame, in its middle."""
    import numpy as np

    scale = min(frame[0] / size[0], frame[1] / size[1])
    x, y = ((f - 1) / 2 - scale * (s - 1) / 2 for f, s in zip(frame, size, strict=True))
    return np.array([[scale, 0, x], [0, scale, y], [0, 0, 1.0]])
