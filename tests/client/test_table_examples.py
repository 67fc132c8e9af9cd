"""The examples for data frames: what they write is what the service writes, to the byte."""

import csv
import io
import os
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest
from litestar.testing import TestClient
from pydantic_core import to_json

from halfangle_service.app import create_app
from halfangle_service.settings import Settings
from support import need, need_program

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "client/examples"
#: Where CI puts Dask with what it needs, which is more than all else together.
DASK = Path(os.environ.get("HALFANGLE_DASK_PYTHON", ROOT / ".venv-dask/bin/python"))
RESULTS = ["height_to_set", "angle_as_set.dms", "deviation_arcsec", "advisories", "problem"]
#: Small and steep ones, one that looks like minutes, a gap, and what is refused.
ANGLES = [30.0, 8.18, 95.0, None, 60.0, 0.5, 45.0, -3.0, 1e-9, 22.5, 12.3456, 90.0] * 12


@pytest.fixture(scope="module")
def by_table() -> list[dict[str, str]]:
    """The rows as the service's own table has them, texts only."""
    written = io.StringIO()
    csv.writer(written).writerows([["angle", "center_distance"], *[[angle, 5] for angle in ANGLES]])
    query = "units=in&columns=height_to_set,angle_as_set.dms,deviation_arcsec"
    with TestClient(create_app(Settings(log_level="error"))) as client:
        response = client.post(
            f"/v1/tables/sine.setting?{query}",
            content=written.getvalue().encode(),
            headers={"content-type": "text/csv"},
        )
    assert response.status_code == 200, response.text[:500]
    heads, *rows = csv.reader(io.StringIO(response.text))
    names = [head.partition(" [")[0] for head in heads]
    return [dict(zip(names, row, strict=True)) for row in rows]


def run(python: Path | str, example: str, *paths: Path) -> str:
    """Run an example as its first line says."""
    command = [str(python), str(EXAMPLES / example), *map(str, paths)]
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "service")}
    done = subprocess.run(
        command, check=False, env=environment, capture_output=True, text=True, timeout=120
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return done.stdout


def cells(rows: list[dict[str, Any]]) -> list[dict[str, str]]:
    """Values of a data frame as a table writes them."""
    return [{name: _cell(row[name]) for name in RESULTS} for row in rows]


def _cell(value: Any) -> str:
    if value is None:
        return ""
    return value if isinstance(value, str) else to_json(value).decode()


def expected(by_table: list[dict[str, str]]) -> list[dict[str, str]]:
    """The columns that the examples ask for, of a table's rows."""
    return [{name: row[name] for name in RESULTS} for row in by_table]


def written_angles(path: Path) -> Any:
    """The angles as a Parquet file, a gap as null."""
    polars: Any = pytest.importorskip("polars")
    frame = polars.DataFrame({"angle": ANGLES})
    frame.write_parquet(path)
    return polars


def test_polars_gives_what_a_table_gives(tmp_path: Path, by_table: list[dict[str, str]]) -> None:
    """A table computed where it lies has the service's own values, advisories and problems."""
    need(find_spec("polars"), "polars is not installed")
    polars = written_angles(tmp_path / "angles.parquet")
    run(sys.executable, "polars_settings.py", tmp_path / "angles.parquet", tmp_path / "out.parquet")
    assert cells(polars.read_parquet(tmp_path / "out.parquet").to_dicts()) == expected(by_table)


@pytest.mark.program
def test_two_workers_give_what_a_table_gives(
    tmp_path: Path, by_table: list[dict[str, str]]
) -> None:
    """Two workers of a cluster, a part each, write the bytes that one table has."""
    need_program(DASK.exists(), "Dask's own environment is not there")
    polars = written_angles(tmp_path / "whole.parquet")
    whole = polars.read_parquet(tmp_path / "whole.parquet")
    (tmp_path / "angles").mkdir()
    third = len(whole) // 3
    for part in range(3):
        path = tmp_path / f"angles/part.{part}.parquet"
        whole.slice(part * third, third).write_parquet(path)
    run(DASK, "dask_settings.py", tmp_path / "angles", tmp_path / "settings")
    parts = sorted((tmp_path / "settings").glob("*.parquet"))
    assert len(parts) == 3
    assert cells(polars.concat(map(polars.read_parquet, parts)).to_dicts()) == expected(by_table)
