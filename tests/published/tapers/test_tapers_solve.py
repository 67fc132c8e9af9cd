"""Tapers against published tables and a high-precision library."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from mpmath import mp

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from halfangle_service.trade.tapers.solve import solve_taper
from support import Call
from transcribed.reading import number
from transcribed.tapers import listed_tapers

# ISO 1119:1998 / GB/T 157-2001: x of 1:x, cone angle as printed.
ISO_1119 = [
    (5, 11, 25, 16.2706),
    (10, 5, 43, 29.3176),
    (20, 2, 51, 51.0925),
    (50, 1, 8, 45.1586),
]

#: Rows seen in print that have both diameters and the length between them.
PRINTED = {
    name: row
    for name, row in listed_tapers().items()
    if row.get("seen_in_print") == "yes" and row["small_end_depth"] and "chuck" not in name
}


@pytest.mark.outside("tapers.solve", source="ISO 1119:1998, table 1, cone angles as printed")
@pytest.mark.parametrize(("x", "degrees", "minutes", "seconds"), ISO_1119)
def test_cone_angle_of_a_rate(
    call: Call, x: float, degrees: int, minutes: int, seconds: float
) -> None:
    """The cone angle of 1:x is the printed one, to its printed digits."""
    result = call("tapers.solve", units="mm", large_diameter=20, length=10, one_in_x=x)["result"]
    printed = degrees + minutes / 60 + seconds / 3600
    assert result["included_angle"]["degrees"] == pytest.approx(printed, abs=0.00006 / 3600)


@pytest.mark.outside(
    "tapers.solve", source="ASME B5.10 and lists of tapers, as reprinted: D, d, depth, taper"
)
@pytest.mark.parametrize("designation", PRINTED)
def test_printed_columns_agree_with_one_another(call: Call, designation: str) -> None:
    """D, depth and taper per foot of a row give its d, to the digits that the table prints."""
    row = PRINTED[designation]
    # Morse is printed to 0.00001 in, some Brown and Sharpe diameters to 0.0001 in.
    digits = 1.5e-5 if row["series"] == "morse" else 5.5e-5
    result = call(
        "tapers.solve",
        units="in",
        large_diameter=number(row["gauge_diameter"]),
        length=number(row["small_end_depth"]),
        taper_per_foot=number(row["taper_per_foot"]),
    )["result"]
    assert result["small_diameter"] == pytest.approx(number(row["small_diameter"]), abs=digits)


@pytest.mark.outside("tapers.solve", source="mpmath, 50 digits: 2 atan(3.5/24) of the 7/24 taper")
def test_seven_in_twenty_four(call: Call) -> None:
    """3.5 in a foot is 16.594° included, from tan α = 3.5/24 and not from a sine."""
    mp.dps = 50
    result = call("tapers.solve", units="in", large_diameter=1.75, length=2, taper_per_foot=3.5)[
        "result"
    ]
    exact = float(mp.degrees(2 * mp.atan(mp.mpf("3.5") / 24)))
    assert result["included_angle"]["degrees"] == pytest.approx(exact, rel=1e-14)
    assert result["included_angle"]["degrees"] == pytest.approx(16.594, abs=5e-4)


def test_standard_series_are_complete_and_ordered() -> None:
    """Morse 0 to 7 and 7/24 from 10 to 60 are there, and gauge diameters rise with the number."""
    tapers = standard_tapers()
    for size in range(8):
        assert f"morse-{size}" in tapers
    for series in ("morse", "7-24"):
        for suffix in ("", "-iso"):
            rows = [
                t.gauge_diameter
                for name, t in tapers.items()
                if name.startswith(series) and name.endswith("-iso") == bool(suffix)
            ]
            assert rows == sorted(rows)
            assert len(rows) >= 7


def test_morse_of_both_standards_are_one_taper() -> None:
    """Morse by ASME and by ISO agree: gauge diameters to 0.01 mm, rates to 0.01 %."""
    tapers = standard_tapers()
    for size in range(1, 7):
        inch, metric = tapers[f"morse-{size}"], tapers[f"morse-{size}-iso"]
        assert inch.gauge_diameter * 25.4 == pytest.approx(metric.gauge_diameter, abs=0.01)
        assert inch.rate == pytest.approx(metric.rate, rel=1e-4)


sizes = st.floats(0.1, 100)


@given(large=sizes, share=st.floats(0.01, 0.99), length=sizes)
def test_every_unknown_is_recovered(large: float, share: float, length: float) -> None:
    """Solving forward and back recovers each of the four quantities."""
    small = large * share
    rate = (large - small) / length
    full = {"large_diameter": large, "small_diameter": small, "length": length}
    for left_out, value in full.items():
        given_three = {**full, left_out: None}
        taper = solve_taper(**given_three, rates={"half_angle": rate}, agree_within=1e-6)
        assert getattr(taper, left_out) == pytest.approx(value, rel=1e-9)
    assert math.tan(solve_taper(**full, rates={}, agree_within=1).half_angle_rad) == pytest.approx(
        rate / 2
    )


def test_disagreement_is_refused_with_its_size(call: Call) -> None:
    """Four quantities that contradict one another are refused, with the disagreement."""
    with pytest.raises(Disagreement, match="taper_per_foot disagrees") as refusal:
        call(
            "tapers.solve",
            units="in",
            large_diameter=0.7,
            small_diameter=0.572,
            length=2.5625,
            taper_per_foot=0.6246,
        )
    assert refusal.value.more["disagreement"] == pytest.approx(0.6246 / 12 * 2.5625 - 0.128)


def test_taper_that_ends_before_its_length_is_refused(call: Call) -> None:
    """A slope that comes to a point within the length is refused, with where it does."""
    with pytest.raises(Impossible, match=r"comes to its point 0\.86603 in from"):
        call("tapers.solve", units="in", large_diameter=1, length=2, included_angle=60)
