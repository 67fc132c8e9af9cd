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

from halfangle_service.trade import elementary
from halfangle_service.trade.cone import diameter_at
from halfangle_service.trade.tapers.contact import over_rolls

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
        return 2.0 * self.rise * elementary.tan(half_angle_rad)

    def told_apart_rad(self, reading: float, half_angle_rad: float) -> float:
        """Included angle that so small a change of the difference belongs to: dM cos²α / H."""
        return reading * elementary.cos(half_angle_rad) ** 2 / self.rise

    def shoulder(self, half_angle_rad: float) -> float:
        """Least width of a shoulder about the large end that carries the rolls."""
        return outside_large_end(self.roll_diameter / 2.0, half_angle_rad)


def two_heights(
    length: float, half_angle_rad: float, rolls: Sequence[float], step: float
) -> TwoHeights | None:
    """Rolls and rise for a cone of this length along its axis; None where there is no room.

    `rolls` are the diameters at hand, the smallest first; the rise is the highest in whole steps.
    The half angle is negative where the cone stands on its small end and widens upward.
    """
    roll = roll_for(length, rolls)
    steps = math.floor(largest_rise(length, half_angle_rad, roll) / step + 1e-9)
    return TwoHeights(roll, steps * step) if steps >= 1 else None


def roll_for(length: float, rolls: Sequence[float]) -> float:
    """Which of these rolls, the smallest first, to lay against a cone of this length."""
    fitting = [roll for roll in rolls if roll <= _LARGEST_ROLL * length]
    return fitting[-1] if fitting else rolls[0]


def largest_rise(length: float, half_angle_rad: float, roll: float) -> float:
    """Most height of the blocks under rolls of a diameter; negative where even they find no room.

    `half_angle_rad` is negative where the cone stands on its small end and widens upward.
    """
    return _HIGHEST_TOUCH * length - touch_height(roll / 2.0, half_angle_rad)


def largest_roll(length: float, half_angle_rad: float, step: float) -> float:
    """Largest roll that leaves one step of rise, the way back of `largest_rise`; at most 0: none.

    At least so much room a step needs: 0.9 l − r (1 − sin α) = step.
    """
    room = _HIGHEST_TOUCH * length - step
    return 2.0 * room / (1.0 - elementary.sin(half_angle_rad))


def touch_height(roll_radius: float, half_angle_rad: float) -> float:
    """How far above its plane a roll touches the cone: r (1 − sin α)."""
    return roll_radius * (1.0 - elementary.sin(half_angle_rad))


def outside_large_end(roll_radius: float, half_angle_rad: float) -> float:
    """How far a roll's axis stands outside the large end: r (1 − sin α) / cos α."""
    return touch_height(roll_radius, half_angle_rad) / elementary.cos(half_angle_rad)


@dataclass(frozen=True, slots=True)
class Upright:
    """A cone that stands upright on its small or its large end, as rolls measure it.

    Heights are those of the rolls' centers over the face that it stands on.
    """

    large_diameter: float
    half_angle_rad: float
    length: float
    on_small_end: bool

    @property
    def lean(self) -> float:
        """Half angle, negative where the part narrows upward."""
        return self.half_angle_rad if self.on_small_end else -self.half_angle_rad

    @property
    def base_diameter(self) -> float:
        """Diameter at the face that it stands on."""
        from_large_end = self.length if self.on_small_end else 0.0
        return diameter_at(self.large_diameter, self.half_angle_rad, from_large_end)

    def measure(self, roll_diameter: float, center_height: float) -> float:
        """Measure over two rolls whose centers are at that height."""
        at_center = self.base_diameter + 2.0 * center_height * elementary.tan(self.lean)
        return over_rolls(at_center, self.lean, roll_diameter)
