"""Measured tapers: what their uncertainty covers, against readings drawn by chance."""

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray

from support import Call

Values = NDArray[np.float64]
TRIALS = 400_000

OVER_ROLLS: dict[str, Any] = {
    "roll_diameter": 12,
    "lower_measure": 60.21,
    "upper_measure": 67.695,
    "stack_rise": 75,
    "length": 100,
}
OVER_BALLS: dict[str, Any] = {
    "large_ball_diameter": 40,
    "small_ball_diameter": 32,
    "large_ball_depth": -8,
    "small_ball_depth": 76,
    "length": 120,
}
ONE_BALL: dict[str, Any] = {
    "included_angle": 60,
    "ball_diameter": 12,
    "ball_depth": -5,
    "length": 9,
}
VEE: dict[str, Any] = {
    "large_roll_diameter": 40,
    "small_roll_diameter": 20,
    "large_roll_top": 20,
    "small_roll_top": -10,
}
TWO_PLUGS: dict[str, Any] = {
    "gauge_diameter": 17.5,
    "gauge_depth": 10,
    "second_gauge_diameter": 15.5,
    "second_gauge_depth": 48,
    "length": 64,
}


class Drawn:
    """Readings drawn evenly about what was read, each within its largest error."""

    def __init__(self, request: dict[str, Any], errors: dict[str, float]) -> None:
        chance = np.random.default_rng(12)
        self._readings: dict[str, Values] = {
            name: value + chance.uniform(-1, 1, TRIALS) * errors.get(name, 0.0)
            for name, value in request.items()
        }

    def __getattr__(self, name: str) -> Values:
        return self._readings[name]


def rolls_half_angle(x: Drawn) -> Values:
    """Half angle in degrees from measures over rolls at two heights."""
    return np.degrees(np.arctan((x.upper_measure - x.lower_measure) / (2 * x.stack_rise)))


def rolls_small_diameter(x: Drawn) -> Values:
    """Diameter at the standing face: a circle tangent to the side, one radius up."""
    half = np.radians(rolls_half_angle(x))
    across = x.roll_diameter * (1 + 1 / np.cos(half))
    return x.lower_measure - across - x.roll_diameter * np.tan(half)


def balls_sine(x: Drawn) -> Values:
    """Sine of a socket's half angle: difference of radii over distance of centers."""
    radii = (x.large_ball_diameter - x.small_ball_diameter) / 2
    return radii / (x.small_ball_depth - x.large_ball_depth - radii)


def balls_mouth(x: Drawn) -> Values:
    """Mouth of a socket: a circle tangent to the wall, its center at its depth."""
    sine = balls_sine(x)
    cosine = np.sqrt(1 - sine**2)
    center = x.large_ball_depth + x.large_ball_diameter / 2
    return x.large_ball_diameter / cosine + 2 * center * sine / cosine


def one_ball_mouth(x: Drawn) -> Values:
    """Mouth of a socket of known slope from one ball."""
    half = np.radians(x.included_angle) / 2
    center = x.ball_depth + x.ball_diameter / 2
    return x.ball_diameter / np.cos(half) + 2 * center * np.tan(half)


def vee_half_angle(x: Drawn) -> Values:
    """Half angle of a vee in degrees from the tops of two rolls."""
    radii = (x.large_roll_diameter - x.small_roll_diameter) / 2
    return np.degrees(np.arcsin(radii / (x.large_roll_top - x.small_roll_top - radii)))


def plugs_large_diameter(x: Drawn) -> Values:
    """Mouth of a socket from two edges of known diameter at their depths."""
    rate = (x.gauge_diameter - x.second_gauge_diameter) / (x.second_gauge_depth - x.gauge_depth)
    return x.gauge_diameter + x.gauge_depth * rate


MEASURED: list[tuple[str, dict[str, Any], dict[str, float], str, Callable[[Drawn], Values]]] = [
    (
        "over-rolls",
        OVER_ROLLS,
        {
            "measure_error_limit": 0.002,
            "stack_rise_error_limit": 0.0005,
            "roll_error_limit": 0.0005,
        },
        "half_angle",
        rolls_half_angle,
    ),
    (
        "over-rolls",
        OVER_ROLLS,
        {"measure_error_limit": 0.002, "stack_rise_error_limit": 0, "roll_error_limit": 0.004},
        "small_diameter",
        rolls_small_diameter,
    ),
    (
        "over-balls",
        OVER_BALLS,
        {"measure_error_limit": 0.005, "roll_error_limit": 0.0005},
        "half_angle",
        lambda x: np.degrees(np.arcsin(balls_sine(x))),
    ),
    (
        "over-balls",
        OVER_BALLS,
        {"measure_error_limit": 0.02, "roll_error_limit": 0.002},
        "large_diameter",
        balls_mouth,
    ),
    (
        "one-ball",
        ONE_BALL,
        {
            "measure_error_limit": 0.002,
            "roll_error_limit": 0.0005,
            "included_angle_error_limit_arcsec": 600,
        },
        "large_diameter",
        one_ball_mouth,
    ),
    (
        "vee-over-rolls",
        VEE,
        {"measure_error_limit": 0.002, "roll_error_limit": 0.0},
        "vee_half_angle",
        vee_half_angle,
    ),
    (
        "plug-depth",
        TWO_PLUGS,
        {"depth_error_limit": 0.02, "gauge_error_limit": 0.001},
        "large_diameter",
        plugs_large_diameter,
    ),
]
#: Which inputs a stated error is that of.
OF = {
    "measure_error_limit": ("measure", "depth", "top"),
    "stack_rise_error_limit": ("rise",),
    "roll_error_limit": ("ball_diameter", "roll_diameter"),
    "depth_error_limit": ("depth",),
    "gauge_error_limit": ("gauge_diameter",),
}


def errors_of(request: dict[str, Any], stated: dict[str, float]) -> dict[str, float]:
    """The largest error of each input, an angle's in degrees."""
    errors = {
        name: error
        for field, error in stated.items()
        for name in request
        if name.endswith(OF.get(field, ("none",)))
    }
    return errors | {"included_angle": stated.get("included_angle_error_limit_arcsec", 0.0) / 3600}


@pytest.mark.outside("tapers.over-rolls", source="Monte Carlo (JCGM 101), the readings drawn")
@pytest.mark.outside("tapers.over-balls", source="Monte Carlo (JCGM 101), the readings drawn")
@pytest.mark.outside("tapers.one-ball", source="Monte Carlo (JCGM 101), the readings drawn")
@pytest.mark.outside("tapers.vee-over-rolls", source="Monte Carlo (JCGM 101), the readings drawn")
@pytest.mark.outside("tapers.plug-depth", source="Monte Carlo (JCGM 101), the readings drawn")
@pytest.mark.parametrize(("verb", "request_", "stated", "field", "worked_out"), MEASURED)
def test_an_expanded_uncertainty_covers_95_percent_of_what_may_be(
    call: Call,
    verb: str,
    request_: dict[str, Any],
    stated: dict[str, float],
    field: str,
    worked_out: Callable[[Drawn], Values],
) -> None:
    """Of tapers worked out from readings drawn within their errors 95 % lie within the estimate."""
    found = call(f"tapers.{verb}", units="mm", **request_, **stated)["result"][field]
    is_angle = field.endswith("half_angle")
    value = found["value"]["degrees"] if is_angle else found["value"]
    off = np.abs(worked_out(Drawn(request_, errors_of(request_, stated))) - value)
    off *= 3600 if is_angle else 1
    covered = float(np.mean(off <= found["expanded_uncertainty"]))
    assert covered == pytest.approx(0.95, abs=0.0015)
    assert np.max(off) <= found["worst_case"] * (1 + 1e-4)
