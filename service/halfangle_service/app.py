"""Puts the service together: registry, routes, contract, and the layer around them."""

import sys
from collections.abc import Iterable, Iterator
from functools import cache, partial
from typing import Any

from litestar import Litestar
from litestar.config.cors import CORSConfig
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp
from prometheus_client import CONTENT_TYPE_LATEST, generate_latest

from halfangle_service.http.answers import JSON, TEXT, answer_of
from halfangle_service.http.batches.routes import batch_route
from halfangle_service.http.catalogue import catalogue
from halfangle_service.http.contract.common import EXAMPLE_PATH
from halfangle_service.http.contract.document import (
    GLOSSARY_PATH,
    compact_json,
    contract,
    contract_json,
    glossary_json,
)
from halfangle_service.http.contract.samples import sample_answer
from halfangle_service.http.curves.routes import curve_route
from halfangle_service.http.failures import EXCEPTION_HANDLERS
from halfangle_service.http.guards.heavy import HeavyWork
from halfangle_service.http.guards.keys import WITHOUT_KEY, key_check
from halfangle_service.http.page.routes import page_routes
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.routes import (
    Writer,
    document_route,
    operation_routes,
    reading,
    table_routes,
)
from halfangle_service.http.tables.routes import table_route
from halfangle_service.http.watch import Metrics, Watch, note_start
from halfangle_service.logs import LogFile, configure_logging
from halfangle_service.operation import PublishedTable
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings
from halfangle_service.topics.jobs.plan.shop.profiles import read_profiles

#: Headers of CORS beside those that any page may send or read.
_SENT_BY_PAGES = ["content-type", "x-request-id", "x-api-key", "if-none-match"]
_READ_BY_PAGES = ["advisories", "etag", "x-request-id", "retry-after"]


def create_app(settings: Settings | None = None, log: LogFile | None = None) -> Litestar:
    """Make the service as an ASGI application; it logs on standard error where no file is given.

    Raises ProfilesError where the settings name a file of profiles that is wrong.
    """
    settings = settings or Settings()
    configure_logging(settings.log_level, log)
    return application([*_every_route(settings)], settings, log)


def application(
    routes: Iterable[HTTPRouteHandler], settings: Settings, log: LogFile | None = None
) -> Litestar:
    """Put these routes, and those for whoever watches, behind all that the framework does."""
    metrics = Metrics()
    logged = settings.log_level in {"debug", "info"}
    watch = Watch(
        metrics,
        log=(log or sys.stderr.buffer) if logged else None,
        vary=bool(settings.cors_origins),
    )
    return Litestar(
        [*routes, *_health(metrics)],
        before_request=note_start,
        before_send=[watch],
        cors_config=_cors(settings.cors_origins),
        exception_handlers=EXCEPTION_HANDLERS,
        logging_config=None,
        middleware=key_check(settings.api_keys),
        openapi_config=None,
        request_max_body_size=settings.body_limit_bytes,
        # Said here, else variables of the environment that are not ours decide.
        debug=False,
        pdb_on_exception=False,
    )


def _cors(origins: tuple[str, ...]) -> CORSConfig | None:
    """Let the pages of these origins call the service."""
    if not origins:
        return None
    return CORSConfig(
        allow_origins=list(origins),
        allow_methods=["GET", "HEAD", "POST", "OPTIONS"],
        allow_headers=_SENT_BY_PAGES,
        expose_headers=_READ_BY_PAGES,
    )


@cache
def all_tables() -> tuple[PublishedTable[Any], ...]:
    """Every published table, and the catalogue of operations."""
    registry = load_registry()
    return (*registry.tables, catalogue(registry.operations))


@cache
def contract_bytes() -> bytes:
    """The contract as it is committed, to be read and compared."""
    return contract_json(_contract())


def served_contract() -> bytes:
    """The same as it is served, without a blank between its values."""
    return compact_json(_contract())


def _contract() -> dict[str, Any]:
    return contract(load_registry().operations, all_tables())


def _every_route(settings: Settings) -> Iterator[HTTPRouteHandler]:
    """Routes of operations and tables, and of what never changes: contract, pages."""
    profiles = read_profiles(settings.profiles)
    operations = {name: o.in_shop(profiles) for name, o in load_registry().operations.items()}
    heavy = HeavyWork(settings.heavy_workers, settings.heavy_queue)
    yield from operation_routes(operations, heavy, settings)
    yield batch_route(operations, heavy, settings)
    yield curve_route(operations, heavy, settings)
    yield table_route(operations, heavy, settings)
    for table in all_tables():
        yield from table_routes(table, settings)
    yield from page_routes(load_registry().operations, all_tables(), settings)
    yield _told("/openapi.json", served_contract, JSON, settings)
    yield _told(GLOSSARY_PATH, glossary_json, JSON, settings)
    for operation in load_registry().operations.values():
        path = EXAMPLE_PATH.format(operation=operation.name)
        yield _told(path, partial(sample_answer, operation), JSON, settings)
    for name in PROBLEM_TYPES:
        yield _told(f"/problems/{name}", partial(_problem_page, name), TEXT, settings)


def _told(path: str, write: Writer, media_type: str, settings: Settings) -> HTTPRouteHandler:
    """Route of a document that tells how to call: it is read without a key, as the pages are."""
    return document_route(path, write, media_type, settings, opt=WITHOUT_KEY)


def _problem_page(name: str) -> bytes:
    status, title = PROBLEM_TYPES[name]
    return f"{name}\n{status}: {title}.\n".encode()


def _health(metrics: Metrics) -> Iterator[HTTPRouteHandler]:
    """Routes for whoever watches the service."""

    async def live() -> ASGIApp:
        return answer_of(b'{"status":"live"}')

    async def ready() -> ASGIApp:
        return answer_of(b'{"status":"ready"}')

    async def measured() -> ASGIApp:
        return answer_of(generate_latest(metrics.registry), CONTENT_TYPE_LATEST)

    yield reading("/health/live", live, opt=WITHOUT_KEY)
    yield reading("/health/ready", ready, opt=WITHOUT_KEY)
    yield reading("/metrics", measured, opt=WITHOUT_KEY)
