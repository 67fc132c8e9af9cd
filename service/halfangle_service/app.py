"""Puts the service together: registry, routes, contract, and the layer around them."""

import logging
import sys
from collections.abc import Iterable
from typing import Any

import structlog
from litestar import Litestar, Response, get
from litestar.config.cors import CORSConfig
from litestar.exceptions import HTTPException
from litestar.handlers import HTTPRouteHandler
from litestar.types import ASGIApp
from prometheus_client import CONTENT_TYPE_LATEST, generate_latest

from halfangle_service.errors import Refusal
from halfangle_service.http.catalogue import catalogue
from halfangle_service.http.contract import contract, contract_json
from halfangle_service.http.docs import reference_page
from halfangle_service.http.edge import Edge, Metrics
from halfangle_service.http.problems import (
    PROBLEM_TYPES,
    ProblemError,
    handle_framework,
    handle_problem,
    handle_refusal,
)
from halfangle_service.http.routes import (
    collection_routes,
    document_route,
    operation_routes,
    options_routes,
)
from halfangle_service.operation import Collection
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings


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
    metrics = Metrics(handler_path for route in routes for handler_path in route.paths)
    litestar = Litestar(
        route_handlers=[*options_routes(routes), *routes, *_health(metrics)],
        openapi_config=None,
        logging_config=None,
        request_max_body_size=settings.body_limit_bytes,
        cors_config=_cors(settings),
        exception_handlers={
            ProblemError: handle_problem,
            Refusal: handle_refusal,
            HTTPException: handle_framework,
            Exception: _handle_unforeseen,
        },
    )
    return Edge(litestar, metrics, settings.api_keys)


def all_collections() -> tuple[Collection[Any], ...]:
    """Every published table, and the catalogue of operations."""
    registry = load_registry()
    return (*registry.collections, catalogue(registry.operations))


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
            structlog.processors.JSONRenderer(),
        ],
        wrapper_class=structlog.make_filtering_bound_logger(
            logging.getLevelNamesMapping()[level.upper()]
        ),
        logger_factory=structlog.WriteLoggerFactory(file=sys.stderr),
        cache_logger_on_first_use=False,
    )


def _documents(settings: Settings) -> Iterable[HTTPRouteHandler]:
    """Routes of what never changes: contract, reference page, a page for each problem type."""
    yield document_route("/openapi.json", contract_bytes(), "application/json", settings)
    reference = reference_page(load_registry().operations, all_collections())
    yield document_route("/docs", reference, "text/html", settings)
    for name, (status, title) in PROBLEM_TYPES.items():
        page = f"{name}\n{status}: {title}.\n".encode()
        yield document_route(f"/problems/{name}", page, "text/plain", settings)


def _health(metrics: Metrics) -> list[HTTPRouteHandler]:
    """Routes for whoever watches the service."""

    @get("/health/live", sync_to_thread=False)
    def live() -> dict[str, str]:
        return {"status": "live"}

    @get("/health/ready", sync_to_thread=False)
    def ready() -> dict[str, str]:
        return {"status": "ready"}

    @get("/metrics", sync_to_thread=False)
    def measured() -> Response[bytes]:
        return Response(generate_latest(metrics.registry), media_type=CONTENT_TYPE_LATEST)

    return [live, ready, measured]


def _cors(settings: Settings) -> CORSConfig | None:
    """Let the pages of the named origins call the service; without any, say nothing of CORS."""
    if not settings.cors_origins:
        return None
    return CORSConfig(
        allow_origins=list(settings.cors_origins),
        allow_methods=["GET", "HEAD", "POST", "OPTIONS"],
        allow_headers=["content-type", "x-request-id", "x-api-key", "if-none-match"],
        expose_headers=["etag", "x-request-id"],
    )


def _handle_unforeseen(request: Any, error: Exception) -> Response[bytes]:
    """Answer what nobody foresaw: log it whole, tell the caller only that it is ours to mend."""
    structlog.get_logger("halfangle.error").error(
        "unforeseen", path=request.scope["path"], exc_info=error
    )
    return handle_problem(
        request, ProblemError("internal-error", "The service failed; the fault is logged.")
    )
