"""Uncertainty for every topic: budgets (JCGM 100), Monte Carlo (JCGM 101), judgements."""

from halfangle_service.trade.uncertainty.budget import (
    DIVISOR,
    Budget,
    Contribution,
    Distribution,
    coverage_factor,
)
from halfangle_service.trade.uncertainty.decision import (
    DecisionRule,
    Forecast,
    Verdict,
    both,
    decide,
    forecast,
    forecast_of,
    shortfall,
    smallest_limit,
    verdict_of,
)
from halfangle_service.trade.uncertainty.measured import LargestError, Measured, budget_of
from halfangle_service.trade.uncertainty.monte_carlo import Sample, draw, summarise

__all__ = [
    "DIVISOR",
    "Budget",
    "Contribution",
    "DecisionRule",
    "Distribution",
    "Forecast",
    "LargestError",
    "Measured",
    "Sample",
    "Verdict",
    "both",
    "budget_of",
    "coverage_factor",
    "decide",
    "draw",
    "forecast",
    "forecast_of",
    "shortfall",
    "smallest_limit",
    "summarise",
    "verdict_of",
]
