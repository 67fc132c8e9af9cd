"""Feed on a cone, what cleans it up, and how a gauge stands on it.

Angles in radians, lengths in one consistent unit. α is the cone's half angle. Derived here: a layer
of thickness h, measured square to the surface, is h / cos α on the radius, 2 h / cos α on the
diameter and h / sin α along the axis.
"""

import math
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.cone import cone_length, require_before_point
from halfangle_service.trade.wording import plain

Measure = Literal["square-to-surface", "radius", "diameter", "axial"]
End = Literal["large-end", "small-end", "both-ends"]


def normal_of(amount: float, measure: Measure, half_angle_rad: float) -> float:
    """Thickness square to the surface of a layer stated in another way."""
    if measure == "radius":
        return amount * math.cos(half_angle_rad)
    if measure == "diameter":
        return amount * math.cos(half_angle_rad) / 2.0
    if measure == "axial":
        return amount * math.sin(half_angle_rad)
    return amount


def off_diameter(normal: float, half_angle_rad: float) -> float:
    """Change of the diameter at a fixed station: 2 h / cos α."""
    return 2.0 * normal / math.cos(half_angle_rad)


def axial_shift(normal: float, half_angle_rad: float) -> float:
    """Shift of the point and of the gauge line along the axis: h / sin α."""
    return normal / math.sin(half_angle_rad)


def passes(stock: float, per_pass: float) -> tuple[int, float]:
    """Count the cutting passes and give the depth of the last; the slack absorbs float noise."""
    count = max(1, math.ceil(stock / per_pass - 1e-9))
    return count, stock - (count - 1) * per_pass


def wrong_half_angle(half_rad: float, error_arcsec: float) -> float:
    """Half angle as it stands, in radians; raises Impossible where that is no cone's."""
    as_is = half_rad + error_arcsec / ARCSEC_PER_RADIAN
    if not 0.0 < as_is < math.pi / 2:
        raise Impossible(
            f"With this error the half angle would be {plain(math.degrees(as_is))}°; a cone's lies "
            "between 0° and 90°.",
            fields={"half_angle_error_arcsec": "should leave the half angle between 0° and 90°"},
        )
    return as_is


def stock_at_other_end(slant: float, half_angle_error_rad: float) -> float:
    """Stock square to the surface still to come off one end when the other is first touched.

    Derived here: the ground side, `slant` long, lies at the error's angle to the right side.
    """
    return slant * math.sin(abs(half_angle_error_rad))


@dataclass(frozen=True, slots=True)
class Wedge:
    """Stock that an angle error leaves at the end that is not touched first, square to the side."""

    touches_first: End
    stock: float

    @property
    def at_large_end(self) -> float:
        """Stock at the large end, in the unit of the lengths."""
        return self.stock if self.touches_first == "small-end" else 0.0

    @property
    def at_small_end(self) -> float:
        """Stock at the small end, in the unit of the lengths."""
        return self.stock if self.touches_first == "large-end" else 0.0


def wedge_of(length: float, half_rad: float, error_arcsec: float) -> Wedge:
    """Wedge over a length along the axis; the error is positive where the part is too blunt.

    A blunt part is touched at its large end. Raises Impossible where it is no cone.
    """
    as_is = wrong_half_angle(half_rad, error_arcsec)
    stock = stock_at_other_end(length / math.cos(as_is), as_is - half_rad)
    return Wedge(bearing_end(outer_minus_inner_rad=-error_arcsec), stock)


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
    it is at most linear, so the ends decide. Raises Impossible where nothing would be left.
    """
    half = worn.half_rad
    as_is = wrong_half_angle(half, worn.half_angle_error_arcsec or 0.0)
    require_before_point(worn.large_diameter, worn.length, as_is)
    slant = worn.length / math.cos(as_is)
    large_swing, small_swing = worn.large_swing or 0.0, worn.small_swing or 0.0
    small_mean = -slant * math.sin(as_is - half)
    lowest = min(-large_swing, small_mean - small_swing) - worn.depth
    highest = max(large_swing, small_mean + small_swing)
    lost = off_diameter(-lowest, half)
    final = worn.large_diameter - lost
    if final <= 0:
        raise Impossible(
            f"Cleaning up would take {plain(lost)} off a diameter of {plain(worn.large_diameter)}.",
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
        from_angle=stock_at_other_end(slant, as_is - half) if by_angle else None,
    )


def gauge_shift(diameter_error: float, half_angle_rad: float) -> float:
    """Axial shift of the gauge line for an error of diameter: ΔD / (2 tan α)."""
    return diameter_error / (2.0 * math.tan(half_angle_rad))


def bearing_end(*, outer_minus_inner_rad: float) -> End:
    """Where two cones bear: the inner one on its small end where the outer one is blunter.

    Derived here: a blunter socket has the smaller bore at the small end once the mouths agree.
    """
    if outer_minus_inner_rad == 0:
        return "both-ends"
    return "small-end" if outer_minus_inner_rad > 0 else "large-end"


def angle_standoff(length: float, outer_half_rad: float, inner_half_rad: float) -> float:
    """Stand-out of the inner cone that the angles cause, the diameters agreeing at the large end.

    Nothing where it bears at the large end; else the diameters differ at the small end by
    2 l (tan α_outer − tan α_inner), and the inner cone stands out by that over 2 tan α_outer.
    """
    excess = math.tan(outer_half_rad) - math.tan(inner_half_rad)
    return max(0.0, length * excess / math.tan(outer_half_rad))


Marks = Literal["all-over", "at-large-end-only", "at-small-end-only"]
_OTHER_END: dict[End, End | None] = {
    "large-end": "small-end",
    "small-end": "large-end",
    "both-ends": None,
}
_MARKS: dict[End, Marks] = {
    "large-end": "at-large-end-only",
    "small-end": "at-small-end-only",
    "both-ends": "all-over",
}


@dataclass(frozen=True, slots=True)
class Bearing:
    """Where two cones of different angles bear, what that does, and what a marking film shows.

    The gap stands at the open end, square to the surface and on the diameter; lengths in one unit.
    """

    standoff_from_angle: float
    bears_at: End
    open_at: End | None
    gap_normal: float
    gap_on_diameter: float
    marked_share_percent: float
    marked_length: float
    bluing_marks: Marks


def bearing(
    length: float, outer_half_rad: float, inner_half_rad: float, gauge_half_rad: float, film: float
) -> Bearing:
    """Bearing of an inner cone in an outer one over a length of contact along the axis.

    The gap is taken along the gauge's side; `film` is the thickness of the marking film, in the
    unit of the length.
    """
    at = bearing_end(outer_minus_inner_rad=outer_half_rad - inner_half_rad)
    slant = length / math.cos(gauge_half_rad)
    gap = stock_at_other_end(slant, outer_half_rad - inner_half_rad)
    share = 1.0 if gap <= film else film / gap
    return Bearing(
        standoff_from_angle=angle_standoff(length, outer_half_rad, inner_half_rad),
        bears_at=at,
        open_at=_OTHER_END[at],
        gap_normal=gap,
        gap_on_diameter=off_diameter(gap, gauge_half_rad),
        marked_share_percent=100.0 * share,
        marked_length=share * length,
        bluing_marks="all-over" if share == 1.0 else _MARKS[at],
    )


def smallest_angle_shown(length: float, half_rad: float, film: float) -> float:
    """Least error of the included angle that a film shows over a length; smaller mark all over."""
    return 2.0 * math.asin(min(1.0, film * math.cos(half_rad) / length))
