import hashlib
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import cv2
import numpy as np
import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import rsa
from cryptography.hazmat.primitives.serialization import pkcs12
from cryptography.x509.oid import NameOID

from ptmark.record import Record

SCALE = 0.05  # mm/px, square to the camera


def ring(x, y, radius_x, radius_y, turn=0.0, count=40):
    t = np.linspace(0, 2 * np.pi, count, endpoint=False)
    points = np.stack([radius_x * np.cos(t), radius_y * np.sin(t)], axis=1)
    c, s = np.cos(turn), np.sin(turn)
    return points @ np.array([[c, s], [-s, c]]) + (x, y)


def name_of(number):
    return (
        chr(65 + number) if number < 26 else name_of(number // 26 - 1) + chr(65 + number % 26)
    )


def entry(number, outline, **changes):
    low, high = outline.min(axis=0), outline.max(axis=0)
    long, wide = sorted((high - low) * SCALE, reverse=True)
    made = {
        "id": name_of(number),
        "outline_px": np.round(outline, 2).tolist(),
        "outline_mm": np.round(outline * SCALE, 3).tolist(),
        "length_mm": round(float(long), 4),
        "length_u_mm": 0.1,
        "path_mm": round(float(long) * 1.01, 4),
        "path_u_mm": 0.1,
        "width_mm": round(float(wide), 4),
        "width_u_mm": 0.06,
        "area_mm2": round(float(long * wide) * 0.78, 4),
        "area_u_mm2": 0.2,
        "ratio": round(float(long / wide), 4),
        "ratio_u": 0.3,
        "shape": "linear" if long > 3 * wide else "rounded",
        "shape_sure": True,
        "centre_mm": [float(v) for v in np.round((low + high) / 2 * SCALE, 4)],
        "centre_px": [float(v) for v in np.round((low + high) / 2, 2)],
        "ends_mm": None,
        "ends_px": None,
        "budget": {"edge": 0.03, "map": 0.04},
        "width_budget": {"edge": 0.03},
        "edge": {"shift_px": 0.4, "noise_px": 0.1},
        "source": "suggested",
        "standing": "taken",
        "confidence": 0.9,
        "kind": "",
        "note": "",
        "relevance": "",
        "reason": "",
    }
    return {**made, **changes}


def picture(width, height, outlines):
    """An invented photo: pinkish developer with a dark edge and red indications."""
    y, x = np.mgrid[0:height, 0:width]
    shade = 225 - 20 * x / width - 10 * y / height
    rgb = np.repeat(shade[..., None], 3, axis=2) * (1.0, 0.97, 0.97)
    rgb[:, : width // 12] = 40
    rgb = rgb.astype(np.uint8)
    for outline in outlines:
        cv2.fillPoly(rgb, [np.round(outline).astype(np.int32)], (190, 40, 60), cv2.LINE_AA)
    return rgb


def record_of(width, height, entries, **changes):
    findings = [
        {
            "rule": "size",
            "clause": "invented table 1",
            "indications": [one["id"]],
            "value": one["length_mm"],
            "u": 0.1,
            "limit": 4.0,
            "unit": "mm",
            "verdict": "rejectable" if (one["length_mm"] or 0) > 4 else "acceptable",
            "says": f"Indication {one['id']} is {one['length_mm']:.2f} mm long; limit 4 mm.",
            "conformity": 0.25,
            "sketch_mm": [],
        }
        for one in entries
        if one["length_mm"] is not None
    ]
    worst = {f["verdict"] for f in findings}
    corners = [[0.0, 0.0], [width - 1.0, 0.0], [width - 1.0, height - 1.0], [0.0, height - 1.0]]
    members = {
        "id": "invented-1",
        "created": "2026-01-02T03:04:05Z",
        "fields": {
            "part_number": "INVENTED-17",
            "serial_number": "S-0042",
            "weld_number": "W21",
            "examiner": "nobody (demo)",
            "illuminance": "1150 lx",
        },
        "photo": {
            "file": "invented.jpg",
            "sha256": "ab" * 32,
            "width": width,
            "height": height,
            "bytes": 1000,
            "format": "JPEG",
            "orientation": 1,
            "color_profile": "sRGB",
            "focal_px": 1600.0,
            "camera": {"model": "invented", "taken": "2026-01-02T03:00:00"},
        },
        "scale": {
            "reference": "rectangle",
            "mm_per_px": SCALE,
            "tilt_deg": 3.2,
            "working_distance_mm": 210.0,
            "residual_px": 0.1,
            "focal_px": 1600.0,
            "reference_px": corners,
            "homography": [[SCALE, 0.0, 0.0], [0.0, SCALE, 0.0], [0.0, 0.0, 1.0]],
            "given": {"kind": "rectangle", "width_mm": 85.6},
            "cautions": ["The rectangle is small: set a larger one."],
        },
        "conditions": {"relief_mm": None, "haze": 0.02},
        "area_px": [
            [2.0, 2.0],
            [width - 3.0, 2.0],
            [width - 3.0, height - 3.0],
            [2.0, height - 3.0],
        ],
        "indications": entries,
        "left_out": [{"outline_px": corners[:3], "reason": "too pale"}],
        "evaluation": {
            "profile": "invented-1",
            "title": "Invented criteria",
            "edition": "2026, invented",
            "decision_rule": "guarded",
            "verdict": "rejectable" if "rejectable" in worst else "acceptable",
            "findings": findings,
            "relevance": {one["id"]: "relevant: invented" for one in entries},
            "shape": {one["id"]: f"{one['shape']}: invented" for one in entries},
            "cautions": ["The figures are invented."],
            "checksum": "cd" * 32,
        },
        "disposition": {"decision": "reject", "reason": "beyond the limit"},
        "cautions": ["The rectangle is small: set a larger one.", "The figures are invented."],
        "software": "ptmark test",
    }
    return Record(**{**members, **changes})


@pytest.fixture(scope="session")
def weld():
    """A crack, a pore row, a set-aside blob: (record, photo)."""
    outlines = [
        ring(500, 300, 120, 9, 0.3),
        *(ring(700 + 60 * i, 560, 14, 13) for i in range(5)),
        ring(300, 620, 30, 25),
        ring(1010, 250, 60, 6, -1.2),
    ]
    entries = [entry(i, outline) for i, outline in enumerate(outlines)]
    entries[6] |= {"relevance": "non-relevant", "reason": "wiped off, did not come back"}
    record = record_of(1200, 900, entries)
    return record, picture(1200, 900, outlines)


@pytest.fixture(scope="session")
def crowd():
    """60 pores and cracks, thick in one place: (record, photo)."""
    rng = np.random.default_rng(4)  # another crowd must do as well; one is enough
    outlines, centres = [], []
    while len(outlines) < 60:
        at = (
            rng.normal((900, 700), (260, 160))
            if len(outlines) < 45
            else rng.uniform(150, 1100, 2)
        )
        if all(np.hypot(*(at - c)) > 48 for c in centres):
            centres.append(at)
            long = rng.uniform(6, 18)
            outlines.append(ring(*at, long, rng.uniform(3, long), rng.uniform(0, 3)))
    entries = [entry(i, outline) for i, outline in enumerate(outlines)]
    return record_of(1800, 1350, entries), picture(1800, 1350, outlines)


@pytest.fixture(scope="session")
def make():
    return {"ring": ring, "entry": entry, "picture": picture, "record": record_of}


@pytest.fixture
def jpeg(tmp_path):
    """Write a photo as JPEG and give the record its hash: (record, path)."""

    def write(record, rgb, name="invented.jpg"):
        path = tmp_path / name
        path.write_bytes(cv2.imencode(path.suffix, rgb[..., ::-1])[1].tobytes())
        digest = hashlib.sha256(path.read_bytes()).hexdigest()
        return replace(record, photo={**record.photo, "sha256": digest}), path

    return write


@pytest.fixture(scope="session")
def certificate(tmp_path_factory):
    """A certificate made for this run, its holder invented."""
    key = rsa.generate_private_key(65537, 2048)
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Invented examiner")])
    now, day = datetime.now(UTC), timedelta(1)
    usage = dict.fromkeys(
        ("key_encipherment", "data_encipherment", "key_agreement", "key_cert_sign"), False
    ) | dict.fromkeys(("crl_sign", "encipher_only", "decipher_only"), False)
    made = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(5)
        .not_valid_before(now - day)
        .not_valid_after(now + day)
        .add_extension(
            x509.KeyUsage(digital_signature=True, content_commitment=True, **usage), True
        )
        .sign(key, hashes.SHA256())
    )
    path = tmp_path_factory.mktemp("certificate") / "own.p12"
    locked = serialization.BestAvailableEncryption(b"pass")
    path.write_bytes(pkcs12.serialize_key_and_certificates(b"x", key, made, None, locked))
    return path
