"""The part as it is measured over rolls or with balls, drawn; nothing of the other means."""

from collections.abc import Sequence

from halfangle_service.fields import Units
from halfangle_service.trade.inspection.means import Inspected, InspectedCone
from halfangle_service.trade.inspection.sine_plate import InspectedFace
from halfangle_service.trade.tapers.drawing import (
    OverBalls,
    OverRolls,
    over_balls_svg,
    over_rolls_svg,
)
from halfangle_service.trade.tapers.two_heights import Upright


def drawing_of(
    part: InspectedCone | InspectedFace, reached: Sequence[Inspected], units: Units
) -> str | None:
    """The first means that a drawing shows; None where none of them is one."""
    if isinstance(part, InspectedFace):
        return None
    for one in reached:
        figures = {setting.name: setting.value for setting in one.settings}
        figures |= {reading.name: reading.expected for reading in one.readings}
        if one.means == "over-rolls":
            return over_rolls_svg(_over_rolls(part, figures), units)
        if one.means == "over-balls":
            return over_balls_svg(_over_balls(part, figures), units)
    return None


def _over_rolls(part: InspectedCone, figures: dict[str, float]) -> OverRolls:
    lower, upper = figures["lower_measure"], figures["upper_measure"]
    cone = part.cone
    upright = Upright(cone.large_diameter, cone.half_rad, part.length, on_small_end=upper > lower)
    rise = figures["stack_rise"]
    return OverRolls(upright, figures["roll_diameter"], 0.0, rise, (lower, upper))


def _over_balls(part: InspectedCone, figures: dict[str, float]) -> OverBalls:
    return OverBalls(
        part.cone.half_rad,
        part.cone.large_diameter,
        part.length,
        (figures["large_ball_diameter"], figures["small_ball_diameter"]),
        (figures["large_ball_depth"], figures["small_ball_depth"]),
    )
