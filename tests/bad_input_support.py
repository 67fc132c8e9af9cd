"""An operation's example with one thing made wrong, and the problem document that it meets."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.errors import Refusal
from halfangle_service.http.calculating import answer
from halfangle_service.http.problems import ProblemError, problem_body, problem_of_refusal
from halfangle_service.operation import Operation
from halfangle_service.registry import load_registry
from wording import OF_A_NUMBER

Service = TestClient[Any]
AnyOperation = Operation[Any, Any]
Schema = dict[str, Any]

OPERATIONS = load_registry().operations
SINE = "/v1/sine/setting"
JSON_HEADER = {"Content-Type": "application/json"}
#: No refusal needs more, however long the request was.
LONGEST_REFUSAL_BYTES = 20_000

every_operation = pytest.mark.parametrize("name", OPERATIONS)


@dataclass(frozen=True)
class Place:
    """A value of an example: its JSON pointer, its schema's plain options, and the value."""

    pointer: str
    options: tuple[Schema, ...]
    value: Any

    def option(self, *types: str) -> Schema | None:
        """The option of one of these JSON types, or None."""
        return next((o for o in self.options if o.get("type") in types), None)

    @property
    def number(self) -> Schema | None:
        """The option that takes a number, where the example has one or an angle as text."""
        return self.option("number", "integer")

    @property
    def is_angle(self) -> bool:
        """True where degrees, minutes and seconds are taken as text."""
        return any("x-unit" in o and o["x-unit"] == "degree" for o in self.options)


def places(operation: AnyOperation) -> list[Place]:
    """Every value of an operation's example."""
    schema = operation.request.model_json_schema()
    example = json.loads(json.dumps(dict(operation.example)))
    return list(_places(schema, schema.get("$defs", {}), example, ""))


def _places(schema: Schema, definitions: Schema, value: Any, pointer: str) -> Iterator[Place]:
    options = tuple(_options(schema, definitions, value))
    if pointer:
        yield Place(pointer, options, value)
    if isinstance(value, dict):
        fields: Schema = next((o["properties"] for o in options if "properties" in o), {})
        for name, part in value.items():
            if name in fields:
                yield from _places(fields[name], definitions, part, f"{pointer}/{name}")
    elif isinstance(value, list):
        items: Schema = next((o["items"] for o in options if "items" in o), {})
        for position, part in enumerate(value[:2]):
            yield from _places(items, definitions, part, f"{pointer}/{position}")


def _options(schema: Schema, definitions: Schema, value: Any) -> Iterator[Schema]:
    """Plain schemas that a schema leads to; of a discriminated union, the one that the value is."""
    if "$ref" in schema:
        yield from _options(definitions[schema["$ref"].rsplit("/", 1)[-1]], definitions, value)
        return
    if "discriminator" in schema and isinstance(value, dict):
        chosen = schema["discriminator"]
        reference = chosen["mapping"][value[chosen["propertyName"]]]
        yield from _options({"$ref": reference}, definitions, value)
        return
    nested = [*schema.get("anyOf", ()), *schema.get("oneOf", ()), *schema.get("allOf", ())]
    if not nested:
        yield schema
    for option in nested:
        beside = {key: part for key, part in schema.items() if key in OF_A_NUMBER}
        yield from _options({**beside, **option}, definitions, value)


def with_raw(operation: AnyOperation, pointer: str, raw: str) -> bytes:
    """The example as JSON, with this raw text in the place of one value."""
    request = json.loads(json.dumps(dict(operation.example)))
    holder, last = _holder(request, pointer)
    holder[last] = "\0here\0"
    text = json.dumps(request, ensure_ascii=False)
    return text.replace('"\\u0000here\\u0000"', raw).encode()


def without(operation: AnyOperation, pointer: str) -> bytes:
    """The example as JSON, without one value."""
    request = json.loads(json.dumps(dict(operation.example)))
    holder, last = _holder(request, pointer)
    del holder[last]
    return json.dumps(request).encode()


def _holder(request: Any, pointer: str) -> tuple[Any, Any]:
    *path, last = pointer.split("/")[1:]
    for part in path:
        request = request[int(part) if isinstance(request, list) else part]
    return request, int(last) if isinstance(request, list) else last


def problem_for(operation: AnyOperation, body: bytes) -> dict[str, Any] | None:
    """The problem document for a body, or None where it is answered."""
    try:
        answer(operation, body)
    except ProblemError as error:
        found = problem_body(error, operation.path)
    except Refusal as refusal:
        found = problem_body(problem_of_refusal(refusal), operation.path)
    else:
        return None
    assert len(found[1]) < LONGEST_REFUSAL_BYTES
    problem: dict[str, Any] = json.loads(found[1])
    return problem


def assert_names(problem: dict[str, Any] | None, pointer: str, *words: str) -> None:
    """Check that a request is refused at this place, with these words."""
    assert problem is not None, f"{pointer} was taken"
    assert problem["type"] == "/problems/invalid-request", problem
    messages = [e["message"] for e in problem["errors"] if e["pointer"] == pointer]
    assert messages, problem["errors"]
    for word in words:
        assert any(word in message for message in messages), messages
    assert all(len(message) < 400 for message in messages)
