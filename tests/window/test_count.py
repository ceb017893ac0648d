"""Clicks and keys from opening a photo to a saved report, as DEVELOPERS.md states them."""

import re
from pathlib import Path

import pytest
from PySide6.QtCore import QPointF, Qt

from ptmark.record import load_record
from ptmark.window import dialogs

pytestmark = [pytest.mark.gui, pytest.mark.slow]

KEY, CONTROL = Qt.Key, Qt.KeyboardModifier.ControlModifier
DOCUMENT = Path(__file__).parents[2] / "DEVELOPERS.md"


class Person:
    """Works the window and counts every click and key; a key with Ctrl held is one."""

    def __init__(self, qtbot, window, idle):
        self.qtbot, self.window, self.idle, self.count = qtbot, window, idle, 0

    def key(self, key, modifiers=Qt.KeyboardModifier.NoModifier, on=None):
        self.count += 1
        self.qtbot.keyClick(on or self.window.focusWidget() or self.window, key, modifiers)

    def type(self, text):
        self.count += len(text)
        self.qtbot.keyClicks(self.window.focusWidget(), text)

    def click(self, widget, at=None):
        self.count += 1
        at = at or QPointF(8, 8).toPoint()
        self.qtbot.mouseClick(widget, Qt.MouseButton.LeftButton, pos=at)

    def dialog(self, answer):
        """A file dialog is answered by Enter on what it proposes or shows first."""

        def ask(*_):
            self.count += 1
            return answer

        return ask


def stated(name):
    found = re.search(rf"\| {name} \| (\d+) \|", DOCUMENT.read_text(encoding="utf-8"))
    assert found, f"DEVELOPERS.md has no count for: {name}"
    return int(found[1])


@pytest.fixture
def person(qtbot, window, idle, tmp_path, monkeypatch):
    """The criteria are those of the inspection before; so a day goes on after its first."""
    made = Person(qtbot, window, idle)
    window.session.inspection.change("choose the criteria", profile="iso-23277-2")
    monkeypatch.setattr(dialogs, "ask_where_to_save", made.dialog(tmp_path / "out.json"))
    return made


def open_photo(person, path, monkeypatch):
    monkeypatch.setattr(dialogs, "ask_for_photo", person.dialog(path))
    with person.qtbot.waitSignal(person.window.looking.suggested):
        person.key(KEY.Key_O, CONTROL)
    person.idle()


def take_three_and_save(person, path):
    window = person.window
    for _ in range(3):
        person.key(KEY.Key_Return)
    with person.qtbot.waitSignal(window.saving.saved):
        person.key(KEY.Key_S, CONTROL)
    record = load_record(path)
    assert [one["standing"] for one in record.indications] == ["taken"] * 3
    assert record.evaluation["verdict"] == "rejectable"


def test_with_a_card(person, scene_file, tmp_path, monkeypatch):
    open_photo(person, scene_file, monkeypatch)
    take_three_and_save(person, tmp_path / "out.json")
    assert person.count == stated("scale card in the photo")
    assert person.count <= 8


def test_another_part_of_the_number_before(person, scene_file, tmp_path, monkeypatch):
    """Its number and serial are in the record, for one key; no dialog asks for its photo."""
    photos = [tmp_path / f"IMG_{number}.png" for number in (1, 2)]
    for number, path in enumerate(photos):
        path.write_bytes(scene_file.read_bytes() + bytes([number]))
    open_photo(person, photos[0], monkeypatch)
    fields = {"part_number": "DEMO-40", "serial_number": "S-09"}
    person.window.session.fill_in("fill in", fields)
    person.idle()
    person.count = 0
    with person.qtbot.waitSignal(person.window.looking.suggested):
        person.key(KEY.Key_O, Qt.KeyboardModifier.AltModifier)
    person.idle()
    person.key(KEY.Key_G, CONTROL)
    take_three_and_save(person, tmp_path / "out.json")
    record = load_record(tmp_path / "out.json")
    assert record.photo["file"] == "IMG_2.png"
    assert record.fields == {"part_number": "DEMO-40", "serial_number": "S-10"}
    name = "scale card, next photo of the folder, part of the number before"
    assert person.count == stated(name)


def test_with_a_rule(person, scene_without_card, tmp_path, monkeypatch):
    """Two marks of a rule are clicked and their distance typed."""
    window = person.window
    open_photo(person, scene_without_card, monkeypatch)
    person.click(window.scale_step.kinds["line"])
    for x in (200, 1000):
        at = window.view.port.to_widget(QPointF(x, 180)).toPoint()
        person.click(window.view, at)
    assert window.focusWidget() is window.scale_step.lengths["line"][0]
    person.type("100mm")
    person.key(KEY.Key_Return)
    person.idle()
    person.key(KEY.Key_Right, CONTROL)
    person.idle()
    take_three_and_save(person, tmp_path / "out.json")
    assert person.count == stated("rule in the photo, two of its marks picked")
