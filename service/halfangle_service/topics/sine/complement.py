"""The complement of an angle: the same work turned by 90° on its sine bar or plate."""

from pydantic import Field

from halfangle_service.fields import Angle, ArcsecOut, LengthOut, ResultModel
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    PlateFields,
    arcsec_per_step,
    plate_setting,
)
from halfangle_service.trade import elementary
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.sine.geometry import beyond_reach, require_reach
from halfangle_service.trade.wording import figure, plain


class SineComplement(ResultModel):
    """The same work turned by 90°, set to the complement of the angle."""

    angle: Angle = Field(description="90° less the angle wanted.")
    height: LengthOut = Field(description="Difference of the stacks that sets it.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    deviation_arcsec: ArcsecOut = Field(description="Angle at `height_to_set` less the complement.")
    arcsec_per_step: ArcsecPerStep


def complement_of(
    plate: PlateFields, angle_degrees: float, resolution: float | None = None
) -> SineComplement:
    """Setting of the complement of an angle."""
    degrees = tidy(90.0 - angle_degrees, 90.0)
    made = plate_setting(plate, elementary.radians(degrees), resolution)
    return SineComplement(
        angle=Angle.of(degrees),
        height=made.height,
        height_to_set=made.height_to_set,
        deviation_arcsec=made.deviation_arcsec,
        arcsec_per_step=arcsec_per_step(plate.center_distance, made.angle_rad, plate.units),
    )


def require_reach_or_complement(
    plate: PlateFields,
    angle_degrees: float,
    largest_degrees: float | None,
    resolution: float | None = None,
) -> None:
    """Refuse an angle beyond the plate's reach, with the complement's setting where it reaches."""
    if not beyond_reach(angle_degrees, largest_degrees):
        return
    complement = complement_of(plate, angle_degrees, resolution)
    if beyond_reach(complement.angle.degrees, largest_degrees):
        require_reach(angle_degrees, largest_degrees, "angle")
    require_reach(
        angle_degrees,
        largest_degrees,
        "angle",
        instead=f"Where the work can be turned by 90°, set the complement, "
        f"{plain(complement.angle.degrees)}°: {figure(complement.height, plate.units)}.",
        more={"complement_setting": complement.model_dump(warnings=False)},
    )
