import numpy as np
import pytest
from shapely import LineString, Polygon, union_all

from ptmark.dye import EdgeQuality
from ptmark.measure import measure_outline
from ptmark.photo import Photo
from ptmark.record.cautions import cautions_of
from ptmark.record.entry import Entry
from ptmark.scale import RectangleReference, solve

PX = 20.0  # to the mm


def arm(length, width, tip, turn_deg=0.0):
    """Half a crack from the origin outwards, mm, its width falling to that of its tip."""
    half = [(0, width / 2), (length, tip / 2), (length, -tip / 2), (0, -width / 2)]
    c, s = np.cos(np.radians(turn_deg)), np.sin(np.radians(turn_deg))
    return Polygon(np.array(half) @ np.array([[c, s], [-s, c]]))


SHAPES = {
    "stroke": LineString([(-4, 0), (4, 0)]).buffer(0.35),
    "bent stroke": LineString([(-4, 0), (0, 0.8), (4, 0)]).buffer(0.35),
    "tapered": union_all([arm(4, 0.7, 0.2), arm(4, 0.7, 0.2, 180)]),
    "star": union_all([arm(4, 0.7, 0.4, turn) for turn in (0, 120, 240)]),
}


@pytest.mark.parametrize(("name", "drawn"), [*zip(SHAPES, (1, 1, 0, 0), strict=True)])
def test_only_what_has_one_width_and_no_branches_is_said_to_look_drawn(name, drawn):
    photo = Photo.from_array(np.full((700, 700, 3), 200, np.uint8), name="plate")
    corners = ((100.0, 100.0), (600.0, 100.0), (600.0, 600.0), (100.0, 600.0))
    surface = solve(
        RectangleReference(corners_px=corners, width_mm=500 / PX, height_mm=500 / PX), photo
    )
    outline = 350 + PX * np.array(SHAPES[name].exterior.coords)[:-1]
    edge = EdgeQuality(shift_px=0.4, noise_px=0.1)
    entry = Entry(
        id="A",
        outline_px=outline,
        edge=edge,
        measurement=measure_outline(outline, surface, edge),
        standing="suggested",
    )
    said = cautions_of(surface, [entry], None, ("", ""))
    assert sum("one width" in one for one in said) == drawn
