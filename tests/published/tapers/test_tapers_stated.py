"""What a request does not state is null and named in the answer; 0 says that there is none."""

import math
from typing import Any

import pytest

from coverage_support import half_width_of_rectangles
from support import Call

Request = dict[str, Any]

OVER_ROLLS: Request = {
    "units": "mm",
    "roll_diameter": 12,
    "lower_measure": 60.21,
    "upper_measure": 67.695,
    "stack_rise": 75,
    "length": 100,
}
OVER_BALLS: Request = {
    "units": "mm",
    "large_ball_diameter": 40,
    "small_ball_diameter": 32,
    "large_ball_depth": -8,
    "small_ball_depth": 76,
    "length": 120,
}
ONE_BALL: Request = {
    "units": "in",
    "included_angle": 60,
    "ball_diameter": 0.5,
    "ball_depth": -0.2,
    "length": 0.4,
}
VEE: Request = {
    "units": "mm",
    "large_roll_diameter": 40,
    "small_roll_diameter": 20,
    "large_roll_top": 20,
    "small_roll_top": -10,
}
DOVETAIL: Request = {
    "units": "mm",
    "kind": "male",
    "flank_angle": 60,
    "flank_height": 10,
    "roll_diameter": 8,
    "measure": 70,
}
PLUG: Request = {
    "units": "mm",
    "one_in_x": 20,
    "gauge_diameter": 17.78,
    "gauge_depth": 0.5,
    "length": 64,
}
TWO_PLUGS: Request = {
    **{name: value for name, value in PLUG.items() if name != "one_in_x"},
    "second_gauge_diameter": 16,
    "second_gauge_depth": 36,
}
IDENTIFY: Request = {"units": "in", "large_diameter": 0.7, "small_diameter": 0.6, "length": 2}
#: Operation, request, an estimate of its answer, and what of it the request does not state.
MEASURED = [
    ("over-rolls", OVER_ROLLS, "half_angle", ["measure_error_limit", "stack_rise_error_limit"]),
    (
        "over-rolls",
        OVER_ROLLS,
        "large_diameter",
        ["measure_error_limit", "stack_rise_error_limit", "roll_error_limit"],
    ),
    ("over-balls", OVER_BALLS, "half_angle", ["roll_error_limit", "measure_error_limit"]),
    ("over-balls", OVER_BALLS, "small_diameter", ["roll_error_limit", "measure_error_limit"]),
    (
        "one-ball",
        ONE_BALL,
        "large_diameter",
        ["roll_error_limit", "measure_error_limit", "included_angle_error_limit_arcsec"],
    ),
    ("vee-over-rolls", VEE, "vee_half_angle", ["roll_error_limit", "measure_error_limit"]),
    ("vee-over-rolls", VEE, "face_width", ["roll_error_limit", "measure_error_limit"]),
    ("dovetail-over-rolls", DOVETAIL, "measure", ["measure_error_limit"]),
    (
        "dovetail-over-rolls",
        DOVETAIL,
        "corner_width",
        ["measure_error_limit", "roll_error_limit", "flank_angle_error_limit_arcsec"],
    ),
    ("plug-depth", PLUG, "half_angle", ["included_angle_error_limit_arcsec"]),
    (
        "plug-depth",
        PLUG,
        "gauge_line_diameter",
        ["gauge_error_limit", "depth_error_limit", "included_angle_error_limit_arcsec"],
    ),
    ("plug-depth", TWO_PLUGS, "half_angle", ["gauge_error_limit", "depth_error_limit"]),
    ("identify", IDENTIFY, "half_angle", ["diameter_error_limit", "length_error_limit"]),
]
SPREAD = ("standard_uncertainty", "expanded_uncertainty", "worst_case")


@pytest.mark.parametrize(("verb", "request_", "field", "not_stated"), MEASURED)
def test_an_estimate_of_nothing_stated_has_its_value_alone(
    call: Call, verb: str, request_: Request, field: str, not_stated: list[str]
) -> None:
    """With no error stated an estimate gives its value, nulls, and the fields that would say."""
    found = call(f"tapers.{verb}", **request_)["result"][field]
    assert found["value"] is not None
    assert [found[name] for name in SPREAD] == [None, None, None]
    assert found["contributions"] == []
    assert found["not_stated"] == not_stated


@pytest.mark.parametrize(("verb", "request_", "field", "not_stated"), MEASURED)
def test_an_error_stated_as_none_is_none(
    call: Call, verb: str, request_: Request, field: str, not_stated: list[str]
) -> None:
    """With 0 for every error the same value is certain, and nothing is left unsaid."""
    loose = call(f"tapers.{verb}", **request_)["result"][field]
    found = call(f"tapers.{verb}", **request_, **dict.fromkeys(not_stated, 0))["result"][field]
    assert found["value"] == loose["value"]
    assert [found[name] for name in SPREAD] == [0, 0, 0]
    assert found["not_stated"] == []
    assert all(c["sensitivity"] != 0 for c in found["contributions"])


@pytest.mark.parametrize(("verb", "request_", "field", "not_stated"), MEASURED)
def test_an_estimate_counts_what_was_stated_and_names_the_rest(
    call: Call, verb: str, request_: Request, field: str, not_stated: list[str]
) -> None:
    """One error stated of several is counted, and the others are named."""
    stated, *rest = not_stated
    found = call(f"tapers.{verb}", **request_, **{stated: 0.001})["result"][field]
    assert found["worst_case"] > 0
    assert found["not_stated"] == rest
    parts = [c["worst_case"] for c in found["contributions"]]
    assert found["worst_case"] == pytest.approx(math.fsum(parts))
    covered = half_width_of_rectangles(*parts)
    assert found["expanded_uncertainty"] == pytest.approx(covered, rel=3e-4)
    assert found["expanded_uncertainty"] <= found["worst_case"]
    assert found["coverage_probability"] == 0.95


def test_a_corner_width_given_is_exact(call: Call) -> None:
    """A dovetail's width that was given has no uncertainty, and none is missing."""
    request = {name: value for name, value in DOVETAIL.items() if name != "measure"}
    result = call("tapers.dovetail-over-rolls", corner_width=50, **request)["result"]
    assert result["corner_width"]["value"] == 50
    assert result["corner_width"]["not_stated"] == []
    assert result["measure"]["not_stated"] == ["roll_error_limit", "flank_angle_error_limit_arcsec"]


def test_the_uncertainty_of_an_edge_width_follows_the_derivatives(call: Call) -> None:
    """The edge errs by roll as the corner does, and by the angle with 2 h / sin² θ less."""
    errors = {"measure_error_limit": 0, "roll_error_limit": 0, "flank_angle_error_limit_arcsec": 30}
    result = call("tapers.dovetail-over-rolls", **DOVETAIL, **errors)["result"]
    angle = math.radians(60)
    step = math.radians(30 / 3600)
    corner = 8 / (2 * math.sin(angle / 2) ** 2) * step
    edge = corner - 20 / math.sin(angle) ** 2 * step
    assert result["corner_width"]["worst_case"] == pytest.approx(corner, rel=1e-6)
    assert result["edge_width"]["worst_case"] == pytest.approx(abs(edge), rel=1e-6)


def test_limits_of_a_depth_need_a_tolerance(call: Call) -> None:
    """A gauge's depth has limits where the diameter's tolerance was stated, 0 included."""
    request = {"units": "mm", "one_in_x": 20, "large_diameter": 18, "length": 64}
    loose = call("tapers.plug-depth-nominal", gauge_diameter=17, **request)["result"]
    assert (loose["smallest_gauge_depth"], loose["largest_gauge_depth"]) == (None, None)
    assert loose["not_stated"] == ["large_diameter_tolerance"]
    exact = call(
        "tapers.plug-depth-nominal", gauge_diameter=17, large_diameter_tolerance=0, **request
    )["result"]
    assert exact["smallest_gauge_depth"] == exact["largest_gauge_depth"] == exact["gauge_depth"]
    assert exact["not_stated"] == []


def test_feed_without_an_angle_error_counts_the_layer(call: Call) -> None:
    """Where no angle error was stated no end is named, and the downfeed is the layer's."""
    request = {"units": "in", "included_angle": 60, "amount": 0.001}
    result = call("tapers.infeed", **request)["result"]
    ends = ("touches_first", "large_end", "small_end")
    assert [result[name] for name in ends] == [None, None, None]
    assert result["not_stated"] == ["half_angle_error_arcsec"]
    assert result["total_downfeed"] == pytest.approx(0.001)
    exact = call("tapers.infeed", half_angle_error_arcsec=0, **request)["result"]
    assert exact["touches_first"] == "both-ends"
    assert exact["large_end"] == exact["small_end"]
    assert exact["large_end"]["gap_at_first_touch"] == 0
    assert exact["large_end"]["off_diameter"] == exact["off_diameter"]


WORN: Request = {"units": "in", "half_angle": 30, "large_diameter": 0.75, "length": 0.5}


def test_nothing_stated_asks_for_no_stock(call: Call) -> None:
    """A part of which nothing was stated has no figures and no forecast, whatever its limits."""
    result = call("tapers.clean-up", smallest_large_diameter=0.74, **WORN)["result"]
    assert result["forecast"] == "not-stated"
    assert result["needed_at_large_end"] is None
    assert result["margin_at_large_end"] is None
    assert result["available_at_large_end"] == pytest.approx(0.005 * math.cos(math.radians(30)))
    assert result["not_stated"] == [
        "tir_large_end",
        "tir_small_end",
        "half_angle_error_arcsec",
        "wear",
    ]


STATED: Request = {
    "tir_large_end": 0.001,
    "tir_small_end": 0.001,
    "half_angle_error_arcsec": 0,
    "wear": 0,
}


@pytest.mark.parametrize(
    ("stated", "least", "forecast"),
    [
        (STATED, 0.74, "holds"),
        ({"tir_large_end": 0.001}, 0.74, "may-not-hold"),
        ({"tir_large_end": 0.001}, 0.7495, "does-not-hold"),
        ({"tir_small_end": 0.001}, 0.7495, "may-not-hold"),
        ({"tir_small_end": 0.001, "half_angle_error_arcsec": 0}, 0.7495, "does-not-hold"),
        (STATED, None, "not-stated"),
    ],
)
def test_only_a_part_wholly_stated_is_said_to_hold(
    call: Call, stated: Request, least: float | None, forecast: str
) -> None:
    """A part cleans up for sure only where all that asks for stock was stated."""
    limit = {} if least is None else {"smallest_large_diameter": least}
    answer = call("tapers.clean-up", **WORN, **stated, **limit)
    assert answer["result"]["forecast"] == forecast
    stops = [a["code"] for a in answer["advisories"] if a["severity"] == "stop"]
    assert stops == (["does-not-clean-up"] if forecast == "does-not-hold" else [])
    lacking = (answer["result"]["margin_at_large_end"] or 0) < 0
    cautions = [a["code"] for a in answer["advisories"] if a["code"] == "may-not-clean-up"]
    assert cautions == (["may-not-clean-up"] if lacking and not stops else [])


def test_an_angle_error_may_save_a_small_end(call: Call) -> None:
    """Runout at the small end alone asks for no stock at the large end at some angle error.

    So a part is not said to be lost for it where its angle error was not stated.
    """
    request = {**WORN, "tir_large_end": 0, "tir_small_end": 0.001, "wear": 0}
    needs = [
        call("tapers.clean-up", half_angle_error_arcsec=error, **request)["result"][
            "needed_at_large_end"
        ]
        for error in range(-400, 401, 100)
    ]
    assert min(needs) == pytest.approx(0, abs=1e-12)
    assert max(needs) > 0.0005


def test_one_caution_of_the_wheel(call: Call) -> None:
    """Feed and clean-up carry the wheel's caution once."""
    answers = [
        call("tapers.infeed", units="in", included_angle=60, amount=0.001),
        call("tapers.clean-up", **WORN, **STATED),
    ]
    for answer in answers:
        codes = [a["code"] for a in answer["advisories"]]
        assert codes.count("wheel-safety") == 1


GAUGE: Request = {"units": "in", "taper_per_foot": 3.5, "kind": "external", "contact_length": 2.5}
BY_ANGLE = (
    "standoff_from_angle",
    "bears_at",
    "gap_normal",
    "gap_on_diameter",
    "marked_share_percent",
    "marked_length",
    "bluing_marks",
)


def test_a_standoff_counts_what_was_stated(call: Call) -> None:
    """A gauge's stand-off is the sum of what was stated; where cones bear needs their angles."""
    neither = call("tapers.standoff", **GAUGE)["result"]
    assert (neither["standoff"], neither["standoff_from_diameter"]) == (None, None)
    assert neither["not_stated"] == ["diameter_error", "included_angle_error_arcsec"]
    by_diameter = call("tapers.standoff", diameter_error=0.0005, **GAUGE)["result"]
    assert by_diameter["standoff"] == by_diameter["standoff_from_diameter"] > 0
    assert [by_diameter[name] for name in BY_ANGLE] == [None] * len(BY_ANGLE)
    alike = call("tapers.standoff", diameter_error=0, included_angle_error_arcsec=0, **GAUGE)
    assert alike["result"]["not_stated"] == []
    assert alike["result"]["bears_at"] == "both-ends"
    assert alike["result"]["bluing_marks"] == "all-over"
    assert alike["result"]["standoff"] == 0
