"""Requests and results of tapers on a sine plate."""

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
)
from halfangle_service.fields.plates import ArcsecPerStep, PlateFields, ReachField
from halfangle_service.trade.sine.taper_use import Holding

HoldingField = Annotated[
    Holding,
    Field(
        description="How the taper is held. `between centers`: its axis parallel to the plate's "
        "top, also a bar laid over a taper whose axis is level; `on its generator`: lying on the "
        "plate's flat top, also a bar laid over a taper that lies on the surface plate; "
        "`in a vee`: lying in a vee along the plate."
    ),
]
VeeField = Annotated[
    Annotated[float, AngleInput(gt=0, le=180)],
    Field(description="Included angle of the vee, in degrees; counts for `in a vee` only."),
]
_Taper = Annotated[float, Field(gt=0, le=100)]


class SineTaperFields(RequestModel):
    """A taper, stated in at least one of the ways that drawings use; several must agree."""

    included_angle: Annotated[float, AngleInput(gt=0, lt=180)] | None = Field(
        None, description="Included angle of the cone, in degrees.", examples=[16.594]
    )
    half_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Angle between the cone's side and its axis, in degrees."
    )
    taper_per_foot: Annotated[_Taper, Unit("inch_per_foot")] | None = Field(
        None, description="Change of diameter in inches per foot of length.", examples=[3.5]
    )
    taper_ratio: Annotated[float, Field(ge=0.01, le=1e6), Unit("1")] | None = Field(
        None, description="x of a taper 1:x: length for one unit of change of diameter."
    )
    taper_per_length: Annotated[_Taper, Unit("length_per_length")] | None = Field(
        None, description="Change of diameter for one unit of length."
    )


class SineTaperSettingRequest(PlateFields, SineTaperFields):
    """A taper, and how it is held on a sine plate."""

    holding: HoldingField
    vee_angle: VeeField = 90.0
    largest_angle: ReachField = None


class SineTaperSlip(ResultModel):
    """A usual mistake, and what it would do."""

    mistake: str = Field(description="What is mistaken for what.")
    height: LengthOut = Field(description="Height that the mistake would set.")
    plate_angle: Angle = Field(description="Plate's angle at that height.")
    plate_angle_error_arcsec: ArcsecOut = Field(
        description="That angle less the right one, in arc-seconds."
    )


class SineTaperSettingResult(ResultModel):
    """The setting that brings the taper's top generator parallel to the surface plate."""

    plate_angle: Angle = Field(description="Angle to set on the plate.")
    height: LengthOut = Field(description="Difference of the stacks, high less low.")
    height_to_set: LengthOut = Field(description="The same, rounded to 0.0001 in or 0.001 mm.")
    rounding_error_arcsec: ArcsecOut = Field(
        description="Plate's angle at `height_to_set` less the right one."
    )
    half_angle: Angle = Field(description="The cone's half angle.")
    included_angle: Angle = Field(description="The cone's included angle.")
    axis_tilt: Angle = Field(description="Lean of the cone's axis to the plate's top.")
    arcsec_per_step: ArcsecPerStep
    included_arcsec_per_step: ArcsecOut = Field(
        description="Change of the included angle that one bench step of height stands for."
    )
    instruction: str = Field(description="Which way round, in plain words.")
    usual_mistakes: list[SineTaperSlip] = Field(
        description="Heights that the usual mistakes give: none of them should be on the bench."
    )


class SineTaperAngleRequest(PlateFields):
    """The stack at which a taper's top generator is parallel, or nearly so."""

    height: Length = Field(
        description="Height of the stack under the high roll over that under the low roll.",
        examples=[0.7219],
    )
    holding: HoldingField
    vee_angle: VeeField = 90.0
    indicator_rise: SignedLength = Field(
        0.0,
        description="Rise of the top generator along `indicator_travel`, in `units`: positive "
        "where it rises toward the low roll, so that the taper is larger than the plate's setting.",
    )
    indicator_travel: Length | None = Field(
        None, description="Travel of the indicator along the top generator, in `units`."
    )


class SineTaperAngleResult(ResultModel):
    """The taper that a setting stands for."""

    plate_angle: Angle = Field(description="Angle of the plate as set.")
    generator_lean: Angle = Field(
        description="Lean of the top generator to the plate's top: the plate's angle, and what the "
        "indicator read."
    )
    half_angle: Angle = Field(description="The cone's half angle.")
    included_angle: Angle = Field(description="The cone's included angle.")
    taper_per_foot: Annotated[float, Unit("inch_per_foot")] = Field(
        description="Change of diameter in inches per foot of length."
    )
    taper_ratio: NumberOut = Field(description="x of the taper 1:x.")
    taper_per_length: Annotated[float, Unit("length_per_length")] = Field(
        description="Change of diameter for one unit of length."
    )
    included_arcsec_per_step: ArcsecOut = Field(
        description="Change of the included angle for one bench step of height."
    )


SlipName = Literal[
    "included-for-half",
    "half-for-included",
    "taper-ratio-as-sine",
    "half-taper-ratio-as-sine",
    "half-of-atan-of-whole-taper",
    "atan-of-whole-taper",
]
