"""A row's cells as a request."""

import json
import re
from collections.abc import Mapping, Sequence
from copy import deepcopy
from typing import Any

from halfangle_client.cli.contract import Field, hint
from halfangle_client.cli.words import number_of, put
from halfangle_client.fill.books.cells import Cell, Range, reference
from halfangle_client.fill.headers import Input, Labels, plain

_ENTRIES = re.compile(r"[;\n]")
_DECIMAL_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])|^,(?=[0-9])|(?<=[+\-]),(?=[0-9])")


class Unreadable(Exception):
    """A cell of the row cannot be sent; the message names it."""


class Asker:
    """Makes the request of each row.

    `hidden` are cells by row and column that merged cells stand over; `decimal` is the decimal sign
    of numbers that are text, None where there are none that are text.
    """

    def __init__(
        self,
        inputs: Sequence[Input],
        fixed: Mapping[str, Any],
        labels: Labels,
        hidden: Mapping[tuple[int, int], Range],
        decimal: str | None,
    ) -> None:
        self._inputs = inputs
        self._fixed = fixed
        self._labels = labels
        self._hidden = hidden
        self._decimal = decimal

    def request(self, row: int, cells: Mapping[int, Cell]) -> dict[str, Any] | None:
        """The request of a row; None where every cell of it is blank. Raises Unreadable."""
        columns = [column for one in self._inputs for column in one.columns]
        if all(column not in cells or cells[column].is_blank for column in columns):
            return None
        given = []
        for one in self._inputs:
            values = [
                self._value(one, reference(row, column), cells[column])
                for column in one.columns
                if not self._is_blank(row, column, cells)
            ]
            if values:
                whole = [entry for value in values for entry in value]
                given.append((one.field.name, whole if one.field.many else whole[0]))
        return put(deepcopy(dict(self._fixed)), given)

    def _is_blank(self, row: int, column: int, cells: Mapping[int, Cell]) -> bool:
        span = self._hidden.get((row, column))
        if span is not None:
            raise Unreadable(
                f"{reference(row, column)} is part of the merged cells {span}, whose value "
                f"stands in {reference(span.top, span.left)}."
            )
        return column not in cells or cells[column].is_blank

    def _value(self, one: Input, name: str, cell: Cell) -> list[Any]:
        """The value of a cell, of a list its entries."""
        if cell.problem:
            raise Unreadable(f"{name} {cell.problem}.")
        field = one.field
        if isinstance(cell.value, str):
            if field.kind == "json":
                return _json(field, name, cell.value)
            texts = _ENTRIES.split(cell.value) if field.many else [cell.value]
            return [self._of_text(field, name, t.strip()) for t in texts if t.strip()]
        if cell.is_percent and self._labels.unit(field.name) == "percent":
            raise Unreadable(
                f"{name} holds {cell.value}, shown as a percentage; {field.name} is in percent: "
                "show the cell as a number."
            )
        return [self._of_number(field, name, cell.value)]

    def _of_number(self, field: Field, name: str, value: Any) -> Any:
        if isinstance(value, bool) != (field.kind == "switch"):
            raise Unreadable(f"{name} holds {value!r}, where {_wanted(field)} is wanted.")
        if isinstance(value, float) and value.is_integer() and abs(value) < 2**53:
            value = int(value)
        if field.kind == "choice":
            return _choice(field, name, str(value))
        return str(value) if field.kind == "text" else value

    def _of_text(self, field: Field, name: str, text: str) -> Any:
        if field.kind == "choice":
            return _choice(field, name, text)
        if field.kind in {"number", "integer", "angle"}:
            return self._of_figures(field, name, text)
        if field.kind == "switch":
            return _switch(name, text)
        return text

    def _of_figures(self, field: Field, name: str, text: str) -> Any:
        """A number or an angle that is text, where the sign of decimals was declared."""
        as_point = text
        if self._decimal == ",":
            if "." in text:
                raise Unreadable(f"{name} holds {text!r}; the decimal sign declared is a comma.")
            as_point = _DECIMAL_COMMA.sub(".", text)
        found = number_of(as_point.replace("−", "-"))
        if self._decimal is None and (found is not None or field.kind != "angle"):
            raise Unreadable(
                f"{name} holds the text {text!r}, where {_wanted(field)} is wanted; declare the "
                "decimal sign of numbers that are text (--decimal . or ,), or make it a number."
            )
        if found is not None:
            return found
        if field.kind != "angle":
            raise Unreadable(f"{name} holds the text {text!r}, where {_wanted(field)} is wanted.")
        return as_point


def _wanted(field: Field) -> str:
    names = {
        "angle": "an angle",
        "integer": "a whole number",
        "switch": "yes or no",
        "text": "text",
        "choice": "one of its options",
        "json": "JSON",
    }
    return names.get(field.kind, "a number")


def _choice(field: Field, name: str, text: str) -> str:
    """The token of an option, which may stand as its label."""
    if text in field.choices:
        return text
    alike = {
        token
        for token, label in field.choices.items()
        if plain(text) in {plain(token), plain(label)}
    }
    if len(alike) == 1:
        return alike.pop()
    raise Unreadable(
        f"{name} holds {text!r}, no choice of {field.name}{hint(text, list(field.choices))}."
    )


def _json(field: Field, name: str, text: str) -> list[Any]:
    """An object as JSON, of a list several in one."""
    try:
        found = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise Unreadable(
            f"{name} holds {text[:40]!r}, where {field.name} wants JSON ({error})."
        ) from error
    return list(found) if field.many and isinstance(found, list) else [found]


def _switch(name: str, text: str) -> bool:
    said = {"yes": True, "true": True, "no": False, "false": False}.get(text.lower())
    if said is None:
        raise Unreadable(f"{name} holds {text!r}, where yes or no is wanted.")
    return said
