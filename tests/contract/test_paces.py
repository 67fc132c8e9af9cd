"""How often a caller may ask: the pace by itself, and in a service."""

import time
from pathlib import Path

import pytest

from halfangle_service.http.guards import rates
from halfangle_service.http.guards.key_file import entry_for
from halfangle_service.http.guards.rates import Allowance, Paces
from http_support import SINE_QUERY, assert_problem
from keys_support import KEY, OTHER, ROW, small_service, status, written


@pytest.fixture
def file(tmp_path: Path) -> Path:
    """A file with the key of one caller."""
    return written(tmp_path / "keys.toml", entry_for("erp", KEY))


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


# In a service ---------------------------------------------------------------------------------
def test_past_its_pace_a_key_is_told_when_to_come_again(file: Path) -> None:
    """429 with Retry-After and the pace as facts; another key, and what is open, are answered."""
    written(file, entry_for("erp", KEY), "rate_per_minute = 2\nrate_burst = 2\n",
            entry_for("mes", OTHER))  # fmt: skip
    with small_service(keys_file=file, rate_per_minute=0.5, rate_burst=1) as service:
        assert [status(service, KEY) for _ in range(2)] == [200, 200]
        refused = service.get(SINE_QUERY, headers={"X-API-Key": KEY})
        problem = assert_problem(refused, "too-many-requests")
        assert 25 <= int(refused.headers["retry-after"]) <= 30
        assert (problem["per_minute"], problem["burst"]) == (2, 2)
        assert [status(service, OTHER) for _ in range(2)] == [200, 429]
        text = service.get("/metrics").text
        assert 'halfangle_key_requests_total{key="erp"} 2.0' in text
        assert 'halfangle_key_limited_total{key="erp"} 1.0' in text
        assert 'halfangle_refusals_total{type="too-many-requests"} 2.0' in text


def test_rows_of_a_batch_count_as_requests(file: Path) -> None:
    """A batch goes on at its caller's pace, refuses no row for it, and spends what others would."""
    written(file, entry_for("erp", KEY), "rate_per_minute = 600\nrate_burst = 10\n")
    rows = [{"ref": number, **ROW} for number in range(15)]
    with small_service(keys_file=file) as service:
        began = time.monotonic()
        answer = service.post("/v1/batches", json={"rows": rows}, headers={"X-API-Key": KEY})
        took = time.monotonic() - began
        assert answer.json()["counts"]["ok"] == 15
        # One turn for the request and 15 for the rows, of which 9 were there: 7 at 0.1 s each.
        assert took >= 0.65
        text = service.get("/metrics").text
    assert 'halfangle_key_rows_total{key="erp"} 15.0' in text
    assert 'halfangle_batch_rows_total{status="ok"} 15.0' in text


@pytest.mark.parametrize(("points", "turns"), [(2, 1), (100, 1), (101, 2), (10_000, 100)])
def test_a_curve_counts_by_its_points(file: Path, points: int, turns: int) -> None:
    """It is answered by the turn that it came with; the others are owed by whoever comes next."""
    written(file, entry_for("erp", KEY), "rate_per_minute = 60\nrate_burst = 1\n")
    curve = {
        "request": {"units": "in", "center_distance": 5},
        "over": {"angle": {"from": 1, "to": 60, "count": points}},
        "columns": ["height"],
    }
    headers = {"X-API-Key": KEY}
    with small_service(keys_file=file) as service:
        assert service.post("/v1/curves/sine.setting", json=curve, headers=headers).is_success
        refused = service.get(SINE_QUERY, headers=headers)
        assert_problem(refused, "too-many-requests")
        assert turns - 3 <= int(refused.headers["retry-after"]) <= turns
