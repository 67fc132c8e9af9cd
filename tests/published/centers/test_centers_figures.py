"""Figures beside the headline of answers about centers, each worked out apart."""

import math
from typing import Any

import numpy as np
import pytest

from support import Call, assert_values

#: Runout 0.5 thou, position 0.2 thou, of which a quarter; a station at a sixth of the way.
LIMITS: dict[str, Any] = {
    "units": "in",
    "limit_tir": 0.0005,
    "limit_position": 0.0002,
    "share_percent": 25,
    "distance_between_centers": 6,
    "station_from_center": 1,
}
TURN = np.exp(2j * math.pi * np.arange(3600) / 3600)


def _farthest(eccentricity: float, other: float) -> float:
    """How far the axis is off at the station, both centers at the worst of all clockings."""
    return float(np.max(np.abs(eccentricity * 5 / 6 + other * TURN / 6)))


@pytest.mark.outside("centers.limits", source="numpy: both centers at every clocking")
@pytest.mark.parametrize("other", [None, 0.00003])
@pytest.mark.parametrize("half_angle", [30, 45])
def test_a_center_at_its_limit_takes_all_that_is_allowed(
    call: Call, other: float | None, half_angle: float
) -> None:
    """A dead center at its limit moves the axis by just what it may; reseated, by twice its offset.

    A quarter of 0.2 thou is 50 µin: both alike it is the limit itself; beside one 30 µin out it is
    (50 − 30/6) / (5/6) = 54 µin. Where it may be put back at any clocking, two parts may differ by
    twice the offset, so half of that is left: 25 µin, or (25 − 5) / (5/6) = 24 µin.
    """
    beside = {"both_alike": True} if other is None else {"other_eccentricity": other}
    result = call("centers.limits", **LIMITS, **beside, half_angle=half_angle)["result"]
    assert result["seen_percent"] == pytest.approx(100 * 5 / 6)
    by_hand = {"dead": (0.00005, 0.000054), "dead_reseated": (0.000025, 0.000024)}
    for name, allowed in (("dead", 0.00005), ("dead_reseated", 0.000025)):
        eccentricity = by_hand[name][other is not None]
        forms = {
            "eccentricity": eccentricity,
            "tir": 2 * eccentricity,
            "zone_diameter": 2 * eccentricity,
            "tir_on_cone": 2 * eccentricity * math.cos(math.radians(half_angle)),
        }
        assert_values(result[name], forms)
        found = result[name]["eccentricity"]
        assert _farthest(found, found if other is None else other) == pytest.approx(allowed)


@pytest.mark.outside("centers.limits", source="numpy: both centers at every clocking")
def test_a_live_center_at_its_limit(call: Call) -> None:
    """It shows as runout of twice its offset: with no position given, 62.5 µin of a quarter."""
    request = {**LIMITS, "limit_position": None, "both_alike": True}
    result = call("centers.limits", **request)["result"]
    forms = {"eccentricity": 6.25e-5, "tir": 1.25e-4, "zone_diameter": 1.25e-4}
    assert_values(result["live"], {**forms, "tir_on_cone": 1.25e-4 * math.cos(math.pi / 6)})
    assert 2 * _farthest(6.25e-5, 6.25e-5) == pytest.approx(0.25 * 0.0005)


@pytest.mark.outside("centers.effect", source="Complex numbers, by hand: offsets over the length")
def test_two_offsets_tilt_the_work(call: Call) -> None:
    """0.3 thou and 0.4 thou a quarter turn on differ by 0.5, over 6 in 17.19″; at worst 24.06″."""
    centers = {
        "first": {"eccentricity": 0.0003, "high_spot": 0, "turns": True},
        "second": {"eccentricity": 0.0004, "high_spot": 90, "turns": True},
    }
    request = {"units": "in", "surface": "external", "distance_between_centers": 6, **centers}
    result = call("centers.effect", **request, stations_from_first=[0, 1.5])["result"]
    assert [row["station_from_first"] for row in result["at_stations"]] == [0, 1.5]
    # A quarter of the way along, three quarters of the one and a quarter of the other, in line.
    assert_values(result, {"at_stations[1].worst_clocking_tir": 2 * (0.000225 + 0.0001)})
    expected = {"tilt_arcsec": 0.0005 / 6, "worst_tilt_arcsec": 0.0007 / 6}
    assert_values(
        result, {name: math.degrees(tilt) * 3600 for name, tilt in expected.items()}, rel=1e-7
    )
    assert result["tilt_arcsec"] == pytest.approx(17.19, abs=0.005)
    assert result["worst_tilt_arcsec"] == pytest.approx(24.06, abs=0.005)


@pytest.mark.outside("centers.effect", source="Similar triangles by hand")
def test_a_second_center_beside_its_place(call: Call) -> None:
    """One end 0.01 in high and 0.02 in to the left: a quarter of it at a quarter of the length.

    Over 6 in that is 343.77″ up and 687.55″ aside.
    """
    centers = {
        "first": {"eccentricity": 0, "turns": True},
        "second": {"eccentricity": 0, "turns": True},
    }
    request = {"units": "in", "surface": "external", "distance_between_centers": 6, **centers}
    off = {"second_height": 0.01, "second_line": -0.02}
    result = call("centers.effect", **request, **off, stations_from_first=[1.5])["result"]
    expected = {
        "bench_height_tilt_arcsec": math.degrees(math.atan(0.01 / 6)) * 3600,
        "bench_line_tilt_arcsec": -math.degrees(math.atan(0.02 / 6)) * 3600,
        "at_stations[0].height_offset": 0.0025,
        "at_stations[0].line_offset": -0.005,
    }
    assert_values(result, expected, rel=1e-5)


@pytest.mark.outside("centers.adapter", source="By hand: difference of two arc tangents")
def test_a_shank_against_its_socket(call: Call) -> None:
    """A shank of 0.0501 in an inch in a Morse No. 2 socket of 0.59941 in a foot: 15.37″ blunter."""
    result = call(
        "centers.adapter",
        units="in",
        shank={"rate_of_taper": 0.0501},
        socket={"designation": "morse-2"},
        engagement=2.5,
        projection=3,
    )["result"]
    shank, socket = math.degrees(math.atan(0.02505)), math.degrees(math.atan(0.59941 / 24))
    assert result["half_angle_difference_arcsec"] == pytest.approx(15.37, abs=0.005)
    assert_values(
        result,
        {
            "shank_half_angle.degrees": shank,
            "half_angle_difference_arcsec": (shank - socket) * 3600,
        },
        rel=1e-8,
    )


@pytest.mark.outside("centers.contact", source="By hand: cones of other angles touch on an edge")
@pytest.mark.parametrize(("hole", "circle"), [(59, 8.5), (61, 4)])
def test_a_center_bears_on_one_edge(call: Call, hole: float, circle: float) -> None:
    """A sharper hole is touched at its mouth, a blunter one at the pilot's edge."""
    sizes = {"mouth_diameter": 8.5, "pilot_diameter": 4}
    request = {"units": "mm", "center_included_angle": 60, "hole_included_angle": hole, **sizes}
    assert call("centers.contact", **request)["result"]["contact_diameter"] == circle


@pytest.mark.outside("centers.hole", source="DIN 332-1:1986 type B 2.5, ISO 2540; cones by hand")
def test_a_hole_with_its_protecting_chamfer(call: Call) -> None:
    """B 2.5: cone to 5.3, chamfer of 120° to 8, cut off 8.3; the drill's pilot is 3.1 to 4.1 long.

    Chamfer (8 − 5.3) / (2 tan 60°) = 0.779 deep, cone 2.8 / (2 tan 30°) = 2.425; lengths of the
    drill are from memory.
    """
    result = call("centers.hole", units="mm", key="b-2.5")["result"]
    edge = 2.7 / (2 * math.tan(math.radians(60))) + 2.8 / (2 * math.tan(math.radians(30)))
    assert edge == pytest.approx(0.779 + 2.425, abs=1e-3)
    expected = {
        "pilot_diameter": 2.5,
        "mouth_diameter": 5.3,
        "cone_diameter": 5.3,
        "chamfer_diameter": 8,
        "depth_to_pilot_edge": edge,
        "tool_depth_min": edge + 3.1,
        "tool_depth_max": edge + 4.1,
        "depth_min": 5.4,
        "cut_off": 8.3,
    }
    assert_values(result, expected)


@pytest.mark.outside("centers.hole", source="Ball in a cone, by hand: contact d cos α")
def test_a_hole_found_over_a_ball(call: Call) -> None:
    """A ball of 4.5 mm touches a 60° cone on 4.5 cos 30°; 0.1 mm lower is 0.11547 mm wider.

    Its center stands r / sin α over the cone's point, the mouth D / (2 tan α): so its top is
    4.5 + 2.25 − 5 / (2 tan 30°) = 2.41987 mm over the face of a mouth of 5 mm.
    """
    request = {"units": "mm", "key": "a-2.5", "mouth_diameter": 5, "ball_diameter": 4.5}
    tangent = math.tan(math.radians(30))
    height = 4.5 + 2.25 - 2.5 / tangent
    assert height == pytest.approx(2.41987, abs=1e-5)
    result = call("centers.hole", **request, height_over_face=height - 0.1)["result"]
    expected = {
        "ball.ball_diameter": 4.5,
        "ball.contact_diameter": 4.5 * math.cos(math.radians(30)),
        "ball.height_over_face": height,
        "ball.height_per_diameter": -1 / (2 * tangent),
        "ball.found_diameter": 5 + 0.2 * tangent,
        "ball.diameter_error": 0.2 * tangent,
    }
    assert_values(result, expected)
