"""One call for many rows: an outcome a row, in their order, whatever comes."""

import asyncio
import os
import signal
import threading
import time
from collections.abc import Mapping
from typing import Any

import pytest

from client_support import Act, FaultServer, interruptible, refusal
from halfangle_client import AsyncHalfangle, Halfangle, Interrupted, Outcomes, errors, models

both = pytest.mark.parametrize("kind", ["sync", "async"])
ROWS: list[dict[str, Any]] = [
    {"units": "mm", "center_distance": 100 + n, "angle": 30} for n in range(1000)
]


def outcomes_of(kind: str, url: str, call: str, rows: Any, **options: Any) -> Outcomes[Any]:
    """What the rows give by a sync or an async client."""
    if kind == "sync":
        with Halfangle(url) as client:
            return client.map(call, rows, **options)

    async def run() -> Outcomes[Any]:
        async with AsyncHalfangle(url) as client:
            return await client.map(call, rows, **options)

    return asyncio.run(run())


@both
def test_a_thousand_rows_of_a_real_service(live: Halfangle, kind: str) -> None:
    """Each row has its own answer at its own place, and progress counts up to the last."""
    seen: list[tuple[int, int]] = []
    outcomes = outcomes_of(
        kind,
        live._manners.base_url,
        "sine.setting",
        iter(ROWS),
        progress=lambda done, total: seen.append((done, total)),
    )
    heights = [answer.result.height for answer in outcomes.answers]
    assert heights == pytest.approx([(100 + n) / 2 for n in range(1000)], rel=1e-15)
    assert outcomes.errors == {}
    assert seen == [(n, 1000) for n in range(1, 1001)]


def test_a_thousand_calls_gathered_of_a_real_service(live: Halfangle) -> None:
    """A thousand calls gathered are a thousand answers, by one client of a real service."""

    async def run() -> list[models.SineSettingAnswer]:
        async with AsyncHalfangle(live._manners.base_url) as client:
            return await asyncio.gather(*(client.sine.setting(**row) for row in ROWS))

    heights = [answer.result.height for answer in asyncio.run(run())]
    assert heights == pytest.approx([(100 + n) / 2 for n in range(1000)], rel=1e-15)


@both
def test_a_bad_row_spoils_no_other(live: Halfangle, kind: str) -> None:
    """A row that is refused, that cannot be sent, or that is none, is an error of its own kind."""
    rows: list[Any] = [
        ROWS[0],
        {**ROWS[1], "angel": 1},
        {"units": "mm", "center_distance": 5, "height": 7},
        {**ROWS[2], "angle": object()},
        None,
        ROWS[3],
    ]
    outcomes = outcomes_of(kind, live._manners.base_url, "sine.setting", rows)
    assert [type(outcome) for outcome in outcomes] == [
        models.SineSettingAnswer,
        errors.InvalidRequest,
        errors.InvalidRequest,
        errors.Unsendable,
        errors.Unsendable,
        models.SineSettingAnswer,
    ]
    assert sorted(outcomes.errors) == [1, 2, 3, 4]
    refused = outcomes.errors[1]
    assert isinstance(refused, errors.InvalidRequest)
    assert [field.pointer for field in refused.fields] == ["/angel"]
    assert repr(outcomes) == "<6 rows: 2 answers, 4 errors>"


@both
def test_a_fault_of_one_row_is_its_own(faults: FaultServer, kind: str) -> None:
    """A row that gets no answer in its time, or a failure, says so; others are answered."""
    faults.acts = [refusal(500), Act(wait_seconds=2.0), Act()]
    if kind == "sync":
        with Halfangle(faults.url, calls_at_once=1) as client:
            outcomes = client.map(client.blocks.list_sets, [{}] * 3, timeout_seconds=0.5)
    else:

        async def run() -> Outcomes[models.BlockSetListAnswer]:
            async with AsyncHalfangle(faults.url, calls_at_once=1) as client:
                return await client.map(client.blocks.list_sets, [{}] * 3, timeout_seconds=0.5)

        outcomes = asyncio.run(run())
    kinds = [type(outcome) for outcome in outcomes[:2]]
    assert kinds == [errors.ServiceFailed, errors.TimedOut]
    assert len(outcomes.answers) == 1


@both
def test_what_is_no_call_is_refused_at_once(kind: str) -> None:
    """A name that this release does not know makes no call."""
    with pytest.raises(KeyError, match=r"sine\.cosine: no call of the service"):
        outcomes_of(kind, "http://127.0.0.1:9", "sine.cosine", ROWS)


@both
def test_no_rows_are_no_calls(kind: str) -> None:
    """Of nothing comes nothing."""
    assert list(outcomes_of(kind, "http://127.0.0.1:9", "sine.setting", [])) == []


@both
def test_a_mistake_of_the_program_is_raised(kind: str) -> None:
    """What is wrong with all rows alike, a time of nothing, is no row's error."""
    with pytest.raises(ValueError, match="timeout_seconds: should be"):
        outcomes_of(kind, "http://127.0.0.1:9", "sine.setting", ROWS[:3], timeout_seconds=0)


def test_ctrl_c_leaves_what_is_done(faults: FaultServer) -> None:
    """Ctrl-C ends the work at once, as a KeyboardInterrupt that holds the answers until then."""
    faults.acts = [Act()] * 3 + [Act(wait_seconds=5.0)] * 20

    def interrupt(done: int, total: int) -> None:
        if done == 3:
            threading.Timer(0.2, os.kill, (os.getpid(), signal.SIGINT)).start()

    start = time.monotonic()
    with interruptible(), Halfangle(faults.url, calls_at_once=1) as client:
        with pytest.raises(KeyboardInterrupt, match="3 answers, 17 errors") as stopped:
            client.map(client.blocks.list_sets, [{}] * 20, progress=interrupt)
        assert time.monotonic() - start < 4
    assert isinstance(stopped.value, Interrupted)
    outcomes = stopped.value.outcomes
    assert len(outcomes.answers) == 3
    assert {type(error) for error in outcomes.errors.values()} == {errors.NotCalled}


def test_cancelling_leaves_what_is_done(faults: FaultServer) -> None:
    """A time limit around all rows cancels the rest, and is a TimeoutError as of any task."""
    faults.acts = [Act()] * 3 + [Act(wait_seconds=5.0)] * 20
    done: Outcomes[models.BlockSetListAnswer] = Outcomes()

    async def run() -> None:
        async with AsyncHalfangle(faults.url, calls_at_once=1) as client:
            async with asyncio.timeout(1.0):
                await client.map(client.blocks.list_sets, [{}] * 20, into=done)

    start = time.monotonic()
    with pytest.raises(TimeoutError, match=r"^$"):
        asyncio.run(run())
    assert time.monotonic() - start < 4
    assert (len(done), len(done.answers)) == (20, 3)
    assert {type(error) for error in done.errors.values()} == {errors.NotCalled}


def test_progress_that_fails_ends_the_work(live: Halfangle) -> None:
    """An error of the caller's own progress is raised, and what was done is kept."""
    done: Outcomes[models.SineSettingAnswer] = Outcomes()

    def fail(count: int, total: int) -> None:
        if count == 5:
            raise RuntimeError("no room on the screen")

    with pytest.raises(RuntimeError, match="no room"):
        live.map(live.sine.setting, ROWS, progress=fail, into=done)
    assert 5 <= len(done.answers) < 1000


def test_rows_are_taken_from_any_table(live: Halfangle) -> None:
    """A row is any mapping, and NumPy's numbers in it are numbers."""
    np = pytest.importorskip("numpy")

    class Line(Mapping[str, Any]):
        def __getitem__(self, key: str) -> Any:
            return ROWS[0][key] if key != "angle" else np.float64(30)

        def __iter__(self) -> Any:
            return iter(ROWS[0])

        def __len__(self) -> int:
            return len(ROWS[0])

    assert live.map(live.sine.setting, [Line()]).answers[0].result.height == pytest.approx(50)
