"""Round trips and invariants of the runout and centers topics' maths."""

import cmath
import math

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from halfangle_service.fields.runout import tir_estimate
from halfangle_service.trade.centers import adapter, contact, effect, hole
from halfangle_service.trade.runout import budget, convert, crest, harmonics, vblock, vectors
from halfangle_service.trade.runout.phases import not_passed, share_within
from halfangle_service.trade.tables.runout.terms import terms

small = st.floats(1e-5, 0.05)
turns = st.floats(0, 2 * math.pi)
eccentricities = st.builds(cmath.rect, small, turns)
half_angles = st.floats(math.radians(3), math.radians(60))
few = settings(max_examples=60, deadline=None)


@few
@given(st.lists(eccentricities, min_size=1, max_size=4), st.integers(0, 40), turns)
def test_exact_harmonics_are_found_again(parts: list[complex], extra: int, turn: float) -> None:
    """A profile made of harmonics gives those very harmonics back, from wherever it starts."""
    count = 2 * len(parts) + 1 + extra
    angles = turn + np.arange(count) * 2 * math.pi / count
    values = np.zeros(count)
    for order, vector in enumerate(parts, start=1):
        values += abs(vector) * np.cos(order * angles - cmath.phase(vector))
    fit = harmonics.fit_harmonics(angles, values, len(parts))
    assert np.allclose(fit.amplitudes, parts, atol=1e-12)


@few
@given(eccentricities, eccentricities)
def test_reversal_splits_what_was_joined(socket: complex, part: complex) -> None:
    """Socket and part come back from their sum and their difference."""
    assert np.allclose(vectors.split(socket + part, socket - part), (socket, part), atol=1e-15)


@few
@given(eccentricities, eccentricities, st.floats(-5, 5), st.floats(-5, 5), st.floats(-20, 20))
def test_axis_passes_through_its_sections(
    e_1: complex, e_2: complex, z_1: float, z_2: float, station: float
) -> None:
    """The line holds at both sections, and does not mind which comes first."""
    assume(abs(z_1 - z_2) > 0.1)
    assert vectors.along(e_1, z_1, e_2, z_2, z_1) == pytest.approx(e_1)
    there = vectors.along(e_1, z_1, e_2, z_2, station)
    assert vectors.along(e_2, z_2, e_1, z_1, station) == pytest.approx(there, abs=1e-12)


@few
@given(st.lists(small, min_size=1, max_size=12))
def test_budget_figures_stand_in_order(tirs: list[float]) -> None:
    """Best clocking, root of squares and sum come in that order, and the sum is not passed."""
    chain = budget.RunoutBudget(tuple(budget.Contributor("part", tir) for tir in tirs))
    worst, rss = chain.worst_case, chain.root_sum_of_squares
    assert chain.best_case <= rss * (1 + 1e-12)
    assert rss <= worst * (1 + 1e-12)
    assert math.fsum(chain.shares()) == pytest.approx(100)


@few
@given(small, small, st.floats(0.01, 0.99))
def test_two_contributors_meet_the_closed_form(one: float, other: float, share: float) -> None:
    """|a + b exp(iφ)| is not passed in a share p at cos φ = cos π(1 - p)."""
    assume(min(one, other) > 1e-6 * max(one, other))
    closed = one**2 + other**2 + 2 * one * other * math.cos(math.pi * (1 - share))
    assert not_passed((one, other), [share])[0] ** 2 == pytest.approx(closed, rel=1e-9)
    assert share_within((one, other), math.sqrt(closed)) == pytest.approx(share, abs=1e-6)


@few
@given(st.lists(small, min_size=3, max_size=8), st.floats(0.05, 0.99))
def test_a_share_is_not_passed_at_its_length(tirs: list[float], share: float) -> None:
    """What a share of all assemblies does not pass is kept by that share, none but by rounding."""
    assume(sorted(tirs)[-2] > 1e-3 * max(tirs))
    length = float(not_passed(tirs, [share])[0])
    assert 0 < length <= math.fsum(tirs) * (1 + 1e-12)
    assert share_within(tirs, length) == pytest.approx(share, abs=1e-7)


@few
@given(small, small)
def test_one_contributor_is_forecast_by_itself(tir: float, limit: float) -> None:
    """A single contributor holds up to its TIR, the same number included, and never may hold."""
    chain = budget.RunoutBudget((budget.Contributor("part", tir),))
    assert chain.forecast(tir) == "holds"
    assume(abs(tir - limit) > 1e-9)
    assert chain.forecast(limit) == ("holds" if tir < limit else "does-not-hold")


def test_chain_of_nothing_says_nothing() -> None:
    """Without contributors nothing is forecast, and all of the estimate is null."""
    nothing = budget.RunoutBudget((), ("adapter_tir",))
    assert nothing.forecast(1.0) == "not-stated"
    written = tir_estimate(nothing).model_dump()
    assert written.pop("contributions") == []
    assert written.pop("not_stated") == ["high_spots", "adapter_tir"]
    assert set(written.values()) == {None}


@few
@given(small, st.floats(0, 0.05), st.sampled_from(list(terms())), st.sampled_from(list(terms())))
def test_knowing_the_form_never_widens_the_bounds(
    value: float, form: float, given_: str, wanted: str
) -> None:
    """Bounds with the form known lie within those with it unknown."""
    assume(form <= value)
    names = terms()[given_], terms()[wanted]
    known = convert.convert(value, *names, form, every_section_alike=True).bounds
    unknown = convert.convert(value, *names, None, every_section_alike=True).bounds
    assert known.least >= unknown.least * (1 - 1e-12)
    assert unknown.most is None or (known.most is not None)
    assert unknown.most is None or (known.most or 0) <= unknown.most * (1 + 1e-12)


@few
@given(small)
def test_round_section_converts_there_and_back(value: float) -> None:
    """Movement to eccentricity and back is the movement, for a round section."""
    there = convert.eccentricity_from_movement(convert.Bounds(value, value), 0.0)
    back = convert.movement_from_eccentricity(there, 0.0)
    assert (back.least, back.most) == pytest.approx((value, value))


@few
@given(st.floats(math.radians(31), math.radians(169)), st.floats(-1.5, 1.5), st.integers(2, 40))
def test_v_block_hides_eccentricity_and_minds_no_side(v: float, at: float, lobes: int) -> None:
    """One lobe, an eccentricity, is never seen; the indicator left or right sees the same."""
    assert vblock.response(1, v, at) == pytest.approx(0, abs=1e-9)
    assert vblock.response(lobes, v, at) == pytest.approx(vblock.response(lobes, v, -at))


@few
@given(half_angles, st.floats(0.1, 2), st.floats(1.2, 5), st.floats(0, 0.2), st.floats(0.001, 0.05))
def test_off_crest_is_near_its_short_formula(
    half: float, radius: float, ratio: float, tip: float, share: float
) -> None:
    """For a small miss the drop is y²/(2M), and the small end drops more."""
    miss = share * radius
    drop = crest.crest_drop(miss, radius, half, tip)
    assert drop == pytest.approx(miss**2 / (2 * (radius / math.cos(half) + tip)), rel=2 * share**2)
    assert crest.false_half_angle(miss, (radius, radius * ratio), half, tip) > 0


@few
@given(half_angles, st.floats(1, 50), st.floats(0.05, 0.9), st.floats(0.05, 0.95))
def test_ball_gives_the_mouth_back(half: float, mouth: float, ratio: float, where: float) -> None:
    """The mouth from the height over a ball is the mouth that the height came from."""
    pilot = ratio * mouth
    ball = (pilot + where * (mouth - pilot)) / math.cos(half)
    hole.require_on_cone(ball, mouth, pilot, half)
    assert hole.mouth_from_ball(hole.over_ball(mouth, ball, half), ball, half) == pytest.approx(
        mouth
    )


@few
@given(half_angles, half_angles, st.floats(1, 50), st.floats(0.05, 0.9))
def test_center_never_cuts_its_hole(ours: float, theirs: float, mouth: float, ratio: float) -> None:
    """Where a center bears it is no wider than the hole, at the mouth or at the pilot."""
    pilot = ratio * mouth
    found = contact.contact(ours, theirs, mouth, pilot)
    depth = hole.cone_depth(mouth, pilot, theirs)
    at = [2 * (found.point_from_mouth - z) * math.tan(ours) for z in (0.0, depth)]
    assert at[0] <= mouth * (1 + 1e-5)
    assert at[1] <= pilot * (1 + 1e-5) + 1e-4 * mouth


@few
@given(eccentricities, eccentricities, st.floats(1, 500), st.floats(0, 1))
def test_offset_between_centers_is_within_its_worst(
    first: complex, second: complex, length: float, share: float
) -> None:
    """No clocking passes the worst offset, and turning end for end twice changes nothing."""
    at = effect.Ends(first, second, length).at(share * length)
    worst = effect.worst_offset(abs(first), abs(second), length, share * length)
    assert abs(at) <= worst * (1 + 1e-9)
    assert effect.turned_end_for_end(effect.turned_end_for_end(first)) == first


@few
@given(st.floats(0.01, 0.5), st.floats(0.01, 0.5), st.floats(5, 200), st.floats(0, 300))
def test_seat_rocks_least_at_the_circle_that_bears(
    ours: float, theirs: float, engagement: float, out: float
) -> None:
    """Rocking grows with the projection, and is nothing at the circle that bears."""
    found = adapter.seat(ours, theirs, engagement)
    assert adapter.rock_tir(found, found.pivot) == 0
    assert adapter.rock_tir(found, out) <= adapter.rock_tir(found, out + 1)
    assert (found.bearing == "whole-seat") == (found.gap == 0)
