"""Which acceptance criteria: those shipped and the user's own, and writing new ones."""

from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from ptmark.errors import PtmarkError
from ptmark.window.bits import Choice, key_button, quiet
from ptmark.window.session import Session
from ptmark.window.words import from_core, tr
from ptmark.window.workers import Token

if TYPE_CHECKING:
    from ptmark.window.house.form import HouseForm

__all__ = ["CriteriaChoice", "offer_profiles", "shipped_profiles"]


class _Named(NamedTuple):
    title: str
    edition: str
    unit: str


def shipped_profiles() -> dict[str, _Named]:
    """What the shipped profiles are called, by their names."""
    from ptmark.criteria import list_profiles, load_profile

    made = {}
    for name in list_profiles():
        profile = load_profile(name)
        title, edition = from_core(profile.title), from_core(profile.edition)
        made[name] = _Named(title, edition, profile.unit)
    return made


def offer_profiles(box: QComboBox, named: Mapping[str, _Named]) -> None:
    """Fill a list with these by their titles, the names in the tips."""
    box.clear()
    box.addItem(tr("Choose the criteria …"), "")
    for name, (title, edition, unit) in named.items():
        box.addItem(title, name)
        tip = tr("{0}, edition {1}, compared in {2}", name, edition, unit) if unit else edition
        box.setItemData(box.count() - 1, tip, Qt.ItemDataRole.ToolTipRole)
    widest = box.view().sizeHintForColumn(0)
    box.view().setMinimumWidth(widest + 24)  # variants differ at their ends


class CriteriaChoice(QWidget):
    """The list of profiles with what it says of the chosen one, and two buttons."""

    def __init__(self, session: Session, window: QWidget) -> None:
        super().__init__()
        self._session, self._window = session, window
        self._named: dict[str, _Named] = {}
        self.form: HouseForm | None = None
        self.box = Choice(tr("Acceptance criteria"))
        self.box.setSizeAdjustPolicy(
            Choice.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.box.addItem(tr("Choose the criteria …"), "")
        self.box.activated.connect(
            lambda _: session.change(tr("choose the criteria"), profile=self.box.currentData())
        )
        self._edition = quiet()
        self.write_button = key_button(
            tr("Write rules for a drawing"),
            "",
            self._write,
            tip=tr("A profile of your own"),
        )
        self.edit_button = key_button(
            tr("Change these rules"), "", self._edit, tip=tr("Only your own")
        )
        row = QHBoxLayout()
        row.addWidget(self.write_button)
        row.addWidget(self.edit_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.box)
        column.addWidget(self._edition)
        column.addLayout(row)
        session.ready.connect(self.load)

    def load(self) -> None:
        """List the profiles there are, in a worker."""

        def work(_token: Token) -> dict[str, _Named]:
            from ptmark.criteria import load_profile
            from ptmark.criteria.house_folder import house_files

            made = {}
            for path in house_files():
                try:
                    own = load_profile(path)
                except PtmarkError as exc:
                    made[str(path)] = _Named(
                        tr("{0} (cannot be used)", path.stem), from_core(exc), ""
                    )
                else:
                    made[str(path)] = _Named(
                        tr("{0} (your own)", own.title), own.edition, own.unit
                    )
            return made | shipped_profiles()

        def done(named: dict[str, _Named]) -> None:
            self._named = named
            self._fill()

        self._session.workers.start(
            "", work, done, failed=lambda exc: self._session.say_trouble("verdict", exc)
        )

    def _fill(self) -> None:
        offer_profiles(self.box, self._named)
        if self._session.state is not None:
            self.show_profile(self._session.state.profile)

    def show_profile(self, name: str) -> None:
        """Show which one is chosen; a file from elsewhere is listed as it is named."""
        if self._named and name and self.box.findData(name) < 0:
            self.box.addItem(name, name)
        self.box.setCurrentIndex(max(0, self.box.findData(name)))
        title, edition, unit = self._named.get(name, _Named("", "", ""))
        said = tr("{0}. Written from edition {1}; compared in {2}.", title, edition, unit)
        self._edition.setText(said if title and unit else edition or "")
        self.edit_button.setEnabled(name.endswith(".toml"))

    def _write(self) -> None:
        form = self._shown_form()
        form.parts.setFocus()

    def _edit(self) -> None:
        state = self._session.state
        if state is not None and state.profile.endswith(".toml"):
            self._shown_form().open_file(Path(state.profile))

    def _shown_form(self) -> "HouseForm":
        if self.form is None:
            from ptmark.window.house.form import HouseForm

            self.form = HouseForm(self._session, self._window)
            self.form.saved.connect(lambda _: self.load())
        self.form.show()
        self.form.raise_()
        self.form.activateWindow()
        return self.form
