"""Both stacks of a compound (two-axis) sine plate for one surface."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle, unusual_stack
from halfangle_service.errors import Unreachable
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Count,
    CountOut,
    LengthOut,
    ResultModel,
    Units,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import BlockSupplyFields
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    ReachField,
    ResolutionField,
    arcsec_per_step,
    to_set,
)
from halfangle_service.fields.supply import SOURCES, read_supply
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.compound_plates import (
    ROTATION,
    CompoundPlateFields,
    EdgeTurns,
    plates_of,
    turns_of,
)
from halfangle_service.topics.sine.sources import SINE_RELATION, STEEP_PRACTICE
from halfangle_service.topics.sine.surfaces import SineOrientation, Surface, orientation_of
from halfangle_service.trade.sine.compound import (
    BaseAxis,
    Frame,
    HingedPlate,
    Side,
    Vector,
    hinge_angles,
    other_axis,
    plate_rotation,
    raised_side,
    surface_error,
    uncorrected_hinges,
    wrong_frame_hinges,
)
from halfangle_service.trade.sine.compound_drawing import conventions_svg
from halfangle_service.trade.sine.compound_stacks import MOST_STEPS_OFF, both_stacks
from halfangle_service.trade.sine.geometry import require_reach
from halfangle_service.trade.wording import plain

#: Edges that turn less in plan are nowhere near what a stop or a fence shows.
TELLING_TURN_DEGREES = 0.01

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


class SineCompoundRequest(CompoundPlateFields, BlockSupplyFields):
    """A compound sine plate, a surface as its drawing gives it, and the set for both stacks.

    Without `set`, `sizes` and `box` heights alone are given.
    """

    frame: Frame = Field(
        description="Whose views the orientation is given in. `part`: the part's own, lying flat; "
        "the plate shall bring that surface level under the wheel. `machine`: the machine's; the "
        "upper plate's face itself shall stand with these angles. Always required: at 30/30 the "
        "wrong one is 4.58° out."
    )
    orientation: Surface
    base_largest_angle: ReachField = None
    upper_largest_angle: ReachField = None
    resolution: ResolutionField = None
    max_blocks: Annotated[int, Count(ge=1, le=8)] = Field(
        5, description="Most blocks in each of the two stacks."
    )


class SineHingeSetting(ResultModel):
    """The setting of one plate of a compound plate."""

    hinge_axis: BaseAxis = Field(description="Axis along which its hinge lies.")
    angle: Angle = Field(
        description="Hinge angle, signed: positive raises the right (hinge along Y) or the back "
        "(hinge along X)."
    )
    raised_side: Side = Field(description="Side whose roll stands on the stack.")
    height: LengthOut = Field(description="Stack under the raised roll.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    arcsec_per_step: ArcsecPerStep
    instruction: str = Field(description="What to do, in plain words.")


class SineCompoundStacks(ResultModel):
    """The stacks of both plates from one set: they stand at once, so no block is in both."""

    base_blocks: list[LengthOut] = Field(
        description="Nominal sizes of the blocks under the base plate's roll, largest first; empty "
        "where it stays at zero."
    )
    upper_blocks: list[LengthOut] = Field(description="The same under the upper plate's roll.")
    base_height: LengthOut = Field(description="Height of the base plate's stack.")
    upper_height: LengthOut = Field(description="Height of the upper plate's stack.")
    count: CountOut = Field(description="Blocks in both.")
    proved: bool = Field(
        description="No two stacks of these heights that stand at once have fewer blocks."
    )
    as_built_arcsec: ArcsecOut = Field(
        description="Angle between the surface wanted and the one that these stacks give."
    )


class SineRotationCheck(ResultModel):
    """The result, checked by rotating the surface's normal through both hinges."""

    residual_arcsec: ArcsecOut = Field(
        description="Angle between the surface's normal after both rotations and where it should "
        "point; rounding of the arithmetic only."
    )
    as_set_arcsec: ArcsecOut = Field(description="The same with the stacks rounded to be built.")
    wrong_frame: Angle = Field(
        description="How far out the surface would be had the angles been taken in the other frame."
    )
    uncorrected: Angle = Field(
        description="How far out it would be had both views' angles been set on the hinges as they "
        "stand."
    )


class SineCompoundResult(ResultModel):
    """Both settings of a compound plate."""

    base: SineHingeSetting = Field(description="The base plate.")
    upper: SineHingeSetting = Field(description="The upper plate, riding on the base plate.")
    axis_order: str = Field(description="The order of the axes, in plain words.")
    surface: SineOrientation = Field(description="The surface as it was read, in the frame stated.")
    edge_turns: EdgeTurns
    stacks: SineCompoundStacks | None = Field(
        description="Both stacks from the set given; null where none was."
    )
    rotation_check: SineRotationCheck = Field(description="The check by rotation.")
    conventions: list[str] = Field(description="The sign conventions, in plain words.")


def is_built(request: SineCompoundRequest) -> bool:
    """True for a request whose stacks are built from a set: that may take some milliseconds."""
    return any(getattr(request, name) is not None for name in SOURCES)


@operation(
    "sine.compound",
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
    sources=(ROTATION, SINE_RELATION, STEEP_PRACTICE),
    example={
        "units": "in",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
        "frame": "part",
        "orientation": {"kind": "projected-angles", "x_angle": 30, "y_angle": 30},
        "set": "inch-81",
    },
    largest_request="two stacks of up to 8 blocks each from 500",
    heavy=is_built,
)
def compound(request: SineCompoundRequest) -> Outcome[SineCompoundResult]:
    """Compound sine plate.

    Both stacks of a two-axis sine plate for a surface given by projected angles, by its true tilt
    and direction, or by its normal, in the part's or in the machine's frame; checked by rotating
    the normal back, with the turn of the edges in plan.
    """
    normal = request.orientation.normal
    hinges = hinge_angles(normal, request.frame, request.base_axis)
    job = _Job(request, plates_of(request), normal, hinges)
    reaches = (request.base_largest_angle, request.upper_largest_angle)
    for hinge, reach in zip(hinges, reaches, strict=True):
        require_reach(abs(math.degrees(hinge)), reach, "orientation")
    base, upper = _hinge_setting(job, "base"), _hinge_setting(job, "upper")
    result = SineCompoundResult(
        base=base,
        upper=upper,
        axis_order=_axis_order(request.base_axis, request.frame),
        surface=orientation_of(normal),
        edge_turns=turns_of(plate_rotation(*hinges, request.base_axis)),
        stacks=_stacks(job) if is_built(request) else None,
        rotation_check=_rotation_check(job, (base, upper)),
        conventions=_CONVENTIONS,
    )
    return Outcome(result, tuple(_advisories(request, result)))


@dataclass(frozen=True, slots=True)
class _Job:
    """A request with what follows from it at once; pairs are of base and upper plate.

    `hinges` are their angles in radians.
    """

    request: SineCompoundRequest
    plates: tuple[HingedPlate, HingedPlate]
    normal: Vector
    hinges: tuple[float, float]

    def error_rad(self, hinges: tuple[float, float]) -> float:
        """Angle between the surface wanted and the one that hinge angles give."""
        return surface_error(self.normal, hinges, self.request.frame, self.request.base_axis)

    def error_of_heights_rad(self, heights: tuple[float, float]) -> float:
        """The same for stacks of these heights under the sides to raise."""
        base, upper = (
            plate.angle(height, like, "orientation")
            for plate, height, like in zip(self.plates, heights, self.hinges, strict=True)
        )
        return self.error_rad((base, upper))


def _hinge_setting(job: _Job, which: Literal["base", "upper"]) -> SineHingeSetting:
    """Setting of one hinge: the stack stands under the raised side, whatever the angle's sign."""
    place = ("base", "upper").index(which)
    plate, angle_rad, units = job.plates[place], job.hinges[place], job.request.units
    height = plate.height(angle_rad)
    side = raised_side(plate.hinge_axis, angle_rad)
    return SineHingeSetting(
        hinge_axis=plate.hinge_axis,
        angle=angle_from_radians(angle_rad),
        raised_side=side,
        height=height,
        height_to_set=to_set(height, units, job.request.resolution),
        arcsec_per_step=arcsec_per_step(plate.center_distance, angle_rad, units),
        instruction=_instruction(which, side, height, units),
    )


def _instruction(which: str, side: Side, height: float, units: Units) -> str:
    if side == "neither":
        return f"Leave the {which} plate at zero."
    return f"Raise the {side} roll of the {which} plate on a stack of {plain(height, 7)} {units}."


def _axis_order(base_axis: BaseAxis, frame: Frame) -> str:
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


def _stacks(job: _Job) -> SineCompoundStacks:
    """Both stacks from one set, and the surface that they give."""
    request = job.request
    unit = to_tenth_nm(1.0, request.units)
    heights = [
        plate.height(angle_rad) for plate, angle_rad in zip(job.plates, job.hinges, strict=True)
    ]
    raised = [
        raised_side(plate.hinge_axis, angle_rad) != "neither"
        for plate, angle_rad in zip(job.plates, job.hinges, strict=True)
    ]
    wanted = [height * unit if up else 0.0 for height, up in zip(heights, raised, strict=True)]
    found = both_stacks(read_supply(request).box.sizes, wanted, request.max_blocks)
    if found is None:
        raise Unreachable(
            f"No two stacks of up to {request.max_blocks} of these blocks stand at once within "
            f"{MOST_STEPS_OFF} steps of {plain(heights[0], 7)} and {plain(heights[1], 7)} "
            f"{request.units}.",
            fields={"max_blocks": "should be more, or the blocks others"},
        )
    base, upper = (sum(stack) / unit for stack in found.stacks)
    built = (base if raised[0] else heights[0], upper if raised[1] else heights[1])
    return SineCompoundStacks(
        base_blocks=[from_tenth_nm(size, request.units) for size in found.stacks[0]],
        upper_blocks=[from_tenth_nm(size, request.units) for size in found.stacks[1]],
        base_height=base,
        upper_height=upper,
        count=sum(map(len, found.stacks)),
        proved=found.proved,
        as_built_arcsec=job.error_of_heights_rad(built) * ARCSEC_PER_RADIAN,
    )


def _rotation_check(
    job: _Job, settings: tuple[SineHingeSetting, SineHingeSetting]
) -> SineRotationCheck:
    """Rotate the normal through the hinges as answered, as rounded, and as the usual slips do."""
    base, upper = settings
    answered = math.radians(base.angle.degrees), math.radians(upper.angle.degrees)
    rounded = base.height_to_set, upper.height_to_set
    surface = job.normal, job.request.frame, job.request.base_axis
    return SineRotationCheck(
        residual_arcsec=job.error_rad(answered) * ARCSEC_PER_RADIAN,
        as_set_arcsec=job.error_of_heights_rad(rounded) * ARCSEC_PER_RADIAN,
        wrong_frame=angle_from_radians(job.error_rad(wrong_frame_hinges(*surface))),
        uncorrected=angle_from_radians(job.error_rad(uncorrected_hinges(*surface))),
    )


def _advisories(request: SineCompoundRequest, result: SineCompoundResult) -> Iterator[Advisory]:
    distances = (request.base_center_distance, request.upper_center_distance)
    for hinge, distance in zip((result.base, result.upper), distances, strict=True):
        yield from steep_angle(hinge.angle.degrees, hinge.arcsec_per_step, STEEP_DEGREES)
        yield from unusual_stack(hinge.height, distance)
    turns = result.edge_turns
    turned = max(turns.x_edge.degrees, turns.y_edge.degrees, key=abs)
    if abs(turned) > TELLING_TURN_DEGREES:
        edge = "X" if turned == turns.x_edge.degrees else "Y"
        yield caution(
            "edge-turns",
            f"An edge that lay along {edge} turns {plain(turned, 5)}° in plan when both plates are "
            "set: where it must run along the machine, turn the part on the upper plate, and then "
            "take the surface's angles anew in the turned position.",
        )
    sides = {result.base.raised_side, result.upper.raised_side}
    if result.stacks is None and "neither" not in sides:
        yield note(
            "two-stacks-at-once",
            "Both stacks stand at the same time: where they come from one set, no block may be "
            "planned twice. Send the set, and both are built from it.",
        )
    if result.surface.tilt.degrees == 0.0:
        yield note("already-level", "The surface is level: neither plate needs a stack.")
