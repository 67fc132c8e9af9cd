"""Terms of runout, from the table beside this module."""

from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing

TermKey = Literal[
    "tir",
    "eccentricity",
    "concentricity-zone-diameter",
    "coaxiality-zone-diameter",
    "circular-runout",
    "total-runout",
]
TermScope = Literal["section", "feature"]
Family = Literal["movement", "offset", "median", "total"]


@dataclass(frozen=True, slots=True)
class Term:
    """One term: its definition, and whether one value speaks of a section or the whole feature."""

    key: TermKey
    name: str
    definition: str
    scope: TermScope
    family: Family
    source: str
    standing: Standing

    @property
    def per_eccentricity(self) -> float:
        """Value of an offset term for an eccentricity of 1: a zone is a diameter."""
        return 1.0 if self.key == "eccentricity" else 2.0


@cache
def terms() -> dict[str, Term]:
    """Give every term by its key."""
    return {row["key"]: _read(row) for row in read_rows(__name__, "terms.toml", "term")}


def _read(row: dict[str, Any]) -> Term:
    return Term(
        key=row["key"],
        name=row["name"],
        definition=row["definition"],
        scope=row["scope"],
        family=row["family"],
        source=citation(row),
        standing=standing(row),
    )
