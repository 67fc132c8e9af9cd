"""Which values of an answer fill a column, under which header, in which unit."""

import types
import typing
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from pydantic import BaseModel

from halfangle_client.cli.contract import Operation, hint
from halfangle_client.cli.picks import stands_at_stop, text_of
from halfangle_client.endpoint import model_of
from halfangle_client.fill.books.cells import Value
from halfangle_client.fill.errors import MapRefused
from halfangle_client.fill.units import sign_of

ADVISORIES, PROBLEM = "advisories", "problem"
#: How a row says that its answer must not be run.
STOP = "STOP: "
_PLAIN = (str, bool, int, float)
#: Drawings and files have no place in a cell.
_NOT_SHOWN = frozenset({"svg", "dxf", "csv"})
#: What a person reads of an estimate first; all else of it is there to be asked for.
_OF_ESTIMATES = ("value", "expanded_uncertainty")


@dataclass(frozen=True, slots=True)
class Wanted:
    """A value of the result, by its path, and the header of its column."""

    path: str
    header: str


def wanted_results(operation: Operation, said: Mapping[str, str], units: str) -> list[Wanted]:
    """The results asked for, or the single values of the answer. Raises MapRefused."""
    model = _result_model(operation)
    if not said:
        taken = {field.name for field in operation.fields}
        paths = [path for path in _usual(model) if path.partition(".")[0] not in taken]
        said = {path: path for path in paths}
    found = []
    for name, path in said.items():
        whole = _whole_path(model, path)
        sign = sign_of(_unit_of(operation, whole), units)
        found.append(Wanted(whole, _header(whole if name == path else name, sign)))
    headers = [wanted.header for wanted in found]
    twice = next((header for header in headers if headers.count(header) > 1), None)
    if twice is not None:
        raise MapRefused(f"two results are to have the header {twice!r}.")
    return found


def _header(name: str, sign: str) -> str:
    """A header with its unit; one that a person chose and that states one stays as it is."""
    stated = name.rstrip().endswith(("]", ")"))
    return name if not sign or stated else f"{name} [{sign}]"


def _unit_of(operation: Operation, path: str) -> str:
    """The unit of a value of the result, of several kinds of object the first that has it."""
    shapes = operation.shapes
    at = [shapes.get(operation.answer, {}).get("result", "")]
    for part in path.split("."):
        if part.isdigit():
            continue
        inside = [shapes.get(n, {}) for each in at for n in each.removeprefix("@").split("|")]
        at = [shape[part] for shape in inside if part in shape]
    return next((unit for unit in at if not unit.startswith("@")), "")


def outcome_of(answer: Any, wanted: Sequence[Wanted]) -> tuple[list[Value], str, str]:
    """Values of an answer, its advisories and its problem.

    As of a picked value: where the answer says stop its values stay empty, judgements that do not
    say yes apart, and the problem says why.
    """
    advised = "; ".join(f"{a.severity} {a.code}: {a.message}" for a in answer.advisories)
    stops = " ".join(a.message for a in answer.advisories if a.severity == "stop")
    values = [_value_at(answer.result, one.path) for one in wanted]
    if stops:
        values = [
            value if stands_at_stop(one.path, value) else None
            for one, value in zip(wanted, values, strict=True)
        ]
    return values, advised, f"{STOP}{stops}" if stops else ""


def _value_at(value: Any, path: str) -> Value:
    for part in path.split("."):
        if value is None:
            return None
        if isinstance(value, list):
            value = value[int(part)] if int(part) < len(value) else None
        else:
            value = value.get(part) if isinstance(value, dict) else getattr(value, part, None)
    if isinstance(value, list):
        names = [part for part in path.split(".") if not part.isdigit()]
        return text_of(value, names[-1])
    return value if isinstance(value, _PLAIN) else None


def _result_model(operation: Operation) -> type[BaseModel]:
    hints = typing.get_type_hints(model_of(operation.answer))
    model = next(_models_in(hints["result"]), None)
    if model is None:
        raise MapRefused(f"{operation.name}: its result has no fields.")
    return model


def _whole_path(model: type[BaseModel], path: str) -> str:
    """The path to one value, or to a list of plain ones; an angle is meant in degrees.

    Raises MapRefused naming what there is.
    """
    kinds: list[Any] = [model]
    for part in path.split("."):
        models = [kind for kind in kinds if _is_model(kind)]
        offered = {name: h for m in models for name, h in typing.get_type_hints(m).items()
                   if name in m.model_fields}  # fmt: skip
        lists = [kind for kind in kinds if typing.get_origin(kind) is list]
        if part in offered:
            kinds = [k for m in models if part in m.model_fields
                     for k in _kinds_of(typing.get_type_hints(m)[part])]  # fmt: skip
        elif lists and part.isascii() and part.isdigit() and len(part) < 6:
            kinds = [k for each in lists for k in _kinds_of(typing.get_args(each)[0])]
        elif lists:
            raise MapRefused(f"result {path!r}: before {part!r} stands a list: say which, from 0.")
        else:
            there = hint(part, list(offered)) if offered else "; it is a single value"
            raise MapRefused(f"result {path!r}: there is no {part!r}{there}.")
    inner = [kind for kind in kinds if _is_model(kind)]
    if any(map(_is_angle, inner)):
        return f"{path}.degrees"
    if inner or not all(kind in _PLAIN or _is_plain_list(kind) for kind in kinds):
        parts = ", ".join(f"{path}.{name}" for m in inner[:1] for name in list(m.model_fields)[:6])
        which = f": {parts}" if parts else ", by its place from 0"
        raise MapRefused(f"result {path!r} is several values; say which{which}.")
    return path


def _usual(model: type[BaseModel]) -> Iterator[str]:
    """Single values, lists of such, angles in degrees, and of an estimate what is read first."""
    for name, meant in typing.get_type_hints(model).items():
        if name not in model.model_fields or name in _NOT_SHOWN:
            continue
        kinds = list(_kinds_of(meant))
        models = [kind for kind in kinds if _is_model(kind)]
        if any(map(_is_angle, models)) or all(k in _PLAIN or _is_plain_list(k) for k in kinds):
            yield name
        elif models and set(_OF_ESTIMATES) <= models[0].model_fields.keys():
            yield from (f"{name}.{part}" for part in _OF_ESTIMATES)


def _is_angle(kind: Any) -> bool:
    return _is_model(kind) and set(kind.model_fields) == {"degrees", "dms"}


def _is_plain_list(kind: Any) -> bool:
    if typing.get_origin(kind) is not list:
        return False
    return all(each in _PLAIN for each in _kinds_of(typing.get_args(kind)[0]))


def _kinds_of(meant: Any) -> Iterator[Any]:
    """What a value may be: of several each, of words their type, null left out."""
    origin = typing.get_origin(meant)
    if origin is typing.Union or isinstance(meant, types.UnionType):
        for each in typing.get_args(meant):
            yield from _kinds_of(each)
    elif origin is typing.Annotated:
        yield from _kinds_of(typing.get_args(meant)[0])
    elif origin is typing.Literal:
        yield from {type(word) for word in typing.get_args(meant)}
    elif meant is not type(None):
        yield meant


def _models_in(meant: Any) -> Iterator[type[BaseModel]]:
    return (kind for kind in _kinds_of(meant) if _is_model(kind))


def _is_model(kind: Any) -> bool:
    return isinstance(kind, type) and issubclass(kind, BaseModel)
