"""Which standard taper it is, against the printed rows."""

import math
from typing import Any

import pytest

from halfangle_service.trade.tables.tapers.standard import standard_tapers
from support import Call


@pytest.mark.outside("tapers.identify", source="ASME B5.10, table of Morse tapers: D, d, depth")
@pytest.mark.parametrize("number", range(7))
def test_a_morse_taper_is_known_by_its_own_figures(call: Call, number: int) -> None:
    """Diameters and depth of a printed Morse row name that taper, or its twin in ISO 296."""
    row = standard_tapers()[f"morse-{number}"]
    result = call(
        "tapers.identify",
        units="in",
        large_diameter=row.gauge_diameter,
        small_diameter=row.small_diameter,
        length=row.small_end_depth,
        diameter_tolerance=0.00002,
    )["result"]
    best = result["candidates"][:5]
    assert f"morse-{number}" in {c["designation"] for c in best if c["explained_by_errors"]}


def test_what_errors_not_stated_might_explain_is_left_open(call: Call) -> None:
    """A misfit that the errors stated do not explain is open while another was not stated."""
    cut: dict[str, Any] = {"units": "in", "large_diameter": 0.7, "small_diameter": 0.572}
    request = {**cut, "length": 2.5625, "max_candidates": 50}

    def explained(**errors: float) -> set[bool | None]:
        result = call("tapers.identify", **request, **errors)["result"]
        return {c["explained_by_errors"] for c in result["candidates"]}

    assert explained() == {None}
    assert explained(diameter_tolerance=0.0005) == {True, None}
    assert explained(diameter_tolerance=0.0005, length_tolerance=0) == {True, False}


def test_the_half_angle_of_a_cut_carries_its_error(call: Call) -> None:
    """Worst case cos² α (2 δD + C δl) / (2 l) of the half angle, by its derivatives."""
    result = call(
        "tapers.identify",
        units="mm",
        large_diameter=30,
        small_diameter=20,
        length=50,
        diameter_tolerance=0.002,
        length_tolerance=0.01,
    )["result"]
    half = math.atan(0.1)
    worst = math.cos(half) ** 2 * (2 * 0.002 + 0.2 * 0.01) / 100
    estimate = result["half_angle"]
    assert estimate["value"]["degrees"] == pytest.approx(math.degrees(half), rel=1e-12)
    assert estimate["worst_case"] == pytest.approx(math.degrees(worst) * 3600, rel=1e-6)
    assert result["rate_of_taper"] == pytest.approx(0.2)
