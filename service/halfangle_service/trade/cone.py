"""A cone's slope, however a drawing states it, and a cone's own size.

Angles in radians, lengths in any one unit. The rate of taper is C = (D − d) / l, on the diameter
(ISO 3040, ISO 1119): C = 2 tan α with α the half angle; 1:x is 1/C; taper per foot is 12 C.
"""

from dataclasses import dataclass

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.wording import of_any_unit

INCHES_PER_FOOT = 12.0
#: Two statements of one slope agree when they differ by no more than this, in arc-seconds of the
#: included angle.
AGREE_WITHIN_ARCSEC = 0.5


@dataclass(frozen=True, slots=True)
class Slope:
    """A cone's slope; kept in degrees so that an angle sent in degrees comes back as it was."""

    half_angle_degrees: float

    @classmethod
    def of_rate(cls, rate: float) -> "Slope":
        """The slope of a rate of taper C, on the diameter."""
        return cls(elementary.degrees(half_angle_from_rate(rate)))

    @property
    def half_angle_rad(self) -> float:
        """Half angle α in radians."""
        return elementary.radians(self.half_angle_degrees)

    @property
    def included_angle_degrees(self) -> float:
        """Included angle 2α in degrees."""
        return 2.0 * self.half_angle_degrees

    @property
    def rate(self) -> float:
        """Rate of taper C = 2 tan α, on the diameter."""
        return rate_from_half_angle(self.half_angle_rad)

    def less_arcsec(self, other: "Slope") -> float:
        """This included angle less another's, in arc-seconds."""
        return 2.0 * (self.half_angle_rad - other.half_angle_rad) * ARCSEC_PER_RADIAN


def rate_from_half_angle(half_angle_rad: float) -> float:
    """Rate of taper from the half angle in radians: C = 2 tan α."""
    return 2.0 * elementary.tan(half_angle_rad)


def half_angle_from_rate(rate: float) -> float:
    """Half angle in radians from the rate of taper: tan α = C / 2."""
    return elementary.atan(rate / 2.0)


def rate_from_taper_per_foot(taper_per_foot: float) -> float:
    """Rate of taper from the taper per foot, in inches of diameter a foot of length."""
    return taper_per_foot / INCHES_PER_FOOT


def cone_length(base_diameter: float, half_angle_rad: float) -> float:
    """Length along the axis from the base to the sharp point: D / (2 tan α)."""
    return base_diameter / (2.0 * elementary.tan(half_angle_rad))


def slant_length(base_diameter: float, half_angle_rad: float) -> float:
    """Length along the surface from the base to the sharp point: D / (2 sin α)."""
    return base_diameter / (2.0 * elementary.sin(half_angle_rad))


def require_before_point(
    large_diameter: float,
    length: float,
    half_angle_rad: float,
    *,
    field: str = "length",
    slack: float = 0.0,
) -> None:
    """Refuse a cone that comes to its point before a length along its axis.

    `field` is the request's field that states the length; `slack` how far a diameter measured may
    be off, so that a cone that is whole is not refused for its readings. Raises Impossible.
    """
    if ends_before(large_diameter + slack, length, half_angle_rad):
        to_point = max(0.0, cone_length(large_diameter, half_angle_rad))
        raise Impossible(
            f"This cone comes to its point {of_any_unit(to_point)} from the large end, before the "
            "length "
            f"{of_any_unit(length)}.",
            fields={field: f"should be at most {of_any_unit(to_point)}"},
        )


def diameter_at(
    large_diameter: float, half_angle_rad: float, station_from_large_end: float
) -> float:
    """Diameter at a distance from the large end: D − C z; 0 at the point, whatever the rounding."""
    return max(0.0, large_diameter - station_from_large_end * rate_from_half_angle(half_angle_rad))


def ends_before(large_diameter: float, length: float, half_angle_rad: float) -> bool:
    """True where a cone comes to its point before a length along its axis.

    A cone that ends just at its point is whole: the last part in 10¹² is rounding, not geometry.
    """
    return length * rate_from_half_angle(half_angle_rad) > large_diameter * (1.0 + 1e-12)


def require_smaller(small_diameter: float, large_diameter: float, *, path: str = "") -> None:
    """Refuse a smaller diameter that is not below the larger one; raises Impossible.

    `path` is that of the object that holds the fields, such as `work/`.
    """
    if small_diameter >= large_diameter:
        raise Impossible(
            f"The smaller diameter {of_any_unit(small_diameter)} is not below the larger one, "
            f"{of_any_unit(large_diameter)}.",
            fields={f"{path}small_diameter": "should be less than large_diameter"},
        )
