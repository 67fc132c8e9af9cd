"""How far a stack's height may be off: its blocks, its wringing films, its temperature.

Blocks are pieces in 0.1 nm; budgets are in `units`, temperatures in °C. A gauge block's length
includes one wringing film (ISO 3650:1998, definition of length: the block is wrung to a plate; from
memory), so a stack wrung to its plate has no film to add on average, only the films' variation.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.materials.expansion import (
    REFERENCE_CELSIUS,
    MaterialName,
    materials,
)
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.units import Units, from_tenth_nm, to_tenth_nm
from halfangle_service.trade.wording import plain, told_apart

#: Significant digits of a block's nominal size: 100.0005 mm has seven.
_DIGITS = 7
_NOTHING_KNOWN = Budget((), not_stated=("grade",))


@dataclass(frozen=True, slots=True)
class Films:
    """Wringing films: how many, and the limit of one film's departure from its mean, in `units`."""

    count: int
    mean: float
    variation: float


@dataclass(frozen=True, slots=True)
class Surroundings:
    """Temperature of the blocks, its limit, and what the stack stands against.

    Without a `plate` the height itself is asked for, not its effect on a plate. `celsius_limit` and
    `blocks_to_plate`, a limit of the difference of their temperatures, are in kelvins; None where
    not stated, as the temperature itself.
    """

    celsius: float | None
    celsius_limit: float | None
    plate: MaterialName | None
    blocks_to_plate: float | None

    @property
    def off(self) -> float:
        """Kelvins from the reference temperature, as far as is known."""
        return 0.0 if self.celsius is None else self.celsius - REFERENCE_CELSIUS


def blocks_budget(pieces: Sequence[Piece], units: Units) -> Budget:
    """Give what calibrations and grades say of a stack's height.

    Nothing is said, and `grade` named as not stated, where neither is known of some block.
    """
    for piece in pieces:  # most often the first one tells, and a stack should cost little
        if not piece.error_known:
            return _NOTHING_KNOWN
    return Budget(tuple(_of_blocks(pieces, units)))


def height_budget(
    pieces: Sequence[Piece],
    units: Units,
    films: Films,
    surroundings: Surroundings,
    not_stated: Iterable[str],
) -> Budget:
    """Give the budget of a stack's height; films and temperature only where they have an effect."""
    around = (*_of_films(films), *_of_temperature(pieces, units, surroundings))
    effective = (contribution for contribution in around if contribution.at_limit)
    return Budget((*_of_blocks(pieces, units), *effective), not_stated=tuple(not_stated))


def expansion_of(pieces: Sequence[Piece], units: Units, surroundings: Surroundings) -> float | None:
    """Growth of the stack from 20 °C in `units`; over a plate's own growth where there is a plate.

    A plate that grows with its blocks keeps its angle: sin θ = h/L, so only the difference of the
    coefficients counts. None where they grow, and the temperature was not stated.
    """
    growth = growth_per_kelvin(pieces, units, surroundings.plate)
    if growth and surroundings.celsius is None:
        return None
    # Zero times a drop of temperature is -0.0, which an answer should not show.
    return growth * surroundings.off + 0.0


def growth_per_kelvin(pieces: Sequence[Piece], units: Units, plate: MaterialName | None) -> float:
    """Growth of the stack for one kelvin in `units`, over that of a plate where there is one."""
    under = 0.0 if plate is None else materials()[plate].coefficient
    return sum(
        from_tenth_nm(piece.size, units) * (materials()[piece.material].coefficient - under)
        for piece in pieces
    )


def _of_blocks(pieces: Sequence[Piece], units: Units) -> Iterator[Contribution]:
    unit = to_tenth_nm(1.0, units)
    sizes = told_apart(plain(piece.size / unit, _DIGITS) for piece in pieces)
    for piece, size in zip(pieces, sizes, strict=True):
        if piece.calibrated:
            spread = piece.standard_uncertainty / unit
            yield Contribution("block_calibration", spread, "normal", of=size)
        else:
            yield Contribution("block_grade_limit", (piece.limit or 0.0) / unit, of=size)


def _of_films(films: Films) -> Iterator[Contribution]:
    for number in range(1, films.count + 1):
        yield Contribution("film_error_limit_nanometres", films.variation, of=str(number))


def _of_temperature(
    pieces: Sequence[Piece], units: Units, surroundings: Surroundings
) -> Iterator[Contribution]:
    """Temperature is common to all blocks, and a coefficient to all blocks of one material."""
    plate, off = surroundings.plate, surroundings.off
    sizes = [(piece.material, from_tenth_nm(piece.size, units)) for piece in pieces]
    if surroundings.celsius_limit is not None:
        growth = growth_per_kelvin(pieces, units, plate)
        yield Contribution(
            "temperature_error_limit_celsius",
            surroundings.celsius_limit,
            sensitivity=growth,
            unit="celsius",
        )
    for material in dict.fromkeys(material for material, _ in sizes):
        length = sum(size for name, size in sizes if name == material)
        yield _coefficient("block_expansion", material, length * off, of=material)
    if plate is None:
        return
    yield _coefficient("plate_expansion", plate, sum(size for _, size in sizes) * off)
    if surroundings.blocks_to_plate is not None:
        alone = growth_per_kelvin(pieces, units, None)
        difference = surroundings.blocks_to_plate
        yield Contribution(
            "temperature_difference_celsius", difference, sensitivity=alone, unit="celsius"
        )


def _coefficient(
    name: str, material: str, sensitivity: float, of: str | None = None
) -> Contribution:
    """A coefficient of expansion, which is known to within its spread."""
    spread = materials()[material].spread
    return Contribution(name, spread, sensitivity=sensitivity, unit="per_kelvin", of=of)
