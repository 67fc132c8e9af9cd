"""Numbers with a unit and a bound, for requests and results.

Each request type refuses NaN, infinities, strings and booleans, and names its bound. The bounds
are there to refuse absurd magnitudes (a slip of the decimal point by many places) and to keep the
arithmetic far from overflow; they are not limits of the trade.
"""

from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import CoreSchema, PydanticCustomError, core_schema

from halfangle_service.trade.units import Units

UnitName = Literal[
    "length",  # the request's `units`
    "degree",
    "arcsecond",
    "celsius",
    "per_kelvin",
    "1",  # a pure number
    "percent",
    "count",
    "micrometre",
    "nanometre",
    "millimetre",
    "inch",
    "arcsecond_per_length",
    "length_per_length",
    "inch_per_foot",
    "per_minute",
    "metre_per_second",
    "foot_per_minute",
    "length_per_minute",
    "volume",
    "second",
    "minute",
    "newton",
    "kilogram",
    "year",
    "microradian",
    "stated",  # the unit that a field beside it names
    "per_stated",
]


@dataclass(frozen=True)
class Unit:
    """Names the unit of a numeric field; it stands as `x-unit` in the JSON Schema."""

    name: UnitName

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Add the unit to the field's own schema."""
        return {**handler(schema), "x-unit": self.name}


#: Marks a request's float as a number and nothing else: no text, no NaN, no infinity.
FINITE = Field(strict=True, allow_inf_nan=False)

# Requests ------------------------------------------------------------------------------------
UnitsField = Annotated[Units, Field(description="Unit of every length here and in the answer.")]
Length = Annotated[float, FINITE, Field(ge=1e-6, le=1e4), Unit("length")]
NonNegativeLength = Annotated[float, FINITE, Field(ge=0, le=1e4), Unit("length")]
SignedLength = Annotated[float, FINITE, Field(ge=-1e4, le=1e4), Unit("length")]
Arcsec = Annotated[float, FINITE, Field(ge=1e-6, le=324_000), Unit("arcsecond")]
NonNegativeArcsec = Annotated[float, FINITE, Field(ge=0, le=324_000), Unit("arcsecond")]
SignedArcsec = Annotated[float, FINITE, Field(ge=-324_000, le=324_000), Unit("arcsecond")]
Celsius = Annotated[float, FINITE, Field(ge=-40, le=150), Unit("celsius")]
Rpm = Annotated[float, FINITE, Field(ge=1, le=500_000), Unit("per_minute")]
Minutes = Annotated[float, FINITE, Field(ge=0, le=10_000), Unit("minute")]
Seconds = Annotated[float, FINITE, Field(ge=0, le=10_000), Unit("second")]
Number = Annotated[float, FINITE, Field(ge=-1e9, le=1e9), Unit("1")]

# Results -------------------------------------------------------------------------------------
SharePercent = Annotated[float, Unit("percent")]
LengthOut = Annotated[float, Unit("length")]
ArcsecOut = Annotated[float, Unit("arcsecond")]
DegreesOut = Annotated[float, Unit("degree")]
NumberOut = Annotated[float, Unit("1")]
MinutesOut = Annotated[float, Unit("minute")]
SecondsOut = Annotated[float, Unit("second")]
CountOut = Annotated[int, Unit("count")]


@dataclass(frozen=True)
class Count:
    """Marks a request's int field as a count; use it as `Annotated[int, Count(ge=1, le=12)]`.

    JSON Schema calls 1.0 an integer, so 1.0 is taken; `true`, `"1"` and 1.5 are not.
    """

    ge: int = 0
    le: int = 1_000_000

    def __get_pydantic_core_schema__(
        self, source: Any, handler: GetCoreSchemaHandler
    ) -> CoreSchema:
        """Validate a whole number within the bounds."""
        number = core_schema.int_schema(strict=True, ge=self.ge, le=self.le)
        return core_schema.no_info_before_validator_function(_whole, number)

    def __get_pydantic_json_schema__(
        self, schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        """Describe a bounded integer."""
        return {"type": "integer", "minimum": self.ge, "maximum": self.le, "x-unit": "count"}


def _whole(value: Any) -> Any:
    """Turn 1.0 into 1, leave the rest to the strict integer check."""
    if isinstance(value, float):
        if not value.is_integer():
            raise PydanticCustomError("whole_number", "Input should be a whole number")
        return int(value)
    return value


SparkOutPasses = Annotated[
    Annotated[int, Count(ge=0, le=100)], Field(description="Passes without feed at the end.")
]
