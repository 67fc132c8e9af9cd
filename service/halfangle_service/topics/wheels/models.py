"""Requests and results of the wheels topic."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.quantities import (
    Angle,
    AngleInput,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Unit,
    Units,
)


class ConeWork(RequestModel):
    """A cone whose axis is parallel to the wheel's; one of the two angles, or both agreeing."""

    kind: Literal["cone"]
    included_angle: Annotated[float, AngleInput(gt=0, lt=180)] | None = Field(
        None, description="Included angle of the cone, in degrees.", examples=[60.0]
    )
    half_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Angle between axis and surface, in degrees."
    )
    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )


class FaceWork(RequestModel):
    """A plane face at an angle to the table."""

    kind: Literal["face"]
    face_angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle between the face and the table, in degrees.", examples=[15.0]
    )
    rise: Length = Field(
        description="Height of the face, square to the table, in `units`.", examples=[0.2]
    )


class WheelFlankRequest(RequestModel):
    """A cone or a face, and the wheel and dresser to grind it with."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    work: Annotated[ConeWork | FaceWork, Field(discriminator="kind")] = Field(
        description="What is to be ground."
    )
    wheel_width: Length = Field(description="Width of the wheel, in `units`.", examples=[0.5])
    edge_flat: NonNegativeLength = Field(
        0.0, description="Width of periphery to be left beside the flank, in `units`."
    )
    overrun: NonNegativeLength = Field(
        0.0,
        description="How far the flank reaches past the surface at each end, along the slope, in "
        "`units`.",
        examples=[0.02],
    )
    dresser_center_distance: Length = Field(
        description="Center distance of the dresser's sine base, in `units`.", examples=[2.0]
    )
    dresser_zero: Literal["wheel axis", "wheel side"] = Field(
        "wheel axis",
        description="Direction of the diamond's path with the dresser at zero: along the wheel's "
        "axis (it dresses flat), or along its side.",
    )
    depth_per_pass: Length = Field(
        description="Depth dressed away by one pass, radially, in `units`.", examples=[0.0005]
    )


class WheelFlankResult(ResultModel):
    """The angle to dress, the dresser's setting, and what is dressed away."""

    angle_from_axis: Angle = Field(description="Angle between flank and wheel axis.")
    angle_from_side: Angle = Field(description="Angle between flank and the wheel's side.")
    dresser_angle: Angle = Field(description="Angle to set on the dresser, from its zero.")
    dresser_height: LengthOut = Field(description="Stack on the dresser's sine base.")
    dresser_arcsec_per_step: Annotated[float, Unit("arcsecond")] = Field(
        description="Change of the dressed angle for one bench step of that stack (0.0001 in or "
        "0.001 mm); a cone's included angle changes twice as much."
    )
    flank_width: LengthOut = Field(description="Width of the flank along the wheel's axis.")
    flank_slant: LengthOut = Field(description="Length of the flank along its slope.")
    depth_to_dress: LengthOut = Field(
        description="Radial depth to dress away at the edge of the wheel."
    )
    passes: CountOut = Field(description="Passes of the depth given.")
    flat_left: LengthOut = Field(description="Width of periphery left beside the flank.")
