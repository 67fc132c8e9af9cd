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
            assert found["smallest"] <= truth[wanted] * (1 + 1e-4)
            assert found["largest"] is None or truth[wanted] <= found["largest"] * (1 + 1e-4)


@pytest.mark.outside(
    "runout.convert",
    source="ISO 1101: a coaxiality zone's diameter is twice the offset; a circle turned off its "
    "center by e reads 2 e in all, by hand",
)
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
    assert found["smallest"] <= 0.03 <= found["largest"]
    assert "taper" in found["reasons"][0]


def test_what_does_not_follow_is_refused_with_the_way_out(call: Call) -> None:
    """Where no bound follows, the reason is said, and the fields by which one would follow."""
    for given, wanted in (
        ("tir", "coaxiality-zone-diameter"),
        ("tir", "concentricity-zone-diameter"),
        ("coaxiality-zone-diameter", "tir"),
    ):
        with pytest.raises(Impossible, match="out_of_roundness or every_section_alike") as refused:
            convert(call, 0.01, given, wanted)
        ways = [name for name in refused.value.fields if name != "wanted_term"]
        assert ways == ["out_of_roundness", "every_section_alike"]
        assert convert(call, 0.01, given, wanted, out_of_roundness=0.001)["relation"] != "equal"
        assert convert(call, 0.01, given, wanted, every_section_alike=True)["relation"] != "equal"
    with pytest.raises(Disagreement, match="cannot show a movement of only"):
        convert(call, 0.01, "tir", "eccentricity", out_of_roundness=0.1)


def test_one_section_says_the_least_of_the_whole_feature(call: Call) -> None:
    """A section's figure is a feature's at least: zone ≥ TIR less form, by the reading's terms."""
    one = convert(call, 0.01, "eccentricity", "coaxiality-zone-diameter")
    assert (one["relation"], one["smallest"], one["largest"]) == ("at-least", 0.02, None)
    assert "another section may be worse" in one["reasons"][0]
    for zone in ("coaxiality-zone-diameter", "concentricity-zone-diameter"):
        found = convert(call, 0.01, "tir", zone, out_of_roundness=0.002)
        assert (found["relation"], found["largest"]) == ("at-least", None)
        assert found["smallest"] == pytest.approx(0.008)


@pytest.mark.outside("runout.convert", source="A tapered axis drawn: each section read by itself")
@pytest.mark.parametrize("seed", range(4))
def test_the_whole_feature_says_the_most_of_one_section(call: Call, seed: int) -> None:
    """Of an axis that leans, a section that runs true is no less within the feature's figure."""
    rng = np.random.default_rng(seed)
    foot, tip = rng.normal(0, 0.01, 2) + 1j * rng.normal(0, 0.01, 2)
    sections = foot + (tip - foot) * np.linspace(0, 1, 50)
    readings = [np.ptp((e * np.exp(-1j * TURN)).real) for e in sections]
    feature = {"circular-runout": max(readings), "coaxiality-zone-diameter": max(readings)}
    for given, value in feature.items():
        for wanted, truths in (("tir", readings), ("eccentricity", np.abs(sections))):
            found = convert(call, float(value), given, wanted, out_of_roundness=0)
            assert found["relation"] == "at-most"
            assert max(truths) == pytest.approx(found["largest"], rel=1e-4)
            assert found["smallest"] <= min(truths)
            assert "any one section" in found["reasons"][0]


@pytest.mark.outside("runout.convert", source="Square waves with even lobes, every term worked out")
@pytest.mark.parametrize("seed", range(30))
def test_bounds_are_no_closer_than_the_worst_profiles(call: Call, seed: int) -> None:
    """Profiles that jump come up to the bounds without a form, and past none."""
    rng = np.random.default_rng(seed)
    jumps = np.sort(rng.choice(len(TURN) // 2, 2, replace=False)) if seed else np.array([0, 0])
    odd = np.ones(len(TURN) // 2)
    odd[jumps[0] : jumps[1]] = -1
    profile = np.concatenate([odd, -odd])
    first = 2 * np.mean(profile * np.exp(1j * TURN))
    own = profile - (first.conj() * np.exp(1j * TURN)).real
    half = len(TURN) // 2
    middles = first + np.exp(1j * TURN) * (own - np.roll(own, half)) / 2
    zone, movement = 2 * float(np.abs(middles).max()), float(np.ptp(profile))
    alike = {"every_section_alike": True}
    to_zone = convert(call, movement, "tir", "concentricity-zone-diameter", **alike)
    back = convert(call, zone, "concentricity-zone-diameter", "tir", **alike)
    offset = convert(call, zone, "concentricity-zone-diameter", "eccentricity", **alike)
    assert zone <= to_zone["largest"] * (1 + 1e-3)
    assert back["smallest"] * (1 - 1e-3) <= movement
    assert abs(first) <= offset["largest"] * (1 + 1e-9)
    if seed == 0:
        assert zone == pytest.approx(to_zone["largest"], rel=5e-3)


def test_terms_are_served(service: TestClient[Any]) -> None:
    """Each term is listed with its definition and standard, and served by its key."""
    listed = service.get("/v1/runout/terms").json()["result"]["terms"]
    assert len(listed) == 6
    assert all(t["definition"] and t["source"] for t in listed)
    assert service.get("/v1/runout/terms/tir").json()["result"] == listed[0]
