"""Standard rates of taper and cone angles, from the published tables beside this module."""

import math
from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.cone import half_angle_from_rate
from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.tables.tapers.rows import rate_in

_TABLES = ("rates_iso.toml", "rates_per_foot.toml", "rates_other.toml")


@dataclass(frozen=True, slots=True)
class Rate:
    """A standard rate of taper C or cone angle, on the diameter, that is no size of its own."""

    designation: str
    rate: float
    cone_angle_degrees: float
    used_for: str
    source: str
    standing: Standing
    note: str

    @property
    def name(self) -> str:
        """What it is for: it has no other name."""
        return self.used_for

    @property
    def one_in_x(self) -> float:
        """The x of 1:x, on the diameter."""
        return 1.0 / self.rate


@cache
def standard_rates() -> dict[str, Rate]:
    """Give every standard rate by its designation."""
    rows = (row for name in _TABLES for row in read_rows(__name__, name, "rate"))
    return {row["designation"]: _read(row) for row in rows}


def _read(row: dict[str, Any]) -> Rate:
    rate = rate_in(row)
    by_rate = math.degrees(2.0 * half_angle_from_rate(rate))
    return Rate(
        designation=row["designation"],
        rate=rate,
        cone_angle_degrees=parse_dms(row["angle"]) if "angle" in row else by_rate,
        used_for=row["used_for"],
        source=citation(row),
        standing=standing(row),
        note=row.get("note", ""),
    )
