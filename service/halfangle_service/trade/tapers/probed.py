"""A taper probed at depths with a tip of known size. Angles in radians, lengths in one unit.

The tip's center travels across the bore (or round the outside) at some depths. A tip of radius r
touches the surface square to it, so its center lies r / cos α from it, across the axis: the
surface's diameter at the depth of the tip's center is the travel and 2 r / cos α, less outside
(derived here). Travel against depth is a straight line, of least squares where there are more than
two depths.
"""

import math
from collections.abc import Sequence

from halfangle_service.errors import Impossible


def line_of_travel(depths: Sequence[float], travels: Sequence[float]) -> tuple[float, float]:
    """Travel at depth 0 and its change a unit of depth; raises Impossible at one depth alone."""
    count = len(depths)
    mean_depth, mean_travel = math.fsum(depths) / count, math.fsum(travels) / count
    spread = math.fsum((depth - mean_depth) ** 2 for depth in depths)
    if spread == 0.0:
        raise Impossible(
            "All the readings are of one depth.",
            fields={"readings": "should be of two depths at least"},
        )
    slope = (
        math.fsum(
            (depth - mean_depth) * (travel - mean_travel)
            for depth, travel in zip(depths, travels, strict=True)
        )
        / spread
    )
    return mean_travel - slope * mean_depth, slope


def half_angle_probed(depths: Sequence[float], travels: Sequence[float]) -> float:
    """Half angle, signed: positive where the diameter grows with depth."""
    return math.atan(line_of_travel(depths, travels)[1] / 2.0)


def face_diameter_probed(
    depths: Sequence[float], travels: Sequence[float], tip_diameter: float, sign: float
) -> float:
    """Diameter at the face that depths run from; `sign` is 1 of a bore, −1 of an outside."""
    at_face, slope = line_of_travel(depths, travels)
    return at_face + sign * tip_diameter * math.hypot(1.0, slope / 2.0)


def largest_residual(depths: Sequence[float], travels: Sequence[float]) -> float:
    """Most that a travel lies off the line."""
    at_face, slope = line_of_travel(depths, travels)
    return max(abs(t - at_face - slope * d) for d, t in zip(depths, travels, strict=True))
