"""Figures of every stack that is given, best or further, summed from the blocks in it."""

import itertools
import math
from typing import Any

import pytest

from support import Call, assert_values

#: Size, measured deviation and its expanded uncertainty (k = 2), in inches; all of the box differ.
CALIBRATED = {
    1.0: (4e-6, 3e-6),
    0.5: (-3e-6, 2e-6),
    0.4: (1e-6, 2.2e-6),
    0.3: (2e-6, 1.6e-6),
    0.2: (5e-6, 1.2e-6),
    0.1: (-1e-6, 1e-6),
    0.05: (2e-6, 2.4e-6),
}
BOX: list[dict[str, Any]] = [
    {"size": size, "deviation": off, "expanded_uncertainty": doubt}
    for size, (off, doubt) in CALIBRATED.items()
]
BOX[-1] |= {"wear_block": True, "count": 4}


def assert_summed(stack: dict[str, Any], wanted: float) -> None:
    """A stack's figures are those of its blocks, one by one.

    Half of each expanded uncertainty is a standard uncertainty, of which at most thrice is reckoned
    with; they add by their squares, and 1.96 of their root covers 95 of 100.
    """
    blocks = stack["blocks"]
    total = math.fsum(blocks)
    off = math.fsum(CALIBRATED[block][0] for block in blocks)
    doubts = [CALIBRATED[block][1] / 2 for block in blocks]
    variance = math.fsum(u * u for u in doubts)
    expected = {
        "count": len(blocks),
        "total": total,
        "actual_height.standard_uncertainty": math.sqrt(variance),
        "actual_height.expanded_uncertainty": 1.959964 * math.sqrt(variance),
        "actual_height.coverage_factor": 1.959964,
        "actual_height.coverage_probability": 0.95,
        "actual_height.worst_case": 3 * math.fsum(doubts),
    }
    assert_values(stack, expected, rel=1e-6)
    assert stack["deviation"] == pytest.approx(total - wanted, abs=1e-12)
    assert stack["actual_height"]["value"] == pytest.approx(total + off, abs=1e-12)
    assert stack["actual_deviation"] == pytest.approx(total + off - wanted, abs=1e-12)
    rows = stack["actual_height"]["contributions"]
    assert len(rows) == len(blocks)
    for row, doubt in zip(rows, doubts, strict=True):
        part = {
            "input_value": doubt,
            "sensitivity": 1,
            "standard_uncertainty": doubt,
            "worst_case": 3 * doubt,
            "share_percent": 100 * doubt**2 / variance,
        }
        assert_values(row, part, rel=1e-6)


@pytest.mark.outside("blocks.stack", source="JCGM 100:2008, 5.1.2: sums by hand, block by block")
def test_every_stack_of_one_height_is_summed(call: Call) -> None:
    """The best stack within a tolerance and its alternatives, wear blocks at both ends."""
    request = {"units": "in", "box": BOX, "height": 1.80003, "tolerance": 0.0001}
    result = call("blocks.stack", **request, wear_ends="both-ends", max_alternatives=2)["result"]
    assert result["wear_blocks"] == [0.05, 0.05]
    assert len(result["alternatives"]) == 2
    counts = [stack["count"] for stack in (result, *result["alternatives"])]
    assert counts == sorted(counts)
    for stack in (result, *result["alternatives"]):
        assert_summed(stack, 1.80003)


@pytest.mark.outside("blocks.stacks", source="JCGM 100:2008, 5.1.2: sums by hand, block by block")
def test_every_stack_of_several_is_summed(call: Call) -> None:
    """Two stacks at once, a wear block at one end of each."""
    heights = [
        {"name": "base", "height": 0.95002, "tolerance": 0.0001},
        {"name": "top", "height": 0.64997, "tolerance": 0.0001},
    ]
    request = {"units": "in", "box": BOX, "heights": heights, "wear_ends": "one-end"}
    result = call("blocks.stacks", **request)["result"]
    stacks = result["stacks"]
    assert result["count"] == sum(len(stack["blocks"]) for stack in stacks)
    assert [stack["name"] for stack in stacks] == ["base", "top"]
    for stack, asked in zip(stacks, heights, strict=True):
        assert stack["wear_blocks"] == [0.05]
        assert stack["wringing_order"] in (
            [0.05, *sorted(stack["blocks"], reverse=True)[:-1]],
            sorted(stack["blocks"], reverse=True),
        )
        assert_summed(stack, float(str(asked["height"])))


@pytest.mark.outside("blocks.day", source="JCGM 100:2008, 5.1.2: sums by hand, block by block")
def test_every_stack_of_a_day_is_summed(call: Call) -> None:
    """Stacks of two slots, from the bottom up a wear block, the largest, the rest, a wear block."""
    jobs = [
        {"job": "HL-1", "bench": "1", "slot": 2, "height": 1.80003, "tolerance": 0.0001},
        {"job": "HL-2", "bench": "2", "slot": 8, "height": 0.59998, "tolerance": 0.0001},
    ]
    request = {"units": "in", "box": BOX, "jobs": jobs, "wear_ends": "both-ends"}
    slots = call("blocks.day", **request)["result"]["slots"]
    assert [slot["slot"] for slot in slots] == [2, 8]
    for slot, job in zip(slots, jobs, strict=True):
        [stack] = slot["stacks"]
        assert_summed(stack, float(str(job["height"])))
        assert stack["wear_blocks"] == [0.05, 0.05]
        between = sorted(stack["blocks"], reverse=True)[:-2]
        assert stack["wringing_order"] == [0.05, *between, 0.05]


@pytest.mark.outside("blocks.check", source="JCGM 100:2008, 5.1.2: sums by hand, block by block")
def test_a_stack_that_is_checked_is_summed(call: Call) -> None:
    """A stack read from its blocks has their sum, and is compared with the height wanted."""
    request = {"units": "in", "box": BOX, "blocks": [1.0, 0.4, 0.2], "height": 1.6001}
    result = call("blocks.check", **request)["result"]
    assert result["wanted_height"] == 1.6001
    height = result["actual_height"]
    stack = {
        "blocks": [1.0, 0.4, 0.2],
        "count": 3,
        "total": result["total"],
        "deviation": 1.6 - 1.6001,
        "actual_height": height,
        "actual_deviation": result["actual_deviation"],
    }
    assert_summed(stack, 1.6001)


@pytest.mark.outside("blocks.budget", source="Sums by hand, over two films")
def test_a_height_is_made_of_its_parts(call: Call) -> None:
    """Nominal sizes 1.6 in, deviations 10 µin, and two films between three blocks at 25 nm each."""
    blocks = [block for block in BOX if block["size"] in (1.0, 0.4, 0.2)]
    request = {"units": "in", "calibrated_blocks": blocks, "temperature_celsius": 20}
    result = call("blocks.budget", **request, film_nanometres=25, wrung_to_base=False)["result"]
    films = 2 * 25e-6 / 25.4
    expected = {
        "total": 1.6,
        "deviations": 10e-6,
        "films": films,
        "height.value": 1.6 + 10e-6 + films,
    }
    assert_values(result, expected, rel=1e-12)


@pytest.mark.outside("blocks.budget", source="ISO 3650: steel 11.5 µm/(m K); carbide, handbooks")
def test_blocks_warmed_with_their_plate(call: Call) -> None:
    """Carbide grows by 4.5, steel by 11.5 µm/(m K): at 22 °C 61.3 mm are 0.8582 µm short."""
    request = {"units": "mm", "blocks": [50.0, 10.0, 1.3], "grade": "iso-1"}
    materials = {"block_material": "tungsten-carbide", "plate_material": "steel"}
    result = call("blocks.budget", **request, **materials, temperature_celsius=22)["result"]
    assert_values(result, {"expansion": 61.3 * 2 * (4.5 - 11.5) * 1e-6})
    assert result["expansion"] == pytest.approx(-0.8582e-3)


@pytest.mark.outside("blocks.check", source="Inverse sines by hand")
def test_a_checked_stack_as_an_angle(call: Call) -> None:
    """2.5001 in on 5 in is 4.76″ over 30°; measured as 2.5003 in it is 0.2 thou and 9.53″ more."""
    request = {"units": "in", "set": "inch-81", "blocks": [2.0, 0.4, 0.1001], "angle": 30}
    result = call("blocks.check", **request, center_distance=5, measured_height=2.5003)["result"]
    as_read = math.degrees(math.asin(2.5001 / 5))
    measured = math.degrees(math.asin(2.5003 / 5))
    expected = {
        "angle.degrees": as_read,
        "angle_error_arcsec": (as_read - 30) * 3600,
        "measured_deviation": 0.0002,
        "measured_error_arcsec": (measured - as_read) * 3600,
    }
    assert_values(result, expected, rel=1e-6)
    assert expected["angle_error_arcsec"] == pytest.approx(4.76, abs=5e-3)


#: Degrees, measured deviation and its expanded uncertainty (k = 2) in arc-seconds.
ANGLES = {
    45.0: (0.5, 0.2),
    9.0: (0.2, 0.12),
    5.0: (0.1, 0.1),
    3.0: (-0.2, 0.16),
    1.0: (0.3, 0.14),
    20 / 60: (0.1, 0.1),
    4 / 60: (-0.1, 0.08),
    18 / 3600: (0.2, 0.06),
}


@pytest.mark.outside("blocks.angle-stack", source="JCGM 100:2008, 5.1.2: signed sums by hand")
def test_every_stack_of_angle_blocks_is_summed(call: Call) -> None:
    """Blocks added and subtracted: their angles and deviations with their signs, doubts squared."""
    box = [
        {"angle": angle, "deviation_arcsec": off, "expanded_uncertainty_arcsec": doubt}
        for angle, (off, doubt) in ANGLES.items()
    ]
    request = {"angle": "37 24 18.4", "box": box, "tolerance_arcsec": 1, "max_alternatives": 2}
    result = call("blocks.angle-stack", **request)["result"]
    assert len(result["alternatives"]) == 2
    for stack in (result, *result["alternatives"]):
        senses = [{"add": 1, "subtract": -1}[block["sense"]] for block in stack["angle_blocks"]]
        sizes = [
            min(ANGLES, key=lambda angle: abs(angle - block["angle"]["degrees"]))
            for block in stack["angle_blocks"]
        ]
        shown = [block["angle"]["degrees"] for block in stack["angle_blocks"]]
        assert shown == pytest.approx(sizes)
        total = math.fsum(s * angle for s, angle in zip(senses, sizes, strict=True))
        off = math.fsum(s * ANGLES[angle][0] for s, angle in zip(senses, sizes, strict=True))
        doubts = [ANGLES[angle][1] / 2 for angle in sizes]
        variance = math.fsum(u * u for u in doubts)
        wanted = 37 + 24 / 60 + 18.4 / 3600
        expected = {
            "count": len(sizes),
            "total.degrees": total,
            "deviation_arcsec": (total - wanted) * 3600,
            "actual_deviation_arcsec": (total - wanted) * 3600 + off,
            "actual_angle.value.degrees": total + off / 3600,
            "actual_angle.standard_uncertainty": math.sqrt(variance),
            "actual_angle.expanded_uncertainty": 1.959964 * math.sqrt(variance),
            "actual_angle.coverage_factor": 1.959964,
            "actual_angle.coverage_probability": 0.95,
            "actual_angle.worst_case": 3 * math.fsum(doubts),
        }
        assert_values(stack, expected, rel=1e-6)
        for row, sense, doubt in zip(
            stack["actual_angle"]["contributions"], senses, doubts, strict=True
        ):
            part = {
                "input_value": doubt,
                "sensitivity": sense,
                "standard_uncertainty": doubt,
                "worst_case": 3 * doubt,
                "share_percent": 100 * doubt**2 / variance,
            }
            assert_values(row, part, rel=1e-6)


def fewest_for(box: list[int], heights: list[int], blocks: int, tolerance: int = 0) -> int | None:
    """Fewest blocks that build all the heights at once, by trying every choice; None where none do.

    Sizes, heights and their tolerance ± as whole numbers; a block is one place of the box.
    """
    ways = {frozenset[int]()}
    for height in heights:
        stacks = {
            frozenset(places)
            for count in range(1, blocks + 1)
            for places in itertools.combinations(range(len(box)), count)
            if abs(sum(box[place] for place in places) - height) <= tolerance
        }
        ways = {used | stack for used in ways for stack in stacks if not used & stack}
    return min(map(len, ways), default=None)


@pytest.mark.outside("blocks.stacks", source="Brute force: every choice of blocks for every height")
@pytest.mark.parametrize("heights", [[17, 12, 26], [33, 25, 14], [40, 41, 9], [22, 21, 20]])
def test_how_many_stand_and_by_how_few_blocks(call: Call, heights: list[int]) -> None:
    """No more heights stand at once, and none by fewer blocks, than trying every choice finds.

    Of as many the first in their order are kept. A block that is said to make another height
    possible does.
    """
    box = [1, 2, 2, 5, 7, 10, 12, 15]
    named = [{"name": f"h{height}", "height": height} for height in heights]
    sizes = [{"size": size} for size in sorted(set(box) - {2})] + [{"size": 2, "count": 2}]
    result = call("blocks.stacks", units="mm", box=sizes, heights=named, max_blocks=3)["result"]
    standing = next(
        list(chosen)
        for count in range(len(heights), 0, -1)
        for chosen in itertools.combinations(heights, count)
        if fewest_for(box, list(chosen), 3) is not None
    )
    assert result["proved"]
    assert [stack["name"] for stack in result["stacks"]] == [f"h{height}" for height in standing]
    assert result["largest_count"] == len(standing)
    assert result["fewest_possible"] == fewest_for(box, standing, 3) == result["count"]
    for entry in result["left_out"]:
        height = int(entry["name"].removeprefix("h"))
        for way in entry["would_make_it_possible"]:
            borrowed = [*box, round(way["block"])]
            assert fewest_for(borrowed, [*standing, height], 3) is not None


@pytest.mark.outside("blocks.stacks", source="Brute force: every choice of blocks for every height")
@pytest.mark.parametrize("heights", [[18, 33], [29, 11], [20, 13]])
def test_tolerances_are_used_where_they_save_blocks(call: Call, heights: list[int]) -> None:
    """Of the heights within ± 2 those are built that take the fewest blocks together."""
    box = [1, 3, 5, 7, 10, 12, 15, 20]
    named = [{"name": f"h{height}", "height": height, "tolerance": 2} for height in heights]
    result = call("blocks.stacks", units="mm", sizes=box, heights=named, max_blocks=3)["result"]
    fewest = fewest_for(box, heights, 3, tolerance=2)
    assert result["complete"]
    assert result["proved"]
    assert result["count"] == result["fewest_possible"] == fewest


@pytest.mark.outside("blocks.stacks", source="By hand: 30 − 12 − 10 = 8, which is away")
def test_the_block_that_is_away_is_the_one_that_helps(call: Call) -> None:
    """Of 12, 10 and 5, with 8 away, 30 mm stand with the 8 only; 5 mm stand anyway."""
    box = [{"size": 12}, {"size": 10}, {"size": 5}, {"size": 8, "state": "in-use"}]
    heights = [{"name": "low", "height": 5}, {"name": "high", "height": 30}]
    result = call("blocks.stacks", units="mm", box=box, heights=heights, max_blocks=3)["result"]
    (left,) = result["left_out"]
    assert left["name"] == "high"
    assert left["would_make_it_possible"][0]["block"] == pytest.approx(8, rel=1e-12)
