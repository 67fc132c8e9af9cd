"""Tapers probed at depths: a published problem, circles against walls, and a fitted line."""

import math
from typing import Any

import numpy as np
import pytest
from shapely.geometry import LineString, Point

from halfangle_service.errors import Impossible
from support import Call, assert_values

_HOLE: dict[str, Any] = {
    "units": "mm",
    "surface": "internal",
    "tip_diameter": 2,
    "readings": [{"depth": 10, "tip_travel": 20}, {"depth": 40, "tip_travel": 40}],
}


@pytest.mark.outside(
    "tapers.probed",
    source="GATE mechanical, tapered hole by a probe of 2 mm: 20 at Z = 10, 40 at Z = 40; key "
    "15.442 at Z = 0, from memory",
)
def test_the_published_problem(call: Call) -> None:
    """13.333 + 2 / cos 18.435° = 15.4415 mm at the face."""
    result = call("tapers.probed", **_HOLE)["result"]
    assert result["face_diameter"]["value"] == pytest.approx(15.442, abs=5e-4)
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(
        math.degrees(math.atan(1 / 3)), rel=1e-12
    )
    assert result["widens_with_depth"] is True
    included = 2 * math.degrees(math.atan(1 / 3))
    forms = {"included_angle.degrees": included, "taper_per_foot": 8.0, "one_in_x": 1.5}
    assert_values(result, forms | {"rate_of_taper": 2 / 3})
    assert result["largest_residual"] is None


@pytest.mark.outside("tapers.probed", source="shapely: a ball moved to touch a wall of the cone")
@pytest.mark.parametrize(("surface", "slope"), [("internal", -0.2), ("external", 0.35)])
def test_a_ball_against_the_walls(call: Call, surface: str, slope: float) -> None:
    """Travel of balls that touch straight walls gives back their slope and the face's diameter."""
    radius, face, side = 1.5, 50.0, -1.0 if surface == "internal" else 1.0
    wall = LineString([(-50, face / 2 - 50 * slope), (150, face / 2 + 150 * slope)])
    readings = []
    for depth in (5.0, 20.0, 31.0):
        near, far = sorted((face / 2 + slope * depth, face / 2 + slope * depth + side * 10))
        low, high = near, far
        for _ in range(80):
            middle = (low + high) / 2
            clear = wall.distance(Point(depth, middle)) > radius
            inward = clear == (side > 0)
            low, high = (low, middle) if inward else (middle, high)
        readings.append({"depth": depth, "tip_travel": 2 * low})
    sent = {"surface": surface, "tip_diameter": 2 * radius, "readings": readings}
    result = call("tapers.probed", units="mm", **sent)["result"]
    half = math.degrees(math.atan(abs(slope)))
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(half, abs=1e-8)
    assert result["face_diameter"]["value"] == pytest.approx(face, abs=1e-8)
    assert result["widens_with_depth"] is (slope > 0)
    assert result["largest_residual"] == pytest.approx(0, abs=1e-8)


@pytest.mark.outside("tapers.probed", source="numpy.polyfit: line of least squares")
def test_several_readings_are_fitted(call: Call) -> None:
    """Half angle, face and residual of five readings are those of the fitted line."""
    depths = np.array([2.0, 7.0, 12.0, 18.0, 25.0])
    travels = 30 - 0.1 * depths + np.array([0.001, -0.002, 0.0015, 0.0, -0.001])
    slope, at_face = np.polyfit(depths, travels, 1)
    readings = [{"depth": d, "tip_travel": t} for d, t in zip(depths, travels, strict=True)]
    result = call("tapers.probed", **(_HOLE | {"readings": readings}))["result"]
    half = math.atan(-slope / 2)
    assert result["half_angle"]["value"]["degrees"] == pytest.approx(math.degrees(half), rel=1e-9)
    expected = at_face + 2 / math.cos(half)
    assert result["face_diameter"]["value"] == pytest.approx(expected, rel=1e-12)
    off = np.max(np.abs(travels - at_face - slope * depths))
    assert result["largest_residual"] == pytest.approx(off, rel=1e-9)


def test_its_uncertainty_follows_the_derivatives(call: Call) -> None:
    """Two travels over 30 mm of depth turn the half angle by cos²α / 60 each; depths by 2 tan α."""
    limits = {"measure_error_limit": 0.003, "depth_error_limit": 0.004, "tip_error_limit": 0.002}
    result = call("tapers.probed", **_HOLE, **limits)["result"]
    slope = 1 / 3
    per_travel = 1 / (1 + slope**2) / 60 * 206264.806
    worst = 2 * 0.003 * per_travel + 2 * 0.004 * 2 * slope * per_travel
    assert result["half_angle"]["worst_case"] == pytest.approx(worst, rel=1e-4)
    # At the face the near reading counts 4/3 and the far one 1/3; the tip's share grows with tan α.
    grows = 2 * slope / math.hypot(1, slope) / 60
    near, far = 4 / 3 - grows, -1 / 3 + grows
    parts = [0.003 * abs(near), 0.003 * abs(far)]
    parts += [0.004 * 2 * slope * abs(one) for one in (near, far)]
    parts.append(0.002 * math.hypot(1, slope))
    assert result["face_diameter"]["worst_case"] == pytest.approx(sum(parts), rel=1e-4)
    spread = math.hypot(*parts) / math.sqrt(3)
    assert result["face_diameter"]["standard_uncertainty"] == pytest.approx(spread, rel=1e-4)


@pytest.mark.parametrize(
    ("readings", "words"),
    [
        ([(10, 20), (10, 21)], "of one depth"),
        ([(10, 20), (40, 20)], "no taper"),
        ([(10, 0.3), (40, 0.1 + 0.2)], "no taper"),
        ([(30, 10), (40, 40)], "end before the face"),
    ],
)
def test_readings_of_no_taper_are_refused(
    call: Call, readings: list[tuple[float, float]], words: str
) -> None:
    """One depth, no slope, or a point before the face."""
    sent = [{"depth": depth, "tip_travel": travel} for depth, travel in readings]
    with pytest.raises(Impossible, match=words):
        call("tapers.probed", **(_HOLE | {"readings": sent}))


def test_an_error_of_depth_that_leaves_no_slope_is_refused(call: Call) -> None:
    """Depths 30 apart, each perhaps 31 off, tell nothing; 29 off they do."""
    with pytest.raises(Impossible, match="swallows what is measured"):
        call("tapers.probed", **_HOLE, depth_error_limit=31)
    assert call("tapers.probed", **_HOLE, depth_error_limit=29)["result"]
