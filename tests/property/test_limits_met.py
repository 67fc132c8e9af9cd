"""What is said at a limit, and just past it: judgements, refusals, figures within sentences."""

import math
from typing import Any

import pytest

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from halfangle_service.registry import load_registry
from halfangle_service.trade import wording
from halfangle_service.trade.runout.vectors import difference
from support import Call

JOB = dict(load_registry().operations["jobs.center"].example)


def words_of(answer: dict[str, Any], code: str) -> str:
    """Message of the one advisory of this code."""
    (words,) = (found["message"] for found in answer["advisories"] if found["code"] == code)
    return str(words)


@pytest.mark.parametrize("angle", [50.0, 60.0, 80.0])
def test_a_bench_step_at_a_steep_angle_is_told_in_seconds(angle: float, call: Call) -> None:
    """One step of 0.0001 in turns a plate of 5 in by step / (L cos θ), as the caution says."""
    step_arcsec = math.degrees(0.0001 / (5.0 * math.cos(math.radians(angle)))) * 3600.0
    for operation in ("sine.setting", "sine.low-stack"):
        more = {"set": "inch-81"} if operation == "sine.low-stack" else {}
        answer = call(operation, units="in", center_distance=5, angle=angle, **more)
        assert f"turns the plate {step_arcsec:.1f}″" in words_of(answer, "steep-angle")


@pytest.mark.parametrize(("tolerance", "room"), [(60, None), (60.5, 0.5), (61, 1.0), (75, 15.0)])
def test_a_reading_proves_what_the_tolerance_leaves_of_it(
    tolerance: float, room: float | None, call: Call
) -> None:
    """An optical check tells 60″ apart: it proves a tolerance over that, by the rest of it."""
    job = JOB | {"included_angle_tolerance_arcsec": tolerance}
    checks = call("jobs.center", **job)["result"]["checks"]
    (optical,) = (check for check in checks if check["check"].startswith("Measure the included"))
    assert optical["proves_tolerance"] is (room is not None)
    assert optical["acceptance_arcsec"] == (None if room is None else pytest.approx(room))


@pytest.mark.parametrize(
    ("shank", "said", "unsaid"),
    [
        ({"kind": "straight", "diameter": 0.5}, "Tap it true", "Turn the adapter about"),
        ({"kind": "taper", "designation": "morse-2"}, "Turn the adapter about", "Tap it true"),
    ],
)
def test_a_holding_is_trued_up_as_its_shank_allows(
    shank: dict[str, Any], said: str, unsaid: str, call: Call
) -> None:
    """What holds a straight shank is tapped true; an adapter is turned about in its socket."""
    steps = str(call("jobs.center", **JOB | {"shank": shank})["result"]["steps"])
    assert said in steps
    assert unsaid not in steps


@pytest.mark.parametrize(
    ("mouth", "size"), [(9.0, "a-5"), (2.0, "a-1"), (0.4, None), (200.0, None)]
)
def test_a_refused_mouth_is_told_the_size_that_makes_it(
    mouth: float, size: str | None, call: Call
) -> None:
    """DIN 332 A 4 makes mouths over 4 and up to 8.5 mm; another size is named where one does."""
    with pytest.raises(Impossible, match=r"4 mm, to 8\.5 mm") as refused:
        call("centers.hole", units="mm", key="a-4", mouth_diameter=mouth)
    assert ("makes it" in str(refused.value)) is (size is not None)
    assert f"Size {size} makes it." in str(refused.value) or size is None


@pytest.mark.parametrize("mouth", [8.0, 8.4])
def test_a_chamfer_asks_for_the_full_cone(mouth: float, call: Call) -> None:
    """A drill of type B cuts its chamfer only once the cone is at its full 8.5 mm."""
    with pytest.raises(Impossible, match=r"once the cone is at its full 8\.5"):
        call("centers.hole", units="mm", key="b-4", mouth_diameter=mouth, chamfer_diameter=9.0)
    full = call("centers.hole", units="mm", key="b-4", mouth_diameter=8.5, chamfer_diameter=9.0)
    assert full["result"]["chamfer_diameter"] == 9.0


@pytest.mark.parametrize("height", [0.05, 0.1])
def test_wear_blocks_that_leave_nothing_are_named(height: float, call: Call) -> None:
    """Two wear blocks of 0.05 in leave nothing of a height of 0.1 in, alone or among others."""
    wear = {"units": "in", "set": "inch-83", "wear_ends": "both-ends"}
    with pytest.raises(Unreachable, match=r"0\.1 in") as one:
        call("blocks.stack", height=height, **wear)
    assert one.value.fields == {"height": "should be more than the wear blocks, 0.1 in"}
    with pytest.raises(Unreachable, match=r"wear blocks"):
        call("blocks.stacks", heights=[{"name": "a", "height": height}], **wear)


def test_a_decimal_angle_is_noted_within_a_list_too(call: Call) -> None:
    """1.18° may have been meant as 1°18′, whichever block of the box bears it."""
    box = [{"angle": 30}, {"angle": 1.18}, {"angle": 27.2}]
    answer = call("blocks.angle-stack", angle="28 22 48", box=box)
    told = [a["message"] for a in answer["advisories"] if a["code"] == "decimal-degrees-read"]
    assert any(words.startswith("box/1/angle 1.18 was read") for words in told), told


def test_slots_of_a_day_come_in_order(call: Call) -> None:
    """The slots of a day are answered in their order, however the jobs are listed."""
    slots = [11, 2, 24, 4, 17, 1]
    jobs = [
        {"job": f"HL-04{slot:02d}", "bench": "grinder 1", "slot": slot, "height": 2.0 + slot / 100}
        for slot in slots
    ]
    answer = call("blocks.day", units="in", set="inch-81", jobs=jobs)
    assert [entry["slot"] for entry in answer["result"]["slots"]] == sorted(slots)


@pytest.mark.parametrize(
    ("tolerance_arcsec", "written"),
    [
        (50.0, "22°30'00\""),
        (49.9, "22°30'00.0\""),
        (5.0, "22°30'00.0\""),
        (4.9, "22°30'00.00\""),
    ],
)
def test_an_angle_is_written_to_a_hundredth_of_its_tolerance(
    tolerance_arcsec: float, written: str
) -> None:
    """Rounding to whole seconds takes 0.5″, which is 1 % of 50″; to tenths 1 % of 5″."""
    assert wording.degrees(22.5, tolerance_arcsec) == written


def test_blocks_of_one_size_are_told_apart_by_their_marks(call: Call) -> None:
    """Either of two 1 in blocks may be the one too many: each is named by its mark."""
    answer = call(
        "blocks.check",
        units="in",
        box=[{"size": 1, "mark": "A"}, {"size": 1, "mark": "B"}, {"size": 0.5}],
        blocks=[0.5],
        height=0.5,
        measured_height=1.5,
        measurement_error_limit=0.0001,
    )
    explaining = [mistake for mistake in answer["result"]["mistakes"] if mistake["explains"]]
    assert {(m["kind"], m["wrung"], m["wrung_mark"]) for m in explaining} == {
        ("block-too-many", 1.0, "A"),
        ("block-too-many", 1.0, "B"),
    }


@pytest.mark.parametrize("stray", [0.0005, -0.0005, 0.005])
def test_a_stray_reading_is_refused_though_the_indicator_has_steps(
    stray: float, call: Call
) -> None:
    """Five steps of the indicator off a circle that seven others agree on is no form of a part."""
    angles = range(0, 360, 45)
    readings = [
        {"angular_position": angle, "reading": round(0.001 * math.cos(math.radians(angle)), 6)}
        for angle in angles
    ]
    request: dict[str, Any] = {"units": "in", "surface": "external", "indicator_resolution": 0.0001}
    call("runout.indicate", readings=readings, **request)
    readings[3]["reading"] += stray
    side = "lower" if stray > 0 else "higher"
    with pytest.raises(Disagreement, match=rf"reading 4: all others put it .* {side}"):
        call("runout.indicate", readings=readings, **request)


def test_a_difference_that_is_rounding_alone_is_nothing() -> None:
    """0.1 + 0.2 less 0.3 is nothing, and a millionth of them is kept."""
    assert difference(complex(0.1 + 0.2), complex(0.3)) == 0
    assert difference(complex(0.300001), complex(0.3)) == pytest.approx(1e-6, rel=1e-6)


def test_of_errors_that_are_none_no_term_is_the_largest(call: Call) -> None:
    """An error stated to be 0 contributes nothing, so no term has the largest share."""
    plate = {"units": "in", "center_distance": 5, "angle": 30}
    assert call("sine.uncertainty", particle=0, **plate)["result"]["largest_term"] is None
    stated = call("sine.uncertainty", particle=0, roll_difference=0.0001, **plate)
    assert stated["result"]["largest_term"] == "roll_difference"


@pytest.mark.parametrize("edge", [1.0, 0.0, -1.0, -2.5, -3.0])
def test_a_guard_is_as_far_from_the_cone_as_its_lower_edge(edge: float, call: Call) -> None:
    """A wheel worn to 5.5 touches; its guard stands off by 2.75 less its edge below the spindle."""
    request = dict(load_registry().operations["clearance.tilted-plate"].example)
    guard = {"length": 8, "width": 2.5, "lower_edge_below_spindle": edge}
    wheel = {**request["wheel"], "worn_diameter": 5.5, "guard": guard}
    gaps = call("clearance.tilted-plate", **{**request, "wheel": wheel})["result"]["gaps"]
    (gap,) = (
        entry["gap"]
        for entry in gaps
        if (entry["part"], entry["body"], entry["wheel_state"]) == ("guard", "cone", "worn")
    )
    assert gap == pytest.approx(2.75 - edge, abs=1e-9)


@pytest.mark.parametrize(("height", "as_set"), [(2.500049, 2.5), (2.500051, 2.5001)])
def test_a_height_between_two_steps_is_set_to_the_nearer(
    height: float, as_set: float, call: Call
) -> None:
    """Of the differences that a set of tenths builds, the nearer is set, up to half a step off."""
    angle = math.degrees(math.asin(height / 5.0))
    answer = call("sine.low-stack", units="in", center_distance=5, angle=angle, set="inch-81")
    assert answer["result"]["height_as_set"] == as_set


@pytest.mark.parametrize(
    ("apart_arcsec", "bearing"),
    [(0.99, "whole-cone"), (-0.99, "whole-cone"), (1.01, "mouth"), (-1.01, "small-end")],
)
def test_angles_within_a_second_bear_along_the_whole_cone(
    apart_arcsec: float, bearing: str, call: Call
) -> None:
    """A center steeper than its hole by more than 1″ of included angle bears at the mouth."""
    center = 60.0 + apart_arcsec / 3600.0
    hole = {"hole_included_angle": 60, "mouth_diameter": 8.5, "pilot_diameter": 4}
    answer = call("centers.contact", units="mm", center_included_angle=center, **hole)
    assert answer["result"]["bearing"] == bearing


@pytest.mark.parametrize(
    ("units", "shortest", "longest"), [("in", 1.0, 48.0), ("mm", 25.4, 1250.0)]
)
def test_a_center_distance_in_the_wrong_unit_is_refused(
    units: str, shortest: float, longest: float, call: Call
) -> None:
    """Plates have 1 to 48 in or 25.4 to 1250 mm; just outside, another unit is likely meant."""
    for taken in (shortest, longest):
        call("sine.setting", units=units, center_distance=taken, angle=30)
    for refused in (shortest * 0.9999, longest * 1.0001):
        with pytest.raises(Disagreement, match="center"):
            call("sine.setting", units=units, center_distance=refused, angle=30)


def test_ways_to_set_a_taper_stand_by_what_they_reach(call: Call) -> None:
    """At 4 in per foot: one without a limit stated, one that may reach, one past its limit."""
    request = dict(load_registry().operations["tapers.set-over"].example)
    request |= {"taper_per_foot": 4, "largest_set_over": 0.1}
    ways = call("tapers.set-over", **request)["result"]["ways"]
    assert [way["forecast"] for way in ways] == ["not-stated", "may-not-hold", "does-not-hold"]
    del request["largest_set_over"]
    request |= {"largest_angle": 3}
    ways = call("tapers.set-over", **request)["result"]["ways"]
    assert [way["forecast"] for way in ways] == ["may-not-hold", "may-not-hold", "does-not-hold"]


@pytest.mark.parametrize(("tolerance", "fewest"), [(0.1, 3), (0.04, None), (0, None)])
def test_more_blocks_are_named_where_they_reach_within_the_tolerance(
    tolerance: float, fewest: int | None, call: Call
) -> None:
    """Of 1, 2 and 4 in two make no 7.05 in; all three make 7, within 0.1 and not within 0.04."""
    request = {"units": "in", "sizes": [1, 2, 4], "height": 7.05, "max_blocks": 2}
    with pytest.raises(Unreachable, match="No stack of up to 2") as refused:
        call("blocks.stack", tolerance=tolerance, **request)
    named = f"A stack of {fewest} blocks would do" in str(refused.value)
    assert named is (fewest is not None)
    assert ("max_blocks" in refused.value.fields) is (fewest is not None)


def test_a_stack_that_misses_the_included_angle_is_refused_past_the_tolerance(call: Call) -> None:
    """2.5 in under 5 in make 60°: 36″ more than 59.99°, which 35″ forbid and 37″ allow."""
    blocks = {"sizes": [2.0, 0.5], "included_angle": 59.99}
    job = {key: value for key, value in JOB.items() if key not in {"set", "grade"}} | blocks
    with pytest.raises(Unreachable, match=r"misses the included angle by 36\.0″") as refused:
        call("jobs.center", **job | {"included_angle_tolerance_arcsec": 35})
    assert "sizes" in refused.value.fields
    planned = call("jobs.center", **job | {"included_angle_tolerance_arcsec": 37})
    assert "is off by 36.0″ of included angle" in words_of(planned, "stack-not-exact")
