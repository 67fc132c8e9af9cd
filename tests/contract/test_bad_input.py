"""Bad input to every operation: a problem document that names the field and the limit.

Most requests here are each operation's own example with one thing made wrong, at every place of the
example in turn. They go to the function that HTTP calls with the body, and the errors through the
one map to problem documents.
"""

import copy
import json
import math
from collections.abc import Callable, Iterator
from typing import Any

import pytest

from bad_input_support import (
    OPERATIONS,
    SINE,
    Schema,
    Service,
    assert_names,
    every_operation,
    places,
    problem_for,
    with_raw,
    without,
)
from halfangle_service.http.calculating import answer

# One value made wrong -------------------------------------------------------------------------
NO_NUMBERS = {
    "not a number": "NaN",
    "infinity": "Infinity",
    "minus infinity": "-Infinity",
    "past the range of floats": "1e400",
    "400 digits": "1" + "0" * 400,
    "5000 digits": "7" * 5000,
    "true": "true",
    "a number as text": '"1e2"',
    "empty text": '""',
    "words": '"about five"',
    "a list": "[1]",
    "an object": '{"value": 1}',
}


@every_operation
@pytest.mark.parametrize("wrong", NO_NUMBERS)
def test_what_is_no_number_is_refused(name: str, wrong: str) -> None:
    """Each number of the request refuses what is no finite number, and says where."""
    operation = OPERATIONS[name]
    for place in places(operation):
        if place.number is not None and not place.option("array", "object"):
            problem = problem_for(operation, with_raw(operation, place.pointer, NO_NUMBERS[wrong]))
            assert_names(problem, place.pointer)


@every_operation
def test_past_each_bound_is_refused_with_the_bound(name: str) -> None:
    """A number just past either bound, or far past it, is refused, and the bound is named."""
    operation = OPERATIONS[name]
    for place in places(operation):
        for number, bound in _past_bounds(place.number or {}):
            problem = problem_for(operation, with_raw(operation, place.pointer, json.dumps(number)))
            assert problem is not None, f"{place.pointer} took {number}"
            assert_names(problem, place.pointer)
            messages = " ".join(error["message"] for error in problem["errors"])
            numbers = {_number(word) for word in messages.replace(";", " ").split()}
            # A bound is written to six digits: 1/3600° as 0.000277778°.
            written = [number for number in numbers if number is not None]
            assert any(math.isclose(bound, number, rel_tol=1e-5) for number in written), messages


def _past_bounds(schema: Schema) -> Iterator[tuple[float, float]]:
    """Numbers past the bounds of a schema, each with its bound."""
    whole = schema.get("type") == "integer"
    if "minimum" in schema:
        low = schema["minimum"]
        yield from (
            (number, low) for number in (low - 1, -1e9 if not whole else -(10**9)) if number < low
        )
    if "exclusiveMinimum" in schema:
        yield schema["exclusiveMinimum"], schema["exclusiveMinimum"]
        yield schema["exclusiveMinimum"] - 1, schema["exclusiveMinimum"]
    if "maximum" in schema:
        yield schema["maximum"] + 1, schema["maximum"]
        yield 10**15, schema["maximum"]
    if "exclusiveMaximum" in schema:
        yield schema["exclusiveMaximum"], schema["exclusiveMaximum"]
        yield schema["exclusiveMaximum"] + 1, schema["exclusiveMaximum"]


def _number(word: str) -> float | None:
    try:
        return float(word.rstrip("°″"))
    except ValueError:
        return None


NO_ANGLES = ("", " ", "30 60", "30°15'60\"", "8.18.5", "30 15 20 5", "--5", "1e2", "٣٠", "9" * 5000)


@every_operation
def test_text_that_is_no_angle_is_refused(name: str) -> None:
    """An angle as text that is not degrees, minutes and seconds is refused with the forms taken."""
    operation = OPERATIONS[name]
    for place in places(operation):
        if place.is_angle:
            for text in NO_ANGLES:
                body = with_raw(operation, place.pointer, json.dumps(text))
                assert_names(problem_for(operation, body), place.pointer, "30°15'20\"")


@every_operation
def test_an_angle_as_text_past_its_bound_is_refused(name: str) -> None:
    """Degrees, minutes and seconds are held to the same bounds as decimal degrees."""
    operation = OPERATIONS[name]
    for place in places(operation):
        if place.is_angle and place.number is not None:
            body = with_raw(operation, place.pointer, '"999°59\'59\\""')
            assert_names(problem_for(operation, body), place.pointer, "should be less than")


@every_operation
def test_units_are_in_or_mm(name: str) -> None:
    """Only `in` and `mm` are units; the refusal says so."""
    operation = OPERATIONS[name]
    for place in places(operation):
        if place.pointer.endswith("/units"):
            for wrong in ('"cm"', '"IN"', '"inch"', '""', "1", "null", "true", '["in"]'):
                problem = problem_for(operation, with_raw(operation, place.pointer, wrong))
                assert_names(problem, place.pointer, "'in'", "'mm'")


@every_operation
def test_other_words_than_those_offered_are_refused(name: str) -> None:
    """A field that takes one of some words takes no other."""
    operation = OPERATIONS[name]
    for place in places(operation):
        if any("enum" in o or "const" in o for o in place.options) and isinstance(place.value, str):
            problem = problem_for(operation, with_raw(operation, place.pointer, '"no such word"'))
            assert problem is not None, place
            assert_names(problem, place.pointer, "should be")


HUGE_VALUES = {
    "long text": json.dumps("x" * 200_000),
    "long list": "[" + ",".join(["1"] * 50_000) + "]",
    "wide object": json.dumps({f"field{n}": n for n in range(20_000)}),
    "deep list": "[" * 150 + "]" * 150,
    "too deep list": "[" * 100_000 + "]" * 100_000,
    "too deep object": '{"a":' * 100_000 + "1" + "}" * 100_000,
    "long number": "0." + "3" * 100_000,
}


@every_operation
@pytest.mark.parametrize("huge", HUGE_VALUES)
def test_a_huge_value_is_never_sent_back(name: str, huge: str) -> None:
    """However large or deep one value is, the refusal stays short."""
    operation = OPERATIONS[name]
    for place in places(operation)[:6]:
        problem = problem_for(operation, with_raw(operation, place.pointer, HUGE_VALUES[huge]))
        if problem is not None:
            assert problem["status"] in {400, 422}
        else:
            # 0.333… with many digits is a plain number.
            assert huge == "long number"


# Fields too many, too few, twice --------------------------------------------------------------
@every_operation
def test_an_unknown_field_is_refused_by_name(name: str) -> None:
    """A field that the request does not have is refused, in nested objects too."""
    operation = OPERATIONS[name]
    request = json.loads(json.dumps(dict(operation.example)))
    objects = ["", *(p.pointer for p in places(operation) if isinstance(p.value, dict))]
    for pointer in objects:
        changed = copy.deepcopy(request)
        target = changed
        for part in pointer.split("/")[1:]:
            target = target[int(part) if isinstance(target, list) else part]
        target["no_such_field"] = 1
        problem = problem_for(operation, json.dumps(changed).encode())
        assert_names(problem, f"{pointer}/no_such_field", "is not a field of this request")


@every_operation
def test_an_unknown_field_with_a_huge_name_is_refused_in_short(name: str) -> None:
    """The name of an unknown field is not sent back at length."""
    operation = OPERATIONS[name]
    request = {**operation.example, "x" * 100_000: 1}
    problem = problem_for(operation, json.dumps(request).encode())
    assert problem is not None
    assert problem["type"] == "/problems/invalid-request"
    assert len(json.dumps(problem)) < 3000


@every_operation
def test_each_required_field_is_missed_by_name(name: str) -> None:
    """A required field that is not there is named."""
    operation = OPERATIONS[name]
    for field in operation.request.model_json_schema().get("required", ()):
        request = {k: v for k, v in operation.example.items() if k != field}
        problem = problem_for(operation, json.dumps(request).encode())
        assert_names(problem, f"/{field}", "is required and was not sent")


@every_operation
def test_an_empty_request_is_refused_or_needs_nothing(name: str) -> None:
    """An empty object is refused wherever anything is required."""
    operation = OPERATIONS[name]
    problem = problem_for(operation, b"{}")
    required = operation.request.model_json_schema().get("required", ())
    assert (problem is not None) or not required


@every_operation
def test_a_field_given_twice_is_refused(name: str) -> None:
    """Which of two values was meant cannot be known."""
    operation = OPERATIONS[name]
    field, value = next(iter(operation.example.items()))
    text = json.dumps(dict(operation.example))
    body = f'{{"{field}": {json.dumps(value)}, {text[1:]}'.encode()
    assert_names(problem_for(operation, body), f"/{field}", "should be given once")


@every_operation
def test_nothing_in_the_place_of_a_required_value_is_refused(name: str) -> None:
    """`null` is taken only where the schema says so, or where a group may be left out: as that."""
    operation = OPERATIONS[name]
    for place in places(operation):
        if (
            place.options
            and not place.option("null")
            and not any("const" in o for o in place.options)
        ):
            sent = with_raw(operation, place.pointer, "null")
            problem = problem_for(operation, sent)
            if problem is None and place.option("object"):
                assert answer(operation, sent) == answer(
                    operation, without(operation, place.pointer)
                )
                continue
            assert problem is not None, f"{place.pointer} took null"
            assert_names(problem, place.pointer)


@every_operation
def test_an_empty_list_is_refused_or_allowed_by_the_schema(name: str) -> None:
    """A list that needs an entry says so."""
    operation = OPERATIONS[name]
    for place in places(operation):
        listing = place.option("array")
        if listing is not None and listing.get("minItems", 0) > 0:
            problem = problem_for(operation, with_raw(operation, place.pointer, "[]"))
            assert_names(problem, place.pointer, "at least")


@every_operation
def test_a_list_past_its_bound_is_refused_with_the_bound(name: str) -> None:
    """A list longer than its bound is refused, and the bound is named."""
    operation = OPERATIONS[name]
    for place in places(operation):
        listing = place.option("array")
        if listing is not None and place.value:
            most = listing["maxItems"]
            body = with_raw(operation, place.pointer, json.dumps([place.value[0]] * (most + 1)))
            assert_names(problem_for(operation, body), place.pointer, str(most))


# Words of the trade ---------------------------------------------------------------------------
Asked = Callable[..., dict[str, Any] | None]


@pytest.fixture
def sine() -> Asked:
    """Ask for the sine setting of 5 in with these fields changed; gives the problem document."""

    def ask(**changed: Any) -> dict[str, Any] | None:
        request = {"units": "in", "center_distance": 5, "angle": 30, **changed}
        return problem_for(OPERATIONS["sine.setting"], json.dumps(request).encode())

    return ask


@pytest.mark.parametrize(
    "angle", [0, 0.0, -0.0, -1, 90, 90.0, 91, 360, 1e300, "0 00", "90 00", "-5 00"]
)
def test_an_angle_of_zero_or_ninety_or_beyond_is_refused(sine: Asked, angle: Any) -> None:
    """A sine plate stands between 0 and 90 degrees, both excluded."""
    bound = "less than 90" if str(angle).startswith(("9", "3", "1")) else "greater than 0"
    assert_names(sine(angle=angle), "/angle", bound)


def test_a_refusal_writes_its_figures_as_every_sentence_does() -> None:
    """A small number comes back without an exponent, as it stands in a drawing."""
    body = {"units": "in", "center_distance": 5, "first_angle": 0, "last_angle": 60}
    refused = problem_for(
        OPERATIONS["sine.table"], json.dumps(body | {"angle_step": 5e-5}).encode()
    )
    assert_names(refused, "/angle_step", "got 0.00005")


@pytest.mark.parametrize("length", [0, -5, 1e-7, 10_001, 1e300])
def test_a_length_of_nothing_or_of_a_kilometre_is_refused(sine: Asked, length: float) -> None:
    """The bounds of a length are named."""
    assert_names(sine(center_distance=length), "/center_distance", "should be")


def test_a_bare_decimal_that_may_be_minutes_is_answered_with_a_note(service: Service) -> None:
    """8.18 is read as 8.18°, and the answer says that 8°18' would be another angle."""
    request = {"units": "in", "center_distance": 5, "angle": 8.18}
    answered = service.post(SINE, json=request).json()
    [advice] = [a for a in answered["advisories"] if a["code"] == "decimal-degrees-read"]
    assert advice["severity"] == "note"
    assert '"8 18"' in advice["message"]
    as_text = service.post(SINE, json={**request, "angle": "8 18"}).json()
    assert "decimal-degrees-read" not in {a["code"] for a in as_text["advisories"]}


def test_decimals_that_may_be_minutes_are_noted_within_what_a_request_holds(
    service: Service,
) -> None:
    """An angle inside another object, in a list, or of several that may be left out, is noted."""

    def noted(path: str, request: dict[str, Any]) -> list[str]:
        answered = service.post(path, json=request).json()
        notes = [a for a in answered["advisories"] if a["code"] == "decimal-degrees-read"]
        return [note["message"].partition(" was")[0] for note in notes]

    slopes = {"shank": {"half_angle": 1.26}, "socket": {"included_angle": 2.52}}
    seat = {"units": "in", **slopes, "engagement": 2.5, "projection": 0}
    shown = ["shank/half_angle 1.26", "socket/included_angle 2.52"]
    assert noted("/v1/centers/adapter", seat) == shown
    box = [{"angle": a} for a in (1.05, 8, 8.18)]
    stack = {"angle": 8, "box": box}
    assert noted("/v1/blocks/angle-stack", stack) == ["box/0/angle 1.05", "box/2/angle 8.18"]
    cone = {"units": "in", "large_diameter": 1, "length": 1, "included_angle": 8.18}
    assert noted("/v1/tapers/solve", cone) == ["included_angle 8.18"]


def test_an_angle_read_off_the_part_is_no_drawing_in_minutes(service: Service) -> None:
    """Angular positions, high spots and tips are measured: their decimals raise no note."""
    turned = {"tir": 0.001, "high_spot": 20.15}
    readings = [
        {"angular_position": round(45.15 * k, 2), "reading": 0.001 * (k % 2)} for k in range(7)
    ]
    for path, request in (
        (
            "runout/indicate",
            {"indicator_resolution": 0.0001, "readings": readings, "tip_angle": 15.2},
        ),
        ("runout/reversal", {"at_0": turned, "at_180": turned}),
    ):
        answer = service.post(f"/v1/{path}", json={"units": "in", "surface": "external", **request})
        assert answer.status_code == 200
        codes = {advice["code"] for advice in answer.json()["advisories"]}
        assert "decimal-degrees-read" not in codes


@pytest.mark.parametrize(
    ("sizes", "words"),
    [
        ([1.0] * 10_000, "should have at most 500 entries; got 10000"),
        ([], "should have at least 1 entry; got 0"),
    ],
)
def test_a_list_too_long_or_too_short_says_how_many_entries_it_should_have(
    service: Service, sizes: list[float], words: str
) -> None:
    """Ten thousand blocks, or none, are refused in words of a person, not of a library."""
    answer = service.post("/v1/blocks/stack", json={"units": "in", "height": 1, "sizes": sizes})
    assert answer.status_code == 422
    assert answer.json()["errors"] == [{"pointer": "/sizes", "message": words}]


def test_a_bare_angle_is_told_which_angles_there_are(service: Service) -> None:
    """Where included and half angle could be confused, `angle` is refused and both are named."""
    body = {"units": "in", "large_diameter": 1, "length": 1, "angle": 30}
    answer = service.post("/v1/tapers/solve", json=body)
    assert answer.status_code == 422
    error = answer.json()["errors"][0]
    assert error["pointer"] == "/angle"
    assert "did you mean included_angle or half_angle?" in error["message"]
