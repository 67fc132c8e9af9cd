"""Tolerances of sine bars by standard, from the table beside this module; in mm and arc-seconds."""

from dataclasses import dataclass
from functools import cache

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing


@dataclass(frozen=True, slots=True)
class BarTolerance:
    """One tolerance: from `low_mm` to `high_mm` where sources differ, ± where `either_way`.

    `per_length_mm` is the length that it is for; None where it is for the whole surface. The
    tolerance of an angle has `arcsec` alone.
    """

    key: str
    standard: str
    applies_to: str
    characteristic: str
    low_mm: float | None
    high_mm: float | None
    per_length_mm: float | None
    arcsec: float | None
    either_way: bool
    source: str
    edition: str
    standing: Standing
    note: str


@cache
def bar_tolerances() -> dict[str, BarTolerance]:
    """Give every tolerance by its key, in the table's order."""
    return {
        row["key"]: BarTolerance(
            key=row["key"],
            standard=row["standard"],
            applies_to=row["applies_to"],
            characteristic=row["characteristic"],
            low_mm=row.get("low"),
            high_mm=row.get("high"),
            per_length_mm=row.get("per_length"),
            arcsec=row.get("arcsec"),
            either_way=row.get("either_way", False),
            source=citation(row),
            edition=row["edition"],
            standing=standing(row),
            note=row.get("note", ""),
        )
        for row in read_rows(__name__, "bars.toml", "tolerance")
    }
