"""Small angles and squares: units by definition, and readings of leaning lines."""

import math
from typing import Any

import mpmath
import pytest

from coverage_support import half_width_of_rectangles
from halfangle_service.errors import Disagreement, Impossible
from support import Call, assert_values

_LEVEL: dict[str, Any] = {
    "units": "mm",
    "tilt_reading": 3.0,
    "tilt_reading_in": "divisions",
    "division_value": 0.02,
    "division_unit": "mm-per-m",
}
_SQUARE: dict[str, Any] = {
    "units": "mm",
    "first_rise": 0.012,
    "second_rise": -0.004,
    "indicated_height": 150,
}


@pytest.mark.outside(
    "measuring.small-angle",
    source="SI Brochure, 9th edition, table 8: 1″ = π/648000 rad; level catalogues, from memory: "
    "0.02 mm/m is about 4″",
)
@pytest.mark.parametrize(
    ("reading", "unit", "radians"),
    [
        (10.0, "arcsecond", 10 * mpmath.pi / 648000),
        (250.0, "microradian", mpmath.mpf("250e-6")),
        (0.02, "mm-per-m", mpmath.atan(mpmath.mpf("2e-5"))),
        (-120.0, "mm-per-m", mpmath.atan(mpmath.mpf("-0.12"))),
    ],
)
def test_a_reading_in_each_unit(call: Call, reading: float, unit: str, radians: Any) -> None:
    """The angle in every form by mpmath, and its height over 200 mm."""
    sent = {"units": "mm", "tilt_reading": reading, "tilt_reading_in": unit, "base_length": 200}
    result = call("measuring.small-angle", **sent)["result"]
    expected = {
        "tilt_arcsec.value": radians * 648000 / mpmath.pi,
        "tilt_microradian": radians * 1e6,
        "rise_per_metre_mm": 1000 * mpmath.tan(radians),
        "height_over_base.value": 200 * mpmath.tan(radians),
    }
    assert_values(result, {name: float(value) for name, value in expected.items()})
    if (reading, unit) == (0.02, "mm-per-m"):
        assert result["tilt_arcsec"]["value"] == pytest.approx(4, abs=0.13)


def test_divisions_and_a_turned_level(call: Call) -> None:
    """3 divisions of 0.02 mm/m, turned −1: half of 4 divisions is tilt, half of 2 its zero."""
    sent = _LEVEL | {"turned_tilt_reading": -1.0, "tilt_reading_error_limit": 0.25}
    result = call("measuring.small-angle", **sent, base_length=500)["result"]
    per_division = 0.02e-3 * 206264.806
    expected = {
        "tilt_arcsec.value": 2 * per_division,
        "zero_error_arcsec.value": per_division,
        "tilt_arcsec.worst_case": 0.25 * per_division,
        "zero_error_arcsec.worst_case": 0.25 * per_division,
        "height_over_base.value": 2 * 0.02e-3 * 500,
        "height_over_base.worst_case": 0.25 * 0.02e-3 * 500,
    }
    assert_values(result, expected, rel=1e-6)
    parts = [0.125 * per_division] * 2
    covered = half_width_of_rectangles(*parts)
    for name in ("tilt_arcsec", "zero_error_arcsec"):
        assert result[name]["expanded_uncertainty"] == pytest.approx(covered, rel=1e-3)
        spread = math.hypot(*parts) / math.sqrt(3)
        assert result[name]["standard_uncertainty"] == pytest.approx(spread, rel=1e-6)


@pytest.mark.parametrize(
    ("change", "refusal", "words"),
    [
        ({"division_unit": None}, Disagreement, "Send `division_value` and `division_unit`"),
        ({"tilt_reading_in": "arcsecond"}, Disagreement, "others have no division"),
        ({"division_value": None, "division_unit": None}, Disagreement, "need what one stands"),
        ({"tilt_reading": 9000.0}, Impossible, "past 10°"),
        ({"turned_tilt_reading": -9000.0}, Impossible, "past 10°"),
    ],
)
def test_readings_without_a_meaning_are_refused(
    call: Call, change: dict[str, Any], refusal: type[Exception], words: str
) -> None:
    """Half a division, a division of seconds, divisions of nothing, and what is no small angle."""
    with pytest.raises(refusal, match=words):
        call("measuring.small-angle", **(_LEVEL | change))


@pytest.mark.outside("measuring.square", source="A leaning face and column read by coordinates")
@pytest.mark.parametrize(("lean", "column"), [(40.0, 15.0), (-25.0, 60.0), (0.0, -30.0)])
def test_leaning_lines_are_told_apart(call: Call, lean: float, column: float) -> None:
    """Readings taken between a face and a column that lean give back the lean of each."""
    height, gap = 200.0, 5.0
    s, c = (math.tan(math.radians(arcsec / 3600)) for arcsec in (lean, column))

    def rise(side: float) -> float:
        # The column at x = c z; the square's face on its side, leaning out toward the column.
        distances = [side * ((side * gap - side * s * z) - c * z) for z in (0.0, height)]
        return distances[0] - distances[1]

    sent = {"first_rise": rise(1.0), "second_rise": rise(-1.0), "indicated_height": height}
    result = call("measuring.square", units="mm", **sent)["result"]
    assert result["square_error_arcsec"]["value"] == pytest.approx(lean, abs=1e-4)
    assert result["reference_error_arcsec"]["value"] == pytest.approx(column, abs=1e-4)
    assert result["square_angle"]["degrees"] == pytest.approx(90 + lean / 3600, abs=1e-7)


def test_its_uncertainty_is_of_both_readings(call: Call) -> None:
    """Each reading counts half, over the height, in both errors."""
    result = call("measuring.square", **_SQUARE, indicating_error_limit=0.001)["result"]
    part = 0.0005 / 150 * 206264.806
    covered = half_width_of_rectangles(part, part)
    for name in ("square_error_arcsec", "reference_error_arcsec"):
        assert result[name]["worst_case"] == pytest.approx(2 * part, rel=1e-6)
        assert result[name]["expanded_uncertainty"] == pytest.approx(covered, rel=1e-3)
    without = call("measuring.square", **_SQUARE)["result"]
    assert without["square_error_arcsec"]["not_stated"] == ["indicating_error_limit"]


def test_readings_of_nothing_without_an_error_are_a_true_square(call: Call) -> None:
    """Both rises 0 and read without an error: no lean, and no doubt of it; a level likewise."""
    none = {"units": "mm", "first_rise": 0, "second_rise": 0, "indicated_height": 150}
    result = call("measuring.square", **none, indicating_error_limit=0)["result"]
    assert result["square_error_arcsec"]["expanded_uncertainty"] == 0.0
    level = {"units": "mm", "tilt_reading": 0, "tilt_reading_in": "arcsecond"}
    tilt = call("measuring.small-angle", **level, tilt_reading_error_limit=0)["result"]
    assert tilt["tilt_arcsec"]["expanded_uncertainty"] == 0.0


@pytest.mark.parametrize("name", ["first_rise", "second_rise"])
def test_a_face_that_is_no_squares_is_refused(call: Call, name: str) -> None:
    """A rise of more than a fiftieth of the height is refused by its field."""
    with pytest.raises(Impossible, match="is of no square"):
        call("measuring.square", **(_SQUARE | {name: 3.01}))
