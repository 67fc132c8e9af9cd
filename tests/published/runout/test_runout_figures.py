"""Figures beside the headline of answers about runout, each worked out apart."""

import cmath
import math

import numpy as np
import pytest
from scipy.optimize import brentq

from support import Call, assert_values

ARCSEC = math.pi / 648_000


def vector(size: float, degrees: float) -> complex:
    """A runout's offset: its size toward a direction."""
    return cmath.rect(size, math.radians(degrees))


@pytest.mark.outside("runout.axis", source="Complex numbers, by hand: a straight line of offsets")
@pytest.mark.parametrize("pivot", [0.0, -2.0])
def test_an_axis_is_a_line_of_offsets(call: Call, pivot: float) -> None:
    """Between 0.3 thou at 20° and 0.5 thou at 140°, 3 in apart, the axis leans by their difference.

    By the law of cosines √(9 + 25 + 15) = 7 tenths in 3 in: 48.13″. A swing moves each station by
    its distance from the pivot times that; a slide moves all by the offset at the pivot.
    """
    near, far = vector(0.0003, 20), vector(0.0005, 140)
    result = call(
        "runout.axis",
        units="in",
        surface="external",
        near={"station": 1, "tir": 0.0006, "high_spot": 20},
        far={"station": 4, "tir": 0.001, "high_spot": 140},
        stations=[5.5, 2],
        pivot_station=pivot,
    )["result"]
    lean = (far - near) / 3
    assert abs(far - near) == pytest.approx(0.0007)
    assert result["tilt_arcsec"] == pytest.approx(48.13, abs=0.005)
    foot = near - (1 - pivot) * lean
    expected = {
        "tilt_arcsec": math.atan(abs(lean)) / ARCSEC,
        "at_stations[0].station": 5.5,
        "at_stations[1].station": 2,
        "at_stations[1].tir.value": 2 * abs(near + lean),
        "corrections[0].near_move": (1 - pivot) * abs(lean),
        "corrections[0].far_move": (4 - pivot) * abs(lean),
        "corrections[1].near_move": abs(foot),
        "corrections[1].far_move": abs(foot),
    }
    assert_values(result, expected, rel=1e-7)


@pytest.mark.outside("runout.budget", source="numpy: every pair of phases of three, on a grid")
def test_one_assembly_in_a_hundred_is_worse(call: Call) -> None:
    """Of three runouts added at every clocking, 99 of 100 sums lie below the percentile.

    The first may stand still; the others take each of 2,000 directions against it.
    """
    tirs = {"adapter": 0.0002, "spindle": 0.00015, "fixture": 0.0001}
    result = call(
        "runout.budget",
        units="in",
        limit_tir=0.0004,
        contributors=[{"name": name, "tir": tir} for name, tir in tirs.items()],
    )["result"]
    turn = np.exp(2j * math.pi * np.arange(2000) / 2000)
    sums = np.abs(0.0002 + 0.00015 * turn[:, np.newaxis] + 0.0001 * turn)
    assert result["best_clocking_tir"] == pytest.approx(0, abs=1e-12)
    assert result["percentile_99_tir"] == pytest.approx(np.quantile(sums, 0.99), rel=2e-3)


@pytest.mark.outside("runout.budget", source="numpy: the least sum over all phases of two others")
def test_one_long_runout_cannot_be_closed(call: Call) -> None:
    """0.5 thou against 0.15 and 0.1 thou leaves at least 0.25 thou, at the best of clockings."""
    tirs = {"adapter": 0.0005, "spindle": 0.00015, "fixture": 0.0001}
    result = call(
        "runout.budget",
        units="in",
        limit_tir=0.0004,
        contributors=[{"name": name, "tir": tir} for name, tir in tirs.items()],
    )["result"]
    turn = np.exp(2j * math.pi * np.arange(500) / 500)
    least = np.min(np.abs(0.0005 + 0.00015 * turn[:, np.newaxis] + 0.0001 * turn))
    assert result["best_clocking_tir"] == pytest.approx(float(least))


@pytest.mark.outside("runout.indicate", source="numpy: a profile made of known lobes")
def test_a_profile_comes_apart_as_it_was_made(call: Call) -> None:
    """Ovality toward 70° and three lobes toward 25° come back; tapping leaves just these."""
    turn = np.arange(0, 360, 15.0)
    angles = np.radians(turn)
    form = 0.0004 * np.cos(2 * (angles - math.radians(70)))
    form += 0.0001 * np.cos(3 * (angles - math.radians(25)))
    shown = 0.0005 * np.cos(angles - math.radians(50)) + form
    result = call(
        "runout.indicate",
        units="in",
        surface="external",
        indicator_resolution=0.00001,
        harmonics=3,
        readings=[
            {"angular_position": a, "reading": r}
            for a, r in zip(turn.tolist(), shown.tolist(), strict=True)
        ],
    )["result"]
    expected = {
        "tir_from_eccentricity": 0.001,
        "tir_of_readings": float(np.ptp(shown)),
        "tir_left_after_tapping": float(np.ptp(form)),
        "form[0].lobes": 2,
        "form[0].amplitude": 0.0004,
        "form[0].high_spot.degrees": 70,
        "form[1].lobes": 3,
        "form[1].amplitude": 0.0001,
        "form[1].high_spot.degrees": 25,
    }
    assert_values(result, expected, rel=1e-7)


@pytest.mark.outside("runout.indicate", source="Right triangle by hand: the normal meets the axis")
@pytest.mark.parametrize("half", [1.5, 30, 45])
def test_where_an_indicator_on_a_cone_senses_its_axis(call: Call, half: float) -> None:
    """Square to a cone, its line meets the axis r tan α past the station z: z + z tan² α.

    At 45° that is twice as far from the apex.
    """
    readings = [{"angular_position": a, "reading": r} for a, r in ((0, 1e-4), (120, 0), (240, 0))]
    result = call(
        "runout.indicate",
        units="in",
        surface="external",
        indicator_resolution=0.0001,
        readings=readings,
        half_angle=half,
        station_from_apex=0.8,
    )["result"]
    tangent = math.tan(math.radians(half))
    assert_values(result, {"sensed_station_from_apex": 0.8 * (1 + tangent**2)})


def _drop(miss: float, radius: float, half: float, tip: float) -> float:
    """How far a ball falls along the cone's normal until it touches, by scipy.

    A point at (x, y, z), x along the axis toward the large end, is (√(y² + z²) − r − x tan α) cos α
    off the surface; at the crest the ball's center is ρ off it, along (−sin α, 0, cos α).
    """

    def gap(drop: float) -> float:
        along = -(tip - drop) * math.sin(half)
        up = radius + (tip - drop) * math.cos(half)
        return (math.hypot(miss, up) - radius - along * math.tan(half)) * math.cos(half) - tip

    return float(brentq(gap, 0, radius / 2, xtol=1e-16, rtol=1e-14))


@pytest.mark.outside("runout.off-crest", source="scipy brentq: a ball lowered onto the cone")
def test_the_false_reading_is_the_difference_of_two_drops(call: Call) -> None:
    """0.02 in beside the crest the tip falls further on the small end: the cone seems steeper.

    The false half angle is that difference over the run's slant, the included angle's twice that.
    """
    run = {"units": "in", "included_angle": 60, "small_diameter": 0.1, "large_diameter": 0.5}
    result = call("runout.off-crest", **run, miss=0.02, tip_radius=0.04)["result"]
    half = math.radians(30)
    small, large = (_drop(0.02, radius, half, 0.04) for radius in (0.05, 0.25))
    false = math.atan((small - large) / (0.2 / math.sin(half)))
    expected = {
        "drop_at_small_end": small,
        "drop_at_large_end": large,
        "false_reading": small - large,
        "false_half_angle_arcsec": false / ARCSEC,
        "false_included_angle_arcsec": 2 * false / ARCSEC,
    }
    assert_values(result, expected, rel=1e-8)


@pytest.mark.outside("runout.off-crest", source="scipy brentq: a ball lowered onto the cone")
def test_at_the_limit_the_miss_takes_all_of_the_tolerance(call: Call) -> None:
    """A tip so far off the crest shows just the false half angle that is allowed."""
    run = {"units": "in", "included_angle": 60, "small_diameter": 0.1, "large_diameter": 0.5}
    request = {**run, "miss": 0.01, "tip_radius": 0.04, "half_angle_tolerance_arcsec": 10}
    miss = call("runout.off-crest", **request)["result"]["limit_miss"]
    half = math.radians(30)
    small, large = (_drop(miss, radius, half, 0.04) for radius in (0.05, 0.25))
    false = math.atan((small - large) / (0.2 / math.sin(half)))
    assert false / ARCSEC == pytest.approx(10, rel=1e-5)


@pytest.mark.outside("runout.v-block", source="Two parallel anvils: 1 + (−1)ⁿ, by hand; Reuleaux")
def test_anvils_see_even_lobes_alone(call: Call) -> None:
    """Between two flat anvils an even form is seen twice, an odd one not at all.

    Three lobes stand out most, thrice, in a block of 60°, whose sides touch them just there.
    """
    result = call("runout.v-block", units="in", vee_angle=90, lobes=3, tir=0.0004)["result"]
    seen = {row["lobes"]: row["two_point_factor"] for row in result["factors"]}
    assert seen == pytest.approx({n: 1 + (-1) ** n for n in range(2, 2 + len(seen))})
    assert len(seen) > 6
    assert_values(result, {"better_vee_angle.degrees": 60, "better_factor": 3})
