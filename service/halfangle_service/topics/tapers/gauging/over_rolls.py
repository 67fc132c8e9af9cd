"""A taper over two equal rolls at two heights: as measured, and what to expect of a nominal one.

The part stands upright on a surface plate; heights run from the face that it stands on.
"""

from functools import partial
from typing import Literal

from pydantic import Field

from halfangle_service.cautions import odd_sizes
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    UnitsField,
    bench_step,
)
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.gauging.measured import (
    MeasuredTaper,
    MeasureErrorLimit,
    RollErrorLimit,
    measured_angle,
    measured_length,
    reading_slack,
)
from halfangle_service.fields.slopes import SlopeFields, slope_forms, slope_of
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.tapers.sources import TANGENT_CIRCLES
from halfangle_service.trade import elementary
from halfangle_service.trade.cone import require_before_point
from halfangle_service.trade.tapers.contact import (
    diameter_over_rolls,
    lean_over_rolls,
    require_contact,
    roll_contact,
)
from halfangle_service.trade.tapers.drawing import OverRolls, over_rolls_svg
from halfangle_service.trade.tapers.two_heights import Upright
from halfangle_service.trade.uncertainty import LargestError, Measured
from halfangle_service.trade.wording import of_any_unit


class TaperOverRollsRequest(DrawnFields):
    """What was measured over two equal rolls at two heights, on a part standing upright."""

    units: UnitsField
    roll_diameter: Length = Field(description="Diameter of the rolls.", examples=[12.0])
    lower_measure: Length = Field(
        description="Measure over both rolls at the lower height.", examples=[60.21]
    )
    upper_measure: Length = Field(
        description="Measure over both rolls at the upper height.", examples=[67.695]
    )
    lower_stack: NonNegativeLength = Field(
        0.0, description="Blocks under each roll at the lower height; 0 on the surface plate."
    )
    stack_rise: Length = Field(
        description="Upper blocks less lower blocks, under each roll.", examples=[75.0]
    )
    length: Length = Field(description="Length of the cone above the face it stands on.")
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None
    stack_rise_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error of the difference of the stacks, plus or minus; not stated "
        "where left out.",
    )


class TaperOverRollsResult(MeasuredTaper, DrawnResult):
    """A taper as measured over rolls, with its uncertainty."""

    lower_contact_height: LengthOut = Field(
        description="Height over the standing face at which the lower rolls touch."
    )
    upper_contact_height: LengthOut = Field(
        description="Height over the standing face at which the upper rolls touch."
    )


@operation(
    "tapers.over-rolls",
    relations=("tan α = (M2 − M1) / (2 H)", "D at the roll's center = M − d (1 + sec α)"),
    sources=(TANGENT_CIRCLES,),
    heavy=is_drawn,
    example={
        "units": "mm",
        "roll_diameter": 12,
        "lower_measure": 60.21,
        "upper_measure": 67.695,
        "stack_rise": 75,
        "length": 100,
        "measure_error_limit": 0.002,
        "roll_error_limit": 0.0005,
        "stack_rise_error_limit": 0.0005,
        "formats": ["svg"],
    },
)
def measured_over_rolls(request: TaperOverRollsRequest) -> Outcome[TaperOverRollsResult]:
    """Taper measured over rolls.

    Half angle, diameters and their uncertainty from measures over two equal rolls at two heights.
    """
    measures = LargestError("measure_error_limit", request.measure_error_limit)
    stacks = LargestError("stack_rise_error_limit", request.stack_rise_error_limit)
    rolls = LargestError("roll_error_limit", request.roll_error_limit)
    lower = Measured("lower_measure", request.lower_measure, measures)
    upper = Measured("upper_measure", request.upper_measure, measures)
    rise = Measured("stack_rise", request.stack_rise, stacks, above=0.0)
    roll = Measured("roll_diameter", request.roll_diameter, rolls, above=0.0)
    lean = lean_over_rolls(lower.value, upper.value, rise.value)
    if lean == 0.0:
        raise Impossible(
            "Equal measures at both heights: this is a cylinder, not a taper.",
            fields={"upper_measure": "should differ from lower_measure"},
        )
    contacts = _contacts(request, lean)
    heights = (request.length, 0.0) if lean > 0.0 else (0.0, request.length)
    large_end, small_end = (
        partial(diameter_over_rolls, height, request.lower_stack) for height in heights
    )
    large = large_end(lower.value, upper.value, rise.value, roll.value)
    _require_large_end(request, large)
    small = measured_length(small_end, lower, upper, rise, roll)
    slack = reading_slack(request.units, small)
    require_before_point(large, request.length, abs(lean), slack=slack)
    widening = elementary.copysign(1.0, lean)
    part = Upright(large, abs(lean), request.length, on_small_end=lean > 0.0)
    return Outcome(
        TaperOverRollsResult(
            half_angle=measured_angle(
                lambda *values: widening * lean_over_rolls(*values), lower, upper, rise
            ),
            large_diameter=measured_length(large_end, lower, upper, rise, roll),
            small_diameter=small,
            lower_contact_height=contacts[0],
            upper_contact_height=contacts[1],
            svg=_drawing(request, part, (lower.value, upper.value)),
            **slope_forms(abs(lean)),
        ),
        odd_sizes(request.units, "rolls", request.roll_diameter),
    )


def _require_large_end(request: TaperOverRollsRequest, large: float) -> None:
    """Refuse measures that leave the part no diameter."""
    if large <= 0.0:
        raise Impossible(
            f"Over rolls of {of_any_unit(request.roll_diameter)} these measures leave the large "
            "end a "
            f"diameter of {of_any_unit(large)}.",
            fields={
                "lower_measure": "should leave the part a diameter between the rolls",
                "upper_measure": "should leave the part a diameter between the rolls",
            },
        )


class TaperOverRollsNominalRequest(SlopeFields, DrawnFields):
    """A nominal taper that is to be measured over rolls."""

    units: UnitsField
    large_diameter: Length = Field(description="Diameter at the large end.", examples=[0.7])
    length: Length = Field(description="Length of the cone along its axis.", examples=[2.5625])
    standing_on: Literal["small-end", "large-end"] = Field(
        "small-end", description="End that the part stands on."
    )
    roll_diameter: Length = Field(description="Diameter of the rolls.", examples=[0.25])
    lower_stack: NonNegativeLength = Field(
        0.0, description="Blocks under each roll at the lower height; 0 on the surface plate."
    )
    stack_rise: Length = Field(
        description="Upper blocks less lower blocks, under each roll.", examples=[2.0]
    )


class TaperOverRollsNominalResult(DrawnResult):
    """What to expect over rolls."""

    lower_measure: LengthOut = Field(description="Measure over both rolls, lower.")
    upper_measure: LengthOut = Field(description="Measure over both rolls, upper.")
    measure_difference: LengthOut = Field(description="Upper less lower measure.")
    lower_contact_height: LengthOut = Field(
        description="Height over the standing face at which the lower rolls touch."
    )
    upper_contact_height: LengthOut = Field(
        description="Height over the standing face at which the upper rolls touch."
    )
    half_angle: Angle = Field(description="Half angle.")
    half_angle_arcsec_per_measure_step: ArcsecOut = Field(
        description="Half angle that 0.0001 in or 0.001 mm on one measure stands for."
    )


@operation(
    "tapers.over-rolls-nominal",
    relations=("M = D + d (1 + sec α), D at the roll's center", "δα = cos² α · δM / (2 H)"),
    sources=(TANGENT_CIRCLES,),
    heavy=is_drawn,
    example={
        "units": "in",
        "taper_per_foot": 0.59941,
        "large_diameter": 0.7,
        "length": 2.5625,
        "roll_diameter": 0.25,
        "stack_rise": 2,
        "formats": ["svg"],
    },
    columns=True,
)
def expected_over_rolls(
    request: TaperOverRollsNominalRequest,
) -> Outcome[TaperOverRollsNominalResult]:
    """What to expect over rolls.

    Measures over two rolls at two heights for a nominal taper, and where they touch.
    """
    slope = slope_of(request)
    half = slope.half_angle_rad
    require_before_point(request.large_diameter, request.length, half)
    up = request.standing_on == "small-end"
    part = Upright(request.large_diameter, half, request.length, on_small_end=up)
    contacts = _contacts(request, part.lean)
    center = request.lower_stack + request.roll_diameter / 2.0
    lower, upper = (
        part.measure(request.roll_diameter, height)
        for height in (center, center + request.stack_rise)
    )
    per_measure = elementary.cos(half) ** 2 / (2.0 * request.stack_rise) * ARCSEC_PER_RADIAN
    return Outcome(
        TaperOverRollsNominalResult(
            lower_measure=lower,
            upper_measure=upper,
            measure_difference=upper - lower,
            lower_contact_height=contacts[0],
            upper_contact_height=contacts[1],
            half_angle=Angle.of(slope.half_angle_degrees),
            half_angle_arcsec_per_measure_step=per_measure * bench_step(request.units),
            svg=_drawing(request, part, (lower, upper)),
        ),
        odd_sizes(request.units, "rolls", request.roll_diameter),
    )


def _drawing(
    request: TaperOverRollsRequest | TaperOverRollsNominalRequest,
    part: Upright,
    measures: tuple[float, float],
) -> str | None:
    """The part with its rolls, where it is asked for."""
    if not is_drawn(request):
        return None
    roll, stack = request.roll_diameter, request.lower_stack
    measured = OverRolls(part, roll, stack, request.stack_rise, measures)
    return over_rolls_svg(measured, request.units)


def _contacts(
    request: TaperOverRollsRequest | TaperOverRollsNominalRequest, lean: float
) -> tuple[float, float]:
    """Heights at which lower and upper rolls touch; refuses those off the cone."""
    center = request.lower_stack + request.roll_diameter / 2.0
    low, high = (
        roll_contact(height, lean, request.roll_diameter)
        for height in (center, center + request.stack_rise)
    )
    require_contact(low, request.length, "roll", "lower_stack")
    require_contact(high, request.length, "roll", "stack_rise")
    return low, high
