"""A contract that breaks callers of the last release is refused, rule by rule."""

import copy
import json
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, cast

import pytest

from compatibility import breaking, essence, last_released
from halfangle_service.app import contract_bytes

Json = dict[str, Any]
PATH = "/v1/made/up"


def contract_of(request: Json, answer: Json) -> Json:
    """A contract of one operation, made up."""
    answered = {"application/json": {"schema": _named("Answer")}}
    text = {"text/plain": {"schema": {"type": "string"}}}
    width = {"name": "width", "in": "query", "schema": _named("Request_width")}
    part = {"type": "object", "properties": {"size": {"type": "number"}}, "required": ["size"]}
    return {
        "paths": {
            PATH: {
                "post": {
                    "operationId": "made_up",
                    "requestBody": {"content": {"application/json": {"schema": _named("Request")}}},
                    "responses": {"200": {"content": answered}},
                },
                "get": {
                    "operationId": "made_up_by_query",
                    "parameters": [width],
                    "responses": {"200": {"content": {**answered, **text}}},
                },
            }
        },
        "components": {
            "schemas": {
                "Request_width": WIDTH,
                "Request": request,
                "Answer": answer,
                "Part": part,
            }
        },
    }


def _named(model: str) -> Json:
    return {"$ref": f"#/components/schemas/{model}"}


NUMBER: Json = {"type": "number"}
WIDTH: Json = {"type": "number", "minimum": 0, "exclusiveMaximum": 10, "x-unit": "length"}
REQUEST: Json = {
    "type": "object",
    "additionalProperties": False,
    "properties": {
        "width": {"$ref": "#/components/schemas/Request_width"},
        "way": {"type": "string", "enum": ["up", "down"], "default": "up"},
        "name": {"type": "string", "maxLength": 20, "pattern": "^[a-z]+$"},
        "sizes": {"type": "array", "items": {"type": "number", "maximum": 5}, "maxItems": 4},
        "angle": {"anyOf": [{"type": "number"}, {"type": "string"}], "maximum": 90},
        "count": {"type": "integer", "minimum": 1},
    },
    "required": ["width"],
}
ANSWER: Json = {
    "type": "object",
    "properties": {
        "height": {"type": "number", "x-unit": "length"},
        "forecast": {"type": "string", "enum": ["holds", "does-not-hold"]},
        "way": {"type": "string", "enum": ["up", "down"]},
        "parts": {"type": "array", "items": {"$ref": "#/components/schemas/Part"}},
    },
    "required": ["height", "forecast", "way", "parts"],
}
OLD = contract_of(REQUEST, ANSWER)


@dataclass(frozen=True)
class Made:
    """The contract to be changed: whole, what is asked, what is answered."""

    whole: Json

    @property
    def asked(self) -> Json:
        """The model of the request."""
        return cast("Json", self.whole["components"]["schemas"]["Request"])

    @property
    def answered(self) -> Json:
        """The model of the answer."""
        return cast("Json", self.whole["components"]["schemas"]["Answer"])


Change = Callable[[Made], object]


def after(change: Change) -> list[str]:
    """What is said against a change."""
    made = Made(copy.deepcopy(OLD))
    change(made)
    return list(breaking(essence(OLD), essence(made.whole)))


def _set(fields: Json, name: str, **words: Any) -> None:
    fields["properties"][name] = {**fields["properties"][name], **words}


BREAKING: dict[str, tuple[Change, str]] = {
    "a path removed": (lambda m: m.whole["paths"].clear(), "/v1/made/up: removed"),
    "a method removed": (lambda m: m.whole["paths"][PATH].pop("get"), "GET /v1/made/up: removed"),
    "an operationId changed": (
        lambda m: m.whole["paths"][PATH]["post"].update(operationId="other"),
        "its operationId was made_up and is other",
    ),
    "a media type of an answer removed": (
        lambda m: m.whole["paths"][PATH]["get"]["responses"]["200"]["content"].pop("text/plain"),
        "no answer as text/plain any more",
    ),
    "a parameter removed": (
        lambda m: m.whole["paths"][PATH]["get"]["parameters"].clear(),
        "GET /v1/made/up ?.width: removed",
    ),
    "a parameter newly required": (
        lambda m: m.whole["paths"][PATH]["get"]["parameters"][0].update(required=True),
        "GET /v1/made/up ?.width: must be sent now",
    ),
    "a field of a request removed": (
        lambda m: m.asked["properties"].pop("name"),
        "request.name: removed",
    ),
    "a field of an answer removed": (
        lambda m: m.answered["properties"].pop("height"),
        "answer.height: removed",
    ),
    "a field newly required": (
        lambda m: m.asked["required"].append("name"),
        "request.name: must be sent now",
    ),
    "a new field that is required": (
        lambda m: (
            m.asked["properties"].update(new=NUMBER),
            m.asked["required"].append("new"),
        ),
        "request.new: must be sent now",
    ),
    "a field of an answer that may be left out": (
        lambda m: m.answered["required"].remove("height"),
        "answer.height: may be left out now",
    ),
    "an option removed": (
        lambda m: _set(m.asked, "way", enum=["up"]),
        "request.way: takes no down any more",
    ),
    "a text that becomes a choice": (
        lambda m: _set(m.asked, "name", enum=["a"]),
        "request.name: takes no other words any more",
    ),
    "a new word of a judgement": (
        lambda m: _set(m.answered, "forecast", enum=["holds", "does-not-hold", "perhaps"]),
        "answer.forecast: may say perhaps now",
    ),
    "a judgement that becomes any text": (
        lambda m: m.answered["properties"].update(forecast={"type": "string"}),
        "answer.forecast: may say any word now",
    ),
    "an upper bound tightened": (
        lambda m: _set(m.asked, "angle", maximum=60),
        "request.angle: its maximum was 90 and is 60",
    ),
    "a lower bound tightened": (
        lambda m: _set(m.asked, "count", minimum=2),
        "request.count: its minimum was 1 and is 2",
    ),
    "a bound where there was none": (
        lambda m: _set(m.asked, "angle", minimum=0),
        "request.angle: its minimum was none and is 0",
    ),
    "a bound that leaves its own value out": (
        lambda m: m.asked["properties"].update(count={"type": "integer", "exclusiveMinimum": 1}),
        "request.count: its exclusiveMinimum was none and is 1",
    ),
    "a bound of a query's field": (
        lambda m: m.whole["components"]["schemas"]["Request_width"].update(minimum=1),
        "GET /v1/made/up ?.width: its minimum was 0 and is 1",
    ),
    "a bound of a list's entries": (
        lambda m: _set(m.asked, "sizes", items={"type": "number", "maximum": 4}),
        "request.sizes[]: its maximum was 5 and is 4",
    ),
    "fewer entries": (
        lambda m: _set(m.asked, "sizes", maxItems=3),
        "request.sizes: its maxItems was 4 and is 3",
    ),
    "a shorter text": (
        lambda m: _set(m.asked, "name", maxLength=19),
        "request.name: its maxLength was 20 and is 19",
    ),
    "another pattern": (
        lambda m: _set(m.asked, "name", pattern="^[a-z]$"),
        "request.name: its pattern was ^[a-z]+$ and is ^[a-z]$",
    ),
    "a type changed": (
        lambda m: _set(m.asked, "name", type="number"),
        "request.name: takes no string any more",
    ),
    "a form of a field removed": (
        lambda m: m.asked["properties"].update(angle={"type": "number", "maximum": 90}),
        "request.angle: takes no string any more",
    ),
    "numbers that become whole": (
        lambda m: _set(m.asked, "sizes", items={"type": "integer", "maximum": 5}),
        "request.sizes[]: takes no number any more",
    ),
    "a default changed": (
        lambda m: _set(m.asked, "way", default="down"),
        'request.way: its default was "up" and is "down"',
    ),
    "an answer that may be null": (
        lambda m: _set(m.answered, "height", anyOf=[{"type": "number"}, {"type": "null"}]),
        "answer.height: may be null now",
    ),
    "an answer of another type": (
        lambda m: _set(m.answered, "height", type="string"),
        "answer.height: may be string now",
    ),
    "an answer in another unit": (
        lambda m: _set(m.answered, "height", **{"x-unit": "micrometre"}),
        "answer.height: its x-unit was length and is micrometre",
    ),
    "a nested field of an answer removed": (
        lambda m: m.whole["components"]["schemas"]["Part"]["properties"].clear(),
        "answer.parts[].size: removed",
    ),
    "an answer that is closed": (
        lambda m: m.answered.update(additionalProperties=False),
        "answer: takes no further field now, so that none can be added later",
    ),
}

HARMLESS: dict[str, Change] = {
    "nothing": lambda m: m.whole.keys(),
    "a new path": lambda m: m.whole["paths"].update({"/v1/new": m.whole["paths"][PATH]}),
    "other words for people": lambda m: _set(m.answered, "height", description="Other", title="T"),
    "a new field that may be left out": lambda m: m.asked["properties"].update(
        new={"type": "number"}
    ),
    "a field no longer required": lambda m: m.asked["required"].clear(),
    "a new field of an answer": lambda m: m.answered["properties"].update(new=NUMBER),
    "a new option": lambda m: _set(m.asked, "way", enum=["up", "down", "over"]),
    "a new word of an answer": lambda m: _set(m.answered, "way", enum=["up", "down", "over"]),
    "a wider bound": lambda m: _set(m.asked, "angle", maximum=120),
    "a bound that takes its own value in": lambda m: m.whole["components"]["schemas"].update(
        Request_width={"type": "number", "minimum": 0, "maximum": 10, "x-unit": "length"}
    ),
    "whole numbers that may be any": lambda m: _set(m.asked, "count", type="number"),
    "another form of a field": lambda m: m.asked["properties"].update(
        sizes={"anyOf": [REQUEST["properties"]["sizes"], {"type": "string"}]}
    ),
    "the same fields under another component": lambda m: m.asked["properties"].update(
        width=m.whole["components"]["schemas"]["Request_width"]
    ),
}


@pytest.mark.parametrize("name", BREAKING)
def test_a_breaking_change_is_said(name: str) -> None:
    """The change is named with its place."""
    change, said = BREAKING[name]
    found = after(change)
    assert any(line.endswith(said) for line in found), found


@pytest.mark.parametrize("name", HARMLESS)
def test_a_harmless_change_is_not(name: str) -> None:
    """What no caller notices, or what answers are open for, is no finding."""
    assert after(HARMLESS[name]) == []


def test_this_contract_breaks_nobody() -> None:
    """Callers of the last release that is kept are served by this one."""
    found = list(breaking(last_released(), essence(json.loads(contract_bytes()))))
    assert found == [], "within /v1 no caller may break: see DEVELOPERS.md, 'What may change'"
