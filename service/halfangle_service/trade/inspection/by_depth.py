"""A taper gauged by depth: one gauge for the diameter, two sharp edges for the angle.

A plug in a socket, a ring over a plug alike: where gauge and part touch they share the diameter.
Lengths in one unit, depths from the part's large end toward its small end, angles in radians.
"""

import math
from dataclasses import dataclass

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    MeansName,
    OutOfReach,
    Setting,
    proof_of,
    reading_of,
    reading_of_both,
)
from halfangle_service.trade.tapers.plugs import (
    depth_of_gauge,
    diameter_by_depth,
    half_angle_by_depths,
)
from halfangle_service.trade.uncertainty import DecisionRule, LargestError, Measured, budget_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure


@dataclass(frozen=True, slots=True)
class GaugesAtHand:
    """A gauge by its diameter, how far its cone runs on, and a second one at a sharp edge.

    `length` is 0 for a sharp edge; errors are the largest, plus or minus, None where not stated.
    """

    diameter: float
    length: float
    second_diameter: float | None
    depth_error: float | None
    gauge_error: float | None


def inspected_by_depth(
    part: InspectedCone, at_hand: GaugesAtHand, units: Units, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What depth to expect of the gauge, and what it proves of the large diameter.

    The part's slope may be off by its tolerance, which counts where the gauge does not rest at the
    large end. Without a tolerance of the size there is nothing to prove.
    """
    if part.size is None:
        return OutOfReach(
            "gauge-depth",
            "A gauge's depth proves the diameter, and no tolerance of it was stated.",
            "feature/large_diameter_tolerance",
            "State the tolerance of the large diameter.",
        )
    large, half = part.cone.large_diameter, part.cone.half_rad
    depth = depth_of_gauge(large, at_hand.diameter, half)
    if depth + at_hand.length < 0.0 or depth > part.length:
        return _misses("gauge-depth", "gauge_diameter", at_hand.diameter, part, units)
    gauges = LargestError("gauge_error_limit", at_hand.gauge_error)
    depths = LargestError("depth_error_limit", at_hand.depth_error)
    slopes = LargestError(part.angle.field, part.angle.widest * ARCSEC_PER_RADIAN)
    budget = budget_of(
        lambda gauge, found, included: diameter_by_depth(
            gauge, found, included / 2.0 / ARCSEC_PER_RADIAN, 0.0
        ),
        Measured("gauge_diameter", at_hand.diameter, gauges, above=0.0),
        Measured("gauge_depth", depth, depths),
        Measured(
            "included_angle",
            2.0 * half * ARCSEC_PER_RADIAN,
            slopes,
            unit="arcsecond",
            above=0.0,
            below=math.pi * ARCSEC_PER_RADIAN,
        ),
    )
    size = proof_of("large-diameter", part.size, budget, rule)
    reading = reading_of(
        "gauge_depth", lambda error: depth_of_gauge(large + error, at_hand.diameter, half), size
    )
    return Inspected(
        "gauge-depth",
        f"{_seat(part)} Both wiped clean and at one temperature, then measure how far the gauge's "
        "line stands from the part's large end.",
        (Setting("gauge_diameter", at_hand.diameter),),
        (reading,),
        (size,),
        ("angle", "form-between-contacts", "runout")
        + (("error-of-the-gauge",) if at_hand.length else ()),
    )


def inspected_by_two_gauges(
    part: InspectedCone, at_hand: GaugesAtHand, units: Units, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What depths to expect of two sharp edges of unlike diameters; they prove the angle."""
    first, second = at_hand.diameter, at_hand.second_diameter
    if second is None or second == first or at_hand.length:
        return OutOfReach(
            "two-gauges",
            "The angle takes two gauges of unlike diameters at sharp edges; a gauge with a cone of "
            "its own touches where its angle lets it.",
            "gauges/gauge_length" if at_hand.length else "gauges/second_gauge_diameter",
            "Two discs or rings with sharp edges.",
        )
    large, half = part.cone.large_diameter, part.cone.half_rad
    places = {"gauge_diameter": first, "second_gauge_diameter": second}
    for name, diameter in places.items():
        if not 0.0 <= depth_of_gauge(large, diameter, half) <= part.length:
            return _misses("two-gauges", name, diameter, part, units)

    def depth_of(diameter: float, angle_error: float, size_error: float) -> float:
        return depth_of_gauge(large + size_error, diameter, part.half_rad(angle_error))

    gauges = LargestError("gauge_error_limit", at_hand.gauge_error)
    depths = LargestError("depth_error_limit", at_hand.depth_error)
    budget = budget_of(
        lambda *read: 2.0 * half_angle_by_depths(*read),
        Measured("gauge_diameter", first, gauges, above=0.0),
        Measured("gauge_depth", depth_of(first, 0.0, 0.0), depths),
        Measured("second_gauge_diameter", second, gauges, above=0.0),
        Measured("second_gauge_depth", depth_of(second, 0.0, 0.0), depths),
    )
    angle = proof_of("angle", part.angle, budget, rule)
    return Inspected(
        "two-gauges",
        f"{_seat(part)} One gauge after the other, each with a sharp edge; measure how far each "
        "edge stands from the part's large end.",
        (Setting("gauge_diameter", first), Setting("second_gauge_diameter", second)),
        (
            reading_of_both("gauge_depth", lambda *errors: depth_of(first, *errors), part),
            reading_of_both("second_gauge_depth", lambda *errors: depth_of(second, *errors), part),
            reading_of(
                "gauge_depth_difference",
                lambda error: (first - second) / (2.0 * math.tan(part.half_rad(error))),
                angle,
            ),
        ),
        (angle,),
        ("form-between-contacts", "form-round-the-part", "runout"),
    )


def _seat(part: InspectedCone) -> str:
    return "Enter the plug." if part.internal else "Set the ring over the cone."


def _misses(
    means: MeansName, name: str, diameter: float, part: InspectedCone, units: Units
) -> OutOfReach:
    small, large = part.small_diameter, part.cone.large_diameter
    return OutOfReach(
        means,
        f"A gauge of {figure(diameter, units)} misses the part's cone, which is "
        f"{figure(small, units)} to {figure(large, units)} in diameter.",
        f"gauges/{name}",
        f"A gauge from {figure(small, units)} to {figure(large, units)}.",
    )
