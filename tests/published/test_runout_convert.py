"""Terms of runout against drawn profiles, whose every figure is known."""

import itertools
from typing import Any

import numpy as np
import pytest
from litestar.testing import TestClient

from halfangle_service.errors import Disagreement, Impossible
from support import Call

TURN = np.linspace(0, 2 * np.pi, 1440, endpoint=False)
KEYS = ("tir", "eccentricity", "concentricity-zone-diameter", "coaxiality-zone-diameter")


def convert(call: Call, value: float, given: str, wanted: str, **more: Any) -> dict[str, Any]:
    """Result of a conversion in millimetres."""
    request = {"units": "mm", "value": value, "given_term": given, "wanted_term": wanted}
    result: dict[str, Any] = call("runout.convert", **request | more)["result"]
    return result


def drawn(seed: int) -> tuple[dict[str, float], float]:
    """Every term of one section drawn at random, all sections alike, and its form error."""
    rng = np.random.default_rng(seed)
    profile = sum(rng.normal(0, 1 / k) * np.cos(k * TURN + rng.uniform(0, 6)) for k in range(1, 9))
    profile = np.sign(profile) * 0.3 if seed % 5 == 0 else profile
    first = 2 * np.mean(profile * np.exp(-1j * TURN))
    form = profile - np.mean(profile) - (first * np.exp(1j * TURN)).real
    half = len(TURN) // 2
    middles = (first + np.exp(-1j * TURN) * (form - np.roll(form, half)) / 2)[:half]
    values = {
        "tir": np.ptp(profile),
        "eccentricity": abs(first),
        "concentricity-zone-diameter": 2 * np.abs(middles).max(),
        "coaxiality-zone-diameter": 2 * abs(first),
    }
    return {k: float(v) for k, v in values.items()}, float(np.ptp(form))


@pytest.mark.outside("runout.convert", source="Profiles drawn at random, every term worked out")
@pytest.mark.parametrize("seed", range(20))
def test_bounds_hold_on_drawn_profiles(call: Call, seed: int) -> None:
    """From each term to each other, with and without the form, the truth is within the bounds."""
    truth, form = drawn(seed)
    for given, wanted in itertools.permutations(KEYS, 2):
        for known in ({"out_of_roundness": form}, {}):
            try:
                found = convert(
                    call, truth[given], given, wanted, every_section_alike=True, **known
                )
            except Impossible:
                assert "concentricity-zone-diameter" in (given, wanted)
                continue
            assert found["least"] <= truth[wanted] * (1 + 1e-4)
            assert found["most"] is None or truth[wanted] <= found["most"] * (1 + 1e-4)


@pytest.mark.parametrize(
    ("given", "wanted", "value"),
    [
        ("tir", "eccentricity", 0.005),
        ("eccentricity", "tir", 0.02),
        ("eccentricity", "coaxiality-zone-diameter", 0.02),
        ("eccentricity", "concentricity-zone-diameter", 0.02),
        ("circular-runout", "coaxiality-zone-diameter", 0.01),
        ("coaxiality-zone-diameter", "circular-runout", 0.01),
        ("tir", "circular-runout", 0.01),
    ],
)
def test_round_feature_of_parallel_axis_converts(
    call: Call, given: str, wanted: str, value: float
) -> None:
    """Round and the same all along, one term is another times 1, 2 or 1/2."""
    found = convert(call, 0.01, given, wanted, out_of_roundness=0, every_section_alike=True)
    assert found["relation"] == "equal"
    assert found["value"] == pytest.approx(value)
    assert found["reasons"] == []


@pytest.mark.outside(
    "runout.convert", source="Published example: total run-out 0.11, worst section 0.03"
)
def test_total_runout_only_bounds_circular(call: Call) -> None:
    """Total run-out 0.11 allows the worst section's 0.03, and does not tell it."""
    found = convert(call, 0.11, "total-runout", "circular-runout")
    assert (found["relation"], found["value"]) == ("at-most", None)
    assert found["least"] <= 0.03 <= found["most"]
    assert "taper" in found["reasons"][0]


def test_what_does_not_follow_is_refused_with_the_reason(call: Call) -> None:
    """Unknown form and median points, or one section and a whole feature, say why."""
    with pytest.raises(Impossible, match="Median points of opposed elements wander"):
        convert(call, 0.01, "circular-runout", "concentricity-zone-diameter")
    one = convert(call, 0.01, "eccentricity", "coaxiality-zone-diameter")
    assert (one["relation"], one["least"], one["most"]) == ("at-least", 0.02, None)
    assert "another section may be worse" in one["reasons"][0]
    with pytest.raises(Disagreement, match="cannot show a movement of only"):
        convert(call, 0.01, "tir", "eccentricity", out_of_roundness=0.1)


def test_terms_are_served(service: TestClient[Any]) -> None:
    """Each term is listed with its definition and standard, and served by its key."""
    listed = service.get("/v1/runout/terms").json()["result"]["terms"]
    assert len(listed) == 6
    assert all(t["definition"] and t["source"] for t in listed)
    assert service.get("/v1/runout/terms/tir").json()["result"] == listed[0]
