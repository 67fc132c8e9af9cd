"""What an indicator shows of n lobes while the part turns in a V-block.

Derived here. The part's radius is R + a cos n(θ + turn), a << R. Angles θ run from the V's
bisector, into the V; the flanks touch at θ = ±γ, γ = 90° - half the V's included angle. The part
shifts by (dx, dy) so that both contacts stay on their flanks; what the indicator shows at θ is the
shift along its line plus the radius there, as a complex amplitude per unit of a.
"""

import cmath
import math

from halfangle_service.trade import elementary

#: A factor below this hides the lobes: a reading is less than a twentieth of their height.
HIDDEN = 0.05
#: A factor below this is rounding of the arithmetic.
ROUNDING = 1e-12
#: Included angles of V-blocks that a shop has, in degrees.
VEE_ANGLES_DEGREES = (60.0, 72.0, 90.0, 108.0, 120.0)


def response(lobes: int, vee_angle_rad: float, indicator_rad: float) -> float:
    """Full movement shown for a departure from roundness of 1, peak to valley.

    `indicator_rad` is the angle of the indicator from the bisector, 0 opposite to the V.
    """
    contact = (math.pi - vee_angle_rad) / 2.0
    shift_x = -1j * elementary.sin(lobes * contact) / elementary.sin(contact)
    shift_y = elementary.cos(lobes * contact) / elementary.cos(contact)
    at = math.pi - indicator_rad
    moved = shift_x * elementary.sin(at) - shift_y * elementary.cos(at)
    shown = abs(moved + cmath.exp(1j * lobes * at))
    return shown if shown > ROUNDING else 0.0


def two_point_response(lobes: int) -> float:
    """Full movement shown by a micrometer or an indicator over a flat: 2 for even lobes, else 0."""
    return 2.0 if lobes % 2 == 0 else 0.0


def hidden_lobes(vee_angle_rad: float, indicator_rad: float, most: int) -> list[int]:
    """Numbers of lobes from 2 to `most` that the setting hides."""
    return [n for n in range(2, most + 1) if response(n, vee_angle_rad, indicator_rad) < HIDDEN]


def best_vee_angle(lobes: int) -> float:
    """The one of `VEE_ANGLES_DEGREES`, indicator opposite, that shows most of so many lobes."""
    return max(
        VEE_ANGLES_DEGREES, key=lambda v: round(response(lobes, elementary.radians(v), 0.0), 9)
    )
