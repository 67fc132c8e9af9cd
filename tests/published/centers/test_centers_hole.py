"""Center holes against the columns of their own tables, and the ball against shapely and scipy."""

import math
from typing import Any

import pytest
from litestar.testing import TestClient
from scipy.optimize import brentq

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.trade.tables.centers.holes import center_holes
from support import Call

HOLES = list(center_holes().values())
METRIC = [h for h in HOLES if h.units == "mm"]
DIN = "DIN 332-1:1986, tables of types A, B and R"
R10 = [0.5, 0.63, 0.8, 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10]


def test_the_tables_have_the_rows_of_their_standards() -> None:
    """Type A has 14 sizes, B and R eleven each, plain ten and bell eight, in rising order."""
    counts = {kind: [h for h in HOLES if h.type == kind] for kind in ("A", "B", "R")}
    assert [h.pilot_diameter for h in counts["A"]] == R10
    assert [h.pilot_diameter for h in counts["B"]] == R10[3:]
    assert [h.pilot_diameter for h in counts["R"]] == R10[3:]
    for kind, count in (("plain", 10), ("bell", 8)):
        rows = [h for h in HOLES if h.type == kind]
        assert len(rows) == count
        assert [h.pilot_diameter for h in rows] == sorted(h.pilot_diameter for h in rows)
        assert [h.body_diameter for h in rows] == sorted(h.body_diameter for h in rows)


@pytest.mark.outside("centers.hole", source=DIN)
@pytest.mark.parametrize(
    "row", [h for h in HOLES if h.type == "B"], ids=[h.key for h in HOLES if h.type == "B"]
)
def test_chamfer_depth_is_the_printed_one(call: Call, row: Any) -> None:
    """The 120° chamfer from d2 to d3 is as deep as column b says, to its one decimal."""
    result = call("centers.hole", units="mm", key=row.key)["result"]
    assert result["chamfer_depth"] == pytest.approx(row.chamfer_depth, abs=0.0601)
    assert result["tool_depth_min"] > row.chamfer_depth


@pytest.mark.outside("centers.hole", source=DIN)
@pytest.mark.parametrize(
    ("key", "cone", "pilot", "whole"),
    [
        ("a-1", 0.97, 0.9, 1.9),
        ("a-1.6", 1.52, 1.4, 2.9),
        ("a-2", 1.95, 1.8, 3.7),
        ("a-2.5", 2.42, 2.2, 4.6),
        ("a-3.15", 3.07, 2.8, 5.9),
        ("a-4", 3.9, 3.5, 7.4),
        ("a-6.3", 5.98, 5.5, 11.5),
        ("a-10", 9.7, 8.7, 18.4),
    ],
)
def test_cone_depth_is_the_printed_one(
    call: Call, key: str, cone: float, pilot: float, whole: float
) -> None:
    """Cone depth meets ISO 6411's t*; with its pilot t it makes DIN's least depth of the hole."""
    result = call("centers.hole", units="mm", key=key)["result"]
    assert result["cone_depth"] == pytest.approx(cone, abs=0.006)
    assert result["depth_min"] == whole
    assert result["cone_depth"] + pilot == pytest.approx(whole, abs=0.055)
    assert whole <= result["tool_depth_min"] <= result["tool_depth_max"]


@pytest.mark.parametrize("row", METRIC, ids=[h.key for h in METRIC])
def test_columns_of_the_metric_table_agree(row: Any) -> None:
    """d2 is about 2.12 d1; B adds its chamfer to A's depth; R's radii are neighbours in R10."""
    assert row.cone_diameter / row.pilot_diameter == pytest.approx(2.12, abs=0.03)
    assert row.body_diameter > row.cone_diameter
    partner = center_holes().get(f"a-{row.pilot_diameter:g}")
    assert partner is not None
    assert row.pilot_length_min or row.type == "R"
    assert row.cone_diameter == partner.cone_diameter
    if row.type == "B":
        assert row.depth_min - partner.depth_min == pytest.approx(row.chamfer_depth, abs=0.21)
        assert row.cone_diameter < row.chamfer_diameter < row.body_diameter
    if row.type == "R":
        assert row.arc_radius_max / row.arc_radius_min == pytest.approx(10**0.1, rel=0.03)
        assert row.arc_radius_max / row.pilot_diameter == pytest.approx(3.15, rel=0.03)


@pytest.mark.outside("centers.hole", source="scipy.optimize.brentq: ball lowered until it touches")
def test_ball_rests_where_a_search_finds_it(call: Call) -> None:
    """The height over the ball is that of a ball lowered to distance radius from the wall."""
    request = {"units": "mm", "key": "a-2.5", "mouth_diameter": 5.0, "ball_diameter": 4.5}
    ball = call("centers.hole", **request)["result"]["ball"]
    slope = math.tan(math.radians(30))

    def clearance(height: float) -> float:
        """Distance of the ball's center, `height` over the mouth, to the wall, less its radius."""
        return (2.5 + height * slope) * math.cos(math.radians(30)) - 2.25

    center = brentq(clearance, -4, 4, xtol=1e-14)
    assert ball["height_over_face"] == pytest.approx(center + 2.25, abs=1e-10)
    back = call("centers.hole", **request, height_over_face=ball["height_over_face"] - 0.1)
    found = back["result"]["ball"]["diameter_error"]
    assert found == pytest.approx(0.1 * 2 * slope)


@pytest.mark.parametrize(
    ("request_", "refusal", "message"),
    [
        ({"key": "a-2.5", "type": "A"}, Disagreement, "One of `key` and `type` is needed"),
        ({"type": "A"}, Disagreement, "Send `mouth_diameter` together"),
        ({"key": "z-1"}, Unreachable, "no center hole"),
        ({"type": "A", "mouth_diameter": 30}, Unreachable, "largest hole of type A reaches 21.2"),
        ({"type": "plain", "mouth_diameter": 20}, Unreachable, "These reach it: a-10, b-10, r-10"),
        ({"key": "a-2.5", "mouth_diameter": 2.5}, Impossible, "countersinks from its pilot"),
        ({"key": "a-2.5", "mouth_diameter": 5.4}, Impossible, "Size a-3.15 makes it"),
        ({"key": "a-2.5", "ball_diameter": 2}, Impossible, "falls into the pilot"),
        ({"key": "a-2.5", "ball_diameter": 7}, Impossible, "rests on the mouth's edge"),
        ({"key": "a-2.5", "height_over_face": 1}, Disagreement, "Send `ball_diameter` together"),
        ({"key": "a-2.5", "chamfer_diameter": 6}, Disagreement, "no protecting chamfer"),
        ({"key": "b-2.5", "chamfer_diameter": 11}, Impossible, "up to its body"),
    ],
)
def test_holes_that_cannot_be_are_refused(
    call: Call, request_: dict[str, Any], refusal: type[Exception], message: str
) -> None:
    """What a size or a ball cannot do is refused with the reason."""
    with pytest.raises(refusal, match=message):
        call("centers.hole", units="mm", **request_)


@pytest.mark.outside(
    "centers.hole", source="DIN 332-1:1986, 1: the centering part is alike in types A, B and C"
)
def test_types_that_no_table_holds_are_refused_with_a_way(call: Call) -> None:
    """Type C, whose cone is that of A and B, and the tapped D are known, and the way is said."""
    with pytest.raises(Unreachable, match="pilot and the 60° cone of types A and B") as refused:
        call("centers.hole", units="mm", type="C", mouth_diameter=5.3)
    assert refused.value.more == {"same_cone": ["a-2.5", "b-2.5"]}
    with pytest.raises(Unreachable, match="DIN 332-2 is tapped"):
        call("centers.hole", units="mm", type="D", mouth_diameter=5.3)
    with pytest.raises(Unreachable, match="no center hole") as misspelt:
        call("centers.hole", units="mm", key="A2.5")
    assert "a-2.5" in str(misspelt.value.more["similar"])


@pytest.mark.parametrize("row", HOLES, ids=[h.key for h in HOLES])
def test_sizes_in_the_other_unit_are_the_nearest_numbers(row: Any) -> None:
    """Each inch size in millimetres is exact: 0.15 in is 3.81 mm, and no 3.8099999999999996."""
    assert row.in_units(row.units) == row
    if row.units == "in":
        metric = row.in_units("mm")
        assert metric.cone_diameter == round(row.cone_diameter * 25.4, 7)
        assert metric.pilot_diameter == round(row.pilot_diameter * 25.4, 7)


def test_arc_of_type_r_has_no_cone_depth(call: Call) -> None:
    """Type R gives the table's depth, and neither cone depth nor ball."""
    result = call("centers.hole", units="mm", key="r-4")["result"]
    assert (result["cone_depth"], result["ball"]) == (None, None)
    assert result["depth_min"] == 7.4


@pytest.mark.parametrize("slope", [{"half_angle": 30.0}, {"one_in_x": math.sqrt(3) / 2}, {}])
def test_cone_is_of_60_degrees_however_it_is_stated(call: Call, slope: dict[str, Any]) -> None:
    """The depth is that of a 60° cone where no slope is stated, or one of 60°: no caution."""
    answer = call("centers.hole", units="mm", key="a-2.5", **slope)
    assert answer["result"]["cone_depth"] == pytest.approx(2.8 * math.sqrt(3) / 2)
    assert "not-60-degrees" not in [a["code"] for a in answer["advisories"]]
    other = call("centers.hole", units="mm", key="a-2.5", included_angle=90)
    assert other["result"]["cone_depth"] == pytest.approx(1.4)
    assert "not-60-degrees" in [a["code"] for a in other["advisories"]]


def test_inch_sizes_answer_in_millimetres_too(call: Call) -> None:
    """A bell drill asked for in millimetres is its inch size times 25.4."""
    inch = call("centers.hole", units="in", key="bell-13", chamfer_diameter=0.24)["result"]
    metric = call("centers.hole", units="mm", key="bell-13", chamfer_diameter=6.096)["result"]
    assert inch["chamfer_depth"] == pytest.approx(0.02 / math.tan(math.radians(60)))
    assert metric["tool_depth_max"] == pytest.approx(25.4 * inch["tool_depth_max"])


def test_table_is_served(service: TestClient[Any]) -> None:
    """The listing gives every row, and each row is there by its key."""
    listed = service.get("/v1/centers/holes").json()["result"]["holes"]
    assert [h["key"] for h in listed] == list(center_holes())
    one = service.get("/v1/centers/holes/a-2.5")
    assert one.json()["result"]["cone_diameter"] == 5.3
    assert service.get("/v1/centers/holes/a-9").status_code == 404
