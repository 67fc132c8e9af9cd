"""Heights within a tolerance, arc-seconds as heights, wear blocks: all stacks of small boxes."""

import math
from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import Any

import pytest

from halfangle_service.errors import Unreachable
from support import Call

#: A small box: deviations in 0.0001 mm, and sizes that come near one another from both sides.
SIZES = (1.005, 1.01, 1.02, 1.05, 1.5, 2.0, 5.0, 10.0)
DEVIATIONS = (2, -1, 3, -4, 1, 5, -2, -6)
BOX = [
    {"size": size, "deviation": deviation / 10_000, "expanded_uncertainty": 0.0001}
    for size, deviation in zip(SIZES, DEVIATIONS, strict=True)
]
#: Sizes as whole numbers of 0.0001 mm, nominal and actual.
NOMINAL = {size: round(size * 10_000) for size in SIZES}
ACTUAL = {s: NOMINAL[s] + d for s, d in zip(SIZES, DEVIATIONS, strict=True)}
LENGTHS = {"nominal": NOMINAL, "actual": ACTUAL}
HEIGHTS = (7.03, 3.0242, 8.5151, 12.0349, 13.575, 4.5)
TOLERANCES = (0.0, 0.0002, 0.0012, 0.005, 0.02)
MOST = 4


def stacks(sizes: Iterable[float], most: int) -> Iterator[tuple[float, ...]]:
    """Every stack of up to so many blocks."""
    every = list(sizes)
    for count in range(1, most + 1):
        yield from combinations(every, count)


def in_steps(length: float) -> float:
    """A length in mm as a number of 0.0001 mm."""
    return round(length * 10_000, 6)


@pytest.mark.outside("blocks.stack", source="Every stack of up to four of eight blocks")
@pytest.mark.parametrize("aim", ["nominal", "actual"])
@pytest.mark.parametrize("height", HEIGHTS)
@pytest.mark.parametrize("tolerance", TOLERANCES)
def test_the_fewest_blocks_within_a_tolerance(
    call: Call, aim: str, height: float, tolerance: float
) -> None:
    """Below or above alike: the fewest blocks within it, and of these the nearest; or a refusal.

    The refusal names the nearest below and above of all stacks.
    """
    lengths, wanted = LENGTHS[aim], in_steps(height)
    found = [
        (len(stack), abs(sum(lengths[s] for s in stack) - wanted))
        for stack in stacks(SIZES, MOST)
        if abs(sum(lengths[s] for s in stack) - wanted) <= in_steps(tolerance) + 1e-6
    ]
    request = {
        "units": "mm",
        "box": BOX,
        "height": height,
        "tolerance": tolerance,
        "aim": aim,
        "max_blocks": MOST,
    }
    if found:
        result = call("blocks.stack", **request)["result"]
        of_sizes = sum(lengths[size] for size in result["blocks"])
        assert (result["count"], abs(of_sizes - wanted)) == pytest.approx(min(found), abs=1e-6)
        assert result["proved"]
        value = result["actual_height"]["value"] if aim == "actual" else result["total"]
        assert value == pytest.approx(of_sizes / 10_000, abs=1e-9)
        return
    with pytest.raises(Unreachable, match=r"nearest (below|above)") as refused:
        call("blocks.stack", **request)
    sums = {sum(lengths[s] for s in stack) for stack in stacks(SIZES, MOST)}
    below, above = (s for s in sums if s < wanted), (s for s in sums if s > wanted)
    nearest = refused.value.more["nearest"]
    assert isinstance(nearest, dict)
    for side, best in (("below", max(below, default=None)), ("above", min(above, default=None))):
        assert (nearest[side] is None) == (best is None)
        if best is not None:
            told = sum(lengths[size] for size in nearest[side]["blocks"])
            assert told == best, side


@pytest.mark.outside("blocks.stack", source="Every stack of up to four of eight blocks")
@pytest.mark.parametrize("height", HEIGHTS)
def test_without_a_tolerance_the_nearest_actual_height(call: Call, height: float) -> None:
    """By actual heights the nearest stack of all is given, of equally near ones the fewest."""
    wanted = in_steps(height)
    best = min(
        (abs(sum(ACTUAL[s] for s in stack) - wanted), len(stack)) for stack in stacks(SIZES, MOST)
    )
    result = call(
        "blocks.stack", units="mm", box=BOX, height=height, aim="actual", max_blocks=MOST
    )["result"]
    off = abs(sum(ACTUAL[size] for size in result["blocks"]) - wanted)
    assert (off, result["count"]) == pytest.approx(best, abs=1e-6)
    assert abs(result["actual_deviation"]) == pytest.approx(off / 10_000, abs=1e-9)


@pytest.mark.outside("blocks.stack", source="Two stacks as far below as above, by hand")
@pytest.mark.parametrize(("prefer", "blocks"), [("large-blocks", [1.02]), ("least-wear", [1.0])])
def test_as_near_below_as_above_preference_decides(
    call: Call, prefer: str, blocks: list[float]
) -> None:
    """1.00 and 1.02 lie 0.01 from 1.01: the larger one, or the one less worn, is taken.

    Just short of 0.01 neither will do, and both are named as the nearest.
    """
    request: dict[str, Any] = {
        "units": "mm",
        "box": [{"size": 1.0, "times_wrung": 1}, {"size": 1.02, "times_wrung": 5}],
        "height": 1.01,
        "tolerance": 0.01,
        "prefer": prefer,
    }
    result = call("blocks.stack", **request)["result"]
    assert result["blocks"] == blocks
    assert abs(result["deviation"]) == pytest.approx(0.01)
    with pytest.raises(Unreachable, match=r"nearest below it is 1 mm and above it is 1\.02 mm"):
        call("blocks.stack", **{**request, "tolerance": 0.0099})


@pytest.mark.outside("blocks.stacks", source="Every pair of stacks that share no block, by hand")
@pytest.mark.parametrize("name", ["blocks.stacks", "blocks.day"])
def test_several_heights_within_their_tolerances(call: Call, name: str) -> None:
    """Two heights at once take the fewest blocks in all that come within both tolerances.

    Every pair of stacks without a block in common is tried; of 6.51 ± 0.01 and 3.02 ± 0.02 both
    lie below what their fewest blocks make, or above it.
    """
    asked = [("a", 6.51, 0.01), ("b", 3.02, 0.02)]
    able = [
        [s for s in stacks(SIZES, MOST) if abs(sum(s) - height) <= tolerance + 1e-9]
        for _, height, tolerance in asked
    ]
    best = min(len(a) + len(b) for a in able[0] for b in able[1] if not set(a) & set(b))
    entries = [{"height": height, "tolerance": tolerance} for _, height, tolerance in asked]
    request: dict[str, Any] = {"units": "mm", "sizes": list(SIZES), "max_blocks": MOST}
    if name == "blocks.stacks":
        request["heights"] = [{"name": n, **e} for (n, *_), e in zip(asked, entries, strict=True)]
        built = call(name, **request)["result"]["stacks"]
    else:
        request["jobs"] = [
            {"job": n, "bench": n, "slot": 1, **e}
            for (n, *_), e in zip(asked, entries, strict=True)
        ]
        built = call(name, **request)["result"]["slots"][0]["stacks"]
    blocks = [stack["blocks"] for stack in built]
    assert sum(map(len, blocks)) == best
    assert not set(blocks[0]) & set(blocks[1])
    for stack, (_, height, tolerance) in zip(blocks, asked, strict=True):
        assert abs(math.fsum(stack) - height) <= tolerance + 1e-9


def lift_of(degrees: float) -> float:
    """Lift of a 5 in plate at an angle, exactly."""
    return 5 * math.sin(math.radians(degrees))


@pytest.mark.outside("sine.low-stack", source="asin of both heights, by hand")
@pytest.mark.parametrize("angle", [0.5, 30.0, 61.0, 80.0])
@pytest.mark.parametrize("side", [-1, 1])
@pytest.mark.parametrize("inside", [True, False])
def test_arc_seconds_are_heights_at_the_plates_own_angle(
    call: Call, angle: float, side: int, inside: bool
) -> None:
    """A single block on either side does, just within the arc-seconds asked for, and not past it.

    The block alone in the box gives asin(block / 5): so far off is it, in arc-seconds.
    """
    block = round(lift_of(angle) + side * 0.0003, 4)
    off = abs(math.degrees(math.asin(block / 5)) - angle) * 3600
    request: dict[str, Any] = {
        "units": "in",
        "center_distance": 5,
        "angle": angle,
        "box": [{"size": block}],
        "tolerance_arcsec": off * (1.001 if inside else 0.999),
    }
    if inside:
        result = call("sine.low-stack", **request)["result"]
        assert (result["high"]["blocks"], result["low"]["blocks"]) == ([block], [])
        assert abs(result["deviation_arcsec"]) == pytest.approx(off, rel=1e-9)
    else:
        with pytest.raises(Unreachable, match="nearest"):
            call("sine.low-stack", **request)


@pytest.mark.outside("sine.correction", source="asin of both heights, by hand")
@pytest.mark.parametrize("side", [-1, 1])
@pytest.mark.parametrize("inside", [True, False])
def test_a_corrections_arc_seconds_are_heights(call: Call, side: int, inside: bool) -> None:
    """Of two blocks the second is swapped in where it corrects to within the arc-seconds only.

    At 40° a stack of 3.2139 in measured 30″ off wants 5 (sin θ − sin(θ ± 30″)) more.
    """
    measured = 40 - side * 30 / 3600
    wanted = 3.2139 + lift_of(40) - lift_of(measured)
    block = round(wanted + side * 0.0004, 4)
    off = abs(math.degrees(math.asin(block / 5) - math.asin(wanted / 5))) * 3600
    request: dict[str, Any] = {
        "units": "in",
        "center_distance": 5,
        "angle": 40,
        "measured_angle": measured,
        "blocks": [3.2139],
        "box": [{"size": 3.2139}, {"size": block}],
        "tolerance_arcsec": off * (1.001 if inside else 0.999),
    }
    if inside:
        swap = call("sine.correction", **request)["result"]["swap"]
        assert (swap["remove"], swap["add"]) == ([3.2139], [block])
        assert abs(swap["remaining_error_arcsec"]) == pytest.approx(off, rel=1e-3)
    else:
        with pytest.raises(Unreachable, match="No stack of up to"):
            call("sine.correction", **request)


WEAR = {"units": "mm", "aim": "nominal"}


@pytest.mark.outside("blocks.stack", source="Sums of wear blocks and others, by hand")
@pytest.mark.parametrize(
    ("counts", "ends", "size", "wears", "rest"),
    [
        ({1.0: 2, 2.0: 1}, "both-ends", None, [1.0, 1.0], [10.0]),  # most of 1 mm
        ({1.0: 1, 2.0: 2}, "both-ends", None, [2.0, 2.0], [5.0, 3.0]),  # most of 2 mm
        ({1.0: 2, 2.0: 2}, "both-ends", None, [2.0, 2.0], [5.0, 3.0]),  # as many: the larger
        ({1.0: 2, 2.0: 2}, "both-ends", 1.0, [1.0, 1.0], [10.0]),  # as asked
        ({1.0: 2, 2.0: 1}, "one-end", 2.0, [2.0], [10.0]),
        ({1.0: 2, 2.0: 1}, "both-ends", 4.0, [4.0, 4.0], [4.0]),  # kept beside the box
        ({1.0: 2, 2.0: 1}, "none", None, [], [5.0, 4.0, 3.0]),  # none of them goes inside
    ],
)
def test_wear_blocks_of_unlike_sizes_and_counts(
    call: Call,
    counts: dict[float, int],
    ends: str,
    size: float | None,
    wears: list[float],
    rest: list[float],
) -> None:
    """Both ends take one size: that asked for, or that of most, and the others make up 12 mm.

    Of 3, 4, 5 and 10 mm, 12 is 10 and 2 × 1, 8 is 5 and 3, and 4 is itself.
    """
    box: list[dict[str, Any]] = [{"size": other} for other in (3.0, 4.0, 5.0, 10.0)]
    box += [{"size": s, "wear_block": True, "count": n} for s, n in counts.items()]
    request = {**WEAR, "box": box, "height": 12, "wear_ends": ends}
    stated = request if size is None else {**request, "wear_block_size": size}
    result = call("blocks.stack", **stated)["result"]
    assert sorted(result["blocks"]) == sorted([*rest, *wears])
    assert (result["total"], result["deviation"]) == (12, 0)


@pytest.mark.outside("blocks.stack", source="Sums of wear blocks and others, by hand")
@pytest.mark.parametrize(("height", "wear_height"), [(4.0, 4.0), (3.9, 4.0)])
def test_wear_blocks_that_leave_nothing(call: Call, height: float, wear_height: float) -> None:
    """Wear blocks as high as the height, or higher, leave nothing for the stack."""
    box = [{"size": 2.0, "wear_block": True, "count": 2}, {"size": 1.0}]
    request = {**WEAR, "box": box, "height": height, "wear_ends": "both-ends"}
    with pytest.raises(Unreachable, match=rf"alone are {wear_height:g} mm high") as refused:
        call("blocks.stack", **request)
    limit = f"should be more than the wear blocks, {wear_height:g} mm"
    assert refused.value.fields == {"height": limit}
    assert call("blocks.stack", **{**request, "height": 5})["result"]["count"] == 3


def test_wear_blocks_that_make_a_height_impossible(call: Call) -> None:
    """5 mm is a block of the box; between wear blocks of 2 mm only 1 mm is left, and none is so.

    The nearest below leaves out nothing that the ends need: 2 + 2 and no other is no stack of it.
    """
    box = [{"size": 2.0, "wear_block": True, "count": 2}, {"size": 5.0}, {"size": 3.0}]
    plain = {**WEAR, "box": box, "height": 5}
    assert call("blocks.stack", **plain)["result"]["blocks"] == [5.0]
    with pytest.raises(Unreachable, match=r"is 5 mm high; nearest above it is 7 mm") as refused:
        call("blocks.stack", **{**plain, "wear_ends": "both-ends"})
    nearest = refused.value.more["nearest"]
    assert isinstance(nearest, dict)
    assert nearest["below"] is None
    assert sorted(nearest["above"]["blocks"]) == [2.0, 2.0, 3.0]
    one = [{"size": 2.0, "wear_block": True}, {"size": 3.0}]
    with pytest.raises(Unreachable, match="only 1 wear block of 2 mm, and both") as refused:
        call("blocks.stack", **{**plain, "box": one, "wear_ends": "both-ends"})
    assert refused.value.fields == {"wear_ends": "should be one-end with so few wear blocks"}
    assert call("blocks.stack", **{**plain, "box": one, "wear_ends": "one-end"})["result"]
