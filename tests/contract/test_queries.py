"""Requests by query string: lists, objects, and lists of objects; what is wrong with them."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from halfangle_service.http.query import query_fields, query_of, read_query
from http_support import FLAT, OPERATIONS, Service, assert_problem

INDICATE = "/v1/runout/indicate?units=in&surface=external&indicator_resolution=0.0001"
STACK = "/v1/blocks/stack?units=in&height=2.621"


def body(name: str, query: str) -> dict[str, Any]:
    """The JSON body that a query string is."""
    fields = query_fields(OPERATIONS[name].request)
    assert fields is not None
    found: dict[str, Any] = json.loads(read_query(query.encode(), fields))
    return found


@pytest.mark.parametrize("name", FLAT)
def test_an_example_goes_there_and_back(name: str) -> None:
    """What is written of a request as a query string is read as that request."""
    example = json.loads(json.dumps(dict(OPERATIONS[name].example)))
    written = query_of(example, query_fields(OPERATIONS[name].request) or {})
    assert written is not None
    assert body(name, written) == example


@given(st.lists(st.floats(-1e4, 1e4), min_size=1, max_size=30))
def test_a_list_is_joined_or_repeated(sizes: list[float]) -> None:
    """Both forms, and both at once, give the entries in their order, to the last digit."""
    texts = [json.dumps(size) for size in sizes]
    half = len(texts) // 2
    joined = f"sizes={';'.join(texts)}"
    repeated = "&".join(f"sizes={text}" for text in texts)
    mixed = f"sizes={'; '.join(texts[: half + 1])}&" + "&".join(
        f"sizes={t}" for t in texts[half + 1 :]
    )
    for query in (joined, repeated, mixed.rstrip("&")):
        assert body("blocks.stack", query)["sizes"] == sizes


def test_readings_at_equal_steps_need_no_angles(service: Service) -> None:
    """Four plain readings are those at 0°, 90°, 180° and 270°, and the answer says so."""
    plain = service.get(f"{INDICATE}&readings=0;0.0006;0.001;0.0004").json()
    angles = "&readings.angular_position=0;90;180;270"
    stated = service.get(f"{INDICATE}&readings.reading=0;0.0006;0.001;0.0004{angles}").json()
    assert plain["result"] == stated["result"]
    codes = [{a["code"] for a in answer["advisories"]} for answer in (plain, stated)]
    assert codes[0] - codes[1] == {"taken-at-equal-steps"}


def test_some_angles_without_the_others_are_refused(service: Service) -> None:
    """Where one reading states its angle and one does not, nothing is guessed."""
    query = "&readings.reading=0;0.0006;0.001&readings.angular_position=0;;240"
    problem = assert_problem(service.get(INDICATE + query), "disagreement")
    assert [e["pointer"] for e in problem["errors"]] == ["/readings/1/angular_position"]


@pytest.mark.parametrize(
    ("query", "sent"),
    [
        ("base_center_distance=5&orientation.kind=tilt&orientation.tilt=8°18'",
         {"base_center_distance": 5, "orientation": {"kind": "tilt", "tilt": "8°18'"}}),
        ("box.size=2;0.5&box.mark=A7;", {"box": [{"size": 2, "mark": "A7"}, {"size": 0.5}]}),
        ("box=2;+.5;5.", {"box": [{"size": 2}, {"size": 0.5}, {"size": 5.0}]}),
    ],
)  # fmt: skip
def test_a_dot_reaches_into_an_object(query: str, sent: dict[str, Any]) -> None:
    """A field of an object is a parameter, of each object of a list the list of its values."""
    escaped = query.replace("°", "%C2%B0").replace("'", "%27").replace("+", "%2B")
    assert body("sine.compound", escaped) == sent


@pytest.mark.parametrize(
    ("query", "pointer", "words"),
    [
        (f"{STACK}&sizes=2;0,5;0,121", "/sizes/1", "has a comma"),
        (f"{STACK}&sizes=2,0.5,0.121", "/sizes/0", "entries of a list are parted by semicolons"),
        (f"{STACK}&sizes=2;;0.5", "/sizes/1", "should be a valid number"),
        (f"{STACK}&sizes=2;0.5;", "/sizes/2", "should be a valid number"),
        (f"{STACK}&sizes=", "/sizes/0", "should be a valid number"),
        (f"{STACK}&sizes=" + ";" * 5000, "/sizes", "at most 500"),
        ("/v1/blocks/stack?units=in&height=2,621&sizes=2", "/height", 'SUBSTITUTE(A1;",";".")'),
        ("/v1/blocks/stack?units=in&height=1.234,5&sizes=2", "/height", "has a comma"),
        ("/v1/sine/setting?units=in&center_distance=5&angle=-8,3", "/angle", "has a comma"),
        (f"{INDICATE}&readings=0;0,0006;0.001", "/readings/1/reading", "has a comma"),
        (f"{INDICATE}&readings=0;0.0006;", "/readings/2/reading", "is required"),
        (f"{INDICATE}&readings=0;1", "/readings", "at least 3"),
        (f"{INDICATE}&readings.reading=0;1;2&readings.angular_position=0;1",
         "/readings/angular_position", "should have 3 entries"),
        (f"{INDICATE}&readings=0;1;2&readings.reading=0;1;2", "/readings/reading",
         "should be given once"),
        (f"{INDICATE}&readings.readng=0;1;2", "/readings/readng", "did you mean readings.reading"),
        (f"{INDICATE}&a.b=1&a.b.c=1", "/a/b", "is not a field"),
        (f"{INDICATE}&readings.0.reading=1", "/readings/0/reading", "did you mean"),
        ("/v1/sine/compound?orientation.kind=tilt&orientation.kind=normal", "/orientation/kind",
         "should be given once"),
        ("/v1/sine/compound?units=in&" + "&".join(f"x.y{k}=1" for k in range(1900)), "/x/y0",
         "is not a field"),
        ("/v1/sine/compound?" + "x." * 4000 + "=1", "/x", "is not a field"),
    ],
)  # fmt: skip
def test_a_wrong_list_or_part_is_named(
    service: Service, query: str, pointer: str, words: str
) -> None:
    """The place and what to write stand in the problem; nothing is guessed."""
    problem = assert_problem(service.get(query), "invalid-request")
    first = problem["errors"][0]
    assert first["pointer"].startswith(pointer)
    assert words in first["message"]
    assert len(json.dumps(problem)) < 20_000


def test_which_operations_are_asked_by_query_string() -> None:
    """All but those of which a required part lies deeper than a dot reaches."""
    assert set(OPERATIONS) - set(FLAT) == {
        "clearance.tilted-plate",
        "jobs.correction",
        "jobs.plan",
        "jobs.routing",
        "runout.total",
        "runout.true-up",
        "wheels.choose",
    }
