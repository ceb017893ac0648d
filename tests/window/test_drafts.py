"""Every change is soon on disk; a kill loses nothing, the next start offers it back."""

import json
import os
import signal
import subprocess
import sys
import threading
from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from ptmark.inspection.draft import draft_to_json
from ptmark.window.autosave import DELAY_MS, left_behind, lock_of, read_draft
from ptmark.window.draft_offer import DraftBack, DraftOffer

pytestmark = [pytest.mark.gui, pytest.mark.slow]

CHILD = """
import sys
import threading
from pathlib import Path
from PySide6.QtWidgets import QApplication
app = QApplication([])
from ptmark.window.main_window import MainWindow
window = MainWindow()
window.show()
window.begin(Path(sys.argv[1]))

def changed():
    window.session.autosave.saved.connect(lambda: print("saved", flush=True))
    window.hands.take()
    window.session.change("choose the criteria", profile="iso-23277-1")

window.looking.suggested.connect(changed)
sys.exit(app.exec())
"""


def killed_child(home: Path, photo: Path) -> None:
    """Start a window elsewhere, let it save a draft, and kill it hard."""
    environment = {**os.environ, "PTMARK_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"}
    root = str(Path(__file__).parents[2])
    environment["PYTHONPATH"] = os.pathsep.join([root, environment.get("PYTHONPATH", "")])
    child = subprocess.Popen(
        [sys.executable, "-c", CHILD, str(photo)],
        stdout=subprocess.PIPE, env=environment, text=True,
    )  # fmt: skip
    watch = threading.Timer(600, child.kill)
    watch.start()
    try:
        said = child.stdout.readline().strip()
        assert said == "saved"
        assert left_behind() == []  # a living window's draft is nobody else's
    finally:
        watch.cancel()
        child.send_signal(signal.SIGKILL)
        child.wait()
        child.stdout.close()


def test_after_a_kill_the_next_start_offers_the_work_back(qtbot, home, scene_file):
    from ptmark.window.main_window import MainWindow

    killed_child(home, scene_file)
    (draft,) = left_behind()
    kept = read_draft(draft.path)
    assert kept["profile"] == "iso-23277-1"
    assert [m["standing"] for m in kept["marked"]].count("taken") == 1

    window = MainWindow()
    qtbot.addWidget(window)
    window.show()
    window.begin(None)
    qtbot.waitUntil(lambda: window.empty.draft_buttons() != [])
    with qtbot.waitSignal(window.looking.opened):
        window.empty.draft_buttons()[0].click()
    assert kept.pop("step") == window.session.step == "Indications"  # where it was left
    assert draft_to_json(window.session.inspection) == kept
    assert window.view.levels.whole
    qtbot.waitUntil(lambda: not window.session.workers.any_running())
    assert window.session.judgement.evaluation is not None
    assert window.session.autosave.path == draft.path  # it goes on in the same draft
    assert left_behind() == []


def test_a_draft_is_written_without_being_asked_for(qtbot, opened, idle):
    assert DELAY_MS <= 500  # half a second of work is the most that a kill may take
    with qtbot.waitSignal(opened.session.autosave.saved):
        opened.session.change("choose the criteria", profile="iso-23277-3")
    assert read_draft(opened.session.autosave.path)["profile"] == "iso-23277-3"


def test_the_step_is_kept_in_a_draft_and_makes_none(qtbot, opened, idle):
    autosave, session = opened.session.autosave, opened.session
    session.go("Verdict")
    autosave.flush()
    assert not autosave.path.exists()  # looking round is no work
    session.change("choose the criteria", profile="iso-23277-3")
    autosave.flush()
    session.go("Record")
    autosave.flush()
    assert read_draft(autosave.path)["step"] == "Record"
    autosave.forget()
    session.go("Verdict")
    autosave.flush()
    assert not autosave.path.exists()  # what is saved is not offered back


def test_closing_writes_what_still_waits(qtbot, opened, idle):
    opened.session.change("choose the criteria", profile="iso-23277-2x")
    opened.close()
    assert read_draft(opened.session.autosave.path)["profile"] == "iso-23277-2x"


def test_a_draft_of_a_photo_that_is_gone_says_so_in_place(qtbot, window, idle, tmp_path, home):
    from ptmark.inspection import Inspection

    document = draft_to_json(Inspection())
    document["photo"] = {"path": str(tmp_path / "gone.jpg"), "sha256": "0" * 64}
    folder = home / "drafts"
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "x.json").write_text(json.dumps(document))
    window.empty.offer_drafts(left_behind(), None, lambda: None)
    window.empty.draft_buttons()[0].click()
    qtbot.waitUntil(window.empty.notice.isVisible)
    assert "gone.jpg" in window.empty.notice.text.text()


def test_work_left_behind_is_offered_beside_an_open_photo_and_can_be_discarded(
    qtbot, home, scene_file, idle, window
):
    killed_child(home, scene_file)
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_file)
    idle()
    offer = window.photo_step.offers.itemAt(0).widget()
    window.session.go("Photo")
    assert offer.isVisible()
    assert "scene.png, 3 indications" in offer.text.text()
    window.empty.draft_dismissed.emit(left_behind()[0])
    idle()
    assert left_behind() == []
    back = window.photo_step.offers.itemAt(0).widget()
    assert "Discarded: work: scene.png, 3 indications" in back.text.text()
    back.button.click()  # it was the wrong one
    idle()
    assert [draft.marked for draft in left_behind()] == [3]
    offer = window.photo_step.offers.itemAt(0).widget()
    assert "Unfinished work: scene.png, 3 indications" in offer.text.text()


def test_what_was_discarded_can_be_brought_back_until_the_window_closes(
    qtbot, home, scene_file, idle, window
):
    killed_child(home, scene_file)
    window.drafts.look()
    idle()
    files = sorted((home / "drafts").iterdir())
    before = {path.name: path.read_bytes() for path in files if path.suffix == ".json"}
    assert len(window.empty.findChildren(DraftOffer)) == 1
    window.empty.draft_dismissed.emit(left_behind()[0])
    idle()
    (back,) = (one for one in window.empty.findChildren(DraftBack) if one.isVisible())
    back.button.click()
    idle()
    after = {path.name: path.read_bytes() for path in (home / "drafts").glob("*.json")}
    assert after == before
    window.empty.draft_dismissed.emit(left_behind()[0])
    idle()
    window.close()
    assert not [path for path in (home / "drafts").iterdir() if path.suffix != ".lock"]


def test_what_a_killed_window_had_put_aside_is_offered_once_more_and_then_goes(
    qtbot, home, scene_file, idle, window
):
    killed_child(home, scene_file)
    (draft,) = left_behind()
    aside = draft.path.with_suffix(".discarded")
    draft.path.replace(aside)
    living = lock_of(draft.path)
    assert living.tryLock(0)
    window.drafts.look()
    idle()
    assert not window.empty.findChildren(DraftBack)  # a living window may bring it back
    living.unlock()
    window.drafts.look()
    idle()
    (back,) = (one for one in window.empty.findChildren(DraftBack) if one.isVisible())
    assert "scene.png, 3 indications" in back.text.text()
    back.button.click()
    idle()
    assert left_behind() == [draft]
    assert not aside.exists()
    window.empty.draft_dismissed.emit(draft)
    idle()
    assert aside.exists()
    window.close()
    assert [one for one in (home / "drafts").iterdir() if one.suffix != ".lock"] == []


def test_what_another_window_goes_on_with_is_not_discarded_under_it(
    home, scene_file, idle, window
):
    killed_child(home, scene_file)
    (draft,) = left_behind()
    other = lock_of(draft.path)
    assert other.tryLock(0)
    window.empty.draft_dismissed.emit(draft)
    idle()
    assert draft.path.exists()
    other.unlock()


def test_a_broken_draft_is_passed_over(home):
    folder = home / "drafts"
    folder.mkdir(parents=True)
    (folder / "a.json").write_text('{"schema": "ptmark-draft/1", "pho')
    (folder / "b.json").write_text("[]")
    assert left_behind() == []


def test_what_was_entered_before_the_photo_and_its_photo_are_one_draft(
    qtbot, window, idle, home, scene_file
):
    window.part_form.fields["part_number"].setFocus()
    qtbot.keyClicks(window.focusWidget(), "P-700")
    qtbot.keyClick(window.focusWidget(), Qt.Key.Key_Return)
    with qtbot.waitSignal(window.looking.suggested):
        window.open(scene_file)
    idle()
    window.close()
    (path,) = (home / "drafts").glob("*.json")
    kept = read_draft(path)
    assert kept["fields"]["part_number"] == "P-700"
    assert kept["photo"]["path"] == str(scene_file)


def test_the_next_part_is_named_where_one_types(qtbot, opened, idle):
    opened.session.go("Record")
    opened.next_part()
    idle()
    assert opened.focusWidget() is opened.part_form.fields["part_number"]
