"""JSON Schema of requests and results, with the labels of options beside their tokens."""

from typing import Any

from pydantic import BaseModel
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaMode, JsonSchemaValue
from pydantic_core import core_schema

from halfangle_service.fields.glossary import option_labels

DEFINITIONS = "#/$defs/{model}"


class LabelledSchema(GenerateJsonSchema):
    """Writes JSON Schema with the labels of options (`x-labels`) beside their tokens."""

    def literal_schema(self, schema: core_schema.LiteralSchema) -> JsonSchemaValue:
        """Add the label of each token; what is no text has none."""
        written = super().literal_schema(schema)
        labels = option_labels()
        tokens = [token for token in schema["expected"] if isinstance(token, str)]
        shown: dict[str, Any] = {token: labels[token] for token in tokens if token in labels}
        return {**written, "x-labels": shown} if shown else written


def schema_of(
    model: type[BaseModel], mode: JsonSchemaMode = "validation", ref_template: str = DEFINITIONS
) -> dict[str, Any]:
    """JSON Schema (2020-12) of one model, as the contract and the catalogue show it."""
    return model.model_json_schema(
        mode=mode, ref_template=ref_template, schema_generator=LabelledSchema
    )
