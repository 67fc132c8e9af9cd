"""Built-in sets and grades of angle gauge blocks, from the table beside this module. 0.001″."""

from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Any

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing

_THOUSANDTHS = {"degrees": 3_600_000, "minutes": 60_000, "seconds": 1_000}
THOUSANDTHS_PER_DEGREE = _THOUSANDTHS["degrees"]
SQUARE = 90 * THOUSANDTHS_PER_DEGREE


@dataclass(frozen=True, slots=True)
class AngleSet:
    """A set of angle blocks: `angles` in 0.001″, descending, one entry a block."""

    name: str
    angles: tuple[int, ...]
    source: str
    standing: Standing
    note: str


@dataclass(frozen=True, slots=True)
class AngleGrade:
    """A grade of angle blocks: each errs by ± `limit_deviation_arcsec`."""

    name: str
    limit_deviation_arcsec: float
    source: str
    standing: Standing


@cache
def angle_sets() -> dict[str, AngleSet]:
    """Give every built-in set of angle blocks by its name.

    Raises ValueError where the count of blocks of a row is wrong.
    """
    return {row["name"]: _read(row) for row in read_rows(__name__, "angle_sets.toml", "set")}


def _read(row: dict[str, Any]) -> AngleSet:
    angles = [
        int(Decimal(value) * thousandths)
        for series, thousandths in _THOUSANDTHS.items()
        for value in row[series]
    ]
    if len(angles) != row["pieces"]:
        raise ValueError(f"{row['name']}: {len(angles)} blocks")
    ordered = tuple(sorted(angles, reverse=True))
    return AngleSet(row["name"], ordered, citation(row), standing(row), row.get("note", ""))


@cache
def angle_grades() -> dict[str, AngleGrade]:
    """Give every grade of angle blocks by its name."""
    return {
        row["name"]: AngleGrade(
            row["name"], row["limit_deviation_arcsec"], citation(row), standing(row)
        )
        for row in read_rows(__name__, "angle_sets.toml", "grade")
    }


def find_angle_set(name: str) -> AngleSet:
    """Give a built-in set; raises Unreachable, with the names there are, where there is none."""
    known = angle_sets()
    if name not in known:
        raise Unreachable(
            f"There is no built-in set of angle blocks {name!r}.",
            fields={"set": f"should be one of {', '.join(known)}"},
            more={"known_sets": list(known)},
        )
    return known[name]


def find_angle_grade(name: str) -> AngleGrade:
    """Give a grade; raises Unreachable, with the names there are, where there is none."""
    known = angle_grades()
    if name not in known:
        raise Unreachable(
            f"There is no grade of angle blocks {name!r}.",
            fields={"grade": f"should be one of {', '.join(known)}"},
            more={"known_grades": list(known)},
        )
    return known[name]
