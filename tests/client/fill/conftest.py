"""A client of the service in this process, for all tests of filling."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from fill_support import rich_workbook
from halfangle_client import Halfangle
from halfangle_service.app import create_app
from halfangle_service.settings import Settings


@pytest.fixture(scope="session")
def shop() -> Iterator[Halfangle]:
    """A client of the application itself."""
    with Halfangle.in_process(create_app(Settings(log_level="error"))) as client:
        yield client


@pytest.fixture(scope="session")
def rich(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A workbook that holds what workbooks hold. Not to be changed."""
    return rich_workbook(tmp_path_factory.mktemp("rich") / "plates.xlsx", rows=12)
