"""Judgements against limits: a verdict on a measurement, a forecast of a plan; never one word.

The acceptance zone is the specification zone less the guard band on either side, the rejection
zone lies beyond the limits by the guard band (ISO 14253-1:2017, 5 and 6, from memory).
"""

from typing import Literal

#: On a measurement.
Verdict = Literal["conforming", "not-conforming", "not-provable"]
#: Of a plan.
Forecast = Literal["holds", "may-not-hold", "does-not-hold", "not-stated"]

_FORECASTS: dict[Verdict, Forecast] = {
    "conforming": "holds",
    "not-conforming": "does-not-hold",
    "not-provable": "may-not-hold",
}


def decide(
    value: float, lower: float, upper: float, guard_band: float, tolerance: float = 0.0
) -> Verdict:
    """Judge a measured value against its limits, all in one unit.

    Between acceptance and rejection zone neither can be proved. `tolerance` is slack for rounding,
    zero unless stated.
    """
    if lower + guard_band - tolerance <= value <= upper - guard_band + tolerance:
        return "conforming"
    if value < lower - guard_band or value > upper + guard_band:
        return "not-conforming"
    return "not-provable"


def forecast(
    value: float | None, lower: float, upper: float, spread: float | None, *, complete: bool = True
) -> Forecast:
    """Say of a plan whether a quantity will keep its limits, all in one unit.

    `value` is what is expected and `spread` how far off it may be either way; None where nothing
    was stated of them, and then nothing is said. Where `complete` is False some contribution was
    not stated: the limits may then be missed, and are never said to hold.
    """
    if value is None or spread is None:
        return "not-stated"
    found = _FORECASTS[decide(value, lower, upper, spread)]
    return "may-not-hold" if found == "holds" and not complete else found
