"""The ways to grind a cone that are chosen among, each as far as the shop has it."""

from collections.abc import Iterator

from pydantic import Field

from halfangle_service.fields import (
    NonNegativeArcsec,
    NonNegativeLength,
    RequestModel,
    Units,
)
from halfangle_service.fields.plates import CenterDistance
from halfangle_service.fields.wheel.ways import (
    AxisYaw,
    Breakdown,
    ChooseDressedWheel,
    ChooseWheelSide,
    ChooseWorkhead,
    LargestAngle,
    PlateInspectionMinutes,
    PlateSetupMinutes,
    Way,
    dressed_wheel_way,
    past_reach,
    wheel_side_way,
    workhead_way,
)
from halfangle_service.trade.planning import times
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wheel.dressing_errors import DressedCone
from halfangle_service.trade.wheel.ways import (
    budget_of,
    by_angle,
    by_sine_base,
    by_wear,
    by_yaw,
)


class ChooseSinePlate(RequestModel):
    """The sine plate with a flat wheel, table traversed."""

    center_distance: CenterDistance
    stack_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the stack as wrung, in `units`.", examples=[0.00002]
    )
    plate_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the plate's angle, in arc-seconds, by all that is not "
        "stated beside it: center distance, rolls, face, table, dirt and temperature, as "
        "`sine.uncertainty` has them.",
    )
    axis_pitch_error_limit_arcsec: NonNegativeArcsec | None = Field(
        None,
        description="Largest error ± of the fixture's axis from parallel to the plate, in "
        "arc-seconds, in the plane in which the plate tilts.",
        examples=[5.0],
    )
    axis_yaw_error_limit_arcsec: AxisYaw = None
    wheel_breakdown: Breakdown = None
    largest_angle: LargestAngle = Field(
        None, description="Largest angle that the plate reaches, in degrees."
    )
    setup_minutes: PlateSetupMinutes = times.PLATE.setup
    inspection_minutes: PlateInspectionMinutes = times.PLATE.inspection


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


def ways_of(ways: ChooseWays, cone: DressedCone, units: Units) -> Iterator[Way]:
    """Each way that is described, for this cone, its lengths in `units`."""
    if ways.sine_plate is not None:
        yield _sine_plate(ways.sine_plate, cone, units)
    if ways.dressed_wheel is not None:
        yield dressed_wheel_way(ways.dressed_wheel, cone, units, "ways/dressed_wheel/")
    if ways.wheel_side is not None:
        yield wheel_side_way(ways.wheel_side, cone, units)
    if ways.swivelled_workhead is not None:
        yield workhead_way(ways.swivelled_workhead, cone, "ways/swivelled_workhead/")


def _sine_plate(plate: ChooseSinePlate, cone: DressedCone, units: Units) -> Way:
    require_center_distance(plate.center_distance, units, "ways/sine_plate/center_distance")
    stack = by_sine_base(
        "stack_error_limit", plate.center_distance, cone.angle_rad, plate.stack_error_limit
    )
    return Way(
        "sine-plate",
        plate.setup_minutes,
        plate.inspection_minutes,
        (
            "The stack against a wrong block: measure it, or build it again from other blocks.",
            "The fixture's axis parallel to the plate, by an indicator along a test bar.",
        ),
        budget_of(
            stack,
            by_angle("plate_error_limit_arcsec", plate.plate_error_limit_arcsec),
            by_angle("axis_pitch_error_limit_arcsec", plate.axis_pitch_error_limit_arcsec),
            by_yaw("axis_yaw_error_limit_arcsec", cone, plate.axis_yaw_error_limit_arcsec),
            by_wear("wheel_breakdown", cone.slant, plate.wheel_breakdown),
        ),
        tuple(past_reach(plate.largest_angle, cone, "The plate reaches")),
    )
