"""Requests and results of a set-up's uncertainty, and of what must be held."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Celsius,
    Count,
    CountOut,
    Length,
    NonNegativeArcsec,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    Unit,
    UnitsField,
)
from halfangle_service.fields.plates import CenterDistance
from halfangle_service.trade.sine.angle_budget import Term, TermUnit
from halfangle_service.trade.sine.angle_error import LARGEST_YAW_DEGREES
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import Distribution, Verdict

ToleranceOn = Literal["plate angle", "included angle"]
Share = Annotated[float, Unit("percent")]
_Kelvins = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=0, le=50), Unit("celsius")]
_Terms = Annotated[list[Term], Field(max_length=15)]


class SineErrorFields(RequestModel):
    """A sine set-up and how far each of its parts may be off, each as ± a limit."""

    units: UnitsField
    center_distance: CenterDistance
    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle to set, in degrees.", examples=[30.0]
    )
    center_distance_tolerance: NonNegativeLength = Field(
        0.0, description="Limit ± of the center distance, in `units`.", examples=[0.0001]
    )
    roll_difference: NonNegativeLength = Field(
        0.0, description="Limit ± of the difference of the rolls' diameters, in `units`."
    )
    roll_parallelism: NonNegativeLength = Field(
        0.0,
        description="Limit ± by which the rolls are out of parallel in height from end to end, in "
        "`units`; a stack under one end rather than the middle sees half of it.",
    )
    face_parallelism: NonNegativeLength = Field(
        0.0,
        description="Limit ± by which the plate's face is out of parallel over `face_length`, in "
        "`units`.",
    )
    face_parallelism_on_rolls: bool = Field(
        False,
        description="True where the face's parallelism was measured with the plate resting on its "
        "rolls: it then holds the rolls' difference already, and only the rest of it counts.",
    )
    face_flatness: NonNegativeLength = Field(
        0.0, description="Flatness of the plate's face over `face_length`, in `units`."
    )
    face_length: Length | None = Field(
        None,
        description="Length over which parallelism and flatness act: the plate's, or the work's "
        "seat. Absent: the center distance.",
    )
    stack_tolerance: NonNegativeLength = Field(
        0.0, description="Limit ± of the block stack's height, in `units`.", examples=[0.00005]
    )
    table_flatness: NonNegativeLength = Field(
        0.0,
        description="Limit ± of the difference in height of the surface plate under the two rolls, "
        "in `units`.",
    )
    particle: NonNegativeLength = Field(
        0.0, description="Size of a particle under either roll or its stack, in `units`."
    )
    temperature_celsius: Celsius = Field(20.0, description="Temperature of plate and blocks.")
    temperature_uncertainty_celsius: _Kelvins = Field(
        0.0, description="Limit ± of that temperature, in kelvins."
    )
    temperature_difference_celsius: _Kelvins = Field(
        0.0, description="Limit ± of the difference of the blocks' temperature to the plate's."
    )
    block_material: MaterialName = Field("steel", description="Material of the blocks.")
    plate_material: MaterialName = Field("steel", description="Material of the plate.")
    yaw: Annotated[float, AngleInput(ge=0, le=LARGEST_YAW_DEGREES)] = Field(
        0.0,
        description="Limit ± of the yaw between the work's axis and the plane in which the plate "
        "tilts, in degrees.",
        examples=[0.25],
    )
    fixture_pitch_arcsec: NonNegativeArcsec = Field(
        0.0, description="Limit ± of the pitch of the fixture's axis to the plate's face."
    )
    wheel_breakdown: NonNegativeLength = Field(
        0.0,
        description="Limit ± by which the wheel's face is off over `wheel_contact_length`, in "
        "`units`.",
    )
    wheel_contact_length: Length | None = Field(
        None, description="Length of the slant that the wheel's face grinds, in `units`."
    )
    normal_terms: _Terms = Field(
        [],
        description="Terms whose number is a standard deviation of a normal distribution, not a "
        "limit. All other terms are rectangular, unless listed below; yaw always is.",
    )
    triangular_terms: _Terms = Field([], description="Terms with a triangular distribution.")
    u_shaped_terms: _Terms = Field(
        [], description="Terms with a U-shaped distribution, such as a cycling temperature."
    )
    coverage_factor: Annotated[float, Field(ge=1, le=4), Unit("1")] = Field(
        2.0,
        description="Coverage factor k of the expanded uncertainty, which is the guard band of the "
        "decision: 2 for about 95 % two-sided, 1.65 for 95 % to one side.",
    )
    tolerance_on: ToleranceOn = Field(
        "plate angle",
        description="What the tolerance belongs to: a cone's half angle follows the plate's angle, "
        "so that its error counts twice on the `included angle`.",
    )


class SineUncertaintyRequest(SineErrorFields):
    """A set-up, its errors, and the tolerance to judge it by."""

    tolerance_arcsec: Arcsec | None = Field(
        None, description="The angle must keep within ± this, in arc-seconds.", examples=[20.0]
    )
    trials: Annotated[int, Count(ge=1_000, le=200_000)] = Field(
        50_000, description="Trials of the Monte Carlo check."
    )


class SineBudgetTerm(ResultModel):
    """One line of the budget."""

    term: Term = Field(description="The term.")
    unit: TermUnit = Field(description="Unit of `value`; `length` is in `units`.")
    value: NumberOut = Field(description="Limit ±, or standard deviation where normal.")
    distribution: Distribution = Field(description="Its distribution.")
    sensitivity_arcsec_per_unit: ArcsecOut = Field(
        description="Change of the plate's angle for one unit of the term, signed; for yaw, which "
        "acts by its square, the change at its limit over the limit."
    )
    standard_uncertainty_arcsec: ArcsecOut = Field(
        description="What it adds to the angle's standard uncertainty."
    )
    worst_case_arcsec: ArcsecOut = Field(description="Largest change that it can cause.")
    share_percent: Share = Field(description="Its share of the combined variance.")


class SineMonteCarlo(ResultModel):
    """The same set-up drawn at random through the whole model (JCGM 101)."""

    trials: CountOut = Field(description="Trials, with a fixed seed.")
    mean_arcsec: ArcsecOut = Field(description="Mean error of the angle.")
    standard_deviation_arcsec: ArcsecOut = Field(description="Standard deviation of the angle.")
    low_arcsec: ArcsecOut = Field(description="Lower end of the 95 % interval.")
    high_arcsec: ArcsecOut = Field(description="Upper end of the 95 % interval.")
    difference_percent: Share = Field(
        description="Standard deviation over the budget's combined standard uncertainty, less one."
    )


class SineUncertaintyResult(ResultModel):
    """The budget of a set-up's angle, in arc-seconds of the plate's angle unless said."""

    angle: Angle = Field(description="The angle as it was read.")
    terms: list[SineBudgetTerm] = Field(description="The budget, in a fixed order.")
    bias_arcsec: ArcsecOut = Field(
        description="Expected angle less the wanted one: temperature off 20 °C, and yaw, which "
        "always flattens the angle."
    )
    thermal_shift_arcsec: ArcsecOut = Field(description="Temperature's part of the bias.")
    standard_uncertainty_arcsec: ArcsecOut = Field(description="Combined standard uncertainty.")
    coverage_factor: NumberOut = Field(description="Coverage factor k.")
    expanded_uncertainty_arcsec: ArcsecOut = Field(description="Expanded uncertainty.")
    included_bias_arcsec: ArcsecOut = Field(description="Bias of a cone's included angle.")
    included_expanded_uncertainty_arcsec: ArcsecOut = Field(
        description="Expanded uncertainty of a cone's included angle: twice that of the half angle."
    )
    worst_case_arcsec: ArcsecOut = Field(
        description="Largest error with every term at its limit at once."
    )
    largest_term: Term | None = Field(description="Term with the largest share, if any.")
    monte_carlo: SineMonteCarlo = Field(description="The check by Monte Carlo.")
    smallest_tolerance_arcsec: ArcsecOut = Field(
        description="Tightest ± tolerance, on what `tolerance_on` names, that this set-up is good "
        "for: |bias| + expanded uncertainty."
    )
    verdict: Verdict | None = Field(
        description="Whether the set-up is good for the tolerance: the bias against the tolerance, "
        "with the expanded uncertainty as guard band; absent without a tolerance."
    )


class SineRequirementsRequest(SineErrorFields):
    """The angle's tolerance, and the set-up as it is at hand."""

    tolerance_arcsec: Arcsec = Field(
        description="The angle must keep within ± this, in arc-seconds.", examples=[20.0]
    )


class SineRequirement(ResultModel):
    """What must be held of one term; each value in the term's unit, as ± a limit."""

    term: Term = Field(description="The term.")
    unit: TermUnit = Field(description="Unit of the values; `length` is in `units`.")
    at_hand: NumberOut = Field(description="Value as stated.")
    alone: NumberOut = Field(description="Largest value were all else perfect.")
    equal_share: NumberOut = Field(
        description="Largest value when this and the other terms at hand each take an equal share "
        "of the variance."
    )
    with_others: NumberOut | None = Field(
        description="Largest value with all other terms as stated; absent where they leave no room."
    )


class SineMend(ResultModel):
    """A term to mend, and how far."""

    term: Term = Field(description="The term.")
    at_hand: NumberOut = Field(description="Value as stated, in the term's unit.")
    hold: NumberOut = Field(description="Value to hold, in the term's unit.")
    ratio: NumberOut = Field(description="`hold` over `at_hand`: near 1 is a small mend.")


class SineRequirementsResult(ResultModel):
    """What must be held so that the angle keeps its tolerance."""

    good: bool = Field(description="True where the set-up at hand keeps the tolerance.")
    smallest_tolerance_arcsec: ArcsecOut = Field(
        description="Tightest ± tolerance that the set-up at hand is good for, on what "
        "`tolerance_on` names."
    )
    allowed_standard_uncertainty_arcsec: ArcsecOut | None = Field(
        description="Combined standard uncertainty of the plate's angle that the tolerance leaves "
        "after the bias; absent where the bias alone is past it."
    )
    requirements: list[SineRequirement] = Field(
        description="What to hold of each term that has any effect here. Yaw ends at 5°."
    )
    cheapest_to_mend: SineMend | None = Field(
        description="The one term that needs the smallest improvement, in proportion, to make the "
        "set-up good by itself; absent where it is good already, or no single term can."
    )
    mend_together: list[Term] = Field(
        description="Where no single term can: the fewest, largest first, that would have to be "
        "all but removed."
    )
