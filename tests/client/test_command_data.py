"""What the generator reads out of the contract for the command line."""

from typing import Any

import pytest

from commands import command_files, field_of, fields_inside

MARK = "# Made by a test."
NUMBER = {"type": "number", "minimum": 0}
DMS = {"type": "string", "format": "angle"}
NULL = {"type": "null"}
SCHEMAS: dict[str, dict[str, Any]] = {
    "AngleIn": {"anyOf": [NUMBER, DMS], "x-unit": "degree"},
    "Shared_rpm": {**NUMBER, "description": "Turns.", "default": 9},
    "Grade": {"enum": ["a", "b"], "type": "string", "x-labels": {"a": "First"}},
    "Taper": {
        "type": "object",
        "properties": {
            "kind": {"const": "taper", "type": "string"},
            "angle": {"$ref": "#/components/schemas/AngleIn", "description": "Its angle."},
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
ANGLE_REF = {"$ref": "#/components/schemas/AngleIn"}
EITHER = {
    "oneOf": [{"$ref": "#/components/schemas/Taper"}, {"$ref": "#/components/schemas/Straight"}]
}


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
            {**ANGLE_REF, "exclusiveMaximum": 90},
            {"help": "What. [degree, at least 0, under 90; or text in degrees, minutes, seconds]"},
        ),
        (
            {"$ref": "#/components/schemas/Shared_rpm"},
            {"help": "Turns. [at least 0]", "default": 9},
        ),
        ({"type": "integer", "default": 0}, {"kind": "integer", "default": 0}),
        ({"type": "boolean", "default": False}, {"kind": "switch", "default": False}),
        ({"type": "string"}, {"kind": "text"}),
        ({"anyOf": [NUMBER, DMS], "x-unit": "degree"}, {"kind": "angle", "metavar": "ANGLE"}),
        (ANGLE_REF, {"kind": "angle", "metavar": "ANGLE"}),
        ({"allOf": [ANGLE_REF], "default": 45.0}, {"kind": "angle", "default": 45.0}),
        ({"anyOf": [ANGLE_REF, NULL], "default": None}, {"kind": "angle"}),
        (
            {"$ref": "#/components/schemas/Grade"},
            {"kind": "choice", "choices": {"a": "First", "b": "b"}},
        ),
        (
            {"anyOf": [{"enum": ["x"], "type": "string"}, NULL], "x-labels": {"x": "An x"}},
            {"kind": "choice", "choices": {"x": "An x"}},
        ),
        ({"type": "array", "items": NUMBER}, {"kind": "number", "many": True}),
        ({"anyOf": [{"type": "array", "items": ANGLE_REF}, NULL]}, {"kind": "angle", "many": True}),
        ({"type": "array", "items": EITHER}, {"kind": "json", "many": True}),
        (EITHER, {"kind": "json"}),
        ({}, {"kind": "json"}),
    ],
)
def test_kinds(schema: dict[str, Any], wanted: dict[str, Any]) -> None:
    """How a word becomes a value follows from the schema, by reference or written out."""
    about = {} if "Shared" in schema.get("$ref", "") else {"description": "What."}
    field = field_of("name", {**about, **schema}, True, SCHEMAS)
    assert {name: field[name] for name in wanted} == wanted
    assert field["required"] is True


def test_parts_of_an_object() -> None:
    """Parts have dotted names, those of several kinds each once, to a depth that can be typed."""
    inside = fields_inside("shank", EITHER, SCHEMAS)
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
            "angles": {"type": "array", "items": ANGLE_REF},
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
    content = {"application/json": {"schema": {"$ref": "#/components/schemas/Answer"}}}
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
        "components": {"schemas": {**SCHEMAS, "Answer": answer, "Result": result}},
    }
    files = command_files(contract, MARK)
    assert set(files) == {"_topics.json", "_glossary.json", "t.json"}
    assert '"height": "length"' in files["t.json"]
    assert '"angles": "degree"' in files["t.json"]
    assert '"shank": "@Straight"' in files["t.json"]
    assert "In --units, see other, --units." in files["t.json"]
    assert '"about": "Made by a test."' in files["t.json"]
