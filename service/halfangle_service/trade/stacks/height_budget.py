"""The error that a stack's height will really have: lengths in one unit, temperatures in °C.

A gauge block's length includes one wringing film (ISO 3650:1998, definition of length: the block is
wrung to a plate; from memory), so a stack wrung to its plate has no film to add on average, only
the films' variation.
"""

from collections.abc import Sequence
from dataclasses import dataclass

from halfangle_service.trade.wording import plain

REFERENCE_CELSIUS = 20.0


@dataclass(frozen=True, slots=True)
class StackBlock:
    """A block in a stack: `size` nominal, `deviation` actual less nominal.

    `limit` is the grade's limit deviation (rectangular), or None where the deviation was measured
    with `standard_uncertainty`. `expansion` and `expansion_spread` are per kelvin.
    """

    size: float
    deviation: float
    limit: float | None
    standard_uncertainty: float
    material: str
    expansion: float
    expansion_spread: float


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Temperature of the blocks, its limits, and the plate that the stack stands against.

    `plate_expansion` None: the height itself is asked for, not its effect on a plate.
    `blocks_to_plate` is a limit of the difference of their temperatures, in kelvins.
    """

    celsius: float
    celsius_limit: float
    plate_expansion: float | None
    plate_spread: float
    blocks_to_plate: float


@dataclass(frozen=True, slots=True)
class Films:
    """Wringing films: how many, and the limit of one film's departure from its mean."""

    count: int
    mean: float
    variation: float


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the budget: `value` is a half-width, or a standard deviation where `normal`."""

    name: str
    value: float
    normal: bool
    sensitivity: float


def expansion_of(blocks: Sequence[StackBlock], surroundings: Surroundings) -> float:
    """Growth of the stack from 20 °C; over a plate's own growth where there is a plate.

    A plate that grows with its blocks keeps its angle: sin θ = h/L, so only the difference of the
    coefficients counts.
    """
    off = surroundings.celsius - REFERENCE_CELSIUS
    # Zero times a drop of temperature is -0.0, which an answer should not show.
    return _per_kelvin(blocks, surroundings) * off + 0.0


def _per_kelvin(blocks: Sequence[StackBlock], surroundings: Surroundings) -> float:
    plate = surroundings.plate_expansion or 0.0
    return sum(block.size * (block.expansion - plate) for block in blocks)


def budget_lines(
    blocks: Sequence[StackBlock], films: Films, surroundings: Surroundings
) -> list[Line]:
    """Give the lines of the budget of a stack's height, those of no effect left out."""
    lines = [*_block_lines(blocks), *_film_lines(films), *_thermal_lines(blocks, surroundings)]
    return [line for line in lines if line.value * line.sensitivity != 0.0]


def _block_lines(blocks: Sequence[StackBlock]) -> list[Line]:
    return [
        Line(f"calibration of {plain(block.size, 10)}", block.standard_uncertainty, True, 1.0)
        if block.limit is None
        else Line(f"grade limit of {plain(block.size, 10)}", block.limit, False, 1.0)
        for block in blocks
    ]


def _film_lines(films: Films) -> list[Line]:
    return [
        Line(f"wringing film {number}", films.variation, False, 1.0)
        for number in range(1, films.count + 1)
    ]


def _thermal_lines(blocks: Sequence[StackBlock], surroundings: Surroundings) -> list[Line]:
    """Temperature is common to all blocks, and a coefficient to all blocks of one material."""
    off = surroundings.celsius - REFERENCE_CELSIUS
    height = sum(block.size for block in blocks)
    growth = sum(block.size * block.expansion for block in blocks)
    lines = [
        Line("temperature", surroundings.celsius_limit, False, _per_kelvin(blocks, surroundings))
    ]
    for material in dict.fromkeys(block.material for block in blocks):
        alike = [block for block in blocks if block.material == material]
        size = sum(block.size for block in alike)
        spread = alike[0].expansion_spread
        lines.append(Line(f"expansion of {material} blocks", spread, False, size * off))
    if surroundings.plate_expansion is not None:
        lines.append(Line("expansion of the plate", surroundings.plate_spread, False, height * off))
        lines.append(
            Line("blocks warmer than the plate", surroundings.blocks_to_plate, False, growth)
        )
    return lines
