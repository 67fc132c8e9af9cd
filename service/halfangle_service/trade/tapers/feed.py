"""Feed on a cone, and what cleans it up.

Angles in radians, lengths in one consistent unit. α is the cone's half angle. Derived here: a layer
of thickness h, measured square to the surface, is h / cos α on the radius, 2 h / cos α on the
diameter and h / sin α along the axis.
"""

import math
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.columns import in_rows
from halfangle_service.trade.cone import cone_length, require_before_point
from halfangle_service.trade.wording import of_any_unit, plain

Measure = Literal["square-to-surface", "radius", "diameter", "axial"]
End = Literal["large-end", "small-end", "both-ends"]


def normal_of(amount: float, measure: Measure, half_angle_rad: float) -> float:
    """Thickness square to the surface of a layer stated in another way."""
    if measure == "radius":
        return amount * elementary.cos(half_angle_rad)
    if measure == "diameter":
        return amount * elementary.cos(half_angle_rad) / 2.0
    if measure == "axial":
        return amount * elementary.sin(half_angle_rad)
    return amount


def amount_of(normal: float, measure: Measure, half_angle_rad: float) -> float:
    """What a layer square to the surface comes to, measured in another way: `normal_of` reversed.

    >>> round(amount_of(normal_of(0.001, "radius", 0.5), "radius", 0.5), 9)
    0.001
    """
    if measure == "radius":
        return normal / elementary.cos(half_angle_rad)
    if measure == "diameter":
        return off_diameter(normal, half_angle_rad)
    if measure == "axial":
        return axial_shift(normal, half_angle_rad)
    return normal


def off_diameter(normal: float, half_angle_rad: float) -> float:
    """Change of the diameter at a fixed station: 2 h / cos α."""
    return 2.0 * normal / elementary.cos(half_angle_rad)


def axial_shift(normal: float, half_angle_rad: float) -> float:
    """Shift of the point and of the gauge line along the axis: h / sin α."""
    return normal / elementary.sin(half_angle_rad)


def passes(stock: float, per_pass: float) -> tuple[int, float]:
    """Count the cutting passes and give the depth of the last; the slack absorbs float noise.

    The depth is worked out in decimals, as figures are typed.

    >>> passes(0.0011, 0.0002)
    (6, 0.0001)
    """
    count = max(1, math.ceil(stock / per_pass - 1e-9))
    return count, in_rows(_last_pass, stock, per_pass, count)


def _last_pass(stock: float, per_pass: float, count: float) -> float:
    return float(Decimal(str(stock)) - (int(count) - 1) * Decimal(str(per_pass)))


def wrong_half_angle(half_rad: float, error_arcsec: float) -> float:
    """Half angle as it stands, in radians; raises Impossible where that is no cone's."""
    as_is = half_rad + error_arcsec / ARCSEC_PER_RADIAN
    if not 0.0 < as_is < math.pi / 2:
        raise Impossible(
            f"With this error the half angle would be {plain(elementary.degrees(as_is))}°; a "
            "cone's lies between 0° and 90°.",
            fields={"half_angle_error_arcsec": "should leave the half angle between 0° and 90°"},
        )
    return as_is


def gap_at_other_end(slant: float, half_angle_error_rad: float) -> float:
    """Gap square to the right side at one end when the other is first touched.

    Derived here: the part's side, `slant` long, lies at the error's angle to the right side.
    """
    return slant * elementary.sin(abs(half_angle_error_rad))


@dataclass(frozen=True, slots=True)
class Wedge:
    """What an angle error leaves between wheel and part at the first touch.

    The gap is air, square to the right side, at the end that is not touched first: so much more
    comes off the other end.
    """

    touches_first: End
    gap: float

    def gap_at(self, end: End) -> float:
        """Gap at an end at the first touch, in the unit of the lengths."""
        return 0.0 if self.touches_first in (end, "both-ends") else self.gap

    def off_at(self, end: End, layer: float) -> float:
        """What an end loses square to the right side where a layer comes off everywhere."""
        return layer + self.gap - self.gap_at(end)


def wedge_of(length: float, half_rad: float, error_arcsec: float) -> Wedge:
    """Wedge over a length along the axis; the error is positive where the part is too blunt.

    A blunt part is touched at its large end. Raises Impossible where it is no cone.
    """
    as_is = wrong_half_angle(half_rad, error_arcsec)
    gap = gap_at_other_end(length / elementary.cos(as_is), as_is - half_rad)
    if error_arcsec == 0:
        return Wedge("both-ends", gap)
    return Wedge("large-end" if error_arcsec > 0 else "small-end", gap)


@dataclass(frozen=True, slots=True)
class Worn:
    """A cone as it stands: eccentric, of a wrong angle, worn. Lengths in one unit.

    `large_diameter` is the mean over a turn. The swings are half the indicator's movement, square
    to the surface; None where none was stated, as with the angle error. `depth` is what must come
    off below the surface: wear, and what is added to be sure.
    """

    half_rad: float
    large_diameter: float
    length: float
    large_swing: float | None
    small_swing: float | None
    half_angle_error_arcsec: float | None
    depth: float


@dataclass(frozen=True, slots=True)
class CleanUp:
    """Stock to bring every spot of a worn cone to the right cone; square to the surface.

    `needed_at_large_end` lies below the mean surface at the large end, `needed_at_small_end`
    likewise; `downfeed_from_first_touch` runs from the highest spot. `off_diameter`,
    `final_large_diameter` and `point_loss` say what it costs.
    """

    needed_at_large_end: float
    needed_at_small_end: float
    downfeed_from_first_touch: float
    off_diameter: float
    final_large_diameter: float
    point_loss: float
    from_runout: float | None
    from_angle: float | None


def clean_up(worn: Worn) -> CleanUp:
    """What cleans a cone up, counting what was stated of it.

    An error positive where the part is too blunt leaves its small end low. Between the ends all of
    it is at most linear, so the ends decide. A length to the right cone's point is taken to the
    point of the part as it stands. Raises Impossible where nothing would be left.
    """
    half = worn.half_rad
    as_is = wrong_half_angle(half, worn.half_angle_error_arcsec or 0.0)
    require_before_point(worn.large_diameter, worn.length, min(half, as_is))
    slant = min(worn.length, cone_length(worn.large_diameter, as_is)) / elementary.cos(as_is)
    large_swing, small_swing = worn.large_swing or 0.0, worn.small_swing or 0.0
    small_mean = -slant * elementary.sin(as_is - half)
    lowest = min(-large_swing, small_mean - small_swing) - worn.depth
    highest = max(large_swing, small_mean + small_swing)
    lost = off_diameter(-lowest, half)
    final = worn.large_diameter - lost
    if final <= 0:
        raise Impossible(
            f"Cleaning up would take {of_any_unit(lost)} off a diameter of "
            f"{of_any_unit(worn.large_diameter)}.",
            fields={"large_diameter": "should exceed what cleaning up takes off it"},
        )
    swings = [s for s in (worn.large_swing, worn.small_swing) if s is not None]
    by_angle = worn.half_angle_error_arcsec is not None
    return CleanUp(
        needed_at_large_end=-lowest,
        needed_at_small_end=small_mean - lowest,
        downfeed_from_first_touch=highest - lowest,
        off_diameter=lost,
        final_large_diameter=final,
        point_loss=cone_length(worn.large_diameter, as_is) - cone_length(final, half),
        from_runout=max(swings, default=None),
        from_angle=gap_at_other_end(slant, as_is - half) if by_angle else None,
    )
