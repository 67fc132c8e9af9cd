"""The checks to make on a ground center, and which of them would catch a wrong block.

A check catches a wrong block when the smallest single mistake with this stack shows more than the
check can tell apart. What each means of measuring can tell apart is common practice, no source, and
stands in the text of the check. Lengths in one unit, angles as named.
"""

import math
from dataclasses import dataclass

from halfangle_service.fields import Units
from halfangle_service.topics.jobs.wording import Wording

#: An optical projector or toolmaker's microscope tells angles apart to about one minute of arc.
OPTICAL_ARCSEC = 60.0
#: A micrometer, or a comparison with an indicator, tells lengths apart to about two bench steps
#: and one bench step.
MICROMETER_STEPS = 2.0
COMPARATOR_STEPS = 1.0
#: Rolls are raised by about half the cone's length, in round sizes of block: 0.05 in or 1 mm.
ROLLS_SPAN = 0.5
ROUND_RISE: dict[Units, float] = {"in": 0.05, "mm": 1.0}


@dataclass(frozen=True, slots=True)
class CheckFacts:
    """What the checks compare.

    `mistake_height` and `mistake_arcsec` (on the included angle) are those of the smallest wrong
    block, both None where no other block could be taken.
    """

    bench_step: float
    stack_height: float
    second_stack: str | None
    half_angle_rad: float
    cone_length: float
    cone_limit_tir: float
    mistake_height: float | None
    mistake_arcsec: float | None


@dataclass(frozen=True, slots=True)
class Check:
    """One check and what it is worth against a wrong block."""

    check: str
    how: str
    expected: str
    catches_wrong_block: bool
    why: str


def planned_checks(facts: CheckFacts, words: Wording) -> tuple[Check, ...]:
    """Give the checks, in the order in which to make them."""
    return (
        _measured_stack(facts, words),
        *_second_stack(facts, words),
        _same_setting(),
        _over_rolls(facts, words),
        _optical(facts, words),
        _runout(facts, words),
    )


def _measured_stack(facts: CheckFacts, words: Wording) -> Check:
    least = MICROMETER_STEPS * facts.bench_step
    return _length_check(
        facts,
        words,
        check="Measure the wrung stack",
        how="With a micrometer or on a comparator, before it goes under the plate.",
        expected=words.length(facts.stack_height),
        least=least,
    )


def _second_stack(facts: CheckFacts, words: Wording) -> tuple[Check, ...]:
    if facts.second_stack is None:
        return ()
    check = _length_check(
        facts,
        words,
        check="Compare with a second stack",
        how=f"Wring {facts.second_stack}, set both on one surface and pass an indicator over them.",
        expected="no difference",
        least=COMPARATOR_STEPS * facts.bench_step,
    )
    return (check,)


def _length_check(
    facts: CheckFacts, words: Wording, *, check: str, how: str, expected: str, least: float
) -> Check:
    """A check that compares lengths: it catches a mistake larger than it can tell apart."""
    if facts.mistake_height is None:
        return Check(check, how, expected, True, "No other block could have been taken.")
    size = words.length(abs(facts.mistake_height))
    catches = abs(facts.mistake_height) > 0.999_999 * least
    verb = "more than" if catches else "within"
    why = f"The smallest mistake is {size}, {verb} the {words.length(least)} that this tells apart."
    return Check(check, how, expected, catches, why)


def _same_setting() -> Check:
    return Check(
        "Run an indicator along the cone on the same setting",
        "Wheel stopped and clear, the work still on the plate.",
        "no slope along the slant",
        False,
        "It shows breakdown of the wheel's face, but a wrong stack tilts the work and the check "
        "alike.",
    )


def _over_rolls(facts: CheckFacts, words: Wording) -> Check:
    """Readings over two equal rolls at two heights: ΔM = 2 H tan α, dα = cos²α dM / (2 H)."""
    rounded = ROUND_RISE[words.units]
    rise = max(1.0, math.floor(ROLLS_SPAN * facts.cone_length / rounded)) * rounded
    difference = 2.0 * rise * math.tan(facts.half_angle_rad)
    reading = MICROMETER_STEPS * facts.bench_step
    least_rad = math.cos(facts.half_angle_rad) ** 2 * reading / rise
    return _angle_check(
        facts,
        words,
        check="Measure the cone over two equal rolls at two heights",
        how=f"Cone upright; rolls on the surface plate, then raised by {words.length(rise)} on "
        "blocks that were not in the stack.",
        expected=f"readings that differ by {words.length(difference)}",
        least_arcsec=math.degrees(least_rad) * 3600.0,
    )


def _optical(facts: CheckFacts, words: Wording) -> Check:
    degrees = 2.0 * math.degrees(facts.half_angle_rad)
    return _angle_check(
        facts,
        words,
        check="Measure the included angle optically",
        how="On a projector or microscope whose own angle is known.",
        expected=words.degrees(degrees),
        least_arcsec=OPTICAL_ARCSEC,
    )


def _angle_check(
    facts: CheckFacts, words: Wording, *, check: str, how: str, expected: str, least_arcsec: float
) -> Check:
    """A check of the ground angle itself: it shares nothing with the setting."""
    if facts.mistake_arcsec is None:
        return Check(check, how, expected, True, "No other block could have been taken.")
    catches = abs(facts.mistake_arcsec) > least_arcsec
    verb = "more than" if catches else "within"
    why = (
        f"The smallest mistake turns the included angle by {words.arcsec(facts.mistake_arcsec)}, "
        f"{verb} the {words.arcsec(least_arcsec)} that this tells apart."
    )
    return Check(check, how, expected, catches, why)


def _runout(facts: CheckFacts, words: Wording) -> Check:
    return Check(
        "Indicate the cone square to its surface, the shank turning in its adapter",
        "At the large end and near the point.",
        f"no more than {words.small_length(facts.cone_limit_tir)} TIR",
        False,
        "It shows runout; a cone of the wrong angle runs just as true.",
    )
