"""Standard tapers, rates, shanks and grades of cone angle against their transcriptions."""

import math
from collections.abc import Mapping
from fractions import Fraction
from functools import cache

from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.tables.tapers.grades import AngleGrade
from halfangle_service.trade.tables.tapers.rates import Rate
from halfangle_service.trade.tables.tapers.shanks import SHANK_COLUMNS, Shank
from halfangle_service.trade.tables.tapers.standard import StandardTaper
from transcribed.reading import Cells, differences, number, printed, value

Row = Mapping[str, str]
#: Of each transcribed series: what it is called here, and the name of one of its tapers.
SERIES = {
    "morse": ("Morse", "Morse No. {size}"),
    "morse-iso": ("Morse", "Morse No. {size} (ISO)"),
    "metric": ("Metric", "Metric {size}"),
    "7-24": ("7/24", "7/24 No. {size}"),
    "7-24-iso": ("7/24", "7/24 No. {size} (ISO)"),
    "brown-sharpe": ("Brown & Sharpe", "Brown and Sharpe No. {size}, length {length} in"),
    "jarno": ("Jarno", "Jarno No. {size}"),
    "drill-chuck": ("Drill chuck", "Drill chuck taper No. {size}"),
}
#: Rates that are no size of their own; {foot} is the taper in a foot.
RATES = {
    "taper-pin-inch": "inch taper pins, {foot} in a foot",
    "taper-pin-metric": "metric taper pins",
    "pipe-taper": "taper pipe threads, {foot} in a foot",
    "tpf": "{foot} in a foot",
}
#: Letters of ISO 296, and what they are here.
METRIC_LETTERS = {
    "a": "gauge_plane_to_end",
    "D1": "end_diameter",
    "d": "small_end_diameter",
    "l1": "small_end_depth",
    "l2": "plain_shank_length",
    "l3": "tang_end_depth",
    "l4": "shank_length",
    "b": "tang_thickness",
    "d5": "socket_bore",
    "l5": "socket_depth",
    "l6": "slot_depth",
    "g": "slot_width",
}
#: Letters of the inch table of Morse shanks, and what they are here.
INCH_LETTERS = {
    "B": "shank_length",
    "S": "tang_end_depth",
    "H": "socket_depth",
    "t": "tang_thickness",
    "T": "tang_length",
    "R": "tang_radius",
    "d": "tang_diameter",
    "W": "slot_width",
    "L": "slot_length",
    "K": "slot_depth",
}
STEEP_LETTERS = {
    "length": "small_end_depth",
    "small_end": "small_end_diameter",
    "z": "gauge_plane_tolerance",
}


# Standard tapers -----------------------------------------------------------------------------
@cache
def listed_tapers() -> dict[str, Row]:
    """Every transcribed taper with sizes, by this project's designation."""
    rows = printed("tapers/tapers.csv") + printed("tapers/further.csv")
    return {designation_of(row): row for row in rows if row["series"] in SERIES}


def designation_of(row: Row) -> str:
    """This project's designation of a transcribed taper or rate."""
    series, size = row["series"], row["size"].replace(" ", "-")
    if series == "tpf":
        return f"tpf-{row['taper_per_foot']}"
    if series in RATES:
        return series
    if series == "brown-sharpe":
        return f"brown-sharpe-{size}-{row['small_end_depth'].replace('.', '_')}"
    if series.endswith("-iso"):
        return f"{series.removesuffix('-iso')}-{size}-iso"
    return f"{series}-{size}"


def rate_of(row: Row) -> float:
    """Rate of a transcribed row: metric ones are 1:x, the others a taper per foot."""
    if row["series"] in {"morse-iso", "metric", "taper-pin-metric"}:
        return 1.0 / float(row["one_in_x"])
    return float(Fraction(row["taper_per_foot"]) / 12)


SIZES = ("gauge_diameter", "small_diameter", "small_end_depth")


@cache
def _taper_cells() -> dict[str, Cells]:
    cells: dict[str, Cells] = {}
    for key, row in listed_tapers().items():
        series, name = SERIES[row["series"]]
        cells[key] = {
            "name": name.format(size=row["size"], length=row["small_end_depth"]),
            "series": series,
            "units": row["unit"],
            "rate": rate_of(row),
            **{size: value(row[size]) for size in SIZES},
        }
    return cells


def taper_differences(tapers: Mapping[str, StandardTaper]) -> list[str]:
    """What standard tapers differ in from their transcriptions, names included."""
    columns = ("name", "series", "units", "rate", *SIZES)
    found = {key: {name: getattr(row, name) for name in columns} for key, row in tapers.items()}
    return differences(found, _taper_cells())


# Rates ---------------------------------------------------------------------------------------
def designation_of_rate(taper: str) -> str:
    """This project's designation of a row of ISO 1119: `1:20`, `120°`, `11°54'0"`."""
    if ":" in taper:
        return f"iso-{taper}"
    degrees, _, rest = taper.partition("°")
    minutes = rest.partition("'")[0]
    return f"cone-{degrees}" + (f"-{minutes}" if minutes else "")


@cache
def listed_rates() -> dict[str, Cells]:
    """Rate, cone angle in degrees and purpose of every transcribed rate."""
    tapers = [row for row in printed("tapers/tapers.csv") if row["series"] in RATES]
    per_foot = [{**row, "series": "tpf"} for row in printed("tapers/taper_per_foot.csv")]
    own = {"tpf-0.59941", "tpf-0.6246"}  # Morse 2 and 0, which are tapers and not rates here
    listed = {_per_foot(designation_of(row | {"size": ""})): row for row in tapers + per_foot}
    return {
        **{_iso_key(row): _iso_rate(row) for row in printed("tapers/iso_1119.csv")},
        **{key: _foot_rate(row) for key, row in listed.items() if key not in own},
    }


def _per_foot(designation: str) -> str:
    return designation.removesuffix(".0")


def _iso_key(row: Row) -> str:
    return designation_of_rate(row["taper"])


def _iso_rate(row: Row) -> Cells:
    """A ratio defines its row, else the cone angle does."""
    if ":" in row["taper"]:
        top, bottom = map(Fraction, row["taper"].split(":"))
        rate = float(top / bottom)
        angle = math.degrees(2.0 * math.atan(rate / 2.0))
    else:
        angle = parse_dms(row["cone_angle"])
        rate = 2.0 * math.tan(math.radians(angle) / 2.0)
    return {"rate": rate, "angle": angle, "purpose": row["purpose"]}


def _foot_rate(row: Row) -> Cells:
    rate = rate_of(row)
    purpose = RATES[row["series"]].format(foot=in_a_foot(12.0 * rate))
    return {"rate": rate, "angle": math.degrees(2.0 * math.atan(rate / 2.0)), "purpose": purpose}


def in_a_foot(inches: float) -> str:
    """A taper per foot as the shop says it: 1 1/8, 3, 0.602."""
    exact = Fraction(inches).limit_denominator(1000)
    if exact.denominator not in {1, 2, 4, 8}:
        return f"{inches:g}"
    whole, rest = divmod(exact, 1)
    return " ".join(str(part) for part in (whole, rest) if part)


def rate_differences(rates: Mapping[str, Rate]) -> list[str]:
    """What standard rates and cone angles differ in from their transcriptions."""
    found: dict[str, Cells] = {
        key: {"rate": row.rate, "angle": row.cone_angle_degrees, "purpose": row.used_for}
        for key, row in rates.items()
    }
    return differences(found, listed_rates())


# Shanks --------------------------------------------------------------------------------------
@cache
def listed_shanks() -> dict[str, Cells]:
    """Every column of every transcribed shank."""
    metric, inch, steep = (
        printed(f"tapers/{name}_shanks.csv") for name in ("iso_296", "inch_morse", "steep")
    )
    return {
        **{row["designation"]: _shank(row, METRIC_LETTERS, "mm") for row in metric},
        **{f"morse-{row['number']}": _shank(row, INCH_LETTERS, "in") for row in inch},
        **{_steep_key(row): _shank(row, STEEP_LETTERS, row["unit"]) for row in steep},
    }


def _shank(row: Row, letters: Mapping[str, str], units: str) -> Cells:
    cells = {column: value(row[letter]) for letter, column in letters.items()}
    seen = {letters[letter] for letter in row["seen_in_print"].split()}
    return {**dict.fromkeys(SHANK_COLUMNS), **cells, "units": units, "published": seen}


def _steep_key(row: Row) -> str:
    return f"7-24-{row['number']}" + ("-iso" if row["unit"] == "mm" else "")


def shank_differences(shanks: Mapping[str, Shank]) -> list[str]:
    """What shanks differ in from their transcriptions, and in what was seen in print."""
    found = {
        key: {**shank.columns, "units": shank.units, "published": set(shank.published)}
        for key, shank in shanks.items()
    }
    return differences(found, listed_shanks())


# Grades --------------------------------------------------------------------------------------
@cache
def listed_grades() -> dict[str, Cells]:
    """Ranges of cone length in mm and bands in µrad of every grade."""
    columns = {"over": "over_mm", "up_to": "up_to_mm", "band": "microradian"}
    rows = printed("tapers/cone_angle_grades.csv")
    return {
        grade: {
            name: tuple(number(row[column]) for row in rows if row["grade"] == grade)
            for name, column in columns.items()
        }
        for grade in dict.fromkeys(row["grade"] for row in rows)
    }


def grade_differences(grades: Mapping[str, AngleGrade]) -> list[str]:
    """What grades of cone angle differ in from their transcription."""
    found: dict[str, Cells] = {
        key: {"over": g.over_mm, "up_to": g.up_to_mm, "band": g.band_microradian}
        for key, g in grades.items()
    }
    return differences(found, listed_grades())
