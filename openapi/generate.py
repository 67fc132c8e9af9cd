"""Writes openapi.json and the generated part of the client; `--check` tells whether both are due.

    python openapi/generate.py            writes both
    python openapi/generate.py --check    writes nothing, fails where a byte would change

The same service gives the same bytes. The tools that decide those bytes are pinned in
pyproject.toml, and another release of them is refused here.
"""

import argparse
import ast
import json
import os
import subprocess
import sys
import tempfile
from collections.abc import Iterator, Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from commands import command_files
from docstrings import docstring, one_line
from earlier import earlier_release, readable
from inlining import inlined
from signatures import Call, literal, read_topics
from thinning import thinned

ROOT = Path(__file__).resolve().parent.parent
CONTRACT = "openapi/openapi.json"
GENERATED = "client/halfangle_client/generated"
PINNED = {"datamodel-code-generator": "0.89.0", "ruff": "0.17.6"}
MARK = "# Generated from openapi/openapi.json by openapi/generate.py. Do not edit."
MODEL_FLAGS = (
    "--input-file-type", "openapi",
    "--openapi-scopes", "schemas",
    "--output-model-type", "pydantic_v2.BaseModel",
    "--target-python-version", "3.11",
    "--use-annotated",
    "--use-standard-collections",
    "--use-union-operator",
    "--use-schema-description",
    "--use-field-description",
    "--use-single-line-docstring",
    "--enum-field-as-literal", "all",
    "--strict-nullable",
    "--set-default-enum-member",
    "--use-type-alias",
    "--disable-timestamp",
    "--formatters", "ruff-format",
)  # fmt: skip

Files = dict[str, bytes]


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give its exit status."""
    parser = argparse.ArgumentParser(
        prog="python openapi/generate.py",
        description="Write the contract and the generated part of the client.",
    )
    parser.add_argument("--check", action="store_true", help="write nothing; fail on a difference")
    parser.add_argument("--contract", type=Path, help="take this contract, not the service's own")
    parser.add_argument("--root", type=Path, default=ROOT, help="write below this folder")
    options = parser.parse_args(arguments)
    _require_pinned()
    contract = options.contract.read_bytes() if options.contract else service_contract()
    files = generate(contract)
    if options.check:
        return _report(list(differences(files, options.root)))
    write(files, options.root)
    print(f"Wrote {len(files)} files.")
    return 0


def service_contract() -> bytes:
    """The contract as the service of this working copy prints it."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "service")}
    command = [sys.executable, "-m", "halfangle_service.cli", "contract"]
    return subprocess.run(command, check=True, env=environment, stdout=subprocess.PIPE).stdout


def generate(contract: bytes) -> Files:
    """Give every generated file by its path."""
    document = _read_by_the_client(json.loads(contract))
    topics = read_topics(document)
    templates = _templates()
    marked = f'{MARK}\n"""{{}}"""\n'
    sources = {
        "__init__.py": marked.format("The generated part of the client."),
        "models.py": _models(document, topics),
        "client.py": templates.get_template("client.py.jinja").render(topics=topics),
        "calls/__init__.py": templates.get_template("calls.py.jinja").render(topics=topics),
    }
    topic_template = templates.get_template("topic.py.jinja")
    for topic, calls in topics.items():
        sources[f"calls/{topic}.py"] = topic_template.render(topic=topic, calls=calls)
    data = {f"commands/{name}": text for name, text in command_files(document, MARK).items()}
    written = {**_formatted(sources), **data}
    return {
        CONTRACT: contract,
        **{f"{GENERATED}/{path}": text.encode() for path, text in written.items()},
    }


def _read_by_the_client(contract: dict[str, Any]) -> dict[str, Any]:
    """The contract in one piece, of which the release before may lack what is new."""
    earlier = earlier_release(ROOT / "openapi" / "released", contract["info"]["version"])
    return readable(inlined(contract), earlier and inlined(earlier))


def differences(files: Files, root: Path) -> Iterator[str]:
    """Paths that are missing, stale, or that nothing generates any more."""
    for path, content in files.items():
        target = root / path
        if not target.is_file():
            yield f"{path} is missing"
        elif target.read_bytes() != content:
            yield f"{path} differs"
    yield from (f"{path} is generated no more" for path in _leftover(files, root))


def write(files: Files, root: Path) -> None:
    """Write every file, and remove those that nothing generates any more."""
    for path in _leftover(files, root):
        (root / path).unlink()
    for path, content in files.items():
        target = root / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content)


def _leftover(files: Files, root: Path) -> list[str]:
    kinds = ("*.py", "*.json")
    written = (path for kind in kinds for path in (root / GENERATED).rglob(kind))
    found = (path.relative_to(root).as_posix() for path in written)
    return sorted(path for path in found if path not in files)


def _report(found: list[str]) -> int:
    for line in found:
        print(line, file=sys.stderr)
    if found:
        print("Run `python openapi/generate.py` and commit what it writes.", file=sys.stderr)
    return 1 if found else 0


def _require_pinned() -> None:
    for name, wanted in PINNED.items():
        if version(name) != wanted:
            raise SystemExit(f"{name} {wanted} decides the bytes; {version(name)} is installed.")


def _models(contract: dict[str, Any], topics: dict[str, list[Call]]) -> str:
    """The models that the calls take and give, by datamodel-code-generator."""
    arguments = [a.schema for calls in topics.values() for call in calls for a in call.arguments]
    with tempfile.TemporaryDirectory() as folder:
        source, target = Path(folder, "contract.json"), Path(folder, "models.py")
        source.write_text(json.dumps(thinned(contract, arguments)), "utf-8")
        command = [_tool("datamodel-codegen"), "--input", str(source), "--output", str(target)]
        command += [*MODEL_FLAGS, "--custom-file-header", MARK]
        done = subprocess.run(
            command, check=False, env=_environment(), capture_output=True, text=True
        )
        if done.returncode:
            raise SystemExit(f"datamodel-codegen failed:\n{done.stderr}")
        return _with_exports(target.read_text("utf-8"))


def _with_exports(models: str) -> str:
    """Add the list of the models, so that they alone are taken over by whoever imports all."""
    tree = ast.parse(models)
    names = [node.name for node in tree.body if isinstance(node, ast.ClassDef)]
    aliases = [t for node in tree.body if isinstance(node, ast.Assign) for t in node.targets]
    names += [target.id for target in aliases if isinstance(target, ast.Name)]
    return f"{models}\n\n__all__ = {literal(sorted(names))}\n"


def _formatted(sources: dict[str, str]) -> dict[str, str]:
    """Format, and leave out the imports that a topic does not use."""
    with tempfile.TemporaryDirectory() as folder:
        for path, text in sources.items():
            target = Path(folder, path)
            target.parent.mkdir(exist_ok=True)
            target.write_text(text, "utf-8")
        common = ["--quiet", "--isolated", "--no-cache", "--line-length=100"]
        common += ["--target-version=py311", folder]
        ruff = _tool("ruff")
        known = "lint.isort.known-first-party=['halfangle_client']"
        tidy = ["check", "--fix", "--select=I,F401", f"--config={known}"]
        subprocess.run([ruff, *tidy, *common], check=True)
        subprocess.run([ruff, "format", *common], check=True)
        return {path: Path(folder, path).read_text("utf-8") for path in sources}


def _tool(name: str) -> str:
    """A command installed beside this Python."""
    return str(Path(sys.executable).parent / name)


def _environment() -> dict[str, str]:
    """The environment, with the tools beside this Python found first (one calls the other)."""
    beside = str(Path(sys.executable).parent)
    return {**os.environ, "PATH": os.pathsep.join([beside, os.environ.get("PATH", "")])}


def _templates() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(Path(__file__).parent / "templates"),
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
        autoescape=False,  # noqa: S701 -- the text is Python, not HTML
    )
    environment.filters["docstring"] = docstring
    environment.filters["one_line"] = one_line
    environment.filters["literal"] = literal
    environment.filters["literal_tuple"] = lambda values: literal(tuple(values))
    environment.filters["pascal"] = lambda text: "".join(p.title() for p in text.split("_"))
    return environment


if __name__ == "__main__":
    raise SystemExit(main())
