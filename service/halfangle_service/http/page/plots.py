"""What a page's plot begins with: the numbers of the example that can run, and what is plotted."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from halfangle_service.columns import flat_fields
from halfangle_service.columns.asked import NumberField, number_fields
from halfangle_service.fields.glossary import title_of
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.curves.model import CURVES_PATH
from halfangle_service.http.page.fields import unit_in_words
from halfangle_service.operation import Operation
from halfangle_service.trade.angles import parse_dms
from halfangle_service.trade.wording import plain

AnyOperation = Operation[Any, Any]
#: A plot runs from half of the example's number to one and a half times it.
_LEAST, _MOST = 0.5, 1.5
_LENGTH = "length"


@dataclass(frozen=True, slots=True)
class Axis:
    """A quantity that a plot can show: its name, title and unit, and the ends of one that runs."""

    name: str
    title: str
    unit: str
    first: str = ""
    last: str = ""


@dataclass(frozen=True, slots=True)
class Plot:
    """What can run and what can be plotted, each with the likeliest first."""

    path: str
    runs: tuple[Axis, ...]
    shows: tuple[Axis, ...]


def plot_of(operation: AnyOperation) -> Plot | None:
    """What the plot of an operation begins with; None where it has no curves."""
    runs = tuple(_runs(operation)) if operation.columns else ()
    if not runs:
        return None
    return Plot(CURVES_PATH.format(operation=operation.name), runs, tuple(_shows(operation)))


def _runs(operation: AnyOperation) -> Iterator[Axis]:
    """Numbers of the example, angles first, about the values that they have there."""
    schema = schema_of(operation.request)["properties"]
    known = number_fields(operation.request)
    given = [(known[n], v) for n, v in operation.example.items() if n in known]
    for field, value in sorted(given, key=lambda found: not found[0].is_angle):
        number = parse_dms(value) if isinstance(value, str) else float(value)
        if number:
            ends = sorted((_LEAST * number, _MOST * number))
            first, last = (plain(_within(end, field), 4) for end in ends)
            unit = _unit(schema[field.name].get("x-unit", ""), operation)
            yield Axis(field.name, title_of(field.name), unit, first, last)


def _within(end: float, field: NumberField) -> float:
    """An end of the range that the field takes, where the one wanted lies beyond its bounds."""
    low = field.gt if field.ge is None else field.ge
    high = field.lt if field.le is None else field.le
    if high is not None and end >= high:
        return high if field.lt is None else 0.99 * high
    if low is not None and end <= low:
        return low if field.gt is None else low + 0.01
    return end


def _shows(operation: AnyOperation) -> Iterator[Axis]:
    """Numbers of the result, by the titles of the fields that lead to them."""
    asked = operation.request.model_fields
    fields = flat_fields(operation.result).values()
    # What was asked comes back in answers too; nobody plots it first.
    for field in sorted(fields, key=lambda field: field.path[0] in asked):
        if field.kind in {"number", "count"}:
            title = ", ".join(title_of(part) for part in field.path if part != "degrees")
            yield Axis(field.name, title, _unit(field.unit or "", operation))


def _unit(written: str, operation: AnyOperation) -> str:
    """A unit in words; a length's is that of the example, as the request is."""
    units = operation.example.get("units")
    return str(units) if written == _LENGTH and units else unit_in_words(written)
