"""Numbers without the noise of their last bits: 0.12, not 0.12000000000000001.

A float holds 15 significant decimal digits for certain; what a sum or a product of short decimals
leaves beyond them says nothing. Any other number stays as it was calculated.
"""

import re
from decimal import Decimal

#: What is this near to a decimal of so many digits, as a share of itself, is that decimal.
_DIGITS, _NEAR = 10, 4e-15


def tidy(value: float, scale: float = 0.0) -> float:
    """Give a number of any unit as the short decimal that it is but for its last bits, or itself.

    A difference is noisy in more digits than a product: `scale`, in the same unit, is the largest
    number that it was made from.

    >>> tidy(3 * 0.04), tidy(1 / 3), 10 - 9.9999, tidy(10 - 9.9999, 10.0)
    (0.12, 0.3333333333333333, 9.999999999976694e-05, 0.0001)
    """
    short = float(format(value, f".{_DIGITS}g"))
    return short if abs(value - short) <= _NEAR * max(abs(value), scale) else value


#: A run of noughts or nines in a number, before its last bits: what noise looks like.
_RUNS = (b"00000000", b"99999999")
_LONGEST_NUMBER = 32
_NUMBER = re.compile(rb"-?[0-9]+\.[0-9]+")


def without_noise(answer: bytes) -> bytes:
    """Write the same JSON with every number, of any unit, tidied.

    On the answer as written: few numbers of few answers have any noise, and to find none takes no
    time, where a look at every number would take as long as the calculation.

    >>> without_noise(b'{"tir":0.12000000000000001,"angle":30.255555555555556}')
    b'{"tir":0.12,"angle":30.255555555555556}'
    """
    for run in _RUNS:
        at = answer.find(run)
        while at >= 0:
            answer, end = _settled(answer, at)
            at = answer.find(run, end)
    return answer


def _settled(answer: bytes, at: int) -> tuple[bytes, int]:
    """The answer with the number about a place settled, and where to look on from."""
    first = max(0, at - _LONGEST_NUMBER)
    start = max(answer.rfind(mark, first, at) for mark in (b":", b",", b"[")) + 1
    number = _NUMBER.match(answer, start)
    if number is None or number.end() <= at:
        return answer, at + len(_RUNS[0])
    value = float(number.group())
    decimal = tidy(value)
    if decimal == value:
        return answer, number.end()
    written = format(Decimal(repr(decimal)), "f").encode()
    return answer[:start] + written + answer[number.end() :], start + len(written)
