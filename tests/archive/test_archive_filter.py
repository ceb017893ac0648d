"""A search finds what a plain filter in Python finds in the same records, odd letters too."""

import itertools
import random
import re
import unicodedata
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from sqlalchemy import insert

from ptmark.archive import (
    Query,
    asking,
    count,
    count_some,
    find,
    find_all,
    open_archive,
    paging,
)
from ptmark.archive.derive import derived
from ptmark.archive.rows import write_rows

ODD = [
    "P-17",
    "p-170",
    "P_17",
    "P%17",
    'P"17',
    "P 17",
    "Ä-ß",
    "ä-SS",
    "P\\17",
    "É%_*",
    "x'y",
    "Ω",
    "",
]
WORDS = [
    "weld",
    "Weld-toe",
    "grün",
    "crack_tip",
    '5"',
    "50%",
    "ΩMEGA",
    "a*b",
    "été",
    "17",
    "st",
    "underbead",  # longer than the beginnings that the index of words keeps
    "underbeads",
]
DAYS = ["2023-12-31", "2024-01-01", "2024-02-29", "2024-03-01", "2025-07-15"]
KINDS = ["", "crack", "Crack", "lack of fusion", "pore_%"]
NAMES = ["Ann Ex", "ann  ex", "Bo_B", "Çelik", ""]
PROFILES = ["invented-1", "invented-2x", "other_3"]
VERDICTS = ["", "acceptable", "rejectable", "undecided"]
DECISIONS = ["", "accept", "reject", "rework and retest", "refer"]
LENGTHS = [None, 0.5, 1.0, 1.5, 2.0, 3.25]


def invented(number):
    """One record's document; the same for the same number."""
    draw = random.Random(number)  # noqa: S311
    rows = [
        {
            "id": letter,
            "kind": draw.choice(KINDS),
            "shape": draw.choice(["linear", "rounded", None]),
            "relevance": "",
            "note": draw.choice(["", *WORDS]),
            "reason": "",
            "length_mm": draw.choice(LENGTHS),
            ("runs_out", "overexposed")[number % 2]: (number + ord(letter)) % 5 == 0,
            "length_u_mm": 0.1,
            "width_mm": 0.3,
            "centre_mm": None,
            "ends_mm": None,
        }
        for letter in "ABC"[: draw.randrange(4)]
    ]
    return {
        "schema": "ptmark-record/2",
        "id": f"r-{number:03d}",
        "created": "2026-01-01T00:00:00Z",
        "revision": 1,
        "software": "invented",
        "fields": {
            "part_number": draw.choice(ODD),
            "serial_number": draw.choice(ODD),
            "examination_date": draw.choice(DAYS),
            "examiner": draw.choice(NAMES),
            "procedure": draw.choice(ODD),
            "remarks": " ".join(draw.sample(WORDS, draw.randrange(4))),
        },
        "photo": {"file": "x.jpg", "sha256": f"{number:064x}"},
        "indications": rows,
        "evaluation": {
            "profile": draw.choice(PROFILES),
            "verdict": draw.choice(VERDICTS) or None,
            "findings": [],
        },
        "disposition": {"decision": draw.choice(DECISIONS), "reason": draw.choice(WORDS)},
        "retest_of": None,
        "signatures": [],
    }


RECORDS = [invented(number) for number in range(150)]


@pytest.fixture(scope="module")
def shelf(tmp_path_factory):
    with open_archive(tmp_path_factory.mktemp("shelf"), by="test") as archive:
        with archive.writing() as conn:
            for number, one in enumerate(RECORDS):
                photo = {"sha256": f"{number:064x}", "suffix": "jpg", "bytes": 1}
                conn.execute(insert(asking.table("photo")), photo)
                write_rows(conn, derived(one, b"%d" % number), b"%d" % number)
        yield archive


# -- the filter: written from what `Query` says, with nothing of the archive's -----------------
def folded(said):
    return " ".join(said.split()).casefold()


def matches(pattern, said, plain=str.strip):
    pattern = plain(pattern)
    if not pattern:
        return True
    made = "".join({"*": ".*", "?": "."}.get(c, re.escape(c)) for c in pattern)
    return re.fullmatch(made, said, re.DOTALL) is not None


def tokens(said):
    """Runs of letters and digits without case and accents: SQLite's documentation of FTS5,
    section 4.3.1, tokenizer unicode61."""
    bare = [c for c in unicodedata.normalize("NFD", said) if not unicodedata.combining(c)]
    return re.findall(r"[^\W_]+", "".join(bare).lower())


def has_words(asked, said):
    there = [tokens(one) for one in said]
    given = [one for one in asked.split() if one.strip("*")]
    phrases = [(tokens(one), one.endswith("*")) for one in given]
    if not any(phrase for phrase, _ in phrases):
        return False
    flat = list(itertools.chain.from_iterable(there))  # a phrase may go on in the next line
    return all(not phrase or stands(phrase, more, flat) for phrase, more in phrases)


def stands(phrase, more, flat):
    size = len(phrase)
    for start in range(len(flat) - size + 1):
        part, last = flat[start : start + size], phrase[-1]
        if part == phrase or (more and part[:-1] == phrase[:-1] and part[-1].startswith(last)):
            return True
    return False


def fits_indication(query, one):
    length = one["length_mm"]
    longer = one.get("runs_out") or one.get("overexposed")  # than what is seen of it
    if query.shortest_mm is not None and (
        length is None or (length < query.shortest_mm and not longer)
    ):
        return False
    if query.longest_mm is not None and (length is None or length > query.longest_mm):
        return False
    if query.shape and one["shape"] != query.shape:
        return False
    return matches(query.kind, folded(one["kind"]), folded)


def fits(query, one):
    fields, judged = one["fields"], one["evaluation"]
    said = [one["id"], *fields.values(), one["disposition"]["reason"]]
    for row in one["indications"]:
        said += [row["kind"], row["note"], row["reason"]]
    asks = query.kind.strip() or query.shape
    asks = asks or query.shortest_mm is not None or query.longest_mm is not None
    return (
        matches(query.part, folded(fields["part_number"]), folded)
        and matches(query.serial, folded(fields["serial_number"]), folded)
        and matches(query.examiner, folded(fields["examiner"]), folded)
        and matches(query.procedure, folded(fields["procedure"]), folded)
        and matches(query.criteria, judged["profile"])
        and (not query.since or fields["examination_date"] >= query.since)
        and (not query.until or fields["examination_date"] <= query.until)
        and (not query.verdict or (judged["verdict"] or "") == query.verdict)
        and (not query.disposition or one["disposition"]["decision"] == query.disposition)
        and (not query.photo or one["photo"]["sha256"] == query.photo.lower())
        and (not query.record_id or one["id"] == query.record_id)
        and (not asks or any(fits_indication(query, row) for row in one["indications"]))
        and (not query.words or has_words(query.words, said))
    )


def patterns(values):
    """A value, its beginning with a star, one letter left open, or anything short."""
    some = st.sampled_from([one for one in values if one])
    cut = st.builds(lambda v, n: v[:n] + "*", some, st.integers(0, 4))
    tail = st.builds(lambda v, n: "*" + v[n:], some, st.integers(0, 4))
    hole = st.builds(
        lambda v, n: v[: n % len(v)] + "?" + v[n % len(v) + 1 :], some, st.integers(0, 9)
    )
    loose = st.text(alphabet='pP17-_%*?" ä\\Ω', max_size=4)
    return st.one_of(
        st.just(""), st.just(""), some, some.map(str.upper), cut, tail, hole, loose
    )


WORDED = st.lists(
    st.one_of(
        st.sampled_from(WORDS),
        st.builds(lambda word, n: word[:n] + "*", st.sampled_from(WORDS), st.integers(1, 9)),
        st.sampled_from(["r-007", "WELD", "ETE", "toe", "tip", "%", '"', "*", "zzz", "crack*"]),
    ),
    max_size=2,
).map(" ".join)
QUERIES = st.builds(
    Query,
    part=patterns(ODD),
    serial=patterns(ODD),
    since=st.sampled_from(["", "", *DAYS]),
    until=st.sampled_from(["", "", *DAYS]),
    verdict=st.sampled_from(["", "", "", *VERDICTS]),
    disposition=st.sampled_from(["", "", "", *DECISIONS]),
    examiner=patterns(NAMES),
    procedure=patterns(ODD),
    criteria=st.sampled_from(["", "", "", *PROFILES, "invented-*", "*_3", "inv?nted-1", "%"]),
    kind=patterns(KINDS),
    shape=st.sampled_from(["", "", "linear", "rounded"]),
    shortest_mm=st.sampled_from([None, None, *LENGTHS]),
    longest_mm=st.sampled_from([None, None, *LENGTHS]),
    words=WORDED,
    photo=st.sampled_from(["", "", "", f"{9:064X}"]),
    record_id=st.sampled_from(["", "", "", "r-009", "R-009"]),
)
ONE_OR_TWO = st.builds(  # all at once mostly find nothing
    lambda query, names: Query(**{name: getattr(query, name) for name in names}),
    QUERIES,
    st.lists(st.sampled_from(Query.__slots__), min_size=1, max_size=3),
)


@pytest.mark.parametrize("few", [2000, 1], ids=["few", "many"])
@settings(
    max_examples=250,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(query=ONE_OR_TWO)
@example(query=Query(verdict="acceptable", words="weld %"))  # a sign is no word
@example(query=Query(part="P-17", words="& weld -*"))
def test_the_archive_finds_what_a_plain_filter_finds(shelf, monkeypatch, few, query):
    monkeypatch.setattr(asking, "_FEW", few)
    monkeypatch.setattr("ptmark.archive.patterns._COUNTED", few)
    expected = [one for one in RECORDS if fits(query, one)]
    expected.sort(key=lambda one: (one["fields"]["examination_date"], one["id"]), reverse=True)
    assert [hit.record_id for hit in find_all(shelf, query)] == [one["id"] for one in expected]
    assert count(shelf, query) == len(expected)
    assert count_some(shelf, query, 20) == (min(len(expected), 21), len(expected) <= 20)
    page = find(shelf, query, limit=7)
    paged = page.hits
    while page.after is not None:
        page = find(shelf, query, after=page.after, limit=7)
        paged += page.hits
    assert [hit.record_id for hit in paged] == [one["id"] for one in expected]


@pytest.mark.parametrize("few", [2000, 1], ids=["few", "many"])
@settings(
    max_examples=100,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(query=ONE_OR_TWO, far=st.integers(1, 40), limit=st.integers(1, 9))
def test_a_page_that_stops_says_so_and_leaves_nothing_out(
    shelf, monkeypatch, few, query, far, limit
):
    """Down to the day it tells, a page has all that fits; the rest stands on later pages."""
    monkeypatch.setattr(asking, "_FEW", few)
    monkeypatch.setattr("ptmark.archive.patterns._COUNTED", few)
    monkeypatch.setattr(paging, "_FAR", far)
    monkeypatch.setattr(paging, "_FAR_COUNTED", far)
    expected = [one for one in RECORDS if fits(query, one)]
    days = {one["id"]: one["fields"]["examination_date"] for one in expected}
    expected = sorted(days, key=lambda name: (days[name], name), reverse=True)
    found, pages, page = [], 0, None
    while page is None or page.after is not None:
        page = find(shelf, query, after=page and page.after, limit=limit, whole=False)
        found += [hit.record_id for hit in page.hits]
        pages += 1
        assert found == expected[: len(found)]
        left = expected[len(found) :]
        if page.back_to:
            assert page.after is not None
            assert all(days[name] <= page.back_to for name in left)
        elif page.after is not None:
            assert len(page.hits) == limit
    assert found == expected
    assert pages <= len(RECORDS) // far + len(expected) // limit + 1
    assert [hit.record_id for hit in find_all(shelf, query)] == expected
    number, known = count_some(shelf, query, limit)
    assert number <= min(len(expected), limit + 1)
    assert not known or number == len(expected)


@settings(
    max_examples=60,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)
@given(
    query=ONE_OR_TWO,
    words=st.sampled_from(["weld", "w*", "toe tip", "st weld", "underbead*", "*"]),
    far=st.integers(1, 40),
    each=st.sampled_from([0, 100]),
)
def test_words_beside_anything_else_are_found_page_by_page(
    shelf, monkeypatch, query, words, far, each
):
    """Whether they lead, are asked of each one met, or are listed, a stretch at a time."""
    query = replace(query, words=query.words or words)
    monkeypatch.setattr(asking, "EACH", each)
    monkeypatch.setattr(paging, "EACH", each)
    monkeypatch.setattr(paging, "_FAR", far)
    monkeypatch.setattr(paging, "_FAR_LISTED", far)
    expected = [one for one in RECORDS if fits(query, one)]
    days = {one["id"]: one["fields"]["examination_date"] for one in expected}
    expected = sorted(days, key=lambda name: (days[name], name), reverse=True)
    found, page = [], None
    while page is None or page.after is not None:
        page = find(shelf, query, after=page and page.after, limit=5, whole=False)
        found += [hit.record_id for hit in page.hits]
        assert found == expected[: len(found)]
        if page.back_to:
            assert all(days[name] <= page.back_to for name in expected[len(found) :])
    assert found == expected
    assert [hit.record_id for hit in find_all(shelf, query)] == expected
    assert count(shelf, query) == len(expected)
    number, known = count_some(shelf, query, 7)
    assert number <= min(len(expected), 8)
    assert not known or number == len(expected)


def test_the_filter_is_no_empty_one():
    """Each field alone finds some of the records and leaves some out."""
    for query in (
        Query(part="p*"),
        Query(words="weld"),
        Query(kind="crack", shortest_mm=1.5),
        Query(examiner="ann ex"),
        Query(criteria="invented-*"),
        Query(since="2024-02-29", until="2024-03-01"),
    ):
        assert 0 < sum(fits(query, one) for one in RECORDS) < len(RECORDS)
