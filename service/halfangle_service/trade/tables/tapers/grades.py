"""Grades of cone angle tolerance AT, from the published table beside this module."""

from bisect import bisect_left
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.wording import plain

AngleGradeName = Literal[
    "AT1", "AT2", "AT3", "AT4", "AT5", "AT6", "AT7", "AT8", "AT9", "AT10", "AT11", "AT12"
]


@dataclass(frozen=True, slots=True)
class AngleGrade:
    """A grade: whole tolerance of the included angle in microradians, by range of cone length.

    The ranges run above `over_mm` and up to `up_to_mm`; the lists stand in the same order.
    """

    name: str
    over_mm: tuple[float, ...]
    up_to_mm: tuple[float, ...]
    band_microradian: tuple[float, ...]
    source: str
    standing: Standing


@cache
def angle_grades() -> dict[str, AngleGrade]:
    """Give every grade, AT1 to AT12, by its name."""
    return {row["name"]: _read(row) for row in read_rows(__name__, "grades.toml", "grade")}


def _read(row: dict[str, Any]) -> AngleGrade:
    return AngleGrade(
        name=row["name"],
        over_mm=tuple(row["over_mm"]),
        up_to_mm=tuple(row["up_to_mm"]),
        band_microradian=tuple(row["band"]),
        source=citation(row),
        standing=standing(row),
    )


def angle_band_of_grade(grade: str, length_mm: float, *, field: str = "length") -> float:
    """Whole tolerance of the included angle, in radians, of a grade AT1 to AT12.

    `length_mm` is the cone's length in mm. Raises Unreachable outside the table's lengths, naming
    `field`.
    """
    row = angle_grades()[grade]
    first, last = row.over_mm[0], row.up_to_mm[-1]
    if not first < length_mm <= last:
        raise Unreachable(
            f"The grades run over cone lengths above {plain(first)} mm to {plain(last)} mm; this "
            f"one is {plain(length_mm)} mm.",
            fields={field: f"should be above {plain(first)} mm and at most {plain(last)} mm"},
        )
    return row.band_microradian[bisect_left(row.up_to_mm, length_mm)] * 1e-6
