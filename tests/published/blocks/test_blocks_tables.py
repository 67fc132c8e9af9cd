"""Compositions of sets and tolerances of grades, cell by cell against a second transcription.

The transcriptions (`tables/blocks`) were written down apart from the service's own tables. What
each is worth is said by its standing: `published` rows were read in a reprint, the others are from
memory, so that these checks catch slips of transcription and not of memory. Counts and arithmetic
are checked besides.
"""

from collections import Counter
from itertools import pairwise

import pytest

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.blocks.angle_sets import angle_grades, angle_sets
from halfangle_service.trade.tables.blocks.sets import built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import grades
from support import Call
from transcribed.blocks import (
    angle_grade_differences,
    angle_set_differences,
    grade_differences,
    listed_grades,
    set_differences,
)

#: te and tv in µm of a block of L m, before they are rounded: constant and what is added a metre.
#: ISO 3650:1998, from memory.
FORMULAS = {
    "iso-k": ((0.20, 4.0), (0.05, 0.20)),
    "iso-0": ((0.10, 2.0), (0.10, 0.30)),
    "iso-1": ((0.20, 4.0), (0.16, 0.45)),
    "iso-2": ((0.40, 8.0), (0.30, 0.70)),
    "din-00": ((0.05, 1.0), (0.05, 0.20)),
    "asme-00-metric": ((0.05, 1.0), (0.05, 0.20)),
}


#: By grade of ASME in inches: te in µin of a block of 0 in, and tv in µin there and an inch more.
INCH_FORMULAS = {
    "K": (8, 2.0, 0.2),
    "00": (2, 2.0, 0.2),
    "0": (4, 4.0, 0.3),
    "AS-1": (8, 6.3, 0.45),
    "AS-2": (16, 12.0, 0.7),
}
#: Where te of a grade is not 1 + L / 2 times that of 0 in, but rounded; from memory.
ROUNDED: dict[tuple[str, float], int] = {
    ("K", 40): 160,
    **{("00", end): te for end, te in ((20, 20), (24, 25), (40, 40))},
    ("0", 40): 80,
    **{("AS-2", end): te for end, te in ((10, 104), (24, 200), (32, 260), (36, 300), (40, 320))},
}


# Sets ----------------------------------------------------------------------------------------
@pytest.mark.outside(
    "blocks.stack",
    source="GGG-G-15C (inch-81), a published exercise (metric-112); 25 common sets from memory",
)
def test_every_set_is_the_listed_one_block_by_block() -> None:
    """Every built-in set has the listed sizes, each as often, and no other set is built in."""
    assert not set_differences(built_in_sets())


def test_sets_hold_as_many_blocks_as_their_names_say() -> None:
    """Each set has the number of pieces in its name, in ascending order, and a source."""
    for name, block_set in built_in_sets().items():
        assert f"-{len(block_set.sizes)}" in name
        assert list(block_set.sizes) == sorted(block_set.sizes)
        assert block_set.source
        assert set(block_set.wear) <= set(block_set.sizes)


def test_blocks_alike_stand_only_where_wear_blocks_do() -> None:
    """No set has a size twice but inch-83, by its two wear blocks, and the one of IS 2984."""
    alike = {
        name: sorted((Counter(s.sizes) - Counter(set(s.sizes))).elements())
        for name, s in built_in_sets().items()
    }
    assert {name: sizes for name, sizes in alike.items() if sizes} == {
        "inch-83": list(built_in_sets()["inch-83"].wear),
        "metric-87-is2984": [10_050_000],
    }


# Grades --------------------------------------------------------------------------------------
@pytest.mark.outside(
    "blocks.budget",
    source="ISO 3650:1998, table 5, and DIN 861, as reprinted; K and ASME B89.1.9 from memory",
)
def test_every_grade_is_the_listed_one_row_by_row() -> None:
    """Every grade has the listed ranges, limit deviations and variations, and no other is there."""
    assert not grade_differences(grades())


@pytest.mark.parametrize("name", list(listed_grades()))
def test_a_block_at_the_end_of_its_range_has_that_ranges_limit(name: str) -> None:
    """A range's end belongs to it."""
    for end, te in zip(*(listed_grades()[name][column] for column in ("up_to", "te")), strict=True):
        assert grades()[name].limit_deviation(round(end * 1e7)) == pytest.approx(te)


@pytest.mark.parametrize("name", FORMULAS)
def test_limits_follow_their_formula(name: str) -> None:
    """Limits are what their formula gives at the end of the range, rounded down, by up to a sixth.

    The first two ranges of ASME grade 00 are wider.
    """
    grade = grades()[name]
    first = 2 if name.startswith("asme") else 0
    columns = (grade.limit_deviation_mm, grade.variation_mm)
    for column, (constant, a_metre) in zip(columns, FORMULAS[name], strict=True):
        for end, limit in list(zip(grade.up_to, column, strict=True))[first:]:
            formula = constant + a_metre * end / 1e10
            assert -1e-9 <= formula - limit * 1e3 <= formula / 6.0 + 1e-9


@pytest.mark.parametrize("name", INCH_FORMULAS)
def test_inch_limits_follow_their_formula(name: str) -> None:
    """From 1 in on te is 1 + L / 2 times that of 0 in, but where rounded; tv is rounded.

    A range that ends at 5 or 7 in has the limits of 6 or 8 in.
    """
    base, tv_base, tv_inch = INCH_FORMULAS[name]
    grade = grades()[f"asme-{name.lower()}"]
    for end, te_mm, tv_mm in list(
        zip(grade.up_to, grade.limit_deviation_mm, grade.variation_mm, strict=True)
    )[2:]:
        inches = round(end / 254_000_000, 6)
        length = inches + (inches in {5, 7})
        te, tv = round(te_mm / 25.4e-6, 6), round(tv_mm / 25.4e-6, 6)
        assert te == ROUNDED.get((name, inches), base * (1 + length / 2))
        formula = tv_base + tv_inch * length
        assert tv == int(tv)
        assert 0.75 * formula <= tv <= formula + 0.5


def test_grades_of_one_standard_have_its_ranges() -> None:
    """Ranges are those of ISO 3650; ASME adds 0.5 mm, and has whole inches past 0.05 and 0.4 in."""
    ends = {name: [end / 1e7 for end in grade.up_to] for name, grade in grades().items()}
    iso = [10, *range(25, 101, 25), *range(150, 301, 50), *range(400, 1001, 100)]
    inch = [0.05, 0.4, *range(1, 9), 10, *range(12, 41, 4)]
    for name, found in ends.items():
        if name.startswith("asme") and not name.endswith("metric"):
            assert found == pytest.approx([25.4 * size for size in inch], rel=1e-12)
        else:
            assert found == ([0.5, *iso] if name.startswith("asme") else iso)


@pytest.mark.parametrize("end", ["", "-metric"])
def test_the_thinnest_blocks_have_the_limits_of_an_inch(end: str) -> None:
    """Up to 0.05 in or 0.5 mm limits are those of 1 in or 25 mm; te of grade 00 alone is wider."""
    for name in INCH_FORMULAS:
        grade = grades()[f"asme-{name.lower()}{end}"]
        assert grade.variation_mm[0] == grade.variation_mm[2]
        wider = grade.limit_deviation_mm[0] > grade.limit_deviation_mm[2]
        assert wider is (name == "00")
        assert wider or grade.limit_deviation_mm[0] == grade.limit_deviation_mm[2]


@pytest.mark.outside(
    "blocks.budget", source="ASME B89.1.9-2002, scope: K, 0, AS-1, AS-2 are those of ISO 3650"
)
@pytest.mark.parametrize("name", ["k", "0", "1", "2"])
def test_metric_grades_of_asme_are_those_of_iso(name: str) -> None:
    """Past its first range, up to 0.5 mm, a grade of ASME has ranges and limits of ISO."""
    iso = grades()[f"iso-{name.lower()}"]
    asme = grades()[f"asme-{name if name in 'k0' else 'as-' + name}-metric"]
    for column in ("up_to", "limit_deviation_mm", "variation_mm"):
        assert getattr(asme, column)[1:] == getattr(iso, column)


@pytest.mark.parametrize("name", ["K", "00", "0", "AS-1", "AS-2"])
def test_inch_grades_of_asme_are_the_metric_ones_rounded(name: str) -> None:
    """In microinches a limit is the metric one of its size, to a quarter or one microinch.

    Past the first range, which the metric table ends elsewhere. K at 0.4 in, by memory 10 µin where
    AS-1 has 8, is not: 0.2 µm is 8.
    """
    inch, metric = grades()[f"asme-{name.lower()}"], grades()[f"asme-{name.lower()}-metric"]
    for end, te, tv in list(
        zip(inch.up_to, inch.limit_deviation_mm, inch.variation_mm, strict=True)
    )[1:]:
        # 40 in is 1016 mm; the metric table ends at 1000.
        place = next((n for n, up_to in enumerate(metric.up_to) if end <= up_to * 1.02), -1)
        for ours, theirs in ((te, metric.limit_deviation_mm), (tv, metric.variation_mm)):
            within = 0.3 if (name, end) == ("K", 101_600_000) else 0.25
            assert ours == pytest.approx(theirs[place], rel=within, abs=26e-6)


@pytest.mark.parametrize("name", list(listed_grades()))
def test_limits_do_not_fall_as_blocks_grow(name: str) -> None:
    """Ranges ascend; past the thinnest blocks neither te nor tv falls as the size grows."""
    grade = grades()[name]
    assert all(first < second for first, second in pairwise(grade.up_to))
    # ASME allows blocks of up to 0.05 in or 0.5 mm more than the next range.
    start = 1 if name.startswith("asme") else 0
    for column in (grade.limit_deviation_mm, grade.variation_mm):
        assert all(first <= second for first, second in pairwise(column[start:]))


def test_grades_are_ordered_within_a_standard() -> None:
    """ISO: te of K is that of 1, tv that of the 00s; te rises from 0 to 2, tv from K to 2."""
    k, zero, one, two = (grades()[f"iso-{name}"] for name in "k012")
    assert k.limit_deviation_mm == one.limit_deviation_mm
    finest = grades()["din-00"].variation_mm
    assert k.variation_mm == finest == grades()["asme-00-metric"].variation_mm[1:]
    for row in range(len(k.up_to)):
        te = [grade.limit_deviation_mm[row] for grade in (zero, one, two)]
        tv = [grade.variation_mm[row] for grade in (k, zero, one, two)]
        assert te == sorted(set(te))
        assert tv == sorted(set(tv))


def test_a_block_past_the_end_of_its_grade_is_refused_by_the_grade() -> None:
    """A grade has no limits for blocks above its last range: that is said, of the field `grade`."""
    with pytest.raises(
        Unreachable, match="grade ISO 0 ends at 1000 mm; a block of 1001"
    ) as refusal:
        grades()["iso-0"].limit_deviation(10_010_000_000)
    assert list(refusal.value.fields) == ["grade"]


# Angle blocks --------------------------------------------------------------------------------
@pytest.mark.outside(
    "blocks.angle-stack",
    source="MOY/SCMI/18:2001; Mechanical Engineer's Data Handbook, page 270; others from memory",
)
def test_sets_of_angle_blocks_are_the_listed_ones() -> None:
    """Every set of angle blocks has the listed blocks, and no other set is built in."""
    assert not angle_set_differences(angle_sets())


@pytest.mark.outside(
    "blocks.angle-stack",
    source="Transactions of the Institute of Measurement and Control, 1993: 81°40′57″ of 13 pieces",
)
def test_thirteen_angle_blocks_add_up_as_published() -> None:
    """The thirteen pieces add up to 81°40′57″."""
    assert sum(angle_sets()["angle-13"].angles) == 1000 * (81 * 3600 + 40 * 60 + 57)


def test_sets_of_angle_blocks_hold_as_many_as_their_names_say() -> None:
    """The count in a set's name is that of its blocks, no two of them alike."""
    for name, angle_set in angle_sets().items():
        assert len(set(angle_set.angles)) == len(angle_set.angles) == int(name.split("-")[1])


@pytest.mark.outside("blocks.angle-stack", source="Textbooks: 16 blocks give 0° to 99° by 1″")
def test_sixteen_angle_blocks_give_every_second(call: Call) -> None:
    """The 16-piece set gives every second of arc that is tried, up to 99°, as textbooks state."""
    for second in range(1, 99 * 3600, 12_347):
        degrees = f"{second // 3600} {second // 60 % 60} {second % 60}"
        result = call("blocks.angle-stack", angle=degrees, set="angle-16")["result"]
        assert result["deviation_arcsec"] == 0
        signed = sum(
            block["angle"]["degrees"] * (1 if block["sense"] == "add" else -1)
            for block in result["angle_blocks"]
        )
        assert signed * 3600 == pytest.approx(second)


@pytest.mark.outside(
    "blocks.angle-stack", source="A university's manual: ± 2″; textbooks' three grades from memory"
)
def test_grades_of_angle_blocks_are_the_listed_ones() -> None:
    """Each grade has the listed accuracy: a quarter, half, one and two seconds."""
    assert not angle_grade_differences(angle_grades())


def test_grades_of_angle_blocks_ascend() -> None:
    """Grades of angle blocks stand from the finest to the coarsest, each with a source."""
    accuracies = [grade.limit_deviation_arcsec for grade in angle_grades().values()]
    assert accuracies == sorted(accuracies)
    assert all(grade.source and grade.standing for grade in angle_grades().values())
