"""Sine bars, rules of safety, flatness, materials, lathe centers: held, and as they are served."""

import math
from itertools import pairwise
from typing import Any

import pytest

from halfangle_service.registry import load_registry
from halfangle_service.trade.tables.blocks.flatness import flatness_grades
from halfangle_service.trade.tables.blocks.tolerances import grades
from halfangle_service.trade.tables.centers.guides import (
    center_points,
    holes_by_shaft,
    stock_balls,
    tapped_holes,
)
from halfangle_service.trade.tables.centers.holes import center_holes
from halfangle_service.trade.tables.sine.bars import bar_tolerances
from halfangle_service.trade.tables.tapers.grades import printed_arcsec, printed_diameter_band
from halfangle_service.trade.tables.wheels.safety import safety_rules
from support import Call
from transcribed import bench

TABLES = {f"{table.topic}.{table.name}": table for table in load_registry().tables}


def rows(name: str) -> dict[str, Any]:
    """Rows of a published table as they are served."""
    table = TABLES[name]
    served = {key: table.get(key) for key in table.keys()}  # noqa: SIM118  no mapping
    return {key: row.model_dump(mode="json") for key, row in served.items() if row is not None}


def test_every_row_is_the_listed_one() -> None:
    """Each of these tables holds just the rows of its transcription, cell by cell."""
    assert not bench.bar_differences(bar_tolerances())
    assert not bench.rule_differences(safety_rules())
    assert not bench.flatness_differences(flatness_grades())
    assert not bench.shaft_differences(holes_by_shaft())
    assert not bench.point_differences(center_points())
    assert not bench.tapped_differences(tapped_holes())
    assert not bench.ball_differences(stock_balls())


def test_a_bars_tolerances_are_served_in_millimetres() -> None:
    """The center distance of IS 5359, 100 mm, is ± 0.003 mm; a side's squareness 0.003 in 25."""
    served = rows("sine.bar-tolerances")
    distance = served["is-5359-100-center-distance"]
    assert (distance["tolerance_low_mm"], distance["tolerance_high_mm"]) == (0.003, 0.003)
    assert distance["either_way"] is True
    side = served["is-5359-100-side-squareness"]
    assert (side["tolerance_high_mm"], side["per_length_mm"]) == (0.003, 25.0)
    assert served["training-manual-5-and-10-in-angle"]["tolerance_arcsec"] == 60.0


def test_flatness_is_served_by_range() -> None:
    """Grade 1 may be 0.15 µm out of flat up to 150 mm; no face is allowed more than its variation.

    Variation in length holds the block's parallelism, and with it half of its flatness.
    """
    served = rows("blocks.flatness-grades")["iso-1"]["ranges"]
    assert served[0] == {"over": 0.5, "up_to": 150.0, "flatness": 0.15}
    for name, row in flatness_grades().items():
        assert list(row.flatness_um) == sorted(row.flatness_um)
        grade = grades()[name]
        for end, flat in zip(row.up_to_mm, row.flatness_um, strict=True):
            at_end = [e for e, _ in zip(grade.up_to, grade.variation_mm, strict=True)].index(
                round(end * 1e7)
            )
            assert flat <= grade.variation_mm[at_end] * 1e3 + 1e-12


def test_materials_are_served_per_kelvin() -> None:
    """Steel is 11.5e-6, near-zero glass-ceramic 0 ± 0.02e-6, fused quartz 0.55e-6 per kelvin."""
    served = rows("blocks.materials")
    assert served["steel"]["expansion_coefficient"] == pytest.approx(11.5e-6)
    assert served["steel"]["expansion_coefficient_error_limit"] == pytest.approx(1e-6)
    assert served["glass-ceramic"]["expansion_coefficient"] == 0.0
    assert served["glass-ceramic"]["expansion_coefficient_error_limit"] == pytest.approx(2e-8)
    assert served["fused-quartz"]["expansion_coefficient"] == pytest.approx(0.55e-6)


@pytest.mark.outside(
    "blocks.budget", source="Fused quartz 0.55e-6/K, handbooks from memory; 50 mm, 2 K off 20 °C"
)
@pytest.mark.parametrize(("material", "nanometres"), [("fused-quartz", 55), ("glass-ceramic", 0)])
def test_blocks_that_hardly_expand(call: Call, material: str, nanometres: float) -> None:
    """50 mm of quartz grow 55 nm by 2 K, of near-zero glass-ceramic nothing; steel 1,150 nm."""
    result = call(
        "blocks.budget",
        units="mm",
        blocks=[50.0],
        grade="iso-1",
        block_material=material,
        temperature_celsius=22.0,
    )["result"]
    assert result["expansion"] == pytest.approx(nanometres * 1e-6)


def test_clauses_are_served_with_their_regulation() -> None:
    """A surface grinder's opening is (b)(5): 150°, from 15° below the spindle, read in print."""
    rule = rows("wheels.safety-rules")["opening-surface"]
    assert "150°" in rule["rule"]
    assert "15°" in rule["rule"]
    assert rule["clause"].startswith("(b)(5)")
    assert rule["source"].startswith("29 CFR 1910.215, (b)(5)")
    assert rule["standing"] == "published"


def test_holes_by_shaft_are_holes_of_the_table() -> None:
    """Each size that the guide gives is one of the table of holes; ranges follow on each other."""
    guide = list(holes_by_shaft().values())
    assert [low.up_to_mm for low in guide[:-1]] == [high.over_mm for high in guide[1:]]
    pairs = {(h.pilot_diameter, h.cone_diameter) for h in center_holes().values() if h.type == "A"}
    assert {(row.pilot_diameter_mm, row.cone_diameter_mm) for row in guide} <= pairs
    served = rows("centers.by-shaft")["12-to-18"]
    assert (served["over"], served["up_to"]) == (12.0, 18.0)
    assert (served["pilot_diameter_mm"], served["cone_diameter_mm"]) == (2.0, 4.25)


def test_points_are_served_by_purpose() -> None:
    """60° for general work, up to 28 t by DIN 332-1; 75° or 90° for heavy work."""
    served = rows("centers.points")
    assert served["general"]["included_angle"]["degrees"] == 60.0
    assert served["general-heaviest"]["largest_mass_kg"] == 28000.0
    assert served["heavy-90"]["included_angle"]["degrees"] == 90.0


def test_a_tapped_holes_cone_is_as_deep_as_its_diameters_say() -> None:
    """(d3 − d2) / (2 tan 30°), to the tenth that the standard gives; sizes ascend."""
    holes = list(tapped_holes().values())
    for hole in holes:
        depth = (hole.cone_diameter_mm - hole.pilot_diameter_mm) / (2 * math.tan(math.pi / 6))
        assert hole.cone_depth_mm == pytest.approx(depth, abs=0.05)
        assert hole.pilot_diameter_mm < hole.cone_diameter_mm < hole.chamfer_diameter_mm
    assert all(a.chamfer_diameter_mm < b.pilot_diameter_mm * 2 for a, b in pairwise(holes))
    served = rows("centers.tapped-holes")["d-m10"]
    assert (served["pilot_diameter_mm"], served["cone_diameter_mm"]) == (10.5, 14.9)
    assert (served["chamfer_diameter_mm"], served["cone_depth_mm"]) == (16.3, 3.8)


#: ISO 1947:1973, printed columns of 6 to 10 mm: seconds, and AT_D in µm; from memory.
PRINTED = {
    "AT1": (10, 0.3, 0.5), "AT2": (16, 0.5, 0.8), "AT3": (26, 0.8, 1.3), "AT4": (41, 1.3, 2.0),
    "AT5": (65, 2.0, 3.2), "AT6": (103, 3.2, 5.0), "AT7": (165, 5.0, 8.0), "AT8": (258, 8.0, 12.5),
    "AT9": (412, 12.5, 20.0), "AT10": (649, 20.0, 32.0), "AT11": (1030, 32.0, 50.0),
    "AT12": (1648, 50.0, 80.0),
}  # fmt: skip


@pytest.mark.outside("tapers.tolerance", source="ISO 1947:1973, row of 6 to 10 mm, from memory")
def test_grades_are_printed_as_the_standard_prints_them() -> None:
    """AT5 of 6 to 10 mm: 1′05″ and 2.0 to 3.2 µm; AT12: 27′28″ and 50 to 80 µm."""
    served = rows("tapers.cone-angle-grades")
    for grade, expected in PRINTED.items():
        first = served[grade]["ranges"][0]
        assert expected == (
            first["printed_arcsec"],
            first["smallest_printed_diameter_band"],
            first["largest_printed_diameter_band"],
        )


def test_what_is_printed_lies_by_the_exact_value() -> None:
    """A preferred number is within 9 % of AT × length, seconds within 0.2 % or half of one."""
    for grade in rows("tapers.cone-angle-grades").values():
        for row in grade["ranges"]:
            for end in ("smallest", "largest"):
                exact = row[f"{end}_diameter_band"]
                assert row[f"{end}_printed_diameter_band"] == pytest.approx(exact, rel=0.09)
            exact = row["included_angle_band_arcsec"]
            assert row["printed_arcsec"] == pytest.approx(exact, rel=0.002, abs=0.51)
    assert printed_diameter_band(3.15) == 3.2
    assert printed_arcsec(31.5) == 6.0
