"""Overlays read back: the SVG's marks at true size, the DXF by an independent reader."""

import math
import os
import re
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import shapely

from halfangle_service.errors import Disagreement, Impossible
from support import Call, assert_values

# Said before GDAL is loaded: DXF of 2000 has no coding of its own that it would guess right.
os.environ.setdefault("DXF_ENCODING", "UTF-8")

READER = "GDAL's DXF driver, by pyogrio"
GEOMETRY = "a cone's sides by the tangents of their half angles, by numpy"
_TOLERANCE = "included_angle_tolerance_arcsec"
#: The file's unit, in millimetres of paper.
UNIT = 0.1
REQUEST: dict[str, Any] = {
    "units": "mm",
    "included_angle": 60,
    "large_diameter": 12.0,
    "length": 9.0,
    "large_diameter_tolerance": 0.02,
    "included_angle_tolerance_arcsec": 600,
    "magnification": 20,
    "formats": ["svg", "dxf"],
}


def drawn(call: Call, **changes: Any) -> dict[str, Any]:
    """The result for the request above with changes."""
    result: dict[str, Any] = call("inspection.overlay", **{**REQUEST, **changes})["result"]
    return result


def sides(request: dict[str, Any]) -> dict[str, list[tuple[float, float]]]:
    """Upper sides of the three cones as drawn, by layer, from large end to small end."""
    half = math.radians(request["included_angle"]) / 2
    turn = math.radians(request["included_angle_tolerance_arcsec"] / 3600) / 2
    off, large = request["large_diameter_tolerance"], request["large_diameter"]
    times, length = request["magnification"], request["length"]
    cones = {
        "NOMINAL": (large, half),
        "SMALLEST": (large - off, half + turn),
        "LARGEST": (large + off, half - turn),
    }
    return {
        name: [(times * z, times * (size / 2 - z * math.tan(angle))) for z in (0.0, length)]
        for name, (size, angle) in cones.items()
    }


@pytest.mark.outside("inspection.overlay", source=READER)
@pytest.mark.parametrize(("units", "magnification"), [("mm", 20), ("mm", 1), ("in", 2.5)])
def test_a_dxf_is_read_by_another_program(
    call: Call, tmp_path: Path, units: str, magnification: float
) -> None:
    """Layers, closed outlines and coordinates come back to the last digits, and the text."""
    import pyogrio  # noqa: PLC0415  with the coding said above

    request = {**REQUEST, "units": units, "magnification": magnification}
    file = tmp_path / "overlay.dxf"
    file.write_text(drawn(call, **request)["dxf"], "ascii")
    _, _, geometries, fields = pyogrio.raw.read(file, columns=["Layer", "Text"])
    shapes = dict(zip(fields[0], shapely.from_wkb(geometries), strict=True))
    assert set(shapes) == {"NOMINAL", "SMALLEST", "LARGEST", "AXIS", "TEXT"}
    for layer, upper in sides(request).items():
        corners = [*upper, *((x, -y) for x, y in reversed(upper)), upper[0]]
        found = shapely.get_coordinates(shapes[layer])
        np.testing.assert_allclose(found, corners, rtol=1e-14, atol=1e-12)
    text = dict(zip(fields[0], fields[1], strict=True))["TEXT"]
    assert text.startswith('60°00\'00.00" ±600"')
    unit = re.search(r"\$INSUNITS\n *70\n *(\d+)", file.read_text("ascii"))
    assert unit is not None
    assert unit[1] == {"mm": "4", "in": "1"}[units]


def test_a_dxf_has_the_same_bytes_each_time(call: Call) -> None:
    """No time, no random number of its own stands in it; an ETag holds."""
    first, second = drawn(call), drawn(call)
    assert first == second
    assert "20 " not in re.findall(r"\$TDCREATE\n *40\n *(\S+)", first["dxf"])
    assert len(first["dxf"]) < 20_000


def paths(svg: str) -> list[list[tuple[float, float]]]:
    """Points of each path of a drawing, in the file's unit."""
    numbers = re.compile(r"(-?[\d.]+) (-?[\d.]+)")
    return [
        [(float(x), float(y)) for x, y in numbers.findall(d)]
        for d in re.findall(r'<path[^>]* d="([^"]*)"', svg)
    ]


@pytest.mark.outside("inspection.overlay", source=GEOMETRY)
@pytest.mark.parametrize(("units", "to_mm"), [("mm", 1.0), ("in", 25.4)])
def test_an_svg_is_of_true_size(call: Call, units: str, to_mm: float) -> None:
    """On paper the file's unit is 0.1 mm, and every corner of the band lies where it should."""
    request = {**REQUEST, "units": units, "magnification": 20 if units == "mm" else 2}
    svg = drawn(call, **request)["svg"]
    root = ET.fromstring(svg)  # noqa: S314  our own drawing
    box = [float(n) for n in root.attrib["viewBox"].split()]
    for size, name in zip(box[2:], ("width", "height"), strict=True):
        assert root.attrib[name].endswith("mm")
        assert float(root.attrib[name][:-2]) == pytest.approx(size * UNIT, abs=1e-6)
    seen = {point for path in paths(svg) for point in path}
    upper = sides(request)
    # The axis is level: its height, and the large end's place, are those of the nominal side.
    corners = [p for path in paths(svg) for p in path]
    top = min(y for _, y in corners)
    axis = top + upper["LARGEST"][0][1] * to_mm / UNIT
    left = min(x for x, y in corners if y == top)
    for side in upper.values():
        for x, y in side:
            for sign in (-1.0, 1.0):
                place = left + x * to_mm / UNIT, axis + sign * y * to_mm / UNIT
                near = min(math.hypot(place[0] - a, place[1] - b) for a, b in seen)
                assert near < 0.015


@pytest.mark.outside("inspection.overlay", source=GEOMETRY)
def test_the_bar_is_as_long_as_it_says(call: Call) -> None:
    """A bar of 100 mm on paper, which is 5 mm at a part drawn 20 times."""
    svg = drawn(call)["svg"]
    assert "100 mm on paper, 5 mm at the part" in svg
    bars = [
        abs(path[1][0] - path[0][0]) * UNIT
        for path in paths(svg)
        if len(path) == 2 and path[0][1] == path[1][1]
    ]
    assert any(bar == pytest.approx(100.0, abs=0.01) for bar in bars)


def test_nothing_lies_outside_the_sheet(call: Call) -> None:
    """Every mark lies on the sheet, whatever the proportions."""
    for changes in (
        {},
        {"length": 0.5},
        {"magnification": 0.5},
        {"included_angle": 2, "length": 90.0, "magnification": 1},
        {"included_angle": 150, "length": 1.5},
    ):
        svg = drawn(call, **changes)["svg"]
        found = re.search(r'viewBox="(\S+) (\S+) (\S+) (\S+)"', svg)
        assert found is not None
        left, top, width, height = map(float, found.groups())
        for path in paths(svg):
            assert all(left <= x <= left + width for x, _ in path)
            assert all(top <= y <= top + height for _, y in path)


@pytest.mark.outside("inspection.overlay", source=GEOMETRY)
def test_sizes_on_paper(call: Call) -> None:
    """Length and diameter times the magnification; the band at its widest, square to the line."""
    upper = sides(REQUEST)
    gaps = [
        abs(limit[end][1] - upper["NOMINAL"][end][1]) * math.cos(math.radians(30))
        for limit in (upper["SMALLEST"], upper["LARGEST"])
        for end in (0, 1)
    ]
    expected = {"drawn_length": 180, "drawn_diameter": 240, "drawn_band": max(gaps)}
    assert_values(drawn(call), expected, rel=1e-9)


def test_a_point_is_drawn_to_the_axis(call: Call) -> None:
    """A center comes to its point; its smallest cone ends before it, on the axis."""
    point = 6.0 / math.tan(math.radians(30))
    result = drawn(call, length=point, magnification=1)
    assert "SMALLEST" in result["dxf"]
    numbers = result["dxf"].split("LWPOLYLINE")[2:3]
    assert numbers
    ends = re.findall(r"\n 10\n *(\S+)\n 20\n *(\S+)", numbers[0])
    smallest = (12.0 - 0.02) / 2.0 / math.tan(math.radians(30 + 300 / 3600))
    assert float(ends[1][0]) == pytest.approx(smallest, rel=1e-9)
    assert float(ends[1][1]) == pytest.approx(0.0, abs=1e-12)


def test_forms_not_asked_for_are_null(call: Call) -> None:
    """Only what `formats` names is drawn."""
    assert drawn(call, formats=["svg"])["dxf"] is None
    assert drawn(call, formats=["dxf"])["svg"] is None


@pytest.mark.parametrize(
    ("changes", "field", "why"),
    [
        ({"length": 10.5}, "length", "comes to its point"),
        ({"large_diameter_tolerance": 12.0}, "large_diameter_tolerance", "leaves nothing"),
        (
            {"included_angle_tolerance_arcsec": 216_000},
            "included_angle_tolerance_arcsec",
            "no cone",
        ),
        ({"magnification": 167}, "magnification", "would be 2004 mm long"),
    ],
)
def test_what_cannot_be_drawn(call: Call, changes: dict[str, Any], field: str, why: str) -> None:
    """The refusal names the field and its limit."""
    with pytest.raises(Impossible, match=why) as refused:
        drawn(call, **changes)
    assert field in refused.value.fields


def test_an_overlay_of_what_is_no_slope(call: Call) -> None:
    """A slope is needed, stated in any of the usual ways."""
    with pytest.raises(Disagreement, match="slope of the cone is missing"):
        drawn(call, included_angle=None)


@pytest.mark.outside("inspection.comparator", source=GEOMETRY)
def test_picked_points_lie_on_the_overlay(call: Call) -> None:
    """Points of the nominal cone, picked anywhere and turned, lie on its nominal lines."""
    turn = math.radians(25.0)
    spin = np.array([[math.cos(turn), -math.sin(turn)], [math.sin(turn), math.cos(turn)]])
    places = np.linspace(3.0, 8.0, 6)
    lines = [
        (np.column_stack([places, sign * places * math.tan(math.radians(30))]) @ spin.T)
        + (7.0, 2.0)
        for sign in (1.0, -1.0)
    ]
    overlay = {k: v for k, v in REQUEST.items() if k not in ("units", "formats")}
    result = call(
        "inspection.comparator",
        units="mm",
        flank=[{"x": float(x), "y": float(y)} for x, y in lines[0]],
        other_flank=[{"x": float(x), "y": float(y)} for x, y in lines[1]],
        overlay={**overlay, "formats": ["svg"]},
    )["result"]["overlay"]
    alone = drawn(call, formats=["svg"])
    plain = alone.pop("svg")
    assert_values(result, {"drawn_length": 180, "drawn_diameter": 240})
    assert_values(result, {"drawn_band": alone["drawn_band"]})
    crosses = [p for p in paths(result["svg"]) if p not in paths(plain)]
    assert len(crosses) == 2 * 12
    top = min(y for path in paths(plain) for _, y in path)
    corner = min(x for path in paths(plain) for x, y in path if y == top)
    axis = top + sides(REQUEST)["LARGEST"][0][1] / UNIT
    apex = 6.0 / math.tan(math.radians(30))
    for place in places:
        x = corner + 20 * (apex - place) / UNIT
        for sign in (1.0, -1.0):
            y = axis + sign * 20 * place * math.tan(math.radians(30)) / UNIT
            near = min(math.hypot((a[0] + b[0]) / 2 - x, (a[1] + b[1]) / 2 - y) for a, b in crosses)
            assert near < 0.1
