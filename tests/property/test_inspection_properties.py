"""What holds of every inspection planned: limits in order, and readings that go there and back."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inspection_plan_support import by, planned, reading, setting
from support import Call

Json = dict[str, Any]


@st.composite
def cones(draw: st.DrawFn) -> Json:
    """A plug or socket that is long enough for its taper, with a tolerance of its angle."""
    half = draw(st.floats(0.3, 35))
    large = draw(st.floats(0.5, 3))
    share = draw(st.floats(0.3, 0.95))
    return {
        "kind": draw(st.sampled_from(["taper-plug", "taper-socket"])),
        "half_angle": half,
        "gauge_diameter": large,
        "length": min(6.0, share * large / 2 / math.tan(math.radians(half))),
        "included_angle_tolerance_arcsec": draw(st.floats(5, 600)),
        "large_diameter_tolerance": draw(st.floats(0.0001, 0.01)),
    }


LIMITS = st.floats(0.00001, 0.0005)


@given(cones(), LIMITS, LIMITS, st.sampled_from(["iso-14253-1-2017", "iso-14253-1-2013"]))
def test_limits_are_in_order_and_judged_by_what_is_left(
    call: Call, feature: Json, measure: float, other: float, rule: str
) -> None:
    """Accepted lies within the limits, about the nominal; what is proved has something accepted."""
    small = feature["gauge_diameter"] - 2 * feature["length"] * math.tan(
        math.radians(feature["half_angle"])
    )
    cosine = math.cos(math.radians(feature["half_angle"]))
    balls = [small / cosine * 1.01, feature["gauge_diameter"] / cosine * 0.99]
    plan = planned(
        call,
        feature,
        rolls={
            "roll_diameters": [0.03, 0.0625, 0.25],
            "stack_rise": feature["length"] / 2,
            "measure_error_limit": measure,
            "roll_error_limit": other,
            "stack_rise_error_limit": other,
        },
        balls={"ball_diameters": balls, "measure_error_limit": measure, "roll_error_limit": other},
        bluing={
            "blue_film": 0.0001,
            "blue_film_error_limit": 0.00005,
            "marked_share_error_limit_percent": 5,
            "gauge_angle_error_limit_arcsec": 2,
        },
        decision_rule=rule,
    )
    for found in plan["inspections"]:
        proof = found["angle_proof"]
        proved = proof["proves_tolerance"]
        assert proved is (proof["largest_accepted_error_arcsec"] is not None)
        if proved:
            limit = feature["included_angle_tolerance_arcsec"]
            low, high = (proof[f"{side}_accepted_error_arcsec"] for side in ("smallest", "largest"))
            assert -limit <= low <= 0 <= high <= limit
        for row in found["readings"]:
            if row["smallest_reading"] is not None:
                assert row["smallest_reading"] <= row["expected_reading"] <= row["largest_reading"]
            if row["smallest_accepted_reading"] is not None:
                assert row["smallest_reading"] <= row["smallest_accepted_reading"]
                assert row["largest_accepted_reading"] <= row["largest_reading"]


@given(cones(), st.sampled_from(["small-end", "large-end"]))
def test_a_reading_at_the_limit_over_rolls_is_the_limit_s_angle(
    call: Call, feature: Json, end: str
) -> None:
    """The differences at the limits, read back by `tapers.over-rolls`, are the limits' angles."""
    plug = {**feature, "kind": "taper-plug"}
    rise = feature["length"] / 3
    rolls = {"roll_diameters": [0.03], "stack_rise": rise, "standing_on": end}
    plan = planned(call, plug, rolls=rolls)
    if plan["ruled_out"]:  # too short for these rolls
        return
    found = by(plan, "over-rolls")
    lower = reading(found, "lower_measure")["expected_reading"]
    difference = reading(found, "measure_difference")
    angles = []
    for side in ("smallest", "expected", "largest"):
        back = call(
            "tapers.over-rolls",
            units="in",
            roll_diameter=setting(found, "roll_diameter"),
            lower_measure=lower,
            upper_measure=lower + difference[f"{side}_reading"],
            stack_rise=rise,
            length=feature["length"] * 0.98,
        )["result"]
        angles.append(back["included_angle"]["degrees"])
    tolerance = feature["included_angle_tolerance_arcsec"] / 3600
    nominal = 2 * feature["half_angle"]
    expected = [nominal - tolerance, nominal, nominal + tolerance]
    assert sorted(angles) == pytest.approx(expected, abs=1e-7)
