"""A batch on a wheel that breaks down, against dice and a piece by piece account."""

import math

import numpy as np
import pytest
from scipy import stats

from halfangle_service.trade.planning.batch import (
    Growth,
    Sense,
    judged_at,
    largest_growth,
    observed_growth,
    pieces_per_dress,
    to_inspect,
)
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule

RULE: DecisionRule = "iso-14253-1-2017"
SET_UP = Budget((Contribution("stack", 18.0), Contribution("pitch", 25.0)), offset=4.0)


def share_within(
    budget: Budget, growth: Growth, piece: int, tolerance: float, sign: float
) -> float:
    """Share of simulated pieces within ± a tolerance: errors drawn, the worn generator fitted."""
    dice = np.random.default_rng(20)
    errors = np.full(400_000, budget.offset)
    for part in budget.contributions:
        errors += dice.uniform(-1.0, 1.0, errors.size) * part.at_limit
    along = np.linspace(0.0, 1.0, 11)
    tilt = np.polyfit(along, along * piece * growth.slope, 1)[0]
    errors += sign * 2.0 * math.degrees(math.atan(tilt)) * 3600.0
    return float(np.mean(np.abs(errors) <= tolerance))


@pytest.mark.parametrize("tolerance", [60.0, 75.0, 110.0])
@pytest.mark.parametrize("sense", ["blunter", "sharper", None])
def test_last_piece_before_a_dress_keeps_the_tolerance_and_the_next_does_not(
    tolerance: float, sense: Sense | None
) -> None:
    """By dice, 95 of 100 of the last pieces keep it, of the next fewer: the worse way counts."""
    growth = Growth.of_breakdown(0.000003, 0.75, sense)
    most = pieces_per_dress(SET_UP, growth, 1000, tolerance, RULE)
    assert most is not None
    assert 1 <= most < 1000
    signs = {"blunter": (1.0,), "sharper": (-1.0,), None: (1.0, -1.0)}[sense]
    last = min(share_within(SET_UP, growth, most, tolerance, sign) for sign in signs)
    beyond = min(share_within(SET_UP, growth, most + 1, tolerance, sign) for sign in signs)
    assert last >= 0.95 - 0.001
    assert beyond < 0.95 + 0.001
    assert last > beyond


def test_growth_is_exact_where_a_slope_is_not() -> None:
    """Of a wheel worn by half of a slant the generator turns by atan ½, not by ½."""
    growth = Growth.of_breakdown(0.005, 1.0)
    assert growth.error_arcsec(100) == pytest.approx(2.0 * math.degrees(math.atan(0.5)) * 3600.0)
    assert Growth.of_angle(70.0).error_arcsec(1) == pytest.approx(70.0, rel=1e-12)


@pytest.mark.parametrize("rule", ["iso-14253-1-2017", "iso-14253-1-2013"])
@pytest.mark.parametrize("per_piece", [0.1, 0.9, 3.0, 40.0])
@pytest.mark.parametrize("offset", [-30.0, 0.0, 12.0])
def test_halving_finds_what_going_piece_by_piece_finds(
    rule: DecisionRule, per_piece: float, offset: float
) -> None:
    """The most pieces on one dress are those before the first that does not keep the tolerance."""
    budget = Budget((Contribution("stack", 20.0), Contribution("yaw", 3.0)), offset=offset)
    for sense in ("blunter", None):
        growth = Growth.of_angle(per_piece, sense)
        kept = 0
        while kept < 400 and judged_at(budget, growth, kept + 1, 60.0, rule) == "conforming":
            kept += 1
        assert pieces_per_dress(budget, growth, 400, 60.0, rule) == kept


def test_known_lean_makes_room_for_a_wheel_that_leans_the_other_way() -> None:
    """Offset and growth of unlike signs cancel: by hand, 40″ sharp and 2″ blunter a piece."""
    budget = Budget((Contribution("stack", 1e-6),), offset=-40.0)
    # Within ±61″ from −40 + 2 k until 2 k = 101, from −40 − 2 k until 2 k = 21.
    assert pieces_per_dress(budget, Growth.of_angle(2.0, "blunter"), 99, 61.0, RULE) == 50
    assert pieces_per_dress(budget, Growth.of_angle(2.0, "sharper"), 99, 61.0, RULE) == 10


def test_no_breakdown_needs_no_dress_and_no_budget_says_nothing() -> None:
    """A wheel that keeps its form grinds all; of an unknown set-up nothing is said; a bad one 0."""
    assert pieces_per_dress(SET_UP, Growth.of_breakdown(0.0, 1.0), 500, 60.0, RULE) == 500
    assert pieces_per_dress(Budget(()), Growth.of_angle(2.0), 500, 60.0, RULE) is None
    assert pieces_per_dress(SET_UP, Growth.of_angle(2.0), 500, 10.0, RULE) == 0


def test_pieces_to_measure_are_those_about_each_dress() -> None:
    """First, last before each dress, first after it, last of all: as a list made by walking."""
    for pieces in range(1, 70):
        for per_dress in range(1, pieces + 1):
            wanted, dressings = {1, pieces}, 0
            for piece in range(2, pieces + 1):
                if (piece - 1) % per_dress == 0:
                    wanted |= {piece - 1, piece}
                    dressings += 1
            found = to_inspect(pieces, per_dress)
            assert (found.count, found.dressings) == (len(wanted), dressings)
            assert list(found.listed) == sorted(wanted)[:24]


def test_observed_growth_is_the_line_of_least_squares() -> None:
    """Slope and its doubt are a general library's, the doubt counts in a budget as Student's."""
    errors = [(1, 3.0), (5, 12.5), (9, 18.0), (14, 33.0), (20, 41.5)]
    line = stats.linregress([piece for piece, _ in errors], [error for _, error in errors])
    found = observed_growth(errors)
    assert found is not None
    assert found.error_arcsec(1) == pytest.approx(line.slope)
    assert found.spread_arcsec == pytest.approx(line.stderr)
    assert (found.sense, found.degrees_of_freedom) == ("blunter", 3.0)
    (grown,) = found.added_to(SET_UP, 12)
    own = grown.contributions[-1]
    assert own.in_result == pytest.approx(12 * line.stderr)
    assert own.degrees_of_freedom == 3.0
    sharper = observed_growth([(piece, -error) for piece, error in errors])
    assert sharper is not None
    assert sharper.sense == "sharper"


def test_two_pieces_or_one_place_observed_leave_no_line() -> None:
    """A line through two pieces has no doubt to estimate; pieces of one place have no line."""
    assert observed_growth([(1, 3.0), (9, 20.0)]) is None
    assert observed_growth([(4, 3.0), (4, 4.0), (4, 5.0)]) is None


@pytest.mark.parametrize("sense", ["blunter", "sharper", None])
def test_largest_growth_is_what_the_last_piece_has(sense: Sense | None) -> None:
    """Pieces within the largest growth are those on one dress, to its thousandth."""
    room = largest_growth(SET_UP, sense, 75.0, RULE)
    assert room is not None
    growth = Growth.of_angle(0.01, sense)
    most = pieces_per_dress(SET_UP, growth, 100_000, 75.0, RULE)
    assert growth.pieces_within(room) == pytest.approx(most, abs=0.075 / 0.01 + 1.0)
    assert largest_growth(SET_UP, sense, 10.0, RULE) is None
    assert Growth.of_angle(0.0).pieces_within(room) == math.inf


def test_a_face_turns_once_where_a_cone_turns_twice() -> None:
    """Of one breakdown a face's angle grows by half of what an included angle does."""
    cone, face = (Growth.of_breakdown(1e-5, 0.75, counted=c) for c in (2.0, 1.0))
    assert cone.error_arcsec(7) == pytest.approx(2.0 * face.error_arcsec(7), rel=1e-12)
    assert face.error_arcsec(7) == pytest.approx(math.degrees(math.atan(7e-5 / 0.75)) * 3600.0)
