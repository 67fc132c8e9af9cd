"""Puts the service together: registry, routes, contract, and the layer around them."""

import sys
from collections.abc import AsyncIterator, Iterable, Iterator
from contextlib import asynccontextmanager
from functools import cache, partial
from typing import Any

from anyio import to_thread
from litestar import Litestar
from litestar.config.cors import CORSConfig
from litestar.handlers import HTTPRouteHandler
from litestar.middleware import DefineMiddleware
from litestar.types import ASGIApp
from prometheus_client import CONTENT_TYPE_LATEST, generate_latest

from halfangle_service.http.answers import JSON, TEXT, answer_of
from halfangle_service.http.batches.routes import batch_route
from halfangle_service.http.calculating import Calculator
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
from halfangle_service.http.guards.keys import Door, key_check, open_as
from halfangle_service.http.guards.rates import Paces
from halfangle_service.http.page.routes import page_routes
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.routes import (
    Writer,
    document_route,
    operation_routes,
    reading,
    table_routes,
    value_route,
)
from halfangle_service.http.tables.routes import table_route
from halfangle_service.http.watch.hook import Traced, Watch, note_start
from halfangle_service.http.watch.metrics import GC_RUNS, GC_SECONDS, Metrics
from halfangle_service.http.watch.processes import GarbageTimes
from halfangle_service.http.watch.traces import Tracing, is_traced, require_tracing
from halfangle_service.logs import LogFile, configure_logging
from halfangle_service.operation import PublishedTable
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings
from halfangle_service.topics.jobs.plan.shop.profiles import read_profiles

#: Headers of CORS beside those that any page may send or read.
_SENT_BY_PAGES = [
    "authorization",
    "content-type",
    "if-none-match",
    "traceparent",
    "x-api-key",
    "x-request-id",
]
_READ_BY_PAGES = ["advisories", "etag", "retry-after", "traceresponse", "x-request-id"]


def create_app(
    settings: Settings | None = None, log: LogFile | None = None, metrics: Metrics | None = None
) -> Litestar:
    """Make the service as an ASGI application; it logs on standard error where no file is given.

    Raises ProfilesError, KeysError or NoTracing where the settings name a file of profiles or of
    keys that is wrong, or what is not installed.
    """
    settings = settings or Settings()
    configure_logging(settings.log_level, log)
    metrics = metrics or Metrics()
    return application([*_every_route(settings, metrics)], settings, log, metrics)


def application(
    routes: Iterable[HTTPRouteHandler],
    settings: Settings,
    log: LogFile | None = None,
    metrics: Metrics | None = None,
) -> Litestar:
    """Put these routes, and those for whoever watches, behind all that the framework does."""
    metrics = metrics or Metrics()
    require_tracing(settings)
    logged = settings.log_level in {"debug", "info"}
    watch = Watch(
        metrics,
        log=(log or sys.stderr.buffer) if logged else None,
        vary=bool(settings.cors_origins),
    )
    traced = is_traced(settings)
    middleware = [DefineMiddleware(Traced, watch=watch)] if traced else []
    door = Door(settings, metrics, Paces()) if settings.asks_for_keys else None
    if door is not None:
        middleware.append(key_check(door))
    return Litestar(
        [*routes, *_health(metrics, door)],
        before_request=note_start,
        before_send=[watch],
        cors_config=_cors(settings.cors_origins),
        exception_handlers=EXCEPTION_HANDLERS,
        logging_config=None,
        lifespan=[partial(_garbage_and_spans, watch, traced=traced)],
        middleware=middleware,
        openapi_config=None,
        request_max_body_size=settings.body_limit_bytes,
        # Said here, else variables of the environment that are not ours decide.
        debug=False,
        pdb_on_exception=False,
    )


@asynccontextmanager
async def _garbage_and_spans(watch: Watch, _: Litestar, *, traced: bool) -> AsyncIterator[None]:
    """What runs as long as a worker serves, begun in the worker itself: spans take a thread."""

    def collected(generation: int, seconds: float) -> None:
        watch.metrics.add(GC_RUNS, str(generation))
        watch.metrics.add(GC_SECONDS, amount=seconds)

    watch.tracing = Tracing() if traced else None
    with GarbageTimes(collected):
        yield
    if watch.tracing is not None:
        # It waits for whoever takes the spans.
        await to_thread.run_sync(watch.tracing.stop)


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


def _every_route(settings: Settings, metrics: Metrics) -> Iterator[HTTPRouteHandler]:
    """Routes of operations and tables, and of what never changes: contract, pages."""
    profiles = read_profiles(settings.profiles)
    operations = {name: o.in_shop(profiles) for name, o in load_registry().operations.items()}
    calculator = Calculator.within(settings, metrics)
    yield from operation_routes(operations, calculator, settings)
    yield value_route(operations, load_registry().tables, calculator, settings)
    yield batch_route(operations, calculator, metrics, settings)
    yield curve_route(operations, calculator)
    yield table_route(operations, calculator, metrics, settings)
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
    return document_route(path, write, media_type, settings, opt=open_as("documents"))


def _problem_page(name: str) -> bytes:
    status, title = PROBLEM_TYPES[name]
    return f"{name}\n{status}: {title}.\n".encode()


def _health(metrics: Metrics, door: Door | None) -> Iterator[HTTPRouteHandler]:
    """Routes for whoever watches the service."""

    async def live() -> ASGIApp:
        return answer_of(b'{"status":"live"}')

    async def ready() -> ASGIApp:
        return answer_of(b'{"status":"ready"}')

    async def measured() -> ASGIApp:
        if door is not None:
            door.look()
        # Some tens of milliseconds where every route was asked: others have their turns meanwhile.
        written = await to_thread.run_sync(generate_latest, metrics.registry)
        return answer_of(written, CONTENT_TYPE_LATEST)

    yield reading("/health/live", live, opt=open_as("health"))
    yield reading("/health/ready", ready, opt=open_as("health"))
    yield reading("/metrics", measured, opt=open_as("metrics"))
