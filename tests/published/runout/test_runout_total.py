"""Total run-out against a published example and the definitions of run-out."""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement
from support import Call

#: High +0.02, low −0.09; the worst section swings 0.03.
EXAMPLE: dict[str, Any] = {
    "units": "mm",
    "sections": [
        {"station": 0, "section_readings": [-0.09, -0.07]},
        {"station": 20, "section_readings": [-0.05, -0.02]},
        {"station": 40, "section_readings": [0.0, 0.02]},
    ],
    "limit_total_runout": 0.1,
}


@pytest.mark.outside(
    "runout.total",
    source="Teaching text on run-out and concentricity: high +0.02, low −0.09, total 0.11, worst "
    "circular section 0.03",
)
def test_the_published_example(call: Call) -> None:
    """Readings from +0.02 to −0.09 are a total run-out of 0.11; the worst section has 0.03."""
    result = call("runout.total", **EXAMPLE)["result"]
    assert result["total_runout"] == pytest.approx(0.11)
    assert result["circular_runout"] == pytest.approx(0.03)
    assert result["circular_at"]["station"] == 20
    assert result["circular_at"]["circular_runout"] == pytest.approx(0.03)
    assert result["circular_at"]["mean_reading"] == pytest.approx(-0.035)
    assert result["circular_at"]["smallest_section_reading"] == -0.05
    assert result["circular_at"]["largest_section_reading"] == -0.02
    assert result["margin"] == pytest.approx(-0.01)
    rows = result["sections"]
    assert [row["station"] for row in rows] == [0, 20, 40]
    assert [row["smallest_section_reading"] for row in rows] == [-0.09, -0.05, 0.0]
    assert [row["largest_section_reading"] for row in rows] == [-0.07, -0.02, 0.02]
    assert [row["circular_runout"] for row in rows] == pytest.approx([0.02, 0.03, 0.02])
    assert [row["mean_reading"] for row in rows] == pytest.approx([-0.08, -0.035, 0.01])


@pytest.mark.outside(
    "runout.total", source="ISO 1101: total run-out of a sampled cone, brute force over its surface"
)
def test_a_tapered_eccentric_surface(call: Call) -> None:
    """Of a surface sampled here: its whole range, each turn's range, and its taper by numpy."""
    turn = np.linspace(0, 2 * np.pi, 36, endpoint=False)
    stations = np.linspace(5, 45, 9)
    sections = [(0.0002 * z + 0.004 * np.cos(turn) + 1e-5 * (z - 25) ** 2) for z in stations]
    result = call(
        "runout.total",
        units="mm",
        sections=[
            {"station": float(z), "section_readings": r.tolist()}
            for z, r in zip(stations, sections, strict=True)
        ],
    )["result"]
    assert result["total_runout"] == pytest.approx(np.ptp(sections))
    assert result["circular_runout"] == pytest.approx(0.008)
    assert result["circular_runout"] <= result["total_runout"]
    means = [r.mean() for r in sections]
    slope, level = np.polyfit(stations, means, 1)
    assert result["half_taper_arcsec"] == pytest.approx(math.degrees(math.atan(slope)) * 3600)
    assert result["taper_over_length"] == pytest.approx(slope * 40)
    assert result["left_by_taper"] == pytest.approx(np.ptp(means - slope * stations - level))
    assert result["margin"] is None


@pytest.mark.outside(
    "runout.total",
    source="ISO 1101: a round cylinder off by e shows 2 e, in a section and over all",
)
def test_a_round_cylinder_off_center_reads_twice_its_eccentricity(call: Call) -> None:
    """TIR = 2 e; parallel offset adds nothing from section to section, two planes may differ."""
    e = 0.01
    swing = [e, -e]
    result = call(
        "runout.total",
        units="mm",
        sections=[{"station": z, "section_readings": swing} for z in (0, 100)],
    )["result"]
    assert result["total_runout"] == result["circular_runout"] == pytest.approx(2 * e)
    assert result["half_taper_arcsec"] == result["left_by_taper"] == 0.0


def test_a_taper_makes_no_more_than_the_whole(call: Call) -> None:
    """A step has a line steeper than itself, of which no more than all is said."""
    steps = [{"station": z, "section_readings": [z // 2, z // 2]} for z in range(4)]
    answer = call("runout.total", units="mm", sections=steps)
    assert answer["result"]["taper_over_length"] == pytest.approx(1.2)
    (advisory,) = answer["advisories"]
    assert "makes 100 % of the total run-out" in advisory["message"]


def test_sections_at_one_station_are_refused(call: Call) -> None:
    """Each section has a station of its own."""
    twice = [{"station": 1, "section_readings": [0, 1]}] * 2
    with pytest.raises(Disagreement, match="Two sections have the station 1"):
        call("runout.total", units="mm", sections=twice)


# Definitions that go with it -------------------------------------------------------------------
def along_axis(call: Call, far: dict[str, Any], *stations: float) -> dict[str, Any]:
    """Line of an axis through 0.010 at 0° at station 0, and another section at 100."""
    result: dict[str, Any] = call(
        "runout.axis",
        units="mm",
        surface="external",
        near={"station": 0, "tir": 0.02, "high_spot": 0},
        far={"station": 100, **far},
        stations=list(stations),
        pivot_station=0,
    )["result"]
    return result


@pytest.mark.outside("runout.axis", source="Vectors by hand: e1 (0.010, 0), e2 (0, 0.010), z 200")
def test_two_planes_are_added_as_vectors(call: Call) -> None:
    """At z = 200 e is (−0.010, 0.020), 0.02236 long, TIR 0.04472; the tilt is 0.1414 mrad."""
    result = along_axis(call, {"tir": 0.02, "high_spot": 90}, 200)
    (end,) = result["at_stations"]
    assert end["tir"]["value"] == pytest.approx(0.04472, abs=5e-6)
    assert end["high_spot"]["value"]["degrees"] == pytest.approx(116.565, abs=1e-3)
    assert result["tilt_arcsec"] == pytest.approx(0.1414e-3 * 206264.8, abs=0.05)


@pytest.mark.outside(
    "runout.axis",
    source="Examination question GATE ME: equal runout at two planes, key from memory",
)
def test_equal_runout_at_two_planes_is_a_parallel_axis(call: Call) -> None:
    """Alike in size and direction at both planes, the axis is parallel; opposite, it is tilted."""
    parallel = along_axis(call, {"tir": 0.02, "high_spot": 0}, 50)
    assert parallel["tilt_arcsec"] == 0.0
    assert parallel["at_stations"][0]["tir"]["value"] == pytest.approx(0.02)
    tilted = along_axis(call, {"tir": 0.02, "high_spot": 180}, 50)
    assert tilted["tilt_arcsec"] > 0.0
    assert tilted["at_stations"][0]["tir"]["value"] == pytest.approx(0.0, abs=1e-12)


@pytest.mark.outside(
    "runout.convert",
    source="ISO 1101:2017 and ASME Y14.5-2009: concentricity and coaxiality zones are diameters",
)
@pytest.mark.parametrize("zone", ["concentricity-zone-diameter", "coaxiality-zone-diameter"])
def test_a_zone_of_coaxiality_is_twice_the_eccentricity(call: Call, zone: str) -> None:
    """An eccentricity is at most half of the zone's diameter: of 0.02 it is 0.01."""
    request = {"units": "mm", "value": 0.02, "given_term": zone, "wanted_term": "eccentricity"}
    result = call("runout.convert", **request, every_section_alike=True, out_of_roundness=0)
    assert result["result"]["largest"] == pytest.approx(0.01)
