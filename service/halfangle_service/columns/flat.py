"""An answer's result as columns: nested results by dotted names, lists of scalars joined."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import NoneType
from typing import Annotated, Any, Literal, get_args, get_origin

from halfangle_service.fields import ResultModel
from halfangle_service.fields.numbers import Unit, UnitName

#: Stands between the entries of a list: `0.5 + 0.121`.
JOINT = " + "
_SCALARS: dict[object, "Kind"] = {float: "number", int: "count", str: "text", bool: "truth"}

Kind = Literal["number", "count", "text", "truth", "list"]


@dataclass(frozen=True, slots=True)
class FlatField:
    """A column of answers: its dotted name, what it holds, and the unit of a number."""

    name: str
    kind: Kind
    unit: UnitName | None = None

    @property
    def path(self) -> tuple[str, ...]:
        """Names of the fields that lead to it."""
        return tuple(self.name.split("."))


def flat_fields(result: type[ResultModel]) -> Mapping[str, FlatField]:
    """The columns of a result, in its order; lists of objects have no place in a flat table."""
    return _flat_fields(result)


@cache
def _flat_fields(result: type[ResultModel]) -> Mapping[str, FlatField]:
    return {field.name: field for field in _fields(result, "")}


def _fields(result: type[ResultModel], prefix: str) -> Iterator[FlatField]:
    for name, info in result.model_fields.items():
        yield from _of_annotation(Annotated[info.annotation, *info.metadata, None], prefix + name)


def _of_annotation(annotation: Any, name: str, unit: UnitName | None = None) -> Iterator[FlatField]:
    if get_origin(annotation) is Annotated:
        inner, *marks = get_args(annotation)
        unit = next((mark.name for mark in marks if isinstance(mark, Unit)), unit)
        yield from _of_annotation(inner, name, unit)
    elif annotation in _SCALARS:
        yield FlatField(name, _SCALARS[annotation], unit)
    elif get_origin(annotation) is Literal:
        yield FlatField(name, "text")
    elif get_origin(annotation) in (list, tuple):
        entry = list(_of_annotation(get_args(annotation)[0], name, unit))
        if [field.name for field in entry] == [name]:
            yield FlatField(name, "list", entry[0].unit)
    elif isinstance(annotation, type) and issubclass(annotation, ResultModel):
        yield from _fields(annotation, f"{name}.")
    else:
        seen: dict[str, FlatField] = {}
        for part in get_args(annotation):
            if part is not NoneType:
                seen |= {field.name: field for field in _of_annotation(part, name, unit)}
        yield from seen.values()


def flat_answer(result: Mapping[str, Any], fields: Mapping[str, FlatField]) -> dict[str, Any]:
    """Values of a result, as its JSON says it, by the names of its columns; None where null."""
    return {name: _scalar(_at(result, field.path)) for name, field in fields.items()}


def _at(value: Any, path: Sequence[str]) -> Any:
    for part in path:
        if not isinstance(value, Mapping):
            return None
        value = value.get(part)
    return value


def _scalar(value: Any) -> Any:
    """A value of one cell: entries of a list are joined."""
    return JOINT.join(map(str, value)) if isinstance(value, list) else value
