"""What the client exports, imports and promises."""

import ast
import subprocess
import sys
from pathlib import Path
from typing import Any, Literal, get_args, get_origin

import pytest
from pydantic import BaseModel

import halfangle_client
from halfangle_client import errors, models
from halfangle_client.answer import AnswerModel
from halfangle_client.generated import models as generated

PACKAGE = Path(halfangle_client.__file__).parent
MODULES = sorted(PACKAGE.rglob("*.py"))
MODELS: dict[str, type[BaseModel]] = {
    name: model
    for name, model in vars(models).items()
    if isinstance(model, type)
    and issubclass(model, BaseModel)
    and model.__module__ == generated.__name__
}
MARK = "# Generated from openapi/openapi.json by openapi/generate.py. Do not edit."


def imports(path: Path) -> set[str]:
    """Top-level names of the packages that a module imports."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            found.add((node.module or "").partition(".")[0])
    return found


def test_exported_names() -> None:
    """The names that users import are these: a change here is a change for them."""
    assert halfangle_client.__all__ == [
        "AsyncHalfangle",
        "BatchOutcomes",
        "Halfangle",
        "HalfangleError",
        "Interrupted",
        "Outcomes",
        "ProblemError",
        "Retries",
        "Sheet",
        "errors",
        "models",
    ]
    assert all(hasattr(halfangle_client, name) for name in halfangle_client.__all__)
    assert halfangle_client.ProblemError is errors.ProblemError


def test_one_module_knows_httpx() -> None:
    """Only transport.py imports httpx, so that another HTTP library is a change in one place."""
    assert [p.name for p in MODULES if "httpx" in imports(p)] == ["transport.py"]


def test_needs_four_packages() -> None:
    """The client imports four packages, two of them for the command, and nothing of the service.

    A fifth is for workbooks alone, and an extra.
    """
    extra = [p for p in MODULES if "lxml" in imports(p)]
    assert all(p.is_relative_to(PACKAGE / "fill" / "books") for p in extra)
    used = set().union(*map(imports, MODULES)) - set(sys.stdlib_module_names) - {"lxml"}
    assert used == {"click", "halfangle_client", "httpx", "pydantic", "pydantic_core", "rich"}
    for_command = {name for p in MODULES if "cli" not in p.parts for name in imports(p)}
    assert not for_command & {"click", "rich"}


def test_is_typed() -> None:
    """The package says that it carries types."""
    assert (PACKAGE / "py.typed").is_file()


def test_generated_files_say_so() -> None:
    """Every generated file is marked in its first line, and no other file is."""
    for path in MODULES:
        first = path.read_text("utf-8").partition("\n")[0]
        assert (first == MARK) == ("generated" in path.relative_to(PACKAGE).parts), path


def test_typed_use_is_checked(tmp_path: Path) -> None:
    """A type checker accepts right use of the client and finds each wrong one."""
    program = tmp_path / "use.py"
    program.write_text(
        "from typing import assert_type\n"
        "from halfangle_client import AsyncHalfangle, Halfangle, models\n"
        "def right(client: Halfangle) -> float:\n"
        "    answer = client.sine.setting(units='in', center_distance=5, angle='8 18')\n"
        "    assert_type(answer, models.SineSettingAnswer)\n"
        "    assert_type(answer.advisories, list[models.Advisory])\n"
        "    return answer.result.height\n"
        "async def right_too(client: AsyncHalfangle) -> float:\n"
        "    return (await client.blocks.stack(units='mm', height=1)).result.total\n"
        "def wrong(client: Halfangle) -> None:\n"
        "    client.sine.setting(units='ft', center_distance=5, angle=30)\n"
        "    client.sine.setting(units='in', center_distance='5', angle=30)\n"
        "    client.sine.setting(units='in', center_distance=5)\n"
        "    client.sine.setting(units='in', center_distance=5, angle=30, angel=1)\n"
        "    client.sine.setting('in', 5, 30)\n"
        "    models.TaperShank(kind='straight', designation='morse-2')\n",
        "utf-8",
    )
    done = subprocess.run(
        [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", "--config-file=", program],
        check=False,
        capture_output=True,
        text=True,
        env={"MYPYPATH": str(PACKAGE.parent), "PATH": ""},
        cwd=tmp_path,
    )
    lines = [int(line.split(":")[1]) for line in done.stdout.splitlines() if ": error:" in line]
    assert sorted(set(lines)) == [11, 12, 13, 14, 15, 16], done.stdout + done.stderr


@pytest.mark.parametrize("name", ["Halfangle", "AsyncHalfangle"])
def test_a_client_has_a_topic_for_each_group_of_calls(name: str) -> None:
    """Every topic of the generated calls is an attribute of both clients."""
    topics = {p.stem for p in (PACKAGE / "generated/calls").glob("*.py")} - {"__init__"}
    source = ast.parse((PACKAGE / "generated/client.py").read_text("utf-8"))
    client = next(n for n in source.body if isinstance(n, ast.ClassDef) and n.name == name)
    attributes = {n.attr for n in ast.walk(client) if isinstance(n, ast.Attribute)}
    assert topics
    assert topics <= attributes


def is_closed(annotation: Any) -> bool:
    """Whether a type takes no other word than those that it names."""
    if get_origin(annotation) is Literal:
        return True
    parts = get_args(annotation)
    return str not in parts and any(is_closed(part) for part in parts)


def test_a_closed_choice_is_seen() -> None:
    """The check below tells an open choice from a closed one, wherever it stands."""
    assert is_closed(list[Literal["a"]] | None)
    assert is_closed(dict[str, list[Literal["a"] | None]] | Literal["b"])
    assert not is_closed(list[Literal["a", "b"] | str] | None)


@pytest.mark.parametrize("name", MODELS)
def test_answers_are_open_and_requests_closed(name: str) -> None:
    """What comes back may hold a new word or field and no false number; what is passed may not.

    A model of an answer is none of a request, or one of the two would be wrong.
    """
    model = MODELS[name]
    closed = [field for field, info in model.model_fields.items() if is_closed(info.annotation)]
    if issubclass(model, AnswerModel):
        assert closed == []
        assert model.model_config["strict"]
        assert model.model_config["allow_inf_nan"] is False
        assert model.model_config.get("extra") != "forbid"
    else:
        assert model.model_config["extra"] == "forbid"


def test_both_kinds_of_models_are_met() -> None:
    """There are models of answers, and of requests, some of them with closed choices."""
    requests = {n: m for n, m in MODELS.items() if not issubclass(m, AnswerModel)}
    assert 0 < len(requests) < len(MODELS)
    assert any(is_closed(f.annotation) for m in requests.values() for f in m.model_fields.values())
