"""The checks to make on a ground center, and which of them would catch a wrong block.

A check catches a wrong block when the smallest single mistake with this stack shows more than the
check can tell apart. What each means of measuring can tell apart is common practice, no source, and
stands in the text of the check. Lengths in one unit, angles as named.
"""

import math
from dataclasses import dataclass

from pydantic import Field

from halfangle_service.fields import ResultModel, Units, bench_step
from halfangle_service.trade.wording import arcsec, degrees, length, small_length

#: An optical projector or toolmaker's microscope tells angles apart to about one minute of arc.
OPTICAL_ARCSEC = 60.0
#: A micrometer, or a comparison with an indicator, tells lengths apart to about two bench steps
#: and one bench step.
MICROMETER_STEPS = 2.0
COMPARATOR_STEPS = 1.0
#: Rolls are raised by about half the cone's length, in round sizes of block: 0.05 in or 1 mm.
ROLLS_SPAN = 0.5
ROUND_RISE: dict[Units, float] = {"in": 0.05, "mm": 1.0}
_NO_OTHER = "No other block could have been taken."


class PlanCheck(ResultModel):
    """One check, and whether it would catch a wrong block in the stack."""

    check: str = Field(description="What to check.")
    how: str = Field(description="How the check is made.")
    expected: str = Field(description="What to expect.")
    catches_wrong_block: bool = Field(
        description="Whether it would show the smallest wrong-block mistake of this stack."
    )
    why: str = Field(description="Why it would, or would not.")


@dataclass(frozen=True, slots=True)
class CheckFacts:
    """What the checks compare, lengths in `units`.

    `mistake_height` and `mistake_arcsec` (on the included angle) are those of the smallest wrong
    block, both None where no other block could be taken.
    """

    units: Units
    stack_height: float
    second_stack: str | None
    half_angle_rad: float
    cone_length: float
    cone_limit_tir: float
    mistake_height: float | None
    mistake_arcsec: float | None


def planned_checks(facts: CheckFacts) -> list[PlanCheck]:
    """Give the checks, in the order in which to make them."""
    return [
        _measured_stack(facts),
        *_second_stack(facts),
        _same_setting(),
        _over_rolls(facts),
        _optical(facts),
        _runout(facts),
    ]


def _measured_stack(facts: CheckFacts) -> PlanCheck:
    return _length_check(
        facts,
        check="Measure the wrung stack",
        how="With a micrometer or on a comparator, before it goes under the plate.",
        expected=length(facts.stack_height, facts.units),
        least=MICROMETER_STEPS * bench_step(facts.units),
    )


def _second_stack(facts: CheckFacts) -> tuple[PlanCheck, ...]:
    if facts.second_stack is None:
        return ()
    check = _length_check(
        facts,
        check="Compare with a second stack",
        how=f"Wring {facts.second_stack}, set both on one surface and pass an indicator over them.",
        expected="no difference",
        least=COMPARATOR_STEPS * bench_step(facts.units),
    )
    return (check,)


def _length_check(
    facts: CheckFacts, *, check: str, how: str, expected: str, least: float
) -> PlanCheck:
    """A check that compares lengths: it catches a mistake larger than it can tell apart."""
    mistake, catches, why = facts.mistake_height, True, _NO_OTHER
    if mistake is not None:
        size = length(abs(mistake), facts.units)
        catches = abs(mistake) > 0.999_999 * least
        why = (
            f"The smallest mistake is {size}, {_against(catches)} the "
            f"{length(least, facts.units)} that this tells apart."
        )
    return PlanCheck(check=check, how=how, expected=expected, catches_wrong_block=catches, why=why)


def _same_setting() -> PlanCheck:
    return PlanCheck(
        check="Run an indicator along the cone on the same setting",
        how="Wheel stopped and clear, the work still on the plate.",
        expected="no slope along the slant",
        catches_wrong_block=False,
        why="It shows breakdown of the wheel's face, but a wrong stack tilts the work and the "
        "check alike.",
    )


def _over_rolls(facts: CheckFacts) -> PlanCheck:
    """Readings over two equal rolls at two heights: ΔM = 2 H tan α, dα = cos²α dM / (2 H)."""
    rounded = ROUND_RISE[facts.units]
    rise = max(1.0, math.floor(ROLLS_SPAN * facts.cone_length / rounded)) * rounded
    difference = 2.0 * rise * math.tan(facts.half_angle_rad)
    reading = MICROMETER_STEPS * bench_step(facts.units)
    least_rad = math.cos(facts.half_angle_rad) ** 2 * reading / rise
    return _angle_check(
        facts,
        check="Measure the cone over two equal rolls at two heights",
        how=f"Cone upright; rolls on the surface plate, then raised by {length(rise, facts.units)} "
        "on blocks that were not in the stack.",
        expected=f"readings that differ by {length(difference, facts.units)}",
        least_arcsec=math.degrees(least_rad) * 3600.0,
    )


def _optical(facts: CheckFacts) -> PlanCheck:
    return _angle_check(
        facts,
        check="Measure the included angle optically",
        how="On a projector or microscope whose own angle is known.",
        expected=degrees(2.0 * math.degrees(facts.half_angle_rad)),
        least_arcsec=OPTICAL_ARCSEC,
    )


def _angle_check(
    facts: CheckFacts, *, check: str, how: str, expected: str, least_arcsec: float
) -> PlanCheck:
    """A check of the ground angle itself: it shares nothing with the setting."""
    mistake, catches, why = facts.mistake_arcsec, True, _NO_OTHER
    if mistake is not None:
        catches = abs(mistake) > least_arcsec
        why = (
            f"The smallest mistake turns the included angle by {arcsec(abs(mistake))}, "
            f"{_against(catches)} the {arcsec(least_arcsec)} that this tells apart."
        )
    return PlanCheck(check=check, how=how, expected=expected, catches_wrong_block=catches, why=why)


def _against(catches: bool) -> str:
    return "more than" if catches else "within"


def _runout(facts: CheckFacts) -> PlanCheck:
    return PlanCheck(
        check="Indicate the cone square to its surface, the shank turning in its adapter",
        how="At the large end and near the point.",
        expected=f"no more than {small_length(facts.cone_limit_tir, facts.units)} TIR",
        catches_wrong_block=False,
        why="It shows runout; a cone of the wrong angle runs just as true.",
    )
