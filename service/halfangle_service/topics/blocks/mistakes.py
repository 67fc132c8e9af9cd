"""Which single mistake in a stack explains its height: swapped, left out, one too many. 0.1 nm."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

Kind = Literal[
    "wrong block",
    "block left out",
    "block too many",
    "wear block left out",
    "wear block too many",
]
Likeness = Literal["same digits", "neighbours in the box", "digits swapped", "one digit", "none"]

#: The more alike two sizes look, the likelier one is taken for the other; common practice, no
#: source.
LIKENESS_ORDER: tuple[Likeness, ...] = (
    "same digits",
    "neighbours in the box",
    "digits swapped",
    "one digit",
    "none",
)


@dataclass(frozen=True, slots=True)
class Mistake:
    """One mistake: the block `meant`, the block `wrung` in its place; None where there is none.

    `change` is what it adds to the height, in 0.1 nm.
    """

    kind: Kind
    meant: int | None
    wrung: int | None
    likeness: Likeness

    @property
    def change(self) -> int:
        """Height as wrung less height as meant."""
        return (self.wrung or 0) - (self.meant or 0)

    def reversed(self) -> "Mistake":
        """Give the mistake that undoes this one: what was wrung is what was meant."""
        return Mistake(_OPPOSITE[self.kind], self.wrung, self.meant, self.likeness)


_OPPOSITE: dict[Kind, Kind] = {
    "wrong block": "wrong block",
    "block left out": "block too many",
    "block too many": "block left out",
    "wear block left out": "wear block too many",
    "wear block too many": "wear block left out",
}


def single_mistakes(
    stack: Sequence[int], box: Sequence[int], wear: Sequence[int], unit: int
) -> Iterator[Mistake]:
    """Give every single mistake with a stack meant: sizes in 0.1 nm, each mistake once.

    `box` holds the blocks there are, the stack's own included; `wear` the wear blocks that belong
    on the stack, which are not in `stack`; `unit` is the length unit in 0.1 nm, since it is its
    digits that are misread.
    """
    spare = sorted(Counter(box) - Counter(stack))
    places = {size: place for place, size in enumerate(sorted(set(box)))}
    for meant in sorted(set(stack), reverse=True):
        yield Mistake("block left out", meant, None, "none")
        for wrung in spare:
            if wrung != meant:
                likeness = _likeness(meant, wrung, places, unit)
                yield Mistake("wrong block", meant, wrung, likeness)
    for wrung in spare:
        yield Mistake("block too many", None, wrung, "none")
    for size in sorted(set(wear)):
        yield Mistake("wear block left out", size, None, "none")
        yield Mistake("wear block too many", None, size, "none")


def ranked(mistakes: Iterator[Mistake], change: int, slack: int) -> list[Mistake]:
    """Order mistakes by how well they explain a change of height.

    Those within `slack` of it explain it equally well: of them the blocks that look alike come
    first. The others follow by what they leave unexplained.
    """

    def key(mistake: Mistake) -> tuple[int, int, int, int]:
        missed = abs(mistake.change - change)
        return (
            max(missed - slack, 0),
            _PLAUSIBILITY[mistake.kind],
            LIKENESS_ORDER.index(mistake.likeness),
            missed,
        )

    return sorted(mistakes, key=key)


#: Of mistakes that explain a height equally well: a wear block is forgotten more often than a block
#: is mistaken, and a block is mistaken more often than left out; common practice, no source.
_PLAUSIBILITY: dict[Kind, int] = {
    "wear block left out": 0,
    "wear block too many": 1,
    "wrong block": 2,
    "block left out": 3,
    "block too many": 4,
}


def _likeness(meant: int, wrung: int, places: dict[int, int], unit: int) -> Likeness:
    first, second = digits_of(meant, unit), digits_of(wrung, unit)
    if first.replace("0", "") == second.replace("0", ""):
        return "same digits"
    if abs(places.get(meant, -9) - places.get(wrung, 9)) == 1:
        return "neighbours in the box"
    if sorted(first) == sorted(second):
        return "digits swapped"
    if len(first) == len(second) and sum(a != b for a, b in zip(first, second, strict=True)) == 1:
        return "one digit"
    return "none"


def digits_of(size: int, unit: int) -> str:
    """Give the digits engraved on a block, without point and leading zeros.

    >>> digits_of(25_476_200, 254_000_000), digits_of(26_162_000, 254_000_000)
    ('1003', '103')
    """
    written = format((Decimal(size) / Decimal(unit)).normalize(), "f")
    return written.replace(".", "").lstrip("0")
