"""What the sine operations refuse, end to end through the service."""

from typing import Any

import pytest
from litestar.testing import TestClient

from halfangle_service.registry import load_registry

OPERATIONS = load_registry().operations


@pytest.mark.parametrize(
    ("verb", "change", "pointer"),
    [
        ("setting", {"angle": 90}, "/angle"),
        ("setting", {"angle": 50, "largest_angle": 45}, "/angle"),
        ("angle", {"height": 5}, "/height"),
        ("table", {"last_angle": "90°"}, "/last_angle"),
        ("table", {"angle_step": "0 00 01"}, "/angle_step"),
        ("low-stack", {"set": "inch-7"}, "/set"),
        ("correction", {"blocks": [2.5]}, "/blocks/0"),
        ("taper-setting", {"half_angle": 30}, "/taper_per_foot"),
        ("taper-setting", {"holding": "in a chuck"}, "/holding"),
        ("taper-angle", {"height": 6}, "/height"),
        ("compound", {"base_axis": None}, "/base_axis"),
        ("compound", {"base_largest_angle": 10}, "/orientation"),
        ("compound-angles", {"upper_height": -5}, "/upper_height"),
        ("uncertainty", {"axis_yaw_error_limit_arcsec": 18_001}, "/axis_yaw_error_limit_arcsec"),
        ("requirements", {"wheel_breakdown": 0.001}, "/wheel_contact_length"),
    ],
)
def test_refusals_name_the_field(
    service: TestClient[Any], verb: str, change: dict[str, Any], pointer: str
) -> None:
    """A request that cannot be answered is a 422 problem that names its field."""
    operation = OPERATIONS[f"sine.{verb}"]
    response = service.post(operation.path, json={**operation.example, **change})
    assert response.status_code == 422, response.text
    assert response.headers["content-type"].startswith("application/problem+json")
    assert pointer in [error["pointer"] for error in response.json()["errors"]]


def test_an_impossible_normal_names_its_component(service: TestClient[Any]) -> None:
    """A normal that looks down is refused, with the reason."""
    operation = OPERATIONS["sine.compound"]
    orientation = {"kind": "normal", "normal_x": 0, "normal_y": 0, "normal_z": -1}
    response = service.post(operation.path, json={**operation.example, "orientation": orientation})
    assert response.status_code == 422
    assert response.json()["errors"][0]["pointer"] == "/orientation/normal_z"
