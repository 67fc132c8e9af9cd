"""An inspection's plan gives the single operations' own figures, and those of textbooks."""

from typing import Any

import pytest

from inspection_plan_support import (
    BALLS,
    BLUING,
    FACE,
    GAUGES,
    PLATE,
    PLUG,
    ROLLS,
    SOCKET,
    only,
    planned,
    reading,
    setting,
)
from support import Call

Json = dict[str, Any]
SIZES = {"large_diameter": 0.938, "length": 3.1875, "designation": "morse-3", "units": "in"}


# The single operations' own figures -----------------------------------------------------------
@pytest.mark.parametrize("end", ["small-end", "large-end"])
def test_over_rolls_is_the_operation_s_own(call: Call, end: str) -> None:
    """M1, M2, their difference and the angle's uncertainty are those of `tapers.over-rolls`."""
    found = only(call, PLUG, rolls={**ROLLS, "standing_on": end})
    laid = {name: setting(found, name) for name in ("roll_diameter", "stack_rise")}
    single = call("tapers.over-rolls-nominal", **SIZES, standing_on=end, **laid)["result"]
    for name in ("lower_measure", "upper_measure", "measure_difference"):
        expected = reading(found, name)["expected_reading"]
        assert expected == pytest.approx(single[name], rel=1e-12), name
    measured = call(
        "tapers.over-rolls",
        units="in",
        length=3.1875,
        lower_measure=single["lower_measure"],
        upper_measure=single["upper_measure"],
        **laid,
        **{name: limit for name, limit in ROLLS.items() if name != "roll_diameters"},
    )["result"]
    own = found["angle_proof"]["angle_error_arcsec"]
    half = measured["half_angle"]
    for name in ("standard_uncertainty", "expanded_uncertainty", "worst_case"):
        assert own[name] == pytest.approx(2 * half[name], rel=1e-6), name
    size = found["size_proof"]["large_diameter_error"]
    for name in ("standard_uncertainty", "expanded_uncertainty", "worst_case"):
        assert size[name] == pytest.approx(measured["large_diameter"][name], rel=1e-6), name


def test_over_balls_is_the_operation_s_own(call: Call) -> None:
    """Depths of both balls and the uncertainty are those of `tapers.over-balls`."""
    found = only(call, SOCKET, balls=BALLS)
    laid = {name: setting(found, name) for name in ("large_ball_diameter", "small_ball_diameter")}
    assert laid == {"large_ball_diameter": 0.9375, "small_ball_diameter": 0.8125}
    single = call("tapers.over-balls-nominal", **SIZES, **laid)["result"]
    depths = {name: single[name] for name in ("large_ball_depth", "small_ball_depth")}
    for name, depth in depths.items():
        assert reading(found, name)["expected_reading"] == pytest.approx(depth, rel=1e-12), name
    apart = reading(found, "ball_depth_difference")["expected_reading"]
    assert apart == pytest.approx(depths["small_ball_depth"] - depths["large_ball_depth"])
    limits = {name: limit for name, limit in BALLS.items() if name != "ball_diameters"}
    measured = call("tapers.over-balls", units="in", length=3.1875, **laid, **depths, **limits)
    half = measured["result"]["half_angle"]
    own = found["angle_proof"]["angle_error_arcsec"]
    assert own["standard_uncertainty"] == pytest.approx(2 * half["standard_uncertainty"], rel=1e-6)
    mouth = measured["result"]["large_diameter"]["standard_uncertainty"]
    size = found["size_proof"]["large_diameter_error"]["standard_uncertainty"]
    assert size == pytest.approx(mouth, rel=1e-6)


@pytest.mark.parametrize("feature", [PLUG, SOCKET])
def test_a_gauge_s_depth_is_the_operation_s_own(call: Call, feature: Json) -> None:
    """Depth to expect and its limits are those of `tapers.plug-depth-nominal`."""
    found = only(call, feature, gauges=GAUGES)
    single = call(
        "tapers.plug-depth-nominal", **SIZES, gauge_diameter=0.93, large_diameter_tolerance=0.0005
    )["result"]
    read = reading(found, "gauge_depth")
    for mine, theirs in (
        ("expected_reading", "gauge_depth"),
        ("smallest_reading", "smallest_gauge_depth"),
        ("largest_reading", "largest_gauge_depth"),
    ):
        assert read[mine] == pytest.approx(single[theirs], rel=1e-12)


@pytest.mark.parametrize("holding", ["between-centers", "on-its-generator", "in-a-vee"])
def test_a_cone_on_a_plate_is_set_as_sine_taper_setting_says(call: Call, holding: str) -> None:
    """Angle, height and what a part at its limit reads are those of `sine.taper-…`."""
    plate = {**PLATE, "holding": holding, "vee_angle": 90, "indicator_travel": 2}
    found = only(call, PLUG, plate=plate)
    held = {"units": "in", "center_distance": 5, "holding": holding}
    single = call("sine.taper-setting", designation="morse-3", **held)["result"]
    assert setting(found, "plate_angle") == pytest.approx(single["plate_angle"]["degrees"])
    assert setting(found, "height") == single["height_to_set"]
    read = reading(found, "indicator_rise")
    for error, name in ((-40, "smallest"), (0, "expected"), (40, "largest")):
        back = call(
            "sine.taper-angle",
            **held,
            height=single["height_to_set"],
            indicator_rise=read[f"{name}_reading"],
            indicator_travel=2,
        )["result"]
        expected = single["included_angle"]["degrees"] + error / 3600
        assert back["included_angle"]["degrees"] == pytest.approx(expected, abs=1e-9)


def test_a_face_on_a_plate_is_set_as_sine_setting_says(call: Call) -> None:
    """The plate's angle is the face's, the height that of `sine.setting`."""
    found = only(call, FACE, plate={**PLATE, "base_step": 0.1, "resolution": 0.001})
    single = call(
        "sine.setting", units="in", center_distance=5, angle=15, base_step=0.1, resolution=0.001
    )["result"]
    assert setting(found, "height") == single["height_to_set"]
    rise = reading(found, "indicator_rise")["expected_reading"]
    travel = setting(found, "indicator_travel")
    assert rise / travel * 206264.806 == pytest.approx(-single["deviation_arcsec"], rel=1e-6)


def test_a_plate_s_own_uncertainty_is_sine_uncertainty_s(call: Call) -> None:
    """Without the indicator's share it is that of `sine.uncertainty`, for the stack as built."""
    plate = {**PLATE, "temperature_celsius": 24, "axis_yaw_error_limit_arcsec": 400}
    found = only(call, FACE, plate={**plate, "indicating_error_limit": 0})
    errors = {name: value for name, value in plate.items() if name != "indicating_error_limit"}
    single = call(
        "sine.uncertainty", units="in", angle=15, height=setting(found, "height"), **errors
    )["result"]["angle_error_arcsec"]
    own = found["angle_proof"]["angle_error_arcsec"]
    for name in ("standard_uncertainty", "expanded_uncertainty"):
        assert own[name] == pytest.approx(single[name], rel=1e-6), name
    # What the plate is known to be off is in the reading, which corrects it: rise and plate add up.
    rise = reading(found, "indicator_rise")["expected_reading"]
    turned = rise / setting(found, "indicator_travel") * 206264.806
    assert turned == pytest.approx(-single["value"], rel=1e-6)


@pytest.mark.parametrize(("feature", "kind"), [(PLUG, "external"), (SOCKET, "internal")])
def test_bluing_marks_what_tapers_standoff_says(call: Call, feature: Json, kind: str) -> None:
    """The range of shares at the limits is that of the operation, for both ends and films."""
    found = only(call, feature, bluing=BLUING)
    shares = [
        call(
            "tapers.standoff",
            units="in",
            designation="morse-3",
            kind=kind,
            contact_length=3.1875,
            diameter_error=0,
            included_angle_error_arcsec=error,
            blue_film=film,
        )["result"]["marked_share_percent"]
        for error in (-40, 40)
        for film in (0.00004, 0.00012)
    ]
    read = reading(found, "marked_share_percent")
    assert (read["smallest_reading"], read["largest_reading"]) == (
        pytest.approx(min(shares), rel=1e-9),
        100.0,
    )
    assert read["expected_reading"] == 100.0


# Textbooks ------------------------------------------------------------------------------------
@pytest.mark.outside(
    "inspection.plan",
    source="Textbook method, two rolls at two heights: 12 mm, H 75, 60.21 and 67.695 make 5.71338°",
)
def test_a_textbook_s_taper_over_rolls(call: Call) -> None:
    """The taper of the worked numbers reads what they were worked out from."""
    feature = {
        "kind": "taper-plug",
        "included_angle": 5.713380,
        # At the base 35.596269; on 100 mm it widens by 2 · 100 · tan 2.85669°.
        "gauge_diameter": 35.596269 + 9.98,
        "length": 100,
        "included_angle_tolerance_arcsec": 60,
    }
    rolls = {"roll_diameters": [12], "stack_rise": 75}
    found = only(call, feature, units="mm", rolls=rolls)
    for name, printed in (("lower_measure", 60.21), ("upper_measure", 67.695)):
        assert reading(found, name)["expected_reading"] == pytest.approx(printed, abs=2e-4)


@pytest.mark.outside(
    "inspection.plan",
    source="byjus.com, balls of 40 and 32 mm in a taper: 8 out and 76 deep make 5.73197°",
)
def test_a_textbook_s_taper_over_balls(call: Call) -> None:
    """The printed socket gives back the depths that it was found by."""
    half = 2.86598  # printed: asin(4 / 80)
    feature = {
        "kind": "taper-socket",
        "half_angle": half,
        # The 40 mm ball's center is 12 mm below the mouth: D = d / cos α + 2 · 12 tan α.
        "gauge_diameter": 40 / 0.998749 + 24 * 0.0500626,
        "length": 120,
        "included_angle_tolerance_arcsec": 60,
    }
    found = only(call, feature, units="mm", balls={"ball_diameters": [40, 36, 32]})
    for name, printed in (("large_ball_depth", -8), ("small_ball_depth", 76)):
        assert reading(found, name)["expected_reading"] == pytest.approx(printed, abs=2e-3)


@pytest.mark.outside("inspection.plan", source="Jones, Turning and Boring: C = (D − d)/(2 sin a)")
def test_a_textbook_s_two_discs(call: Call) -> None:
    """Discs of 3 and 1 in on a 20° taper: their touching centers lie 5.75877 in apart.

    Two sharp edges of these diameters lie 5.6713 in apart, the discs' distance less what their
    rounded rims add: (D − d) / (2 tan a) = 5.75877 cos 10°.
    """
    feature = {
        "kind": "taper-plug",
        "included_angle": 20,
        "gauge_diameter": 3.5,
        "length": 8,
        "included_angle_tolerance_arcsec": 60,
        "large_diameter_tolerance": 0.001,
    }
    gauges = {"gauge_diameter": 3, "second_gauge_diameter": 1}
    plan = planned(call, feature, gauges=gauges)
    found = next(one for one in plan["inspections"] if one["means"] == "two-gauges")
    apart = reading(found, "gauge_depth_difference")["expected_reading"]
    assert apart == pytest.approx(5.75877 * 0.984808, abs=2e-5)


@pytest.mark.outside(
    "inspection.plan", source="Machinery's Handbook's table by its rule: 5 in at 15° is 1.29410 in"
)
def test_a_table_s_height_for_a_face(call: Call) -> None:
    """A face of 15° stands on the height that tables print for 5 in."""
    found = only(call, FACE, plate=PLATE)
    assert setting(found, "height") == pytest.approx(1.29410, abs=5e-6)
