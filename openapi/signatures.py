"""Reads the contract's operations into what the templates print: names, types, docstrings."""

import json
import keyword
from dataclasses import dataclass
from itertools import groupby
from typing import Any

from wording import REFERENCE, Schema, branches, described, items_of

#: Arguments that every call has; a field of such a name gets an underscore.
_OF_EVERY_CALL = frozenset({"self", "timeout_seconds", "request_id", "content"})
_SCALARS = {"number": "float", "integer": "int", "string": "str", "boolean": "bool", "null": "None"}
JSON = "application/json"
HTML, PDF = "text/html", "application/pdf"
#: The client's own type of a sheet, which is a page of HTML or a PDF.
SHEET = "Sheet"


@dataclass(frozen=True)
class Argument:
    """One argument of a call: a field of the request, or a parameter of the address."""

    field: str
    place: str  # "path", "query" or "body"
    annotation: str
    required: bool
    default: Any
    schema: Schema

    @property
    def description(self) -> str:
        """What it is, with unit and bounds."""
        return described(self.schema)

    @property
    def name(self) -> str:
        """The field's name, as Python takes it."""
        taken = keyword.iskeyword(self.field) or self.field in _OF_EVERY_CALL
        return identifier(self.field) + ("_" if taken else "")

    @property
    def signature(self) -> str:
        """The argument as it stands in the signature."""
        if self.required:
            return f"{self.name}: {self.annotation}"
        if self.default is None:
            return f"{self.name}: {nullable(self.annotation)} = None"
        return f"{self.name}: {self.annotation} = {literal(self.default)}"

    @property
    def null_is_sent(self) -> bool:
        """True where None is a value of its own, not the same as leaving the field out."""
        return self.required or self.default is not None


@dataclass(frozen=True)
class Call:
    """One call of the client."""

    topic: str
    method: str
    http_method: str
    path: str
    answer: str
    accept: str
    sends: str
    heavy: bool
    arguments: tuple[Argument, ...]
    summary: str
    description: str
    example: dict[str, str] | None

    @property
    def constant(self) -> str:
        """Name of the endpoint's constant."""
        return f"_{self.method.upper()}"

    @property
    def name(self) -> str:
        """Dotted name, such as `sine.setting`."""
        return f"{self.topic}.{self.method}"

    @property
    def positional(self) -> list[Argument]:
        """Parameters of the path."""
        return [a for a in self.arguments if a.place == "path"]

    @property
    def keyword_only(self) -> list[Argument]:
        """All other arguments, those that must be given first."""
        others = [a for a in self.arguments if a.place != "path"]
        return sorted(others, key=lambda a: not a.required)

    def placed(self, place: str) -> list[Argument]:
        """The arguments that go into the path, the query or the body."""
        return [a for a in self.arguments if a.place == place]

    @property
    def nulls(self) -> list[str]:
        """Fields of which None is sent as null."""
        return [
            a.field
            for a in self.arguments
            if a.null_is_sent and "None" in a.annotation.split(" | ")
        ]

    @property
    def answer_named(self) -> str:
        """The answer's type as an endpoint holds it: a model by its name, so that it loads late."""
        model = self.answer.removeprefix("models.")
        return self.answer if model == self.answer else literal(model)


def identifier(text: str) -> str:
    """Turn a name of the contract into one of Python's."""
    return "".join(c if c.isalnum() else "_" for c in text)


def nullable(annotation: str) -> str:
    """Add None to a type."""
    return annotation if "None" in annotation.split(" | ") else f"{annotation} | None"


def read_topics(contract: dict[str, Any]) -> dict[str, list[Call]]:
    """Give every call by its topic, both in alphabetical order."""
    calls = [
        _read_call(contract, path, http_method, operation)
        for path, item in contract["paths"].items()
        for http_method, operation in item.items()
        if http_method in {"get", "post"}
        and not _is_query_form(item, http_method)
        and not is_of_any_request(operation)
    ]
    calls.sort(key=lambda c: (c.topic, c.method))
    return {topic: list(group) for topic, group in groupby(calls, key=lambda c: c.topic)}


def _is_query_form(item: dict[str, Any], http_method: str) -> bool:
    """True for the GET form of a calculation: the client needs one way to ask, and that is POST."""
    return http_method == "get" and "post" in item


def is_of_any_request(operation: dict[str, Any]) -> bool:
    """True for what takes the request of any operation: its fields are no arguments with names.

    One value is for spreadsheets: who has the client has the answer. Rows of a batch are lines,
    answered while further ones are sent: no call has one answer of its own type for them.
    """
    body = operation.get("requestBody", {"content": {}})
    if "application/x-ndjson" in body["content"]:
        return True
    asked = (p for p in operation.get("parameters", ()) if p["in"] == "query")
    return any(p.get("schema", {}).get("type") == "object" for p in asked)


def _read_call(
    contract: dict[str, Any], path: str, http_method: str, operation: dict[str, Any]
) -> Call:
    topic = identifier(operation["tags"][0])
    method = identifier(operation["operationId"]).removeprefix(f"{topic}_")
    parameters = [_parameter(p) for p in operation.get("parameters", ())]
    sends, schema, example = _body(operation)
    fields = _fields(contract, schema) if sends == JSON else []
    accept, answer = _answer(operation)
    return Call(
        topic=topic,
        method=method + "_" if keyword.iskeyword(method) else method,
        http_method=http_method.upper(),
        path=path,
        answer=answer,
        accept=accept,
        sends=sends,
        heavy=operation.get("x-heavy", False),
        arguments=(*parameters, *fields),
        summary=operation.get("summary", method),
        description=operation.get("description", ""),
        example=_example(contract, operation, [*parameters, *fields], example),
    )


def _parameter(parameter: dict[str, Any]) -> Argument:
    schema = parameter.get("schema", {})
    return Argument(
        field=parameter["name"],
        place=parameter["in"],
        annotation=python_type(schema),
        required=parameter.get("required", False),
        default=schema.get("default"),
        schema={**schema, "description": parameter.get("description", "")},
    )


def _body(operation: dict[str, Any]) -> tuple[str, Schema, dict[str, Any] | None]:
    """Media type, schema and example of the request's body; JSON where there is a choice."""
    content = operation.get("requestBody", {}).get("content", {})
    if not content:
        return "", {}, None
    media_type = JSON if JSON in content else next(iter(content))
    part = content[media_type]
    return media_type, part.get("schema", {}), part.get("example")


def _fields(contract: dict[str, Any], schema: Schema) -> list[Argument]:
    """Arguments for the fields of a JSON object."""
    name = schema.get("$ref", "").removeprefix(REFERENCE)
    whole = contract["components"]["schemas"][name] if name else schema
    if "properties" not in whole:
        raise SystemExit(f"The body {name or schema} is no object with fields: no arguments.")
    required = set(whole.get("required", ()))
    return [
        Argument(
            field=field,
            place="body",
            annotation=python_type(part),
            required=field in required,
            default=None if isinstance(part.get("default"), dict | list) else part.get("default"),
            schema=part,
        )
        for field, part in whole["properties"].items()
    ]


def _answer(operation: dict[str, Any]) -> tuple[str, str]:
    """Media type and Python type of the answer."""
    success = next(v for k, v in operation["responses"].items() if k.startswith("2"))
    content = success.get("content", {})
    if JSON in content:
        return JSON, python_type(content[JSON]["schema"])
    if {HTML, PDF} <= set(content):
        return ", ".join(content), SHEET
    media_type = next(iter(content), "*/*")
    return media_type, "str" if media_type.startswith("text/") else "bytes"


def _example(
    contract: dict[str, Any], operation: dict[str, Any], arguments: list[Argument], body: Any
) -> dict[str, str] | None:
    """Arguments of the example as code, by name; None where the contract has no whole example."""
    given = {p["name"]: p["example"] for p in operation.get("parameters", ()) if "example" in p}
    given.update(body if isinstance(body, dict) else {})
    if any(a.required and a.field not in given for a in arguments):
        return None
    schemas: dict[str, Schema] = contract["components"]["schemas"]
    by_field = {a.field: a for a in arguments}
    return {
        by_field[field].name: _code(value, by_field[field].schema, schemas)
        for field, value in given.items()
    }


def _code(value: Any, schema: Schema, schemas: dict[str, Schema]) -> str:
    """Write a value as the code that makes it: a model where the schema names one."""
    if isinstance(value, list):
        items = items_of(schema)
        return f"[{', '.join(_code(part, items, schemas) for part in value)}]"
    name = _model_of(value, schema, schemas) if isinstance(value, dict) else None
    if name is None:
        return literal(value)
    fields = schemas[name].get("properties", {})
    parts = (f"{identifier(k)}={_code(v, fields.get(k, {}), schemas)}" for k, v in value.items())
    return f"models.{name}({', '.join(parts)})"


def _model_of(value: dict[str, Any], schema: Schema, schemas: dict[str, Schema]) -> str | None:
    """Name of the model of a JSON object: by its discriminator, or the first that has its keys."""
    discriminator = schema.get("discriminator", {})
    named = discriminator.get("mapping", {}).get(value.get(discriminator.get("propertyName")))
    if named:
        return str(named).removeprefix(REFERENCE)
    for part in branches(schema):
        name = str(part.get("$ref", "")).removeprefix(REFERENCE)
        if name and set(value) <= set(schemas[name].get("properties", {})):
            return name
    return None


def literal(value: Any) -> str:
    """Write a JSON value as Python, text in double quotes."""
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    if isinstance(value, tuple):
        return f"({''.join(f'{literal(part)}, ' for part in value)})"
    if isinstance(value, list):
        return f"[{', '.join(literal(part) for part in value)}]"
    if isinstance(value, dict):
        return f"{{{', '.join(f'{literal(k)}: {literal(v)}' for k, v in value.items())}}}"
    return repr(value)


def python_type(schema: Schema) -> str:
    """The type that an argument of this schema takes."""
    if "$ref" in schema:
        return f"models.{str(schema['$ref']).removeprefix(REFERENCE)}"
    if "const" in schema or "enum" in schema:
        values = schema.get("enum", [schema.get("const")])
        return f"Literal[{', '.join(literal(value) for value in values)}]"
    kind = schema.get("type")
    parts = schema.get("anyOf") or schema.get("oneOf") or schema.get("allOf")
    if isinstance(kind, list):
        parts = [{**schema, "type": one} for one in kind]
    return _union([python_type(part) for part in parts]) if parts else _plain_type(schema)


def _plain_type(schema: Schema) -> str:
    """Type of a schema that is neither a reference nor a choice."""
    kind = str(schema.get("type"))
    if "prefixItems" in schema:
        return f"tuple[{', '.join(python_type(part) for part in schema['prefixItems'])}]"
    if kind == "array":
        return f"Sequence[{python_type(items_of(schema))}]"
    if kind == "object":
        return f"Mapping[str, {_value_type(schema)}]"
    return _SCALARS.get(kind, "Any")


def _value_type(schema: Schema) -> str:
    values = schema.get("additionalProperties")
    return python_type(values) if isinstance(values, dict) else "Any"


def _union(types: list[str]) -> str:
    """Each type once, None last."""
    flat = dict.fromkeys(part for one in types for part in _alternatives(one))
    return " | ".join([*(t for t in flat if t != "None"), *(t for t in flat if t == "None")])


def _alternatives(annotation: str) -> list[str]:
    """Split a union at its top level; a bar inside brackets belongs to what is inside."""
    parts, depth = [""], 0
    for token in annotation.split(" | "):
        parts[-1] += f" | {token}" if parts[-1] else token
        depth += token.count("[") - token.count("]")
        if depth == 0:
            parts.append("")
    return parts[:-1]
