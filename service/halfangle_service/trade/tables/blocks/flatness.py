"""Flatness of the measuring faces of gauge blocks by grade, from the table beside this module."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing


@dataclass(frozen=True, slots=True)
class FlatnessGrade:
    """A grade: tolerance tf of the flatness in µm by range of size.

    The ranges run above `over_mm` and up to `up_to_mm`; the lists stand in the same order.
    """

    name: str
    label: str
    over_mm: tuple[float, ...]
    up_to_mm: tuple[float, ...]
    flatness_um: tuple[float, ...]
    source: str
    standing: Standing
    note: str


@cache
def flatness_grades() -> dict[str, FlatnessGrade]:
    """Give every grade by its name; raises ValueError where lists differ in length."""
    return {row["name"]: _read(row) for row in read_rows(__name__, "flatness.toml", "grade")}


def _read(row: dict[str, Any]) -> FlatnessGrade:
    if len({len(row[name]) for name in ("over", "up_to", "flatness")}) != 1:
        raise ValueError(f"{row['name']}: lists of different length")
    return FlatnessGrade(
        name=row["name"],
        label=row["label"],
        over_mm=tuple(row["over"]),
        up_to_mm=tuple(row["up_to"]),
        flatness_um=tuple(row["flatness"]),
        source=citation(row),
        standing=standing(row),
        note=row.get("note", ""),
    )
