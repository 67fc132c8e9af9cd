"""Principal dimensions of standard shanks and sockets, from the table beside this module."""

from functools import cache
from typing import Any

from halfangle_service.trade.tables.loader import read_table

SHANK_COLUMNS = (
    "gauge_plane_to_end",
    "end_diameter",
    "small_end_diameter",
    "small_end_depth",
    "plain_shank_depth",
    "tang_shoulder_depth",
    "tang_end_depth",
    "tang_thickness",
    "socket_bore",
    "socket_depth",
    "slot_depth",
    "slot_width",
)


@cache
def shank_dimensions() -> dict[str, dict[str, Any]]:
    """Give each shank's row by its taper's designation.

    A row holds every one of `SHANK_COLUMNS` in mm, None where the standard gives none; `published`,
    the columns seen in print; `standing` and `source`.
    """
    table = read_table(__name__, "shanks.toml")
    source = f"{table['source']}; {table['clause']}"
    return {row["designation"]: _read(row, source) for row in table["shank"]}


def _read(row: dict[str, Any], source: str) -> dict[str, Any]:
    """Read one row; one with an unknown column or without its standing is refused."""
    unknown = set(row) - {*SHANK_COLUMNS, "designation", "published", "standing"}
    if unknown or not row["standing"] or not set(row["published"]) <= set(SHANK_COLUMNS):
        raise ValueError(f"shank {row['designation']}: unknown column or no standing")
    dimensions = {column: row.get(column) for column in SHANK_COLUMNS}
    return {
        **dimensions,
        "published": row["published"],
        "standing": row["standing"],
        "source": source,
    }
