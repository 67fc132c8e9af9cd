"""The noise of binary arithmetic, taken off the numbers of an answer: 0.12000000000000001 is 0.12.

Only a number that is a short decimal but for its last bits is touched; all others keep their full
precision. Done on the answer as written, since few numbers of few answers have any noise, and to
find none takes no time.
"""

import re

from pydantic_core import to_json

#: A run of noughts or nines in a number, before its last bits: what noise looks like.
_RUNS = (b"00000000", b"99999999")
#: Digits of the decimal that a noisy number stands for, at most.
_DIGITS = 12
#: A number and its decimal differ by no more than this part: a few of its last bits.
_LAST_BITS = 2e-15
_LONGEST_NUMBER = 32
_NUMBER = re.compile(rb"-?[0-9]+\.[0-9]+")


def without_noise(answer: bytes) -> bytes:
    """Write the same JSON with every number that is a short decimal but for noise as that decimal.

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
    decimal = float(f"{value:.{_DIGITS}g}")
    if abs(value - decimal) > _LAST_BITS * abs(value):
        return answer, number.end()
    written = to_json(decimal)
    return answer[:start] + written + answer[number.end() :], start + len(written)
