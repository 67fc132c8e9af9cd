"""Verdicts against the worked numbers of JCGM 106, tables of decision rules, and libraries."""

import math
from typing import Any

import pytest
from mpmath import mp
from scipy import integrate, stats

from support import Call, assert_values

JCGM_106 = "JCGM 106:2012, worked numbers from memory"
DECISION_RULES = "ISO 14253-1, zones of tolerance less and plus U, from memory, by arithmetic"
SCIPY = "normal, Student's and Rice's distributions of scipy"

#: Nothing of it matters where a value is not a length of the trade.
VISCOSITY = {"smallest_diameter": 12.5, "largest_diameter": 16.3, "standard_uncertainty": 1.8}


def judged(call: Call, **request: Any) -> dict[str, Any]:
    """The result for a request in millimetres, where it names no unit."""
    result: dict[str, Any] = call("inspection.verdict", **{"units": "mm", **request})["result"]
    return result


# Worked numbers -----------------------------------------------------------------------------
@pytest.mark.outside("inspection.verdict", source=JCGM_106)
def test_breakdown_voltage_of_a_zener_diode(call: Call) -> None:
    """JCGM 106, 7: −5.47 V with u = 0.05 V against at most −5.40 V conforms with Φ(1.4) = 0.92."""
    result = judged(
        call, measured_gauge_depth=-5.47, largest_gauge_depth=-5.4, standard_uncertainty=0.05
    )
    assert result["probability_of_conformance"] == pytest.approx(0.92, abs=0.005)
    assert result["probability_of_conformance"] == pytest.approx(0.919243, abs=1e-6)
    assert result["probability_below"] == 0.0
    assert result["probability_above"] == pytest.approx(0.080757, abs=1e-6)
    assert result["measurement_capability_index"] is None
    assert result["verdict"] == "not-provable"


@pytest.mark.outside("inspection.verdict", source=JCGM_106)
def test_viscosity_of_a_motor_oil(call: Call) -> None:
    """JCGM 106, 7: 13.6 with u = 1.8 from 12.5 to 16.3 mm²/s: Φ(1.5) − Φ(−0.61) = 0.66."""
    result = judged(call, measured_diameter=13.6, **VISCOSITY)
    assert result["probability_of_conformance"] == pytest.approx(0.66, abs=0.005)
    below, above = stats.norm.cdf((12.5 - 13.6) / 1.8), stats.norm.sf(1.5)
    assert_values(result, {"probability_below": below, "probability_above": above})
    assert result["verdict"] == "not-provable"


@pytest.mark.outside("inspection.verdict", source=JCGM_106)
@pytest.mark.parametrize("place", [-0.1, 0.0, 0.2, 0.5, 0.9, 1.0, 1.2])
@pytest.mark.parametrize("index", [0.5, 1.0, 2.5, 8.0])
def test_conformance_by_the_capability_index(call: Call, place: float, index: float) -> None:
    """JCGM 106, 7.6.3: p = Φ(4 C_m (1 − ỹ)) − Φ(−4 C_m ỹ), ỹ the place between the limits."""
    result = judged(
        call,
        measured_diameter=10.0 + 0.4 * place,
        smallest_diameter=10.0,
        largest_diameter=10.4,
        standard_uncertainty=0.4 / (4.0 * index),
    )
    with mp.workdps(30):
        high, low = (mp.ncdf(mp.mpf(4 * index) * t) for t in (1 - mp.mpf(place), -mp.mpf(place)))
    assert result["probability_of_conformance"] == pytest.approx(float(high - low), abs=1e-9)
    assert_values(result, {"measurement_capability_index": index})


@pytest.mark.outside("inspection.verdict", source=DECISION_RULES)
@pytest.mark.parametrize(
    ("measured", "verdict"),
    [
        *((10.0, "conforming"), (9.984, "conforming"), (10.016, "conforming")),
        *((9.9839, "not-provable"), (10.0161, "not-provable"), (9.976, "not-provable")),
        *((10.024, "not-provable"), (9.9759, "not-conforming"), (10.0241, "not-conforming")),
    ],
)
@pytest.mark.parametrize("rule", ["iso-14253-1-2013", "guard-band"])
def test_zones_of_a_guard_band(call: Call, measured: float, verdict: str, rule: str) -> None:
    """9.98 to 10.02 with U = 0.004: accepted from 9.984 to 10.016, rejected past 9.976, 10.024."""
    agreed = {"guard_band": 0.004} if rule == "guard-band" else {}
    result = judged(
        call,
        measured_diameter=measured,
        smallest_diameter=9.98,
        largest_diameter=10.02,
        expanded_uncertainty=0.004,
        coverage_factor=2,
        decision_rule=rule,
        **agreed,
    )
    assert result["verdict"] == verdict
    zones = result["length_judged"]
    assert (zones["smallest_allowed"], zones["largest_allowed"]) == (9.98, 10.02)
    assert (zones["smallest_accepted"], zones["largest_accepted"]) == (9.984, 10.016)
    assert (zones["rejected_below"], zones["rejected_above"]) == (9.976, 10.024)


@pytest.mark.outside("inspection.verdict", source=SCIPY)
def test_the_edition_of_2017_leaves_1645_of_u(call: Call) -> None:
    """Wide limits of a normal result: gauge limits 1.645 u inside, rejected 1.645 u outside."""
    result = judged(
        call,
        measured_included_angle=60.001,
        included_angle=60,
        included_angle_tolerance_arcsec=100,
        standard_uncertainty_arcsec=2,
    )
    guard = stats.norm.ppf(0.95) * 2.0 / 3600.0
    zones, tolerance = result["angle_judged"], 100 / 3600
    expected = {
        "smallest_allowed.degrees": 60 - tolerance,
        "largest_allowed.degrees": 60 + tolerance,
        "smallest_accepted.degrees": 60 - tolerance + guard,
        "largest_accepted.degrees": 60 + tolerance - guard,
        "rejected_below.degrees": 60 - tolerance - guard,
        "rejected_above.degrees": 60 + tolerance + guard,
    }
    assert_values(zones, expected, rel=1e-11)
    needed = stats.norm(3.6, zones["needed_standard_uncertainty_arcsec"])
    assert needed.cdf(100) - needed.cdf(-100) == pytest.approx(0.95, abs=1e-6)


@pytest.mark.outside("inspection.verdict", source=SCIPY)
@pytest.mark.parametrize("freedom", [1, 2, 4, 9, 50])
def test_few_readings_widen_the_guard_band(call: Call, freedom: int) -> None:
    """With ν degrees of freedom the gauge limit lies t_95(ν) u inside a single limit."""
    result = judged(
        call,
        measured_diameter=19.9,
        largest_diameter=20.0,
        standard_uncertainty=0.001,
        degrees_of_freedom=freedom,
    )
    factor = float(stats.t.ppf(0.95, freedom))
    zones = result["length_judged"]
    assert zones["largest_accepted"] == pytest.approx(20.0 - 0.001 * factor, abs=2e-8)
    assert zones["rejected_above"] == pytest.approx(20.0 + 0.001 * factor, abs=2e-8)
    assert zones["smallest_accepted"] is zones["rejected_below"] is None
    assert zones["needed_standard_uncertainty"] == pytest.approx(0.1 / factor, rel=1e-5)
    assert zones["estimate"]["degrees_of_freedom"] == freedom


@pytest.mark.outside("inspection.verdict", source=SCIPY)
def test_a_limit_of_error_is_even_between_its_ends(call: Call) -> None:
    """Of an error of at most ± a the gauge limit lies 0.9 a inside, rejected is 0.9 a outside."""
    result = judged(
        call, measured_diameter=19.998, largest_diameter=20.0, measurement_error_limit=0.004
    )
    zones = result["length_judged"]
    assert_values(zones, {"largest_accepted": 20 - 0.0036, "rejected_above": 20 + 0.0036})
    assert_values(zones, {"needed_standard_uncertainty": 0.002 / 0.9 / math.sqrt(3)}, rel=1e-6)
    within = float(stats.uniform(19.994, 0.008).cdf(20.0))
    assert result["probability_of_conformance"] == pytest.approx(within, rel=1e-9)


# Runout -------------------------------------------------------------------------------------
def share_within(read: float, limit: float) -> float:
    """Of all lengths alike likely beforehand, the share within a limit, by Rice's density."""

    def likely(length: float) -> float:
        return float(stats.rice.pdf(read, length))

    inside = integrate.quad(likely, 0.0, limit, epsabs=1e-13, limit=200)[0]
    past = integrate.quad(likely, limit, max(read, limit) + 12.0, epsabs=1e-13, limit=200)[0]
    return float(inside / (inside + past))


@pytest.mark.outside("inspection.verdict", source=SCIPY)
@pytest.mark.parametrize(
    ("read", "limit"), [(0.0, 1.96), (0.5, 2.0), (2.0, 3.0), (3.0, 2.0), (6.0, 8.0), (9.0, 7.0)]
)
def test_a_tir_is_the_length_of_a_vector(call: Call, read: float, limit: float) -> None:
    """The probability is Rice's, over all lengths from nothing on; from 0 it is 95 % at 1.96 u."""
    result = judged(call, measured_tir=read, limit_tir=limit, standard_uncertainty=1)
    expected = share_within(read, limit) if read else math.erf(limit / math.sqrt(2.0))
    assert result["probability_of_conformance"] == pytest.approx(expected, abs=1e-9)
    assert result["probability_above"] == pytest.approx(1.0 - expected, abs=1e-9)
    assert result["probability_below"] == 0.0
    assert_values(result, {"measurement_capability_index": limit / 4})


@pytest.mark.outside("inspection.verdict", source=SCIPY)
def test_gauge_limits_of_a_tir(call: Call) -> None:
    """At the gauge limit 95 % of lengths are within, at the other 5 %, by Rice's density."""
    zones = judged(call, measured_tir=1, limit_tir=4, standard_uncertainty=1)["length_judged"]
    assert share_within(zones["largest_accepted"], 4.0) == pytest.approx(0.95, abs=1e-6)
    assert share_within(zones["rejected_above"], 4.0) == pytest.approx(0.05, abs=1e-6)
    needed = zones["needed_standard_uncertainty"]
    assert share_within(1.0 / needed, 4.0 / needed) == pytest.approx(0.95, abs=1e-6)
    assert zones["smallest_allowed"] is zones["smallest_accepted"] is None
    assert zones["rejected_below"] is None
    assert zones["largest_allowed"] == 4


@pytest.mark.outside("inspection.verdict", source=SCIPY)
def test_a_tir_that_nothing_would_show_rejects_nothing(call: Call) -> None:
    """A reading that an axis quite true shows 1 time in 20, 2.448 u by Rayleigh, proves nothing."""
    quite_true = float(stats.rayleigh.ppf(0.95))
    request = {"limit_tir": 0.2, "standard_uncertainty": 1}
    zones = judged(call, measured_tir=2.4, **request)["length_judged"]
    assert zones["rejected_above"] == pytest.approx(quite_true, rel=1e-9)
    assert zones["largest_accepted"] is None
    assert judged(call, measured_tir=2.44, **request)["verdict"] == "not-provable"
    assert judged(call, measured_tir=2.46, **request)["verdict"] == "not-conforming"


@pytest.mark.outside("inspection.verdict", source=SCIPY)
def test_far_from_nothing_a_tir_is_as_any_length(call: Call) -> None:
    """At 200 u its gauge limits are those of a length, to a hundredth of u."""
    tir = judged(call, measured_tir=0.19, limit_tir=0.2, standard_uncertainty=0.001)
    length = judged(call, measured_diameter=0.19, largest_diameter=0.2, standard_uncertainty=0.001)
    for name in ("largest_accepted", "rejected_above"):
        assert tir["length_judged"][name] == pytest.approx(length["length_judged"][name], abs=1e-5)


@pytest.mark.outside("inspection.verdict", source=SCIPY)
def test_an_angle_from_few_readings(call: Call) -> None:
    """Five readings of 60°00'02" with 2″ each way: U = t_97.5(4) u, gauge limits t_95(4) u in."""
    result = judged(
        call,
        measured_included_angle="60 00 02",
        smallest_included_angle="59 59 00",
        largest_included_angle="60 01 00",
        standard_uncertainty_arcsec=2,
        degrees_of_freedom=4,
    )["angle_judged"]
    estimate = result["estimate"]
    assert estimate["value"]["degrees"] == pytest.approx(60.0 + 2.0 / 3600.0, abs=1e-12)
    assert estimate["degrees_of_freedom"] == 4
    assert_values(estimate, {"expanded_uncertainty": 2 * stats.t.ppf(0.975, 4)}, rel=1e-9)
    inside = (60.0 + 60.0 / 3600.0 - result["largest_accepted"]["degrees"]) * 3600.0
    assert inside == pytest.approx(2 * stats.t.ppf(0.95, 4), rel=1e-5)
