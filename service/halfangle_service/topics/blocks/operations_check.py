"""A stack as wrung, checked: models to maths and back."""

import math
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import takewhile

from halfangle_service.fields import Units, bench_step, from_tenth_nm
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.stacks import errors_of
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.blocks.models_check import (
    BlockCheckRequest,
    BlockCheckResult,
    BlockMistake,
    CheckVerdict,
    MistakesExplain,
)
from halfangle_service.topics.blocks.operations_stack import GRADES, SETS
from halfangle_service.topics.blocks.wrung import Wrung, read_wrung
from halfangle_service.trade.stacks.mistakes import (
    Comparison,
    Mistake,
    against_wanted,
    distinct,
    ranked,
    single_mistakes,
    within_limit,
)
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.wording import plain

_METHOD = Source(
    citation="Derived here: every single swap, omission and addition of a block is tried; which of "
    "those that explain a height equally well is likelier is common practice.",
    standing="derived",
)


@dataclass(frozen=True, slots=True)
class _Search:
    """Mistakes looked for, the likeliest first: what they are to explain, and what they did.

    `unclear` are the sizes of which it must be said which of several blocks is meant.
    """

    comparison: Comparison
    explains: MistakesExplain
    mistakes: tuple[Mistake, ...]
    unclear: frozenset[int]

    @property
    def explaining(self) -> tuple[Mistake, ...]:
        """Those that explain it; ranked, they come first."""
        return tuple(takewhile(self.comparison.explained_by, self.mistakes))


def check(request: BlockCheckRequest) -> Outcome[BlockCheckResult]:
    """What a stack as wrung is, and which single mistake explains what is wrong with it."""
    bench = read_wrung(request)
    search = _search(bench)
    result = _result(bench, search)
    notes = (*_which_taken(bench), *_too_coarse(bench), *_advisories(bench, search))
    return Outcome(result, (*bench.supply.advisories, *notes))


def _measured_comparison(bench: Wrung) -> Comparison | None:
    """What was measured against the stack as read, measured deviations included."""
    if bench.measured is None:
        return None
    usual = bench_step(bench.request.units) / 2.0 * bench.unit
    limit = usual if bench.limit is None else bench.limit
    return within_limit(bench.measured, bench.actual, limit)


def _wanted_comparison(bench: Wrung) -> Comparison | None:
    """The stack as read against what is wanted: nominal sizes, unless a limit was sent for it."""
    if bench.wanted is None:
        return None
    limit = _limit_of_wanted(bench)
    if limit is not None:
        return within_limit(bench.actual, bench.wanted, limit)
    step = bench_step(bench.request.units) * bench.unit
    rounded = bench.request.angle is not None
    return against_wanted(bench.total, bench.wanted, bench.supply.box.sizes, step, rounded=rounded)


def _limit_of_wanted(bench: Wrung) -> float | None:
    """The limit sent, where nothing was measured that it could be of."""
    return bench.limit if bench.measured is None else None


def _search(bench: Wrung) -> _Search | None:
    """The mistakes that could explain what is wrong; None where nothing is.

    What was measured differs from the stack as read: the mistake leads from this stack to another.
    What was wanted differs from it: the mistake led from another to this stack, so the search runs
    the other way round.
    """
    measured, wanted = _measured_comparison(bench), _wanted_comparison(bench)
    if measured is not None and not measured.agrees:
        found, unclear = _mistakes(bench, nominal=False), _unclear(bench)
        return _Search(measured, "what was measured", tuple(ranked(found, measured)), unclear)
    if wanted is None or wanted.agrees:
        return None
    nominal = _limit_of_wanted(bench) is None
    found = [mistake.reversed() for mistake in _mistakes(bench, nominal=nominal)]
    unclear = frozenset[int]() if nominal else _unclear(bench)
    return _Search(wanted, "the stack as read", tuple(ranked(found, wanted)), unclear)


def _unclear(bench: Wrung) -> frozenset[int]:
    """Sizes of which the box has blocks that differ by deviation or mark."""
    return frozenset(
        size
        for pieces in (bench.supply.box.pieces, bench.supply.wear)
        for size, count in Counter(piece.size for piece in distinct(pieces)).items()
        if count > 1
    )


def _mistakes(bench: Wrung, *, nominal: bool) -> list[Mistake]:
    """Every single mistake with the stack as read; by nominal sizes alone, each size once."""
    unclear = _unclear(bench)
    inner, spare, wear, spare_wear = (
        [_nominal(piece, unclear) for piece in part] if nominal else part
        for part in (bench.inner, bench.spare, bench.wear, bench.spare_wear)
    )
    return single_mistakes(inner, spare, wear, spare_wear, bench.unit)


def _nominal(piece: Piece, unclear: frozenset[int]) -> Piece:
    return Piece(piece.size, mark=None if piece.size in unclear else piece.mark)


def _described(bench: Wrung, search: _Search, mistake: Mistake) -> BlockMistake:
    units, comparison = bench.request.units, search.comparison
    height = comparison.meant[0] + mistake.change
    meant, wrung = mistake.meant, mistake.wrung
    return BlockMistake(
        kind=mistake.kind,
        meant=None if meant is None else from_tenth_nm(meant.size, units),
        meant_mark=None if meant is None else meant.mark,
        wrung=None if wrung is None else from_tenth_nm(wrung.size, units),
        wrung_mark=None if wrung is None else wrung.mark,
        likeness=mistake.likeness,
        height=height / bench.unit,
        angle=bench.angle(height),
        angle_error_arcsec=bench.error_arcsec(height, bench.wanted),
        unexplained=(comparison.found - height) / bench.unit,
        explains=comparison.explained_by(mistake),
        words=_words(mistake, units, search.unclear),
    )


def _words(mistake: Mistake, units: Units, unclear: frozenset[int]) -> str:
    out, put = (_named(piece, units, unclear) for piece in (mistake.meant, mistake.wrung))
    match mistake.kind:
        case "wrong-block":
            return f"{put} in place of {out}"
        case "block-left-out":
            return f"{out} left out"
        case "block-too-many":
            return f"{put} wrung on beside what belongs there"
        case "wear-block-left-out":
            return f"a wear block of {out} left out"
        case "wear-block-too-many":
            return f"a wear block of {put} too many"


def _named(piece: Piece | None, units: Units, unclear: frozenset[int]) -> str:
    """A block in words: its size, and which one where there are several of it."""
    if piece is None:
        return ""
    size = plain(from_tenth_nm(piece.size, units), 10)
    if piece.size not in unclear:
        return size
    mark = "" if piece.mark is None else f"mark {piece.mark}, "
    return f"{size} ({mark}deviation {plain(from_tenth_nm(piece.deviation, units), 10)})"


def _result(bench: Wrung, search: _Search | None) -> BlockCheckResult:
    units, unit = bench.request.units, bench.unit
    uncertainty, worst = errors_of(bench.pieces, units)
    wanted, measured = bench.wanted, bench.measured
    listed = () if search is None else search.mistakes[: bench.request.explanations]
    marks = [piece.mark for piece in bench.pieces]
    return BlockCheckResult(
        total=from_tenth_nm(bench.total, units),
        marks=marks if any(marks) else [],
        actual_height=from_tenth_nm(bench.actual, units),
        standard_uncertainty=uncertainty,
        worst_case=worst,
        wanted_height=None if wanted is None else wanted / unit,
        deviation=None if wanted is None else (bench.actual - wanted) / unit,
        angle=bench.angle(bench.actual),
        angle_error_arcsec=bench.error_arcsec(bench.actual, wanted),
        measured_deviation=None if measured is None else (measured - bench.actual) / unit,
        measured_error_arcsec=bench.error_arcsec(measured, float(bench.actual)),
        verdict=_verdict(bench, search),
        mistakes_explain=None if search is None else search.explains,
        mistakes=[_described(bench, search, mistake) for mistake in listed] if search else [],
        explained=search is not None and bool(search.explaining),
    )


def _verdict(bench: Wrung, search: _Search | None) -> CheckVerdict:
    if bench.wanted is None and bench.measured is None:
        return "nothing to compare with"
    return "as wanted" if search is None else "not as wanted"


def _which_taken(bench: Wrung) -> Iterator[Advisory]:
    """Say which of several blocks of one size was taken for the stack."""
    unclear = _unclear(bench)
    taken = [_named(p, bench.request.units, unclear) for p in bench.pieces if p.size in unclear]
    if taken:
        yield note(
            "one-of-several-taken",
            f"Of several blocks of one size this one was taken for the stack: {'; '.join(taken)}. "
            "Read the mark: heights and mistakes here count with this one.",
        )


def _too_coarse(bench: Wrung) -> Iterator[Advisory]:
    """Say so where a measurement agrees with the stack, and would with a wrong block in it too."""
    comparison = _measured_comparison(bench)
    if comparison is None or not comparison.agrees:
        return
    hidden = [
        mistake
        for mistake in _mistakes(bench, nominal=False)
        if mistake.likeness != "same-size" and comparison.explained_by(mistake)
    ]
    if hidden:
        likely = ranked(hidden, comparison)[0]
        yield note(
            "measurement-too-coarse",
            "Within its limit the measurement cannot tell this stack from one with "
            f"{_words(likely, bench.request.units, _unclear(bench))}. Where it is finer, send "
            "`measurement_limit`.",
        )


def _advisories(bench: Wrung, search: _Search | None) -> Iterator[Advisory]:
    if search is None:
        return
    explaining = search.explaining
    message = f"Do not grind on this stack: {_WRONG[search.explains]}."
    if explaining:
        likely = _words(explaining[0], bench.request.units, search.unclear)
        message += f" Look first for {likely}."
    yield stop("wrong-stack", message)
    if not explaining:
        words = _LOOK_ELSEWHERE[search.explains] + _nothing_nearer(bench, search)
        yield caution("no-single-mistake", words)
    if len(explaining) > 1:
        yield caution(
            "several-explanations",
            f"{len(explaining)} single mistakes explain it equally well; read the sizes on the "
            "blocks themselves.",
        )


def _nothing_nearer(bench: Wrung, search: _Search) -> str:
    """Say so where the stack is not at fault: its blocks make too coarse steps."""
    step = math.gcd(*bench.supply.box.sizes)
    off = search.comparison.missed(0)
    if search.explains == "what was measured" or 2 * off > step:
        return ""
    units = bench.request.units
    return (
        f" These blocks make steps of {plain(from_tenth_nm(step, units), 10)} {units}: none of "
        "their stacks comes nearer to what is wanted."
    )


_WRONG: dict[MistakesExplain, str] = {
    "what was measured": "what was measured on it is not what was read from its blocks",
    "the stack as read": "it is not what is wanted",
}
_LOOK_ELSEWHERE: dict[MistakesExplain, str] = {
    "what was measured": "No single mistake with a block explains what was measured: look for "
    "dirt, a burr, a block of another set, the plate's seat, or a wrong center distance.",
    "the stack as read": "No single mistake with a block leads from what is wanted to this stack: "
    "look for two mistakes, a stack of another job, a height that these blocks do not build, or a "
    "wrong center distance.",
}


CHECK = Operation(
    topic="blocks",
    verb="check",
    title="Check of a stack as wrung",
    summary="Height, uncertainty and angle of a stack as wrung, against what is wanted and what "
    "was measured; and which single swapped, forgotten or added block explains a difference.",
    request=BlockCheckRequest,
    result=BlockCheckResult,
    calculate=check,
    relations=(
        "actual_height = Σ (nominal size + measured deviation)",
        "sin(angle) = (height − low_stack − offset) / center_distance",
    ),
    sources=(_METHOD, SETS, GRADES),
    example={
        "units": "in",
        "set": "inch-81",
        "blocks": [2.0, 0.4, 0.1001],
        "angle": 30,
        "center_distance": 5,
    },
    largest_request="20 blocks in the stack, 500 in the box",
    heavy=True,
)
