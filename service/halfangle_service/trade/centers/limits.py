"""How true a center must be, for what the work may see at a station. Lengths in one unit.

Between two centers a distance L apart, the work's axis at the station z from this center is off by
e(z) = e1 (1 - z/L) + e2 z/L, as vectors. Derived here: the axis is the straight line through the
two points.
"""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import length, small_length


def center_weight(distance_between_centers: float, station: float, units: Units) -> float:
    """Part of this center's eccentricity that the work sees at the station: 1 - z/L.

    Raises Impossible for a station that is not between the centers.
    """
    if not 0.0 <= station < distance_between_centers:
        end = length(distance_between_centers, units)
        raise Impossible(
            f"The station {length(station, units)} is not between the centers: from 0 at this "
            f"center to below {end} at the other one.",
            fields={"station_from_center": f"should be from 0 to below {end}"},
        )
    return 1.0 - station / distance_between_centers


def eccentricity_limit(
    allowed_offset: float,
    weight: float,
    other_eccentricity: float,
    units: Units,
    *,
    both_alike: bool,
) -> float:
    """Largest eccentricity of this center that keeps the axis within `allowed_offset`.

    The other center's eccentricity adds in the worst direction; with `both_alike` the other one is
    held to the same limit instead. Raises Impossible where the other center uses up all of it.
    """
    if both_alike:
        # Both in one direction: e (1 - z/L) + e z/L = e, wherever the station is.
        return allowed_offset
    left = allowed_offset - other_eccentricity * (1.0 - weight)
    if left <= 0.0:
        off = small_length(other_eccentricity * (1.0 - weight), units)
        limit = small_length(allowed_offset / (1.0 - weight), units)
        raise Impossible(
            f"The other center alone puts the axis {off} off at this station; "
            f"{small_length(allowed_offset, units)} is allowed.",
            fields={
                "other_eccentricity": f"should be below {limit}, to leave something for this center"
            },
        )
    return left / weight


def tir_on_cone(eccentricity: float, half_angle_rad: float) -> float:
    """What an indicator square to the cone's surface reads: 2 e cos α."""
    return 2.0 * eccentricity * elementary.cos(half_angle_rad)
