"""A bore ground by a wheel on a quill whose axis lies sideways of the bore's.

The wheel reaches farthest from the bore's axis by its own radius and the distance of both axes:
√(h² + y²) + r, where h is that distance as it should be and y how far the quill lies sideways. So
the bore opens by y² / 2h at either end, most at the small one, where h is least (derived here). One
unit of length, angles in radians.
"""

import math
from collections.abc import Iterator

from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.uncertainty import Contribution

#: What a request calls how far a quill may lie sideways.
OFFSET = "axis_offset_error_limit"


def by_quill_offset(bore: Cone, wheel_radius: float, offset: float) -> Iterator[Contribution]:
    """What a quill sideways by up to so much, at each end by itself, does to the included angle.

    The angle is that through both ends of the bore, which is hollow or full between them.
    """
    for of, radius, sign in (
        ("small end", bore.small_radius, -1.0),
        ("mouth", bore.large_radius, 1.0),
    ):
        apart = radius - wheel_radius
        opened = math.hypot(apart, offset) - apart
        run = bore.large_radius - bore.small_radius + sign * opened
        turned = 2.0 * (math.atan2(run, bore.length) - bore.half_angle)
        slope = turned / offset if offset else 0.0
        yield Contribution(OFFSET, offset, sensitivity=slope, one_sided=True, unit="length", of=of)
