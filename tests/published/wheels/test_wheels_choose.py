"""Choosing a way: its budgets against an uncertainty library, Monte Carlo and other operations."""

import copy
import math
from typing import Any

import numpy as np
import pytest
import uncertainties
from uncertainties import umath

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.topics.wheels.choose import choose
from support import Call

EXAMPLE: dict[str, Any] = dict(choose.example)
CONE = {
    name: EXAMPLE[name]
    for name in ("units", "included_angle", "large_diameter", "small_diameter", "wheel_diameter")
}
ARCSEC = math.pi / 648_000


def ways_of(answer: dict[str, Any]) -> dict[str, dict[str, Any]]:
    """The ways of an answer by name."""
    return {way["way"]: way for way in answer["result"]["ways"]}


def worst_cases(way: dict[str, Any]) -> dict[str, float]:
    """The limits on the included angle of a way's errors, by name."""
    contributions = way["included_angle_error_arcsec"]["contributions"]
    return {contribution["name"]: contribution["worst_case"] for contribution in contributions}


def with_(way: str, **changes: Any) -> dict[str, Any]:
    """The example with one way's fields changed."""
    request = copy.deepcopy(EXAMPLE)
    request["ways"][way].update(changes)
    return request


@pytest.mark.outside("wheels.choose", source="uncertainties: propagation through asin and atan")
def test_uncertainty_is_the_propagated_one(call: Call) -> None:
    """The standard uncertainty is what an uncertainty library propagates to the included angle."""
    request = with_("sine_plate", axis_yaw_error_limit_arcsec=0)
    plate = ways_of(call("wheels.choose", **request))["sine-plate"]["included_angle_error_arcsec"]
    height = uncertainties.ufloat(2.5, 0.00002 / math.sqrt(3))
    setting = uncertainties.ufloat(0, 2 * ARCSEC / math.sqrt(3))
    pitch = uncertainties.ufloat(0, 5 * ARCSEC / math.sqrt(3))
    wear = uncertainties.ufloat(0, 0.00005 / math.sqrt(3))
    included = 2 * (umath.asin(height / 5) + setting + pitch + umath.atan(wear / 0.7))
    assert plate["standard_uncertainty"] == pytest.approx(included.std_dev / ARCSEC, rel=1e-6)
    assert plate["value"] == 0
    assert plate["worst_case"] == pytest.approx(
        sum(c["worst_case"] for c in plate["contributions"])
    )
    assert sum(c["share_percent"] for c in plate["contributions"]) == pytest.approx(100)


@pytest.mark.outside(
    "wheels.choose", source="Monte Carlo (JCGM 101) through the chord of the flank"
)
def test_what_acts_by_its_square_has_a_mean(call: Call) -> None:
    """A large diamond height moves the angle on average, and spreads it, as sampling shows."""
    request = with_(
        "dressed_wheel", diamond_height_error_limit=0.15, axis_pitch_error_limit_arcsec=3
    )
    found = ways_of(call("wheels.choose", **request))["dressed-wheel"]
    random = np.random.default_rng(11)

    def within(limit: float) -> Any:
        return random.uniform(-limit, limit, 400_000)

    length = 0.35 / math.tan(math.radians(30))
    height = within(0.15)
    start = np.sqrt(3.5**2 - height**2)
    end = np.sqrt((start - length * math.tan(math.radians(30))) ** 2 + height**2)
    half = np.arctan((3.5 - end) / length) + within(3 * ARCSEC)
    half += np.arcsin((1.0 + within(0.00005)) / 2.0) - math.radians(30)
    half += np.arctan(within(0.0001) / 0.7)
    included = 2 * (half - math.radians(30)) / ARCSEC
    error = found["included_angle_error_arcsec"]
    assert error["value"] == pytest.approx(np.mean(included), abs=0.3)
    assert error["value"] < -50
    assert error["standard_uncertainty"] == pytest.approx(np.std(included), rel=0.01)


def test_limits_are_those_of_the_error_models(call: Call) -> None:
    """Diamond height and axis offset count with what their own operations give."""
    ways = ways_of(call("wheels.choose", **EXAMPLE))
    dressed = call("wheels.dressing-errors", **CONE, diamond_height=0.02)["result"]["errors"][0]
    named = worst_cases(ways["dressed-wheel"])
    assert named["diamond_height_error_limit"] == pytest.approx(
        abs(dressed["included_angle_error_arcsec"])
    )
    # 0.0001 in over 0.7 in of slant, and 0.00005 in on a 2 in sine base, both twice.
    assert named["flank_wear"] == pytest.approx(2 * 1e-4 / 0.7 / ARCSEC, rel=1e-6)
    assert named["stack_error_limit"] == pytest.approx(
        2 * 0.00005 / (2 * math.cos(math.radians(30))) / ARCSEC
    )
    offset = call(
        "wheels.setup-errors",
        **CONE,
        grinder="cylindrical",
        way="swivelled-workhead",
        feed="plunge",
        axis_offset=0.02,
    )["result"]["errors"][0]
    named = worst_cases(ways["swivelled-workhead"])
    assert named["axis_offset_error_limit"] == pytest.approx(
        abs(offset["included_angle_error_arcsec"]), rel=0.02
    )
    assert named["graduation"] == pytest.approx(300)


@pytest.mark.parametrize(
    ("way", "grinder", "name", "feed"),
    [
        ("sine_plate", "surface", "sine-plate", "traversed"),
        ("wheel_side", "surface", "wheel-side", "plunge"),
        ("dressed_wheel", "surface", "dressed-wheel", "plunge"),
        ("swivelled_workhead", "cylindrical", "swivelled-workhead", "plunge"),
    ],
)
def test_yaw_counts_by_its_square(call: Call, way: str, grinder: str, name: str, feed: str) -> None:
    """An axis out of the plane of setting counts with what setup-errors gives, always one way."""
    row = ways_of(call("wheels.choose", **with_(way, axis_yaw_error_limit_arcsec=1800)))[name]
    by_itself = call(
        "wheels.setup-errors",
        **CONE,
        grinder=grinder,
        way=name,
        feed=feed,
        axis_yaw_arcsec=1800,
    )["result"]["errors"][2]
    assert worst_cases(row)["axis_yaw_error_limit_arcsec"] == pytest.approx(
        abs(by_itself["included_angle_error_arcsec"]), rel=0.02
    )
    if feed == "traversed" or way == "wheel_side":
        # sin α′ = sin α cos ψ, so that Δα = −½ ψ² tan α nearly: −4.5″ at 30° for half a degree.
        assert by_itself["half_angle_error_arcsec"] == pytest.approx(-4.534, abs=0.001)


def test_a_workhead_under_a_surface_grinders_wheel_is_ruled_out(call: Call) -> None:
    """Swivelled about the vertical under a wheel above it, no head sets an angle: it says so."""
    request = with_("swivelled_workhead", grinder="surface", graduation="0 00 01")
    row = ways_of(call("wheels.choose", **request))["swivelled-workhead"]
    assert row["forecast"] == "does-not-hold"
    assert "work stays level" in row["ruled_out_by"][0]


def test_a_dress_too_long_for_one_diamond_is_told(call: Call) -> None:
    """350 passes for the flank are told beside the time that they take."""
    answer = call("wheels.choose", **EXAMPLE)
    words = {a["code"]: a["message"] for a in answer["advisories"]}["long-dress"]
    assert "350 passes take 0.35 in" in words


def test_forecasts_and_reasons(call: Call) -> None:
    """Ways that hold come first; those ruled out come last and say why."""
    answer = call("wheels.choose", **EXAMPLE)
    assert [(way["way"], way["forecast"]) for way in answer["result"]["ways"]] == [
        ("sine-plate", "holds"),
        ("dressed-wheel", "may-not-hold"),
        ("swivelled-workhead", "may-not-hold"),
        ("wheel-side", "does-not-hold"),
    ]
    assert answer["result"]["best"] == "sine-plate"
    assert "not known to be rated" in ways_of(answer)["wheel-side"]["ruled_out_by"][0]
    assert [a["code"] for a in answer["advisories"]].count("wheel-safety") == 1


def test_what_is_not_stated_never_holds(call: Call) -> None:
    """A way with an error left out may not hold, and names it; 0 states that there is none."""
    request = with_("sine_plate", plate_error_limit_arcsec=None)
    answer = call("wheels.choose", **request)
    plate = ways_of(answer)["sine-plate"]
    assert plate["forecast"] == "may-not-hold"
    assert plate["included_angle_error_arcsec"]["not_stated"] == ["plate_error_limit_arcsec"]
    words = {a["code"]: a["message"] for a in answer["advisories"]}["best-way-may-not-hold"]
    assert "(not stated: plate_error_limit_arcsec)" in words
    stated = with_("sine_plate", plate_error_limit_arcsec=0)
    assert ways_of(call("wheels.choose", **stated))["sine-plate"]["forecast"] == "holds"


def test_nothing_stated_is_no_forecast(call: Call) -> None:
    """A way of which no error was stated has null for an error, and none is best."""
    answer = call("wheels.choose", **{**EXAMPLE, "ways": {"sine_plate": {"center_distance": 5}}})
    plate = ways_of(answer)["sine-plate"]
    error = plate["included_angle_error_arcsec"]
    assert plate["forecast"] == "not-stated"
    assert (error["value"], error["expanded_uncertainty"], error["worst_case"]) == (None,) * 3
    assert error["not_stated"] == [
        "stack_error_limit",
        "plate_error_limit_arcsec",
        "axis_pitch_error_limit_arcsec",
        "axis_yaw_error_limit_arcsec",
        "wheel_breakdown",
    ]
    assert answer["result"]["best"] is None
    assert "no-way-known" in [a["code"] for a in answer["advisories"]]
    assert "stop" not in [a["severity"] for a in answer["advisories"]]


def test_where_none_is_sure_the_least_uncertain_is_best(call: Call) -> None:
    """Below every way's uncertainty the surest way is best, and the answer says it may not hold."""
    answer = call("wheels.choose", **{**EXAMPLE, "included_angle_tolerance_arcsec": 10})
    doubts = [
        way["included_angle_error_arcsec"]["expanded_uncertainty"]
        for way in answer["result"]["ways"]
        if way["forecast"] == "may-not-hold"
    ]
    assert len(doubts) == 2
    assert doubts == sorted(doubts)
    assert answer["result"]["best"] == "sine-plate"
    assert "best-way-may-not-hold" in [a["code"] for a in answer["advisories"]]


@pytest.mark.parametrize(
    ("way", "changes", "name", "reason"),
    [
        (
            "wheel_side",
            {"rated_for_side": False, "swivel_error_limit_arcsec": 5},
            "wheel-side",
            "stated not to be rated",
        ),
        (
            "wheel_side",
            {"rated_for_side": True, "swivel_error_limit_arcsec": 5, "usable_width": 0.5},
            "wheel-side",
            "0.7 in long, the side is usable over 0.5 in",
        ),
        (
            "dressed_wheel",
            {"wheel_width": 0.5},
            "dressed-wheel",
            "0.60622 in wide, the wheel 0.5",
        ),
        ("sine_plate", {"largest_angle": 25}, "sine-plate", "reaches 25°"),
        (
            "swivelled_workhead",
            {"graduation": "0 00 30", "largest_angle": 20},
            "swivelled-workhead",
            "swivels to 20°",
        ),
    ],
)
def test_one_reason_rules_a_way_out(
    call: Call, way: str, changes: dict[str, Any], name: str, reason: str
) -> None:
    """Each limit of a way rules it out by itself, in words."""
    row = ways_of(call("wheels.choose", **with_(way, **changes)))[name]
    assert row["forecast"] == "does-not-hold"
    assert len(row["ruled_out_by"]) == 1
    assert reason in row["ruled_out_by"][0]


def test_a_rated_side_may_be_chosen(call: Call) -> None:
    """A side stated to be rated, and set truly, is a way like another."""
    request = with_(
        "wheel_side",
        rated_for_side=True,
        swivel_error_limit_arcsec=5,
        side_error_limit_arcsec=5,
        axis_yaw_error_limit_arcsec=300,
        side_wear=0.00002,
        setup_minutes=1,
    )
    assert call("wheels.choose", **request)["result"]["best"] == "wheel-side"


def test_time_counts_dressing_and_pieces(call: Call) -> None:
    """Dressing 0.35 in at 0.001 in a pass takes 350 passes; pieces add their own time."""
    row = ways_of(call("wheels.choose", **EXAMPLE))["dressed-wheel"]
    assert row["first_piece_minutes"] == pytest.approx(40 + 350 * 10 / 60 + 20 + 10)
    assert row["total_minutes"] == pytest.approx(row["first_piece_minutes"] + 4 * 10)


@pytest.mark.outside(
    "wheels.choose", source="JCGM 106: probability of a rectangular error, by hand"
)
@pytest.mark.parametrize(("tolerance", "forecast"), [(14.9, "does-not-hold"), (16, "may-not-hold")])
def test_an_error_that_will_miss_rules_a_way_out(
    call: Call, tolerance: float, forecast: str
) -> None:
    """A scale read to ±300″ keeps ±15″ in 5 cases of 100: below that the way is ruled out."""
    head: dict[str, str | int] = {"grinder": "cylindrical", "graduation": "0 05"}
    head |= dict.fromkeys(
        ("axis_offset_error_limit", "axis_yaw_error_limit_arcsec", "wheel_breakdown"), 0
    )
    request = {
        **EXAMPLE,
        "included_angle_tolerance_arcsec": tolerance,
        "ways": {"swivelled_workhead": head},
    }
    row = ways_of(call("wheels.choose", **request))["swivelled-workhead"]
    assert row["forecast"] == forecast
    assert bool(row["ruled_out_by"]) == (forecast == "does-not-hold")


def test_when_all_are_ruled_out_none_is_best(call: Call) -> None:
    """A tolerance below every way's error leaves no best way, and says so."""
    answer = call("wheels.choose", **{**EXAMPLE, "included_angle_tolerance_arcsec": 1})
    assert answer["result"]["best"] is None
    assert {a["code"]: a["severity"] for a in answer["advisories"]}["no-way-fits"] == "stop"


@pytest.mark.parametrize(
    ("request_", "error", "match"),
    [
        (
            {**EXAMPLE, "ways": {}},
            Disagreement,
            "At least one of",
        ),
        (
            with_("dressed_wheel", dresser={"kind": "scale", "graduation": "0 05"}),
            Disagreement,
            "set without blocks",
        ),
        (
            with_("dressed_wheel", diamond_height_error_limit=3.2),
            Impossible,
            "never reaches the flank's root",
        ),
        (with_("swivelled_workhead", axis_offset_error_limit=4), Impossible, "misses the wheel"),
        ({**EXAMPLE, "small_diameter": 0.8}, Impossible, "not below the larger one"),
        ({**EXAMPLE, "wheel_diameter": 127}, Disagreement, "127 mm would be 5 in"),
        (with_("sine_plate", center_distance=127), Disagreement, "127 mm would be 5 in"),
        (
            with_("dressed_wheel", dresser={"kind": "sine-base", "center_distance": 0.08}),
            Disagreement,
            "No sine bar or plate",
        ),
    ],
)
def test_bad_choices_are_refused(
    call: Call, request_: dict[str, Any], error: type[Exception], match: str
) -> None:
    """A choice of nothing, or of what cannot be, is refused with the reason."""
    with pytest.raises(error, match=match):
        call("wheels.choose", **request_)
