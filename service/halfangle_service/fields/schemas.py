"""JSON Schema of requests and results, as a front end builds forms and a client reads answers.

In a request a field that is not stated is left out: no schema says `null`. (The service reads a
`null` as left out all the same.) Unit, bounds, default and title of a field stand beside its type,
not within a union. Requests are closed; answers are open, since a later release may add a field.
"""

from collections.abc import Iterable
from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaMode, JsonSchemaValue
from pydantic_core import core_schema

from halfangle_service.fields.base import UNITS, RequestModel, Rule
from halfangle_service.fields.glossary import option_labels, title_of

DEFINITIONS = "#/$defs/{model}"


class LabelledSchema(GenerateJsonSchema):
    """Writes JSON Schema with the labels of options (`x-labels`) beside their tokens."""

    def literal_schema(self, schema: core_schema.LiteralSchema) -> JsonSchemaValue:
        """Add the label of each token, where all have one; what is no text has none."""
        written = super().literal_schema(schema)
        labels = option_labels()
        tokens = [token for token in schema["expected"] if isinstance(token, str)]
        shown: dict[str, Any] = {token: labels[token] for token in tokens if token in labels}
        return {**written, "x-labels": shown} if shown and len(shown) == len(tokens) else written

    def nullable_schema(self, schema: core_schema.NullableSchema) -> JsonSchemaValue:
        """In a request leave `null` out; in an answer put the unit beside the union."""
        if self.mode == "validation":
            return self.generate_inner(schema["schema"])
        written = super().nullable_schema(schema)
        forms = written.get("anyOf", [])
        units = {form.pop("x-unit") for form in forms if "x-unit" in form}
        return {**written, "x-unit": units.pop()} if units else written

    def default_schema(self, schema: core_schema.WithDefaultSchema) -> JsonSchemaValue:
        """A default of None is none: the field is left out."""
        written = super().default_schema(schema)
        if written.get("default", ...) is None:
            del written["default"]
        return written

    def model_schema(self, schema: core_schema.ModelSchema) -> JsonSchemaValue:
        """Leave answers open, and the class's name to the name that it has as a component.

        One of several kinds of object has the label of its kind as title: a form offers it so.
        Examples of an answer's fields stand in the stored answers.
        """
        written = super().model_schema(schema)
        rules = schema["cls"].all_rules() if issubclass(schema["cls"], RequestModel) else ()
        if rules:
            written["x-rules"] = [_written_rule(rule) for rule in rules]
            together = _needed_together(rules)
            if together:
                written["dependentRequired"] = together
        if self.mode == "serialization" and written.get("additionalProperties") is False:
            del written["additionalProperties"]
            for field in written.get("properties", {}).values():
                field.pop("examples", None)
        del written["title"]
        kind = _label_of_kind(written)
        if kind and self.mode == "validation":
            written["title"] = kind
        return written

    def field_title_should_be_set(self, schema: Any) -> bool:
        """Every field of a request has a title; in answers the glossary has it."""
        return bool(
            self.mode == "validation" and schema["type"] in {"model-field", "computed-field"}
        )

    def get_title_from_name(self, name: str) -> str:
        """The title of the glossary."""
        return title_of(name)


def _label_of_kind(schema: JsonSchemaValue) -> str:
    """The label of the kind, or the kinds, that an object within a request is; else empty."""
    fields = schema.get("properties", {})
    kind = fields.get("kind", {})
    if UNITS in fields or "x-labels" not in kind:
        return ""
    tokens = kind.get("enum") or [kind["const"]]
    return " or ".join(kind["x-labels"][token] for token in tokens)


def _written_rule(rule: Rule) -> dict[str, Any]:
    needs = {"needs": rule.needs} if rule.needs else {}
    return {"kind": rule.kind, "fields": list(rule.fields), **needs}


def _needed_together(rules: Iterable[Rule]) -> dict[str, list[str]]:
    """What each field needs beside it, in JSON Schema's own words.

    The other kinds stay under `x-rules` alone: `oneOf` on required fields makes generators of types
    write a type for each, or give up.
    """
    needed: dict[str, list[str]] = {}
    for rule in rules:
        for field in rule.fields:
            if rule.kind == "all-or-none":
                needed.setdefault(field, []).extend(f for f in rule.fields if f != field)
            elif rule.kind == "needs":
                needed.setdefault(field, []).append(rule.needs)
    return needed


def schema_of(
    model: type[BaseModel], mode: JsonSchemaMode = "validation", ref_template: str = DEFINITIONS
) -> dict[str, Any]:
    """JSON Schema (2020-12) of one model, as the contract and the catalogue show it."""
    return model.model_json_schema(
        mode=mode, ref_template=ref_template, schema_generator=LabelledSchema
    )
