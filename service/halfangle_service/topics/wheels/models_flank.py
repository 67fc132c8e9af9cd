"""Request and result of the dressed flank."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Unit,
    UnitsField,
)

IncludedAngleField = Annotated[
    Annotated[float, AngleInput(gt=0, lt=180)] | None,
    Field(
        description="Included angle of the cone, in degrees. Either this or `half_angle`, or both "
        "agreeing.",
        examples=[60.0],
    ),
]
HalfAngleField = Annotated[
    Annotated[float, AngleInput(gt=0, lt=90)] | None,
    Field(description="Half angle of the cone, between axis and surface, in degrees."),
]
DresserZero = Literal["wheel axis", "wheel side"]
SpareWidth = Literal["stays flat", "flank runs on", "land below flank"]


class ConeWork(RequestModel):
    """A cone whose axis is parallel to the wheel's; one of the two angles, or both agreeing."""

    kind: Literal["cone"]
    included_angle: IncludedAngleField = None
    half_angle: HalfAngleField = None
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


WorkSurface = Annotated[ConeWork | FaceWork, Field(discriminator="kind")]


class SineBaseDresser(RequestModel):
    """A dresser set by gauge blocks under its sine base."""

    kind: Literal["sine-base"]
    zero: DresserZero = Field(
        "wheel axis",
        description="Direction of the diamond's path with the dresser at zero: along the wheel's "
        "axis (it dresses flat), or along its side.",
    )
    center_distance: Length = Field(
        description="Center distance of the dresser's sine base, in `units`.", examples=[2.0]
    )
    set: Annotated[str, Field(min_length=1, max_length=60)] | None = Field(
        None,
        description="Built-in set to build the stack from, as `GET /v1/blocks/sets` lists it. "
        "Without it and `sizes`, no stack is built.",
        examples=["inch-81"],
    )
    sizes: Annotated[list[Length], Field(min_length=1, max_length=500)] | None = Field(
        None,
        description="Nominal sizes of the blocks that the shop has, one entry a block, in `units`; "
        "instead of `set`.",
    )
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks, in both stacks together where two are needed."
    )


class ScaleDresser(RequestModel):
    """A dresser set by its graduated scale or vernier."""

    kind: Literal["scale"]
    zero: DresserZero = Field(
        "wheel axis", description="Direction of the diamond's path with the dresser at zero."
    )
    graduation: Annotated[float, AngleInput(gt=0, le=5)] = Field(
        description="Smallest step that the scale or its vernier shows, in degrees.",
        examples=["0 05"],
    )


Dresser = Annotated[SineBaseDresser | ScaleDresser, Field(discriminator="kind")]


class WheelFlankRequest(RequestModel):
    """A cone or a face, and the wheel and dresser to grind it with."""

    units: UnitsField
    work: WorkSurface = Field(description="What is to be ground by the flank.")
    other_side: WorkSurface | None = Field(
        None,
        description="What is to be ground by a flank on the wheel's other side; absent for a wheel "
        "dressed on one side.",
    )
    wheel_width: Length = Field(description="Width of the wheel, in `units`.", examples=[0.5])
    wheel_diameter: Length | None = Field(
        None,
        description="Diameter of the wheel, in `units`; without it, no volume is given and the "
        "depth is not held against the flange.",
        examples=[7.0],
    )
    flange_diameter: NonNegativeLength = Field(
        0.0, description="Diameter of the flanges, in `units`; the flank must not reach them."
    )
    edge_flat: NonNegativeLength = Field(
        0.0, description="Width of periphery to be left beside or between the flanks, in `units`."
    )
    spare_width: SpareWidth = Field(
        "stays flat",
        description="What becomes of the wheel's width beyond flanks and `edge_flat`: it stays as "
        "periphery; the flanks run on to the wheel's sides, deeper; or a straight land is dressed "
        "below the flanks. Two flanks share it equally.",
    )
    edge_radius: NonNegativeLength = Field(
        0.0, description="Radius that blends flank and periphery (or two flanks), in `units`."
    )
    root_radius: NonNegativeLength = Field(
        0.0,
        description="Radius that blends flank and land, in `units`; needs a land below the flank.",
    )
    overrun: NonNegativeLength = Field(
        0.0,
        description="How far the flank reaches past the surface at each end, along the slope, in "
        "`units`.",
        examples=[0.02],
    )
    dresser: Dresser = Field(description="How the dresser is set.")
    depth_per_pass: Length = Field(
        description="Depth dressed away by one pass, radially, in `units`.", examples=[0.0005]
    )


class DresserStack(ResultModel):
    """Gauge blocks that set the dresser."""

    high: list[LengthOut] = Field(description="Blocks under the raised roll, largest first.")
    low: list[LengthOut] = Field(
        description="Blocks under the other roll; empty where one stack does it."
    )
    height: LengthOut = Field(description="Difference of the stacks as built.")
    angle_as_set: Angle = Field(description="Dresser angle that these stacks give.")
    angle_error_arcsec: ArcsecOut = Field(
        description="`angle_as_set` less the dresser angle wanted; a cone's included angle is out "
        "by twice as much."
    )


class DresserSetting(ResultModel):
    """The dresser's setting for one flank."""

    dresser_angle: Angle = Field(description="Angle to set on the dresser, from its zero.")
    height: LengthOut | None = Field(
        description="Difference of the stacks under the sine base; absent for a scale."
    )
    arcsec_per_step: ArcsecOut | None = Field(
        description="Change of the dressed angle for one bench step of that stack (0.0001 in or "
        "0.001 mm); a cone's included angle changes twice as much. Absent for a scale."
    )
    stack: DresserStack | None = Field(
        description="The blocks; absent for a scale, or where no blocks were named."
    )
    scale_reading: Angle | None = Field(
        description="Nearest graduation of the scale; absent for a sine base."
    )
    rounding_error_arcsec: ArcsecOut | None = Field(
        description="`scale_reading` less the angle wanted; absent for a sine base."
    )


class DressedFlank(ResultModel):
    """One flank, and how to dress it."""

    side: Literal["work", "other_side"] = Field(description="Which surface it grinds.")
    angle_from_axis: Angle = Field(description="Angle between flank and wheel axis.")
    angle_from_side: Angle = Field(description="Angle between flank and the wheel's side.")
    setting: DresserSetting = Field(description="The dresser's setting.")
    width: LengthOut = Field(description="Width of the flank along the wheel's axis.")
    slant: LengthOut = Field(
        description="Length of the flank along its slope, radii not taken off."
    )
    straight_slant: LengthOut = Field(description="Straight part of it between the radii.")
    depth: LengthOut = Field(description="Radial depth to dress away at its lower end.")
    passes: CountOut = Field(description="Passes of `depth_per_pass`, radially.")
    last_pass_depth: LengthOut = Field(description="Depth that is left to the last pass.")
    infeed_normal: LengthOut = Field(
        description="`depth_per_pass` measured square to the flank: what the diamond takes."
    )
    infeed_axial: LengthOut = Field(
        description="The same pass fed along the wheel's axis: for a steep flank the better way."
    )


class ProfilePoint(ResultModel):
    """A point of the dressed profile."""

    x: LengthOut = Field(description="Along the wheel's axis, from one side of the wheel.")
    depth: LengthOut = Field(description="Below the periphery, radially.")


class ProfileBlend(ResultModel):
    """A radius that blends a corner, with its tangent points."""

    corner: str = Field(description="Which corner.")
    radius: LengthOut = Field(description="Radius.")
    center: ProfilePoint = Field(description="Center of the arc.")
    first_tangent: ProfilePoint = Field(description="Where the arc begins.")
    second_tangent: ProfilePoint = Field(description="Where the arc ends.")
    convex: bool = Field(description="True where the wheel is rounded, false in a root.")


class WheelFlankResult(ResultModel):
    """The flanks to dress, the dresser's settings, the profile, and what is dressed away."""

    flanks: list[DressedFlank] = Field(description="The flank, or both.")
    wheel_width_needed: LengthOut = Field(
        description="Least width of a wheel for flanks and `edge_flat`."
    )
    flat_left: LengthOut = Field(description="Width of periphery left, before the edge radius.")
    depth_to_dress: LengthOut = Field(description="Greatest radial depth to dress away.")
    passes: CountOut = Field(description="Passes for all flanks together.")
    volume_to_dress: Annotated[float, Unit("volume")] | None = Field(
        description="Volume of wheel dressed away, in cubic `units`; absent without the diameter."
    )
    blends: list[ProfileBlend] = Field(description="The radii with their tangent points.")
    profile: list[ProfilePoint] = Field(
        description="The profile from one side of the wheel to the other; arcs in steps of at most "
        "3 degrees."
    )
    profile_csv: str = Field(
        description="The same as CSV with a header row (RFC 4180), in `units`."
    )
    svg: str = Field(description="The profile drawn to scale, as SVG.")
