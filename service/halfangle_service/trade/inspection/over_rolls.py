"""An outer cone measured over two equal rolls at two heights: M1, M2, and their difference.

The part stands upright on one of its ends, the rolls on the plate, then on equal stacks. The
difference alone makes the angle: tan α = ΔM / (2 H). Lengths in one unit, angles in radians.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import partial

from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    OutOfReach,
    Proof,
    Reading,
    Setting,
    Unseen,
    proof_of,
    reading_of,
    reading_of_both,
)
from halfangle_service.trade.tapers.contact import diameter_over_rolls, lean_over_rolls
from halfangle_service.trade.tapers.two_heights import (
    TwoHeights,
    Upright,
    largest_rise,
    largest_roll,
    roll_for,
    two_heights,
)
from halfangle_service.trade.uncertainty import (
    Budget,
    DecisionRule,
    LargestError,
    Measured,
    budget_of,
)
from halfangle_service.trade.units import Units, from_mm
from halfangle_service.trade.wording import block, figure, length

#: Rolls thinner than this, in mm, nobody measures with: common practice, no source.
_THINNEST_MM = 0.5
#: Part of the large diameter that a small end must have to stand on: common practice, no source.
_WIDE_ENOUGH = 0.25
_CANNOT_SEE: tuple[Unseen, ...] = (
    "form-between-contacts",
    "form-round-the-part",
    "runout",
    "squareness-of-the-standing-face",
)


@dataclass(frozen=True, slots=True)
class RollsAtHand:
    """Pairs of rolls by their diameters, and how the part stands.

    `rise` is the height of the blocks under the rolls where it was chosen, else the highest in
    whole `step`s; `on_small_end` is None where it is to stand as it can. Errors are the largest,
    plus or minus, None where not stated.
    """

    diameters: Sequence[float]
    on_small_end: bool | None
    rise: float | None
    step: float
    measure_error: float | None
    roll_error: float | None
    rise_error: float | None


def inspected_over_rolls(
    part: InspectedCone, at_hand: RollsAtHand, units: Units, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What to expect over these rolls, and what it proves; or why they find no place."""
    if part.internal:
        return OutOfReach(
            "over-rolls",
            "Rolls lie against an outer cone; a socket has none.",
            "rolls",
            "Two balls at two depths do the same inside.",
        )
    if at_hand.on_small_end is None:
        at_hand = replace(at_hand, on_small_end=_stands_on_small_end(part))
    elif at_hand.on_small_end and not _stands_on_small_end(part):
        return OutOfReach(
            "over-rolls",
            f"A small end of {figure(part.small_diameter, units)} is no face to stand a cone of "
            f"{figure(part.cone.large_diameter, units)} on.",
            "rolls/standing_on",
            "Stand it on its large end, the rolls on the plane of that.",
        )
    rolls = _place(part, at_hand, units)
    if isinstance(rolls, OutOfReach):
        return rolls
    found = _RollsOnPart(part, at_hand, rolls)
    angle = proof_of("angle", part.angle, found.angle_budget(), rule)
    return Inspected(
        "over-rolls",
        _how(at_hand, rolls, units),
        (Setting("roll_diameter", rolls.roll_diameter), Setting("stack_rise", rolls.rise)),
        found.readings(angle),
        (angle, *found.size_proof(rule)),
        _CANNOT_SEE,
    )


def _stands_on_small_end(part: InspectedCone) -> bool:
    """True where the small end is a face wide enough to stand the part on."""
    return part.small_diameter >= _WIDE_ENOUGH * part.cone.large_diameter


def _place(part: InspectedCone, at_hand: RollsAtHand, units: Units) -> TwoHeights | OutOfReach:
    """Which rolls, and how high the second time; or why not."""
    lean = part.cone.half_rad * (-1.0 if at_hand.on_small_end else 1.0)
    rolls = sorted(at_hand.diameters)
    if at_hand.rise is None:
        found = two_heights(part.length, lean, rolls, at_hand.step)
        return found or _no_room(part, lean, rolls[0], at_hand.step, units)
    roll = roll_for(part.length, rolls)
    most = largest_rise(part.length, lean, roll)
    if at_hand.rise > most * (1.0 + 1e-12):
        if most < at_hand.step:
            return _no_room(part, lean, rolls[0], at_hand.step, units)
        return OutOfReach(
            "over-rolls",
            f"On blocks of {figure(at_hand.rise, units)} rolls of {figure(roll, units)} would "
            "touch too near the end of the cone, or past it.",
            "rolls/stack_rise",
            f"Blocks of at most {figure(most, units)} under them.",
        )
    return TwoHeights(roll, at_hand.rise)


def _no_room(
    part: InspectedCone, lean: float, smallest: float, step: float, units: Units
) -> OutOfReach:
    most = largest_roll(part.length, lean, step)
    thinnest = from_mm(_THINNEST_MM, units)
    return OutOfReach(
        "over-rolls",
        f"Rolls of {figure(smallest, units)} leave no room for a second height on a cone "
        f"{figure(part.length, units)} long.",
        "rolls/roll_diameters",
        f"Rolls of at most {figure(most, units)}." if most >= thinnest else None,
    )


@dataclass(frozen=True, slots=True)
class _RollsOnPart:
    """These rolls against this part: their measures, as functions of the part's errors."""

    part: InspectedCone
    at_hand: RollsAtHand
    rolls: TwoHeights

    def measure(self, rise: float, angle_error: float, size_error: float) -> float:
        """Measure over the rolls on blocks of that height."""
        large = self.part.cone.large_diameter + size_error
        half = self.part.half_rad(angle_error)
        upright = Upright(large, half, self.part.length, bool(self.at_hand.on_small_end))
        roll = self.rolls.roll_diameter
        return upright.measure(roll, roll / 2.0 + rise)

    def difference(self, angle_error: float) -> float:
        """Upper less lower measure: 2 H tan α, signed as the part leans."""
        lean = self.part.half_rad(angle_error) * (1.0 if self.at_hand.on_small_end else -1.0)
        return 2.0 * self.rolls.rise * math.tan(lean)

    def readings(self, angle: Proof) -> tuple[Reading, ...]:
        """M1, M2 and their difference, which alone proves the angle."""
        return (
            reading_of_both("lower_measure", partial(self.measure, 0.0), self.part),
            reading_of_both("upper_measure", partial(self.measure, self.rolls.rise), self.part),
            reading_of("measure_difference", self.difference, angle),
        )

    def angle_budget(self) -> Budget:
        """Budget of the included angle, by that of `tapers.over-rolls` at the nominal part."""
        return budget_of(lambda *read: 2.0 * lean_over_rolls(*read), *self._read)

    def size_proof(self, rule: DecisionRule) -> tuple[Proof, ...]:
        """Proof of the large diameter, where its tolerance was stated."""
        if self.part.size is None:
            return ()
        large_end = partial(
            diameter_over_rolls, self.part.length if self.at_hand.on_small_end else 0.0, 0.0
        )
        rolls = LargestError("roll_error_limit", self.at_hand.roll_error)
        roll = Measured("roll_diameter", self.rolls.roll_diameter, rolls, above=0.0)
        budget = budget_of(large_end, *self._read, roll)
        return (proof_of("large-diameter", self.part.size, budget, rule),)

    @property
    def _read(self) -> tuple[Measured, ...]:
        measures = LargestError("measure_error_limit", self.at_hand.measure_error)
        stacks = LargestError("stack_rise_error_limit", self.at_hand.rise_error)
        rise = self.rolls.rise
        return (
            Measured("lower_measure", self.measure(0.0, 0.0, 0.0), measures),
            Measured("upper_measure", self.measure(rise, 0.0, 0.0), measures),
            Measured("stack_rise", rise, stacks, above=0.0),
        )


def _how(at_hand: RollsAtHand, rolls: TwoHeights, units: Units) -> str:
    end = "small" if at_hand.on_small_end else "large"
    return (
        f"Stand the part on its {end} end, square and clean. Lay two rolls of "
        f"{block(rolls.roll_diameter, units)} {units} against it on the plate and measure over "
        f"both; then the same rolls on two equal stacks of {length(rolls.rise, units)}."
    )
