"""A form can be made of each request's schema without hand work, and an answer may grow."""

import json
import re
from collections import defaultdict
from collections.abc import Iterator
from typing import Any

import pytest

from halfangle_service.app import contract_bytes
from halfangle_service.fields.blocks import SOURCES
from halfangle_service.fields.glossary import glossary, title_of
from halfangle_service.fields.plates import ROLLS
from halfangle_service.fields.set_up_errors import SET_UP_TERMS
from halfangle_service.fields.slopes import SLOPE_FIELDS
from http_support import OPERATIONS, Service
from schema_support import ROWS_SENT, Schema, components, request_schemas

REQUESTS = sorted(request_schemas())
ANSWERS = sorted(set(components()) - set(REQUESTS) - ROWS_SENT)
FORMS: dict[str, Any] = json.loads(contract_bytes())["x-forms"]
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
                assert set(form) <= {"title", "type", "$ref", "format", "pattern", "maxLength",
                                     "items", "minItems", "maxItems", "enum",
                                     "x-labels"}, field  # fmt: skip


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


# Laid out -------------------------------------------------------------------------------------
def test_each_field_of_a_group_is_of_that_one_alone() -> None:
    """A name has one place in every form; each is a field that some request has."""
    asked = {f for name in REQUESTS for f in components()[name]["properties"]}
    grouped = [field for group in FORMS["groups"] for field in group["fields"]]
    assert len(grouped) == len(set(grouped)) > 60
    assert set(grouped) <= asked - {"units"}
    titles = [group["title"] for group in FORMS["groups"]]
    assert len(titles) == len(set(titles)) == 6


def test_a_group_is_of_the_class_that_declares_its_fields() -> None:
    """What requests take over from a class of fields stands together, under its title."""
    groups = {group["title"]: group["fields"] for group in FORMS["groups"]}
    assert groups["Slope of the cone"] == list(SLOPE_FIELDS)
    assert groups["Gauge blocks"][:3] == list(SOURCES)
    assert set(groups["Sine bar or plate"]) >= {"center_distance", *ROLLS, "base_axis"}
    assert set(groups["Errors, by their limits"]) >= set(SET_UP_TERMS)


def test_error_limits_are_advanced_and_nothing_required_is() -> None:
    """A plan asks for no limit of error, unless there is no answer without."""
    advanced = {f for group in FORMS["groups"] if group.get("advanced") for f in group["fields"]}
    assert {"roll_difference", "measure_error_limit", "coverage_factor"} <= advanced
    for operation in OPERATIONS.values():
        schema = components()[operation.request.__name__]
        for field, part in schema["properties"].items():
            shown_at_once = field in schema.get("required", ())
            refined = "default" in part or field in advanced
            if "_error_limit" in field:
                assert refined or shown_at_once, field
    (names,) = (g["fields"] for g in FORMS["groups"] if g.get("advanced"))
    assert not {"angle", "tolerance_arcsec", "marked_rpm", "grade"} & set(names)


def test_every_unit_has_decimals_to_show() -> None:
    """Of each unit of the contract a form knows how finely it is worth showing.

    What an estimate's unit is by its nature is a length or seconds of arc.
    """
    written = json.dumps(json.loads(contract_bytes())["components"])
    units = set(re.findall(r'"x-unit": "(\w+)"', written)) - {"stated", "per_stated"}
    assert units == set(FORMS["decimals"]) - {"volume"} | ({"volume"} & units)
    assert FORMS["decimals"]["length"] == {"in": 5, "mm": 4}


@pytest.mark.parametrize("name", REQUESTS)
def test_each_option_is_a_token_with_a_label(name: str) -> None:
    """A form shows the label of each option and sends its token: both stand in one schema."""
    for part in parts_of(components()[name]):
        tokens = [*part.get("enum", ()), *([part["const"]] if "const" in part else [])]
        texts = [token for token in tokens if isinstance(token, str)]
        if texts and "properties" not in part:
            assert set(part["x-labels"]) == set(texts)
            assert all(part["x-labels"].values())


def test_what_is_sent_together_is_said_in_the_words_of_json_schema() -> None:
    """`dependentRequired` says what `x-rules` says of fields that need others, and no more."""
    found = 0
    for operation in OPERATIONS.values():
        needed: dict[str, set[str]] = defaultdict(set)
        for rule in operation.request.all_rules():
            for field in rule.fields:
                if rule.kind == "all-or-none":
                    needed[field] |= set(rule.fields) - {field}
                elif rule.kind == "needs":
                    needed[field].add(rule.needs)
        written = components()[operation.request.__name__].get("dependentRequired", {})
        assert {field: set(others) for field, others in written.items()} == needed
        found += bool(written)
    assert found > 8


def test_titles_are_words() -> None:
    """A title is a name in words, without the unit that a form writes after the value."""
    titles = {name: title_of(name) for name in glossary()}
    assert titles["indicator_rise"] == "Indicator rise"
    assert titles["angle_error_arcsec"] == "Angle error"
    assert titles["limit_tir"] == "Limit TIR"
    assert titles["svg"] == "Drawing"
    assert [title for title in titles.values() if "_" in title or not title[0].isupper()] == []
