"""Estimates held against the law of propagation, worked out by hand."""

import math
from typing import Any

import numpy as np
import pytest

from support import assert_values


def assert_found(
    estimate: dict[str, Any], value: float, inputs: list[tuple[float, float]], unit: float = 1.0
) -> None:
    """A length found, of inputs (normal) with what each acts by: squares add, 1.96 covers 95 %.

    Of a direction, `unit` degrees for one of length across; half its width is asin(U/e), and its
    worst case the same of three deviations of each.
    """
    spreads = [abs(times) * spread * unit for spread, times in inputs]
    variance = math.fsum(spread**2 for spread in spreads)
    shown = estimate["value"]
    assert (shown["degrees"] if unit != 1.0 else shown) == pytest.approx(value, rel=1e-6)
    width, worst = 1.959964 * math.sqrt(variance), 3 * math.fsum(spreads)
    if unit != 1.0:
        width, worst = (math.degrees(math.asin(math.radians(x))) for x in (width, worst))
    expected = {
        "standard_uncertainty": math.sqrt(variance),
        "expanded_uncertainty": width,
        "coverage_factor": width / math.sqrt(variance),
        "coverage_probability": 0.95,
        "worst_case": worst,
    }
    assert_values(estimate, expected, rel=1e-5)
    for row, (spread, times), part in zip(estimate["contributions"], inputs, spreads, strict=True):
        figures = {
            "input_value": spread,
            "sensitivity": times * unit,
            "standard_uncertainty": part,
            "worst_case": 3 * part,
            "share_percent": 100 * part**2 / variance,
        }
        assert_values(row, figures, rel=1e-5)


def assert_budget(estimate: dict[str, Any], inputs: list[tuple[str, float, float]]) -> None:
    """A length found, of independent inputs: `normal` or `rectangular`, value, what it acts by.

    Squares add; 95 of 100 lie within the expanded uncertainty, drawn here by numpy.
    """
    divisors = {"normal": 1.0, "rectangular": math.sqrt(3.0)}
    spreads = [abs(times) * value / divisors[kind] for kind, value, times in inputs]
    whole = math.hypot(*spreads)
    farthest = [
        abs(times) * value * (3 if kind == "normal" else 1) for kind, value, times in inputs
    ]
    assert_values(
        estimate,
        {
            "standard_uncertainty": whole,
            "worst_case": math.fsum(farthest),
            "coverage_factor": estimate["expanded_uncertainty"] / whole,
            "coverage_probability": 0.95,
        },
    )
    for row, given, spread, far in zip(
        estimate["contributions"], inputs, spreads, farthest, strict=True
    ):
        assert row["distribution"] == given[0]
        figures = {
            "input_value": given[1],
            "sensitivity": given[2],
            "standard_uncertainty": spread,
            "worst_case": far,
            "share_percent": 100.0 * (spread / whole) ** 2,
        }
        assert_values(row, figures)
    rng = np.random.default_rng(95)
    drawn = sum(
        times
        * (
            rng.normal(0, value, 200_000)
            if kind == "normal"
            else rng.uniform(-value, value, 200_000)
        )
        for kind, value, times in inputs
    )
    within = np.mean(np.abs(drawn) <= estimate["expanded_uncertainty"])
    assert within == pytest.approx(0.95, abs=0.003)
