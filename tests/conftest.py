"""What every test may ask for: the service in process, and a caller of operations."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import settings as hypothesis_settings
from litestar.testing import TestClient

from fields_support import watched_answer
from halfangle_service.app import create_app
from halfangle_service.registry import load_registry
from halfangle_service.settings import Settings
from support import DRIVING, Call

pytest_plugins = ["fields_plugin"]

# The same examples at every run: a change is judged by what it changes, not by the draw. No test
# fails because a machine is slow.
hypothesis_settings.register_profile("repeatable", derandomize=True, deadline=None)
hypothesis_settings.load_profile("repeatable")


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item: pytest.Item) -> None:
    """Only what is marked so may drive a program."""
    DRIVING.allowed = item.get_closest_marker("program") is not None


@pytest.fixture(scope="session")
def settings() -> Settings:
    """Settings of the service under test: the defaults, whatever the environment says."""
    return Settings(log_level="error")


@pytest.fixture(scope="session")
def service(settings: Settings) -> Iterator[TestClient[Any]]:
    """The whole service in process, called as HTTP would."""
    with TestClient(create_app(settings), raise_server_exceptions=False) as client:
        yield client


@pytest.fixture(scope="session")
def call() -> Call:
    """Run an operation by its dotted name, without HTTP; gives the answer as JSON data.

    `call("sine.setting", units="in", center_distance=5, angle=30)["result"]["height"]`.
    Raises pydantic's ValidationError or a Refusal as the operation does.
    """

    def run(name: str, /, **request: Any) -> dict[str, Any]:
        operation = load_registry().operations[name]
        validated = operation.request.model_validate_json(json.dumps(request))
        return watched_answer(name, json.loads(operation.answer_json(validated)))

    return run
