"""The same request asked in the other unit, and two answers compared field by field.

What is converted is what the contract says is a length: a field's `x-unit`, in requests and in
answers. Words are not compared, since they hold figures of their unit.
"""

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Any

from halfangle_service.app import contract_bytes
from inlining import inlined
from releases.schemas import Node, calculations, operation_of

MM_PER_INCH = Decimal("25.4")
#: Powers of length of the units that hold one.
POWERS = {
    "length": 1,
    "length_per_minute": 1,
    "volume": 3,
    "arcsecond_per_length": -1,
}
POWER = "power of length"
OTHER = {"in": "mm", "mm": "in"}


@dataclass(frozen=True)
class Apart:
    """Where two answers differ: the path, and the two values in the second answer's unit."""

    path: str
    expected: Any
    found: Any


@cache
def schemas_of() -> dict[str, tuple[Node, Node]]:
    """Schemas of request and result of every operation, by its dotted name."""
    contract = inlined(json.loads(contract_bytes()))
    made = {}
    for path, item in calculations(contract):
        body = item["post"]["requestBody"]["content"]["application/json"]["schema"]
        answer = item["post"]["responses"]["200"]["content"]["application/json"]["schema"]
        envelope = Node(contract, answer)
        result = Node(contract, envelope.alternatives[0]["properties"]["result"])
        made[operation_of(path)] = Node(contract, body), result
    return made


def in_other_units(operation: str, request: Mapping[str, Any]) -> dict[str, Any]:
    """The same request, with `units` and every length in the other unit.

    >>> in_other_units("sine.setting", {"units": "in", "center_distance": 5, "angle": 30})
    {'units': 'mm', 'center_distance': 127.0, 'angle': 30}
    """
    to = OTHER[request["units"]]
    node, _ = schemas_of()[operation]
    converted: dict[str, Any] = _converted(node, request, to)
    return {**converted, "units": to}


def _converted(node: Node, value: Any, to: str) -> Any:
    if isinstance(value, dict):
        fields = node.fields(value)
        return {n: _converted(fields[n][0], v, to) for n, v in value.items()}
    if isinstance(value, list):
        return [_converted(_entry(node), v, to) for v in value]
    return _length(value, _power(node), to) if _is_number(value) else value


def _entry(node: Node) -> Node:
    """Schema of a list's entries; a unit outside the list stands for them."""
    form = next(form for form in node.alternatives if form.get("type") == "array")
    unit = {"x-unit": node.unit} if node.unit else {}
    return Node(node.contract, {**unit, **form["items"]})


def _power(node: Node) -> int:
    power: int = node.raw.get(POWER, POWERS.get(node.unit, 0))
    return power


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _length(value: float, power: int, to: str) -> float:
    """A power of a length in the other unit, rounded once."""
    if not power:
        return value
    factor = MM_PER_INCH**power
    exact = Decimal(repr(value))
    return float(exact * factor if to == "mm" else exact / factor)


def differences(
    operation: str, first: Mapping[str, Any], second: Mapping[str, Any], to: str
) -> list[Apart]:
    """Where the second result, in the unit `to`, is not the first one in that unit."""
    _, node = schemas_of()[operation]
    return list(_differences(node, first, second, to, ""))


def _differences(node: Node, first: Any, second: Any, to: str, at: str) -> Iterator[Apart]:
    if isinstance(first, dict) and isinstance(second, dict) and first.keys() == second.keys():
        for name, inside in _fields(node, first).items():
            yield from _differences(inside, first[name], second[name], to, f"{at}.{name}")
    elif isinstance(first, list) and isinstance(second, list) and len(first) == len(second):
        for place, (one, other) in enumerate(zip(first, second, strict=True)):
            yield from _differences(_entry(node), one, other, to, f"{at}[{place}]")
    elif _is_number(first) and _is_number(second):
        expected = _length(first, _power(node), to)
        if not _alike(expected, second):
            yield Apart(at.lstrip("."), expected, second)
    elif first != second and not (isinstance(first, str) and node.kind == "text"):
        yield Apart(at.lstrip("."), first, second)


def _fields(node: Node, value: Mapping[str, Any]) -> dict[str, Node]:
    """Fields of an object; one whose unit is named beside it has that unit, or that in its own."""
    fields = {name: part for name, (part, _) in node.fields(value).items() if name in value}
    named = value.get("input_unit", value.get("unit"))
    if named is not None:
        in_named = POWERS.get(named, 0)
        of_spread = POWERS.get(fields["worst_case"].unit, 0) if "worst_case" in fields else 0
        for name, part in fields.items():
            powers = {"stated": in_named, "per_stated": of_spread - in_named}
            if part.unit in powers:
                fields[name] = Node(node.contract, {**part.raw, POWER: powers[part.unit]})
    return fields


def _alike(expected: float, found: float) -> bool:
    return abs(expected - found) <= max(1e-9 * max(abs(expected), abs(found)), 1e-9)
