"""Feed on a cone, what cleans it up, and how a gauge stands on it.

Angles in radians, lengths in one consistent unit. α is the cone's half angle. Derived here: a layer
of thickness h, measured square to the surface, is h / cos α on the radius, 2 h / cos α on the
diameter and h / sin α along the axis.
"""

import math
from dataclasses import dataclass
from typing import Literal

Measure = Literal["normal", "radius", "diameter", "axial"]
End = Literal["large end", "small end", "both ends"]


def normal_of(amount: float, measure: Measure, half_angle_rad: float) -> float:
    """Thickness square to the surface of a layer stated in another way."""
    if measure == "radius":
        return amount * math.cos(half_angle_rad)
    if measure == "diameter":
        return amount * math.cos(half_angle_rad) / 2.0
    if measure == "axial":
        return amount * math.sin(half_angle_rad)
    return amount


def off_diameter(normal: float, half_angle_rad: float) -> float:
    """Change of the diameter at a fixed station: 2 h / cos α."""
    return 2.0 * normal / math.cos(half_angle_rad)


def axial_shift(normal: float, half_angle_rad: float) -> float:
    """Shift of the point and of the gauge line along the axis: h / sin α."""
    return normal / math.sin(half_angle_rad)


def passes(stock: float, per_pass: float) -> tuple[int, float]:
    """Count the cutting passes and give the depth of the last; the slack absorbs float noise."""
    count = max(1, math.ceil(stock / per_pass - 1e-9))
    return count, stock - (count - 1) * per_pass


def stock_at_other_end(slant: float, half_angle_error_rad: float) -> float:
    """Stock square to the surface still to come off one end when the other is first touched.

    Derived here: the ground side, `slant` long, lies at the error's angle to the right side.
    """
    return slant * math.sin(abs(half_angle_error_rad))


@dataclass(frozen=True, slots=True)
class CleanUp:
    """Stock to clean up, square to the surface, in the unit of the lengths.

    `below_large_end` from the mean surface at the large end, `below_small_end` likewise, and
    `from_first_touch` from the highest spot: what is fed down in all.
    """

    below_large_end: float
    below_small_end: float
    from_first_touch: float


def clean_up(
    slant: float, half_angle_error_rad: float, large_swing: float, small_swing: float, wear: float
) -> CleanUp:
    """Stock to bring every spot of a worn, eccentric cone of a wrong angle to the right cone.

    `half_angle_error_rad` is that of the part, positive where it is too blunt: then its small end
    lies low. A swing is how far the surface stands above and below its mean, square to itself, at
    that end; `wear` the deepest spot, wherever it may lie. Between the ends all of it is at most
    linear, so the ends decide.
    """
    small_mean = -slant * math.sin(half_angle_error_rad)
    lowest = min(-large_swing, small_mean - small_swing) - wear
    highest = max(large_swing, small_mean + small_swing)
    return CleanUp(-lowest, small_mean - lowest, highest - lowest)


def gauge_shift(diameter_error: float, half_angle_rad: float) -> float:
    """Axial shift of the gauge line for an error of diameter: ΔD / (2 tan α)."""
    return diameter_error / (2.0 * math.tan(half_angle_rad))


def bearing_end(*, outer_minus_inner_rad: float) -> End:
    """Where two cones bear: the inner one on its small end where the outer one is blunter.

    Derived here: a blunter socket has the smaller bore at the small end once the mouths agree.
    """
    if outer_minus_inner_rad == 0:
        return "both ends"
    return "small end" if outer_minus_inner_rad > 0 else "large end"


def angle_standoff(length: float, outer_half_rad: float, inner_half_rad: float) -> float:
    """Stand-out of the inner cone that the angles cause, the diameters agreeing at the large end.

    Nothing where it bears at the large end; else the diameters differ at the small end by
    2 l (tan α_outer − tan α_inner), and the inner cone stands out by that over 2 tan α_outer.
    """
    excess = math.tan(outer_half_rad) - math.tan(inner_half_rad)
    return max(0.0, length * excess / math.tan(outer_half_rad))
