"""Limits of a center against a rotated, sampled axis."""

import math
from typing import Any

import numpy as np
import pytest

from halfangle_service.errors import Disagreement, Impossible
from support import Call


def sampled_tir(eccentricity: float, length: float, station: float) -> float:
    """Full indicator movement at a station, from a line turned through 3,600 positions."""
    turn = np.linspace(0, 2 * np.pi, 3600, endpoint=False)
    at_center = eccentricity * np.exp(1j * turn)
    offset = at_center + (0 - at_center) * station / length
    return float(np.ptp(offset.real))


@pytest.mark.outside("centers.limits", source="Brute force: the work's axis turned and sampled")
@pytest.mark.parametrize("station", [0.0, 1.0, 4.5])
def test_center_at_its_limit_makes_the_runout_allowed(call: Call, station: float) -> None:
    """A live center off by its limit makes, at the station, the share of the runout allowed."""
    result = call(
        "centers.limits",
        units="in",
        limit_tir=0.0005,
        share_percent=25,
        distance_between_centers=6,
        other_eccentricity=0,
        station_from_center=station,
    )["result"]
    measured = sampled_tir(result["live"]["eccentricity"], 6, station)
    assert measured == pytest.approx(0.25 * 0.0005, rel=1e-6)


@pytest.mark.outside(
    "centers.limits", source="ISO 1101: a coaxiality zone is a diameter; TIR = 2 e"
)
def test_forms_of_a_limit_say_the_same(call: Call) -> None:
    """TIR and zone are twice the eccentricity; on a 60° cone the reading is 2 e cos 30°."""
    live = call(
        "centers.limits",
        units="mm",
        limit_position=0.01,
        distance_between_centers=100,
        station_from_center=50,
        other_eccentricity=0,
    )["result"]["live"]
    assert live["eccentricity"] == pytest.approx(0.02)
    assert live["tir"] == live["zone_diameter"] == pytest.approx(0.04)
    assert live["tir_on_cone"] == pytest.approx(0.04 * math.sqrt(3) / 2)


def test_dead_center_has_a_limit_only_by_position(call: Call) -> None:
    """A dead center makes no runout: without a position it has no limit, and the answer says so."""
    answer = call(
        "centers.limits",
        units="in",
        limit_tir=0.001,
        distance_between_centers=6,
        other_eccentricity=0,
        station_from_center=0,
    )
    assert answer["result"]["dead"] is None
    assert [a["code"] for a in answer["advisories"]] == ["dead-center-no-runout"]


def test_other_center_that_uses_up_everything_is_refused(call: Call) -> None:
    """Where the other center alone goes past what is allowed, no limit is given."""
    with pytest.raises(
        Impossible, match=r"The other center alone puts the axis 0\.0050 mm off"
    ) as refused:
        call(
            "centers.limits",
            units="mm",
            limit_position=0.004,
            distance_between_centers=100,
            station_from_center=50,
            other_eccentricity=0.01,
        )
    assert "should be below 0.008" in refused.value.fields["other_eccentricity"]


def test_station_outside_and_nothing_allowed_are_refused(call: Call) -> None:
    """A station past the other center, and a request that allows nothing, are refused."""
    with pytest.raises(Impossible, match="not between the centers"):
        call(
            "centers.limits",
            units="mm",
            limit_position=0.01,
            distance_between_centers=100,
            station_from_center=100,
            both_alike=True,
        )
    with pytest.raises(
        Disagreement, match="At least one of `limit_tir` and `limit_position` is needed"
    ):
        call("centers.limits", units="mm", distance_between_centers=100, station_from_center=1)


@pytest.mark.parametrize(
    ("slope", "half_angle"),
    [
        ({}, 30),
        ({"included_angle": 82}, 41),
        ({"designation": "morse-2"}, math.degrees(math.atan(0.59941 / 24))),
    ],
)
def test_reading_on_the_cone_is_by_its_slope(
    call: Call, slope: dict[str, Any], half_angle: float
) -> None:
    """Square to the surface 2 e cos α is read: of a 60° center where no slope is stated."""
    request = {"units": "mm", "limit_position": 0.01, "distance_between_centers": 100}
    live = call("centers.limits", **request, **slope, station_from_center=0, both_alike=True)[
        "result"
    ]["live"]
    assert live["tir_on_cone"] == pytest.approx(0.02 * math.cos(math.radians(half_angle)))


def test_other_center_is_asked_for(call: Call) -> None:
    """Without the other center, or with it said twice, no limit is given; a true one is said 0."""
    request = {
        "units": "mm",
        "limit_tir": 0.01,
        "distance_between_centers": 100,
        "station_from_center": 50,
    }
    with pytest.raises(Disagreement, match="0 for a true one, or `both_alike` as true; neither"):
        call("centers.limits", **request)
    with pytest.raises(Disagreement, match="both were sent") as refused:
        call("centers.limits", **request, other_eccentricity=0, both_alike=True)
    assert list(refused.value.fields) == ["other_eccentricity", "both_alike"]
    true, alike, off = (
        call("centers.limits", **request, **other)["result"]["live"]["eccentricity"]
        for other in (
            {"other_eccentricity": 0},
            {"both_alike": True},
            {"other_eccentricity": 0.004},
        )
    )
    assert (true, alike, off) == pytest.approx((0.01, 0.005, 0.006))


def test_share_seen_is_a_percentage(call: Call) -> None:
    """A quarter of the way from this center the work sees 75 % of its eccentricity."""
    request = {
        "units": "mm",
        "limit_tir": 0.01,
        "distance_between_centers": 100,
        "station_from_center": 25,
    }
    found = call("centers.limits", **request, both_alike=True)["result"]
    assert found["seen_percent"] == pytest.approx(75)
