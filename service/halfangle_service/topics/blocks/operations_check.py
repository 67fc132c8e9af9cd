"""A stack as wrung, checked: models to maths and back."""

import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.operation import Advisory, Operation, Outcome, Source, caution, stop
from halfangle_service.quantities import (
    ARCSEC_PER_RADIAN,
    Angle,
    angle_from_radians,
    bench_step,
    from_tenth_nm,
    plain,
    to_tenth_nm,
)
from halfangle_service.topics.blocks.built import errors_of
from halfangle_service.topics.blocks.mistakes import Mistake, ranked, single_mistakes
from halfangle_service.topics.blocks.models_check import (
    BlockCheckRequest,
    BlockCheckResult,
    BlockMistake,
    CheckVerdict,
)
from halfangle_service.topics.blocks.operations_stack import GRADES, SETS
from halfangle_service.topics.blocks.operations_supply import Supply, graded_supply, read_supply
from halfangle_service.topics.blocks.sets import foreign_places
from halfangle_service.topics.blocks.supply import Piece
from halfangle_service.topics.blocks.tolerances import find_grade

_METHOD = Source(
    citation="Derived here: every single swap, omission and addition of a block is tried; which of "
    "those that explain a height equally well is likelier is common practice.",
    standing="derived",
)


@dataclass(frozen=True, slots=True)
class _Bench:
    """A request read: blocks in the stack, wear blocks, and heights in 0.1 nm."""

    request: BlockCheckRequest
    supply: Supply
    inner: tuple[Piece, ...]
    wear: tuple[Piece, ...]
    wanted: float | None
    measured: float | None

    @property
    def pieces(self) -> tuple[Piece, ...]:
        return (*self.inner, *self.wear)

    @property
    def actual(self) -> int:
        return sum(piece.actual for piece in self.pieces)

    @property
    def limit(self) -> float:
        """Largest difference in 0.1 nm that counts as none."""
        request = self.request
        unit = to_tenth_nm(1.0, request.units)
        if request.measurement_limit is not None:
            return request.measurement_limit * unit
        if request.measurement_limit_arcsec is not None:
            length = (request.center_distance or 0.0) * unit
            at = math.cos(self.angle_rad(self.actual))
            return length * at * request.measurement_limit_arcsec / ARCSEC_PER_RADIAN
        return bench_step(request.units) / 2.0 * unit

    def angle_rad(self, height: float) -> float:
        """Angle that a stack of this height gives; raises Impossible where the plate ends."""
        request = self.request
        unit = to_tenth_nm(1.0, request.units)
        rise = height / unit - request.low_stack - request.offset
        length = request.center_distance or math.inf
        if not -length < rise < length:
            raise Impossible(
                f"Such a stack lifts the high roll by {plain(rise)} {request.units}, which is not "
                f"below the center distance {plain(length)}.",
                fields={"blocks": "should lift the plate by less than its center distance"},
            )
        return math.asin(rise / length)

    def angle(self, height: float) -> Angle | None:
        """The same as the answer writes it; None without a plate."""
        if self.request.center_distance is None:
            return None
        return angle_from_radians(self.angle_rad(height))

    def error_arcsec(self, height: float, reference: float | None) -> float | None:
        """Angle of one height less that of another; None without a plate or a reference."""
        if self.request.center_distance is None or reference is None:
            return None
        return (self.angle_rad(height) - self.angle_rad(reference)) * ARCSEC_PER_RADIAN


def check(request: BlockCheckRequest) -> Outcome[BlockCheckResult]:
    """What a stack as wrung is, and which single mistake explains what is wrong with it."""
    bench = _read(request)
    reference = bench.measured if bench.measured is not None else bench.wanted
    off = reference is not None and abs(reference - bench.actual) > bench.limit
    mistakes = _mistakes(bench, reference) if off and reference is not None else []
    result = _result(bench, mistakes)
    return Outcome(result, (*bench.supply.advisories, *_advisories(result)))


def _read(request: BlockCheckRequest) -> _Bench:
    _require_one(request, "height", "angle")
    _require_one(request, "measured_height", "measured_angle")
    for name in ("angle", "measured_angle", "measurement_limit_arcsec"):
        if getattr(request, name) is not None and request.center_distance is None:
            raise Disagreement(
                f"`{name}` needs the plate: send `center_distance`.",
                fields={"center_distance": f"is required with {name}"},
            )
    supply = read_supply(request)
    if request.grade is not None:
        supply = graded_supply(supply, request.grade)
    return _Bench(
        request,
        supply,
        _in_stack(request, supply),
        tuple(_wear(request, supply)),
        _height_of(request, request.height, request.angle),
        _height_of(request, request.measured_height, request.measured_angle),
    )


def _require_one(request: BlockCheckRequest, first: str, second: str) -> None:
    if getattr(request, first) is not None and getattr(request, second) is not None:
        raise Disagreement(
            f"`{first}` and `{second}` were both sent; one of them is taken.",
            fields={first: f"send either this or {second}", second: f"send either this or {first}"},
        )


def _height_of(
    request: BlockCheckRequest, height: float | None, angle: float | None
) -> float | None:
    """Height in 0.1 nm from itself or from an angle on the plate."""
    unit = to_tenth_nm(1.0, request.units)
    if height is not None:
        return float(to_tenth_nm(height, request.units))
    if angle is None:
        return None
    rise = (request.center_distance or 0.0) * math.sin(math.radians(angle))
    return (rise + request.low_stack + request.offset) * unit


def _in_stack(request: BlockCheckRequest, supply: Supply) -> tuple[Piece, ...]:
    """The blocks of the stack; refuses one that the box does not hold, or no more of."""
    left = list(supply.box.pieces)
    pieces = []
    for place, length in enumerate(request.blocks):
        size = to_tenth_nm(length, request.units)
        piece = next((entry for entry in left if entry.size == size), None)
        if piece is None:
            raise _not_in_box(request, supply, place, size)
        left.remove(piece)
        pieces.append(piece)
    return tuple(pieces)


def _not_in_box(request: BlockCheckRequest, supply: Supply, place: int, size: int) -> Disagreement:
    length, units = request.blocks[place], request.units
    there = sum(piece.size == size for piece in supply.box.pieces)
    if there:
        reason = f"the box holds {there} of it, and the stack names it {there + 1} times or more"
    elif foreign_places([size], units):
        reason = f"it is a size of {'metric' if units == 'in' else 'inch'} sets"
    else:
        reason = "the box has no such block"
    return Disagreement(
        f"{plain(length)} {units} is not a block of this box: {reason}.",
        fields={f"blocks/{place}": "should be a block of the box, as often as it is there"},
    )


def _wear(request: BlockCheckRequest, supply: Supply) -> Iterator[Piece]:
    """The wear blocks: the box's own where it has such, else plain ones."""
    known = list(supply.wear)
    for length in request.wear_blocks or ():
        size = to_tenth_nm(length, request.units)
        piece = next((entry for entry in known if entry.size == size), None)
        if piece is not None:
            known.remove(piece)
            yield piece
        elif request.grade is None:
            yield Piece(size)
        else:
            limit = find_grade(request.grade).limit_deviation(size) * to_tenth_nm(1.0, "mm")
            yield Piece(size, standard_uncertainty=limit / 3.0**0.5, limit=limit)


def _mistakes(bench: _Bench, reference: float) -> list[Mistake]:
    """Single mistakes, the likeliest first.

    What was measured differs from the stack as read: the mistake leads from this stack to another.
    What was wanted differs from it: the mistake led from another to this stack, so the search runs
    the other way round.
    """
    sizes = [piece.size for piece in bench.inner]
    box = [piece.size for piece in bench.supply.box.pieces]
    wear = [piece.size for piece in bench.wear]
    unit = to_tenth_nm(1.0, bench.request.units)
    ordered = ranked(
        single_mistakes(sizes, box, wear, [piece.size for piece in bench.supply.wear], unit),
        round(reference - bench.actual),
        round(bench.limit),
    )[: bench.request.explanations]
    if bench.measured is not None:
        return ordered
    return [mistake.reversed() for mistake in ordered]


def _described(bench: _Bench, mistake: Mistake) -> BlockMistake:
    units = bench.request.units
    measured = bench.measured is not None
    change = mistake.change if measured else -mistake.change
    height = bench.actual + change
    reference = bench.measured if bench.measured is not None else bench.wanted
    left = (reference or 0.0) - height
    shown = height if measured else bench.actual
    meant = None if mistake.meant is None else from_tenth_nm(mistake.meant, units)
    wrung = None if mistake.wrung is None else from_tenth_nm(mistake.wrung, units)
    return BlockMistake(
        kind=mistake.kind,
        meant=meant,
        wrung=wrung,
        likeness=mistake.likeness,
        height=from_tenth_nm(shown, units),
        angle=bench.angle(shown),
        angle_error_arcsec=bench.error_arcsec(shown, bench.wanted),
        unexplained=left / to_tenth_nm(1.0, units),
        explains=abs(left) <= bench.limit,
        words=_words(mistake, meant, wrung),
    )


def _words(mistake: Mistake, meant: float | None, wrung: float | None) -> str:
    out, put = (None if size is None else plain(size) for size in (meant, wrung))
    match mistake.kind:
        case "wrong block":
            return f"{put} in place of {out}"
        case "block left out":
            return f"{out} left out"
        case "block too many":
            return f"{put} wrung on beside what belongs there"
        case "wear block left out":
            return f"a wear block of {out} left out"
        case "wear block too many":
            return f"a wear block of {put} too many"


def _result(bench: _Bench, mistakes: Sequence[Mistake]) -> BlockCheckResult:
    units, unit = bench.request.units, to_tenth_nm(1.0, bench.request.units)
    uncertainty, worst = errors_of(bench.pieces, units)
    described = [_described(bench, mistake) for mistake in mistakes]
    wanted, measured = bench.wanted, bench.measured
    return BlockCheckResult(
        total=from_tenth_nm(sum(piece.size for piece in bench.pieces), units),
        actual_height=from_tenth_nm(bench.actual, units),
        standard_uncertainty=uncertainty,
        worst_case=worst,
        wanted_height=None if wanted is None else wanted / unit,
        deviation=None if wanted is None else (bench.actual - wanted) / unit,
        angle=bench.angle(bench.actual),
        angle_error_arcsec=bench.error_arcsec(bench.actual, wanted),
        measured_deviation=None if measured is None else (measured - bench.actual) / unit,
        measured_error_arcsec=None
        if measured is None
        else bench.error_arcsec(measured, float(bench.actual)),
        verdict=_verdict(bench),
        mistakes=described,
        explained=any(entry.explains for entry in described),
    )


def _verdict(bench: _Bench) -> CheckVerdict:
    references = [height for height in (bench.wanted, bench.measured) if height is not None]
    if not references:
        return "nothing to compare with"
    off = max(abs(height - bench.actual) for height in references) > bench.limit
    return "not as wanted" if off else "as wanted"


def _advisories(result: BlockCheckResult) -> Iterator[Advisory]:
    if result.verdict == "not as wanted":
        likely = result.mistakes[0].words if result.explained else ""
        yield stop(
            "wrong-stack",
            "Do not grind on this stack: it is not what is wanted, or not what was measured."
            + (f" Look first for {likely}." if likely else ""),
        )
        if not result.explained:
            yield caution(
                "no-single-mistake",
                "No single mistake with a block explains it: look for dirt, a burr, a block of "
                "another set, the plate's seat, or a wrong center distance.",
            )
    alike = Counter(entry.explains for entry in result.mistakes)[True]
    if alike > 1:
        yield caution(
            "several-explanations",
            f"{alike} of the mistakes listed explain it equally well; read the sizes on the blocks "
            "themselves.",
        )


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
