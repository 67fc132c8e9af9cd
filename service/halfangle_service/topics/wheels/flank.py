"""A flank dressed on the wheel, for a cone or a face. Angles in radians, lengths in one unit.

Work axis (or table) and wheel axis are parallel, so the flank makes with the wheel's axis the angle
that the ground surface makes with the work's axis (or with the table). Derived here.
"""

import math
from dataclasses import dataclass

from halfangle_service.errors import Impossible


@dataclass(frozen=True, slots=True)
class Flank:
    """A flank: its width along the wheel's axis, its length along the slope, its radial depth."""

    width: float
    slant: float
    depth: float


def flank_for_rise(angle_rad: float, rise: float, overrun: float) -> Flank:
    """Flank that covers a surface rising by `rise` (radially, or in height) at an angle.

    `overrun` is how far the flank reaches past the surface at each end, along the slope.
    """
    slant = rise / math.sin(angle_rad) + 2.0 * overrun
    return Flank(width=slant * math.cos(angle_rad), slant=slant, depth=slant * math.sin(angle_rad))


def require_fits(flank: Flank, wheel_width: float, edge_flat: float) -> None:
    """Refuse a flank that the wheel has no room for.

    `edge_flat` is the width of periphery to be left beside the flank. Raises Impossible.
    """
    if flank.width + edge_flat > wheel_width:
        raise Impossible(
            f"The flank is {flank.width:.6g} wide and {edge_flat:.6g} of flat is to stay; the "
            f"wheel is {wheel_width:.6g} wide.",
            fields={"wheel_width": f"should be at least {flank.width + edge_flat:.6g}"},
        )


def dressing_passes(depth: float, depth_per_pass: float) -> int:
    """Passes to dress away a depth, the last one perhaps shallower."""
    # A depth that is a whole number of passes must not gain one by rounding.
    return math.ceil(depth / depth_per_pass - 1e-9)
