"""What a client holds against any server: its time, its memory, its turn, what a number is."""

import asyncio
import gzip
import json
import time
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from threading import Thread
from typing import Any

import pytest

from client_support import ANSWER, Act, FaultServer
from halfangle_client import AsyncHalfangle, Halfangle, errors
from halfangle_client.generated.calls import ENDPOINTS
from halfangle_client.reading import data_of

both = pytest.mark.parametrize("kind", ["sync", "async"])
BODY = json.dumps(ANSWER).encode()


def answer_by(kind: str, url: str, call: Callable[[Any], Any], **options: Any) -> Any:
    """What a call of a sync or an async client gives."""
    if kind == "sync":
        with Halfangle(url, **options) as client:
            return call(client)

    async def run() -> Any:
        async with AsyncHalfangle(url, **options) as client:
            return await call(client)

    return asyncio.run(run())


def list_sets(client: Any) -> Any:
    """A call without a request."""
    return client.blocks.list_sets()


def set_sine(client: Any) -> Any:
    """A call that gives numbers."""
    return client.sine.setting(units="in", center_distance=5, angle=30)


@both
@pytest.mark.parametrize("drips", ["head", "body"])
def test_an_answer_by_drips_ends_with_the_time_of_the_call(
    faults: FaultServer, kind: str, drips: Any
) -> None:
    """A server that says a byte now and then holds a call no longer than its timeout."""
    faults.acts = [Act(drips=drips)]
    start = time.monotonic()
    with pytest.raises(errors.TimedOut, match=r"no answer within 0\.4 s"):
        answer_by(kind, faults.url, list_sets, timeout_seconds=0.4)
    # All of it would take five seconds at least.
    assert 0.05 * len(BODY) > 5
    assert time.monotonic() - start < 2


@both
def test_a_slow_answer_within_its_time_is_whole(faults: FaultServer, kind: str) -> None:
    """What comes by drips and in time is an answer like another."""
    faults.acts = [Act(drips="body", drip_seconds=0.001)]
    assert answer_by(kind, faults.url, list_sets).result.sets == []


@both
@pytest.mark.parametrize(
    "act",
    [
        Act(body=b" " * 100_000, endless=True),
        Act(body=b" " * 2_000_000 + BODY),
        Act(headers={"Content-Encoding": "gzip"}, body=gzip.compress(b" " * 20_000_000 + BODY)),
    ],
    ids=["endless", "long", "long once unpacked"],
)
def test_an_answer_longer_than_allowed_is_cut_off(faults: FaultServer, kind: str, act: Act) -> None:
    """No more of an answer is kept than was allowed, and the error names the call and the bound."""
    faults.acts = [act]
    with pytest.raises(errors.AnswerTooLarge, match=r"list_sets: .* longer than 1000000 bytes"):
        answer_by(kind, faults.url, list_sets, largest_answer=1_000_000)
    assert len(faults.seen) == 1


@both
@pytest.mark.parametrize(
    "options",
    [
        {"timeout_seconds": 0},
        {"timeout_seconds": float("nan")},
        {"heavy_timeout_seconds": 1e9},
        {"calls_at_once": 0},
        {"largest_answer": 0},
    ],
    ids=str,
)
def test_bounds_that_bound_nothing_are_refused(kind: str, options: dict[str, Any]) -> None:
    """A time of nothing or for ever, and a client that may call nothing, are refused by name."""
    with pytest.raises(ValueError, match=f"{next(iter(options))}: should be"):
        answer_by(kind, "http://127.0.0.1:9", list_sets, **options)


class _Crowd:
    """A server that keeps its connections, answers each request, and counts its callers."""

    def __init__(self) -> None:
        self.connected = self.most = self.answered = 0
        self._loop = asyncio.new_event_loop()
        self._thread = Thread(target=self._loop.run_forever, daemon=True)

    def __enter__(self) -> "_Crowd":
        self._thread.start()
        serving = asyncio.run_coroutine_threadsafe(
            asyncio.start_server(self._serve, "127.0.0.1", 0, backlog=2000), self._loop
        )
        self._server = serving.result(10)
        self.url = f"http://127.0.0.1:{self._server.sockets[0].getsockname()[1]}"
        return self

    async def _serve(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        self.connected += 1
        self.most = max(self.most, self.connected)
        head = f"HTTP/1.1 200 OK\r\nContent-Length: {len(BODY)}\r\n\r\n".encode()
        try:
            while await reader.readuntil(b"\r\n\r\n"):
                await asyncio.sleep(0.01)
                writer.write(head + BODY)
                self.answered += 1
        except (asyncio.IncompleteReadError, asyncio.CancelledError, ConnectionError):
            writer.close()
        finally:
            self.connected -= 1

    async def _close(self) -> None:
        self._server.close()
        others = asyncio.all_tasks() - {asyncio.current_task()}
        for task in others:
            task.cancel()
        await asyncio.gather(*others, return_exceptions=True)

    def __exit__(self, *_: object) -> None:
        asyncio.run_coroutine_threadsafe(self._close(), self._loop).result(10)
        self._loop.call_soon_threadsafe(self._loop.stop)
        self._thread.join(10)
        self._loop.close()


@pytest.fixture
def crowd() -> Iterator[_Crowd]:
    """A server for a crowd."""
    with _Crowd() as server:
        yield server


def test_a_thousand_calls_at_once_are_all_answered(crowd: _Crowd) -> None:
    """Every call of a thousand gets its turn, over eight sockets."""

    async def run() -> int:
        async with AsyncHalfangle(crowd.url) as client:
            answers = await asyncio.gather(*(client.blocks.list_sets() for _ in range(1000)))
            return len(answers)

    assert asyncio.run(run()) == 1000
    assert crowd.answered == 1000
    assert crowd.most <= 8


def test_threads_share_a_client(crowd: _Crowd) -> None:
    """So do three hundred calls of many threads, over four sockets where four are allowed."""
    with (
        Halfangle(crowd.url, calls_at_once=4) as client,
        ThreadPoolExecutor(200) as threads,
    ):
        answers = list(threads.map(lambda _: client.blocks.list_sets(), range(300)))
    assert (len(answers), crowd.answered) == (300, 300)
    assert crowd.most <= 4


@both
def test_the_wait_for_a_turn_is_none_of_the_time_of_a_call(faults: FaultServer, kind: str) -> None:
    """A call that waits three seconds for its turn is answered, though its time is 2.5 s."""
    faults.acts = [Act(wait_seconds=3.0), Act()]

    if kind == "sync":
        with Halfangle(faults.url, calls_at_once=1) as client, ThreadPoolExecutor(1) as other:
            first = other.submit(client.blocks.list_sets)
            while not faults.seen:
                time.sleep(0.01)
            assert client.blocks.list_sets(timeout_seconds=2.5).result.sets == []
            assert first.result().result.sets == []
        return

    async def run() -> None:
        async with AsyncHalfangle(faults.url, calls_at_once=1) as client:
            first = asyncio.create_task(client.blocks.list_sets())
            while not faults.seen:
                await asyncio.sleep(0.01)
            assert (await client.blocks.list_sets(timeout_seconds=2.5)).result.sets == []
            assert (await first).result.sets == []

    asyncio.run(run())


@both
def test_a_call_that_timed_out_gives_up_its_turn(faults: FaultServer, kind: str) -> None:
    """The next call is made though the server still holds the one before."""
    faults.acts = [Act(wait_seconds=3.0), Act()]

    def one_after_another(client: Any) -> Any:
        with pytest.raises(errors.TimedOut, match=r"within 0\.2 s"):
            client.blocks.list_sets(timeout_seconds=0.2)
        return client.blocks.list_sets(timeout_seconds=2.0)

    async def awaited(client: Any) -> Any:
        with pytest.raises(errors.TimedOut, match=r"within 0\.2 s"):
            await client.blocks.list_sets(timeout_seconds=0.2)
        return await client.blocks.list_sets(timeout_seconds=2.0)

    calls = one_after_another if kind == "sync" else awaited
    assert answer_by(kind, faults.url, calls, calls_at_once=1).result.sets == []


def setting(client: Halfangle, height: Any) -> bytes:
    """The service's own answer of sine.setting, with this for a height."""
    answer = client.call("sine.setting", {"units": "in", "center_distance": 5, "angle": 30})
    answer["result"]["height"] = height
    return json.dumps(answer).encode()


@both
@pytest.mark.parametrize("height", ["2.5", True, float("nan"), float("inf"), None, [2.5]], ids=str)
def test_what_is_no_number_is_no_answer(
    client: Halfangle, faults: FaultServer, kind: str, height: Any
) -> None:
    """A text, a truth, NaN or infinity in place of a number is unexpected, and it is said where."""
    faults.acts = [Act(body=setting(client, height))]
    with pytest.raises(errors.UnexpectedAnswer, match=r"result\.height"):
        answer_by(kind, faults.url, set_sine)


def test_whole_numbers_are_numbers(client: Halfangle, faults: FaultServer) -> None:
    """2 is the number 2.0, as JSON has it."""
    faults.acts = [Act(body=setting(client, 2))]
    answer = answer_by("sync", faults.url, set_sine)
    assert (answer.result.height, type(answer.result.height)) == (2.0, float)


def test_no_number_out_of_range_comes_untyped() -> None:
    """JSON data by the name of a call holds no NaN either."""
    with pytest.raises(errors.UnexpectedAnswer, match="is no JSON"):
        data_of(ENDPOINTS["sine.setting"], b'{"result": {"height": NaN}}')


def test_a_later_release_may_use_another_word(faults: FaultServer) -> None:
    """An option that this release does not know is given as it came; so is a field passed over."""
    advisory = {"code": "new", "severity": "whisper", "message": "…", "since": "0.9"}
    basis = {
        "relations": [],
        "sources": [{"citation": "…", "standing": "hearsay", "page": 7}],
        "release": "0.9",
        "fingerprint": "0",
    }
    body = json.dumps({"result": {"sets": []}, "advisories": [advisory], "basis": basis})
    faults.acts = [Act(body=body.encode())]
    answer = answer_by("sync", faults.url, list_sets)
    assert answer.advisories[0].severity == "whisper"
    assert answer.basis.sources[0].standing == "hearsay"
