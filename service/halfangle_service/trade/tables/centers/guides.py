"""Center holes by shaft, points of lathe centers, tapped holes and stock balls, from tables here.

Lengths in mm unless a row says its unit; angles in degrees.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import Any

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.units import Units


@dataclass(frozen=True, slots=True)
class HoleByShaft:
    """Center hole that a guide gives for shafts above `over_mm`, up to `up_to_mm`; None: no end."""

    key: str
    over_mm: float
    up_to_mm: float | None
    pilot_diameter_mm: float
    cone_diameter_mm: float
    source: str
    standing: Standing
    note: str


@dataclass(frozen=True, slots=True)
class CenterPoint:
    """Included angle in degrees of points and holes for a purpose; mass of the work in kg."""

    key: str
    purpose: str
    included_angle_degrees: float
    largest_mass_kg: float | None
    source: str
    standing: Standing
    note: str


@dataclass(frozen=True, slots=True)
class TappedHole:
    """A tapped center hole by its thread: bore, 60° cone, 120° chamfer, in mm."""

    key: str
    thread: str
    pilot_diameter_mm: float
    cone_diameter_mm: float
    chamfer_diameter_mm: float
    cone_depth_mm: float
    source: str
    standing: Standing


@dataclass(frozen=True, slots=True)
class BallSeries:
    """Diameters of stock balls in one unit, ascending."""

    units: Units
    diameters: tuple[float, ...]
    source: str
    standing: Standing


@cache
def holes_by_shaft() -> dict[str, HoleByShaft]:
    """Give the guide's sizes by key, ascending."""
    return {
        row["key"]: HoleByShaft(
            row["key"],
            row["over"],
            row.get("up_to"),
            row["pilot_diameter"],
            row["cone_diameter"],
            citation(row),
            standing(row),
            row.get("note", ""),
        )
        for row in read_rows(__name__, "by_shaft.toml", "size")
    }


@cache
def center_points() -> dict[str, CenterPoint]:
    """Give the included angles by key."""
    return {
        row["key"]: CenterPoint(
            row["key"],
            row["purpose"],
            row["angle"],
            row.get("largest_mass"),
            citation(row),
            standing(row),
            row.get("note", ""),
        )
        for row in read_rows(__name__, "points.toml", "point")
    }


@cache
def tapped_holes() -> dict[str, TappedHole]:
    """Give the tapped holes by key, such as `d-m10`, ascending."""
    return {hole.key: hole for hole in map(_tapped, read_rows(__name__, "tapped.toml", "hole"))}


def _tapped(row: dict[str, Any]) -> TappedHole:
    return TappedHole(
        f"d-{row['thread'].lower()}",
        row["thread"],
        row["pilot_diameter"],
        row["cone_diameter"],
        row["chamfer_diameter"],
        row["cone_depth"],
        citation(row),
        standing(row),
    )


@cache
def stock_balls() -> dict[Units, BallSeries]:
    """Give the stock balls by the unit that they are named in."""
    return {
        row["key"]: BallSeries(
            row["unit"],
            tuple(float(sum(Fraction(part) for part in text.split())) for text in row["diameters"]),
            citation(row),
            standing(row),
        )
        for row in read_rows(__name__, "balls.toml", "series")
    }
