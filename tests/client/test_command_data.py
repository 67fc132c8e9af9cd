"""What the generator reads out of the contract for the command line."""

from typing import Any

import pytest

from commands import command_files, field_of, fields_inside
from inlining import inlined

MARK = "# Made by a test."
NUMBER = {"type": "number", "minimum": 0}
DMS = {"type": "string", "format": "angle"}
NULL = {"type": "null"}
ANGLE: dict[str, Any] = {
    "$ref": "#/components/schemas/AngleIn",
    "x-unit": "degree",
    "minimum": 0,
}
SCHEMAS: dict[str, dict[str, Any]] = {
    "AngleIn": {"anyOf": [{"type": "number"}, DMS], "description": "An angle."},
    "Taper": {
        "type": "object",
        "properties": {
            "kind": {"const": "taper", "type": "string"},
            "angle": {**ANGLE, "description": "Its angle."},
        },
    },
    "Straight": {
        "type": "object",
        "properties": {
            "kind": {"const": "straight", "type": "string"},
            "diameter": {"type": "number", "x-unit": "length"},
            "deep": {"$ref": "#/components/schemas/Taper"},
        },
    },
}
EITHER = {
    "oneOf": [{"$ref": "#/components/schemas/Taper"}, {"$ref": "#/components/schemas/Straight"}]
}


def written_out(schema: dict[str, Any]) -> tuple[dict[str, Any], dict[str, Any]]:
    """A field's schema and all schemas as the generator sees them, shared parts in their places."""
    asked = {"properties": {"name": schema}}
    made = inlined({"components": {"schemas": {**SCHEMAS, "Asked": asked}}})
    schemas = made["components"]["schemas"]
    return schemas["Asked"]["properties"]["name"], schemas


@pytest.mark.parametrize(
    ("schema", "wanted"),
    [
        (NUMBER, {"kind": "number"}),
        ({"anyOf": [NUMBER, NULL], "x-unit": "length"}, {"kind": "number", "metavar": "LENGTH"}),
        (
            {**NUMBER, "x-unit": "arcsecond"},
            {"metavar": "ARCSEC", "help": "What. [arcsecond, at least 0]"},
        ),
        (
            {**ANGLE, "exclusiveMaximum": 90},
            {"help": "What. [degree, at least 0, under 90; or text in degrees, minutes, seconds]"},
        ),
        ({"type": "integer", "default": 0}, {"kind": "integer", "default": 0}),
        ({"type": "boolean", "default": False}, {"kind": "switch", "default": False}),
        ({"type": "string"}, {"kind": "text"}),
        (ANGLE, {"kind": "angle", "metavar": "ANGLE"}),
        ({"allOf": [ANGLE], "default": 45.0}, {"kind": "angle", "default": 45.0}),
        ({"anyOf": [ANGLE, NULL], "default": None}, {"kind": "angle"}),
        (
            {"enum": ["a", "b"], "type": "string", "x-labels": {"a": "First"}},
            {"kind": "choice", "choices": {"a": "First", "b": "b"}},
        ),
        (
            {"anyOf": [{"enum": ["x"], "type": "string"}, NULL], "x-labels": {"x": "An x"}},
            {"kind": "choice", "choices": {"x": "An x"}},
        ),
        ({"type": "array", "items": NUMBER}, {"kind": "number", "many": True}),
        ({"anyOf": [{"type": "array", "items": ANGLE}, NULL]}, {"kind": "angle", "many": True}),
        ({"type": "array", "items": EITHER}, {"kind": "json", "many": True}),
        (EITHER, {"kind": "json"}),
        ({}, {"kind": "json"}),
    ],
)
def test_kinds(schema: dict[str, Any], wanted: dict[str, Any]) -> None:
    """How a word becomes a value follows from the schema, by reference or written out."""
    field = field_of("name", *written_out({**schema, "description": "What."}), required=True)
    assert {name: field[name] for name in wanted} == wanted
    assert field["required"] is True


def test_parts_of_an_object() -> None:
    """Parts have dotted names, those of several kinds each once, to a depth that can be typed."""
    inside = fields_inside("shank", *written_out(EITHER))
    assert [field["name"] for field in inside] == [
        "shank.kind",
        "shank.angle",
        "shank.diameter",
        "shank.deep",
        "shank.deep.kind",
        "shank.deep.angle",
    ]
    assert inside[0]["choices"] == {"taper": "taper", "straight": "straight"}
    facts = "[degree, at least 0; or text in degrees, minutes, seconds]"
    assert inside[1]["help"] == f"Its angle. {facts}"


def test_units_of_answers_and_backticks() -> None:
    """Units of an answer are found through references; a field's name in a text is an option."""
    result = {
        "type": "object",
        "properties": {
            "height": {"type": "number", "x-unit": "length"},
            "angles": {"type": "array", "items": ANGLE},
            "shank": {"anyOf": [{"$ref": "#/components/schemas/Straight"}, NULL]},
        },
    }
    body = {
        "type": "object",
        "properties": {
            "some_height": {**NUMBER, "description": "In `units`, see `other`, `units`."},
            "units": {"type": "string"},
        },
        "required": ["units"],
    }
    answer = {"type": "object", "properties": {"result": {"$ref": "#/components/schemas/Result"}}}
    content = {"application/json": {"schema": {"$ref": "#/components/schemas/ItsAnswer"}}}
    contract = {
        "paths": {
            "/v1/t/do-it": {
                "post": {
                    "tags": ["t"],
                    "operationId": "t_do_it",
                    "summary": "It",
                    "requestBody": {"content": {"application/json": {"schema": body}}},
                    "responses": {"200": {"content": content}},
                }
            }
        },
        "components": {"schemas": {**SCHEMAS, "ItsAnswer": answer, "Result": result}},
    }
    files = command_files(inlined(contract), MARK)
    assert set(files) == {"_topics.json", "_sheets.json", "t.json"}
    assert '"height": "length"' in files["t.json"]
    assert '"angles": "degree"' in files["t.json"]
    assert '"shank": "@Straight"' in files["t.json"]
    assert "In --units, see other, --units." in files["t.json"]
    assert '"about": "Made by a test."' in files["t.json"]
