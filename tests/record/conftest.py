import numpy as np
import pytest

from ptmark.criteria import Evaluation, Finding
from ptmark.dye import EdgeQuality, LeftOut
from ptmark.measure import Conditions, Measurement, Quantity
from ptmark.photo import Camera, PhotoInfo
from ptmark.record import Entry, build_record
from ptmark.scale import RectangleReference, SurfaceMap

SCALE = 0.05  # mm/px


class FlatMap(SurfaceMap):
    """A surface square to the camera, worked out here so that the room stands alone."""

    def to_px(self, points_mm):
        return np.asarray(points_mm) / SCALE

    def mm_per_px(self, at_px=None):
        return SCALE


def ring(x, y, radius_x, radius_y, count=24):
    turn = np.linspace(0, 2 * np.pi, count, endpoint=False)
    return np.stack([x + radius_x * np.cos(turn), y + radius_y * np.sin(turn)], axis=1)


def measured(outline_px, length, width, shape="linear", *, sure=True):
    mm = outline_px * SCALE
    ends = ((float(mm[0, 0]), float(mm[0, 1])), (float(mm[12, 0]), float(mm[12, 1])))
    return Measurement(
        outline_mm=mm,
        length=Quantity(length, {"edge": 0.03, "map": 0.04}),
        path=Quantity(length, {"edge": 0.03, "map": 0.04}),
        width=Quantity(width, {"edge": 0.02}),
        area=Quantity(length * width, {"edge": 0.05}, "mm2"),
        ratio=Quantity(length / width, {"edge": 0.1}, "1"),
        centre_mm=(float(mm[:, 0].mean()), float(mm[:, 1].mean())),
        ends_mm=ends,
        shape=shape,
        shape_sure=sure,
    )


@pytest.fixture
def parts(tmp_path):
    """Arguments of `build_record` for an invented part with two indications."""
    crack, pore = ring(200, 100, 80, 5), ring(400, 260, 20, 20)
    edge = EdgeQuality(shift_px=0.4, noise_px=0.1)
    reference = RectangleReference(
        corners_px=((10, 10), (1722, 10), (1722, 1089.6), (10, 1089.6)),
        width_mm=85.6,
        height_mm=53.98,
    )
    finding = Finding(
        rule="linear",
        clause="table 1",
        indications=("A",),
        value=8.0,
        u=0.1,
        limit=4.0,
        unit="mm",
        verdict="rejectable",
        says="A is 8.0 mm long; the limit is 4 mm.",
        conformity=0.0,
        sketch=((6.0, 5.0), (14.0, 5.0)),
    )
    return {
        "info": PhotoInfo(
            path=tmp_path / "invented weld.jpg",
            sha256="ab" * 32,
            bytes=1234,
            format="JPEG",
            width=2000,
            height=1500,
            focal_px=1600.123,
            camera=Camera(model="invented", focal_mm=4.25),
        ),
        "surface": FlatMap(
            h=np.diag([SCALE, SCALE, 1.0]),
            covariance={},
            reference="rectangle",
            reference_px=np.array(reference.corners_px),
            tilt_deg=3.21987,
            cautions=("The rectangle is small: set a larger one.",),
        ),
        "reference": reference,
        "entries": [
            Entry(id="A", outline_px=crack, edge=edge, measurement=measured(crack, 8.0, 0.5)),
            Entry(
                id="B",
                outline_px=pore,
                edge=edge,
                measurement=measured(pore, 2.0, 2.0, "rounded", sure=False),
                standing="suggested",
                confidence=0.87,
            ),
        ],
        "left_out": [LeftOut(outline_px=ring(50, 50, 4, 4), edge=edge, reason="too pale")],
        "evaluation": Evaluation(
            profile="invented-1",
            title="Invented criteria",
            edition="2026, invented",
            decision_rule="guarded",
            verdict="rejectable",
            findings=(finding,),
            relevance={"A": "relevant", "B": "relevant"},
            cautions=("The figures are invented.",),
            checksum="cd" * 32,
            shape={"A": "linear: 16.00 times as long as wide"},
        ),
        "conditions": Conditions(relief_mm=1.5),
        "fields": {"part_number": "P-17", "examiner": " ", "remarks": 'größer, 缺陷, "x"\n2'},
        "area_px": ((0.0, 0.0), (1999.0, 0.0), (1999.0, 1499.0), (0.0, 1499.0)),
        "decision": "reject",
        "decision_reason": "",
        "haze": 0.021,
        "record_id": "r-1",
        "created": "2026-01-02T03:04:05Z",
    }


@pytest.fixture
def record(parts):
    return build_record(**parts)
