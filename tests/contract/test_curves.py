"""Curves: every point is what the operation's own address answers, and nothing of it is lost."""

import json
from collections.abc import Iterable
from typing import Any

import pytest

from halfangle_service.http.curves.model import CURVES_PATH, MOST_POINTS
from halfangle_service.http.page.plots import plot_of
from http_support import OPERATIONS, Service, assert_problem
from support import value_at

BAR = {"units": "in", "center_distance": 5}
WITH_CURVES = [name for name, operation in OPERATIONS.items() if operation.columns]
#: Each what is sent besides, what it is refused as, and the pointer to what is wrong.
WRONG: list[tuple[dict[str, Any], str, str]] = [
    ({"over": {"angel": [1, 2]}}, "invalid-request", "/over/angel"),
    ({"over": {"units": [1, 2]}}, "invalid-request", "/over/units"),
    ({"over": {"angle": {"from": 5, "to": 1, "count": 3}}}, "invalid-request", "/over/angle/to"),
    ({"over": {"angle": {"from": 5, "to": 5, "count": 3}}}, "invalid-request", "/over/angle/to"),
    ({"over": {"angle": {"from": 1, "to": 5, "count": 1}}}, "invalid-request", "/over/angle/count"),
    ({"over": {"angle": {"from": 1, "to": 5}}}, "invalid-request", "/over/angle/count"),
    ({"over": {"angle": {"from": -1e308, "to": 1e308, "count": 3}}},
     "invalid-request", "/over/angle/to"),
    ({"over": {"angle": ["8°18'"]}}, "invalid-request", "/over/angle/0"),
    ({"over": {"angle": []}}, "invalid-request", "/over/angle"),
    ({"over": {"angle": 30}}, "invalid-request", "/over/angle"),
    ({"over": {}}, "invalid-request", "/over"),
    ({"over": {"angle": [1], "base_step": [0], "resolution": [1]}}, "invalid-request", "/over"),
    ({"over": {"angle": [1], "center_distance": [5]}}, "disagreement", "/over/center_distance"),
    ({"over": {"angle": {"from": 1, "to": 5, "count": 200},
               "base_step": {"from": 1, "to": 5, "count": 101}}}, "beyond-bound", "/over"),
    ({"columns": ["hight"]}, "no-such-value", "/columns/0"),
    ({"columns": ["height", "complement_setting"]}, "no-such-value", "/columns/1"),
    ({"columns": []}, "invalid-request", "/columns"),
    ({"request": {"units": "inch", "center_distance": 5}}, "invalid-request", "/request/units"),
    ({"request": {"units": "in"}}, "invalid-request", "/request/center_distance"),
    ({"request": {**BAR, "colour": 1}}, "invalid-request", "/request/colour"),
    ({"request": {"units": "in", "center_distance": [5, 6]}},
     "invalid-request", "/request/center_distance"),
    ({"request": {"units": "in", "center_distance": True}},
     "invalid-request", "/request/center_distance"),
    ({"colums": ["height"]}, "invalid-request", "/colums"),
]  # fmt: skip


def ask(service: Service, operation: str, body: Any) -> Any:
    """What the address of an operation's curves answers."""
    return service.post(CURVES_PATH.format(operation=operation), json=body)


def curve(service: Service, operation: str, **body: Any) -> dict[str, Any]:
    """A curve that is answered."""
    response = ask(service, operation, body)
    assert response.status_code == 200, response.text
    answered: dict[str, Any] = response.json()
    return answered


@pytest.mark.parametrize("name", WITH_CURVES)
def test_every_point_is_the_operations_own_answer(service: Service, name: str) -> None:
    """Over the number that its page offers: values are the row's own, refused points have none."""
    operation = OPERATIONS[name]
    plot = plot_of(operation)
    assert plot is not None
    axis = plot.runs[0]
    request = {n: v for n, v in operation.example.items() if n not in {axis.name, "formats"}}
    columns = [one.name for one in plot.shows[:6]]
    over = {"from": float(axis.first), "to": float(axis.last), "count": 5}
    found = curve(service, name, request=request, over={axis.name: over}, columns=columns)
    refused = points_of(found["refusals"])
    stopped = points_of(one for one in found["advisories"] if one["severity"] == "stop")
    for row, value in enumerate(found["axes"][0]["values"]):
        response = service.post(operation.path, json={**request, axis.name: value})
        assert (response.status_code == 200) == (row not in refused)
        for column in found["columns"]:
            if row in refused | stopped:
                assert column["values"][row] is None
            else:
                own = value_at_path(response.json()["result"], column["name"])
                assert column["values"][row] == own
    assert found["counts"]["refused"] == len(refused)
    assert found["counts"]["with_stop"] == len(stopped)


def points_of(found: Iterable[dict[str, Any]]) -> set[int]:
    """All points of refusals, or of advisories."""
    runs = [run for one in found for run in one["points"]]
    return {point for first, last in runs for point in range(first, last + 1)}


def value_at_path(result: dict[str, Any], path: str) -> Any:
    """A value of a result; None where an object on the way is null."""
    holder, _, _ = path.rpartition(".")
    if holder and value_at(result, holder) is None:
        return None
    return value_at(result, path)


def test_a_grid_runs_its_last_number_fastest(service: Service) -> None:
    """Of two numbers every pair is a point, in the order in which they were sent."""
    over = {"center_distance": [5, 10], "angle": {"from": 10, "to": 30, "count": 3}}
    found = curve(service, "sine.setting", request={"units": "in"}, over=over, columns=["height"])
    assert found["shape"] == [2, 3]
    assert [axis["field"] for axis in found["axes"]] == ["center_distance", "angle"]
    heights = found["columns"][0]["values"]
    assert heights[2] == 2.5
    assert heights[5] == 5.0
    assert found["columns"][0]["unit"] == "length"


def test_what_is_refused_and_advised_says_where(service: Service) -> None:
    """Points past 90° are refused with their problem, those past 45° carry the caution."""
    over = {"angle": {"from": 10, "to": 100, "count": 10}}
    columns = ["height", "angle.dms"]
    found = curve(service, "sine.setting", request=BAR, over=over, columns=columns)
    [refusal] = found["refusals"]
    assert refusal["points"] == [[8, 9]]
    assert refusal["problem"]["detail"] == "/angle: should be less than 90°; got 90.0."
    [steep] = found["advisories"]
    assert (steep["code"], steep["points"], steep["count"]) == ("steep-angle", [[4, 7]], 4)
    assert "40.0000°" in steep["message"]
    assert found["columns"][1]["values"][:1] == ["10°00'00.00\""]
    assert found["columns"][1]["values"][8:] == [None, None]
    assert found["counts"] == {"points": 10, "ok": 8, "refused": 2, "with_stop": 0}


def test_a_stop_takes_the_values_and_is_said(service: Service) -> None:
    """Where an answer says stop its numbers are null; a judgement that does not say yes stands."""
    request = {"units": "in", "wheel_diameter": 7, "marked_rpm": 3600}
    columns = ["rpm", "speed_forecast"]
    over = {"rpm": [3000, 9000]}
    found = curve(service, "wheels.speed", request=request, over=over, columns=columns)
    assert found["columns"][0]["values"][0] is not None
    assert found["columns"][0]["values"][1] is None
    assert found["columns"][1]["values"][1] != "holds"
    assert found["counts"]["with_stop"] == 1
    [said] = [one for one in found["advisories"] if one["severity"] == "stop"]
    assert said["points"] == [[1, 1]]


@pytest.mark.parametrize(("changes", "kind", "pointer"), WRONG)
def test_what_is_wrong_as_a_whole_is_refused(
    service: Service, changes: dict[str, Any], kind: str, pointer: str
) -> None:
    """A curve that cannot be meant is refused before any point, with a pointer into its body."""
    body = {"request": BAR, "over": {"angle": [10, 20]}, "columns": ["height"], **changes}
    problem = assert_problem(ask(service, "sine.setting", body), kind)
    assert problem["errors"][0]["pointer"] == pointer


def test_names_that_were_likely_meant_are_named(service: Service) -> None:
    """A misspelled operation, number or value is answered with the nearest."""
    body = {"request": BAR, "over": {"angel": [10, 20]}, "columns": ["height"]}
    assert "did you mean angle?" in ask(service, "sine.setting", body).json()["detail"]
    assert "did you mean sine.setting" in ask(service, "sine.seting", body).json()["detail"]
    assert (
        "no closed form" in assert_problem(ask(service, "jobs.plan", body), "not-found")["detail"]
    )


def test_broken_bodies_are_refused(service: Service) -> None:
    """NaN, a field given twice, no JSON, another media type: problem documents, as anywhere."""
    path = CURVES_PATH.format(operation="sine.setting")
    json_type = {"content-type": "application/json"}
    nan = b'{"over":{"angle":[NaN]},"columns":["height"]}'
    assert_problem(service.post(path, content=nan, headers=json_type), "invalid-request")
    twice = b'{"over":{"angle":[1],"angle":[2]},"columns":["height"],"request":{"units":"in"}}'
    problem = assert_problem(
        service.post(path, content=twice, headers=json_type), "invalid-request"
    )
    assert problem["errors"][0]["pointer"] == "/over/angle"
    for bad in (b"[1", b"", b"\xff\xfe"):
        assert_problem(service.post(path, content=bad, headers=json_type), "not-json")
    assert_problem(service.post(path, content=b"{}"), "unsupported-media-type")
    assert service.get(path).status_code == 405


def test_the_largest_grid_is_answered(service: Service) -> None:
    """So many points as are allowed, all of them there."""
    over = {"angle": {"from": 1, "to": 89, "count": 200}, "center_distance": [5.0] * 100}
    found = curve(service, "sine.setting", request={"units": "in"}, over=over, columns=["height"])
    assert found["counts"]["points"] == MOST_POINTS == len(found["columns"][0]["values"])


def test_the_contract_marks_what_has_curves(service: Service) -> None:
    """`x-columns`, the catalogue and the address of curves name the same operations."""
    document = service.get("/openapi.json").json()
    [parameter] = document["paths"][CURVES_PATH]["post"]["parameters"]
    assert parameter["schema"]["enum"] == WITH_CURVES
    paths = document["paths"]
    marked = [name for name, o in OPERATIONS.items() if "x-columns" in paths[o.path]["post"]]
    assert marked == WITH_CURVES
    listed = service.get("/v1/operations").json()["result"]["operations"]
    assert [entry["name"] for entry in listed if entry["columns"]] == WITH_CURVES
    assert json.dumps(document["paths"][CURVES_PATH]).count("CurveAnswer") == 1
