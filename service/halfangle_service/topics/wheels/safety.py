"""Rules for the safety of grinding wheels, with their clauses."""

from dataclasses import asdict

from pydantic import Field

from halfangle_service.fields import ResultModel
from halfangle_service.operation import published_table
from halfangle_service.trade.tables.loader import Standing
from halfangle_service.trade.tables.wheels.safety import safety_rules


class WheelSafetyRule(ResultModel):
    """One rule, in our own words."""

    key: str = Field(description="Key of the row.", examples=["opening-surface"])
    subject: str = Field(description="What it is about.")
    applies_to: str = Field(description="Machines, wheels or work that it is for.")
    rule: str = Field(description="The rule in our own words; the text in force comes first.")
    source: str = Field(description="Regulation or standard, with the clause.")
    clause: str = Field(description="Clause, and how its text was had.")
    edition: str = Field(description="Edition read; `not known` where it was not told.")
    standing: Standing = Field(description="How it is known.")


@published_table("wheels.safety-rules", singular="safety-rule", key="key")
def wheel_safety() -> dict[str, WheelSafetyRule]:
    """Safety rules of grinding wheels.

    Guards, openings, rests, ring test, flanges and marked speeds, each with its clause, in our own
    words. No advice of law: the text in force, the wheel's marks and qualified people come first.
    """
    return {key: WheelSafetyRule(**asdict(row)) for key, row in safety_rules().items()}
