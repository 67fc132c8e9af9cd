"""Other ways to set a taper, against handbooks and derivatives."""

import math
from typing import Any

import pytest
from mpmath import mp

from support import Call

WAYS: dict[str, Any] = {
    "scale_radius": 6,
    "scale_reading_error_limit": 0.005,
    "set_over_error_limit": 0.002,
    "attachment_length": 12,
    "attachment_error_limit": 0.005,
}


@pytest.mark.outside("tapers.set-over", source="Jones, Turning and Boring, and a published course")
@pytest.mark.parametrize(
    ("length", "per_foot", "printed"),
    [(9, 1, 0.375), (8, 1.5, 0.5), (12, 1, 0.5), (6, 1, 0.25), (15, 0.75, 0.46875)],
)
def test_set_over_of_the_handbooks(
    call: Call, length: float, per_foot: float, printed: float
) -> None:
    """The shop rule gives the printed set-over; the exact one is that times cos α."""
    result = call(
        "tapers.set-over",
        units="in",
        taper_per_foot=per_foot,
        work_length=length,
        work_length_error_limit=0.01,
        **WAYS,
    )["result"]
    assert result["set_over_by_rule"] == pytest.approx(printed, rel=1e-12)
    half = math.radians(result["half_angle"]["degrees"])
    assert result["set_over"] == pytest.approx(printed * math.cos(half))
    errors = [way["half_angle_error_arcsec"]["worst_case"] for way in result["ways"]]
    assert errors == sorted(errors)


def test_a_way_whose_error_is_not_wholly_stated_comes_last(call: Call) -> None:
    """Without the error of the work's length the set-over counts what was stated, and says so."""
    request = {"units": "in", "taper_per_foot": 1, "work_length": 9, **WAYS}
    ways = call("tapers.set-over", **request)["result"]["ways"]
    assert [way["way"] for way in ways] == ["taper-attachment", "swivel", "tailstock-set-over"]
    error = ways[2]["half_angle_error_arcsec"]
    assert error["not_stated"] == ["work_length_error_limit"]
    assert [c["name"] for c in error["contributions"]] == ["set_over_error_limit"]
    stated = call("tapers.set-over", work_length_error_limit=0, **request)["result"]["ways"]
    assert [way["way"] for way in stated] == ["tailstock-set-over", "taper-attachment", "swivel"]
    assert stated[0]["half_angle_error_arcsec"]["worst_case"] == error["worst_case"]


def test_errors_of_the_ways_follow_the_derivatives(call: Call) -> None:
    """δα = δS / (L cos α) − tan α δL / L at the tailstock; on the diameter 2 L δα / cos² α."""
    request = {
        "units": "in",
        "half_angle": 10,
        "work_length": 8,
        "work_length_error_limit": 0.03,
        **WAYS,
    }
    ways = {w["way"]: w for w in call("tapers.set-over", **request)["result"]["ways"]}
    half = math.radians(10)
    by_set_over, by_length = 0.002 / (8 * math.cos(half)), math.tan(half) * 0.03 / 8
    error = ways["tailstock-set-over"]["half_angle_error_arcsec"]
    worst = math.degrees(by_set_over + by_length) * 3600
    assert error["worst_case"] == pytest.approx(worst, rel=1e-9)
    assert error["contributions"][1]["sensitivity"] < 0
    combined = math.degrees(math.hypot(by_set_over, by_length)) * 3600 / math.sqrt(3)
    assert error["standard_uncertainty"] == pytest.approx(combined, rel=1e-9)
    on_diameter = ways["tailstock-set-over"]["error_on_diameter"]["worst_case"]
    expected = 16 * (by_set_over + by_length) / math.cos(half) ** 2
    assert on_diameter == pytest.approx(expected, rel=1e-9)


CENTER: dict[str, Any] = {"units": "in", "included_angle": 60, "work_length": 9, **WAYS}


def test_a_set_over_that_no_lathe_has_is_not_the_surest(call: Call) -> None:
    """4.5 in of set-over on 9 in of work is doubted and comes after the swivel, however sure."""
    answer = call("tapers.set-over", work_length_error_limit=0, **CENTER)
    ways = answer["result"]["ways"]
    assert answer["result"]["set_over"] == pytest.approx(4.5)
    assert [(way["way"], way["forecast"]) for way in ways] == [
        ("swivel", "not-stated"),
        ("tailstock-set-over", "may-not-hold"),
        ("taper-attachment", "may-not-hold"),
    ]
    surest = min(ways, key=lambda way: way["half_angle_error_arcsec"]["worst_case"])
    assert surest["way"] == "tailstock-set-over"
    doubts = [a["message"] for a in answer["advisories"] if a["code"] == "steep-for-this-way"]
    assert ["4.5000 in" in doubts[0], "6.9282 in" in doubts[1]] == [True, True]


@pytest.mark.outside(
    "tapers.set-over",
    source="Machine Shop Work: a taper attachment is usually limited to about 3 in per foot",
)
@pytest.mark.parametrize(("per_foot", "reach"), [(3, "not-stated"), (3.001, "may-not-hold")])
def test_a_taper_attachment_is_doubted_past_its_usual_limit(
    call: Call, per_foot: float, reach: str
) -> None:
    """Up to 3 in per foot nothing is said of its reach; past that it is doubted."""
    request = {"units": "in", "taper_per_foot": per_foot, "work_length": 9, **WAYS}
    ways = {w["way"]: w for w in call("tapers.set-over", **request)["result"]["ways"]}
    assert ways["taper-attachment"]["forecast"] == reach
    assert ways["tailstock-set-over"]["forecast"] == reach
    assert ways["swivel"]["forecast"] == "not-stated"


@pytest.mark.parametrize(
    ("limit", "way", "just", "short"),
    [
        ("largest_angle", "swivel", 30, 29.99),
        ("largest_set_over", "tailstock-set-over", 4.5, 4.4999),
        ("largest_attachment_offset", "taper-attachment", 6.928204, 6.928203),
    ],
)
def test_the_reach_of_the_machine_is_judged_as_stated(
    call: Call, limit: str, way: str, just: float, short: float
) -> None:
    """A setting within the limit stated holds; one past it does not, comes last and is said so."""
    reached = call("tapers.set-over", **{limit: just}, **CENTER)
    forecasts = {w["way"]: w["forecast"] for w in reached["result"]["ways"]}
    assert forecasts[way] == "holds"
    beyond = call("tapers.set-over", **{limit: short}, **CENTER)
    last = beyond["result"]["ways"][-1]
    assert (last["way"], last["forecast"]) == (way, "does-not-hold")
    assert [a["code"] for a in beyond["advisories"]].count("way-out-of-reach") == 1


def test_where_no_way_reaches_it_is_a_stop(call: Call) -> None:
    """Limits that no way keeps end in a stop, and no way is then forecast to hold."""
    limits = {"largest_angle": 20, "largest_set_over": 1, "largest_attachment_offset": 1}
    answer = call("tapers.set-over", **limits, **CENTER)
    assert {way["forecast"] for way in answer["result"]["ways"]} == {"does-not-hold"}
    stops = [a["code"] for a in answer["advisories"] if a["severity"] == "stop"]
    assert stops == ["no-way-reaches"]


@pytest.mark.outside("tapers.set-over", source="mpmath: chord and arc of a swivel past 45°")
@pytest.mark.parametrize("half_degrees", [45.01, 60, 80])
def test_steep_cones_are_swivelled(call: Call, half_degrees: float) -> None:
    """Past 45° the swivel's setting is answered, and the shop rule has no angle to be wrong by."""
    request = {"units": "in", "half_angle": half_degrees, "work_length": 9, **WAYS}
    result = call("tapers.set-over", **request)["result"]
    half = mp.radians(half_degrees)
    assert result["half_angle"]["degrees"] == half_degrees
    assert result["scale_arc"] == pytest.approx(float(6 * half), rel=1e-12)
    assert result["scale_chord"] == pytest.approx(float(12 * mp.sin(half / 2)), rel=1e-12)
    assert result["rule_error_arcsec"] is None
    assert result["ways"][0]["way"] == "swivel"
