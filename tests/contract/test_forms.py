"""A form can be made of each request's schema without hand work, and an answer may grow."""

import json
from collections.abc import Iterator
from typing import Any

import pytest

from halfangle_service.app import contract_bytes
from halfangle_service.fields.glossary import glossary, title_of
from http_support import OPERATIONS, Service
from schema_support import Schema, components, request_schemas

REQUESTS = sorted(request_schemas())
ANSWERS = sorted(set(components()) - set(REQUESTS))
UNIONS = ("anyOf", "oneOf", "allOf")


def parts_of(schema: Any) -> Iterator[Schema]:
    """A schema and every schema within it."""
    if isinstance(schema, list):
        for part in schema:
            yield from parts_of(part)
    elif isinstance(schema, dict):
        yield schema
        for part in schema.values():
            yield from parts_of(part)


@pytest.mark.parametrize("name", REQUESTS)
def test_what_is_not_stated_is_left_out(name: str) -> None:
    """No schema of a request takes `null`, nor has it as a default."""
    for part in parts_of(components()[name]):
        assert part.get("type") != "null"
        assert part.get("default", "") is not None


@pytest.mark.parametrize("name", REQUESTS)
def test_what_a_form_shows_stands_at_the_top_of_a_field(name: str) -> None:
    """Each field has its title; unit and bounds of its number are not hidden in a union."""
    for field, schema in components()[name]["properties"].items():
        if "const" not in schema:
            assert schema["title"] == title_of(field), field
        for union in UNIONS:
            for form in schema.get(union, ()):
                assert set(form) <= {"type", "$ref", "format", "pattern", "maxLength", "items",
                                     "minItems", "maxItems", "enum", "x-labels"}, field  # fmt: skip


@pytest.mark.parametrize("name", ANSWERS)
def test_the_unit_of_an_answer_stands_at_the_top_of_a_field(name: str) -> None:
    """A number that may be null has its unit beside the union."""
    for field, schema in components()[name].get("properties", {}).items():
        for form in schema.get("anyOf", ()):
            assert "x-unit" not in form, field


@pytest.mark.parametrize("name", ANSWERS)
def test_answers_are_open(name: str) -> None:
    """A field that a later release adds to an answer breaks no caller that checks its schema."""
    for part in parts_of(components()[name]):
        assert part.get("additionalProperties") is not False


def test_null_is_read_as_left_out(service: Service) -> None:
    """Whoever sends null for what is not stated gets the answer of who leaves it out."""
    operation = OPERATIONS["sine.setting"]
    stated = dict(operation.example)
    optional = set(components()[operation.request.__name__]["properties"]) - set(stated)
    assert len(optional) > 3
    left_out = service.post(operation.path, json=stated)
    without_default = {
        name for name in optional if operation.request.model_fields[name].default is None
    }
    null = service.post(operation.path, json={**stated, **dict.fromkeys(without_default)})
    assert (null.status_code, null.content) == (200, left_out.content)
    assert "`null` is read as left out" in json.loads(contract_bytes())["info"]["description"]


def test_titles_are_words() -> None:
    """A title is a name in words, without the unit that a form writes after the value."""
    titles = {name: title_of(name) for name in glossary()}
    assert titles["indicator_rise"] == "Indicator rise"
    assert titles["angle_error_arcsec"] == "Angle error"
    assert titles["limit_tir"] == "Limit TIR"
    assert titles["svg"] == "Drawing"
    assert [title for title in titles.values() if "_" in title or not title[0].isupper()] == []
