"""Tolerance grades of gauge blocks, from the published table beside this module."""

from bisect import bisect_left
from dataclasses import dataclass
from functools import cache
from typing import Any

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing
from halfangle_service.trade.units import to_tenth_nm
from halfangle_service.trade.wording import plain

_MM_PER_TOLERANCE = {"uin": 25.4e-6, "um": 1e-3}


@dataclass(frozen=True, slots=True)
class Grade:
    """A grade: for each size range its upper end in 0.1 nm, limit deviation te and variation tv.

    te and tv are in mm; the lists stand in the same, ascending order. `name` is the token to ask
    by, `label` the grade as its standard writes it.
    """

    name: str
    label: str
    up_to: tuple[int, ...]
    limit_deviation_mm: tuple[float, ...]
    variation_mm: tuple[float, ...]
    source: str
    standing: Standing
    note: str

    def limit_deviation(self, size: int) -> float:
        """Limit deviation te in mm of a block of `size` (0.1 nm): its length errs by ± this.

        Raises Unreachable where the grade's table ends below the size.
        """
        position = bisect_left(self.up_to, size)
        if position == len(self.up_to):
            raise Unreachable(
                f"The table of grade {self.label} ends at {plain(self.up_to[-1] / 1e7)} mm; "
                f"a block of {plain(size / 1e7)} mm is larger.",
                fields={"grade": "should have limits for blocks of this size"},
            )
        return self.limit_deviation_mm[position]


@cache
def grades() -> dict[str, Grade]:
    """Give every grade by its name.

    Raises ValueError where the lists of a row differ in length.
    """
    return {row["name"]: _read(row) for row in read_rows(__name__, "tolerances.toml", "grade")}


def _read(row: dict[str, Any]) -> Grade:
    if len({len(row[name]) for name in ("up_to", "te", "tv")}) != 1:
        raise ValueError(f"{row['name']}: lists of different length")
    per_size = to_tenth_nm(1.0, row["size_unit"])
    per_tolerance = _MM_PER_TOLERANCE[row["tolerance_unit"]]
    return Grade(
        name=row["name"],
        label=row["label"],
        up_to=tuple(round(end * per_size) for end in row["up_to"]),
        limit_deviation_mm=tuple(te * per_tolerance for te in row["te"]),
        variation_mm=tuple(tv * per_tolerance for tv in row["tv"]),
        source=citation(row),
        standing=standing(row),
        note=row.get("note", ""),
    )


def find_grade(name: str, *, field: str = "grade") -> Grade:
    """Give a grade; raises Unreachable, with the names there are, where there is none.

    `field` is the request's field that named it.
    """
    known = grades()
    if name not in known:
        raise Unreachable(
            f"There is no grade {name!r}.",
            fields={field: f"should be one of {', '.join(known)}"},
            more={"known_grades": list(known)},
        )
    return known[name]
