"""Every figure of the estimates of truing up, by the law of propagation and by scipy's laws."""

import cmath
import math
from typing import Any

import numpy as np
import pytest
from scipy import stats

from estimates_support import assert_found
from halfangle_service.registry import load_registry
from shaft_support import Shaft, asked
from support import Call, assert_values

LAW = "Law of propagation, JCGM 100:2008, 5.1.2, by hand"
#: Least squares of a cosine in n equally spaced readings: its amplitude has 2/n of their variance.
PER_READING = math.sqrt(2 / 4)


@pytest.fixture
def result(call: Call) -> dict[str, Any]:
    """The example: four readings a section, 1 and 4 in, each with a deviation of 0.00002 in."""
    found = call("runout.true-up", **dict(load_registry().operations["runout.true-up"].example))
    return dict(found["result"])


def degrees(vector: complex) -> float:
    """Direction of a vector in degrees round a turn."""
    return math.degrees(cmath.phase(vector)) % 360


#: By the readings at 0° and 90°, which are opposite to those at 180° and 270°.
NEAR, FAR = complex(0.0003, 0.0004), complex(-0.0005, 0.0008)


@pytest.mark.outside("runout.true-up", source=LAW)
@pytest.mark.parametrize(("name", "offset"), [("near", NEAR), ("far", FAR)])
def test_sections_as_read(result: dict[str, Any], name: str, offset: complex) -> None:
    """Eccentricity and high spot of a section, with what repeated readings leave open."""
    section, inputs = result[name], [(0.00002, PER_READING)]
    assert_found(section["eccentricity"], abs(offset), inputs)
    assert_found(section["high_spot"], degrees(offset), inputs, math.degrees(1 / abs(offset)))
    assert section["tir_from_eccentricity"] == pytest.approx(2 * abs(offset))
    shown = 2 * max(abs(offset.real), abs(offset.imag))
    assert section["tir_of_readings"] == pytest.approx(shown)


@pytest.mark.outside("runout.true-up", source=LAW)
def test_taps_by_both_sections(result: dict[str, Any]) -> None:
    """The swing at 4 in takes 4/3 of the far section less the near one; the slide what is at 0."""
    swing, slide = result["taps"]
    by_swing, by_slide = (FAR - NEAR) * 4 / 3, NEAR - (FAR - NEAR) / 3
    for tap, move, near, far in ((swing, by_swing, -4, 4), (slide, by_slide, 4, -1)):
        inputs = [(0.00002, PER_READING * near / 3), (0.00002, PER_READING * far / 3)]
        assert_found(tap["tap_distance"], abs(move), inputs)
        assert [c["of"] for c in tap["tap_distance"]["contributions"]] == ["near", "far"]
        assert tap["tap_from"]["degrees"] == pytest.approx(degrees(move))
    assert swing["near"]["tir"] == pytest.approx(2 * abs(by_slide))
    assert swing["near"]["indicator_change"] == pytest.approx(-abs(by_swing) / 4)
    assert slide["near"]["indicator_change"] == pytest.approx(-abs(by_slide))


@pytest.mark.outside("runout.true-up", source=f"{LAW}; scipy: Rayleigh's law")
def test_stations_before_and_after(result: dict[str, Any]) -> None:
    """At 5.5 in the near section counts −½ and the far one 1½; a tap missed there 11/8 and 1."""
    [at] = result["at_stations"]
    there = -0.5 * NEAR + 1.5 * FAR
    inputs = [(0.00002, -0.5 * PER_READING), (0.00002, 1.5 * PER_READING)]
    assert_found(at["tir"], 2 * abs(there), [(spread, 2 * by) for spread, by in inputs])
    assert_found(at["high_spot"], degrees(there), inputs, math.degrees(1 / abs(there)))
    after = at["tir_after"]
    rows = [
        (0.00002, -PER_READING, 0.00002, 3),
        (0.00002, 3 * PER_READING, 0.00002, 3),
        (0.00005, 2 * 5.5 / 4, 0.00005 / math.sqrt(3), math.sqrt(3)),
        (0.00005, 2, 0.00005 / math.sqrt(3), math.sqrt(3)),
    ]
    spreads = [abs(by) * spread for _, by, spread, _ in rows]
    spread = math.hypot(*spreads)
    assert_values(
        after,
        {
            "standard_uncertainty": spread,
            "expanded_uncertainty": stats.rayleigh.ppf(0.95) * spread,
            "coverage_factor": stats.rayleigh.ppf(0.95),
            "coverage_probability": 0.95,
            "worst_case": sum(s * row[3] for s, row in zip(spreads, rows, strict=True)),
        },
        rel=1e-6,
    )
    for row, (value, by, _, reach), part in zip(after["contributions"], rows, spreads, strict=True):
        figures = {
            "input_value": value,
            "sensitivity": by,
            "standard_uncertainty": part,
            "worst_case": part * reach,
            "share_percent": 100 * part**2 / spread**2,
        }
        assert_values(row, figures, rel=1e-6)
    assert [row["of"] for row in after["contributions"]] == [
        "near",
        "far",
        "tap_places/0",
        "tap_places/1",
    ]


@pytest.mark.outside(
    "runout.true-up", source="numpy least squares; scipy: Student's and Rice's law"
)
def test_few_readings_take_student(call: Call) -> None:
    """Eight readings of nothing stated carry two harmonics and a mean: three are to spare.

    Every estimate by them has Student's factor; of what taps leave, that of two components.
    """
    part = Shaft(0.02 + 0.01j, 0.0002 - 0.0001j, 12.0)
    request = asked(part, tap_error_limit=0)
    chance = np.random.default_rng(5)
    spread: dict[str, float] = {}
    for name in ("near", "far"):
        rows = request[name]["readings"]
        for row in rows:
            row["reading"] += 0.0005 * chance.standard_normal()
        angles = np.radians([row["angular_position"] for row in rows])
        read = np.array([row["reading"] for row in rows])
        columns = [f(k * angles) for k in (1, 2) for f in (np.cos, np.sin)]
        design = np.column_stack([np.ones(8), *columns])
        left = read - design @ np.linalg.lstsq(design, read, rcond=None)[0]
        spread[name] = math.sqrt(float(left @ left) / 3) * math.sqrt(2 / 8)
    result = call("runout.true-up", **request)["result"]
    for name in ("near", "far"):
        for field in ("eccentricity", "high_spot"):
            assert result[name][field]["degrees_of_freedom"] == 3
        found = result[name]["eccentricity"]
        assert found["standard_uncertainty"] == pytest.approx(spread[name])
        assert found["expanded_uncertainty"] == pytest.approx(stats.t.ppf(0.975, 3) * spread[name])
    by = {"near": -6 / 7, "far": 13 / 7}
    parts = [2 * by[name] * spread[name] for name in ("near", "far")]
    freedom = math.hypot(*parts) ** 4 / sum(x**4 / 3 for x in parts)
    [at] = result["at_stations"]
    for field in ("tir", "high_spot", "tir_after"):
        assert at[field]["degrees_of_freedom"] == pytest.approx(freedom)
    whole = math.floor(freedom)
    reach = math.sqrt(2 * stats.f.ppf(0.95, 2, whole)) * math.hypot(*parts)
    assert at["tir_after"]["expanded_uncertainty"] == pytest.approx(reach, rel=1e-6)
    arms = {"near": -10 / 7, "far": 10 / 7}
    swing = [arms[name] * spread[name] for name in ("near", "far")]
    freedom = math.hypot(*swing) ** 4 / sum(x**4 / 3 for x in swing)
    found = result["taps"][0]["tap_distance"]
    assert found["degrees_of_freedom"] == pytest.approx(freedom)


@pytest.mark.outside("runout.true-up", source="numpy: the lobes that the readings were made with")
def test_form_is_found_with_the_eccentricity(call: Call) -> None:
    """Ovality and lobes come back by their amplitude and high spot, at both sections."""
    part = Shaft(0.002 + 0.001j, 0.00002j, 12.0, "external", ((2, 0.0012, 0.4), (3, 0.0008, 1.9)))
    result = call("runout.true-up", **asked(part, harmonics=3))["result"]
    for name in ("near", "far"):
        for row, (lobes, amplitude, phase) in zip(result[name]["form"], part.lobes, strict=True):
            assert row["lobes"] == lobes
            assert row["amplitude"] == pytest.approx(amplitude, abs=1e-6)
            high = math.degrees(phase / lobes)
            assert row["high_spot"]["degrees"] == pytest.approx(high, abs=0.1)
