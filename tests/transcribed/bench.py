"""Sine bars, rules of safety, flatness, lathe centers: what they differ in from transcriptions."""

import re
from collections.abc import Mapping

from halfangle_service.trade.tables.blocks.flatness import FlatnessGrade
from halfangle_service.trade.tables.centers.guides import (
    BallSeries,
    CenterPoint,
    HoleByShaft,
    TappedHole,
)
from halfangle_service.trade.tables.sine.bars import BarTolerance
from halfangle_service.trade.tables.wheels.safety import SafetyRule
from halfangle_service.trade.units import Units
from transcribed.reading import Cells, differences, number, printed, value

_FIGURES = re.compile(r"[0-9]+(?:[./][0-9]+)?")
_STANDING = {"yes": "published", "no": "from-memory"}


def _figures(*texts: str) -> str:
    return " ".join(_FIGURES.findall(" ".join(texts)))


def bar_differences(rows: Mapping[str, BarTolerance]) -> list[str]:
    """What tolerances of sine bars differ in, with the standard and the size that they are of."""
    found: dict[str, Cells] = {
        key: {
            "standard": row.standard,
            "size": _figures(row.applies_to),
            "tolerance": (row.low_mm, row.high_mm, row.arcsec),
            "per": row.per_length_mm,
            "either_way": "yes" if row.either_way else "no",
            "figures": _figures(row.characteristic),
            "standing": row.standing,
        }
        for key, row in rows.items()
    }
    listed: dict[str, Cells] = {
        _bar_key(row): {
            "standard": row["standard"],
            "size": _figures(row["size"]),
            "tolerance": _tolerance(row["tolerance"]),
            "per": value(row["per"]),
            "either_way": row["either_way"],
            "figures": "",
            "standing": _STANDING[row["seen_in_print"]],
        }
        for row in printed("others/sine_bars.csv")
    }
    return differences(found, listed)


def _bar_key(row: Mapping[str, str]) -> str:
    words = f"{row['standard']} {row['size']} {row['about']}".lower()
    unit = "-in" if row["about"] == "angle" else ""
    return re.sub(r"\s+", "-", words).removesuffix("-angle") + (f"{unit}-angle" if unit else "")


def _tolerance(text: str) -> tuple[float | None, float | None, float | None]:
    if text.endswith("minute"):
        return (None, None, 60.0 * number(text.removesuffix(" minute")))
    low, _, high = text.partition("..")
    return (number(low), number(high or low), None)


def rule_differences(rules: Mapping[str, SafetyRule]) -> list[str]:
    """What rules of safety differ in: regulation, clause, and the figures in their words."""
    found: dict[str, Cells] = {
        key: {
            "regulation": row.source.removesuffix(f", {row.clause}"),
            "clause": re.split("[,; ]", row.clause)[0],
            "figures": _figures(row.applies_to, row.rule),
            "subject": _figures(row.subject),
            "standing": row.standing,
        }
        for key, row in rules.items()
    }
    listed: dict[str, Cells] = {
        row["rule"]: {
            "regulation": row["regulation"],
            "clause": row["clause"],
            "figures": row["figures"],
            "subject": "",
            "standing": _STANDING[row["seen_in_print"]],
        }
        for row in printed("others/safety.csv")
    }
    return differences(found, listed)


def flatness_differences(grades: Mapping[str, FlatnessGrade]) -> list[str]:
    """What flatness of gauge blocks differs in, range by range."""
    found: dict[str, Cells] = {
        key: {
            "limits": dict(
                zip(zip(row.over_mm, row.up_to_mm, strict=True), row.flatness_um, strict=True)
            ),
            "figures": _figures(row.label),
            "standing": row.standing,
        }
        for key, row in grades.items()
    }
    listed: dict[str, Cells] = {
        row["grade"]: {
            "limits": {_range(name): number(row[name]) for name in row if "-" in name},
            "figures": _LABELS.get(row["grade"], ""),
            "standing": _STANDING[row["seen_in_print"]],
        }
        for row in printed("blocks/flatness.csv")
    }
    return differences(found, listed)


#: Figures in the names of grades.
_LABELS = {
    "iso-0": "0",
    "iso-1": "1",
    "iso-2": "2",
    "din-00": "861 00",
    "asme-0-metric": "0",
    "asme-as-1-metric": "1",
    "asme-as-2-metric": "2",
}


def _range(name: str) -> tuple[float, float]:
    low, high = name.split("-")
    return (number(low), number(high))


def shaft_differences(sizes: Mapping[str, HoleByShaft]) -> list[str]:
    """What center holes by shaft differ in."""
    found: dict[str, Cells] = {
        key: {
            "range": (row.over_mm, row.up_to_mm),
            "d1": row.pilot_diameter_mm,
            "d2": row.cone_diameter_mm,
        }
        for key, row in sizes.items()
    }
    listed: dict[str, Cells] = {
        row["range"]: {
            "range": _shafts(row["range"]),
            "d1": number(row["d1"]),
            "d2": number(row["d2"]),
        }
        for row in printed("centers/by_shaft.csv")
    }
    return differences(found, listed)


def _shafts(name: str) -> tuple[float, float | None]:
    if name.startswith("over-"):
        return (number(name.removeprefix("over-")), None)
    low, _, high = name.partition("to-")
    return (number(low.removesuffix("-") or "0"), number(high))


def point_differences(points: Mapping[str, CenterPoint]) -> list[str]:
    """What points of centers differ in."""
    found: dict[str, Cells] = {
        key: {
            "angle": row.included_angle_degrees,
            "mass": row.largest_mass_kg,
            "figures": _figures(row.purpose.replace("-", " ").replace("type B", "")),
            "standing": row.standing,
        }
        for key, row in points.items()
    }
    listed: dict[str, Cells] = {
        row["point"]: {
            "angle": number(row["angle"]),
            "mass": value(row["mass"]),
            "figures": row["figures"],
            "standing": _STANDING[row["seen_in_print"]],
        }
        for row in printed("centers/points.csv")
    }
    return differences(found, listed)


def tapped_differences(holes: Mapping[str, TappedHole]) -> list[str]:
    """What tapped center holes differ in."""
    found: dict[str, Cells] = {
        key: {
            "thread": row.thread,
            "d3": row.pilot_diameter_mm,
            "d4": row.cone_diameter_mm,
            "d5": row.chamfer_diameter_mm,
            "l1": row.cone_depth_mm,
        }
        for key, row in holes.items()
    }
    listed: dict[str, Cells] = {
        f"d-{row['thread'].lower()}": {
            "thread": row["thread"],
            **{letter: number(row[letter]) for letter in ("d3", "d4", "d5", "l1")},
        }
        for row in printed("centers/tapped.csv")
    }
    return differences(found, listed)


def ball_differences(series: Mapping[Units, BallSeries]) -> list[str]:
    """What stock balls differ in, diameter by diameter."""
    found: dict[str, Cells] = {
        str(key): {"units": row.units, "diameters": row.diameters} for key, row in series.items()
    }
    listed: dict[str, Cells] = {
        row["unit"]: {
            "units": row["unit"],
            "diameters": tuple(d for run in row["runs"].split() for d in _run(run)),
        }
        for row in printed("centers/balls.csv")
    }
    return differences(found, listed)


def _run(run: str) -> list[float]:
    first, last, step = map(float, run.split("/"))
    return [first + step * place for place in range(round((last - first) / step) + 1)]
