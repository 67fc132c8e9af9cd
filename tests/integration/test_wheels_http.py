"""Refusals, drawings and tables of the wheel and of clearance, end to end through the service."""

from typing import Any
from xml.etree import ElementTree as ET

import pytest
from litestar.testing import TestClient

from halfangle_service.registry import load_registry

SVG = "{http://www.w3.org/2000/svg}"
EVERY = load_registry().operations


@pytest.mark.parametrize(
    ("name", "change", "pointer"),
    [
        ("wheels.flank", {"wheel_width": 0.5}, "/wheel_width"),
        ("wheels.flank", {"edge_radius": 5}, "/edge_radius"),
        ("wheels.flank", {"depth_per_pass": -1}, "/depth_per_pass"),
        ("wheels.dressing", {"rpm": 0}, "/rpm"),
        ("wheels.dressing", {"depth_per_pass": 1}, "/depth_per_pass"),
        ("wheels.speed", {"rpm": 0}, "/rpm"),
        ("wheels.speed", {"surface_speed_m_per_s": 30}, "/rpm"),
        ("wheels.speed", {"rated_for_side": "yes"}, "/rated_for_side"),
        ("wheels.dressing-errors", {"diamond_height": 3.4}, "/diamond_height"),
        ("wheels.setup-errors", {"axis_offset": -6}, "/axis_offset"),
        (
            "wheels.choose",
            {"included_angle_tolerance_arcsec": 0},
            "/included_angle_tolerance_arcsec",
        ),
        ("clearance.tilted-plate", {"past_large_end": -1}, "/past_large_end"),
        ("clearance.tilted-plate", {"tilt_direction": "sideways"}, "/tilt_direction"),
    ],
)
def test_refusals_name_the_field(
    service: TestClient[Any], name: str, change: dict[str, Any], pointer: str
) -> None:
    """A request that cannot be answered is a 422 problem that names its field."""
    operation = EVERY[name]
    response = service.post(operation.path, json={**operation.example, **change})
    assert response.status_code == 422, response.text
    assert response.headers["content-type"].startswith("application/problem+json")
    assert pointer in [error["pointer"] for error in response.json()["errors"]]


@pytest.mark.parametrize("name", ["wheels.flank", "clearance.tilted-plate"])
def test_drawings_are_well_formed(service: TestClient[Any], name: str) -> None:
    """The drawing of an answer is well-formed SVG that says what it shows."""
    operation = EVERY[name]
    drawing = service.post(operation.path, json=dict(operation.example)).json()["result"]["svg"]
    root = ET.fromstring(drawing)  # noqa: S314 our own drawing, not foreign XML
    assert root.tag == f"{SVG}svg"
    assert root.get("role") == "img"
    said = [root.findtext(f"{SVG}{name}") for name in ("title", "desc")]
    assert all(said)


def test_part_names_are_escaped_in_the_drawing(service: TestClient[Any]) -> None:
    """A name sent by the caller comes out as text in the drawing, never as markup."""
    operation = EVERY["clearance.tilted-plate"]
    request = dict(operation.example)
    part = {"name": "<script>&\"'", "diameter": 3, "length": 0.5}
    request["fixture"] = {**request["fixture"], "turning_parts": [part]}
    drawing = service.post(operation.path, json=request).json()["result"]["svg"]
    assert "<script>" not in drawing
    assert ET.fromstring(drawing) is not None  # noqa: S314 our own drawing, not foreign XML


def test_guide_values_are_listed(service: TestClient[Any]) -> None:
    """The guide values are a table of their own, each row by its purpose."""
    listing = service.get("/v1/wheels/guides").json()["result"]["guides"]
    assert [row["purpose"] for row in listing] == ["roughing", "general", "finishing"]
    assert service.get("/v1/wheels/guides/finishing").json()["result"] == listing[2]
    assert service.get("/v1/wheels/guides/none").status_code == 404


def test_speed_can_be_asked_by_query_string(service: TestClient[Any]) -> None:
    """A flat request such as the speed is offered by GET, one value by `pick`."""
    query = "units=in&wheel_diameter=7&rpm=3450&pick=surface_speed_ft_per_min"
    response = service.get(f"/v1/wheels/speed?{query}")
    assert response.status_code == 200, response.text
    assert float(response.text) == pytest.approx(6322.455, abs=1e-3)
