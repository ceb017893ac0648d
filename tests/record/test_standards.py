from dataclasses import replace

import pytest

from ptmark.errors import RecordError
from ptmark.record import FIELDS, STANDARDS, lacking


@pytest.mark.parametrize("name", sorted(STANDARDS))
def test_every_need_is_a_field_and_is_listed_until_filled(record, name):
    needs = STANDARDS[name].needs
    order = [one.key for one in FIELDS]
    assert set(needs) <= set(order)
    assert len(set(needs)) == len(needs)
    bare = replace(record, fields={"examiner": "  "})
    keys = [one.key for one in lacking(bare, name)]
    assert sorted(keys) == sorted(needs)
    assert keys == [key for key in order if key in needs]
    filled = replace(record, fields=dict.fromkeys(needs, "x"))
    assert lacking(filled, name) == []
    short = {key: "x" for key in needs if key != "examiner"}
    assert [one.key for one in lacking(replace(record, fields=short), name)] == ["examiner"]


@pytest.mark.truth
def test_the_record_of_asme_v_article_6_is_asked_for():
    # ASME BPVC Section V, Article 6, T-692 (from memory): procedure and revision, type of
    # penetrant, each product, personnel, material and thickness, lighting equipment.
    needs = STANDARDS["asme-v-6"].needs
    for key in (
        "procedure_revision",
        "penetrant_type",
        "developer",
        "thickness",
        "light_source",
    ):
        assert key in needs


def test_an_unknown_standard_is_refused(record):
    with pytest.raises(RecordError, match="no known standard"):
        lacking(record, "asme-v-7")


def test_a_standard_whose_contents_were_not_seen_says_so():
    # CEN/TS 17100:2017: photographs as penetrant records; only its scope was to be seen.
    assert "not to be had" in STANDARDS["cen-ts-17100"].sure
    assert {"camera_set_up", "resolution_check"} <= set(STANDARDS["cen-ts-17100"].needs)


def test_fluorescent_work_has_its_light_and_its_meter():
    # ISO 3059, ASTM E1417: irradiance in UV-A and the visible light that is left (from memory).
    assert {"uv_irradiance", "uv_meter", "illuminance"} <= {one.key for one in FIELDS}
