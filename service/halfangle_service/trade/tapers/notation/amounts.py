"""Numbers, fractions and units of length in a notation, exactly."""

import re
from fractions import Fraction

from halfangle_service.errors import Impossible

NUMBER = r"(?:[0-9]{1,6}(?:\.[0-9]{1,12})?|\.[0-9]{1,12})"
FRACTION = r"(?:[0-9]{1,4}[ -])?[0-9]{1,4}/[0-9]{1,4}"
AMOUNT = rf"(?:{FRACTION}|{NUMBER})"
#: One unit of each in inches.
_INCHES = {
    "in": Fraction(1),
    "ft": Fraction(12),
    "mm": Fraction(10, 254),
    "cm": Fraction(100, 254),
    "m": Fraction(10_000, 254),
}
_SPELLINGS = {
    "in": ("inches", "inch", "in.", "in", '"'),
    "ft": ("foot", "feet", "ft.", "ft"),
    "mm": ("millimetres", "millimeters", "millimetre", "millimeter", "mm"),
    "cm": ("centimetres", "centimeters", "centimetre", "centimeter", "cm"),
    "m": ("metres", "meters", "metre", "meter", "m"),
}
_UNIT_OF = {spelling: unit for unit, spellings in _SPELLINGS.items() for spelling in spellings}
UNIT = "(?:" + "|".join(re.escape(s) for s in sorted(_UNIT_OF, key=len, reverse=True)) + ")"


def amount(text: str) -> Fraction:
    """A number, a fraction or a mixed one, exactly; raises Impossible at a denominator of 0.

    >>> amount("1 1/2"), amount(".602")
    (Fraction(3, 2), Fraction(301, 500))
    """
    whole, _, rest = text.replace("-", " ").rpartition(" ")
    top, _, bottom = rest.partition("/")
    return Fraction(whole or 0) + over(Fraction(top), Fraction(bottom or 1))


def over(top: Fraction, bottom: Fraction) -> Fraction:
    """A quotient; raises Impossible where it would divide by 0."""
    if bottom == 0:
        raise Impossible("A length or denominator of 0.", fields={"text": "should not divide by 0"})
    return top / bottom


def unit_of(spelling: str) -> str:
    """The unit, in, ft, mm, cm or m, that a spelling means."""
    return _UNIT_OF[spelling]


def in_inches(unit: str) -> Fraction:
    """One of a unit in inches, exactly."""
    return _INCHES[unit]
