"""Standard tapers, from the published table beside this module."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from halfangle_service.errors import Unreachable
from halfangle_service.trade.cone import rate_from_taper_per_foot
from halfangle_service.trade.tables.loader import read_table

RowStanding = Literal["published", "from-memory", "derived"]
_TABLES = ("standard.toml", "standard_more.toml")


@dataclass(frozen=True, slots=True)
class StandardTaper:
    """One standard taper; lengths in its own `units`, `rate` on the diameter (ISO 1119).

    `small_diameter` and `small_end_depth`, its distance from the gauge plane, are None where the
    table gives neither.
    """

    designation: str
    name: str
    series: str
    units: Literal["in", "mm"]
    rate: float
    gauge_diameter: float
    small_diameter: float | None
    small_end_depth: float | None
    source: str
    standing: RowStanding


@cache
def standard_tapers() -> dict[str, StandardTaper]:
    """Give every standard taper by its designation."""
    rows = (row for name in _TABLES for row in read_table(__name__, name)["taper"])
    return {row["designation"]: _read(row) for row in rows}


def find_standard(designation: str, *, field: str = "designation") -> StandardTaper:
    """Give a standard taper; raises Unreachable, with the designations there are.

    `field` is the request's field that named it.
    """
    tapers = standard_tapers()
    if designation not in tapers:
        raise Unreachable(
            f"There is no standard taper {designation!r}.",
            fields={field: "should be one that GET /v1/tapers/standard lists"},
            more={"known_designations": list(tapers)},
        )
    return tapers[designation]


def _read(row: dict[str, Any]) -> StandardTaper:
    """Read one row; a row without its source or its standing is refused."""
    if not row["source"] or not row["standing"]:
        raise ValueError(f"taper {row['designation']} has no source")
    if "one_in_x" in row:
        rate = 1.0 / row["one_in_x"]
    else:
        rate = rate_from_taper_per_foot(row["taper_per_foot"])
    return StandardTaper(
        designation=row["designation"],
        name=row["name"],
        series=row["series"],
        units=row["units"],
        rate=rate,
        gauge_diameter=row["gauge_diameter"],
        small_diameter=row.get("small_diameter"),
        small_end_depth=row.get("small_end_depth"),
        source=f"{row['source']}; {row['clause']}",
        standing=row["standing"],
    )
