"""A sine bar used to measure: an indicator nearly levels the surface, the stack gives its angle."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    ResultModel,
    SignedLength,
    VeeAngle,
    angle_from_radians,
    from_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import BlockOwned, GradeField
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.estimate import AngleEstimate, estimate
from halfangle_service.fields.gauging.standing_stack import (
    MOST_IN_STACK,
    STACKED,
    pieces_of_stack,
)
from halfangle_service.fields.plates import PlateFields, arcsec_per_step, offset_of
from halfangle_service.fields.set_up_errors import (
    SET_UP_TERMS,
    Limit,
    SetUpErrorFields,
    not_stated_of,
    stated_terms,
    temperature_offset,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.sine.sources import SINE_RELATION
from halfangle_service.topics.sine.stated_errors import BUDGET, EXPANSION
from halfangle_service.trade import elementary
from halfangle_service.trade.sine.angle_model import SetUp
from halfangle_service.trade.sine.geometry import angle_for_height
from halfangle_service.trade.sine.plate_on_blocks import budget_on_blocks, expansion_of_blocks
from halfangle_service.trade.sine.taper_holding import (
    Holding,
    half_angle_from_plate,
    half_angle_sensitivity,
)
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import arcsec

#: A residual lean past this is better taken off by other blocks than by the indicator.
_LEVEL_ARCSEC = 120.0

_LEAN = Source(
    citation="Derived here: the surface leans to the plate's top by the plate's angle and what the "
    "indicator still rises; from there to a cone by how it is held.",
    standing="derived",
)


class SineMeasuredAngleRequest(PlateFields, SetUpErrorFields):
    """A bar on its stack under a part whose upper surface an indicator shows nearly level."""

    rules = (Rule("one-of", STACKED),)

    blocks: Annotated[list[Length], Field(min_length=1, max_length=MOST_IN_STACK)] | None = Field(
        None,
        description="Nominal sizes of the blocks under the high roll, in `units`. Either this or "
        "`calibrated_blocks`.",
        examples=[[2.5]],
    )
    calibrated_blocks: (
        Annotated[list[BlockOwned], Field(min_length=1, max_length=MOST_IN_STACK)] | None
    ) = Field(None, description="The same with what is known of each.")
    grade: GradeField = None
    block_material: MaterialName = Field(
        "steel", description="Material of the blocks given by nominal size alone."
    )
    holding: Holding | None = Field(
        None, description="How a cone is held on the plate. Absent: a face, the part on its base."
    )
    vee_angle: VeeAngle = Field(
        90.0, description="Included angle of the vee, in degrees; counts for `in-a-vee` only."
    )
    indicator_rise: SignedLength = Field(
        description="Rise that the indicator read along the surface, toward the low roll, in "
        "`units`; negative where it rises toward the high roll.",
        examples=[0.0002],
    )
    indicator_travel: Length = Field(
        description="Travel of the indicator, in `units`.", examples=[2.0]
    )
    indicating_error_limit: Limit = Field(
        None, description="Largest error ± of the rise that the indicator reads, in `units`."
    )


class SineMeasuredAngleResult(ResultModel):
    """The part's angle, from the stack and what was left to read."""

    quantity: Literal["face-angle", "included-angle"] = Field(
        description="What was measured: a face's angle to its base, or a cone's included angle."
    )
    measured_angle: AngleEstimate = Field(
        description="That angle, with the plate's whole budget and the indicator's error."
    )
    plate_angle: Angle = Field(description="Angle of the plate on the stack's actual height.")
    stack_height: LengthOut = Field(description="Actual height of the stack, at 20 °C.")
    residual_arcsec: ArcsecOut = Field(
        description="What the surface leans more than the plate, by the indicator."
    )


@operation(
    "sine.measured-angle",
    relations=(
        "plate: θ = asin((stack − offset) / L)",
        "surface to plate: φ = θ + atan(rise / travel), a rise toward the low roll",
        "face: φ; cone between centers: 2α = 2φ; on its generator: 2α = φ; in a vee: "
        "tan α = sin φ / (cos φ + 1 / sin ν)",
    ),
    sources=(SINE_RELATION, _LEAN, BUDGET, EXPANSION),
    example={
        "units": "in",
        "center_distance": 5,
        "blocks": [2.0, 0.5],
        "grade": "asme-as-1",
        "indicator_rise": 0.0002,
        "indicator_travel": 2,
        "indicating_error_limit": 0.00002,
        "center_distance_error_limit": 0.0002,
        "roll_difference": 0.00005,
        "face_parallelism": 0.0001,
        "temperature_celsius": 20,
    },
    largest_request="20 blocks",
    heavy=True,
)
def measured(request: SineMeasuredAngleRequest) -> Outcome[SineMeasuredAngleResult]:
    """Angle measured on a sine bar.

    Angle of a part whose surface an indicator shows nearly level on a sine bar: from the stack, the
    residual rise corrected, with the uncertainty of plate, blocks and indicator.
    """
    one_of(request, *STACKED)
    pieces, odd = pieces_of_stack(
        request.blocks,
        request.calibrated_blocks,
        request.block_material,
        request.grade,
        request.units,
        error_needed=False,
    )
    stack = from_tenth_nm(sum(piece.actual for piece in pieces), request.units)
    field = STACKED[0] if request.blocks is not None else STACKED[1]
    plate = angle_for_height(request.center_distance, stack, offset_of(request), field)
    if plate < 0.0:
        raise Impossible(
            "The stack stands the plate below level.",
            fields={field: "should be the stack under the high roll, over base_step"},
        )
    residual = elementary.atan(request.indicator_rise / request.indicator_travel)
    errors = _budget(request, plate, pieces)
    lean = plate + errors.mean + residual
    if not 0.0 < lean < math.pi / 2.0:
        raise Impossible(
            f"The surface would lean {angle_from_radians(lean).dms} to the plate's top.",
            fields={"indicator_rise": "should be the small rise left on a surface nearly level"},
        )
    result = SineMeasuredAngleResult(
        quantity="face-angle" if request.holding is None else "included-angle",
        measured_angle=estimate(
            AngleEstimate,
            _of_the_part(request, errors, lean),
            angle_from_radians(_part_angle(request, lean)),
            per_unit=ARCSEC_PER_RADIAN,
        ),
        plate_angle=angle_from_radians(plate),
        stack_height=stack,
        residual_arcsec=residual * ARCSEC_PER_RADIAN,
    )
    return Outcome(result, (*odd, *_advisories(request, result)))


def _budget(request: SineMeasuredAngleRequest, plate: float, pieces: Sequence[Piece]) -> Budget:
    """Budget of the plate's angle in radians, its blocks by calibration or grade."""
    known = materials()
    set_up = SetUp(
        request.center_distance,
        plate,
        face_length=request.face_length or request.center_distance,
        temperature_offset=temperature_offset(request),
        block_expansion=expansion_of_blocks(pieces),
        plate_expansion=known[request.plate_material].coefficient,
        parallelism_on_rolls=request.face_parallelism_on_rolls,
        stack_offset=offset_of(request),
    )
    values = stated_terms(request, SET_UP_TERMS)
    values["plate_expansion"] = known[request.plate_material].spread
    missing = not_stated_of(request, SET_UP_TERMS, set_up, ("indicating_error_limit",))
    return budget_on_blocks(set_up, values, missing, pieces, request.units)


def _part_angle(request: SineMeasuredAngleRequest, lean: float) -> float:
    """A face's angle, or a cone's included angle, from the lean of its surface to the plate."""
    holding = request.holding
    if holding is None:
        return lean
    return 2.0 * half_angle_from_plate(lean, holding, elementary.radians(request.vee_angle) / 2.0)


def _of_the_part(request: SineMeasuredAngleRequest, plate: Budget, lean: float) -> Budget:
    """Budget of the part's angle: the plate's and the indicator's, as its angle follows them."""
    holding = request.holding
    per_lean = (
        1.0
        if holding is None
        else 2.0
        * half_angle_sensitivity(lean, holding, elementary.radians(request.vee_angle) / 2.0)
    )
    parts = [replace(p, sensitivity=per_lean * p.sensitivity) for p in plate.contributions]
    if request.indicating_error_limit is not None:
        slope = request.indicator_rise / request.indicator_travel
        parts.append(
            Contribution(
                "indicating_error_limit",
                request.indicating_error_limit,
                sensitivity=per_lean / request.indicator_travel / (1.0 + slope * slope),
                unit="length",
            )
        )
    return Budget(tuple(parts), not_stated=plate.not_stated)


def _advisories(
    request: SineMeasuredAngleRequest, result: SineMeasuredAngleResult
) -> Iterator[Advisory]:
    plate = result.plate_angle.degrees
    per_step = arcsec_per_step(request.center_distance, elementary.radians(plate), request.units)
    yield from steep_angle(
        plate, per_step, STEEP_DEGREES, instead="Measure the angle's complement, or by a chord."
    )
    if abs(result.residual_arcsec) > _LEVEL_ARCSEC:
        yield caution(
            "far-from-level",
            f"The surface still leans {arcsec(result.residual_arcsec)}: build a stack that leaves "
            "less, since the indicator's scale and travel count the more the further it runs.",
        )
    if request.holding is None:
        yield note(
            "along-the-plate",
            "The angle is that in the plane in which the plate tilts: lay the part square to the "
            "rolls against the stop.",
        )
