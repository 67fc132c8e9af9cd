"""Which single mistake in a stack explains its height: mixed up, left out, one too many. 0.1 nm."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache
from itertools import pairwise
from typing import Literal

from halfangle_service.trade.stacks.supply import Piece

Kind = Literal[
    "wrong-block",
    "block-left-out",
    "block-too-many",
    "wear-block-left-out",
    "wear-block-too-many",
]
Likeness = Literal[
    "same-size", "same-digits", "neighbours-in-the-box", "digits-swapped", "one-digit", "none"
]

#: The more alike two sizes look, the likelier one is taken for the other; common practice, no
#: source.
LIKENESS_ORDER: tuple[Likeness, ...] = (
    "same-size",
    "same-digits",
    "neighbours-in-the-box",
    "digits-swapped",
    "one-digit",
    "none",
)
#: Lengths are whole numbers of 0.1 nm: half of one is lost to rounding.
ROUNDING = 0.5


@dataclass(frozen=True, slots=True)
class MixUp:
    """A block `wrung` in place of the one `meant`."""

    meant: Piece
    wrung: Piece

    @property
    def change(self) -> int:
        """Height as wrung less height as meant in 0.1 nm, measured deviations included."""
        return self.wrung.actual - self.meant.actual


def mix_ups(stack: Iterable[Piece], spare: Iterable[Piece]) -> Iterator[MixUp]:
    """Give each way to wring one of the blocks left in the box in place of one of the stack.

    The largest block of the stack first, and for it the smallest of the others. One of the same
    actual length in its place makes no difference, and is none.
    """
    others = distinct(spare)
    for meant in reversed(distinct(stack)):
        for wrung in others:
            if (wrung.size, wrung.deviation) != (meant.size, meant.deviation):
                yield MixUp(meant, wrung)


def without(sizes: Sequence[int], stack: Sequence[int]) -> tuple[int, ...]:
    """Give the blocks that are left in the box when the stack is wrung."""
    return tuple((Counter(sizes) - Counter(stack)).elements())


@dataclass(frozen=True, slots=True)
class Mistake:
    """One mistake: the block `meant`, the block `wrung` in its place; None where there is none.

    `change` is what it adds to the lift of the high roll, in 0.1 nm: what is too much under the low
    roll (`low`) takes from it.
    """

    kind: Kind
    meant: Piece | None
    wrung: Piece | None
    likeness: Likeness
    low: bool = False

    @property
    def change(self) -> int:
        """Lift as wrung less lift as meant, measured deviations included."""
        more = _actual(self.wrung) - _actual(self.meant)
        return -more if self.low else more

    def reversed(self) -> "Mistake":
        """Give the mistake that undoes this one: what was wrung is what was meant."""
        return replace(self, kind=_OPPOSITE[self.kind], meant=self.wrung, wrung=self.meant)


def _actual(piece: Piece | None) -> int:
    return 0 if piece is None else piece.actual


_OPPOSITE: dict[Kind, Kind] = {
    "wrong-block": "wrong-block",
    "block-left-out": "block-too-many",
    "block-too-many": "block-left-out",
    "wear-block-left-out": "wear-block-too-many",
    "wear-block-too-many": "wear-block-left-out",
}


@dataclass(frozen=True, slots=True)
class Comparison:
    """A height `found` against the heights that were `meant`, any of which would do, in 0.1 nm.

    What differs by no more than `limit` agrees. The first of `meant` is the exact one.
    """

    found: float
    meant: tuple[float, ...]
    limit: float

    @property
    def agrees(self) -> bool:
        """True where no mistake need be looked for."""
        return self.missed(0) <= self.limit

    def missed(self, change: float) -> float:
        """How far a mistake that adds `change` is from what was found."""
        return min([abs(self.found - meant - change) for meant in self.meant])

    def explained_by(self, mistake: Mistake) -> bool:
        """True where what was meant, with this mistake, is what was found."""
        return self.missed(mistake.change) <= self.limit


def within_limit(found: float, meant: float, limit: float) -> Comparison:
    """A height found against the one meant, where a difference of `limit` still agrees."""
    return Comparison(found, (meant,), limit + ROUNDING)


def against_wanted(
    total: int, wanted: float, sizes: Iterable[int], step: float, *, rounded: bool
) -> Comparison:
    """A stack's nominal height against the one wanted.

    They agree below half of the bench's `step` and of the smallest difference of two `sizes` of
    the box, so that no block taken for another one passes. Differences below half a step do not
    count: a box of inch and metric blocks has such, and no setting is made to them. `rounded`: the
    wanted height comes from an angle, and a stack for it rounded to the bench's step will do too.
    """
    apart = [second - first for first, second in pairwise(sorted(set(sizes)))]
    half = min([step, *(size for size in apart if 2 * size >= step)]) / 2.0
    meant = (wanted, round(wanted / step) * step) if rounded else (wanted,)
    return Comparison(total, meant, half - ROUNDING)


def single_mistakes(
    stack: Sequence[Piece],
    spare: Sequence[Piece],
    wear: Sequence[Piece],
    spare_wear: Sequence[Piece],
    unit: int,
) -> list[Mistake]:
    """Give every single mistake with a stack meant, each mistake once.

    `spare` are the blocks left in the box; `wear` the wear blocks that belong on the stack, which
    are not in `stack`; `spare_wear` those that the shop has beside. Blocks of one size are several
    kinds where deviation or mark differ. `unit` is the length unit in 0.1 nm, since it is its
    digits that are misread.
    """
    places = {size: place for place, size in enumerate(sorted({p.size for p in (*stack, *spare)}))}
    found = [
        Mistake("wrong-block", way.meant, way.wrung, _likeness(way, places, unit))
        for way in mix_ups(stack, spare)
    ]
    found += [Mistake("block-left-out", piece, None, "none") for piece in reversed(distinct(stack))]
    ends = _or_another(spare_wear, wear)
    end_sizes = {piece.size for piece in ends}
    found += [
        Mistake("block-too-many", None, wrung, "none")
        for wrung in _or_another(distinct(spare), stack)
        if wrung.size not in end_sizes
    ]
    found += [Mistake("wear-block-left-out", piece, None, "none") for piece in distinct(wear)]
    found += [Mistake("wear-block-too-many", None, piece, "none") for piece in ends]
    return found


def distinct(pieces: Iterable[Piece]) -> list[Piece]:
    """Give one block of each size, deviation and mark, the smallest first."""
    kinds = {(piece.size, piece.deviation, piece.mark or ""): piece for piece in pieces}
    return [kinds[kind] for kind in sorted(kinds)]


def _or_another(spare: Sequence[Piece], used: Sequence[Piece]) -> list[Piece]:
    """The blocks that may have come on top: spare ones, or from another box one as those used."""
    sizes = {piece.size for piece in spare}
    others = {piece.size for piece in used} - sizes
    return distinct([*spare, *(Piece(size) for size in others)])


def ranked(mistakes: Iterable[Mistake], comparison: Comparison) -> list[Mistake]:
    """Order mistakes by how well they explain what was found.

    Those within the limit come first, by how likely the mistake is: nothing else tells them apart.
    The others follow by what they leave unexplained.
    """

    def key(mistake: Mistake) -> tuple[float, int, int, float]:
        missed = comparison.missed(mistake.change)
        return (
            max(missed - comparison.limit, 0.0),
            _PLAUSIBILITY[mistake.kind],
            LIKENESS_ORDER.index(mistake.likeness),
            missed,
        )

    return sorted(mistakes, key=key)


#: Of mistakes that explain a height within the limit: a wear block is forgotten more often than a
#: block is mistaken, and a block is mistaken more often than left out; common practice, no source.
_PLAUSIBILITY: dict[Kind, int] = {
    "wear-block-left-out": 0,
    "wear-block-too-many": 1,
    "wrong-block": 2,
    "block-left-out": 3,
    "block-too-many": 4,
}


def _likeness(way: MixUp, places: dict[int, int], unit: int) -> Likeness:
    """How the one block is taken for the other; `places` are those of the sizes in order."""
    meant, wrung = way.meant.size, way.wrung.size
    if meant == wrung:
        return "same-size"
    first, second = digits_of(meant, unit), digits_of(wrung, unit)
    if first.replace("0", "") == second.replace("0", ""):
        return "same-digits"
    if abs(places[meant] - places[wrung]) == 1:
        return "neighbours-in-the-box"
    if sorted(first) == sorted(second):
        return "digits-swapped"
    if len(first) == len(second) and sum(a != b for a, b in zip(first, second, strict=True)) == 1:
        return "one-digit"
    return "none"


@lru_cache(maxsize=2048)
def digits_of(size: int, unit: int) -> str:
    """Give the digits engraved on a block, without point and leading zeros.

    >>> digits_of(25_476_200, 254_000_000), digits_of(26_162_000, 254_000_000)
    ('1003', '103')
    """
    written = format((Decimal(size) / Decimal(unit)).normalize(), "f")
    return written.replace(".", "").lstrip("0")
