"""Shank and socket against shapely's drawing of both, and the standard tapers' own figures."""

import math
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq
from shapely.affinity import rotate
from shapely.geometry import LineString, Polygon

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from support import Call


def seat(call: Call, shank: float, socket: float, /, **more: Any) -> dict[str, Any]:
    """Result for two rates over 60 mm, the station 80 mm out."""
    request = {
        "units": "mm",
        "shank": {"rate_of_taper": shank},
        "socket": {"rate_of_taper": socket},
        "engagement": 60,
        "projection": 80,
    }
    result: dict[str, Any] = call("centers.adapter", **request | more)["result"]
    return result


@pytest.mark.outside("centers.adapter", source="shapely: shank drawn in its socket and tilted")
@pytest.mark.parametrize(
    ("shank", "bearing", "pivot"), [(0.0505, "large-end", 0.0), (0.0494, "small-end", -60.0)]
)
def test_drawn_shank_touches_where_said(
    call: Call, shank: float, bearing: str, pivot: float
) -> None:
    """Drawn in touch at the end named, the shank leaves the gap; tilted by the rock, it closes."""
    found = seat(call, shank, 0.05)
    assert found["bearing"] == bearing
    at_pivot = 10 + 0.05 * pivot / 2
    wall = [LineString([(0, s * 10), (-60, s * (10 - 1.5))]) for s in (1, -1)]

    def outline(z: float) -> float:
        return at_pivot + shank * (z - pivot) / 2

    body = Polygon([(0, outline(0)), (-60, outline(-60)), (-60, -outline(-60)), (0, -outline(0))])
    free = -60.0 if pivot == 0.0 else 0.0
    gap = 10 + 0.05 * free / 2 - outline(free)
    assert gap == pytest.approx(found["gap_at_other_end"])
    tilted = rotate(body, found["rock_arcsec"] / 3600, origin=(pivot, 0))
    corners = [p for p in tilted.exterior.coords if abs(p[0] - free) < 1]
    clear = min(10 + 0.05 * x / 2 - abs(y) for x, y in corners)
    assert clear == pytest.approx(0, abs=gap * 0.02)
    assert body.distance(wall[0]) == pytest.approx(0, abs=1e-9)
    lever = 80 - pivot
    [rocking] = found["tir"]["contributions"]
    assert rocking["name"] == "rocking_in_the_seat"
    assert rocking["worst_case"] == pytest.approx(2 * lever * gap / 60)


@pytest.mark.outside("centers.adapter", source="ASME B5.10: Morse 2 is 0.59941 in a foot, 1:20.02")
def test_same_standard_taper_bears_all_along(call: Call) -> None:
    """A Morse 2 shank in a Morse 2 socket bears along the whole seat, and shifts 20.02 to one."""
    request = {"shank": {"designation": "morse-2"}, "socket": {"designation": "morse-2"}}
    found = seat(call, 0.05, 0.05, **request, diameter_difference=0.01)
    assert (found["bearing"], found["gap_at_other_end"]) == ("whole-seat", 0)
    assert found["standoff"] == pytest.approx(0.2002, abs=1e-4)
    assert found["socket_half_angle"]["degrees"] == pytest.approx(
        math.degrees(math.atan(0.59941 / 24))
    )


@pytest.mark.outside(
    "centers.adapter", source="scipy.optimize.brentq: shank lowered until it bears"
)
@pytest.mark.parametrize("thick", [0.0, 0.02, -0.02])
@pytest.mark.parametrize("rate", [0.0505, 0.05, 0.0494])
def test_shank_stands_out_where_it_comes_to_bear(call: Call, rate: float, thick: float) -> None:
    """Pushed in until it touches, a shank stands out as said, for its diameter and its angle."""
    found = seat(call, rate, 0.05, diameter_difference=thick)

    def clearance(out: float) -> float:
        depths = np.array([0.0, 60.0 - out])
        return float(min((20 - 0.05 * depths) - (20 + thick - rate * (depths + out))))

    assert found["standoff"] == pytest.approx(brentq(clearance, -5, 5, xtol=1e-12))
    assert found["standoff"] == pytest.approx(
        found["standoff_from_diameter"] + found["standoff_from_angle"]
    )
    assert (found["standoff_from_angle"] > 0) == (found["bearing"] == "small-end")


def test_stand_out_is_the_gauges_own(call: Call) -> None:
    """A shank too slow by 40″ stands out of its socket as it does of its ring gauge."""
    error_arcsec = -40.0
    half = math.degrees(math.atan(0.025)) + error_arcsec / 2 / 3600
    found = seat(call, 0.05, 0.05, shank={"half_angle": half}, diameter_difference=0.01)
    gauge = call(
        "tapers.standoff",
        units="mm",
        rate_of_taper=0.05,
        kind="external",
        contact_length=60,
        diameter_error=0.01,
        included_angle_error_arcsec=error_arcsec,
    )["result"]
    for name in ("standoff", "standoff_from_diameter", "standoff_from_angle"):
        assert found[name] == pytest.approx(gauge[name], rel=1e-9)


def test_causes_add_at_the_station(call: Call) -> None:
    """Socket and adapter grow by their tilt; the sum and the root of squares are of those."""
    stated = {"socket_tir": 0.002, "socket_tilt_tir": 0.003, "adapter_tir": 0.004}
    found = seat(call, 0.05, 0.05, **stated, adapter_tilt_tir=0, limit_tir=0.01)
    assert found["tir_at_nose"]["worst_case"] == pytest.approx(0.006)
    assert found["tir"]["worst_case"] == pytest.approx(0.002 + 0.003 * 80 / 60 + 0.004)
    assert found["tir"]["standard_uncertainty"] == pytest.approx(math.hypot(0.006, 0.004))
    assert found["tir"]["not_stated"] == ["high_spots"]
    assert (found["mend_first"], found["forecast"]) == ("socket_runout", "holds")
    assert seat(call, 0.05, 0.05, **stated, adapter_tilt_tir=0, limit_tir=0.0006)["forecast"] == (
        "does-not-hold"
    )


@pytest.mark.outside("centers.adapter", source="Closed form: |a + b exp(iφ)| of a uniform phase")
def test_two_causes_pass_the_closed_form_in_5_of_100(call: Call) -> None:
    """Of two causes of one size, 95 of 100 assemblies keep within 2a cos(0.025 π)."""
    found = seat(call, 0.05, 0.05, socket_tir=0.004, adapter_tir=0.004)["tir_at_nose"]
    assert found["expanded_uncertainty"] == pytest.approx(
        0.008 * math.cos(0.025 * math.pi), rel=1e-3
    )
    assert [c["share_percent"] for c in found["contributions"]] == pytest.approx([50, 50, 0])


def test_what_is_not_stated_is_named_and_never_holds(call: Call) -> None:
    """Causes not stated are no zeros: they are named, and no limit is said to hold."""
    found = seat(call, 0.05, 0.05, adapter_tir=0.001, limit_tir=1)
    assert found["tir"]["not_stated"] == [
        *("high_spots", "socket_tir", "socket_tilt_tir", "adapter_tilt_tir")
    ]
    assert [c["name"] for c in found["tir"]["contributions"]] == [
        "adapter_runout",
        "rocking_in_the_seat",
    ]
    assert found["tir_at_nose"]["not_stated"] == ["high_spots", "socket_tir"]
    assert found["forecast"] == "may-not-hold"
    assert (found["standoff"], found["not_stated"]) == (None, ["diameter_difference"])
    assert found["standoff_from_angle"] == 0
    assert seat(call, 0.05, 0.05)["forecast"] is None


def test_a_seat_that_does_not_rock_makes_no_runout_of_nothing(call: Call) -> None:
    """Of a socket and an adapter not stated, true slopes say nothing: null, and no 0 to pick."""
    found = seat(call, 0.05, 0.05, limit_tir=1)
    for tir in (found["tir"], found["tir_at_nose"]):
        assert (
            tir["standard_uncertainty"] is tir["expanded_uncertainty"] is tir["worst_case"] is None
        )
    assert (found["forecast"], found["mend_first"]) == ("not-stated", None)
    rocking = seat(call, 0.0502, 0.05, limit_tir=1)
    assert rocking["tir"]["worst_case"] > 0
    assert rocking["tir_at_nose"]["worst_case"] is None


@pytest.mark.parametrize(
    "slope",
    [
        {"one_in_x": 12 / 0.59941},
        {"taper_per_foot": 0.59941},
        {"half_angle": math.degrees(math.atan(0.59941 / 24))},
        {"designation": "morse-2"},
        {"designation": "morse-2", "rate_of_taper": 0.59941 / 12},
    ],
    ids="-".join,
)
def test_a_taper_is_taken_however_it_is_stated(call: Call, slope: dict[str, Any]) -> None:
    """A shank of 0.59941 in a foot fits a Morse 2 socket however the slope is stated."""
    socket = {"designation": "morse-2"}
    found = seat(call, 0.05, 0.05, shank=slope, socket=socket, diameter_difference=0.01)
    assert found["bearing"] == "whole-seat"
    assert found["standoff"] == pytest.approx(0.2002, abs=1e-4)


def test_tapers_that_are_not_one_are_refused(call: Call) -> None:
    """No slope, two that disagree, or an unknown designation are refused by name."""
    both = {"designation": "morse-2", "rate_of_taper": 0.05}
    with pytest.raises(Disagreement, match="slope of the cone is missing") as missing:
        seat(call, 0.05, 0.05, shank={})
    assert list(missing.value.fields) == ["shank/included_angle"]
    with pytest.raises(Disagreement, match=r"designation disagrees with rate_of_taper by -10\.1"):
        seat(call, 0.05, 0.05, shank=both)
    with pytest.raises(Unreachable, match="no standard taper or rate"):
        seat(call, 0.05, 0.05, socket={"designation": "nothing-2"})


def test_steep_taper_needs_a_drawbar(call: Call) -> None:
    """A 7/24 taper is not self-holding."""
    steep = {"rate_of_taper": 7 / 24}
    answer = call(
        "centers.adapter", units="mm", shank=steep, socket=steep, engagement=60, projection=0
    )
    assert [a["code"] for a in answer["advisories"]] == ["not-self-holding"]


def test_shank_of_another_size_is_refused(call: Call) -> None:
    """A Morse 1 shank does not seat in a Morse 2 socket, nor one 5 mm too thick in its own."""
    unlike = {"shank": {"designation": "morse-1"}, "socket": {"designation": "morse-2"}}
    with pytest.raises(Impossible, match="goes in"):
        seat(call, 0.05, 0.05, **unlike)
    with pytest.raises(Impossible, match="stands out 100 mm, more than the seat's 60") as refused:
        seat(call, 0.05, 0.05, diameter_difference=5)
    assert (
        refused.value.fields["diameter_difference"]
        == "should be between -3 mm and 3 mm on this seat"
    )
