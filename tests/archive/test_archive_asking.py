"""A search finds the same whether few rows fit and lead there, or many are met on the way."""

import pytest

from ptmark.archive import (
    Query,
    add_record,
    asking,
    count,
    count_some,
    find,
    find_all,
    open_archive,
    paging,
)


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
        (Query(serial="*-*", part="*-?"), "012345"),
        (Query(serial="s-*", part="*-4"), "4"),
        (Query(kind="pore"), "1245"),  # B and C are pores, 3.0 and 4.0 mm
        (Query(kind="po*", shortest_mm=3.5), "25"),
        (Query(longest_mm=2.5, kind="crack"), "012345"),
        (Query(words="inv*"), "012345"),
        (Query(words='odd"word'), ""),
    ],
)
def test_few_and_many_find_the_same(filled, monkeypatch, query, names):
    for most in (2000, 1):
        monkeypatch.setattr(asking, "_FEW", most)
        found = {hit.record_id for hit in find(filled, query).hits}
        assert found == {f"r-{n}" for n in names}
        assert count(filled, query) == len(names)


@pytest.mark.parametrize(
    "query",
    [
        Query(kind="pore"),
        Query(words="inv*"),
        Query(words="S-1 weld", kind="pore"),
        Query(serial="s-*", verdict="rejectable"),
        Query(part="*-*", words="underbeadings*"),
    ],
)
def test_what_lies_far_down_the_dates_is_found_page_by_page(filled, monkeypatch, query):
    """By any stretch, with what fits many and every page ending early."""
    monkeypatch.setattr(asking, "_FEW", 0)
    monkeypatch.setattr("ptmark.archive.patterns._COUNTED", 0)

    def pages(far):
        monkeypatch.setattr(paging, "_FAR", far)
        page = find(filled, query, limit=1, whole=False)
        found = page.hits
        while page.after is not None:
            page = find(filled, query, after=page.after, limit=1, whole=False)
            found += page.hits
        return found

    short = pages(1)
    assert short == pages(2) == pages(100) == list(find_all(filled, query))
    assert len(short) == count(filled, query)
    assert count_some(filled, query, 99) == (len(short), True)


def test_a_page_says_how_far_back_it_looked(archive, make, monkeypatch):
    """On SQLite and PostgreSQL: the two newest are looked at, then two more."""
    monkeypatch.setattr(asking, "_FEW", 0)
    monkeypatch.setattr(paging, "_FAR", 2)
    for n in range(6):
        name = "Ann" if n < 2 else "Bo"
        add_record(archive, make(f"r-{n}", examiner=name, day=f"2024-01-0{n + 1}"))
    asks = Query(examiner="*nn", kind="crack")
    page = find(archive, asks, limit=5, whole=False)
    assert (page.hits, page.back_to) == ([], "2024-01-04")
    page = find(archive, asks, limit=5, after=page.after, whole=False)
    assert (page.hits, page.back_to) == ([], "2024-01-02")
    page = find(archive, asks, limit=5, after=page.after, whole=False)
    assert [hit.record_id for hit in page.hits] == ["r-1", "r-0"]
    assert (page.after, page.back_to) == (None, "")
    page = find(archive, asks, limit=5)
    assert [hit.record_id for hit in page.hits] == ["r-1", "r-0"]
    assert (page.after, page.back_to) == (None, "")
    assert [hit.record_id for hit in find_all(archive, asks)] == ["r-1", "r-0"]


def test_few_by_two_ways_and_none_at_all(archive, make):
    """On SQLite and PostgreSQL, where what fits few is named one by one."""
    for n in range(4):
        add_record(archive, make(f"r-{n}", serial=f"S-{n}", count=1 + n % 2))
    told = {
        Query(kind="pore", shape="rounded"): set(),
        Query(kind="pore", words="invented", serial="s-*"): {"r-1", "r-3"},
        Query(part="p-*", serial="*-3", kind="pore"): {"r-3"},
        Query(part="p-*", words="zzz", verdict="rejectable"): set(),
    }
    for query, names in told.items():
        assert {hit.record_id for hit in find(archive, query, whole=False).hits} == names
        assert count(archive, query) == len(names)
        assert count_some(archive, query, 9) == (len(names), True)


def test_of_two_that_lead_the_one_with_fewer_reaches_the_end(archive, make, monkeypatch):
    """By the disposition all is looked through in one step, by the examiner it is not."""
    monkeypatch.setattr(paging, "_FAR", 3)
    for n in range(9):
        add_record(archive, make(f"r-{n}", decision="reject" if n in {0, 4} else "accept"))
    page = find(
        archive, Query(examiner="examiner one", disposition="reject"), limit=5, whole=False
    )
    assert {hit.record_id for hit in page.hits} == {"r-0", "r-4"}
    assert page.after is None


def test_patterns_of_what_has_few_values(archive, make):
    """On SQLite and PostgreSQL: a beginning or a letter left open, nothing that fits."""
    for n, examiner in enumerate(("Ann Ex", "Bo Ex", "Ann Why")):
        add_record(archive, make(f"r-{n}", examiner=examiner, procedure=f"PT-{n}"))
    told = {
        Query(examiner="* ex"): {"r-0", "r-1"},
        Query(examiner="ann ?x"): {"r-0"},
        Query(examiner="*zzz"): set(),
        Query(kind="*ack"): {"r-0", "r-1", "r-2"},
        Query(kind="*zzz"): set(),
        Query(kind="?ore", examiner="ann*"): {"r-0", "r-2"},
        Query(procedure="p?-1", criteria="*ted-1"): {"r-1"},
    }
    for query, names in told.items():
        assert {hit.record_id for hit in find(archive, query).hits} == names, query
        assert count(archive, query) == len(names)
        assert count_some(archive, query, 9) == (len(names), True)
        assert count_some(archive, query, 1) == (min(len(names), 2), len(names) < 2)


@pytest.mark.parametrize(
    ("query", "index"),
    [
        (Query(verdict="acceptable", disposition="reject"), "ix_inspection_decided"),
        (Query(verdict="rejectable"), "ix_inspection_verdict"),
        (Query(disposition="reject"), "ix_inspection_disposition"),
    ],
)
def test_an_index_leads_through_the_dates(filled, query, index):
    """By SQLite's own plan: no row is read that does not fit, and none is sorted."""
    dialect = filled.engine.dialect
    shape, values = asking.asked(filled, query)
    (by,) = asking.leads(dict(shape))
    page = paging.paging(dialect, shape, by, later=False)
    plan = _plan(filled, page, values | {"limit": 51})
    assert f"USING INDEX {index} (" in plan[0]
    assert not any("TEMP B-TREE" in step for step in plan)


def test_a_shape_that_no_indication_has_is_missed_at_once(filled):
    shape, values = asking.asked(filled, Query(shape="rounded"))
    assert dict(shape)["indication?"] == "few"
    probe = asking._probe(filled.engine.dialect, "indication", (("shape", "exact"),))
    (step,) = _plan(filled, probe, values | {"few": 1})
    assert step.endswith("USING COVERING INDEX ix_indication_shape (shape=?)")


def test_a_kind_and_a_shape_that_exclude_each_other_are_missed_at_once(filled):
    query = Query(kind="crack", shape="rounded", shortest_mm=1)
    shape, values = asking.asked(filled, query)
    assert dict(shape)["indication?"] == "few"
    asks = tuple((name, shape_of) for name, shape_of in shape if not name.endswith("?"))
    probe = asking._probe(filled.engine.dialect, "indication", asks)
    so_long, may_be = _read(_plan(filled, probe, values | {"few": 1}))
    by = "COVERING INDEX ix_indication_both (kind_key=? AND shape=? AND length_mm>?)"
    assert by in so_long
    assert "COVERING INDEX ix_indication_least (kind_key=?)" in may_be


@pytest.mark.parametrize(
    ("query", "indexes"),
    [
        (Query(shortest_mm=3), ("length (length_mm>?)", "least")),
        (Query(shortest_mm=1, longest_mm=2), ("length (length_mm>? AND length_mm<?)", "least")),
        (
            Query(shape="linear", shortest_mm=3),
            ("shape (shape=? AND length_mm>?)", "least"),
        ),
        (
            Query(kind="crack", shortest_mm=3),
            ("kind (kind_key=? AND length_mm>?)", "least (kind_key=?)"),
        ),
    ],
)
def test_the_few_that_may_be_longer_are_read_alone(filled, query, indexes):
    """Not all that are shorter, which are nearly all there are."""
    shape, values = asking.asked(filled, query)
    asks = tuple((name, how) for name, how in shape if not name.endswith("?"))
    probe = asking._probe(filled.engine.dialect, "indication", asks)
    steps = _read(_plan(filled, probe, values | {"few": 1}))
    assert [one.partition("USING COVERING INDEX ix_indication_")[2] for one in steps] == [
        *indexes
    ]


def test_letters_at_a_numbers_end_are_a_range_of_the_ends(filled):
    _, values = asking.asked(filled, Query(serial="*-4"))
    probe = asking._probe(filled.engine.dialect, "serial", (("serial", "within"),))
    first, then, last = _plan(filled, probe, values | {"few": 1})
    assert first == "SEARCH serial_tail USING PRIMARY KEY (tail>? AND tail<?)"
    assert then == "SEARCH serial USING INTEGER PRIMARY KEY (rowid=?)"
    assert last.endswith("USING COVERING INDEX ix_inspection_serial (serial_id=?)")


@pytest.mark.parametrize(
    ("query", "index"),
    [
        (Query(examiner="ex one", kind="crack"), "ix_inspection_examiner (examiner_key=?"),
        (Query(kind="crack", shape="linear"), "ix_inspection_date (examined_on>?"),
        (Query(part="P-4", shape="linear"), "ix_inspection_part (part_id=?"),
        (Query(kind="cr*", until="2026-03-01"), "ix_inspection_date (examined_on>?"),
    ],
)
def test_a_stretch_of_the_dates_is_looked_through_in_order(filled, monkeypatch, query, index):
    """By SQLite's own plan: to where it ends, unsorted, indications by their covering index."""
    monkeypatch.setattr(asking, "_FEW", 0)
    dialect = filled.engine.dialect
    shape, values = asking.asked(filled, query)
    (by,) = asking.leads(dict(shape))
    page = paging.paging(dialect, shape, by, later=False, near=True)
    plan = _plan(filled, page, values | {"limit": 51, "end_day": "2026-01-01", "end_number": 1})
    assert any(f"SEARCH inspection USING INDEX {index}" in step for step in plan[:2])
    assert not any("TEMP B-TREE" in step for step in plan)
    own = "SEARCH indication_1 USING COVERING INDEX ix_indication_own (inspection_id=?"
    assert any(own in step for step in plan)


def _read(plan):
    return [step for step in plan if step.startswith(("SEARCH", "SCAN"))]


def _plan(archive, what, values):
    with archive.reading() as conn:
        rows = conn.exec_driver_sql(f"EXPLAIN QUERY PLAN {what.sql}", what.bound(values))
        return [row.detail for row in rows]
