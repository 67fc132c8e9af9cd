"""Contact of a center and its hole against shapely's own distances and published hole sizes."""

import math
from typing import Any

import pytest
from shapely.geometry import LineString

from halfangle_service.errors import Impossible
from support import Call


def contact(call: Call, hole: float, center: float = 60.0, **more: Any) -> dict[str, Any]:
    """Result for a DIN 332 A 4 × 8.5 hole, unless `more` says otherwise."""
    request: dict[str, Any] = {
        "units": "mm",
        "center_included_angle": center,
        "hole_included_angle": hole,
        "mouth_diameter": 8.5,
        "pilot_diameter": 4.0,
    }
    result: dict[str, Any] = call("centers.contact", **(request | more))["result"]
    return result


@pytest.mark.outside("centers.contact", source="shapely: the two generators drawn and intersected")
@pytest.mark.parametrize(
    ("hole", "where"), [(59, "mouth"), (60, "whole-cone"), (61, "small-end"), (75, "small-end")]
)
def test_center_touches_its_hole_and_never_cuts_it(call: Call, hole: float, where: str) -> None:
    """At the answer's depth the generators touch at the end named and cross nowhere."""
    result = contact(call, hole)
    depth = 2.25 / math.tan(math.radians(hole / 2))
    slope, point = math.tan(math.radians(30)), result["point_from_mouth"]
    wall = LineString([(0, 4.25), (depth, 2.0)])
    cone = LineString([(0, point * slope), (depth, (point - depth) * slope)])
    ends = [w[1] - c[1] for w, c in zip(wall.coords, cone.coords, strict=True)]
    assert result["bearing"] == where
    assert wall.distance(cone) == pytest.approx(0, abs=1e-12)
    assert min(ends) == pytest.approx(0, abs=1e-12)
    assert max(ends) == pytest.approx(result["gap_at_other_end"], abs=1e-12)


@pytest.mark.outside("centers.contact", source="60° cone: axial shift 0.866 times the diameter")
def test_axial_shift_is_the_stand_off_of_a_60_degree_cone(call: Call) -> None:
    """On a 60° center the work shifts √3/2 of the diameter's error."""
    assert contact(call, 60, diameter_error_limit=0.1)["axial_shift"] == pytest.approx(
        0.0866, abs=5e-5
    )


def test_shift_for_an_error_that_was_not_stated_is_none(call: Call) -> None:
    """Without an error of the diameter there is no shift, and the error is named."""
    found = contact(call, 60)
    assert (found["axial_shift"], found["not_stated"]) == (None, ["diameter_error_limit"])
    assert contact(call, 60, diameter_error_limit=0)["axial_shift"] == 0


def test_pilot_as_wide_as_the_mouth_is_refused(call: Call) -> None:
    """A pilot that leaves no cone is refused by name."""
    with pytest.raises(Impossible, match="leaves no cone"):
        contact(call, 60, pilot_diameter=8.5)
