"""Standard tapers, from the published tables beside this module."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.tables.tapers.rows import number, rate_in
from halfangle_service.trade.units import Units

_TABLES = (
    "morse_inch.toml",
    "morse_iso.toml",
    "steep_inch.toml",
    "steep_iso.toml",
    "metric.toml",
    "brown_sharpe.toml",
    "jarno.toml",
    "drill_chuck.toml",
)


@dataclass(frozen=True, slots=True)
class StandardTaper:
    """One standard taper; lengths in its own `units`, `rate` on the diameter (ISO 1119).

    `small_diameter` and `small_end_depth`, its distance from the gauge plane, are None where the
    table gives neither.
    """

    designation: str
    name: str
    series: str
    units: Units
    rate: float
    gauge_diameter: float
    small_diameter: float | None
    small_end_depth: float | None
    source: str
    standing: Standing
    note: str


@cache
def standard_tapers() -> dict[str, StandardTaper]:
    """Give every standard taper by its designation."""
    rows = (row for name in _TABLES for row in read_rows(__name__, name, "taper"))
    return {row["designation"]: _read(row) for row in rows}


def _read(row: dict[str, Any]) -> StandardTaper:
    return StandardTaper(
        designation=row["designation"],
        name=row["name"],
        series=row["series"],
        units=row["unit"],
        rate=rate_in(row),
        gauge_diameter=float(row["gauge_diameter"]),
        small_diameter=number(row, "small_diameter"),
        small_end_depth=number(row, "small_end_depth"),
        source=citation(row),
        standing=standing(row),
        note=row.get("note", ""),
    )
