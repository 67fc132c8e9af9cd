"""Compositions of sets and tolerances of grades, row by row against a second transcription.

The rows below were written down apart from the service's own tables. What each is worth is said by
its standing: `published` rows were read in a reprint, the others are from memory, so that these
checks catch slips of transcription and not of memory. Counts and arithmetic are checked besides.
"""

from fractions import Fraction
from itertools import pairwise

import pytest

from halfangle_service.errors import Unreachable
from halfangle_service.trade.tables.blocks.angle_sets import angle_grades, angle_sets
from halfangle_service.trade.tables.blocks.sets import built_in_sets
from halfangle_service.trade.tables.blocks.tolerances import grades
from support import Call

# Each series is first/last/step/count, or one size. inch-81: GGG-G-15C; metric-112: a published
# textbook exercise; the others are compositions in common use, from memory.
SETS = """
inch-81 in: 0.1001/0.1009/0.0001/9, 0.101/0.149/0.001/49, 0.05/0.95/0.05/19, 1/4/1/4
inch-83 in: 0.1001/0.1009/0.0001/9, 0.101/0.149/0.001/49, 0.05/0.95/0.05/19, 1/4/1/4, 0.05, 0.05
inch-36 in: 0.05, 0.1001/0.1009/0.0001/9, 0.101/0.109/0.001/9, 0.11/0.19/0.01/9,
  0.1/0.5/0.1/5, 1/2/1/2, 4
inch-35 in: 0.1001/0.1009/0.0001/9, 0.101/0.109/0.001/9, 0.11/0.19/0.01/9, 0.1/0.3/0.1/3, 0.5,
  1/2/1/2, 4, 0.05
inch-28-thin in: 0.02005, 0.0201/0.0209/0.0001/9, 0.021/0.029/0.001/9, 0.01/0.09/0.01/9
inch-8-long in: 5/8/1/4, 10/12/2/2, 16/20/4/2
inch-49 in: 0.1001/0.1009/0.0001/9, 0.101/0.109/0.001/9, 0.11/0.19/0.01/9, 0.01/0.09/0.01/9,
  0.1/0.9/0.1/9, 1/4/1/4
inch-41 in: 0.1001/0.1009/0.0001/9, 0.101/0.109/0.001/9, 0.11/0.19/0.01/9, 0.1/0.9/0.1/9,
  1/4/1/4, 0.05
metric-112 mm: 1.0005, 1.001/1.009/0.001/9, 1.01/1.49/0.01/49, 0.5/24.5/0.5/49, 25/100/25/4
metric-103 mm: 1.005, 1.01/1.49/0.01/49, 0.5/24.5/0.5/49, 25/100/25/4
metric-88 mm: 1.0005, 1.001/1.009/0.001/9, 1.01/1.49/0.01/49, 0.5/9.5/0.5/19, 10/100/10/10
metric-87 mm: 1.001/1.009/0.001/9, 1.01/1.49/0.01/49, 0.5/9.5/0.5/19, 10/100/10/10
metric-87-is2984 mm: 1.001/1.009/0.001/9, 1.01/1.49/0.01/49, 0.5/9.5/0.5/19, 10/90/10/9, 1.005
metric-83 mm: 0.5, 1, 1.005, 1.01/1.49/0.01/49, 1.5/1.9/0.1/5, 2/9.5/0.5/16, 10/100/10/10
metric-91 mm: 0.5, 1, 1.001/1.009/0.001/9, 1.01/1.49/0.01/49, 1.5/1.9/0.1/5, 2/9.5/0.5/16,
  10/100/10/10
metric-76 mm: 1.005, 1.01/1.49/0.01/49, 0.5/9.5/0.5/19, 10/40/10/4, 50/100/25/3
metric-56 mm: 0.5, 1.001/1.009/0.001/9, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 1/24/1/24, 25/100/25/4
metric-47 mm: 1.005, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 1/24/1/24, 25/100/25/4
metric-47-b mm: 1.005, 1.01/1.19/0.01/19, 1.2/1.9/0.1/8, 1/9/1/9, 10/100/10/10
metric-46 mm: 1.001/1.009/0.001/9, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 1/9/1/9, 10/100/10/10
metric-45 mm: 1.001/1.009/0.001/9, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 1/9/1/9, 10/90/10/9
metric-38 mm: 1, 1.005, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 2/9/1/8, 10/100/10/10
metric-34 mm: 1.0005, 1.001/1.009/0.001/9, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 1/5/1/5, 10
metric-32 mm: 1.005, 1.01/1.09/0.01/9, 1.1/1.9/0.1/9, 1/9/1/9, 10/30/10/3, 60
metric-9-plus mm: 1.001/1.009/0.001/9
metric-9-minus mm: 0.991/0.999/0.001/9
metric-8-long mm: 125/175/25/3, 200/250/50/2, 300/500/100/3
"""
# Upper end of the range in mm, then te/tv in µm of grades K, 0, 1, 2. ISO 3650:1998, table 5, as
# reprinted (grades 0, 1, 2); grade K from memory.
ISO_3650 = """
10 0.2/0.05 0.12/0.1 0.2/0.16 0.45/0.3
25 0.3/0.05 0.14/0.1 0.3/0.16 0.6/0.3
50 0.4/0.06 0.2/0.1 0.4/0.18 0.8/0.3
75 0.5/0.06 0.25/0.12 0.5/0.18 1.0/0.35
100 0.6/0.07 0.3/0.12 0.6/0.2 1.2/0.35
150 0.8/0.08 0.4/0.14 0.8/0.2 1.6/0.4
200 1.0/0.09 0.5/0.16 1.0/0.25 2.0/0.4
250 1.2/0.1 0.6/0.16 1.2/0.25 2.4/0.45
300 1.4/0.1 0.7/0.18 1.4/0.25 2.8/0.5
400 1.8/0.12 0.9/0.2 1.8/0.3 3.6/0.5
500 2.2/0.14 1.1/0.25 2.2/0.35 4.4/0.6
600 2.6/0.16 1.3/0.25 2.6/0.4 5.0/0.7
700 3.0/0.18 1.5/0.3 3.0/0.45 6.0/0.7
800 3.4/0.2 1.7/0.3 3.4/0.5 6.5/0.8
900 3.8/0.2 1.9/0.35 3.8/0.5 7.5/0.9
1000 4.2/0.25 2.0/0.4 4.2/0.6 8.0/1.0
"""
# The same of grade 00 of DIN 861, as reprinted beside ISO 3650.
DIN_861 = """
10 0.06/0.05
25 0.07/0.05
50 0.1/0.06
75 0.12/0.06
100 0.14/0.07
150 0.2/0.08
200 0.25/0.09
250 0.3/0.1
300 0.35/0.1
400 0.45/0.12
500 0.5/0.14
600 0.6/0.16
700 0.7/0.18
800 0.8/0.2
900 0.9/0.2
1000 1.0/0.25
"""
# Upper end in inches, then te/tv in µin of grades K, 00, 0, AS-1, AS-2. ASME B89.1.9-2002, from
# memory.
ASME_INCH = """
0.05 12/2 4/2 6/4 12/6 24/12
0.4 10/2 3/2 5/4 8/6 18/12
1 12/2 3/2 6/4 12/6 24/12
2 16/2 4/2 8/4 16/6 32/12
3 20/2 5/2 10/4 20/6 40/14
4 24/3 6/3 12/5 24/8 48/14
5 32/3 8/3 16/5 32/8 64/16
6 32/3 8/3 16/5 32/8 64/16
7 40/4 10/4 20/6 40/10 80/16
8 40/4 10/4 20/6 40/10 80/16
10 48/4 12/4 24/6 48/10 104/18
12 56/4 14/4 28/7 56/10 112/20
16 72/5 18/5 36/8 72/12 144/20
20 88/6 20/6 44/10 88/14 176/24
24 104/6 25/6 52/10 104/16 200/28
28 120/7 30/7 60/12 120/18 240/28
32 136/8 34/8 68/12 136/20 260/32
36 152/8 38/8 76/14 152/20 300/36
40 160/10 40/10 80/16 168/24 320/40
"""
# Upper end in mm, then te/tv in µm of the same grades. ASME B89.1.9-2002, from memory.
ASME_METRIC = """
0.5 0.3/0.05 0.1/0.05 0.14/0.1 0.3/0.16 0.6/0.3
10 0.2/0.05 0.07/0.05 0.12/0.1 0.2/0.16 0.45/0.3
25 0.3/0.05 0.07/0.05 0.14/0.1 0.3/0.16 0.6/0.3
50 0.4/0.06 0.1/0.06 0.2/0.1 0.4/0.18 0.8/0.3
75 0.5/0.06 0.12/0.06 0.25/0.12 0.5/0.18 1.0/0.35
100 0.6/0.07 0.15/0.07 0.3/0.12 0.6/0.2 1.2/0.35
150 0.8/0.08 0.2/0.08 0.4/0.14 0.8/0.2 1.6/0.4
200 1.0/0.09 0.25/0.09 0.5/0.16 1.0/0.25 2.0/0.4
250 1.2/0.1 0.3/0.1 0.6/0.16 1.2/0.25 2.4/0.45
300 1.4/0.1 0.35/0.1 0.7/0.18 1.4/0.25 2.8/0.5
400 1.8/0.12 0.45/0.12 0.9/0.2 1.8/0.3 3.6/0.5
500 2.2/0.14 0.5/0.14 1.1/0.25 2.2/0.35 4.4/0.6
600 2.6/0.16 0.65/0.16 1.3/0.25 2.6/0.4 5.0/0.7
700 3.0/0.18 0.75/0.18 1.5/0.3 3.0/0.45 6.0/0.7
800 3.4/0.2 0.85/0.2 1.7/0.3 3.4/0.5 6.5/0.8
900 3.8/0.2 0.95/0.2 1.9/0.35 3.8/0.5 7.5/0.9
1000 4.2/0.25 1.0/0.25 2.0/0.4 4.2/0.6 8.0/1.0
"""
PER_UNIT = {"in": 254_000_000, "mm": 10_000_000}


def listed_sets() -> dict[str, tuple[str, list[int]]]:
    """Name, unit and sizes in 0.1 nm of each set above."""
    found = {}
    for line in SETS.strip().replace("\n  ", " ").splitlines():
        head, _, series = line.partition(": ")
        name, unit = head.split()
        sizes = [size for part in series.split(", ") for size in expanded(part)]
        found[name] = (unit, sorted(int(size * PER_UNIT[unit]) for size in sizes))
    return found


def expanded(part: str) -> list[Fraction]:
    """Sizes of one series; its last must come out by steps."""
    if "/" not in part:
        return [Fraction(part)]
    first, last, step, count = map(Fraction, part.split("/"))
    sizes = [first + step * place for place in range(int(count))]
    assert sizes[-1] == last
    return sizes


def listed_grades() -> dict[str, list[tuple[float, float, float]]]:
    """For each grade its rows: upper end in mm, te and tv in µm."""
    tables = [
        (ISO_3650, ["iso-k", "iso-0", "iso-1", "iso-2"], 1.0, 1.0),
        (DIN_861, ["din-00"], 1.0, 1.0),
        (ASME_INCH, [f"asme-{g}" for g in ("k", "00", "0", "as-1", "as-2")], 25.4, 0.0254),
        (
            ASME_METRIC,
            [f"asme-{g}-metric" for g in ("k", "00", "0", "as-1", "as-2")],
            1.0,
            1.0,
        ),
    ]
    found: dict[str, list[tuple[float, float, float]]] = {}
    for text, names, per_size, per_limit in tables:
        for line in text.strip().splitlines():
            end, *pairs = line.split()
            for name, pair in zip(names, pairs, strict=True):
                te, tv = map(float, pair.split("/"))
                row = (float(end) * per_size, te * per_limit, tv * per_limit)
                found.setdefault(name, []).append(row)
    return found


@pytest.mark.outside("blocks.stack", source="Compositions of 27 sets, a second transcription")
def test_every_set_is_the_listed_one_block_by_block() -> None:
    """Every built-in set has the listed sizes, each as often, and no other set is built in."""
    listed = listed_sets()
    built_in = built_in_sets()
    assert set(listed) == set(built_in)
    for name, (unit, sizes) in listed.items():
        assert built_in[name].units == unit
        assert list(built_in[name].sizes) == sizes


def test_sets_hold_as_many_blocks_as_their_names_say() -> None:
    """Each set has the number of pieces in its name, in ascending order, and a source."""
    for name, block_set in built_in_sets().items():
        assert f"-{len(block_set.sizes)}" in name
        assert list(block_set.sizes) == sorted(block_set.sizes)
        assert block_set.source
        assert set(block_set.wear) <= set(block_set.sizes)


@pytest.mark.outside("blocks.budget", source="ISO 3650:1998, table 5, as reprinted; ASME B89.1.9")
@pytest.mark.parametrize("name", list(listed_grades()))
def test_every_grade_is_the_listed_one_row_by_row(name: str) -> None:
    """Every grade has the listed ranges, limit deviations and variations, ends included."""
    rows, grade = listed_grades()[name], grades()[name]
    assert [end / 1e7 for end in grade.up_to] == pytest.approx([row[0] for row in rows])
    assert [te * 1e3 for te in grade.limit_deviation_mm] == pytest.approx([r[1] for r in rows])
    assert [tv * 1e3 for tv in grade.variation_mm] == pytest.approx([row[2] for row in rows])
    for end, te, _ in rows:
        assert grade.limit_deviation(round(end * 1e7)) * 1e3 == pytest.approx(te)


def test_no_grade_is_built_in_but_those_listed() -> None:
    """Every grade that is served is held row by row above."""
    assert set(listed_grades()) == set(grades())


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
    """ISO: te of K equals that of 1, and 0 < 1 < 2; tv rises from K to 2 (ISO 3650:1998)."""
    k, zero, one, two = (grades()[f"iso-{name}"] for name in "k012")
    assert k.limit_deviation_mm == one.limit_deviation_mm
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


# National laboratory specification MOY/SCMI/18, issue 6, 2001; the 13-piece set and its sum of
# 81°40′57″ in steps of 3″: abstract in Transactions of the Institute of Measurement and Control.
ANGLES = {
    "angle-12": ([1, 3, 9, 27, 41], [1, 3, 9, 27], [6, 18, 30]),
    "angle-13": ([1, 3, 9, 27, 41], [1, 3, 9, 27], [3, 6, 18, 30]),
    "angle-16": ([1, 3, 5, 15, 30, 45], [1, 3, 5, 20, 30], [1, 3, 5, 20, 30]),
}


@pytest.mark.outside("blocks.angle-stack", source="MOY/SCMI/18:2001; 81°40′57″ of 13 pieces")
@pytest.mark.parametrize("name", list(ANGLES))
def test_sets_of_angle_blocks_are_the_published_ones(name: str) -> None:
    """A set has the published blocks; the thirteen pieces add up to 81°40′57″."""
    degrees, minutes, seconds = ANGLES[name]
    expected = [3600 * d for d in degrees] + [60 * m for m in minutes] + seconds
    assert sorted(angle_sets()[name].angles) == sorted(1000 * s for s in expected)
    if name == "angle-13":
        assert sum(angle_sets()[name].angles) == 1000 * (81 * 3600 + 40 * 60 + 57)


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


def test_grades_of_angle_blocks_ascend() -> None:
    """Grades of angle blocks stand from the finest to the coarsest, each with a source."""
    accuracies = [grade.accuracy_arcsec for grade in angle_grades().values()]
    assert accuracies == sorted(accuracies)
    assert all(grade.source and grade.standing for grade in angle_grades().values())
