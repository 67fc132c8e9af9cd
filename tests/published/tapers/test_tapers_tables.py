"""Every row of every table of tapers, held to what is printed and to its own arithmetic."""

import math
from collections import Counter
from decimal import Decimal
from typing import Any

import pytest
from litestar.testing import TestClient
from mpmath import mp, mpf

from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.tables.tapers import standard
from halfangle_service.trade.tables.tapers.designations import all_rows, rate_of
from halfangle_service.trade.tables.tapers.rates import standard_rates
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from transcribed import tapers
from transcribed.reading import half_unit, printed, written
from transcribed.tapers import designation_of, designation_of_rate

#: Rows whose printed gauge diameter is one unit off their own arithmetic, as the row's note says.
OFF_BY_ONE = {"brown-sharpe-4-1_6875", "brown-sharpe-7-2_875"}


WRITTEN_TAPERS = written(standard, "taper")
TAPERS = {designation_of(row): row for row in printed("tapers/tapers.csv")}
SOURCE = "ASME B5.10, ISO 296, ISO 297, handbook lists of tapers, as reprinted"


# Standard tapers -----------------------------------------------------------------------------
@pytest.mark.outside("tapers.solve", source=f"{SOURCE}; rows not seen in print from memory")
def test_every_standard_taper_is_the_listed_one() -> None:
    """Every standard taper has the listed rate, sizes, unit and name, and no other is there."""
    assert not tapers.taper_differences(standard_tapers())


@pytest.mark.outside("tapers.solve", source=SOURCE)
@pytest.mark.parametrize("designation", TAPERS)
def test_a_printed_taper_is_served_to_its_digits(designation: str) -> None:
    """Each printed row is there with its rate and its included angle, and what was seen says so."""
    row, ours = TAPERS[designation], all_rows()[designation]
    angle = 2.0 * math.degrees(math.atan(ours.rate / 2.0))
    assert angle == pytest.approx(parse_dms(row["included_angle"]), abs=6e-5 / 3600)
    assert 12.0 * ours.rate == pytest.approx(float(row["taper_per_foot"]), abs=6e-7)
    assert (ours.standing == "published") is (row["seen_in_print"] == "yes")


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
        shown, gives = row["gauge_diameter"], f"{diameter:.5f}"
        assert row["note"] == f"Printed {shown}; d + tpf l / 12 gives {gives}."
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
@pytest.mark.outside(
    "tapers.identify",
    source="ISO 1119:1998, table 1, as adopted; table 2, pins and pipe from memory",
)
def test_every_rate_is_the_listed_one() -> None:
    """Every standard rate has the listed rate, cone angle and purpose, and no other is there."""
    assert not tapers.rate_differences(standard_rates())


#: 24/7 rounded to the digits of the table's ratios, and twice atan(7/48), to 0.0001″.
SEVEN_IN_24_NOTE = (
    "The table prints 16°35'39.4443\", worked out from the rounded 1:3.4285714; exact is "
    "16°35'39.4438\"."
)
ISO_1119 = {designation_of_rate(row["taper"]): row for row in printed("tapers/iso_1119.csv")}


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
    assert ours.note == (SEVEN_IN_24_NOTE if designation == "iso-7:24" else "")
    assert degrees == pytest.approx(float(row["cone_angle_degrees"]), abs=2e-7)
    assert float(exact) == pytest.approx(float(row["cone_angle_radians"]), abs=6e-9)
    if row["ratio"]:
        top, _, bottom = row["ratio"].partition(":")
        assert float(top) / ours.rate == pytest.approx(float(bottom), abs=6e-8)
    general = list(ISO_1119).index(designation) < 21
    assert ours.standing == ("published" if general else "from-memory")


PER_FOOT = {row["taper_per_foot"]: row for row in printed("tapers/taper_per_foot.csv")}


@pytest.mark.outside("tapers.angle", source="tan(angle / 2) = taper per foot / 24, apart")
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


def test_a_listing_stands_on_the_sources_of_its_rows(service: TestClient[Any]) -> None:
    """The basis of a table names each source with its standing, not the best of them for all."""
    answer = service.get("/v1/tapers/standard").json()
    rows = answer["result"]["standard"]
    cited = {(s["citation"], s["standing"]) for s in answer["basis"]["sources"]}
    assert cited == {(row["source"], row["standing"]) for row in rows}
    assert {standing for _, standing in cited} == {"published", "from-memory", "derived"}
