"""What must hold of every feed, batch and time of a plan."""

import math
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from halfangle_service.registry import load_registry
from halfangle_service.trade.planning.batch import (
    Growth,
    pieces_per_dress,
    to_inspect,
)
from halfangle_service.trade.planning.feed import (
    MOTIONS,
    FedSurface,
    Wheel,
    phases,
    travel_of,
    usual,
)
from halfangle_service.trade.planning.times import JobTime, grinding_time
from halfangle_service.trade.tapers.feed import Measure, amount_of, normal_of
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.units import Units
from support import Call

angles = st.floats(0.001, 1.55)
layers = st.floats(1e-6, 1.0)


@given(normal=layers, measure=st.sampled_from(get_args(Measure)), half=angles)
def test_layer_comes_back_from_every_measure(normal: float, measure: Measure, half: float) -> None:
    """A layer written in any measure is the same layer when it is read again."""
    there = amount_of(normal, measure, half)
    assert normal_of(there, measure, half) == pytest.approx(normal, rel=1e-12)


@given(
    steps=st.integers(1, 400),
    half=angles,
    way=st.sampled_from(sorted(MOTIONS)),
    units=st.sampled_from(["in", "mm"]),
)
def test_phases_take_off_the_allowance_and_no_more(
    steps: int, half: float, way: str, units: Units
) -> None:
    """Stock of all phases, and feeds of all passes, sum up to the allowance of so many steps."""
    allowance = steps / (10_000 if units == "in" else 1_000)
    surface = FedSurface(half, 1.0, 1.0)
    habits = usual(units)
    found = phases(surface, MOTIONS[way], habits, allowance, Wheel(7.0, 0.5), units)
    assert math.fsum(phase.stock for phase in found) == pytest.approx(allowance, rel=1e-9)
    fed = math.fsum((p.passes - 1) * p.downfeed + p.last_downfeed for p in found[:-1])
    assert fed == pytest.approx(allowance, rel=1e-9)
    assert all(0.0 < p.last_downfeed <= p.downfeed * (1.0 + 1e-9) for p in found[:-1])
    travel = travel_of(surface, MOTIONS[way], habits, Wheel(7.0, 0.5))
    assert travel is not None
    assert travel >= 0.0


@settings(deadline=None)
@given(
    per_piece=st.floats(0.05, 50.0),
    tolerance=st.floats(20.0, 300.0),
    offset=st.floats(-15.0, 15.0),
)
def test_wider_tolerance_and_harder_wheel_never_ask_for_more_dresses(
    per_piece: float, tolerance: float, offset: float
) -> None:
    """Pieces on one dress never get fewer with a wider tolerance or a wheel that breaks down less.

    Where the side that it leans to is not known, no piece is won by that.
    """
    budget = Budget((Contribution("stack", 12.0), Contribution("pitch", 9.0)), offset=offset)

    def most(growth: Growth, limit: float) -> int:
        found = pieces_per_dress(budget, growth, 1000, limit, "iso-14253-1-2017")
        assert found is not None
        return found

    growth = Growth.of_angle(per_piece)
    assert most(growth, tolerance * 1.3) >= most(growth, tolerance)
    assert most(Growth.of_angle(per_piece / 1.7), tolerance) >= most(growth, tolerance)
    assert most(Growth.of_angle(per_piece, "blunter"), tolerance) >= most(growth, tolerance)


@given(pieces=st.integers(1, 1_000_000), per_dress=st.integers(1, 1_000_000))
def test_pieces_to_measure_begin_at_the_first_and_stay_within_the_batch(
    pieces: int, per_dress: int
) -> None:
    """The list begins at 1, rises, ends within the batch, and is no longer than its count."""
    found = to_inspect(pieces, per_dress)
    assert found.listed[0] == 1
    assert found.listed[-1] <= pieces
    assert list(found.listed) == sorted(set(found.listed))
    assert len(found.listed) == min(24, found.count)
    assert found.dressings == math.ceil(pieces / per_dress) - 1


def test_one_piece_takes_what_choosing_a_way_says(call: Call) -> None:
    """Set-up, grinding and one inspection are the time that `wheels.choose` gives each way."""
    example = {**load_registry().operations["wheels.choose"].example, "pieces": 1}
    for way in call("wheels.choose", **example)["result"]["ways"]:
        assert way["total_minutes"] == way["first_piece_minutes"]
    (plate,) = (
        way
        for way in call("wheels.choose", **example)["result"]["ways"]
        if way["way"] == "sine-plate"
    )
    # By the usual times: 30 minutes to set up, 5 to inspect, 10 to grind.
    taken = JobTime(30.0, 0.0, 10.0, 5.0, 3.0, pieces=1, inspected=1, dressings=0)
    assert taken.total == taken.first_piece == plate["total_minutes"]
    # By hand, of 10 pieces with 2 dresses and 6 inspections.
    many = JobTime(30.0, 1.0, 10.0, 5.0, 3.0, pieces=10, inspected=6, dressings=2)
    assert many.total == 30.0 + 10 * 11.0 + 6 * 5.0 + 2 * 3.0


def test_time_of_a_piece_is_unknown_where_a_phase_is() -> None:
    """Phases add up; one whose time is unknown leaves the whole unknown, as none does."""
    assert grinding_time([60.0, 30.0]) == 90.0
    assert grinding_time([60.0, None]) is None
    assert grinding_time([]) is None
