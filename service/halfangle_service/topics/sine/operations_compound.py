"""Compound (two-axis) sine plates: models to maths and back."""

import math
from collections.abc import Iterator
from typing import Literal

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.errors import Unreachable
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    Units,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.plates import arcsec_per_step, to_set
from halfangle_service.fields.supply import SOURCES, read_supply
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.sine.models_compound import (
    SineCompoundAnglesRequest,
    SineCompoundAnglesResult,
    SineCompoundCheck,
    SineCompoundRequest,
    SineCompoundResult,
    SineCompoundStacks,
    SineEdgeTurns,
    SineHingeSetting,
    SineNormal,
    SineOrientation,
    SineProjectedAngles,
    SineTrueTilt,
    SineVector,
)
from halfangle_service.topics.sine.plate import SINE_RELATION, STEEP_PRACTICE, bulk
from halfangle_service.trade.sine.compound import (
    UP,
    BaseAxis,
    Frame,
    Matrix,
    Vector,
    angle_between,
    edge_turns,
    hinge_angles,
    normal_from_hinges,
    normal_from_slopes,
    normal_from_tilt,
    normal_from_vector,
    other_axis,
    plate_rotation,
    raised_side,
    slopes_of_normal,
    tilt_of_normal,
)
from halfangle_service.trade.sine.compound_stacks import MOST_STEPS_OFF, both_stacks
from halfangle_service.trade.sine.conventions import conventions_svg
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    height_for_angle,
    require_reach,
)
from halfangle_service.trade.wording import plain

#: Edges that turn less in plan are nowhere near what a stop or a fence shows.
TELLING_TURN_DEGREES = 0.01

_ROTATION = Source(
    citation="Derived here: the part's surface normal is carried through the rotations of the "
    "upper and the base hinge and set upright (part's frame), or the upper plate's normal is set "
    "to the one wanted (machine's frame); each answer is checked by rotating it back.",
    standing="derived",
)
_CONVENTIONS = [
    "X points to the operator's right, Y away to the back, Z up.",
    "A slope is positive where the surface rises to the right (front view, x_angle) or to the "
    "back (side view, y_angle); a direction is counted in plan from +X toward +Y, and a surface "
    "rises toward it.",
    "A hinge angle is positive where it raises the right (hinge along Y) or the back (hinge along "
    "X).",
    "The base plate stands on the machine; the upper plate's hinge rides on it, square to the base "
    "hinge.",
]


def compound(request: SineCompoundRequest) -> Outcome[SineCompoundResult]:
    """Both settings of a compound plate for one surface."""
    normal = surface_normal(request.orientation)
    base_rad, top_rad = hinge_angles(normal, request.frame, request.base_axis)
    base, upper = _base(request, base_rad), _upper(request, top_rad)
    rotation = plate_rotation(base_rad, top_rad, request.base_axis)
    built = _stacks(request, normal, (base, upper))
    result = SineCompoundResult(
        base=base,
        upper=upper,
        order=_order(request.base_axis, request.frame),
        surface=_orientation(normal),
        edge_turns=_turns(rotation),
        stacks=built,
        check=_check(request, normal, (base, upper)),
        conventions=_CONVENTIONS,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def is_built(request: SineCompoundRequest) -> bool:
    """True for a request whose stacks are built from a set: that may take some milliseconds."""
    return any(getattr(request, name) is not None for name in SOURCES)


def surface_normal(orientation: SineProjectedAngles | SineTrueTilt | SineNormal) -> Vector:
    """Unit normal of a surface, whichever way it is given."""
    if isinstance(orientation, SineProjectedAngles):
        return normal_from_slopes(
            math.radians(orientation.x_angle), math.radians(orientation.y_angle)
        )
    if isinstance(orientation, SineTrueTilt):
        return normal_from_tilt(math.radians(orientation.tilt), math.radians(orientation.direction))
    return normal_from_vector(orientation.x, orientation.y, orientation.z)


def _base(request: SineCompoundRequest, angle_rad: float) -> SineHingeSetting:
    require_reach(abs(math.degrees(angle_rad)), request.base_largest_angle, "orientation")
    return _hinge(
        "base",
        request,
        axis=request.base_axis,
        angle_rad=angle_rad,
        distance=request.base_center_distance,
        step=request.base_step,
    )


def _upper(request: SineCompoundRequest, angle_rad: float) -> SineHingeSetting:
    require_reach(abs(math.degrees(angle_rad)), request.top_largest_angle, "orientation")
    return _hinge(
        "upper",
        request,
        axis=other_axis(request.base_axis),
        angle_rad=angle_rad,
        distance=request.top_center_distance,
        step=request.top_step,
    )


def _hinge(
    plate: Literal["base", "upper"],
    request: SineCompoundRequest,
    *,
    axis: BaseAxis,
    angle_rad: float,
    distance: float,
    step: float,
) -> SineHingeSetting:
    """Setting of one hinge: the stack stands under the raised side, whatever the angle's sign."""
    height = height_for_angle(distance, abs(angle_rad), step)
    built = to_set(height, request.units, request.resolution)
    side = raised_side(axis, angle_rad)
    return SineHingeSetting(
        plate=plate,
        hinge_axis=axis,
        angle=angle_from_radians(angle_rad),
        raised_side=side,
        height=height,
        height_to_set=built,
        arcsec_per_step=arcsec_per_step(distance, angle_rad, request.units),
        instruction=_instruction(plate, side, height, request.units),
    )


def _instruction(plate: str, side: str, height: float, units: Units) -> str:
    if side == "neither":
        return f"Leave the {plate} plate at zero."
    return f"Raise the {side} roll of the {plate} plate on a stack of {plain(height, 7)} {units}."


def _order(base_axis: BaseAxis, frame: Frame) -> str:
    upper = other_axis(base_axis)
    held = (
        "the part's surface comes level"
        if frame == "part"
        else "the upper plate's face stands with these angles in the machine's views"
    )
    return (
        f"Base hinge along {base_axis.upper()}, upper hinge along {upper.upper()} and riding on "
        f"the base plate; with both set, {held}. Which stack goes in first does not matter; which "
        "hinge rides on which does."
    )


def _orientation(normal: Vector) -> SineOrientation:
    x_angle, y_angle = slopes_of_normal(normal)
    tilt, direction = tilt_of_normal(normal)
    x, y, z = (float(component) for component in normal)
    return SineOrientation(
        normal=SineVector(x=x, y=y, z=z),
        x_angle=angle_from_radians(x_angle),
        y_angle=angle_from_radians(y_angle),
        tilt=angle_from_radians(tilt),
        direction=angle_from_radians(direction),
    )


def _turns(rotation: Matrix) -> SineEdgeTurns:
    x_edge, y_edge = edge_turns(rotation)
    return SineEdgeTurns(x_edge=angle_from_radians(x_edge), y_edge=angle_from_radians(y_edge))


def _stacks(
    request: SineCompoundRequest, normal: Vector, hinges: tuple[SineHingeSetting, SineHingeSetting]
) -> SineCompoundStacks | None:
    """Both stacks from one set, and the surface that they give; None without a set."""
    if not is_built(request):
        return None
    unit = to_tenth_nm(1.0, request.units)
    sizes = read_supply(request).box.sizes
    raised = [hinge.raised_side != "neither" for hinge in hinges]
    heights = [hinge.height * unit if up else 0.0 for hinge, up in zip(hinges, raised, strict=True)]
    found = both_stacks(sizes, heights, request.max_blocks)
    if found is None:
        raise Unreachable(
            f"No two stacks of up to {request.max_blocks} of these blocks stand at once within "
            f"{MOST_STEPS_OFF} steps of {plain(hinges[0].height, 7)} and "
            f"{plain(hinges[1].height, 7)} "
            f"{request.units}.",
            fields={"max_blocks": "should be more, or the blocks others"},
        )
    base, upper = (sum(stack) / unit for stack in found.stacks)
    angles = _signed_angles(
        request,
        hinges,
        (base if raised[0] else hinges[0].height, upper if raised[1] else hinges[1].height),
    )
    return SineCompoundStacks(
        base=[from_tenth_nm(size, request.units) for size in found.stacks[0]],
        upper=[from_tenth_nm(size, request.units) for size in found.stacks[1]],
        base_height=base,
        upper_height=upper,
        count=sum(map(len, found.stacks)),
        proved=found.proved,
        as_built_arcsec=_off(normal, angles, request.frame, request.base_axis) * ARCSEC_PER_RADIAN,
    )


def _check(
    request: SineCompoundRequest, normal: Vector, hinges: tuple[SineHingeSetting, SineHingeSetting]
) -> SineCompoundCheck:
    """Rotate the normal through the hinges as computed, as rounded, and as the usual slips do."""
    frame, axis = request.frame, request.base_axis
    right = math.radians(hinges[0].angle.degrees), math.radians(hinges[1].angle.degrees)
    other: Frame = "machine" if frame == "part" else "part"
    slopes = slopes_of_normal(normal)
    along_base, along_top = (slopes[1], slopes[0]) if axis == "x" else slopes
    sign = -1.0 if frame == "part" else 1.0
    rounded = hinges[0].height_to_set, hinges[1].height_to_set
    as_set = _signed_angles(request, hinges, rounded)
    return SineCompoundCheck(
        residual_arcsec=_off(normal, right, frame, axis) * ARCSEC_PER_RADIAN,
        as_set_arcsec=_off(normal, as_set, frame, axis) * ARCSEC_PER_RADIAN,
        wrong_frame=_angle(_off(normal, _other_frame(normal, other, axis), frame, axis)),
        uncorrected=_angle(_off(normal, (sign * along_base, sign * along_top), frame, axis)),
    )


def _other_frame(normal: Vector, other: Frame, axis: BaseAxis) -> tuple[float, float]:
    """Hinge angles of the other frame, raised on the side that this frame asks for."""
    base, top = hinge_angles(normal, other, axis)
    return -base, -top


def _off(normal: Vector, hinges: tuple[float, float], frame: Frame, base_axis: BaseAxis) -> float:
    """Angle in radians between a wanted surface and the one that two hinge angles give."""
    rotation = plate_rotation(*hinges, base_axis)
    if frame == "part":
        return angle_between(rotation @ normal, UP)
    return angle_between(rotation @ UP, normal)


def _signed_angles(
    request: SineCompoundRequest,
    hinges: tuple[SineHingeSetting, SineHingeSetting],
    heights: tuple[float, float],
) -> tuple[float, float]:
    """Signed hinge angles in radians that stacks of these heights give."""
    base, upper = hinges
    return (
        _signed(request.base_center_distance, heights[0], request.base_step, base.angle.degrees),
        _signed(request.top_center_distance, heights[1], request.top_step, upper.angle.degrees),
    )


def _signed(distance: float, height: float, step: float, like: float) -> float:
    return math.copysign(angle_for_height(distance, height, step, "orientation"), like)


def _angle(angle_rad: float) -> Angle:
    return angle_from_radians(angle_rad)


def _advisories(request: SineCompoundRequest, result: SineCompoundResult) -> Iterator[Advisory]:
    distances = (request.base_center_distance, request.top_center_distance)
    for hinge, distance in zip((result.base, result.upper), distances, strict=True):
        yield from steep_angle(hinge.angle.degrees, hinge.arcsec_per_step, STEEP_DEGREES)
        yield from bulk(hinge.height, distance)
    turns = result.edge_turns
    turned = max(turns.x_edge.degrees, turns.y_edge.degrees, key=abs)
    if abs(turned) > TELLING_TURN_DEGREES:
        edge = "X" if turned == turns.x_edge.degrees else "Y"
        yield caution(
            "edge-turns",
            f"An edge that lay along {edge} turns {turned:.4f}° in plan when both plates are set: "
            "where it must run along the machine, turn the part on the upper plate, and then take "
            "the surface's angles anew in the turned position.",
        )
    if result.stacks is None and "neither" not in {
        result.base.raised_side,
        result.upper.raised_side,
    }:
        yield note(
            "two-stacks-at-once",
            "Both stacks stand at the same time: where they come from one set, no block may be "
            "planned twice. Send the set, and both are built from it.",
        )
    if result.surface.tilt.degrees == 0.0:
        yield note("already-level", "The surface is level: neither plate needs a stack.")


def compound_angles(request: SineCompoundAnglesRequest) -> Outcome[SineCompoundAnglesResult]:
    """What two stacks set."""
    base = _from_stack(
        request.base_center_distance, request.base_height, request.base_step, "base_height"
    )
    top = _from_stack(
        request.top_center_distance, request.top_height, request.top_step, "top_height"
    )
    axis = request.base_axis
    result = SineCompoundAnglesResult(
        base_angle=angle_from_radians(base),
        top_angle=angle_from_radians(top),
        part=_orientation(normal_from_hinges(base, top, "part", axis)),
        machine=_orientation(normal_from_hinges(base, top, "machine", axis)),
        edge_turns=_turns(plate_rotation(base, top, axis)),
    )
    return Outcome(result)


def _from_stack(distance: float, height: float, step: float, field: str) -> float:
    """Signed hinge angle from a signed stack: the sign names the side that stands on it."""
    return math.copysign(1.0, height) * angle_for_height(distance, abs(height), step, field)


COMPOUND = Operation(
    topic="sine",
    verb="compound",
    title="Compound sine plate",
    summary="Both stacks of a two-axis sine plate for a surface given by projected angles, by its "
    "true tilt and direction, or by its normal, in the part's or in the machine's frame; checked "
    "by rotating the normal back, with the turn of the edges in plan.",
    request=SineCompoundRequest,
    result=SineCompoundResult,
    calculate=compound,
    drawing=conventions_svg(),
    relations=(
        "part's frame: tan(upper) = tan(x_angle), tan(base) = tan(y_angle) × cos(upper), for a "
        "base hinge along X, and the sides raised that the surface falls to",
        "machine's frame: base = y_angle, tan(upper) = tan(x_angle) × cos(base), for a base hinge "
        "along X",
        "tan²(tilt) = tan²(x_angle) + tan²(y_angle)",
        "an edge along X turns by atan(sin(base) × tan(upper)), for a base hinge along X",
        "height = center_distance × sin(hinge angle) + step",
    ),
    sources=(_ROTATION, SINE_RELATION, STEEP_PRACTICE),
    example={
        "units": "in",
        "base_center_distance": 5,
        "top_center_distance": 5,
        "base_axis": "x",
        "frame": "part",
        "orientation": {"kind": "projected-angles", "x_angle": 30, "y_angle": 30},
        "set": "inch-81",
    },
    largest_request="two stacks of up to 8 blocks each from 500",
    heavy=is_built,
)
COMPOUND_ANGLES = Operation(
    topic="sine",
    verb="compound-angles",
    title="Angles of a compound setting",
    summary="What two stacks under a compound sine plate set: the surface of the part that is "
    "level, and how the upper plate's face stands.",
    request=SineCompoundAnglesRequest,
    result=SineCompoundAnglesResult,
    calculate=compound_angles,
    drawing=conventions_svg(),
    relations=(
        "hinge angle = asin((height − step) / center_distance)",
        "part: n = Rᵀ (0, 0, 1); machine: m = R (0, 0, 1); R = R(base) × R(upper)",
    ),
    sources=(_ROTATION, SINE_RELATION),
    example={
        "units": "in",
        "base_center_distance": 5,
        "top_center_distance": 5,
        "base_axis": "x",
        "base_height": -2.2360679775,
        "top_height": -2.5,
    },
)
