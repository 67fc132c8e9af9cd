"""The set-up sheet of one answer: whatever its result holds, in its own order."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from pydantic import BaseModel

from halfangle_service.fields import ResultModel
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.angles import Angle, Direction
from halfangle_service.fields.estimate import AngleEstimate, ArcsecEstimate, LengthEstimate
from halfangle_service.fields.glossary import glossary, option_labels, title_of
from halfangle_service.operation import Operation
from halfangle_service.sheets.model import Fact, Sheet, Stack, Step, Text
from halfangle_service.sheets.parts import FORECASTS, by_severity, stack_of, tone_of, unstated
from halfangle_service.sheets.single_drawing import single_drawing
from halfangle_service.sheets.wording import angle, named, quantity, signed

#: What is drawn, is another form of the same, or serves programs.
_NOT_ON_PAPER = frozenset(
    {"svg", "dxf", "csv", "profile", "profile_csv", "job", "forecast", "units", "contributions"}
    | {"source", "standing", "count", "marks", "number"}
)
_BLANKS = ("Angle, as measured", "Temperature", "Indicator", "Date", "Initials")
_RUNOUT_BLANKS = (
    "TIR before",
    "TIR after",
    "TIR after re-seating",
    "Indicator",
    "Date",
    "Initials",
)
#: Most rows of a list that are written out, and most facts that stand in a column.
_MOST_ROWS, _MOST_FACTS = 12, 10
#: What is set or done, by the path in the result: it is written large.
_LARGE = {
    "sine.setting": ("angle", "height_to_set"),
    "sine.taper-setting": ("plate_angle", "height_to_set"),
    "sine.low-stack": ("angle_as_set",),
    "sine.compound": ("base/angle", "upper/angle"),
    "wheels.speed": ("rpm", "limit_rpm"),
    "wheels.dressing": ("traverse", "lead"),
    "runout.indicate": ("tap_from", "tap_distance"),
}


def single_sheet(
    operation: Operation[Any, Any],
    request: BaseModel,
    result: ResultModel,
    advisories: Sequence[Advisory],
) -> Sheet:
    """The sheet of any answer."""
    stops, cautions, notes = by_severity(advisories)
    found = _Found(getattr(request, "units", None), frozenset(_LARGE.get(operation.name, ())))
    found.take(result)
    forecast = getattr(result, "forecast", None)
    given = Text("Asked", (_given(request),))
    more = tuple(f"{fact.name} {fact.value}" for fact in found.facts[_MOST_FACTS:])
    rest = [given, *([Text("More", more)] if more else []), *found.texts]
    if found.missing:
        rest.append(unstated(found.missing))
    if notes:
        rest.append(Text("Notes", notes))
    job = getattr(result, "job", None)
    return Sheet(
        kind=f"Set-up sheet · {operation.title}" if job else "Set-up sheet",
        title=job or operation.title,
        about=" ".join(operation.summary.split(". ")[:1]).rstrip(".") + ".",
        judgement="" if forecast is None else FORECASTS.get(forecast, named(forecast)),
        tone=tone_of(forecast or "", stops),
        stops=stops,
        drawing=single_drawing(request, result),
        stacks=tuple(found.stacks),
        figures=tuple(found.figures),
        facts=tuple(found.facts[:_MOST_FACTS]),
        steps=tuple(found.steps),
        cautions=cautions,
        blanks=_RUNOUT_BLANKS if operation.topic == "runout" else _BLANKS,
        rest=tuple(rest),
    )


def _given(request: BaseModel) -> str:
    """What was asked, field by field, as far as it is short."""
    sent = request.model_dump(exclude_defaults=True)
    units = sent.get("units")
    told = (_asked(name, value, units) for name, value in sent.items())
    return "; ".join(part for part in told if part) + "."


def _asked(name: str, value: Any, units: Any) -> str:
    title = title_of(name)
    if isinstance(value, bool):
        return f"{title}: {'yes' if value else 'no'}"
    if isinstance(value, int | float):
        return f"{title}: {quantity(value, _unit(name), units)}"
    if isinstance(value, str):
        return f"{title}: {option_labels().get(value, value)}"
    if isinstance(value, list | tuple) and all(isinstance(part, int | float) for part in value):
        return f"{title}: {', '.join(quantity(part, _unit(name), units) for part in value)}"
    return ""


def _unit(name: str) -> str:
    term = glossary().get(name)
    return term.unit.partition("|")[0] if term else ""


@dataclass
class _Found:
    """What a result holds, sorted by where it stands on the sheet."""

    units: Any
    large: frozenset[str] = frozenset()
    figures: list[Fact] = field(default_factory=list)
    stacks: list[Stack] = field(default_factory=list)
    facts: list[Fact] = field(default_factory=list)
    steps: list[Step] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)

    def take(self, model: BaseModel, within: str = "", path: str = "") -> None:
        """Sort a model's fields; `within` names the part of the result that it is."""
        for name in type(model).model_fields:
            value = getattr(model, name)
            if value is not None and name not in _NOT_ON_PAPER:
                facts = len(self.facts)
                self._sort(name, value, within)
                if f"{path}{name}" in self.large:
                    self.figures += self.facts[facts:]
                    del self.facts[facts:]

    def _sort(self, name: str, value: Any, within: str) -> None:
        title = f"{within}, {title_of(name).lower()}" if within else title_of(name)
        if name == "not_stated":
            self.missing += value
        elif name == "action":
            self.steps.append(Step(value))
        elif name.endswith("blocks") and isinstance(value, list):
            self._stack(title, value)
        elif isinstance(value, BaseModel):
            self._model(title, value)
        elif isinstance(value, list):
            self._list(title, name, value)
        else:
            self.facts.append(Fact(title, self._plain(name, value)))

    def _stack(self, title: str, sizes: Sequence[float]) -> None:
        if sizes:
            place = title.removesuffix("blocks").rstrip(", ") or "Stack"
            self.stacks.append(stack_of(place, sizes, (), sum(sizes), self.units))

    def _model(self, title: str, value: BaseModel) -> None:
        if isinstance(value, Angle):
            self.facts.append(Fact(title, signed(angle(value.degrees))))
        elif isinstance(value, Direction):
            self.facts.append(Fact(title, value.dms))
        elif hasattr(value, "expanded_uncertainty"):
            self._estimate(title, value)
        else:
            self.take(value, title, f"{title.lower()}/")

    def _estimate(self, title: str, value: Any) -> None:
        """A quantity that carries an error: its value with the expanded uncertainty."""
        value_unit, spread_unit = _units_of(value)
        self.missing += value.not_stated
        told = []
        if value.value is not None:
            inner = value.value
            written = isinstance(inner, Angle | Direction)
            told.append(inner.dms if written else quantity(inner, value_unit, self.units))
        if value.expanded_uncertainty is not None:
            told.append(f"±{quantity(value.expanded_uncertainty, spread_unit, self.units)}")
        self.facts.append(Fact(title, " ".join(told) or "not known"))

    def _list(self, title: str, name: str, values: list[Any]) -> None:
        if not values:
            return
        if isinstance(values[0], str):
            self.texts.append(Text(title, tuple(_said(value) for value in values)))
        elif isinstance(values[0], BaseModel):
            if hasattr(values[0], "action"):
                self.steps += [
                    Step(row.action, tuple(getattr(row, "cautions", ()))) for row in values
                ]
                values = [row for row in values if "kind" in type(row).model_fields]
            self._rows(title, values)
        else:
            told = ", ".join(self._plain(name, value) for value in values[:_MOST_ROWS])
            more = " …" if len(values) > _MOST_ROWS else ""
            self.facts.append(Fact(title, told + more))

    def _rows(self, title: str, rows: Sequence[BaseModel]) -> None:
        """Rows of a list: each a line."""
        lines = [f"{place}. {self._row(row)}" for place, row in enumerate(rows[:_MOST_ROWS], 1)]
        if len(rows) > _MOST_ROWS:
            lines.append(f"… and {len(rows) - _MOST_ROWS} more.")
        if lines:
            self.texts.append(Text(title, tuple(lines)))

    def _row(self, row: BaseModel) -> str:
        inner = _Found(self.units)
        inner.take(row)
        told = [f"{fact.name} {fact.value}" for fact in inner.facts]
        told += [
            f"{stack.place}: {' + '.join(b.size for b in stack.blocks)}" for stack in inner.stacks
        ]
        told += [" ".join((text.title, *text.lines)) for text in inner.texts]
        self.steps += inner.steps
        self.missing += inner.missing
        return "; ".join(told) + "."

    def _plain(self, name: str, value: Any) -> str:
        if isinstance(value, bool):
            return "yes" if value else "no"
        if isinstance(value, int | float):
            return quantity(value, _unit(name), self.units)
        return _said(value)


def _said(value: str) -> str:
    """A text: an option by its label."""
    return option_labels().get(value, value)


def _units_of(value: Any) -> tuple[str, str]:
    """Units of an estimate's value and of its spread."""
    if isinstance(value, LengthEstimate):
        return "length", "length"
    if isinstance(value, ArcsecEstimate | AngleEstimate):
        return "arcsecond", "arcsecond"
    return "degree", "coarse-degree"
