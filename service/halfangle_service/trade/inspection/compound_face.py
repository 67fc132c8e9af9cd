"""A face that slopes in both views, measured view by view, and levelled at its true tilt.

A line of the face along the view's plane has just the view's angle: laid along a sine plate that
stands at that angle it lies level. Turned out of the plate's plane by a yaw ψ the indicator climbs
the other view's slope too: the angle is found off by ψ tan(other) cos²(angle), in the first order
(derived here). On a screen the edges of the face show the same angles, a yaw by its square alone.
Angles in radians, lengths in one unit.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import partial
from itertools import product
from typing import Literal

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.inspection.comparator import on_screen_budget
from halfangle_service.trade.inspection.means import (
    Inspected,
    OutOfReach,
    Reading,
    Setting,
    Tolerance,
    proof_of,
    reading_of,
    span,
)
from halfangle_service.trade.inspection.sine_plate import (
    Levelled,
    PlateSet,
    inspected_on_plate,
)
from halfangle_service.trade.sine.compound import (
    Vector,
    normal_from_slopes,
    slopes_of_normal,
    tilt_of_normal,
)
from halfangle_service.trade.sine.geometry import beyond_reach
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import degrees, plain

View = Literal["x-angle", "y-angle"]
YAW = "axis_yaw_error_limit_arcsec"
VIEWS: tuple[View, View] = ("x-angle", "y-angle")
_SEEN_FROM: dict[View, str] = {"x-angle": "front", "y-angle": "side"}
_ALONG: dict[View, str] = {"x-angle": "X", "y-angle": "Y"}


@dataclass(frozen=True, slots=True)
class InspectedCompound:
    """A face by its normal, ± the tolerance of each view's angle, its length along X and along Y.

    A length is None where the work's size was not stated.
    """

    normal: Vector
    angle: Tolerance
    lengths: tuple[float | None, float | None]

    def view(self, view: View) -> float:
        """The angle that a view shows."""
        return slopes_of_normal(self.normal)[VIEWS.index(view)]

    def other(self, view: View) -> float:
        """The angle of the other view."""
        return slopes_of_normal(self.normal)[1 - VIEWS.index(view)]

    def length(self, view: View) -> float | None:
        """Length of the face along the view's axis, on the face itself."""
        along = self.lengths[VIEWS.index(view)]
        return None if along is None else along / math.cos(self.view(view))


def level_view(
    part: InspectedCompound, view: View, travel: float | None, largest_degrees: float | None
) -> Levelled | OutOfReach:
    """How a plate levels the line of a face that a view shows."""
    angle = part.view(view)
    tilt = math.degrees(abs(angle))
    if beyond_reach(tilt, largest_degrees):
        return OutOfReach(
            "sine-plate",
            f"The {_SEEN_FROM[view]} view asks for a plate angle of {plain(tilt)}°; the plate "
            f"reaches {plain(largest_degrees or 0.0)}°.",
            "plate/largest_angle",
            f"A plate that reaches {plain(tilt)}°.",
        )
    length = part.length(view)
    if travel is None and length is None:
        return OutOfReach(
            "sine-plate",
            "How far an indicator may run along the face is not known.",
            "plate/indicator_travel",
            "State it, or the work's size in `feature/work_body`.",
        )
    sign = -1.0 if angle < 0.0 else 1.0
    axis = _ALONG[view]
    return Levelled(
        abs(angle),
        lambda error: sign * (angle + error),
        sign,
        length or 0.0,
        f"the part on its base, its {axis} axis up the slope, so that the face falls that way",
        ("size", "form-between-contacts"),
        f"along {axis} over the face, at one place of the other axis",
    )


def by_plate(
    part: InspectedCompound,
    view: View,
    level: Levelled,
    plate: PlateSet,
    yaw_arcsec: float | None,
    units: Units,
    rule: DecisionRule,
) -> Inspected:
    """What an indicator should rise along one view's line, the yaw counted in the first order."""
    turned = math.tan(part.other(view)) * math.cos(part.view(view)) ** 2
    kept = tuple(one for one in plate.budget.contributions if one.name != YAW)
    missing = [name for name in plate.budget.not_stated if name != YAW]
    if yaw_arcsec is None and turned:
        missing.append(YAW)
    elif yaw_arcsec is not None and turned:
        slope = turned / ARCSEC_PER_RADIAN
        kept += (Contribution(YAW, yaw_arcsec, sensitivity=slope, unit="arcsecond"),)
    budget = Budget(kept, plate.budget.offset, tuple(missing))
    found = inspected_on_plate(level, replace(plate, budget=budget), part.angle, units, rule)
    return replace(found, of=view)


def on_screen(
    part: InspectedCompound, error_arcsec: float | None, rule: DecisionRule
) -> Iterator[Inspected]:
    """What angle to expect on the screen in each view, and what it proves."""
    for view in VIEWS:
        proof = proof_of("angle", part.angle, on_screen_budget(error_arcsec), rule)
        read = partial(_shown, part.view(view))
        yield Inspected(
            "comparator",
            f"The work on its base, seen from the {_SEEN_FROM[view]} square to its edge; bring an "
            "edge of the face into focus and read its angle to the base.",
            (),
            (reading_of("measured_angle", read, proof, "degree"),),
            (proof,),
            ("size", "edges-out-of-focus", "form-between-contacts"),
            view,
        )


def _shown(nominal: float, error: float) -> float:
    return math.degrees(nominal + error)


def at_true_tilt(part: InspectedCompound, tilt_height: float) -> Inspected:
    """The face levelled at once: its true tilt, and the direction in plan in which it rises.

    Limits are those of faces at the corners of both views' tolerances. It proves neither view by
    itself, since each reading speaks of both.
    """
    tilt, direction = tilt_of_normal(part.normal)
    faces = [
        tilt_of_normal(normal_from_slopes(part.view("x-angle") + x, part.view("y-angle") + y))
        for x, y in product((part.angle.lower, part.angle.upper), repeat=2)
    ]
    # Directions are counted from the nominal one, so that none passes over a full turn.
    turns = [math.remainder(way - direction, math.tau) for _, way in faces]
    low, high = span(turns)
    least, most = span(at for at, _ in faces)
    return Inspected(
        "sine-plate",
        f"Turn the work in plan by {degrees(math.degrees(direction), 1.0)} from right toward back, "
        "so that its steepest way lies down the plate's slope, and set the plate to the true tilt: "
        "an indicator reads level along the slope and across it. Across, a rise over the travel is "
        "the turn of the direction times the sine of the tilt.",
        (Setting("plate_angle", math.degrees(tilt), "degree"), Setting("height", tilt_height)),
        (
            _both("tilt", math.degrees(tilt), math.degrees(least), math.degrees(most)),
            _both(
                "rise_direction",
                math.degrees(direction),
                math.degrees(direction + low),
                math.degrees(direction + high),
            ),
        ),
        (),
        ("size", "form-between-contacts"),
    )


def _both(name: str, expected: float, least: float, most: float) -> Reading:
    return Reading(name, "degree", expected, (least, most), None)
