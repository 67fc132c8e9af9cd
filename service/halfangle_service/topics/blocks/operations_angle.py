"""Stacks of angle blocks: models to maths and back."""

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, islice, product

from halfangle_service.errors import BeyondBound, Disagreement, Unreachable
from halfangle_service.fields import Angle, format_dms
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.blocks.models_angle import (
    BlockAngleAlternative,
    BlockAngleOwned,
    BlockAnglePiece,
    BlockAngleStackRequest,
    BlockAngleStackResult,
)
from halfangle_service.topics.blocks.operations_tables import ANGLE_SETS
from halfangle_service.trade.stacks.angle_blocks import (
    MOST_COMPARED,
    MOST_PIECES,
    AngleChoice,
    AngleStack,
    fewest_within,
    nearest,
)
from halfangle_service.trade.stacks.search.work import Work
from halfangle_service.trade.tables.blocks.angle_sets import (
    SQUARE,
    THOUSANDTHS_PER_DEGREE,
    AngleGrade,
    find_angle_grade,
    find_angle_set,
)
from halfangle_service.trade.wording import plain

LARGEST_DEVIATION_ARCSEC = 60.0
MANY_PIECES = 5
_METHOD = Source(
    citation="Derived here: all signed sums of each half of the box are joined, fewest blocks "
    "first; checked against enumeration and an independent exact solver.",
    standing="derived",
)


@dataclass(frozen=True, slots=True)
class _Piece:
    """An angle block: `angle` in 0.001″, what is known of its error in arc-seconds."""

    angle: int
    deviation_arcsec: float = 0.0
    expanded_uncertainty_arcsec: float | None = None


#: A block of a stack: added (1) or subtracted (−1).
_Used = tuple[_Piece, int]


def angle_stack(request: BlockAngleStackRequest) -> Outcome[BlockAngleStackResult]:
    """Fewest angle blocks for an angle."""
    pieces = _pieces(request)
    grade = None if request.grade is None else find_angle_grade(request.grade)
    angles = [piece.angle for piece in pieces]
    target = round(request.angle * THOUSANDTHS_PER_DEGREE)
    tolerance = round(request.tolerance_arcsec * 1000)
    wanted = 1 + request.alternatives
    work = Work(MOST_COMPARED)
    choice = fewest_within(angles, target, tolerance, request.max_pieces, wanted, work)
    if not choice.stacks:
        raise _unbuildable(request, angles, target)
    built = islice(_built(pieces, choice.stacks, wanted), wanted)
    first, *others = [_facts(used, target, grade) for used in built]
    result = BlockAngleStackResult(
        **dict(first),
        proved=choice.first_proved,
        order_proved=choice.complete,
        bound=None if choice.complete else _bound_words(choice),
        alternatives=others,
    )
    return Outcome(result, tuple(_advisories(result)))


def _bound_words(choice: AngleChoice) -> str:
    """What bounded the search, and what holds in spite of it."""
    first = "the first stack is proved" if choice.first_proved else "a nearer one may exist"
    return (
        f"More than {MOST_COMPARED} stacks of as few blocks come within the tolerance: no stack of "
        f"fewer blocks exists, {first}, and others may come before those that follow it."
    )


def _built(
    pieces: Sequence[_Piece], stacks: Iterable[AngleStack], most: int
) -> Iterator[tuple[_Used, ...]]:
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


def _ways(kinds: Sequence[tuple[_Piece, int]], times: int) -> Iterator[tuple[_Used, ...]]:
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


def _pieces(request: BlockAngleStackRequest) -> list[_Piece]:
    """The blocks, largest first; refuses both sources, or neither, and too many."""
    if (request.set is None) == (request.pieces is None):
        both = "were both sent" if request.set is not None else "are both missing"
        raise Disagreement(
            f"`set` and `pieces` {both}; the blocks come from one of them.",
            fields={"set": "send either this or pieces", "pieces": "send either this or set"},
        )
    if request.set is not None:
        pieces = [_Piece(angle) for angle in find_angle_set(request.set).angles]
    else:
        pieces = list(_owned(request.pieces or ()))
    if request.with_square:
        pieces.append(_Piece(SQUARE))
    if len(pieces) > MOST_PIECES:
        raise BeyondBound(
            f"{len(pieces)} angle blocks; at most {MOST_PIECES} are taken in one request.",
            fields={"pieces": f"should hold at most {MOST_PIECES} blocks, counts included"},
        )
    return sorted(pieces, key=lambda piece: -piece.angle)


def _owned(entries: Sequence[BlockAngleOwned]) -> Iterator[_Piece]:
    for place, entry in enumerate(entries):
        angle = round(entry.angle * THOUSANDTHS_PER_DEGREE)
        if angle == 0:
            raise Disagreement(
                "An angle block of less than 0.0005″ is none.",
                fields={f"pieces/{place}/angle": "should be at least 0.001″"},
            )
        if abs(entry.deviation_arcsec) > LARGEST_DEVIATION_ARCSEC:
            raise Disagreement(
                f"A deviation of {plain(entry.deviation_arcsec, 10)}″ is not one of an angle "
                "block.",
                fields={
                    f"pieces/{place}/deviation_arcsec": "should be at most "
                    f"{plain(LARGEST_DEVIATION_ARCSEC)}″"
                },
            )
        for _ in range(entry.count):
            yield _Piece(angle, entry.deviation_arcsec, entry.expanded_uncertainty_arcsec)


def _unbuildable(
    request: BlockAngleStackRequest, angles: Sequence[int], target: int
) -> Unreachable:
    below, above = nearest(angles, target, request.max_pieces)
    facts = {
        name: {
            "angle": format_dms(stack.total / THOUSANDTHS_PER_DEGREE),
            "deviation_arcsec": (stack.total - target) / 1000,
            "sum": _sum_words(stack.terms),
        }
        for name, stack in (("below", below), ("above", above))
        if stack is not None
    }
    words = " and ".join(f"{name} it is {entry['angle']}" for name, entry in facts.items())
    return Unreachable(
        f"No stack of up to {request.max_pieces} of these angle blocks is "
        f"{format_dms(request.angle)}; nearest {words}.",
        fields={"angle": "should be an angle that these blocks build"},
        more={"nearest": facts},
    )


def _facts(used: Sequence[_Used], target: int, grade: AngleGrade | None) -> BlockAngleAlternative:
    total = sum(sign * piece.angle for piece, sign in used)
    off = (total - target) / 1000
    uncertainty, worst = _errors([piece for piece, _ in used], grade)
    return BlockAngleAlternative(
        pieces=[
            BlockAnglePiece(
                angle=Angle.of(piece.angle / THOUSANDTHS_PER_DEGREE),
                way="add" if sign > 0 else "subtract",
            )
            for piece, sign in used
        ],
        count=len(used),
        total=Angle.of(total / THOUSANDTHS_PER_DEGREE),
        deviation_arcsec=off,
        actual_deviation_arcsec=off
        + math.fsum(sign * piece.deviation_arcsec for piece, sign in used),
        standard_uncertainty_arcsec=uncertainty,
        worst_case_arcsec=worst,
        words=_sum_words([(piece.angle, sign) for piece, sign in used]),
    )


def _errors(
    pieces: Sequence[_Piece], grade: AngleGrade | None
) -> tuple[float | None, float | None]:
    """Standard uncertainty and worst case in arc-seconds; None where they are not known."""
    standards, limits = [], []
    for piece in pieces:
        expanded = piece.expanded_uncertainty_arcsec
        if expanded is not None:
            standards.append(expanded / 2.0)
            limits.append(expanded)
        elif grade is not None:
            standards.append(grade.accuracy_arcsec / math.sqrt(3.0))
            limits.append(grade.accuracy_arcsec)
        else:
            return None, None
    return math.hypot(*standards), math.fsum(limits)


def _sum_words(terms: Iterable[tuple[int, int]]) -> str:
    """Write (angle, times added or subtracted) as a sum, what is added first."""
    ordered = sorted(terms, key=lambda term: term[1] < 0)
    words = " ".join(
        f"{'+' if times > 0 else '−'} {_angle_words(angle)}"
        for angle, times in ordered
        for _ in range(abs(times))
    )
    return words.removeprefix("+ ")


def _angle_words(thousandths: int) -> str:
    """Write a block's angle as it is engraved: its whole degrees, minutes or seconds."""
    for unit, mark in ((3_600_000, "°"), (60_000, "′"), (1_000, "″")):
        if thousandths % unit == 0:
            return f"{thousandths // unit}{mark}"
    if thousandths % 6_000 == 0 and thousandths < 60_000:
        return f"{plain(thousandths / 60_000)}′"
    return f"{plain(thousandths / 1000, 10)}″"


def _advisories(result: BlockAngleStackResult) -> Iterator[Advisory]:
    if result.count > MANY_PIECES:
        yield caution(
            "many-angle-blocks",
            f"{result.count} angle blocks add up their errors; a nearby angle, or a sine plate, "
            "may be surer.",
        )
    if result.bound is not None:
        yield note("bound-reached", result.bound)


ANGLE_STACK = Operation(
    topic="blocks",
    verb="angle-stack",
    title="Stack of angle gauge blocks",
    summary="The fewest angle gauge blocks, each added or subtracted, that build an angle, proved; "
    "with the error that their grades or calibrations leave.",
    request=BlockAngleStackRequest,
    result=BlockAngleStackResult,
    calculate=angle_stack,
    relations=(
        "angle = Σ ± nominal angle, each block once at most, blocks of one angle all the same way",
        "standard_uncertainty² = Σ u², u = accuracy / √3 by grade, or expanded uncertainty / 2",
    ),
    sources=(_METHOD, ANGLE_SETS),
    example={"angle": "37 24 18", "set": "angle-16", "grade": "toolroom"},
    largest_request="22 angle blocks; of more than a million stacks of as few blocks within "
    "the tolerance the best of the first million",
    heavy=True,
)
