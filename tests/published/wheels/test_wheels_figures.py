"""Figures beside the headline of every answer about wheels, each worked out apart."""

import math
from typing import Any

import mpmath
import numpy as np
import pytest

from support import Call, assert_values

SPEED: dict[str, Any] = {
    "units": "in",
    "wheel_diameter": 7,
    "rpm": 3450,
    "new_diameter": 8,
    "worn_diameter": 6,
    "marked_rpm": 3600,
    "marked_m_per_s": 33,
    "marked_ft_per_min": 7300,
    "largest_machine_rpm": 3500,
}


@pytest.mark.outside("wheels.speed", source="By hand: n = v / (π D), D that of the new wheel")
def test_every_limit_is_a_spindle_speed(call: Call) -> None:
    """Marks in surface speed hold for the new wheel: 33 m/s at 203.2 mm is 3101.64 a minute.

    33 × 60 / (π × 0.2032); 7300 ft/min over π × 8/12 ft is 3485.49. The lowest of all limits is the
    highest speed; 3450 is 111.23 % of it.
    """
    result = call("wheels.speed", **SPEED)["result"]
    limits = {
        "marked_rpm": 3600,
        "marked_m_per_s": 33 * 60 / (math.pi * 8 * 0.0254),
        "marked_ft_per_min": 7300 / (math.pi * 8 / 12),
        "largest_machine_rpm": 3500,
    }
    found = {limit["name"]: limit for limit in result["limits"]}
    assert {name: limit["rpm"] for name, limit in found.items()} == pytest.approx(limits)
    shares = {name: limit["share_percent"] for name, limit in found.items()}
    assert shares == pytest.approx({name: 345_000 / limit for name, limit in limits.items()})
    assert {name for name, limit in found.items() if limit["over_limit"]} == {"marked_m_per_s"}
    assert result["limit_rpm"] == pytest.approx(3101.64, abs=0.005)
    assert result["limit_rpm"] == pytest.approx(limits["marked_m_per_s"])


@pytest.mark.parametrize("name", ["marked_rpm", "marked_ft_per_min", "largest_machine_rpm"])
def test_the_lowest_limit_is_the_largest_speed(call: Call, name: str) -> None:
    """Whichever limit is made the lowest is the one that counts."""
    lowest = {"marked_rpm": 3000.0, "marked_ft_per_min": 6283.1853, "largest_machine_rpm": 3000.0}
    result = call("wheels.speed", **{**SPEED, name: lowest[name]})["result"]
    assert result["limit_rpm"] == pytest.approx(3000, rel=1e-7)


@pytest.mark.outside("wheels.speed", source="By hand: surface speed is as the diameter")
def test_a_worn_wheel_runs_slower_at_its_rim(call: Call) -> None:
    """From 7 to 6 in a seventh of the surface speed is lost: π × 0.5 ft × 3450 = 5419.25 ft/min."""
    worn = {
        "worn.worn_diameter": 6,
        "worn.loss_percent": 100 / 7,
        "worn.surface_speed_ft_per_min": math.pi / 2 * 3450,
        "worn.rpm_to_restore": 3450 * 7 / 6,
        "worn.surface_speed_m_per_s": math.pi * 6 * 0.0254 * 3450 / 60,
    }
    request = {**SPEED, "marked_rpm": 4100, "largest_machine_rpm": 5000}
    request |= {"marked_m_per_s": None, "marked_ft_per_min": None}
    assert_values(call("wheels.speed", **request)["result"], worn)


TWO_FLANKS: dict[str, Any] = {
    "units": "in",
    "work": {"kind": "face", "face_angle": 40, "rise": 0.1},
    "other_side": {
        "kind": "cone",
        "included_angle": 100,
        "large_diameter": 0.4,
        "small_diameter": 0.2,
    },
    "wheel_width": 0.75,
    "edge_flat": 0.05,
    "overrun": 0.02,
    "dresser": {"kind": "sine-base", "center_distance": 2},
    "set": "inch-81",
    "depth_per_pass": 0.01,
}


@pytest.mark.outside("wheels.flank", source="Right triangles by hand; mpmath for the stack's angle")
def test_a_flank_in_figures(call: Call) -> None:
    """Of a flank at 40° that rises 0.1 in, overrun by 0.02 in at each end, every figure.

    Its slope is s = 0.1 / sin 40° + 0.04 long, s cos 40° wide, s sin 40° deep; a pass of 0.01 in
    takes 0.01 cos 40° square to it, or is fed 0.01 / tan 40° along the axis. 2 in × sin 40° is
    1.285575 in, so blocks of the 81-piece set come to 1.2856 in; θ = asin(h/L) turns by
    1 / (L cos θ) for one of height, and a bench step is 0.0001 in.
    """
    result = call("wheels.flank", **TWO_FLANKS)["result"]
    sine, cosine = math.sin(math.radians(40)), math.cos(math.radians(40))
    slant = 0.1 / sine + 0.04
    as_set = mpmath.degrees(mpmath.asin(mpmath.mpf("0.6428")))
    flank = {
        "angle_from_axis.degrees": 40,
        "angle_from_side.degrees": 50,
        "slant_length": slant,
        "width": slant * cosine,
        "straight_slant_length": slant,
        "depth_to_dress": slant * sine,
        "last_pass_depth": slant * sine - 12 * 0.01,
        "infeed_normal": 0.01 * cosine,
        "infeed_axial": 0.01 * cosine / sine,
        "dresser_setting.arcsec_per_step": math.degrees(0.0001 / (2 * cosine)) * 3600,
        "dresser_setting.height": 2 * sine,
        "dresser_setting.stack.height_as_set": 1.2856,
        "dresser_setting.stack.angle_as_set.degrees": float(as_set),
    }
    assert_values(result["flanks"][0], flank)
    off = result["flanks"][0]["dresser_setting"]["stack"]["deviation_arcsec"]
    assert off == pytest.approx(float((as_set - 40) * 3600), abs=1e-6)
    assert off == pytest.approx(3.336, abs=1e-3)


@pytest.mark.outside("wheels.flank", source="Right triangles by hand")
def test_two_flanks_together(call: Call) -> None:
    """Least width and passes are those of both flanks, the flat between them added once.

    The cone of 100° rises 0.1 in at 50°: 0.1 / tan 50° + 0.04 cos 50° wide and 0.1306 in deep, 14
    passes of 0.01 in; the face at 40° is 0.1257 in deep, 13 passes.
    """
    result = call("wheels.flank", **TWO_FLANKS)["result"]
    widths = [0.1 / math.tan(a) + 0.04 * math.cos(a) for a in map(math.radians, (40, 50))]
    assert result["wheel_width_needed"] == pytest.approx(sum(widths) + 0.05)
    assert [flank["passes"] for flank in result["flanks"]] == [13, 14]
    assert result["passes"] == 27


@pytest.mark.outside("wheels.flank", source="By hand: 8°20′ in degrees, 2′ in seconds")
def test_a_scale_is_read_at_a_whole_graduation(call: Call) -> None:
    """8°18′ on a vernier of 5′ is read at 8°20′, which is 8 1/3 degrees."""
    work = {"kind": "face", "face_angle": "8 18", "rise": 0.05}
    dresser = {"kind": "scale", "graduation": "0 05"}
    request = {**TWO_FLANKS, "set": None, "work": work, "dresser": dresser}
    setting = call("wheels.flank", **request)["result"]["flanks"][0]["dresser_setting"]
    assert_values(setting, {"scale_reading.degrees": 25 / 3, "deviation_arcsec": 120})


@pytest.mark.outside("wheels.dressing", source="By hand: a chord, and way over speed")
def test_times_and_traverses_of_a_dress(call: Call) -> None:
    """A nose of 0.5 mm radius 0.04 mm deep touches 2 √(0.04 − 0.0016) = 0.391918 mm of the wheel.

    At an overlap of 4 it moves a quarter of that a turn, at 1200 a minute 117.58 mm/min; 24 mm and
    two overruns of 3 mm take 15.31 s, three passes thrice that. Overlap ratios of the guides are 2
    to 3 roughing, 3 to 4 general, 4 to 8 finishing (grinding textbooks, from memory).
    """
    request = {"units": "mm", "rpm": 1200, "nose_radius": 0.5, "depth_per_pass": 0.04}
    more = {"overlap_ratio": 4, "width_to_dress": 24, "overrun": 3, "passes": 3}
    result = call("wheels.dressing", **request, **more)["result"]
    width = 2 * math.sqrt(0.04 - 0.0016)
    seconds = 60 * 30 / (width / 4 * 1200)
    assert seconds == pytest.approx(15.31, abs=0.005)
    times = {"pass_seconds": seconds, "total_seconds": 3 * seconds}
    assert_values(result, {**times, "overlap_ratio": 4, "total_depth": 0.12})
    for guide, low, high in ((0, 2, 3), (1, 3, 4), (2, 4, 8)):
        expected = {
            "overlap_low": low,
            "overlap_high": high,
            "largest_traverse": width * 1200 / low,
            "smallest_traverse": width * 1200 / high,
        }
        assert_values(result["guides"][guide], expected)


def _hyperbola(wheel_radius: float, height: float, along: Any) -> Any:
    """Radius of a wheel dressed at 30° by a diamond off its axis: √((q₀ − x tan 30°)² + e²)."""
    start = math.sqrt(wheel_radius**2 - height**2)
    return np.hypot(start - along * math.tan(math.radians(30)), height)


@pytest.mark.outside("wheels.dressing-errors", source="numpy: chord and bow of the swept path")
def test_a_worn_wheel_in_figures(call: Call) -> None:
    """On the worn wheel the diamond's height turns and bends the flank more.

    The half angle is that of the chord of the swept path, the form its greatest distance from it.
    """
    cone = {"units": "in", "included_angle": 60, "large_diameter": 0.75, "small_diameter": 0.05}
    request = {**cone, "wheel_diameter": 7, "worn_diameter": 5, "diamond_height": 0.4}
    result = call("wheels.dressing-errors", **request)["result"]
    along = np.linspace(0, 0.35 / math.tan(math.radians(30)), 20_001)
    worn, fresh = (_hyperbola(radius, 0.4, along) for radius in (2.5, 3.5))
    chord = math.atan((worn[0] - worn[-1]) / along[-1])
    bow = (worn - (worn[0] - math.tan(chord) * along)) * math.cos(chord)
    assert result["worn"]["worn_diameter"] == 5
    assert result["worn"]["half_angle_error_arcsec"] == pytest.approx(
        (math.degrees(chord) - 30) * 3600
    )
    assert result["worn"]["straightness"] == pytest.approx(np.ptp(bow), rel=1e-6)
    # Half of 0.75 − 0.05 over sin 30°.
    assert_values(result, {"slant_length": 0.7, "half_angle.degrees": 30})
    turned = math.atan((fresh[0] - fresh[-1]) / along[-1]) - math.radians(30)
    error = {
        "included_angle_error_arcsec": 2 * math.degrees(turned) * 3600,
        "end_to_end": 0.7 * turned,
    }
    assert_values(result["errors"][0], error, rel=1e-6)
    diameters = [row["work_diameter"] for row in result["at_stations"]]
    assert diameters == pytest.approx(0.05 + 2 * (3.5 - fresh[::2000]), rel=1e-12)


@pytest.mark.outside("wheels.setup-errors", source="numpy: least distance from an axis, by hand")
def test_a_set_up_in_figures(call: Call) -> None:
    """A 12 in wheel 0.1 in off the work's axis: angle as ground, form and stations.

    Plunged, a flat wheel is a cylinder along the slope wanted. At y to its middle it stands
    b = R − √(R² − y²) back from the cone, square to it, so at station z it is
    r₀ + s sin α + b cos α over the axis, with s cos α = z + b sin α. The radius ground is the least
    distance of these points from the axis at y = 0.1, which numpy searches.
    """
    cone = {"units": "in", "included_angle": 60, "large_diameter": 0.75, "small_diameter": 0.5}
    way = {"wheel_diameter": 12, "grinder": "surface", "way": "sine-plate", "feed": "plunge"}
    result = call("wheels.setup-errors", **cone, **way, axis_offset=0.1)["result"]
    sine, cosine = math.sin(math.radians(30)), math.cos(math.radians(30))
    stations = np.linspace(0, 0.125 * cosine / sine, 11)
    across = np.linspace(0, 0.1, 100_001)
    back = 6 - np.sqrt(36 - across**2)
    slopes = (stations[:, np.newaxis] + back * sine) / cosine
    radii = np.min(np.hypot(0.25 + slopes * sine + back * cosine, across - 0.1), axis=1)
    slope, start = np.polyfit(stations, radii, 1)
    bow = (radii - start - slope * stations) * math.cos(math.atan(slope))
    as_ground = (result["as_ground"]["degrees"] - 30) * 3600
    assert as_ground == pytest.approx((math.degrees(math.atan(slope)) - 30) * 3600, abs=1e-3)
    assert result["errors"][0]["straightness"] == pytest.approx(np.ptp(bow), rel=5e-3)
    off = 2 * (math.degrees(math.atan(slope)) - 30) * 3600
    assert result["errors"][0]["included_angle_error_arcsec"] == pytest.approx(off, abs=2e-3)
    assert result["half_angle"]["degrees"] == 30
    rows = result["at_stations"]
    assert [row["station_from_small_end"] for row in rows] == pytest.approx(stations)
    assert [row["diameter"] for row in rows] == pytest.approx(2 * radii, abs=1e-10)
    wanted = [row["wanted_diameter"] for row in rows]
    assert wanted == pytest.approx(0.5 + 2 * stations * sine / cosine)


@pytest.mark.outside("wheels.choose", source="Sums by hand: set-up and check once, pieces each")
def test_what_was_weighed_is_counted(call: Call) -> None:
    """A half angle of 22.5° is that of 45°; two ways described are two considered.

    Set up in 20 minutes and measured in 10, four pieces of 7 minutes are done after 58.
    """
    minutes = {"setup_minutes": 20, "inspection_minutes": 10}
    request = {
        "units": "in",
        "included_angle": 45,
        "large_diameter": 0.75,
        "small_diameter": 0.05,
        "wheel_diameter": 7,
        "included_angle_tolerance_arcsec": 70,
        "ways": {
            "sine_plate": {"center_distance": 5, "stack_error_limit": 2e-05, **minutes},
            "wheel_side": {"usable_width": 1, "swivel_error_limit_arcsec": 60, **minutes},
        },
        "pieces": 4,
        "minutes_per_piece": 7,
    }
    result = call("wheels.choose", **request)["result"]
    assert_values(result, {"considered": 2, "half_angle.degrees": 22.5})
    assert len(result["ways"]) == 2
    for way in result["ways"]:
        assert_values(way, {"first_piece_minutes": 37, "total_minutes": 58})
