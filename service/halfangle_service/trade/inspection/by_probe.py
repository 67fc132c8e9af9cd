"""A cone or socket probed at two depths: by a height gauge or a machine, the tip's size known.

Lengths in one unit, depths from the part's large end, angles in radians.
"""

import math
from dataclasses import dataclass
from functools import partial

from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    OutOfReach,
    Proof,
    Setting,
    proof_of,
    reading_of,
    reading_of_both,
)
from halfangle_service.trade.inspection.sine_plate import TRAVEL_SHARE
from halfangle_service.trade.tapers.probed import face_diameter_probed, half_angle_probed
from halfangle_service.trade.uncertainty import (
    DecisionRule,
    LargestError,
    Measured,
    budget_of,
)
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure


@dataclass(frozen=True, slots=True)
class ProbeAtHand:
    """A tip, and the largest errors of travel, depth and tip; None where not stated.

    `step` is the round step in which depths are set.
    """

    tip_diameter: float
    step: float
    measure_error: float | None
    depth_error: float | None
    tip_error: float | None


def inspected_by_probe(
    part: InspectedCone, at_hand: ProbeAtHand, units: Units, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What travel to expect across the part near either end, and what that proves."""
    found = _Probed(part, at_hand)
    if not found.has_room():
        return OutOfReach(
            "probe",
            f"A tip of {figure(at_hand.tip_diameter, units)} does not touch this part near both "
            "its ends.",
            "probe/tip_diameter",
            "A smaller tip.",
        )
    first, second = found.depths
    # A part narrows with depth: the half angle that its travels give is negative.
    angle = proof_of(
        "angle",
        part.angle,
        budget_of(lambda *read: -2.0 * half_angle_probed(*_split(read)), *found.read[:4]),
        rule,
    )
    where = "from wall to wall" if part.internal else "from side to side, the tip outside"
    return Inspected(
        "probe",
        f"Set the part's axis along the depth. At {figure(first, units)} and at "
        f"{figure(second, units)} from the large end, tip's center, measure its travel across the "
        f"axis {where}, each at its turning point.",
        (
            Setting("tip_diameter", at_hand.tip_diameter),
            Setting("first_depth", first),
            Setting("second_depth", second),
        ),
        (
            reading_of_both("first_tip_travel", partial(found.travel, first), part),
            reading_of_both("second_tip_travel", partial(found.travel, second), part),
            reading_of(
                "tip_travel_difference",
                lambda error: found.travel(first, error, 0.0) - found.travel(second, error, 0.0),
                angle,
            ),
        ),
        (angle, *found.size_proof(rule)),
        ("form-between-contacts", "form-round-the-part", "runout"),
    )


@dataclass(frozen=True, slots=True)
class _Probed:
    """The tip at this part: its travels, as functions of depth and the part's errors."""

    part: InspectedCone
    at_hand: ProbeAtHand

    @property
    def side(self) -> float:
        """1 within a socket, −1 outside of a cone."""
        return 1.0 if self.part.internal else -1.0

    @property
    def depths(self) -> tuple[float, float]:
        """Depths of the tip's center, near the large end and near the small one.

        In whole round steps where the part is long enough for them.
        """
        rest, length = (1.0 - TRAVEL_SHARE) / 2.0, self.part.length
        near, far = rest * length, (1.0 - rest) * length
        step = self.at_hand.step
        first, second = math.ceil(near / step) * step, math.floor(far / step) * step
        return (first, second) if second - first > (far - near) / 2.0 else (near, far)

    def travel(self, depth: float, angle_error: float, size_error: float) -> float:
        """Travel of the tip's center across the part."""
        half = self.part.half_rad(angle_error)
        surface = self.part.cone.large_diameter + size_error - 2.0 * depth * math.tan(half)
        return surface - self.side * self.at_hand.tip_diameter / math.cos(half)

    def has_room(self) -> bool:
        """True where the tip touches within the part's length at both depths."""
        off = self.side * self.at_hand.tip_diameter / 2.0 * math.sin(self.part.cone.half_rad)
        contacts = [depth + off for depth in self.depths]
        within = all(0.0 <= contact <= self.part.length for contact in contacts)
        return within and self.travel(self.depths[1], 0.0, 0.0) > 0.0

    @property
    def read(self) -> tuple[Measured, ...]:
        """Depth and travel near either end, then the tip's diameter."""
        travels = LargestError("measure_error_limit", self.at_hand.measure_error)
        depths = LargestError("depth_error_limit", self.at_hand.depth_error)
        tip = LargestError("tip_error_limit", self.at_hand.tip_error)
        first, second = self.depths
        return (
            Measured("first_depth", first, depths, below=second),
            Measured("first_tip_travel", self.travel(first, 0.0, 0.0), travels),
            Measured("second_depth", second, depths, above=first),
            Measured("second_tip_travel", self.travel(second, 0.0, 0.0), travels),
            Measured("tip_diameter", self.at_hand.tip_diameter, tip, above=0.0),
        )

    def size_proof(self, rule: DecisionRule) -> tuple[Proof, ...]:
        """Proof of the large diameter, where its tolerance was stated."""
        if self.part.size is None:
            return ()
        budget = budget_of(
            lambda *read: face_diameter_probed(*_split(read), read[4], self.side), *self.read
        )
        return (proof_of("large-diameter", self.part.size, budget, rule),)


def _split(read: tuple[float, ...]) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Depths and travels of `_Probed.read`."""
    return read[0:4:2], read[1:4:2]
