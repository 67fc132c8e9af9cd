"""Eccentric centers against a part turned step by step."""

import cmath
import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Impossible
from support import Call

PAIR: dict[str, Any] = {
    "units": "mm",
    "surface": "external",
    "first": {"eccentricity": 0.004, "high_spot": 20, "turns": True},
    "second": {"eccentricity": 0.003, "high_spot": 130, "turns": False},
    "distance_between_centers": 200,
}


@pytest.mark.outside("centers.effect", source="Brute force: the axis turned in 3,600 steps")
@pytest.mark.parametrize("station", [0.0, 70.0, 200.0])
def test_effect_is_what_a_turned_axis_shows(call: Call, station: float) -> None:
    """The live center's part turns and is read; the dead center's part stands still."""
    found = call("centers.effect", **PAIR, stations_from_first=[station])["result"]["at_stations"][
        0
    ]
    turn = np.exp(1j * np.linspace(0, 2 * math.pi, 3600, endpoint=False))
    live, dead = cmath.rect(0.004, math.radians(20)), cmath.rect(0.003, math.radians(130))
    axis = live * turn * (1 - station / 200) + dead * station / 200
    assert found["apparent_tir"] == pytest.approx(np.ptp(axis.real), abs=1e-8)
    assert found["standing_offset"] == pytest.approx(abs(axis.mean()), abs=1e-12)


def test_opposed_centers_read_zero_at_mid_length(call: Call) -> None:
    """Equal and opposed live centers show nothing in the middle, everything at the ends."""
    ends = [{"eccentricity": 0.002, "high_spot": a, "turns": True} for a in (0, 180)]
    request = PAIR | {"first": ends[0], "second": ends[1], "stations_from_first": [0, 100, 200]}
    found = call("centers.effect", **request)["result"]["at_stations"]
    assert [f["apparent_tir"] for f in found] == pytest.approx([0.004, 0, 0.004], abs=1e-12)


def test_station_outside_the_part_is_refused(call: Call) -> None:
    """A station past the second center is refused by name."""
    with pytest.raises(Impossible, match="Station 201 mm is outside the part"):
        call("centers.effect", **PAIR, stations_from_first=[201])


@pytest.mark.outside("centers.effect", source="Brute force: part drawn, turned over and read")
@pytest.mark.parametrize("station", [0.0, 60.0, 200.0])
def test_part_turned_end_for_end_shows_what_is_said(call: Call, station: float) -> None:
    """A part drawn as points, turned over about the vertical, is read at the same section."""
    part = {
        "part_at_first": {"tir": 0.01, "high_spot": 75},
        "part_at_second": {"tir": 0.004, "high_spot": 200},
    }
    found = call("centers.effect", **PAIR, **part, stations_from_first=[station])["result"][
        "at_stations"
    ][0]
    w = station / 200
    own = (1 - w) * cmath.rect(0.005, math.radians(75)) + w * cmath.rect(0.002, math.radians(200))
    turned = np.array([own.real, own.imag, station - 100]) * [1, -1, -1]
    live = cmath.rect(0.004, math.radians(20))
    turn = np.exp(1j * np.linspace(0, 2 * math.pi, 3600, endpoint=False))
    before = (live * (1 - w) + own) * turn
    place = (turned[2] + 100) / 200
    after = (live * (1 - place) + complex(turned[0], turned[1])) * turn
    assert found["seen_tir"] == pytest.approx(np.ptp(before.real), abs=1e-8)
    assert found["seen_tir_end_for_end"] == pytest.approx(np.ptp(after.real), abs=1e-8)
    assert found["part_tir"] == pytest.approx(2 * abs(own))


def test_what_was_not_stated_is_null_and_named(call: Call) -> None:
    """Of a part and of bench centers that were not stated nothing is said; a zero is a zero."""
    stated = ("part_at_first", "part_at_second", "second_height", "second_line")
    result = call("centers.effect", **PAIR, stations_from_first=[100])["result"]
    at = result["at_stations"][0]
    assert result["not_stated"] == list(stated)
    nothing = ("part_tir", "seen_tir", "seen_high_spot", "seen_tir_end_for_end")
    assert [at[name] for name in (*nothing, "height_offset", "line_offset")] == [None] * 6
    assert (result["bench_height_tilt_arcsec"], result["bench_line_tilt_arcsec"]) == (None, None)
    true = {"part_at_first": {"tir": 0}, "second_height": 0, "second_line": 0}
    result = call("centers.effect", **PAIR, **true, stations_from_first=[0, 100])["result"]
    at = result["at_stations"][0]
    assert result["not_stated"] == ["part_at_second"]
    assert (at["part_tir"], at["height_offset"], at["line_offset"]) == (0, 0, 0)
    assert at["seen_tir"] == at["apparent_tir"] > 0


def test_part_read_at_one_end_is_known_there_alone(call: Call) -> None:
    """The end that was not read is no true one: away from the end read nothing is said."""
    part = {"tir": 0.01, "high_spot": 75}
    for name, own in (("part_at_first", 0), ("part_at_second", 200)):
        result = call("centers.effect", **PAIR, **{name: part}, stations_from_first=[own, 100])[
            "result"
        ]
        here, between = result["at_stations"]
        assert here["part_tir"] == pytest.approx(0.01)
        assert here["seen_tir"] > 0
        names = ("part_tir", "seen_tir", "seen_high_spot", "seen_tir_end_for_end")
        assert [between[name] for name in names] == [None] * 4
    both = {"part_at_first": part, "part_at_second": {"tir": 0}}
    middle = call("centers.effect", **PAIR, **both, stations_from_first=[100])["result"][
        "at_stations"
    ][0]
    assert middle["part_tir"] == pytest.approx(0.005)


def test_center_without_its_direction_gives_the_worst_clocking(call: Call) -> None:
    """Of an eccentric center whose direction was not sent the worst is told; 0 is not guessed."""
    undirected = PAIR | {"first": {"eccentricity": 0.004, "turns": True}}
    result = call("centers.effect", **undirected, stations_from_first=[50])["result"]
    at = result["at_stations"][0]
    assert (at["apparent_tir"], at["high_spot"], result["tilt_arcsec"]) == (None, None, None)
    assert at["worst_clocking_tir"] == pytest.approx(0.006)
    assert at["standing_offset"] == pytest.approx(0.003 / 4)
    assert result["not_stated"][0] == "first/high_spot"
    true = PAIR | {"first": {"eccentricity": 0, "turns": True}}
    result = call("centers.effect", **true, stations_from_first=[50])["result"]
    assert (result["at_stations"][0]["apparent_tir"], result["not_stated"][0]) == (
        0,
        "part_at_first",
    )


def test_bench_centers_off_read_as_taper(call: Call) -> None:
    """0.01 mm in 200 mm of height is 10.3 seconds, and half of it at mid-length."""
    answer = call(
        "centers.effect", **PAIR, stations_from_first=[100], second_height=0.01, second_line=-0.02
    )
    result = answer["result"]
    assert result["bench_height_tilt_arcsec"] == pytest.approx(10.313, abs=1e-3)
    assert result["bench_line_tilt_arcsec"] == pytest.approx(-20.626, abs=1e-3)
    assert result["at_stations"][0]["height_offset"] == pytest.approx(0.005)
    assert "bench-centers-off" in [a["code"] for a in answer["advisories"]]
