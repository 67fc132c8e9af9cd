"""The notebook of the client's examples runs, and shows what it says it shows."""

import json
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

from halfangle_client import Halfangle
from support import need

NOTEBOOK = Path(__file__).resolve().parents[2] / "client/examples/plan_a_center.ipynb"


def code_cells() -> list[dict[str, Any]]:
    """The cells of code."""
    cells = json.loads(NOTEBOOK.read_text("utf-8"))["cells"]
    return [cell for cell in cells if cell["cell_type"] == "code"]


def test_the_notebook_is_kept_without_outputs() -> None:
    """What the notebook shows is made when it is run, so that nothing in it grows old."""
    cells = code_cells()
    assert len(cells) > 5
    assert all(cell["outputs"] == [] and cell["execution_count"] is None for cell in cells)


@pytest.fixture
def shell(live: Halfangle, monkeypatch: pytest.MonkeyPatch) -> Iterator[Any]:
    """The shell that a notebook's kernel runs its cells in, a real service beside it."""
    need(find_spec("IPython"), "IPython is not installed")
    from IPython.core.interactiveshell import InteractiveShell  # noqa: PLC0415
    from traitlets.config import Config  # noqa: PLC0415

    monkeypatch.setenv("HALFANGLE_URL", live._manners.base_url)
    quiet = Config({"HistoryManager": {"enabled": False, "hist_file": ":memory:"}})
    shell = InteractiveShell.instance(config=quiet)
    yield shell
    InteractiveShell.clear_instance()


def test_the_notebook_plans_the_job(shell: Any) -> None:
    """Every cell runs; the plan and the rows are shown as HTML, the drawing as SVG."""
    shown = []
    for cell in code_cells():
        done = shell.run_cell("".join(cell["source"]))
        done.raise_error()
        shown.append(shell.display_formatter.format(done.result)[0] if done.result else {})
    html = [data["text/html"] for data in shown if "text/html" in data]
    assert len(html) == 2
    assert "<b>caution</b>" in html[0]
    assert "InvalidRequest: " in html[1]
    assert [data["image/svg+xml"][:4] for data in shown if "image/svg+xml" in data] == ["<svg"]
    assert shell.user_ns["plan"].result.ways[0].forecast == "holds"
    assert len(shell.user_ns["settings"].answers) == 5
