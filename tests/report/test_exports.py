"""Spreadsheet, outlines and exchange bundle: the record's numbers, and nothing lost."""

import hashlib
import io
import json
import zipfile
from dataclasses import replace

import cv2
import numpy as np
import openpyxl
import pytest
import shapely
from skimage.draw import polygon2mask

from ptmark.errors import ReportError
from ptmark.record import Signer, key_of, load_record, save_record, sign_record
from ptmark.report.bundle import take_in, write_bundle
from ptmark.report.outlines import coco_json, geo_json, write_coco, write_geo
from ptmark.report.sheet import write_sheet


def test_the_spreadsheet_holds_the_records_numbers(weld, tmp_path):
    record, _ = weld
    rows = [{**record.indications[0], "note": "=1+1"}, *record.indications[1:]]
    record = replace(record, indications=rows)
    write_sheet(tmp_path / "a.xlsx", record)
    write_sheet(tmp_path / "b.xlsx", record)
    assert (tmp_path / "a.xlsx").read_bytes() == (tmp_path / "b.xlsx").read_bytes()
    book = openpyxl.load_workbook(tmp_path / "a.xlsx")
    assert book.sheetnames == ["Indications", "Findings", "Uncertainty", "Record"]
    head, *rows = book["Indications"].iter_rows(values_only=True)
    assert len(rows) == len(record.indications)
    for row, one in zip(rows, record.indications, strict=True):
        told = dict(zip(head, row, strict=True))
        for name in ("id", "length_mm", "length_u_mm", "width_mm", "area_mm2", "ratio"):
            assert told[name] == one[name]
    note = book["Indications"].cell(2, head.index("note") + 1)
    assert (note.value, note.data_type) == ("=1+1", "s")  # no formula
    _, *rows = book["Uncertainty"].iter_rows(values_only=True)
    for row, one in zip(rows, record.indications, strict=True):
        parts = [value for value in row[1:-1] if value is not None]
        assert 2 * float(np.hypot.reduce(parts)) == pytest.approx(one["length_u_mm"], abs=2e-4)


def test_outlines_in_mm_keep_area_place_and_turn(weld, tmp_path):
    record, _ = weld
    write_geo(tmp_path / "o.geojson", record)
    told = json.loads((tmp_path / "o.geojson").read_text("utf-8"))
    assert told == json.loads(json.dumps(geo_json(record)))
    assert "mm" in told["frame"]
    for feature, one in zip(told["features"], record.indications, strict=True):
        shape = shapely.from_geojson(json.dumps(feature["geometry"]))  # GEOS reads it
        assert shape.is_valid
        assert shape.exterior.is_ccw
        assert shape.equals(shapely.Polygon(one["outline_mm"]))
        assert feature["properties"]["length_mm"] == one["length_mm"]
    unmeasured = {**record.indications[0], "outline_mm": None}
    assert (
        geo_json(replace(record, indications=[unmeasured]))["features"][0]["geometry"] is None
    )
    bare = replace(record, scale={**record.scale, "reference": None})
    with pytest.raises(ReportError, match="without a scale"):
        geo_json(bare)


def test_coco_polygons_cover_the_same_pixels(weld, tmp_path):
    record, _ = weld
    other = replace(record, id="r-9", photo={**record.photo, "sha256": "9" * 64})
    write_coco(tmp_path / "o.coco.json", [record, other, record])
    told = json.loads((tmp_path / "o.coco.json").read_text("utf-8"))
    assert told == coco_json([record, other, record])
    assert [one["id"] for one in told["images"]] == [1, 2]
    assert len(told["annotations"]) == 3 * len(record.indications)
    assert len({one["id"] for one in told["annotations"]}) == len(told["annotations"])
    size = (record.photo["height"], record.photo["width"])
    for mark, one in zip(told["annotations"], record.indications, strict=False):
        points = np.array(mark["segmentation"][0]).reshape(-1, 2)
        # scikit-image counts from pixel centres as we do; the format from the corner.
        mask = polygon2mask(size, points[:, ::-1] - 0.5)
        ours = polygon2mask(size, np.array(one["outline_px"])[:, ::-1])
        assert mask.sum() > 50
        assert np.count_nonzero(mask != ours) <= 0.02 * mask.sum()
        assert mark["area"] == pytest.approx(mask.sum(), rel=0.05)
        x, y, w, h = mark["bbox"]
        rows, columns = np.nonzero(mask)
        assert x <= columns.min() + 0.5 <= columns.max() + 0.5 <= x + w
        assert y <= rows.min() + 0.5 <= rows.max() + 0.5 <= y + h


@pytest.fixture(scope="module")
def bundle(weld, tmp_path_factory):
    """A signed record whose photo is a PNG of the scene: (record, rgb, folder, bundle)."""
    record, rgb = weld
    place = tmp_path_factory.mktemp("bundle")
    folder = place / "own"
    folder.mkdir()
    photo = folder / "invented weld.png"
    assert cv2.imwrite(str(photo), rgb[..., ::-1])
    sha256 = hashlib.sha256(photo.read_bytes()).hexdigest()
    record = replace(record, photo={**record.photo, "file": photo.name, "sha256": sha256})
    who = Signer(role="examiner", name="first")
    record = sign_record(record, who, key_of("first", place / "keys"))
    path = place / "out.zip"
    write_bundle(path, record, rgb, photo, folder)
    return record, rgb, folder, path


def test_a_bundle_comes_in_without_loss_and_twice_as_once(bundle, tmp_path):
    record, rgb, folder, path = bundle
    kept = take_in(path, tmp_path / "in")
    assert load_record(kept) == record
    photo = kept.parent / "photos" / "invented weld.png"
    assert photo.read_bytes() == (folder / "invented weld.png").read_bytes()
    before = {p: (p.read_bytes(), p.stat().st_mtime_ns) for p in kept.parent.rglob("*.*")}
    assert take_in(path, tmp_path / "in") == kept
    assert {p: (p.read_bytes(), p.stat().st_mtime_ns) for p in before} == before
    # Out again from what came in: the same bytes.
    write_bundle(tmp_path / "again.zip", load_record(kept), rgb, photo, photo.parent)
    assert (tmp_path / "again.zip").read_bytes() == path.read_bytes()
    with zipfile.ZipFile(path) as made:
        assert made.testzip() is None
        names = set(made.namelist())
    assert {"record.json", "report.pdf", "schema/record-3.schema.json", "about.txt"} <= names


def test_a_later_revision_takes_the_place_of_an_earlier_one_only(bundle, tmp_path):
    record, rgb, folder, path = bundle
    kept = take_in(path, tmp_path / "in")
    later = save_record(
        tmp_path / "in" / record.id / "record.json",
        replace(record, fields={**record.fields, "remarks": "x"}, signatures=[]),
        why="remark",
    )
    newer = tmp_path / "newer.zip"
    write_bundle(newer, later, rgb, folder / "invented weld.png", folder)
    with pytest.raises(ReportError, match="another state"):
        take_in(path, tmp_path / "in")  # the older one does not overwrite
    other = take_in(path, tmp_path / "other")
    assert take_in(newer, tmp_path / "other") == other
    assert load_record(other) == later == load_record(kept)


def test_any_flipped_byte_of_a_bundle_is_refused_or_harmless(bundle, tmp_path):
    """Where the ZIP's own tables hide a flip, what comes in is still byte for byte the same."""
    *_, path = bundle
    whole = path.read_bytes()
    wanted = take_in(path, tmp_path / "in").read_bytes()
    bad = tmp_path / "bad.zip"
    refused = 0
    for number, at in enumerate(np.random.default_rng(6).integers(len(whole), size=25)):
        bad.write_bytes(whole[:at] + bytes([whole[at] ^ 4]) + whole[at + 1 :])
        try:
            kept = take_in(bad, tmp_path / f"bad {number}")
        except ReportError:
            refused += 1
            assert not (tmp_path / f"bad {number}").exists()
        else:
            assert kept.read_bytes() == wanted
    assert refused >= 20


def rebuilt(path, change, *, sums=True):
    """The bundle with changed files, its checksums made again as a forger would."""
    with zipfile.ZipFile(path) as made:
        files = {name: made.read(name) for name in made.namelist()}
    change(files)
    if sums:
        rows = {n: hashlib.sha256(d).hexdigest() for n, d in files.items() if "sha256" not in n}
        files["checksums.sha256"] = "".join(f"{s}  {n}\n" for n, s in rows.items()).encode()
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as made:
        for name, data in files.items():
            made.writestr(name, data)
    return out.getvalue()


def edit(files):
    files["record.json"] = files["record.json"].replace(b'"decision": "', b'"decision": "x', 1)


@pytest.mark.parametrize(
    ("change", "sums", "says"),
    [
        (edit, True, "disposition"),
        (
            lambda f: f.update({"record.json": f["record.json"] + b" "}),
            True,
            "not as this program",
        ),
        (
            lambda f: f.update({"photos/invented weld.png": b"another"}),
            True,
            "photo with SHA-256",
        ),
        (lambda f: f.update({"report.pdf": b"%PDF"}), False, "differs from its checksum"),
        (lambda f: f.update({"extra.txt": b"x"}), False, "has no checksum"),
        (lambda f: f.pop("report.jpg"), False, "is missing"),
        (lambda f: f.update({"../up.txt": b"x"}), True, "holds the name"),
        (lambda f: f.update({"/up.txt": b"x"}), True, "holds the name"),
        (lambda f: f.pop("record.json"), True, "no record"),
        (lambda f: f.pop("checksums.sha256"), False, "no bundle"),
    ],
)
def test_a_tampered_bundle_is_refused_and_leaves_nothing(bundle, tmp_path, change, sums, says):
    *_, path = bundle
    bad = tmp_path / "bad.zip"
    bad.write_bytes(rebuilt(path, change, sums=sums))
    with pytest.raises(ReportError, match=says):
        take_in(bad, tmp_path / "in")
    assert not (tmp_path / "in").exists()
    assert not (tmp_path / "up.txt").exists()


def test_what_is_no_bundle_is_refused(tmp_path):
    for content in (b"", b"PK", b"x" * 100):
        (tmp_path / "x.zip").write_bytes(content)
        with pytest.raises(ReportError, match="no whole ZIP"):
            take_in(tmp_path / "x.zip", tmp_path / "in")
    with pytest.raises(ReportError, match="cannot be read"):
        take_in(tmp_path / "none.zip", tmp_path / "in")


@pytest.mark.truth
@pytest.mark.filterwarnings("ignore:__array__ implementation:DeprecationWarning")
def test_the_coco_api_reads_the_set_and_fills_the_same_pixels(weld, tmp_path):
    """pycocotools is the format's own reference reader; its masks are run lengths."""
    coco = pytest.importorskip("pycocotools.coco", reason="pycocotools is not installed")
    record, _ = weld
    write_coco(tmp_path / "o.coco.json", [record])
    told = coco.COCO(str(tmp_path / "o.coco.json"))
    assert told.getImgIds() == [1]
    marks = told.loadAnns(told.getAnnIds(imgIds=1))
    assert len(marks) == len(record.indications)
    for mark, one in zip(marks, record.indications, strict=True):
        mask = told.annToMask(mark)
        ours = polygon2mask(mask.shape, np.array(one["outline_px"])[:, ::-1])
        assert np.count_nonzero(mask != ours) <= 0.04 * mask.sum()
        assert mark["area"] == pytest.approx(mask.sum(), rel=0.02)
