"""Every refusal of the runout and centers topics, over HTTP: the status and the field named."""

from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.registry import load_registry

OPERATIONS = [o for o in load_registry().operations.values() if o.topic == "centers"]
FOUR = [{"angular_position": a, "reading": 0.001} for a in (0, 90, 180, 270)]
CENTERS = {"units": "mm", "distance_between_centers": 100}
STILL = {"eccentricity": 0.001, "turns": False}

REFUSED: list[tuple[str, dict[str, Any], str]] = [
    (
        "runout/indicate",
        {"units": "mm", "surface": "external", "indicator_resolution": 0.001, "readings": FOUR[:2]},
        "readings",
    ),
    (
        "runout/indicate",
        {
            "units": "mm",
            "surface": "external",
            "indicator_resolution": 0.001,
            "readings": FOUR,
            "harmonics": 3,
        },
        "readings",
    ),
    (
        "runout/indicate",
        {
            "units": "mm",
            "surface": "external",
            "indicator_resolution": 0.001,
            "readings": [*FOUR, FOUR[1]],
        },
        "readings/4/angular_position",
    ),
    (
        "runout/indicate",
        {"units": "mm", "surface": "external", "indicator_resolution": 0, "readings": FOUR},
        "indicator_resolution",
    ),
    ("runout/budget", {"units": "mm", "limit_tir": 0.01, "contributors": []}, "contributors"),
    (
        "runout/axis",
        {
            "units": "mm",
            "surface": "external",
            "near": {"station": 1, "tir": 0.01, "high_spot": 0},
            "far": {"station": 1, "tir": 0.01, "high_spot": 0},
            "stations": [2],
            "pivot_station": 0,
        },
        "far/station",
    ),
    (
        "runout/reversal",
        {
            "units": "mm",
            "surface": "external",
            "at_0": {"tir": -1, "high_spot": 0},
            "at_180": {"tir": 0, "high_spot": 0},
        },
        "at_0/tir",
    ),
    (
        "runout/convert",
        {
            "units": "mm",
            "value": 0.01,
            "given_term": "tir",
            "wanted_term": "concentricity-zone-diameter",
        },
        "wanted_term",
    ),
    (
        "runout/convert",
        {"units": "mm", "value": 1, "given_term": "wobble", "wanted_term": "tir"},
        "given_term",
    ),
    ("runout/v-block", {"units": "mm", "lobes": 7, "tir": 0.01}, "vee_angle"),
    ("runout/v-block", {"units": "mm", "vee_angle": 180}, "vee_angle"),
    (
        "runout/off-crest",
        {
            "units": "mm",
            "included_angle": 60,
            "small_diameter": 2,
            "large_diameter": 9,
            "miss": 4,
        },
        "miss",
    ),
    ("centers/limits", {**CENTERS, "station_from_center": 10}, "limit_tir"),
    (
        "centers/limits",
        {**CENTERS, "station_from_center": 100, "limit_position": 0.01, "both_alike": True},
        "station_from_center",
    ),
    (
        "centers/limits",
        {**CENTERS, "station_from_center": 10, "limit_position": 0.01},
        "both_alike",
    ),
    ("centers/hole", {"units": "mm", "type": "C", "mouth_diameter": 5}, "type"),
    (
        "centers/effect",
        {
            **CENTERS,
            "surface": "internal",
            "first": STILL,
            "second": STILL,
            "stations_from_first": [1, 101],
        },
        "stations_from_first/1",
    ),
    (
        "centers/contact",
        {
            "units": "mm",
            "center_included_angle": 60,
            "hole_included_angle": 60,
            "mouth_diameter": 2,
            "pilot_diameter": 2,
        },
        "pilot_diameter",
    ),
    ("centers/hole", {"units": "mm", "type": "A", "mouth_diameter": 40}, "mouth_diameter"),
    ("centers/hole", {"units": "mm", "key": "a-4", "ball_diameter": 1}, "ball_diameter"),
    (
        "centers/adapter",
        {"units": "mm", "shank": {}, "socket": {}, "engagement": 60, "projection": 0},
        "shank/included_angle",
    ),
]


@pytest.mark.parametrize(
    ("path", "request_", "field"), REFUSED, ids=[f"{path}-{f}" for path, _, f in REFUSED]
)
def test_request_is_refused_by_field(
    service: TestClient[Any], path: str, request_: dict[str, Any], field: str
) -> None:
    """The refusal is a problem document that names the field, with a reason in words."""
    answer = service.post(f"/v1/{path}", json=request_)
    assert 400 <= answer.status_code < 500
    problem = answer.json()
    assert len(problem["detail"]) > 10
    assert f"/{field}" in [error["pointer"] for error in problem["errors"]]


@pytest.mark.parametrize("operation", OPERATIONS, ids=lambda operation: operation.verb)
def test_every_centers_example_is_answered(service: TestClient[Any], operation: Any) -> None:
    """The example of every operation of centers is answered, twice with the same bytes."""
    first = service.post(operation.path, json=dict(operation.example))
    assert first.status_code == 200, first.text
    assert first.content == service.post(operation.path, json=dict(operation.example)).content
