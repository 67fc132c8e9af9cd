"""Fields of a request or a result, a row each, as a person reads them: form, unit, default."""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from halfangle_service.fields.angles import ANGLE_FORMAT
from halfangle_service.trade.wording import plain

Schema = Mapping[str, Any]

_UNITS = {"celsius": "°C", "degree": "degrees", "arcsecond": "arc-seconds"}
_TYPES = {"boolean": "true or false", "string": "text", "integer": "whole number"}
_RULES = {
    "one-of": "just one of",
    "at-most-one-of": "at most one of",
    "at-least-one-of": "at least one of",
    "all-or-none": "all together, or none of",
}
_LONGEST_DEFAULT = 40


@dataclass(frozen=True, slots=True)
class Row:
    """One field. `options` are its words with their labels, where a label says more."""

    path: str
    depth: int
    form: str
    unit: str
    bounds: str
    default: str
    required: bool
    meaning: str
    options: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Section:
    """Rows that a form shows together; `advanced`: an answer comes without them."""

    rows: list[Row]
    title: str = ""
    advanced: bool = False


def rows_of(schema: Schema) -> list[Row]:
    """A row a field; those of an object follow it, under its path.

    An object that stands in several places is written out at the first; the others name that.
    """
    return list(_Reader(schema.get("$defs", {})).rows(schema, "", 0))


def grouped(rows: list[Row], groups: Iterable[Mapping[str, Any]]) -> list[Section]:
    """Rows of a request as a form shows them (`x-forms`): the operation's own, then each group.

    What is in an object stays with it; what is advanced comes last.
    """
    group_of = {name: group for group in groups for name in group["fields"]}
    own = Section([])
    sections: dict[str, Section] = {}
    section = own
    for row in rows:
        if row.depth == 0:
            group = group_of.get(row.path)
            section = own
            if group is not None:
                title, advanced = group["title"], group.get("advanced", False)
                section = sections.setdefault(title, Section([], title, advanced))
        section.rows.append(row)
    ordered = sorted(sections.values(), key=lambda section: section.advanced)
    return [section for section in (own, *ordered) if section.rows]


def rules_of(schema: Schema) -> list[str]:
    """Which fields of a request go together, a sentence each, names between backticks."""
    return [_rule(rule, "") for rule in schema.get("x-rules", ())] + [
        _rule(rule, name)
        for name, part in schema.get("$defs", {}).items()
        for rule in part.get("x-rules", ())
    ]


def _rule(rule: Schema, model: str) -> str:
    fields = ", ".join(f"`{name}`" for name in rule["fields"])
    within = f"In {model}: " if model else ""
    if rule["kind"] == "needs":
        return f"{within}{fields}: only together with `{rule['needs']}`."
    words = _RULES[rule["kind"]]
    return f"{within}{words if within else words[:1].upper() + words[1:]} {fields}."


def unit_in_words(written: str) -> str:
    """A unit as a person reads it; a pure number has none.

    >>> unit_in_words("inch_per_foot"), unit_in_words("length|degree"), unit_in_words("1")
    ('inch per foot', 'length or degrees', '')
    """
    words = (_UNITS.get(word, word.replace("_", " ")) for word in written.split("|"))
    return "" if written == "1" else " or ".join(words)


class _Reader:
    """Reads a schema; remembers where each object was written out."""

    def __init__(self, definitions: Schema) -> None:
        self._definitions = definitions
        self._written: dict[str, str] = {}

    def rows(self, schema: Schema, prefix: str, depth: int) -> Iterator[Row]:
        """Rows of an object's fields, those that must be given first, and of what is in them."""
        required = set(schema.get("required", ()))
        fields = schema.get("properties", {}).items()
        for name, field in sorted(fields, key=lambda named: named[0] not in required):
            path = prefix + name
            objects = list(self._objects(field))
            elsewhere = {self._written[m] for m, _, _ in objects if m in self._written}
            form = self._form(field)
            if elsewhere:
                form += f" (fields as of {', '.join(sorted(elsewhere))})"
            yield Row(
                path=path,
                depth=depth,
                form=form,
                unit=self._unit(field),
                bounds=self._bounds(field),
                default=_default(field),
                required=name in required,
                meaning=field.get("description", ""),
                options=tuple(self._options(field)),
            )
            for model, suffix, kind in objects:
                if model in self._written:
                    continue
                self._written[model] = path
                within = f"{path}{suffix}{f' ({kind})' if kind else ''}."
                yield from self.rows(self._definitions[model], within, depth + 1)

    def _objects(self, field: Schema) -> Iterator[tuple[str, str, str]]:
        """Objects that a field leads to: name, suffix of the path (`[]`: a list), its kind."""
        if "$ref" in field:
            model = field["$ref"].rsplit("/", 1)[-1]
            target = self._definitions[model]
            if "properties" in target:
                yield model, "", ""
            else:
                yield from self._objects(target)
        chooser = field.get("discriminator", {}).get("propertyName")
        for option in (*field.get("anyOf", ()), *field.get("oneOf", ())):
            for model, suffix, kind in self._objects(option):
                word = self._definitions[model]["properties"].get(chooser, {}).get("const", kind)
                yield model, suffix, word
        if isinstance(field.get("items"), dict):
            for model, suffix, kind in self._objects(field["items"]):
                yield model, "[]" + suffix, kind

    def _form(self, field: Schema) -> str:
        """Kind of value."""
        if "$ref" in field:
            target = self._definitions[field["$ref"].rsplit("/", 1)[-1]]
            return "object" if "properties" in target else self._form({**target, **_beside(field)})
        if "enum" in field or "const" in field:
            return "option"
        options = [*field.get("anyOf", ()), *field.get("oneOf", ())]
        if options:
            return " or ".join(dict.fromkeys(self._form(option) for option in options))
        if "items" in field:
            return f"list of {self._form(field['items'])}"
        if field.get("format") == ANGLE_FORMAT:
            return "text in degrees, minutes, seconds"
        return _TYPES.get(str(field.get("type")), str(field.get("type", "value")))

    def _bounds(self, field: Schema) -> str:
        """Bounds of a field, of what it may be, and of each entry of a list."""
        if "$ref" in field:
            target = self._definitions[field["$ref"].rsplit("/", 1)[-1]]
            return "" if "properties" in target else self._bounds({**target, **_beside(field)})
        if field.get("format") == ANGLE_FORMAT:
            return ""
        said = [_bounds(field)]
        said += [self._bounds(part) for part in (*field.get("anyOf", ()), *field.get("oneOf", ()))]
        if isinstance(field.get("items"), dict) and (each := self._bounds(field["items"])):
            said.append(f"each {each}")
        return ", ".join(dict.fromkeys(part for part in said if part))

    def _unit(self, field: Schema) -> str:
        """Unit of a number, of the numbers of a list, or of an object's own."""
        if "x-unit" in field:
            return unit_in_words(str(field["x-unit"]))
        parts = [*field.get("anyOf", ()), *field.get("oneOf", ())]
        parts += [field["items"]] if isinstance(field.get("items"), dict) else []
        return next((unit for part in parts if (unit := self._unit(part))), "")

    def _options(self, field: Schema) -> Iterator[tuple[str, str]]:
        """Each word that a field takes, with its label where that says more."""
        if "$ref" in field:
            target = self._definitions[field["$ref"].rsplit("/", 1)[-1]]
            if "properties" not in target:
                yield from self._options(target)
            return
        labels = field.get("x-labels", {})
        words = field.get("enum", [field["const"]] if "const" in field else [])
        for word in words:
            label = labels.get(word, "")
            yield str(word), "" if label == word else label
        for part in (*field.get("anyOf", ()), *field.get("oneOf", ())):
            yield from self._options(part)
        if isinstance(field.get("items"), dict):
            yield from self._options(field["items"])


def _beside(field: Schema) -> dict[str, Any]:
    return {key: part for key, part in field.items() if key != "$ref"}


def _default(field: Schema) -> str:
    value = field.get("default")
    if value is None:
        return ""
    if isinstance(value, int | float) and not isinstance(value, bool):
        return plain(float(value), 12)
    text = value if isinstance(value, str) else json.dumps(value, ensure_ascii=False)
    return text if len(text) <= _LONGEST_DEFAULT else "as described"


def _bounds(field: Schema) -> str:
    """Bounds of a number, of a text's length, of a list's."""
    number = _range(
        field.get("minimum"),
        field.get("maximum"),
        field.get("exclusiveMinimum"),
        field.get("exclusiveMaximum"),
    )
    length = _range(field.get("minLength"), field.get("maxLength"))
    entries = _range(field.get("minItems"), field.get("maxItems"))
    said = (number, length and f"{length} characters", entries and f"{entries} entries")
    return ", ".join(part for part in said if part)


def _range(
    least: float | None, most: float | None, over: float | None = None, under: float | None = None
) -> str:
    """Bounds in words.

    >>> _range(1, 8), _range(None, None, 0, 90), _range(0, None), _range(3, 3)
    ('1 to 8', 'over 0, under 90', 'at least 0', '3')
    """
    if least is not None and least == most:
        return _figure(least)
    if least is not None and most is not None:
        return f"{_figure(least)} to {_figure(most)}"
    said = (("at least", least), ("over", over), ("at most", most), ("under", under))
    return ", ".join(f"{word} {_figure(bound)}" for word, bound in said if bound is not None)


def _figure(bound: float) -> str:
    return plain(float(bound), 10)
