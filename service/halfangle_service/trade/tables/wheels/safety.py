"""Rules for the safety of grinding wheels with their clauses, from the table beside this module."""

from dataclasses import dataclass
from functools import cache

from halfangle_service.trade.tables.loader import Standing, citation, read_rows, standing


@dataclass(frozen=True, slots=True)
class SafetyRule:
    """One rule in our own words: what of, for which machines, and where it stands."""

    key: str
    subject: str
    applies_to: str
    rule: str
    source: str
    clause: str
    edition: str
    standing: Standing


@cache
def safety_rules() -> dict[str, SafetyRule]:
    """Give every rule by its key, in the table's order."""
    return {
        row["key"]: SafetyRule(
            key=row["key"],
            subject=row["subject"],
            applies_to=row["applies_to"],
            rule=row["rule"],
            source=citation(row),
            clause=row["clause"],
            edition=row["edition"],
            standing=standing(row),
        )
        for row in read_rows(__name__, "safety.toml", "rule")
    }
