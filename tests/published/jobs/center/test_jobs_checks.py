"""Wrong blocks, steps and checks of a center's plan against geometry and other operations."""

import math
from itertools import product
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement
from halfangle_service.registry import load_registry
from support import Call

ARCSEC = math.degrees(1) * 3600


def example(**changes: Any) -> dict[str, Any]:
    """The operation's own example, changed; a change to None leaves the field out."""
    request = {**load_registry().operations["jobs.center"].example, **changes}
    return {field: value for field, value in request.items() if value is not None}


def planned(call: Call, **changes: Any) -> dict[str, Any]:
    """The plan of the example, changed."""
    result: dict[str, Any] = call("jobs.center", **example(**changes))["result"]
    return result


def check(plan: dict[str, Any], words: str) -> dict[str, Any]:
    """The check of a plan whose name holds these words."""
    found: dict[str, Any] = next(c for c in plan["checks"] if words in c["check"])
    return found


# Wrong blocks ---------------------------------------------------------------------------------
@pytest.mark.outside("jobs.center", source="By hand: 2 (asin(h_wrong / L) − θ)")
@pytest.mark.parametrize(
    ("included_angle", "blocks", "meant", "wrung", "error"),
    [
        # asin(2.45 / 5) is 29.340553°: 60° becomes 58.68112°.
        (60, {}, 0.5, 0.45, -4747.8),
        # 4 in of 5 in: 106.260205°; 3 in of 5 in: 73.739795°.
        (106.26020470831196, {"set": None, "sizes": [4, 3, 2, 1]}, 4.0, 3.0, -117_073.5),
    ],
)
def test_the_smallest_mistake_is_by_the_sine_itself(
    call: Call,
    included_angle: float,
    blocks: dict[str, Any],
    meant: float,
    wrung: float,
    error: float,
) -> None:
    """What a wrong block does is worked out by the plate's sine, however large it is."""
    plan = planned(call, included_angle=included_angle, **blocks)
    mistake = plan["smallest_mistake"]
    assert (mistake["meant"], mistake["wrung"]) == (meant, wrung)
    wrong = plan["plate_setting"]["total"] - meant + wrung
    by_sine = (2 * math.degrees(math.asin(wrong / 5)) - included_angle) * 3600
    assert mistake["included_angle_error_arcsec"] == pytest.approx(by_sine, abs=1e-6)
    assert by_sine == pytest.approx(error, abs=0.05)


@pytest.mark.parametrize("included_angle", [60, "59°47'", 20.001, 106])
def test_a_mistake_is_what_the_check_of_the_wrong_stack_finds(
    call: Call, included_angle: float | str
) -> None:
    """The stack with the wrong block, read by `blocks.check`, is off by half of what is said."""
    box = [
        {"size": size, "deviation": deviation}
        for size, deviation in (
            (4.0, 6e-6),
            (2.0, 4e-6),
            (1.0, -3e-6),
            (0.5, 2e-6),
            (0.45, -2e-6),
            *((round(0.1001 + 0.0001 * i, 4), 1e-6) for i in range(9)),
            *((round(0.101 + 0.001 * i, 3), -1e-6) for i in range(49)),
            *((round(0.05 + 0.05 * i, 2), 3e-6) for i in range(8)),
        )
    ]
    plan = planned(call, included_angle=included_angle, set=None, box=box)
    for name in ("smallest_mistake", "smallest_mistake_past_tolerance"):
        mistake = plan[name]
        stack = list(plan["plate_setting"]["blocks"])
        stack[stack.index(mistake["meant"])] = mistake["wrung"]
        read = call(
            "blocks.check",
            units="in",
            box=box,
            blocks=stack,
            angle=plan["plate_setting"]["plate_angle"]["degrees"],
            center_distance=5,
        )["result"]
        expected = 2 * read["angle_error_arcsec"]
        assert mistake["included_angle_error_arcsec"] == pytest.approx(expected, abs=1e-4), name


@pytest.mark.outside("jobs.center", source="Brute force over every block of the set")
@pytest.mark.parametrize("tolerance", [15, 120, 600])
def test_the_mistake_that_matters_leaves_the_tolerance(call: Call, tolerance: float) -> None:
    """Of all wrong blocks past the tolerance none changes the height less than the one given."""
    plan = planned(call, included_angle="59°47'", included_angle_tolerance_arcsec=tolerance)
    stack = plan["plate_setting"]["blocks"]
    sizes = {round(0.1001 + 0.0001 * i, 4) for i in range(9)}
    sizes |= {round(0.101 + 0.001 * i, 3) for i in range(49)}
    sizes |= {round(0.05 + 0.05 * i, 2) for i in range(19)} | {1.0, 2.0, 3.0, 4.0}
    assert len(sizes) == 81

    def error(change: float) -> float:
        height = (sum(stack) + change) / 5
        if height >= 1:
            return math.inf
        return (2 * math.degrees(math.asin(height)) - (59 + 47 / 60)) * 3600

    changes = [wrung - meant for meant, wrung in product(stack, sizes - set(stack))]
    least = min((c for c in changes if abs(error(c)) > tolerance), key=abs)
    mistake = plan["smallest_mistake_past_tolerance"]
    change = mistake["wrung"] - mistake["meant"]
    assert abs(change) == pytest.approx(abs(least))
    assert mistake["included_angle_error_arcsec"] == pytest.approx(error(change), abs=1e-6)
    assert abs(mistake["included_angle_error_arcsec"]) > tolerance
    assert abs(plan["smallest_mistake"]["included_angle_error_arcsec"]) < tolerance


def test_a_mistake_that_does_not_matter_is_not_held_against_a_check(call: Call) -> None:
    """Off by one step of 0.0001 in, 9.5″, nothing leaves ±120″: the checks are judged by what does.

    By ±5″ it does leave it, and a micrometer does not see it.
    """
    plan = planned(call, included_angle="59°47'")
    mistake = plan["smallest_mistake"]
    assert abs(mistake["wrung"] - mistake["meant"]) == pytest.approx(0.0001)
    assert check(plan, "wrung stack")["catches_wrong_block"] is True
    tight = planned(call, included_angle="59°47'", included_angle_tolerance_arcsec=5)
    first = check(tight, "wrung stack")
    assert first["catches_wrong_block"] is False
    assert "is 0.0001 in, within the 0.0002 in" in first["reason"]


def test_where_no_wrong_block_matters_there_is_nothing_to_catch(call: Call) -> None:
    """A box of one block holds no other; blocks alike to a tenth cannot take ±120″ away."""
    alone = planned(call, set=None, sizes=[2.5])
    assert alone["smallest_mistake"] is None
    alike = planned(call, set=None, sizes=[2.5, 2.5001])
    assert alike["smallest_mistake"]["wrung"] == 2.5001
    for plan in (alone, alike):
        assert plan["smallest_mistake_past_tolerance"] is None
        assert {c["catches_wrong_block"] for c in plan["checks"]} == {None}
    assert "No other block" in check(alone, "wrung stack")["reason"]
    assert "No single wrong block" in check(alike, "wrung stack")["reason"]


def test_a_wrong_block_that_no_plate_stands_on_has_no_angle(call: Call) -> None:
    """A block that lifts the plate by its center distance shows itself when the plate is set."""
    plan = planned(call, included_angle=120, set=None, sizes=[4.3301, 6])
    assert plan["smallest_mistake"]["included_angle_error_arcsec"] is None
    optical = check(plan, "optically")
    assert optical["catches_wrong_block"] is True
    assert "the setting shows it" in optical["reason"]


# Steps ----------------------------------------------------------------------------------------
def place_of(plan: dict[str, Any], words: str) -> int:
    """Number of the first step whose action holds these words."""
    return int(next(s["number"] for s in plan["steps"] if words in s["action"]))


@pytest.mark.parametrize(
    "shank", [{"kind": "taper", "designation": "morse-2"}, {"kind": "straight", "diameter": 0.5}]
)
def test_steps_come_in_a_toolmakers_order(call: Call, shank: dict[str, Any]) -> None:
    """Grit first and blocks after; the holding is proved on a test bar; checks before the end."""
    plan = planned(call, shank=shank)
    order = [
        "ring-test",
        "Dress the wheel",
        "Clean the table",
        "mount the spin fixture",
        "Seat a test bar",
        "Wring the stack",
        "Set the plate",
        "Put the work in place of the test bar",
        "through its whole stroke",
        "Touch off",
        "make the checks below",
        "spark out",
        "Check angle and runout once more",
    ]
    places = [place_of(plan, words) for words in order]
    assert places == sorted(places)
    assert len(set(places)) == len(order)
    assert [step["number"] for step in plan["steps"]] == list(range(1, len(order) + 2))


def test_the_unground_cone_is_indicated_nowhere(call: Call) -> None:
    """Before the wheel touches the work, what is indicated is a test bar or the shank."""
    plan = planned(call)
    first_cut = place_of(plan, "Touch off")
    before = [step["action"] for step in plan["steps"] if step["number"] < first_cut]
    indicated = [action for action in before if "ndicate" in action]
    assert len(indicated) == 3
    assert not [action for action in indicated if "test bar" not in action]
    assert "0.00030 in TIR" in indicated[1]


def test_angles_are_said_to_the_second_that_matters(call: Call) -> None:
    """A step and a check say no more of a second than the tolerance can tell."""
    for tolerance, plate, cone in (
        (120, "30°00'00\"", "60°00'00\""),
        (20, "30°00'00.0\"", "60°00'00.0\""),
        (4, "30°00'00.00\"", "60°00'00.00\""),
    ):
        plan = planned(call, included_angle_tolerance_arcsec=tolerance)
        action = plan["steps"][place_of(plan, "Set the plate") - 1]["action"]
        assert f"to {plate}: 2 + 0.5 in under the high roll" in action
        assert check(plan, "optically")["expected"] == cone


# Checks ---------------------------------------------------------------------------------------
@pytest.mark.outside("jobs.center", source="Two rolls against a cone, distances by coordinates")
@pytest.mark.parametrize(
    ("changes", "roll", "rise"),
    [
        ({}, 0.125, 0.55),
        ({"included_angle": 20, "large_diameter": 2}, 1, 4.65),
        ({"units": "mm", "large_diameter": 20, "center_distance": 127, "set": "metric-112"}, 3, 14),
    ],
)
def test_readings_over_rolls_match_coordinates(
    call: Call, changes: dict[str, Any], roll: float, rise: float
) -> None:
    """Circles laid against a line of the cone touch it below its point, and differ as expected."""
    mm = {"grade": None, "limit_tir": 0.008, "angle_errors": None, "runout_errors": None}
    request = changes | (mm | {"grinding_allowance": 0.1} if "units" in changes else {})
    plan = planned(call, **request)
    units = request.get("units", "in")
    over_rolls = check(plan, "rolls")
    assert f"two rolls of {roll} {units}" in over_rolls["how"]
    length = f"{rise:.{4 if units == 'in' else 3}f} {units}"
    assert f"two equal stacks of {length}" in over_rolls["how"]
    half = math.radians(request.get("included_angle", 60) / 2)
    point = np.array([0.0, request.get("large_diameter", 0.75) / 2 / math.tan(half)])
    along = np.array([math.sin(half), -math.cos(half)])
    outward = np.array([math.cos(half), math.sin(half)])

    def reading(height: float) -> float:
        """Twice the reach of a circle that touches the cone, its center `height` above the base."""
        # Down the side from the point until the center, a radius off the side, is at the height.
        way = (height - point[1] - roll / 2 * outward[1]) / along[1]
        touch = point + way * along
        assert 0 <= touch[1] <= 0.9 * point[1] + 1e-9
        return 2 * float((touch + roll / 2 * outward)[0] + roll / 2)

    difference = reading(roll / 2) - reading(roll / 2 + rise)
    assert f"{difference:.{4 if units == 'in' else 3}f} {units}" in over_rolls["expected"]


@pytest.mark.outside("jobs.center", source="Numeric derivative of the readings over rolls")
def test_a_check_proves_the_tolerance_by_what_it_leaves_of_it(call: Call) -> None:
    """Over rolls two tenths are 56.3″ of 60°, so that ±63.7″ prove ±120″, and nothing ±50″."""

    def angle_of(difference: float) -> float:
        return 2 * math.degrees(math.atan(difference / (2 * 0.55))) * 3600

    expected = 2 * 0.55 * math.tan(math.radians(30))
    told_apart = angle_of(expected + 0.0001) - angle_of(expected - 0.0001)
    loose = planned(call)
    over_rolls, optical = check(loose, "rolls"), check(loose, "optically")
    assert over_rolls["proves_tolerance"] is True
    assert over_rolls["acceptance_arcsec"] == pytest.approx(120 - told_apart, rel=1e-6)
    # As the micrometer reads it: by how much the difference may be off for so much of the angle.
    off = 2 * 0.55 * math.tan(math.radians(30 + (120 - told_apart) / 2 / 3600)) - expected
    assert f"within ±{off:.5f} in, which is ±63.7″, proves" in over_rolls["proof"]
    assert optical["acceptance_arcsec"] == pytest.approx(60)
    tight = call("jobs.center", **example(included_angle_tolerance_arcsec=50))
    for words in ("rolls", "optically"):
        found = check(tight["result"], words)
        assert (found["proves_tolerance"], found["acceptance_arcsec"]) == (False, None)
    assert "tolerance-unproved" in [a["code"] for a in tight["advisories"]]
    for words in ("wrung stack", "second stack", "same setting"):
        assert check(loose, words)["proves_tolerance"] is False


@pytest.mark.outside("jobs.center", source="The cone's axis turned half round about the socket's")
def test_the_last_check_can_see_the_adapter(call: Call) -> None:
    """A cone ground about the spindle, turned half round in an eccentric socket, reads doubled."""
    rng = np.random.default_rng(5)
    for socket in rng.normal(size=20) + 1j * rng.normal(size=20):
        # In the frame of the spindle: the cone is ground about 0, the shank's axis is the socket's.
        runs_out_to_its_shank = 2 * abs(0 - socket)
        cone_after = socket + (0 - socket) * np.exp(1j * math.pi)
        assert 2 * abs(cone_after) == pytest.approx(2 * runs_out_to_its_shank)
    plan = planned(call)
    last = plan["checks"][-1]
    assert "turn it half round, seat it again" in last["check"]
    # 0.0003 in at right angles to the axis reads its cosine of 30° on the cone, by hand.
    limit = 0.0003 * math.sqrt(3) / 2
    assert f"{2 * limit:.5f} in TIR" in last["expected"]
    assert last["proves_tolerance"] is True
    assert last["acceptance_tir"] == pytest.approx(2 * limit - 0.0001)
    fine = planned(call, limit_tir=0.00005)["checks"][-1]
    assert (fine["proves_tolerance"], fine["acceptance_tir"]) == (False, None)


def test_rolls_are_asked_for_only_where_they_find_a_place(call: Call) -> None:
    """A narrow shoulder is in the way; a wide one carries the rolls; a short cone has no room."""
    for diameter, words in ((0.5, "bored block"), (1.5, "shoulder is ground square")):
        shank = {"kind": "straight", "diameter": diameter}
        assert words in check(planned(call, shank=shank), "rolls")["how"]
    for change in (
        {"shank": {"kind": "straight", "diameter": 0.78}},
        {"large_diameter": 0.05},
    ):
        answer = call("jobs.center", **example(**change))
        assert not [c for c in answer["result"]["checks"] if "rolls" in c["check"]]
        assert "no-room-for-rolls" in [a["code"] for a in answer["advisories"]]


# Judgements and bounds ------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("changes", "forecast", "stops"),
    [
        ({}, "holds", []),
        ({"limit_tir": 0.00015}, "may-not-hold", []),
        ({"limit_tir": 0.00002}, "does-not-hold", ["runout-not-held"]),
        ({"included_angle_tolerance_arcsec": 40}, "may-not-hold", []),
        ({"included_angle_tolerance_arcsec": 1}, "does-not-hold", ["angle-not-held"]),
        ({"angle_errors": None}, "may-not-hold", []),
        ({"angle_errors": None, "grade": None, "runout_errors": None}, "not-stated", []),
    ],
)
def test_a_plan_that_does_not_hold_is_stopped(
    call: Call, changes: dict[str, Any], forecast: str, stops: list[str]
) -> None:
    """What does not hold is a stop, what may not hold a caution, and the plan's forecast both."""
    answer = call("jobs.center", **example(**changes))
    assert answer["result"]["forecast"] == forecast
    assert [a["code"] for a in answer["advisories"] if a["severity"] == "stop"] == stops


def test_the_edition_of_the_rule_decides_between_them(call: Call) -> None:
    """A tolerance between the error's 1.645 u and 2 u holds by 2017's rule, not by 2013's guard.

    Many errors alike are all but normal: 2017 asks for 95 % within, 1.96 u where the mean is zero.
    """
    alike = {
        "center_distance_error_limit": 0.0001,
        "axis_pitch_error_limit_arcsec": 2.4,
        "wheel_face_error_limit_arcsec": 2.4,
        "table_flatness": 0.00005,
        "particle": 0.00005,
        "face_flatness": 0.00005,
        "face_parallelism": 0.00005,
        "roll_difference": 0.0001,
        "roll_parallelism": 0.0001,
        "temperature_error_limit_celsius": 0,
        "temperature_difference_celsius": 0,
        "axis_yaw_error_limit_arcsec": 0,
        "temperature_celsius": 20,
    }
    plan = planned(call, angle_errors=alike)
    error = plan["angle_budget"]["included_angle_error_arcsec"]
    tolerance = 1.98 * error["standard_uncertainty"]
    found = {
        rule: planned(
            call,
            angle_errors=alike,
            included_angle_tolerance_arcsec=tolerance,
            decision_rule=rule,
        )["angle_budget"]["forecast"]
        for rule in ("iso-14253-1-2017", "iso-14253-1-2013")
    }
    assert found == {"iso-14253-1-2017": "holds", "iso-14253-1-2013": "may-not-hold"}


@pytest.mark.parametrize(
    ("changes", "right"), [({"center_distance": 127}, "5 in"), ({"center_distance": 0.5}, "")]
)
def test_a_slip_of_the_unit_is_refused(call: Call, changes: dict[str, Any], right: str) -> None:
    """A plate of 127 in, and one of half an inch, is none."""
    with pytest.raises(Disagreement, match=f"No sine bar or plate .* {right}") as refusal:
        call("jobs.center", **example(**changes))
    assert refusal.value.fields == {"center_distance": "should be from 1 to 48 in"}


def test_an_absurd_feed_is_called_out(call: Call) -> None:
    """A third of an inch to grind in 3700 passes, and a pass of 0.01 in, do not pass in silence."""
    codes = {
        code
        for change in ({"grinding_allowance": 0.37}, {"downfeed_step": 0.01})
        for code in (a["code"] for a in call("jobs.center", **example(**change))["advisories"])
    }
    assert {"much-stock", "heavy-pass"} <= codes
    usual = [a["code"] for a in call("jobs.center", **example())["advisories"]]
    assert not {"much-stock", "heavy-pass"} & set(usual)
