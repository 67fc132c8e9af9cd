"""The surface that two stacks under a compound sine plate set."""

from pydantic import Field

from halfangle_service.fields import Angle, ResultModel, SignedLength, angle_from_radians
from halfangle_service.fields.compound.plates import (
    CompoundPlateFields,
    EdgeTurns,
    plates_of,
    turns_of,
)
from halfangle_service.fields.compound.surfaces import SineOrientation, orientation_of
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.sources import ROTATION, SINE_RELATION
from halfangle_service.trade.sine.compound import normal_from_hinges, plate_rotation
from halfangle_service.trade.sine.compound_drawing import conventions_svg


class SineCompoundAnglesRequest(CompoundPlateFields):
    """The stacks under both plates of a compound plate."""

    base_height: SignedLength = Field(
        description="Stack under the base plate's raised roll, in `units`: positive under the "
        "right or back roll, negative under the left or front one.",
        examples=[-2.2360679775],
    )
    upper_height: SignedLength = Field(
        description="Stack under the upper plate's raised roll, signed in the same way.",
        examples=[-2.5],
    )


class SineCompoundAnglesResult(ResultModel):
    """What two stacks set."""

    base_angle: Angle = Field(description="Hinge angle of the base plate, signed.")
    upper_angle: Angle = Field(description="Hinge angle of the upper plate, signed.")
    part_surface: SineOrientation = Field(
        description="The surface of the part, in the part's own views, that is level now."
    )
    upper_face: SineOrientation = Field(
        description="The upper plate's face as it stands in the machine's views."
    )
    edge_turns: EdgeTurns


@operation(
    "sine.compound-angles",
    drawing=conventions_svg(),
    relations=(
        "hinge angle = asin((height − step) / center_distance)",
        "part: n = Rᵀ (0, 0, 1); machine: m = R (0, 0, 1); R = R(base) × R(upper)",
    ),
    sources=(ROTATION, SINE_RELATION),
    example={
        "units": "in",
        "base_center_distance": 5,
        "upper_center_distance": 5,
        "base_axis": "x",
        "base_height": -2.2360679775,
        "upper_height": -2.5,
    },
)
def compound_angles(request: SineCompoundAnglesRequest) -> Outcome[SineCompoundAnglesResult]:
    """Angles of a compound setting.

    What two stacks under a compound sine plate set: the surface of the part that is level, and how
    the upper plate's face stands.
    """
    base_plate, upper_plate = plates_of(request, request.units)
    base = base_plate.angle(abs(request.base_height), request.base_height, "base_height")
    upper = upper_plate.angle(abs(request.upper_height), request.upper_height, "upper_height")
    axis = request.base_axis
    result = SineCompoundAnglesResult(
        base_angle=angle_from_radians(base),
        upper_angle=angle_from_radians(upper),
        part_surface=orientation_of(normal_from_hinges(base, upper, "part", axis)),
        upper_face=orientation_of(normal_from_hinges(base, upper, "machine", axis)),
        edge_turns=turns_of(plate_rotation(base, upper, axis)),
    )
    return Outcome(result)
