"""What eccentric centers do to a part between them; vectors complex, lengths in one unit."""

from dataclasses import dataclass

from halfangle_service.trade import elementary
from halfangle_service.trade.runout.vectors import along, difference


@dataclass(frozen=True, slots=True)
class Ends:
    """Eccentricities at both ends of a part of this length, and the line through them."""

    first: complex
    second: complex
    length: float

    def at(self, station: float) -> complex:
        """Offset of the line at a station: e1 (1 - z/L) + e2 z/L."""
        return along(self.first, 0.0, self.second, self.length, station)

    @property
    def tilt_rad(self) -> float:
        """Angle of the line to the axis of rotation."""
        return elementary.atan(abs(difference(self.second, self.first)) / self.length)


def worst_offset(e_1: float, e_2: float, length: float, station: float) -> float:
    """Largest offset at a station over all clockings of both ends."""
    return e_1 * (1.0 - station / length) + e_2 * station / length


def worst_tilt(e_1: float, e_2: float, length: float) -> float:
    """Largest tilt over all clockings, in radians: both ends opposed."""
    return elementary.atan((e_1 + e_2) / length)


def turned_end_for_end(part: complex) -> complex:
    """The part's own vector at one section after it is turned end for end, its mark kept up.

    Seen from the first center, angles on the part then run the other way: the complex conjugate.
    """
    return part.conjugate()
