"""Feed, batch, time and clearance of a plan's ways, against hand, dice and single operations."""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement, Impossible
from plan_support import Json, clearance_example, whole_request
from support import Call


def first_way(call: Call, **changes: Any) -> Json:
    """The sine plate's way of that request."""
    ways = call("jobs.plan", **whole_request(**changes))["result"]["ways"]
    found: Json = next(way for way in ways if way["way"] == "sine-plate")
    return found


@pytest.mark.outside("jobs.plan", source="Derived by hand: chords, cosines and passes")
def test_feed_of_the_center_is_that_of_a_hand_calculation(call: Call) -> None:
    """0.004 in: seven rough passes of 0.0005, five of 0.0001, two without feed."""
    feed = first_way(call)["feed_plan"]
    rough, finish = feed["rough"], feed["finish"]
    assert rough["stock"] == pytest.approx(0.0035)
    assert finish["stock"] == pytest.approx(0.0005)
    assert (rough["cutting_passes"], finish["cutting_passes"]) == (7, 5)
    assert (rough["downfeed_per_pass"], finish["downfeed_per_pass"]) == (0.0005, 0.0001)
    assert rough["last_pass"] == pytest.approx(0.0005)
    assert rough["dial_per_pass"] == pytest.approx(0.0005)
    assert finish["last_pass"] == pytest.approx(0.0001)
    assert finish["dial_per_pass"] == pytest.approx(0.0001)
    assert (feed["spark_out_passes"], feed["total_passes"]) == (2, 14)
    # The slant 0.375 / sin 30°, and both overruns.
    assert feed["travel"] == pytest.approx(0.75 + 0.35)
    # The chord of a circle of 3.5 in that is 0.0001 and 0.00001 in deep.
    assert rough["advance"] == pytest.approx(2 * math.sqrt(0.0001 * 6.9999))
    assert finish["advance"] == pytest.approx(2 * math.sqrt(0.00001 * 6.99999))
    assert feed["work_rpm"] == 40
    assert rough["minutes"] == pytest.approx(7 * (1.1 / rough["advance"] + 1) / 40)
    assert finish["minutes"] == pytest.approx(5 * (1.1 / finish["advance"] + 1) / 40)


@pytest.mark.outside("jobs.plan", source="Derived by hand: 2 h / cos α and h / sin α")
def test_it_is_stopped_by_the_diameter_of_a_blunt_cone(call: Call) -> None:
    """With 0.0005 in left a 60° center is 0.00115 in large; a micrometer tells 0.00009 in of it."""
    feed = first_way(call)["feed_plan"]
    assert feed["stop_by"] == "diameter"
    by_name = {reading["read_off"]: reading for reading in feed["stop_readings"]}
    diameter, axial, dial = (by_name[n] for n in ("diameter", "axial-position", "feed-dial"))
    assert diameter["per_downfeed"] == pytest.approx(2 / math.cos(math.radians(30)))
    assert diameter["at_finish"] == pytest.approx(0.75 + 0.0005 * 2 / math.cos(math.radians(30)))
    assert diameter["at_size"] == 0.75
    assert diameter["reading_error_limit"] == 0.0002
    assert diameter["layer_error_limit"] == pytest.approx(0.0001 * math.cos(math.radians(30)))
    assert axial["at_finish"] == pytest.approx(0.001)
    assert axial["at_size"] == 0
    assert (dial["at_finish"], dial["at_size"]) == pytest.approx((0.0035, 0.004))
    assert dial["layer_error_limit"] is None
    assert "feeding/dial_error_limit" in feed["not_stated"]


def test_what_was_taken_as_usual_is_named_and_what_was_stated_is_not(call: Call) -> None:
    """Every usual value stands among the assumptions with its unit until it is stated."""
    taken = {each["name"]: each for each in first_way(call)["feed_plan"]["assumptions"]}
    turns = taken["feeding/work_rpm"]
    assert (turns["assumed_value"], turns["input_unit"]) == (40, "per_minute")
    rough = taken["feeding/rough_downfeed_per_pass"]
    assert (rough["assumed_value"], rough["input_unit"]) == (0.0005, "length")
    assert "feeding/past_large_end" not in taken
    own = first_way(call, feeding__work_rpm=60, feeding__rough_downfeed_per_pass=0.0007)
    left = {each["name"] for each in own["feed_plan"]["assumptions"]}
    assert set(taken) - left == {"feeding/work_rpm", "feeding/rough_downfeed_per_pass"}
    assert own["feed_plan"]["work_rpm"] == 60


def test_without_an_allowance_no_pass_and_no_time_is_told(call: Call) -> None:
    """What follows from the allowance is null and the allowance named; 10 minutes stand for it."""
    way = first_way(call, feeding__grinding_allowance=None)
    feed = way["feed_plan"]
    assert (feed["rough"], feed["finish"], feed["total_passes"]) == (None, None, None)
    assert "feeding/grinding_allowance" in feed["not_stated"]
    assert way["time"]["by_feed"] is False
    assert (way["time"]["minutes_per_piece"], way["time"]["loading_minutes"]) == (10, 0)


@pytest.mark.outside("jobs.plan", source="Derived by hand: sum of the parts")
def test_time_is_the_sum_of_its_parts(call: Call) -> None:
    """Set-up, loading and grinding of each piece, inspections and dresses sum up to the total."""
    way = first_way(call)
    time, feed, batch = way["time"], way["feed_plan"], way["batch"]
    assert time["by_feed"] is True
    spark_out = 2 * (1.1 / feed["finish"]["advance"] + 1) / 40
    grinding = feed["rough"]["minutes"] + feed["finish"]["minutes"] + spark_out
    assert time["minutes_per_piece"] == pytest.approx(grinding)
    # The plate's own 30, two blocks wrung, their stack measured and placed.
    assert (time["setup_minutes"], time["inspection_minutes"]) == (30 + 2 * 1 + 2, 5)
    assert (time["loading_minutes"], time["dressing_minutes"]) == (1, 3)
    assert time["pieces_inspected"] == batch["pieces_inspected"]
    assert time["dressings"] == batch["dressings"]
    total = 34 + 40 * (1 + grinding) + 5 * batch["pieces_inspected"] + 3 * batch["dressings"]
    assert way["total_minutes"] == pytest.approx(total)
    assert way["first_piece_minutes"] == pytest.approx(34 + 1 + grinding + 5)


def test_ways_are_timed_alike(call: Call) -> None:
    """Where one way's feed tells no time the usual one stands for all, so that none is favoured."""
    side = {"name": "cup wheel", "rated_for_side": True, "usable_width": 1}
    request = whole_request(equipment__wheel_sides=[side])
    ways = call("jobs.plan", **request)["result"]["ways"]
    assert {way["time"]["by_feed"] for way in ways} == {True}
    head = {"name": "workhead", "grinder": "cylindrical", "graduation": "0 05", "wheel_diameter": 7}
    request["equipment"]["swivelled_workheads"] = [head]
    ways = call("jobs.plan", **request)["result"]["ways"]
    assert {(w["time"]["by_feed"], w["time"]["minutes_per_piece"]) for w in ways} == {(False, 10)}


@pytest.mark.outside("jobs.plan", source="Monte Carlo of the set-up and a worn generator, seeded")
def test_last_piece_on_a_dress_keeps_the_tolerance_by_dice(call: Call) -> None:
    """Errors drawn, the generator fitted: 95 of 100 of the last pieces hold, fewer of the next."""
    breakdown, tolerance = 0.00001, 120.0
    way = first_way(call, equipment__wheel__breakdown_per_piece=breakdown)
    batch, error = way["batch"], way["angles"][0]["error_arcsec"]
    per_piece = 2 * math.degrees(math.atan(breakdown / 0.75)) * 3600
    assert batch["growth_per_piece_arcsec"] == pytest.approx(per_piece)
    most = batch["pieces_per_dress"]
    grown = 2 * math.degrees(math.atan(most * breakdown / 0.75)) * 3600
    assert batch["growth_at_last_arcsec"] == pytest.approx(grown)
    dice = np.random.default_rng(7)
    drawn = np.zeros(300_000)
    for part in error["contributions"]:
        if part["name"] == "wheel_face_error_limit_arcsec":
            continue
        unit = dice.uniform(-1, 1, drawn.size)
        at_limit = part["sensitivity"] * part["input_value"]
        drawn += at_limit * (unit**2 if part["name"].startswith("axis_yaw") else unit)
    along = np.linspace(0.0, 0.75, 9)

    def share(piece: int) -> float:
        tilt = float(np.polyfit(along, along / 0.75 * piece * breakdown, 1)[0])
        off = 2 * math.degrees(math.atan(tilt)) * 3600
        kept = [np.mean(np.abs(drawn + sign * off) <= tolerance) for sign in (1, -1)]
        return float(min(kept))

    assert share(most) >= 0.95 - 0.004
    assert share(most + 1) <= 0.95 + 0.004
    assert share(most) > share(most + 3)


def test_pieces_to_measure_are_about_each_dress(call: Call) -> None:
    """First, last before each dress, first after it, last of all; first and last where unknown."""
    batch = first_way(call, equipment__wheel__breakdown_per_piece=0.00001)["batch"]
    most = batch["pieces_per_dress"]
    assert batch["dressings"] == math.ceil(40 / most) - 1
    assert batch["pieces_to_measure"][:3] == [1, most, most + 1]
    assert batch["pieces_inspected"] == len(batch["pieces_to_measure"])
    unknown = first_way(call, equipment__wheel__breakdown_per_piece=None)["batch"]
    assert unknown["pieces_to_measure"] == [1, 40]
    assert unknown["not_stated"] == ["equipment/wheel/breakdown_per_piece"]
    assert (unknown["pieces_per_dress"], unknown["dressings"]) == (None, None)


def test_wheel_that_keeps_its_form_is_never_dressed_between(call: Call) -> None:
    """Without breakdown one dress serves all; a tolerance finer than the set-up not even one."""
    kept = first_way(call, equipment__wheel__breakdown_per_piece=0)["batch"]
    assert (kept["pieces_per_dress"], kept["dressings"]) == (40, 0)
    fine = first_way(call, feature__included_angle_tolerance_arcsec=12)["batch"]
    assert (fine["pieces_per_dress"], fine["dressings"], fine["pieces_to_measure"]) == (
        0,
        None,
        [1],
    )


def spoilt(call: Call, breakdown: float) -> tuple[Json, Json]:
    """The answer by a wheel that breaks down so far a piece, and the sine plate's way of it."""
    answer = call("jobs.plan", **whole_request(equipment__wheel__breakdown_per_piece=breakdown))
    ways = answer["result"]["ways"]
    return answer, next(way for way in ways if way["way"] == "sine-plate")


def test_a_wheel_that_spoils_the_first_piece_is_not_said_to_hold(call: Call) -> None:
    """One that grows by about the tolerance in the first piece may not hold, and it is said why."""
    answer, way = spoilt(call, 0.75 * math.tan(math.radians(120 / 3600) / 2))
    assert way["batch"]["growth_per_piece_arcsec"] == pytest.approx(120)
    assert way["batch"]["pieces_per_dress"] == 0
    assert (way["angles"][0]["forecast"], way["forecast"]) == ("holds", "may-not-hold")
    words = " ".join(advisory["message"] for advisory in answer["advisories"])
    assert "not even the first piece on a dress surely keeps its angle" in words


@pytest.mark.outside("jobs.plan", source="By hand: growth less tolerance past the uncertainty")
def test_a_wheel_that_breaks_down_far_past_the_tolerance_does_not_hold(call: Call) -> None:
    """Grown by tolerance and uncertainty in the first piece it does not hold: a stop, no best way.

    Where either end of the wheel may break down it does not hold only if it fails both ways.
    """
    _, fine = spoilt(call, 0.000002)
    uncertain = fine["angles"][0]["error_arcsec"]["expanded_uncertainty"]
    for past in (1.05 * uncertain, 10 * uncertain):
        grown = math.tan(math.radians((120 + past) / 3600) / 2)
        answer, way = spoilt(call, 0.75 * grown)
        assert (way["angles"][0]["forecast"], way["forecast"]) == ("holds", "does-not-hold")
    (stop,) = (one for one in answer["advisories"] if one["severity"] == "stop")
    assert stop["code"] == "no-way-fits"
    assert "not even the first on a dress keeps its angle" in stop["message"]
    assert answer["result"]["best"] is None


def test_observed_pieces_take_the_place_of_a_stated_breakdown(call: Call) -> None:
    """Pieces that grew by 5″ each ask for the same dress as a wheel that breaks down so."""
    tilt = math.tan(math.radians(5 / 3600) / 2)
    stated = first_way(
        call,
        equipment__wheel__breakdown_per_piece=0.75 * tilt,
        equipment__wheel__breakdown_makes="blunter",
    )["batch"]
    seen = [{"piece_since_dress": n, "measured_error_arcsec": 3 + 5 * n} for n in (1, 4, 9)]
    observed = first_way(call, equipment__wheel__breakdown_per_piece=None, observed_pieces=seen)[
        "batch"
    ]
    assert observed["growth_per_piece_arcsec"] == pytest.approx(5)
    assert observed["pieces_per_dress"] == stated["pieces_per_dress"]


def test_breakdown_stated_and_observed_is_refused(call: Call) -> None:
    """Both at once contradict; two pieces, or three of one place, tell no growth."""
    seen = [{"piece_since_dress": n, "measured_error_arcsec": 5 * n} for n in (1, 4, 9)]
    with pytest.raises(Disagreement, match="stated and observed too") as refusal:
        call("jobs.plan", **whole_request(observed_pieces=seen))
    assert set(refusal.value.fields) == {"equipment/wheel/breakdown_per_piece", "observed_pieces"}
    with pytest.raises(Disagreement, match="No growth can be told"):
        call(
            "jobs.plan",
            **whole_request(equipment__wheel__breakdown_per_piece=None, observed_pieces=seen[:2]),
        )


def test_a_flat_wheel_s_breakdown_is_not_that_of_a_quill_s(call: Call) -> None:
    """A socket's batch takes nothing of the flat wheel's; pieces observed of it tell its dress."""
    socket = {
        "kind": "taper-socket",
        "designation": "morse-3",
        "included_angle_tolerance_arcsec": 120,
    }
    shop: Json = {
        "feature": socket,
        "equipment__internal_spindle": {"wheel_diameter": 0.5, "reach": 4},
        "equipment__spin_fixture": None,
    }
    batch = first_way(call, **shop)["batch"]
    assert batch["growth_per_piece_arcsec"] is None
    assert batch["not_stated"] == []
    assert "measure the first piece and the last" in batch["reason"]
    seen = [{"piece_since_dress": n, "measured_error_arcsec": 2.0 * n} for n in (1, 4, 9)]
    observed = first_way(call, **shop, observed_pieces=seen)["batch"]
    assert observed["growth_per_piece_arcsec"] == pytest.approx(2)


def test_a_slip_of_the_unit_is_refused_by_its_field(call: Call) -> None:
    """Ten degrees off is no worn wheel's, and a wheel of 180 in is none of this machine's."""
    seen = [{"piece_since_dress": n, "measured_error_arcsec": 36_001 * n} for n in (0, 1, 2)]
    seen[0]["piece_since_dress"] = 3
    request = whole_request(equipment__wheel__breakdown_per_piece=None, observed_pieces=seen)
    with pytest.raises(Impossible, match="no worn wheel") as refusal:
        call("jobs.plan", **request)
    assert set(refusal.value.fields) == {"observed_pieces/1/measured_error_arcsec"}
    with pytest.raises(Disagreement, match="180") as slip:
        call("jobs.plan", **whole_request(equipment__wheel__diameter=180))
    assert set(slip.value.fields) == {"equipment/wheel/diameter"}


@pytest.mark.outside("jobs.plan", source="clearance.tilted-plate, itself against GEOS and a scan")
def test_clearance_is_that_of_the_single_operation(call: Call) -> None:
    """Gaps and room of a plan are those of `clearance.tilted-plate` on the same cone."""
    cone = {"included_angle": 60, "large_diameter": 0.75, "small_diameter": 0.1}
    feature = {"kind": "cone", **cone, "included_angle_tolerance_arcsec": 120}
    alone = call("clearance.tilted-plate", **{**clearance_example(), **cone})["result"]
    found = first_way(call, feature=feature)["clearance"]
    assert found["forecast"] == alone["forecast"] == "holds"
    gap, expected = found["smallest_gap"], alone["smallest_gap"]
    assert gap["gap"] == pytest.approx(expected["gap"], rel=1e-12)
    for point in ("on_part", "on_body"):
        for axis in ("x", "z"):
            assert gap[point][axis] == pytest.approx(expected[point][axis], rel=1e-12)
    assert found["room_left"] == pytest.approx(alone["room_left"])
    near = call("clearance.tilted-plate", **{**clearance_example(), **cone, "gap_wanted": 0.23})
    found = first_way(call, feature=feature, room__gap_wanted=0.23)["clearance"]
    assert found["forecast"] == "may-not-hold"
    assert found["stick_out_needed"] == pytest.approx(near["result"]["stick_out_needed"])
    changes = found["changes"]
    assert [each["kind"] for each in changes] == [c["kind"] for c in near["result"]["changes"]]
    assert changes[0]["kind"] == "stick-out"
    assert changes[0]["change_to"] == pytest.approx(near["result"]["stick_out_needed"])
    assert "is wanted" in found["findings"][0]


@pytest.mark.parametrize(
    ("left_out", "named"),
    [
        ("equipment__sine_plates__0__plate_body", "equipment/sine_plates/0/plate_body"),
        ("equipment__spin_fixture", "equipment/spin_fixture"),
        ("equipment__wheel__width", "equipment/wheel/width"),
        ("equipment__wheel__head", "equipment/wheel/head"),
        ("equipment__wheel", "equipment/wheel"),
        ("feeding__past_small_end", "feeding/past_small_end"),
        ("feeding__past_large_end", "feeding/past_large_end"),
        ("room__gap_wanted", "room/gap_wanted"),
    ],
)
def test_clearance_of_what_is_not_stated_is_never_said_to_hold(
    call: Call, left_out: str, named: str
) -> None:
    """One thing left out leaves the clearance null and not stated, with the path of what lacks."""
    found = first_way(call, **{left_out: None})["clearance"]
    assert found["forecast"] == "not-stated"
    assert found["smallest_gap"] is None
    assert found["not_stated"] == [named]


def test_a_way_that_fouls_is_ruled_out_with_what_would_help(call: Call) -> None:
    """Work that stands out too little fouls; the plan says so, and how far it must stand out."""
    answer = call("jobs.plan", **whole_request(equipment__spin_fixture__stick_out=0.2))["result"]
    (out,) = (way for way in answer["ruled_out"] if way["way"] == "sine-plate")
    assert "foul by" in out["reason"]
    assert out["field"] == "equipment/spin_fixture"
    assert "stand out 0.5603 in instead of 0.2000 in" in out["instead"]
    assert [way["way"] for way in answer["ways"]] == ["quarter-turn"]


def test_bodies_that_cannot_stand_so_are_refused_by_their_place_in_the_plan(call: Call) -> None:
    """A wheel no larger than its flanges is refused by its own field; a tilted end by the way."""
    with pytest.raises(Impossible, match="does not reach past flanges") as refusal:
        call("jobs.plan", **whole_request(equipment__wheel__head__flange_diameter=8))
    assert set(refusal.value.fields) == {"equipment/wheel/diameter"}
    low = {"equipment__sine_plates__0__plate_body__low_roll_from_end": 0.9}
    answer = call("jobs.plan", **whole_request(**low))["result"]
    (out,) = (way for way in answer["ruled_out"] if way["way"] == "sine-plate")
    assert "would go" in out["reason"]
    assert out["field"] == "equipment/sine_plates/0/plate_body/low_roll_from_end"


def test_two_stacks_lift_the_set_up_toward_the_wheel(call: Call) -> None:
    """With a stack under the low roll too, so much less room is left under the raised wheel."""
    feature = {
        "kind": "cone",
        "included_angle": 2,
        "large_diameter": 0.75,
        "small_diameter": 0.73,
        "included_angle_tolerance_arcsec": 60,
    }
    request = whole_request(feature=feature)
    request["equipment"]["spin_fixture"] |= {"stick_out": 3, "nose_diameter": 0.7}
    answer = call("jobs.plan", **request)["result"]
    two = next(way for way in answer["ways"] if way["way"] == "stacks-under-both-rolls")
    low = next(stack["total"] for stack in two["stacks"] if stack["role"] == "low")
    cone = {name: feature[name] for name in ("included_angle", "large_diameter", "small_diameter")}
    stands = {**clearance_example(), **cone, "fixture": request["equipment"]["spin_fixture"]}
    alone = call("clearance.tilted-plate", **stands)["result"]
    assert low > 0
    assert two["clearance"]["room_left"] == pytest.approx(alone["room_left"] - low)


def test_a_face_is_fed_in_strokes_and_stopped_by_its_height(call: Call) -> None:
    """A face needs its width for its time, turns nowhere, and is stopped by its height."""
    face = {"kind": "angled-face", "face_angle": 15, "rise": 0.2, "tolerance_arcsec": 60}
    way = first_way(call, feature=face)
    feed = way["feed_plan"]
    assert feed["work_rpm"] is None
    assert feed["stop_by"] == "height"
    assert "feeding/width_across_slope" in feed["not_stated"]
    assert way["time"]["by_feed"] is False
    assert way["clearance"]["forecast"] == "not-stated"
    assert "feature/work_body" in way["clearance"]["not_stated"]
    wide = first_way(call, feature=face, feeding__width_across_slope=1)
    rough = wide["feed_plan"]["rough"]
    # A quarter of the wheel's 0.5 in a stroke: eight steps and the first stroke, at 12 m a minute.
    slant = 0.2 / math.sin(math.radians(15)) + 0.35
    assert rough["advance"] == pytest.approx(0.125)
    assert rough["minutes"] == pytest.approx(7 * 9 * slant / (12_000 / 25.4))
    per_piece = 2 * math.degrees(math.atan(0.000002 / (slant - 0.35))) * 3600
    assert wide["batch"]["growth_per_piece_arcsec"] == pytest.approx(per_piece / 2)
