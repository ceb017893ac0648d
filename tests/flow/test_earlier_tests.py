"""The tests before a retest, found beside it by the very revision it links to."""

import shutil
from dataclasses import replace
from pathlib import Path

import cv2
import numpy as np
import pytest

from ptmark.inspection import Inspection
from ptmark.inspection.retests import earlier_of, what_became
from ptmark.record import link_to, load_record, save_record
from ptmark.scale import CardReference
from ptmark.series import GONE

OLD = Path(__file__).parents[1] / "record" / "written" / "record-1.json"


@pytest.fixture
def chain(tmp_path):
    """Three tests of one area, each linked to the one before; no photos lie there."""
    made = [load_record(OLD)]
    save_record(tmp_path / "1.json", made[0])
    for number in (2, 3):
        link = link_to(made[-1], f"{number - 1}.json")
        made.append(replace(made[0], id=f"r-{number}", retest_of=link))
        save_record(tmp_path / f"{number}.json", made[-1])
    return made


def test_the_chain_comes_oldest_first_without_photos_that_are_gone(chain, tmp_path):
    found = earlier_of(chain[2], tmp_path / "3.json", None)
    assert [(one.record.id, one.rgb) for one in found] == [("r-1", None), ("r-2", None)]
    assert earlier_of(chain[0], tmp_path / "1.json", None) == []


def test_a_file_that_is_not_the_linked_revision_does_not_count(chain, tmp_path):
    changed = replace(chain[1], fields={"remarks": "changed since"})
    save_record(tmp_path / "2.json", changed)
    assert earlier_of(chain[2], tmp_path / "3.json", None) == []
    (tmp_path / "2.json").unlink()
    assert earlier_of(chain[2], tmp_path / "3.json", None) == []


def test_a_ring_of_links_ends(chain, tmp_path):
    turned = replace(chain[0], retest_of=link_to(chain[2], "3.json"))
    last = replace(chain[2], retest_of=link_to(turned, "1.json"))
    save_record(tmp_path / "1.json", turned)
    save_record(tmp_path / "3.json", last)
    assert [one.record.id for one in earlier_of(last, tmp_path / "3.json", None)] == ["r-1"]


@pytest.fixture(scope="module")
def ground(photo_file, tmp_path_factory):
    """Two tests of the drawn area: the line of 20 mm was ground to 7, the small disc away."""
    folder = tmp_path_factory.mktemp("retest")
    shutil.copy(photo_file, folder / "before.png")
    picture = cv2.imread(str(photo_file))
    for left, top, right, bottom in ((324, 340, 500, 395), (935, 455, 985, 505)):
        white = picture[top - 40 : top - 40 + 1, left:right].astype(float).mean(axis=(0, 1))
        noise = np.random.RandomState(5).normal(0, 1, (bottom - top, right - left, 3))
        picture[top:bottom, left:right] = np.clip(white + noise, 0, 255)  # any seed does
    cv2.imwrite(str(folder / "after.png"), picture)
    made = []
    for name in ("before.png", "after.png"):
        one = Inspection()
        one.open(folder / name)
        one.set_reference(CardReference())
        one.set_suggestions(one.look())
        made.append(one.to_record())
    save_record(folder / "1.json", made[0])
    made[1] = replace(made[1], retest_of=link_to(made[0], "1.json"))
    return made, folder


def test_what_became_of_each_indication_is_told_with_the_records_sizes(ground):
    (first, last), folder = ground
    sizes = {row["id"]: row["length_mm"] for row in first.indications}
    line, disc, dot = sorted(sizes, key=lambda name: -sizes[name])
    now = {row["id"]: row for row in last.indications}
    short, same = sorted(now, key=lambda name: -now[name]["length_mm"])
    (earlier,) = earlier_of(last, folder / "2.json", photo=folder / "after.png")
    assert earlier.rgb is not None
    told = " | ".join(earlier.became)
    assert f"Gone: {dot}. | {GONE}" in told
    assert f"Remains: {line}, {sizes[line]:.2f} ± " in told
    # drawn: 20 mm along x from 240 px, cut off at 324 px and 12 px a mm
    assert now[short]["length_mm"] == pytest.approx(7.0, abs=0.3)
    shorter = f"now {short}, {now[short]['length_mm']:.2f} ± {now[short]['length_u_mm']:.2f} mm"
    assert f"{shorter}; shorter by more than the combined uncertainty" in told
    assert f"Remains: {disc}" in told
    assert same in now


def test_a_size_that_may_go_on_is_told_as_the_least(ground):
    """A length alone would read as the whole, and a later whole one as growth."""
    (first, last), folder = ground
    rows = [row | {"covered": True} for row in last.indications]
    told = what_became(
        (first, folder / "before.png"), (replace(last, indications=rows), folder / "after.png")
    )
    assert all("; now " not in one or ", ≥ " in one.split("; now ")[1] for one in told)
    assert any("; now " in one for one in told)


def test_what_the_inspector_dropped_is_not_gone(ground):
    """It was called, and a person judged it: that is not a bare place."""
    (first, last), folder = ground
    rows = [row | {"standing": "dropped", "reason": "a thread"} for row in last.indications]
    told = what_became(
        (first, folder / "before.png"), (replace(last, indications=rows), folder / "after.png")
    )
    here = [one for one in told if "dropped by the inspector" in one]
    assert len(here) == len(rows)
    assert all(one.startswith("Cannot be told: ") for one in here)


def test_where_photos_cannot_be_laid_over_each_other_it_is_said(ground, photo_file):
    (first, last), folder = ground
    bare = replace(last, scale={**last.scale, "reference": None, "given": None})
    (said,) = what_became((first, photo_file), (bare, folder / "after.png"))
    assert "compare by eye" in said
    assert what_became((first, photo_file), (last, None)) == ()
