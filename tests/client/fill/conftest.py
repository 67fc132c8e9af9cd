"""What all tests of filling share."""

from pathlib import Path

import pytest

from fill_support import rich_workbook
from halfangle_client import Halfangle


@pytest.fixture(scope="session")
def shop(client: Halfangle) -> Halfangle:
    """A client of the service in this process."""
    return client


@pytest.fixture(scope="session")
def rich(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A workbook that holds what workbooks hold. Not to be changed."""
    return rich_workbook(tmp_path_factory.mktemp("rich") / "plates.xlsx", rows=12)
