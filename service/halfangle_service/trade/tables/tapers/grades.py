"""Grades of cone angle tolerance AT, from the published table beside this module."""

from bisect import bisect_left
from functools import cache
from typing import Any

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.loader import read_table
from halfangle_service.trade.wording import plain


def angle_band_of_grade(grade: str, length_mm: float) -> float:
    """Whole tolerance of the included angle, in radians, of a grade AT1 to AT12.

    `length_mm` is the cone's length in mm. Raises Unreachable outside the table's lengths.
    """
    table = _table_of_grades()
    over, up_to = table["over_mm"], table["up_to_mm"]
    if not over[0] < length_mm <= up_to[-1]:
        raise Unreachable(
            f"The grades run over cone lengths above {plain(over[0])} mm to {plain(up_to[-1])} "
            f"mm; this one is {plain(length_mm)} mm.",
            fields={
                "length": f"should be above {plain(over[0])} mm and at most {plain(up_to[-1])} mm"
            },
        )
    return float(table["grades"][grade][bisect_left(up_to, length_mm)]) * 1e-6


@cache
def _table_of_grades() -> dict[str, Any]:
    table = read_table(__name__, "grades.toml")
    if not table["source"] or not table["standing"]:
        raise ValueError("the table of cone angle tolerances has no source")
    return table
