"""A straight bore over two balls that touch one another and its wall. Lengths in one unit.

Derived here: the balls' centers lie r1 + r2 apart, dz of that along the bore and h across it, and
each ball touches the wall on its own side, so D = r1 + r2 + h, h = √((r1 + r2)² − dz²). Depths are
those of the balls' tops below the face of the bore; negative above it.
"""

from halfangle_service.errors import Impossible
from halfangle_service.trade import elementary
from halfangle_service.trade.wording import of_any_unit

DEPTHS = ("lower_ball_depth", "upper_ball_depth")


def center_rise(lower: float, upper: float, lower_depth: float, upper_depth: float) -> float:
    """How much higher the upper ball's center lies; refuses balls sent the wrong way round."""
    rise = (lower_depth + lower / 2.0) - (upper_depth + upper / 2.0)
    if rise < 0.0:
        raise Impossible(
            f"The ball sent as the lower one has its center {of_any_unit(-rise)} above the other.",
            fields=dict.fromkeys(DEPTHS, "should leave the lower ball lower"),
        )
    return rise


def bore_over_balls(lower: float, upper: float, lower_depth: float, upper_depth: float) -> float:
    """Diameter of the bore from the balls' diameters and the depths of their tops.

    Raises Impossible where the balls do not touch one another, or the larger has no room.
    """
    rise = center_rise(lower, upper, lower_depth, upper_depth)
    apart = (lower + upper) / 2.0
    if rise >= apart:
        raise Impossible(
            f"The balls' centers lie {of_any_unit(rise)} apart along the bore; touching balls of "
            f"these sizes lie less than {of_any_unit(apart)} apart.",
            fields=dict.fromkeys(DEPTHS, "should be depths of the tops of two touching balls"),
        )
    diameter = apart + elementary.sqrt((apart - rise) * (apart + rise))
    if diameter < max(lower, upper):
        raise Impossible(
            f"These depths ask for a bore of {of_any_unit(diameter)}, in which a ball of "
            f"{of_any_unit(max(lower, upper))} has no room.",
            fields=dict.fromkeys(DEPTHS, "should leave the larger ball room"),
        )
    return diameter


def lean_of_centers(lower: float, upper: float, rise: float) -> float:
    """Angle of the line of the balls' centers to the bore's axis, in radians."""
    return elementary.acos(rise / ((lower + upper) / 2.0))
