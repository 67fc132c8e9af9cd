"""Puts the service together: registry, routes, contract, and the layer around them."""

import logging
import sys
from collections.abc import Iterable
from functools import partial
from typing import Any

import structlog
from prometheus_client import CONTENT_TYPE_LATEST, generate_latest
from pydantic_core import to_json

from halfangle_service.http.catalogue import catalogue
from halfangle_service.http.contract import contract, contract_json
from halfangle_service.http.docs import reference_page
from halfangle_service.http.edge import Edge, Metrics
from halfangle_service.http.exchange import JSON, TEXT, ASGIApp, Call, Reply, Route, Router
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.routes import collection_routes, document_route, operation_routes
from halfangle_service.operation import PublishedTable
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

HEALTH_PATHS = ("/health/live", "/health/ready", "/metrics")


def create_app(settings: Settings | None = None) -> ASGIApp:
    """Make the service as an ASGI application."""
    settings = settings or Settings()
    configure_logging(settings.log_level)
    registry = load_registry()
    collections = all_collections()
    routes = operation_routes(registry.operations, settings)
    for collection in collections:
        routes += collection_routes(collection, settings)
    routes += _documents(settings)
    metrics = Metrics([*(route.path for route in routes), *HEALTH_PATHS])
    routes += _health(metrics)
    router = Router(routes, settings.body_limit_bytes)
    return Edge(router, metrics, settings.api_keys, settings.cors_origins)


def all_collections() -> tuple[PublishedTable[Any], ...]:
    """Every published table, and the catalogue of operations."""
    registry = load_registry()
    return (*registry.tables, catalogue(registry.operations))


def contract_bytes() -> bytes:
    """The contract as it is served and committed."""
    return contract_json(contract(load_registry().operations, all_collections()))


def configure_logging(level: str) -> None:
    """Log one JSON object a line, on standard error."""
    structlog.configure(
        processors=[
            structlog.processors.add_log_level,
            structlog.processors.TimeStamper(fmt="iso", utc=True),
            structlog.processors.format_exc_info,
            structlog.processors.JSONRenderer(serializer=_log_line),
        ],
        wrapper_class=structlog.make_filtering_bound_logger(
            logging.getLevelNamesMapping()[level.upper()]
        ),
        logger_factory=structlog.BytesLoggerFactory(file=sys.stderr.buffer),
        cache_logger_on_first_use=False,
    )


def _log_line(event: object, **_: object) -> bytes:
    """Write one log entry; the standard library's encoder takes four times as long."""
    return to_json(event, fallback=repr)


def _documents(settings: Settings) -> Iterable[Route]:
    """Routes of what never changes: contract, reference page, a page for each problem type."""
    yield document_route("/openapi.json", contract_bytes, JSON, settings)
    yield document_route("/docs", _reference, "text/html; charset=utf-8", settings)
    for name in PROBLEM_TYPES:
        yield document_route(f"/problems/{name}", partial(_problem_page, name), TEXT, settings)


def _reference() -> bytes:
    return reference_page(load_registry().operations, all_collections())


def _problem_page(name: str) -> bytes:
    status, title = PROBLEM_TYPES[name]
    return f"{name}\n{status}: {title}.\n".encode()


def _health(metrics: Metrics) -> list[Route]:
    """Routes for whoever watches the service, in the order of HEALTH_PATHS."""

    async def live(_: Call) -> Reply:
        return Reply(b'{"status":"live"}')

    async def ready(_: Call) -> Reply:
        return Reply(b'{"status":"ready"}')

    async def measured(_: Call) -> Reply:
        return Reply(generate_latest(metrics.registry), CONTENT_TYPE_LATEST)

    handlers = zip(HEALTH_PATHS, (live, ready, measured), strict=True)
    return [Route(path, {"GET": handler}) for path, handler in handlers]
