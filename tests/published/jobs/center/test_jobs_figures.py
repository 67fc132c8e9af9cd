"""Figures beside the headline of a center's plan, each worked out apart."""

import math
from typing import Any

import pytest

from halfangle_service.registry import load_registry
from support import Call, assert_values


def plan_of(call: Call, **changes: Any) -> dict[str, Any]:
    """The plan of the operation's own example, changed; a change to None leaves the field out."""
    request = {**load_registry().operations["jobs.center"].example, **changes}
    stated = {name: value for name, value in request.items() if value is not None}
    plan: dict[str, Any] = call("jobs.center", **stated)["result"]
    return plan


@pytest.mark.outside("jobs.center", source="Right triangle by hand; Morse No. 2 by its table")
def test_cone_and_shank_in_figures(call: Call) -> None:
    """A point of 59°47′ on 0.75 in is 0.6524 in long and 0.7525 in along its side.

    A Morse No. 2 shank is 0.700 in at its gauge line, 0.59941 in a foot.
    """
    half = math.radians((59 + 47 / 60) / 2)
    expected = {
        "cone.included_angle.degrees": 59 + 47 / 60,
        "cone.half_angle.degrees": (59 + 47 / 60) / 2,
        "cone.length": 0.375 / math.tan(half),
        "cone.slant_length": 0.375 / math.sin(half),
        "shank.gauge_diameter": 0.7,
        "shank.included_angle.degrees": 2 * math.degrees(math.atan(0.59941 / 24)),
    }
    plan = plan_of(call, included_angle="59°47'")
    assert_values(plan, expected)
    lengths = plan["cone"]["length"], plan["cone"]["slant_length"]
    assert lengths == pytest.approx((0.6524, 0.7525), abs=5e-5)


@pytest.mark.outside("jobs.center", source="Sines by hand: h = L sin α, 2 dα = 2 dh / (L cos α)")
def test_plate_in_figures(call: Call) -> None:
    """For 59°47′ a 5 in plate takes 2.4918082 in; 2.4918 in of four blocks is 0.785″ less.

    A bench step of 0.0001 in turns the included angle by 9.517″.
    """
    setting = plan_of(call, included_angle="59°47'")["plate_setting"]
    half = math.radians((59 + 47 / 60) / 2)
    per_step = math.degrees(2 * 0.0001 / (5 * math.cos(half))) * 3600
    assert per_step == pytest.approx(9.517, abs=5e-4)
    expected = {
        "count": 4,
        "height": 5 * math.sin(half),
        "actual_height.value": 2.4918,
        "included_angle_from_stack.degrees": 2 * math.degrees(math.asin(2.4918 / 5)),
        "included_angle_arcsec_per_step": per_step,
    }
    assert_values(setting, expected)
    assert setting["actual_deviation"] == pytest.approx(2.4918 - 5 * math.sin(half), rel=1e-6)
    from_stack = setting["included_angle_from_stack"]["degrees"]
    assert (from_stack - 59 - 47 / 60) * 3600 == pytest.approx(-0.785, abs=5e-4)


@pytest.mark.outside("jobs.center", source="Inverse sine by hand")
def test_a_stack_off_its_height_is_a_known_error(call: Call) -> None:
    """With nothing else stated the expected error is that of 2.4918 in: 0.785″ less than wanted."""
    plan = plan_of(call, included_angle="59°47'", grade=None, angle_errors=None)
    off = 2 * math.degrees(math.asin(2.4918 / 5)) - (59 + 47 / 60)
    found = plan["angle_budget"]["included_angle_error_arcsec"]["value"]
    assert found == pytest.approx(off * 3600, rel=1e-5)
    assert [step["number"] for step in plan["steps"]] == [*range(1, len(plan["steps"]) + 1)]


@pytest.mark.outside("jobs.center", source="Sum by hand: as high as the first stack")
def test_the_second_stack_is_as_high(call: Call) -> None:
    """It is built of blocks that the first leaves in the box."""
    plan = plan_of(call)
    assert math.fsum(plan["second_stack"]) == pytest.approx(2.5)
    assert not set(plan["second_stack"]) & set(plan["plate_setting"]["blocks"])


@pytest.mark.outside("jobs.center", source="A share of two whole numbers, by hand")
def test_how_much_of_the_tolerance_is_used(call: Call) -> None:
    """A pitch of up to 10″ turns both sides, up to 20″ of the ±80″ asked for: a quarter."""
    budget = plan_of(
        call,
        grade=None,
        included_angle_tolerance_arcsec=80,
        angle_errors={"axis_pitch_error_limit_arcsec": 10},
    )["angle_budget"]
    expected = {"included_angle_tolerance_arcsec": 80, "tolerance_used_percent": 25}
    assert_values(budget, expected)


@pytest.mark.outside("jobs.center", source="ISO 1101: a zone's diameter is twice the offset")
@pytest.mark.parametrize("limit", [0.0003, 0.0008])
def test_one_limit_of_runout_in_every_form(call: Call, limit: float) -> None:
    """The full movement is the zone's diameter, twice the eccentricity; on the cone cos α of it."""
    expected = {
        "limit_tir": limit,
        "limit_eccentricity": limit / 2,
        "limit_zone_diameter": limit,
        "limit_tir_on_cone": limit * math.cos(math.radians(30)),
    }
    assert_values(plan_of(call, limit_tir=limit)["runout_budget"], expected)


@pytest.mark.outside("jobs.center", source="Right triangle by hand: 2 f / cos α, f / sin α")
def test_downfeed_in_figures(call: Call) -> None:
    """An allowance of 0.004 in is taken in 14 steps of 0.0003 in, the last of 0.0001 in.

    At 60° included it takes 2 × 0.004 / cos 30° off the diameter and moves the point by 0.008 in.
    """
    feed = plan_of(call, downfeed_step=0.0003)["downfeed"]
    expected = {
        "downfeed_step": 0.0003,
        "steps_for_allowance": 14,
        "allowance_off_diameter": 0.008 / math.cos(math.radians(30)),
        "allowance_off_point": 0.008,
    }
    assert_values(feed, expected)
