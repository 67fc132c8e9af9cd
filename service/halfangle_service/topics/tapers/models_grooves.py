"""Requests and results of vees and dovetails over rolls."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    Length,
    LengthOut,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    Units,
)
from halfangle_service.topics.tapers.models_contact import (
    UNITS_TEXT,
    MeasureTolerance,
    RollTolerance,
)


class VeeOverRollsRequest(RequestModel):
    """What was measured over two rolls of different size in a vee."""

    units: Units = Field(description=UNITS_TEXT)
    large_roll: Length = Field(description="Diameter of the larger roll.", examples=[40.0])
    small_roll: Length = Field(description="Diameter of the smaller roll.", examples=[20.0])
    large_roll_top: SignedLength = Field(
        description="Height of the larger roll's top over the vee's faces.", examples=[20.0]
    )
    small_roll_top: SignedLength = Field(
        description="Height of the smaller roll's top over the faces; negative below them.",
        examples=[-10.0],
    )
    measure_tolerance: MeasureTolerance = 0.0
    roll_tolerance: RollTolerance = 0.0


class VeeOverRollsResult(ResultModel):
    """A vee as measured."""

    half_angle: Angle = Field(description="Half of the vee's included angle.")
    included_angle: Angle = Field(description="The vee's included angle.")
    width: LengthOut = Field(description="Width between the sides at the faces.")
    apex_depth: LengthOut = Field(description="Depth of the (virtual) apex below the faces.")
    contact_depths: list[LengthOut] = Field(
        description="Depth below the faces at which the larger and the smaller roll touch."
    )
    half_angle_worst_arcsec: ArcsecOut = Field(
        description="Largest error of the half angle, all tolerances at their limits at once."
    )
    half_angle_expanded_arcsec: ArcsecOut = Field(
        description="Expanded uncertainty of the half angle, k = 2."
    )
    width_expanded: LengthOut = Field(description="Expanded uncertainty of the width, k = 2.")


class VeeOverRollsNominalRequest(RequestModel):
    """A nominal vee, symmetric about the normal of its faces, and the rolls to measure it with."""

    units: Units = Field(description=UNITS_TEXT)
    included_angle: Annotated[float, AngleInput(ge=1, le=175)] = Field(
        description="The vee's included angle, in degrees.", examples=[60.0]
    )
    width: Length = Field(description="Width between the sides at the faces.", examples=[46.188])
    rolls: Annotated[list[Length], Field(min_length=1, max_length=20)] = Field(
        description="Diameters of the rolls, laid in one at a time.", examples=[[40.0, 20.0]]
    )


class VeeRollExpected(ResultModel):
    """One roll in a nominal vee."""

    roll: LengthOut = Field(description="Diameter of the roll.")
    top: LengthOut = Field(
        description="Height of the roll's top over the faces; negative below them."
    )
    contact_depth: LengthOut = Field(description="Depth below the faces at which it touches.")


class VeeOverRollsNominalResult(ResultModel):
    """What to expect over rolls in a nominal vee."""

    apex_depth: LengthOut = Field(description="Depth of the (virtual) apex below the faces.")
    largest_roll: LengthOut = Field(
        description="Largest roll that still touches the sides, at their upper edges."
    )
    rolls: list[VeeRollExpected] = Field(description="The rolls, in the order asked.")
    top_per_width: NumberOut = Field(
        description="Fall of the top for one unit more of width: 1 / (2 tan ν)."
    )


class DovetailOverRollsRequest(RequestModel):
    """A dovetail slide, and two equal rolls in its corners."""

    units: Units = Field(description=UNITS_TEXT)
    kind: Literal["male", "female"] = Field(
        description="`male`: the measure is over the rolls; `female`: between them.",
        examples=["male"],
    )
    angle: Annotated[float, AngleInput(ge=20, lt=90)] = Field(
        description="Angle of the flank to the base, in degrees.", examples=[60.0]
    )
    height: Length = Field(description="Height of the flank.", examples=[10.0])
    roll_diameter: Length = Field(description="Diameter of the rolls.", examples=[8.0])
    corner_width: Length | None = Field(
        None, description="Width between the sharp corners at the base.", examples=[50.0]
    )
    measure: Length | None = Field(None, description="Measure over or between the rolls.")
    measure_tolerance: MeasureTolerance = 0.0
    roll_tolerance: RollTolerance = 0.0
    angle_tolerance_arcsec: Annotated[
        float, Field(strict=True, allow_inf_nan=False, ge=0, le=3600), Unit("arcsecond")
    ] = Field(0.0, description="Largest error of the flank's angle.")


class DovetailOverRollsResult(ResultModel):
    """Widths of a dovetail and its measure with rolls."""

    measure: LengthOut = Field(description="Over the rolls (male) or between them (female).")
    corner_width: LengthOut = Field(description="Width between the sharp corners at the base.")
    edge_width: LengthOut = Field(description="Width between the sharp edges at the other face.")
    contact_height: LengthOut = Field(description="Height over the base where a roll touches.")
    rolls_constant: LengthOut = Field(description="d (1 + cot(θ / 2)): both rolls' share.")
    sought_expanded: LengthOut = Field(
        description="Expanded uncertainty, k = 2, of what was sought: of the corner width where "
        "the measure was given, else of the measure to expect at an exact corner width."
    )
    sought_worst: LengthOut = Field(
        description="Largest error of the same, all tolerances at their limits at once."
    )
