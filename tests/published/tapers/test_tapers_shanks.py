"""Every row of the tables of shanks and of cone angle grades, held to print and to arithmetic."""

from decimal import Decimal
from itertools import pairwise
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.trade.tables.tapers import shanks, standard
from halfangle_service.trade.tables.tapers.grades import angle_grades
from halfangle_service.trade.tables.tapers.shanks import shank_dimensions
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from transcribed import tapers
from transcribed.reading import half_unit, preferred, printed, written
from transcribed.tapers import METRIC_LETTERS

WRITTEN_TAPERS = written(standard, "taper")
WRITTEN_SHANKS = written(shanks, "shank")


# Shanks --------------------------------------------------------------------------------------
SHANKS = {row["designation"]: row for row in printed("tapers/iso_296_shanks.csv")}


@pytest.mark.outside(
    "tapers.solve",
    source="ISO 296:1991, MAS 403:1982, B5.50, B5.10, in part as reprinted, the rest from memory",
)
def test_every_shank_is_the_listed_one() -> None:
    """Every shank has the listed columns, and no other shank is there."""
    assert not tapers.shank_differences(shank_dimensions())


@pytest.mark.outside("tapers.solve", source="ISO 296:1991, table 2, with the text of QJ 417-78")
@pytest.mark.parametrize("designation", SHANKS)
def test_a_metric_shank_is_served_as_the_table_has_it(
    service: TestClient[Any], designation: str
) -> None:
    """Every column is the table's; D1 and d follow from D and the rate, as rounded there."""
    entry = service.get(f"/v1/tapers/standard/{designation}").json()["result"]
    row, shank = SHANKS[designation], entry["dimensions"]
    assert shank["units"] == "mm"
    for letter, column in METRIC_LETTERS.items():
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


def test_sockets_give_more_room_by_size() -> None:
    """From size to size a socket is no less wider, no less deeper and its slot no less long."""
    rows = [columns(designation) for designation in SHANKS]
    wider = [row["socket_bore"] - row["small_end_diameter"] for row in rows]
    deeper = [row["socket_depth"] - row["small_end_depth"] for row in rows]
    slot = [row["small_end_depth"] - row["slot_depth"] for row in rows[2:]]
    for room in (wider, deeper, slot):
        assert all(a <= b + 1e-9 for a, b in pairwise(room))


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


@pytest.mark.parametrize("number", range(8))
def test_cells_of_an_inch_morse_shank_are_64ths(number: int) -> None:
    """Every cell is a 64th of an inch, but d of No. 0; t, d and W as rounded in the table.

    The slot is wider than the tang by a 64th, past No. 4 by a 32nd.
    """
    row = {name: 64.0 * size for name, size in columns(f"morse-{number}").items()}
    digits = {"tang_thickness": 1e-4, "slot_width": 1e-3, "tang_diameter": 1e-3}
    for name, size in row.items():
        if (name, number) != ("tang_diameter", 0):
            long = len(WRITTEN_SHANKS[f"morse-{number}"][name]) > len("1.1250")
            within = 1e-12 if long else digits.get(name, 1e-12)
            assert abs(size - round(size)) < 64.0 * within
    small = standard_tapers()[f"morse-{number}"].small_diameter
    assert small is not None
    assert 0.9 * 64.0 * small < row["tang_diameter"] < 64.0 * small
    clearance = round(row["slot_width"]) - round(row["tang_thickness"])
    assert clearance == (1 if number < 5 else 2)


@pytest.mark.parametrize("designation", [n for n in WRITTEN_SHANKS if n.startswith("7-24")])
def test_small_ends_of_7_24_hold_their_arithmetic(designation: str) -> None:
    """The small end is D − 7/24 × length, to half of one in its last digit."""
    row, gauge = WRITTEN_SHANKS[designation], WRITTEN_TAPERS[designation]["gauge_diameter"]
    small = float(Decimal(gauge) - Decimal(row["small_end_depth"]) * 7 / 24)
    assert abs(float(row["small_end_diameter"]) - small) <= half_unit(row["small_end_diameter"])
    assert set(row["published"]) <= set(row)


# Grades --------------------------------------------------------------------------------------
@pytest.mark.outside("tapers.tolerance", source="ISO 1947:1973, its R10 rule, from memory")
def test_every_grade_of_cone_angle_is_the_listed_one() -> None:
    """Every grade has the listed ranges and bands, and no other is there."""
    assert not tapers.grade_differences(angle_grades())


def test_bands_step_by_preferred_numbers() -> None:
    """A band is 50 µrad of R10 steps: two up a grade, one down a range; ranges are steps of two.

    The first range begins at 6 mm, where R10 has 6.3.
    """
    for place, grade in enumerate(angle_grades().values()):
        steps = [17 + 2 * place - length for length in range(10)]
        assert list(grade.band_microradian) == [preferred(step) for step in steps]
        assert list(grade.up_to_mm) == [preferred(step) for step in range(10, 29, 2)]
        assert grade.over_mm == (6.0, *grade.up_to_mm[:-1])


@pytest.mark.outside("tapers.tolerance", source="ISO 1947:1973, AT by its R10 rule, from memory")
@pytest.mark.parametrize("grade", [f"AT{number}" for number in range(1, 13)])
def test_a_grade_of_cone_angle_is_served_and_held(service: TestClient[Any], grade: str) -> None:
    """Each range of a grade is the table's: angle in both units, diameters at its ends."""
    answer = service.get(f"/v1/tapers/cone-angle-grades/{grade}").json()
    rows = [row for row in printed("tapers/cone_angle_grades.csv") if row["grade"] == grade]
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
