"""What eccentric centers do to a part between them; vectors complex, lengths in one unit."""

import math
from dataclasses import dataclass

from halfangle_service.trade.runout.vectors import along


@dataclass(frozen=True, slots=True)
class Ends:
    """Eccentricities at both ends of a part of this length, and the line through them."""

    first: complex
    second: complex
    length: float

    def at(self, station: float) -> complex:
        """Offset of the line at a station: e1 (1 - z/L) + e2 z/L."""
        return along(self.first, 0.0, self.second, self.length, station)

    def worst_at(self, station: float) -> float:
        """Largest offset at a station over all clockings of both ends."""
        share = station / self.length
        return abs(self.first) * (1.0 - share) + abs(self.second) * share

    @property
    def tilt_rad(self) -> float:
        """Angle of the line to the axis of rotation."""
        return math.atan(abs(self.second - self.first) / self.length)

    @property
    def worst_tilt_rad(self) -> float:
        """Largest such angle over all clockings: both ends opposed."""
        return math.atan((abs(self.first) + abs(self.second)) / self.length)


def turned_end_for_end(part: complex) -> complex:
    """The part's own vector at one section after it is turned end for end, its mark kept up.

    Seen from the first center, angles on the part then run the other way: the complex conjugate.
    """
    return part.conjugate()
