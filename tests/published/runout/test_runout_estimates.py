"""Estimates of runout: vectors of unknown phase by brute force, vectors found by error laws."""

import cmath
import math

import numpy as np
import pytest
from scipy import stats

from estimates_support import assert_found
from halfangle_service.registry import load_registry
from support import Call, assert_values, value_at

TURN = np.exp(2j * math.pi * (np.arange(1500) + 0.5) / 1500)


@pytest.mark.outside("runout.budget", source="numpy: sums of three vectors on a grid of phases")
@pytest.mark.outside("jobs.center", source="numpy: sums of three vectors on a grid of phases")
@pytest.mark.outside("centers.adapter", source="numpy: sums of three vectors on a grid of phases")
@pytest.mark.parametrize(
    ("name", "path", "tirs"),
    [
        ("runout.budget", "tir", (0.0001, 0.00005, 0.00005)),
        ("jobs.center", "runout_budget.tir", (0.0001, 0.00005, 0.00005)),
        # Rocking: 15.384″ over 3 in, full movement, is 0.0004475 in; at the nose, none.
        ("centers.adapter", "tir", (0.0001, 0.0002, 0.0004475)),
        ("centers.adapter", "tir_at_nose", (0.0001, 0.0002, 0.0)),
    ],
)
def test_a_chain_of_unknown_phases(
    call: Call, name: str, path: str, tirs: tuple[float, ...]
) -> None:
    """Of runouts clocked anyhow, squares add to the mean square, and lengths to the worst case.

    How many assemblies keep the root mean square, and what 95 of 100 keep, by every pair of phases
    of the second and third against the first.
    """
    request = dict(load_registry().operations[name].example)
    estimate = value_at(call(name, **request)["result"], path)
    sums = np.abs(tirs[0] + tirs[1] * TURN[:, np.newaxis] + tirs[2] * TURN)
    square = math.fsum(tir**2 for tir in tirs)
    expected = {
        "standard_uncertainty": math.sqrt(square),
        "worst_case": math.fsum(tirs),
        "coverage_probability": 0.95,
    }
    assert_values(estimate, expected, rel=1e-6)
    assert estimate["expanded_uncertainty"] == pytest.approx(np.quantile(sums, 0.95), rel=5e-3)
    within = 100 * float(np.mean(sums <= math.sqrt(square)))
    assert estimate["rms_share_percent"] == pytest.approx(within, abs=0.7)
    for row, tir in zip(estimate["contributions"], tirs, strict=True):
        part = {
            "input_value": tir,
            "sensitivity": 1,
            "standard_uncertainty": tir,
            "worst_case": tir,
            "share_percent": 100 * tir**2 / square,
        }
        assert_values(row, part, rel=1e-6)


@pytest.mark.outside("runout.axis", source="Law of propagation, JCGM 100:2008, 5.1.2, by hand")
def test_an_axis_beyond_its_readings_is_less_sure(call: Call) -> None:
    """At 5.5 in, of readings at 1 and 4 in, the nearer counts −½ and the farther 1½; TIR twice."""
    near, far = (cmath.rect(e, math.radians(at)) for e, at in ((0.0003, 20), (0.0005, 140)))
    [found] = call(
        "runout.axis",
        units="in",
        surface="external",
        near={
            "station": 1,
            "tir": 0.0006,
            "high_spot": 20,
            "eccentricity_standard_uncertainty": 1e-5,
        },
        far={
            "station": 4,
            "tir": 0.001,
            "high_spot": 140,
            "eccentricity_standard_uncertainty": 2e-5,
        },
        stations=[5.5],
        pivot_station=0,
    )["result"]["at_stations"]
    there = -0.5 * near + 1.5 * far
    assert_found(found["tir"], 2 * abs(there), [(1e-5, -1), (2e-5, 3)])
    toward = math.degrees(cmath.phase(there)) % 360
    across = math.degrees(1 / abs(there))
    assert_found(found["high_spot"], toward, [(1e-5, -0.5), (2e-5, 1.5)], across)


@pytest.mark.outside("runout.reversal", source="Law of propagation, JCGM 100:2008, 5.1.2, by hand")
def test_half_of_each_reading_is_in_a_reversal(call: Call) -> None:
    """Socket and part are half the sum and half the difference: each reading counts one half.

    Of the part's direction the second reading counts the other way, which no normal error shows.
    """
    first, second = (cmath.rect(e, math.radians(at)) for e, at in ((0.005, 30), (0.002, 200)))
    result = call(
        "runout.reversal",
        units="mm",
        surface="external",
        at_0={"tir": 0.01, "high_spot": 30, "eccentricity_standard_uncertainty": 1e-4},
        at_180={"tir": 0.004, "high_spot": 200, "eccentricity_standard_uncertainty": 2e-4},
    )["result"]
    for name, whole in (("socket", first + second), ("part", first - second)):
        offset = whole / 2
        assert_found(result[f"{name}_tir"], 2 * abs(offset), [(1e-4, 1), (2e-4, 1)])
        toward = math.degrees(cmath.phase(offset)) % 360
        across = math.degrees(1 / abs(offset))
        assert_found(result[f"{name}_high_spot"], toward, [(1e-4, 0.5), (2e-4, 0.5)], across)


@pytest.mark.outside("runout.indicate", source="numpy least squares; scipy: Student's t")
def test_scatter_of_few_readings_takes_student(call: Call) -> None:
    """Twelve readings carry four harmonics and a mean, nine figures: three are to spare.

    What the fit of all leaves, over three, is the scatter; it acts by √(2/12) on the eccentricity,
    and 95 of 100 are covered by Student's 3.182.
    """
    angles = np.radians(np.arange(0, 360, 30.0))
    drawn = np.random.default_rng(1).normal(0, 3e-5, 12)
    shown = 0.0005 * np.cos(angles - math.radians(50)) + drawn
    result = call(
        "runout.indicate",
        units="in",
        surface="external",
        indicator_resolution=0.00001,
        readings=[
            {"angular_position": a, "reading": r}
            for a, r in zip(np.degrees(angles).tolist(), shown.tolist(), strict=True)
        ],
    )["result"]
    orders = np.arange(1, 5)
    design = np.column_stack(
        [np.ones(12), *(f(k * angles) for k in orders for f in (np.cos, np.sin))]
    )
    fitted, left, *_ = np.linalg.lstsq(design, shown)
    eccentricity = math.hypot(fitted[1], fitted[2])
    scatter = math.sqrt(float(left[0]) / 3)
    spread = scatter * math.sqrt(2 / 12)
    student = float(stats.t.ppf(0.975, 3))
    assert student == pytest.approx(3.182, abs=5e-4)
    expected = {
        "value": eccentricity,
        "standard_uncertainty": spread,
        "degrees_of_freedom": 3,
        "expanded_uncertainty": student * spread,
        "coverage_factor": student,
        "coverage_probability": 0.95,
        "contributions[0].input_value": scatter,
        "contributions[0].sensitivity": math.sqrt(2 / 12),
        "contributions[0].standard_uncertainty": spread,
        "contributions[0].share_percent": 100,
    }
    assert_values(result["eccentricity"], expected, rel=1e-6)
    assert_values(result, {"uncertainty_by_scatter": spread}, rel=1e-6)
    across = math.degrees(1 / eccentricity)
    width = math.degrees(math.asin(student * spread / eccentricity))
    expected = {
        "value.degrees": math.degrees(math.atan2(fitted[2], fitted[1])),
        "standard_uncertainty": across * spread,
        "degrees_of_freedom": 3,
        "expanded_uncertainty": width,
        "coverage_factor": width / (across * spread),
        "coverage_probability": 0.95,
        "contributions[0].input_value": scatter,
        "contributions[0].sensitivity": across * math.sqrt(2 / 12),
        "contributions[0].standard_uncertainty": across * spread,
        "contributions[0].share_percent": 100,
    }
    assert_values(result["high_spot"], expected, rel=1e-6)
    for shown in (result["eccentricity"], result["high_spot"]):
        # Of a spread that three readings to spare show, nothing says that it is the largest.
        assert shown["worst_case"] is shown["contributions"][0]["worst_case"] is None
