"""A stack as wrung, checked: what it is, and which mistake explains what is wrong with it.

The request, and how it is read, is in `as_wrung`.
"""

import math
from collections.abc import Iterator
from typing import Literal

from pydantic import Field

from halfangle_service.fields import (
    Angle,
    ArcsecOut,
    LengthOut,
    ResultModel,
    Units,
    angle_from_radians,
    from_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.stacks import ActualHeight, actual_height
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.blocks.as_wrung import BlockCheckRequest, read_wrung
from halfangle_service.topics.blocks.sources import GRADES, SETS
from halfangle_service.trade.stacks.mistakes import Kind, Likeness, Mistake
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.stacks.wrung import (
    MistakesExplain,
    Search,
    Wrung,
    likeliest_hidden,
    search_mistakes,
    verdict_on,
)
from halfangle_service.trade.uncertainty import Verdict
from halfangle_service.trade.wording import plain

_METHOD = Source(
    citation="Derived here: every single swap, omission and addition of a block is tried; which of "
    "those that explain a height within the limit is likelier is common practice.",
    standing="derived",
)
#: Fields with which a stack is compared.
_COMPARED_WITH = ("height", "angle", "measured_height", "measured_angle")
_WRONG: dict[MistakesExplain, str] = {
    "what-was-measured": "what was measured on it is not what was read from its blocks",
    "the-stack-as-read": "it is not what is wanted",
}
_LOOK_ELSEWHERE: dict[MistakesExplain, str] = {
    "what-was-measured": "No single mistake with a block explains what was measured: look for "
    "dirt, a burr, a block of another set, the plate's seat, or a wrong center distance.",
    "the-stack-as-read": "No single mistake with a block leads from what is wanted to this stack: "
    "look for two mistakes, a stack of another job, a height that these blocks do not build, or a "
    "wrong center distance.",
}


class BlockMistake(ResultModel):
    """One mistake with the stack that was meant, what it does, and how well that explains.

    `mistakes_explain` tells which case it is. `what-was-measured`: the stack as read was meant, and
    the mistake gives the measured one. `the-stack-as-read`: a stack of the wanted height was meant,
    and the mistake gives the stack as read, which is right to its blocks.
    """

    kind: Kind = Field(description="What went wrong.")
    meant: LengthOut | None = Field(description="Block that was meant; null where none was.")
    meant_mark: str | None = Field(
        description="Mark of the block that was meant; null where it has none, or where any of "
        "several of its size may be it."
    )
    wrung: LengthOut | None = Field(description="Block that was wrung; null where none was.")
    wrung_mark: str | None = Field(description="Mark of the block that was wrung, likewise.")
    likeness: Likeness = Field(
        description="How the one is taken for the other: `same-size`, another block of the box "
        "with another measured deviation; `same-digits`, .1003 for .103; "
        "`neighbours-in-the-box`; `digits-swapped`; `one-digit`; `none`."
    )
    roll: Literal["high-roll", "low-roll"] | None = Field(
        description="Roll under which the mistake is; null without a plate."
    )
    height: LengthOut = Field(
        description="Height of the stack that was meant, with this mistake: of the actual height "
        "of the stack as read, or of the wanted height, as `mistakes_explain` tells. Of a mistake "
        "under the low roll, the height that would lift the high roll as much."
    )
    angle: Angle | None = Field(
        description="Angle that it gives; null without a plate, and where it lifts the plate by "
        "its center distance or more."
    )
    angle_error_arcsec: ArcsecOut | None = Field(
        description="That angle less the wanted one; null where there is none of them."
    )
    unexplained: LengthOut = Field(
        description="Height to be explained, the measured one or that of the stack as read, less "
        "the height with this mistake."
    )
    explains: bool = Field(
        description="True where that is within the limit; with a wanted angle also where it is "
        "within it of the height rounded to 0.0001 in or 0.001 mm."
    )
    words: str = Field(description="The mistake in plain words.")


class BlockCheckResult(ResultModel):
    """What a stack is, and what may be wrong with it."""

    total: LengthOut = Field(description="Sum of the nominal sizes, wear blocks included.")
    marks: list[str | None] = Field(
        description="Identification marks of the blocks taken for the stack, in the order of "
        "`blocks` and `wear_blocks`, null where one has none; empty where none of them has one."
    )
    actual_height: ActualHeight
    wanted_height: LengthOut | None = Field(description="Height wanted; null where none is.")
    actual_deviation: LengthOut | None = Field(
        description="Actual height less the wanted one; null where none is."
    )
    angle: Angle | None = Field(description="Angle that the stack gives; null without a plate.")
    angle_error_arcsec: ArcsecOut | None = Field(
        description="That angle less the wanted one; null where none is wanted."
    )
    measured_deviation: LengthOut | None = Field(
        description="Measured height, or that of the measured angle, less the actual height of "
        "the stack as read; null where nothing was measured."
    )
    measured_error_arcsec: ArcsecOut | None = Field(
        description="Measured angle less the angle of the stack as read; null without either."
    )
    verdict: Verdict | None = Field(
        description="`conforming`: the stack as read agrees with what is wanted, and what was "
        "measured on it with the stack as read; `height` and `measurement_error_limit` tell how "
        "nearly. `not-provable`: what was measured agrees, but is too coarse to tell the stack "
        "from one with a wrong block; or it is not sure by the blocks' grades and calibrations "
        "that the actual height is within the `measurement_error_limit` of the wanted one, at 95 % "
        "(ISO 14253-1:2017). Else `not-conforming`; null where there is nothing to compare it with."
    )
    not_stated: list[str] = Field(
        description="Where there is no verdict, the fields one of which would give something to "
        "compare the stack with; `grade` where nothing can be proved without it."
    )
    mistakes_explain: MistakesExplain | None = Field(
        description="What the mistakes are to explain. `what-was-measured`: it differs from the "
        "stack as read. `the-stack-as-read`: it differs from what is wanted, and nothing measured "
        "speaks against it. Null where nothing differs."
    )
    mistakes: list[BlockMistake] = Field(
        description="Single mistakes that could explain the difference, the likeliest first. Where "
        "there is no difference, none."
    )
    explained: bool = Field(
        description="True where some single mistake explains it, be it listed or not."
    )


@operation(
    "blocks.check",
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
def check(request: BlockCheckRequest) -> Outcome[BlockCheckResult]:
    """Check of a stack as wrung.

    Height, uncertainty and angle of a stack as wrung, against what is wanted and what was measured;
    and which single swapped, forgotten or added block explains a difference.
    """
    supply, bench = read_wrung(request)
    search = search_mistakes(bench)
    result = _result(bench, search, request.max_explanations)
    notes = (*_which_taken(bench), *_too_coarse(bench), *_advisories(bench, search))
    return Outcome(result, (*supply.advisories, *notes))


def _described(bench: Wrung, search: Search, mistake: Mistake) -> BlockMistake:
    units, comparison = bench.units, search.comparison
    height = comparison.meant[0] + mistake.change
    meant, wrung = mistake.meant, mistake.wrung
    return BlockMistake(
        kind=mistake.kind,
        meant=None if meant is None else from_tenth_nm(meant.size, units),
        meant_mark=None if meant is None else meant.mark,
        wrung=None if wrung is None else from_tenth_nm(wrung.size, units),
        wrung_mark=None if wrung is None else wrung.mark,
        likeness=mistake.likeness,
        roll=None if bench.plate is None else "low-roll" if mistake.low else "high-roll",
        height=height / bench.unit,
        angle=_angle(bench, height),
        angle_error_arcsec=bench.error_arcsec(height, bench.wanted),
        unexplained=(comparison.found - height) / bench.unit,
        explains=comparison.explained_by(mistake),
        words=_words(mistake, units, search.unclear),
    )


def _words(mistake: Mistake, units: Units, unclear: frozenset[int]) -> str:
    words = _what_went_wrong(mistake, units, unclear)
    return f"{words} under the low roll" if mistake.low else words


def _what_went_wrong(mistake: Mistake, units: Units, unclear: frozenset[int]) -> str:
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
    return f"{size} ({mark}deviation {plain(from_tenth_nm(piece.deviation, units), 10)} {units})"


def _result(bench: Wrung, search: Search | None, explanations: int) -> BlockCheckResult:
    units, unit = bench.units, bench.unit
    wanted, measured = bench.wanted, bench.measured
    listed = () if search is None else search.mistakes[:explanations]
    compared = wanted is not None or measured is not None
    verdict = verdict_on(bench, search) if compared else None
    unproved = verdict == "not-provable" and measured is None
    marks = [piece.mark for piece in bench.pieces]
    height = actual_height(bench.pieces, units)
    return BlockCheckResult(
        total=from_tenth_nm(bench.total, units),
        marks=marks if any(marks) else [],
        actual_height=height,
        wanted_height=None if wanted is None else wanted / unit,
        actual_deviation=None if wanted is None else (bench.actual - wanted) / unit,
        angle=_angle(bench, bench.actual),
        angle_error_arcsec=bench.error_arcsec(bench.actual, wanted),
        measured_deviation=None if measured is None else (measured - bench.actual) / unit,
        measured_error_arcsec=bench.error_arcsec(measured, float(bench.actual)),
        verdict=verdict,
        not_stated=height.not_stated if unproved else [] if compared else list(_COMPARED_WITH),
        mistakes_explain=None if search is None else search.explains,
        mistakes=[_described(bench, search, mistake) for mistake in listed] if search else [],
        explained=search is not None and bool(search.explaining),
    )


def _angle(bench: Wrung, height: float) -> Angle | None:
    angle = bench.angle_rad(height)
    return None if angle is None else angle_from_radians(angle)


def _which_taken(bench: Wrung) -> Iterator[Advisory]:
    """Say which of several blocks of one size was taken for the stack."""
    unclear = bench.unclear
    taken = [_named(p, bench.units, unclear) for p in bench.pieces if p.size in unclear]
    if taken:
        yield note(
            "one-of-several-taken",
            f"Of several blocks of one size this one was taken for the stack: {'; '.join(taken)}. "
            "Read the mark: heights and mistakes here count with this one.",
        )


def _too_coarse(bench: Wrung) -> Iterator[Advisory]:
    """Say so where a measurement agrees with the stack, and would with a wrong block in it too."""
    hidden = likeliest_hidden(bench)
    if hidden is not None:
        yield note(
            "measurement-too-coarse",
            "Within its limit the measurement cannot tell this stack from one with "
            f"{_words(hidden, bench.units, bench.unclear)}. Where it is finer, send "
            "`measurement_error_limit`.",
        )


def _advisories(bench: Wrung, search: Search | None) -> Iterator[Advisory]:
    if search is None:
        return
    explaining = search.explaining
    message = f"Do not grind on this stack: {_WRONG[search.explains]}."
    if explaining:
        likely = _words(explaining[0], bench.units, search.unclear)
        message += f" Look first for {likely}."
    yield stop("wrong-stack", message)
    if not explaining:
        words = _LOOK_ELSEWHERE[search.explains] + _nothing_nearer(bench, search)
        yield caution("no-single-mistake", words)
    if len(explaining) > 1:
        yield caution("several-explanations", _how_well(bench, search))
    if _low_stack_unknown(bench, search):
        yield note(
            "low-stack-not-searched",
            "Of the stack under the low roll only the height is known, so no wrong block was "
            "looked for there. Send `low_blocks`.",
        )


def _how_well(bench: Wrung, search: Search) -> str:
    """Say how many mistakes explain a difference, and how well the best and the worst of them."""
    missed = [search.comparison.missed(mistake.change) for mistake in search.explaining]
    count, read = len(missed), "read the sizes on the blocks themselves."
    best, worst = (plain(length / bench.unit, 3) for length in (min(missed), max(missed)))
    if best == worst:
        return f"{count} single mistakes explain it equally well; {read}"
    return (
        f"{count} single mistakes explain it within the limit, the best to {best} {bench.units}, "
        f"the worst to {worst} {bench.units}; {read}"
    )


def _low_stack_unknown(bench: Wrung, search: Search) -> bool:
    """True where the blocks under the low roll could be at fault and were not sent."""
    measured = search.explains == "what-was-measured"
    by_angle = bench.angle_measured if measured else bench.angle_wanted
    stated = bench.plate is not None and bench.plate.low_stack > 0.0
    return by_angle and stated and not (bench.low or bench.low_wear)


def _nothing_nearer(bench: Wrung, search: Search) -> str:
    """Say so where the stack is not at fault: its blocks make too coarse steps."""
    step = math.gcd(*bench.box.sizes)
    off = search.comparison.missed(0)
    if search.explains == "what-was-measured" or 2 * off > step:
        return ""
    units = bench.units
    return (
        f" These blocks make steps of {plain(from_tenth_nm(step, units), 10)} {units}: none of "
        "their stacks comes nearer to what is wanted."
    )
