"""Center holes and center drills against their transcriptions."""

from collections.abc import Mapping
from dataclasses import asdict
from functools import cache

from halfangle_service.trade.tables.centers.holes import TableHole
from transcribed.reading import Cells, differences, number, printed, value

#: Letters of the metric table, and what they are here.
LETTERS = {
    "d1": "pilot_diameter",
    "d2": "cone_diameter",
    "d3": "chamfer_diameter",
    "t": "depth_min",
    "a": "cut_off",
    "b": "chamfer_depth",
    "l1_min": "pilot_length_min",
    "l1_max": "pilot_length_max",
    "r_min": "arc_radius_min",
    "r_max": "arc_radius_max",
    "d": "body_diameter",
}


@cache
def listed_holes() -> dict[str, Cells]:
    """Both tables by this project's keys: `a-2.5`, `bell-12`."""
    metric = {f"{row['type'].lower()}-{row['d1']}": _metric(row) for row in printed(METRIC)}
    return metric | {f"{row['type']}-{row['size']}": _inch(row) for row in printed(INCH)}


METRIC, INCH = "centers/holes_metric.csv", "centers/drills_inch.csv"


def _metric(row: Mapping[str, str]) -> Cells:
    return {
        **{column: value(row[letter]) for letter, column in LETTERS.items()},
        "type": row["type"],
        "units": "mm",
        "standing": "published" if row["seen_in_print"] == "yes" else "from-memory",
        "drill_standing": "from-memory",
    }


def _inch(row: Mapping[str, str]) -> Cells:
    """A drill; a plain one countersinks up to its body."""
    length = number(row["drill_length"])
    return {
        **dict.fromkeys(LETTERS.values()),
        "pilot_diameter": number(row["drill"]),
        "cone_diameter": number(row["bell"] or row["body"]),
        "pilot_length_min": length,
        "pilot_length_max": length,
        "body_diameter": number(row["body"]),
        "type": row["type"],
        "units": "in",
        "standing": "from-memory",
        "drill_standing": "from-memory",
    }


def hole_differences(holes: Mapping[str, TableHole]) -> list[str]:
    """What center holes differ in from their transcriptions."""
    found = {key: asdict(hole) for key, hole in holes.items()}
    for cells in found.values():
        del cells["key"], cells["source"]
    return differences(found, listed_holes())
