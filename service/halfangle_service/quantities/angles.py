"""Angles as the API speaks them.

In: decimal degrees as a number, or a string in degrees, minutes and seconds (`30°15'20"`,
`30 15 20`, `30:15:20`, `-0°05'`). Out: an object `{degrees, dms}`. Inside: a float of degrees in
requests, radians in the maths.
"""

import math
import re
from dataclasses import dataclass
from typing import Annotated, Any

from pydantic import Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from halfangle_service.quantities.base import ResultModel
from halfangle_service.quantities.numbers import Unit

ARCSEC_PER_RADIAN = math.degrees(1.0) * 3600.0

_PART = r"[0-5]?[0-9]"
_LAST = r"[0-5]?[0-9](?:\.[0-9]{1,9})?"
_PRIME, _DOUBLE_PRIME = r"['′’]", r"[\"″”]"
#: Only the last part may carry decimals; minutes and seconds stay below 60.
DMS_PATTERN = (
    r"^[+-]?[0-9]{1,3}(?:°"
    rf"|° ?{_LAST}{_PRIME}"
    rf"|° ?{_PART}{_PRIME} ?{_LAST}{_DOUBLE_PRIME}"
    rf"|[ :]{_LAST}"
    rf"|[ :]{_PART}[ :]{_LAST})$"
)
_DMS = re.compile(DMS_PATTERN)
_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")


class Sexagesimal(float):
    """Degrees that came in as degrees, minutes and seconds, so that no reading note is due."""


def parse_dms(text: str) -> float:
    r"""Read an angle written in degrees, minutes and seconds; the answer is in decimal degrees.

    >>> parse_dms("30°15'20\""), parse_dms("-0 05")
    (30.255555555555556, -0.08333333333333333)

    Raises ValueError where the text is not such an angle.
    """
    # The whole text: `$` by itself would let a line's end through.
    if not _DMS.fullmatch(text):
        raise ValueError(f"{text[:40]!r} is not an angle in degrees, minutes and seconds")
    degrees, minutes, seconds = ([float(n) for n in _NUMBER.findall(text)] + [0.0, 0.0])[:3]
    magnitude = degrees + minutes / 60.0 + seconds / 3600.0
    return -magnitude if text.startswith("-") else magnitude


def format_dms(degrees: float) -> str:
    r"""Write decimal degrees in degrees, minutes and seconds, to 0.01 second of arc.

    >>> format_dms(-0.0833333333333), format_dms(29.9999999999)
    ('-0°05\'00.00"', '30°00\'00.00"')
    """
    hundredths = round(abs(degrees) * 360_000)
    minutes, rest = divmod(hundredths, 6_000)
    sign = "-" if degrees < 0 and hundredths else ""
    return f"{sign}{minutes // 60}°{minutes % 60:02d}'{rest / 100:05.2f}\""


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
    return Angle.of(math.degrees(angle_rad))


@dataclass(frozen=True)
class AngleInput:
    """Marks a request's float field as an angle in degrees: a number, or a string in d-m-s.

    Use it as `Annotated[float, AngleInput(gt=0, lt=90)]`; the bounds are degrees. It is one marker
    because the JSON Schema (a union) and the validation (bounds on the value read) must agree.
    """

    gt: float | None = None
    ge: float | None = None
    lt: float | None = None
    le: float | None = None

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
        """Describe the union of both forms."""
        bounds = {
            "exclusiveMinimum": self.gt,
            "minimum": self.ge,
            "exclusiveMaximum": self.lt,
            "maximum": self.le,
        }
        number = {"type": "number"} | {k: v for k, v in bounds.items() if v is not None}
        text = {"type": "string", "pattern": DMS_PATTERN, "maxLength": 40}
        return {"anyOf": [number, text], "x-unit": "degree"}


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
