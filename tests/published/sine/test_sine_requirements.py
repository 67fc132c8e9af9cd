"""How good a set-up must be: each requirement by hand, and against the budget that it is for."""

import math

import pytest

from halfangle_service.trade.sine.angle_error import LARGEST_YAW_ARCSEC
from sine_support import ARCSEC, FULL
from support import Call


def test_holding_the_requirement_just_fits(call: Call) -> None:
    """With any one term at the value to hold, the set-up is good for just the tolerance."""
    terms = (
        *("center_distance_error_limit", "stack_error_limit", "axis_yaw_error_limit_arcsec"),
        *("axis_pitch_error_limit_arcsec", "wheel_breakdown"),
    )
    answer = call("sine.requirements", tolerance_arcsec=25, **FULL)["result"]
    assert answer["forecast"] == "holds"
    hold = {r["term"]: r["with_others"] for r in answer["requirements"]}
    for term in terms:
        held = FULL | {term: hold[term]}
        reached = call("sine.uncertainty", **held)["result"]["smallest_tolerance_arcsec"]
        assert reached == pytest.approx(25, rel=1e-7)


@pytest.mark.outside(
    "sine.requirements",
    source="By hand: a rectangle keeps ±10″ with 95 % at ±10/0.95″; by 2 u at ±10/2 × √3″.",
)
@pytest.mark.parametrize(
    ("rule", "limit_arcsec"),
    [("iso-14253-1-2017", 10 / 0.95), ("iso-14253-1-2013", 5 * math.sqrt(3))],
)
def test_requirement_alone_by_hand(call: Call, rule: str, limit_arcsec: float) -> None:
    """Were the stack the only error, ±10″ at 30° on 5 in would allow what either edition allows."""
    result = call(
        "sine.requirements", units="in", center_distance=5, angle=30, tolerance_arcsec=10,
        decision_rule=rule,
    )["result"]  # fmt: skip
    alone = {r["term"]: r["alone"] for r in result["requirements"]}
    by_hand = limit_arcsec / ARCSEC * 5 * math.cos(math.radians(30))
    assert alone["stack_error_limit"] == pytest.approx(by_hand, rel=1e-5)
    assert alone["resolution"] == pytest.approx(2 * by_hand, rel=1e-5)
    assert alone["axis_yaw_error_limit_arcsec"] < LARGEST_YAW_ARCSEC
    assert "wheel_breakdown" not in alone


def test_cheapest_to_mend_mends(call: Call) -> None:
    """Mending the cheapest term to the value named makes the set-up good; none cheaper does."""
    request = FULL | {"axis_yaw_error_limit_arcsec": 360, "axis_pitch_error_limit_arcsec": 20}
    before = call("sine.requirements", tolerance_arcsec=25, **request)["result"]
    assert before["forecast"] == "may-not-hold"
    assert before["mend_together"] == []
    mend = before["cheapest_to_mend"]
    assert mend["term"] == "axis_pitch_error_limit_arcsec"
    after = call(
        "sine.requirements",
        tolerance_arcsec=25,
        **(request | {"axis_pitch_error_limit_arcsec": mend["hold"]}),
    )["result"]
    assert after["forecast"] == "holds"


def test_mend_together_where_no_single_term_can(call: Call) -> None:
    """Where two terms are each past the tolerance, both are named, the larger first."""
    result = call(
        "sine.requirements", units="in", center_distance=5, angle=30, tolerance_arcsec=5,
        stack_error_limit=0.0005, axis_pitch_error_limit_arcsec=60,
    )["result"]  # fmt: skip
    assert result["cheapest_to_mend"] is None
    assert result["mend_together"] == ["axis_pitch_error_limit_arcsec", "stack_error_limit"]
