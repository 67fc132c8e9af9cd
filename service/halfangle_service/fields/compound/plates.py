"""A compound sine plate, as both of its operations state it."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    RequestModel,
    ResultModel,
    SignedLength,
    Units,
    UnitsField,
    angle_from_radians,
)
from halfangle_service.fields.base import PLATE
from halfangle_service.fields.plates import CenterDistance
from halfangle_service.trade.sine.compound import (
    BaseAxis,
    HingedPlate,
    Matrix,
    edge_turns,
    other_axis,
)
from halfangle_service.trade.unit_slips import require_center_distance


class CompoundSizes(RequestModel):
    """What a compound (two-axis) sine plate is, in the unit of the request that holds it."""

    group = PLATE

    base_center_distance: CenterDistance
    upper_center_distance: CenterDistance
    base_axis: BaseAxis = Field(
        description="Axis of the machine along which the hinge of the base plate lies: `x` (left "
        "to right; the base raises the back or the front) or `y` (front to back; the base raises "
        "the right or the left). The upper plate's hinge lies along the other. Always required: "
        "the same two stacks in the other order give another surface."
    )
    base_step: SignedLength = Field(
        0.0, description="Stack under the base plate's roll at which it stands at zero."
    )
    upper_step: SignedLength = Field(
        0.0, description="Stack under the upper plate's roll at which it stands at zero."
    )


class CompoundPlateFields(CompoundSizes):
    """What a compound (two-axis) sine plate is."""

    units: UnitsField


def plates_of(fields: CompoundSizes, units: Units) -> tuple[HingedPlate, HingedPlate]:
    """Base and upper plate that a request states; refuses one of a size that none has."""
    require_center_distance(fields.base_center_distance, units, "base_center_distance")
    require_center_distance(fields.upper_center_distance, units, "upper_center_distance")
    upper_axis = other_axis(fields.base_axis)
    return (
        HingedPlate(fields.base_axis, fields.base_center_distance, fields.base_step),
        HingedPlate(upper_axis, fields.upper_center_distance, fields.upper_step),
    )


class SineEdgeTurns(ResultModel):
    """How far the part's edges turn in plan when the plate is set; positive from +X toward +Y."""

    x_edge: Angle = Field(description="Turn of an edge that lay along X.")
    y_edge: Angle = Field(description="Turn of an edge that lay along Y.")


EdgeTurns = Annotated[SineEdgeTurns, Field(description="How far the part's edges turn in plan.")]


def turns_of(rotation: Matrix) -> SineEdgeTurns:
    """Write how far a rotation of the plates turns the part's edges."""
    x_edge, y_edge = edge_turns(rotation)
    return SineEdgeTurns(x_edge=angle_from_radians(x_edge), y_edge=angle_from_radians(y_edge))
