"""What the reference page shows."""

from typing import Any

from litestar.testing import TestClient


def test_names_in_texts_are_set_as_code(service: TestClient[Any]) -> None:
    """What stands between backticks in a description is code on the page, not its marks as text."""
    page = service.get("/docs").text
    assert "Inches of diameter a foot of length, whatever <code>units</code> are." in page
    assert "&lt;code&gt;" not in page
    assert "`" not in page
