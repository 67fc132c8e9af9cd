"""Requests and results of the sine topic."""

from typing import Annotated

from pydantic import Field

from halfangle_service.quantities import (
    Angle,
    AngleInput,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Unit,
    Units,
)

CenterDistance = Annotated[
    Length,
    Field(description="Distance between the centers of the two rolls, in `units`.", examples=[5.0]),
]
UnitsField = Annotated[Units, Field(description="Unit of every length here and in the answer.")]


class SineSettingRequest(RequestModel):
    """A sine bar or plate, and the angle wanted."""

    units: UnitsField
    center_distance: CenterDistance
    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle between the plate's top and the surface it stands on, in degrees.",
        examples=[30.0, "8°18'"],
    )


class SineSettingResult(ResultModel):
    """The difference in height that sets the angle, and how much a small error of it matters."""

    height: LengthOut = Field(
        description="Height of the stack under the high roll over that under the low roll."
    )
    arcsec_per_unit: Annotated[float, Unit("arcsecond_per_length")] = Field(
        description="Change of angle in arc-seconds for one whole unit of height."
    )
    step: LengthOut = Field(description="The bench step: 0.0001 in or 0.001 mm.")
    arcsec_per_step: Annotated[float, Unit("arcsecond")] = Field(
        description="Change of angle in arc-seconds for one bench step of height."
    )
    angle: Angle = Field(description="The angle as it was read.")


class SineAngleRequest(RequestModel):
    """A sine bar or plate, and the stack under its high roll."""

    units: UnitsField
    center_distance: CenterDistance
    height: Length = Field(
        description="Height of the stack under the high roll over that under the low roll; less "
        "than the center distance.",
        examples=[2.5],
    )


class SineAngleResult(ResultModel):
    """The angle that a stack gives."""

    angle: Angle = Field(description="Angle between the plate's top and the surface it stands on.")
    arcsec_per_step: Annotated[float, Unit("arcsecond")] = Field(
        description="Change of angle in arc-seconds for one bench step of height (0.0001 in or "
        "0.001 mm)."
    )
