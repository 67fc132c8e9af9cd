"""The overlay of a cone's profile: nominal line and tolerance band, to scale.

The axis lies level, the large end at x = 0, the cone runs to the right; y is from the axis. The
band lies between the smallest and the largest cone that the tolerances of diameter and angle allow
together. Lengths in the part's own unit; the drawings magnify them.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.cone import cone_length, diameter_at
from halfangle_service.trade.tapers.tolerance import Cone

Point = tuple[float, float]
#: One side of a profile, from the large end to the small end.
Side = tuple[Point, Point]


@dataclass(frozen=True, slots=True)
class Profile:
    """A cone of a length, its tolerance ± on the diameter, and the magnification to draw it at."""

    cone: Cone
    length: float
    diameter_tolerance: float
    magnification: float

    @property
    def nominal(self) -> Side:
        """The upper side as it is wanted."""
        return self._side(self.cone.large_diameter, self.cone.half_rad)

    @property
    def smallest(self) -> Side:
        """The upper side of the smallest cone allowed, which may end before the nominal one."""
        smaller = self.cone.large_diameter - self.diameter_tolerance
        return self._side(smaller, self.cone.largest_half_rad)

    @property
    def largest(self) -> Side:
        """The upper side of the largest cone allowed."""
        larger = self.cone.large_diameter + self.diameter_tolerance
        return self._side(larger, self.cone.smallest_half_rad)

    def _side(self, large_diameter: float, half_rad: float) -> Side:
        """A side as long as the cone, or to its point."""
        end = min(self.length, cone_length(large_diameter, half_rad))
        small_diameter = diameter_at(large_diameter, half_rad, end)
        return (0.0, large_diameter / 2.0), (end, small_diameter / 2.0)

    @property
    def widest_band(self) -> float:
        """Largest distance of a limit from the nominal line, square to it, at the part."""
        gaps = [
            abs(y - self.cone.nominal(x) / 2.0)
            for side in (self.smallest, self.largest)
            for x, y in side
        ]
        return max(gaps) * math.cos(self.cone.half_rad)

    def to_profile(self, apex: Point, axis_rad: float, point: Point) -> Point:
        """A point of a measured profile laid on this one: apex on apex and axis on axis.

        `axis_rad` is the direction of the measured axis from the apex into the part.
        """
        x, y = point[0] - apex[0], point[1] - apex[1]
        inward = x * math.cos(axis_rad) + y * math.sin(axis_rad)
        beside = y * math.cos(axis_rad) - x * math.sin(axis_rad)
        return cone_length(self.cone.large_diameter, self.cone.half_rad) - inward, -beside


def mirrored(side: Side) -> Side:
    """The lower side of a profile, from its upper one."""
    (x1, y1), (x2, y2) = side
    return (x1, -y1), (x2, -y2)
