"""Figures beside the headline of answers about sine plates, each worked out apart."""

import math
from typing import Any

import numpy as np
import pytest
from mpmath import asin, degrees, mp, mpf
from scipy.spatial.transform import Rotation

from support import Call, assert_values

mp.dps = 30


def angle_of(height: str, center_distance: int = 5) -> Any:
    """Angle in degrees of a stack on a plate, to thirty digits."""
    return degrees(asin(mpf(height) / center_distance))


def per_step(angle: float, step: float = 0.0001, center_distance: float = 5) -> float:
    """Arc-seconds of angle for one bench step: dθ = dh / (L cos θ)."""
    turn = step / (center_distance * math.cos(math.radians(angle)))
    return math.degrees(turn) * 3600


@pytest.mark.outside("sine.setting", source="mpmath: sine and its inverse to thirty digits")
def test_a_setting_in_figures(call: Call) -> None:
    """37° on 5 in is 3.0090751 in; 3.0091 in is set, 1.285″ more. A whole inch would turn 14.3°."""
    result = call("sine.setting", units="in", center_distance=5, angle=37)["result"]
    as_set = angle_of("3.0091")
    expected = {
        "angle.degrees": 37,
        "height_to_set": 3.0091,
        "angle_as_set.degrees": float(as_set),
        "bench_step": 0.0001,
        "arcsec_per_unit": 10_000 * per_step(37),
        "arcsec_per_step": per_step(37),
    }
    assert_values(result, expected)
    off = float((as_set - 37) * 3600)
    assert off == pytest.approx(1.2854, abs=5e-5)
    assert result["deviation_arcsec"] == pytest.approx(off, rel=1e-6)
    assert call("sine.setting", units="mm", center_distance=100, angle=37)["result"][
        "bench_step"
    ] == pytest.approx(0.001)


@pytest.mark.outside("sine.setting", source="mpmath: sine and its inverse to thirty digits")
def test_a_complement_in_figures(call: Call) -> None:
    """For 70° the complement of 20° is offered: 1.7101007 in on 5 in, 1.7101 in to set."""
    result = call("sine.setting", units="in", center_distance=5, angle=70)["result"]
    complement = result["complement_setting"]
    expected = {
        "angle.degrees": 20,
        "height": 5 * math.sin(math.radians(20)),
        "height_to_set": 1.7101,
        "arcsec_per_step": per_step(20),
    }
    assert_values(complement, expected)
    off = float((angle_of("1.7101") - 20) * 3600)
    assert complement["deviation_arcsec"] == pytest.approx(off, abs=1e-6)


@pytest.mark.outside("sine.table", source="Sines by hand: 5 in × 0.6018150 and 0.8290376")
@pytest.mark.outside("sine.angle", source="dθ = dh / (L cos θ), by hand")
def test_steps_of_table_and_angle(call: Call) -> None:
    """A step turns a steep plate more: 5.165″ at 37°, 7.377″ at 56°, 4.763″ at 30°."""
    table = call(
        "sine.table", units="in", center_distance=5, first_angle=37, last_angle=56, angle_step=19
    )["result"]
    rows = {"rows[0].height_to_set": 3.0091, "rows[1].height_to_set": 4.1452}
    rows |= {"rows[0].arcsec_per_step": per_step(37), "rows[1].arcsec_per_step": per_step(56)}
    assert_values(table, rows)
    assert (per_step(37), per_step(56)) == pytest.approx((5.165, 7.377), abs=5e-4)
    angle = call("sine.angle", units="in", center_distance=5, high_stack=2.6, low_stack=0.1)[
        "result"
    ]
    assert_values(angle, {"height": 2.5, "arcsec_per_step": per_step(30)})


#: Of 1 in 2 on the diameter: tan α = ¼.
HALF = math.atan(0.25)
HELD = {
    "between-centers": HALF,
    "on-its-generator": 2 * HALF,
    # In a vee of 90° both lines of contact lean so that the axis rises by asin(sin α / sin 45°).
    "in-a-vee": HALF + math.asin(math.sin(HALF) * math.sqrt(2)),
}


@pytest.mark.outside("sine.taper-setting", source="mpmath and the relations of a cone on a plane")
@pytest.mark.parametrize("holding", HELD)
def test_a_taper_is_set_in_figures(call: Call, holding: str) -> None:
    """1 in 2 is 28.0725° included: on its generator it leans by all of that, its axis by half.

    One bench step of the stack turns the plate, and stands for as much of the half angle as the
    plate's angle is of it, taken here by a difference of the relation.
    """
    plate = {"units": "in", "center_distance": 5, "holding": holding}
    result = call("sine.taper-setting", **plate, rate_of_taper=0.5)["result"]
    lean = HELD[holding]
    to_set = round(5 * math.sin(lean), 4)

    def plate_angle(half: float) -> float:
        vee = half + math.asin(math.sin(half) * math.sqrt(2))
        return {"between-centers": half, "on-its-generator": 2 * half, "in-a-vee": vee}[holding]

    slope = (plate_angle(HALF + 1e-5) - plate_angle(HALF - 1e-5)) / 2e-5
    expected = {
        "plate_angle.degrees": math.degrees(lean),
        "included_angle.degrees": 2 * math.degrees(HALF),
        "height_to_set": to_set,
        "arcsec_per_step": per_step(math.degrees(lean)),
        "included_angle_arcsec_per_step": 2 * per_step(math.degrees(lean)) / slope,
    }
    assert_values(result, expected, rel=1e-8)
    tilt = math.degrees(lean - HALF)
    assert result["axis_tilt"]["degrees"] == pytest.approx(tilt, abs=1e-9)
    off = (math.asin(to_set / 5) - lean) * 648_000 / math.pi
    assert result["deviation_arcsec"] == pytest.approx(off, rel=1e-6)


@pytest.mark.outside("sine.taper-setting", source="Wrong sums by hand, of a taper of 1 in 2")
def test_heights_of_the_usual_mistakes(call: Call) -> None:
    """The included angle set gives 5 sin 2α; ¼ taken for the sine 1.25 in; half of atan ½ less."""
    plate = {"units": "in", "center_distance": 5, "holding": "between-centers"}
    result = call("sine.taper-setting", **plate, rate_of_taper=0.5)["result"]
    found = [mistake["height"] for mistake in result["usual_mistakes"]]
    wrong = [math.sin(2 * HALF), 0.25, math.sin(math.atan(0.5) / 2)]
    assert found == pytest.approx([5 * sine for sine in wrong])


@pytest.mark.outside("sine.taper-angle", source="mpmath: inverse sine; tangents by hand")
@pytest.mark.parametrize("holding", HELD)
def test_a_taper_is_read_in_figures(call: Call, holding: str) -> None:
    """A stack that levels 1 in 2 but for a rise of 0.001 in over 2 in: the lean is the sum of both.

    Given the setting of the known cone less that rise, the known cone comes back.
    """
    left = math.atan(0.0005)
    plate = {"units": "in", "center_distance": 5, "holding": holding}
    indicated = {"indicator_rise": 0.001, "indicator_travel": 2}
    height = 5 * math.sin(HELD[holding] - left)
    result = call("sine.taper-angle", **plate, height=height, **indicated)["result"]
    expected = {
        "plate_angle.degrees": math.degrees(HELD[holding] - left),
        "generator_lean.degrees": math.degrees(HELD[holding]),
        "half_angle.degrees": math.degrees(HALF),
        "rate_of_taper": 0.5,
        "one_in_x": 2,
        "taper_per_foot": 6,
    }
    assert_values(result, expected)
    further = call("sine.taper-angle", **plate, height=height + 0.0001, **indicated)["result"]
    turned = further["included_angle"]["degrees"] - result["included_angle"]["degrees"]
    assert result["included_angle_arcsec_per_step"] == pytest.approx(3600 * turned, rel=1e-4)


@pytest.mark.outside("sine.low-stack", source="mpmath: inverse sine; sums by hand")
def test_two_low_stacks_in_figures(call: Call) -> None:
    """½° on 5 in asks for 0.0436327 in; a set that steps by 0.0001 in gives 0.0436 in, 1.348″ less.

    Blocks of 0.144 and 0.1004 in differ by just that.
    """
    request = {"units": "in", "center_distance": 5, "angle": 0.5, "set": "inch-81"}
    result = call("sine.low-stack", **request)["result"]
    wanted = 5 * math.sin(math.radians(0.5))
    as_set = angle_of("0.0436")
    expected = {
        "height": wanted,
        "deviation": 0.0436 - wanted,
        "angle_as_set.degrees": float(as_set),
        "deviation_arcsec": float((as_set - 0.5) * 3600),
        "set_step": 0.0001,
        "count": 2,
    }
    assert_values(result, expected, rel=1e-6)
    assert result["deviation_arcsec"] == pytest.approx(-1.348, abs=5e-4)
    for name in ("high", "low"):
        assert result[name]["total"] == pytest.approx(math.fsum(result[name]["blocks"]))
    assert result["high"]["total"] - result["low"]["total"] == pytest.approx(0.0436)


@pytest.mark.outside("sine.correction", source="mpmath: inverse sine; sums by hand")
def test_a_swap_in_figures(call: Call) -> None:
    """A plate that reads 10″ too much is lowered to 2.4997901 in; 2.4998 in leaves 0.473″.

    The new stack holds what was left of the old one and what was added.
    """
    request = {"units": "in", "center_distance": 5, "angle": 30, "blocks": [2.0, 0.5]}
    answer = call("sine.correction", **request, measured_error_arcsec=10, set="inch-81")
    result, swap = answer["result"], answer["result"]["swap"]
    assert_values(result, {"height_now": 2.5})
    assert swap["blocks"] == sorted(swap["blocks"], reverse=True)
    assert math.fsum(swap["blocks"]) == pytest.approx(2.4998)
    kept = sorted([2.0, 0.5, *swap["add"]])
    for block in swap["remove"]:
        kept.remove(block)
    assert sorted(swap["blocks"]) == kept
    due = 2.5 - 5 * (math.sin(math.radians(30 + 10 / 3600)) - 0.5)
    assert due == pytest.approx(2.4997901, abs=5e-8)
    left = (2.4998 - due) / 0.0001 * per_step(30)
    assert left == pytest.approx(0.473, abs=5e-4)
    assert swap["remaining_error_arcsec"] == pytest.approx(left, rel=1e-6)


@pytest.mark.outside("sine.requirements", source="Rectangle and normal law by hand: 0.95 w, 1.96 u")
def test_requirements_of_one_error_in_figures(call: Call) -> None:
    """Of a pitch anywhere within ±20″, 95 of 100 lie within ±19″: the smallest tolerance.

    For ±10″ it must be held to 10 / 0.95 = 10.526″, 0.5263 of what it is; a normal error might
    have a standard uncertainty of 10 / 1.959964 = 5.102″.
    """
    plate = {"units": "in", "center_distance": 5, "angle": 30, "tolerance_arcsec": 10}
    result = call("sine.requirements", **plate, axis_pitch_error_limit_arcsec=20)["result"]
    expected = {
        "smallest_tolerance_arcsec": 19,
        "limit_standard_uncertainty_arcsec": 10 / 1.959964,
        "cheapest_to_mend.at_hand": 20,
        "cheapest_to_mend.hold": 10 / 0.95,
        "cheapest_to_mend.ratio": 0.5 / 0.95,
    }
    assert_values(result, expected, rel=1e-3)
    pitch = next(
        row for row in result["requirements"] if row["term"] == "axis_pitch_error_limit_arcsec"
    )
    assert_values(pitch, {"alone": 10 / 0.95, "equal_share": 10 / 0.95}, rel=1e-3)
    rows = {row["term"]: row["at_hand"] for row in result["requirements"]}
    assert rows.pop("axis_pitch_error_limit_arcsec") == 20
    assert set(rows.values()) == {None}


@pytest.mark.outside("sine.requirements", source="Sum of two rectangles by hand: a trapezoid")
def test_requirements_of_two_errors_in_figures(call: Call) -> None:
    """Beside a stack good to 10″, a pitch of 21.57″ keeps ±25″; both alike, 16.10″ each.

    Of rectangles ±a and ±b the sum passes T with probability (a + b − T)² / (4 a b), which is 0.05:
    (a − 15)² = 2 a, and (2 a − 25)² = a² / 5.
    """
    plate = {"units": "in", "center_distance": 5, "angle": 30, "tolerance_arcsec": 25}
    stack = 10 * 5 * math.cos(math.radians(30)) * math.pi / 648_000
    errors = {"axis_pitch_error_limit_arcsec": 20, "stack_error_limit": stack}
    rows = call("sine.requirements", **plate, **errors)["result"]["requirements"]
    pitch = next(row for row in rows if row["term"] == "axis_pitch_error_limit_arcsec")
    expected = {
        "with_others": 16 + math.sqrt(31),
        "equal_share": 25 / (2 - math.sqrt(0.2)),
    }
    assert_values(pitch, expected, rel=2e-3)


@pytest.mark.outside("sine.uncertainty", source="By hand: mean of ½ tan θ ψ², ψ even over ±900″")
def test_yaw_moves_the_mean(call: Call) -> None:
    """Yaw up to 900″ lowers an angle of 30° by up to 1.134″, on the mean a third of it: 0.378″."""
    plate = {"units": "in", "center_distance": 5, "angle": 30, "trials": 100_000}
    result = call("sine.uncertainty", **plate, axis_yaw_error_limit_arcsec=900)["result"]
    yaw = math.radians(900 / 3600)
    mean = -math.degrees(math.tan(math.radians(30)) * yaw**2 / 6) * 3600
    assert mean == pytest.approx(-0.378, abs=5e-4)
    assert_values(result["angle_error_arcsec"], {"value": mean}, rel=1e-4)
    assert_values(result["included_angle_error_arcsec"], {"value": 2 * mean}, rel=1e-4)
    assert_values(result["monte_carlo"], {"mean_arcsec": mean}, rel=1e-2)


@pytest.mark.outside("sine.uncertainty", source="One rectangle by hand: w / √3, ±0.95 w")
def test_monte_carlo_of_one_rectangle(call: Call) -> None:
    """Rolls of up to 0.0005 in of difference lift an end by half: up to w = 11.9″ at 30° on 5 in.

    Trials come to w / √3 and to ±0.95 w, as nearly as so many can: 100,000 hold a quantile within
    w √(0.025 × 0.975 / 100,000) × 2 = 0.1 %, four times over.
    """
    plate = {"units": "in", "center_distance": 5, "angle": 30}
    result = call("sine.uncertainty", **plate, roll_difference=0.0005, trials=100_000)["result"]
    assert_values(result, {"angle.degrees": 30, "monte_carlo.trials": 100_000})
    found = result["monte_carlo"]
    width = math.degrees(0.00025 / (5 * math.cos(math.radians(30)))) * 3600
    expected = {
        "standard_deviation_arcsec": width / math.sqrt(3),
        "low_arcsec": -0.95 * width,
        "high_arcsec": 0.95 * width,
    }
    assert_values(found, expected, rel=4e-3)
    more = 100 * (found["standard_deviation_arcsec"] / (width / math.sqrt(3)) - 1)
    assert found["difference_percent"] == pytest.approx(more, abs=1e-3)


def _turn(base: float, upper: float) -> Any:
    """The plates' turn by scipy: base about X, upper riding on it; a raised right end is −Y."""
    return Rotation.from_euler("XY", [base, -upper], degrees=True)


def _surface(normal: Any) -> dict[str, float]:
    """Angles of a surface by its upward normal: in both views, at its steepest, and whither."""
    x, y, z = normal / np.linalg.norm(normal)
    return {
        "unit_normal.normal_x": x,
        "unit_normal.normal_y": y,
        "unit_normal.normal_z": z,
        "x_angle.degrees": math.degrees(math.atan(-x / z)),
        "y_angle.degrees": math.degrees(math.atan(-y / z)),
        "tilt.degrees": math.degrees(math.acos(z)),
        "rise_direction.degrees": math.degrees(math.atan2(-y, -x)) % 360,
    }


@pytest.mark.outside("sine.compound-angles", source="scipy Rotation: normals and edges turned")
@pytest.mark.parametrize(("base", "upper"), [(-1.5, 2.0), (1.2, 0.9), (-0.7, -2.4)])
def test_two_hinges_in_figures(call: Call, base: float, upper: float) -> None:
    """What comes level, how the upper plate's top leans, and how edges turn in plan."""
    plates = {"units": "in", "base_center_distance": 5, "upper_center_distance": 4}
    request = {"base_axis": "x", "base_height": base, "upper_height": upper}
    result = call("sine.compound-angles", **plates, **request)["result"]
    angles = [math.degrees(math.asin(base / 5)), math.degrees(math.asin(upper / 4))]
    hinges = {"base_angle.degrees": angles[0], "upper_angle.degrees": angles[1]}
    assert_values(result, hinges)
    turn = _turn(*angles)
    assert_values(result["part_surface"], _surface(turn.inv().apply([0, 0, 1])), rel=1e-8)
    assert_values(result["upper_face"], _surface(turn.apply([0, 0, 1])), rel=1e-8)
    x_edge, y_edge = turn.apply([[1, 0, 0], [0, 1, 0]])
    turns = {
        "x_edge": math.degrees(math.atan2(x_edge[1], x_edge[0])),
        "y_edge": math.degrees(math.atan2(-y_edge[0], y_edge[1])),
    }
    found = {name: result["edge_turns"][name]["degrees"] for name in turns}
    assert found == pytest.approx(turns, abs=1e-8)


@pytest.mark.outside("sine.compound", source="scipy Rotation: the normal turned by the heights set")
def test_a_compound_setting_in_figures(call: Call) -> None:
    """A surface at 20° and −12.5° in the views: its angles, heights to set, and what these miss."""
    slopes = np.tan(np.radians([20, -12.5]))
    normal = np.array([-slopes[0], -slopes[1], 1.0])
    result = call(
        "sine.compound",
        units="in",
        base_center_distance=5,
        upper_center_distance=4,
        base_axis="x",
        frame="part",
        orientation={"kind": "projected-angles", "x_angle": 20, "y_angle": -12.5},
    )["result"]
    assert_values(result["surface_orientation"], _surface(normal))
    set_to = []
    for name, length in (("base", 5), ("upper", 4)):
        hinge = result[name]
        height = round(hinge["height"], 4)
        expected = {
            "height_to_set": height,
            "arcsec_per_step": per_step(hinge["angle"]["degrees"], center_distance=length),
        }
        assert_values(hinge, expected, rel=1e-8)
        set_to.append(
            math.copysign(math.degrees(math.asin(height / length)), hinge["angle"]["degrees"])
        )
    turned = _turn(*set_to).apply(normal / np.linalg.norm(normal))
    off = math.degrees(math.hypot(turned[0], turned[1])) * 3600
    assert result["rotation_check"]["as_set_arcsec"] == pytest.approx(off, rel=1e-4)


@pytest.mark.outside("sine.compound", source="Sines by hand: h = L sin θ, dθ = dh / (L cos θ)")
def test_turned_settings_in_figures(call: Call) -> None:
    """Each setting offered for work that is turned has its own heights and steps."""
    result = call(
        "sine.compound",
        units="in",
        base_center_distance=5,
        upper_center_distance=4,
        base_axis="x",
        frame="part",
        orientation={"kind": "projected-angles", "x_angle": 60, "y_angle": 50},
    )["result"]
    assert result["turned_settings"]
    for setting in result["turned_settings"]:
        for name, length in (("base", 5), ("upper", 4)):
            hinge = setting[name]
            angle = abs(hinge["angle"]["degrees"])
            expected = {
                "height_to_set": round(length * math.sin(math.radians(angle)), 4),
                "arcsec_per_step": per_step(angle, center_distance=length),
            }
            assert_values(hinge, expected, rel=1e-8)
