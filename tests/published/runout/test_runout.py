"""Runout against general libraries, brute force and synthetic parts of known truth."""

import cmath
import math
from typing import Any

import numpy as np
import pytest
from litestar.testing import TestClient
from scipy.optimize import curve_fit, least_squares
from scipy.stats import rayleigh
from scipy.stats import t as student

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.registry import load_registry
from support import Call

OPERATIONS = [o for o in load_registry().operations.values() if o.topic == "runout"]
ANGLES = [3, 40, 77, 131, 170, 222, 260, 301, 333]


def readings(values: Any, angles: Any = ANGLES) -> list[dict[str, float]]:
    """Readings as a request sends them."""
    return [
        {"angular_position": a, "reading": float(v)} for a, v in zip(angles, values, strict=True)
    ]


def indicate(call: Call, values: Any, angles: Any = ANGLES, **more: Any) -> dict[str, Any]:
    """Result of indicating in millimetres."""
    request = {
        "units": "mm",
        "surface": "external",
        "indicator_resolution": 0.001,
        "readings": readings(values, angles),
        **more,
    }
    result: dict[str, Any] = call("runout.indicate", **request)["result"]
    return result


@pytest.mark.outside("runout.indicate", source="scipy.optimize.least_squares, general library")
def test_harmonics_agree_with_a_general_solver(call: Call) -> None:
    """Eccentricity, direction and ovality are those that a general least squares finds."""
    values = np.round(np.random.default_rng(3).normal(0, 0.02, len(ANGLES)), 4)
    turn = np.radians(ANGLES)

    def residual(x: Any) -> Any:
        fit = x[0] + x[1] * np.cos(turn - x[2]) + x[3] * np.cos(2 * turn - x[4])
        return fit - values

    best = least_squares(residual, [0, 0.02, 1, 0.01, 1], xtol=1e-15, ftol=1e-15, gtol=1e-15).x
    result = indicate(call, values, harmonics=2)
    assert result["eccentricity"]["value"] == pytest.approx(abs(best[1]), rel=1e-5)
    assert result["form"][0]["amplitude"] == pytest.approx(abs(best[3]), rel=1e-5)
    high = math.radians(result["high_spot"]["value"]["degrees"])
    assert best[1] * math.cos(high - best[2]) == pytest.approx(abs(best[1]), rel=1e-6)


@pytest.mark.outside("runout.indicate", source="scipy.optimize.curve_fit: its own covariance")
def test_scatter_gives_the_uncertainty_of_a_general_fit(call: Call) -> None:
    """The uncertainty by scatter is that which a general curve fit gives for the amplitude."""
    turn = np.radians(ANGLES)
    values = 0.05 * np.cos(turn - 1) + np.random.default_rng(9).normal(0, 0.004, len(ANGLES))

    def model(x: Any, mean: float, e: float, high: float, c: float, s: float) -> Any:
        return mean + e * np.cos(x - high) + c * np.cos(2 * x) + s * np.sin(2 * x)

    covariance = curve_fit(model, turn, values, [0, 0.05, 1, 0, 0])[1]
    result = indicate(call, values, harmonics=2)
    assert result["uncertainty_by_scatter"] == pytest.approx(math.sqrt(covariance[1, 1]), rel=1e-4)
    found = result["eccentricity"]
    assert found["standard_uncertainty"] == result["uncertainty_by_scatter"]
    assert [c["name"] for c in found["contributions"]] == ["scatter"]
    freedom = len(ANGLES) - 5
    assert found["degrees_of_freedom"] == pytest.approx(freedom)
    assert found["coverage_factor"] == pytest.approx(student.ppf(0.975, freedom))
    across = math.sqrt(covariance[2, 2])
    assert result["high_spot"]["standard_uncertainty"] == pytest.approx(
        math.degrees(across), rel=1e-3
    )


def test_too_few_spare_readings_are_said(call: Call) -> None:
    """Four readings answer, and say that a stray one would not be told from form."""
    request = {"units": "mm", "surface": "external", "indicator_resolution": 0.001}
    sent = readings([0.01, 0, -0.01, 0], [0, 90, 180, 270])
    few = call("runout.indicate", **request, readings=sent)
    assert "stray-not-told" in [a["code"] for a in few["advisories"]]
    many = call("runout.indicate", **request, readings=readings(np.cos(np.radians(ANGLES))))
    assert many["advisories"] == []


def test_three_readings_say_nothing_of_form(call: Call) -> None:
    """An eccentricity fits any three readings: what it leaves is not known, and is no 0."""
    request = {"units": "mm", "surface": "external", "indicator_resolution": 0.001}
    three = readings([0.01, 0.003, -0.01], [0, 120, 240])
    said = call("runout.indicate", **request, readings=three)["result"]
    assert (said["tir_left_after_tapping"], said["residual_rms"]) == (None, None)
    four = readings([0.01, 0.003, -0.01, 0], [0, 90, 180, 270])
    known = call("runout.indicate", **request, readings=four)["result"]
    assert known["tir_left_after_tapping"] > 0
    assert known["residual_rms"] > 0


@pytest.mark.outside("runout.indicate", source="Published cosine table of lever indicators")
@pytest.mark.parametrize(("tip", "factor"), [(10, 0.98), (20, 0.94), (40, 0.77), (60, 0.5)])
def test_lever_is_corrected_by_the_published_factor(call: Call, tip: float, factor: float) -> None:
    """The tip's correction is the published factor, to the two digits printed."""
    values = 0.05 * np.cos(np.radians(ANGLES))
    result = indicate(call, values, tip_angle=tip)
    assert result["eccentricity"]["value"] / 0.05 == pytest.approx(factor, abs=0.005)


@pytest.mark.outside("runout.budget", source="scipy.stats.rayleigh; sum of many random vectors")
def test_percentiles_meet_closed_forms(call: Call) -> None:
    """Two equal vectors have the median √2; twenty equal ones come near a Rayleigh law."""

    def run(count: int) -> dict[str, Any]:
        each = [{"name": f"part {i}", "tir": 0.01} for i in range(count)]
        answer = call("runout.budget", units="mm", limit_tir=0.1, contributors=each)
        result: dict[str, Any] = answer["result"]
        return result

    assert run(2)["percentile_50_tir"] == pytest.approx(0.01 * math.sqrt(2), rel=0.01)
    assert run(2)["tir"]["expanded_uncertainty"] == pytest.approx(
        0.02 * math.cos(0.025 * math.pi), rel=1e-3
    )
    many = rayleigh.ppf(0.95, scale=0.01 * math.sqrt(20 / 2))
    assert run(20)["tir"]["expanded_uncertainty"] == pytest.approx(many, rel=0.02)


CHAIN = [{"name": "adapter", "tir": 0.003}, {"name": "fixture", "tir": 0.004}]


@pytest.mark.outside("runout.budget", source="Closed form: |a + b exp(iφ)| of a uniform phase")
@pytest.mark.parametrize(
    ("limit", "forecast"),
    [(0.00702, "holds"), (0.00695, "may-not-hold"), (0.00117, "may-not-hold")],
)
def test_chain_is_forecast_by_the_assemblies_that_keep_the_limit(
    call: Call, limit: float, forecast: str
) -> None:
    """It holds past √(a² + b² + 2ab cos 0.05π), and does not below √(a² + b² + 2ab cos 0.95π)."""
    result = call("runout.budget", units="mm", limit_tir=limit, contributors=CHAIN)["result"]
    most = math.sqrt(0.005**2 + 2 * 0.003 * 0.004 * math.cos(0.05 * math.pi))
    assert result["tir"]["expanded_uncertainty"] == pytest.approx(most, rel=1e-3)
    assert result["forecast"] == forecast
    least = math.sqrt(0.005**2 + 2 * 0.003 * 0.004 * math.cos(0.95 * math.pi))
    below = call("runout.budget", units="mm", limit_tir=0.99 * least, contributors=CHAIN)["result"]
    assert below["forecast"] == "does-not-hold"


def test_budget_is_one_estimate_of_unknown_phases(call: Call) -> None:
    """Root sum of squares, sum and shares are of the contributors; the phases were not stated."""
    result = call("runout.budget", units="mm", limit_tir=0.01, contributors=CHAIN)["result"]
    tir = result["tir"]
    assert (tir["value"], tir["coverage_factor"], tir["not_stated"]) == (None, None, ["high_spots"])
    assert tir["coverage_probability"] == 0.95
    assert tir["standard_uncertainty"] == pytest.approx(0.005)
    assert tir["worst_case"] == pytest.approx(0.007)
    assert [c["share_percent"] for c in tir["contributions"]] == pytest.approx([36, 64])
    assert result["best_clocking_tir"] == pytest.approx(0.001)
    assert (result["mend_first"], result["mended_forecast"]) == ("fixture", "holds")


@pytest.mark.outside("runout.budget", source="numpy: 200,000 assemblies drawn; closed form of two")
@pytest.mark.parametrize("tirs", [(3, 4), (1, 1, 1), (2, 1, 1), (5, 2, 2, 1)])
def test_each_figure_says_how_many_assemblies_keep_it(call: Call, tirs: tuple[int, ...]) -> None:
    """The root sum of squares is kept by some 60 of 100 assemblies only, and that is said."""
    each = [{"name": f"part {i}", "tir": t / 1000} for i, t in enumerate(tirs)]
    phases = np.random.default_rng(4).uniform(0, 2 * math.pi, (len(tirs), 200_000))
    drawn = np.abs(np.array(tirs) @ np.exp(1j * phases)) / 1000
    limit = 0.9 * sum(tirs) / 1000
    result = call("runout.budget", units="mm", limit_tir=limit, contributors=each)["result"]
    rms = math.hypot(*tirs) / 1000
    assert result["tir"]["rms_share_percent"] == pytest.approx(100 * np.mean(drawn <= rms), abs=0.5)
    assert result["share_within_limit_percent"] == pytest.approx(
        100 * np.mean(drawn <= limit), abs=0.5
    )
    if len(tirs) == 2:
        assert result["tir"]["rms_share_percent"] == pytest.approx(50, abs=0.3)


def test_tilt_says_over_which_length_and_how_far_out(call: Call) -> None:
    """A tilt without its span or its projection is refused by name: neither is guessed."""
    for part, field in (
        ({"tilt_tir": 0.001, "projection": 20}, "tilt_span"),
        ({"tilt_span": 10}, "tilt_tir"),
        ({"tilt_tir": 0.001, "tilt_span": 10}, "projection"),
    ):
        chain = [*CHAIN, {"name": "spindle", "tir": 0.001, **part}]
        with pytest.raises(Disagreement, match="A tilt") as refused:
            call("runout.budget", units="mm", limit_tir=1, contributors=chain)
        assert list(refused.value.fields) == [f"contributors/2/{field}"]


def test_tilt_that_was_not_stated_is_named_and_never_holds(call: Call) -> None:
    """A tilt not stated matters at a projection only; it is no zero, and the chain never holds."""
    lived_with = {"name": "spindle", "tir": 0.001, "projection": 40, "can_be_mended": False}
    request = {"units": "mm", "limit_tir": 1, "contributors": [*CHAIN, lived_with]}
    result = call("runout.budget", **request)["result"]
    assert result["tir"]["not_stated"] == ["high_spots", "contributors/2/tilt_tir"]
    assert (result["forecast"], result["mended_forecast"]) == ("may-not-hold", "may-not-hold")
    stated = lived_with | {"tilt_tir": 0.002, "tilt_span": 20}
    result = call("runout.budget", **request | {"contributors": [*CHAIN, stated]})["result"]
    assert result["tir"]["worst_case"] == pytest.approx(0.007 + 0.001 + 0.002 * 40 / 20)
    assert (result["forecast"], result["mended_forecast"]) == ("holds", "holds")


@pytest.mark.outside("runout.reversal", source="Synthetic part of known truth, all clockings")
def test_reversal_recovers_a_known_socket_and_part(call: Call) -> None:
    """Socket, part, best and worst clocking are those put in, by turning the part all round."""
    socket, part = cmath.rect(0.004, 0.7), cmath.rect(0.0025, 2.9)
    sent = {
        name: {"tir": 2 * abs(v), "high_spot": math.degrees(cmath.phase(v))}
        for name, v in (("at_0", socket + part), ("at_180", socket - part))
    }
    result = call("runout.reversal", units="mm", surface="external", **sent)["result"]
    turned = 2 * np.abs(socket + part * np.exp(1j * np.radians(np.arange(0, 360, 0.01))))
    assert result["socket_tir"]["value"] == pytest.approx(0.008)
    assert result["part_tir"]["value"] == pytest.approx(0.005)
    assert result["best_clocking_tir"] == pytest.approx(turned.min(), rel=1e-5)
    assert result["worst_clocking_tir"] == pytest.approx(turned.max(), rel=1e-5)
    assert result["best_clocking"]["degrees"] == pytest.approx(0.01 * turned.argmin(), abs=0.01)


AXIS: dict[str, Any] = {
    "units": "mm",
    "surface": "external",
    "stations": [120],
    "pivot_station": 0,
}


@pytest.mark.outside("runout.axis", source="Brute force: straight line through both sections")
def test_axis_follows_the_line_and_its_corrections_leave_nothing(call: Call) -> None:
    """TIR beyond both sections lies on the line through them; the corrections end at zero."""
    request = dict(next(o for o in OPERATIONS if o.verb == "axis").example)
    result = call("runout.axis", **request)["result"]
    e1, e2 = cmath.rect(0.0003, math.radians(20)), cmath.rect(0.0005, math.radians(140))
    x, y = (np.polyfit([1, 4], [getattr(e1, p), getattr(e2, p)], 1) for p in ("real", "imag"))
    there = complex(np.polyval(x, 5.5), np.polyval(y, 5.5))
    assert result["at_stations"][0]["tir"]["value"] == pytest.approx(2 * abs(there))
    left = e2
    for step in result["corrections"]:
        left -= cmath.rect(step["far_move"], math.radians(step["tap_from"]["degrees"]))
    assert abs(left) == pytest.approx(0, abs=1e-15)


@pytest.mark.outside("runout.axis", source="numpy Monte Carlo of both sections, GUM-S1 way")
def test_uncertainty_of_the_axis_grows_past_its_sections(call: Call) -> None:
    """Past both sections the TIR scatters as 200,000 drawn pairs of sections do."""
    near = {"station": 0, "tir": 0.02, "high_spot": 10, "eccentricity_standard_uncertainty": 2e-4}
    far = {"station": 50, "tir": 0.03, "high_spot": 70, "eccentricity_standard_uncertainty": 3e-4}
    request = AXIS | {"near": near, "far": far}
    result = call("runout.axis", **request)["result"]["at_stations"][0]
    rng = np.random.default_rng(5)
    drawn = []
    for section in (near, far):
        noise = rng.normal(0, section["eccentricity_standard_uncertainty"], (2, 200_000))
        true = cmath.rect(section["tir"] / 2, math.radians(section["high_spot"]))
        drawn.append(true + noise[0] + 1j * noise[1])
    tir = 2 * np.abs(drawn[0] + (drawn[1] - drawn[0]) * 120 / 50)
    assert result["tir"]["standard_uncertainty"] == pytest.approx(tir.std(), rel=0.01)


def test_sections_without_an_uncertainty_give_none(call: Call) -> None:
    """Of sections whose uncertainty was not stated the TIR has none, and they are named."""
    near = {"station": 0, "tir": 0.02, "high_spot": 10}
    far = {"station": 50, "tir": 0.03, "high_spot": 70}
    request = AXIS | {"near": near, "far": far}
    tir = call("runout.axis", **request)["result"]["at_stations"][0]["tir"]
    assert tir["value"] > 0
    assert (tir["standard_uncertainty"], tir["expanded_uncertainty"]) == (None, None)
    assert tir["not_stated"] == [
        f"{section}/eccentricity_standard_uncertainty" for section in ("near", "far")
    ]
    known = request | {"near": near | {"eccentricity_standard_uncertainty": 0}}
    tir = call("runout.axis", **known)["result"]["at_stations"][0]["tir"]
    assert tir["standard_uncertainty"] == 0
    assert tir["not_stated"] == ["far/eccentricity_standard_uncertainty"]


@pytest.mark.outside("runout.indicate", source="Cosine of the half angle, 60° center: 2/√3")
@pytest.mark.parametrize(
    ("slope", "factor"),
    [
        ({}, 1),
        ({"included_angle": 60}, 2 / math.sqrt(3)),
        ({"one_in_x": math.sqrt(3) / 2}, 2 / math.sqrt(3)),
        ({"designation": "morse-2"}, math.hypot(1, 0.59941 / 24)),
    ],
)
def test_reading_square_to_a_cone_is_turned_to_its_axis(
    call: Call, slope: dict[str, Any], factor: float
) -> None:
    """Square to a cone the eccentricity is what is read over cos α; without a slope as read."""
    result = indicate(call, 0.05 * np.cos(np.radians(ANGLES)), **slope)
    assert result["eccentricity"]["value"] == pytest.approx(0.05 * factor)
    assert result["uncertainty_by_resolution"] == pytest.approx(
        factor * 0.001 / math.sqrt(12) * math.sqrt(2 / len(ANGLES)), rel=0.05
    )


def test_bad_readings_are_refused_by_name(call: Call) -> None:
    """Too few readings, a repeated angle, and a reading that no circle explains are refused."""
    with pytest.raises(Impossible, match="2 harmonics need 5 readings"):
        indicate(call, [0, 1, 2, 1], [0, 90, 180, 270], harmonics=2)
    with pytest.raises(Disagreement, match="Readings 1 and 4 stand at the same angle"):
        indicate(call, [0, 1, 2, 1], [0, 90, 180, 360])
    stray = 0.05 * np.cos(np.radians(ANGLES))
    stray[4] += 0.5
    with pytest.raises(Disagreement, match="explains reading 5"):
        indicate(call, stray)


def test_a_long_reading_does_not_hold_up_the_others() -> None:
    """720 readings, or the axis at 100 stations, are worked out off the event loop; few are not."""
    operations = {operation.verb: operation for operation in OPERATIONS}
    for verb, field, entries in (
        ("indicate", "readings", readings(np.zeros(720), np.arange(720) / 2)),
        ("axis", "stations", [float(z) for z in range(100)]),
    ):
        operation = operations[verb]
        assert callable(operation.heavy)
        asked = {k: v for k, v in operation.example.items() if k != "formats"}
        few = operation.request.model_validate(asked)
        many = operation.request.model_validate(asked | {field: entries})
        assert (operation.heavy(few), operation.heavy(many)) == (False, True)


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda operation: operation.verb)
def test_every_runout_example_is_answered(service: TestClient[Any], operation: Any) -> None:
    """The example of every operation is answered over HTTP, twice with the same bytes."""
    first = service.post(operation.path, json=dict(operation.example))
    assert first.status_code == 200, first.text
    assert first.content == service.post(operation.path, json=dict(operation.example)).content
