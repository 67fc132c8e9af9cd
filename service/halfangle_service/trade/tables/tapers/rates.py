"""Rates of taper and grades of cone angle tolerance, from the published tables beside this module.

Angles in radians, lengths in one unit unless the name says mm.
"""

import math
from bisect import bisect_left
from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.errors import Impossible, Unreachable
from halfangle_service.trade.cone import rate_from_half_angle
from halfangle_service.trade.tables.loader import read_table
from halfangle_service.trade.tables.tapers.standard import RowStanding
from halfangle_service.trade.wording import plain


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


def grade_tolerance_rad(grade: str, length_mm: float) -> float:
    """Tolerance of the cone (included) angle of a grade AT1 to AT12 at that cone length in mm."""
    table = _table_of_grades()
    over, up_to = table["over_mm"], table["up_to_mm"]
    if not over[0] < length_mm <= up_to[-1]:
        raise Unreachable(
            f"The grades run over cone lengths above {plain(over[0])} mm to {plain(up_to[-1])} "
            "mm; this one "
            f"is {plain(length_mm)} mm.",
            fields={
                "length": f"should be above {plain(over[0])} mm and at most {plain(up_to[-1])} mm"
            },
        )
    return float(table["grades"][grade][bisect_left(up_to, length_mm)]) * 1e-6


@cache
def _table_of_grades() -> dict[str, Any]:
    table = read_table(__name__, "angle_tolerances.toml")
    if not table["source"] or not table["standing"]:
        raise ValueError("the table of cone angle tolerances has no source")
    return table


def diameter_tolerance(angle_tolerance_rad: float, length: float) -> float:
    """AT_D = AT_α × L, as the standard states it: exact enough for slopes up to 1:3."""
    return angle_tolerance_rad * length


def exact_diameter_change(half_rad: float, angle_tolerance_rad: float, length: float) -> float:
    """Change of ΔD over the length from half that tolerance below to half of it above."""
    quarter = angle_tolerance_rad / 4.0
    return 2.0 * length * (math.tan(half_rad + quarter) - math.tan(half_rad - quarter))


def half_angle_band(half_rad: float, diameter_change: float, length: float) -> float:
    """Tolerance of the included angle (radians) whose ΔD over the length spans that much.

    The way back of `exact_diameter_change`: the limits lie at tan α ± ΔD / (4 l).
    """
    tangent, step = math.tan(half_rad), diameter_change / (4.0 * length)
    if step >= tangent:
        raise Impossible(
            "This tolerance lets the taper vanish.",
            fields={
                "diameter_tolerance_over_length": f"should be below {plain(4 * length * tangent)}"
            },
        )
    return 2.0 * (math.atan(tangent + step) - math.atan(tangent - step))


def set_over(work_length: float, half_rad: float) -> float:
    """Tailstock set-over for work held on ball centers: L sin α."""
    return work_length * math.sin(half_rad)


def set_over_rule(work_length: float, half_rad: float) -> float:
    """Set-over by the shop rule, taper × length / 2: L tan α."""
    return work_length * math.tan(half_rad)
