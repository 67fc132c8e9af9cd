"""The flank to dress on the wheel, for a cone or a face."""

import math
from collections.abc import Iterator, Sequence
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import DRESSED_ANGLE_UNPROVED, DRESSING_SAFETY
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    Angle,
    AngleInput,
    Count,
    CountOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Unit,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import SOURCES, BlockSupplyFields
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.slopes import ConeFields, cone_slope, face_surface
from halfangle_service.fields.supply import Supply, read_supply
from halfangle_service.fields.wheel.dresser import (
    Dresser,
    DresserSetting,
    ScaleDresser,
    setting_of,
)
from halfangle_service.fields.wheel.passes import unusual_passes
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.better_zero import better_zero
from halfangle_service.topics.wheels.profile import (
    ProfileBlend,
    ProfilePoint,
    blend_of,
    point_of,
    profile_csv,
)
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade import elementary
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.unit_slips import require_wheel_diameter
from halfangle_service.trade.wheel.flank import (
    Side,
    SpareWidth,
    Surface,
    dressing_passes,
    require_depth,
    sides_of,
)
from halfangle_service.trade.wheel.profile import Profile, blend_corners, dressed_corners
from halfangle_service.trade.wheel.profile_drawing import Against, profile_svg
from halfangle_service.trade.wheel.speed import FLANGE_SHARE
from halfangle_service.trade.wording import arcsec, figure

#: Past this a flank is better fed along the wheel's axis: a radial pass takes little of it.
STEEP_DEGREES = 60.0
#: A stack that misses by more than this is worth a word.
STACK_ERROR_ARCSEC = 10.0


class ConeWork(ConeFields):
    """A cone whose axis is parallel to the wheel's."""

    kind: Literal["cone"]


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


class WheelFlankRequest(BlockSupplyFields):
    """A cone or a face, and the wheel and dresser to grind it with.

    The blocks are those for the dresser's sine base; without any, no stack is built.
    """

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
    flange_diameter: Length | None = Field(
        None,
        description="Diameter of the flanges, in `units`; the flank must not reach them. Absent: "
        "not stated, and the depth is held against the wheel's axis alone.",
    )
    edge_flat: NonNegativeLength = Field(
        0.0, description="Width of periphery to be left beside or between the flanks, in `units`."
    )
    spare_width: SpareWidth = Field(
        "stays-flat",
        description="What becomes of the wheel's width beyond flanks and `edge_flat`: it stays as "
        "periphery; the flanks run on to the wheel's sides, deeper; or a straight land is dressed "
        "below the flanks. Two flanks share it equally.",
    )
    edge_radius: NonNegativeLength = Field(
        0.0,
        description="Radius that blends flank and periphery (or two flanks), in `units`; needs an "
        "edge: some periphery, or a second flank.",
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
    dresser: Dresser
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        6, description="Most blocks, in both stacks together where two are needed."
    )
    depth_per_pass: Length = Field(
        description="Depth dressed away by one pass, radially, in `units`.", examples=[0.0005]
    )


class DressedFlank(ResultModel):
    """One flank, and how to dress it."""

    side: Literal["work", "other-side"] = Field(description="Which surface it grinds.")
    angle_from_axis: Angle = Field(description="Angle between flank and wheel axis.")
    angle_from_side: Angle = Field(description="Angle between flank and the wheel's side.")
    dresser_setting: DresserSetting = Field(description="The dresser's setting.")
    width: LengthOut = Field(description="Width of the flank along the wheel's axis.")
    slant_length: LengthOut = Field(
        description="Length of the flank along its slope, radii not taken off."
    )
    straight_slant_length: LengthOut = Field(description="Straight part of it between the radii.")
    depth_to_dress: LengthOut = Field(description="Radial depth to dress away at its lower end.")
    passes: CountOut = Field(description="Passes of `depth_per_pass`, radially.")
    last_pass_depth: LengthOut = Field(description="Depth that is left to the last pass.")
    infeed_normal: LengthOut = Field(
        description="`depth_per_pass` measured square to the flank: what the diamond takes."
    )
    infeed_axial: LengthOut = Field(
        description="The same pass fed along the wheel's axis: for a steep flank the better way."
    )


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
        description="Volume of wheel dressed away, in cubic `units`; null without the diameter."
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


@operation(
    "wheels.flank",
    relations=(
        "flank angle from the wheel's axis = half angle of the cone, or face angle",
        "slant = rise / sin(angle) + 2 × overrun",
        "width = slant × cos(angle), depth = slant × sin(angle)",
        "dresser height = center distance × sin(dresser angle)",
        "tangent length of a blend = radius / tan(half of the corner's angle)",
        "volume = π ∫ (R² − r²) dx over the wheel's width",
    ),
    sources=(
        Source(
            citation="Derived here: with parallel axes the flank lies along the ground surface; a "
            "radius touches both sides of a corner at r / tan(half the corner's angle).",
            standing="derived",
        ),
        Source(
            citation="A dressed angle is checked optically, since neither the blocks nor the "
            "dresser show how the wheel came out.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "units": "in",
        "work": {
            "kind": "cone",
            "included_angle": 60,
            "large_diameter": 0.75,
            "small_diameter": 0.05,
        },
        "wheel_width": 0.75,
        "wheel_diameter": 7,
        "overrun": 0.02,
        "dresser": {"kind": "sine-base", "center_distance": 2},
        "set": "inch-81",
        "depth_per_pass": 0.0005,
    },
    largest_request="two flanks, and blocks as blocks.stack takes them",
    heavy=True,
)
def flank(request: WheelFlankRequest) -> Outcome[WheelFlankResult]:
    """Angle to dress on the wheel.

    The flank to dress on one or both sides of the wheel for a cone or an angled face: angle,
    dresser's setting with its block stack or scale reading, widths, blended radii with their
    tangent points, passes, volume, and the profile as coordinates and as a drawing.
    """
    sides, flat = sides_of(
        _surfaces(request),
        request.wheel_width,
        request.edge_flat,
        request.overrun,
        request.spare_width,
    )
    _require_corners(request, sides, flat)
    profile = blend_corners(
        dressed_corners(
            [side.dressed for side in sides],
            [side.land for side in sides],
            flat,
            request.edge_radius,
            request.root_radius,
        )
    )
    depth = max(side.dressed.depth for side in sides)
    volume = None
    if request.wheel_diameter is not None:
        require_wheel_diameter(request.wheel_diameter, request.units, "wheel_diameter")
        require_depth(depth, request.wheel_diameter, request.flange_diameter or 0.0)
        volume = profile.volume_removed(request.wheel_diameter / 2.0)
    supply = _supply(request)
    flanks = list(_flanks(request, sides, profile, supply))
    result = WheelFlankResult(
        flanks=flanks,
        wheel_width_needed=sum(side.needed.width for side in sides) + request.edge_flat,
        flat_left=flat,
        depth_to_dress=depth,
        passes=sum(f.passes for f in flanks),
        volume_to_dress=volume,
        blends=[blend_of(blend) for blend in profile.blends if blend is not None],
        profile=[point_of(at) for at in profile.points()],
        profile_csv=profile_csv(profile, request.units),
        svg=profile_svg(profile, list(_against(request, sides)), request.units),
    )
    found = () if supply is None else supply.advisories
    return Outcome(result, (*found, *_advisories(request, sides, result)))


def _against(request: WheelFlankRequest, sides: Sequence[Side]) -> Iterator[Against]:
    """The work on each flank, as it is drawn."""
    for work, side in zip((request.work, request.other_side), sides, strict=False):
        radius = work.large_diameter / 2.0 if isinstance(work, ConeWork) else None
        surface = side.surface
        yield Against(surface.angle_rad, surface.rise, request.overrun, radius)


def _surfaces(request: WheelFlankRequest) -> list[Surface]:
    """The surface, or both, in the order of the wheel's sides."""
    works = {"work": request.work, "other_side": request.other_side}
    return [_surface(work, f"{field}/") for field, work in works.items() if work is not None]


def _surface(work: ConeWork | FaceWork, path: str) -> Surface:
    if isinstance(work, ConeWork):
        angle = cone_slope(work, path=path).half_angle_rad
        return Surface(angle, (work.large_diameter - work.small_diameter) / 2.0)
    return face_surface(work.face_angle, work.rise, path=path)


def _require_corners(request: WheelFlankRequest, sides: Sequence[Side], flat: float) -> None:
    """Refuse a radius for a corner that there is not: the flank runs out at the wheel's side."""
    if request.edge_radius > 0.0 and len(sides) == 1 and flat == 0.0:
        raise Impossible(
            "There is no edge to blend: no periphery is left beside the flank.",
            fields={"edge_radius": "should be 0, or some edge_flat be left"},
        )
    if request.root_radius > 0.0 and not any(side.land for side in sides):
        raise Impossible(
            "There is no root to blend: the flank runs out at the wheel's side. A root needs a "
            "land below the flank, and so some width to spare.",
            fields={"root_radius": "should be 0, or spare_width land-below-flank"},
        )


def _supply(request: WheelFlankRequest) -> Supply | None:
    """The blocks for the dresser's sine base, None where the request names none."""
    named = sent_of(request, *SOURCES, "missing", "in_use")
    if not named:
        return None
    if isinstance(request.dresser, ScaleDresser):
        request.dresser.refuse_blocks(named)
    return read_supply(request)


def _flanks(
    request: WheelFlankRequest, sides: Sequence[Side], profile: Profile, supply: Supply | None
) -> Iterator[DressedFlank]:
    sizes = None if supply is None else supply.box.sizes
    for place, (side, straight) in enumerate(zip(sides, profile.flanks(), strict=True)):
        angle, depth = side.surface.angle_rad, side.dressed.depth
        passes = dressing_passes(depth, request.depth_per_pass)
        yield DressedFlank(
            side="other-side" if place else "work",
            angle_from_axis=angle_from_radians(angle),
            angle_from_side=Angle.of(tidy(90.0 - elementary.degrees(angle), 90.0)),
            dresser_setting=setting_of(
                request.dresser, angle, request.units, sizes, request.max_blocks
            ),
            width=side.dressed.width,
            slant_length=side.dressed.slant,
            straight_slant_length=math.dist(*straight),
            depth_to_dress=depth,
            passes=passes,
            last_pass_depth=tidy(depth - (passes - 1) * request.depth_per_pass, depth),
            infeed_normal=request.depth_per_pass * elementary.cos(angle),
            infeed_axial=request.depth_per_pass / elementary.tan(angle),
        )


def _advisories(
    request: WheelFlankRequest, sides: Sequence[Side], result: WheelFlankResult
) -> Iterator[Advisory]:
    yield DRESSED_ANGLE_UNPROVED
    yield from _flange_unknown(request, result.depth_to_dress)
    yield from unusual_passes(
        request.depth_per_pass, result.passes, result.depth_to_dress, request.units
    )
    yield from unusual_sizes(request, request.units)
    for side, dressed in zip(sides, result.flanks, strict=True):
        straight, surface = dressed.straight_slant_length, side.surface.slant
        if straight < surface * (1.0 - 1e-12):
            yield caution(
                "radius-on-the-surface",
                f"The straight part of the flank is {figure(straight, request.units)} long and "
                f"the surface {figure(surface, request.units)}: the blending radius will be "
                "ground on the work. More overrun keeps it off, if it is not wanted there.",
            )
        if elementary.degrees(side.surface.angle_rad) > STEEP_DEGREES:
            yield note(
                "steep-flank",
                f"A radial pass takes only {figure(dressed.infeed_normal, request.units)} square "
                "to this flank; "
                f"feeding {figure(dressed.infeed_axial, request.units)} along the wheel's axis is "
                "the same "
                "pass.",
            )
        yield from better_zero(request.dresser, dressed.dresser_setting)
        stack = dressed.dresser_setting.stack
        if stack is not None and abs(stack.deviation_arcsec) > STACK_ERROR_ARCSEC:
            yield caution(
                "stack-off-the-angle",
                f"These blocks miss the dresser's angle by {arcsec(stack.deviation_arcsec)}.",
            )
    yield DRESSING_SAFETY


def _flange_unknown(request: WheelFlankRequest, depth: float) -> Iterator[Advisory]:
    """Warn of a depth at which flanges may be met that were not stated."""
    diameter = request.wheel_diameter
    if diameter is None or request.flange_diameter is not None:
        return
    if depth > diameter * (1.0 - FLANGE_SHARE) / 2.0:
        yield caution(
            "flange-not-stated",
            f"The flank goes {figure(depth, request.units)} below the periphery of a wheel of "
            f"{figure(diameter, request.units)}, "
            "where flanges of a third of its diameter would already be met: send flange_diameter.",
        )
