"""A verdict at another temperature, who proves it, and what to do next."""

from typing import Any

import pytest
from mpmath import mp
from scipy import stats

from support import Call

EXPANSION = "ISO 1 and the coefficients of expansion of steel and carbide, by mpmath"


def judged(call: Call, **request: Any) -> dict[str, Any]:
    """The result for a request in millimetres, where it names no unit."""
    result: dict[str, Any] = call("inspection.verdict", **{"units": "mm", **request})["result"]
    return result


# Temperature --------------------------------------------------------------------------------
def at_temperature(part: str, part_celsius: float, instrument_celsius: float) -> dict[str, Any]:
    """Temperatures and materials of a request, a steel instrument."""
    return {
        "part_temperature_celsius": part_celsius,
        "part_material": part,
        "instrument_temperature_celsius": instrument_celsius,
        "instrument_material": "steel",
        "temperature_error_limit_celsius": 0.5,
    }


@pytest.mark.outside("inspection.verdict", source=EXPANSION)
@pytest.mark.parametrize(
    ("part", "celsius", "instrument", "alpha"),
    [("steel", 30, 20, 11.5e-6), ("tungsten-carbide", 26, 26, 4.5e-6), ("steel", 15, 24, 11.5e-6)],
)
def test_a_diameter_at_20_celsius(
    call: Call, part: str, celsius: float, instrument: float, alpha: float
) -> None:
    """D20 = D (1 + 11.5e-6 Δt instrument) / (1 + α Δt part), each temperature known to 0.5 K."""
    result = judged(
        call,
        measured_diameter=50.0,
        largest_diameter=50.1,
        standard_uncertainty=0.001,
        **at_temperature(part, celsius, instrument),
    )
    estimate = result["length_judged"]["estimate"]
    with mp.workdps(30):
        grown = (1 + mp.mpf("11.5e-6") * (instrument - 20)) / (1 + mp.mpf(alpha) * (celsius - 20))
    assert estimate["value"] == pytest.approx(float(50 * grown), rel=1e-14)
    spreads = {"steel": 1.0e-6, "tungsten-carbide": 0.7e-6}
    expected = [
        (0.001, 1.0),
        (spreads[part], -50.0 * (celsius - 20)),
        (0.5, -50.0 * alpha),
        (1.0e-6, 50.0 * (instrument - 20)),
        (0.5, 50.0 * 11.5e-6),
    ]
    for row, (size, sensitivity) in zip(estimate["contributions"], expected, strict=True):
        assert row["input_value"] == pytest.approx(size)
        assert row["sensitivity"] == pytest.approx(sensitivity, rel=1e-9, abs=1e-15)


def test_part_and_instrument_alike_need_no_correction(call: Call) -> None:
    """A steel part read by a steel instrument in one warm room reads as at 20 °C."""
    result = judged(
        call,
        measured_diameter=50.0,
        largest_diameter=50.1,
        standard_uncertainty=0.001,
        **at_temperature("steel", 31.0, 31.0),
    )
    assert result["length_judged"]["estimate"]["value"] == 50.0


# Who proves, and what to do -----------------------------------------------------------------
def near_its_limit(call: Call, **more: Any) -> dict[str, Any]:
    """60°00'07" ±2″ (U, k = 2: 4″) against 60° ±10″, which is not provable."""
    return judged(
        call,
        **{
            "measured_included_angle": "60 00 07",
            "included_angle": 60,
            "included_angle_tolerance_arcsec": 10,
            "expanded_uncertainty_arcsec": 4,
            "coverage_factor": 2,
            **more,
        },
    )


@pytest.mark.parametrize(
    ("who_proves", "decision"), [("supplier", "hold-back"), ("customer", "accept"), (None, None)]
)
def test_the_uncertainty_is_at_the_cost_of_who_proves(
    call: Call, who_proves: str | None, decision: str | None
) -> None:
    """What is not provable a supplier holds back and a customer cannot reject."""
    result = near_its_limit(call, **({"who_proves": who_proves} if who_proves else {}))
    assert result["verdict"] == "not-provable"
    assert result["decision"] == decision
    steps = [step["step"] for step in result["next_steps"]]
    assert "measure-better" in steps
    assert "bring-within-gauge-limits" in steps
    assert ("say-who-proves" in steps) == (who_proves is None)
    assert steps[0] == (decision or "measure-better")


def test_a_proved_value_leaves_nothing_to_who_proves(call: Call) -> None:
    """Conforming is accepted and not conforming set apart, whoever proves."""
    for who in ("supplier", "customer"):
        inside = near_its_limit(call, measured_included_angle="60 00 03", who_proves=who)
        outside = near_its_limit(call, measured_included_angle="60 00 14", who_proves=who)
        assert (inside["verdict"], inside["decision"]) == ("conforming", "accept")
        assert [step["step"] for step in inside["next_steps"]] == ["accept"]
        assert (outside["verdict"], outside["decision"]) == ("not-conforming", "reject")
        assert [step["step"] for step in outside["next_steps"]] == ["set-apart"]
        assert "4.00″ over its upper limit" in outside["next_steps"][0]["words"]


def test_simple_acceptance_goes_by_the_value_alone(call: Call) -> None:
    """On its limit a value conforms, past it not; both are no more than 50 % sure."""
    rule = {"decision_rule": "simple-acceptance"}
    on = near_its_limit(call, measured_included_angle="60 00 10", **rule)
    past = near_its_limit(call, measured_included_angle="60 00 10.01", **rule)
    assert (on["verdict"], past["verdict"]) == ("conforming", "not-conforming")
    assert on["probability_of_conformance"] == pytest.approx(0.5, abs=1e-9)


def test_simple_acceptance_of_n_to_1(call: Call) -> None:
    """A rule 4:1 judges nothing where the tolerance is 2.5 times ±U; at 2.5:1 it does."""
    rule = {"decision_rule": "simple-acceptance", "measured_included_angle": 60}
    coarse = near_its_limit(call, **rule, smallest_capability_index=4)
    fine = near_its_limit(call, **rule, smallest_capability_index=2.5)
    assert (coarse["verdict"], fine["verdict"]) == ("not-provable", "conforming")
    assert coarse["measurement_capability_index"] == 2.5
    zones = coarse["angle_judged"]
    assert zones["needed_standard_uncertainty_arcsec"] == 20 / 16
    assert zones["largest_accepted"] is zones["rejected_above"] is None


def test_nothing_stated_proves_nothing(call: Call) -> None:
    """Without an uncertainty there is no probability, and the answer says what would be needed."""
    result = judged(call, measured_diameter=20.0, largest_diameter=20.01)
    assert result["verdict"] == "not-provable"
    assert result["probability_of_conformance"] is None
    assert result["not_stated"] == [
        "standard_uncertainty",
        "expanded_uncertainty",
        "measurement_error_limit",
    ]
    assert result["next_steps"][0]["step"] == "state-the-uncertainty"
    needed = result["length_judged"]["needed_standard_uncertainty"]
    assert needed == pytest.approx(0.01 / stats.norm.ppf(0.95), rel=1e-6)


def test_no_value_inside_is_proved_to_be_outside(call: Call) -> None:
    """However coarse a measurement, what it reads between the limits is not rejected by it."""
    result = near_its_limit(call, measured_included_angle=60, expanded_uncertainty_arcsec=600)
    assert result["probability_of_conformance"] < 0.05
    assert result["verdict"] == "not-provable"


def test_more_readings_would_prove_it(call: Call) -> None:
    """Three readings leave in doubt what many with the same scatter would prove."""
    result = judged(
        call,
        measured_diameter=19.998,
        largest_diameter=20.0,
        standard_uncertainty=0.001,
        degrees_of_freedom=2,
    )
    assert "read-more-often" in [step["step"] for step in result["next_steps"]]


def test_temperature_that_matters_is_said(call: Call) -> None:
    """Where temperature makes most of the uncertainty the part is to soak."""
    warm = {
        "measured_diameter": 99.999,
        "largest_diameter": 100.0,
        "standard_uncertainty": 0.0001,
        **at_temperature("steel", 25.0, 25.0),
    }
    steps = [step["step"] for step in judged(call, **warm)["next_steps"]]
    assert "let-it-soak" in steps
    cool = judged(call, **{**warm, "standard_uncertainty": 0.002})
    assert "let-it-soak" not in [step["step"] for step in cool["next_steps"]]


# Rules that go by the value ------------------------------------------------------------------
def _judged(call: Call, **changes: Any) -> dict[str, Any]:
    """A diameter of 0.5 in, ± 0.0005, known to 0.0001 in, judged by a rule."""
    asked = {
        "units": "in",
        "smallest_diameter": 0.4995,
        "largest_diameter": 0.5005,
        "standard_uncertainty": 0.0001,
        **changes,
    }
    return call("inspection.verdict", **asked)


@pytest.mark.parametrize(
    ("measured", "rule", "verdict", "begins"),
    [
        (0.50049, {"decision_rule": "simple-acceptance"}, "conforming", "The value as measured"),
        (0.50051, {"decision_rule": "simple-acceptance"}, "not-conforming", "The value as"),
        (0.5004, {"decision_rule": "guard-band", "guard_band": 5e-5}, "conforming", "The value"),
        (0.5006, {"decision_rule": "guard-band", "guard_band": 5e-5}, "not-conforming", "The val"),
        (0.5, {"decision_rule": "iso-14253-1-2017"}, "conforming", "It is proved"),
    ],
)
def test_what_goes_by_the_value_alone_is_not_called_proved(
    call: Call, measured: float, rule: dict[str, Any], verdict: str, begins: str
) -> None:
    """A part accepted at 54 % is accepted by the rule named; nothing is proved of it."""
    result = _judged(call, measured_diameter=measured, **rule)["result"]
    assert result["verdict"] == verdict
    assert result["reason"].startswith(begins)
    assert ("proved" in result["reason"]) is (rule["decision_rule"] == "iso-14253-1-2017")


def test_a_guard_band_that_takes_all_is_named_as_what_does(call: Call) -> None:
    """Measuring better does not widen what a guard band agreed on leaves."""
    asked = {"measured_diameter": 0.5, "decision_rule": "guard-band", "guard_band": 0.0006}
    [said] = _judged(call, **asked)["advisories"]
    assert said["code"] == "no-value-proves-it"
    assert said["message"].endswith("agreed on takes all of the tolerance. Agree on a smaller one.")


def test_a_sure_reading_of_nothing_is_nothing(call: Call) -> None:
    """Where the measurement is stated to have no error, no reading is its own error."""
    sure = {"measured_tir": 0, "limit_tir": 0.0003, "standard_uncertainty": 0}
    answer = call("inspection.verdict", units="in", **sure)
    assert answer["result"]["verdict"] == "conforming"
    assert answer["advisories"] == []
