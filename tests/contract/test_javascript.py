"""The contract as front ends read it: JavaScript's own expressions, and its well-known programs."""

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from halfangle_service.app import contract_bytes, served_contract
from node_support import MODULES, node, package, run
from releases.schemas import calculations

pytestmark = pytest.mark.program

_COMPILE = """
const [patterns] = process.argv.slice(1).map(p => JSON.parse(require("fs").readFileSync(p)));
const refused = [];
for (const pattern of patterns) for (const flag of ["u", "v"]) {
  try { new RegExp(pattern, flag) } catch (error) { refused.push(error.message) }
}
console.log(JSON.stringify(refused));
"""


def patterns_of(value: Any) -> Iterator[str]:
    """Every pattern of a document."""
    if isinstance(value, list):
        for part in value:
            yield from patterns_of(part)
    elif isinstance(value, dict):
        if isinstance(value.get("pattern"), str):
            yield value["pattern"]
        for part in value.values():
            yield from patterns_of(part)


def refused_by_javascript(patterns: list[str], folder: Path) -> list[str]:
    """What JavaScript says against patterns, with its flag `u` and with `v`."""
    written = folder / "patterns.json"
    written.write_text(json.dumps(patterns), "utf-8")
    refused: list[str] = json.loads(node(_COMPILE, str(written)))
    return refused


def test_every_pattern_is_one_of_javascript(tmp_path: Path) -> None:
    """Each pattern of the contract is an expression under the flags that validators and forms set.

    Validators of JSON Schema compile with `u`, a browser the pattern of an input with `v`.
    """
    patterns = sorted(set(patterns_of(json.loads(contract_bytes()))))
    assert len(patterns) >= 2
    assert refused_by_javascript(patterns, tmp_path) == []


@pytest.mark.parametrize("pattern", [r"[\"″”]", r"\°", r"[a-z&&[aeiou]"])
def test_a_pattern_that_javascript_refuses_would_be_seen(pattern: str, tmp_path: Path) -> None:
    """A sign escaped for nothing, or marks of sets of signs, are refused under a flag."""
    assert refused_by_javascript([pattern], tmp_path) != []


# Validators -----------------------------------------------------------------------------------
_VALIDATE = """
const fs = require("fs");
const Ajv = require("ajv/dist/2020").default;
const [path, stored] = process.argv.slice(1);
const document = JSON.parse(fs.readFileSync(path));
const ajv = new Ajv();
ajv.addVocabulary(["components", "x-unit", "x-labels", "x-rules", "discriminator", "example"]);
ajv.addFormat("angle", true);
ajv.addSchema({$id: "contract", components: document.components}, "contract");
const found = {};
for (const [path, item] of Object.entries(document.paths)) {
  // Sheets and lines are asked for as the answer is; rows of a batch or table are of any operation.
  if (!item.post || /\\/(sheet|csv|batches|{operation})$/.test(path)) continue;
  const content = item.post.requestBody.content["application/json"];
  try {
    const validate = ajv.compile({$ref: "contract" + content.schema.$ref});
    if (!validate(content.example)) found[path] = ajv.errorsText(validate.errors);
    else if (validate({...content.example, unknown: 1})) found[path] = "takes an unknown field";
    const answered = item.post.responses["200"].content["application/json"].schema;
    const name = path.replace("/v1/", "").replace("/", ".");
    const answer = JSON.parse(fs.readFileSync(`${stored}/${name}.json`));
    const fits = ajv.compile({$ref: "contract" + answered.$ref});
    if (!fits(answer)) found[path] = ajv.errorsText(fits.errors);
    delete answer.result;
    if (fits(answer)) found[path] = "takes an answer without its result";
  } catch (error) { found[path] = error.message }
}
console.log(JSON.stringify(found));
"""


def test_schemas_compile_and_take_their_examples_in_a_validator(contract: Path) -> None:
    """Ajv with its defaults compiles every request and answer, and holds the stored ones to them.

    It wants to be told the names of our own words and of the format of angles, and nothing else.
    """
    package("ajv")
    stored = Path(__file__).parents[2] / "openapi" / "examples"
    assert json.loads(node(_VALIDATE, str(contract), str(stored))) == {}


@pytest.fixture(scope="module")
def contract(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The contract as it is served, in a file."""
    path = tmp_path_factory.mktemp("contract") / "openapi.json"
    path.write_bytes(served_contract())
    return path


def test_the_contract_is_without_a_finding_of_a_linter(contract: Path) -> None:
    """Redocly's stricter rules find nothing, but that no licence is named by its address."""
    package("@redocly/cli")
    program = MODULES / "@redocly/cli/bin/cli.js"
    rules = MODULES.parent / "redocly.yaml"
    run("node", str(program), "lint", "--config", str(rules), str(contract))


def test_a_finding_of_the_linter_would_be_seen(contract: Path, tmp_path: Path) -> None:
    """A contract with two operations of one name does not pass."""
    package("@redocly/cli")
    document = json.loads(contract.read_text("utf-8"))
    for path in ("/v1/sine/setting", "/v1/sine/angle"):
        document["paths"][path]["post"]["operationId"] = "one_name"
    broken = tmp_path / "openapi.json"
    broken.write_text(json.dumps(document), "utf-8")
    program, rules = MODULES / "@redocly/cli/bin/cli.js", MODULES.parent / "redocly.yaml"
    with pytest.raises(AssertionError, match="operation-operationId-unique"):
        run("node", str(program), "lint", "--config", str(rules), str(broken))


# Types ----------------------------------------------------------------------------------------
def test_types_of_a_front_end_compile_and_take_every_example(
    contract: Path, tmp_path: Path
) -> None:
    """TypeScript under strict takes each example as its request, and each answer has its result.

    One value has a type of its own, and takes no operation that is not asked by query string.
    """
    package("openapi-typescript")
    package("typescript")
    types = tmp_path / "contract.d.ts"
    generator = MODULES / "openapi-typescript/bin/cli.js"
    # A field with a default may be left out: the generator's own default has it sent.
    sent_or_not = "--default-non-nullable=false"
    run("node", str(generator), str(contract), sent_or_not, "--output", str(types))
    program = tmp_path / "use.ts"
    program.write_text("\n".join(_uses(json.loads(contract.read_text("utf-8")))), "utf-8")
    compiler = MODULES / "typescript/bin/tsc"
    options = ("--strict", "--noEmit", "--target", "es2022", "--module", "esnext")
    run("node", str(compiler), *options, "--moduleResolution", "bundler", str(program))


def _holds_objects(value: Any) -> bool:
    """Whether a query string states a field in parts: by `within`, in the contract's words."""
    return isinstance(value, dict) or (isinstance(value, list) and isinstance(value[0], dict))


def _uses(document: dict[str, Any]) -> Iterator[str]:
    """A program that sends each example and reads what comes back, by the generated types."""
    yield 'import type { operations } from "./contract";'
    for _, item in calculations(document):
        name = item["post"]["operationId"]
        example = item["post"]["requestBody"]["content"]["application/json"]["example"]
        body = f'operations["{name}"]["requestBody"]["content"]["application/json"]'
        answer = f'operations["{name}"]["responses"][200]["content"]["application/json"]'
        yield f"export const {name}: {body} = {json.dumps(example)};"
        yield f"export const of_{name} = (answer: {answer}) => ["
        yield "  answer.result, answer.advisories.map(one => one.message), answer.basis];"
        if "get" in item:
            query = f'NonNullable<operations["{name}_by_query"]["parameters"]["query"]>'
            plain = {field: value for field, value in example.items() if not _holds_objects(value)}
            within = plain if plain == example else {**plain, "within": {"a.field": 1}}
            yield f"export const asked_{name}: {query} = {json.dumps(within)};"
            forms = f'keyof operations["{name}_by_query"]["responses"][200]["content"]'
            yield f'export const form_of_{name} = (form: {forms}): "application/json" => form;'
    value = 'operations["values_get_one"]'
    request = 'query: {separator: ";", on_error: "text", request: {units: "in", angle: 30}}'
    yield f'export const text = (all: {value}["responses"][200]["content"]): string => '
    yield '  all["text/plain"];'
    for expected, operation in (("", "sine.setting"), ("// @ts-expect-error", "wheels.choose")):
        path = f'path: {{operation: "{operation}", field: "height"}}'
        yield f'export const asked_value_{len(expected)}: {value}["parameters"] ='
        yield f"  {expected}"
        yield f"  {{{path}, {request}}};"
