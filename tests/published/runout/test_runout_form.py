"""V-block factors against ISO 4292 and a turned polygon; off-crest taper against a root finder."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from halfangle_service.errors import Disagreement, Impossible
from support import Call

#: ISO 4292:1985, symmetrical three-point measurement, factors by lobes 2 to 10; from memory.
ISO_4292 = {
    60: [0, 3, 0, 0, 3, 0, 0, 3, 0],
    90: [1, 2, 0.41, 2, 1, 0, 2.41, 0, 1],
    120: [1.58, 1, 0.42, 2, 0.16, 2, 0.42, 1, 1.58],
}


@pytest.mark.outside("runout.v-block", source="ISO 4292:1985, factors of the summit method")
@pytest.mark.parametrize("v", [60, 90, 120])
def test_factors_are_those_of_the_standard(call: Call, v: int) -> None:
    """Factors for 2 to 10 lobes are the printed ones; a 90° V hides 7 lobes."""
    result = call("runout.v-block", units="mm", vee_angle=v, max_lobes=10)["result"]
    assert [f["factor"] for f in result["factors"]] == pytest.approx(ISO_4292[v], abs=0.006)
    if v == 90:
        assert result["hidden_lobes"] == [7, 9]
        assert result["hidden_from_both"] == [7, 9]


@pytest.mark.outside("runout.v-block", source="Brute force: a lobed outline turned in the V")
@pytest.mark.parametrize(
    ("lobes", "v", "at"), [(3, 90, 0), (5, 90, 30), (4, 108, -20), (7, 60, 45), (2, 72, 60)]
)
def test_factor_is_what_a_turned_outline_shows(call: Call, lobes: int, v: float, at: float) -> None:
    """A drawn outline, dropped into the V at each step of a turn, shows factor times its height."""
    height = 1e-5
    turn = np.linspace(0, 2 * math.pi, 6_001)
    flank = math.radians(90 - v / 2)
    shown = []
    for turned in np.linspace(0, 2 * math.pi / lobes, 72, endpoint=False):
        radius = 1 + height / 2 * np.cos(lobes * (turn + turned))
        x, y = radius * np.sin(turn), -radius * np.cos(turn)
        reach = [np.max(x * s * math.sin(flank) - y * math.cos(flank)) for s in (1, -1)]
        down = (reach[0] + reach[1]) / (2 * math.cos(flank))
        side = -(reach[0] - reach[1]) / (2 * math.sin(flank))
        line = (math.sin(math.pi - math.radians(at)), -math.cos(math.pi - math.radians(at)))
        shown.append(np.max(x * line[0] + y * line[1]) + side * line[0] + down * line[1])
    result = call(
        "runout.v-block", units="mm", vee_angle=v, indicator_angle=at, max_lobes=lobes, lobes=lobes,
        tir=float(np.ptp(shown)),
    )["result"]  # fmt: skip
    assert result["out_of_roundness"] == pytest.approx(height, rel=2e-3)


def test_reading_of_hidden_lobes_is_refused(call: Call) -> None:
    """A reading says nothing of lobes that the V hides, nor of an unknown number of lobes."""
    with pytest.raises(
        Impossible, match=r"hides 7 lobes: .*A V of \d+°, the indicator opposite to it, shows 2"
    ):
        call("runout.v-block", units="mm", lobes=7, tir=0.001)
    with pytest.raises(Disagreement, match="depends on the number of lobes"):
        call("runout.v-block", units="mm", tir=0.001)
    answer = call("runout.v-block", units="mm", lobes=7)
    assert answer["result"]["better_factor"] == pytest.approx(2, abs=0.1)
    assert "lobes-hidden" in [a["code"] for a in answer["advisories"]]


CREST: dict[str, Any] = {
    "units": "in",
    "included_angle": 60,
    "small_diameter": 0.1,
    "large_diameter": 0.5,
    "miss": 0.01,
    "tip_radius": 0.04,
}


@pytest.mark.outside("runout.off-crest", source="scipy.optimize.brentq: ball lowered on to a cone")
@pytest.mark.parametrize(("angle", "tip"), [(60, 0.04), (60, 0.0), (15, 0.03), (100, 0.1)])
def test_ball_lowered_beside_the_crest_drops_as_said(call: Call, angle: float, tip: float) -> None:
    """The drops are those of a ball lowered square to the cone until its distance is its radius."""
    result = call("runout.off-crest", **CREST | {"included_angle": angle, "tip_radius": tip})
    half = math.radians(angle / 2)

    def drop(radius: float) -> float:
        def gap(height: float) -> float:
            out = radius + height * math.cos(half)
            along = radius / math.tan(half) - height * math.sin(half)
            return (math.hypot(out, 0.01) - along * math.tan(half)) * math.cos(half) - tip

        return tip - float(brentq(gap, tip - 0.5 * radius, tip + 0.01, xtol=1e-15))

    found = result["result"]
    assert found["drop_at_small_end"] == pytest.approx(drop(0.05), rel=1e-9)
    assert found["drop_at_large_end"] == pytest.approx(drop(0.25), rel=1e-9)
    slope = (drop(0.05) - drop(0.25)) / (0.2 / math.sin(half))
    assert found["false_half_angle_arcsec"] == pytest.approx(math.degrees(slope) * 3600, rel=1e-4)


def test_ten_thousandths_of_miss_make_three_minutes(call: Call) -> None:
    """0.010 in off the crest of a 60° cone, radius 0.05 to 0.25, 0.040 tip: near 185 seconds."""
    found = call("runout.off-crest", **CREST)["result"]
    assert found["false_half_angle_arcsec"] == pytest.approx(185, abs=1.5)
    assert (found["seems"], found["ground_by_this"]) == ("steeper", "shallower")


def test_cone_is_taken_however_its_slope_is_stated(call: Call) -> None:
    """A Morse 2 by its designation reads as one of 0.59941 in a foot; no slope is refused."""
    run = {name: CREST[name] for name in CREST if name != "included_angle"}
    named = call("runout.off-crest", **run, designation="morse-2")["result"]
    stated = call("runout.off-crest", **run, taper_per_foot=0.59941)["result"]
    assert named["false_half_angle_arcsec"] == pytest.approx(stated["false_half_angle_arcsec"])
    with pytest.raises(Disagreement, match="slope of the cone is missing"):
        call("runout.off-crest", **run)
    with pytest.raises(Disagreement, match="half_angle disagrees with included_angle"):
        call("runout.off-crest", **CREST, half_angle=31)


def test_miss_allowed_gives_back_the_angle(call: Call) -> None:
    """Sent back as the miss, the miss allowed makes the very error allowed."""
    allowed = call("runout.off-crest", **CREST, half_angle_tolerance_arcsec=10)["result"][
        "limit_miss"
    ]
    back = call("runout.off-crest", **CREST | {"miss": allowed})["result"]
    assert back["false_half_angle_arcsec"] == pytest.approx(10, rel=1e-9)


def test_indicator_beside_the_cone_is_refused(call: Call) -> None:
    """A miss past the radius, or diameters the wrong way round, are refused by name."""
    with pytest.raises(Impossible, match="passes beside a cone"):
        call("runout.off-crest", **CREST | {"miss": 0.2})
    with pytest.raises(Impossible, match="not below the larger one"):
        call("runout.off-crest", **CREST | {"large_diameter": 0.1})
