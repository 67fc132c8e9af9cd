"""Tolerances of sine bars and plates by standard, from published tables."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import ArcsecOut, ResultModel, Unit
from halfangle_service.operation import published_table
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.sine.bars import BarTolerance, bar_tolerances

_Millimetres = Annotated[float, Unit("millimetre")]


class SineBarToleranceEntry(ResultModel):
    """One tolerance of a sine bar."""

    key: str = Field(description="Key of the row.", examples=["is-5359-100-center-distance"])
    standard_name: str = Field(description="Standard, or kind of text.")
    applies_to: str = Field(description="Bars that it is for.")
    characteristic: str = Field(description="What is limited.")
    tolerance_low_mm: _Millimetres | None = Field(
        description="The tolerance in millimetres, the tighter where sources differ; null of an "
        "angle."
    )
    tolerance_high_mm: _Millimetres | None = Field(
        description="The wider where sources differ, else the same."
    )
    per_length_mm: _Millimetres | None = Field(
        description="Length that it is for; null where it is for the whole of what it limits."
    )
    tolerance_arcsec: ArcsecOut | None = Field(
        description="Of an angle set, either way; null of a length."
    )
    either_way: bool = Field(description="True where the tolerance is plus or minus.")
    edition: str = Field(description="Edition of the standard.")
    source: str = Field(description="Where the row comes from.")
    standing: Standing = Field(description="How it is known.")
    note: str = Field(description="What to mind; empty where nothing.")


@published_table("sine.bar-tolerances", singular="bar-tolerance", key="key")
def sine_bar_tolerances() -> dict[str, SineBarToleranceEntry]:
    """Tolerances of sine bars.

    What standards and textbooks ask of sine bars: faces, rolls, center distance; rows from memory
    say so.
    """
    return {key: _entry(row) for key, row in bar_tolerances().items()}


def _entry(row: BarTolerance) -> SineBarToleranceEntry:
    return SineBarToleranceEntry(
        key=row.key,
        standard_name=row.standard,
        applies_to=row.applies_to,
        characteristic=row.characteristic,
        tolerance_low_mm=row.low_mm,
        tolerance_high_mm=row.high_mm,
        per_length_mm=row.per_length_mm,
        tolerance_arcsec=row.arcsec,
        either_way=row.either_way,
        edition=row.edition,
        source=row.source,
        standing=row.standing,
        note=row.note,
    )
