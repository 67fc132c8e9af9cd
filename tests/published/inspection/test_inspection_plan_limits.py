"""Limits to read and what each means proves, against drawn geometry, simulation and a library."""

import math
from typing import Any

import numpy as np
import pytest
from shapely.geometry import LineString, Point
from uncertainties import UFloat, ufloat
from uncertainties import umath as exact

from inspection_plan_support import (
    BALLS,
    BLUING,
    FACE,
    GAUGES,
    PLATE,
    PLUG,
    ROLLS,
    SOCKET,
    only,
    planned,
    reading,
    setting,
)
from support import Call

Json = dict[str, Any]
ARCSEC = math.degrees(1) * 3600
#: Morse 3: a rate of 0.60235 in a foot (ASME B5.10), 0.938 in at the gauge line, 3.1875 in long.
LARGE, LENGTH = 0.938, 3.1875
HALF = math.atan(0.60235 / 24)
TRIALS = 400_000


def corners(angle: float, size: float) -> list[tuple[float, float]]:
    """Half angles and large diameters at the corners of both tolerances; the angle's in seconds."""
    return [
        (HALF + sign * angle / 2 / ARCSEC, LARGE + other * size)
        for sign in (-1, 1)
        for other in (-1, 1)
    ]


# Limits by drawn geometry ---------------------------------------------------------------------
def over_drawn_rolls(half: float, large: float, roll: float, height: float) -> float:
    """Measure over rolls on blocks of a height, the small end down: a circle slid to the side."""
    small = large - 2 * LENGTH * math.tan(half)
    side = LineString([(small / 2, 0), (large / 2, LENGTH)])
    low, high = 0.0, large + 2 * roll
    for _ in range(80):
        across = (low + high) / 2
        near = side.distance(Point(across, height + roll / 2)) < roll / 2
        low, high = (across, high) if near else (low, across)
    return 2 * (low + roll / 2)


@pytest.mark.outside("inspection.plan", source="shapely: circles tangent to drawn sides")
def test_limits_over_rolls_are_those_of_the_corners(call: Call) -> None:
    """M1 and M2 of cones at the corners of both tolerances bound what is to be read."""
    found = only(call, PLUG, rolls=ROLLS)
    roll, rise = setting(found, "roll_diameter"), setting(found, "stack_rise")
    for name, height in (("lower_measure", 0.0), ("upper_measure", rise)):
        drawn = [over_drawn_rolls(*corner, roll, height) for corner in corners(40, 0.0005)]
        read = reading(found, name)
        assert read["smallest_reading"] == pytest.approx(min(drawn), abs=1e-9)
        assert read["largest_reading"] == pytest.approx(max(drawn), abs=1e-9)
        assert read["smallest_accepted_reading"] is read["largest_accepted_reading"] is None
    differences = [
        over_drawn_rolls(half, LARGE, roll, rise) - over_drawn_rolls(half, LARGE, roll, 0.0)
        for half, _ in corners(40, 0)
    ]
    read = reading(found, "measure_difference")
    assert read["smallest_reading"] == pytest.approx(min(differences), abs=1e-9)
    assert read["largest_reading"] == pytest.approx(max(differences), abs=1e-9)


@pytest.mark.outside("inspection.plan", source="shapely: circles one radius off drawn walls")
def test_limits_over_balls_are_those_of_the_corners(call: Call) -> None:
    """A ball lowered into drawn sockets at the corners touches at the limits of its depth."""
    found = only(call, SOCKET, balls=BALLS)

    def depth(half: float, large: float, ball: float) -> float:
        wall = LineString([(large / 2 + 20 * math.tan(half), -20), (0, large / 2 / math.tan(half))])
        low, high = -10.0, large / 2 / math.tan(half)
        for _ in range(80):
            center = (low + high) / 2
            free = wall.distance(Point(0, center)) > ball / 2
            low, high = (center, high) if free else (low, center)
        return low - ball / 2

    balls = [setting(found, f"{which}_ball_diameter") for which in ("large", "small")]
    for name, ball in zip(("large_ball_depth", "small_ball_depth"), balls, strict=True):
        drawn = [depth(*corner, ball) for corner in corners(40, 0.0005)]
        read = reading(found, name)
        assert read["smallest_reading"] == pytest.approx(min(drawn), abs=1e-8)
        assert read["largest_reading"] == pytest.approx(max(drawn), abs=1e-8)
    apart = [depth(h, LARGE, balls[1]) - depth(h, LARGE, balls[0]) for h, _ in corners(40, 0)]
    read = reading(found, "ball_depth_difference")
    assert read["smallest_reading"] == pytest.approx(min(apart), abs=1e-8)
    assert read["largest_reading"] == pytest.approx(max(apart), abs=1e-8)


@pytest.mark.outside("inspection.plan", source="Two cones slid together, the gap walked along")
@pytest.mark.parametrize(("feature", "internal"), [(PLUG, False), (SOCKET, True)])
def test_the_share_marked_is_where_the_gap_is_within_the_film(
    call: Call, feature: Json, internal: bool
) -> None:
    """Stations at which part and gauge stand no further apart than the film, of all of them."""
    read = reading(only(call, feature, bluing=BLUING), "marked_share_percent")
    z = np.linspace(0, LENGTH, 200_001)
    shares = []
    for error in (-40, 40):
        for film in (0.00004, 0.00012):
            part, gauge = HALF + error / 2 / ARCSEC, HALF
            outer, inner = (part, gauge) if internal else (gauge, part)
            # Pushed together until they touch; across the axis, then square to the gauge's side.
            between = (LARGE / 2 - z * math.tan(outer)) - (LARGE / 2 - z * math.tan(inner))
            gap = (between - between.min()) * math.cos(gauge)
            shares.append(100 * float(np.mean(gap <= film)))
    assert read["smallest_reading"] == pytest.approx(min(shares), abs=0.02)


# What is proved -------------------------------------------------------------------------------
def simulated(found: Json, true_errors: np.ndarray) -> float:
    """Share of parts, in percent of 1, whose error keeps ± 40 seconds."""
    assert found["angle_proof"]["proves_tolerance"] is True
    return float(np.mean(np.abs(true_errors) <= 40))


def drawn(rng: np.random.Generator, limit: float) -> np.ndarray:
    """Errors within ± a limit, one as likely as another."""
    return rng.uniform(-limit, limit, TRIALS)


@pytest.mark.outside("inspection.plan", source="Monte Carlo: parts that read the limit over rolls")
@pytest.mark.parametrize("side", ["smallest", "largest"])
def test_what_reads_the_limit_over_rolls_conforms_with_95_percent(call: Call, side: str) -> None:
    """Of parts that read just the accepted difference 95 of 100 keep the tolerance."""
    found = only(call, PLUG, rolls=ROLLS)
    read = reading(found, "measure_difference")[f"{side}_accepted_reading"]
    rng = np.random.default_rng(1)
    difference = read - drawn(rng, 0.0001) + drawn(rng, 0.0001)
    rise = setting(found, "stack_rise") - drawn(rng, 0.00003)
    true = (2 * np.arctan(difference / 2 / rise) - 2 * HALF) * ARCSEC
    assert simulated(found, true) == pytest.approx(0.95, abs=0.002)


@pytest.mark.outside("inspection.plan", source="Monte Carlo: parts that read the limit over balls")
def test_what_reads_the_limit_over_balls_conforms_with_95_percent(call: Call) -> None:
    """Of sockets that read just the accepted difference 95 of 100 keep the tolerance."""
    found = only(call, SOCKET, balls=BALLS)
    read = reading(found, "ball_depth_difference")["largest_accepted_reading"]
    rng = np.random.default_rng(2)
    large = setting(found, "large_ball_diameter") - drawn(rng, 0.00002)
    small = setting(found, "small_ball_diameter") - drawn(rng, 0.00002)
    apart = read - drawn(rng, 0.0001) + drawn(rng, 0.0001)
    centers = apart + small / 2 - large / 2
    true = (2 * np.arcsin((large - small) / 2 / centers) - 2 * HALF) * ARCSEC
    assert simulated(found, true) == pytest.approx(0.95, abs=0.003)


@pytest.mark.outside("inspection.plan", source="Monte Carlo: rises read on a plate as it may stand")
@pytest.mark.parametrize("side", ["smallest", "largest"])
def test_what_reads_the_limit_on_a_plate_conforms_with_95_percent(call: Call, side: str) -> None:
    """Of plugs that rise by just the limit 95 of 100 keep it, yaw and unlike blocks included."""
    yaw, warm = 1500, 4.0
    plate = {
        **PLATE,
        "axis_yaw_error_limit_arcsec": yaw,
        "temperature_celsius": 20 + warm,
        "block_material": "tungsten-carbide",
    }
    found = only(call, PLUG, plate=plate)
    rise = reading(found, "indicator_rise")[f"{side}_accepted_reading"]
    rng = np.random.default_rng(3)
    # Coefficients of the published table: carbide 4.23 ± 0.1, steel 11.5 ± 1.0 in 10⁻⁶ a kelvin.
    spread = {
        part["name"]: part["input_value"]
        for part in found["angle_proof"]["angle_error_arcsec"]["contributions"]
    }
    blocks = 4.23e-6 + drawn(rng, spread["block_expansion"])
    steel = 11.5e-6 + drawn(rng, spread["plate_expansion"])
    stack = setting(found, "height") + drawn(rng, 0.00002)
    lift = stack * (1 + blocks * warm) + drawn(rng, 0.00005) + drawn(rng, 0.00005) / 2
    centers = (5 + drawn(rng, 0.0001)) * (1 + steel * warm)
    face = np.arcsin(lift / centers) + drawn(rng, 0.0001) / 5
    seen = np.arcsin(np.sin(face) * np.cos(drawn(rng, yaw) / ARCSEC)) + drawn(rng, 3) / ARCSEC
    lean = np.arctan((rise - drawn(rng, 0.00005)) / setting(found, "indicator_travel"))
    true = 2 * (seen + lean - HALF) * ARCSEC
    assert simulated(found, true) == pytest.approx(0.95, abs=0.003)


@pytest.mark.outside("inspection.plan", source="Monte Carlo: films, gauges and eyes as they may be")
def test_the_least_share_accepted_conforms_with_95_percent(call: Call) -> None:
    """Of plugs marked over just the accepted share 95 of 100 at least keep the tolerance.

    Not many more: a share judged too large hides more than one judged too small shows.
    """
    found = only(call, PLUG, bluing=BLUING)
    share = reading(found, "marked_share_percent")["smallest_accepted_reading"] / 100
    assert 0.2 < share < 1.0
    rng = np.random.default_rng(4)
    film = 0.00008 + drawn(rng, 0.00004)
    marked = share - drawn(rng, 0.1)
    # The film over the share is the gap at the open end, and that over the slant the half angle's.
    error = 2 * film / marked / (LENGTH / math.cos(HALF)) * ARCSEC
    true = error + drawn(rng, 3)
    assert 0.95 <= float(np.mean(np.abs(true) <= 40)) <= 0.985


@pytest.mark.outside("inspection.plan", source="`uncertainties`: derivatives of the relations")
def test_own_uncertainties_are_a_library_s(call: Call) -> None:
    """Standard uncertainties of angle and size follow from the readings' by the relations."""

    def limited(value: float, limit: float) -> UFloat:
        return ufloat(value, limit / math.sqrt(3))

    found = only(call, PLUG, rolls=ROLLS)
    lower, upper = (
        limited(reading(found, f"{place}_measure")["expected_reading"], 0.0001)
        for place in ("lower", "upper")
    )
    rise = limited(setting(found, "stack_rise"), 0.00003)
    roll = limited(setting(found, "roll_diameter"), 0.00002)
    half = exact.atan((upper - lower) / (2 * rise))
    proof = found["angle_proof"]["angle_error_arcsec"]
    assert proof["standard_uncertainty"] == pytest.approx(2 * half.s * ARCSEC, rel=1e-4)
    tangent = (upper - lower) / (2 * rise)
    large = lower - roll * (1 + 1 / exact.cos(half)) + 2 * (LENGTH - roll / 2) * tangent
    size = found["size_proof"]["large_diameter_error"]
    assert size["standard_uncertainty"] == pytest.approx(large.s, rel=1e-4)
    assert size["value"] == 0.0

    found = only(call, PLUG, gauges=GAUGES)
    depth = limited(reading(found, "gauge_depth")["expected_reading"], 0.001)
    gauge, slope = limited(0.93, 0.00005), limited(HALF, 40 / 2 / ARCSEC)
    mouth = gauge + 2 * depth * exact.tan(slope)
    size = found["size_proof"]["large_diameter_error"]
    assert size["standard_uncertainty"] == pytest.approx(mouth.s, rel=1e-4)
    low, high = (size_limit(found, side) for side in ("smallest", "largest"))
    assert low == pytest.approx(-high)
    read = reading(found, "gauge_depth")
    deep = (LARGE + high - 0.93) / 2 / math.tan(HALF)
    assert read["largest_accepted_reading"] == pytest.approx(deep, abs=1e-9)
    shallow = (LARGE + low - 0.93) / 2 / math.tan(HALF)
    assert read["smallest_accepted_reading"] == pytest.approx(shallow, abs=1e-9)


def size_limit(found: Json, side: str) -> float:
    """Error of the large diameter that is accepted at one side."""
    return float(found["size_proof"][f"{side}_accepted_error"])


@pytest.mark.outside(
    "inspection.plan", source="Rectangular error by hand: 90 % of it at each limit"
)
def test_a_comparator_proves_what_its_error_leaves(call: Call) -> None:
    """±90″ read to ±60″: 95 % conform within 90 − 0.9 · 60 = 36″; ±40″ is not proved at all.

    The edition of 2013 keeps two standard uncertainties, 69.28″, off each limit.
    """
    loose = {**PLUG, "included_angle_tolerance_arcsec": 90}
    comparator = {"instrument_angle_error_limit_arcsec": 60}
    found = only(call, loose, comparator=comparator)
    proof = found["angle_proof"]
    assert proof["largest_accepted_error_arcsec"] == pytest.approx(36, abs=1e-3)
    assert proof["smallest_accepted_error_arcsec"] == pytest.approx(-36, abs=1e-3)
    read = reading(found, "measured_included_angle")
    nominal = 2 * math.degrees(HALF)
    for side, off in (("smallest", -1), ("largest", 1)):
        assert read[f"{side}_reading"] == pytest.approx(nominal + off * 90 / 3600)
        accepted = read[f"{side}_accepted_reading"]
        assert accepted == pytest.approx(nominal + off * 36 / 3600, abs=1e-6)
    assert proof["angle_error_arcsec"]["value"] == 0.0
    earlier = only(call, loose, comparator=comparator, decision_rule="iso-14253-1-2013")
    band = 2 * 60 / math.sqrt(3)
    largest = earlier["angle_proof"]["largest_accepted_error_arcsec"]
    assert largest == pytest.approx(90 - band, abs=1e-6)
    tight = only(call, PLUG, comparator=comparator)["angle_proof"]
    assert tight["proves_tolerance"] is False
    assert tight["largest_accepted_error_arcsec"] is None


@pytest.mark.outside("inspection.plan", source="By hand: a face of 15° seen under an angle of 15°")
def test_a_face_is_read_as_its_own_angle(call: Call) -> None:
    """On a comparator a face reads its angle; on a plate a minute of it rises by its tangent."""
    plan = planned(call, FACE, plate=PLATE, comparator={"instrument_angle_error_limit_arcsec": 20})
    on_screen, on_plate = plan["inspections"]
    read = reading(on_screen, "measured_angle")
    assert read["expected_reading"] == pytest.approx(15)
    assert read["largest_reading"] == pytest.approx(15 + 1 / 60)
    travel = setting(on_plate, "indicator_travel")
    assert travel == pytest.approx(0.8 * 0.5 / math.sin(math.radians(15)))
    rise = reading(on_plate, "indicator_rise")
    minute = travel * math.tan(math.radians(1 / 60))
    middle = rise["expected_reading"]
    assert rise["largest_reading"] - middle == pytest.approx(minute, rel=1e-6)
    assert middle - rise["smallest_reading"] == pytest.approx(minute, rel=1e-6)
    feature = plan["feature"]
    assert feature["face_angle"]["degrees"] == 15
    assert feature["smallest_allowed_angle"]["degrees"] == pytest.approx(15 - 1 / 60)
    assert feature["largest_allowed_angle"]["degrees"] == pytest.approx(15 + 1 / 60)
    assert feature["angle_band_arcsec"] == pytest.approx(120)


@pytest.mark.outside(
    "inspection.plan",
    source="ASME B5.10 (from memory): Morse 3 is 0.60235 in a foot, 0.938 at the gauge line, 0.778 "
    "at the small end, 3 3/16 in long",
)
def test_a_designation_is_enough(call: Call) -> None:
    """Morse 3 brings slope, gauge diameter and length, for the plug and for its socket."""
    for feature in (PLUG, SOCKET):
        found = planned(call, feature, bluing=BLUING)["feature"]
        assert found["included_angle"]["degrees"] == pytest.approx(2 * math.degrees(HALF))
        assert found["half_angle"]["degrees"] == pytest.approx(math.degrees(HALF))
        assert (found["large_diameter"], found["length"]) == (0.938, 3.1875)
        assert found["small_diameter"] == pytest.approx(0.778, abs=1e-4)


@pytest.mark.outside(
    "inspection.plan",
    source="ISO 1947:1973 by its R10 rule, from memory: AT5 over 63 to 100 mm is 100 microradians",
)
@pytest.mark.parametrize(
    ("disposition", "low", "high"), [("symmetric", -50, 50), ("plus", 0, 100), ("minus", -100, 0)]
)
def test_a_grade_is_a_tolerance(call: Call, disposition: str, low: float, high: float) -> None:
    """A grade's band, laid to either side of the nominal angle or to one of them."""
    feature = {
        "kind": "taper-plug",
        "one_in_x": 20,
        "gauge_diameter": 40,
        "length": 80,
        "cone_angle_grade": "AT5",
        "disposition": disposition,
    }
    found = planned(call, feature, units="mm", bluing={})["feature"]
    nominal = 2 * math.atan(1 / 40)
    for side, off in (("smallest", low), ("largest", high)):
        angle = math.radians(found[f"{side}_allowed_angle"]["degrees"])
        assert (angle - nominal) * 1e6 == pytest.approx(off, abs=1e-6)
    assert found["angle_band_arcsec"] == pytest.approx(100e-6 * ARCSEC)
