"""Gauge limits and needed uncertainties are those at which the verdict turns, whatever is asked."""

import math
import random
from typing import Any

import pytest

from support import Call

CASES = 60
RULES = ("iso-14253-1-2017", "iso-14253-1-2013", "guard-band", "simple-acceptance")
#: A step that no rounding of a root fills, in standard uncertainties.
STEP = 1e-4


def drawn(chance: random.Random) -> dict[str, Any]:
    """A request for a diameter or a runout, in units of some standard uncertainty."""
    spread = 10.0 ** chance.uniform(-5.0, -2.0)
    rule = chance.choice(RULES)
    request: dict[str, Any] = {"units": chance.choice(["in", "mm"]), "decision_rule": rule}
    if rule == "guard-band":
        request["guard_band"] = spread * chance.uniform(0.0, 3.0)
    if chance.random() < 0.4:
        limit = spread * chance.choice([0.3, 1.0, 2.5, 6.0, 30.0])
        request |= {"limit_tir": max(limit, 1e-6), "measured_tir": spread * chance.uniform(0, 40)}
    else:
        middle = chance.uniform(1.0, 20.0)
        half = spread * chance.choice([0.4, 1.5, 2.0, 5.0, 30.0])
        sides = chance.choice([("smallest",), ("largest",), ("smallest", "largest")])
        for side in sides:
            sign = -1.0 if side == "smallest" else 1.0
            request[f"{side}_diameter"] = middle + sign * half
        request["measured_diameter"] = middle + half * chance.uniform(-1.5, 1.5)
    kind = chance.choice(["standard", "few", "limit"])
    if kind == "limit":
        request["measurement_error_limit"] = max(spread, 1e-6)
    else:
        request["standard_uncertainty"] = spread
    if kind == "few":
        request["degrees_of_freedom"] = chance.choice([1, 2.7, 5, 30])
    return request


CASES_DRAWN = [drawn(random.Random(seed)) for seed in range(CASES)]  # noqa: S311  reproducible


def value_of(request: dict[str, Any]) -> str:
    """The field that holds the measured value."""
    return next(name for name in request if name.startswith("measured_"))


def verdict(call: Call, request: dict[str, Any], value: float) -> str:
    """The verdict on another value measured as well."""
    answer = call("inspection.verdict", **{**request, value_of(request): value})
    return str(answer["result"]["verdict"])


@pytest.mark.parametrize("request_", CASES_DRAWN)
def test_the_verdict_turns_at_the_gauge_limits(call: Call, request_: dict[str, Any]) -> None:
    """Just inside a gauge limit a value conforms, just past it not; likewise of rejection."""
    zones = call("inspection.verdict", **request_)["result"]["length_judged"]
    step = STEP * zones["estimate"]["standard_uncertainty"]
    for name, inward in (("smallest_accepted", 1.0), ("largest_accepted", -1.0)):
        edge = zones[name]
        if edge is not None and edge > step:
            assert verdict(call, request_, edge + inward * step) == "conforming"
            assert verdict(call, request_, edge - inward * step) != "conforming"
    for name, outward in (("rejected_below", -1.0), ("rejected_above", 1.0)):
        edge = zones[name]
        if edge is not None and edge > step:
            assert verdict(call, request_, edge + outward * step) == "not-conforming"
            assert verdict(call, request_, edge - outward * step) != "not-conforming"


@pytest.mark.parametrize("request_", CASES_DRAWN)
def test_where_no_value_is_accepted_none_conforms(call: Call, request_: dict[str, Any]) -> None:
    """With the gauge limits null no value tried between the limits conforms."""
    zones = call("inspection.verdict", **request_)["result"]["length_judged"]
    low = zones["smallest_allowed"] if zones["smallest_allowed"] is not None else 0.0
    high = zones["largest_allowed"]
    if zones["smallest_accepted"] is not None or zones["largest_accepted"] is not None:
        assert (zones["smallest_accepted"] or 0.0) <= (zones["largest_accepted"] or math.inf)
        return
    assert high is not None
    for share in (0.001, 0.25, 0.5, 0.75, 0.999):
        assert verdict(call, request_, low + share * (high - low)) != "conforming"


@pytest.mark.parametrize("request_", CASES_DRAWN)
def test_with_the_uncertainty_needed_it_is_proved(call: Call, request_: dict[str, Any]) -> None:
    """With a little less than is needed something is proved; with a little more nothing is."""
    zones = call("inspection.verdict", **request_)["result"]["length_judged"]
    needed = zones["needed_standard_uncertainty"]
    if needed is None:
        rule = request_["decision_rule"]
        assert rule in ("guard-band", "simple-acceptance") or verdict_is_sure(call, request_)
        return
    name, factor = "standard_uncertainty", 1.0
    if "measurement_error_limit" in request_:
        name, factor = "measurement_error_limit", math.sqrt(3.0)
    value = request_[value_of(request_)]
    if needed * factor < 2e-6:
        return
    better = {**request_, name: 0.999 * needed * factor}
    worse = {**request_, name: 1.001 * needed * factor}
    assert verdict(call, better, value) != "not-provable"
    assert verdict(call, worse, value) == "not-provable"


def verdict_is_sure(call: Call, request: dict[str, Any]) -> bool:
    """Whether a coarser measurement would prove it too."""
    name = "standard_uncertainty"
    if "measurement_error_limit" in request:
        name = "measurement_error_limit"
    value = request[value_of(request)]
    return verdict(call, {**request, name: 3.0 * request[name]}, value) != "not-provable"


@pytest.mark.parametrize("request_", CASES_DRAWN)
def test_probabilities_add_up(call: Call, request_: dict[str, Any]) -> None:
    """Under, within and over the limits is all; a verdict of 2017 has the probability it asks."""
    result = call("inspection.verdict", **request_)["result"]
    within = result["probability_of_conformance"]
    total = result["probability_below"] + within + result["probability_above"]
    assert total == pytest.approx(1.0, abs=1e-9)
    if request_["decision_rule"] == "iso-14253-1-2017":
        assert (result["verdict"] == "conforming") == (within >= 0.95)
        assert result["verdict"] != "not-conforming" or within <= 0.05 + 1e-12
