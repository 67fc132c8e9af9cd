"""Requests and results about the terms of runout."""

from typing import Literal

from pydantic import Field

from halfangle_service.fields import (
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    Units,
)

RunoutTermKey = Literal[
    "tir",
    "eccentricity",
    "concentricity_zone_diameter",
    "coaxiality_zone_diameter",
    "circular_runout",
    "total_runout",
]


class RunoutConvertRequest(RequestModel):
    """A value of one term, and the term wanted."""

    units: Units = Field(description="Unit of every length here and in the answer.")
    value: NonNegativeLength = Field(description="Value found, in `units`.", examples=[0.0004])
    given: RunoutTermKey = Field(description="Term of the value.", examples=["tir"])
    wanted: RunoutTermKey = Field(description="Term wanted.", examples=["eccentricity"])
    form_error: NonNegativeLength | None = Field(
        None,
        description="Departure of the section from roundness about its least-squares center, peak "
        "to valley, in `units`; 0 for a round section. None, and it is taken as unknown.",
    )
    every_section_alike: bool = Field(
        False,
        description="True where the value is known to be the greatest of all sections, or the "
        "axis to be parallel to the datum and the form the same all along.",
    )


class RunoutTerm(ResultModel):
    """One term by its definition."""

    key: RunoutTermKey = Field(description="Key of the term.")
    name: str = Field(description="Its name.")
    definition: str = Field(description="Its definition, in this project's words.")
    scope: Literal["section", "feature"] = Field(
        description="Whether a value speaks of one section or of the whole feature."
    )
    source: str = Field(description="Standard that defines it.")
    standing: Literal["published", "from-memory"] = Field(description="How the definition is had.")


class RunoutTermList(ResultModel):
    """The terms."""

    terms: list[RunoutTerm] = Field(description="Each term by its definition.")


class RunoutConvertResult(ResultModel):
    """What the value says of the other term, and why no more."""

    relation: Literal["equal", "between", "at least", "at most"] = Field(
        description="`equal`: convertible; else bounds only, and `reasons` says why."
    )
    value: LengthOut | None = Field(
        description="The value, where convertible; else None. Of a term that speaks of one section "
        "it is that of the worst section, where the given one speaks of the whole feature."
    )
    least: LengthOut = Field(description="It is not less than this.")
    most: LengthOut | None = Field(description="It is not more than this; None for no bound.")
    reasons: list[str] = Field(description="Why it is not equal; empty where it is.")
    given: RunoutTerm = Field(description="The term sent.")
    wanted: RunoutTerm = Field(description="The term wanted.")
