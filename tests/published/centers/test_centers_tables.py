"""Every cell of the tables of center holes, held to a second transcription and to arithmetic."""

import math
from collections.abc import Iterable
from itertools import pairwise

import pytest

from halfangle_service.trade.tables.centers.holes import TableHole, center_holes
from transcribed.centers import METRIC, hole_differences
from transcribed.reading import number, preferred, printed

HOLES = center_holes()
#: Pilots from 1 mm on: the number of the R10 step, to which the whole row belongs.
STEPS = range(11)


def of_type(*types: str) -> list[TableHole]:
    """Holes of these types, in the table's order."""
    return [hole for hole in HOLES.values() if hole.type in types]


def given(sizes: Iterable[float | None]) -> list[float]:
    """Sizes of a column in which no cell is empty."""
    found = [size for size in sizes if size is not None]
    assert found
    return found


@pytest.mark.outside(
    "centers.hole",
    source="DIN 332-1:1986, rows of A and B as a handbook reprints them; other rows, ISO 866, 2540 "
    "and 2541 and ASME B94.11M-1993 from memory",
)
def test_every_center_hole_is_the_listed_one() -> None:
    """Every hole has the listed cells and standing, and no other hole is there."""
    assert not hole_differences(HOLES)


# Metric --------------------------------------------------------------------------------------
def test_a_key_says_type_and_pilot() -> None:
    """`a-2.5` is type A with a pilot of 2.5 mm."""
    for hole in of_type("A", "B", "R"):
        assert hole.key == f"{hole.type.lower()}-{hole.pilot_diameter:g}"


@pytest.mark.parametrize(("kind", "first"), [("A", -3), ("B", 0), ("R", 0)])
def test_pilots_and_cones_are_preferred_numbers(kind: str, first: int) -> None:
    """Pilots are R10 from 0.5 or 1 to 10 mm; the cone is R40 beside it, 2.12 of the pilot."""
    for step, hole in zip(range(first, 11), of_type(kind), strict=True):
        assert hole.pilot_diameter == preferred(step)
        cone = 10.0 ** (step / 10 + 13 / 40)
        assert hole.cone_diameter == pytest.approx(cone, rel=0.015)
        assert hole.cone_diameter in R40


#: Preferred numbers R40/4 through 1.06 (ISO 3:1973, from memory), from 1.06 to 21.2.
R40 = (1.06, 1.32, 1.7, 2.12, 2.65, 3.35, 4.25, 5.3, 6.7, 8.5, 10.6, 13.2, 17.0, 21.2)


@pytest.mark.parametrize("kind", ["A", "B"])
def test_a_hole_is_as_deep_as_pilot_and_cone(kind: str) -> None:
    """The least depth is ISO 6411's depth of the pilot and the cone's, and of B the chamfer's.

    To half of the last digit printed, 0.1 mm, of each of its parts.
    """
    rows = [row for row in printed(METRIC) if row["type"] == kind and row["t"]]
    for row in rows:
        hole = HOLES[f"{kind.lower()}-{row['d1']}"]
        cone = (hole.cone_diameter - hole.pilot_diameter) / 2.0 / math.tan(math.radians(30.0))
        parts = number(row["pilot_depth"]) + cone + (hole.chamfer_depth or 0.0)
        assert hole.depth_min == pytest.approx(parts, abs=0.1)
    assert len(rows) == len(STEPS)


def test_a_hole_of_type_b_is_one_of_type_a_with_a_chamfer() -> None:
    """Pilot, cone and drill's pilot are those of A; depth is A's and the chamfer's of 120°."""
    for step, hole in zip(STEPS, of_type("B"), strict=True):
        plain = HOLES[f"a-{preferred(step):g}"]
        for same in ("pilot_diameter", "cone_diameter", "pilot_length_min", "pilot_length_max"):
            assert getattr(hole, same) == getattr(plain, same)
        mouth, depth, cut_off = given([hole.chamfer_diameter, hole.chamfer_depth, hole.cut_off])
        wall = (mouth - hole.cone_diameter) / 2.0 / math.tan(math.radians(60.0))
        assert depth == pytest.approx(wall, abs=0.06)
        assert hole.depth_min == pytest.approx(given([plain.depth_min])[0] + depth)
        beyond = cut_off - given([plain.cut_off])[0]
        assert depth <= beyond + 1e-9 <= 1.7 * depth + 0.5


def test_protecting_chamfers_and_bodies_are_preferred_numbers() -> None:
    """d3 is R10 up to 16 mm, R20 above; the body of a drill of type B is R20, past the mouth."""
    chamfers = given(hole.chamfer_diameter for hole in of_type("B"))
    assert chamfers == [*(preferred(5 + n) for n in range(8)), 18.0, 22.4, 28.0]
    bodies = [hole.body_diameter for hole in of_type("B")]
    assert bodies == [*(preferred(6 + n) for n in range(5)), 11.2, 14.0, 18.0, 20.0, 25.0, 31.5]
    assert all(a < b for a, b in zip(chamfers, bodies, strict=True))


@pytest.mark.parametrize("kind", ["A", "R"])
def test_a_body_is_two_and_a_half_pilots(kind: str) -> None:
    """The body of types A and R is the R10 number 2.5 times the pilot, 3.15 mm at least."""
    for hole in of_type(kind):
        step = next(n for n in range(-3, 11) if preferred(n) == hole.pilot_diameter)
        assert hole.body_diameter == max(preferred(step + 4), 3.15)


def test_an_arc_is_between_two_preferred_numbers() -> None:
    """Type R has A's pilot, mouth and cut-off; its radius is from 2.5 to 3.15 times the pilot."""
    for step, hole in zip(STEPS, of_type("R"), strict=True):
        plain = HOLES[f"a-{preferred(step):g}"]
        assert (hole.cone_diameter, hole.cut_off) == (plain.cone_diameter, plain.cut_off)
        assert (hole.arc_radius_min, hole.arc_radius_max) == (
            preferred(step + 4),
            preferred(step + 5),
        )
        below = given([plain.depth_min])[0] - given([hole.depth_min])[0]
        assert 0.0 <= below <= 0.1 + 1e-9


def test_pilots_of_drills_lengthen_with_their_diameter() -> None:
    """A pilot is 1.2 to 1.6 times its diameter long at least; its tolerance never falls."""
    holes = of_type("A")
    low, high = (
        given(getattr(hole, name) for hole in holes)
        for name in ("pilot_length_min", "pilot_length_max")
    )
    assert all(
        1.2 <= size / hole.pilot_diameter <= 1.6 for size, hole in zip(low, holes, strict=True)
    )
    widths = [round(b - a, 6) for a, b in zip(low, high, strict=True)]
    assert widths == [0.2, 0.3, 0.4, 0.6, 0.6, 0.8, 0.8, 1.0, 1.0, 1.2, 1.2, 1.2, 1.4, 1.4]


def test_cut_offs_grow_by_size() -> None:
    """A part of a larger hole is cut off longer: some three pilots, to whole millimetres for A."""
    for kind in ("A", "B", "R"):
        holes = [hole for hole in of_type(kind) if hole.cut_off is not None]
        sizes = given(hole.cut_off for hole in holes)
        assert all(a < b for a, b in pairwise(sizes))
        for hole, size in zip(holes, sizes, strict=True):
            assert 2.75 <= size / hole.pilot_diameter <= 3.7


# Inch ----------------------------------------------------------------------------------------
@pytest.mark.parametrize("hole", of_type("plain", "bell"), ids=lambda hole: hole.key)
def test_a_center_drill_is_64ths_of_an_inch(hole: TableHole) -> None:
    """Pilots are 64ths and as long as thick, bodies 16ths; a plain drill sinks up to its body.

    No. 00 has 0.025 in, No. 0 and 00 a pilot a little longer than thick: 1.2 times.
    """
    assert hole.pilot_length_min == hole.pilot_length_max
    assert hole.body_diameter * 16.0 == int(hole.body_diameter * 16.0)
    if hole.key in {"plain-00", "plain-0"}:
        assert hole.pilot_length_min == pytest.approx(1.2 * hole.pilot_diameter, abs=6e-4)
    else:
        assert hole.pilot_length_min == hole.pilot_diameter
    if hole.key != "plain-00":
        assert hole.pilot_diameter * 64.0 == int(hole.pilot_diameter * 64.0)
    assert (hole.type == "plain") is (hole.cone_diameter == hole.body_diameter)


def test_bodies_of_bell_drills_are_those_of_plain_ones() -> None:
    """Nos. 11 to 18 have the bodies of Nos. 1 to 8; their bells are 0.78 to 0.80 of them."""
    for size in range(1, 9):
        plain, bell = HOLES[f"plain-{size}"], HOLES[f"bell-{size + 10}"]
        assert plain.body_diameter == bell.body_diameter
        assert bell.cone_diameter == pytest.approx(0.8 * bell.body_diameter, abs=0.0125)
        assert round(bell.cone_diameter * 20.0, 9) == int(round(bell.cone_diameter * 20.0, 9))
        assert bell.pilot_diameter <= plain.pilot_diameter


def test_center_drills_are_numbered_without_a_gap() -> None:
    """Plain drills run from 00 and 0 to 8, bell drills from 11 to 18."""
    keys = [f"plain-{size}" for size in ("00", *range(9))] + [f"bell-{n}" for n in range(11, 19)]
    assert [hole.key for hole in of_type("plain", "bell")] == keys


@pytest.mark.parametrize("kind", ["plain", "bell"])
def test_center_drills_grow_by_number(kind: str) -> None:
    """Of a larger number nothing is smaller."""
    for name in ("pilot_diameter", "cone_diameter", "body_diameter"):
        sizes = [getattr(hole, name) for hole in of_type(kind)]
        assert sizes == sorted(sizes)
