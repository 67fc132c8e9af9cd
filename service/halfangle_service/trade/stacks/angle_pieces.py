"""The blocks in a stack of angle blocks: which of those alike, and how far off the angle may be.

Nominal angles are integers of 0.001″, as in `angle_blocks`; errors are in arc-seconds.
"""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, islice, product

from halfangle_service.trade.stacks.angle_blocks import AngleStack
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wording import plain, told_apart


@dataclass(frozen=True, slots=True)
class AnglePiece:
    """An angle block: `angle` in 0.001″, and what is known of its error, in arc-seconds.

    `standard_uncertainty` is that of its deviation where it is calibrated, `limit` that of its
    grade where it is not; None where not known.
    """

    angle: int
    deviation: float = 0.0
    standard_uncertainty: float | None = None
    limit: float | None = None

    def graded(self, limit: float) -> "AnglePiece":
        """The block with its grade's limit; a calibrated one as it is."""
        return self if self.standard_uncertainty is not None else replace(self, limit=limit)

    @property
    def error_known(self) -> bool:
        """True where it is calibrated or has a grade."""
        return self.standard_uncertainty is not None or self.limit is not None


#: A block of a stack: added (1) or subtracted (−1).
Used = tuple[AnglePiece, int]


def choices_of(
    pieces: Sequence[AnglePiece], stacks: Iterable[AngleStack], most: int
) -> Iterator[tuple[Used, ...]]:
    """Give the blocks of each stack: of blocks of one angle that differ, every choice.

    Of each angle at most `most` choices, more than that are not asked for.
    """
    kinds = list(Counter(pieces).items())
    for stack in stacks:
        ways = [
            list(islice(_ways([k for k in kinds if k[0].angle == angle], times), most))
            for angle, times in stack.terms
        ]
        for chosen in product(*ways):
            yield tuple(chain.from_iterable(chosen))


def _ways(kinds: Sequence[tuple[AnglePiece, int]], times: int) -> Iterator[tuple[Used, ...]]:
    """Every choice of so many blocks of one angle, all added or, if negative, all subtracted.

    Blocks alike are one kind; the kind that was named first is taken first.
    """
    many = abs(times)
    if many > sum(count for _, count in kinds):
        return
    if not kinds:
        yield ()
        return
    (piece, count), *others = kinds
    for taken in range(min(count, many), -1, -1):
        here = ((piece, 1 if times > 0 else -1),) * taken
        for rest in _ways(others, (many - taken) * (1 if times > 0 else -1)):
            yield (*here, *rest)


def deviation_of(used: Iterable[Used]) -> float:
    """Measured deviation of a stack's angle: a subtracted block's counts the other way."""
    return math.fsum(sign * piece.deviation for piece, sign in used)


def angle_budget(used: Sequence[Used]) -> Budget:
    """Give what calibrations and grade say of a stack's angle.

    Nothing is said, and `grade` named as not stated, where neither is known of some block.
    """
    if all(piece.error_known for piece, _ in used):
        angles = told_apart(engraved(piece.angle) for piece, _ in used)
        return Budget(tuple(map(_contribution, used, angles)))
    return Budget((), not_stated=("grade",))


def _contribution(used: Used, angle: str) -> Contribution:
    piece, sign = used
    if piece.standard_uncertainty is not None:
        spread = piece.standard_uncertainty
        return Contribution("block_calibration", spread, "normal", sign, of=angle)
    return Contribution("block_grade_limit", piece.limit or 0.0, sensitivity=sign, of=angle)


def as_sum(terms: Iterable[tuple[int, int]]) -> str:
    """Write (angle, times added or subtracted) as a sum, what is added first.

    >>> as_sum([(3_600_000, -1), (108_000_000, 1)])
    '30° − 1°'
    """
    ordered = sorted(terms, key=lambda term: term[1] < 0)
    words = " ".join(
        f"{'+' if times > 0 else '−'} {engraved(angle)}"
        for angle, times in ordered
        for _ in range(abs(times))
    )
    return words.removeprefix("+ ")


def engraved(thousandths: int) -> str:
    """Write a block's angle as it is engraved: its whole degrees, minutes or seconds."""
    for unit, mark in ((3_600_000, "°"), (60_000, "′"), (1_000, "″")):
        if thousandths % unit == 0:
            return f"{thousandths // unit}{mark}"
    if thousandths % 6_000 == 0 and thousandths < 60_000:
        return f"{plain(thousandths / 60_000)}′"
    return f"{plain(thousandths / 1000, 10)}″"
