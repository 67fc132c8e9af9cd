"""A stack's error budget: the height that it will really have, and how sure that is."""

from collections.abc import Iterator, Sequence
from math import fsum
from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Celsius,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Unit,
    UnitsField,
    from_mm,
    from_tenth_nm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.blocks import BlockOwned, SetName
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.gauging.standing_stack import (
    MOST_IN_STACK,
    STACKED,
    pieces_of_stack,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.blocks.sources import GRADES
from halfangle_service.trade.stacks.height_budget import (
    Films,
    Surroundings,
    expansion_of,
    growth_per_kelvin,
    height_budget,
)
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.materials.expansion import REFERENCE_CELSIUS, MaterialName
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
_Nanometres = Annotated[
    float, Field(strict=True, allow_inf_nan=False, ge=-1000, le=1000), Unit("nanometre")
]
_NonNegativeNanometres = Annotated[
    float, Field(strict=True, allow_inf_nan=False, ge=0, le=1000), Unit("nanometre")
]
_Kelvins = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=0, le=50), Unit("celsius")]


class BlockBudgetRequest(RequestModel):
    """A stack, its blocks' grades or calibrations, and where it stands."""

    rules = (Rule("one-of", STACKED),)

    units: UnitsField
    blocks: Annotated[list[Length], Field(min_length=1, max_length=MOST_IN_STACK)] | None = Field(
        None,
        description="Nominal sizes of the blocks in the stack, in `units`. Either this or "
        "`calibrated_blocks`.",
        examples=[[2.0, 0.5]],
    )
    calibrated_blocks: (
        Annotated[list[BlockOwned], Field(min_length=1, max_length=MOST_IN_STACK)] | None
    ) = Field(
        None,
        description="The blocks with what is known of them: deviation, uncertainty, material. At "
        "most 20 in all, counts included, none of them `missing`.",
    )
    grade: SetName | None = Field(
        None,
        description="Tolerance grade of blocks without a calibration, as `GET /v1/blocks/grades` "
        "lists it. Needed where some block has none.",
        examples=["iso-1"],
    )
    block_material: MaterialName = Field(
        "steel", description="Material of the blocks given by nominal size alone."
    )
    plate_material: MaterialName | None = Field(
        None,
        description="Material of the sine plate or the part that the stack stands against: the "
        "height is then what it is against the plate, which grows too. Absent: the height by "
        "itself.",
    )
    temperature_celsius: Celsius | None = Field(
        None,
        description="Temperature of the blocks; 20 °C is the reference (ISO 1). Not stated where "
        "absent: the height is then the one at 20 °C, and the answer names it.",
    )
    temperature_error_limit_celsius: _Kelvins | None = Field(
        None, description="Largest error ± of that temperature, in kelvins."
    )
    temperature_difference_celsius: _Kelvins | None = Field(
        None,
        description="Limit ± of the difference of the blocks' temperature to the plate's, in "
        "kelvins; counts with `plate_material` only, and an advisory says so where that is absent.",
    )
    film_nanometres: _Nanometres = Field(
        0.0,
        description="Mean by which a wringing film is thicker than the one that a block's length "
        "includes by definition, in nanometres.",
    )
    film_error_limit_nanometres: _NonNegativeNanometres = Field(
        10.0,
        description="Largest error ± of each film about that mean, in nanometres; the presetting "
        "is from memory of national laboratory practice: 5 to 10 for clean, well wrung blocks, "
        "more where they are worn.",
    )
    wrung_to_base: bool = Field(
        True,
        description="True where the lowest block is wrung to its base: one film a block. False "
        "where it merely stands: one film less, and flatness and dirt below it are not covered.",
    )
    coverage_factor: Annotated[float, Field(ge=1, le=4), Unit("1")] | None = Field(
        None,
        description="Coverage factor k of the expanded uncertainty. Absent: what covers 95 %, by "
        "the distributions of the contributions.",
    )


class BlockBudgetResult(ResultModel):
    """The height that the stack will really have, and how sure that is."""

    total: LengthOut = Field(description="Sum of the nominal sizes.")
    deviations: LengthOut = Field(description="Sum of the measured deviations.")
    films: LengthOut = Field(description="Sum of the films' means.")
    expansion: LengthOut | None = Field(
        description="Growth from 20 °C: of the stack by itself, or over what the plate grows; null "
        "where it grows and the temperature was not stated."
    )
    height: LengthEstimate = Field(
        description="Height to expect: total, deviations, films and what is known of the "
        "expansion, with the budget of its errors, in order of their sources."
    )


@operation(
    "blocks.budget",
    relations=(
        "height = Σ nominal + Σ deviations + films × mean film + expansion",
        "expansion = Σ size × (α_block − α_plate) × (t − 20 °C), α_plate = 0 without a plate",
        "standard_uncertainty² = Σ (sensitivity × standard uncertainty)²",
    ),
    sources=(_GUM, GRADES, _FILM, _EXPANSION),
    example={
        "units": "mm",
        "blocks": [50.0, 10.0, 1.3],
        "grade": "iso-1",
        "temperature_celsius": 22.0,
        "temperature_error_limit_celsius": 0.5,
        "block_material": "tungsten-carbide",
        "plate_material": "steel",
    },
    largest_request="20 blocks",
)
def budget(request: BlockBudgetRequest) -> Outcome[BlockBudgetResult]:
    """Error budget of a stack.

    The height that a stack will really have, from grades or calibrations, wringing films and
    temperature: worst case and standard uncertainty.
    """
    units = request.units
    pieces, odd = _pieces(request)
    count = len(pieces) if request.wrung_to_base else len(pieces) - 1
    films = Films(
        count,
        from_mm(request.film_nanometres * _MM_PER_NANOMETRE, units),
        from_mm(request.film_error_limit_nanometres * _MM_PER_NANOMETRE, units),
    )
    around = Surroundings(
        celsius=request.temperature_celsius,
        celsius_limit=request.temperature_error_limit_celsius,
        plate=request.plate_material,
        blocks_to_plate=request.temperature_difference_celsius,
    )
    whole = height_budget(pieces, units, films, around, _not_stated(request, pieces))
    total = from_tenth_nm(sum(piece.size for piece in pieces), units)
    deviations = fsum(e.deviation for e in request.calibrated_blocks or () for _ in range(e.count))
    growth = expansion_of(pieces, units, around)
    height = total + deviations + films.count * films.mean + (growth or 0.0)
    result = BlockBudgetResult(
        total=total,
        deviations=deviations,
        films=films.count * films.mean,
        expansion=growth,
        height=estimate(LengthEstimate, whole, height, coverage=request.coverage_factor),
    )
    return Outcome(result, (*odd, *_advisories(request, pieces)))


def _not_stated(request: BlockBudgetRequest, pieces: Sequence[Piece]) -> Iterator[str]:
    """What was not stated and would count; the temperature always: see `not_stated_of`."""
    if request.temperature_celsius is None:
        yield "temperature_celsius"
    limit, plate = request.temperature_error_limit_celsius, request.plate_material
    if limit is None and growth_per_kelvin(pieces, request.units, plate):
        yield "temperature_error_limit_celsius"
    if request.temperature_difference_celsius is None and plate is not None:
        yield "temperature_difference_celsius"


def _pieces(request: BlockBudgetRequest) -> tuple[list[Piece], tuple[Advisory, ...]]:
    """The blocks of the stack, and what is to be said of their sizes."""
    one_of(request, *STACKED)
    return pieces_of_stack(
        request.blocks,
        request.calibrated_blocks,
        request.block_material,
        request.grade,
        request.units,
        error_needed=True,
    )


def _advisories(request: BlockBudgetRequest, pieces: Sequence[Piece]) -> Iterator[Advisory]:
    low, high = EXPANSION_RANGE_CELSIUS
    stated = request.temperature_celsius
    celsius = REFERENCE_CELSIUS if stated is None else stated
    if not low <= celsius <= high:
        yield caution(
            "temperature-out-of-range",
            f"The coefficients of expansion are stated for {plain(low)} to {plain(high)} °C; at "
            f"{plain(celsius)} °C they are less sure.",
        )
    materials = {piece.material for piece in pieces}
    if celsius != REFERENCE_CELSIUS and (
        len(materials) > 1 or (request.plate_material or "") not in {"", *materials}
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
    if any(entry.state == "in-use" for entry in request.calibrated_blocks or ()):
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
