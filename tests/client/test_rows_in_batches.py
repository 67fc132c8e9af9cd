"""Rows sent many in a request: outcomes as of single calls, whatever becomes of a batch."""

import asyncio
import itertools
import json
import math
import os
import signal
import threading
import time
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any

import pytest

from client_support import Act, Relay, interruptible, refusal
from halfangle_client import (
    AsyncHalfangle,
    Halfangle,
    Interrupted,
    Outcomes,
    Retries,
    errors,
    models,
)
from halfangle_client.rows.work import ROWS_AHEAD

both = pytest.mark.parametrize("kind", ["sync", "async"])
QUICK = Retries(count=2, shortest=0.001)
ROWS: list[dict[str, Any]] = [
    {"units": "mm", "center_distance": 100 + n, "angle": 30} for n in range(300)
]
#: What the service refuses, each for another reason, and what it answers beside.
BAD_ROWS: list[dict[str, Any]] = [
    {**ROWS[0], "angel": 1},
    {**ROWS[0], "angle": 95},
    {**ROWS[0], "center_distance": math.nan},
    {**ROWS[0], "center_distance": 1e300},
    {**ROWS[0], "angle": "8 o'clock \ud7ff é"},
    {"units": "mm"},
    ROWS[1],
    {**ROWS[0], "angle": "x" * 2000},
]


@pytest.fixture
def relay(live: Halfangle) -> Iterator[Relay]:
    """A relay before the live service."""
    with Relay(live._manners.base_url) as server:
        yield server


def mapped(kind: str, urls: Any, rows: Any, call: str = "sine.setting", **options: Any) -> Any:
    """What the rows give by a sync or an async client."""
    if kind == "sync":
        with Halfangle(urls, retries=QUICK, **options) as client:
            return client.map(call, rows)

    async def run() -> Outcomes[Any]:
        async with AsyncHalfangle(urls, retries=QUICK, **options) as client:
            return await client.map(call, rows)

    return asyncio.run(run())


def heights(outcomes: Outcomes[Any]) -> list[float]:
    """The heights of rows that were all answered."""
    assert outcomes.errors == {}
    return [answer.result.height for answer in outcomes.answers]


HEIGHTS = pytest.approx([(100 + n) / 2 for n in range(300)], rel=1e-15)


@both
def test_many_rows_in_few_requests(relay: Relay, kind: str) -> None:
    """Rows go together, each once, and nothing else is asked."""
    assert heights(mapped(kind, relay.url, ROWS)) == HEIGHTS
    assert sorted(itertools.chain(*relay.refs)) == list(range(300))
    assert len(relay.asked) < 15


def said(outcome: Any) -> Any:
    """What an outcome says, whichever way it came."""
    if isinstance(outcome, errors.ProblemError):
        return type(outcome), outcome.problem
    return outcome


@both
def test_an_outcome_is_that_of_its_own_call(live: Halfangle, kind: str) -> None:
    """Answers, refusals and their problem documents are the same as those of single calls."""
    rows = [*BAD_ROWS, *ROWS[:30]]
    outcomes = mapped(kind, live._manners.base_url, rows)
    assert list(map(said, outcomes)) == [said(live.map("sine.setting", [row])[0]) for row in rows]
    assert outcomes.counts.refused == 7


def cut_after_lines(count: int) -> Callable[[Act], Act]:
    """The connection is lost within a line after so many."""
    return lambda act: replace(
        act, cut_after=sum(map(len, act.body.splitlines(keepends=True)[:count])) + 9
    )


def ends_after_lines(count: int) -> Callable[[Act], Act]:
    """The answer ends, as if whole, after so many lines: without the line of counts."""
    return lambda act: replace(act, body=b"".join(act.body.splitlines(keepends=True)[:count]))


def stopped_after_lines(count: int) -> Callable[[Act], Act]:
    """The service stops after so many lines, and says so."""
    problem = {
        "type": "/problems/stopping",
        "title": "Stopping",
        "status": 503,
        "detail": "The service stops.",
        "instance": "/v1/batches",
        "errors": [],
    }
    end = json.dumps({"counts": {"rows": count}, "problem": problem}).encode() + b"\n"
    return lambda act: replace(
        ends_after_lines(count)(act), body=ends_after_lines(count)(act).body + end
    )


BROKEN = [cut_after_lines, ends_after_lines, stopped_after_lines]


@both
@pytest.mark.parametrize("broken", BROKEN)
def test_what_did_not_come_is_sent_again(relay: Relay, kind: str, broken: Any) -> None:
    """Of a batch that is cut off the rows that came stand; the others, and no more, go again."""
    relay.breaks = [broken(5), broken(0), broken(7)]
    assert heights(mapped(kind, relay.url, ROWS[:32], calls_at_once=1)) == HEIGHTS.expected[:32]
    assert relay.refs == [[*range(32)], [*range(5, 32)], [*range(5, 32)], [*range(12, 32)]]


@both
@pytest.mark.parametrize(
    ("broken", "error", "match"),
    [
        (cut_after_lines(0), errors.ConnectionFailed, "no answer"),
        (ends_after_lines(0), errors.ConnectionFailed, "cut off"),
        (stopped_after_lines(0), errors.Overloaded, "The service stops"),
        (lambda _: refusal(503), errors.Overloaded, "made by the test"),
        (lambda _: refusal(429), errors.TooManyRequests, "made by the test"),
        (lambda _: Act(cut=True), errors.ConnectionFailed, "no answer"),
    ],
)
def test_given_up_after_the_last_try(
    relay: Relay, kind: str, broken: Any, error: type[errors.HalfangleError], match: str
) -> None:
    """After the last try each row has the error that its own call would have had."""
    relay.always = broken
    outcomes = mapped(kind, relay.url, ROWS[:20])
    assert relay.refs == [[*range(20)]] * 3
    for outcome in outcomes:
        assert type(outcome) is error
        with pytest.raises(error, match=match):
            raise outcome
        if isinstance(outcome, errors.ProblemError):
            assert outcome.problem.instance in {"/v1/sine/setting", "/v1/blocks/sets"}


@both
@pytest.mark.parametrize("status", [404, 405])
def test_a_service_without_batches(relay: Relay, kind: str, status: int) -> None:
    """A service of an earlier release is called row by row, once it has said that it has none."""
    relay.always = lambda _: refusal(status)
    assert heights(mapped(kind, relay.url, ROWS[:60], calls_at_once=1)) == HEIGHTS.expected[:60]
    assert len(relay.refs) <= 2
    assert len(relay.asked) == 60 + len(relay.refs)


@both
@pytest.mark.parametrize(
    "broken",
    [
        lambda _: refusal(500),
        lambda _: refusal(401),
        lambda _: Act(body=b"<html>Log in first</html>\n" * 50),
        lambda act: replace(act, body=act.body.replace(b'"ref":', b'"ref":1')),
        lambda act: replace(act, body=act.body.replace(b'"height"', b'"heigth"')),
        lambda act: replace(act, body=act.body.splitlines(keepends=True)[-1]),
        lambda act: replace(act, wait_seconds=2.0),
    ],
    ids=["500", "401", "no lines", "other refs", "other answers", "counts alone", "late"],
)
def test_what_a_batch_does_not_tell_the_call_itself_does(
    relay: Relay, kind: str, broken: Any
) -> None:
    """Whatever else comes of a batch, its rows are called each by itself."""
    relay.breaks = [broken]
    assert heights(mapped(kind, relay.url, ROWS[:32], timeout_seconds=1.0)) == HEIGHTS.expected[:32]
    assert len(relay.asked) == 33


@both
def test_an_answer_is_bounded_as_of_its_own_call(relay: Relay, kind: str) -> None:
    """Rows whose answers fit within `largest_answer` by themselves are answered."""
    assert heights(mapped(kind, relay.url, ROWS[:90], largest_answer=3000)) == HEIGHTS.expected[:90]
    outcomes = mapped(kind, relay.url, ROWS[:40], largest_answer=300)
    assert {type(outcome) for outcome in outcomes} == {errors.AnswerTooLarge}


@both
def test_rows_go_to_every_address(live: Halfangle, kind: str) -> None:
    """Of two addresses each gets a share; one that breaks every batch costs no row."""
    url = live._manners.base_url
    with Relay(url) as one, Relay(url) as other:
        assert heights(mapped(kind, [one.url, other.url], ROWS)) == HEIGHTS
        assert one.refs
        assert other.refs
        other.always = cut_after_lines(1)
        assert heights(mapped(kind, [one.url, other.url], ROWS)) == HEIGHTS


@both
def test_an_address_where_nobody_is_costs_no_row(live: Halfangle, kind: str) -> None:
    """Calls and rows go to the address that answers; the other is left alone for a while."""
    urls = ["http://127.0.0.1:9", live._manners.base_url]
    assert heights(mapped(kind, urls, ROWS)) == HEIGHTS
    assert heights(mapped(kind, urls, ROWS[:1])) == HEIGHTS.expected[:1]


def test_some_address_is_needed() -> None:
    """No address at all is a mistake of the program."""
    with pytest.raises(ValueError, match="base_url: should be an address, or several"):
        Halfangle([])


def test_rows_without_end_are_streamed(live: Halfangle) -> None:
    """Outcomes come in order while rows are taken as they are needed, and no further."""
    taken = itertools.count()

    def rows() -> Iterator[dict[str, Any]]:
        for n in taken:
            yield {**ROWS[0], "center_distance": 100 + n % 1000}

    outcomes = live.stream(live.sine.setting, rows())
    first: Any = list(itertools.islice(outcomes, 500))
    assert [answer.result.height for answer in first] == pytest.approx(
        [(100 + n) / 2 for n in range(500)], rel=1e-15
    )
    assert next(taken) <= 500 + ROWS_AHEAD + 1
    outcomes.close()  # type: ignore[attr-defined]
    assert list(outcomes) == []


def test_rows_are_streamed_to_a_task(live: Halfangle) -> None:
    """The same, to be awaited; a bad row is an error in its place."""

    async def run() -> list[Any]:
        async with AsyncHalfangle(live._manners.base_url) as client:
            rows: list[Any] = [*ROWS[:100], {"units": "mm"}, None, *ROWS[100:]]
            return [outcome async for outcome in client.stream(client.sine.setting, rows)]

    outcomes = asyncio.run(run())
    assert [type(outcome) for outcome in outcomes[100:102]] == [
        errors.InvalidRequest,
        errors.Unsendable,
    ]
    found = [one.result.height for one in (*outcomes[:100], *outcomes[102:])]
    assert found == HEIGHTS


def test_rows_that_cannot_be_taken_end_a_stream(live: Halfangle) -> None:
    """An error of the rows themselves is raised; a name that is no call at once."""

    def rows() -> Iterator[dict[str, Any]]:
        yield from ROWS[:100]
        raise OSError("the disk is gone")

    with pytest.raises(OSError, match="the disk is gone"):
        list(live.stream("sine.setting", rows()))
    with pytest.raises(KeyError, match="no call of the service"):
        live.stream("sine.cosine", ROWS)


def test_ctrl_c_leaves_the_batches_that_are_done(relay: Relay) -> None:
    """Ctrl-C while a batch is under way ends the work at once; what had come until then is kept."""
    relay.breaks = [lambda act: act]
    relay.always = lambda act: replace(act, wait_seconds=5.0)

    def interrupt(done: int, total: int) -> None:
        if done == total // 3:
            threading.Timer(0.2, os.kill, (os.getpid(), signal.SIGINT)).start()

    start = time.monotonic()
    with interruptible(), Halfangle(relay.url, calls_at_once=1) as client:
        with pytest.raises(Interrupted, match="32 answers, 64 errors") as stopped:
            client.map(client.sine.setting, ROWS[:96], progress=interrupt)
        assert time.monotonic() - start < 4
    assert {type(error) for error in stopped.value.outcomes.errors.values()} == {errors.NotCalled}


def test_cancelling_leaves_the_batches_that_are_done(relay: Relay) -> None:
    """Cancelled while a batch is under way, `into` holds what had come until then."""
    relay.breaks = [lambda act: act]
    relay.always = lambda act: replace(act, wait_seconds=5.0)
    done: Outcomes[models.SineSettingAnswer] = Outcomes()

    async def run() -> None:
        async with AsyncHalfangle(relay.url, calls_at_once=1) as client:
            async with asyncio.timeout(2.0):
                await client.map(client.sine.setting, ROWS[:96], into=done)

    with pytest.raises(TimeoutError, match=r"^$"):
        asyncio.run(run())
    assert (len(done), len(done.answers)) == (96, 32)


def batched(kind: str, url: str, rows: Any) -> Any:
    """What rows of any operations give by a sync or an async client."""
    if kind == "sync":
        with Halfangle(url) as client:
            return client.batch(rows)

    async def run() -> Any:
        async with AsyncHalfangle(url) as client:
            return await client.batch(rows)

    return asyncio.run(run())


@both
def test_rows_of_any_operations(live: Halfangle, kind: str) -> None:
    """Each row of a batch has its outcome by its ref; a bad row spoils no other."""
    stack: dict[str, Any] = {"units": "in", "height": 1.15, "set": "inch-81"}
    speed = {"units": "in", "wheel_diameter": 7, "rpm": 3450}
    rows: list[Any] = [
        {"ref": "a", "operation": "sine.setting", "request": ROWS[0]},
        {"ref": 7, "operation": "blocks.stack", "request": stack},
        {"ref": "7", "operation": "sine.center-distance", "request": {"units": "in"}},
        {"ref": "a", "operation": "sine.setting", "request": ROWS[1]},
        {"ref": "b", "operation": "sine.seting", "request": ROWS[1]},
        {"ref": None, "operation": "sine.setting", "request": ROWS[1]},
        {"ref": "c", "operation": "sine.setting", "request": 5},
        {"ref": "d", "operation": "sine.setting", "request": {}, "more": 1},
        "row",
        {"ref": "e", "operation": None, "request": {}},
        {"ref": "f", "operation": "wheels.speed", "request": speed},
    ]
    outcomes = batched(kind, live._manners.base_url, rows)
    assert outcomes.by_ref["a"] == live.sine.setting(**ROWS[0])
    assert outcomes.by_ref[7] == live.blocks.stack(**stack)
    assert isinstance(outcomes.by_ref["7"], errors.InvalidRequest)
    assert outcomes.by_ref["7"].problem.instance == "/v1/sine/center-distance"
    for number, why in {
        3: "has the ref 'a' of an earlier row",
        4: "did you mean sine.setting",
        5: "should have a ref, a text or a whole number, not None",
        6: "should have a request, a mapping",
        7: "has no member 'more'",
        8: "should be a mapping of ref, operation and request, not 'row'",
        9: "should have an operation",
    }.items():
        assert why in str(outcomes[number])
        assert isinstance(outcomes[number], errors.Unsendable)
    counts = outcomes.counts
    assert (counts.rows, counts.ok, counts.refused, counts.unanswered) == (11, 3, 1, 7)
    assert counts.with_stop == len(outcomes.stops)
    assert [record["ref"] for record in outcomes.to_records()][:2] == ["a", 7]


@both
def test_stops_and_cautions_are_counted(live: Halfangle, kind: str) -> None:
    """What must not be run is found among many rows, and counted."""
    runs = [
        {"units": "in", "wheel_diameter": 7, "rpm": rpm, "marked_rpm": 3600} for rpm in (3000, 9000)
    ]
    rows = [{"ref": n, "operation": "wheels.speed", "request": run} for n, run in enumerate(runs)]
    outcomes = batched(kind, live._manners.base_url, rows)
    assert list(outcomes.stops) == [1], outcomes.to_records()
    assert outcomes.counts.with_stop == 1
