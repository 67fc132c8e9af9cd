"""The browser that the tests of this folder share, one a process."""

from collections.abc import Iterator

import pytest

from browser.support import Browser, browsing, served


@pytest.fixture(scope="session")
def browser(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Browser]:
    """A browser at the pages of a running service."""
    with served() as site, browsing(site, tmp_path_factory.mktemp("profile")) as shown:
        yield shown
