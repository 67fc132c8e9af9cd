"""The service as HTTP calls it in tests: its examples sent, its problem documents checked."""

import json
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from typing import Any
from urllib.parse import urlencode

from litestar.handlers import HTTPRouteHandler
from litestar.testing import TestClient

from halfangle_service.app import (
    all_tables,
    application,
    create_app,
)
from halfangle_service.http.problems import PROBLEM_TYPES
from halfangle_service.http.query import query_fields
from halfangle_service.operation import Operation
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings

Service = TestClient[Any]

OPERATIONS = load_registry().operations
FLAT = {name: o for name, o in OPERATIONS.items() if query_fields(o.request) is not None}
TABLES = all_tables()
SINE = "/v1/sine/setting"
SINE_QUERY = f"{SINE}?units=in&center_distance=5&angle=30"


def post(service: Service, operation: Operation[Any, Any]) -> Any:
    """POST an operation's example."""
    return service.post(operation.path, json=dict(operation.example))


def query_of(operation: Operation[Any, Any]) -> str:
    """An operation's example as a path with a query string."""
    return f"{operation.path}?{query_text(operation.example)}"


def query_text(request: Mapping[str, Any]) -> str:
    """A request as a query string: a dot into an object, `;` in a column; what is null left out."""
    given = {name: value for name, value in request.items() if value is not None}
    plain: dict[str, Any] = {}
    for name, value in given.items():
        if isinstance(value, dict):
            plain |= {f"{name}.{part}": inner for part, inner in value.items() if inner is not None}
        elif isinstance(value, list | tuple) and any(isinstance(row, dict) for row in value):
            for part in dict.fromkeys(part for row in value for part in row):
                plain[f"{name}.{part}"] = ";".join(as_text(row.get(part, "")) for row in value)
        else:
            plain[name] = value
    texts = {
        name: [as_text(v) for v in value] if isinstance(value, list | tuple) else as_text(value)
        for name, value in plain.items()
    }
    return urlencode(texts, doseq=True)


def as_text(value: Any) -> str:
    """A value as a query string has it."""
    return value if isinstance(value, str) else json.dumps(value)


@contextmanager
def service_with(**settings: Any) -> Iterator[Service]:
    """A service of its own settings."""
    app = create_app(Settings(log_level="error", **settings))
    with TestClient(app, raise_server_exceptions=False) as client:
        yield client


@contextmanager
def bare_service(routes: list[HTTPRouteHandler], settings: Settings) -> Iterator[Service]:
    """A service of these routes alone."""
    with TestClient(application(routes, settings), raise_server_exceptions=False) as client:
        yield client


def assert_problem(response: Any, name: str) -> dict[str, Any]:
    """Check that a response is the problem document of this type; give it."""
    status, title = PROBLEM_TYPES[name]
    assert response.status_code == status, response.text[:500]
    assert response.headers["content-type"] == "application/problem+json"
    problem: dict[str, Any] = response.json()
    assert (problem["type"], problem["title"], problem["status"]) == (
        f"/problems/{name}",
        title,
        status,
    )
    assert problem["detail"]
    assert isinstance(problem["errors"], list)
    return problem
