"""Uncertainty for every topic: budgets (JCGM 100), Monte Carlo (JCGM 101), judgements."""

from halfangle_service.trade.uncertainty.budget import (
    DIVISOR,
    Budget,
    Contribution,
    Distribution,
    budget_as_stated,
    coverage_factor,
)
from halfangle_service.trade.uncertainty.decision import (
    DecisionRule,
    Forecast,
    Verdict,
    VerdictRule,
    forecast_by,
    forecast_of,
    shortfall,
    smallest_limit,
    together,
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
    "VerdictRule",
    "budget_as_stated",
    "budget_of",
    "coverage_factor",
    "draw",
    "forecast_by",
    "forecast_of",
    "shortfall",
    "smallest_limit",
    "summarise",
    "together",
    "verdict_of",
]
