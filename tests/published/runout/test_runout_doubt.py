"""What readings leave in doubt: against drawn parts, rounded and read, and scipy's Student."""

import cmath
import math
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.stats import t as student

from halfangle_service.trade.runout import doubt, harmonics
from support import Call

STEP = 0.001
Floats = NDArray[np.float64]


def indicate(call: Call, angles: Any, values: Any, **more: Any) -> dict[str, Any]:
    """Answer of indicating a shaft in millimetres with an indicator that reads to 0.001."""
    readings = [
        {"angular_position": float(a), "reading": round(float(v), 9)}
        for a, v in zip(angles, values, strict=True)
    ]
    return call(
        "runout.indicate",
        units="mm",
        surface="external",
        indicator_resolution=STEP,
        readings=readings,
        **more,
    )


def even(count: int) -> Floats:
    """So many angles in degrees, evenly round a turn."""
    return np.arange(count) * 360.0 / count


def rounded(values: Floats) -> Floats:
    """Readings to the indicator's step."""
    return np.round(values / STEP) * STEP


def test_four_readings_have_one_degree_of_freedom(call: Call) -> None:
    """Of four readings one is to spare: Student's factor is 12.7, not 2; the way out is said."""
    answer = indicate(call, even(4), [0.004, 0.003, -0.003, -0.001])
    found = answer["result"]["eccentricity"]
    assert found["degrees_of_freedom"] == pytest.approx(1)
    assert found["coverage_factor"] == pytest.approx(student.ppf(0.975, 1))
    assert found["expanded_uncertainty"] == pytest.approx(
        found["standard_uncertainty"] * student.ppf(0.975, 1)
    )
    [advice] = [a for a in answer["advisories"] if a["code"] == "eccentricity-below-resolution"]
    assert "send the repeatability" in advice["message"]


@pytest.mark.outside("runout.indicate", source="numpy: 3,000 drawn parts read and rounded")
@pytest.mark.parametrize("count", [4, 5, 6, 8, 12])
def test_opposed_readings_share_their_rounding(call: Call, count: int) -> None:
    """Rounded alike where opposed, the readings err as said: more than as if by themselves."""
    rng = np.random.default_rng(count)
    turn = np.radians(even(count))
    error = []
    for size, toward in rng.uniform((3, 0), (30, 2 * math.pi), (3_000, 2)):
        shown = rounded(size * STEP * np.cos(turn - toward))
        center = 2 / count * np.sum(shown * np.exp(1j * turn))
        error.append((center * cmath.exp(-1j * toward)).real - size * STEP)
    said = indicate(call, even(count), 0.02 * np.cos(turn - 0.3))["result"]
    assert said["uncertainty_by_resolution"] == pytest.approx(float(np.std(error)), rel=0.05)
    alone = STEP / math.sqrt(12) * math.sqrt(2 / count)
    shared = math.sqrt(2) if count % 2 == 0 else 1
    assert said["uncertainty_by_resolution"] == pytest.approx(shared * alone)


def covered(
    count: int, size: tuple[float, float], noise: float, ovality: float, trials: int = 500
) -> tuple[float, float]:
    """Shares of drawn parts whose eccentricity and direction lie within what is said, 0 to 1.

    Lengths in steps of the indicator.
    """
    rng = np.random.default_rng(count)
    turn = np.radians(even(count))
    lengths, directions = [], []
    for _ in range(trials):
        true, toward = rng.uniform(*size), rng.uniform(0, 2 * math.pi)
        shown = true * np.cos(turn - toward) + ovality * np.cos(2 * turn - rng.uniform(0, 6))
        shown = np.round(shown + noise * rng.normal(size=count))
        asked = harmonics.fit_harmonics(turn, shown, 1)
        known = doubt.Readings(turn, 1.0, None)
        along, across = doubt.eccentricity_budgets(
            known, asked, harmonics.fullest_fit(turn, shown, asked)
        )
        center = asked.eccentricity
        lengths.append(abs(abs(center) - true) <= doubt.length_half_width(abs(center), along))
        off = abs(math.degrees(cmath.phase(center * cmath.exp(-1j * toward)))) if center else 0.0
        reach = doubt.direction_half_width(abs(center), across) if center else 180.0
        directions.append(off <= reach)
    return float(np.mean(lengths)), float(np.mean(directions))


@pytest.mark.outside("runout.indicate", source="numpy: drawn parts read with scatter and rounded")
@pytest.mark.parametrize("count", [6, 8, 12, 24])
@pytest.mark.parametrize(("noise", "ovality"), [(0, 0), (0.5, 0), (2, 0), (0.5, 6)])
def test_what_is_said_covers_95_of_100_parts(count: int, noise: float, ovality: float) -> None:
    """Round or oval, still or shaky: the truth lies within ± the uncertainty 95 times in 100."""
    length, direction = covered(count, (4, 12), noise, ovality)
    assert min(length, direction) > 0.93


@pytest.mark.outside("runout.indicate", source="numpy: parts that run true or nearly so, drawn")
@pytest.mark.parametrize("count", [8, 24])
@pytest.mark.parametrize("largest", [0.0, 0.4, 1.5])
def test_near_zero_the_uncertainty_reaches_down_to_none(count: int, largest: float) -> None:
    """A part that runs true shows some eccentricity: what is said covers that it has none."""
    length, direction = covered(count, (0.0, largest), 1.0, 0)
    assert length > 0.93
    assert direction > 0.93


@pytest.mark.outside("runout.indicate", source="numpy: an oval part read at 12 angles")
def test_form_is_no_scatter(call: Call) -> None:
    """An oval part's eccentricity is as well known as a round one's, and the error as small."""
    turn = np.radians(even(12))
    round_part = 0.008 * np.cos(turn - 0.3)
    oval = rounded(round_part + 0.02 * np.cos(2 * turn - 1))
    said = indicate(call, even(12), oval)["result"]
    assert said["residual_rms"] == pytest.approx(0.02 / math.sqrt(2), rel=0.02)
    assert said["eccentricity"]["expanded_uncertainty"] < STEP
    assert said["eccentricity"]["value"] == pytest.approx(0.008, abs=STEP / 2)
    assert said["high_spot"]["expanded_uncertainty"] < 6


def test_form_that_leaks_in_is_counted(call: Call) -> None:
    """At uneven angles an oval part's ovality gets into the eccentricity, and is counted."""
    angles = [0, 30, 55, 100, 140, 200, 230, 300, 320, 345]
    turn = np.radians(angles)
    oval = 0.008 * np.cos(turn) + 0.02 * np.cos(2 * turn - 1)
    said = indicate(call, angles, oval)["result"]["eccentricity"]
    names = [c["name"] for c in said["contributions"]]
    assert "form_not_fitted" in names
    assert abs(said["value"] - 0.008) <= said["expanded_uncertainty"]
    fitted = indicate(call, angles, oval, harmonics=2)["result"]["eccentricity"]
    assert fitted["value"] == pytest.approx(0.008)
    assert fitted["expanded_uncertainty"] < said["expanded_uncertainty"] / 5


def test_repeatability_takes_the_place_of_scatter(call: Call) -> None:
    """Stated, the repeatability counts and not the ovality of four readings; 0 is none."""
    oval = [0.005, 0.002, -0.003, 0.002]
    guessed = indicate(call, even(4), oval)["result"]["eccentricity"]
    assert [c["name"] for c in guessed["contributions"]] == ["scatter"]
    stated = indicate(call, even(4), oval, repeatability=0.001)["result"]
    said = stated["eccentricity"]
    assert [c["name"] for c in said["contributions"]] == ["repeatability"]
    assert said["standard_uncertainty"] == pytest.approx(0.001 / math.sqrt(2))
    assert (said["degrees_of_freedom"], said["not_stated"]) == (None, [])
    still = indicate(call, even(4), oval, repeatability=0)["result"]["eccentricity"]
    assert [c["name"] for c in still["contributions"]] == ["indicator_resolution"]
    three = indicate(call, even(3), [0.004, -0.002, -0.002])["result"]
    assert three["uncertainty_by_scatter"] is None
    assert three["eccentricity"]["not_stated"] == ["repeatability"]


def test_direction_is_worth_what_the_readings_are(call: Call) -> None:
    """Twice as eccentric is half as doubtful; within its own uncertainty any direction may be."""
    turn = np.radians(even(8))
    near, far = (
        indicate(call, even(8), rounded(e * np.cos(turn - 2)), repeatability=0.0005)["result"]
        for e in (0.006, 0.012)
    )
    for shown in (near, far):
        expanded, value = (
            shown["eccentricity"][name] for name in ("expanded_uncertainty", "value")
        )
        assert shown["high_spot"]["expanded_uncertainty"] == pytest.approx(
            math.degrees(math.asin(expanded / value)), rel=0.02
        )
    assert near["high_spot"]["value"]["dms"].endswith("'")
    lost = indicate(call, even(8), rounded(0.0006 * np.cos(turn - 2)), repeatability=0.002)
    high_spot = lost["result"]["high_spot"]
    assert high_spot["expanded_uncertainty"] == high_spot["worst_case"] == 180
    assert "eccentricity-below-resolution" in [a["code"] for a in lost["advisories"]]


@pytest.mark.outside("runout.axis", source="numpy: 400 drawn pairs of sections of a true axis")
def test_axis_that_runs_true_is_covered_near_zero(call: Call) -> None:
    """Where the axis runs true the TIR found is some; 95 times in 100 what is said reaches none."""
    rng = np.random.default_rng(8)
    inside = []
    for _ in range(400):
        near, far = rng.normal(0, 2e-4, (2, 2)) @ np.array([1, 1j])
        sections = {
            name: {
                "station": station,
                "tir": 2 * abs(e),
                "high_spot": math.degrees(cmath.phase(e)),
                "eccentricity_standard_uncertainty": 2e-4,
            }
            for name, station, e in (("near", 0, near), ("far", 50, far))
        }
        answer = call(
            "runout.axis",
            units="mm",
            surface="external",
            stations=[25],
            pivot_station=0,
            **sections,
        )
        tir = answer["result"]["at_stations"][0]["tir"]
        inside.append(tir["value"] <= tir["expanded_uncertainty"])
    assert np.mean(inside) == pytest.approx(0.975, abs=0.02)


@pytest.mark.outside("runout.reversal", source="numpy Monte Carlo of both readings, GUM-S1 way")
def test_reversal_says_how_well_both_are_known(call: Call) -> None:
    """Socket and part scatter as 200,000 drawn pairs of readings do, in length and direction."""
    at_0, at_180 = cmath.rect(0.005, 0.5), cmath.rect(0.002, 3.5)
    rng = np.random.default_rng(6)
    noise = rng.normal(0, 1, (2, 2, 200_000))
    drawn = [
        v + s * (n[0] + 1j * n[1])
        for v, s, n in zip((at_0, at_180), (3e-4, 4e-4), noise, strict=True)
    ]
    sent = {
        name: {
            "tir": 2 * abs(v),
            "high_spot": math.degrees(cmath.phase(v)),
            "eccentricity_standard_uncertainty": s,
        }
        for name, v, s in (("at_0", at_0, 3e-4), ("at_180", at_180, 4e-4))
    }
    result = call("runout.reversal", units="mm", surface="external", **sent)["result"]
    for name, samples in (("socket", drawn[0] + drawn[1]), ("part", drawn[0] - drawn[1])):
        tir, spot = result[f"{name}_tir"], result[f"{name}_high_spot"]
        assert tir["standard_uncertainty"] == pytest.approx(np.abs(samples).std(), rel=0.02)
        turned = np.degrees(
            np.angle(samples * np.exp(-1j * math.radians(spot["value"]["degrees"])))
        )
        assert spot["expanded_uncertainty"] == pytest.approx(
            np.percentile(np.abs(turned), 95), rel=0.02
        )
    bare = {
        name: {k: v for k, v in at.items() if "uncertainty" not in k} for name, at in sent.items()
    }
    unsaid = call("runout.reversal", units="mm", surface="external", **bare)["result"]
    assert unsaid["socket_tir"]["expanded_uncertainty"] is None
    assert unsaid["part_high_spot"]["not_stated"] == [
        f"{name}/eccentricity_standard_uncertainty" for name in ("at_0", "at_180")
    ]
