"""Requests and results of dressing errors and of set-up errors."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedArcsec,
    SignedLength,
    Unit,
)
from halfangle_service.topics.wheels.models_flank import (
    HalfAngleField,
    IncludedAngleField,
    UnitsField,
)

MicrometreOut = Annotated[float, Unit("micrometre")]
ArcminOut = Annotated[float, Unit("arcminute")]


class WheelConeFields(RequestModel):
    """The cone wanted, by its angle and its two diameters."""

    units: UnitsField
    included_angle: IncludedAngleField = None
    half_angle: HalfAngleField = None
    large_diameter: Length = Field(
        description="Larger diameter to grind, in `units`.", examples=[0.75]
    )
    small_diameter: NonNegativeLength = Field(
        description="Smaller diameter to grind, in `units`; 0 for a sharp point.", examples=[0.05]
    )
    wheel_diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[7.0])


class WheelInspection(RequestModel):
    """A way to inspect the ground cone, by the least errors that it shows."""

    name: Annotated[str, Field(min_length=1, max_length=60)] = Field(
        description="What it is called in the answer.", examples=["optical projector"]
    )
    angle_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Least error of the half angle that it shows, in arc-seconds. Absent: it shows "
        "no angle.",
    )
    form: NonNegativeLength | None = Field(
        None,
        description="Least departure from straight that it shows, in `units`. Absent: it shows no "
        "form.",
    )


class DressingErrorsRequest(WheelConeFields):
    """A cone ground by a dressed flank, and what was out when it was dressed."""

    worn_diameter: Length | None = Field(
        None, description="Diameter that the wheel will wear to, in `units`."
    )
    diamond_height: SignedLength = Field(
        0.0,
        description="Distance of the diamond's path from the plane through the wheel's axis "
        "parallel to it (above or below the center), in `units`.",
        examples=[0.05],
    )
    nose_radius: NonNegativeLength = Field(
        0.0, description="Radius of the diamond's nose, in `units`."
    )
    dresser_angle_error_arcsec: SignedArcsec = Field(
        0.0, description="Error of the dressed angle from the wheel's axis, in arc-seconds."
    )
    wheel_wear_small_end: NonNegativeLength = Field(
        0.0,
        description="Wear of the flank, square to it, where it grinds the cone's small end, in "
        "`units`.",
    )
    wheel_wear_large_end: NonNegativeLength = Field(
        0.0, description="The same where it grinds the large end."
    )
    diamond_wear: NonNegativeLength = Field(
        0.0,
        description="Length that the diamond loses in the last traverse of the flank, square to "
        "it, in `units`.",
    )
    dressed_toward: Literal["small end", "large end"] = Field(
        "large end",
        description="End of the cone toward whose part of the flank the last traverse ran: it is "
        "dressed less deep there by the diamond's wear.",
    )
    tolerance_arcsec: NonNegativeArcsec | None = Field(
        None, description="Tolerance ± on the included angle, in arc-seconds."
    )
    inspections: Annotated[list[WheelInspection], Field(min_length=1, max_length=12)] | None = (
        Field(
            None,
            description="Ways to inspect the cone. Absent: an optical projector that shows 60″ and "
            "0.01 mm, and an indicator run along the cone on a sine bar that shows 10″ and "
            "0.001 mm (common practice, no source).",
        )
    )


class DressingError(ResultModel):
    """What one error does to the cone."""

    name: Literal[
        "diamond height",
        "diamond nose radius",
        "dresser angle",
        "wheel wear",
        "diamond wear",
        "all together",
    ] = Field(description="Which error.")
    half_angle_error_arcsec: ArcsecOut = Field(
        description="Mean half angle over the length, less the one wanted."
    )
    included_angle_error_arcsec: ArcsecOut = Field(description="Twice as much.")
    included_angle_error_arcmin: ArcminOut = Field(description="The same in minutes of arc.")
    end_to_end_um: MicrometreOut = Field(
        description="What the angle error comes to over the slant, square to the surface."
    )
    departure: LengthOut = Field(
        description="Greatest departure of the surface from straight: the least distance of two "
        "parallel lines that hold it."
    )
    departure_um: MicrometreOut = Field(description="The same in micrometres.")
    diameter_change: LengthOut = Field(
        description="Change of the diameter at the small end, with the wheel set by touching its "
        "periphery."
    )
    seen_by: list[str] = Field(description="Inspections of the cone that would show it.")
    seen_by_stack: bool = Field(
        description="True where checking the dresser's stack for a wrong block can show it."
    )


class DressedStation(ResultModel):
    """The cone at one station."""

    work_diameter: LengthOut = Field(description="Diameter of the cone.")
    wheel_radius: LengthOut = Field(description="Radius of the wheel that grinds it.")
    half_angle: Angle = Field(description="Half angle there, from the diamond's height alone.")
    error_arcsec: ArcsecOut = Field(description="It, less the one wanted.")


class WornWheelErrors(ResultModel):
    """The diamond's height on the worn wheel."""

    wheel_diameter: LengthOut = Field(description="Worn diameter.")
    half_angle_error_arcsec: ArcsecOut = Field(description="Mean half angle error.")
    departure: LengthOut = Field(description="Greatest departure from straight.")
    departure_um: MicrometreOut = Field(description="The same in micrometres.")


class DressingErrorsResult(ResultModel):
    """What the errors of dressing do to the ground cone."""

    half_angle: Angle = Field(description="Half angle wanted.")
    slant: LengthOut = Field(description="Length of the surface along its slope.")
    errors: list[DressingError] = Field(description="One by one, and all together.")
    stations: list[DressedStation] = Field(
        description="Angle at each radius, from the small end to the large one."
    )
    worn: WornWheelErrors | None = Field(description="Absent without `worn_diameter`.")
    within_tolerance: bool | None = Field(
        description="Whether all together stay within the tolerance; absent without one."
    )
    unseen: list[str] = Field(description="Errors present that no inspection named would show.")


Way = Literal["flat wheel on a sine plate", "dressed wheel", "wheel side"]
Feed = Literal["traversed", "plunge"]


class SetupErrorsRequest(WheelConeFields):
    """A cone, the way it is ground, and what was out in the set-up."""

    way: Way = Field(
        description="`flat wheel on a sine plate`: the wheel's periphery, work tilted until its "
        "generator is level; also a swivelled workhead under a flat wheel. `dressed wheel`: a "
        "flank of the half angle, axes parallel. `wheel side`: the wheel's side, work swivelled.",
        examples=["flat wheel on a sine plate"],
    )
    feed: Feed = Field(
        description="`traversed`: the table carries the work past the wheel, square to the plane "
        "in which the angle is set, so that the wheel sweeps a plane. `plunge`: it stands still.",
        examples=["plunge"],
    )
    contact_radius: Length | None = Field(
        None,
        description="Wheel side only: radius of the wheel at which the small end is ground, in "
        "`units`. Absent: the wheel's own radius.",
    )
    rated_for_side: bool | None = Field(
        None,
        strict=True,
        description="Wheel side only: whether the wheel is stated to be rated for grinding with "
        "its side. Absent where it is not known, which is not a permission.",
    )
    axis_offset: SignedLength = Field(
        0.0,
        description="Distance of the work's axis, at the small end, from the plane through the "
        "wheel's axis in which the angle is set (high or low, or to the side), in `units`.",
        examples=[0.1],
    )
    tilt_error_arcsec: SignedArcsec = Field(
        0.0,
        description="Error of the set angle in the plane in which it is set, in arc-seconds: "
        "pitch of the fixture on a sine plate, swivel of a workhead.",
    )
    yaw_arcsec: SignedArcsec = Field(
        0.0,
        description="Turn of the work's axis out of that plane, in arc-seconds: yaw of the fixture "
        "on the plate.",
    )


class SetupError(ResultModel):
    """What one set-up error does to the cone."""

    name: Literal["axis offset", "tilt", "yaw", "all together"] = Field(description="Which error.")
    half_angle_error_arcsec: ArcsecOut = Field(
        description="Half angle of the straight line fitted to the surface (least squares), less "
        "the one wanted."
    )
    included_angle_error_arcsec: ArcsecOut = Field(description="Twice as much.")
    included_angle_error_arcmin: ArcminOut = Field(description="The same in minutes of arc.")
    form_error: LengthOut = Field(
        description="Peak to valley of the surface about that line, square to it."
    )
    form_error_um: MicrometreOut = Field(description="The same in micrometres.")
    diameter_change: LengthOut = Field(
        description="Change of the diameter at the small end for the same infeed."
    )


class SetupStation(ResultModel):
    """The cone as ground at one station, all errors together."""

    along_axis: LengthOut = Field(description="Distance from the small end along the work's axis.")
    diameter: LengthOut = Field(description="Diameter ground.")
    wanted_diameter: LengthOut = Field(description="Diameter of the wanted cone.")


class SetupErrorsResult(ResultModel):
    """What the errors of the set-up do to the ground cone."""

    half_angle: Angle = Field(description="Half angle wanted.")
    as_ground: Angle = Field(description="Half angle ground, all errors together.")
    errors: list[SetupError] = Field(description="One by one, and all together.")
    stations: list[SetupStation] = Field(description="The surface, small end to large end.")
    shape: Literal["cone", "hyperboloid"] = Field(
        description="What the surface is: a true cone, or bent by more than 0.1 nm."
    )
