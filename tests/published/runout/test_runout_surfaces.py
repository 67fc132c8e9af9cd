"""Shafts and bores off center, turned numerically under an indicator and read."""

import cmath
import math

import numpy as np
import pytest
from numpy.typing import NDArray

from halfangle_service.errors import Disagreement
from support import Call

TURN = np.arange(0, 360, 0.5)
SURFACES = ["external", "internal"]
SOURCE = "Brute force: an off-center shaft and bore turned numerically under an indicator"


def read(center: complex, surface: str, radius: float = 12.0) -> NDArray[np.float64]:
    """What an indicator shows at each degree of a turn: more where metal comes nearer to it.

    The axis is at zero; a shaft's surface comes nearer as it stands further out, a bore's wall as
    it stands further in.
    """
    toward = np.exp(1j * np.radians(TURN))
    along, across = (center * toward.conj()).real, (center * toward.conj()).imag
    distance = along + np.sqrt(radius**2 - across**2)
    return np.asarray(distance - radius if surface == "external" else radius - distance)


def found(center: complex, surface: str) -> dict[str, float]:
    """TIR and high spot as the indicator shows them."""
    shown = read(center, surface)
    return {"tir": float(np.ptp(shown)), "high_spot": float(TURN[np.argmax(shown)])}


@pytest.mark.outside("runout.indicate", source=SOURCE)
@pytest.mark.parametrize("surface", SURFACES)
@pytest.mark.parametrize("toward", [40, 130, 221.5])
def test_tapped_as_said_the_section_runs_true(call: Call, surface: str, toward: float) -> None:
    """Moved by the distance, from the side said toward the axis, shaft and bore read no runout."""
    center = cmath.rect(0.05, math.radians(toward))
    shown = read(center, surface)
    result = call(
        "runout.indicate",
        units="mm",
        surface=surface,
        indicator_resolution=0.001,
        readings=[
            {"angular_position": a, "reading": r}
            for a, r in zip(TURN[::20].tolist(), shown[::20].tolist(), strict=True)
        ],
    )["result"]
    side = math.radians(result["tap_from"]["degrees"])
    moved = center - cmath.rect(result["tap_distance"], side)
    assert np.ptp(read(moved, surface)) < 0.001 * np.ptp(shown)
    assert result["high_spot"]["value"]["degrees"] == pytest.approx(
        float(TURN[np.argmax(shown)]), abs=0.5
    )
    assert result["tap_from"]["degrees"] == pytest.approx(toward, abs=0.1)


@pytest.mark.outside("runout.axis", source=SOURCE)
@pytest.mark.parametrize("surface", SURFACES)
def test_both_corrections_true_the_whole_axis(call: Call, surface: str) -> None:
    """Swung and slid as said, an axis runs true at every station; before, it reads as said."""
    foot, slope = cmath.rect(0.03, 0.7), cmath.rect(0.0004, 2.6)
    result = call(
        "runout.axis",
        units="mm",
        surface=surface,
        near={"station": 10, **found(foot + 10 * slope, surface)},
        far={"station": 80, **found(foot + 80 * slope, surface)},
        stations=[140],
        pivot_station=-20,
    )["result"]
    there = found(foot + 140 * slope, surface)
    [at] = result["at_stations"]
    assert at["tir"]["value"] == pytest.approx(there["tir"], rel=0.02)
    assert at["high_spot"]["value"]["degrees"] == pytest.approx(there["high_spot"], abs=1)
    swing, slide = result["corrections"]
    by = cmath.rect(swing["far_move"] / 100, math.radians(swing["tap_from"]["degrees"]))
    whole = cmath.rect(slide["far_move"], math.radians(slide["tap_from"]["degrees"]))
    for station in (10, 80, 140):
        left = foot + station * slope - by * (station + 20) - whole
        assert np.ptp(read(left, surface)) < 0.02 * np.ptp(read(foot + station * slope, surface))


@pytest.mark.outside("runout.reversal", source=SOURCE)
@pytest.mark.parametrize("surface", SURFACES)
def test_socket_lies_off_where_reversal_says(call: Call, surface: str) -> None:
    """Read in a bore as on a spigot, socket and part lie off toward the side that is said."""
    socket, part = cmath.rect(0.006, 1.1), cmath.rect(0.004, 4.0)
    result = call(
        "runout.reversal",
        units="mm",
        surface=surface,
        at_0=found(socket + part, surface),
        at_180=found(socket - part, surface),
    )["result"]
    for name, truth in (("socket", socket), ("part", part)):
        direction = math.degrees(cmath.phase(truth)) % 360
        assert result[f"{name}_off_toward"]["degrees"] == pytest.approx(direction, abs=1)
        assert result[f"{name}_tir"]["value"] == pytest.approx(2 * abs(truth), rel=0.01)
        assert result[f"{name}_high_spot"]["value"]["degrees"] == pytest.approx(
            found(truth, surface)["high_spot"], abs=1
        )
    clocked = socket + part * cmath.exp(1j * math.radians(result["best_clocking"]["degrees"]))
    assert 2 * abs(clocked) == pytest.approx(result["best_clocking_tir"], rel=0.02)


@pytest.mark.outside("centers.effect", source=SOURCE)
@pytest.mark.parametrize("surface", SURFACES)
@pytest.mark.parametrize("station", [0.0, 80.0, 200.0])
def test_work_between_centers_reads_as_said(call: Call, surface: str, station: float) -> None:
    """Two live centers and the part's own runout, in a bore as on a shaft, show what is said."""
    first, second = cmath.rect(0.004, 0.4), cmath.rect(0.006, 3.0)
    own = {"part_at_first": cmath.rect(0.01, 5.0), "part_at_second": cmath.rect(0.003, 2.0)}
    result = call(
        "centers.effect",
        units="mm",
        surface=surface,
        first={"eccentricity": 0.004, "high_spot": math.degrees(0.4), "turns": True},
        second={"eccentricity": 0.006, "high_spot": math.degrees(3.0), "turns": True},
        distance_between_centers=200,
        stations_from_first=[station],
        **{name: found(center, surface) for name, center in own.items()},
    )["result"]["at_stations"][0]
    of_second = station / 200
    centers = first * (1 - of_second) + second * of_second
    part = own["part_at_first"] * (1 - of_second) + own["part_at_second"] * of_second
    shown = {"apparent_tir": "high_spot", "seen_tir": "seen_high_spot"}
    for (tir, spot), truth in zip(shown.items(), (centers, centers + part), strict=True):
        truly = found(truth, surface)
        assert result[tir] == pytest.approx(truly["tir"], rel=0.01)
        assert result[spot]["degrees"] == pytest.approx(truly["high_spot"], abs=1)


def test_what_runs_true_has_no_direction(call: Call) -> None:
    """Of no runout there is no high spot: none need be sent, and none comes back."""
    true = {"tir": 0}
    reversed_ = call("runout.reversal", units="mm", surface="external", at_0=true, at_180=true)
    names = ("socket_high_spot", "socket_off_toward", "part_high_spot", "best_clocking")
    assert [reversed_["result"][name] for name in names] == [None] * 4
    section = {"units": "mm", "surface": "internal", "stations": [3], "pivot_station": 0}
    axis = call("runout.axis", **section, near={**true, "station": 1}, far={**true, "station": 2})
    assert axis["result"]["at_stations"][0]["high_spot"] is None
    assert [step["tap_from"] for step in axis["result"]["corrections"]] == [None, None]
    even = [{"angular_position": a, "reading": 0.01} for a in (0, 90, 180, 270)]
    still = call(
        "runout.indicate", units="mm", surface="external", indicator_resolution=0.001, readings=even
    )["result"]
    assert (still["high_spot"], still["tap_from"], still["tap_distance"]) == (None, None, 0)


def test_runout_without_its_high_spot_is_refused(call: Call) -> None:
    """A TIR above zero needs its high spot, which is no zero where it was not sent."""
    with pytest.raises(Disagreement, match="has no direction") as refused:
        call(
            "runout.reversal",
            units="mm",
            surface="external",
            at_0={"tir": 0.01, "high_spot": 3},
            at_180={"tir": 0.002},
        )
    assert list(refused.value.fields) == ["at_180/high_spot"]
