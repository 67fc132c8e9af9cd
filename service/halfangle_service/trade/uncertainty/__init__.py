"""Uncertainty for every topic: budgets (JCGM 100), Monte Carlo (JCGM 101), decision rules."""

from halfangle_service.trade.uncertainty.budget import (
    DIVISOR,
    Budget,
    Contribution,
    Distribution,
    coverage_factor,
)
from halfangle_service.trade.uncertainty.decision import Verdict, decide
from halfangle_service.trade.uncertainty.monte_carlo import Sample, draw, summarise

__all__ = [
    "DIVISOR",
    "Budget",
    "Contribution",
    "Distribution",
    "Sample",
    "Verdict",
    "coverage_factor",
    "decide",
    "draw",
    "summarise",
]
