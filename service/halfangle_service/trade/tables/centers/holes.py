"""Published center holes, from the tables beside this module; lengths in each table's unit."""

from collections.abc import Iterable
from dataclasses import dataclass, fields
from difflib import get_close_matches
from functools import cache
from typing import Any, Literal, cast, get_args

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.units import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.trade.wording import of_any_unit

HoleType = Literal["A", "B", "R", "plain", "bell"]
#: Types that a drawing may ask for, and no table here holds.
UntabledType = Literal["C", "D"]
_TABLES = ("holes_metric.toml", "holes_inch.toml")
_UNTABLED: dict[UntabledType, str] = {
    "C": "Type C of DIN 332-1 (GB/T 145 calls the tapped type D so) has the pilot and the 60° cone "
    "of types A and B, and a truncated recess to protect its mouth, whose size is not in these "
    "tables: take the cone from type A or B of the same diameters, and the recess from the "
    "standard.",
    "D": "Type D of DIN 332-2 is tapped for a screw: its cone and its thread stand in the table of "
    "tapped holes, GET /v1/centers/tapped-holes.",
}
#: The same 60° cone, for a type that no table holds.
_SAME_CONE: dict[UntabledType, tuple[HoleType, ...]] = {"C": ("A", "B"), "D": ()}


@dataclass(frozen=True, slots=True)
class TableHole:
    """One center hole, or the drill that makes it; None where the table gives nothing.

    `cone_diameter` is the largest diameter of its 60° cone, or of its arc for type R.
    `pilot_length_*` and `body_diameter` are the drill's.
    """

    key: str
    type: HoleType
    units: Units
    pilot_diameter: float
    cone_diameter: float
    chamfer_diameter: float | None
    chamfer_depth: float | None
    depth_min: float | None
    cut_off: float | None
    pilot_length_min: float | None
    pilot_length_max: float | None
    body_diameter: float
    arc_radius_min: float | None
    arc_radius_max: float | None
    source: str
    standing: Standing
    drill_standing: Standing

    def in_units(self, units: Units) -> "TableHole":
        """The same hole with its lengths in this unit."""
        values: dict[str, Any] = {field.name: getattr(self, field.name) for field in fields(self)}
        lengths = {
            name: from_tenth_nm(to_tenth_nm(v, self.units), units)
            for name, v in values.items()
            if isinstance(v, float)
        }
        return TableHole(**{**values, **lengths, "units": units})


@cache
def center_holes() -> dict[str, TableHole]:
    """Give every center hole by its key, such as `a-2.5` or `bell-12`."""
    rows = (row for name in _TABLES for row in read_rows(__name__, name, "hole"))
    return {row["key"]: _read(row) for row in rows}


def _read(row: dict[str, Any]) -> TableHole:
    return TableHole(
        key=row["key"],
        type=cast("HoleType", row["type"]),
        units=row["unit"],
        pilot_diameter=row["pilot_diameter"],
        cone_diameter=row["cone_diameter"],
        chamfer_diameter=row.get("chamfer_diameter"),
        chamfer_depth=row.get("chamfer_depth"),
        depth_min=row.get("depth_min"),
        cut_off=row.get("cut_off"),
        pilot_length_min=row.get("pilot_length_min"),
        pilot_length_max=row.get("pilot_length_max"),
        body_diameter=row["body_diameter"],
        arc_radius_min=row.get("arc_radius_min"),
        arc_radius_max=row.get("arc_radius_max"),
        source=citation(row),
        standing=standing(row),
        drill_standing=row["drill_standing"],
    )


def find_hole(key: str) -> TableHole:
    """Give a hole by its key; raises Unreachable, with the keys there are."""
    holes = center_holes()
    if key not in holes:
        raise Unreachable(
            f"There is no center hole {key!r} in the tables.",
            fields={"key": "should be one that GET /v1/centers/holes lists"},
            more={
                "similar": get_close_matches(key.lower(), holes, n=5, cutoff=0.5),
                "known_keys": list(holes),
            },
        )
    return holes[key]


def smallest_hole(kind: HoleType | UntabledType, diameter: float, units: Units) -> TableHole:
    """Smallest hole of a type whose cone reaches `diameter`, in `units`; raises Unreachable."""
    match kind:
        case "C" | "D":
            raise Unreachable(
                _UNTABLED[kind],
                fields={"type": "should be a type that GET /v1/centers/holes lists"},
                more={"same_cone": _keys_that_reach(_SAME_CONE[kind], diameter, units)},
            )
    hole = reaching(kind, diameter, units)
    if hole is not None:
        return hole
    fitting = [hole.in_units(units) for hole in center_holes().values() if hole.type == kind]
    largest = of_any_unit(fitting[-1].cone_diameter)
    others = _keys_that_reach(get_args(HoleType), diameter, units)
    way = f" These reach it: {', '.join(others)}." if others else ""
    raise Unreachable(
        f"The largest hole of type {kind} reaches {largest}; {of_any_unit(diameter)} was "
        f"wanted.{way}",
        fields={"mouth_diameter": f"should be {largest} or less for this type"},
        more={"reached_by": others},
    )


def reaching(kind: HoleType, diameter: float, units: Units) -> TableHole | None:
    """Smallest hole of a type whose cone reaches `diameter`, in `units`; None where none does."""
    for hole in center_holes().values():
        if hole.type == kind and hole.in_units(units).cone_diameter >= diameter * (1.0 - 1e-9):
            return hole.in_units(units)
    return None


def _keys_that_reach(kinds: Iterable[HoleType], diameter: float, units: Units) -> list[str]:
    found = (reaching(kind, diameter, units) for kind in kinds)
    return [hole.key for hole in found if hole is not None]
