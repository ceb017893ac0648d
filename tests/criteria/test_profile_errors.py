"""A profile that cannot be used gives one error, with file, line and key."""

import time

import pytest

from ptmark.criteria import list_profiles, load_profile
from ptmark.errors import CriteriaError
from ptmark.places import resource

GOOD = """\
name = "house"
title = "House rules"
edition = "1"
unit = "mm"
source = "drawing"
governs = "The contract governs."

[shape]
linear = "> 3"
clause = "1"
sure = "verified"

[relevance]
relevant = "> 1.5 mm"
clause = "2"
sure = "verified"

[[rule]]
id = "rounded"
kind = "size"
of = "rounded"
reject = "> 5 mm"
clause = "3"
sure = "verified"

[[rule]]
id = "row"
kind = "row"
of = "rounded"
number = ">= 4"
gap = "<= 1.5 mm"
clause = "4"
sure = "verified"
"""


@pytest.fixture
def loaded(tmp_path):
    def load(text, name="house.toml"):
        path = tmp_path / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return load_profile(path)

    return load


def test_the_good_one_loads(loaded):
    profile = loaded(GOOD)
    assert [rule.id for rule in profile.rules] == ["rounded", "row"]


@pytest.mark.parametrize(
    ("old", "new", "line", "says"),
    [
        ('reject = "> 5 mm"', 'reject = "> 5 in"', 22, "unit 'in'"),
        ('reject = "> 5 mm"', 'reject = "> 5"', 22, "profile's unit mm"),
        ('reject = "> 5 mm"', 'reject = "5 mm"', 22, "no operator"),
        ('reject = "> 5 mm"', "reject = 5", 22, "with its unit"),
        ('reject = "> 5 mm"', 'reject = "> -5 mm"', 22, "above zero"),
        ('reject = "> 5 mm"', 'reject = "< 5 mm"', 22, "makes no sense"),
        ('reject = "> 5 mm"', 'reject = "> 5/0 mm"', 22, "divides by zero"),
        ('reject = "> 5 mm"', 'reject = "> nan mm"', 22, "not an amount"),
        ('reject = "> 5 mm"\n', "", 18, "reject: is missing"),
        ('kind = "size"', 'kind = "colour"', 20, "'colour' is unknown"),
        ('of = "rounded"\nnumber', 'of = "oval"\nnumber', 29, "'oval' is unknown"),
        ('number = ">= 4"', 'number = ">= 4.5"', 30, "whole number"),
        ('number = ">= 4"', 'number = ">= 4 mm"', 30, "no unit"),
        ('id = "row"', 'id = "rounded"', 27, "used twice"),
        ('clause = "4"', 'clause = "4"\nclauses = "5"', 33, "clauses: is unknown"),
        ('clause = "2"', 'clause = ""', 15, "must be text"),
        (
            'sure = "verified"\n\n[relevance]',
            'sure = "perhaps"\n\n[relevance]',
            11,
            "'perhaps'",
        ),
        ('linear = "> 3"', 'linear = "> 0.3"', 9, "below 1"),
        # what could never be hit would judge nothing
        ('linear = "> 3"', 'linear = "> 300"', 9, "above 100"),
        ('gap = "<= 1.5 mm"', 'gap = "< 0 mm"', 31, "never be hit"),
        ('number = ">= 4"', 'number = ">= 40000000"', 30, "beyond all measure"),
        ('reject = "> 5 mm"', 'reject = "> 5000000 mm"', 22, "beyond all measure"),
        ('reject = "> 5 mm"', f'reject = "> {"9" * 400} mm"', 22, "too many digits"),
        ('reject = "> 5 mm"', f'reject = "> {"9" * 400}/3 mm"', 22, "too many digits"),
        ('reject = "> 5 mm"', f"reject = {'9' * 5000}", 22, "too many digits"),
        (
            'of = "rounded"\nreject',
            'of = "rounded"\nnamed = ["999"]\nreject',
            22,
            "'999' is no",
        ),
        ('name = "house"', 'name = "a\\u0000b"', 1, "cannot be shown"),
        ('name = "house"', f'{"a." * 40}b = "house"', 1, "so many parts"),
        ("[shape]", f"[shape]\n{'a.' * 40}b = 1", 9, "so many parts"),
        ('unit = "mm"', 'unit = "cm"', 4, "'cm' is unknown"),
        ('governs = "The contract governs."\n', "", 1, "governs: is missing"),
        ('edition = "1"', 'edition = "1"\ncolour = "red"', 4, "colour: is unknown"),
    ],
)
def test_one_error_with_line_and_key(loaded, old, new, line, says):
    assert old in GOOD
    with pytest.raises(CriteriaError) as caught:
        loaded(GOOD.replace(old, new, 1))
    assert "house.toml" in caught.value.where
    assert caught.value.where.endswith(f"line {line}")
    assert says in str(caught.value)
    assert caught.value.mend


def test_a_key_doubled_is_no_toml(loaded):
    with pytest.raises(
        CriteriaError, match="unit: is not valid TOML: the key is there twice"
    ) as c:
        loaded(GOOD.replace('unit = "mm"', 'unit = "mm"\nunit = "in"'))
    assert c.value.where.endswith("house.toml, line 5")
    assert c.value.mend == "leave one of the two"


@pytest.mark.parametrize(
    ("data", "line"),
    [
        ("name = 1\nü = 2\n".encode("latin-1"), 2),
        (GOOD.encode("utf-16"), 1),
        (b"\x7fELF\x02\x01\x01" + bytes(range(11, 256)), 1),
        (b'name = "x\n', 1),
        (b"name = 'x'\n[shape\n", 2),
    ],
)
def test_binary_and_wrong_encodings_name_the_line_and_a_mend(data, line, loaded):
    with pytest.raises(CriteriaError) as caught:
        loaded(data)
    assert caught.value.where.endswith(f"house.toml, line {line}")
    assert caught.value.mend


@pytest.mark.parametrize("base", ["../iso-23277-2", "none", "> 1/0 mm", "/etc/passwd", "house"])
def test_a_base_that_is_no_profile(base, loaded):
    with pytest.raises(CriteriaError, match="base: ") as caught:
        loaded(f'base = "{base}"\nname = "house"\n')
    assert caught.value.where.endswith("line 1")
    assert caught.value.mend


@pytest.mark.parametrize("identity", ["[1]", "{}", "5"])
def test_an_id_that_is_no_text_over_a_base(identity, loaded):
    with pytest.raises(CriteriaError, match="rule"):
        loaded(f'base = "iso-23277-2"\n[[rule]]\nid = {identity}\n')


def test_hundreds_of_broken_profiles_give_one_error_each(loaded):
    import random

    draw = random.Random(5)  # noqa: S311 - broken on purpose, the same each time
    values = [
        "5",
        '"> 5 in"',
        '"> -1 mm"',
        '"< 5 mm"',
        '""',
        "[]",
        '["a"]',
        "{}",
        "true",
        "[{}]",
    ]
    refused: list[CriteriaError] = []
    for _ in range(400):
        lines = GOOD.split("\n")
        k = draw.randrange(len(lines))
        if draw.random() < 0.5 and "=" in lines[k]:
            lines[k] = lines[k].split("=")[0] + "= " + draw.choice(values)
        elif draw.random() < 0.5:
            del lines[k]
        else:
            lines.insert(k, draw.choice(["[[rule]]", "[merge]", "x = 1", lines[k]]))
        try:
            loaded("\n".join(lines))
        except CriteriaError as error:
            refused.append(error)
    assert len(refused) > 200
    assert all("house.toml, line " in error.where for error in refused)
    assert all(error.mend for error in refused)


def test_a_rule_that_exempts_itself_could_never_be_hit(loaded):
    join = """
[[rule]]
id = "join"
kind = "unless"
rules = ["rounded"]
unless = ["rounded"]
clause = "5"
sure = "verified"
"""
    with pytest.raises(CriteriaError, match="unless: 'rounded' would exempt itself") as caught:
        loaded(GOOD + join)
    assert caught.value.where.endswith("line 39")


@pytest.mark.parametrize(
    ("over", "says"),
    [
        ('rule = "none"', "must be"),
        (2 * '[[rule]]\nid = "linear"\nreject = "> 2 mm"\n', "'linear' twice"),
    ],
)
def test_what_lies_over_a_base_is_read_whole(loaded, over, says):
    with pytest.raises(CriteriaError, match=says):
        loaded(f'base = "iso-23277-2"\n{over}')


def test_a_mark_of_byte_order_is_no_fault(loaded):
    assert loaded(b"\xef\xbb\xbf" + GOOD.encode()) == loaded(GOOD)


@pytest.mark.parametrize("text", ["a." * 100_000, "A" * 250_000, "a ." * 80_000, "[" * 200_000])
def test_what_nests_or_runs_on_is_refused_at_once(loaded, text):
    started = time.process_time()
    with pytest.raises(CriteriaError):
        loaded(f"{text} = 1\n")
    assert time.process_time() - started < 2  # the bound that was asked for


def test_no_rules_no_profile(loaded):
    with pytest.raises(CriteriaError, match="rule"):
        loaded(GOOD[: GOOD.index("[[rule]]")])


@pytest.mark.parametrize(
    ("data", "says"),
    [
        (b"\xff\xfe\x00", "UTF-8"),
        (b"", "missing"),
        (b"name = [", "TOML"),
        (b"x = " + b"[" * 100_000, "TOML"),
        (b'rule = "none"\n' + GOOD.encode().replace(b"[[rule]]", b"[[rules]]"), "rule"),
    ],
)
def test_no_profile_at_all(loaded, data, says):
    with pytest.raises(CriteriaError, match=says):
        loaded(data)


def test_of_ten_megabytes_no_more_is_read_than_the_bound(loaded):
    with pytest.raises(CriteriaError, match="larger than 256 kB") as caught:
        loaded(b"# padding\n" * 1_000_000)
    assert caught.value.where.endswith(f"line {256 * 1024 // 10 + 1}")


def test_an_oversized_profile_names_the_line_and_key_where_it_passes_the_bound(loaded):
    lines = GOOD.encode().count(b"\n")
    padded = GOOD.encode() + b'[[rule]]\nnote = "' + b"x" * 10_000_000 + b'"\n'
    with pytest.raises(CriteriaError, match=r"note: .*larger than 256 kB") as caught:
        loaded(padded)
    assert caught.value.where.endswith(f"line {lines + 2}")
    assert "take out" in caught.value.mend


def test_folders_and_nothing(tmp_path):
    for name in (tmp_path / "none.toml", tmp_path):
        with pytest.raises(CriteriaError):
            load_profile(str(name) if name.suffix else f"{name}/.toml")
    with pytest.raises(CriteriaError, match="no profile named 'iso-9'"):
        load_profile("iso-9")


def test_profiles_based_on_each_other_in_a_circle(tmp_path):
    (tmp_path / "a.toml").write_text('base = "b"\nname = "a"\n')
    (tmp_path / "b.toml").write_text('base = "a"\nname = "b"\n')
    with pytest.raises(CriteriaError, match="circle"):
        load_profile(tmp_path / "a.toml")


def test_a_base_that_lacks_the_rule(tmp_path):
    (tmp_path / "a.toml").write_text('base = "iso-23277-2"\n[[rule]]\nid = "odd"\n')
    with pytest.raises(CriteriaError, match="overrides a rule"):
        load_profile(tmp_path / "a.toml")


def test_checksum_follows_content_not_comments(loaded):
    plain = loaded(GOOD).checksum
    assert loaded("# a comment\n" + GOOD).checksum == plain
    assert loaded(GOOD.replace("> 5 mm", "> 5.1 mm")).checksum != plain
    assert len({load_profile(name).checksum for name in list_profiles()}) == len(
        list_profiles()
    )


def test_shipped_files_name_themselves():
    for path in resource("criteria").glob("*.toml"):
        assert load_profile(path).name == path.stem


def test_brackets_too_deep_are_placed_and_named(tmp_path):
    path = tmp_path / "deep.toml"
    path.write_text('name = "a"\nx = ' + "[" * 3000 + "]" * 3000 + "\n")
    with pytest.raises(CriteriaError, match="line 2: x: is not valid TOML: brackets too deep"):
        load_profile(path)


@pytest.mark.parametrize(
    ("rules", "said"),
    [
        ('[[rule]]\nid = "linear"\nreject = 2\n', "line 5: .*reject: must be text"),
        ('[[rule]]\nid = "none"\nreject = "> 2 mm"\n', "line 4: .*id: overrides a rule"),
        (
            '[[rule]]\nid = "linear"\n[[rule]]\nid = "linear"\nreject = "> 2 mm"\n',
            "line 6: .*id: overrides 'linear' twice",
        ),
    ],
)
def test_what_is_wrong_in_a_profile_laid_over_another_is_placed_in_its_own_text(
    tmp_path, rules, said
):
    path = tmp_path / "own.toml"
    path.write_text('base = "iso-23277-2"\nname = "own"\n' + rules)
    with pytest.raises(CriteriaError, match=said):
        load_profile(path)


def test_a_table_in_other_brackets_is_placed(tmp_path):
    path = tmp_path / "own.toml"
    path.write_text('base = "iso-23277-2"\nname = "own"\n\n[rule]\nid = "linear"\n')
    with pytest.raises(CriteriaError, match="line 4: rule: must be"):
        load_profile(path)
