"""A search finds the same whether few rows fit and lead there, or many are met on the way."""

import pytest

from ptmark.archive import Query, add_record, asking, count, find, open_archive


@pytest.fixture
def filled(tmp_path, make):
    with open_archive(tmp_path / "archive", by="keeper") as archive:
        for n in range(6):
            add_record(archive, make(f"r-{n}", part=f"P-{n}", serial=f"S-{n}", count=1 + n % 3))
        yield archive


@pytest.mark.parametrize(
    ("query", "names"),
    [
        (Query(part="p-*"), "012345"),
        (Query(part="P-?"), "012345"),
        (Query(serial="s-*", part="p-*"), "012345"),
        (Query(kind="pore"), "1245"),  # B and C are pores, 3.0 and 4.0 mm
        (Query(kind="po*", shortest_mm=3.5), "25"),
        (Query(longest_mm=2.5, kind="crack"), "012345"),
        (Query(words="inv*"), "012345"),
        (Query(words='odd"word'), ""),
    ],
)
def test_few_and_many_find_the_same(filled, monkeypatch, query, names):
    for most in (2000, 1):
        monkeypatch.setattr(asking, "_FEW", dict.fromkeys(asking._FEW, most))
        found = {hit.record_id for hit in find(filled, query).hits}
        assert found == {f"r-{n}" for n in names}
        assert count(filled, query) == len(names)
