"""Routes of the pages and of the files that they refer to, with the headers of a careful site."""

from collections.abc import Iterable, Iterator, Mapping
from functools import partial
from typing import Any

from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp

from halfangle_service.http.answers import AnyRequest, Headers, answer_of
from halfangle_service.http.guards.keys import open_as
from halfangle_service.http.page.documents import (
    PAGES_PATH,
    operation_page,
    reference_page,
    try_page,
)
from halfangle_service.http.page.files import read_file, static_files
from halfangle_service.http.routes import Writer, document_route, reading
from halfangle_service.operation import Operation, PublishedTable
from halfangle_service.settings import Settings

AnyOperation = Operation[Any, Any]

_HTML = "text/html; charset=utf-8"
_FOUND = 307
#: Nothing runs or shows but what this service serves; `data:` is for images alone: drawings of
#: answers, and the marks of the packaged page.
_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; "
    "connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
_HEADERS: Headers = (
    (b"content-security-policy", _POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"x-frame-options", b"DENY"),
    (b"referrer-policy", b"no-referrer"),
)


def page_routes(
    operations: Mapping[str, AnyOperation],
    tables: Iterable[PublishedTable[Any]],
    settings: Settings,
) -> Iterator[HTTPRouteHandler]:
    """Every page and file; `/` leads to the first page.

    They are read without a key, being alike at every installation of a release: a browser could not
    send one before it shows a page.
    """
    yield reading("/", _to_pages, opt=open_as("documents"))
    yield _page(PAGES_PATH, partial(reference_page, operations, tuple(tables)), settings)
    yield _page(f"{PAGES_PATH}/try", try_page, settings)
    order = tuple(operations.values())
    for operation in order:
        yield _page(
            f"{PAGES_PATH}/{operation.name}", partial(operation_page, operation, order), settings
        )
    for name, media_type in static_files():
        read = partial(read_file, name)
        yield _kept(f"{PAGES_PATH}/files/{name}", read, media_type, settings)


async def _to_pages(request: AnyRequest) -> ASGIApp:  # noqa: ARG001  the framework goes by the name
    """Send a browser on to the first page."""
    headers: Headers = ((b"location", PAGES_PATH.encode()),)
    return answer_of(b"", "text/plain; charset=utf-8", headers, _FOUND)


def _page(path: str, write: Writer, settings: Settings) -> HTTPRouteHandler:
    return _kept(path, write, _HTML, settings)


def _kept(path: str, write: Writer, media_type: str, settings: Settings) -> HTTPRouteHandler:
    """Route of what a browser keeps and asks about each time: after an upgrade it shows the new."""
    return document_route(
        path,
        write,
        media_type,
        settings,
        headers=_HEADERS,
        asked_again=True,
        opt=open_as("documents"),
    )
