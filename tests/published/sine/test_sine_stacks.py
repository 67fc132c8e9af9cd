"""Stacks under both rolls, and swaps, against an independent exact solver."""

import math
import random
from collections import Counter
from collections.abc import Sequence
from typing import Any

import pytest
from ortools.sat.python import cp_model

from halfangle_service.errors import BeyondBound, Disagreement, Impossible, Refusal, Unreachable
from halfangle_service.trade.sine.block_swap import fewest_swaps
from halfangle_service.trade.sine.low_stack import Conditions, difference_table, fewest_pair
from halfangle_service.trade.tables.blocks.sets import find_set
from support import Call

PLATE = {"units": "in", "center_distance": 5, "set": "inch-81"}
TENTHS = 254_000_000


def _fewest_by_solver(
    sizes: Sequence[int], difference: int, most: int, *, low: bool, least_low: int = 0
) -> int | None:
    """Fewest blocks for a difference by a constraint solver; None where there are none."""
    step = math.gcd(*sizes)
    model = cp_model.CpModel()
    high = [model.new_bool_var(f"h{i}") for i in range(len(sizes))]
    under = [model.new_bool_var(f"l{i}") for i in range(len(sizes))]
    scaled = [size // step for size in sizes]
    lows = sum(s * v for s, v in zip(scaled, under, strict=True))
    highs = sum(s * v for s, v in zip(scaled, high, strict=True))
    model.add(highs - lows == difference // step)
    for h, u in zip(high, under, strict=True):
        model.add(h + u <= 1)
    if low:
        model.add(sum(under) >= 1)
        model.add(lows >= -(-least_low // step))
    model.add(sum(high) + sum(under) <= most)
    model.minimize(sum(high) + sum(under))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    return round(solver.objective_value) if status == cp_model.OPTIMAL else None


@pytest.mark.outside("sine.low-stack", source="ortools 9.14, CP-SAT: fewest blocks, exact.")
@pytest.mark.parametrize("name", ["inch-36", "metric-47"])
def test_fewest_blocks_against_an_exact_solver(name: str) -> None:
    """On random differences the pair has as few blocks as an exact solver finds."""
    sizes = find_set(name).sizes
    table = difference_table(sizes, 5)
    chance = random.Random(4)  # noqa: S311
    for _ in range(8):
        difference = chance.randrange(1, 2_000) * table.step
        for low in (False, True):
            pair, finished = fewest_pair(table, [difference], Conditions(low_needed=low))
            count = pair.count if pair else None
            assert finished
            assert count == _fewest_by_solver(sizes, difference, 5, low=low)


@pytest.mark.outside("sine.low-stack", source="ortools 9.14, CP-SAT, with a least low stack.")
def test_least_low_stack_against_an_exact_solver() -> None:
    """With a least height of the low stack the count is still the fewest."""
    sizes = find_set("inch-36").sizes
    table = difference_table(sizes, 6)
    least = 6 * TENTHS // 10
    pair, _ = fewest_pair(table, [436 * 25_400], Conditions(0, least, True))
    assert pair is not None
    assert sum(pair.low) >= least
    expected = _fewest_by_solver(sizes, 436 * 25_400, 6, low=True, least_low=least)
    assert pair.count == expected


@pytest.mark.outside(
    "sine.low-stack",
    source="Worked by hand: ½° on 5 in is .0436, low .1004 and high .1440 from the 81-piece set.",
)
def test_half_a_degree(call: Call) -> None:
    """½° on 5 in, which no single stack builds, is .1440 over .1004."""
    result = call("sine.low-stack", angle=0.5, **PLATE)["result"]
    assert (result["high"]["blocks"], result["low"]["blocks"]) == ([0.144], [0.1004])
    assert result["height_as_set"] == 0.0436
    with pytest.raises(
        Unreachable, match=r"No single stack .* aside, what comes nearest is 0\.05 in"
    ):
        call("sine.low-stack", angle=0.5, low_stack_use="never", **PLATE)


def test_a_single_stack_where_it_can_be_built(call: Call) -> None:
    """30° needs nothing under the low roll, unless it is asked for; then the difference stays."""
    single = call("sine.low-stack", angle=30, **PLATE)["result"]
    assert single["low"]["blocks"] == []
    always = call("sine.low-stack", angle=30, low_stack_use="always", **PLATE)["result"]
    assert always["low"]["blocks"]
    assert always["height_as_set"] == single["height_as_set"] == 2.5


@pytest.mark.outside("sine.low-stack", source="By hand: sin θ = 2/5, and a block of 2 in")
@pytest.mark.parametrize("use", ["if-needed", "fewest-blocks"])
def test_one_block_that_does_it_is_the_stack(call: Call, use: str) -> None:
    """Where one block of the set is the height, no two stacks are fewer."""
    angle = math.degrees(math.asin(0.4))
    result = call("sine.low-stack", **PLATE, angle=angle, low_stack_use=use)["result"]
    assert (result["high"]["blocks"], result["low"]["blocks"]) == ([2.0], [])


def test_rest_and_base_step(call: Call) -> None:
    """A rest lifts the high stack over it; a base step joins the difference."""
    rest = call("sine.low-stack", angle=2, smallest_high_stack=0.5, **PLATE)["result"]
    assert rest["high"]["total"] >= 0.5
    assert rest["height_as_set"] == pytest.approx(5 * math.sin(math.radians(2)), abs=5e-5)
    step = call("sine.low-stack", angle=0.5, base_step=0.2, low_stack_use="never", **PLATE)[
        "result"
    ]
    assert step["height_as_set"] == 0.2436
    assert abs(step["deviation_arcsec"]) < 2.1


def test_no_block_twice(call: Call) -> None:
    """Over a range of small angles no block stands under both rolls."""
    sizes = Counter(find_set("inch-81").sizes)
    for minutes in range(1, 120, 7):
        result = call("sine.low-stack", angle=minutes / 60, **PLATE)["result"]
        used = [*result["high"]["blocks"], *result["low"]["blocks"]]
        assert not Counter(round(block * TENTHS) for block in used) - sizes
        assert result["count"] == len(used)


def test_a_missing_block_is_not_built_with(call: Call) -> None:
    """A block that is missing or in use stands under neither roll; others build the angle."""
    usual = call("sine.low-stack", angle=0.5, **PLATE)["result"]
    away = usual["high"]["blocks"][-1]
    result = call("sine.low-stack", angle=0.5, missing=[away], **PLATE)["result"]
    assert away not in result["high"]["blocks"] + result["low"]["blocks"]
    assert result["height_as_set"] == pytest.approx(usual["height_as_set"])


def test_a_tolerance_saves_blocks(call: Call) -> None:
    """Within a tolerance the fewest blocks are taken, and the angle stays within it."""
    near = call("sine.low-stack", angle=7.3, **PLATE)["result"]
    loose = call("sine.low-stack", angle=7.3, tolerance_arcsec=60, **PLATE)["result"]
    assert loose["count"] < near["count"]
    assert abs(loose["deviation_arcsec"]) <= 60


@pytest.mark.parametrize(
    ("change", "kind", "says"),
    [
        ({"set": None, "sizes": [1.0, 2.0]}, Unreachable, "what comes nearest is 0 and 1 in"),
        ({"sizes": [1.0]}, Disagreement, "were sent together"),
        ({"set": None}, Disagreement, "all missing"),
        ({"set": None, "sizes": [1.0, 2.0, 1.0]}, Disagreement, "stands in `sizes` twice"),
        ({"missing": [0.1234]}, Disagreement, "the box has none"),
        ({"set": "inch-7"}, Unreachable, "no built-in set"),
        ({"tolerance_arcsec": 100_000}, BeyondBound, "spans more than"),
        ({"angle": 61, "largest_angle": 60}, Unreachable, "reaches 60°"),
    ],
)
def test_low_stack_refusals(
    call: Call, change: dict[str, Any], kind: type[Refusal], says: str
) -> None:
    """What these blocks do not build, and what contradicts itself, is refused with the reason."""
    with pytest.raises(kind, match=says):
        call("sine.low-stack", **({"angle": 0.5} | PLATE | change))


@pytest.mark.outside(
    "sine.correction", source="Worked by hand: 10″ at 30° on 5 in is 5 cos 30° × 10/206264.8 in."
)
def test_correction_of_ten_seconds(call: Call) -> None:
    """A plate that stands 10″ steep at 30° wants 0.00021 in less, and the swap says how."""
    result = call(
        "sine.correction", angle=30, measured_error_arcsec=10, blocks=[2.0, 0.5], **PLATE
    )["result"]  # fmt: skip
    by_hand = -5 * math.cos(math.radians(30)) * 10 / 206264.806
    assert result["height_change"] == pytest.approx(by_hand, rel=1e-4)
    swap = result["swap"]
    assert swap["remove"] == [0.5]
    assert swap["total"] == 2.4998
    assert sum(swap["add"]) == pytest.approx(0.4998)
    assert abs(swap["remaining_error_arcsec"]) < 4.8 / 2


@pytest.mark.outside(
    "sine.correction", source="By hand: asin(2.5 / 5.0005) is read where 30° is meant."
)
def test_effective_center_distance_is_recovered(call: Call) -> None:
    """Measured on a plate of 5.0005 in that is called 5 in, the true distance comes out."""
    measured = math.degrees(math.asin(2.5 / 5.0005))
    result = call("sine.correction", angle=30, measured_angle=measured, blocks=[2.0, 0.5], **PLATE)[
        "result"
    ]
    assert result["effective_center_distance"] == pytest.approx(5.0005, rel=1e-12)
    mended = math.asin(result["new_height"] / 5.0005)
    assert (math.degrees(mended) - 30) * 3600 == pytest.approx(0, abs=0.005)


@pytest.mark.outside("sine.correction", source="ortools 9.14, CP-SAT: fewest blocks handled.")
def test_fewest_swaps_against_an_exact_solver() -> None:
    """A swap handles as few blocks as an exact solver finds."""
    sizes = find_set("inch-36").sizes
    step = math.gcd(*sizes)
    current = [sizes[-2], sizes[12], sizes[4]]
    for height in (sum(current) + 3 * step, sum(current) - 40 * step, sum(current) + 1_234 * step):
        swap = fewest_swaps(current, sizes, [height], 6)
        handled = len(swap.remove) + len(swap.add) if swap else None
        assert handled == _fewest_handled_by_solver(sizes, current, height, 6)


def _fewest_handled_by_solver(
    sizes: Sequence[int], current: Sequence[int], height: int, most: int
) -> int | None:
    """Fewest blocks taken out and put in, by a constraint solver."""
    step = math.gcd(*sizes)
    model = cp_model.CpModel()
    used = [model.new_bool_var(f"u{i}") for i in range(len(sizes))]
    stays = Counter(current)
    terms: list[Any] = []
    for size, variable in zip(sizes, used, strict=True):
        was_in = stays[size] > 0
        stays[size] -= was_in
        terms.append(1 - variable if was_in else variable)
    model.add(sum(size // step * v for size, v in zip(sizes, used, strict=True)) == height // step)
    model.add(sum(used) <= most)
    model.minimize(sum(terms))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    status = solver.solve(model)
    return round(solver.objective_value) if status == cp_model.OPTIMAL else None


@pytest.mark.parametrize(
    ("change", "kind", "says"),
    [
        ({"measured_error_arcsec": None}, Disagreement, "all missing"),
        ({"measured_angle": 30.1}, Disagreement, "sent together"),
        ({"measured_error_arcsec": -200_000}, Impossible, "measured angle"),
        ({"blocks": [2.5]}, Disagreement, "the set has none"),
        ({"blocks": [2.0, 2.0]}, Disagreement, "no more of that size"),
        ({"low_stack": 3.0}, Impossible, "more than 0"),
        ({"max_blocks": 1}, Unreachable, "No stack of up to 1"),
    ],
)
def test_correction_refusals(
    call: Call, change: dict[str, Any], kind: type[Refusal], says: str
) -> None:
    """A correction with no error, two errors, or blocks that are not there is refused."""
    request = {"angle": 30, "measured_error_arcsec": 10, "blocks": [2.0, 0.5]} | PLATE | change
    with pytest.raises(kind, match=says):
        call("sine.correction", **request)


def test_a_large_error_points_to_a_wrong_block(call: Call) -> None:
    """An error of minutes is called a wrong block's before anything is swapped."""
    answer = call("sine.correction", angle=30, measured_error_arcsec=128, **PLATE)
    assert answer["result"]["swap"] is None
    assert "look-for-a-wrong-block" in [a["code"] for a in answer["advisories"]]


def test_work_is_bounded(call: Call) -> None:
    """Sizes with no common step are refused by the bound on the work, not worked at for minutes."""
    sizes = [1 + i * 0.0123457 + i * i * 1e-7 for i in range(60)]
    with pytest.raises(BeyondBound, match="Round the sizes"):
        call("sine.low-stack", units="mm", center_distance=100, angle=1, sizes=sizes)


def test_a_hopeless_search_ends(call: Call) -> None:
    """A search that its conditions make hopeless ends at its bound on the work, and says so."""
    sizes = [1 + i * 0.0005 for i in range(500)]
    with pytest.raises(BeyondBound, match="bound on the work"):
        call(
            "sine.low-stack", units="mm", center_distance=100, angle=1, sizes=sizes, max_blocks=8,
            low_stack_use="always", smallest_low_stack=8,
        )  # fmt: skip


def test_a_low_stack_that_cannot_be_built(call: Call) -> None:
    """A least low stack above all that the blocks build is refused at once."""
    with pytest.raises(Unreachable, match="No pair of stacks"):
        call("sine.low-stack", angle=1, low_stack_use="always", smallest_low_stack=50, **PLATE)
