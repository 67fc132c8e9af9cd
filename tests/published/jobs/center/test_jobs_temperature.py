"""Temperature in a center's plan: stack and plate grown apart, and the angle taken anew."""

import math
from typing import Any

import pytest

from halfangle_service.registry import load_registry
from support import Call

#: Linear expansion in 1e-6 per kelvin and how far it may be off: steel by ISO 3650, the others by
#: NIST Monograph 180 and handbooks, from memory.
EXPANSION = {"steel": (11.5, 1.0), "tungsten-carbide": (4.5, 0.7), "ceramic": (9.5, 0.8)}
WARM = 25.0
ERRORS = {
    "temperature_celsius": WARM,
    "temperature_error_limit_celsius": 1,
    "temperature_difference_celsius": 0.5,
}
OUTSIDE = pytest.mark.outside(
    "jobs.center", source="Stack and center distance grown by hand, the arcsine taken anew"
)


def budget_of(call: Call, **changes: Any) -> tuple[dict[str, Any], dict[str, Any]]:
    """Setting, and estimate of the included angle's error, of a plan with these changes."""
    request = {**load_registry().operations["jobs.center"].example, **changes}
    stated = {name: value for name, value in request.items() if value is not None}
    plan = call("jobs.center", **stated)["result"]
    return plan["plate_setting"], plan["angle_budget"]["included_angle_error_arcsec"]


def included_arcsec(
    stack: dict[str, float], plate: float, *, blocks_warm: float, plate_warm: float
) -> float:
    """Included angle in arc-seconds of stacks of each expansion on a 5 in plate of its own.

    `stack` has the height of the blocks of each coefficient; both are so much warmer than 20 °C.
    """
    height = math.fsum(h * (1 + float(c) * 1e-6 * blocks_warm) for c, h in stack.items())
    return 2 * math.degrees(math.asin(height / (5 * (1 + plate * 1e-6 * plate_warm)))) * 3600


@OUTSIDE
@pytest.mark.parametrize("included", [30, 60, 120])
@pytest.mark.parametrize("blocks", ["steel", "tungsten-carbide", "ceramic"])
@pytest.mark.parametrize("plate", ["steel", "ceramic"])
def test_warm_blocks_on_a_warm_plate(call: Call, included: int, blocks: str, plate: str) -> None:
    """At 25 °C the angle is that of the stack and the plate as they have grown.

    A kelvin more or less, blocks half a kelvin from the plate, and coefficients as far off as they
    may be turn it as the arcsine of the lengths then says.
    """
    errors = {**ERRORS, "plate_material": plate}
    setting, error = budget_of(
        call, included_angle=included, grade=None, angle_errors={**errors, "block_material": blocks}
    )
    height = setting["total"]
    (of_blocks, blocks_off), (of_plate, plate_off) = EXPANSION[blocks], EXPANSION[plate]
    warm = WARM - 20

    def angle(
        blocks_more: float = 0, plate_more: float = 0, both: float = 0, blocks_alone: float = 0
    ) -> float:
        return included_arcsec(
            {f"{of_blocks + blocks_more}": height},
            of_plate + plate_more,
            blocks_warm=warm + both + blocks_alone,
            plate_warm=warm + both,
        )

    assert error["value"] == pytest.approx(angle() - included * 3600, rel=1e-3, abs=1e-3)
    turned = {
        "temperature_error_limit_celsius": angle(both=1) - angle(),
        "temperature_difference_celsius": angle(blocks_alone=0.5) - angle(),
        "block_expansion": angle(blocks_more=blocks_off) - angle(),
        "plate_expansion": angle(plate_more=plate_off) - angle(),
    }
    rows = {row["name"]: row for row in error["contributions"]}
    for name, by in turned.items():
        row = rows.get(name)
        if blocks == plate and name == "temperature_error_limit_celsius":
            # Grown alike, they turn nothing: 0 in the budget, or no row of it.
            assert row is None or row["worst_case"] == 0
            assert by == pytest.approx(0, abs=1e-6)
            continue
        assert row is not None, name
        assert row["input_value"] * row["sensitivity"] == pytest.approx(by, rel=2e-3), name
        assert row["worst_case"] == pytest.approx(abs(by), rel=2e-3), name
        # Within its limits each is as likely anywhere: a rectangle of that half-width.
        assert row["standard_uncertainty"] == pytest.approx(abs(by) / math.sqrt(3), rel=2e-3), name


@OUTSIDE
def test_a_stack_of_two_materials(call: Call) -> None:
    """Two inches of steel and half an inch of carbide grow each by its own coefficient.

    The stack of 2.5 in is 5 K warm: 2 (11.5) + 0.5 (4.5) is 10.1 on the mean, on a steel plate.
    """
    box = [{"size": 2, "material": "steel"}, {"size": 0.5, "material": "tungsten-carbide"}]
    _, error = budget_of(call, set=None, box=box, grade=None, angle_errors=ERRORS)
    grown = {"11.5": 2.0, "4.5": 0.5}
    warm = included_arcsec(grown, 11.5, blocks_warm=5, plate_warm=5)
    assert error["value"] == pytest.approx(warm - 60 * 3600, rel=1e-3)
    by_mean = 2 * math.tan(math.radians(30)) * (10.1 - 11.5) * 1e-6 * 5
    assert error["value"] == pytest.approx(math.degrees(by_mean) * 3600, rel=1e-3)
    rows = {(row["name"], row["of"]): row["worst_case"] for row in error["contributions"]}
    for material, spread, other in (("steel", 1.0, "4.5"), ("tungsten-carbide", 0.7, "11.5")):
        own = next(c for c in grown if c != other)
        off = {f"{float(own) + spread}": grown[own], other: grown[other]}
        by = included_arcsec(off, 11.5, blocks_warm=5, plate_warm=5) - warm
        assert rows["block_expansion", material] == pytest.approx(by, rel=2e-3)


@OUTSIDE
@pytest.mark.parametrize("celsius", [None, 20])
def test_at_20_degrees_nothing_grows(call: Call, celsius: float | None) -> None:
    """At 20 °C no coefficient counts; one that is not stated is named, and counts for nothing."""
    errors = {**ERRORS, "temperature_celsius": celsius, "block_material": "tungsten-carbide"}
    sent = {name: value for name, value in errors.items() if value is not None}
    _, error = budget_of(call, grade=None, angle_errors=sent)
    assert error["value"] == pytest.approx(0, abs=1e-9)
    names = {row["name"] for row in error["contributions"] if row["worst_case"] > 0}
    assert names == {"temperature_error_limit_celsius", "temperature_difference_celsius"}
    assert ("temperature_celsius" in error["not_stated"]) == (celsius is None)
