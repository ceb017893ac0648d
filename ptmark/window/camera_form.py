"""The camera's lens: which profile the photo is measured with, and making one from photos."""

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window import dialogs
from ptmark.window.bits import Notice, heading, key_button, plain, quiet
from ptmark.window.edges import Tick
from ptmark.window.session import Session
from ptmark.window.words import tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.photo import CameraProfile, PhotoInfo

__all__ = ["CameraForm"]

Made = tuple["CameraProfile", list[str]]  # and the photos that showed no pattern

_KEY = "calibrate"


class CameraForm(QWidget):
    """What is known of the lens, under the scale."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._fits: tuple[str, CameraProfile | None] = ("", None)  # the photo's SHA-256
        self._made: CameraProfile | None = None
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(heading(tr("Lens of the camera")))
        self.now = plain()
        self.use_box = Tick(tr("Use the profile of this camera"))
        self.use_box.setMinimumHeight(26)
        self.use_box.clicked.connect(self._switch)
        self.grid_button = key_button(tr("Save the grid to print"), "", self.save_grid)
        self.calibrate_button = key_button(tr("Calibrate from photos"), "", self.choose)
        self.says = Notice()
        for widget in (self.now, self.use_box):
            column.addWidget(widget)
        column.addWidget(
            quiet(
                tr(
                    "Print the grid, lay it flat, and take 8 to 15 photos of it with this "
                    "camera at one zoom: filling the picture, in each corner, aslant."
                )
            )
        )
        row = QHBoxLayout()
        row.addWidget(self.grid_button)
        row.addWidget(self.calibrate_button)
        column.addLayout(row)
        column.addWidget(self.says)
        session.photo_shown.connect(lambda _: self._look_up())
        session.changed.connect(self.refresh)
        self.refresh()

    # -- the profile of the photo at hand ------------------------------------------------------
    def _info(self) -> "PhotoInfo | None":
        inspection = self._session.inspection
        return inspection.photo.info if inspection is not None and inspection.photo else None

    def _look_up(self) -> None:
        """Find the profile that fits the photo, whether it is used or not."""
        info = self._info()
        if info is None or info.calibrated is not None or info.sha256 == self._fits[0]:
            self.refresh()
            return

        def work(_token: Token) -> "CameraProfile | None":
            from ptmark.photo import read_info
            from ptmark.photo.camera_profile import profile_for

            if profile_for(info.camera, info.width, info.height) is None:
                return None
            return read_info(info.path).calibrated  # it may be cropped

        def done(found: "CameraProfile | None") -> None:
            self._fits = (info.sha256, found)
            self.refresh()

        self._session.workers.start("", work, done, key="lens")

    def _switch(self, used: bool) -> None:  # noqa: FBT001 - Qt's own answer
        self._use(self._fits[1] if used else None)

    def _use(self, profile: "CameraProfile | None") -> None:
        """Measure the photo at hand with this profile, or none; the scale is worked out beside.

        Undoable, as every decision is.
        """
        session, inspection = self._session, self._session.inspection
        photo = inspection.photo if inspection else None
        if inspection is None or photo is None:
            return
        reference = inspection.state.reference

        def work(_token: Token) -> None:
            if reference is not None:
                inspection.prepare(reference, photo.with_lens(profile))

        def take(_: object = None) -> None:
            if inspection.photo is photo:
                session.attempt("scale", lambda: inspection.use_lens(profile))
            self.refresh()

        session.workers.start(tr("Working out the scale"), work, take, failed=take, key="scale")

    # -- making one ----------------------------------------------------------------------------
    def save_grid(self) -> None:
        """Save the grid where the user says."""
        proposal = Path.home() / "calibration-grid.pdf"
        path = dialogs.ask_where_to_save(self, proposal, "PDF (*.pdf)")
        if path is None:
            return
        from ptmark.scale import write_grid_pdf

        try:
            write_grid_pdf(path)
        except PtmarkError as exc:
            self.says.say_error(exc)
        else:
            self.says.say(tr("{0}: print it at 100 %, and lay it flat.", path.name), "done")

    def choose(self) -> None:
        """Ask for photos of the grid and calibrate from them; while it runs, stop it."""
        if self._session.workers.busy(_KEY):
            self._session.workers.cancel(_KEY)
            self.says.say("")
            self.refresh()
            return
        info = self._info()
        folder = info.path.parent if info is not None else Path.home()
        if paths := dialogs.ask_for_photos(self, folder):
            self.calibrate(paths)

    def calibrate(self, paths: list[Path]) -> None:
        """Find the pattern in each photo, then fit the lens to all of them."""
        self._made = None
        self.says.offer()
        self.says.say(tr("Photo {0} of {1} …", 1, len(paths)))

        def work(token: Token) -> Made:
            from ptmark.photo import open_photo
            from ptmark.scale import calibrate_camera

            missed: list[str] = []
            seen = 0

            def tell(path: Path, found: bool) -> None:  # noqa: FBT001 - a callback
                nonlocal seen
                seen += 1
                if not found:
                    missed.append(path.name)
                token.progress(seen / len(paths))
                token.partial(seen)

            return calibrate_camera((open_photo(path) for path in paths), tell=tell), missed

        def partial(seen: int) -> None:
            share = tr("Photo {0} of {1} …", seen + 1, len(paths))
            self.says.say(share if seen < len(paths) else tr("Fitting the lens …"))

        self._session.workers.start(
            tr("Calibrating the camera"),
            work,
            self._show,
            failed=self._failed,
            partial=partial,
            key=_KEY,
        )
        self.refresh()

    def _failed(self, exc: Exception) -> None:
        wrong = exc if isinstance(exc, PtmarkError) else PtmarkError(str(exc))
        self.says.say_error(wrong)
        self.refresh()

    def _show(self, made: Made) -> None:
        """Tell how well the lens fits, and ask whether to keep it."""
        self._made, missed = made
        self.says.say(_in_words(self._made, missed), "look" if missed else "done")
        self.says.offer(
            key_button(tr("Keep this profile"), "", self.keep),
            key_button(tr("Leave it"), "", self._leave),
        )
        self.refresh()

    def _leave(self) -> None:
        self._made = None
        self.says.offer()
        self.says.say("")

    def keep(self) -> None:
        """Keep the profile, and use it for the photo at hand where it fits."""
        profile = self._made
        if profile is None:
            return
        from ptmark.photo import save_profile

        try:
            save_profile(profile)
        except PtmarkError as exc:
            self.says.say_error(exc)
            return
        self._leave()
        self.says.say(
            tr("Kept as {0}; it is used for this camera's photos.", profile.name), "done"
        )
        self._fits = ("", None)
        info = self._info()
        if info is not None and profile.fits(info.camera, info.width, info.height):
            self._fits = (info.sha256, profile)
            self._use(profile)

    # -- what is shown -------------------------------------------------------------------------
    def refresh(self) -> None:
        """Say which profile the photo at hand is measured with."""
        info = self._info()
        used = None if info is None else info.calibrated
        if info is not None and used is not None:
            self._fits = (info.sha256, used)
        fits = self._fits[1] if info is not None and self._fits[0] == info.sha256 else None
        self.use_box.setVisible(fits is not None)
        self.use_box.setChecked(used is not None)
        if used is not None:
            says = tr("Calibrated {0} from {1} photos: {2}.", used.made, used.photos, used.name)
        elif fits is not None:
            says = tr("The profile {0} fits this camera and is left out.", fits.name)
        else:
            says = tr("Not calibrated: what a camera's own correction leaves is in U.")
        self.now.setText("" if info is None else says)
        running = self._session.workers.busy(_KEY)
        self.calibrate_button.setText(
            tr("Stop calibrating") if running else tr("Calibrate from photos")
        )


def _in_words(made: "CameraProfile", missed: list[str]) -> str:
    corner = 100 * (made.kappa + made.kappa_2)
    said = [
        tr("{0} photos fit one lens to {1:.2f} px.", made.photos, made.residual_px),
        tr("Focal length {0:.0f} px, u {1:.1f} %.", made.focal_px, 100 * made.focal_rel_u),
        tr("Bent at the corner by {0:+.2f} %, u {1:.2f} %.", corner, 100 * made.kappa_u),
    ]
    if missed:
        said.append(tr("Neither grid nor card found in: {0}.", ", ".join(missed)))
    return " ".join(said)
