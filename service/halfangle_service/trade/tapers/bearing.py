"""How a gauge stands on its cone, where the two bear, and what a marking film shows.

Angles in radians, lengths in one consistent unit. α is a cone's half angle. The outer cone begins
at its gauge plane, where its mouth is an edge, and runs on past the contact; the inner cone runs on
past its gauge plane, and ends at the contact length, where its small end is an edge. Derived here:
two cones of different angles bear on one of these edges, a blunter outer cone on the inner one's
small end, a blunter inner cone on the outer one's mouth; so always on the side of the blunter cone,
whose slope turns a diameter into a stand-out.
"""

from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade import elementary
from halfangle_service.trade.tapers.feed import End

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
class Pair:
    """An inner cone in an outer one: their half angles, and the length of contact."""

    outer_half_rad: float
    inner_half_rad: float
    length: float

    @property
    def bears_at(self) -> End:
        """Where they bear: a blunter outer cone on the inner one's small end."""
        if self.outer_half_rad == self.inner_half_rad:
            return "both-ends"
        return "small-end" if self.outer_half_rad > self.inner_half_rad else "large-end"

    @property
    def room(self) -> float:
        """Excess of the inner diameter at which its small end no longer enters the mouth."""
        return 2.0 * self.length * elementary.tan(self.inner_half_rad)

    @property
    def standoff_per_diameter(self) -> float:
        """Stand-out for one unit of diameter: 1 / (2 tan α), α of the side that bears."""
        return 1.0 / (2.0 * self._tangent)

    def standoff_of_angles(self) -> float:
        """Stand-out that the angles cause, the diameters agreeing at the gauge planes.

        Nothing where it bears at the large end; else l (tan α_outer − tan α_inner) / tan α_outer.
        """
        return self.length * max(0.0, self._opening) / self._tangent

    def gap_on_diameter(self, standoff: float) -> float:
        """Gap at the open end, on the diameter: over what the stand-out leaves of the length."""
        return 2.0 * (self.length - standoff) * abs(self._opening)

    @property
    def _tangent(self) -> float:
        return elementary.tan(max(self.outer_half_rad, self.inner_half_rad))

    @property
    def _opening(self) -> float:
        return elementary.tan(self.outer_half_rad) - elementary.tan(self.inner_half_rad)


@dataclass(frozen=True, slots=True)
class Bearing:
    """Where two cones of different angles bear, what that does, and what a marking film shows.

    The gap stands at the open end, square to the gauge's surface and on the diameter; lengths in
    one unit.
    """

    standoff_from_angle: float
    bears_at: End
    open_at: End | None
    gap_normal: float
    gap_on_diameter: float
    marked_share_percent: float
    marked_length: float
    bluing_marks: Marks


def bearing(pair: Pair, gauge_half_rad: float, film: float, *, by_diameter: float) -> Bearing:
    """Bearing of two cones, one of them a gauge, with a marking film between them.

    `by_diameter` is the stand-out by the diameter; all lengths in one unit.
    """
    by_angle = pair.standoff_of_angles()
    standoff = by_diameter + by_angle
    gap = pair.gap_on_diameter(standoff)
    normal = gap / 2.0 * elementary.cos(gauge_half_rad)
    share = 1.0 if normal <= film else film / normal
    return Bearing(
        standoff_from_angle=by_angle,
        bears_at=pair.bears_at,
        open_at=_OTHER_END[pair.bears_at],
        gap_normal=normal,
        gap_on_diameter=gap,
        marked_share_percent=100.0 * share,
        marked_length=share * (pair.length - standoff),
        bluing_marks="all-over" if share == 1.0 else _MARKS[pair.bears_at],
    )


def smallest_angle_shown(length: float, half_rad: float, film: float) -> float:
    """Least error of the included angle that a film shows over a length; smaller mark all over."""
    return 2.0 * elementary.asin(min(1.0, film * elementary.cos(half_rad) / length))
