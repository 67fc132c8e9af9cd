"""The height of the stack that sets a sine bar or plate to an angle."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle, unusual_stack
from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    LengthOut,
    ResultModel,
    Unit,
    angle_from_radians,
    bench_step,
)
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    PlateFields,
    ReachField,
    ResolutionField,
    plate_setting,
)
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.sine.complement import (
    SineComplement,
    complement_of,
    require_reach_or_complement,
)
from halfangle_service.topics.sine.sources import SINE_RELATION, STEEP_PRACTICE
from halfangle_service.trade import elementary
from halfangle_service.trade.sine.geometry import arcsec_per_height


class SineSettingRequest(PlateFields):
    """A sine bar or plate, and the angle wanted."""

    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle between the plate's top and the surface it stands on, in degrees.",
        examples=[30.0, "8°18'"],
    )
    largest_angle: ReachField = None
    steep_angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        STEEP_DEGREES,
        description="Angle in degrees past which the complement (work turned by 90°) is offered.",
    )
    resolution: ResolutionField = None


class SineSettingResult(ResultModel):
    """The difference in height that sets the angle, and how much a small error of it matters."""

    height: LengthOut = Field(
        description="Height of the stack under the high roll over that under the low roll."
    )
    height_to_set: LengthOut = Field(
        description="The same, rounded to what can be built (`resolution`)."
    )
    angle_as_set: Angle = Field(description="The angle that `height_to_set` gives.")
    deviation_arcsec: ArcsecOut = Field(
        description="`angle_as_set` less the angle wanted, in arc-seconds."
    )
    arcsec_per_unit: Annotated[float, Unit("arcsecond_per_length")] = Field(
        description="Change of angle in arc-seconds for one whole unit of height."
    )
    bench_step: LengthOut = Field(description="The bench step: 0.0001 in or 0.001 mm.")
    arcsec_per_step: ArcsecPerStep
    angle: Angle = Field(description="The angle as it was read.")
    complement_setting: SineComplement | None = Field(
        description="Setting for the work turned by 90°, past `steep_angle` only."
    )


@operation(
    "sine.setting",
    relations=(
        "height = center_distance × sin(angle) + base_step − (high_roll_diameter − "
        "low_roll_diameter) / 2",
        "dθ/dh = 1 / (L cos θ)",
    ),
    sources=(SINE_RELATION, STEEP_PRACTICE),
    example={"units": "in", "center_distance": 5, "angle": 30},
    columns=True,
)
def setting(request: SineSettingRequest) -> Outcome[SineSettingResult]:
    """Sine setting.

    The height of the stack that sets a sine bar or plate to an angle, what it is worth once
    rounded, and past a stated angle the setting of the complement.
    """
    require_reach_or_complement(request, request.angle, request.largest_angle, request.resolution)
    made = plate_setting(request, elementary.radians(request.angle), request.resolution)
    step = bench_step(request.units)
    per_unit = arcsec_per_height(request.center_distance, made.angle_rad)
    result = SineSettingResult(
        height=made.height,
        height_to_set=made.height_to_set,
        angle_as_set=angle_from_radians(made.angle_as_set_rad),
        deviation_arcsec=made.deviation_arcsec,
        arcsec_per_unit=per_unit,
        bench_step=step,
        arcsec_per_step=per_unit * step,
        angle=Angle.of(request.angle),
        complement_setting=complement_of(request, request.angle, request.resolution)
        if request.angle > request.steep_angle
        else None,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _advisories(request: SineSettingRequest, result: SineSettingResult) -> Iterator[Advisory]:
    yield from steep_angle(request.angle, result.arcsec_per_step, request.steep_angle)
    yield from unusual_stack(
        result.height, request.center_distance, request.units, result.height_to_set
    )
