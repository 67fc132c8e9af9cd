"""A cone that stands upright, measured over two equal rolls at two heights.

Angles in radians, lengths in any one unit. α is the cone's half angle, its point is up, and the
rolls lie on the plane of its large end, then on blocks of the height H on that plane. Derived here:
a roll of the radius r touches the cone r (1 − sin α) above the plane that it lies on, and its axis
stands r (1 − sin α) / cos α outside the large end. The reading over both rolls falls by
ΔM = 2 H tan α from the lower to the higher place, whatever the rolls' size and the plane's height.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

#: Rolls no thicker than this part of the cone's length are easy to hold and leave a long rise.
_LARGEST_ROLL = 0.25
#: Part of the length, from the large end, over which the rolls touch: the point itself is left out.
_HIGHEST_TOUCH = 0.9


@dataclass(frozen=True, slots=True)
class TwoHeights:
    """The rolls' diameter, and the height of the blocks under them the second time."""

    roll_diameter: float
    rise: float

    def difference(self, half_angle_rad: float) -> float:
        """Reading on the large end's plane less the reading on the blocks: 2 H tan α."""
        return 2.0 * self.rise * math.tan(half_angle_rad)

    def told_apart_rad(self, reading: float, half_angle_rad: float) -> float:
        """Included angle that so small a change of the difference belongs to: dM cos²α / H."""
        return reading * math.cos(half_angle_rad) ** 2 / self.rise

    def shoulder(self, half_angle_rad: float) -> float:
        """Least width of a shoulder about the large end that carries the rolls."""
        return outside_large_end(self.roll_diameter / 2.0, half_angle_rad)


def two_heights(
    length: float, half_angle_rad: float, rolls: Sequence[float], step: float
) -> TwoHeights | None:
    """Rolls and rise for a cone of this length along its axis; None where there is no room.

    `rolls` are the diameters at hand, the smallest first; the rise is the highest in whole steps.
    """
    fitting = [roll for roll in rolls if roll <= _LARGEST_ROLL * length]
    roll = fitting[-1] if fitting else rolls[0]
    room = _HIGHEST_TOUCH * length - touch_height(roll / 2.0, half_angle_rad)
    steps = math.floor(room / step + 1e-9)
    return TwoHeights(roll, steps * step) if steps >= 1 else None


def touch_height(roll_radius: float, half_angle_rad: float) -> float:
    """How far above its plane a roll touches the cone: r (1 − sin α)."""
    return roll_radius * (1.0 - math.sin(half_angle_rad))


def outside_large_end(roll_radius: float, half_angle_rad: float) -> float:
    """How far a roll's axis stands outside the large end: r (1 − sin α) / cos α."""
    return touch_height(roll_radius, half_angle_rad) / math.cos(half_angle_rad)
