"""Requests by query string, for callers that can send nothing else."""

import json
import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import parse_qsl, unquote_plus

from pydantic import BaseModel

from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.problems import ProblemError, pointer_to

#: Asks for one value of the answer in place of all.
PICK = "pick"
#: Where that value has an address of its own, and the part of it that names the value.
VALUE_PATH = "/v1/values/{operation}/{field}"
FIELD = "field"
_SCALARS = frozenset({"number", "integer", "string", "boolean", "null"})
#: A number as people write it: `.375`, `5.` and `+5` too, whose plus a query string makes a space.
_NUMBER = re.compile(r"[ +-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")


@dataclass(frozen=True, slots=True)
class QueryField:
    """How one field reads from a query string: its JSON types, and whether it may be repeated."""

    types: frozenset[str]
    repeated: bool


_FORMS: dict[type[BaseModel], Mapping[str, QueryField] | None] = {}


def query_fields(model: type[BaseModel]) -> Mapping[str, QueryField] | None:
    """Give the query form of a request, or None where it needs a nested object.

    An optional field that holds nested objects is left out of the form: POST takes it.
    """
    if model not in _FORMS:
        _FORMS[model] = _read_fields(model)
    return _FORMS[model]


def _read_fields(model: type[BaseModel]) -> Mapping[str, QueryField] | None:
    fields: dict[str, QueryField] = {}
    whole = schema_of(model)
    for name, schema in whole.get("properties", {}).items():
        types = _types(schema)
        items = _types(_array_items(schema)) if "array" in types else frozenset()
        if not (types - {"array"}) <= _SCALARS or not items <= _SCALARS:
            if name in whole.get("required", ()):
                return None
            continue
        fields[name] = QueryField((types - {"array"}) | items, bool(items))
    return fields


def _types(schema: Mapping[str, Any]) -> frozenset[str]:
    """JSON types that a schema admits; a reference counts as an object."""
    if "anyOf" in schema:
        return frozenset().union(*(_types(option) for option in schema["anyOf"]))
    return frozenset({schema.get("type", "object")})


def _array_items(schema: Mapping[str, Any]) -> Mapping[str, Any]:
    """Schema of an array's items, even inside a union."""
    options: list[Mapping[str, Any]] = schema.get("anyOf", [schema])
    items: Mapping[str, Any] = next(o for o in options if o.get("type") == "array")["items"]
    return items


def read_query(
    query: bytes, fields: Mapping[str, QueryField], *, picks: bool = True
) -> tuple[bytes, str | None]:
    """Turn a query string into a JSON body and the `pick` path, if any.

    Where the address picks, it takes no `pick` besides. Raises ProblemError (`bad-request`,
    `invalid-request`) where it is no query string, or where a single value is given twice.
    """
    try:
        pairs = parse_qsl(
            query.decode("ascii"), keep_blank_values=True, errors="strict", max_num_fields=2_000
        )
    except ValueError as error:
        raise ProblemError("bad-request", f"The query string cannot be read: {error}.") from None
    pick: str | None = None
    values: dict[str, Any] = {}
    for name, text in pairs:
        if picks and name == PICK and pick is None:
            pick = text
            continue
        form = fields.get(name)
        if form is not None and form.repeated:
            values.setdefault(name, []).append(_value(text, form))
        elif name in values or name == PICK:
            raise ProblemError(
                "invalid-request",
                f"{name[:60]} is given twice.",
                errors=[{"pointer": pointer_to(name), "message": "should be given once"}],
            )
        else:
            values[name] = text if form is None else _value(text, form)
    return json.dumps(values).encode(), pick


def parted(query: bytes, names: Collection[str]) -> tuple[bytes, bytes]:
    """Part a query string: the parameters of these names, and all others."""
    named: list[bytes] = []
    others: list[bytes] = []
    for part in query.split(b"&"):
        name = unquote_plus(part.partition(b"=")[0].decode("latin-1"))
        (named if name in names else others).append(part)
    return b"&".join(named), b"&".join(others)


def _value(text: str, form: QueryField) -> Any:
    """Read a value as the JSON type that its field takes; what does not fit stays a string."""
    if form.types & {"number", "integer"} and len(text) <= 400 and _NUMBER.fullmatch(text):
        return float(text) if set(text) & set(".eE") else int(text)
    if "boolean" in form.types and text in {"true", "false"}:
        return text == "true"
    return text
