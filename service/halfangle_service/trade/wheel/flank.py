"""A flank dressed on the wheel, for a cone or a face. Angles in radians, lengths in one unit.

Work axis (or table) and wheel axis are parallel, so the flank makes with the wheel's axis the angle
that the ground surface makes with the work's axis (or with the table). Derived here.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit

#: The shortest and the longest length that a request may hold, in its unit.
SHORTEST, LONGEST = 1e-6, 1e4
#: A width within this share of the wheel's own is rounding, not a land or a flat.
_NOTHING = 1e-12
#: What becomes of the wheel's width beyond its flanks.
SpareWidth = Literal["stays-flat", "flank-runs-on", "land-below-flank"]


@dataclass(frozen=True, slots=True)
class Surface:
    """A surface to grind: its angle to the wheel's axis, its rise (radially, or in height)."""

    angle_rad: float
    rise: float

    @property
    def slant(self) -> float:
        """Length along the slope."""
        return self.rise / elementary.sin(self.angle_rad)


@dataclass(frozen=True, slots=True)
class Flank:
    """A flank: its width along the wheel's axis, its length along the slope, its radial depth."""

    width: float
    slant: float
    depth: float


@dataclass(frozen=True, slots=True)
class Side:
    """One side of the wheel: the surface, the flank that it needs, the one dressed, its land."""

    surface: Surface
    needed: Flank
    dressed: Flank
    land: float


def sides_of(
    surfaces: Sequence[Surface],
    wheel_width: float,
    edge_flat: float,
    overrun: float,
    spare_width: SpareWidth,
) -> tuple[list[Side], float]:
    """Each side as it will be dressed, and the width of periphery that is left.

    Two flanks share the width to spare equally. Raises Impossible where the flanks do not fit.
    """
    needed = [flank_for_rise(surface.angle_rad, surface.rise, overrun) for surface in surfaces]
    require_fits(needed, wheel_width, edge_flat)
    spare = wheel_width - sum(flank.width for flank in needed) - edge_flat
    spare = spare if spare > _NOTHING * wheel_width else 0.0
    share = 0.0 if spare_width == "stays-flat" else spare / len(needed)
    runs_on, land = (share, 0.0) if spare_width == "flank-runs-on" else (0.0, share)
    sides = [
        Side(surface, flank, run_on(flank, surface.angle_rad, runs_on), land)
        for surface, flank in zip(surfaces, needed, strict=True)
    ]
    flat = edge_flat + (spare if share == 0.0 else 0.0)
    return sides, flat if flat > _NOTHING * wheel_width else 0.0


def flank_for_rise(angle_rad: float, rise: float, overrun: float) -> Flank:
    """Flank that covers a surface rising by `rise` (radially, or in height) at an angle.

    `overrun` is how far the flank reaches past the surface at each end, along the slope.
    """
    return _flank(angle_rad, rise / elementary.sin(angle_rad) + 2.0 * overrun)


def require_extent(surface: Surface, angle: Iterable[str], size: Iterable[str]) -> None:
    """Refuse a surface longer or shorter than any length taken here: along its slope or its axis.

    `angle` and `size` are the fields that state them. Raises Impossible.
    """
    if surface.slant > LONGEST:
        raise Impossible(
            f"At this angle the surface would be {of_any_unit(surface.slant)} long; at most "
            f"{of_any_unit(LONGEST)} is taken.",
            fields=dict.fromkeys(angle, "should be larger, or the diameters nearer"),
        )
    width = surface.rise / elementary.tan(surface.angle_rad)
    if surface.rise < SHORTEST:
        raise Impossible(
            f"The surface would rise by {of_any_unit(surface.rise)} only; at least "
            f"{of_any_unit(SHORTEST)} "
            "is taken.",
            fields=dict.fromkeys(
                size, f"should make a surface that rises by {of_any_unit(SHORTEST)}"
            ),
        )
    if width < SHORTEST:
        raise Impossible(
            f"So steep and low a surface would take less than {of_any_unit(SHORTEST)} of the "
            "axis, which "
            "is the least that is taken. What stands square to the axis is no cone and no flank: "
            "the wheel's side grinds it as it is.",
            fields=dict.fromkeys(angle, "should be smaller, or the surface higher"),
        )


def run_on(flank: Flank, angle_rad: float, spare_width: float) -> Flank:
    """The flank carried on at its angle over so much more of the wheel's width."""
    return _flank(angle_rad, flank.slant + spare_width / elementary.cos(angle_rad))


def _flank(angle_rad: float, slant: float) -> Flank:
    return Flank(
        width=slant * elementary.cos(angle_rad),
        slant=slant,
        depth=slant * elementary.sin(angle_rad),
    )


def require_fits(flanks: Sequence[Flank], wheel_width: float, edge_flat: float) -> None:
    """Refuse flanks that the wheel has no room for.

    `edge_flat` is the width of periphery to be left beside or between them. Raises Impossible.
    """
    width = sum(flank.width for flank in flanks)
    if width + edge_flat > wheel_width * (1.0 + 1e-12):
        what = "The flank is" if len(flanks) == 1 else "Both flanks together are"
        raise Impossible(
            f"{what} {of_any_unit(width)} wide and {of_any_unit(edge_flat)} of flat is to stay; "
            "the "
            f"wheel is {of_any_unit(wheel_width)} wide.",
            fields={"wheel_width": f"should be at least {of_any_unit(width + edge_flat)}"},
        )


def require_depth(depth: float, wheel_diameter: float, flange_diameter: float) -> None:
    """Refuse a depth of dress that reaches the flange, or the wheel's axis. Raises Impossible."""
    room = (wheel_diameter - flange_diameter) / 2.0
    if depth >= room:
        what = "flange" if flange_diameter > 0.0 else "wheel's own axis"
        raise Impossible(
            f"The flank goes {of_any_unit(depth)} below the periphery; the {what} is "
            f"{of_any_unit(room)} "
            "below it.",
            fields={
                "wheel_diameter": f"should be more than "
                f"{of_any_unit(flange_diameter + 2.0 * depth)}"
            },
        )


def dressing_passes(depth: float, depth_per_pass: float) -> int:
    """Passes to dress away a depth, the last one perhaps shallower."""
    # A depth that is a whole number of passes must not gain one by rounding.
    return max(1, math.ceil(depth / depth_per_pass - 1e-9))
