"""Outlines in open formats: GeoJSON-like in mm for plans, COCO JSON for training sets."""

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import numpy as np
import shapely

from ptmark.errors import ReportError
from ptmark.record import Record, least_of
from ptmark.report.set_words import numbered
from ptmark.report.table import save
from ptmark.report.wording import called

__all__ = ["coco_json", "geo_json", "write_coco", "write_geo"]

_CATEGORIES = {"linear": 1, "rounded": 2, None: 3}


def geo_json(record: Record) -> dict[str, Any]:
    """The outlines as a feature collection laid out as in RFC 7946.

    Coordinates are mm on the examined surface, not degrees; rings are closed and run
    counter-clockwise in that frame. The member ``frame`` says so. Each reason why sizes are the
    least that they can be (`ptmark.least`) is a property, true or false.

    Raises
    ------
    ReportError
        If no scale is set.
    """
    if record.scale["reference"] is None:
        raise ReportError(
            "there are no millimetres without a scale", where="outlines", mend="set the scale"
        )
    stands = called(record)
    features = []
    for one in record.indications:
        names = ("length_mm", "length_u_mm", "width_mm", "width_u_mm", "area_mm2", "shape")
        told = {name: one[name] for name in (*names, "kind", "relevance")}
        features.append(
            {
                "type": "Feature",
                "id": one["id"],
                "geometry": _polygon(one["outline_mm"]),
                "properties": {
                    **told,
                    **least_of(one),
                    "verdict": stands[one["id"]],
                },
            }
        )
    return {
        "type": "FeatureCollection",
        "frame": f"mm on the examined surface, axes as the scale reference sets them "
        f"({record.scale['reference']})",
        "record": record.id,
        "photo_sha256": record.photo["sha256"],
        "features": features,
    }


def _polygon(outline_mm: list[list[float]] | None) -> dict[str, Any] | None:
    """Null where nothing was measured: the feature has no place then (RFC 7946, 3.2)."""
    if outline_mm is None:
        return None
    ring = shapely.Polygon(outline_mm).exterior
    points = list(ring.coords) if ring.is_ccw else list(ring.coords)[::-1]
    return {"type": "Polygon", "coordinates": [[list(p) for p in points]]}


def coco_json(records: Sequence[Record]) -> dict[str, Any]:
    """The outlines of one or many records as a COCO data set (object detection format).

    Polygons are px of the upright photo, counted from the corner of the top-left pixel as the
    format has it: our coordinates plus one half. ``area`` is px²; dropped, false and
    non-relevant marks keep their word in ``attributes``.
    """
    images: dict[str, dict[str, Any]] = {}
    annotations: list[dict[str, Any]] = []
    for record, view in ((one, view) for one in records for view in one.views()):
        photo = view.photo
        image = images.setdefault(
            str(photo["sha256"]),
            {
                "id": len(images) + 1,
                "file_name": photo["file"],
                "width": photo["width"],
                "height": photo["height"],
                "sha256": photo["sha256"],
            },
        )
        for one in view.indications:
            points = np.round(np.array(one["outline_px"], dtype=float) + 0.5, 2)
            low, size = points.min(axis=0), np.ptp(points, axis=0)
            annotations.append(
                {
                    "id": len(annotations) + 1,
                    "image_id": image["id"],
                    "category_id": _CATEGORIES[one["shape"]],
                    "segmentation": [points.ravel().tolist()],
                    "bbox": np.round([*low, *size], 2).tolist(),
                    "area": round(shapely.Polygon(points).area, 2),
                    "iscrowd": 0,
                    "attributes": {
                        "record": record.id,
                        "letter": one["id"],
                        "length_mm": one["length_mm"],
                        **least_of(one),
                        "standing": one["standing"],
                        "relevance": one["relevance"],
                        "kind": one["kind"],
                    },
                }
            )
    names = {1: "linear", 2: "rounded", 3: "not measured"}
    return {
        "info": {"description": "Penetrant indications", "version": "1"},
        "images": list(images.values()),
        "categories": [
            {"id": number, "name": name, "supercategory": "indication"}
            for number, name in names.items()
        ],
        "annotations": annotations,
    }


def write_geo(path: Path, record: Record) -> list[Path]:
    """Write `geo_json` of each photo: FILE, FILE-2 …, since each has a frame of its own.

    A photo of a set without a scale has no file. Gives the paths written.

    Raises
    ------
    ReportError
        If no photo has a scale, or a file cannot be written.
    """
    views = list(enumerate(record.views()))
    scaled = [(n, view) for n, view in views if view.scale["reference"] is not None] or views
    for number, view in scaled:
        _write(numbered(path, number), geo_json(view))
    return [numbered(path, number) for number, _ in scaled]


def write_coco(path: Path, records: Sequence[Record]) -> None:
    """Write `coco_json`; ReportError where it cannot be written."""
    _write(path, coco_json(records))


def _write(path: Path, document: dict[str, Any]) -> None:
    text = json.dumps(document, ensure_ascii=False, allow_nan=False, indent=1)
    save(path, (text + "\n").encode("utf-8"))
