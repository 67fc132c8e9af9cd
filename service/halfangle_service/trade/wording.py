"""Figures in sentences: one way to write each kind of number for a person, never an exponent.

Answers carry full precision in their fields; a sentence carries what can be set or read.
"""

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from decimal import Decimal

from halfangle_service.trade.angles import format_dms
from halfangle_service.trade.columns import Column, in_words
from halfangle_service.trade.units import Units

_DECIMALS: dict[Units, int] = {"in": 4, "mm": 3}
#: Decimals that are worth showing at the bench, by unit: a length to a tenth of the bench step, an
#: angle to a tenth of a second of arc, the rest to what can be read or set.
BENCH_DECIMALS: dict[str, int | dict[Units, int]] = {
    "length": {units: decimals + 1 for units, decimals in _DECIMALS.items()},
    "length_per_minute": {"in": 2, "mm": 1},
    "volume": {"in": 5, "mm": 2},
    "degree": 5,
    "arcsecond": 1,
    "arcsecond_per_length": 0,
    "microradian": 1,
    "millimetre": 4,
    "micrometre": 2,
    "nanometre": 0,
    "inch_per_foot": 5,
    "length_per_length": 6,
    "metre_per_second": 1,
    "foot_per_minute": 0,
    "per_minute": 0,
    "celsius": 1,
    "percent": 1,
    "kilogram": 1,
    "newton": 0,
    "year": 1,
    "per_kelvin": 8,
    "minute": 1,
    "second": 0,
    "count": 0,
    "1": 5,
}


def plain(value: float, digits: int = 6) -> str:
    """Write a number of any unit: so many significant digits, no exponent, no empty decimals.

    >>> plain(0.00005), plain(2.5), plain(-12_000_000_000.0), plain(-0.0)
    ('0.00005', '2.5', '-12000000000', '0')
    """
    if isinstance(value, Column):
        return in_words(plain, value, digits)
    return format(Decimal(format(value + 0.0, f".{digits}g")), "f")


def length(value: float, units: Units) -> str:
    """Write a length to the bench step, 0.0001 in or 0.001 mm, with its unit.

    >>> length(2.23606798, "in")
    '2.2361 in'
    """
    return f"{value:z.{_DECIMALS[units]}f} {units}"


#: Stands for the unit in a sentence of maths that works in any one unit; reads as it is, too.
_ANY_UNIT = "\u00a0units"
_IN_ANY_UNIT = re.compile(rf"(-?\d+(?:\.\d+)?){_ANY_UNIT}")


def of_any_unit(value: float) -> str:
    r"""Write a length where its unit is not known; `said_in` puts in unit and digits later.

    >>> of_any_unit(7.0)
    '7\xa0units'
    """
    return f"{plain(value, 15)}{_ANY_UNIT}"


def said_in(sentence: str, units: Units) -> str:
    """Write a sentence with the lengths of `of_any_unit` in a unit, as `figure` does.

    >>> said_in(f"At most {of_any_unit(0.0729089123)}.", "in")
    'At most 0.07291 in.'
    """
    return _IN_ANY_UNIT.sub(lambda found: figure(float(found[1]), units), sentence)


def figure(value: float, units: Units) -> str:
    """Write a length to a tenth of the bench step, no empty decimals; a smaller one to 2 digits.

    >>> figure(55.0, "in"), figure(0.072908912, "in"), figure(0.00000123, "in")
    ('55 in', '0.07291 in', '0.0000012 in')
    """
    if isinstance(value, Column):
        return in_words(figure, value, units)
    rounded = round(value, _DECIMALS[units] + 1)
    return f"{plain(rounded, 7) if rounded else plain(value, 2)} {units}"


def small_length(value: float, units: Units) -> str:
    """Write a length to a tenth of the bench step, for runout and steps of feed.

    >>> small_length(0.00023094, "in")
    '0.00023 in'
    """
    return f"{value:z.{_DECIMALS[units] + 1}f} {units}"


def block(size: float, units: Units) -> str:
    """Write a block by its nominal size, with no more digits than it has.

    >>> block(0.1003, "in"), block(1.0, "mm")
    ('0.1003', '1')
    """
    if isinstance(size, Column):
        return in_words(block, size, units)
    return f"{size:.{_DECIMALS[units] + 2}f}".rstrip("0").rstrip(".")


def stack(blocks: tuple[float, ...], units: Units) -> str:
    """Write blocks joined by plus signs, with the unit.

    >>> stack((2.0, 0.5), "in")
    '2 + 0.5 in'
    """
    return f"{' + '.join(block(size, units) for size in blocks)} {units}"


def option(token: str) -> str:
    """Write an option as a sentence has it.

    >>> option("in-use")
    'in use'
    """
    return token.replace("-", " ")


def degrees(angle_degrees: float, tolerance_arcsec: float = 0.0) -> str:
    r"""Write an angle in degrees, minutes and seconds, to the second that its tolerance asks for.

    >>> degrees(22.5), degrees(22.5, 20.0), degrees(22.5, 120.0)
    ('22°30\'00.00"', '22°30\'00.0"', '22°30\'00"')
    """
    if isinstance(angle_degrees, Column) or isinstance(tolerance_arcsec, Column):
        return in_words(degrees, angle_degrees, tolerance_arcsec)
    return format_dms(angle_degrees, _decimals_for(tolerance_arcsec))


def _decimals_for(tolerance_arcsec: float) -> int:
    """Decimals of the seconds with which rounding takes no more than 1 % of a tolerance."""
    return 0 if tolerance_arcsec >= 50.0 else 1 if tolerance_arcsec >= 5.0 else 2


def arcsec(angle_arcsec: float, digits: int = 1) -> str:
    """Write a small angle in seconds of arc to so many decimals; its sign stays, but on zero.

    >>> arcsec(-12.345), arcsec(-0.04)
    ('-12.3″', '0.0″')
    """
    return f"{angle_arcsec:z.{digits}f}″"


def percent(share_percent: float) -> str:
    """Write a share to whole percents, below ten to one decimal.

    >>> percent(41.7), percent(0.35)
    ('42 %', '0.3 %')
    """
    if isinstance(share_percent, Column):
        return in_words(percent, share_percent)
    return f"{share_percent:z.{0 if abs(share_percent) >= 9.95 else 1}f} %"


def told_apart(names: Iterable[str]) -> Iterator[str]:
    """Names in their order, one that came before with its number.

    >>> list(told_apart(["0.5", "0.1", "0.5"]))
    ['0.5', '0.1', '0.5 (2)']
    """
    seen: Counter[str] = Counter()
    for name in names:
        seen[name] += 1
        yield name if seen[name] == 1 else f"{name} ({seen[name]})"
