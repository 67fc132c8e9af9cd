"""A probe as a means of inspection: its readings and proofs are those of `tapers.probed`."""

import math
from typing import Any

import pytest
from shapely.geometry import LineString, Point

from inspection_plan_support import FACE, PLUG, SOCKET, only, planned, reading, setting
from support import Call

Json = dict[str, Any]
PROBE: Json = {
    "tip_diameter": 0.1,
    "measure_error_limit": 0.0001,
    "depth_error_limit": 0.0005,
    "tip_error_limit": 0.00005,
}


@pytest.mark.outside("inspection.plan", source="shapely: a tip one radius off the cone's side")
@pytest.mark.parametrize(("feature", "side"), [(SOCKET, -1), (PLUG, 1)])
def test_the_tip_touches_the_part_at_both_depths(call: Call, feature: Json, side: int) -> None:
    """At the depths named, half the expected travel is one radius off the nominal side."""
    found = only(call, feature, probe=PROBE)
    slope = 0.60235 / 24
    wall = LineString([(-1, 0.469 + slope), (5, 0.469 - 5 * slope)])
    for place in ("first", "second"):
        depth = setting(found, f"{place}_depth")
        travel = reading(found, f"{place}_tip_travel")["expected_reading"]
        assert wall.distance(Point(depth, travel / 2)) == pytest.approx(0.05, abs=1e-9)
        assert side * (travel / 2 - 0.469 + slope * depth) > 0
        assert depth / 0.05 == pytest.approx(round(depth / 0.05))
    assert setting(found, "tip_diameter") == 0.1


@pytest.mark.parametrize("feature", [SOCKET, PLUG])
def test_it_is_the_single_operation_s_own(call: Call, feature: Json) -> None:
    """Angle, size and their uncertainty are those of `tapers.probed`; limits are read as such."""
    found = only(call, feature, probe=PROBE)
    read = [
        {
            "depth": setting(found, f"{place}_depth"),
            "tip_travel": reading(found, f"{place}_tip_travel")["expected_reading"],
        }
        for place in ("first", "second")
    ]
    surface = "internal" if feature is SOCKET else "external"
    single = call("tapers.probed", units="in", surface=surface, readings=read, **PROBE)["result"]
    half = math.degrees(math.atan(0.60235 / 24))
    assert single["half_angle"]["value"]["degrees"] == pytest.approx(half, abs=1e-9)
    assert single["face_diameter"]["value"] == pytest.approx(0.938, abs=1e-9)
    own = found["angle_proof"]["angle_error_arcsec"]
    size = found["size_proof"]["large_diameter_error"]
    for name in ("standard_uncertainty", "expanded_uncertainty", "worst_case"):
        assert own[name] == pytest.approx(2 * single["half_angle"][name], rel=1e-6), name
        assert size[name] == pytest.approx(single["face_diameter"][name], rel=1e-6), name
    apart = reading(found, "tip_travel_difference")
    run = read[1]["depth"] - read[0]["depth"]
    for name, off in (("smallest_reading", -20), ("expected_reading", 0), ("largest_reading", 20)):
        turned = 2 * run * math.tan(math.radians(half + off / 3600))
        assert apart[name] == pytest.approx(turned, abs=1e-8)
    assert apart["smallest_reading"] < apart["smallest_accepted_reading"]


def test_what_it_cannot_do_is_ruled_out(call: Call) -> None:
    """A tip with no room, a face, and errors that swallow the angle, each by its field."""
    (big,) = planned(call, SOCKET, probe=PROBE | {"tip_diameter": 0.8})["ruled_out"]
    assert (big["means"], big["field"]) == ("probe", "probe/tip_diameter")
    (face,) = planned(call, FACE, probe=PROBE)["ruled_out"]
    assert face["field"] == "probe"
    plan = planned(call, SOCKET, probe=PROBE | {"depth_error_limit": 3})
    assert plan["inspections"] == []
    assert plan["ruled_out"][0]["field"] == "probe/depth_error_limit"
