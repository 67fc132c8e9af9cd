"""The same operation as three other services would serve it, for `bench_http.py`. Not collected.

    python tests/load/rivals.py serve ordinary 8000     serve one of RIVALS over a socket
    python tests/load/rivals.py call service            a round of calls in process for each line in

Each is written as its framework's own pages show it, and gives the very bytes of the service.
"""

import asyncio
import json
import os
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import uvicorn
from fastapi import FastAPI
from litestar import Litestar, Request, Response, post
from litestar.plugins.prometheus import PrometheusConfig, PrometheusController
from litestar.plugins.structlog import StructlogPlugin

from halfangle_service import __version__
from halfangle_service.app import create_app
from halfangle_service.operation import Basis
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

OPERATION = load_registry().operations["sine.setting"]
PATH = OPERATION.path
# An angle whose height needs no tidying: the others write numbers as they come.
BODY = json.dumps({**OPERATION.example, "angle": 22.5}, ensure_ascii=False).encode()
ANSWER = OPERATION.answer_json(OPERATION.request.model_validate_json(BODY))
#: Calls in process that one round makes.
CALLS = 2000

# Names that annotations of handlers can use.
Asked: Any = OPERATION.request
Answered: Any = OPERATION.answer


def _answer(data: Any) -> Any:
    """Calculate, and put the answer together as a model."""
    outcome = OPERATION.outcome(data)
    basis = Basis(
        relations=list(OPERATION.relations),
        sources=list(OPERATION.sources),
        release=__version__,
        fingerprint=OPERATION.fingerprint(data, outcome),
    )
    return Answered(result=outcome.result, advisories=list(outcome.advisories), basis=basis)


def ordinary() -> Any:
    """Litestar as its pages show it: typed models in and out, its metrics and log middleware."""

    @post(PATH, status_code=200)
    async def setting(data: Asked) -> Answered:
        return _answer(data)

    return Litestar(
        [setting, PrometheusController],
        middleware=[PrometheusConfig().middleware],
        plugins=[StructlogPlugin()],
    )


def fastapi() -> Any:
    """FastAPI as its pages show it: typed models in and out, no middleware."""
    app = FastAPI()

    @app.post(PATH)
    async def setting(data: Asked) -> Answered:
        return _answer(data)

    return app


def nothing() -> Any:
    """Litestar that reads the body and gives back fixed bytes."""

    @post(PATH, status_code=200)
    async def same(request: Request[Any, Any, Any]) -> Response[bytes]:
        await request.body()
        return Response(ANSWER, media_type="application/json")

    return Litestar([same], openapi_config=None, logging_config=None)


RIVALS: dict[str, Callable[[], Any]] = {
    "service": lambda: create_app(Settings()),
    "ordinary": ordinary,
    "fastapi": fastapi,
    "nothing": nothing,
}


async def _round(app: Any, count: int) -> tuple[float, bytes]:
    """Processor seconds of so many calls, and the body of the last answer."""
    headers = [
        (b"host", b"bench"),
        (b"content-type", b"application/json"),
        (b"x-request-id", b"bench"),
        (b"content-length", b"%d" % len(BODY)),
    ]
    body = b""

    async def receive() -> dict[str, Any]:
        return {"type": "http.request", "body": BODY, "more_body": False}

    async def send(message: dict[str, Any]) -> None:
        nonlocal body
        body = message.get("body", b"")

    started = time.process_time()
    for _ in range(count):
        scope = {
            "type": "http",
            "asgi": {"version": "3.0", "spec_version": "2.3"},
            "http_version": "1.1",
            "server": ("127.0.0.1", 8000),
            "client": ("127.0.0.1", 50000),
            "scheme": "http",
            "method": "POST",
            "root_path": "",
            "path": PATH,
            "raw_path": PATH.encode(),
            "query_string": b"",
            "headers": list(headers),
            "state": {},
        }
        await app(scope, receive, send)
    return time.process_time() - started, body


def call_in_process(name: str) -> None:
    """Call an application directly: a round for each line in, microseconds a call for each out."""
    # What an application logs goes nowhere, wherever it would write to.
    told = sys.stdout
    sys.stdout = sys.stderr = Path(os.devnull).open("w")  # noqa: SIM115  to the end of the process
    app = RIVALS[name]()
    asyncio.run(_round(app, CALLS))
    for _ in sys.stdin:
        seconds, body = asyncio.run(_round(app, CALLS))
        assert body == ANSWER, body
        print(seconds / CALLS * 1e6, file=told, flush=True)


def main() -> None:
    """Run the command."""
    verb, name, *rest = sys.argv[1:]
    if verb == "call":
        call_in_process(name)
        return
    uvicorn.run(
        RIVALS[name](), port=int(rest[0]), access_log=False, log_level="error", server_header=False
    )


if __name__ == "__main__":
    main()
