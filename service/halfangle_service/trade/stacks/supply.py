"""The blocks that a shop has: nominal size, measured deviation, its uncertainty. 0.1 nm."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property

from halfangle_service.trade.stacks.search.layers import Layers, kinds_of
from halfangle_service.trade.stacks.search.stacking import StackTable, ordered_table


@dataclass(frozen=True, slots=True)
class Piece:
    """One block: `size` nominal, `deviation` actual less nominal, both in 0.1 nm.

    `standard_uncertainty` is that of the deviation, in 0.1 nm: of the calibration where the block
    is `calibrated`, else of its grade, whose `limit` (0.1 nm) then stands; 0 and None where neither
    is known. `wrung` counts how often the block was used, for stacks that spread the wear. `mark`
    identifies it, and makes no difference otherwise.
    """

    size: int
    deviation: int = 0
    standard_uncertainty: float = 0.0
    calibrated: bool = False
    limit: float | None = None
    material: str = "steel"
    wrung: int = 0
    mark: str | None = None

    @property
    def actual(self) -> int:
        """Actual length in 0.1 nm."""
        return self.size + self.deviation

    @property
    def order(self) -> tuple[int, int, float, bool, str, int]:
        """What makes a difference between blocks; those alike come next to each other."""
        return (
            self.size,
            self.deviation,
            self.standard_uncertainty,
            self.calibrated,
            self.material,
            self.wrung,
        )

    @property
    def error_known(self) -> bool:
        """True where it is calibrated or has a grade."""
        return self.calibrated or self.limit is not None


@dataclass(frozen=True)
class Box:
    """Blocks at hand, one entry a block, largest first, blocks alike next to each other."""

    pieces: tuple[Piece, ...]

    @classmethod
    def of(cls, pieces: Iterable[Piece]) -> "Box":
        """Give a box of these blocks, in order."""
        return cls(tuple(sorted(pieces, key=lambda piece: piece.order, reverse=True)))

    @cached_property
    def sizes(self) -> tuple[int, ...]:
        """Nominal sizes, largest first."""
        return tuple(piece.size for piece in self.pieces)

    @cached_property
    def kinds(self) -> tuple[int, ...]:
        """The kind of each block: blocks that are alike have one number."""
        return kinds_of([piece.order for piece in self.pieces])

    @cached_property
    def materials(self) -> frozenset[str]:
        """Materials of the blocks."""
        return frozenset(piece.material for piece in self.pieces)

    @cached_property
    def uncertainty_known(self) -> bool:
        """True where every block is calibrated or has a grade."""
        return all(piece.error_known for piece in self.pieces)

    def layers(self, max_blocks: int) -> Layers:
        """The stacks of up to so many of these blocks by their count."""
        return Layers(self.table(max_blocks), self.kinds)

    def table(self, max_blocks: int) -> StackTable:
        """The fewest blocks of stacks of up to so many of these blocks."""
        return ordered_table(self.sizes, max_blocks)

    def pick(self, positions: Iterable[int]) -> tuple[Piece, ...]:
        """Give the blocks at these positions."""
        return tuple(self.pieces[position] for position in positions)
