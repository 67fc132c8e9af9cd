"""Requests by query string, for callers that can send nothing else.

A scalar is a parameter of its own. A list of scalars is one whose entries stand between semicolons,
or one repeated. A dot reaches once into an object (`shank.kind=taper`); of a list of objects each
field is the list of its values (`settings.angle=10;20`), and where their objects need but one
scalar, the list's own name states that (`readings=0;0.0006;0.001;0.0004`).
"""

import json
import re
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any
from urllib.parse import parse_qsl, unquote_plus, urlencode

from pydantic import BaseModel

from halfangle_service.fields.schemas import DEFINITIONS, schema_of
from halfangle_service.http.problems import ProblemError, nearest, pointer_to

#: Stands between the entries of a list in one parameter.
BETWEEN_ENTRIES = ";"
#: Reaches into an object.
INTO = "."
Pairs = list[tuple[str, str]]
Schema = Mapping[str, Any]

_SCALARS = frozenset({"number", "integer", "string", "boolean", "null"})
_NUMBERS = frozenset({"number", "integer"})
#: A number as people write it: `.375`, `5.` and `+5` too, whose plus a query string makes a space.
_NUMBER = re.compile(r"[ +-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
#: A number, or several, of whoever takes a comma for the decimal sign or for what parts entries.
_WITH_COMMA = re.compile(r"[ +-]?[0-9.]*,[0-9., +-]*(?:[eE][+-]?[0-9]+)?")
_LONGEST_NUMBER = 400
_OF_COMMA = (
    "has a comma: the decimal sign is a point, in a sheet by "
    'SUBSTITUTE(A1;",";"."); entries of a list are parted by semicolons'
)


@dataclass(frozen=True, slots=True)
class QueryField:
    """How one parameter is read: the JSON types of its value, and where in the request it goes.

    `repeated`: it holds a list. `column`: the list is that field of each object of another list.
    """

    types: frozenset[str]
    path: tuple[str, ...]
    repeated: bool = False
    column: bool = False


_FORMS: dict[type[BaseModel], Mapping[str, QueryField] | None] = {}


def query_fields(model: type[BaseModel]) -> Mapping[str, QueryField] | None:
    """Give the query form of a request by the names of its parameters.

    None where a required field lies deeper than a dot reaches; an optional one that does is left
    out: POST takes it.
    """
    if model not in _FORMS:
        _FORMS[model] = _read_fields(model)
    return _FORMS[model]


def _read_fields(model: type[BaseModel]) -> Mapping[str, QueryField] | None:
    whole = schema_of(model)
    definitions = whole.get("$defs", {})
    fields: dict[str, QueryField] = {}
    for name, schema in whole.get("properties", {}).items():
        form = _Form(_alternatives(schema, definitions), definitions)
        if name in whole.get("required", ()) and not form.is_reached:
            return None
        fields.update(form.fields(name))
    return fields


class _Form:
    """The alternatives of one field, sorted by how a query string states them."""

    def __init__(self, alternatives: Iterable[Schema], definitions: Schema) -> None:
        alternatives = list(alternatives)
        entries = [
            entry
            for option in alternatives
            if option.get("type") == "array"
            for entry in _alternatives(option["items"], definitions)
        ]
        self._definitions = definitions
        self.scalars = _types(alternatives)
        self.entries = _types(entries)
        self._objects = [option for option in alternatives if "properties" in option]
        self._rows = [entry for entry in entries if "properties" in entry]

    @property
    def is_plain(self) -> bool:
        """Whether it is a scalar or a list of scalars."""
        return bool(self.scalars or self.entries)

    @property
    def is_scalar(self) -> bool:
        """Whether it is a scalar and nothing else."""
        return bool(self.scalars) and not (self.entries or self._objects or self._rows)

    @property
    def is_reached(self) -> bool:
        """Whether a query string can state the whole of it."""
        if self.is_plain:
            return True
        parts = [inner.is_plain for inner in self._parts(self._objects).values()]
        cells = [inner.is_scalar for inner in self._parts(self._rows).values()]
        return bool(parts or cells) and all(parts + cells)

    def fields(self, name: str) -> Iterator[tuple[str, QueryField]]:
        """Each parameter that states it, or a part of it."""
        if self.is_plain:
            yield name, QueryField(self.scalars | self.entries, (name,), bool(self.entries))
        for part, inner in self._parts(self._objects).items():
            if inner.is_plain:
                types = inner.scalars | inner.entries
                yield f"{name}.{part}", QueryField(types, (name, part), bool(inner.entries))
        columns = {
            part: QueryField(inner.scalars, (name, part), repeated=True, column=True)
            for part, inner in self._parts(self._rows).items()
            if inner.is_scalar
        }
        for part, column in columns.items():
            yield f"{name}.{part}", column
        needed = {part for row in self._rows for part in row.get("required", ())}
        if not self.is_plain and len(needed) == 1 and needed <= columns.keys():
            yield name, columns[needed.pop()]

    def _parts(self, objects: Iterable[Schema]) -> dict[str, "_Form"]:
        """The fields of objects; of several kinds of object what any of them admits."""
        gathered: dict[str, list[Schema]] = {}
        for one in objects:
            for part, schema in one["properties"].items():
                gathered.setdefault(part, []).extend(_alternatives(schema, self._definitions))
        return {part: _Form(found, self._definitions) for part, found in gathered.items()}


def _types(alternatives: Iterable[Schema]) -> frozenset[str]:
    """The scalar types among alternatives."""
    return frozenset(str(option.get("type", "")) for option in alternatives) & _SCALARS


def _alternatives(schema: Schema, definitions: Schema) -> Iterator[Schema]:
    """What a schema may be, references followed."""
    if "$ref" in schema:
        name = schema["$ref"].removeprefix(DEFINITIONS.format(model=""))
        yield from _alternatives(definitions[name], definitions)
        return
    unions = schema.get("anyOf") or schema.get("oneOf")
    if unions is None:
        yield schema
        return
    for option in unions:
        yield from _alternatives(option, definitions)


def read_pairs(query: bytes) -> Pairs:
    """Read the parameters of a query string; raises ProblemError (`bad-request`)."""
    try:
        return parse_qsl(
            query.decode("ascii"), keep_blank_values=True, errors="strict", max_num_fields=2_000
        )
    except ValueError as error:
        raise ProblemError("bad-request", f"The query string cannot be read: {error}.") from None


def read_query(query: bytes, fields: Mapping[str, QueryField]) -> bytes:
    """Turn a query string into a JSON body; raises ProblemError."""
    return body_of(read_pairs(query), fields)


def body_of(pairs: Pairs, fields: Mapping[str, QueryField]) -> bytes:
    """Turn parameters into a JSON body.

    Raises ProblemError (`invalid-request`) where a single value is given twice, a number has a
    comma, or the fields of a list of objects are not equally many.
    """
    given: dict[str, Any] = {}
    commas: dict[str, str] = {}
    for name, text in pairs:
        form = fields.get(name)
        if form is not None and form.repeated:
            entries = [_value(entry.strip(), form) for entry in text.split(BETWEEN_ENTRIES)]
            before = given.setdefault(name, [])
            for place, entry in enumerate(entries, start=len(before)):
                if _has_comma(entry, form):
                    commas[pointer_to(*form.path[:1], place, *form.path[1:])] = entry
            before.extend(entries)
        elif name in given:
            raise _wrong(name, "is given twice", "should be given once")
        elif form is None:
            _refuse_unknown_part(name, fields)
            given[name] = text
        else:
            given[name] = _value(text, form)
            if _has_comma(given[name], form):
                commas[pointer_to(*form.path)] = text
    if commas:
        errors = [{"pointer": p, "message": _OF_COMMA} for p in commas]
        pointer, text = next(iter(commas.items()))
        raise ProblemError(
            "invalid-request", f"{pointer} {text[:40]!r} {_OF_COMMA}.", errors=errors
        )
    return json.dumps(_put_together(given, fields)).encode()


def _put_together(given: Mapping[str, Any], fields: Mapping[str, QueryField]) -> dict[str, Any]:
    """The request that parameters state."""
    request: dict[str, Any] = {}
    stated: dict[str, str] = {}
    for name, value in given.items():
        form = fields.get(name)
        if form is None or len(form.path) == 1:
            outer, inner = name, ""
        else:
            outer, inner = form.path
        if outer in request and (
            not inner or not stated[outer] or inner in _parts_in(request[outer])
        ):
            raise _wrong(
                name, f"is given twice, as {stated[outer] or outer} too", "should be given once"
            )
        stated[outer] = name if inner else ""
        if not inner:
            request[outer] = value
        elif form is not None and form.column:
            _put_column(request.setdefault(outer, [{} for _ in value]), inner, value, name)
        else:
            request.setdefault(outer, {})[inner] = value
    return request


def _parts_in(value: Any) -> set[str]:
    """Names that stand in an object, or in any of a list of them."""
    return {name for one in value for name in one} if isinstance(value, list) else set(value)


def _put_column(rows: list[dict[str, Any]], part: str, values: list[Any], name: str) -> None:
    """State one field of each object of a list; an empty entry leaves it out."""
    if len(rows) != len(values):
        raise _wrong(
            name,
            f"has {len(values)} entries, the field before it {len(rows)}",
            f"should have {len(rows)} entries; an empty one is not stated",
        )
    for row, value in zip(rows, values, strict=True):
        if value != "":
            row[part] = value


def _refuse_unknown_part(name: str, fields: Mapping[str, QueryField]) -> None:
    """Refuse what no model would see where it was meant: a dotted name that leads nowhere."""
    if INTO in name:
        words = f"is not a field of this request{nearest(name, [f for f in fields if INTO in f])}"
        raise _wrong(name, words, words)


def refuse_more(pairs: Iterable[tuple[str, str]]) -> None:
    """Refuse parameters where none is taken."""
    for name, _ in pairs:
        raise _wrong(name, words := "is no parameter of this address", words)


def _wrong(name: str, detail: str, message: str) -> ProblemError:
    return ProblemError(
        "invalid-request",
        f"{name[:60]} {detail}.",
        errors=[{"pointer": pointer_to(*name.split(INTO)), "message": message}],
    )


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
    if form.types & _NUMBERS and len(text) <= _LONGEST_NUMBER and _NUMBER.fullmatch(text):
        return float(text) if set(text) & set(".eE") else int(text)
    if "boolean" in form.types and text in {"true", "false"}:
        return text == "true"
    return text


def _has_comma(value: Any, form: QueryField) -> bool:
    """True where a text would be a number if its comma were none."""
    return isinstance(value, str) and bool(form.types & _NUMBERS and _WITH_COMMA.fullmatch(value))


def query_of(request: Mapping[str, Any], fields: Mapping[str, QueryField]) -> str | None:
    """The query string that states a request; None where a part of it lies deeper."""
    texts: dict[str, str] = {}
    for name, value in request.items():
        rows = isinstance(value, list | tuple) and any(isinstance(row, dict) for row in value)
        parts: dict[str, Any] = {name: value}
        if isinstance(value, dict):
            parts = {f"{name}.{part}": inner for part, inner in value.items()}
        elif rows:
            columns = dict.fromkeys(part for row in value for part in row)
            parts = {f"{name}.{part}": [row.get(part, "") for row in value] for part in columns}
        for parameter, inner in parts.items():
            if parameter not in fields:
                return None
            texts[parameter] = BETWEEN_ENTRIES.join(
                map(_text, inner if isinstance(inner, list | tuple) else [inner])
            )
    return urlencode(texts, safe=BETWEEN_ENTRIES)


def _text(value: Any) -> str:
    return value if isinstance(value, str) else json.dumps(value)
