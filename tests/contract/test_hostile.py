"""Bodies, names and headers made to cost much, or to mislead: bounded, named, refused in short."""

import json
import tracemalloc
from dataclasses import replace
from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.errors import Refusal
from halfangle_service.fields import RequestModel, ResultModel
from halfangle_service.fields.schemas import schema_of
from halfangle_service.http.calculating import answer
from halfangle_service.http.guards.bounds import largest, refuse_too_many_parts
from halfangle_service.http.problems import ProblemError, problem_body, problem_of_refusal
from halfangle_service.operation import Operation, Outcome
from halfangle_service.registry import load_registry

Service = TestClient[Any]
AnyOperation = Operation[Any, Any]

OPERATIONS = load_registry().operations
SINE = "/v1/sine/setting"
SINE_QUERY = f"{SINE}?units=in&center_distance=5&angle=30"
GOOD = b'{"units": "in", "center_distance": 5, "angle": 30}'
#: No refusal is longer than that: a pointer or a message repeats little of what was sent.
LONGEST_REFUSAL_BYTES = 16_000
#: Most memory that refusing one body may take beside the body.
MOST_REFUSAL_MEMORY = 8_000_000

every_operation = pytest.mark.parametrize("name", OPERATIONS)


def refusal(operation: AnyOperation, body: bytes) -> dict[str, Any]:
    """The problem document for a body, which must be refused and in short."""
    with pytest.raises((ProblemError, Refusal), match=r".+") as caught:
        answer(operation, body)
    error = caught.value
    if isinstance(error, Refusal):
        error = problem_of_refusal(error)
    assert isinstance(error, ProblemError)
    _, document = problem_body(error, operation.path)
    assert len(document) < LONGEST_REFUSAL_BYTES
    problem: dict[str, Any] = json.loads(document)
    return problem


# What takes long to read ----------------------------------------------------------------------
COSTLY = {
    "unknown names": json.dumps({f"no_such_field_{k}": 1 for k in range(40_000)}).encode(),
    "one name again and again": b"{" + b'"units":"in",' * 70_000 + b'"units":"in"}',
    "empty lists": b'{"units":[' + b"[]," * 330_000 + b"[]]}",
    "empty objects": b'{"units":[' + b"{}," * 330_000 + b"{}]}",
    "numbers": b'{"units":[' + b"1," * 450_000 + b"1]}",
}


@every_operation
@pytest.mark.parametrize("what", COSTLY)
def test_what_no_request_holds_is_refused_before_it_is_read(name: str, what: str) -> None:
    """A megabyte of parts takes little memory to refuse: no list of a hundred thousand errors."""
    operation = OPERATIONS[name]
    refuse_too_many_parts(operation.request, b" " * 5_000)  # the bound is made once, and kept
    tracemalloc.start()
    try:
        problem = refusal(operation, COSTLY[what])
    finally:
        _, peak = tracemalloc.get_traced_memory()
        tracemalloc.stop()
    assert (problem["type"], problem["status"]) == ("/problems/beyond-bound", 422)
    assert "no request of this operation does" in problem["detail"]
    assert peak < MOST_REFUSAL_MEMORY


def _fullest(schema: dict[str, Any], definitions: dict[str, Any]) -> Any:
    """The largest value that a schema admits, its texts full of the marks that are counted."""
    if "$ref" in schema:
        return _fullest(definitions[schema["$ref"].rsplit("/", 1)[-1]], definitions)
    options = [*schema.get("anyOf", ()), *schema.get("oneOf", ())]
    if options:
        made = [_fullest(option, definitions) for option in options]
        return max(made, key=lambda value: len(json.dumps(value)))
    if "properties" in schema:
        return {n: _fullest(field, definitions) for n, field in schema["properties"].items()}
    if schema.get("type") == "array":
        return [_fullest(schema["items"], definitions)] * schema["maxItems"]
    if schema.get("type") == "string" and "maxLength" in schema:
        return (":,[{" * schema["maxLength"])[: schema["maxLength"]]
    return -1234567.123456789


@every_operation
def test_the_largest_request_is_within_the_bound(name: str) -> None:
    """No request that a schema admits is refused for its parts, whatever its texts hold."""
    model = OPERATIONS[name].request
    schema = schema_of(model)
    body = json.dumps(_fullest(schema, schema.get("$defs", {}))).encode()
    refuse_too_many_parts(model, body)
    assert len(body) < 1_048_576, "a request that the schema admits passes the body limit"


def test_marks_within_texts_are_not_counted() -> None:
    """As many names as the largest request has are let through, whatever their texts hold."""
    model: type[RequestModel] = OPERATIONS["jobs.plan"].request
    most = largest(model).names
    texts = (':"', "\\", '\\\\":', ",[{", '"\\":')
    fields = {f"n{place}": texts[place % len(texts)] for place in range(most)}
    refuse_too_many_parts(model, json.dumps(fields).encode())
    with pytest.raises(ProblemError, match=f"more than {most} names"):
        refuse_too_many_parts(model, json.dumps({**fields, "n": ":"}).encode())


# Pointers -------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("name", "body", "pointer"),
    [
        ("sine.setting", '{"units": "in", "units": "mm", "center_distance": 5, "angle": 30}',
         "/units"),
        ("blocks.stack",
         '{"units": "in", "height": 1, "box": [{"size": 1}, {"size": 2, "size": 3}]}',
         "/box/1/size"),
        ("blocks.stack", '{"units": "in", "height": 1, "box": [{"size": 1}], "box": [{"size": 2}]}',
         "/box"),
    ],
)  # fmt: skip
def test_a_repeated_name_is_pointed_at_where_it_stands(name: str, body: str, pointer: str) -> None:
    """A name given twice inside a nested object is found there, by its whole path."""
    problem = refusal(OPERATIONS[name], body.encode())
    assert problem["errors"] == [{"pointer": pointer, "message": "should be given once"}]


# What is sent back ----------------------------------------------------------------------------
@every_operation
@pytest.mark.parametrize("sign", ["x", "é", "😀", "\x01", '"', "~", "/"])
def test_little_of_a_request_is_sent_back(name: str, sign: str) -> None:
    """Fifty unknown names of three hundred signs each are not sent back whole."""
    request = {**OPERATIONS[name].example, **{f"{k:02}" + sign * 300: 1 for k in range(60)}}
    problem = refusal(OPERATIONS[name], json.dumps(request).encode())
    assert problem["type"] == "/problems/invalid-request"
    assert problem["errors"]


@every_operation
def test_no_text_is_sent_back_at_length(name: str) -> None:
    """Whatever field a text of 40 kB is put in, the refusal is short."""
    operation = OPERATIONS[name]
    for field in operation.request.model_fields:
        for text in ("x" * 40_000, '"' * 40_000, "1:" * 20_000):
            refusal(operation, json.dumps({**operation.example, field: text}).encode())


# Numbers that lead out of range ---------------------------------------------------------------
class Divided(RequestModel):
    """What the invented operation takes."""

    whole: float
    parts: list[float]


class Share(ResultModel):
    """What the invented operation gives."""

    share: float


def divide(request: Divided) -> Outcome[Share]:
    """Divide by the square of each part."""
    share = request.whole
    for part in request.parts:
        share /= part * part
    return Outcome(Share(share=share))


DIVIDE: AnyOperation = Operation(
    topic="shop",
    verb="divide",
    title="Divide",
    summary="",
    request=Divided,
    result=Share,
    calculate=divide,
    relations=(),
    sources=(),
    example={"whole": 12.0, "parts": [3.0, 2.0]},
)


def test_numbers_that_lead_out_of_range_are_named() -> None:
    """The field is named whose number alone leads out of range, with one that does not."""
    problem = refusal(DIVIDE, b'{"whole": 7, "parts": [3, 1e-200]}')
    assert problem["type"] == "/problems/not-finite"
    assert problem["errors"] == [
        {"pointer": "/parts/1", "message": "a number so near 0 leads there; 2 does not"}
    ]
    assert "/parts/1: a number so near 0 leads there" in problem["detail"]


def test_where_no_number_is_the_cause_alone_the_farthest_are_named() -> None:
    """Where each of two leads there, both stand among those that are farthest from 1."""
    problem = refusal(DIVIDE, b'{"whole": 7, "parts": [1e-300, 1e-200]}')
    assert [error["pointer"] for error in problem["errors"]] == ["/parts/0", "/parts/1", "/whole"]
    assert problem["errors"][0]["message"] == "a number so near 0 is among the farthest from 1"


def test_heavy_work_is_not_done_again_to_name_a_number() -> None:
    """Of a heavy operation the numbers farthest from 1 are named, without another calculation."""
    calls: list[Divided] = []

    def noting(request: Divided) -> Outcome[Share]:
        calls.append(request)
        return divide(request)

    heavy = replace(DIVIDE, calculate=noting, heavy=True)
    problem = refusal(heavy, b'{"whole": 7, "parts": [3, 1e-200]}')
    assert problem["errors"][0]["pointer"] == "/parts/1"
    assert len(calls) == 1


# Headers --------------------------------------------------------------------------------------
@pytest.mark.parametrize(
    ("accept", "status"),
    [
        ("application/json;q=0, */*", 406),
        ("*/*, application/json; q=0.0", 406),
        ("application/*;q=0, */*;q=1", 406),
        ("application/json, */*;q=0", 200),
        ("application/*;q=0.1, text/html", 200),
        ("APPLICATION/JSON", 200),
        ("application/json;q=0.001", 200),
        ("application/json;q=high", 200),
        ("*/*;q=0", 406),
        ("text/html", 406),
        (",,", 406),
    ],
)
def test_the_narrowest_range_decides(service: Service, accept: str, status: int) -> None:
    """What one range refuses a wider one does not take (RFC 9110, 12.5.1)."""
    assert service.get(SINE_QUERY, headers={"Accept": accept}).status_code == status


@pytest.mark.parametrize("coding", ["gzip", "br", "deflate, gzip", "GZIP", "x" * 5_000])
def test_an_encoded_body_is_refused(service: Service, coding: str) -> None:
    """A body is taken as it is only; the refusal says so in the header that is made for it."""
    headers = {"Content-Type": "application/json", "Content-Encoding": coding}
    refused = service.post(SINE, content=GOOD, headers=headers)
    assert (refused.status_code, refused.json()["type"]) == (415, "/problems/unsupported-coding")
    assert refused.headers["accept-encoding"] == "identity"
    assert len(refused.content) < 1_000


@pytest.mark.parametrize("coding", ["identity", "Identity", ""])
def test_a_body_encoded_as_itself_is_read(service: Service, coding: str) -> None:
    """`identity` is no encoding (RFC 9110, 8.4)."""
    headers = {"Content-Type": "application/json", "Content-Encoding": coding}
    assert service.post(SINE, content=GOOD, headers=headers).status_code == 200
