"""Every call that the pages show, made: by curl, from Python, from TypeScript, by address."""

import json
import re
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import redirect_stdout
from io import StringIO
from pathlib import Path
from typing import Any
from urllib.request import urlopen

import pytest

from halfangle_service.app import served_contract
from halfangle_service.http.contract.samples import sample_answer
from halfangle_service.http.page.samples import ORIGIN, Samples, samples_of
from halfangle_service.registry import load_registry
from node_support import MODULES, package, run
from serving_support import free_port, serving
from support import need_program, single_values

OPERATIONS = load_registry().operations


@pytest.fixture(scope="module")
def origin() -> Iterator[str]:
    """Where a running service is."""
    port = free_port()
    command = ["-m", "halfangle_service.cli", "serve", "--port", str(port)]
    with serving([*command, "--log-level", "error"], port):
        yield f"http://127.0.0.1:{port}"


def stored(name: str) -> dict[str, Any]:
    """What an operation's example is answered."""
    answer: dict[str, Any] = json.loads(sample_answer(OPERATIONS[name]))
    return answer


def samples(name: str) -> Samples:
    """The calls of an operation."""
    return samples_of(OPERATIONS[name], stored(name))


@pytest.mark.program
@pytest.mark.parametrize("name", OPERATIONS)
def test_the_call_from_a_shell_runs(origin: str, name: str) -> None:
    """The shell's call gives the stored answer."""
    need_program(shutil.which("curl"), "curl is not installed")
    called = samples(name).curl.replace(ORIGIN, origin)
    done = subprocess.run(["sh", "-c", called], capture_output=True, text=True, check=True)
    assert json.loads(done.stdout) == stored(name)


@pytest.mark.parametrize("name", OPERATIONS)
def test_the_call_from_python_runs(origin: str, name: str) -> None:
    """The client's call gives the stored answer, and prints it for a person."""
    printed = StringIO()
    variables: dict[str, Any] = {}
    code = compile(samples(name).python.replace(ORIGIN, origin), f"<{name}>", "exec")
    with redirect_stdout(printed):
        exec(code, variables)  # noqa: S102  it is what the page tells a reader to run
    assert json.loads(variables["answer"].model_dump_json()) == stored(name)
    assert printed.getvalue().strip()


@pytest.fixture(scope="module")
def project(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A project in TypeScript, set up as the page says, with the contract's types."""
    for needed in ("openapi-fetch", "openapi-typescript", "typescript"):
        package(needed)
    folder = tmp_path_factory.mktemp("typescript")
    contract = folder / "openapi.json"
    contract.write_bytes(served_contract())
    generator = MODULES / "openapi-typescript/bin/cli.js"
    options = ("--default-non-nullable=false", "--output", str(folder / "halfangle.ts"))
    run("node", str(generator), str(contract), *options)
    (folder / "package.json").write_text('{"type": "module"}', "utf-8")
    (folder / "node_modules").symlink_to(MODULES)
    return folder


def compiled(*programs: Path) -> None:
    """Compile programs under strict; fails with what the compiler says."""
    strict = ("--strict", "--skipLibCheck", "--target", "es2022", "--lib", "es2022,dom")
    modules = ("--module", "esnext", "--moduleResolution", "bundler")
    run("node", str(MODULES / "typescript/bin/tsc"), *strict, *modules, *map(str, programs))


@pytest.mark.program
def test_the_calls_from_typescript_compile_and_run(origin: str, project: Path) -> None:
    """Every call compiles under strict against the contract's own types, and is answered."""
    programs = {name: project / f"{name}.ts" for name in OPERATIONS}
    for name, path in programs.items():
        path.write_text(samples(name).typescript.replace(ORIGIN, origin), "utf-8")
    compiled(*programs.values())
    program = project / "all.js"
    program.write_text(_RUN_ALL.replace("NAMES", json.dumps(list(OPERATIONS))), "utf-8")
    answers = json.loads(run("node", str(program)))
    assert answers == {name: stored(name) for name in OPERATIONS}


_RUN_ALL = """
const answers = {}, print = console.log;
for (const name of NAMES) {
  console.log = answer => { answers[name] = answer };
  await import(`./${name}.js`);
}
print(JSON.stringify(answers));
"""


@pytest.mark.program
def test_a_wrong_field_from_typescript_would_be_seen(project: Path) -> None:
    """The compiler refuses a field that the contract does not know."""
    called = project / "wrong.ts"
    right = samples("sine.setting").typescript
    called.write_text(right.replace("center_distance", "centre_distance"), "utf-8")
    with pytest.raises(AssertionError, match="centre_distance"):
        compiled(called)


@pytest.mark.parametrize("name", OPERATIONS)
def test_what_a_sheet_asks_is_one_number(origin: str, name: str) -> None:
    """The address gives the stored answer; the formula's, in short pieces, one number of it."""
    shown = samples(name)
    if not shown.address:
        pytest.skip("the request is not flat")
    with urlopen(shown.address.replace(ORIGIN, origin)) as answer:  # noqa: S310  our own
        assert json.load(answer) == stored(name)
    if not shown.formula:
        assert any(a["severity"] == "stop" for a in stored(name)["advisories"])
        return
    pieces = re.findall(r'"([^"]*)"', shown.formula)[:-1]
    assert all(len(piece) <= 255 for piece in pieces)
    with urlopen("".join(pieces).replace(ORIGIN, origin)) as answer:  # noqa: S310
        picked = float(answer.read())
    assert picked in single_values(stored(name)["result"]).values()
