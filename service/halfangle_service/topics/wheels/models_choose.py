"""Request and result of choosing a way to grind a cone."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    FINITE,
    Angle,
    AngleInput,
    Arcsec,
    ArcsecOut,
    Count,
    CountOut,
    Length,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Unit,
)
from halfangle_service.topics.wheels.models_errors import WheelConeFields
from halfangle_service.topics.wheels.models_flank import Dresser
from halfangle_service.trade.wheel.ways import WayVerdict

Minutes = Annotated[float, FINITE, Field(ge=0, le=10_000), Unit("minute")]
Seconds = Annotated[float, FINITE, Field(ge=0, le=10_000), Unit("second")]
MinutesOut = Annotated[float, Unit("minute")]

WayName = Literal["sine plate", "dressed wheel", "wheel side", "swivelled workhead"]


class ChooseSinePlate(RequestModel):
    """The sine plate with a flat wheel, table traversed."""

    center_distance: Length = Field(
        description="Distance between the centers of the rolls, in `units`.", examples=[5.0]
    )
    stack_tolerance: NonNegativeLength = Field(
        description="Error ± of the stack as wrung, in `units`.", examples=[0.00002]
    )
    plate_error_arcsec: NonNegativeArcsec = Field(
        0.0, description="Error ± of the plate itself at this angle, in arc-seconds."
    )
    fixture_pitch_arcsec: NonNegativeArcsec = Field(
        description="Error ± of the fixture's axis from parallel to the plate, in arc-seconds.",
        examples=[5.0],
    )
    wheel_breakdown: NonNegativeLength = Field(
        0.0,
        description="Breakdown of the wheel over the length of the surface, in `units`; 0 where "
        "the traverse evens it out.",
    )
    largest_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Largest angle that the plate reaches, in degrees."
    )
    setup_minutes: Minutes = Field(
        30.0, description="Time to set up, in minutes (default: common practice, no source)."
    )
    inspection_minutes: Minutes = Field(
        5.0, description="Time to inspect the first piece, in minutes (same standing)."
    )


class ChooseDressedWheel(RequestModel):
    """A flank dressed on the wheel, axes parallel."""

    wheel_width: Length = Field(description="Width of the wheel, in `units`.", examples=[0.5])
    dresser: Dresser = Field(description="How the dresser is set.")
    stack_tolerance: NonNegativeLength = Field(
        0.0, description="Error ± of the stack under a sine base, in `units`."
    )
    diamond_height: NonNegativeLength = Field(
        description="Error ± of the diamond's height from the wheel's axis, in `units`.",
        examples=[0.02],
    )
    flank_wear: NonNegativeLength = Field(
        description="Wear of the flank at one end between dressings, square to it, in `units`.",
        examples=[0.0001],
    )
    axis_parallelism_arcsec: NonNegativeArcsec = Field(
        0.0, description="Error ± of work axis from parallel to the wheel's, in arc-seconds."
    )
    depth_per_pass: Length = Field(
        description="Depth dressed away by one pass, radially, in `units`.", examples=[0.0005]
    )
    seconds_per_pass: Seconds = Field(
        10.0, description="Time of one pass with its return, in seconds (same standing)."
    )
    setup_minutes: Minutes = Field(
        40.0, description="Time to set up, dressing apart, in minutes (same standing)."
    )
    inspection_minutes: Minutes = Field(
        20.0, description="Time of the optical check, in minutes (same standing)."
    )


class ChooseWheelSide(RequestModel):
    """The wheel's side, work swivelled to it."""

    rated_for_side: bool | None = Field(
        None,
        strict=True,
        description="Whether the wheel is stated to be rated for grinding with its side. Absent "
        "where it is not known: then this way is ruled out.",
    )
    usable_width: Length = Field(
        description="Radial width of the side that may grind, in `units`.", examples=[1.0]
    )
    swivel_error_arcsec: NonNegativeArcsec = Field(
        description="Error ± of the set swivel angle, in arc-seconds.", examples=[60.0]
    )
    side_error_arcsec: NonNegativeArcsec = Field(
        0.0, description="Error ± of the side from square to the wheel's axis, in arc-seconds."
    )
    side_wear: NonNegativeLength = Field(
        0.0, description="Wear of the side over the surface, square to it, in `units`."
    )
    setup_minutes: Minutes = Field(20.0, description="Time to set up, in minutes (same standing).")
    inspection_minutes: Minutes = Field(
        20.0, description="Time to measure the angle, in minutes (same standing)."
    )


class ChooseWorkhead(RequestModel):
    """A workhead swivelled by its scale under a flat wheel."""

    graduation: Annotated[float, AngleInput(gt=0, le=5)] = Field(
        description="Smallest step that its scale or vernier shows, in degrees.",
        examples=["0 05"],
    )
    axis_offset: NonNegativeLength = Field(
        0.0, description="Error ± of the work axis from the wheel axis' height, in `units`."
    )
    wheel_breakdown: NonNegativeLength = Field(
        0.0, description="Breakdown of the wheel over the length of the surface, in `units`."
    )
    largest_angle: Annotated[float, AngleInput(gt=0, lt=90)] | None = Field(
        None, description="Largest angle to which it swivels, in degrees."
    )
    setup_minutes: Minutes = Field(15.0, description="Time to set up, in minutes (same standing).")
    inspection_minutes: Minutes = Field(
        20.0, description="Time to measure the angle, in minutes (same standing)."
    )


class ChooseWays(RequestModel):
    """The ways to consider, each as far as the shop has it."""

    sine_plate: ChooseSinePlate | None = Field(None, description="Absent where there is none.")
    dressed_wheel: ChooseDressedWheel | None = Field(
        None, description="Absent where there is no dresser."
    )
    wheel_side: ChooseWheelSide | None = Field(
        None, description="Absent where the side is not to grind."
    )
    swivelled_workhead: ChooseWorkhead | None = Field(
        None, description="Absent where there is none."
    )


class WheelChooseRequest(WheelConeFields):
    """One cone with its tolerance, and the ways that the shop has."""

    tolerance_arcsec: Arcsec = Field(
        description="Tolerance ± on the included angle, in arc-seconds.", examples=[60.0]
    )
    pieces: Annotated[int, Count(ge=1, le=1_000_000)] = Field(1, description="Pieces to grind.")
    minutes_per_piece: Minutes = Field(
        10.0, description="Time to grind one piece, in minutes (common practice, no source)."
    )
    ways: ChooseWays = Field(description="The ways that the shop has; at least one.")


class WayContribution(ResultModel):
    """One error of a way."""

    name: str = Field(description="Which error.")
    limit_arcsec: ArcsecOut = Field(description="Its limit ± on the included angle.")


class GrindingWay(ResultModel):
    """One way: what it reaches, what it takes, and why it is ruled out."""

    way: WayName = Field(description="Which way.")
    verdict: WayVerdict = Field(
        description="`fits`: even the worst case keeps the tolerance; `doubtful`: the error to "
        "expect does, the worst case does not; `ruled out`."
    )
    expected_arcsec: ArcsecOut = Field(
        description="Error ± to expect on the included angle: root of the sum of squares."
    )
    worst_arcsec: ArcsecOut = Field(description="All errors at their limits at once.")
    contributions: list[WayContribution] = Field(description="The errors, largest first.")
    first_piece_minutes: MinutesOut = Field(
        description="Time to the first good piece: set-up, dressing, grinding, inspection."
    )
    total_minutes: MinutesOut = Field(description="Time for all pieces.")
    inspect: list[str] = Field(description="What to inspect, in order.")
    ruled_out_by: list[str] = Field(description="Why it is ruled out; empty where it is not.")


class WheelChooseResult(ResultModel):
    """The ways side by side."""

    half_angle: Angle = Field(description="Half angle of the cone.")
    best: WayName | None = Field(
        description="Of the ways that fit, else of the doubtful ones, the quickest; absent where "
        "all are ruled out."
    )
    ways: list[GrindingWay] = Field(description="The ways described, best first.")
    not_described: list[WayName] = Field(description="Ways that the request does not describe.")
    considered: CountOut = Field(description="How many were considered.")
