"""The dressed flank: models to maths and back."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.cautions import DRESSED_ANGLE_UNPROVED, DRESSING_SAFETY
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Units,
    angle_from_radians,
    bench_step,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.cones import half_angle_degrees
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.wheels.models_flank import (
    ConeWork,
    DressedFlank,
    DresserSetting,
    DresserStack,
    FaceWork,
    ProfileBlend,
    ProfilePoint,
    ScaleDresser,
    SineBaseDresser,
    WheelFlankRequest,
    WheelFlankResult,
)
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    height_for_angle,
)
from halfangle_service.trade.tables.blocks.sets import find_set
from halfangle_service.trade.wheel.dresser import dresser_angle, round_to_graduation, stacks_for
from halfangle_service.trade.wheel.flank import (
    Flank,
    dressing_passes,
    flank_for_rise,
    require_depth,
    require_fits,
    require_length,
    run_on,
)
from halfangle_service.trade.wheel.profile import (
    Blend,
    Point,
    Profile,
    blend_corners,
    dressed_corners,
)
from halfangle_service.trade.wheel.profile_drawing import profile_svg
from halfangle_service.trade.wording import plain

_DERIVED = Source(
    citation="Derived here: with parallel axes the flank lies along the ground surface; a radius "
    "touches both sides of a corner at r / tan(half the corner's angle).",
    standing="derived",
)
#: Past this a flank is better fed along the wheel's axis: a radial pass takes little of it.
STEEP_DEGREES = 60.0


@dataclass(frozen=True, slots=True)
class _Side:
    """One side of the wheel: its angle, what the surface needs, and what is dressed."""

    name: str
    angle_rad: float
    surface_slant: float
    needed: Flank
    dressed: Flank
    land: float


def flank(request: WheelFlankRequest) -> Outcome[WheelFlankResult]:
    """Flanks to dress on the wheel, the profile, and the dresser's settings."""
    sides, flat = _sides(request)
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
        require_depth(depth, request.wheel_diameter, request.flange_diameter)
        volume = profile.volume_removed(request.wheel_diameter / 2.0)
    flanks = [_dressed(request, side, profile) for side in sides]
    result = WheelFlankResult(
        flanks=flanks,
        wheel_width_needed=sum(side.needed.width for side in sides) + request.edge_flat,
        flat_left=flat,
        depth_to_dress=depth,
        passes=sum(f.passes for f in flanks),
        volume_to_dress=volume,
        blends=[_blend(blend) for blend in profile.blends if blend is not None],
        profile=[_point(at) for at in profile.points()],
        profile_csv=_csv(profile, request.units),
        svg=profile_svg(profile, [side.angle_rad for side in sides], request.units),
    )
    return Outcome(result, tuple(_advisories(sides, result)))


def surface_of(work: ConeWork | FaceWork, field: str) -> tuple[float, float]:
    """Angle in radians of the surface to the wheel's axis, and its rise in the request's unit."""
    if isinstance(work, FaceWork):
        require_length(work.rise / math.sin(math.radians(work.face_angle)), [f"{field}/face_angle"])
        return math.radians(work.face_angle), work.rise
    if work.small_diameter >= work.large_diameter:
        raise Impossible(
            f"The smaller diameter {plain(work.small_diameter)} is not below the larger one, "
            f"{plain(work.large_diameter)}.",
            fields={f"{field}/small_diameter": "should be less than large_diameter"},
        )
    degrees = half_angle_degrees(work.included_angle, work.half_angle, prefix=f"{field}/")
    name = "half_angle" if work.included_angle is None else "included_angle"
    rise = (work.large_diameter - work.small_diameter) / 2.0
    require_length(rise / math.sin(math.radians(degrees)), [f"{field}/{name}"])
    return math.radians(degrees), rise


def _sides(request: WheelFlankRequest) -> tuple[list[_Side], float]:
    """Both sides as they will be dressed, and the width of periphery that is left."""
    works = [("work", request.work)]
    if request.other_side is not None:
        works.append(("other_side", request.other_side))
    surfaces = [(name, *surface_of(work, name)) for name, work in works]
    needed = [flank_for_rise(angle, rise, request.overrun) for _, angle, rise in surfaces]
    require_fits(needed, request.wheel_width, request.edge_flat)
    # A spare width within rounding of nothing must not become a land of 1e-16.
    spare = request.wheel_width - sum(f.width for f in needed) - request.edge_flat
    spare = spare if spare > 1e-12 * request.wheel_width else 0.0
    _require_root(request, spare)
    share = 0.0 if request.spare_width == "stays flat" else spare / len(needed)
    runs_on, land = (share, 0.0) if request.spare_width == "flank runs on" else (0.0, share)
    sides = [
        _Side(name, angle, rise / math.sin(angle), f, run_on(f, angle, runs_on), land)
        for (name, angle, rise), f in zip(surfaces, needed, strict=True)
    ]
    return sides, request.edge_flat + spare - share * len(needed)


def _require_root(request: WheelFlankRequest, spare: float) -> None:
    """Refuse a root radius where the flank runs out at the wheel's side."""
    if request.root_radius > 0.0 and (request.spare_width != "land below flank" or spare == 0.0):
        raise Impossible(
            "There is no root to blend: the flank runs out at the wheel's side. A root needs a "
            "land below the flank, and so some width to spare.",
            fields={"root_radius": 'should be 0, or spare_width "land below flank"'},
        )


def _dressed(request: WheelFlankRequest, side: _Side, profile: Profile) -> DressedFlank:
    depth, per_pass = side.dressed.depth, request.depth_per_pass
    passes = dressing_passes(depth, per_pass)
    return DressedFlank(
        side="work" if side.name == "work" else "other_side",
        angle_from_axis=angle_from_radians(side.angle_rad),
        angle_from_side=angle_from_radians(math.pi / 2.0 - side.angle_rad),
        setting=_setting(request.dresser, side.angle_rad, request.units),
        width=side.dressed.width,
        slant=side.dressed.slant,
        straight_slant=_straight_slant(profile, first=side.name == "work"),
        depth=depth,
        passes=passes,
        last_pass_depth=depth - (passes - 1) * per_pass,
        infeed_normal=per_pass * math.cos(side.angle_rad),
        infeed_axial=per_pass / math.tan(side.angle_rad),
    )


def _straight_slant(profile: Profile, *, first: bool) -> float:
    """Length of the straight part of the first or the last flank of the profile."""
    slopes = [math.dist(a, b) for a, b in profile.straights() if abs(a[1] - b[1]) > 0.0]
    return slopes[0 if first else -1] if slopes else 0.0


def _setting(
    dresser: SineBaseDresser | ScaleDresser, angle_rad: float, units: Units
) -> DresserSetting:
    wanted = dresser_angle(angle_rad, from_side=dresser.zero == "wheel side")
    if isinstance(dresser, ScaleDresser):
        reading = round_to_graduation(wanted, math.radians(dresser.graduation))
        return DresserSetting(
            dresser_angle=angle_from_radians(wanted),
            height=None,
            arcsec_per_step=None,
            stack=None,
            scale_reading=angle_from_radians(reading),
            rounding_error_arcsec=(reading - wanted) * ARCSEC_PER_RADIAN,
        )
    per_height = arcsec_per_height(dresser.center_distance, wanted)
    return DresserSetting(
        dresser_angle=angle_from_radians(wanted),
        height=height_for_angle(dresser.center_distance, wanted),
        arcsec_per_step=per_height * bench_step(units),
        stack=_stack(dresser, wanted, units),
        scale_reading=None,
        rounding_error_arcsec=None,
    )


def _stack(dresser: SineBaseDresser, wanted_rad: float, units: Units) -> DresserStack | None:
    """Blocks under the dresser's sine base, where the request names any."""
    if dresser.set is not None and dresser.sizes is not None:
        raise Disagreement(
            "`set` and `sizes` were both sent; the blocks come from one of them.",
            fields={"dresser/set": "send either this or sizes"},
        )
    if dresser.set is None and dresser.sizes is None:
        return None
    if dresser.set is not None:
        sizes = find_set(dresser.set, field="dresser/set").sizes
    else:
        sizes = tuple(to_tenth_nm(size, units) for size in dresser.sizes or ())
    height = height_for_angle(dresser.center_distance, wanted_rad) * to_tenth_nm(1.0, units)
    pair = stacks_for(height, sizes, dresser.max_blocks)
    built = from_tenth_nm(pair.difference, units)
    as_set = angle_for_height(dresser.center_distance, built, field="dresser/center_distance")
    return DresserStack(
        high=[from_tenth_nm(size, units) for size in pair.high],
        low=[from_tenth_nm(size, units) for size in pair.low],
        height=built,
        angle_as_set=angle_from_radians(as_set),
        angle_error_arcsec=(as_set - wanted_rad) * ARCSEC_PER_RADIAN,
    )


def _point(at: Point) -> ProfilePoint:
    return ProfilePoint(x=at[0], depth=-at[1] if at[1] else 0.0)


def _blend(blend: Blend) -> ProfileBlend:
    return ProfileBlend(
        corner=blend.name,
        radius=blend.radius,
        center=_point(blend.center),
        first_tangent=_point(blend.before),
        second_tangent=_point(blend.after),
        # The center of a rounded edge lies in the wheel, below the arc.
        convex=blend.center[1] < blend.before[1],
    )


def _csv(profile: Profile, units: Units) -> str:
    rows = [
        f"x_{units},depth_{units}",
        *(f"{plain(x, 9)},{plain(abs(y), 9)}" for x, y in profile.points()),
    ]
    return "\r\n".join(rows) + "\r\n"


def _advisories(sides: Sequence[_Side], result: WheelFlankResult) -> Iterator[Advisory]:
    yield DRESSED_ANGLE_UNPROVED
    for side, dressed in zip(sides, result.flanks, strict=True):
        if dressed.straight_slant < side.surface_slant * (1.0 - 1e-12):
            yield caution(
                "radius-on-the-surface",
                f"The straight part of the flank is {plain(dressed.straight_slant)} long and the "
                f"surface {plain(side.surface_slant)}: the blending radius will be ground on the "
                "work. More overrun keeps it off, if it is not wanted there.",
            )
        if math.degrees(side.angle_rad) > STEEP_DEGREES:
            yield note(
                "steep-flank",
                f"A radial pass takes only {plain(dressed.infeed_normal, 4)} square to this flank; "
                f"feeding {plain(dressed.infeed_axial, 4)} along the wheel's axis is the same "
                "pass.",
            )
        error = dressed.setting.stack.angle_error_arcsec if dressed.setting.stack else 0.0
        if abs(error) > STACK_ERROR_ARCSEC:
            yield caution(
                "stack-off-the-angle",
                f"These blocks miss the dresser's angle by {plain(error, 3)}″.",
            )
    yield DRESSING_SAFETY


#: A stack that misses by more than this is worth a word.
STACK_ERROR_ARCSEC = 10.0

OPERATION = Operation(
    topic="wheels",
    verb="flank",
    title="Angle to dress on the wheel",
    summary="The flank to dress on one or both sides of the wheel for a cone or an angled face: "
    "angle, dresser's setting with its block stack or scale reading, widths, blended radii with "
    "their tangent points, passes, volume, and the profile as coordinates and as a drawing.",
    request=WheelFlankRequest,
    result=WheelFlankResult,
    calculate=flank,
    relations=(
        "flank angle from the wheel's axis = half angle of the cone, or face angle",
        "slant = rise / sin(angle) + 2 × overrun",
        "width = slant × cos(angle), depth = slant × sin(angle)",
        "dresser height = center distance × sin(dresser angle)",
        "tangent length of a blend = radius / tan(half of the corner's angle)",
        "volume = π ∫ (R² − r²) dx over the wheel's width",
    ),
    sources=(
        _DERIVED,
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
        "dresser": {"kind": "sine-base", "center_distance": 2, "set": "inch-81"},
        "depth_per_pass": 0.0005,
    },
    largest_request="two flanks, and blocks as blocks/stack takes them",
    heavy=True,
)
