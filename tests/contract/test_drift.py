"""The committed contract and client are those of this working copy, byte for byte."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from halfangle_service.app import contract_bytes

ROOT = Path(__file__).resolve().parents[2]
GENERATED = "client/halfangle_client/generated"


def generate(*arguments: str) -> "subprocess.CompletedProcess[str]":
    """Run the generator; give its status and output."""
    command = [sys.executable, str(ROOT / "openapi/generate.py"), *arguments]
    return subprocess.run(command, check=False, capture_output=True, text=True)


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A folder with copies of the contract and the generated part."""
    (tmp_path / "openapi").mkdir()
    shutil.copy(ROOT / "openapi/openapi.json", tmp_path / "openapi")
    shutil.copytree(
        ROOT / GENERATED, tmp_path / GENERATED, ignore=shutil.ignore_patterns("__pycache__")
    )
    return tmp_path


def test_contract_is_committed() -> None:
    """openapi/openapi.json is what the service serves."""
    assert (ROOT / "openapi/openapi.json").read_bytes() == contract_bytes(), (
        "run `python openapi/generate.py` and commit what it writes"
    )


def test_client_is_committed() -> None:
    """The generated part is what the generator writes from this service."""
    done = generate("--check")
    assert done.returncode == 0, done.stderr


def test_drift_is_told(copy: Path) -> None:
    """A file that differs, lacks or is left over is named, with the command that mends it."""
    (copy / GENERATED / "models.py").write_text("changed\n", "utf-8")
    (copy / GENERATED / "calls/sine.py").unlink()
    (copy / GENERATED / "calls/gone.py").write_text("", "utf-8")
    contract = ["--contract", str(ROOT / "openapi/openapi.json")]
    done = generate("--check", "--root", str(copy), *contract)
    assert done.returncode == 1
    assert sorted(done.stderr.splitlines()) == [
        "Run `python openapi/generate.py` and commit what it writes.",
        f"{GENERATED}/calls/gone.py is generated no more",
        f"{GENERATED}/calls/sine.py is missing",
        f"{GENERATED}/models.py differs",
    ]
    assert generate("--root", str(copy), *contract).returncode == 0
    assert not (copy / GENERATED / "calls/gone.py").exists()
    assert generate("--check", "--root", str(copy), *contract).returncode == 0
