"""Sets and grades of gauge blocks and of angle blocks against their transcriptions."""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from functools import cache

from halfangle_service.trade.tables.blocks.angle_sets import AngleGrade, AngleSet
from halfangle_service.trade.tables.blocks.sets import BlockSet
from halfangle_service.trade.tables.blocks.tolerances import Grade
from transcribed.reading import Cells, differences, number, printed

#: Each transcription of grades: what a grade of it is called here, mm a unit of size and of limit.
GRADES = {
    "blocks/iso_3650.csv": ("iso-{}", 1.0, 1e-3),
    "blocks/asme_inch.csv": ("asme-{}", 25.4, 25.4e-6),
    "blocks/asme_metric.csv": ("asme-{}-metric", 1.0, 1e-3),
}
#: Of all grades of length only these were seen in print.
SEEN_IN_PRINT = {"iso-0", "iso-1", "iso-2", "din-00"}
_PER_UNIT = {"in": 254_000_000, "mm": 10_000_000}
_SECONDS = {"degrees": 3600, "minutes": 60, "seconds": 1}


@cache
def listed_sets() -> dict[str, Cells]:
    """Unit, sizes and wear blocks in 0.1 nm, and standing of each set."""
    return {
        row["set"]: {
            "units": row["unit"],
            "sizes": _sizes(row["series"], row["unit"]),
            "wear": _sizes(" ".join(_wear(row["series"])), row["unit"]),
            "standing": _standing(row),
        }
        for row in printed("blocks/sets.csv")
    }


def _wear(series: str) -> list[str]:
    return [part for part in series.split() if part.endswith("w")]


def _sizes(series: str, unit: str) -> tuple[int, ...]:
    sizes = [size for part in series.split() for size in expanded(part.removesuffix("w"))]
    return tuple(sorted(int(size * _PER_UNIT[unit]) for size in sizes))


def expanded(part: str) -> list[Fraction]:
    """Sizes of one series; its last must come out by steps."""
    if "/" not in part:
        return [Fraction(part)]
    first, last, step, count = map(Fraction, part.split("/"))
    sizes = [first + step * place for place in range(int(count))]
    assert sizes[-1] == last
    return sizes


def _standing(row: Mapping[str, str]) -> str:
    return "published" if row["seen_in_print"] == "yes" else "from-memory"


def set_differences(sets: Mapping[str, BlockSet]) -> list[str]:
    """What sets of gauge blocks differ in from their transcription."""
    columns = ("units", "sizes", "wear", "standing")
    found = {key: {name: getattr(row, name) for name in columns} for key, row in sets.items()}
    return differences(found, listed_sets())


@cache
def listed_grades() -> dict[str, dict[str, tuple[float, ...]]]:
    """For each grade its ranges' upper ends, and te and tv, all in mm."""
    return {name: cells for file in GRADES for name, cells in _grades_of(file)}


def _grades_of(file: str) -> Iterator[tuple[str, dict[str, tuple[float, ...]]]]:
    pattern, per_size, per_limit = GRADES[file]
    rows = printed(file)
    for grade in (column.removesuffix(" te") for column in rows[0] if column.endswith(" te")):
        name = "din-00" if (pattern, grade) == ("iso-{}", "00") else pattern.format(grade.lower())
        yield (
            name,
            {
                "up_to": tuple(number(row["up_to"]) * per_size for row in rows),
                "te": tuple(number(row[f"{grade} te"]) * per_limit for row in rows),
                "tv": tuple(number(row[f"{grade} tv"]) * per_limit for row in rows),
            },
        )


def grade_differences(grades: Mapping[str, Grade]) -> list[str]:
    """What tolerances of gauge blocks differ in from their transcriptions."""
    found: dict[str, Cells] = {
        key: {
            "up_to": tuple(end / 1e7 for end in grade.up_to),
            "te": grade.limit_deviation_mm,
            "tv": grade.variation_mm,
            "standing": grade.standing,
            "name": grade.label.lower().replace(",", "").replace(" ", "-"),
        }
        for key, grade in grades.items()
    }
    listed: dict[str, Cells] = {
        key: {
            **cells,
            "standing": "published" if key in SEEN_IN_PRINT else "from-memory",
            "name": key,
        }
        for key, cells in listed_grades().items()
    }
    return differences(found, listed)


def angle_set_differences(sets: Mapping[str, AngleSet]) -> list[str]:
    """What sets of angle blocks differ in from their transcription; angles in 0.001″."""
    found = {key: {"angles": s.angles, "standing": s.standing} for key, s in sets.items()}
    listed: dict[str, Cells] = {
        row["set"]: {"angles": _angles(row), "standing": _standing(row)}
        for row in printed("blocks/angle_sets.csv")
    }
    return differences(found, listed)


def _angles(row: Mapping[str, str]) -> tuple[int, ...]:
    angles = [
        int(Fraction(angle) * seconds * 1000)
        for unit, seconds in _SECONDS.items()
        for angle in row[unit].split()
    ]
    assert len(angles) == int(row["pieces"])
    return tuple(sorted(angles, reverse=True))


def angle_grade_differences(grades: Mapping[str, AngleGrade]) -> list[str]:
    """What grades of angle blocks differ in from their transcription."""
    found = {
        key: {"accuracy": grade.limit_deviation_arcsec, "standing": grade.standing}
        for key, grade in grades.items()
    }
    listed: dict[str, Cells] = {
        row["grade"]: {"accuracy": number(row["accuracy_arcsec"]), "standing": _standing(row)}
        for row in printed("blocks/angle_grades.csv")
    }
    return differences(found, listed)
