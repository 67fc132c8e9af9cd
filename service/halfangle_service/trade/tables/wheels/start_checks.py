"""Usual checks before starting a wheel, from the table beside this module."""

from dataclasses import dataclass
from functools import cache

from halfangle_service.trade.tables.loader import read_table


@dataclass(frozen=True, slots=True)
class StartCheck:
    """One check with its source and its standing."""

    what: str
    source: str
    standing: str


@cache
def start_checks() -> tuple[StartCheck, ...]:
    """Give the checks in their order; raises ValueError where one lacks its source."""
    rows = read_table(__name__, "before_starting.toml")["check"]
    checks = tuple(StartCheck(row["what"], row["source"], row["standing"]) for row in rows)
    if not all(check.source and check.standing for check in checks):
        raise ValueError("a check before starting has no source")
    return checks
