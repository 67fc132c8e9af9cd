"""Mistakes and checks of a plan: by brute force over every block, and by geometry."""

import math
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from halfangle_service.registry import load_registry
from halfangle_service.trade.runout.vectors import split
from plan_support import whole_request
from support import Call

Json = dict[str, Any]
ARCSEC = math.degrees(1) * 3600
SIZES = (
    {round(0.1001 + 0.0001 * i, 4) for i in range(9)}
    | {round(0.101 + 0.001 * i, 3) for i in range(49)}
    | {round(0.05 + 0.05 * i, 2) for i in range(19)}
    | {1.0, 2.0, 3.0, 4.0}
)
MEASURING: Json = {
    "rolls": {
        "roll_diameters": [0.0625, 0.125, 0.25],
        "measure_error_limit": 0.0001,
        "stack_rise_error_limit": 0.00002,
    },
    "comparator": {"instrument_angle_error_limit_arcsec": 60},
    "stack_reading_error_limit": 0.0002,
    "comparison_error_limit": 0.00005,
    "tir_error_limit": 0.00005,
}


def planned(call: Call, feature: Json | None = None, **equipment: Any) -> Json:
    """The plan of the operation's example with means of measuring, and other equipment."""
    example = load_registry().operations["jobs.plan"].example
    # The example's fixture holds its own center, and may foul with another cone.
    means: Json = {"measuring": MEASURING, "spin_fixture": None}
    shop = {**example["equipment"], **means, **equipment}
    stated = {name: value for name, value in shop.items() if value is not None}
    request = {**example, "feature": feature or example["feature"], "equipment": stated}
    result: Json = call("jobs.plan", **request)["result"]
    return result


def cone(included: float, tolerance: float) -> Json:
    """A cone from 0.75 in to 0.5 in, or half an inch long where that is shorter."""
    rise = min(0.25, math.tan(math.radians(included / 2)))
    return {
        "kind": "cone",
        "included_angle": included,
        "included_angle_tolerance_arcsec": tolerance,
        "large_diameter": 0.75,
        "small_diameter": 0.75 - rise,
    }


def face(angle: float, tolerance: float) -> Json:
    """A face 0.5 in high."""
    return {"kind": "angled-face", "face_angle": angle, "rise": 0.5, "tolerance_arcsec": tolerance}


def assert_smallest(way: Json, tolerance: float, error: Callable[[str, float], float]) -> None:
    """Each stack's mistake is the least of all pairs of blocks that leaves the tolerance.

    `error` is what a stack of a role, so much higher than meant, makes of the angle, in seconds.
    """
    stated = {row["role"]: row for row in way["mistakes"]}
    for stack in way["stacks"]:
        pairs = [
            (round(wrung - meant, 6), meant, wrung)
            for meant in set(stack["blocks"])
            for wrung in SIZES - set(stack["blocks"])
        ]
        leaving = [p for p in pairs if not abs(error(stack["role"], p[0])) <= tolerance]
        if not leaving:
            assert stack["role"] not in stated
            continue
        least = min(abs(change) for change, _, _ in leaving)
        found = stated[stack["role"]]
        assert (found["meant"], found["wrung"]) in {(m, w) for _, m, w in leaving}
        change = found["wrung"] - found["meant"]
        assert found["height_change"] == pytest.approx(change, abs=1e-9)
        assert abs(change) == pytest.approx(least, abs=1e-9)
        expected = error(stack["role"], round(change, 6))
        if math.isfinite(expected):
            assert found["angle_error_arcsec"] == pytest.approx(expected, abs=0.01)
        else:
            assert found["angle_error_arcsec"] is None


def heights(way: Json) -> dict[str, float]:
    """Nominal height of each stack of a way; without a low one nothing stands there."""
    return {"low": 0.0, **{s["role"]: s["total"] for s in way["stacks"] if s["role"] != "check"}}


def way_of(plan: Json, name: str) -> Json:
    """A way of a plan."""
    found: Json = next(way for way in plan["ways"] if way["way"] == name)
    return found


def plate_angle(high: float, low: float, length: float = 5.0) -> float:
    """A plate's angle in seconds; not a number where it has none."""
    rise = (high - low) / length
    return math.asin(rise) * ARCSEC if 0 <= rise < 1 else math.nan


@pytest.mark.outside("jobs.plan", source="Brute force over every pair of blocks, by the sine")
@pytest.mark.parametrize(
    ("feature", "name", "tolerance", "times", "wanted"),
    [
        (cone(60, 120), "sine-plate", 120, 2, 30),
        (cone(59 + 47 / 60, 15), "sine-plate", 15, 2, (59 + 47 / 60) / 2),
        (cone(59 + 47 / 60, 600), "sine-plate", 600, 2, (59 + 47 / 60) / 2),
        (cone(2, 120), "stacks-under-both-rolls", 120, 2, 1),
        (cone(140, 120), "quarter-turn", 120, -2, 20),
        (face(72, 60), "quarter-turn", 60, -1, 18),
        (face(15, 10), "sine-plate", 10, 1, 15),
    ],
)
def test_the_smallest_wrong_block_of_each_stack(
    call: Call, feature: Json, name: str, tolerance: float, times: float, wanted: float
) -> None:
    """High, low and compared stacks, of cones and faces, as they lie and turned a quarter."""
    way = way_of(planned(call, feature), name)
    stands = heights(way)

    def error(role: str, change: float) -> float:
        high = stands["high"] + (change if role in {"high", "check"} else 0.0)
        low = stands["low"] + (change if role == "low" else 0.0)
        off = plate_angle(high, low) - wanted * 3600
        return math.nan if math.isnan(off) else times * off

    assert_smallest(way, tolerance, error)
    assert {row["role"] for row in way["mistakes"]} >= {"high"}


@pytest.mark.outside("jobs.plan", source="Brute force over every pair of blocks, by rotations")
def test_the_smallest_wrong_block_of_a_compound_plate(call: Call) -> None:
    """Base and upper stack: the face is rotated to each wrong setting and seen in both views."""
    feature = {
        "kind": "compound-face",
        "orientation": {"kind": "projected-angles", "x_angle": 12, "y_angle": 20},
        "rise": 0.4,
        "tolerance_arcsec": 60,
    }
    plate = {
        "name": "compound plate",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
    }
    plan = planned(call, feature, sine_plates=None, compound_plates=[plate])
    way = plan["ways"][0]
    stands = {s["role"]: s["total"] for s in way["stacks"] if s["role"] != "check"}
    second = {s["total"]: s for s in way["stacks"] if s["role"] == "check"}
    assert set(second) <= set(stands.values())

    def views(base: float, upper: float) -> Any:
        """Angles in both views of the part of a surface that these settings bring level."""
        turned = Rotation.from_euler("x", base) * Rotation.from_euler("y", -upper)
        normal = turned.inv().apply([0, 0, 1])
        slopes = np.array([-normal[0] / normal[2], -normal[1] / normal[2]])
        return np.abs(np.degrees(np.arctan(slopes)))

    def off(role: str, change: float) -> float:
        which = [r for r, total in stands.items() if total in second] if role == "check" else [role]
        set_to = {
            r: (total + (change if r == which[0] else 0.0)) / 5 for r, total in stands.items()
        }
        if not all(0 <= rise < 1 for rise in set_to.values()):
            return math.nan
        angles = views(math.asin(set_to["base"]), math.asin(set_to["upper"]))
        laid = np.sort(angles) - np.array([12.0, 20.0])
        worst = float(laid[np.argmax(np.abs(laid))])
        return worst * 3600

    one_of_each = {**way, "stacks": [s for s in way["stacks"] if s["role"] != "check"]}
    for stack in one_of_each["stacks"]:
        found = next(row for row in way["mistakes"] if row["role"] == stack["role"])
        pairs = [
            round(wrung - meant, 6)
            for meant in set(stack["blocks"])
            for wrung in SIZES - set(stack["blocks"])
        ]
        leaving = [abs(p) for p in pairs if not abs(off(stack["role"], p)) <= 60]
        assert abs(found["height_change"]) == pytest.approx(min(leaving), abs=1e-9)
        expected = abs(off(stack["role"], round(found["height_change"], 6)))
        assert abs(found["angle_error_arcsec"]) == pytest.approx(expected, abs=0.01)


@pytest.mark.outside("jobs.plan", source="Brute force over every pair of blocks, by the sine")
def test_the_smallest_wrong_block_of_a_dresser(call: Call) -> None:
    """A dresser's sine base is wrung wrongly too: its flank's error counts twice on a cone."""
    wheel = {
        "name": "dressed wheel",
        "wheel_diameter": 7,
        "wheel_width": 0.75,
        "depth_per_pass": 0.0005,
        "dresser": {"kind": "sine-base", "center_distance": 3, "zero": "wheel-axis"},
    }
    plan = planned(call, cone(60, 120), sine_plates=None, dressed_wheels=[wheel])
    way = way_of(plan, "dressed-wheel")
    stands = heights(way)

    def error(role: str, change: float) -> float:
        high = stands["high"] + (change if role in {"high", "check"} else 0.0)
        low = stands["low"] + (change if role == "low" else 0.0)
        off = plate_angle(high, low, 3.0) - 30 * 3600
        return math.nan if math.isnan(off) else 2 * off

    assert_smallest(way, 120, error)


@pytest.mark.outside(
    "jobs.plan", source="Brute force over every block, deviations of a certificate"
)
def test_measured_deviations_are_counted(call: Call) -> None:
    """Of blocks that differ by their certificates, the change is that of the actual sizes."""
    box = [
        {"size": 2.5, "deviation": 0.00001},
        {"size": 2.5002, "deviation": -0.00002},
        {"size": 2.4999, "deviation": 0.00004},
        {"size": 2.6, "deviation": 0.0},
    ]
    plan = planned(call, cone(60, 15), block_sets=[{"name": "own", "box": box}])
    (found,) = way_of(plan, "sine-plate")["mistakes"]
    # 9.53″ a tenth: 2.49994 is off by 6″, within 15″; 2.50018 is off by 17″.
    assert (found["meant"], found["wrung"]) == (2.5, 2.5002)
    assert found["height_change"] == pytest.approx(0.00017, abs=1e-9)
    expected = 2 * (math.asin(2.50018 / 5) * ARCSEC - 30 * 3600)
    assert found["angle_error_arcsec"] == pytest.approx(expected, abs=1e-3)


def test_a_mistake_is_seen_by_what_it_passes(call: Call) -> None:
    """A step of 0.0002 in is beyond the comparison, within the micrometer; 19″ within the rolls."""
    plan = planned(call, cone(59 + 47 / 60, 15))
    told = {c["check"]: c["told_apart"] for c in plan["checks"]["set_up_checks"]}
    # Of one error, as likely anywhere within its limit, 95 % lie within 0.95 of it.
    assert told["stack-measured"] == pytest.approx(0.95 * 0.0002)
    assert told["second-stack"] == pytest.approx(0.95 * 0.00005)
    assert told["same-setting"] is None
    own = {
        one["means"]: one["angle_proof"]["angle_error_arcsec"]["expanded_uncertainty"]
        for one in plan["checks"]["inspections"]
    }
    for way in plan["ways"]:
        compared = any(stack["role"] == "check" for stack in way["stacks"])
        for row in way["mistakes"]:
            change, error = abs(row["height_change"]), abs(row["angle_error_arcsec"])
            expected = {name for name, least in own.items() if error > least}
            expected |= {"stack-measured"} if change > told["stack-measured"] else set()
            if compared and change > told["second-stack"]:
                expected.add("second-stack")
            assert set(row["seen_by"]) == expected
            assert "same-setting" not in row["seen_by"]
    unstated = planned(call, cone(59 + 47 / 60, 15), measuring=None)
    assert [row["seen_by"] for row in unstated["ways"][0]["mistakes"]] == [
        [] for _ in unstated["ways"][0]["mistakes"]
    ]


def assert_same(mine: Any, theirs: Any, path: str) -> None:
    """Each value, fetched by its name, is that of the other answer."""
    if isinstance(mine, dict):
        for name in list(mine):
            assert_same(mine[name], theirs[name], f"{path}.{name}")
    elif isinstance(mine, list):
        assert len(mine) == len(theirs), path
        for place, entry in enumerate(mine):
            assert_same(entry, theirs[place], f"{path}.{place}")
    else:
        assert mine == theirs, path


def test_the_inspections_are_the_single_operation_s_own(call: Call) -> None:
    """What a plan says of each means is what `inspection.plan` says of the same feature."""
    feature = cone(40, 120)
    checks = planned(call, feature)["checks"]
    means = {name: MEASURING[name] for name in ("rolls", "comparator")}
    single = call("inspection.plan", units="in", feature=feature, **means)["result"]
    assert len(checks["inspections"]) == 2
    for name in ("inspections", "best"):
        assert_same(checks[name], single[name], name)
    balls = {**MEASURING, "balls": {"ball_diameters": [0.25, 0.5]}}
    (ruled,) = planned(call, feature, measuring=balls)["checks"]["ruled_out"]
    assert (ruled["means"], ruled["field"]) == ("over-balls", "equipment/measuring/balls")


@pytest.mark.outside("jobs.plan", source="Rectangular error by hand, a cone turned about its seats")
def test_runout_is_proved_seat_by_seat(call: Call) -> None:
    """0.0003 in square to the axis is 0.0003 cos 30° on the cone, and twice that turned half round.

    A reading of ±0.00005 in proves it with 95 % up to 0.00005 · 0.9 less.
    """
    checks = planned(call)["checks"]
    limit = 2 * 0.0003 * math.cos(math.radians(30))
    seated = next(c for c in checks["set_up_checks"] if c["check"] == "re-seated")
    assert seated["proves_tolerance"] is True
    assert seated["acceptance_tir"] == pytest.approx(limit - 0.9 * 0.00005, abs=1e-9)
    shown = {row["turned"]: row["shows"] for row in checks["seat_readings"]}
    assert shown == {
        "nothing": ["spindle-and-form"],
        "work": ["fixture", "adapter"],
        "adapter-and-work": ["fixture"],
    }
    turned = next(row for row in checks["seat_readings"] if row["turned"] == "work")
    assert turned["largest_tir"] == pytest.approx(limit)
    coarse = planned(call, measuring={"tir_error_limit": 0.002})["checks"]["set_up_checks"]
    assert coarse[-1]["proves_tolerance"] is False
    unstated = planned(call, measuring=None)["checks"]["set_up_checks"][-1]
    assert unstated["proves_tolerance"] is unstated["acceptance_tir"] is None
    plain = planned(call, cone(60, 120))["checks"]
    assert plain["seat_readings"] == []
    assert "re-seated" not in {c["check"] for c in plain["set_up_checks"]}


@pytest.mark.outside("jobs.plan", source="A cone carried about by its seats, in the plane")
def test_the_seats_tell_fixture_adapter_and_work_apart() -> None:
    """Vectors of any length and direction come back from what the cone reads in three seats."""
    rng = np.random.default_rng(11)
    for fixture, adapter, ground in rng.normal(size=(40, 3)) + 1j * rng.normal(size=(40, 3)):
        # In the spindle's frame: the seat's axis, then the shank's in its socket; the cone's axis.
        shank = fixture + adapter

        def half_round(point: Any, about: Any) -> Any:
            return about + (point - about) * np.exp(1j * math.pi)

        work_turned = half_round(ground, about=shank)
        both_turned = half_round(ground, about=fixture)
        holding, cone_to_shank = split(ground, work_turned)
        of_fixture, _ = split(ground, both_turned)
        assert of_fixture == pytest.approx(fixture)
        assert holding - of_fixture == pytest.approx(adapter)
        assert cone_to_shank == pytest.approx(ground - shank)


def test_every_way_of_a_whole_job_has_its_mistakes(call: Call) -> None:
    """Each stack of each way is one in which some block would matter, or in which none does."""
    result = call("jobs.plan", **whole_request())["result"]
    for way in result["ways"]:
        roles = [stack["role"] for stack in way["stacks"]]
        assert {row["role"] for row in way["mistakes"]} <= set(roles)
        tolerance = way["angles"][0]["tolerance_arcsec"]
        assert all(abs(row["angle_error_arcsec"]) > tolerance for row in way["mistakes"])
