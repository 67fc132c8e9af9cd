"""Requests and results of tapers, vees and dovetails over rolls and balls."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    Units,
)
from halfangle_service.topics.tapers.models_slope import TaperSlopeFields

Standing = Annotated[
    Literal["small end", "large end"],
    Field(description="End that the part stands on."),
]
MeasureTolerance = Annotated[
    NonNegativeLength, Field(description="Largest error of each measure, plus or minus.")
]
RollTolerance = Annotated[
    NonNegativeLength, Field(description="Largest error of a roll's or ball's diameter.")
]
RiseTolerance = Annotated[
    NonNegativeLength, Field(description="Largest error of the difference of the heights.")
]
TaperPerFootOut = Annotated[
    float, Unit("inch_per_foot"), Field(description="Inches of diameter a foot of length.")
]
UNITS_TEXT = "Unit of every length here and in the answer."


class TaperOverRollsRequest(RequestModel):
    """What was measured over two equal rolls at two heights, on a part standing upright."""

    units: Units = Field(description=UNITS_TEXT)
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
    rise: Length = Field(
        description="Upper blocks less lower blocks, under each roll.", examples=[75.0]
    )
    length: Length = Field(description="Length of the cone above the face it stands on.")
    measure_tolerance: MeasureTolerance = 0.0
    roll_tolerance: RollTolerance = 0.0
    rise_tolerance: RiseTolerance = 0.0


class TaperMeasuredResult(ResultModel):
    """A taper as measured, with its uncertainty."""

    half_angle: Angle = Field(description="Half angle.")
    included_angle: Angle = Field(description="Included angle.")
    taper_per_foot: TaperPerFootOut
    one_in_x: NumberOut = Field(description="The x of the taper written 1:x.")
    large_diameter: LengthOut = Field(description="Diameter at the large end.")
    small_diameter: LengthOut = Field(description="Diameter at the small end.")
    contacts: list[LengthOut] = Field(
        description="Where rolls or balls touch: height over the standing face, or depth below the "
        "mouth."
    )
    half_angle_worst_arcsec: ArcsecOut = Field(
        description="Largest error of the half angle, all tolerances at their limits at once."
    )
    half_angle_expanded_arcsec: ArcsecOut = Field(
        description="Expanded uncertainty of the half angle, k = 2."
    )
    large_diameter_expanded: LengthOut = Field(
        description="Expanded uncertainty of the large diameter, k = 2."
    )
    small_diameter_expanded: LengthOut = Field(
        description="Expanded uncertainty of the small diameter, k = 2."
    )


class TaperOverRollsNominalRequest(TaperSlopeFields):
    """A nominal taper that is to be measured over rolls."""

    large_diameter: Length = Field(description="Diameter at the large end.", examples=[0.7])
    length: Length = Field(description="Length of the cone along its axis.", examples=[2.5625])
    standing_on: Standing = "small end"
    roll_diameter: Length = Field(description="Diameter of the rolls.", examples=[0.25])
    lower_stack: NonNegativeLength = Field(0.0, description="Blocks under each roll, lower.")
    rise: Length = Field(description="Upper blocks less lower blocks.", examples=[2.0])


class TaperOverRollsNominalResult(ResultModel):
    """What to expect over rolls."""

    lower_measure: LengthOut = Field(description="Measure over both rolls, lower.")
    upper_measure: LengthOut = Field(description="Measure over both rolls, upper.")
    difference: LengthOut = Field(description="Upper less lower measure.")
    lower_contact: LengthOut = Field(description="Height at which the lower rolls touch.")
    upper_contact: LengthOut = Field(description="Height at which the upper rolls touch.")
    half_angle: Angle = Field(description="Half angle.")
    half_angle_arcsec_per_measure_step: ArcsecOut = Field(
        description="Half angle that 0.0001 in or 0.001 mm on one measure stands for."
    )


class TaperOverBallsRequest(RequestModel):
    """What was measured with two balls in a socket that narrows downward."""

    units: Units = Field(description=UNITS_TEXT)
    large_ball: Length = Field(description="Diameter of the larger ball.", examples=[40.0])
    small_ball: Length = Field(description="Diameter of the smaller ball.", examples=[32.0])
    large_ball_depth: SignedLength = Field(
        description="Depth of the larger ball's top below the mouth; negative where it stands out.",
        examples=[-8.0],
    )
    small_ball_depth: SignedLength = Field(
        description="Depth of the smaller ball's top below the mouth.", examples=[76.0]
    )
    length: Length = Field(description="Depth of the cone from the mouth.", examples=[120.0])
    measure_tolerance: MeasureTolerance = 0.0
    roll_tolerance: RollTolerance = 0.0


class TaperOneBallRequest(TaperSlopeFields):
    """One ball in a socket of known slope."""

    ball: Length = Field(description="Diameter of the ball.", examples=[0.5])
    ball_depth: SignedLength = Field(
        description="Depth of the ball's top below the mouth; negative where it stands out.",
        examples=[-0.2],
    )
    length: Length = Field(description="Depth of the cone from the mouth.", examples=[0.4])
    measure_tolerance: MeasureTolerance = 0.0
    roll_tolerance: RollTolerance = 0.0
    included_angle_tolerance_arcsec: Annotated[float, Field(ge=0, le=36_000), Unit("arcsecond")] = (
        Field(0.0, description="Largest error of the included angle.")
    )


class TaperOneBallResult(ResultModel):
    """The socket's mouth from one ball."""

    mouth_diameter: LengthOut = Field(description="Diameter at the mouth.")
    contact_diameter: LengthOut = Field(description="Diameter of the circle of contact.")
    contact_depth: LengthOut = Field(description="Depth of the circle of contact.")
    mouth_per_depth: NumberOut = Field(description="Mouth diameter for one unit of depth.")
    mouth_diameter_expanded: LengthOut = Field(description="Expanded uncertainty, k = 2.")


class TaperOverBallsNominalRequest(TaperSlopeFields):
    """A nominal socket that is to be measured with balls."""

    mouth_diameter: Length = Field(description="Diameter at the mouth.", examples=[0.7])
    length: Length = Field(description="Depth of the cone from the mouth.", examples=[2.5])
    large_ball: Length = Field(description="Diameter of the larger ball.", examples=[0.6875])
    small_ball: Length = Field(description="Diameter of the smaller ball.", examples=[0.625])


class TaperOverBallsNominalResult(ResultModel):
    """What to expect with balls in a socket."""

    large_ball_depth: LengthOut = Field(
        description="Depth of the larger ball's top below the mouth; negative where it stands out."
    )
    small_ball_depth: LengthOut = Field(description="Depth of the smaller ball's top.")
    large_ball_contact: LengthOut = Field(description="Depth at which the larger ball touches.")
    small_ball_contact: LengthOut = Field(description="Depth at which the smaller ball touches.")
    half_angle: Angle = Field(description="Half angle.")
