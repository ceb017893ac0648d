"""What the core says, shown in German: findings of every profile, errors of every kind."""

import re
import subprocess
import sys
from dataclasses import replace
from itertools import permutations
from pathlib import Path

import numpy as np
import pytest

from ptmark import errors
from ptmark.archive import open_archive
from ptmark.criteria import evaluate, list_profiles, load_profile
from ptmark.criteria.house import ProfileDraft
from ptmark.criteria.house_check import check_draft
from ptmark.criteria.house_examples import EXAMPLES, example_scene
from ptmark.hides import Hides
from ptmark.measure import advice
from ptmark.measure.geometry import as_outline
from ptmark.photo import open_photo
from ptmark.places import resource, sample_images
from ptmark.record import load_record
from ptmark.report.pages.whole import write_pdf
from ptmark.scale import LineReference, rule, solve
from ptmark.scale.graduations import GRADUATIONS
from ptmark.series import WINDOWS, growth_of
from ptmark.units import parse_length
from ptmark.window.core_texts import HOLE, CoreTexts

GERMAN = Path(__file__).parents[2] / "resources" / "languages" / "de.ts"
# The commonest words of English that German does not have, and the trade's.
ENGLISH = re.compile(
    r"\b(the|is|are|of|and|or|than|with|may|be|would|not|by|it|that|which|from|its|this|there"
    r"|longer|more|less|within|long|wide|indications?|rounded|relevant if|measured)\b"
)
TERMS = {  # EN ISO 12706 and EN ISO 23277 in German, from memory
    "indication": "Anzeige",
    "acceptance": "Zulässigkeit",
    "linear": "linienartig",
    "penetrant": "Eindring",
    "developer": "Entwickler",
    "remover": "Zwischenreiniger",
    "inspector": "Prüfer",
    "lack of fusion": "Bindefehler",
}


@pytest.fixture(scope="module")
def known(texts):
    return {one: german for (name, one), german in texts.read(GERMAN).items() if name == "core"}


@pytest.fixture(scope="module")
def shown(known):
    return CoreTexts(known, lambda text: known.get(text, ""))


@pytest.mark.parametrize(
    "said",
    [
        *(f"differs from its file in the {name}" for name in (
            "part number", "serial number", "inspection", "revisions", "photos",
            "indications", "text",
        )),
        "its file ab12cd34ef56… is not in the store",
        "its file ab12cd34ef56… is not what was taken in",
        "its file ab12cd34ef56… cannot be read (Permission denied)",
        "its file cannot be read (its bytes are damaged (Error -3))",
        "a row of indication points nowhere",
        "holds other ends than the numbers have",
        "line 3 beside the photos is missing",
        "line 3 beside the photos is changed",
        "line 3 beside the photos is damaged",
    ],
)  # fmt: skip
def test_what_a_check_of_the_archive_finds_is_told_in_german(shown, said):
    told = shown(said)
    assert not ENGLISH.search(told), told
    assert not re.search(r"\b(text|photos|revisions|missing|changed|damaged|number)\b", told), (
        told
    )


@pytest.mark.parametrize(
    "said",
    [
        "To evaluate: t25.jpg, taken at 25 min, the last photo within 10 to 60 min; "
        "ASME BPVC V, T-676.1 (from a secondary source). "
        "The time to evaluate is shaded; the procedure's own governs. Minutes from when the "
        "developer was dry (10:00) to each photo, both by the camera's clock. Measured points "
        "only; the lines join them and say nothing of the time between. Bars: ± U (k = 2).",
        "No photo to evaluate: no photo was taken within 10 to 30 min (ISO 3452-1:2021, 8.6 "
        "(from memory)); take one later.",
        "Bleed-out over time is not plotted: the record does not say when the developer was "
        "dry.",
    ],
)
def test_growth_is_told_in_german(shown, said):
    assert not ENGLISH.search(shown(said)), shown(said)


def test_what_the_database_says_is_told_as_its_own(shown):
    said = "row 1 missing from index ix_indication_length"
    told = shown(f"its own check says: {said}")
    assert told == f"die eigene Prüfung der Datenbank meldet: {said}"


def test_the_list_of_templates_is_todays(texts):
    assert len(texts.core_texts()) > 1000  # the search for them is not blind
    assert resource("languages", "core.txt").read_text(encoding="utf-8") == texts.core_file()


def filled(template, values):
    return HOLE.sub(lambda found: values[found[1]], template)


def test_every_template_is_found_again_in_a_text_made_of_it(known, shown):
    wrong = {}
    for english, german in known.items():
        amounts = {number: f"{number}.5 mm" for number, _ in HOLE.findall(english)}
        told = {
            number: amounts[number] if mark else amounts[number].replace(".", ",")
            for number, mark in HOLE.findall(english)
        }
        said = shown(filled(english, amounts))
        if said.casefold() != filled(german, told).casefold():
            wrong[english] = said
    # Two holes side by side, which an amount in each cannot be told apart in.
    beside = {one for one in wrong if re.search(r"\}\{", one)}
    assert wrong.keys() - beside <= {"add {0} = …"}  # "0.5 mm = …" reads as an amount
    assert len(beside) < 6


def scenes():
    """Invented: clear, doubtful, named, set aside ones; with and without sizes of the part."""
    sure = example_scene(EXAMPLES)
    doubtful = example_scene(tuple(replace(one, u=0.9) for one in EXAMPLES))
    named = ("crack", "surface pore", "lack of fusion", "what the manual calls so")
    one, *others = doubtful.indications
    told = tuple(replace(other, kind=kind) for other, kind in zip(others, named, strict=False))
    aside = replace(one, relevance="non-relevant", reason="the edge of the tool")
    bare = replace(one, id="Z", relevance="false", reason="")
    whole = {"thickness_mm": 12.0, "diameter_mm": 300.0, "weld_length_mm": 200.0}
    return (
        sure,
        doubtful,
        replace(sure, indications=()),
        replace(doubtful, indications=(aside, bare, *told), **whole),
        replace(doubtful, indications=(aside,)),
        replace(sure, indications=(), hidden={Hides.COLOURLESS: 1}),
        replace(sure, unmeasured=("P",), hidden=dict.fromkeys(Hides, 7)),
    )


@pytest.mark.parametrize("number", [1, 2, 3])
def test_a_rule_that_contradicts_the_length_is_refused_in_german(number, shown):
    assert len(GRADUATIONS) > number
    for likely in permutations(GRADUATIONS, number):
        german = shown(rule._contradiction(150, likely, 100.0).what)
        assert not ENGLISH.search(german)
        assert german.count(" oder ") == 2 * (number - 1)


@pytest.mark.parametrize("name", list_profiles())
def test_nothing_that_a_profile_says_stays_english(name, shown):
    profile = load_profile(name)
    said = {profile.title, profile.edition}
    for scene in scenes():
        made = evaluate(profile, scene)
        said |= {one.says for one in made.findings} | {*made.cautions}
        said |= {*made.relevance.values()} | {*made.shape.values()}
    assert len(said) > 20
    # A person's own words, names of rules, and clauses as the profile has them.
    typed = re.compile(
        r"the edge of the tool|what the manual calls so|\w+(-\w+)+|nachprüfen: .*"
    )
    left = {one: shown(one) for one in said if ENGLISH.search(typed.sub("", shown(one)))}
    assert not left
    points = [one for one in said if re.search(r"\d\.\d+ (mm|in)\b", shown(one))]
    assert not points  # ISO 80000-1:2009, 7.3.2: comma or point, and never both in one text


@pytest.mark.parametrize("name", list_profiles())
def test_house_rules_explain_themselves_in_german(name, shown):
    checked = check_draft(ProfileDraft.start(name))
    said = [*checked.says.values()]
    said += [text for one in checked.faults for text in (one.what, one.mend)]
    assert said
    names = re.compile(r"\w+(-\w+)+")
    assert not [one for one in said if ENGLISH.search(names.sub("", shown(one)))]


def test_terms_are_those_of_the_trade(known):
    for english, german in TERMS.items():
        word = re.compile(rf"\b{english}\b", re.IGNORECASE)
        having = [one for one in known if word.search(one)]
        right = [one for one in having if german.casefold() in known[one].casefold()]
        assert having
        assert len(right) > 0.75 * len(having), (english, set(having) - set(right))


def provoked(tmp_path):
    """One real error of each room, as it is raised."""
    empty, text = tmp_path / "photo.jpg", tmp_path / "record.json"
    empty.write_bytes(b"")
    text.write_text("{", encoding="utf-8")
    there = LineReference(ends_px=((5.0, 5.0), (5.0, 5.0)), length_mm=50.0)
    return (
        (errors.PhotoError, lambda: open_photo(empty)),
        (
            errors.ScaleError,
            lambda: solve(there, open_photo(sample_images() / "rejectable.jpg")),
        ),
        (errors.OutlineError, lambda: as_outline(np.zeros((2, 2)))),
        (errors.CriteriaError, lambda: load_profile("nobody-has-it")),
        (errors.RecordError, lambda: load_record(text)),
        (
            errors.ReportError,
            lambda: write_pdf(tmp_path / "a.pdf", None, None, None, paper="B7"),
        ),
        (errors.SeriesError, lambda: growth_of([], next(iter(WINDOWS.values())))),
        (errors.ArchiveError, lambda: open_archive(tmp_path / "none", read_only=True)),
        (errors.PtmarkError, lambda: parse_length("as long as a finger")),
    )


def test_an_error_of_every_room_is_told_in_german(tmp_path, shown):
    told = []
    for kind, deed in provoked(tmp_path):
        with pytest.raises(kind) as caught:
            deed()
        exc = caught.value
        whole = exc.what.replace("nobody-has-it", "").replace("as long as a finger", "")
        assert ENGLISH.search(whole) or whole
        told += [shown(exc.what), shown(exc.mend), shown(str(exc))]
    typed = re.compile(f"as long as a finger|nobody-has-it|{re.escape(str(tmp_path))}")
    assert not [one for one in told if ENGLISH.search(typed.sub("", one))]


def test_advice_on_what_makes_a_length_surer_is_german(shown):
    for reference in ("card", "rectangle", "pipe", "rectangle on a pipe"):
        for name in ("edge", "sampling", "map", "picking", "reference", "tilt", "lens",
                     "focal length", "touching line", "relief"):  # fmt: skip
            said = advice({name: 0.1}, reference)
            assert said
            assert not ENGLISH.search(shown(said)), said


def test_what_a_person_wrote_stays_as_it_was_written(shown):
    text = "non-relevant, set by the inspector: 1.5 mm from the edge and not relevant"
    told = shown(text)
    assert told == ("nicht relevant, vom Prüfer gesetzt: 1.5 mm from the edge and not relevant")
    assert shown("Scratch by the crane hook, and two more") == (
        "Scratch by the crane hook, and two more"
    )


def test_what_is_said_of_the_process_and_of_a_record_s_parts_is_german(shown):
    from ptmark.record import path_label

    told = shown("Too dark: 200 lx, at least 500 lx (ISO 3059, second-hand).")
    assert told == "Zu dunkel: 200 lx, mindestens 500 lx (ISO 3059, aus zweiter Hand)."
    assert path_label("indications.B.length_mm", shown) == "Anzeige B (indications.B.length_mm)"


def test_numbers_of_clauses_and_editions_keep_their_points(shown):
    told = shown("as given by the user's procedure; ISO 3452-1:2021, 8.6 (from memory)")
    assert "ISO 3452-1:2021, 8.6" in told


def test_english_never_loads_the_templates():
    code = (
        "import sys; from ptmark.window.words import from_core\n"
        "print(from_core('There are no indications.'),"
        " 'ptmark.window.core_texts' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True, text=True, timeout=600, check=True,
        cwd=Path(__file__).parents[2], env={"PTMARK_LANGUAGE": "en"},
    )  # fmt: skip
    assert done.stdout.strip() == "There are no indications. False"
