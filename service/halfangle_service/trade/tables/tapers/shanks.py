"""Principal dimensions of standard shanks and sockets, from the tables beside this module."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.tables.tapers.rows import number
from halfangle_service.trade.units import Units

SHANK_COLUMNS = (
    "gauge_plane_tolerance",
    "gauge_plane_to_end",
    "end_diameter",
    "small_end_diameter",
    "small_end_depth",
    "plain_shank_length",
    "tang_end_depth",
    "shank_length",
    "tang_thickness",
    "tang_length",
    "tang_radius",
    "tang_diameter",
    "socket_bore",
    "socket_depth",
    "slot_depth",
    "slot_length",
    "slot_width",
)
_TABLES = ("shanks_metric.toml", "shanks_inch.toml", "shanks_steep.toml", "shanks_steep_inch.toml")


@dataclass(frozen=True, slots=True)
class Shank:
    """One shank: every one of `SHANK_COLUMNS` in `units`, None where the table gives none.

    `published` names the columns that were seen in print; `standing` is how the others are had.
    """

    units: Units
    columns: dict[str, float | None]
    published: tuple[str, ...]
    source: str
    standing: Standing


@cache
def shank_dimensions() -> dict[str, Shank]:
    """Give each shank's row by its taper's designation."""
    rows = (row for name in _TABLES for row in read_rows(__name__, name, "shank"))
    return {row["designation"]: _read(row) for row in rows}


def _read(row: dict[str, Any]) -> Shank:
    return Shank(
        units=row["unit"],
        columns={column: number(row, column) for column in SHANK_COLUMNS},
        published=tuple(row["published"]),
        source=citation(row),
        standing=standing(row),
    )
