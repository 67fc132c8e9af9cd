"""Figures of an answer with their units, rounded to what a person reads; JSON keeps all digits."""

import math
from collections.abc import Sequence
from typing import Any

_ABSENT = "–"
#: Sign of each unit of the contract; `{}` is the request's own unit of length.
_SIGNS = {
    "length": " {}", "degree": "°", "arcsecond": "″", "percent": " %", "celsius": " °C",
    "minute": " min", "second": " s", "millimetre": " mm", "micrometre": " µm", "nanometre": " nm",
    "microradian": " µrad", "metre_per_second": " m/s", "foot_per_minute": " ft/min",
    "per_minute": "/min", "inch_per_foot": " in/ft", "length_per_minute": " {}/min",
    "arcsecond_per_length": "″/{}", "per_kelvin": "/K", "kilogram": " kg",
    "year": " years",
}  # fmt: skip
_DECIMALS = {
    "degree": 6, "arcsecond": 2, "percent": 1, "celsius": 2, "minute": 2, "second": 2,
    "per_kelvin": 7, "foot_per_minute": 1, "metre_per_second": 2, "nanometre": 1,
    "arcsecond_per_length": 1,
}  # fmt: skip
_LENGTH_DECIMALS = {"in": 6, "mm": 5}
_OTHER_DECIMALS = 6
#: A figure smaller than its last decimal still shows so many digits.
_LEAST_DIGITS = 3
#: But none past so many further decimals: there it is a matter of rounding, and nothing.
_FINER = 3
_LARGEST = 1e15
#: Ends of names that say the unit that stands beside the figure.
_SAID = ("_arcsec", "_celsius", "_percent")


def figure(value: Any, unit: str, units: str) -> str:
    """Write one value with its unit; `units` are those of the request.

    >>> figure(2.5000000000000004, "length", "in"), figure(0.00000123456, "length", "in")
    ('2.5 in', '0.00000123 in')
    """
    if value is None:
        return _ABSENT
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, int | float):
        return str(value)
    return f"{_rounded(value, _decimals(unit, units))}{_sign(unit, units)}"


def figures(values: Sequence[float | None], unit: str, units: str) -> str:
    """Write several values of one unit, which is said once, and where one is not known.

    >>> figures([2, None, 0.5], "length", "in")
    '2, –, 0.5 in'
    """
    places = _decimals(unit, units)
    written = ", ".join(_ABSENT if value is None else _rounded(value, places) for value in values)
    return f"{written}{_sign(unit, units)}"


def spoken(name: str) -> str:
    """A field's name as words, less the unit that its figure carries.

    >>> spoken("deviation_arcsec"), spoken("arcsec_per_step")
    ('deviation', 'arcsec per step')
    """
    for end in _SAID:
        name = name.removesuffix(end)
    return name.replace("_", " ")


def is_angle(value: Any) -> bool:
    """Whether a value is an angle in its two forms."""
    return (
        isinstance(value, dict)
        and value.keys() == {"degrees", "dms"}
        and isinstance(value["dms"], str)
    )


def angle(value: dict[str, Any]) -> str:
    """Both forms of an angle."""
    return f"{value['dms']}  ({_rounded(value['degrees'], _DECIMALS['degree'])}°)"


def _sign(unit: str, units: str) -> str:
    """The sign of a unit; none for a length of which nobody said in what."""
    sign = _SIGNS.get(unit, "")
    return sign.format(units) if units or "{}" not in sign else ""


def _decimals(unit: str, units: str) -> int:
    if unit == "length":
        return _LENGTH_DECIMALS.get(units, _OTHER_DECIMALS)
    return _DECIMALS.get(unit, _OTHER_DECIMALS)


def _rounded(value: float, decimals: int) -> str:
    """Round, without an exponent and without zeros at the end."""
    if isinstance(value, int):
        return str(value)
    if abs(value) >= _LARGEST:
        return f"{value:.6g}"
    if value != 0.0:
        wanted = _LEAST_DIGITS - 1 - math.floor(math.log10(abs(value)))
        decimals = max(decimals, min(wanted, decimals + _FINER))
    text = f"{value:.{decimals}f}"
    if "." in text:
        text = text.rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text
