"""The window in German: every text, its values, its numbers, and nothing cut at 1280 x 800."""

import json
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from ptmark.places import sample_images
from ptmark.units import parse_length
from ptmark.window.house.fields import AmountEdit

ROOT = Path(__file__).parents[2]
GERMAN = ROOT / "resources" / "languages" / "de.ts"
# As in the German text, so that no key is looked up that Qt spells another way.
SAME_IN_BOTH = {"Filter", "Name", "OK", "PDF …", "min", "1:1  (1)", "SHA-256"}
WINDOW = """
import json, sys
from PySide6.QtCore import QPoint
from PySide6.QtWidgets import *
from ptmark.window.app import start
app, window = start(["ptmark"])
window.resize(1280, 800)
window.show()
window.begin(None)

def settle():
    while True:
        app.processEvents()
        if not window.session.workers.any_running():
            break
    for _ in range(5):
        app.processEvents()

def shown():
    for one in window.findChildren(QWidget):
        if one.isVisible() and isinstance(one, (QAbstractButton, QLabel, QComboBox)):
            text = one.currentText() if isinstance(one, QComboBox) else one.text()
            if text.strip():
                yield one, text

def narrow(one, text):
    if isinstance(one, QLabel) and one.wordWrap():
        return one.heightForWidth(one.width()) > one.height() + 1
    if isinstance(one, QLabel):
        return one.fontMetrics().horizontalAdvance(text) > one.width() + 1
    beyond = one.mapTo(window, QPoint(one.width(), 0)).x() > window.width() + 1
    return one.sizeHint().width() > one.width() + 1 or beyond

texts, cut = [], []
def look(at):
    settle()
    for one, text in shown():
        texts.append(text)
        if narrow(one, text):
            cut.append([at, text])

look("start")
window.open(__import__("pathlib").Path(sys.argv[1]))
settle()
window.session.change("choose", profile="iso-23277-2")
for step in window.pages:
    window.session.go(step)
    look(step)
found = window.pages["Verdict"]._found.list
findings = [found.item(row).text() for row in range(found.count())]
lengths = [row.cells[2] for row in window.indications_step.table.order.model.rows]
model = window.indications_step.table.order.model
kind = model.index(0, 6)
model.setData(kind, "Endkraterriss")
settle()
kinds = [window.session.state.marked[0].kind, kind.data()]
verdict = window.pages["Verdict"]._why.text()
bar = window.archive.found.bar
bar.texts["kind"].setText("Endkraterriss")
asked = bar.query("mm")
bar.show_query(asked)
sought = [asked.kind, bar.texts["kind"].text()]
window.indications_step.table.copy()
copied = app.clipboard().text()
card = window.scale_step.lengths["card"][0]
card.setText("80,05 mm")
window.scale_step.use()
settle()
filled = [card.text(), window.scale_step._now.text()]
window.session.turn_unit()
window.session.change("fill in", thickness_mm=9.525)
settle()
filled.append(window.verdict_step.sizes["thickness_mm"].text())
box = QDialogButtonBox(QDialogButtonBox.StandardButton.Cancel)
close = box.buttons()[0].text()
window.close()
told = {"texts": texts, "cut": cut, "lengths": lengths, "cancel": close}
told |= {"kinds": kinds, "copied": copied, "verdict": verdict, "sought": sought}
told["filled"] = filled
print(json.dumps(told | {"findings": findings}))
"""


@pytest.fixture(scope="module")
def german(tmp_path_factory):
    """What the German window shows on its way through the five steps."""
    home = tmp_path_factory.mktemp("home")
    told = {"PTMARK_LANGUAGE": "de", "PTMARK_HOME": str(home), "QT_QPA_PLATFORM": "offscreen"}
    done = subprocess.run(
        [sys.executable, "-c", WINDOW, str(sample_images() / "rejectable.jpg")],
        capture_output=True, text=True, timeout=600, cwd=ROOT, check=False,
        env={**os.environ, **told},
    )  # fmt: skip
    assert done.returncode == 0, done.stderr[-3000:]
    assert "Traceback" not in done.stderr, done.stderr[-3000:]
    return json.loads(done.stdout)


def test_every_text_of_the_window_has_a_german_one(texts):
    assert len(texts.texts()) > 800  # the search for them is not blind
    left = texts.missing(texts.read(GERMAN))
    assert not left, (
        "python .run/packaging/translations.py, then fill in resources/languages/de.ts"
    )


def test_what_ships_is_what_was_translated(texts, tmp_path):
    texts.release(GERMAN, tmp_path / "de.qm")
    assert (tmp_path / "de.qm").read_bytes() == GERMAN.with_suffix(".qm").read_bytes()


def test_values_and_keys_stand_in_both_languages(texts):
    pattern = re.compile(r"\{[^}]*\}|‹[^›]*›")
    for (_, english), translated in texts.read(GERMAN).items():
        assert sorted(pattern.findall(english)) == sorted(pattern.findall(translated)), english


def test_no_english_shows_in_the_german_window(texts, german):
    known = {english: text for (_, english), text in texts.read(GERMAN).items()}
    english = {
        text
        for text in german["texts"]
        if known.get(text, text) != text and text not in known.values()
    }
    assert len(german["texts"]) > 200
    assert english <= SAME_IN_BOTH


def test_a_kind_is_typed_and_shown_in_german_and_kept_in_english(german):
    # DIN EN ISO 6520-1, number 104 (from memory); rules know the English name
    assert german["kinds"] == ["crater crack", "Endkraterriss"]
    assert german["sought"] == german["kinds"]


def test_what_decides_is_named_by_its_clause_not_by_a_key_of_a_file(german):
    # a citation stays as it is written
    assert "Entscheidend: Table 1 (A, " in german["verdict"]
    assert "linear" not in german["verdict"]


def test_a_copied_table_has_the_comma_that_a_german_spreadsheet_reads(german):
    copied = german["copied"]
    assert len(re.findall(r"\d,\d\d\b", copied)) >= 5  # length, U, path, width, ratio
    assert not re.search(r"\d\.\d", copied)


def test_what_was_typed_is_filled_in_again_with_a_comma_and_in_the_unit_at_hand(german):
    check, scale, thickness = german["filled"]
    assert check == "80,05 mm"
    assert re.search(r"80,05 mm, eingegeben am \d\d\.\d\d\.20\d\d", scale)
    assert thickness == "0,375 in"  # 9.525 mm by the inch of 25.4 mm


def test_findings_are_told_in_german_with_a_comma(german):
    assert len(german["findings"]) > 3
    told = " ".join(german["findings"])
    assert "Linienartige Anzeige A: " in told
    assert not re.search(r"\b(is|long|than|the|indication)\b|\d\.\d+ mm", told)


def test_qts_own_texts_are_german_too(german):
    assert german["cancel"].replace("&", "") == "Abbrechen"  # Qt's translation


def test_nothing_is_cut_at_1280_by_800(german):
    assert german["cut"] == []


def test_lengths_show_a_decimal_comma(german):
    # ISO 80000-1:2009, 7.3.2: the decimal sign is a comma or a point on the line.
    assert german["lengths"]
    for length in german["lengths"]:
        assert re.fullmatch(r"\d+,\d\d ± \d+,\d\d", length)


def test_a_typed_comma_is_read():
    assert parse_length("85,6 mm") == pytest.approx(85.6)
    assert parse_length("0,25 in") == pytest.approx(6.35)  # 25.4 mm to the inch


def test_a_comma_typed_in_a_limit_is_written_as_a_profile_writes_it(qtbot):
    # TOML 1.0, "Float": the decimal point is a full stop.
    edit = AmountEdit("length", "> 5 mm", "mm", (">",))
    qtbot.addWidget(edit)
    told = []
    edit.edited.connect(told.append)
    edit.number.clear()
    qtbot.keyClicks(edit.number, "5,5")
    assert told[-1] == "> 5.5 mm"


def test_a_chosen_language_is_kept_for_the_next_start(tmp_path):
    code = (
        "from ptmark.window import words\n"
        "before = words.language; words.choose('de'); print(before, words.tr('Verdict'))"
    )
    told = {k: v for k, v in os.environ.items() if k != "PTMARK_LANGUAGE"}
    told |= {"PTMARK_HOME": str(tmp_path), "LC_ALL": "C"}
    runs = [
        subprocess.run(
            [sys.executable, "-c", code], capture_output=True, text=True, timeout=600,
            cwd=ROOT, check=True, env=told,
        ).stdout.strip()
        for _ in range(2)
    ]  # fmt: skip
    assert runs == ["en Verdict", "de Bewertung"]
