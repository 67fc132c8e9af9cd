"""Standard rates of taper and cone angles, from the published table beside this module."""

import math
from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.trade.cone import rate_from_half_angle
from halfangle_service.trade.tables.loader import read_table
from halfangle_service.trade.tables.tapers.standard import RowStanding


@dataclass(frozen=True, slots=True)
class Rate:
    """A standard rate of taper or cone angle that is no size of its own."""

    designation: str
    cone_angle_degrees: float
    purpose: str
    source: str
    standing: RowStanding

    @property
    def rate(self) -> float:
        """Rate of taper C = 1/x, on the diameter."""
        return rate_from_half_angle(math.radians(self.cone_angle_degrees) / 2.0)

    @property
    def one_in_x(self) -> float:
        """The x of 1:x, on the diameter."""
        return 0.5 / math.tan(math.radians(self.cone_angle_degrees) / 2.0)


@cache
def standard_rates() -> dict[str, Rate]:
    """Give every standard rate by its designation."""
    return {row["designation"]: _read(row) for row in read_table(__name__, "rates.toml")["rate"]}


def _read(row: dict[str, Any]) -> Rate:
    """Read one row; a rate 1:x is exact, its angle follows from it."""
    if not row["source"] or not row["standing"]:
        raise ValueError(f"rate {row['designation']} has no source")
    angle = row["cone_angle_degrees"]
    if "one_in_x" in row and not row["designation"].startswith("cone-"):
        angle = math.degrees(2.0 * math.atan(0.5 / row["one_in_x"]))
    return Rate(row["designation"], angle, row["purpose"], row["source"], row["standing"])
