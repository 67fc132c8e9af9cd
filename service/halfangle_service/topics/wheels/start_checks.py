"""Usual checks before starting a wheel, from the table beside this module."""

import tomllib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files


@dataclass(frozen=True, slots=True)
class StartCheck:
    """One check with its source and its standing."""

    what: str
    source: str
    how: str


@cache
def start_checks() -> tuple[StartCheck, ...]:
    """Give the checks in their order; raises ValueError where one lacks its source."""
    folder = files("halfangle_service.topics.wheels")
    rows = tomllib.loads(folder.joinpath("before_starting.toml").read_text("utf-8"))["check"]
    checks = tuple(StartCheck(row["what"], row["source"], row["how"]) for row in rows)
    if not all(check.source and check.how for check in checks):
        raise ValueError("a check before starting has no source")
    return checks
