"""The dressed flank against brute-force geometry."""

import math

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from halfangle_service.errors import Impossible
from support import Call


@pytest.mark.outside(
    "wheels.flank", source="Brute force: nearest approach of wheel and cone, scipy"
)
@pytest.mark.parametrize("included_angle", [20.0, 60.0, 118.0])
def test_the_dressed_flank_touches_the_cone_all_along(call: Call, included_angle: float) -> None:
    """A wheel turned to the flank angle touches the wanted cone in a line, at every station.

    Wheel and work are solids of revolution about parallel axes; at each station along the axes the
    gap is the distance of axes less both radii, the wheel's being a straight line of the slope
    that the answer gives.
    """
    result = call(
        "wheels.flank",
        units="mm",
        work={
            "kind": "cone",
            "included_angle": included_angle,
            "large_diameter": 20,
            "small_diameter": 2,
        },
        wheel_width=60,
        dresser_center_distance=50,
        depth_per_pass=0.01,
    )["result"]
    slope = math.tan(math.radians(result["angle_from_axis"]["degrees"]))
    station = np.linspace(0, result["flank_width"], 101)
    wheel_radius = 100 - slope * station
    cone_radius = 1 + math.tan(math.radians(included_angle / 2)) * station

    def greatest_gap(distance: float) -> float:
        return float(np.max(np.abs(distance - wheel_radius - cone_radius)))

    best = minimize_scalar(
        greatest_gap, bounds=(90, 120), method="bounded", options={"xatol": 1e-9}
    )
    assert best.fun == pytest.approx(0, abs=1e-6)
    assert cone_radius[-1] == pytest.approx(10)
    assert result["depth_to_dress"] == pytest.approx(9)


@pytest.mark.outside("wheels.flank", source="Common practice: 30° on a 5 in sine plate is 2.5 in")
def test_dresser_is_set_like_any_sine_plate(call: Call) -> None:
    """From either zero the dresser's stack is its center distance times the sine of its angle."""
    request = {
        "units": "in",
        "work": {"kind": "face", "face_angle": 30, "rise": 0.1},
        "wheel_width": 0.5,
        "dresser_center_distance": 5,
        "depth_per_pass": 0.001,
    }
    assert call("wheels.flank", **request)["result"]["dresser_height"] == pytest.approx(2.5)
    from_side = call("wheels.flank", **request, dresser_zero="wheel side")["result"]
    assert from_side["dresser_angle"]["degrees"] == pytest.approx(60)
    assert from_side["passes"] == 100


def test_flank_wider_than_the_wheel_is_refused(call: Call) -> None:
    """A flank that the wheel has no room for is refused, with the width that it needs."""
    with pytest.raises(Impossible, match=r"flank is 0\.866025 wide .* wheel is 0\.5 wide"):
        call(
            "wheels.flank",
            units="in",
            work={
                "kind": "cone",
                "half_angle": 30,
                "large_diameter": 1,
                "small_diameter": 0,
            },
            wheel_width=0.5,
            dresser_center_distance=2,
            depth_per_pass=0.001,
        )
