"""The tests before a retest, found beside it by the very revision it links to."""

from dataclasses import replace
from pathlib import Path

import pytest

from ptmark.commands.photos import earlier_of
from ptmark.record import link_to, load_record, save_record

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
    assert [(one.id, pixels) for one, pixels in found] == [("r-1", None), ("r-2", None)]
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
    assert [one.id for one, _ in earlier_of(last, tmp_path / "3.json", None)] == ["r-1"]
