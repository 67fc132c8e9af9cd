"""Shank and socket against shapely's drawing of both, and the standard tapers' own figures."""

import math
from typing import Any

import pytest
from shapely.affinity import rotate
from shapely.geometry import LineString, Polygon

from halfangle_service.errors import Disagreement, Impossible, Unreachable
from support import Call


def seat(call: Call, shank: float, socket: float, /, **more: Any) -> dict[str, Any]:
    """Result for two rates over 60 mm, the station 80 mm out."""
    request = {
        "units": "mm",
        "shank": {"taper_on_diameter": shank},
        "socket": {"taper_on_diameter": socket},
        "engagement": 60,
        "projection": 80,
    }
    result: dict[str, Any] = call("centers.adapter", **request | more)["result"]
    return result


@pytest.mark.outside("centers.adapter", source="shapely: shank drawn in its socket and tilted")
@pytest.mark.parametrize(
    ("shank", "bearing", "pivot"), [(0.0505, "large end", 0.0), (0.0494, "small end", -60.0)]
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
    rocking = found["shares"][2]
    assert rocking["tir_at_station"] == pytest.approx(2 * lever * gap / 60)


@pytest.mark.outside("centers.adapter", source="ASME B5.10: Morse 2 is 0.59941 in a foot, 1:20.02")
def test_same_standard_taper_bears_all_along(call: Call) -> None:
    """A Morse 2 shank in a Morse 2 socket bears along the whole seat, and shifts 20.02 to one."""
    request = {"shank": {"standard": "morse-2"}, "socket": {"standard": "morse-2"}}
    found = seat(call, 0.05, 0.05, **request, diameter_difference=0.01)
    assert (found["bearing"], found["gap_at_other_end"]) == ("whole seat", 0)
    assert found["axial_shift"] == pytest.approx(0.2002, abs=1e-4)
    assert found["socket_half_angle"]["degrees"] == pytest.approx(
        math.degrees(math.atan(0.59941 / 24))
    )


def test_causes_add_at_the_station(call: Call) -> None:
    """Socket and adapter grow by their tilt; the sum and the root of squares are of those."""
    found = seat(
        call, 0.05, 0.05, socket_tir=0.002, socket_tilt_tir=0.003, adapter_tir=0.004, limit_tir=0.01
    )
    assert found["worst_tir_at_nose"] == pytest.approx(0.006)
    assert found["worst_tir_at_station"] == pytest.approx(0.002 + 0.003 * 80 / 60 + 0.004)
    assert found["rss_tir_at_station"] == pytest.approx(math.hypot(0.006, 0.004))
    assert (found["mend_first"], found["within_limit"]) == ("socket", True)


def test_tapers_that_are_not_one_are_refused(call: Call) -> None:
    """Neither standard nor rate, both, or an unknown designation are refused by name."""
    both = {"standard": "morse-2", "taper_on_diameter": 0.05}
    for wrong in ({}, both):
        with pytest.raises(Disagreement, match="shank's taper is either"):
            seat(call, 0.05, 0.05, shank=wrong)
    with pytest.raises(Unreachable, match="no standard taper"):
        seat(call, 0.05, 0.05, socket={"standard": "nothing-2"})


def test_steep_taper_needs_a_drawbar(call: Call) -> None:
    """A 7/24 taper is not self-holding."""
    steep = {"taper_on_diameter": 7 / 24}
    answer = call(
        "centers.adapter", units="mm", shank=steep, socket=steep, engagement=60, projection=0
    )
    assert [a["code"] for a in answer["advisories"]] == ["not-self-holding"]


def test_shank_of_another_size_is_refused(call: Call) -> None:
    """A Morse 1 shank does not seat in a Morse 2 socket, nor one 5 mm too thick in its own."""
    unlike = {"shank": {"standard": "morse-1"}, "socket": {"standard": "morse-2"}}
    with pytest.raises(Impossible, match="goes in"):
        seat(call, 0.05, 0.05, **unlike)
    with pytest.raises(Impossible, match="stands out 100, more than the seat's 60"):
        seat(call, 0.05, 0.05, diameter_difference=5)
