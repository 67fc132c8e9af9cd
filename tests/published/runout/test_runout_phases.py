"""Lengths of sums of vectors of unknown direction, against what is published of random walks."""

import math

import numpy as np
import pytest
from scipy import integrate

from halfangle_service.trade.runout.phases import not_passed, share_within
from support import Call


@pytest.mark.outside("runout.budget", source="Kluyver 1906, from memory: 1/(n+1) within one step")
@pytest.mark.parametrize("steps", [2, 3, 4, 5, 6, 9, 14, 20])
def test_a_walk_of_equal_steps_ends_within_one(call: Call, steps: int) -> None:
    """Of walks of n equal steps in directions of nothing known, one in n + 1 ends within a step."""
    chain = [{"name": f"part {place}", "tir": 0.0002} for place in range(steps)]
    result = call("runout.budget", units="in", limit_tir=0.0002, contributors=chain)["result"]
    assert result["share_within_limit_percent"] == pytest.approx(100 / (steps + 1), abs=1e-5)


@pytest.mark.parametrize(
    "lengths",
    [(1, 1, 1), (2, 1, 1), (1, 0.5, 0.1), (3, 4, 1e-3), (1, 1e-4, 1e-4), (1, 0.999, 0.5)],
)
def test_three_vectors_against_an_adaptive_integral(lengths: tuple[float, ...]) -> None:
    """Of three, the share is that of two over every angle of the third, to the last digits."""
    one, other, third = lengths

    def two(distance: float) -> float:
        cosine = (one**2 + other**2 - distance**2) / (2 * one * other)
        return math.acos(min(max(cosine, -1.0), 1.0)) / math.pi

    def reaching(turn: float, distance: float) -> float:
        # Along a ray that leaves the end of the third, which the circle of this radius ends.
        square = distance**2 - (third * math.sin(turn)) ** 2
        return max(0.0, math.sqrt(max(0.0, square)) - third * math.cos(turn))

    for share in (0.05, 0.5, 0.95, 0.99):
        distance = float(not_passed(lengths, [share])[0])
        if distance < third:
            continue
        kinks = [
            math.acos(cosine)
            for end in (abs(one - other), one + other)
            if end and abs(cosine := (distance**2 - end**2 - third**2) / (2 * end * third)) < 1
        ]
        found, _ = integrate.quad(
            lambda turn, ended=distance: two(reaching(turn, ended)),
            0.0,
            math.pi,
            points=kinks or None,
            limit=500,
            epsabs=1e-12,
        )
        assert found / math.pi == pytest.approx(share, abs=2e-9)


@pytest.mark.parametrize(
    "lengths",
    [
        (4, 3, 2, 1),
        (1, 0.5, 0.1, 0.01),
        (1, 1, 1e-3, 1e-3),
        (1, 1e-5, 1e-5, 1e-5),
        (1, 1, *[0.01] * 8),
    ],
)
def test_more_vectors_against_drawn_ones(lengths: tuple[float, ...]) -> None:
    """However unlike the lengths: shares are those of 400,000 sums drawn (JCGM 101:2008)."""
    generator = np.random.default_rng(20261126)
    phases = generator.uniform(0.0, 2.0 * math.pi, (len(lengths), 400_000))
    along = sum(a * np.cos(p) for a, p in zip(lengths, phases, strict=True))
    across = sum(a * np.sin(p) for a, p in zip(lengths, phases, strict=True))
    drawn = np.hypot(along, across)
    for share in (0.05, 0.5, 0.95, 0.99):
        distance = float(np.quantile(drawn, share))
        assert share_within(lengths, distance) == pytest.approx(share, abs=2.5e-3)


def test_one_vector_is_never_less() -> None:
    """A vector alone, or beside others of no length, is as long as it is, in every assembly."""
    for lengths in ((0.3,), (0.3, 0.0, 0.0), (0.0, 0.3)):
        assert not_passed(lengths, [0.05, 0.99]).tolist() == [0.3, 0.3]
        assert (share_within(lengths, 0.3), share_within(lengths, 0.2999)) == (1.0, 0.0)
    assert not_passed((0.0, 0.0), [0.5]).tolist() == [0.0]
