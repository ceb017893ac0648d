"""The DICOM file: an independent validator, an independent reader, the record's numbers."""

import hashlib
import io
import subprocess
from dataclasses import replace
from shutil import which

import cv2
import numpy as np
import pydicom
import pytest
from PIL import Image
from pydicom.encaps import generate_frames

from ptmark.errors import ReportError
from ptmark.photo import open_photo
from ptmark.report.dicom.whole import dicom_bytes, write_dicom

ALLOWED = (  # of dciodvfy: what a Standard Extended SOP Class may hold, and forms of names
    "is not present in standard DICOM IOD",
    "not present in standard DICOM IOD - this is a Standard Extended SOP Class",
    "needed to build DICOMDIR",
    "Retired Person Name form",
    # A component has no sides; the checker takes an absent attribute for an error.
    "attribute <Laterality>",
)


def read(data):
    return pydicom.dcmread(io.BytesIO(data))


@pytest.fixture(scope="module")
def shots(weld, tmp_path_factory):
    """By name: (record, upright pixels, file)."""
    record, rgb = weld
    folder = tmp_path_factory.mktemp("dicom")
    made = {}
    halved = [cv2.IMWRITE_JPEG_SAMPLING_FACTOR, cv2.IMWRITE_JPEG_SAMPLING_FACTOR_422]
    full = [cv2.IMWRITE_JPEG_SAMPLING_FACTOR, cv2.IMWRITE_JPEG_SAMPLING_FACTOR_444]
    for name, options in (
        ("halved.jpg", halved),
        ("full.jpg", full),
        ("progressive.jpg", [cv2.IMWRITE_JPEG_PROGRESSIVE, 1]),
        ("lossless.png", []),
    ):
        path = folder / name
        path.write_bytes(cv2.imencode(path.suffix, rgb[..., ::-1], options)[1].tobytes())
        sha256 = hashlib.sha256(path.read_bytes()).hexdigest()
        facts = {"file": name, "sha256": sha256, "bytes": path.stat().st_size}
        facts["format"] = "PNG" if path.suffix == ".png" else "JPEG"
        one = replace(record, photo={**record.photo, **facts}, thickness_mm=12.5)
        made[name] = (one, open_photo(path).rgb, path)
    return made


@pytest.mark.truth
@pytest.mark.skipif(which("dciodvfy") is None, reason="dicom3tools is not installed")
@pytest.mark.parametrize("name", ["halved.jpg", "full.jpg", "lossless.png"])
def test_an_independent_validator_finds_no_error(shots, tmp_path, name):
    """dciodvfy of dicom3tools checks against the definition of VL Photographic Image."""
    (tmp_path / "a.dcm").write_bytes(dicom_bytes(shots[name][0], 0, *shots[name][1:]))
    done = subprocess.run(
        ["dciodvfy", str(tmp_path / "a.dcm")], capture_output=True, text=True, check=False
    )
    said = (done.stdout + done.stderr).splitlines()
    assert "VLPhotographicImage" in said
    assert not [one for one in said if one.startswith("Error")]
    warned = [one for one in said if one.startswith("Warning")]
    assert len(warned) > 5
    assert not [one for one in warned if not any(text in one for text in ALLOWED)]


@pytest.mark.truth
def test_an_independent_reader_finds_every_number_and_outline(shots):
    record, rgb, path = shots["halved.jpg"]
    told = read(dicom_bytes(record, 0, rgb, path))
    assert (told.PatientID, told.OperatorsName) == ("INVENTED-17 / S-0042", "nobody (demo)")
    assert float(told.MaterialThickness) == 12.5
    assert "1150 lx" in told.ActualEnvironmentalConditions
    for text in (record.id, record.photo["sha256"], "Invented criteria", "rejectable"):
        assert text in told.ImageComments
    assert (told.StudyDate, told.StudyTime) == ("20260102", "030405")
    assert len(told.IndicationSequence) == len(record.indications)
    for item, one in zip(told.IndicationSequence, record.indications, strict=True):
        assert item.IndicationLabel == one["id"]
        assert item.IndicationType == one["shape"].upper()
        sizes = {
            p.PropertyLabel: (
                float(p.NumericValue),
                p.MeasurementUnitsCodeSequence[0].CodeValue,
            )
            for p in item.IndicationPhysicalPropertySequence
        }
        assert sizes["Length"] == (one["length_mm"], "mm")
        assert sizes["Length U (k=2)"] == (one["length_u_mm"], "mm")
        assert sizes["Width"] == (one["width_mm"], "mm")
        assert sizes["Area"] == (one["area_mm2"], "mm2")
        assert sizes["Ratio"] == (one["ratio"], "1")
        points = np.reshape(item.IndicationROISequence[0].GraphicData, (-1, 2))
        assert np.array_equal(points[0], points[-1])
        assert np.allclose(points[:-1] - 0.5, one["outline_px"], atol=1e-3)
    stand = [item.IndicationDisposition for item in told.IndicationSequence]
    assert stand[0] == "REJECTABLE"
    assert stand[6] == "NON_RELEVANT"


def test_a_jpeg_goes_in_byte_for_byte_only_where_dicom_takes_it_as_it_is(shots):
    for name, (record, rgb, path) in shots.items():
        made = dicom_bytes(record, 0, rgb, path)
        told, file = read(made), path.read_bytes()
        if name == "halved.jpg":
            (frame,) = generate_frames(told.PixelData, number_of_frames=1)
            assert frame.rstrip(b"\0") == file
            with Image.open(io.BytesIO(frame)) as picture:
                assert np.abs(np.asarray(picture).astype(int) - rgb).max() <= 3
        else:
            assert file not in made
            assert np.array_equal(told.pixel_array, rgb)
        assert told.LossyImageCompression == ("00" if name == "lossless.png" else "01")
        assert told.ICCProfile[12:16] == b"scnr"


def test_turned_and_wide_photos_go_in_as_upright_srgb_pixels(shots):
    record, rgb, path = shots["halved.jpg"]
    for change in ({"orientation": 6}, {"color_profile": "Display P3"}):
        other = replace(record, photo={**record.photo, **change})
        assert np.array_equal(read(dicom_bytes(other, 0, rgb, path)).pixel_array, rgb)


def test_same_record_same_bytes_and_names_that_hold_still(shots):
    record, rgb, path = shots["halved.jpg"]
    first = dicom_bytes(record, 0, rgb, path)
    assert dicom_bytes(record, 0, rgb, path) == first
    changed = replace(record, fields={**record.fields, "part_name": "Ä\\^b"}, revision=2)
    told, other = read(first), read(dicom_bytes(changed, 0, rgb, path))
    assert told.StudyInstanceUID == other.StudyInstanceUID
    assert told.SeriesInstanceUID == other.SeriesInstanceUID
    assert told.SOPInstanceUID != other.SOPInstanceUID
    assert str(other.PatientName) == "Ä/ b"
    for uid in (told.StudyInstanceUID, told.SeriesInstanceUID, told.SOPInstanceUID):
        assert uid.is_valid
        assert uid.startswith("2.25.")


def test_a_file_for_each_photo_and_wrong_ones_are_refused(shots, tmp_path):
    record, rgb, path = shots["halved.jpg"]
    photo = open_photo(path)
    written = write_dicom(tmp_path / "a.dcm", record, [photo])
    assert [one.name for one in written] == ["a.dcm"]
    assert written[0].read_bytes() == dicom_bytes(record, 0, rgb, path)
    with pytest.raises(ReportError, match="px, the record's"):
        dicom_bytes(record, 0, rgb[:-1], path)
    with pytest.raises(ReportError, match="SHA-256 differs"):
        dicom_bytes(record, 0, rgb, shots["full.jpg"][2])


def test_an_outline_of_very_many_points_still_fits(shots, make):
    record, rgb, path = shots["halved.jpg"]
    long = make["entry"](0, make["ring"](500, 300, 200, 100, count=20_000))
    told = read(dicom_bytes(replace(record, indications=[long]), 0, rgb, path))
    points = np.reshape(
        told.IndicationSequence[0].IndicationROISequence[0].GraphicData, (-1, 2)
    )
    assert 4000 < len(points) <= 8001
    assert np.ptp(points, axis=0) == pytest.approx(np.ptp(long["outline_px"], axis=0), abs=0.1)
