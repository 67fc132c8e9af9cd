"""When to stop by a plan so that the size comes inside, against parts made by dice."""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement
from plan_support import Json, whole_request
from support import Call

STATED: Json = {
    "diameter_error_limit": 0.0001,
    "axial_position_error_limit": 0.001,
    "dial_step": 0.0001,
    "work_temperature_difference_celsius": 3,
}
STEEL = 11.5e-6
PLUG: Json = {"kind": "taper-plug", "designation": "morse-3"}
SOCKET: Json = {"kind": "taper-socket", "designation": "morse-3"}


def sized(call: Call, tolerance: float, feature: Json | None = None, **feeding: Any) -> Json:
    """The sine plate's way, its size held to so much."""
    request = whole_request(
        feature__large_diameter_tolerance=tolerance, pieces=5, minutes_per_piece=10
    )
    if feature is not None:
        request["feature"] = {
            **feature,
            "included_angle_tolerance_arcsec": 600,
            "large_diameter_tolerance": tolerance,
        }
        request["equipment"].pop("spin_fixture")
        request["equipment"]["internal_spindle"] = {"wheel_diameter": 0.5, "reach": 4}
    request["feeding"] |= {**STATED, **feeding}
    ways = call("jobs.plan", **request)["result"]["ways"]
    names = ("sine-plate", "stacks-under-both-rolls")
    found: Json = next(way for way in ways if way["way"] in names)
    return found


def budget_by_hand(per_reading: float, per_dial: float, limit: float, diameter: float) -> float:
    """Standard uncertainty of a diameter, each part rectangular."""
    parts = (limit * per_reading, 0.0001 / 2 * per_dial, 3 * STEEL * diameter)
    return math.sqrt(sum(part**2 for part in parts) / 3)


@pytest.mark.outside("jobs.plan", source="Derived by hand: 2 h / cos α, rectangles, expansion")
def test_a_blunt_cone_is_stopped_by_its_diameter(call: Call) -> None:
    """A micrometer's limit, half a step twice over cos 30°, and 3 K of steel on 0.75 in."""
    size = sized(call, 0.0005)["size_plan"]
    assert (size["read_off"], size["nominal_size"], size["size_tolerance"]) == (
        "diameter",
        0.75,
        0.0005,
    )
    per_dial = 2 / math.cos(math.radians(30))
    error = size["size_error"]
    assert error["value"] == 0
    expected = budget_by_hand(1.0, per_dial, 0.0001, 0.75)
    assert error["standard_uncertainty"] == pytest.approx(expected)
    by_hand = {"feeding/diameter_error_limit": 0.0001, "feeding/dial_step": 0.00005 * per_dial}
    by_hand["feeding/work_temperature_difference_celsius"] = 3 * STEEL * 0.75
    assert error["worst_case"] == pytest.approx(math.fsum(by_hand.values()))
    for part in error["contributions"]:
        at_limit = part["input_value"] * part["sensitivity"]
        assert at_limit == part["worst_case"] == pytest.approx(by_hand[part["name"]])
    # Three rectangles are sampled, of which 95 % lie within the expanded uncertainty.
    dice = np.random.default_rng(2).uniform(-1, 1, (3, 200_000))
    sampled = np.array(list(by_hand.values())) @ dice
    inside = np.mean(np.abs(sampled) <= error["expanded_uncertainty"])
    assert inside == pytest.approx(error["coverage_probability"], abs=0.002)
    assert error["coverage_probability"] == 0.95
    ratio = error["expanded_uncertainty"] / error["standard_uncertainty"]
    assert error["coverage_factor"] == pytest.approx(ratio)
    assert {part["name"] for part in error["contributions"]} == {
        "feeding/diameter_error_limit",
        "feeding/dial_step",
        "feeding/work_temperature_difference_celsius",
    }
    assert error["not_stated"] == []
    assert size["forecast"] == "holds"
    assert size["pieces_between"] == 0
    assert size["aimed_stop"] == pytest.approx(0.75)
    assert size["largest_stop"] - 0.75 == pytest.approx(0.75 - size["smallest_stop"])
    assert 0.0004 < size["largest_stop"] - 0.75 < 0.0005


@pytest.mark.outside("jobs.plan", source="Monte Carlo: parts stopped by readings drawn, seeded")
@pytest.mark.parametrize("end", ["smallest_stop", "largest_stop"])
@pytest.mark.parametrize("feature", [PLUG, SOCKET])
def test_of_parts_stopped_at_either_end_of_the_zone_95_of_100_are_inside(
    call: Call, end: str, feature: Json
) -> None:
    """A slow taper is stopped by its gauge's stand-off: true sizes by geometry, errors drawn."""
    way = sized(call, 0.00015, feature)
    size, half = way["size_plan"], math.atan(0.05020 / 2)
    assert size["read_off"] == "axial-position"
    dice = np.random.default_rng(3)
    count = 200_000
    stand_off = size[end] - dice.uniform(-0.001, 0.001, count)
    # So far short of its place the gauge line of a plug is that much larger, a socket's smaller.
    off = 2 * math.tan(half) * stand_off * (1 if feature is PLUG else -1)
    off -= 0.938 * STEEL * dice.uniform(-3, 3, count)
    assert np.mean(np.abs(off) <= 0.00015) == pytest.approx(0.95, abs=0.003)
    # At its middle, the slide stopping within a step, the forecast's share is kept.
    middle = size["aimed_stop"] - dice.uniform(-0.001, 0.001, count)
    spread = 2 * math.tan(half) * middle - 0.938 * STEEL * dice.uniform(-3, 3, count)
    spread += dice.uniform(-0.5, 0.5, count) * 0.0001 * 2 / math.cos(half)
    kept = np.mean(np.abs(spread) <= 0.00015)
    assert size["forecast"] == ("holds" if kept >= 0.95 else "may-not-hold")
    assert float(np.std(spread)) == pytest.approx(
        size["size_error"]["standard_uncertainty"], rel=0.01
    )


@pytest.mark.outside("jobs.plan", source="Derived by hand: a wheel that wears, stopped by its dial")
def test_a_batch_stopped_by_the_dial_is_set_so_much_deeper(call: Call) -> None:
    """Five pieces on one setting lose four times the wear: the dial goes half of it further."""
    own: dict[str, Any] = {
        "dial_error_limit": 0.00002,
        "size_wear_per_piece": 0.00001,
        "diameter_error_limit": 0.001,
        "axial_position_error_limit": 0.01,
    }
    size = sized(call, 0.0006, **own)["size_plan"]
    assert (size["read_off"], size["pieces_between"]) == ("feed-dial", 4)
    # The dial of a plate feeds the layer itself: 0.004 in, and half of four pieces' wear.
    assert size["aimed_stop"] == pytest.approx(0.004 + 4 * 0.00001 / 2)
    per_layer = 2 / math.cos(math.radians(30))
    parts = (0.00002 * per_layer, 0.00005 * per_layer, 0.00002 * per_layer, 3 * STEEL * 0.75)
    expected = math.sqrt(sum(part**2 for part in parts) / 3)
    assert size["size_error"]["standard_uncertainty"] == pytest.approx(expected)
    unstated = sized(call, 0.0006, **{**own, "size_wear_per_piece": None})["size_plan"]
    assert unstated["size_error"]["not_stated"] == ["feeding/size_wear_per_piece"]
    assert (unstated["aimed_stop"], unstated["smallest_stop"]) == (None, None)
    assert unstated["forecast"] == "may-not-hold"


def test_what_was_not_stated_is_named_and_nothing_judged_by_it(call: Call) -> None:
    """No tolerance: null, and named in the feed. No limits: named, and no way is said to hold."""
    way = sized(call, 0.0005)
    assert way["forecast"] == "holds"
    bare = whole_request()
    first = call("jobs.plan", **bare)["result"]["ways"][0]
    assert first["size_plan"] is None
    assert "feature/large_diameter_tolerance" in first["feed_plan"]["not_stated"]
    lacking = whole_request(feature__large_diameter_tolerance=0.0005)
    answer = call("jobs.plan", **lacking)
    first = answer["result"]["ways"][0]
    assert first["size_plan"]["forecast"] == "not-stated"
    assert first["size_plan"]["size_error"]["not_stated"] == [
        "feeding/diameter_error_limit",
        "feeding/dial_step",
        "feeding/work_temperature_difference_celsius",
    ]
    assert first["forecast"] in {"may-not-hold", "not-stated"}
    words = " ".join(advisory["message"] for advisory in answer["advisories"])
    assert "the size may pass its tolerance (not stated: feeding/diameter_error_limit" in words


def test_a_size_finer_than_what_reads_it_does_not_hold(call: Call) -> None:
    """Read to 0.0001 in, a diameter to 0.00001 in cannot be stopped at: no zone, and said so."""
    way = sized(call, 0.00001)
    size = way["size_plan"]
    assert size["smallest_stop"] is size["largest_stop"] is size["aimed_stop"] is None
    assert size["forecast"] == way["forecast"] == "may-not-hold"


def test_a_size_that_nothing_keeps_stops_the_job(call: Call) -> None:
    """To a hundredth of what it is read to no way keeps it: a stop, and no way is best."""
    request = whole_request(feature__large_diameter_tolerance=0.000001)
    request["feeding"] |= STATED
    answer = call("jobs.plan", **request)
    assert answer["result"]["best"] is None
    assert answer["result"]["ways"][0]["size_plan"]["forecast"] == "does-not-hold"
    (stop,) = (a for a in answer["advisories"] if a["severity"] == "stop")
    assert "is read and fed too coarsely to keep the size" in stop["message"]


def test_the_steps_say_when_to_stop(call: Call) -> None:
    """The hand reads in its steps between which readings to stop."""
    request = whole_request(feature__large_diameter_tolerance=0.0005)
    request["feeding"] |= STATED
    result = call("jobs.plan", **request)["result"]
    (step,) = (each for each in result["steps"] if each["action"].startswith("Stop where"))
    assert "the diameter at the gauge line reads from 0.749" in step["action"]


def test_a_face_is_held_by_its_distance(call: Call) -> None:
    """A face's distance and its tolerance stand together; it is stopped by that distance."""
    face = {"kind": "angled-face", "face_angle": 15, "rise": 0.2, "tolerance_arcsec": 600}
    feeding = {"height_error_limit": 0.0001, "dial_step": 0.0001}
    request = whole_request(feature={**face, "face_distance": 1.25})
    request["feeding"] |= {**feeding, "work_temperature_difference_celsius": 0}
    with pytest.raises(Disagreement, match="held within its tolerance") as refused:
        call("jobs.plan", **request)
    assert set(refused.value.fields) == {"feature/face_distance_tolerance"}
    request["feature"]["face_distance_tolerance"] = 0.0005
    way = call("jobs.plan", **request)["result"]["ways"][0]
    size = way["size_plan"]
    assert (size["read_off"], size["aimed_stop"]) == ("height", 1.25)
    expected = math.sqrt((0.0001**2 + 0.00005**2) / 3)
    assert size["size_error"]["standard_uncertainty"] == pytest.approx(expected)
    height = next(r for r in way["feed_plan"]["stop_readings"] if r["read_off"] == "height")
    assert height["at_size"] == 1.25
