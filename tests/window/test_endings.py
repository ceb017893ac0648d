"""Every place that goes by a file's ending takes the same pictures: dialogs, drops, folders."""

from pathlib import Path

import pytest
from PIL import Image
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDropEvent

from ptmark.__main__ import _for_window
from ptmark.endings import PICTURES, names_a_picture
from ptmark.folder import pictures_in
from ptmark.window.dialogs import PHOTOS
from ptmark.window.drops import photos_of
from ptmark.window.next_photo import next_photo

pytestmark = pytest.mark.gui


@pytest.mark.parametrize("ending", [*PICTURES, ".JPG", ".json", ".gif", ".jpg.part", ""])
def test_a_picture_is_taken_by_its_ending_alike_everywhere(ending, qtbot, tmp_path):
    path, earlier = tmp_path / f"weld{ending}", tmp_path / "a.txt"
    path.touch()
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(path))])
    buttons, keys = Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    event = QDropEvent(QPointF(3, 3), Qt.DropAction.CopyAction, mime, buttons, keys)
    taken = names_a_picture(path)
    assert taken == (ending.lower() in {*PICTURES})
    assert photos_of(event) == pictures_in(tmp_path) == [path] * taken
    assert next_photo(earlier) == (path if taken else None)
    assert _for_window(path.name) == (taken or ending == ".json")
    assert taken == (f"*{ending.lower()}" in PHOTOS.partition("(")[2].partition(")")[0].split())


def test_the_formats_are_those_that_the_endings_name():
    known = Image.registered_extensions()  # Pillow's
    told = {one: known[one].lower() for one in PICTURES if one in known}
    assert len(told) >= 7
    assert told == {one: PICTURES[one].lower() for one in told}


def test_no_other_list_of_them_stands_in_the_source():
    root = Path(__file__).parents[2] / "ptmark"
    lists = [path for path in root.rglob("*.py") if '".heif"' in path.read_text("utf-8")]
    assert [path.name for path in lists] == ["endings.py"]
