"""The next photo of the folder, for whoever comes from the shop with forty of them."""

from pathlib import Path

from ptmark.endings import names_a_picture
from ptmark.window.bits import key_button
from ptmark.window.parts import Parts
from ptmark.window.words import tr

__all__ = ["NextPhoto", "next_photo"]


class NextPhoto:
    """A button beside that for opening; the work at hand is put away as by opening another."""

    def __init__(self, window: Parts) -> None:
        self._window = window
        self.button = key_button(
            tr("Next photo of the folder"), "Alt+O", self.open, window=window,
            tip=tr("The next one by name that has no record beside it"),
        )  # fmt: skip
        window.session.changed.connect(self.refresh)
        self.refresh()

    def refresh(self) -> None:
        """There is a next one only after one."""
        session = self._window.session
        self.button.setEnabled(session.has_photo and not session.reviewing)

    def open(self) -> None:
        """Open it; where there is none, this is said."""
        inspection = self._window.session.inspection
        infos = inspection.photos.infos if inspection else []
        if not infos:
            return
        path = next_photo(infos[-1].path)
        if path is not None:
            self._window.open(path)
        else:
            folder = infos[-1].path.parent
            self._window.foot.say(tr("No further photo without a record in {0}.", folder))


def next_photo(after: Path) -> Path | None:
    """The photo after this one by name, which is how a camera counts; None after the last.

    Left out are photos that have a record as it is proposed for them, and the pictures that
    were saved with a record.
    """
    try:
        names = sorted(one.name for one in after.parent.iterdir())
    except OSError:  # the folder has gone, as a card that was pulled out
        return None
    there = set(names)
    for name in names:
        path = after.with_name(name)
        done = f"{path.stem}-inspection.json" in there
        ours = {f"{path.stem}.json", f"{path.stem}.pdf"} <= there
        if name > after.name and names_a_picture(path) and not (done or ours):
            return path
    return None
