"""Every row of the published tables that holds lengths, asked for in inches and in millimetres."""

from typing import Any

import pytest

from halfangle_service.registry import load_registry
from halfangle_service.trade.tables.blocks.tolerances import grades
from halfangle_service.trade.tables.centers.holes import center_holes
from halfangle_service.trade.tables.tapers.grades import angle_grades
from halfangle_service.trade.tables.tapers.standard import standard_tapers
from halfangle_service.trade.tables.wheels.guides import guides
from support import Call
from units_support import Apart, differences, in_other_units

#: Figures for the bench step of the request's own unit, and what its tools can read.
OF_THE_UNIT = {
    "acceptance_arcsec",
    "acceptance_tir",
    "included_angle_arcsec_per_step",
    "downfeed_step",
    "off_diameter",
    "off_point",
    "steps_for_allowance",
    "proves_tolerance",
}


def apart(call: Call, name: str, request: dict[str, Any]) -> list[Apart]:
    """Where the answer in the other unit is another one."""
    converted = in_other_units(name, request)
    first, second = (call(name, **asked)["result"] for asked in (request, converted))
    found = differences(name, first, second, converted["units"])
    return [difference for difference in found if _leaf(difference) not in OF_THE_UNIT]


def _leaf(difference: Apart) -> str:
    return difference.path.rpartition(".")[2]


@pytest.mark.parametrize("designation", sorted(standard_tapers()))
def test_standard_tapers(call: Call, designation: str) -> None:
    """The shank of a center, and the taper that measures belong to, are the same in both units."""
    taper = standard_tapers()[designation]
    example = load_registry().operations["jobs.center"].example
    shank = {"kind": "taper", "designation": designation}
    # Without errors to draw, which would take the time.
    job = {**example, "shank": shank, "runout_errors": {}, "angle_errors": {}}
    assert apart(call, "jobs.center", job) == []
    measured = {
        "units": taper.units,
        "large_diameter": taper.gauge_diameter,
        "small_diameter": taper.gauge_diameter * (1 - taper.rate / 2),
        # A little shorter, so that no two standard rates come equally near.
        "length": taper.gauge_diameter * 0.499,
    }
    assert apart(call, "tapers.identify", measured) == []


@pytest.mark.parametrize("key", sorted(center_holes()))
def test_center_holes(call: Call, key: str) -> None:
    """A center hole by its key has the same depths in both units."""
    hole = center_holes()[key]
    request = {"units": hole.units, "key": key}
    assert apart(call, "centers.hole", request) == []


@pytest.mark.parametrize("grade", sorted(grades()))
def test_grades_of_blocks(call: Call, grade: str) -> None:
    """A grade's limit on a block is the same in both units, where a row of the table ends too."""
    edges = [size / 1e7 for size in grades()[grade].up_to]
    sizes = [*edges, *(edge - 0.001 for edge in edges)]
    for size in sizes:
        request = {"units": "mm", "blocks": [size], "grade": grade}
        assert apart(call, "blocks.budget", request) == [], size


@pytest.mark.parametrize("grade", sorted(angle_grades()))
def test_grades_of_cone_angles(call: Call, grade: str) -> None:
    """A cone's angle grade is the same in both units, where a row of the table ends too."""
    for edge in angle_grades()[grade].up_to_mm:
        for length in (edge, edge - 0.001):
            request = {
                "units": "mm",
                "one_in_x": 20,
                "large_diameter": 100,
                "length": length,
                "cone_angle_grade": grade,
            }
            assert apart(call, "tapers.tolerance", request) == [], length


@pytest.mark.parametrize("purpose", sorted(guides()))
def test_dressing_guides(call: Call, purpose: str) -> None:
    """A purpose's depths and overlap are the same in both units."""
    example = load_registry().operations["wheels.dressing"].example
    request = {name: value for name, value in example.items() if name != "overlap_ratio"}
    assert apart(call, "wheels.dressing", {**request, "purpose": purpose}) == []
