"""An answer's result as columns: nested results by dotted names, lists of scalars as one text."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import NoneType
from typing import Annotated, Any, Literal, get_args, get_origin

from pydantic_core import to_json

from halfangle_service.fields import ResultModel
from halfangle_service.fields.numbers import Unit, UnitName

#: Between the blocks of a stack, which is their sum, and between the entries of any other list.
_OF_A_STACK, _OF_A_LIST = " + ", "; "
_STACKS = frozenset({"blocks", "second_stack", "wringing_order"})
#: Stands for a list without entries.
EMPTY_LIST = "none"
_SCALARS: dict[object, "Kind"] = {float: "number", int: "count", str: "text", bool: "truth"}

Kind = Literal["number", "count", "text", "truth", "list"]


@dataclass(frozen=True, slots=True)
class FlatField:
    """A column of answers: its dotted name, what it holds, and the unit of a number.

    `of_numbers` is true for a list of such.
    """

    name: str
    kind: Kind
    unit: UnitName | None = None
    of_numbers: bool = False

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
            numbers = entry[0].kind in {"number", "count"}
            yield FlatField(name, "list", entry[0].unit, numbers)
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
    return {name: in_one_cell(_at(result, field.path), name) for name, field in fields.items()}


def _at(value: Any, path: Sequence[str]) -> Any:
    for part in path:
        if not isinstance(value, Mapping):
            return None
        value = value.get(part)
    return value


def in_one_cell(value: Any, name: str) -> Any:
    """A value of one cell: the entries of a list of this name are one text."""
    return text_of(value, name) if isinstance(value, list) else value


def joint_of(name: str) -> str:
    """What stands between the entries of a list, by its name: blocks of a stack are added up.

    >>> joint_of("high.blocks"), joint_of("not_stated")
    (' + ', '; ')
    """
    last = name.rpartition(".")[2]
    return _OF_A_STACK if last in _STACKS or last.endswith("_blocks") else _OF_A_LIST


def _as_json(value: Any) -> str:
    """What is no text, written as the answer writes it."""
    return to_json(value).decode()


def text_of(
    value: Any,
    name: str,
    between: str | None = None,
    written: Callable[[Any], str] = _as_json,
) -> str:
    """A value, or the entries of the list of this name, as one text, however it is asked for.

    `written` writes what is no text. Lists in a list are parted as the entries of any other are.

    >>> text_of([0.5, 0.121], "low_blocks"), text_of([1, None], "stations"), text_of([], "marks")
    ('0.5 + 0.121', '1; null', 'none')
    >>> text_of(0.00001, "tir")
    '0.00001'
    """
    if not isinstance(value, list):
        return value if isinstance(value, str) else written(value)
    if between is None:
        of_lists = any(isinstance(entry, list) for entry in value)
        between = _OF_A_LIST if of_lists else joint_of(name)
    return between.join(text_of(each, name, None, written) for each in value) or EMPTY_LIST
