"""A client of an application in its own process: no server, no socket."""

import asyncio
import socket
import threading
from collections.abc import Callable
from typing import Any

import pytest

from halfangle_client import AsyncHalfangle, Halfangle, errors
from halfangle_service.app import create_app
from halfangle_service.settings import Settings

SETTING: dict[str, Any] = {"units": "in", "center_distance": 5, "angle": 30}
STACK: dict[str, Any] = {"units": "in", "height": 1.15, "set": "inch-81"}
both = pytest.mark.parametrize("kind", ["sync", "async"])


def in_process(kind: str, app: Any, call: Callable[[Any], Any], **options: Any) -> Any:
    """What a call of a client in process gives."""
    if kind == "sync":
        with Halfangle.in_process(app, **options) as client:
            return call(client)

    async def run() -> Any:
        async with AsyncHalfangle.in_process(app, **options) as client:
            return await call(client)

    return asyncio.run(run())


@pytest.fixture
def app(monkeypatch: pytest.MonkeyPatch) -> Any:
    """The service's application, on a machine that can reach nothing."""

    def refuse(*_: object) -> None:
        raise AssertionError("a socket was opened")

    monkeypatch.setattr(socket.socket, "connect", refuse)
    return create_app(Settings(log_level="error"))


@both
def test_answers_as_over_a_network(app: Any, kind: str) -> None:
    """A light call, a heavy one and a table are answered, by name and path and query."""
    answer = in_process(kind, app, lambda client: client.sine.setting(**SETTING))
    assert answer.result.height == pytest.approx(2.5, rel=1e-15)
    stack = in_process(kind, app, lambda client: client.blocks.stack(**STACK))
    assert sum(stack.result.blocks) == pytest.approx(1.15)
    table = in_process(kind, app, lambda client: client.blocks.get_set("inch-81"))
    assert table.result.name == "inch-81"


@both
def test_refusals_are_the_same_errors(app: Any, kind: str) -> None:
    """A wrong field is named; an application that fails is a failed service."""
    with pytest.raises(errors.InvalidRequest, match="angle"):
        in_process(kind, app, lambda client: client.sine.setting(**{**SETTING, "angle": 95}))

    async def broken(scope: Any, receive: Any, send: Any) -> None:
        raise RuntimeError("it is broken")

    with pytest.raises(errors.ServiceFailed, match="HTTP 500"):
        in_process(kind, broken, lambda client: client.sine.setting(**SETTING))


@both
def test_time_is_bounded_all_the_same(kind: str) -> None:
    """An application that never answers holds a call no longer than its time."""

    async def silent(scope: Any, receive: Any, send: Any) -> None:
        await asyncio.sleep(3600)

    with pytest.raises(errors.TimedOut, match=r"within 0\.2 s"):
        in_process(kind, silent, lambda client: client.blocks.list_sets(), timeout_seconds=0.2)


@both
def test_the_key_goes_along(kind: str) -> None:
    """An application that asks for a key is given it."""
    seen: list[bytes] = []

    async def asks(scope: Any, receive: Any, send: Any) -> None:
        seen.append(dict(scope["headers"])[b"x-api-key"])
        await send({"type": "http.response.start", "status": 401, "headers": []})
        await send({"type": "http.response.body", "body": b""})

    with pytest.raises(errors.Unauthorized, match="401"):
        in_process(kind, asks, lambda client: client.blocks.list_sets(), api_key="k-1")
    assert seen == [b"k-1"]


def test_threads_and_rows_share_it(app: Any) -> None:
    """Rows are called as over a network, and closing leaves no thread behind."""
    before = threading.active_count()
    with Halfangle.in_process(app) as client:
        rows = [{**SETTING, "units": "mm", "center_distance": 100 + n} for n in range(100)]
        heights = [answer.result.height for answer in client.map("sine.setting", rows).answers]
    assert heights == pytest.approx([(100 + n) / 2 for n in range(100)], rel=1e-15)
    assert threading.active_count() <= before + 1
