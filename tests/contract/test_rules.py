"""What a request's fields must be together, as data, is what the service refuses."""

import json
from itertools import combinations
from typing import Any

import pytest

from halfangle_service.fields.base import Rule
from http_support import OPERATIONS, Service
from schema_support import components

CASES = [
    pytest.param(name, rule, id=f"{name}-{rule.kind}-{rule.fields[0]}")
    for name, operation in OPERATIONS.items()
    for rule in operation.request.all_rules()
]


def refused(service: Service, name: str, request: dict[str, Any]) -> set[str]:
    """The fields that a request is refused for as in disagreement; none where it is not."""
    answer = service.post(OPERATIONS[name].path, json=request)
    if answer.status_code != 422 or answer.json()["type"] != "/problems/disagreement":
        return set()
    return {error["pointer"].removeprefix("/") for error in answer.json()["errors"]}


def some_value(name: str, field: str) -> Any:
    """A value that a field takes, whatever it means: from its schema's example or its bounds."""
    schema = components()[OPERATIONS[name].request.__name__]["properties"][field]
    return value_of(schema)


def value_of(schema: dict[str, Any]) -> Any:
    """A value that a schema takes."""
    if "examples" in schema:
        return schema["examples"][0]
    if "$ref" in schema:
        model = components()[schema["$ref"].rpartition("/")[2]]
        return {f: value_of(model["properties"][f]) for f in model.get("required", ())}
    if "enum" in schema or "const" in schema:
        return schema.get("enum", [schema.get("const")])[0]
    if schema.get("type") == "array":
        return [value_of(schema["items"])]
    if schema.get("type") == "string":
        return "a"
    low = schema.get("minimum", schema.get("exclusiveMinimum", 0))
    high = schema.get("maximum", schema.get("exclusiveMaximum", 2))
    return max(low, min(1, (low + high) / 2))


def broken(name: str, rule: Rule) -> list[dict[str, Any]]:
    """Requests that break a rule and are else as the example is."""
    example = dict(OPERATIONS[name].example)
    rest = {field: value for field, value in example.items() if field not in rule.fields}
    given = {f: example.get(f, some_value(name, f)) for f in rule.fields}
    if rule.kind == "needs":
        rest.pop(rule.needs, None)
        return [{**rest, field: given[field]} for field in rule.fields]
    if rule.kind == "all-or-none":
        return [{**rest, field: given[field]} for field in rule.fields]
    pairs = [{**rest, **{f: given[f] for f in pair}} for pair in combinations(rule.fields, 2)]
    none = [rest] if rule.kind in {"one-of", "at-least-one-of"} else []
    return [*none, *(pairs if rule.kind in {"one-of", "at-most-one-of"} else [])]


@pytest.mark.parametrize(("name", "rule"), CASES)
def test_a_request_that_breaks_a_rule_is_refused(service: Service, name: str, rule: Rule) -> None:
    """Each way to break it is a disagreement that names one of its fields."""
    named = {*rule.fields, rule.needs}
    for request in broken(name, rule):
        assert refused(service, name, request) & named, request


@pytest.mark.parametrize("name", OPERATIONS)
def test_the_example_keeps_the_rules(name: str) -> None:
    """Each example has what its rules ask for, so that they ask for nothing that is not needed."""
    example = set(OPERATIONS[name].example)
    for rule in OPERATIONS[name].request.all_rules():
        sent = example & {*rule.fields}
        kept = {
            "one-of": len(sent) == 1,
            "at-most-one-of": len(sent) <= 1,
            "at-least-one-of": len(sent) >= 1,
            "all-or-none": len(sent) in {0, len(rule.fields)},
            "needs": not sent or rule.needs in example,
        }
        assert kept[rule.kind], rule


def test_the_contract_has_the_rules() -> None:
    """They stand in the schema of the request, with those that it shares with others."""
    written = components()["BlockCheckRequest"]["x-rules"]
    assert {"kind": "one-of", "fields": ["set", "sizes", "box"]} in written
    compound = components()["SineCompoundRequest"]["x-rules"]
    assert {"kind": "at-most-one-of", "fields": ["set", "sizes", "box"]} in compound
    needs = next(rule for rule in written if rule["kind"] == "needs")
    assert needs["needs"] == "center_distance"
    assert "x-rules" not in json.dumps(components()["BlockCheckResult"])
    assert sum("x-rules" in schema for schema in components().values()) > 15
