"""Single mistakes in setting that would make what was measured, the most plausible first.

Which mistake is likelier than which is common practice and has no source: one in working out the
whole setting, where it fits at all, before one with a block, since it hardly fits by chance; of
blocks those of `trade.stacks.mistakes`. Angles in radians, heights in 0.1 nm.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from halfangle_service.trade.sine.compound import (
    BaseAxis,
    HingedPlate,
    Vector,
    hinge_angles,
    normal_from_hinges,
    slopes_of_normal,
    uncorrected_hinges,
    wrong_frame_hinges,
)
from halfangle_service.trade.sine.geometry import angle_for_height, height_for_angle
from halfangle_service.trade.stacks.mistakes import (
    LIKENESS_ORDER,
    Likeness,
    distinct,
    single_mistakes,
)
from halfangle_service.trade.stacks.supply import Piece
from halfangle_service.trade.tables.correction.causes import CauseName

BlockSlipName = Literal["wrong-block", "blocks-exchanged", "block-left-out", "block-too-many"]
WholeSlipName = Literal[
    "included-for-half",
    "half-of-half",
    "tangent-for-sine",
    "complement-set",
    "base-step-left-out",
    "hinges-exchanged",
    "other-frame",
    "angles-not-converted",
    "mirrored",
]
#: Mistakes with a block, the likelier first.
_BLOCK_SLIPS: tuple[BlockSlipName, ...] = (
    "wrong-block",
    "blocks-exchanged",
    "block-left-out",
    "block-too-many",
)
#: The cause that a mistake in the whole setting is.
CAUSE_OF: dict[WholeSlipName, CauseName] = {
    "included-for-half": "half-for-included",
    "half-of-half": "half-for-included",
    "tangent-for-sine": "tangent-for-sine",
    "complement-set": "complement-set",
    "base-step-left-out": "base-step-left-out",
    "hinges-exchanged": "wrong-hinge-order",
    "other-frame": "wrong-hinge-order",
    "angles-not-converted": "wrong-hinge-order",
    "mirrored": "wrong-hand",
}


@dataclass(frozen=True, slots=True)
class BlockSlip:
    """One mistake with a block of one stack, or a block of each exchanged for the other's.

    `place` is that of the stack, `changes` what is then too much in each of them; of an exchange
    `meant` belongs in the first stack and `wrung` in the second.
    """

    name: BlockSlipName
    place: int
    meant: Piece | None
    wrung: Piece | None
    likeness: Likeness
    changes: tuple[int, ...]

    @property
    def order(self) -> tuple[int, int]:
        """How plausible it is; the less the more."""
        return _BLOCK_SLIPS.index(self.name), LIKENESS_ORDER.index(self.likeness)


def block_slips(
    stacks: Sequence[Sequence[Piece]], spare: Sequence[Piece], unit: int
) -> Iterator[BlockSlip]:
    """Every single mistake with the blocks of these stacks; `spare` are those left in the box."""
    for place, stack in enumerate(stacks):
        for mistake in single_mistakes(stack, spare, (), (), unit):
            name = next(each for each in _BLOCK_SLIPS if each == mistake.kind)
            changes = [0] * len(stacks)
            changes[place] = mistake.change
            yield BlockSlip(
                name, place, mistake.meant, mistake.wrung, mistake.likeness, tuple(changes)
            )
    if len(stacks) > 1:
        for first in distinct(stacks[0]):
            for second in distinct(stacks[1]):
                change = second.actual - first.actual
                if first.size != second.size:
                    exchanged = (change, -change)
                    yield BlockSlip("blocks-exchanged", 0, first, second, "none", exchanged)


def wrong_angles(half_rad: float, *, turned: bool) -> Iterator[tuple[WholeSlipName, float]]:
    """What a flank's angle comes out as where the angle itself was taken wrongly.

    Only a cone has an included angle to be taken for its half.
    """
    if turned:
        yield "included-for-half", 2.0 * half_rad
        yield "half-of-half", half_rad / 2.0
    yield "complement-set", math.pi / 2.0 - half_rad


def wrong_heights(
    center_distance: float, angle_rad: float, offset: float
) -> Iterator[tuple[WholeSlipName, float]]:
    """What a plate or a dresser stands at where its height was worked out wrongly."""
    by_tangent = center_distance * math.tan(angle_rad)
    if by_tangent < center_distance:
        yield "tangent-for-sine", angle_for_height(center_distance, by_tangent)
    rise = height_for_angle(center_distance, angle_rad) - offset
    if offset and 0.0 < rise < center_distance:
        yield "base-step-left-out", angle_for_height(center_distance, rise)


@dataclass(frozen=True, slots=True)
class WrongHinges:
    """A compound face on its plates, as a mistake in the whole setting makes it."""

    normal: Vector
    plates: tuple[HingedPlate, HingedPlate]
    base_axis: BaseAxis

    @property
    def hinges(self) -> tuple[float, float]:
        """Hinge angles wanted."""
        return hinge_angles(self.normal, "part", self.base_axis)

    def views(self, hinges: tuple[float, float]) -> tuple[float, float]:
        """Angles in both views of what is ground with these hinge angles."""
        return slopes_of_normal(normal_from_hinges(*hinges, "part", self.base_axis))

    def mistakes(self) -> Iterator[tuple[WholeSlipName, tuple[float, float]]]:
        """Each mistake, with the angles that both views then show."""
        x_rad, y_rad = slopes_of_normal(self.normal)
        yield "mirrored", (-x_rad, y_rad)
        yield "mirrored", (x_rad, -y_rad)
        pairs: tuple[tuple[WholeSlipName, tuple[float, float] | None], ...] = (
            ("hinges-exchanged", self._exchanged()),
            ("other-frame", wrong_frame_hinges(self.normal, "part", self.base_axis)),
            ("angles-not-converted", uncorrected_hinges(self.normal, "part", self.base_axis)),
            ("tangent-for-sine", self._by_tangent()),
        )
        for name, hinges in pairs:
            if hinges is not None:
                yield name, self.views(hinges)

    def _exchanged(self) -> tuple[float, float] | None:
        """Each stack under the other plate's roll."""
        base, upper = self.hinges
        return self._on(self.plates[1].height(upper), self.plates[0].height(base))

    def _by_tangent(self) -> tuple[float, float] | None:
        heights = (
            plate.step + plate.center_distance * math.tan(abs(hinge))
            for plate, hinge in zip(self.plates, self.hinges, strict=True)
        )
        return self._on(*heights)

    def _on(self, base: float, upper: float) -> tuple[float, float] | None:
        """The hinge angles on these stacks, raised as wanted; None where a plate stands on none."""
        found = []
        for plate, height, like in zip(self.plates, (base, upper), self.hinges, strict=True):
            rise = height - plate.step
            if not 0.0 <= rise < plate.center_distance:
                return None
            angle = angle_for_height(plate.center_distance, rise)
            found.append(math.copysign(angle, like))
        return found[0], found[1]
