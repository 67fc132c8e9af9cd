"""Guide values of dressing by purpose, from the table beside this module."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing

Purpose = Literal["roughing", "general", "finishing"]


@dataclass(frozen=True, slots=True)
class Guide:
    """Guide values for a purpose: overlap ratio, and depth of a pass in mm, from and to."""

    purpose: Purpose
    overlap_low: float
    overlap_high: float
    depth_low_mm: float
    depth_high_mm: float
    source: str
    standing: Standing
    note: str


@cache
def guides() -> dict[Purpose, Guide]:
    """Give the guide values by purpose, from the table beside this module, coarse to fine."""
    return {row["purpose"]: _read(row) for row in read_rows(__name__, "dressing.toml", "guide")}


def _read(row: dict[str, Any]) -> Guide:
    return Guide(
        purpose=row["purpose"],
        overlap_low=row["overlap"][0],
        overlap_high=row["overlap"][1],
        depth_low_mm=row["depth_mm"][0],
        depth_high_mm=row["depth_mm"][1],
        source=citation(row),
        standing=standing(row),
        note=row["note"],
    )
