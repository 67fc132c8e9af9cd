"""What holds for stacks from any box of blocks."""

import math
from collections import Counter
from itertools import combinations, islice, product
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from halfangle_service.trade.inspection.mistakes import PlannedStack, WrongBlocks, rise_error
from halfangle_service.trade.sine.low_stack import difference_table
from halfangle_service.trade.stacks.angle_blocks import fewest_within, nearest
from halfangle_service.trade.stacks.mistakes import distinct, single_mistakes, without
from halfangle_service.trade.stacks.search import stacking
from halfangle_service.trade.stacks.search.disjoint import DisjointSearch
from halfangle_service.trade.stacks.search.measured import MeasuredBlocks
from halfangle_service.trade.stacks.search.stacking import (
    MOST_COUNTED,
    UNREACHED,
    StackTable,
    stack_table,
)
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.stacks.supply import Box, Piece

#: Small boxes, equal sizes among them, in steps of any size.
BOXES = st.lists(st.integers(1, 60), min_size=2, max_size=MOST_COUNTED).flatmap(
    lambda sizes: st.sampled_from([1, 7, 25_400]).map(lambda step: [s * step for s in sizes])
)


def heights_of(sizes: list[int], most: int) -> dict[int, int]:
    """The fewest blocks of every height, by enumeration."""
    fewest: dict[int, int] = {}
    for count in range(most, 0, -1):
        for stack in combinations(sizes, count):
            fewest[sum(stack)] = count
    return fewest


@given(BOXES, st.integers(1, 5))
@settings(max_examples=60, deadline=None)
def test_every_height_has_its_fewest_blocks(sizes: list[int], most: int) -> None:
    """A table knows exactly the heights that stacks have, with the fewest blocks of each."""
    table = StackTable(tuple(sorted(sizes, reverse=True)), min(most, len(sizes)))
    known = heights_of(sizes, table.max_blocks)
    for height in range(table.step, max(known) + 2 * table.step, table.step):
        stack = table.stack(height)
        assert (len(stack) if stack else None) == known.get(height)
        assert stack is None or (sum(stack) == height and not Counter(stack) - Counter(sizes))


@given(BOXES, st.integers(0, 600))
@settings(max_examples=60, deadline=None)
def test_nearest_heights_enclose_the_target(sizes: list[int], place: int) -> None:
    """The nearest stacks are the last at or below and the first at or above, if there are any."""
    table = StackTable(tuple(sorted(sizes, reverse=True)), len(sizes))
    height = place * table.step + (1 if table.step > 1 else 0)
    below, above = table.nearest(height)
    known = heights_of(sizes, len(sizes))
    assert (sum(below) if below else None) == max((h for h in known if h <= height), default=None)
    assert (sum(above) if above else None) == min((h for h in known if h >= height), default=None)


@given(BOXES, st.integers(1, 4), st.data())
@settings(max_examples=60, deadline=None)
def test_a_stack_of_what_is_left(sizes: list[int], most: int, data: st.DataObject) -> None:
    """A table picks from some of its blocks the stack that a table of just these gives."""
    left = data.draw(st.lists(st.sampled_from(sizes), unique=True)) or sizes[:1]
    table, theirs = stack_table(sizes, most), stack_table(left, most)
    for height in heights_of(sizes, table.max_blocks):
        assert table.stack_of(left, height) == theirs.stack(height)


@given(BOXES, st.integers(1, 5))
@settings(max_examples=15, deadline=None)
def test_every_difference_has_its_fewest_blocks(sizes: list[int], most: int) -> None:
    """A table of differences knows those of two stacks, either higher, with the fewest blocks."""
    most = min(most, len(sizes))
    table = difference_table(sizes, most)
    known: dict[int, int] = {0: 0}
    for signs in product((0, 1, -1), repeat=len(sizes)):
        difference = sum(sign * size for sign, size in zip(signs, sizes, strict=True))
        count = sum(map(abs, signs))
        known[difference] = min(count, known.get(difference, UNREACHED))
    for difference in range(-sum(sizes), sum(sizes) + 1, table.step):
        count = known.get(difference, UNREACHED)
        assert table.count(difference) == (count if count <= most else UNREACHED)


@given(BOXES, st.integers(1, 5), st.data())
@settings(max_examples=25, deadline=None)
def test_a_table_grows_as_it_is_asked(sizes: list[int], most: int, data: st.DataObject) -> None:
    """Made as far as was asked for, a table says of each height what the whole table says."""
    sizes, most = sorted(sizes, reverse=True), min(most, len(sizes))
    whole = StackTable(tuple(sizes), most)
    asked = st.lists(st.integers(0, whole.reach), min_size=1, max_size=6)
    heights = [place * whole.step for place in data.draw(asked)]
    known = [whole.count(height) for height in heights]
    stacks, near = [whole.stack(h) for h in heights], [whole.nearest(h) for h in heights]
    with patch.object(stacking, "_AT_FIRST", 1):
        table = StackTable(tuple(sizes), most)
        assert [table.nearest(height) for height in heights] == near
        assert [table.count(height) for height in heights] == known
        assert [table.stack(height) for height in heights] == stacks


def test_no_table_counts_more_than_it_has_room_for() -> None:
    """A table of stacks of more blocks than it can count is refused, not cut short."""
    with pytest.raises(ValueError, match="stacks of up to 8 blocks, not of 9"):
        StackTable(tuple(range(12, 0, -1)), MOST_COUNTED + 1)


@given(BOXES, st.integers(1, 4))
@settings(max_examples=60, deadline=None)
def test_layers_hold_every_stack_once(sizes: list[int], count: int) -> None:
    """The stacks of exactly so many blocks are those of enumeration, alike ones once."""
    box = Box.of(map(Piece, sizes))
    count = min(count, len(sizes))
    height = sum(box.sizes[:count])
    layers = box.layers(len(sizes))
    rows = [
        row for part in layers.stacks([height], count, Work(10_000_000)) for row in part.tolist()
    ]
    given_ = [tuple(box.sizes[position] for position in row) for row in rows]
    expected = {stack for stack in combinations(box.sizes, count) if sum(stack) == height}
    assert len(given_) == len(set(given_))
    assert set(given_) == expected


@given(BOXES, st.integers(1, 400))
@settings(max_examples=60, deadline=None)
def test_measured_stacks_come_in_order_and_once(sizes: list[int], target: int) -> None:
    """Stacks come from the least error on, none twice, until every combination was given."""
    blocks = MeasuredBlocks(tuple(sizes), (1,) * len(sizes))
    found = list(blocks.nearest(target, 4, Work(10_000)))
    errors = [abs(error) for error, _ in found]
    assert errors == sorted(errors)
    stacks = {stack for _, stack in found}
    every = {c for n in range(1, 5) for c in combinations(range(len(sizes)), n)}
    assert stacks == every
    assert len(found) == len(every)


@given(BOXES, st.data())
@settings(max_examples=60, deadline=None)
def test_a_box_split_in_two_is_found_again(sizes: list[int], data: st.DataObject) -> None:
    """Two heights made from disjoint blocks are possible, with no more blocks than that."""
    box = Box.of(map(Piece, sizes))
    cut = data.draw(st.integers(1, len(sizes) - 1))
    halves = sizes[:cut], sizes[cut:]
    search = DisjointSearch(box.layers(len(sizes)).table, [[sum(half)] for half in halves])
    found = search.solve((0, 1))
    assert found.stacks is not None
    assert found.bound <= found.count <= len(sizes)
    used = [position for stack in found.stacks for position in stack]
    assert len(used) == len(set(used))


@given(BOXES)
@settings(max_examples=60, deadline=None)
def test_positions_name_each_block_once(sizes: list[int]) -> None:
    """Sizes of a stack lead to positions of the box, none twice, of just these sizes."""
    box = Box.of(map(Piece, sizes))
    table = box.layers(len(sizes)).table
    assert table.positions(box.sizes) == tuple(range(len(sizes)))


@given(BOXES, st.integers(1, 3))
@settings(max_examples=60, deadline=None)
def test_a_mistake_undone_is_the_opposite(sizes: list[int], count: int) -> None:
    """Undoing a mistake changes the height by as much the other way."""
    pieces = [Piece(size, deviation=place % 3) for place, size in enumerate(sizes)]
    stack, spare = pieces[:count], pieces[count:]
    for mistake in islice(single_mistakes(stack, spare, pieces[:1], (), 7), 200):
        assert mistake.reversed().change == -mistake.change
        assert mistake.reversed().reversed() == mistake


@given(
    st.lists(st.integers(1, 50), min_size=1, max_size=7),
    st.lists(st.sampled_from([-1, 0, 1]), min_size=7, max_size=7),
)
@settings(max_examples=80, deadline=None)
def test_angles_made_of_blocks_are_found(angles: list[int], signs: list[int]) -> None:
    """An angle made by adding and subtracting blocks is found, with no more blocks than that."""
    target = sum(sign * angle for sign, angle in zip(signs, angles, strict=False))
    used = sum(map(abs, signs[: len(angles)]))
    found = fewest_within(angles, target, 0, 22)
    if not found.stacks:
        # Blocks of one angle are not added and subtracted at once: that would leave nothing.
        assert target == 0
        return
    stack = found.stacks[0]
    assert found.complete
    assert stack.total == target == sum(angle * times for angle, times in stack.terms)
    assert stack.count <= used or target == 0
    assert all(abs(times) <= angles.count(angle) for angle, times in stack.terms)


@given(st.lists(st.integers(1, 50), min_size=1, max_size=7), st.integers(1, 400))
@settings(max_examples=80, deadline=None)
def test_nearest_angles_enclose_the_target(angles: list[int], target: int) -> None:
    """The nearest stacks lie on either side of an angle, and none lies between."""
    below, above = nearest(angles, target, 22)
    assert below is not None
    assert below.total <= target
    assert above is None or above.total >= target
    gap = min(abs(stack.total - target) for stack in (below, above) if stack)
    assert not fewest_within(angles, target, gap - 1, 22).stacks or gap == 0
    assert fewest_within(angles, target, gap, 22).stacks


@given(data=st.data())
def test_the_smallest_mistake_is_that_of_every_swap_tried(data: st.DataObject) -> None:
    """Of all swaps of a block of the stack for one left in the box the least change comes first."""
    box = data.draw(st.lists(st.integers(1, 9), min_size=1, max_size=8))
    stack = data.draw(st.permutations(box))[: data.draw(st.integers(1, len(box)))]
    left = list((Counter(box) - Counter(stack)).elements())
    swaps = [(abs(b - a), a, b) for a, b in product(stack, left) if a != b]
    pieces, spare = (tuple(map(Piece, sizes)) for sizes in (stack, left))
    found = WrongBlocks(PlannedStack("high", pieces, spare, float)).smallest()
    assert sorted(without(box, stack)) == sorted(left)
    least = (
        None if found is None else (abs(found.height_change), found.meant.size, found.wrung.size)
    )
    assert least == min(swaps, default=None)


@st.composite
def _pieces(draw: st.DrawFn) -> list[Piece]:
    """A box of few sizes, some longer or shorter than they say."""
    pairs = st.tuples(st.integers(1, 12), st.sampled_from((-1, 0, 0, 1, 2)))
    return [Piece(*pair) for pair in draw(st.lists(pairs, min_size=2, max_size=12))]


@given(
    box=_pieces(),
    count=st.integers(1, 3),
    distance=st.sampled_from((20, 40, 300)),
    other=st.sampled_from((0, -3, 20)),
    sign=st.sampled_from((1, -1)),
    degrees=st.floats(0, 70),
    tolerance=st.sampled_from((1.0, 5_000.0, 40_000.0)),
    monotone=st.booleans(),
)
def test_the_smallest_mistake_past_a_limit_is_that_of_every_block_tried(
    box: list[Piece],
    count: int,
    distance: int,
    other: int,
    sign: int,
    degrees: float,
    tolerance: float,
    *,
    monotone: bool,
) -> None:
    """Halved or not, it is the least change of all that leave; one to either side has least error.

    Blocks equal in size or in length, a stack that is outside by itself, one on which nothing
    stands: all as when every block of the box is tried in turn.
    """
    pieces, spare = tuple(box[:count]), tuple(box[count:])
    error = rise_error(distance, math.radians(degrees), 1, other, sign, times=2.0)
    actual = sum(piece.actual for piece in pieces)
    tried = []
    for meant, wrung in product(distinct(pieces), distinct(spare)):
        change = wrung.actual - meant.actual
        off = error(actual + change)
        if meant.size != wrung.size and (off is None or abs(off) > tolerance):
            tried.append((abs(change), meant.size, wrung.size, off))
    tried.sort(key=lambda way: way[:3])
    wrong = WrongBlocks(PlannedStack("high", pieces, spare, error, monotone=monotone))
    found = [
        (abs(way.height_change), way.meant.size, way.wrung.size, way.error_arcsec)
        for way in wrong.past(-tolerance, tolerance)
    ]
    assert found[:1] == tried[:1]
    right = error(actual)
    if monotone and right is not None and abs(right) <= tolerance:
        least, of_all = (
            min((abs(way[3]) for way in ways if way[3] is not None), default=None)
            for ways in (found, tried)
        )
        assert least == of_all
