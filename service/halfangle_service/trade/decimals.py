"""Numbers without the noise of their last bits: 0.12, not 0.12000000000000001.

A float holds 15 significant decimal digits for certain; what a sum or a product of short decimals
leaves beyond them says nothing. Any other number stays as it was calculated.
"""

import re
from decimal import Decimal
from functools import partial

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.columns import Bools, Column, Floats, in_pieces, in_rows, worked_out

#: What is this near to a decimal of so many digits, as a share of itself, is that decimal.
_DIGITS, _NEAR = 10, 4e-15


#: Digits of a decimal that a float holds for certain.
_CERTAIN = 15
_TENS: Floats = np.array([10.0**power for power in range(23)])
#: Splits a float into two of half its digits (Dekker 1971), so that their products are exact.
_SPLIT = 134217729.0


def certain(value: float) -> float:
    """Give a number of any unit to the 15 significant digits that a float holds for certain.

    >>> certain(0.1 + 0.2), certain(5 * 0.49999999999999994)
    (0.3, 2.5)
    """
    if isinstance(value, Column):
        return worked_out(_all_certain, value)
    return _to_digits(value, _CERTAIN)


def _all_certain(values: Floats) -> Floats:
    return in_pieces(partial(_all_to_digits, digits=_CERTAIN), values)


def _to_digits(value: float, digits: int) -> float:
    return float(format(value, f".{digits}g"))


def _all_to_digits(values: Floats, digits: int) -> Floats:
    """The same of an array: whole numbers of so many digits over powers of ten, exact in floats.

    Where a product with the power of ten is rounded its error is worked out, so that what is to be
    rounded up is known; what is too near to a half, or beyond the powers, is written as above.
    """
    size = np.abs(values)
    with np.errstate(all="ignore"):
        power: Floats = digits - 1 - np.floor(np.log10(size))
        plain = (power >= 0) & (power < len(_TENS))
        tens = _TENS[np.where(plain, power, 0).astype(np.intp)]
        scaled: Floats = size * tens
        whole = np.rint(scaled)
        beyond = (scaled - whole) + _error_of_product(size, tens, scaled)
        whole += (beyond > 0.5).astype(np.float64) - (beyond < -0.5)
        rounded = np.copysign(whole / tens, values)
    least, most = 10.0 ** (digits - 1), 10.0**digits
    doubtful = ~plain | (scaled < least) | (scaled >= most) | (np.abs(np.abs(beyond) - 0.5) < 1e-6)
    for place in np.flatnonzero(doubtful):
        rounded[place] = _to_digits(values[place], digits)
    return rounded


def _error_of_product(one: Floats, other: Floats, product: Floats) -> Floats:
    """What a product of floats lost to rounding, exactly (Dekker 1971)."""
    one_high, one_low = _halves(one)
    other_high, other_low = _halves(other)
    error: Floats = one_high * other_high - product
    return np.asarray(error + one_high * other_low + one_low * other_high + one_low * other_low)


def _halves(value: Floats) -> tuple[Floats, Floats]:
    scaled = _SPLIT * value
    high = scaled - (scaled - value)
    return high, value - high


def perhaps_noisy(values: Floats) -> Bools:
    """Where a number of an array may be another once it is tidied; few others are among them."""
    size = np.abs(values)
    with np.errstate(all="ignore"):
        # A digit more than is asked for, since the logarithm may be one too large.
        power = _DIGITS - np.floor(np.log10(size))
        plain = (power >= 0) & (power < len(_TENS))
        tens = _TENS[np.where(plain, power, 0).astype(np.intp)]
        scaled = size * tens
        whole = np.rint(scaled)
        near = np.abs(scaled - whole) <= 2.0 * _NEAR * scaled
        return np.asarray((near & (whole / tens != size) | ~plain) & (size > 0.0))


#: A run of noughts or nines is sure to be long enough where so few digits stand before it.
_FEW = 6
_LEAST_PLAIN, _MOST_PLAIN = 1e-5, 1e9


def all_without_noise(values: Floats) -> tuple[Floats, NDArray[np.intp]]:
    """Numbers of any unit as `without_noise` leaves them, and the places that it has to settle.

    Settled here are short decimals of the usual size, nearly all that there are.
    """
    noisy = in_pieces(perhaps_noisy, values)
    size = np.abs(values)
    usual = np.flatnonzero(noisy & (size >= _LEAST_PLAIN) & (size < _MOST_PLAIN))
    if not len(usual):
        return values, np.flatnonzero(noisy)
    some = values[usual]
    short = in_pieces(partial(_all_to_digits, digits=_DIGITS), some)
    near = np.abs(some - short) <= _NEAR * np.abs(some)
    sure = near & (in_pieces(partial(_all_to_digits, digits=_FEW), short) == short)
    settled = values.copy()
    settled[usual[sure]] = short[sure]
    noisy[usual[sure | ~near]] = False
    return settled, np.flatnonzero(noisy)


def tidy(value: float, scale: float = 0.0) -> float:
    """Give a number of any unit as the short decimal that it is but for its last bits, or itself.

    A difference is noisy in more digits than a product: `scale`, in the same unit, is the largest
    number that it was made from.

    >>> tidy(3 * 0.04), tidy(1 / 3), 10 - 9.9999, tidy(10 - 9.9999, 10.0)
    (0.12, 0.3333333333333333, 9.999999999976694e-05, 0.0001)
    """
    if isinstance(value, Column) and not isinstance(scale, Column):
        return worked_out(partial(in_pieces, partial(_all_tidy, scale=scale)), value)
    if isinstance(scale, Column):
        return in_rows(tidy, value, scale)
    short = _to_digits(value, _DIGITS)
    return short if abs(value - short) <= _NEAR * max(abs(value), scale) else value


def _all_tidy(values: Floats, scale: float) -> Floats:
    short = _all_to_digits(values, _DIGITS)
    near = np.abs(values - short) <= _NEAR * np.maximum(np.abs(values), scale)
    return np.where(near, short, values)


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
