"""Decision rule after ISO 14253-1 and JCGM 106: conforming, not conforming, or undecided."""

from typing import Literal

Verdict = Literal["conforming", "not conforming", "neither can be said"]


def decide(
    value: float, lower: float, upper: float, guard_band: float, tolerance: float = 0.0
) -> Verdict:
    """Judge a measured value against its limits, all in one unit.

    The acceptance zone is the specification zone less the guard band on either side, the rejection
    zone lies beyond the limits by the guard band (ISO 14253-1:2017, 5 and 6, from memory); between
    them neither can be said. `tolerance` is slack for rounding, zero unless stated.
    """
    if lower + guard_band - tolerance <= value <= upper - guard_band + tolerance:
        return "conforming"
    if value < lower - guard_band or value > upper + guard_band:
        return "not conforming"
    return "neither can be said"
