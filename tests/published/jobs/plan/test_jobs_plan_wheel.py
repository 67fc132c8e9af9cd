"""Ways of a plan by the wheel itself: figures of the single operations, and what rules them out."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Unreachable
from support import Call

Json = dict[str, Any]
CONE: Json = {
    "kind": "cone",
    "included_angle": 60,
    "large_diameter": 0.75,
    "small_diameter": 0.05,
    "included_angle_tolerance_arcsec": 600,
}
WHEEL: Json = {
    "wheel_width": 0.75,
    "dresser": {"kind": "sine-base", "center_distance": 2},
    "stack_error_limit": 0.00005,
    "diamond_height_error_limit": 0.02,
    "flank_wear": 0.0001,
    "axis_pitch_error_limit_arcsec": 10,
    "axis_yaw_error_limit_arcsec": 300,
    "depth_per_pass": 0.001,
}
SIDE: Json = {
    "rated_for_side": True,
    "usable_width": 1,
    "swivel_error_limit_arcsec": 60,
    "side_error_limit_arcsec": 20,
    "axis_yaw_error_limit_arcsec": 300,
    "side_wear": 0.0001,
}
HEAD: Json = {
    "grinder": "cylindrical",
    "graduation": "0 05",
    "axis_offset_error_limit": 0.02,
    "axis_yaw_error_limit_arcsec": 60,
    "wheel_breakdown": 0.0001,
}
SHOP: Json = {
    "block_sets": [{"name": "set", "set": "inch-81", "grade": "asme-0"}],
    "dressed_wheels": [{"name": "7 in wheel", "wheel_diameter": 7, **WHEEL}],
    "wheel_sides": [{"name": "cup wheel", **SIDE}],
    "swivelled_workheads": [{"name": "grinder", "wheel_diameter": 7, **HEAD}],
}


def plan_of(call: Call, feature: Json, shop: Json, **more: Any) -> Json:
    """The plan of a feature in a shop."""
    result: Json = call(
        "jobs.plan", units="in", job="HL-0600", feature=feature, equipment=shop, **more
    )["result"]
    return result


def way_of(result: Json, name: str) -> Json:
    """The one way of this name."""
    (way,) = (way for way in result["ways"] if way["way"] == name)
    found: Json = way
    return found


def test_the_ways_by_the_wheel_are_those_of_wheels_choose(call: Call) -> None:
    """Each has the budget that `wheels.choose` gives for the same cone, wheel and errors."""
    chosen = call(
        "wheels.choose",
        units="in",
        included_angle=60,
        large_diameter=0.75,
        small_diameter=0.05,
        wheel_diameter=7,
        included_angle_tolerance_arcsec=600,
        ways={"dressed_wheel": WHEEL, "wheel_side": SIDE, "swivelled_workhead": HEAD},
    )["result"]["ways"]
    planned = plan_of(call, CONE, SHOP)
    assert len(chosen) == 3
    for single in chosen:
        way = way_of(planned, single["way"])
        error, alone = way["angles"][0]["error_arcsec"], single["included_angle_error_arcsec"]
        assert error["contributions"] == alone["contributions"]
        assert error["expanded_uncertainty"] == alone["expanded_uncertainty"]
        known = way["settings"][0]["deviation_arcsec"] or 0.0
        assert error["value"] == pytest.approx(alone["value"] + 2 * known, abs=1e-9)
        assert way["angles"][0]["forecast"] == single["forecast"]


def test_the_dresser_is_set_as_wheels_flank_sets_it(call: Call) -> None:
    """Angle, height and blocks under the dresser are those of `wheels.flank`."""
    setting = call(
        "wheels.flank",
        units="in",
        work={name: value for name, value in CONE.items() if "tolerance" not in name},
        wheel_width=0.75,
        dresser=WHEEL["dresser"],
        set="inch-81",
        max_blocks=5,
        depth_per_pass=0.001,
    )["result"]["flanks"][0]["dresser_setting"]
    way = way_of(plan_of(call, CONE, SHOP), "dressed-wheel")
    found = way["settings"][0]
    assert found["angle"] == setting["dresser_angle"]
    assert found["height"] == setting["height"]
    assert found["arcsec_per_step"] == setting["arcsec_per_step"]
    high = next(stack for stack in way["stacks"] if stack["role"] == "high")
    assert high["blocks"] == setting["stack"]["high_blocks"]


def test_blocks_of_the_dresser_count_where_no_limit_of_their_stack_was_stated(call: Call) -> None:
    """Each block's grade turns the cone by twice its limit over L cos θ."""
    wheel = {"name": "7 in wheel", "wheel_diameter": 7, **WHEEL, "stack_error_limit": None}
    wheel = {name: value for name, value in wheel.items() if value is not None}
    way = way_of(plan_of(call, CONE, {**SHOP, "dressed_wheels": [wheel]}), "dressed-wheel")
    parts = way["angles"][0]["error_arcsec"]["contributions"]
    block = next(part for part in parts if part["name"] == "block_grade_limit")
    slope = 2 * math.degrees(1 / (2 * math.cos(math.radians(30)))) * 3600
    assert block["sensitivity"] == pytest.approx(slope, rel=1e-12)
    assert "stack_error_limit" not in way["angles"][0]["error_arcsec"]["not_stated"]


def test_a_face_has_half_of_the_errors_of_a_cone_and_no_yaw(call: Call) -> None:
    """One side turns by half of what two do, and a face's angle to its base by no yaw."""
    face = {
        "kind": "angled-face",
        "face_angle": 30,
        "rise": 0.35,
        "tolerance_arcsec": 300,
    }
    cone, one_side = (way_of(plan_of(call, f, SHOP), "wheel-side") for f in (CONE, face))
    both, one = (
        {
            p["name"]: p["standard_uncertainty"]
            for p in way["angles"][0]["error_arcsec"]["contributions"]
        }
        for way in (cone, one_side)
    )
    yaw = both.pop("axis_yaw_error_limit_arcsec")
    assert yaw > 0
    assert one == pytest.approx({name: value / 2 for name, value in both.items()})


@pytest.mark.parametrize(
    ("way", "changes", "field", "words"),
    [
        ("wheel_sides", {"rated_for_side": None}, "rated_for_side", "not known"),
        ("wheel_sides", {"rated_for_side": False}, "rated_for_side", "stated not"),
        ("wheel_sides", {"usable_width": 0.5}, "usable_width", "0.7 in"),
        ("swivelled_workheads", {"largest_angle": 20}, "largest_angle", "20°"),
        ("swivelled_workheads", {"grinder": "surface"}, "grinder", "cylinder"),
        ("dressed_wheels", {"wheel_width": 0.5}, "wheel_width", "0.5 in"),
    ],
)
def test_what_rules_a_way_out_is_named(
    call: Call, way: str, changes: Json, field: str, words: str
) -> None:
    """A way that cannot is listed with the reason and the field that says so."""
    stated = {**SHOP[way][0], **changes}
    entry = {name: value for name, value in stated.items() if value is not None}
    (ruled_out,) = plan_of(call, CONE, {**SHOP, way: [entry]})["ruled_out"]
    assert ruled_out["field"] == f"equipment/{way}/0/{field}"
    assert words in ruled_out["reason"]


def socket(**changes: Any) -> Json:
    """A Morse 3 socket."""
    return {
        "kind": "taper-socket",
        "designation": "morse-3",
        "included_angle_tolerance_arcsec": 300,
        **changes,
    }


PLATE: Json = {"sine_plates": [{"name": "5 in plate", "center_distance": 5}]}


@pytest.mark.parametrize(
    ("spindle", "field"),
    [
        (None, "internal_spindle"),
        ({"wheel_diameter": 0.9, "reach": 4}, "internal_spindle/wheel_diameter"),
        ({"wheel_diameter": 0.5, "reach": 2}, "internal_spindle/reach"),
    ],
)
def test_a_socket_takes_a_wheel_that_goes_into_it(
    call: Call, spindle: Json | None, field: str
) -> None:
    """Without such a wheel no way makes it, and the refusal says which would."""
    shop = {**SHOP, **PLATE, **({} if spindle is None else {"internal_spindle": spindle})}
    with pytest.raises(Unreachable, match="No way of the shop makes this feature") as refused:
        plan_of(call, socket(), shop)
    assert f"equipment/{field}" in refused.value.fields
    assert "on a quill that goes in" in refused.value.detail


@pytest.mark.outside("jobs.plan", source="ISO 296 / ASME B5.10: Morse 3 has 0.60235 in a foot")
def test_a_morse_plug_and_its_socket_are_set_alike(call: Call) -> None:
    """Plug and socket of one taper are set to one half angle: atan(0.60235 / 24)."""
    shop = {**SHOP, **PLATE, "internal_spindle": {"wheel_diameter": 0.5, "reach": 3.5}}
    angles = set()
    for feature in (socket(), socket(kind="taper-plug")):
        result = plan_of(call, feature, shop)
        assert result["feature"]["large_diameter"] == pytest.approx(0.938)
        angles.add(way_of(result, "sine-plate")["settings"][0]["angle"]["degrees"])
    assert len(angles) == 1
    assert angles.pop() == pytest.approx(math.degrees(math.atan(0.60235 / 24)), abs=1e-9)


def test_a_shank_that_no_adapter_takes_is_refused_with_those_there_are(call: Call) -> None:
    """The refusal names the adapters of the shop."""
    adapters: list[dict[str, Any]] = [
        {"name": "small", "shank": {"kind": "taper", "designation": "morse-2"}},
        {"name": "collet", "shank": {"kind": "straight", "diameter": 0.5}, "adapter_tir": 0.0001},
    ]
    shop = {**SHOP, "adapters": adapters}
    feature = {**CONE, "shank": {"kind": "taper", "designation": "morse-3"}, "limit_tir": 0.0003}
    with pytest.raises(Unreachable, match=r"small Morse No\. 2") as refused:
        plan_of(call, feature, shop)
    assert set(refused.value.fields) == {"equipment/adapters"}
    fitting = plan_of(call, {**feature, "shank": adapters[1]["shank"]}, shop)
    assert fitting["adapter"] == "collet"
    tir = fitting["ways"][0]["runout_budget"]["tir"]
    assert [part["input_value"] for part in tir["contributions"]] == [0.0001]
