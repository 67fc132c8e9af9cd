"""Budgets of what is worked out from measured values, against derivatives by another library."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat
from uncertainties.umath import atan

from halfangle_service.errors import Impossible
from halfangle_service.trade.uncertainty import LargestError, Measured, budget_of

sizes = st.floats(1, 100)
errors = st.floats(1e-5, 1e-3)


def half_angle(large: float, small: float, length: float) -> float:
    """Half angle of a cut: atan of half the difference of diameters over the length."""
    return math.atan((large - small) / (2 * length))


@given(sizes, sizes, errors, errors)
def test_a_budget_agrees_with_derivatives(
    rise: float, length: float, by_diameter: float, by_length: float
) -> None:
    """Sensitivities and combined uncertainty are those that automatic derivatives give."""
    cut = (rise + 5, 5.0, length)
    spread = (by_diameter, by_diameter, by_length)
    names = ("large_diameter", "small_diameter", "length")
    inputs = [
        Measured(name, value, LargestError(f"{name}_tolerance", error))
        for name, value, error in zip(names, cut, spread, strict=True)
    ]
    budget = budget_of(half_angle, *inputs)
    large, small, along = (
        ufloat(value, error / math.sqrt(3)) for value, error in zip(cut, spread, strict=True)
    )
    wanted = atan((large - small) / (2 * along))
    assert budget.standard_uncertainty == pytest.approx(wanted.std_dev, rel=1e-5)
    slopes = [wanted.derivatives[variable] for variable in (large, small, along)]
    assert [c.sensitivity for c in budget.contributions] == pytest.approx(slopes, rel=1e-5)


def test_what_was_not_stated_is_named_once() -> None:
    """Two inputs that one field would state the error of are named by it once."""
    inputs = (
        Measured("large_diameter", 20, LargestError("diameter_error_limit", None)),
        Measured("small_diameter", 10, LargestError("diameter_error_limit", None)),
        Measured("length", 50, LargestError("length_error_limit", 0.01)),
    )
    budget = budget_of(half_angle, *inputs)
    assert budget.not_stated == ("diameter_error_limit",)
    assert [(c.name, c.of) for c in budget.contributions] == [("length_error_limit", None)]


def test_inputs_that_share_a_field_are_told_apart() -> None:
    """Each contribution bears the name of the field that states it, and of which input it is."""
    shared = LargestError("diameter_error_limit", 0.01)
    budget = budget_of(
        half_angle,
        Measured("large_diameter", 20, shared),
        Measured("small_diameter", 10, shared),
        Measured("length", 50, LargestError("length_error_limit", 0.01)),
    )
    assert [(c.name, c.of) for c in budget.contributions] == [
        ("diameter_error_limit", "large_diameter"),
        ("diameter_error_limit", "small_diameter"),
        ("length_error_limit", None),
    ]


def test_an_error_of_none_keeps_its_sensitivity() -> None:
    """An error stated as 0 adds nothing; its sensitivity is still the derivative."""
    budget = budget_of(math.sin, Measured("angle", 0.5, LargestError("angle_tolerance", 0.0)))
    assert budget.standard_uncertainty == 0.0
    assert budget.contributions[0].sensitivity == pytest.approx(math.cos(0.5), rel=1e-9)


def test_an_error_that_swallows_its_value_is_refused() -> None:
    """An error that reaches past where the value means something is refused by its field."""
    with pytest.raises(Impossible, match=r"An error of 3.units in length swallows") as refused:
        budget_of(
            math.sqrt, Measured("length", 2.0, LargestError("length_error_limit", 3.0), above=0.0)
        )
    assert refused.value.fields == {"length_error_limit": "should be less than 3\u00a0units"}
