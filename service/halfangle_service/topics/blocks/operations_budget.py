"""A stack's error budget: models to maths and back."""

from collections.abc import Iterator, Sequence
from math import fsum

from halfangle_service.errors import BeyondBound, Disagreement
from halfangle_service.fields import Units, from_mm, from_tenth_nm, to_tenth_nm
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.blocks import BlockOwned
from halfangle_service.fields.supply import (
    own_units,
    require_deviations,
    require_sane,
)
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.blocks.models_budget import (
    MOST_IN_STACK,
    BlockBudgetLine,
    BlockBudgetRequest,
    BlockBudgetResult,
)
from halfangle_service.topics.blocks.operations_stack import GRADES
from halfangle_service.trade.stacks.height_budget import (
    REFERENCE_CELSIUS,
    Films,
    Line,
    StackBlock,
    Surroundings,
    budget_lines,
    expansion_of,
)
from halfangle_service.trade.tables.blocks.tolerances import Grade, find_grade
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials
from halfangle_service.trade.uncertainty import Budget, Contribution, Distribution
from halfangle_service.trade.wording import plain

_GUM = Source(
    citation="JCGM 100:2008 (GUM), 4.3.7 and 5.1.2: limits as rectangular distributions, "
    "independent contributions combined by root sum of squares.",
    standing="published",
)
_FILM = Source(
    citation="ISO 3650:1998, definition of the length of a gauge block: one wringing film is "
    "included.",
    standing="from-memory",
)
_EXPANSION = Source(
    citation="Coefficients of expansion: ISO 3650:1998 for steel, NIST Monograph 180 for carbides, "
    "published data for zirconia.",
    standing="from-memory",
)
#: The coefficient of steel blocks is stated for this range: ISO 3650:1998, from memory.
EXPANSION_RANGE_CELSIUS = (10.0, 30.0)
_MM_PER_NANOMETRE = 1e-6


def budget(request: BlockBudgetRequest) -> Outcome[BlockBudgetResult]:
    """What height a stack will really have."""
    blocks, odd = _blocks(request)
    count = len(blocks) if request.wrung_to_base else len(blocks) - 1
    films = Films(
        count,
        from_mm(request.film_nanometres * _MM_PER_NANOMETRE, request.units),
        from_mm(request.film_limit_nanometres * _MM_PER_NANOMETRE, request.units),
    )
    surroundings = _surroundings(request)
    lines = budget_lines(blocks, films, surroundings)
    whole = Budget(tuple(_contribution(line) for line in lines))
    sizes = [to_tenth_nm(block.size, request.units) for block in blocks]
    nominal = from_tenth_nm(sum(sizes), request.units)
    deviations = fsum(block.deviation for block in blocks)
    growth = expansion_of(blocks, surroundings)
    result = BlockBudgetResult(
        nominal=nominal,
        deviations=deviations,
        films=films.count * films.mean,
        expansion=growth,
        height=nominal + deviations + films.count * films.mean + growth,
        lines=_described(whole),
        standard_uncertainty=whole.standard_uncertainty,
        expanded_uncertainty=whole.expanded(request.coverage_factor),
        worst_case=whole.worst_case,
    )
    return Outcome(result, (*odd, *_advisories(request, blocks)))


def _blocks(request: BlockBudgetRequest) -> tuple[list[StackBlock], tuple[Advisory, ...]]:
    """The blocks of the stack, and what is to be said of their sizes."""
    if (request.blocks is None) == (request.calibrated_blocks is None):
        both = "were both sent" if request.blocks is not None else "are both missing"
        raise Disagreement(
            f"`blocks` and `calibrated_blocks` {both}; one of them is needed.",
            fields={
                "blocks": "send either this or calibrated_blocks",
                "calibrated_blocks": "send either this or blocks",
            },
        )
    grade = None if request.grade is None else find_grade(request.grade)
    if request.blocks is not None:
        entries = [
            BlockOwned.model_construct(size=size, material=request.block_material)
            for size in request.blocks
        ]
        field = "blocks"
    else:
        entries = list(request.calibrated_blocks or ())
        _require_a_stack(entries)
        require_deviations(entries, request.units, "calibrated_blocks")
        field = "calibrated_blocks"
    sizes = [to_tenth_nm(entry.size, request.units) for entry in entries]
    part = "" if field == "blocks" else "/size"
    paths = [f"{field}/{place}{part}" for place in range(len(sizes))]
    require_sane(sizes, paths, request.units)
    usual = [place for place, entry in enumerate(entries) if not entry.special]
    odd = own_units(
        [sizes[p] for p in usual], [paths[p] for p in usual], request.units, "calibrated_blocks"
    )
    blocks = [
        block
        for place, entry in enumerate(entries)
        for block in [_block(entry, request.units, grade, f"{field}/{place}")] * entry.count
    ]
    return blocks, odd


def _require_a_stack(entries: Sequence[BlockOwned]) -> None:
    """Refuse what cannot stand in a stack: too many blocks, or one that is missing."""
    count = sum(entry.count for entry in entries)
    if count > MOST_IN_STACK:
        raise BeyondBound(
            f"The stack has {count} blocks; a budget takes at most {MOST_IN_STACK}.",
            fields={
                "calibrated_blocks": f"should be at most {MOST_IN_STACK} blocks, counts included"
            },
        )
    for place, entry in enumerate(entries):
        if entry.state == "missing":
            raise Disagreement(
                f"The block of {plain(entry.size, 10)} is said to be missing, so it stands in no "
                "stack.",
                fields={f"calibrated_blocks/{place}/state": "should not be missing"},
            )


def _block(entry: BlockOwned, units: Units, grade: Grade | None, path: str) -> StackBlock:
    """Give a block in `units`; refuses one of which neither calibration nor grade is known."""
    material = materials()[entry.material]
    limit = None
    if entry.expanded_uncertainty is None:
        if grade is None:
            raise Disagreement(
                "Neither a calibration nor a grade is known of the block of "
                f"{plain(entry.size, 10)} "
                f"{units}.",
                fields={
                    "grade": "is required where a block has no expanded_uncertainty",
                    path: "should have an expanded_uncertainty, or the request a grade",
                },
            )
        limit = from_mm(grade.limit_deviation(to_tenth_nm(entry.size, units)), units)
    return StackBlock(
        size=entry.size,
        deviation=entry.deviation,
        limit=limit,
        standard_uncertainty=(entry.expanded_uncertainty or 0.0) / 2.0,
        material=entry.material,
        expansion=material.coefficient,
        expansion_spread=material.spread,
    )


def _surroundings(request: BlockBudgetRequest) -> Surroundings:
    plate = None if request.plate_material is None else materials()[request.plate_material]
    return Surroundings(
        celsius=request.temperature_celsius,
        celsius_limit=request.temperature_limit_celsius,
        plate_expansion=None if plate is None else plate.coefficient,
        plate_spread=0.0 if plate is None else plate.spread,
        blocks_to_plate=request.temperature_difference_celsius,
    )


def _contribution(line: Line) -> Contribution:
    distribution: Distribution = "normal" if line.normal else "rectangular"
    return Contribution(line.name, line.value, distribution, line.sensitivity)


def _described(whole: Budget) -> list[BlockBudgetLine]:
    return [
        BlockBudgetLine(
            name=entry.name,
            distribution=entry.distribution,
            limit=abs(entry.value * entry.sensitivity),
            standard_uncertainty=entry.in_result,
            share=share,
        )
        for entry, share in zip(whole.contributions, whole.shares(), strict=True)
    ]


def _advisories(request: BlockBudgetRequest, blocks: Sequence[StackBlock]) -> Iterator[Advisory]:
    low, high = EXPANSION_RANGE_CELSIUS
    if not low <= request.temperature_celsius <= high:
        yield caution(
            "temperature-out-of-range",
            f"The coefficients of expansion are stated for {plain(low)} to {plain(high)} °C; at "
            f"{plain(request.temperature_celsius)} °C they are less sure.",
        )
    materials_here: set[MaterialName | str] = {block.material for block in blocks}
    if request.temperature_celsius != REFERENCE_CELSIUS and (
        len(materials_here) > 1 or (request.plate_material or "") not in {"", *materials_here}
    ):
        yield note(
            "materials-grow-apart",
            "Blocks and plate of different materials grow apart off 20 °C; let all soak, and "
            "correct for the expansion given.",
        )
    if request.temperature_difference_celsius and request.plate_material is None:
        yield note(
            "difference-not-counted",
            "`temperature_difference_celsius` is of the blocks to the plate, and no "
            "`plate_material` was sent: it is not in this budget.",
        )
    if any(entry.state == "in use" for entry in request.calibrated_blocks or ()):
        yield note(
            "block-in-use",
            "A block of this stack is said to be in use: right where this stack is what uses it.",
        )
    if not request.wrung_to_base:
        yield note(
            "stands-not-wrung",
            "The lowest block is not wrung: what lies between it and its base is not in this "
            "budget.",
        )


BUDGET = Operation(
    topic="blocks",
    verb="budget",
    title="Error budget of a stack",
    summary="The height that a stack will really have, from grades or calibrations, wringing "
    "films and temperature: worst case and standard uncertainty.",
    request=BlockBudgetRequest,
    result=BlockBudgetResult,
    calculate=budget,
    relations=(
        "height = Σ nominal + Σ deviations + films × mean film + expansion",
        "expansion = Σ size × (α_block − α_plate) × (t − 20 °C), α_plate = 0 without a plate",
        "standard_uncertainty² = Σ (sensitivity × standard uncertainty)²",
    ),
    sources=(_GUM, GRADES, _FILM, _EXPANSION),
    example={
        "units": "mm",
        "blocks": [50.0, 10.0, 1.3],
        "grade": "ISO 1",
        "temperature_celsius": 22.0,
        "temperature_limit_celsius": 0.5,
        "block_material": "tungsten-carbide",
        "plate_material": "steel",
    },
    largest_request="20 blocks",
)
