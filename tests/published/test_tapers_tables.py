"""Every row of every table of tapers, held to what is printed and to its own arithmetic."""

import csv
import math
from collections import Counter
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from litestar.testing import TestClient
from mpmath import mp, mpf

from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.tables.loader import read_rows
from halfangle_service.trade.tables.tapers import rates, shanks, standard
from halfangle_service.trade.tables.tapers.designations import all_rows, rate_of
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.shanks import shank_dimensions
from halfangle_service.trade.tables.tapers.standard import standard_tapers

TABLES = Path(__file__).parent / "tables"
#: Rows whose printed gauge diameter is one unit off their own arithmetic, as the row's note says.
OFF_BY_ONE = {"brown-sharpe-4-1_6875", "brown-sharpe-7-2_875"}


def printed(name: str) -> list[dict[str, str]]:
    """Rows of a table as printed in the standards' reprints."""
    with (TABLES / name).open(encoding="utf-8") as file:
        return list(csv.DictReader(file))


def written(module: Any, kind: str) -> dict[str, dict[str, Any]]:
    """Rows of this project's tables as they are written, digits and all, by designation."""
    rows = [row for name in module._TABLES for row in read_rows(module.__name__, name, kind)]
    assert len({row["designation"] for row in rows}) == len(rows)
    return {row["designation"]: row for row in rows}


WRITTEN_TAPERS = written(standard, "taper")
WRITTEN_RATES = written(rates, "rate")
WRITTEN_SHANKS = written(shanks, "shank")


def half_unit(number: str) -> float:
    """Half of one in the last digit printed."""
    exponent = Decimal(number).as_tuple().exponent
    assert isinstance(exponent, int)
    return 0.5 * 10.0**exponent


def designation_of(row: dict[str, str]) -> str:
    """This project's designation of a printed row."""
    series, size = row["series"], row["size"].replace(" ", "-")
    if series in {"taper-pin-inch", "taper-pin-metric", "pipe-taper"}:
        return series
    if series == "tpf":
        return f"tpf-{row['taper_per_foot']}"
    if series == "brown-sharpe":
        return f"brown-sharpe-{size}-{row['small_end_depth'].replace('.', '_')}"
    if series.endswith("-iso"):
        return f"{series.removesuffix('-iso')}-{size}-iso"
    return f"{series}-{size}"


TAPERS = {designation_of(row): row for row in printed("tapers.csv")}
SOURCE = "ASME B5.10, ISO 296, ISO 297, handbook lists of tapers, as reprinted"


# Standard tapers -----------------------------------------------------------------------------
@pytest.mark.outside("tapers.solve", source=SOURCE)
@pytest.mark.parametrize("designation", TAPERS)
def test_a_printed_taper_is_served_to_its_digits(designation: str) -> None:
    """Each printed row is there with its rate, its sizes, and its included angle."""
    row, ours = TAPERS[designation], all_rows()[designation]
    angle = 2.0 * math.degrees(math.atan(ours.rate / 2.0))
    assert angle == pytest.approx(parse_dms(row["included_angle"]), abs=6e-5 / 3600)
    assert 12.0 * ours.rate == pytest.approx(float(row["taper_per_foot"]), abs=6e-7)
    sizes = [row[name] for name in ("gauge_diameter", "small_diameter", "small_end_depth")]
    if row["gauge_diameter"]:
        taper = standard_tapers()[designation]
        found = [taper.gauge_diameter, taper.small_diameter, taper.small_end_depth]
        assert found == [float(size) if size else None for size in sizes]
        assert taper.units == row["unit"]
    if row["seen_in_print"] == "yes":
        assert ours.standing == "published"


@pytest.mark.outside("tapers.solve", source="D = d + taper per foot × length / 12, by Decimal")
@pytest.mark.parametrize(
    "designation", [n for n, r in WRITTEN_TAPERS.items() if "small_diameter" in r]
)
def test_a_taper_holds_its_arithmetic(designation: str) -> None:
    """The gauge diameter is d + tpf × l / 12, to half of one in the last digit printed.

    Of Brown & Sharpe and of the drill chucks to five places, whatever zeros were left away.
    """
    row = WRITTEN_TAPERS[designation]
    small, depth = Decimal(row["small_diameter"]), Decimal(row["small_end_depth"])
    diameter = float(small + Decimal(row["taper_per_foot"]) * depth / 12)
    five = designation.startswith(("brown", "drill")) and designation != "brown-sharpe-5-2_125"
    within = 0.5e-5 if five else half_unit(row["gauge_diameter"])
    off = abs(float(row["gauge_diameter"]) - diameter)
    if designation in OFF_BY_ONE:
        assert within < off <= 3 * within
        assert f"{diameter:.5f}" in row["note"]
    else:
        assert off <= within * 1.0001


def test_two_slips_of_the_last_digit_are_mended() -> None:
    """No. 8 of Brown & Sharpe is 0.89873 in at its gauge plane, chuck 5 is 1.31611 at its end."""
    assert standard_tapers()["brown-sharpe-8-3_5625"].gauge_diameter == 0.89873
    assert standard_tapers()["drill-chuck-5"].small_diameter == 1.31611


def test_the_series_are_complete() -> None:
    """Counts by series; beside the printed rows: further lengths, Jarno 1, inch No. 55."""
    counts = Counter(taper.series for taper in standard_tapers().values())
    assert counts["Morse"] == 9 + 7
    assert counts["Jarno"] == 20
    assert counts["Brown & Sharpe"] == 24 + 6
    assert counts["Metric"] == 7
    further = set(standard_tapers()) - set(TAPERS)
    assert further == {
        *("jarno-1", "7-24-55"),
        *("brown-sharpe-3-1_75", "brown-sharpe-3-2", "brown-sharpe-5-2", "brown-sharpe-7-2_5"),
        *("brown-sharpe-10-6_21875", "brown-sharpe-12-6_25"),
    }
    assert {standard_tapers()[name].standing for name in further} == {"from-memory", "derived"}


@pytest.mark.parametrize("number", range(1, 19))
def test_lengths_of_brown_and_sharpe_share_rate_and_small_end(number: int) -> None:
    """Each number has at least one length, and all its lengths have one small end and one rate."""
    rows = [t for n, t in standard_tapers().items() if n.startswith(f"brown-sharpe-{number}-")]
    assert rows
    assert len({(row.small_diameter, row.rate) for row in rows}) == 1


@pytest.mark.parametrize("number", range(1, 21))
def test_jarno_follows_its_rule(number: int) -> None:
    """Jarno n is n/8 in at the large end, n/10 at the small end and n/2 long."""
    row = standard_tapers()[f"jarno-{number}"]
    found = (row.gauge_diameter, row.small_diameter, row.small_end_depth)
    assert found == (number / 8, number / 10, number / 2)


@pytest.mark.parametrize("number", [30, 40, 45, 50, 55, 60])
def test_inch_and_metric_numbers_of_7_24_are_one_size(number: int) -> None:
    """Each number of 7/24 has one gauge diameter in both tables."""
    inch, metric = (standard_tapers()[f"7-24-{number}{end}"] for end in ("", "-iso"))
    assert inch.gauge_diameter * 25.4 == pytest.approx(metric.gauge_diameter, rel=1e-12)
    assert inch.rate == metric.rate == 7 / 24


# Rates ---------------------------------------------------------------------------------------
def designation_of_rate(taper: str) -> str:
    """This project's designation of a row of ISO 1119: `1:20`, `120°`, `11°54'0"`."""
    if ":" in taper:
        return f"iso-{taper}"
    degrees, _, rest = taper.partition("°")
    minutes = rest.partition("'")[0]
    return f"cone-{degrees}" + (f"-{minutes}" if minutes else "")


ISO_1119 = {designation_of_rate(row["taper"]): row for row in printed("iso_1119.csv")}


@pytest.mark.outside("tapers.identify", source="ISO 1119:1998, tables 1 and 2, by mpmath")
@pytest.mark.parametrize("designation", ISO_1119)
def test_a_row_of_iso_1119_is_served_and_held(designation: str) -> None:
    """Ratio, cone angle in degrees, in seconds and in radians agree to the digits printed."""
    mp.dps = 30
    row, ours = ISO_1119[designation], standard_rates()[designation]
    exact = 2 * mp.atan(mpf(ours.rate) / 2)
    degrees = float(mp.degrees(exact))
    assert ours.cone_angle_degrees == pytest.approx(degrees, rel=1e-14)
    # 7:24 is printed as worked out from the rounded 1:3.4285714, as its note says.
    within = 6e-4 if designation == "iso-7:24" else 6e-5
    assert degrees == pytest.approx(parse_dms(row["cone_angle"]), abs=within / 3600)
    assert bool(ours.note) is (designation == "iso-7:24")
    assert degrees == pytest.approx(float(row["cone_angle_degrees"]), abs=2e-7)
    assert float(exact) == pytest.approx(float(row["cone_angle_radians"]), abs=6e-9)
    if row["ratio"]:
        top, _, bottom = row["ratio"].partition(":")
        assert float(top) / ours.rate == pytest.approx(float(bottom), abs=6e-8)
    general = list(ISO_1119).index(designation) < 21
    assert ours.standing == ("published" if general else "from-memory")


@pytest.mark.parametrize(
    "designation", [n for n in WRITTEN_RATES if "printed_angle" in WRITTEN_RATES[n]]
)
def test_a_printed_cone_angle_follows_from_its_ratio(designation: str) -> None:
    """The angle printed beside a ratio follows from it, to 0.0001″; of 7:24 as its note says."""
    angle = parse_dms(WRITTEN_RATES[designation]["printed_angle"])
    ours = standard_rates()[designation].cone_angle_degrees
    within = 6e-4 if designation == "iso-7:24" else 1.1e-4
    assert ours == pytest.approx(angle, abs=within / 3600)


PER_FOOT = {row["taper_per_foot"]: row for row in printed("taper_per_foot.csv")}


@pytest.mark.outside("tapers.angle", source="Table of tapers per foot and corresponding angles")
@pytest.mark.parametrize("inches", PER_FOOT)
def test_a_taper_per_foot_is_served_and_held(inches: str) -> None:
    """Each taper per foot has its included and half angle and its taper per inch, as tabled."""
    row, wanted = PER_FOOT[inches], float(inches) / 12.0
    served = [row.rate for row in all_rows().values() if math.isclose(row.rate, wanted)]
    assert served
    half = math.degrees(math.atan(served[0] / 2.0))
    assert 2.0 * half == pytest.approx(parse_dms(row["included_angle"]), abs=0.051 / 3600)
    assert half == pytest.approx(parse_dms(row["half_angle"]), abs=0.051 / 3600)
    assert served[0] == pytest.approx(float(row["taper_per_inch"]), abs=6e-7)


@pytest.mark.parametrize("designation", standard_rates())
def test_a_rate_is_served_by_its_designation(service: TestClient[Any], designation: str) -> None:
    """Each rate is a resource of its own, whose answer stands on its own source and standing."""
    answer = service.get(f"/v1/tapers/rates/{designation}").json()
    row = answer["result"]
    assert row["designation"] == designation
    assert row["one_in_x"] == pytest.approx(1.0 / rate_of(designation), rel=1e-12)
    cited = [{"citation": row["source"], "standing": row["standing"]}]
    assert answer["basis"]["sources"] == cited


# Shanks --------------------------------------------------------------------------------------
LETTERS = {
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
SHANKS = {row["designation"]: row for row in printed("iso_296_shanks.csv")}


@pytest.mark.outside("tapers.solve", source="ISO 296:1991, table 2, with the text of QJ 417-78")
@pytest.mark.parametrize("designation", SHANKS)
def test_a_metric_shank_is_served_as_the_table_has_it(
    service: TestClient[Any], designation: str
) -> None:
    """Every column is the table's; D1 and d follow from D and the rate, as rounded there."""
    entry = service.get(f"/v1/tapers/standard/{designation}").json()["result"]
    row, shank = SHANKS[designation], entry["dimensions"]
    assert shank["units"] == "mm"
    for letter, column in LETTERS.items():
        assert shank[column] == (float(row[letter]) if row[letter] else None)
    rate, gauge = 1.0 / entry["one_in_x"], entry["gauge_diameter"]
    end = gauge + rate * shank["gauge_plane_to_end"]
    small = gauge - rate * shank["small_end_depth"]
    assert end == pytest.approx(float(row["D1_computed"]), abs=6e-4)
    assert small == pytest.approx(float(row["d_computed"]), abs=6e-4)
    # Printed to 0.1 mm, some of them rounded to the safe side.
    assert shank["end_diameter"] == pytest.approx(end, abs=0.06)
    assert shank["small_end_diameter"] == pytest.approx(small, abs=0.06)


def columns(designation: str) -> dict[str, float]:
    """The columns that a shank's row has."""
    row = shank_dimensions()[designation].columns
    return {name: value for name, value in row.items() if value is not None}


@pytest.mark.parametrize("designation", SHANKS)
def test_lengths_of_a_metric_shank_add_up(designation: str) -> None:
    """Whole lengths are the depths from the gauge plane and what the cone runs on past it.

    So l3 ends at the tang's end, not at its shoulder; the drift's slot, which the tang's end stands
    in, begins before it.
    """
    row = columns(designation)
    run_on = row["gauge_plane_to_end"]
    assert row["plain_shank_length"] == pytest.approx(row["small_end_depth"] + run_on)
    assert row["socket_depth"] > row["slot_depth"] > 0
    assert row["socket_bore"] > row["small_end_diameter"]
    assert ("tang_end_depth" in row) is (designation not in {"metric-4", "metric-6"})
    if "tang_end_depth" in row:
        assert row["shank_length"] == pytest.approx(row["tang_end_depth"] + run_on)
        assert row["small_end_depth"] < row["tang_end_depth"]
        assert row["slot_depth"] < row["tang_end_depth"]
        assert row["tang_thickness"] == row["slot_width"]


@pytest.mark.outside("tapers.solve", source="ASME B5.10, table of Morse taper shanks, as reprinted")
@pytest.mark.parametrize("number", range(7))
def test_inch_and_metric_morse_shanks_are_the_same_shank(number: int) -> None:
    """Lengths and tang of the inch table are those of ISO 296 within 2.5 % or a sixteenth."""
    inch, metric = columns(f"morse-{number}"), columns(f"morse-{number}-iso")
    for column in ("tang_end_depth", "shank_length", "tang_thickness", "slot_depth"):
        within = max(1.6, 0.025 * metric[column])
        assert inch[column] * 25.4 == pytest.approx(metric[column], abs=within)


@pytest.mark.parametrize("number", range(8))
def test_parts_of_an_inch_morse_shank_follow_one_another(number: int) -> None:
    """Slot, plug depth, hole and tang lie in order down the axis; the tang ends in the slot."""
    row = columns(f"morse-{number}")
    depth = standard_tapers()[f"morse-{number}"].small_end_depth or 0.0
    assert row["slot_depth"] < depth < row["socket_depth"] < row["tang_end_depth"]
    assert row["tang_end_depth"] < row["slot_depth"] + row["slot_length"]
    assert row["tang_end_depth"] < row["shank_length"]
    assert row["tang_thickness"] < row["slot_width"]


@pytest.mark.outside(
    "tapers.solve", source="MAS 403:1982, taper shanks, as a machine manual prints"
)
@pytest.mark.parametrize(
    ("number", "length", "small"),
    [
        (30, 48.4, 17.633),
        (40, 65.4, 25.375),
        (45, 82.8, 33.000),
        (50, 101.8, 40.158),
        (55, 126.8, 51.917),
        (60, 161.8, 60.758),
    ],
)
def test_cones_of_7_24_have_their_lengths_and_small_ends(
    number: int, length: float, small: float
) -> None:
    """Length and small end of each cone are the printed ones, and hang together by 7/24."""
    row = shank_dimensions()[f"7-24-{number}-iso"]
    assert row.columns["small_end_depth"] == length
    assert row.columns["small_end_diameter"] == small
    assert set(row.published) == {"small_end_depth", "small_end_diameter"}


@pytest.mark.parametrize("designation", [n for n in WRITTEN_SHANKS if n.startswith("7-24")])
def test_small_ends_of_7_24_hold_their_arithmetic(designation: str) -> None:
    """The small end is D − 7/24 × length, to half of one in its last digit."""
    row, gauge = WRITTEN_SHANKS[designation], WRITTEN_TAPERS[designation]["gauge_diameter"]
    small = float(Decimal(gauge) - Decimal(row["small_end_depth"]) * 7 / 24)
    assert abs(float(row["small_end_diameter"]) - small) <= half_unit(row["small_end_diameter"])
    assert set(row["published"]) <= set(row)


# Grades --------------------------------------------------------------------------------------
@pytest.mark.outside("tapers.tolerance", source="ISO 1947:1973, AT by its R10 rule")
@pytest.mark.parametrize("grade", [f"AT{number}" for number in range(1, 13)])
def test_a_grade_of_cone_angle_is_served_and_held(service: TestClient[Any], grade: str) -> None:
    """Each range of a grade is the table's: angle in both units, diameters at its ends."""
    answer = service.get(f"/v1/tapers/angle-grades/{grade}").json()
    rows = [row for row in printed("cone_angle_grades.csv") if row["grade"] == grade]
    ranges = answer["result"]["ranges"]
    assert len(ranges) == len(rows) == 10
    for ours, row in zip(ranges, rows, strict=True):
        assert (ours["over"], ours["up_to"]) == (float(row["over_mm"]), float(row["up_to_mm"]))
        assert ours["included_angle_band_microradians"] == float(row["microradian"])
        arcsec = ours["included_angle_band_arcsec"]
        assert arcsec == pytest.approx(float(row["arcsec"]), abs=0.0051)
        shortest, longest = ours["smallest_diameter_band"], ours["largest_diameter_band"]
        assert shortest == pytest.approx(float(row["diameter_um_shortest"]), abs=6e-4)
        assert longest == pytest.approx(float(row["diameter_um_longest"]), abs=6e-4)
    assert answer["basis"]["sources"][0]["standing"] == "from-memory"


def test_a_listing_stands_on_the_sources_of_its_rows(service: TestClient[Any]) -> None:
    """The basis of a table names each source with its standing, not the best of them for all."""
    answer = service.get("/v1/tapers/standard").json()
    rows = answer["result"]["standard"]
    cited = {(s["citation"], s["standing"]) for s in answer["basis"]["sources"]}
    assert cited == {(row["source"], row["standing"]) for row in rows}
    assert {standing for _, standing in cited} == {"published", "from-memory", "derived"}
