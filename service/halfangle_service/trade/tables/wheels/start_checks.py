"""Usual checks before starting a wheel, from the table beside this module."""

from dataclasses import dataclass
from functools import cache

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing


@dataclass(frozen=True, slots=True)
class StartCheck:
    """One check with its source and its standing."""

    action: str
    source: str
    standing: Standing


@cache
def start_checks() -> tuple[StartCheck, ...]:
    """Give the checks in their order."""
    rows = read_rows(__name__, "before_starting.toml", "check")
    return tuple(StartCheck(row["action"], citation(row), standing(row)) for row in rows)
