"""The generator on a contract harder than today's: what topics may bring must need no edit."""

import ast
import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]
REFERENCE = "#/components/schemas/"
JSON = "application/json"


def reference(name: str) -> dict[str, str]:
    """A schema by its name."""
    return {"$ref": REFERENCE + name}


def model(required: tuple[str, ...] = (), **fields: dict[str, Any]) -> dict[str, Any]:
    """An object with fields."""
    return {
        "type": "object",
        "title": "Titled",
        "additionalProperties": False,
        "description": 'First line.\n\nSecond paragraph with `code`, \\d and """quotes""".',
        "required": list(required),
        "properties": fields,
    }


LENGTH: dict[str, Any] = {
    "type": "number",
    "minimum": 1e-6,
    "maximum": 1e4,
    "x-unit": "length",
    "title": "L",
}
ANGLE = {
    "anyOf": [
        {"type": "number", "exclusiveMinimum": 0, "exclusiveMaximum": 90},
        {"type": "string", "pattern": '^\\d+°"″$', "maxLength": 40},
    ],
    "x-unit": "degree",
    "description": "An angle.",
}
NULL: dict[str, Any] = {"type": "null"}
TEXT = {"type": "string"}
PAIR = {"type": "array", "prefixItems": [LENGTH, LENGTH], "minItems": 2, "maxItems": 2}

SCHEMAS: dict[str, Any] = {
    "Problem": {
        **json.loads((ROOT / "openapi/openapi.json").read_text("utf-8"))["components"]["schemas"][
            "Problem"
        ]
    },
    "FieldProblem": model(("pointer", "message"), pointer=TEXT, message=TEXT),
    "Point": model(("x", "y"), x=LENGTH, y=LENGTH),
    "Cone": model(("kind",), kind={"const": "cone", "type": "string"}, angle=ANGLE),
    "Face": model(
        ("kind", "outline"),
        kind={"const": "face", "type": "string"},
        outline={"type": "array", "items": reference("Point"), "minItems": 3},
    ),
    "Grade": {"type": "string", "enum": ["AA", "A+", "B"], "title": "Grade"},
    "HardRequest": model(
        ("from", "shape", "shapes", "must_be_null_or_given"),
        **{
            "from": LENGTH,
            "class": {"type": "string", "default": 'it\'s "so"', "minLength": 1},
            "set": {"anyOf": [{"type": "string"}, NULL], "default": None},
            "list": {"anyOf": [{"type": "array", "items": LENGTH}, NULL], "default": None},
            "float": {"anyOf": [ANGLE, NULL], "default": None, "description": "Nested union."},
            "str": {"type": "integer", "minimum": 1, "maximum": 8, "default": 3, "x-unit": "count"},
            "dict": {"type": "object", "additionalProperties": {"type": "number"}, "default": {}},
            "timeout_seconds": {"type": "number", "default": 1.5, "x-unit": "second"},
            "self": {"type": "boolean", "default": False},
            "shape": {
                "oneOf": [reference("Cone"), reference("Face")],
                "discriminator": {
                    "propertyName": "kind",
                    "mapping": {"cone": REFERENCE + "Cone", "face": REFERENCE + "Face"},
                },
            },
            "shapes": {
                "type": "array",
                "items": {
                    "oneOf": [reference("Cone"), reference("Face")],
                    "discriminator": {
                        "propertyName": "kind",
                        "mapping": {"cone": REFERENCE + "Cone", "face": REFERENCE + "Face"},
                    },
                },
            },
            "grade": {**reference("Grade"), "default": "A+"},
            "start": {"anyOf": [reference("Point"), NULL], "default": None},
            "corner": {**reference("Point"), "default": {"x": 1.0, "y": 2.0}},
            "limit": {"anyOf": [LENGTH, NULL], "default": 2.5, "description": "Null: no limit."},
            "must_be_null_or_given": {"anyOf": [LENGTH, NULL]},
            "pair": {**PAIR, "items": False, "default": [1, 2]},
            "mode": {"enum": ["fast", "sure"], "type": "string", "default": "sure"},
            "angles": {"type": "array", "items": ANGLE, "maxItems": 9, "default": []},
            "title": {"type": "string", "default": "", "description": "A field called title."},
            "anything": {"default": None},
        },
    ),
    "EasyRequest": model(("x",), x=LENGTH),
    "RowsRequest": model(("rows",), rows={"type": "array", "items": reference("EasyRequest")}),
    "BatchAnswer": model(("rows",), rows={"type": "array", "items": reference("EasyRequest")}),
    "HardAnswer": model(
        ("result",),
        result={"anyOf": [reference("Point"), NULL]},
        by_name={"type": "object", "additionalProperties": reference("Point")},
        pair=PAIR,
    ),
}


def operation(
    tag: str,
    verb: str,
    *,
    body: dict[str, Any] | None = None,
    answers: str = JSON,
    parameters: tuple[dict[str, Any], ...] = (),
    heavy: bool = False,
) -> dict[str, Any]:
    """An operation of the contract."""
    schema = reference("HardAnswer") if answers == JSON else {"type": "string"}
    return {
        "tags": [tag],
        "operationId": f"{tag}_{verb}",
        "summary": 'What "it" does',
        "description": 'With \\ and """.\n\nSecond.',
        "parameters": list(parameters),
        **({"x-heavy": True} if heavy else {}),
        **({"requestBody": {"content": body}} if body else {}),
        "responses": {
            "200": {"description": "", "content": {answers: {"schema": schema}}},
            "422": {"$ref": "#/components/responses/Refused"},
        },
    }


def body_of(name: str) -> dict[str, Any]:
    """A body of JSON, by the name of its schema."""
    return {JSON: {"schema": reference(name)}}


KEY = {"name": "key", "in": "path", "required": True, "schema": {"type": "string"}, "example": "a"}
HARD_BODY = {
    JSON: {
        "schema": reference("HardRequest"),
        "example": {
            "from": 1,
            "shape": {"kind": "cone"},
            "shapes": [],
            "must_be_null_or_given": None,
        },
    },
    "text/csv": {"schema": {"type": "string"}},
}
PATHS: dict[str, Any] = {
    "/v1/hard/all": {
        "post": operation("hard", "all", body=HARD_BODY, heavy=True),
        "get": operation("hard", "all_by_query"),
    },
    "/v1/hard/import": {"post": operation("hard", "import", body=HARD_BODY)},
    "/v1/easy/one": {"post": operation("easy", "one", body=body_of("EasyRequest"))},
    "/v1/easy/rows": {"post": operation("easy", "rows", body=body_of("RowsRequest"))},
    "/v1/lines": {
        "post": {
            **operation("lines", "run", body=body_of("RowsRequest") | {"application/x-ndjson": {}}),
            "responses": {"200": {"content": body_of("BatchAnswer")}},
        }
    },
    "/v1/tables/{key}": {
        "post": operation(
            "tables",
            "run",
            body={"text/csv": {"schema": {"type": "string"}}},
            answers="text/csv",
            parameters=(KEY,),
        )
    },
    "/v1/sheets/{key}": {
        "get": operation(
            "sheets",
            "draw",
            answers="application/pdf",
            parameters=(
                KEY,
                {"name": "paper", "in": "query", "schema": {"type": "string", "default": "A4"}},
                {"name": "scale", "in": "query", "schema": {"type": "number"}},
            ),
        )
    },
    "/v1/values/{key}": {
        "get": operation(
            "values",
            "get_one",
            answers="text/plain",
            parameters=(KEY, {"name": "request", "in": "query", "schema": {"type": "object"}}),
        )
    },
    **{
        f"/v1/many-{n}/solve": {"post": operation(f"many-{n}", "solve", body=HARD_BODY)}
        for n in range(20)
    },
}
REFUSED = {
    "description": "No.",
    "content": {"application/problem+json": {"schema": reference("Problem")}},
}
CONTRACT = {
    "openapi": "3.1.0",
    "info": {"title": "Hard", "version": "1"},
    "paths": PATHS,
    "components": {"schemas": SCHEMAS, "responses": {"Refused": REFUSED}},
}

USE = """\
from typing import Any, assert_type
from halfangle_client import Halfangle, models
from halfangle_client.conversation import Fault
from halfangle_client.endpoint import Message, Reply

class Mirror:
    def exchange(self, address: str, message: Message, seconds: float) -> Reply | Fault:
        self.message, self.seconds = message, round(seconds, 1)
        answers = {"text/csv": b"a,b", "application/pdf": b"%PDF"}
        wanted = message.headers["Accept"].partition(",")[0]
        return Reply(200, {}, answers.get(wanted, b'{"result":null,"more":1}'))
    def close(self) -> None: ...

client = Halfangle()
client.close()
mirror: Any = Mirror()
client._connection = mirror
cone = models.Cone(kind="cone", angle="8 18")
face = models.Face(kind="face", outline=[models.Point(x=0, y=0)])
answer = client.hard.all(
    from_=1, shape=cone, shapes=[face, cone], must_be_null_or_given=None, timeout_seconds_=2,
    list=[1, 2], float="8 18", angles=[1, "8 18"], limit=None, self_=True, timeout_seconds=7,
)
assert_type(answer, models.HardAnswer)
assert mirror.seconds == 7
print(mirror.message.body.decode())
client.hard.import_(from_=1, shape=cone, shapes=[], must_be_null_or_given=2)
print(mirror.seconds, mirror.message.path)
client.hard.all(from_=1, shape=cone, shapes=[], must_be_null_or_given=2)
print(mirror.seconds)
text = client.tables.run("sine.setting", "a,b\\n1,2")
assert_type(text, str)
print(mirror.message.path, mirror.message.headers["Content-Type"], mirror.message.body, text)
sheet = client.sheets.draw("a/b", scale=0.5)
assert_type(sheet, bytes)
print(mirror.message.path, mirror.message.query, sheet)
print(client.call("tables.run", {"key": "x"}, content="1"))
print(client.call("sheets.draw", {"key": "x"}))
client.many_3.solve(from_=1, shape=cone, shapes=[], must_be_null_or_given=2)
print(mirror.message.path)
"""

SENT = {
    "from": 1,
    "class": 'it\'s "so"',
    "list": [1, 2],
    "float": "8 18",
    "str": 3,
    "timeout_seconds": 2,
    "self": True,
    "shape": {"kind": "cone", "angle": "8 18"},
    "shapes": [
        {"kind": "face", "outline": [{"x": 0.0, "y": 0.0}]},
        {"kind": "cone", "angle": "8 18"},
    ],
    "grade": "A+",
    "limit": None,
    "must_be_null_or_given": None,
    "mode": "sure",
    "angles": [1, "8 18"],
    "title": "",
}


@pytest.fixture(scope="module")
def generated(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The client generated from the hard contract, the hand-written part beside it."""
    root = tmp_path_factory.mktemp("hard")
    shutil.copytree(
        ROOT / "client/halfangle_client",
        root / "client/halfangle_client",
        ignore=shutil.ignore_patterns("generated", "__pycache__", "cli", "demo.py", "plan"),
    )
    (root / "contract.json").write_text(json.dumps(CONTRACT), "utf-8")
    run(root, str(ROOT / "openapi/generate.py"), "--contract", "contract.json", "--root", ".")
    (root / "use.py").write_text(USE, "utf-8")
    return root


def run(root: Path, *arguments: str) -> str:
    """Run Python in a folder; give what it prints."""
    done = subprocess.run(
        [sys.executable, *arguments],
        check=False,
        capture_output=True,
        text=True,
        cwd=root,
        env={"PYTHONPATH": "client", "MYPYPATH": "client", "PYTHONUTF8": "1"},
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def test_a_hard_contract_makes_a_client_that_works(generated: Path) -> None:
    """Keywords, builtins and the client's own words as fields; unions, maps, pairs; CSV and PDF."""
    lines = run(generated, "-W", "error", "use.py").splitlines()
    assert json.loads(lines[0]) == SENT
    assert lines[1:] == [
        "10.0 /v1/hard/import",
        "60.0",
        "/v1/tables/sine.setting text/csv b'a,b\\n1,2' a,b",
        "/v1/sheets/a%2Fb {'paper': 'A4', 'scale': '0.5'} b'%PDF'",
        "a,b",
        "b'%PDF'",
        "/v1/many-3/solve",
    ]


def test_what_takes_any_request_is_no_call(generated: Path) -> None:
    """Where fields have no names, or rows are lines, the client has no call and no model."""
    calls = {path.stem for path in generated.rglob("calls/*.py")}
    assert {"easy", "hard", "sheets", "tables"} < calls
    assert not {"values", "lines"} & calls
    assert "BatchAnswer" not in models_of(generated / "client/halfangle_client")


def test_a_hard_contract_makes_a_client_that_is_typed(generated: Path) -> None:
    """Generated and hand-written part and their use pass the type checker at its strictest."""
    run(generated, "-m", "mypy", "--strict", "--config-file=", "client/halfangle_client", "use.py")


def test_the_same_contract_gives_the_same_bytes(generated: Path) -> None:
    """A second run finds nothing to write."""
    arguments = ["--check", "--contract", "contract.json", "--root", "."]
    run(generated, str(ROOT / "openapi/generate.py"), *arguments)


def names_in(tree: ast.AST) -> set[str]:
    """Every name that a piece of code mentions: bare, of a module, or imported."""
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Name):
            found.add(node.id)
        elif isinstance(node, ast.Attribute):
            found.add(node.attr)
        elif isinstance(node, ast.alias):
            found.add(node.name)
    return found


def models_of(package: Path) -> dict[str, set[str]]:
    """Every class and named type of the models, with the names that its definition mentions."""
    found = {}
    for node in ast.parse((package / "generated/models.py").read_text("utf-8")).body:
        if isinstance(node, ast.ClassDef):
            found[node.name] = names_in(node)
        elif isinstance(node, ast.Assign) and isinstance(node.targets[0], ast.Name):
            found[node.targets[0].id] = names_in(node.value)
    del found["__all__"]
    return found


def unused_models(package: Path) -> set[str]:
    """Models that neither a call, nor hand-written code, nor a used model mentions."""
    unused = models_of(package)
    assert unused, "no models: the check looks in the wrong place"
    others = (path for path in package.rglob("*.py") if path.name != "models.py")
    waiting = [names_in(ast.parse(path.read_text("utf-8"))) for path in others]
    while waiting:
        waiting += [unused.pop(name) for name in waiting.pop() if name in unused]
    return set(unused)


@pytest.mark.parametrize("whose", ["ours", "hard"])
def test_no_model_is_dead(whose: str, generated: Path) -> None:
    """Every model is named by a call, by hand-written code, or by a model that is so named."""
    root = ROOT if whose == "ours" else generated
    assert unused_models(root / "client/halfangle_client") == set()


def test_a_body_is_a_model_where_an_argument_names_it(generated: Path) -> None:
    """Bodies of requests are left out, but for one that another call takes as an argument."""
    models = models_of(generated / "client/halfangle_client")
    assert {name for name in models if "Request" in name} == {"EasyRequest"}
    assert {"Cone", "Face", "Point", "Grade", "HardAnswer", "Problem"} <= set(models)
