"""The client's types, and what it costs to load it."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from support import need_program

CLIENT = Path(__file__).resolve().parents[2] / "client"


def pyright(*arguments: str) -> str:
    """Run pyright on this working copy; give what it prints."""
    command = shutil.which("pyright", path=str(Path(sys.executable).parent))
    need_program(
        command and shutil.which("node"), "pyright, or node that runs it, is not installed"
    )
    done = subprocess.run(
        [str(command), "--pythonpath", sys.executable, *arguments],
        check=False,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(CLIENT)},
    )
    return done.stdout + done.stderr


@pytest.mark.program
def test_every_public_type_is_known() -> None:
    """Pyright knows the type of every public name of the package."""
    said = pyright("--ignoreexternal", "--verifytypes", "halfangle_client")
    assert "Type completeness score: 100%" in said, said[-2000:]


@pytest.mark.program
def test_rows_are_typed_by_their_call(tmp_path: Path) -> None:
    """pyright, strict, types the answers of `map` by its call, and finds each wrong use."""
    program = tmp_path / "use.py"
    program.write_text(
        "# pyright: strict\n"
        "from typing import Any, assert_type\n"
        "from halfangle_client import AsyncHalfangle, Halfangle, HalfangleError, Outcomes, models\n"
        "from halfangle_client.models import SineSettingAnswer\n"
        "def right(client: Halfangle, rows: list[dict[str, object]]) -> float:\n"
        "    outcomes = client.map(client.sine.setting, rows, progress=print)\n"
        "    assert_type(outcomes, Outcomes[models.SineSettingAnswer])\n"
        "    assert_type(outcomes[0], SineSettingAnswer | HalfangleError)\n"
        "    assert_type(client.map('sine.setting', rows), Outcomes[Any])\n"
        "    return sum(answer.result.height for answer in outcomes.answers)\n"
        "async def right_too(client: AsyncHalfangle) -> None:\n"
        "    outcomes = await client.map(client.blocks.stack, [])\n"
        "    assert_type(outcomes, Outcomes[models.BlockStackAnswer])\n"
        "def wrong(client: Halfangle) -> None:\n"
        "    client.map(client.sine.setting, 5)\n"
        "    client.map(5, [])\n"
        "    client.map(client.sine.setting, [], into=Outcomes[models.BlockStackAnswer]())\n"
        "    client.map(client.sine.setting, [])[0].result\n",
        "utf-8",
    )
    found = json.loads(pyright("--outputjson", str(program)))["generalDiagnostics"]
    lines = {item["range"]["start"]["line"] + 1 for item in found if item["severity"] == "error"}
    assert lines == {15, 16, 17, 18}, found


#: Modules that take long to load, and what asks for them first.
SLOW = ("pydantic", "httpx", "halfangle_client.generated")


@pytest.mark.parametrize(
    ("code", "loaded"),
    [
        ("import halfangle_client", set[str]()),
        ("from halfangle_client import Halfangle", {"httpx", "halfangle_client.generated"}),
        ("from halfangle_client.models import TaperShank", {"pydantic", *SLOW[2:]}),
    ],
)
def test_loads_what_is_asked_for(code: str, loaded: set[str]) -> None:
    """Nothing slow is loaded before it is asked for: pydantic with the models, httpx to call."""
    program = f"{code}; import sys; print([n for n in {SLOW} if n in sys.modules])"
    done = subprocess.run(
        [sys.executable, "-c", program],
        check=True,
        capture_output=True,
        text=True,
        env={"PYTHONPATH": str(CLIENT)},
    )
    assert set(re.findall(r"[\w.]+", done.stdout)) == loaded
