"""What must hold of the order of ways: no way that is as good in everything ranks lower."""

import copy
from itertools import pairwise, permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from halfangle_service.registry import load_registry
from halfangle_service.topics.jobs.plan.ranking import (
    KnownAngle,
    Rank,
    Standing,
    rank_of,
    standing_by,
)
from halfangle_service.topics.jobs.plan.ways.way import Way
from halfangle_service.trade.planning.times import SetupWork
from halfangle_service.trade.uncertainty import Budget, Contribution, Forecast, forecast_of
from support import Call

ORDER: tuple[Forecast, ...] = ("holds", "may-not-hold", "not-stated", "does-not-hold")
TOLERANCE = 60.0


@st.composite
def stands(draw: st.DrawFn) -> tuple[Forecast, Standing, float]:
    """A way's forecast, how it stands and its minutes, by a budget drawn."""
    offset = draw(st.sampled_from([0.0, 5.0, 20.0, 37.0, 58.0, 90.0]))
    limit = draw(st.sampled_from([0.0, 3.0, 10.0, 25.0, 70.0]))
    lacks = draw(st.booleans())
    budget = Budget((Contribution("stack", limit),), offset, ("pitch",) if lacks else ())
    forecast = forecast_of(budget, -TOLERANCE, TOLERANCE)
    known = KnownAngle(TOLERANCE, offset, 0.95 * limit, lacks=lacks)
    finest = draw(st.sampled_from([None, 4.0]))
    return forecast, standing_by([known], finest), draw(st.sampled_from([20.0, 30.0, 31.0, 300.0]))


def place(stood: tuple[Forecast, Standing, float], blocks: int) -> Rank:
    """The rank of a way that stands so."""
    forecast, standing, minutes = stood
    way = Way("sine-plate", ("plate",), (), (), (), 0.0, 0.0, work=SetupWork(blocks=blocks))
    return rank_of(way, forecast, standing, minutes)


def no_worse(
    one: tuple[Forecast, Standing, float], other: tuple[Forecast, Standing, float]
) -> bool:
    """True where the first is as good as the other in every count by which ways are ranked."""
    (forecast, standing, minutes), (others, its, its_minutes) = one, other
    return (
        ORDER.index(forecast) <= ORDER.index(others)
        and standing.lacks <= its.lacks
        and standing.doubt <= its.doubt
        and (standing.room is not None) >= (its.room is not None)
        and minutes <= its_minutes
    )


@given(one=stands(), other=stands(), blocks=st.integers(1, 4), more=st.integers(0, 2))
def test_what_is_no_worse_in_anything_ranks_no_lower(
    one: tuple[Forecast, Standing, float],
    other: tuple[Forecast, Standing, float],
    blocks: int,
    more: int,
) -> None:
    """Forecast, what was stated, doubt, room, time, blocks: as good in all is first, or alike."""
    if no_worse(one, other):
        assert place(one, blocks) <= place(other, blocks + more)


@given(ways=st.lists(stands(), min_size=3, max_size=3))
def test_the_order_is_one(ways: list[tuple[Forecast, Standing, float]]) -> None:
    """Whichever order ways come in, they are ranked the same: no three go round in a circle."""
    found = {tuple(sorted(place(way, 1) for way in each)) for each in permutations(ways)}
    assert len(found) == 1


@pytest.mark.parametrize("seed", range(12))
def test_no_way_of_a_plan_is_better_in_all_than_the_one_before(call: Call, seed: int) -> None:
    """Of random plans no way that holds has more room and less time than one ranked before it."""
    dice = np.random.default_rng(seed)
    request = copy.deepcopy(dict(load_registry().operations["jobs.plan"].example))
    shop = request["equipment"]
    shop.pop("spin_fixture")
    plate = shop["sine_plates"][0]
    plate.pop("plate_body")
    plate["squareness_error_limit_arcsec"] = float(dice.uniform(2, 30))
    plate["setup_minutes"] = float(dice.uniform(10, 60))
    other = {**plate, "name": "10 in plate", "center_distance": 10, "setup_minutes": 45}
    shop["sine_plates"] = [plate, other]
    shop["wheel_sides"] = [
        {
            "name": "cup wheel",
            "rated_for_side": True,
            "usable_width": 2,
            "swivel_error_limit_arcsec": float(dice.uniform(2, 40)),
            "side_error_limit_arcsec": 5,
            "axis_yaw_error_limit_arcsec": 60,
            "side_wear": 0,
        }
    ]
    request["feature"] = {
        "kind": "cone",
        "included_angle": round(float(dice.uniform(1.5, 118)), 2),
        "large_diameter": 0.75,
        "small_diameter": 0.7,
        "included_angle_tolerance_arcsec": float(dice.uniform(60, 600)),
    }
    rows = call("jobs.plan", **request)["result"]["ways"]
    assert len({row["in_words"] for row in rows}) == len(rows)
    for before, after in pairwise(rows):
        assert ORDER.index(before["forecast"]) <= ORDER.index(after["forecast"])
        if before["forecast"] == after["forecast"] == "holds":
            rooms = [row["room_to_prove_arcsec"] for row in (before, after)]
            better = rooms[1] is not None and (rooms[0] is None or rooms[1] > rooms[0])
            assert not (better and after["total_minutes"] < before["total_minutes"])
