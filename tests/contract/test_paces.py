"""How often a caller may ask: the pace itself, without a service around it."""

import time

import pytest

from halfangle_service.http.guards import rates
from halfangle_service.http.guards.rates import Allowance, Paces


def test_a_pace_is_kept_and_made_up_again() -> None:
    """A burst at once, then one each time that one is due; what is refused costs nothing."""
    paces = Paces()
    taken = [paces.take("a", 60.0, 3, now=100.0) for _ in range(5)]
    assert taken == [0.0, 0.0, 0.0, 1.0, 1.0]
    assert [paces.take("c", 1e-308, 1, now=100.0) for _ in range(2)] == [0.0, 1e7]
    assert paces.take("b", 60.0, 3, now=100.0) == 0.0, "another caller has a pace of his own"
    assert paces.take("a", 60.0, 3, now=101.0) == 0.0
    assert paces.take("a", 60.0, 3, now=101.5) == pytest.approx(0.5)
    assert [paces.take("a", 60.0, 3, now=1e6) for _ in range(4)] == [0.0, 0.0, 0.0, 1.0]


def test_a_clock_that_jumps_moves_no_pace(monkeypatch: pytest.MonkeyPatch) -> None:
    """The wall clock is not asked: set back by a year, it neither opens nor closes anything."""
    allowance = Allowance(Paces(), "a", 60.0, 1)
    monkeypatch.setattr(time, "time", lambda: 0.0)
    assert allowance.wait() == 0.0
    assert 0.5 < allowance.wait() <= 1.0


def test_more_callers_than_places_share_them(monkeypatch: pytest.MonkeyPatch) -> None:
    """Names without end take no memory without end."""
    monkeypatch.setattr(rates, "_PLACES", 32)
    paces = Paces()
    for number in range(50):
        paces.take(f"caller-{number}", 60.0, 10, now=float(number))
    assert paces.take("one more", 60.0, 10, now=1e9) == 0.0
