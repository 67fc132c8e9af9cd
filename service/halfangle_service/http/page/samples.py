"""Calls of an operation with its example, as code that runs: shell, Python, TypeScript, a sheet.

Names and addresses are those of the contract; the client's method is the end of an `operationId`,
its models are the contract's components. A test runs every call.
"""

import json
import keyword
import re
import shlex
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel

from halfangle_service.http.cells import VALUE_PATH
from halfangle_service.http.contract.document import method_name
from halfangle_service.http.page.layout import Code, Group, Layout, json_code
from halfangle_service.http.query import query_fields, query_of
from halfangle_service.operation import Operation

AnyOperation = Operation[Any, Any]

#: Where the samples call; the page's script writes the origin that it came from in its place.
ORIGIN = "http://127.0.0.1:8765"
JSON_LAYOUT = Layout(indent=2, last_comma=False)
_PYTHON = Layout(indent=4, last_comma=True)
_TYPESCRIPT = Layout(indent=2, last_comma=True)
#: Longest text between quotes in a formula of a sheet.
_LONGEST_IN_FORMULA = 255


@dataclass(frozen=True, slots=True)
class Samples:
    """The calls of one operation; the address by query and the formula where it is flat."""

    curl: str
    python: str
    typescript: str
    address: str
    formula: str


def samples_of(operation: AnyOperation, answer: Mapping[str, Any]) -> Samples:
    """Every call of an operation; `answer` is what its example is answered."""
    query = _query(operation)
    return Samples(
        curl=_curl(operation),
        python=_python(operation),
        typescript=_typescript(operation),
        address="" if query is None else f"{ORIGIN}{operation.path}?{query}",
        formula="" if query is None else _formula(operation, answer, query),
    )


def shown_json(value: Any) -> str:
    """A JSON value as a person reads it."""
    return JSON_LAYOUT.lines(json_code(value, _json))


def _json(value: Any) -> str:
    return json.dumps(value, ensure_ascii=False)


def _curl(operation: AnyOperation) -> str:
    body = shlex.quote(shown_json(dict(operation.example)))
    return (
        f"curl -s {ORIGIN}{operation.path} \\\n"
        f"  -H 'Content-Type: application/json' \\\n"
        f"  -d {body}"
    )


def _python(operation: AnyOperation) -> str:
    example = dict(operation.example)
    request = operation.request.model_validate_json(json.dumps(example))
    arguments = _arguments(example, request)
    called = f"answer = client.{operation.topic}.{_method(operation)}("
    call = _PYTHON.lines(Group(called, arguments, ")"), depth=1)
    imported = "Halfangle, models" if "models." in call else "Halfangle"
    return (
        f"from halfangle_client import {imported}\n\n"
        f'with Halfangle("{ORIGIN}") as client:\n'
        f"    {call}\n"
        "    print(answer)"
    )


def _method(operation: AnyOperation) -> str:
    name = method_name(operation)
    return name + "_" if keyword.iskeyword(name) else name


def _arguments(given: Mapping[str, Any], request: Any) -> list[tuple[str, Code]]:
    """Arguments of a call or a model: the values given, the objects as what they were read as."""
    return [
        (f"{name}=", _python_code(value, getattr(request, name, None)))
        for name, value in given.items()
    ]


def _python_code(value: Any, read: Any) -> Code:
    if isinstance(value, dict) and isinstance(read, BaseModel):
        return Group(f"models.{type(read).__name__}(", _arguments(value, read), ")")
    if isinstance(value, list | tuple):
        found = read if isinstance(read, list | tuple) and len(read) == len(value) else value
        parts = [("", _python_code(part, one)) for part, one in zip(value, found, strict=True)]
        return Group("[", parts, "]")
    if isinstance(value, dict):
        return json_code(value, _python_literal)
    return _python_literal(value)


def _python_literal(value: Any) -> str:
    return _json(value) if isinstance(value, str) else repr(value)


def _typescript(operation: AnyOperation) -> str:
    body = ("body: ", _typescript_code(dict(operation.example)))
    called = f'const {{ data, error }} = await halfangle.POST("{operation.path}", {{ '
    call = _TYPESCRIPT.lines(Group(called, [body], " })"))
    return (
        'import createClient from "openapi-fetch";\n'
        'import type { paths } from "./halfangle";\n\n'
        f'const halfangle = createClient<paths>({{ baseUrl: "{ORIGIN}" }});\n'
        f"{call};\n"
        "console.log(data ?? error);"
    )


def _typescript_code(value: Any) -> Code:
    if isinstance(value, dict) and value:
        parts = [(f"{_key(name)}: ", _typescript_code(part)) for name, part in value.items()]
        return Group("{ ", parts, " }")
    if isinstance(value, list | tuple):
        return Group("[", [("", _typescript_code(part)) for part in value], "]")
    return _json(value)


def _key(name: str) -> str:
    return name if re.fullmatch(r"[A-Za-z_]\w*", name, re.ASCII) else _json(name)


def _query(operation: AnyOperation) -> str | None:
    """An operation's example as a query string; None where it lies deeper than that reaches."""
    fields = query_fields(operation.request)
    return None if fields is None else query_of(operation.example, fields)


def _formula(operation: AnyOperation, answer: Mapping[str, Any], query: str) -> str:
    """Formula of a sheet that reads the first number of an answer; empty where none may be picked.

    A sheet takes a longer text in pieces only.
    """
    field = next(iter(_numbers(answer["result"], "")), None)
    if field is None or any(a["severity"] == "stop" for a in answer["advisories"]):
        return ""
    path = VALUE_PATH.format(operation=operation.name, field=field)
    whole = f"{ORIGIN}{path}?{query}"
    starts = range(0, len(whole), _LONGEST_IN_FORMULA)
    text = "&".join(f'"{whole[start : start + _LONGEST_IN_FORMULA]}"' for start in starts)
    return f'=NUMBERVALUE(WEBSERVICE({text}); ".")'


def _numbers(value: Any, path: str) -> list[str]:
    """Paths of the numbers of a result, in its order."""
    if isinstance(value, dict):
        inner = value.items()
        return [p for name, part in inner for p in _numbers(part, f"{path}.{name}".lstrip("."))]
    if isinstance(value, list):
        return [p for i, part in enumerate(value) for p in _numbers(part, f"{path}.{i}")]
    number = isinstance(value, int | float) and not isinstance(value, bool)
    return [path] if number else []
