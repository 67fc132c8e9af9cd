"""Ways by the wheel to grind a cone, as a shop describes each, and what is said of it for one.

Every error is ±, and acts in the plane that holds the work's axis and the wanted generator, one to
one on the half angle, unless its description says otherwise. An error that is absent is not stated;
0 states that there is none.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, NamedTuple

from pydantic import Field

from halfangle_service.errors import refused_at
from halfangle_service.fields import (
    FINITE,
    AngleInput,
    Length,
    Minutes,
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    Seconds,
    Unit,
    Units,
)
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.wheel.dresser import Dresser, ScaleDresser
from halfangle_service.fields.wheel.grinder import Grinder, WayName, why_no_cone
from halfangle_service.fields.wheel.passes import unusual_passes
from halfangle_service.trade.planning import times
from halfangle_service.trade.sine.angle_error import LARGEST_YAW_ARCSEC
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wheel.dresser import dresser_angle
from halfangle_service.trade.wheel.dressing_errors import DressedCone
from halfangle_service.trade.wheel.flank import dressing_passes, flank_for_rise
from halfangle_service.trade.wheel.ways import (
    Stated,
    budget_of,
    by_angle,
    by_axis_offset,
    by_diamond_height,
    by_scale,
    by_sine_base,
    by_wear,
    by_yaw,
)
from halfangle_service.trade.wording import figure, plain

Breakdown = Annotated[
    NonNegativeLength | None,
    Field(
        description="Breakdown of the wheel over the length of the surface, square to it, in "
        "`units`; 0 where the traverse evens it out."
    ),
]
AxisYaw = Annotated[
    Annotated[float, FINITE, Field(ge=0, le=LARGEST_YAW_ARCSEC), Unit("arcsecond")] | None,
    Field(
        description="Largest error ± of the work's axis out of the plane in which the angle is "
        "set, in arc-seconds; acts by its square. Under a wheel above the work: the axis turned on "
        "the plate, or about the vertical; beside a wheel or its side: one end of it high."
    ),
]
LargestAngle = Annotated[float, AngleInput(gt=0, lt=90)] | None
#: Times of a way on a sine plate; each request has its default.
PlateSetupMinutes = Annotated[
    Minutes,
    Field(description="Time to set up, in minutes (default: common practice, no source)."),
]
PlateInspectionMinutes = Annotated[
    Minutes, Field(description="Time to inspect the first piece, in minutes (same standing).")
]


class ChooseDressedWheel(RequestModel):
    """A flank dressed on the wheel, axes parallel."""

    wheel_width: Length = Field(description="Width of the wheel, in `units`.", examples=[0.5])
    dresser: Dresser
    stack_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the stack under the dresser's sine base, in `units`."
    )
    diamond_height_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error ± of the diamond's height from the wheel's axis, in `units`; "
        "acts by its square.",
        examples=[0.02],
    )
    flank_wear: NonNegativeLength | None = Field(
        None,
        description="Wear of the flank at one end between dressings, square to it, in `units`.",
        examples=[0.0001],
    )
    axis_pitch_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the work's axis from parallel to the wheel's, in "
        "arc-seconds, in the plane of both axes.",
    )
    axis_yaw_error_limit_arcsec: AxisYaw = None
    depth_per_pass: Length = Field(
        description="Depth dressed away by one pass, radially, in `units`.", examples=[0.0005]
    )
    pass_seconds_with_return: Seconds = Field(
        times.DRESSING_PASS_SECONDS,
        description="Time of one pass with its return, in seconds (same standing).",
    )
    setup_minutes: Minutes = Field(
        times.FLANK.setup,
        description="Time to set up, dressing apart, in minutes (same standing).",
    )
    inspection_minutes: Minutes = Field(
        times.FLANK.inspection,
        description="Time of the optical check, in minutes (same standing).",
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
    swivel_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the set swivel angle, in arc-seconds, in the plane in "
        "which the work swivels.",
        examples=[60.0],
    )
    side_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the side from square to the wheel's axis, in arc-seconds, "
        "in the plane in which the work swivels.",
    )
    axis_yaw_error_limit_arcsec: AxisYaw = None
    side_wear: NonNegativeLength | None = Field(
        None, description="Wear of the side over the surface, square to it, in `units`."
    )
    setup_minutes: Minutes = Field(
        times.SIDE.setup, description="Time to set up, in minutes (same standing)."
    )
    inspection_minutes: Minutes = Field(
        times.SIDE.inspection, description="Time to measure the angle, in minutes (same standing)."
    )


class ChooseWorkhead(RequestModel):
    """A workhead swivelled about the vertical by its scale, a flat wheel beside it."""

    grinder: Grinder = Field(examples=["cylindrical"])
    graduation: Annotated[float, AngleInput(gt=0, le=5)] = Field(
        description="Smallest step that its scale or vernier shows, in degrees; it is set to half "
        "of it.",
        examples=["0 05"],
    )
    axis_offset_error_limit: NonNegativeLength | None = Field(
        None,
        description="Largest error ± of the work axis from the wheel axis' height, in `units`; "
        "acts by its square.",
    )
    axis_yaw_error_limit_arcsec: AxisYaw = None
    wheel_breakdown: Breakdown = None
    largest_angle: LargestAngle = Field(
        None, description="Largest angle to which it swivels, in degrees."
    )
    setup_minutes: Minutes = Field(
        times.HEAD.setup, description="Time to set up, in minutes (same standing)."
    )
    inspection_minutes: Minutes = Field(
        times.HEAD.inspection, description="Time to measure the angle, in minutes (same standing)."
    )


class Reason(NamedTuple):
    """Why a way is ruled out: the field of its own that says so, in words, and what would do it."""

    field: str
    words: str
    instead: str | None = None


@dataclass(frozen=True, slots=True)
class Way:
    """A way for one cone: the budget of its included angle, times, checks, reasons against it.

    `cautions` are those of carrying it out.
    """

    name: WayName
    setup_minutes: float
    inspection_minutes: float
    inspect: tuple[str, ...]
    budget: Budget
    reasons: tuple[Reason, ...] = ()
    cautions: tuple[Advisory, ...] = ()


def past_reach(largest: float | None, cone: DressedCone, words: str) -> Iterator[Reason]:
    """The reason where a half angle is past the largest that is reached, in degrees."""
    degrees = math.degrees(cone.angle_rad)
    if largest is not None and degrees > largest * (1.0 + 1e-12):
        said = f"{words} {plain(largest)}°, the half angle is {plain(degrees)}°."
        yield Reason("largest_angle", said)


def dressed_wheel_way(
    wheel: ChooseDressedWheel,
    cone: DressedCone,
    units: Units,
    path: str,
) -> Way:
    """A flank dressed for a cone on a wheel, whose place in the request is `path`.

    Raises Impossible where the flank uses the wheel up.
    """
    flank = flank_for_rise(cone.angle_rad, cone.rise, 0.0)
    with refused_at("", diamond_height=f"{path}diamond_height_error_limit"):
        cone.require_room(wheel.diamond_height_error_limit or 0.0)
    passes = dressing_passes(flank.depth, wheel.depth_per_pass)
    fits = flank.width <= wheel.wheel_width
    width, wheel_width = figure(flank.width, units), figure(wheel.wheel_width, units)
    too_wide = Reason(
        "wheel_width",
        f"The flank is {width} wide, the wheel {wheel_width}.",
        f"A wheel at least {width} wide takes the flank.",
    )
    return Way(
        "dressed-wheel",
        wheel.setup_minutes + passes * wheel.pass_seconds_with_return / 60.0,
        wheel.inspection_minutes,
        (
            "The ground angle itself, optically or over rolls: the stack does not prove the wheel.",
            "The surface for straightness, for diamond height and wear bend it.",
        ),
        budget_of(
            _dresser_setting(wheel, cone, units, path),
            by_diamond_height("diamond_height_error_limit", cone, wheel.diamond_height_error_limit),
            by_wear("flank_wear", cone.slant, wheel.flank_wear),
            by_angle("axis_pitch_error_limit_arcsec", wheel.axis_pitch_error_limit_arcsec),
            by_yaw(
                "axis_yaw_error_limit_arcsec",
                cone,
                wheel.axis_yaw_error_limit_arcsec,
                flank_rad=cone.angle_rad,
            ),
        ),
        () if fits else (too_wide,),
        tuple(unusual_passes(wheel.depth_per_pass, passes, flank.depth, units)),
    )


def _dresser_setting(
    wheel: ChooseDressedWheel, cone: DressedCone, units: Units, path: str
) -> Stated:
    """The error of the dresser's setting, by its scale or its stack."""
    if isinstance(wheel.dresser, ScaleDresser):
        sent = sent_of(wheel, "stack_error_limit")
        wheel.dresser.refuse_blocks(f"{path}{name}" for name in sent)
        return by_scale("graduation", wheel.dresser.graduation)
    angle = dresser_angle(cone.angle_rad, from_side=wheel.dresser.zero == "wheel-side")
    centers = wheel.dresser.center_distance
    require_center_distance(centers, units, f"{path}dresser/center_distance")
    return by_sine_base("stack_error_limit", centers, angle, wheel.stack_error_limit)


def wheel_side_way(side: ChooseWheelSide, cone: DressedCone, units: Units) -> Way:
    """The wheel's side for a cone."""
    return Way(
        "wheel-side",
        side.setup_minutes,
        side.inspection_minutes,
        (
            "The wheel's rating for grinding with its side, before anything else.",
            "The ground angle itself, optically or over rolls.",
        ),
        budget_of(
            by_angle("swivel_error_limit_arcsec", side.swivel_error_limit_arcsec),
            by_angle("side_error_limit_arcsec", side.side_error_limit_arcsec),
            by_yaw("axis_yaw_error_limit_arcsec", cone, side.axis_yaw_error_limit_arcsec),
            by_wear("side_wear", cone.slant, side.side_wear),
        ),
        tuple(_against_the_side(side, cone, units)),
    )


def _against_the_side(side: ChooseWheelSide, cone: DressedCone, units: Units) -> Iterator[Reason]:
    if not side.rated_for_side:
        what = "not known" if side.rated_for_side is None else "stated not"
        yield Reason(
            "rated_for_side",
            f"The wheel is {what} to be rated for grinding with its side.",
            "Only a wheel that is stated to be is used so.",
        )
    if cone.slant > side.usable_width:
        slant = figure(cone.slant, units)
        yield Reason(
            "usable_width",
            f"The surface is {slant} long, the side is usable over "
            f"{figure(side.usable_width, units)}.",
            f"A side usable over {slant} takes it.",
        )


def workhead_way(head: ChooseWorkhead, cone: DressedCone, path: str) -> Way:
    """A swivelled workhead for a cone; `path` is its own in the request."""
    with refused_at("", axis_offset=f"{path}axis_offset_error_limit"):
        from_offset = by_axis_offset("axis_offset_error_limit", cone, head.axis_offset_error_limit)
    return Way(
        "swivelled-workhead",
        head.setup_minutes,
        head.inspection_minutes,
        (
            "The ground angle itself, over rolls or on a sine bar: a scale proves nothing.",
            "The work axis at the wheel axis' height.",
        ),
        budget_of(
            by_scale("graduation", head.graduation),
            from_offset,
            by_yaw(
                "axis_yaw_error_limit_arcsec", cone, head.axis_yaw_error_limit_arcsec, flank_rad=0.0
            ),
            by_wear("wheel_breakdown", cone.slant, head.wheel_breakdown),
        ),
        tuple(_against_the_workhead(head, cone)),
    )


def _against_the_workhead(head: ChooseWorkhead, cone: DressedCone) -> Iterator[Reason]:
    no_cone = why_no_cone(head.grinder, "swivelled-workhead")
    if no_cone is not None:
        yield Reason("grinder", no_cone)
    yield from past_reach(head.largest_angle, cone, "The workhead swivels to")
