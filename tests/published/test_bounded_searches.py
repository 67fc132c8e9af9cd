"""Searches whose bound on the work binds: what they claim is still true of every stack there is."""

import math
from collections.abc import Iterator
from functools import cache
from itertools import combinations, product
from typing import Any

import pytest

from halfangle_service.errors import BeyondBound, Refusal, Unreachable
from halfangle_service.topics.blocks import angle_stack
from halfangle_service.trade.sine import block_swap, low_stack
from halfangle_service.trade.stacks import one_stack
from halfangle_service.trade.stacks.search import disjoint, in_turn, measured
from support import Call

SIZES = (1.005, 1.01, 1.02, 1.05, 1.5, 2.0, 3.0, 5.0, 10.0)
DEVIATIONS = (2, -1, 3, -4, 1, 5, -2, 4, -6)
#: Sizes and what they are in truth, as whole numbers of 0.0001 mm.
ACTUAL = {size: round(size * 10_000) + off for size, off in zip(SIZES, DEVIATIONS, strict=True)}
BOX = [
    {"size": size, "deviation": off / 10_000} for size, off in zip(SIZES, DEVIATIONS, strict=True)
]
MOST = 4
#: Bounds on the work, from one stack looked at to more than these boxes need.
WORKS = (1, 3, 10, 30, 100, 300, 1_000, 10_000)
HEIGHTS = (8.52, 3.03, 12.0349, 6.515)

Stack = tuple[float, ...]
works = pytest.mark.parametrize("work", WORKS)


def every_stack(most: int = MOST) -> Iterator[Stack]:
    """Every stack of up to so many blocks of the box."""
    for count in range(1, most + 1):
        yield from combinations(SIZES, count)


def asked_or_refused(call: Call, name: str, request: dict[str, Any]) -> dict[str, Any] | Refusal:
    """The result, or the refusal."""
    try:
        result: dict[str, Any] = call(name, **request)["result"]
    except Refusal as refusal:
        return refusal
    return result


@pytest.mark.outside("blocks.stack", source="Every stack of up to four of nine blocks")
@works
@pytest.mark.parametrize("height", HEIGHTS)
@pytest.mark.parametrize("tolerance", [None, 0.0005, 0.01])
def test_a_bounded_search_for_the_nearest_actual_height(
    call: Call, monkeypatch: pytest.MonkeyPatch, work: int, height: float, tolerance: float | None
) -> None:
    """What is said to be proved is the best of all; what is not says what bounded the search.

    No height is refused as one that no stack has while there is one.
    """
    monkeypatch.setattr(one_stack, "MOST_CANDIDATES", work)
    wanted = height * 10_000
    off = [(abs(sum(ACTUAL[s] for s in stack) - wanted), len(stack)) for stack in every_stack()]
    able = [(count, away) for away, count in off if away <= (tolerance or 0) * 10_000 + 1e-6]
    request = {
        "units": "mm",
        "box": BOX,
        "height": height,
        "aim": "actual",
        "max_blocks": MOST,
        "max_alternatives": 3,
    }
    stated = request if tolerance is None else {**request, "tolerance": tolerance}
    result = asked_or_refused(call, "blocks.stack", stated)
    if isinstance(result, Refusal):
        if isinstance(result, Unreachable):
            assert tolerance is not None, result
            assert not able, result
        return
    found = abs(sum(ACTUAL[s] for s in result["blocks"]) - wanted)
    if result["proved"]:
        best = min(off)[0] if tolerance is None else min(able)[1]
        assert found == pytest.approx(best, abs=1e-6)
    if result["order_proved"]:
        ordered = sorted(off) if tolerance is None else sorted((a, c) for c, a in able)
        given = [result, *result["alternatives"]]
        away = [abs(sum(ACTUAL[s] for s in stack["blocks"]) - wanted) for stack in given]
        counts = [stack["count"] for stack in given]
        if tolerance is None:
            assert away == pytest.approx([a for a, _ in ordered[: len(away)]], abs=1e-6)
        else:
            assert counts == [count for count, _ in sorted(able)[: len(counts)]]
    assert (result["bound"] is None) == (result["proved"] and result["order_proved"])


@pytest.mark.outside("blocks.stack", source="Every stack of up to three, under either wear block")
@works
@pytest.mark.parametrize("height", [3.51, 8.551, 6.1])
def test_a_bounded_search_under_either_of_two_wear_blocks(
    call: Call, monkeypatch: pytest.MonkeyPatch, work: int, height: float
) -> None:
    """Proved is the nearest of all only where the stacks under each wear block were searched."""
    monkeypatch.setattr(one_stack, "MOST_CANDIDATES", work)
    wear, wanted = (4_998, 5_007), height * 10_000
    ends = [
        {"size": 0.5, "deviation": (actual - 5_000) / 10_000, "wear_block": True} for actual in wear
    ]
    nearest = min(
        abs(sum(ACTUAL[size] for size in stack) + end - wanted)
        for stack in every_stack(3)
        for end in wear
    )
    request = {"units": "mm", "box": [*BOX, *ends], "height": height, "max_blocks": MOST}
    result = call("blocks.stack", **request, aim="actual", wear_ends="one-end")["result"]
    if result["proved"]:
        assert abs(result["actual_deviation"]) * 10_000 == pytest.approx(nearest, abs=1e-4)
    assert result["proved"] or work < WORKS[-1]
    assert (result["bound"] is None) == (result["proved"] and result["order_proved"])


@pytest.mark.outside("blocks.stack", source="Every stack of up to four of nine blocks")
@works
@pytest.mark.parametrize("prefer", ["large-blocks", "fewer-small-blocks"])
def test_a_bounded_search_for_alternatives(
    call: Call, monkeypatch: pytest.MonkeyPatch, work: int, prefer: str
) -> None:
    """The count is the fewest whatever the bound; the order, where it is proved, is the whole one.

    Of 8.5 mm ± 0.03 every stack is known by enumeration.
    """
    monkeypatch.setattr(one_stack, "MOST_CELLS", work)
    able = sorted(
        (len(stack), round(abs(sum(stack) - 8.5), 6))
        for stack in every_stack()
        if abs(sum(stack) - 8.5) <= 0.03 + 1e-9
    )
    result = call(
        "blocks.stack",
        units="mm",
        sizes=list(SIZES),
        height=8.5,
        tolerance=0.03,
        prefer=prefer,
        max_blocks=MOST,
        max_alternatives=4,
    )["result"]
    assert result["proved"]
    assert result["count"] == able[0][0]
    given = [(s["count"], round(abs(s["deviation"]), 6)) for s in (result, *result["alternatives"])]
    if result["order_proved"]:
        assert given == able[:5]
    else:
        assert "bound" in result["bound"]
    assert (result["bound"] is None) == result["order_proved"]


@cache
def best_together(heights: tuple[float, ...], most: int) -> dict[int, int]:
    """For each number of heights that can stand at once, the fewest blocks of all; by enumeration.

    Heights by their numbers in the order asked; every choice of stacks without a common block.
    """
    ways = [[s for s in every_stack(most) if abs(sum(s) - h) < 1e-9] for h in heights]
    best: dict[int, int] = {}
    for count in range(1, len(heights) + 1):
        for chosen in combinations(range(len(heights)), count):
            for stacks in product(*(ways[place] for place in chosen)):
                blocks = [size for stack in stacks for size in stack]
                if len(set(blocks)) == len(blocks):
                    best[count] = min(best.get(count, 99), len(blocks))
    return best


@pytest.mark.outside("blocks.stacks", source="Every choice of stacks of nine blocks, enumerated")
@works
@pytest.mark.parametrize("picked", [0, 1, 30, 30_000])
@pytest.mark.parametrize(
    "heights",
    [(3.02, 6.5, 11.01), (3.0, 5.0, 6.5), (2.0, 3.0, 5.0, 8.0, 10.0), (4.02, 6.01, 3.07, 11.5)],
)
def test_bounded_searches_for_several_stacks(
    call: Call,
    monkeypatch: pytest.MonkeyPatch,
    work: int,
    picked: int,
    heights: tuple[float, ...],
) -> None:
    """`fewest_possible` is never more than the fewest, `largest_count` never less than the most.

    Where it is proved, both are reached; a clash that is told is one.
    """
    monkeypatch.setattr(disjoint, "MOST_CELLS", work)
    monkeypatch.setattr(disjoint, "MOST_COMPARED", work)
    monkeypatch.setattr(in_turn, "MOST_PICKED", picked)
    best = best_together(heights, MOST)
    entries = [{"name": f"h{height}", "height": height} for height in heights]
    request = {"units": "mm", "sizes": list(SIZES), "max_blocks": MOST, "heights": entries}
    result = asked_or_refused(call, "blocks.stacks", request)
    if isinstance(result, Refusal):
        assert not best, result
        return
    stands = len(result["stacks"])
    assert stands <= max(best) <= result["largest_count"]
    blocks = [block for stack in result["stacks"] for block in stack["blocks"]]
    assert len(set(blocks)) == len(blocks) == result["count"]
    names = {stack["name"] for stack in result["stacks"]}
    standing = tuple(h for h in heights if f"h{h}" in names)
    fewest = best_together(standing, MOST)[stands]
    assert result["fewest_possible"] <= fewest <= result["count"]
    if result["proved"]:
        assert (stands, result["count"]) == (max(best), fewest)
    assert (result["bound"] is None) == result["proved"]
    for left in result["left_out"]:
        if "cannot stand at once" in left["reason"]:
            own = float(left["name"][1:])
            others = [h for h in standing if f"h{h}" in left["reason"]]
            assert others
            assert all(2 not in best_together((own, other), MOST) for other in others)


@pytest.mark.outside("blocks.angle-stack", source="Every sum and difference of the blocks")
@works
def test_a_bounded_search_for_an_angle(
    call: Call, monkeypatch: pytest.MonkeyPatch, work: int
) -> None:
    """The count is the fewest; nearest and order are so where they are said to be proved."""
    monkeypatch.setattr(angle_stack, "MOST_COMPARED", work)
    angles = (1, 3, 5, 15, 30, 45, 2, 7)
    signed = [
        (sum(map(abs, signs)), abs(sum(s * a for s, a in zip(signs, angles, strict=True)) - 26))
        for signs in product((-1, 0, 1), repeat=len(angles))
    ]
    able = sorted((count, off) for count, off in signed if off <= 3 and 0 < count <= MOST)
    answer = call(
        "blocks.angle-stack",
        box=[{"angle": angle} for angle in angles],
        angle=26,
        tolerance_arcsec=3 * 3600,
        max_blocks=MOST,
        max_alternatives=5,
    )
    result = answer["result"]
    given = [
        (stack["count"], abs(stack["deviation_arcsec"]) / 3600)
        for stack in (result, *result["alternatives"])
    ]
    assert given[0][0] == able[0][0]
    if result["proved"]:
        assert given[0] == able[0]
    if result["order_proved"]:
        assert given == able[:6]
    else:
        assert result["bound"]
    assert (result["bound"] is None) == result["order_proved"]
    said = [a["severity"] for a in answer["advisories"] if a["code"] == "bound-reached"]
    assert said == ([] if result["bound"] is None else ["note"])


@pytest.mark.outside("sine.correction", source="Every stack of up to four blocks, enumerated")
@works
def test_a_bounded_search_for_a_swap(
    call: Call, monkeypatch: pytest.MonkeyPatch, work: int
) -> None:
    """A stack that there is, is not denied for want of work; the swap found is of the fewest.

    On 100 mm a stack of 31.5 mm that measures as 32.93 would is to be 1.43 mm lower.
    """
    monkeypatch.setattr(block_swap, "MOST_PICKED", work)
    sizes = (*SIZES, 20.0)
    able = [
        stack
        for count in range(1, 6)
        for stack in combinations(sizes, count)
        if abs(sum(stack) - 30.07) < 1e-9
    ]
    fewest = min(len({20.0, 10.0, 1.5} ^ set(stack)) for stack in able)
    request = {
        "units": "mm",
        "center_distance": 100,
        "angle": math.degrees(math.asin(0.315)),
        "measured_angle": math.degrees(math.asin(0.315 + 0.0143)),
        "blocks": [20.0, 10.0, 1.5],
        "sizes": list(sizes),
        "max_blocks": 5,
    }
    result = asked_or_refused(call, "sine.correction", request)
    if isinstance(result, Refusal):
        assert isinstance(result, BeyondBound), result
        assert work < WORKS[-1]
        return
    swap = result["swap"]
    assert len(swap["remove"]) + len(swap["add"]) == fewest
    assert swap["total"] == pytest.approx(30.07)


@pytest.mark.outside("sine.low-stack", source="Bound on the work, by hand")
@pytest.mark.parametrize("tries", [0, 1, 2, 5])
def test_a_bounded_search_for_a_pair(
    call: Call, monkeypatch: pytest.MonkeyPatch, tries: int
) -> None:
    """Where the work ends before a pair is found, that is said, and not that there is none."""
    monkeypatch.setattr(low_stack.Preference.__init__, "__defaults__", (tries,))
    request = {"units": "in", "center_distance": 5, "angle": 0.5, "set": "inch-81"}
    with pytest.raises(BeyondBound, match="reached its bound on the work"):
        call("sine.low-stack", **request, smallest_low_stack=0.2)


def test_a_box_searched_by_pairs_alone_says_so(call: Call, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where triples are too many, stacks of up to four blocks were searched, and it is said."""
    monkeypatch.setattr(measured, "MOST_PARTS", 60)
    sizes = [size + 0.00001 * place for place, size in enumerate(SIZES, start=1)]
    box = [{"size": round(size, 5), "deviation": 1e-7} for size in sizes]
    request = {"units": "mm", "box": box, "height": 15.2, "aim": "actual", "max_blocks": 6}
    result = call("blocks.stack", **request)["result"]
    assert not result["proved"]
    assert "Stacks of up to 4 of these 9 blocks were searched" in result["bound"]


@pytest.mark.outside("blocks.check", source="Every block changed, left out or added, enumerated")
@pytest.mark.parametrize("most", [1, 2, 50])
@pytest.mark.parametrize("off", [-1.02, 0.005, -0.03, 0.48, 1.005, 2.0, 0.0071, -0.013])
def test_few_explanations_asked_for_hide_none(call: Call, most: int, off: float) -> None:
    """Whether one mistake explains a height does not depend on how many are asked for.

    Of the stack 5 + 2 + 1.02 one block may be left out, mistaken for another of the box, or joined
    by another, of a size that stands already too; the measurement may be off by 0.002 mm.
    """
    stack, limit = (5.0, 2.0, 1.02), 0.002
    spare = [size for size in SIZES if size not in stack]
    changes = {
        *(-block for block in stack),
        *SIZES,
        *(other - block for block in stack for other in spare),
    }
    explaining = [change for change in changes if abs(change - off) <= limit + 1e-9]
    answer = call(
        "blocks.check",
        units="mm",
        sizes=list(SIZES),
        blocks=list(stack),
        height=8.02,
        measured_height=8.02 + off,
        measurement_error_limit=limit,
        max_explanations=most,
    )
    result, codes = answer["result"], {a["code"] for a in answer["advisories"]}
    assert result["explained"] == bool(explaining)
    assert ("no-single-mistake" in codes) == (not explaining)
    told = [mistake for mistake in result["mistakes"] if mistake["explains"]]
    assert len(told) == min(most, len(explaining))
    for mistake in told:
        assert abs(mistake["height"] - 8.02 - off) <= limit + 1e-9
