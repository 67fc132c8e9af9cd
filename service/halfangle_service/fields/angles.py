"""Angles as the API speaks them.

In: decimal degrees as a number, or a string in degrees, minutes and seconds (`30°15'20"`,
`30 15 20`, `30:15:20`, `-0°05'`). Out: an object `{degrees, dms}`. Inside: a float of degrees in
requests, radians in the maths.
"""

from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from halfangle_service.fields.base import ResultModel
from halfangle_service.fields.numbers import Unit
from halfangle_service.trade import elementary
from halfangle_service.trade.angles import DMS_PATTERN, format_dm, format_dms, parse_dms

#: The named format of an angle as text, and what it says; the contract has it under `x-formats`.
ANGLE_FORMAT = "angle"
LONGEST_ANGLE = 40
#: Both forms of an angle in a request; a field's own bounds in degrees stand beside them.
ANGLE_FORMS: dict[str, Any] = {
    "anyOf": [
        {"title": "Decimal degrees", "type": "number"},
        {
            "title": "Degrees, minutes, seconds",
            "type": "string",
            "format": ANGLE_FORMAT,
            "pattern": DMS_PATTERN,
            "maxLength": LONGEST_ANGLE,
        },
    ],
    "x-unit": "degree",
}
ANGLE_FORMAT_MEANING = (
    "An angle in degrees, minutes and seconds: `60°`, `30°15'`, `30°15'20\"`, `30 15 20`, "
    "`30:15:20`, `-0°05'`; `30 15` and `1:20` are degrees and minutes, never a ratio. Minutes and "
    "seconds stay below 60, and only the last part may carry decimals: so much says the `pattern` "
    "beside the format. The format says besides what no pattern can: the value in degrees lies "
    "within the bounds of its field, which JSON Schema holds only a number to. A validator that "
    "does not know the format lets a string out of bounds pass, and the service refuses it "
    "(`/problems/invalid-request`, the bound named); one that is strict about unknown formats "
    "wants it declared. Every angle is read so but the `text` of `tapers.angle`, "
    "which has no format: tapers, ratios and designations are read there, and `1:20` is a taper."
)


class Sexagesimal(float):
    """Degrees that came in as degrees, minutes and seconds, so that no reading note is due."""


class Angle(ResultModel):
    """An angle in an answer, in two forms of the same value."""

    degrees: Annotated[float, Unit("degree")] = Field(
        description="Decimal degrees, full precision.", examples=[30.255555555555556]
    )
    dms: str = Field(
        description="Degrees, minutes and seconds, rounded to 0.01 second.",
        examples=["30°15'20.00\""],
    )

    @classmethod
    def of(cls, degrees: float) -> "Angle":
        """Give an angle of so many decimal degrees."""
        return cls(degrees=degrees, dms=format_dms(degrees))


def angle_from_radians(angle_rad: float) -> Angle:
    """Give an angle of so many radians as the API writes it."""
    return Angle.of(elementary.degrees(angle_rad))


class Direction(ResultModel):
    """A direction round a turn in an answer, in two forms of the same value."""

    degrees: Annotated[float, Unit("degree")] = Field(
        description="Decimal degrees, from 0 to below 360.", examples=[168.6900675259798]
    )
    dms: str = Field(
        description="Degrees and minutes, rounded to the minute: finer no part is marked.",
        examples=["168°41'"],
    )

    @classmethod
    def of(cls, degrees: float | None) -> "Direction | None":
        """Give a direction of so many decimal degrees; None where there is none."""
        return None if degrees is None else cls(degrees=degrees, dms=format_dm(degrees))


@dataclass(frozen=True)
class AngleInput:
    """Marks a request's float field as an angle in degrees: a number, or a string in d-m-s.

    Use it as `Annotated[float, AngleInput(gt=0, lt=90)]`; the bounds are degrees. It is one marker
    because the JSON Schema (a union) and the validation (bounds on the value read) must agree.
    `measured` marks an angle that an instrument gave, or that is read off the part or the machine:
    its decimals are what they look like, so it is not noted as perhaps meant in minutes.
    """

    gt: float | None = None
    ge: float | None = None
    lt: float | None = None
    le: float | None = None
    measured: bool = False

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Validate a number against the bounds; read a string first."""
        number = core_schema.float_schema(
            strict=True, allow_inf_nan=False, gt=self.gt, ge=self.ge, lt=self.lt, le=self.le
        )
        return core_schema.no_info_wrap_validator_function(_read_angle, number)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Describe the union of both forms, and the bounds beside it."""
        bounds = {
            "exclusiveMinimum": self.gt,
            "minimum": self.ge,
            "exclusiveMaximum": self.lt,
            "maximum": self.le,
        }
        return {**ANGLE_FORMS, **{k: v for k, v in bounds.items() if v is not None}}


#: Included angle of a vee: from a slit to almost a plane.
VeeAngle = Annotated[float, AngleInput(ge=1, le=175)]


def _read_angle(value: Any, number: core_schema.ValidatorFunctionWrapHandler) -> float:
    """Read one angle; the error says which forms are taken."""
    if not isinstance(value, str):
        return float(number(value))
    try:
        degrees = parse_dms(value)
    except ValueError:
        raise PydanticCustomError(
            "angle_form",
            "Input should be decimal degrees as a number (30.25), or a string in degrees, minutes "
            "and seconds (30°15'20\", 30 15 20 or 30:15:20)",
        ) from None
    return Sexagesimal(number(degrees))
