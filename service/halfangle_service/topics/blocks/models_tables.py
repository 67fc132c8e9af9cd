"""The built-in tables: sets, grades, sets of angle blocks."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    CountOut,
    LengthOut,
    ResultModel,
    Unit,
    Units,
)

Standing = Literal["published", "from-memory"]
_Millimetres = Annotated[float, Unit("millimetre")]
_Micrometres = Annotated[float, Unit("micrometre")]


class BlockSetEntry(ResultModel):
    """A built-in set in short."""

    name: str = Field(description="Name to use as `set`.", examples=["inch-81"])
    units: Units = Field(description="Unit of its nominal sizes.")
    pieces: CountOut = Field(description="How many blocks.")
    series: list[str] = Field(description="Its series: first to last by step (count).")
    source: str = Field(description="Where the composition comes from.")
    standing: Standing = Field(description="How it is had.")
    note: str = Field(description="What to mind; empty where nothing.")


class BlockSetList(ResultModel):
    """The built-in sets. No standard fixes the composition of a set: check it against your box."""

    sets: list[BlockSetEntry] = Field(description="The sets.")


class BlockSetDetail(BlockSetEntry):
    """A built-in set with every block."""

    sizes: list[LengthOut] = Field(description="Every block, ascending, in the set's units.")
    wear_blocks: list[LengthOut] = Field(description="Which of them are wear blocks.")


class BlockGradeRange(ResultModel):
    """Limits of one range of sizes."""

    up_to: _Millimetres = Field(description="Upper end of the range, included, in millimetres.")
    limit_deviation: _Micrometres = Field(
        description="Limit deviation te of the length at any point, in micrometres: ± this."
    )
    variation: _Micrometres = Field(
        description="Tolerance tv for the variation in length, in micrometres."
    )


class BlockGradeEntry(ResultModel):
    """A tolerance grade."""

    name: str = Field(description="Name to use as `grade`.", examples=["ISO 1"])
    source: str = Field(description="Standard, edition, table.")
    standing: Standing = Field(description="How it is had.")
    note: str = Field(description="What to mind; empty where nothing.")
    ranges: list[BlockGradeRange] = Field(description="Its ranges, ascending.")


class BlockGradeList(ResultModel):
    """The tolerance grades."""

    grades: list[BlockGradeEntry] = Field(description="The grades.")


class BlockAngleSetEntry(ResultModel):
    """A built-in set of angle blocks."""

    name: str = Field(description="Name to use as `set`.", examples=["angle-16"])
    pieces: CountOut = Field(description="How many blocks.")
    angles: list[Angle] = Field(description="Its blocks, descending.")
    source: str = Field(description="Where the composition comes from.")
    standing: Standing = Field(description="How it is had.")
    note: str = Field(description="What to mind; empty where nothing.")


class BlockAngleGradeEntry(ResultModel):
    """A grade of angle blocks."""

    name: str = Field(description="Name to use as `grade`.", examples=["toolroom"])
    accuracy_arcsec: ArcsecOut = Field(description="Each block errs by ± this.")
    source: str = Field(description="Where it comes from.")
    standing: Standing = Field(description="How it is had.")


class BlockAngleSetList(ResultModel):
    """The built-in sets of angle blocks, and their grades."""

    sets: list[BlockAngleSetEntry] = Field(description="The sets.")
    grades: list[BlockAngleGradeEntry] = Field(description="The grades.")
