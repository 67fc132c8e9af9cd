"""Services that ask for keys, and files of keys."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from litestar.testing import TestClient

from halfangle_service.app import application
from halfangle_service.http.answers import JSON
from halfangle_service.http.batches.routes import batch_route
from halfangle_service.http.calculating import Calculator
from halfangle_service.http.curves.routes import curve_route
from halfangle_service.http.guards.key_file import new_key
from halfangle_service.http.guards.keys import open_as
from halfangle_service.http.routes import document_route, operation_routes
from halfangle_service.http.watch.metrics import Metrics
from halfangle_service.logs import configure_logging
from halfangle_service.settings import Settings
from http_support import OPERATIONS, SINE_QUERY, Service

KEY, OTHER = new_key(), new_key()
ROW = {"operation": "sine.setting", "request": {"units": "in", "center_distance": 5, "angle": 30}}


def written(path: Path, *entries: str) -> Path:
    """A file of keys, put in place whole, as an editor or an orchestrator does it."""
    new = path.with_suffix(".new")
    new.write_text("".join(entries))
    new.chmod(0o640)
    new.replace(path)
    return path


@contextmanager
def small_service(**settings: Any) -> Iterator[Service]:
    """A service of one operation, batches and one document, which is made faster than the whole."""
    whole = Settings(**{"log_level": "error", **settings})
    configure_logging(whole.log_level)
    metrics = Metrics()
    calculator = Calculator.within(whole, metrics)
    operations = {"sine.setting": OPERATIONS["sine.setting"]}
    document = document_route("/openapi.json", lambda: b"{}", JSON, whole, opt=open_as("documents"))
    routes = [
        *operation_routes(operations, calculator, whole),
        batch_route(operations, calculator, metrics, whole),
        curve_route(operations, calculator),
        document,
    ]
    app = application(routes, whole, None, metrics)
    with TestClient(app, raise_server_exceptions=False) as client:
        yield client


def status(service: Service, key: str) -> int:
    """Status of a request with a key."""
    return service.get(SINE_QUERY, headers={"X-API-Key": key}).status_code
