"""A socket measured by two balls: the depth of each, and their difference.

The difference alone makes the angle: sin α = (R1 − R2) / c, c the distance of the centers. Lengths
in one unit, depths from the mouth down, angles in radians.
"""

import math
from collections.abc import Sequence
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
from halfangle_service.trade.tapers.contact import (
    ball_contact,
    ball_depth,
    diameter_over_balls,
    half_angle_of_balls,
)
from halfangle_service.trade.uncertainty import (
    Budget,
    DecisionRule,
    LargestError,
    Measured,
    budget_of,
)
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import block, figure


@dataclass(frozen=True, slots=True)
class BallsAtHand:
    """Balls by their diameters; errors are the largest, plus or minus, None where not stated."""

    diameters: Sequence[float]
    depth_error: float | None
    ball_error: float | None


def inspected_over_balls(
    part: InspectedCone, at_hand: BallsAtHand, units: Units, rule: DecisionRule
) -> Inspected | OutOfReach:
    """What to expect of two of these balls, and what it proves; or why they find no place."""
    if not part.internal:
        return OutOfReach(
            "over-balls",
            "Balls rest in a socket; an outer cone has no inside.",
            "balls",
            "Two equal rolls at two heights do the same outside.",
        )
    fitting = [ball for ball in sorted(at_hand.diameters) if _touches(part, ball)]
    if len(fitting) < 2 or fitting[0] == fitting[-1]:
        return _no_room(part, at_hand, fitting, units)
    found = _BallsInPart(part, at_hand, fitting[-1], fitting[0])
    angle = proof_of("angle", part.angle, found.angle_budget(), rule)
    return Inspected(
        "over-balls",
        f"Socket upright, mouth up, square and clean. Lay in a ball of "
        f"{block(found.small, units)} {units} and measure the depth of its top below the mouth; "
        f"then one of {block(found.large, units)} {units} alone.",
        (Setting("large_ball_diameter", found.large), Setting("small_ball_diameter", found.small)),
        (
            reading_of_both("large_ball_depth", partial(found.depth, found.large), part),
            reading_of_both("small_ball_depth", partial(found.depth, found.small), part),
            reading_of("ball_depth_difference", found.difference, angle),
        ),
        (angle, *found.size_proof(rule)),
        ("form-between-contacts", "form-round-the-part", "runout"),
    )


def _touches(part: InspectedCone, ball: float) -> bool:
    """True where a ball touches the nominal socket between its mouth and its small end."""
    depth = ball_depth(ball, part.cone.large_diameter, part.cone.half_rad)
    return 0.0 <= ball_contact(ball, depth, part.cone.half_rad) <= part.length


def _no_room(
    part: InspectedCone, at_hand: BallsAtHand, fitting: Sequence[float], units: Units
) -> OutOfReach:
    """A ball of the diameter d touches where the socket is d cos α wide."""
    cosine = math.cos(part.cone.half_rad)
    small, large = part.small_diameter / cosine, part.cone.large_diameter / cosine
    sent = ", ".join(block(ball, units) for ball in at_hand.diameters)
    touching = "one of them does" if fitting else "none of them does"
    return OutOfReach(
        "over-balls",
        f"Two unlike balls must touch inside the socket; of {sent} {units} {touching}.",
        "balls/ball_diameters",
        f"Balls from {figure(small, units)} to {figure(large, units)}, the two as unlike as can "
        "be.",
    )


@dataclass(frozen=True, slots=True)
class _BallsInPart:
    """A large and a small ball in this socket: their depths, as functions of the part's errors."""

    part: InspectedCone
    at_hand: BallsAtHand
    large: float
    small: float

    def depth(self, ball: float, angle_error: float, size_error: float) -> float:
        """Depth of a ball's top below the mouth."""
        mouth = self.part.cone.large_diameter + size_error
        return ball_depth(ball, mouth, self.part.half_rad(angle_error))

    def difference(self, angle_error: float) -> float:
        """Small ball's depth less the large one's: (R1 − R2) (1 + 1 / sin α)."""
        excess = (self.large - self.small) / 2.0
        return excess * (1.0 + 1.0 / math.sin(self.part.half_rad(angle_error)))

    def angle_budget(self) -> Budget:
        """Budget of the included angle, by that of `tapers.over-balls` at the nominal part."""
        return budget_of(lambda *read: 2.0 * half_angle_of_balls(*read), *self._read)

    def size_proof(self, rule: DecisionRule) -> tuple[Proof, ...]:
        """Proof of the mouth's diameter, where its tolerance was stated."""
        if self.part.size is None:
            return ()
        budget = budget_of(partial(diameter_over_balls, 0.0), *self._read)
        return (proof_of("large-diameter", self.part.size, budget, rule),)

    @property
    def _read(self) -> tuple[Measured, ...]:
        balls = LargestError("roll_error_limit", self.at_hand.ball_error)
        depths = LargestError("measure_error_limit", self.at_hand.depth_error)
        return (
            Measured("large_ball_diameter", self.large, balls, above=0.0),
            Measured("small_ball_diameter", self.small, balls, above=0.0),
            Measured("large_ball_depth", self.depth(self.large, 0.0, 0.0), depths),
            Measured("small_ball_depth", self.depth(self.small, 0.0, 0.0), depths),
        )
