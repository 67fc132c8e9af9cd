"""The checks to make on a ground center, as the answer gives them.

What each means of measuring can tell apart is common practice, no source, and stands in the text of
the check.
"""

from collections.abc import Sequence
from dataclasses import asdict

from pydantic import Field

from halfangle_service.fields import ArcsecOut, LengthOut, ResultModel
from halfangle_service.trade.inspection.checks import Check


class PlanCheck(ResultModel):
    """One check: whether it would catch a wrong block, and whether it can prove a tolerance."""

    check: str = Field(description="What to check.")
    how: str = Field(description="How the check is made.")
    expected: str = Field(description="What to expect.")
    catches_wrong_block: bool | None = Field(
        description="Whether it would show the smallest mistake that takes the angle out of its "
        "tolerance; null where no single wrong block does."
    )
    reason: str = Field(description="Why it would, or would not.")
    proves_tolerance: bool = Field(
        description="Whether a reading of it can prove that the ground cone keeps the tolerance of "
        "its angle, or the limit of its runout."
    )
    proof: str = Field(description="What it can prove, in plain words.")
    acceptance_arcsec: ArcsecOut | None = Field(
        description="± error of the included angle, as read, within which it proves the angle's "
        "tolerance; null where it proves none."
    )
    acceptance_tir: LengthOut | None = Field(
        description="Reading up to which it proves the limit of the runout; null where it proves "
        "none."
    )


def planned_checks(checks: Sequence[Check]) -> list[PlanCheck]:
    """The checks as the answer gives them, in their order."""
    return [PlanCheck(**asdict(check)) for check in checks]
