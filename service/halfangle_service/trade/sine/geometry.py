"""The sine relation of a bar or plate. Angles in radians, lengths in any one unit.

Derived here: the centers of the rolls are the ends of the hypotenuse L; the difference of their
heights is the side opposite to the plate's angle θ. Where the rolls differ, or the stacks stand on
seats of different height, the stacks differ from that side by a constant, the offset.
"""

import math
from collections.abc import Mapping

from halfangle_service.errors import Impossible, Unreachable
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.decimals import certain
from halfangle_service.trade.wording import of_any_unit, plain


def stack_offset(
    base_step: float = 0.0, high_roll_diameter: float = 0.0, low_roll_diameter: float = 0.0
) -> float:
    """Difference of the stacks (high less low) at which the plate stands at zero.

    `base_step` is the height of the low roll's seat over the high roll's. A larger high roll lifts
    its own center by half of the difference, so that its stack is lower by as much.
    """
    return base_step - (high_roll_diameter - low_roll_diameter) / 2.0


def height_for_angle(center_distance: float, angle_rad: float, offset: float = 0.0) -> float:
    """Difference of the stacks under high and low roll: h = L sin θ + offset.

    Rise and sum to 15 significant digits: 30° on 5 in is 2.5 in, not 2.4999999999999996 in, and
    with a rest 2.5 in lower it takes no stack, not one of −0.0000000000000004 in.
    """
    rise = certain(center_distance * elementary.sin(angle_rad))
    return certain(rise + offset)


def angle_for_height(
    center_distance: float, height: float, offset: float = 0.0, field: str = "height"
) -> float:
    """Angle in radians from the difference of the stacks: θ = asin((h − offset) / L).

    Negative where the roll called high stands lower. Raises Impossible, naming `field`, where the
    difference of the rolls' heights is not below the center distance.
    """
    rise = height - offset
    if abs(rise) >= center_distance:
        raise Impossible(
            f"The rolls would differ in height by {of_any_unit(abs(rise))}, which is not below the "
            f"center distance {of_any_unit(center_distance)}: the plate would stand upright or "
            "beyond.",
            fields={field: f"should be less than center_distance ({of_any_unit(center_distance)})"},
        )
    return elementary.asin(rise / center_distance)


def arcsec_per_height(center_distance: float, angle_rad: float) -> float:
    """Change of angle in arc-seconds for one unit of height: dθ/dh = 1 / (L cos θ)."""
    return ARCSEC_PER_RADIAN / (center_distance * elementary.cos(angle_rad))


def angle_at_yaw(angle_rad: float, yaw_rad: float) -> float:
    """Angle that work sees whose axis yaws out of the tilt plane: sin α = sin θ cos ψ.

    It is never further from zero than the plate's angle, whichever way the axis yaws.
    """
    return angle_rad + turned_by_yaw(angle_rad, yaw_rad)


def turned_by_yaw(angle_rad: float, yaw_rad: float) -> float:
    """Change of the angle that work sees by a yaw within ±90°: asin(sin θ cos ψ) − θ.

    Written so that a yaw of a second is not lost in the angle: with c = √(cos²θ + sin²θ sin²ψ),
    the cosine of what is seen, it is −asin(sin θ sin²ψ / (c + cos θ cos ψ)).
    """
    sine, cosine, off = (
        elementary.sin(angle_rad),
        elementary.cos(angle_rad),
        elementary.sin(yaw_rad),
    )
    seen = elementary.hypot(cosine, sine * off)
    return -elementary.asin(sine * off * off / (seen + cosine * elementary.cos(yaw_rad)))


def yaw_that_turns(angle_rad: float, turn_rad: float) -> float:
    """The yaw in radians that takes so much off an angle, both above 0; infinite where none does.

    From sin(θ − t) = sin θ cos ψ: sin²(ψ/2) = cos(θ − t/2) sin(t/2) / sin θ.

    >>> round(elementary.degrees(yaw_that_turns(0.5, 0.5)), 9)  # across it the work sees no angle
    90.0
    """
    if turn_rad > angle_rad:
        return math.inf
    half = turn_rad / 2.0
    square = elementary.cos(angle_rad - half) * elementary.sin(half) / elementary.sin(angle_rad)
    return 2.0 * elementary.asin(elementary.sqrt(square))


def round_to_step(height: float, step: float) -> float:
    """Give the multiple of `step` nearest to a height; dividing by 1/step keeps decimals clean.

    >>> round_to_step(1.5450849718747373, 0.0001)
    1.5451
    """
    per_unit = 1.0 / step
    if elementary.isclose(per_unit, round(per_unit), rel_tol=1e-9):
        return round(height * per_unit) / round(per_unit)
    return round(height / step) * step


def beyond_reach(angle_degrees: float, largest_degrees: float | None) -> bool:
    """True where a plate that reaches so far does not reach the angle; None reaches any."""
    return largest_degrees is not None and angle_degrees > largest_degrees


def require_reach(
    angle_degrees: float,
    largest_degrees: float | None,
    field: str,
    *,
    instead: str = "",
    more: Mapping[str, object] | None = None,
) -> None:
    """Refuse an angle beyond the plate's reach, naming the field that asks for it.

    `instead` says in a sentence what does it, and `more` gives the same as data.
    """
    if largest_degrees is not None and beyond_reach(angle_degrees, largest_degrees):
        asked = f"{plain(angle_degrees)}° is asked of it."
        raise Unreachable(
            f"The plate reaches {plain(largest_degrees)}°; {asked} {instead}".rstrip(),
            fields={field: f"should take the plate to no more than {plain(largest_degrees)}°"},
            more=more,
        )


def effective_center_distance(height: float, measured_angle_rad: float) -> float:
    """Center distance that explains a measured angle by itself: L = h / sin θ."""
    return height / elementary.sin(measured_angle_rad)


def height_change(center_distance: float, wanted_rad: float, measured_rad: float) -> float:
    """Change of stack that takes a plate from a measured angle to the wanted one.

    Δh = L (sin θ_wanted − sin θ_measured). Exact where a constant offset caused the error; where
    the center distance did, it errs by the ratio of the two center distances, which is of second
    order: 1e-4 of the change for 1e-4 in L.
    """
    return center_distance * (elementary.sin(wanted_rad) - elementary.sin(measured_rad))
