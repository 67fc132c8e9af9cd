"""Retries, timeouts and headers, against a server of faults."""

import asyncio
import math
import time
from datetime import UTC, datetime, timedelta
from email.utils import format_datetime
from typing import Any

import pytest

from client_support import Act, FaultServer, refusal
from halfangle_client import AsyncHalfangle, Halfangle, Retries, errors
from halfangle_client.retry import retry_after_seconds

QUICK = Retries(count=2, shortest=0.001)


def list_sets(kind: str, url: str, **options: Any) -> None:
    """List the sets by a sync or an async client."""
    if kind == "sync":
        with Halfangle(url, retries=QUICK, **options) as client:
            client.blocks.list_sets()
        return

    async def run() -> None:
        async with AsyncHalfangle(url, retries=QUICK, **options) as client:
            await client.blocks.list_sets()

    asyncio.run(run())


both = pytest.mark.parametrize("kind", ["sync", "async"])


@both
@pytest.mark.parametrize(
    "fault", [Act(cut=True), refusal(429), refusal(503)], ids=["cut", "429", "503"]
)
def test_tried_again(faults: FaultServer, kind: str, fault: Act) -> None:
    """A cut connection, 429 and 503 are tried again, with the same request id, until answered."""
    faults.acts = [fault, fault, Act()]
    list_sets(kind, faults.url)
    assert len(faults.seen) == 3
    assert len({request["x-request-id"] for request in faults.seen}) == 1


@both
@pytest.mark.parametrize("status", [400, 401, 404, 422, 500, 502, 504])
def test_not_tried_again(faults: FaultServer, kind: str, status: int) -> None:
    """Any other answer stands."""
    faults.acts = [refusal(status), Act()]
    with pytest.raises(errors.ProblemError, match="made by the test"):
        list_sets(kind, faults.url)
    assert len(faults.seen) == 1


@both
def test_gives_up(faults: FaultServer, kind: str) -> None:
    """After the last try the error is that of the last answer."""
    faults.acts = [Act(cut=True), refusal(429), refusal(503)]
    with pytest.raises(errors.Overloaded, match="made by the test"):
        list_sets(kind, faults.url)
    assert len(faults.seen) == 3


@both
def test_a_timeout_is_not_tried_again(faults: FaultServer, kind: str) -> None:
    """Who allows 0.1 s is told after 0.1 s, and of the time that was allowed."""
    faults.acts = [Act(wait_seconds=0.4), Act()]
    with pytest.raises(errors.TimedOut, match=r"no answer within 0\.1 s"):
        list_sets(kind, faults.url, timeout_seconds=0.1)
    assert len(faults.seen) == 1


@both
def test_tries_and_waits_are_within_the_time_of_the_call(faults: FaultServer, kind: str) -> None:
    """A wait that leaves no time is not begun: the last outcome stands, well within the time."""
    faults.acts = [refusal(503, Retry_After="0"), refusal(503, Retry_After="5"), Act()]
    start = time.monotonic()
    with pytest.raises(errors.Overloaded, match="made by the test"):
        list_sets(kind, faults.url, timeout_seconds=2)
    assert time.monotonic() - start < 2
    assert len(faults.seen) == 2


def test_a_call_overrides_the_timeout(faults: FaultServer) -> None:
    """A call's own timeout holds for that call alone."""
    faults.acts = [Act(wait_seconds=0.4), Act(wait_seconds=0.2)]
    with Halfangle(faults.url) as client:
        with pytest.raises(errors.TimedOut, match=r"within 0\.1 s"):
            client.blocks.list_sets(timeout_seconds=0.1)
        client.blocks.list_sets()


@both
@pytest.mark.parametrize("asked", ["3600", "Fri, 01 Jan 100000000000000 00:00:00 GMT"])
def test_a_long_retry_after_is_not_waited_for(faults: FaultServer, kind: str, asked: str) -> None:
    """A wait longer than the longest allowed is left to the caller, be it past all calendars."""
    faults.acts = [refusal(503, Retry_After=asked), Act()]
    with pytest.raises(errors.Overloaded, match="made by the test"):
        list_sets(kind, faults.url)
    assert len(faults.seen) == 1


def test_retry_after_is_honoured() -> None:
    """The wait is the one asked for, in seconds or by date; else it doubles, up to the longest."""
    retries = Retries(count=9, shortest=0.2, longest=10.0)
    assert retries.after_status(1, 503, {"retry-after": "7"}) == 7.0
    assert retries.after_status(1, 429, {"retry-after": "0"}) == 0.0
    assert retries.after_status(1, 503, {"retry-after": "11"}) is None
    moment = format_datetime(datetime.now(UTC) + timedelta(seconds=5), usegmt=True)
    assert retry_after_seconds(moment) == pytest.approx(5.0, abs=2.0)
    assert retry_after_seconds("soon") is None
    assert retry_after_seconds("Fri, 01 Jan 100000000000000 00:00:00 GMT") == math.inf
    assert retry_after_seconds("9" * 5000) == math.inf
    for tries, most in [(1, 0.2), (2, 0.4), (3, 0.8), (9, 10.0)]:
        wait = retries.after_status(tries, 503, {})
        assert wait is not None
        assert most / 2 <= wait <= most
    assert retries.after_status(10, 503, {}) is None


def test_headers_of_a_request(faults: FaultServer) -> None:
    """A request says who asks, with which key, what it takes, and by which id."""
    faults.acts = [Act(), Act()]
    with Halfangle(faults.url + "/", api_key="secret-1") as client:
        client.blocks.list_sets(request_id="bench-7")
        client.blocks.list_sets()
    first, second = faults.seen
    assert first["x-api-key"] == "secret-1"
    assert first["x-request-id"] == "bench-7"
    assert first["accept"] == "application/json, application/problem+json"
    assert first["user-agent"].startswith("halfangle-client/")
    assert second["x-request-id"] not in {"", "bench-7"}


@both
def test_a_proxy_is_not_for_this_machine(
    faults: FaultServer, kind: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A proxy named by the environment does not stand between the client and a local service."""
    for name in ("HTTP_PROXY", "http_proxy", "ALL_PROXY", "all_proxy"):
        monkeypatch.setenv(name, "http://127.0.0.1:9")
    for name in ("NO_PROXY", "no_proxy"):
        monkeypatch.delenv(name, raising=False)
    faults.acts = [Act()]
    list_sets(kind, faults.url)
    assert len(faults.seen) == 1


def test_a_later_release_may_answer_more(faults: FaultServer) -> None:
    """A field that this release does not know is no fault of an answer."""
    body = b'{"result":{"sets":[],"new":1},"advisories":[],"more":[],"basis":{"relations":[],'
    faults.acts = [Act(body=body + b'"sources":[],"release":"9","fingerprint":"0","new":{}}}')]
    with Halfangle(faults.url) as client:
        assert client.blocks.list_sets().basis.release == "9"
