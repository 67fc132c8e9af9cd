"""Figures on a sheet: to what can be set or read, and limits never wider than they are."""

import math

from halfangle_service.fields.glossary import option_labels, title_of
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import (
    BENCH_DECIMALS,
    arcsec,
    degrees,
    plain,
    small_length,
)
from halfangle_service.trade.wording import length as bench_length

#: Longest text of a caller's that is shown whole in a heading.
LONGEST_NAME = 90
_UNIT_SIGNS = {
    "degree": "°",
    "coarse-degree": "°",
    "second": " s",
    "arcsecond": "″",
    "percent": " %",
    "celsius": " °C",
    "minute": " min",
    "per_minute": " /min",
    "metre_per_second": " m/s",
    "foot_per_minute": " ft/min",
    "micrometre": " µm",
    "millimetre": " mm",
}


def primes(text: str) -> str:
    r"""Degrees, minutes and seconds with their own signs.

    >>> primes("30°15'20\"")
    '30°15′20″'
    """
    return text.replace('"', "″").replace("'", "′")


def angle(angle_degrees: float, tolerance_arcsec: float = 0.0) -> str:
    """An angle to the second that its tolerance asks for."""
    return primes(degrees(angle_degrees, tolerance_arcsec))


def length(value: float, units: Units) -> str:
    """A length to the bench step."""
    return bench_length(value, units)


def plus_minus(value_arcsec: float) -> str:
    """A tolerance of an angle.

    >>> plus_minus(120.0), plus_minus(7.5)
    ('±120″', '±7.5″')
    """
    return f"±{plain(value_arcsec)}″"


def quantity(value: float, unit: str, units: Units | None) -> str:
    """A value of any unit, as `x-unit` names it, to what can be set or read."""
    if unit == "length" and units is not None:
        return signed(small_length(value, units))
    if unit == "degree":
        return signed(angle(value))
    if unit == "arcsecond":
        return signed(arcsec(value))
    decimals = 1 if unit == "coarse-degree" else BENCH_DECIMALS.get(unit, 5)
    digits = decimals if isinstance(decimals, int) else decimals[units or "mm"]
    of_length = {"length_per_minute": f" {units}/min", "volume": f" {units}³"} if units else {}
    return signed(plain(round(value, digits), 8)) + (_UNIT_SIGNS | of_length).get(unit, "")


def signed(figure: str) -> str:
    """A figure with a minus sign, not a hyphen.

    >>> signed("-1.3″")
    '−1.3″'
    """
    return figure.replace("-", "−")


def between(
    low: float | None, high: float | None, unit: str, units: Units, tolerance_arcsec: float = 0.0
) -> str:
    """Two limits, rounded inward, so that nothing past them reads as within them.

    >>> between(0.123456, 0.234567, "length", "in")
    '0.12346 … 0.23456 in'
    """
    if low is None or high is None:
        return ""
    if unit == "degree":
        step = 3600.0 if tolerance_arcsec >= 50.0 else 36000.0
        inward = (math.ceil(low * step - 1e-6) / step, math.floor(high * step + 1e-6) / step)
        return " … ".join(angle(limit, tolerance_arcsec or 50.0) for limit in inward)
    decimals = BENCH_DECIMALS.get(unit, 5)
    digits = decimals if isinstance(decimals, int) else decimals[units]
    step = 10.0**digits
    least, most = math.ceil(low * step - 1e-6) / step, math.floor(high * step + 1e-6) / step
    sign = f" {units}" if unit == "length" else _UNIT_SIGNS.get(unit, "")
    return f"{least:z.{digits}f} … {most:z.{digits}f}{sign}".replace("-", "−")


def named(path: str) -> str:
    """What a field, given by its path, or an option is called.

    >>> named("feeding/dial_error_limit"), named("second-stack")
    ('Dial error limit', 'A second stack compared')
    """
    name = path.rpartition("/")[2]
    label = option_labels().get(name) or title_of(name.replace("-", "_"))
    return label.removeprefix("The ")[:1].upper() + label.removeprefix("The ")[1:]


def cut(text: str, most: int = LONGEST_NAME) -> str:
    """A text of a caller's for a heading, cut with a mark where it is longer.

    >>> cut("abcdef", 4)
    'abc…'
    """
    return text if len(text) <= most else text[: most - 1].rstrip() + "…"
