"""Grades of cone angle tolerance AT, from the published table beside this module."""

from bisect import bisect_left
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
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


#: Preferred numbers R'10, as AT_D is printed, and seconds of arc in a microradian, as the standard
#: takes it for the column in minutes and seconds. Both ISO 1947:1973, from memory.
_ROUNDED_R10 = (1.0, 1.25, 1.6, 2.0, 2.5, 3.2, 4.0, 5.0, 6.3, 8.0, 10.0)
_SECONDS_PER_MICRORADIAN = Decimal("0.206")


def printed_arcsec(band_microradian: float) -> float:
    """The tolerance in whole seconds of arc as the standard prints it, from microradians.

    >>> printed_arcsec(315.0), printed_arcsec(8000.0)
    (65.0, 1648.0)
    """
    seconds = Decimal(str(band_microradian)) * _SECONDS_PER_MICRORADIAN
    return float(seconds.to_integral_value(ROUND_HALF_UP))


def printed_diameter_band(band_um: float) -> float:
    """AT_D in µm as the standard prints it: the preferred number next to AT × length.

    Below 10 µm with one decimal.

    >>> printed_diameter_band(1.89), printed_diameter_band(1.25), printed_diameter_band(12.5)
    (2.0, 1.3, 12.5)
    """
    decade = 10.0 ** (Decimal(str(band_um)).adjusted())
    number = min(_ROUNDED_R10, key=lambda r: abs(r - band_um / decade)) * decade
    exact = Decimal(str(round(number, 6)))
    return float(exact if number > 10.0 else exact.quantize(Decimal("0.1"), ROUND_HALF_UP))


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
