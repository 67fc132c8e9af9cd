"""Verdicts in the long run, and as other operations give them: by simulation, and side by side."""

import math
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy import integrate, stats

from halfangle_service.trade.uncertainty import Budget, Contribution, verdict_of
from halfangle_service.trade.uncertainty.lengths import length_within
from halfangle_service.trade.uncertainty.zones import Case
from support import Call

TRIALS = 400_000
SIMULATED = "Vectors drawn, read and judged, by numpy's normal generator"


def read_lengths(
    true: NDArray[np.float64] | float, generator: np.random.Generator, freedom: float = math.inf
) -> NDArray[np.float64]:
    """Lengths read of vectors so long, each with an error of 1 in either direction, in u."""
    spread = np.ones(TRIALS)
    if math.isfinite(freedom):
        spread = np.sqrt(freedom / generator.chisquare(freedom, TRIALS))
    along, across = (generator.standard_normal(TRIALS) * spread for _ in range(2))
    return np.asarray(np.hypot(true + along, across), dtype=np.float64)


@pytest.mark.outside("inspection.verdict", source=SIMULATED)
@pytest.mark.parametrize("freedom", [math.inf, 4.0])
def test_of_runouts_read_alike_so_many_are_within(call: Call, freedom: float) -> None:
    """Of true TIR alike likely up to far past it, those read as 2 u are within as often as said."""
    generator = np.random.default_rng(106)
    true = generator.uniform(0.0, 40.0, TRIALS)
    read = read_lengths(true, generator, freedom)
    alike = true[np.abs(read - 2.0) < 0.15]
    assert len(alike) > 2000
    known = {} if math.isinf(freedom) else {"degrees_of_freedom": freedom}
    for limit in (1.0, 2.0, 3.0):
        result = call(
            "inspection.verdict",
            units="mm",
            measured_tir=2.0,
            limit_tir=limit,
            standard_uncertainty=1.0,
            **known,
        )["result"]
        share = float(np.mean(alike <= limit))
        assert result["probability_of_conformance"] == pytest.approx(share, abs=0.03)


@pytest.mark.outside("inspection.verdict", source=SIMULATED)
@pytest.mark.parametrize("limit", [0.2, 0.7, 1.5, 3.0, 10.0])
def test_a_runout_on_its_limit_is_rarely_judged_wrong(call: Call, limit: float) -> None:
    """A part just on its limit is accepted, or rejected, no more than 5.5 times in 100 each."""
    zones = call(
        "inspection.verdict",
        units="mm",
        measured_tir=limit,
        limit_tir=limit,
        standard_uncertainty=1.0,
    )["result"]["length_judged"]
    read = read_lengths(limit, np.random.default_rng(14253))
    accepted = zones["largest_accepted"]
    assert accepted is None or float(np.mean(read <= accepted)) < 0.055
    assert float(np.mean(read > zones["rejected_above"])) < 0.055


@pytest.mark.outside("inspection.verdict", source=SIMULATED)
@pytest.mark.parametrize("freedom", [math.inf, 3.0])
def test_a_diameter_on_its_limit_is_rarely_judged_wrong(call: Call, freedom: float) -> None:
    """Measured with its own scatter each time, it is accepted 5 times in 100, and rejected 5."""
    generator = np.random.default_rng(9)
    spread = np.ones(TRIALS)
    factor = float(stats.norm.ppf(0.95))
    known = {}
    if math.isfinite(freedom):
        spread = np.sqrt(generator.chisquare(freedom, TRIALS) / freedom)
        factor, known = float(stats.t.ppf(0.95, freedom)), {"degrees_of_freedom": freedom}
    read = 100.0 + generator.standard_normal(TRIALS)
    zones = call(
        "inspection.verdict",
        units="mm",
        measured_diameter=100.0,
        largest_diameter=100.0,
        standard_uncertainty=1.0,
        **known,
    )["result"]["length_judged"]
    assert zones["largest_accepted"] == pytest.approx(100.0 - factor, rel=1e-6)
    assert float(np.mean(read <= 100.0 - factor * spread)) == pytest.approx(0.05, abs=2e-3)
    assert float(np.mean(read > 100.0 + factor * spread)) == pytest.approx(0.05, abs=2e-3)


@pytest.mark.parametrize("freedom", [1, 2, 3, 7, 40])
@pytest.mark.parametrize(("read", "limit"), [(0.0, 2.0), (1.0, 3.0), (5.0, 4.0), (3.0, 0.5)])
def test_few_readings_of_a_vector(freedom: int, read: float, limit: float) -> None:
    """With ν degrees of freedom the error is Student's in two directions, integrated by scipy."""

    def likely(length: float) -> float:
        def at(turn: float) -> float:
            off = read * read + length * length - 2.0 * read * length * math.cos(turn)
            return float((1.0 + off / freedom) ** (-(freedom + 2) / 2))

        return float(integrate.quad(at, 0.0, math.pi, epsrel=1e-10, limit=200)[0])

    inside = integrate.quad(likely, 0.0, limit, epsrel=1e-9, limit=200)[0]
    past = integrate.quad(likely, limit, 60.0, epsrel=1e-9, limit=200)[0]
    past += integrate.quad(likely, 60.0, np.inf, epsrel=1e-8, limit=200)[0]
    budget = Budget((Contribution("u", 1.0, "normal", degrees_of_freedom=freedom),))
    found = length_within(budget)(read, limit)
    assert found == pytest.approx(inside / (inside + past), abs=1e-7)


# As other operations have it ------------------------------------------------------------------
def pasted(estimate: dict[str, Any], suffix: str = "") -> dict[str, Any]:
    """How well a value is known, as another answer says it, for a request of a verdict."""
    known = {f"standard_uncertainty{suffix}": estimate["standard_uncertainty"]}
    freedom = estimate["degrees_of_freedom"]
    return known if freedom is None else {**known, "degrees_of_freedom": freedom}


@pytest.mark.parametrize("tolerance", [1.0, 5.0, 9.0, 20.0])
def test_a_taper_over_rolls_is_judged_alike(call: Call, tolerance: float) -> None:
    """The half angle of tapers.over-rolls with its uncertainty gets the verdict of its budget."""
    request = {
        "units": "mm",
        "roll_diameter": 12,
        "lower_measure": 60.21,
        "upper_measure": 67.695,
        "stack_rise": 75,
        "length": 100,
        "measure_error_limit": 0.002,
        "roll_error_limit": 0.0005,
        "stack_rise_error_limit": 0.0005,
    }
    measured = call("tapers.over-rolls", **request)["result"]["half_angle"]
    found = measured["value"]["degrees"] * 3600.0
    nominal = found + 3.0
    budget = Budget(
        tuple(
            Contribution(row["name"], row["input_value"], row["distribution"], row["sensitivity"])
            for row in measured["contributions"]
        )
    )
    verdict = call(
        "inspection.verdict",
        units="mm",
        measured_half_angle=measured["value"]["degrees"],
        half_angle=nominal / 3600.0,
        half_angle_tolerance_arcsec=tolerance,
        **pasted(measured, "_arcsec"),
    )["result"]
    assert verdict["verdict"] == verdict_of(found, nominal - tolerance, nominal + tolerance, budget)


@pytest.mark.parametrize("limit", [0.0003, 0.0008, 0.00102, 0.0012, 0.01])
def test_an_indicated_runout_is_judged_alike(call: Call, limit: float) -> None:
    """Twice the eccentricity of runout.indicate is judged as the length of the same vector."""
    readings = [(0, 3), (45, 5.5), (90, 4), (135, 0.5), (180, -3), (225, -5), (270, -4), (315, -1)]
    found = call(
        "runout.indicate",
        units="in",
        surface="external",
        indicator_resolution=0.00005,
        readings=[{"angular_position": a, "reading": r * 1e-4} for a, r in readings],
    )["result"]
    eccentricity = found["eccentricity"]
    budget = Budget(
        (
            Contribution(
                "eccentricity",
                2.0 * eccentricity["standard_uncertainty"],
                "normal",
                degrees_of_freedom=eccentricity["degrees_of_freedom"] or math.inf,
            ),
        )
    )
    tir = found["tir_from_eccentricity"]
    known = pasted(eccentricity)
    known["standard_uncertainty"] *= 2.0
    result = call("inspection.verdict", units="in", measured_tir=tir, limit_tir=limit, **known)
    case = Case(-math.inf, limit, budget, of_a_vector=True)
    assert result["result"]["verdict"] == case.verdict(tir)
    estimate = result["result"]["length_judged"]["estimate"]
    for name in ("value", "expanded_uncertainty"):
        assert estimate[name] == pytest.approx(2.0 * eccentricity[name], rel=1e-9)


@pytest.mark.parametrize("off", [0.0, 0.0002, 0.00033, 0.0006])
def test_a_stack_is_judged_alike(call: Call, off: float) -> None:
    """blocks.check and this operation say the same of one block's height by its calibration."""
    box = [{"size": 10.0, "count": 1, "deviation": off, "expanded_uncertainty": 0.0002}]
    checked = call(
        "blocks.check",
        units="mm",
        box=box,
        blocks=[10.0],
        height=10.0,
        measurement_error_limit=0.0004,
    )["result"]
    height = checked["actual_height"]
    result = call(
        "inspection.verdict",
        units="mm",
        measured_diameter=height["value"],
        smallest_diameter=10.0 - 0.0004,
        largest_diameter=10.0 + 0.0004,
        **pasted(height),
    )["result"]
    assert checked["verdict"] == result["verdict"]
