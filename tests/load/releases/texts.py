"""Sentences of two releases: the same but for names, or but for the form of their numbers."""

import re
from collections.abc import Iterable

#: A number in a sentence: not part of a name or code (`HL-0412`, `B17`, `inch-81`).
_NUMBER = re.compile(
    r"(?<![\w.])(?<!\w-)[-−+]?(?:\d+(?:\.\d+)?|\.\d+)(?:[eE][-+]?\d+)?(?![\w]*[a-zA-Z_])"
)


class Vocabulary:
    """Names that stand for one another in sentences: old and new names of one thing."""

    def __init__(self, pairs: Iterable[tuple[str, str]]) -> None:
        self._one: dict[str, str] = {}
        for old, new in pairs:
            self._join(old, new)
        names = sorted(self._one, key=len, reverse=True)
        self._names = re.compile(rf"(?<![\w-])({'|'.join(map(re.escape, names))})(?![\w-])")

    def same(self, before: str, after: str) -> bool:
        """True where the sentences differ at most in old and new names."""
        return before == after or self.neutral(before) == self.neutral(after)

    def neutral(self, text: str) -> str:
        """Write one name for all names of one thing."""
        return self._names.sub(lambda found: self._one[found[0]], text) if self._one else text

    def _join(self, old: str, new: str) -> None:
        first, second = self._one.get(old, old), self._one.get(new, new)
        self._one.setdefault(old, old)
        self._one.setdefault(new, new)
        for name, one in self._one.items():
            if one in {first, second}:
                self._one[name] = first


def numbers(text: str) -> list[str]:
    """Give the numbers of a sentence as they are written.

    >>> numbers("HL-0412: 0.103 in place of 0.1003, off by -3e-05 (set inch-81)")
    ['0.103', '0.1003', '-3e-05']
    """
    return [found.replace("−", "-") for found in _NUMBER.findall(text)]


def without_numbers(text: str) -> str:
    """Give the words of a sentence, with a sign for each number."""
    return _NUMBER.sub("#", text)


def numbers_agree(before: str, after: str) -> bool:
    """True where every number of the one sentence stands in the other, to the digits shown there.

    The order may differ; a number that comes twice may come once.
    """
    old, new = numbers(before), numbers(after)
    return all(any(same_number(a, b) for b in new) for a in old) and all(
        any(same_number(a, b) for a in old) for b in new
    )


def same_to_digits_shown(before: str, after: str) -> bool:
    """True where the sentences differ only in how their numbers are written."""
    if without_numbers(before) != without_numbers(after):
        return False
    return all(map(same_number, numbers(before), numbers(after)))


def same_number(first: str, second: str) -> bool:
    """True where two numbers agree to half a unit of the last digit of the shorter one.

    >>> same_number("-3e-05", "-0.00003"), same_number("0.1234", "0.123"), same_number("1", "1.6")
    (True, True, False)
    """
    allowed = max(_half_unit(first), _half_unit(second))
    return abs(float(first) - float(second)) <= allowed * (1 + 1e-9)


def _half_unit(number: str) -> float:
    """Half a unit of the last digit shown; a whole number is exact."""
    digits, _, exponent = number.lower().partition("e")
    decimals = len(digits.partition(".")[2])
    if not decimals and not exponent:
        return 0.0
    return 0.5 * 10.0 ** (int(exponent or 0) - decimals)
