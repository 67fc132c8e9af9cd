"""Tolerance grades of gauge blocks, from the published table beside this module."""

import tomllib
from bisect import bisect_left
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from halfangle_service.errors import Unreachable

_TENTH_NM_PER_SIZE = {"in": 254_000_000, "mm": 10_000_000}
_MM_PER_TOLERANCE = {"uin": 25.4e-6, "um": 1e-3}


@dataclass(frozen=True, slots=True)
class Grade:
    """A grade: for each size range, its upper end in 0.1 nm and the limit deviation te in mm."""

    name: str
    up_to: tuple[int, ...]
    limit_deviation_mm: tuple[float, ...]
    source: str
    how: str

    def limit_deviation(self, size: int) -> float:
        """Limit deviation te in mm of a block of `size` (0.1 nm): its length errs by ± this.

        Raises Unreachable where the grade's table ends below the size.
        """
        position = bisect_left(self.up_to, size)
        if position == len(self.up_to):
            raise Unreachable(
                f"The table of grade {self.name} ends at {self.up_to[-1] / 1e7:g} mm; "
                f"a block of {size / 1e7:g} mm is larger."
            )
        return self.limit_deviation_mm[position]


@cache
def grades() -> dict[str, Grade]:
    """Give every grade by its name."""
    text = files("halfangle_service.topics.blocks").joinpath("tolerances.toml").read_text("utf-8")
    return {
        row["name"]: Grade(
            name=row["name"],
            up_to=tuple(round(end * _TENTH_NM_PER_SIZE[row["size_unit"]]) for end in row["up_to"]),
            limit_deviation_mm=tuple(
                te * _MM_PER_TOLERANCE[row["tolerance_unit"]] for te in row["te"]
            ),
            source=f"{row['source']}, {row['clause']}",
            how=row["how"],
        )
        for row in tomllib.loads(text)["grade"]
    }


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
