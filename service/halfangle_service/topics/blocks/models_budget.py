"""Requests and results of a stack's error budget."""

from typing import Annotated

from pydantic import Field

from halfangle_service.fields import (
    Celsius,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    Unit,
    Units,
)
from halfangle_service.fields.blocks import BlockOwned, SetName
from halfangle_service.trade.tables.materials.expansion import MaterialName
from halfangle_service.trade.uncertainty import Distribution

#: Most blocks in one stack, counts included.
MOST_IN_STACK = 20
_Nanometres = Annotated[
    float, Field(strict=True, allow_inf_nan=False, ge=-1000, le=1000), Unit("nanometre")
]
_NonNegativeNanometres = Annotated[
    float, Field(strict=True, allow_inf_nan=False, ge=0, le=1000), Unit("nanometre")
]
_Kelvins = Annotated[float, Field(strict=True, allow_inf_nan=False, ge=0, le=50), Unit("celsius")]


class BlockBudgetRequest(RequestModel):
    """A stack, its blocks' grades or calibrations, and where it stands."""

    units: Units = Field(description="Unit of every length here and in the answer.")
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
        examples=["ISO 1"],
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
    temperature_celsius: Celsius = Field(20.0, description="Temperature of the blocks.")
    temperature_limit_celsius: _Kelvins = Field(
        0.0, description="Limit ± of that temperature, in kelvins."
    )
    temperature_difference_celsius: _Kelvins = Field(
        0.0,
        description="Limit ± of the difference of the blocks' temperature to the plate's, in "
        "kelvins; counts with `plate_material` only, and an advisory says so where that is absent.",
    )
    film_nanometres: _Nanometres = Field(
        0.0,
        description="Mean by which a wringing film is thicker than the one that a block's length "
        "includes by definition, in nanometres.",
    )
    film_limit_nanometres: _NonNegativeNanometres = Field(
        10.0,
        description="Limit ± of each film about that mean, in nanometres; the presetting is from "
        "memory of national laboratory practice: 5 to 10 for clean, well wrung blocks, more where "
        "they are worn.",
    )
    wrung_to_base: bool = Field(
        True,
        description="True where the lowest block is wrung to its base: one film a block. False "
        "where it merely stands: one film less, and flatness and dirt below it are not covered.",
    )
    coverage_factor: Annotated[float, Field(ge=1, le=4), Unit("1")] = Field(
        2.0, description="Coverage factor k of the expanded uncertainty."
    )


class BlockBudgetLine(ResultModel):
    """One line of the budget."""

    name: str = Field(description="What it comes from.")
    distribution: Distribution = Field(description="Its distribution.")
    limit: LengthOut = Field(
        description="What it may add to the height, times the sensitivity: the half-width where "
        "`rectangular`; where `normal`, as a calibration is, one standard deviation, which is no "
        "limit: `worst_case` counts three of them."
    )
    standard_uncertainty: LengthOut = Field(description="What it adds as standard uncertainty.")
    share: Annotated[float, Unit("percent")] = Field(description="Share in the combined variance.")


class BlockBudgetResult(ResultModel):
    """The height that the stack will really have, and how sure that is."""

    nominal: LengthOut = Field(description="Sum of the nominal sizes.")
    deviations: LengthOut = Field(description="Sum of the measured deviations.")
    films: LengthOut = Field(description="Sum of the films' means.")
    expansion: LengthOut = Field(
        description="Growth from 20 °C: of the stack by itself, or over what the plate grows."
    )
    height: LengthOut = Field(
        description="Height to expect: nominal, deviations, films and expansion together."
    )
    lines: list[BlockBudgetLine] = Field(description="The budget, in order of its sources.")
    standard_uncertainty: LengthOut = Field(
        description="Combined standard uncertainty of the height."
    )
    expanded_uncertainty: LengthOut = Field(description="That times the coverage factor.")
    worst_case: LengthOut = Field(
        description="Sum of all limits as if all stood against the stack at once; a normal line, "
        "such as a calibration, counts with three standard deviations. `worst_case` of "
        "`blocks/stack` and `blocks/check` is another: blocks alone, a calibrated one with its "
        "expanded uncertainty (k = 2)."
    )
