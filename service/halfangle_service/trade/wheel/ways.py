"""Four ways to grind one cone: what each can reach, what it takes, and what rules it out.

Errors are limits (±) of the included angle in arc-seconds, each twice the half angle's. Derived
here: a setting by a sine base errs by the stack's tolerance over L cos θ; a scale by half of its
graduation; wear and breakdown by their depth over the slant.
"""

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.geometry import arcsec_per_height
from halfangle_service.trade.wheel.dressing_errors import DressedCone, hyperbola
from halfangle_service.trade.wheel.setup_errors import Errors, Setup, ground_by_plunge

WayVerdict = Literal["fits", "doubtful", "ruled out"]
#: Stations for the fit of a plunged surface.
_STATIONS = 21


@dataclass(frozen=True, slots=True)
class Contribution:
    """One error of a way: its limit ± on the included angle, in arc-seconds."""

    name: str
    arcsec: float


def root_sum_square(contributions: list[Contribution]) -> float:
    """What to expect: independent errors, root of the sum of squares."""
    return math.sqrt(sum(c.arcsec**2 for c in contributions))


def worst_case(contributions: list[Contribution]) -> float:
    """All errors at their limits in the same direction."""
    return sum(c.arcsec for c in contributions)


def by_sine_base(center_distance: float, angle_rad: float, height_tolerance: float) -> float:
    """Limit from the stack under a sine base (or plate) at an angle."""
    return 2.0 * arcsec_per_height(center_distance, angle_rad) * height_tolerance


def by_scale(graduation_degrees: float) -> float:
    """Limit from setting a scale to half of its graduation."""
    return 2.0 * graduation_degrees * 3600.0 / 2.0


def by_wear(slant: float, wear: float) -> float:
    """Limit from wear or breakdown of so much at one end of the surface."""
    return 2.0 * math.atan(wear / slant) * ARCSEC_PER_RADIAN


def by_diamond_height(cone: DressedCone, height: float) -> float:
    """Limit from a diamond off the wheel's axis by so much."""
    return 2.0 * abs(hyperbola(cone, height).mean_angle_error_rad) * ARCSEC_PER_RADIAN


def by_axis_offset(cone: DressedCone, offset: float) -> float:
    """Limit from a swivelled work axis that is high or low by so much under a flat wheel.

    Raises Impossible where the axis misses the wheel.
    """
    setup = Setup(cone.angle_rad, 0.0, cone.small_radius, cone.length, cone.wheel_radius)
    setup.require_wheel(offset)
    stations = np.linspace(0.0, cone.length, _STATIONS)
    ground = ground_by_plunge(setup, Errors(axis_offset=offset), stations)
    return 2.0 * abs(ground.half_angle - cone.angle_rad) * ARCSEC_PER_RADIAN


def verdict(reasons: list[str], expected: float, worst: float, tolerance: float) -> WayVerdict:
    """Ruled out by any reason or the expected error; doubtful where only the worst is too much."""
    if reasons or expected > tolerance:
        return "ruled out"
    return "doubtful" if worst > tolerance else "fits"
