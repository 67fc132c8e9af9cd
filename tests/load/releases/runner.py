"""Answers requests with the service found on the import path, in process, as HTTP would.

Reads JSON lines `{"path", "body"}`, body being the text of the body, and writes JSON lines
`{"status", "document", "seconds"}`. It asks the ASGI application, so that it runs with any
release, whatever framework that release stands on. The first argument is the folder that the
service must come from.
"""

import asyncio
import json
import sys
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import halfangle_service
from halfangle_service.app import create_app
from halfangle_service.settings import Settings

HEADERS = [(b"host", b"localhost"), (b"content-type", b"application/json"), (b"accept", b"*/*")]


def scope_of(path: str, body: bytes) -> dict[str, Any]:
    """Give the scope of a POST."""
    return {
        "type": "http",
        "asgi": {"version": "3.0", "spec_version": "2.3"},
        "http_version": "1.1",
        "method": "POST",
        "scheme": "http",
        "path": path,
        "raw_path": path.encode(),
        "root_path": "",
        "query_string": b"",
        "headers": [*HEADERS, (b"content-length", str(len(body)).encode())],
        "client": ("127.0.0.1", 1),
        "server": ("localhost", 80),
        "state": {},
    }


async def exchange(app: Any, path: str, body: bytes) -> tuple[int, bytes]:
    """Post a body; gives the status and the body of the answer."""
    status, content = 0, b""
    messages = [{"type": "http.request", "body": body, "more_body": False}]

    async def receive() -> dict[str, Any]:
        return messages.pop() if messages else {"type": "http.disconnect"}

    async def send(message: dict[str, Any]) -> None:
        nonlocal status, content
        if message["type"] == "http.response.start":
            status = message["status"]
        else:
            content += message.get("body", b"")

    await app(scope_of(path, body), receive, send)
    return status, content


async def post(app: Any, path: str, body: bytes) -> tuple[int, Any]:
    """Post a body; gives the status and the document of the answer."""
    status, content = await exchange(app, path, body)
    return status, document_of(content)


def document_of(content: bytes) -> Any:
    """Read the document of an answer; one that is no JSON is told as a problem of its own."""
    try:
        return json.loads(content)
    except ValueError:
        return {"type": "not-json", "detail": content.decode(errors="replace")[:500]}


@asynccontextmanager
async def running(app: Any) -> AsyncIterator[None]:
    """Start the application, and stop it at the end."""
    to_app: asyncio.Queue[dict[str, str]] = asyncio.Queue()
    from_app: asyncio.Queue[dict[str, str]] = asyncio.Queue()
    scope = {"type": "lifespan", "asgi": {"version": "3.0", "spec_version": "2.3"}, "state": {}}
    task = asyncio.create_task(app(scope, to_app.get, from_app.put))
    for moment in ("startup", "shutdown"):
        await to_app.put({"type": f"lifespan.{moment}"})
        told = await from_app.get()
        if not told["type"].endswith("complete"):
            raise SystemExit(f"the service does not start: {told}")
        if moment == "startup":
            yield
    await task


async def answer_all() -> None:
    """Answer line by line."""
    app = create_app(Settings(log_level="error"))
    async with running(app):
        for line in sys.stdin:
            asked = json.loads(line)
            started = time.perf_counter()
            status, document = await post(app, asked["path"], asked["body"].encode())
            seconds = time.perf_counter() - started
            told = {"status": status, "document": document, "seconds": round(seconds, 6)}
            print(json.dumps(told, ensure_ascii=False), flush=True)


def main() -> None:
    """Check where the service comes from, and answer."""
    wanted, found = Path(sys.argv[1]).resolve(), Path(halfangle_service.__file__).resolve()
    if not found.is_relative_to(wanted):
        raise SystemExit(f"the service was found in {found.parent}, not in {wanted}")
    asyncio.run(answer_all())


if __name__ == "__main__":
    main()
