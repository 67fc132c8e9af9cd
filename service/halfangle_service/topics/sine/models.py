"""Requests and results of settings, angles and tables; the fields that all sine requests share."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    ArcsecOut,
    CountOut,
    Length,
    LengthOut,
    ResultModel,
    SignedLength,
    Unit,
)
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    PlateFields,
    ReachField,
    ResolutionField,
)


class SineSettingRequest(PlateFields):
    """A sine bar or plate, and the angle wanted."""

    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle between the plate's top and the surface it stands on, in degrees.",
        examples=[30.0, "8°18'"],
    )
    largest_angle: ReachField = None
    steep_angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        45.0,
        description="Angle in degrees past which the complement (work turned by 90°) is offered.",
    )
    resolution: ResolutionField = None


class SineComplement(ResultModel):
    """The same work turned by 90°, set to the complement of the angle."""

    angle: Angle = Field(description="90° less the angle wanted.")
    height: LengthOut = Field(description="Difference of the stacks that sets it.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    rounding_error_arcsec: ArcsecOut = Field(
        description="Angle at `height_to_set` less the complement."
    )
    arcsec_per_step: ArcsecPerStep


class SineSettingResult(ResultModel):
    """The difference in height that sets the angle, and how much a small error of it matters."""

    height: LengthOut = Field(
        description="Height of the stack under the high roll over that under the low roll."
    )
    height_to_set: LengthOut = Field(
        description="The same, rounded to what can be built (`resolution`)."
    )
    angle_as_set: Angle = Field(description="The angle that `height_to_set` gives.")
    rounding_error_arcsec: ArcsecOut = Field(
        description="`angle_as_set` less the angle wanted, in arc-seconds."
    )
    arcsec_per_unit: Annotated[float, Unit("arcsecond_per_length")] = Field(
        description="Change of angle in arc-seconds for one whole unit of height."
    )
    step: LengthOut = Field(description="The bench step: 0.0001 in or 0.001 mm.")
    arcsec_per_step: ArcsecPerStep
    angle: Angle = Field(description="The angle as it was read.")
    complement: SineComplement | None = Field(
        description="Setting for the work turned by 90°, past `steep_angle` only."
    )


class SineAngleRequest(PlateFields):
    """A sine bar or plate, and the stack under its high roll, or the stacks under both."""

    height: Length | None = Field(
        None,
        description="Height of the stack under the high roll over that under the low roll; less "
        "than the center distance. Either this or `high_stack`.",
        examples=[2.5],
    )
    high_stack: SignedLength | None = Field(
        None, description="Stack under the high roll, as measured, in `units`."
    )
    low_stack: SignedLength = Field(
        0.0, description="Stack under the low roll, as measured; counts with `high_stack` only."
    )


class SineAngleResult(ResultModel):
    """The angle that a stack gives."""

    angle: Angle = Field(
        description="Angle between the plate's top and the surface it stands on; negative where "
        "the roll called high stands lower."
    )
    height: LengthOut = Field(description="Difference of the stacks, high less low.")
    arcsec_per_step: ArcsecPerStep


class SineTableRequest(PlateFields):
    """A sine bar or plate, and a range of angles."""

    first_angle: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="First angle of the table, in degrees.", examples=[0.0]
    )
    last_angle: Annotated[float, AngleInput(ge=0, lt=90)] = Field(
        description="Last angle of the table, in degrees; the table may end a part step below it.",
        examples=[60.0],
    )
    step: Annotated[float, AngleInput(ge=1 / 3600, le=45)] = Field(
        description="Step from one angle to the next, in degrees; at least one second of arc.",
        examples=[1.0, "0°01'"],
    )
    resolution: ResolutionField = None


class SineTableRow(ResultModel):
    """One line of a setting table."""

    angle: Angle = Field(description="The angle.")
    height: LengthOut = Field(description="Difference of the stacks that sets it.")
    height_to_set: LengthOut = Field(description="The same, rounded to the resolution.")
    arcsec_per_step: ArcsecPerStep


class SineTableResult(ResultModel):
    """A setting table, as rows and as CSV."""

    count: CountOut = Field(description="How many rows.")
    rows: list[SineTableRow] = Field(description="The rows, angles ascending.")
    csv: str = Field(
        description="The same table as CSV (RFC 4180), with a header that names units; heights in "
        "full precision."
    )
