"""Both stacks of a compound (two-axis) sine plate for one surface."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, stack_far_off, steep_angle, unusual_stack
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Count,
    ResultModel,
    angle_from_radians,
    from_tenth_nm,
    to_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import SOURCES, BlockSupplyFields
from halfangle_service.fields.compound.hinges import (
    CompoundPlate,
    SineHingeSetting,
    SineLaying,
    SineTurnedSetting,
    in_short,
    laying_of,
)
from halfangle_service.fields.compound.plates import (
    EdgeTurns,
    plates_of,
    turns_of,
)
from halfangle_service.fields.compound.raised_sides import (
    RaisedSideFields,
    other_way_round,
    sides_of,
)
from halfangle_service.fields.compound.stacks import SineCompoundStacks, require_stacks
from halfangle_service.fields.compound.surfaces import SineOrientation, Surface, orientation_of
from halfangle_service.fields.plates import ReachField, ResolutionField
from halfangle_service.fields.supply import Supply, read_supply
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.sources import ROTATION, SINE_RELATION, STEEP_PRACTICE
from halfangle_service.trade import elementary
from halfangle_service.trade.sine.compound import (
    BaseAxis,
    Frame,
    other_axis,
    plate_rotation,
    surface_error,
    uncorrected_hinges,
    wrong_frame_hinges,
)
from halfangle_service.trade.sine.compound_drawing import conventions_svg
from halfangle_service.trade.sine.compound_layings import (
    Laid,
    RaisedSides,
    as_drawn,
    other_layings,
)
from halfangle_service.trade.sine.geometry import beyond_reach, require_reach
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


_WHY_TURNED = "As drawn it would ask a plate to raise the side where it is hinged."


class SineCompoundRequest(RaisedSideFields, BlockSupplyFields):
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
    surface_orientation: SineOrientation = Field(
        description="The surface as it was read, in the frame stated."
    )
    laying: SineLaying = Field(
        description="How the work lies on the upper plate, so that each plate raises the side that "
        "it can raise; as drawn where the request does not say which."
    )
    edge_turns: EdgeTurns
    stacks: SineCompoundStacks | None = Field(
        description="Both stacks from the set given; null where none was."
    )
    rotation_check: SineRotationCheck = Field(description="The check by rotation.")
    turned_settings: list[SineTurnedSetting] = Field(
        description="Where a hinge angle is past 45°: the whole setting with the work turned or "
        "tipped by quarter turns, each less steep, the least steep first."
    )
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
    job = _job(request)
    _require_reach(job)
    job.plate.require_standing(job.way)
    supply = read_supply(request) if is_built(request) else None
    base, upper = job.plate.settings(job.way)
    ways = job.less_steep()
    result = SineCompoundResult(
        base=base,
        upper=upper,
        axis_order=_axis_order(request.base_axis, request.frame),
        surface_orientation=orientation_of(request.orientation.normal),
        laying=laying_of(job.way.laying),
        edge_turns=turns_of(plate_rotation(*job.way.hinges, request.base_axis)),
        stacks=None if supply is None else _stacks(job, supply),
        rotation_check=_rotation_check(job, (base, upper)),
        turned_settings=[job.plate.turned(way) for way in ways],
        conventions=_CONVENTIONS,
    )
    given = () if supply is None else supply.advisories
    return Outcome(result, (*given, *_advisories(request, result, ways)))


@dataclass(frozen=True, slots=True)
class _Job:
    """A request with what follows from it at once; `way` is the work as it is to be laid."""

    request: SineCompoundRequest
    plate: CompoundPlate
    way: Laid

    def error_rad(self, hinges: tuple[float, float]) -> float:
        """Angle between the surface wanted and the one that hinge angles in radians give."""
        request = self.request
        return surface_error(self.way.normal, hinges, request.frame, request.base_axis)

    def error_of_heights_rad(self, heights: tuple[float, float]) -> float:
        """The same for stacks of these heights under the sides to raise."""
        base, upper = (
            plate.angle(height, like, "orientation")
            for plate, height, like in zip(self.plate.plates, heights, self.way.hinges, strict=True)
        )
        return self.error_rad((base, upper))

    def others(self) -> list[Laid]:
        """Other ways to lay the work that the plates reach, the least steep first."""
        request, way = self.request, self.way
        others = other_layings(
            request.orientation.normal,
            request.frame,
            request.base_axis,
            sides_of(request),
            way.laying,
        )
        return [
            other
            for other in others
            if self.plate.stands(other) and _past_reach(request, other.hinges) is None
        ]

    def less_steep(self) -> list[Laid]:
        """Those of them that are less steep than this one, where it is steep."""
        steepest = self.way.steepest
        if elementary.degrees(steepest) <= STEEP_DEGREES:
            return []
        return [other for other in self.others() if other.steepest < steepest - 1e-9]


def _job(request: SineCompoundRequest) -> _Job:
    """Read a request; refuses raised sides that no turn of the work allows."""
    normal, frame, axis = request.orientation.normal, request.frame, request.base_axis
    way = as_drawn(normal, frame, axis, sides_of(request))
    if way is None:
        raise other_way_round(request, normal)
    return _Job(
        request,
        CompoundPlate(plates_of(request, request.units), request.units, request.resolution),
        way,
    )


def _past_reach(
    request: SineCompoundRequest, hinges: tuple[float, float]
) -> tuple[float, float | None] | None:
    """The first hinge angle past its plate's reach, and that reach, in degrees."""
    reaches = (request.base_largest_angle, request.upper_largest_angle)
    for hinge, reach in zip(hinges, reaches, strict=True):
        degrees = elementary.degrees(abs(hinge))
        if beyond_reach(degrees, reach):
            return degrees, reach
    return None


def _require_reach(job: _Job) -> None:
    """Refuse hinge angles past the plates' reach, with the ways to lay the work that are not."""
    past = _past_reach(job.request, job.way.hinges)
    if past is None:
        return
    ways = job.others()
    turned = [job.plate.turned(way) for way in ways]
    units = job.request.units
    require_reach(
        *past,
        "orientation",
        instead=in_short(turned[0], ways[0].laying, units) if turned else "",
        more={"turned_settings": [setting.model_dump() for setting in turned]} if turned else None,
    )


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


def _stacks(job: _Job, supply: Supply) -> SineCompoundStacks:
    """Both stacks from one set, and the surface that they give."""
    request = job.request
    unit = to_tenth_nm(1.0, request.units)
    base, upper = (
        plate.height(angle_rad)
        for plate, angle_rad in zip(job.plate.plates, job.way.hinges, strict=True)
    )
    found = require_stacks(supply.box.sizes, (base, upper), request.max_blocks, request.units)
    built = [sum(stack) / unit for stack in found.stacks]
    return SineCompoundStacks(
        base_blocks=[from_tenth_nm(size, request.units) for size in found.stacks[0]],
        upper_blocks=[from_tenth_nm(size, request.units) for size in found.stacks[1]],
        base_height=built[0],
        upper_height=built[1],
        count=sum(map(len, found.stacks)),
        proved=found.proved,
        as_built_arcsec=job.error_of_heights_rad((built[0], built[1])) * ARCSEC_PER_RADIAN,
    )


def _rotation_check(
    job: _Job, settings: tuple[SineHingeSetting, SineHingeSetting]
) -> SineRotationCheck:
    """Rotate the normal through the hinges as answered, as rounded, and as the usual slips do."""
    base, upper = settings
    answered = elementary.radians(base.angle.degrees), elementary.radians(upper.angle.degrees)
    rounded = base.height_to_set, upper.height_to_set
    surface = job.way.normal, job.request.frame, job.request.base_axis
    return SineRotationCheck(
        residual_arcsec=job.error_rad(answered) * ARCSEC_PER_RADIAN,
        as_set_arcsec=job.error_of_heights_rad(rounded) * ARCSEC_PER_RADIAN,
        wrong_frame=angle_from_radians(job.error_rad(wrong_frame_hinges(*surface))),
        uncorrected=angle_from_radians(job.error_rad(uncorrected_hinges(*surface))),
    )


def _advisories(
    request: SineCompoundRequest, result: SineCompoundResult, ways: Sequence[Laid]
) -> Iterator[Advisory]:
    units = request.units
    instead = ""
    if ways:
        instead = in_short(result.turned_settings[0], ways[0].laying, units)
    distances = (request.base_center_distance, request.upper_center_distance)
    for hinge, distance in zip((result.base, result.upper), distances, strict=True):
        yield from steep_angle(
            hinge.angle.degrees, hinge.arcsec_per_step, STEEP_DEGREES, instead=instead
        )
        yield from unusual_stack(hinge.height, distance, units, hinge.height_to_set)
    if result.laying.plan_turn.degrees:
        yield caution("turn-the-work", f"{result.laying.action} {_WHY_TURNED}")
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
    if result.stacks is not None:
        yield from stack_far_off(result.stacks.as_built_arcsec)
    sides = {result.base.raised_side, result.upper.raised_side}
    if sides_of(request) == RaisedSides() and sides != {"neither"}:
        to_turn = "work" if request.frame == "part" else "plate"
        raised = " and the ".join(sorted(sides - {"neither"}))
        yield note(
            "which-side-is-hinged",
            f"This raises the {raised}. A plate hinged there cannot: send base_raised_side and "
            f"upper_raised_side, and the answer says how to turn the {to_turn}.",
        )
    if result.stacks is None and "neither" not in sides:
        yield note(
            "two-stacks-at-once",
            "Both stacks stand at the same time: where they come from one set, no block may be "
            "planned twice. Send the set, and both are built from it.",
        )
    if result.surface_orientation.tilt.degrees == 0.0:
        yield note("already-level", "The surface is level: neither plate needs a stack.")
