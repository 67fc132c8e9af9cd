"""A cone or a face on a sine plate under an indicator: what it should rise along the surface.

The plate stands at the angle that brings a nominal part's surface level. What the plate is known to
be off, by its stack, its temperature and a yaw's mean, is counted in the reading; what it may be
off is its budget. Lengths in one unit, angles in radians.
"""

import math
from collections.abc import Callable
from dataclasses import dataclass

from halfangle_service.trade.inspection.means import (
    Inspected,
    InspectedCone,
    OutOfReach,
    Setting,
    Tolerance,
    Unseen,
    proof_of,
    reading_of,
)
from halfangle_service.trade.sine.geometry import beyond_reach
from halfangle_service.trade.sine.taper_holding import (
    Holding,
    half_angle_sensitivity,
    plate_angle,
)
from halfangle_service.trade.uncertainty import Budget, Contribution, DecisionRule
from halfangle_service.trade.units import Units
from halfangle_service.trade.wording import figure, plain

#: Part of a surface's length over which an indicator runs, where nothing else is said: common
#: practice, no source.
TRAVEL_SHARE = 0.8
_HELD: dict[Holding, str] = {
    "between-centers": "the part between centers along the plate",
    "on-its-generator": "the part lying on its generator",
    "in-a-vee": "the part lying in a vee along the plate",
}
#: How a socket is held, and where the indicator runs.
_SOCKET = "the socket's axis along the plate, its mouth up the slope"
_ON_TOP, _IN_BORE = "along the top of the surface", "along the lower wall of the bore"


@dataclass(frozen=True, slots=True)
class InspectedFace:
    """A face at an angle to its base, its length along the slope, and the angle's limits."""

    angle_rad: float
    slant: float
    angle: Tolerance


@dataclass(frozen=True, slots=True)
class Levelled:
    """How a plate levels a part's surface: its angle, and the surface's lean by the part's error.

    `lean_of` gives the lean to the plate's top of a part with an error of the angle that has the
    tolerance; `per_lean` is that error for one unit of lean, signed.
    """

    plate_rad: float
    lean_of: Callable[[float], float]
    per_lean: float
    slant: float
    held: str
    unseen: tuple[Unseen, ...]
    where: str = _ON_TOP

    @property
    def plate_degrees(self) -> float:
        """The plate's angle in degrees."""
        return math.degrees(self.plate_rad)


def level_cone(
    part: InspectedCone, holding: Holding, vee_half_rad: float, largest_degrees: float | None
) -> Levelled | OutOfReach:
    """How a plate levels a cone's top generator; raises Impossible for one that lies in no vee."""
    if part.internal and holding != "between-centers":
        return OutOfReach(
            "sine-plate",
            f"A socket does not lie {holding.replace('-', ' ')}: its surface lies inside.",
            "plate/holding",
            "Held with its axis along the plate, its bore indicated.",
        )
    half = part.cone.half_rad
    level = plate_angle(half, holding, vee_half_rad)
    if beyond_reach(math.degrees(level), largest_degrees):
        works = holding != "between-centers" and not beyond_reach(
            math.degrees(half), largest_degrees
        )
        return OutOfReach(
            "sine-plate",
            f"Held {holding.replace('-', ' ')} it asks for a plate angle of "
            f"{plain(math.degrees(level))}°, past the plate's reach of "
            f"{plain(largest_degrees or 0.0)}°.",
            "plate/holding" if works else "plate/largest_angle",
            f"Held between centers it asks for {plain(math.degrees(half))}°." if works else None,
        )
    return Levelled(
        level,
        lambda error: plate_angle(part.half_rad(error), holding, vee_half_rad),
        2.0 * half_angle_sensitivity(level, holding, vee_half_rad),
        part.length / math.cos(half),
        _SOCKET if part.internal else _HELD[holding],
        ("size", "form-round-the-part", "runout"),
        _IN_BORE if part.internal else _ON_TOP,
    )


def level_face(part: InspectedFace, largest_degrees: float | None) -> Levelled | OutOfReach:
    """How a plate levels a face: as it lies, or turned a quarter where that alone is in reach."""
    degrees = math.degrees(part.angle_rad)
    if not beyond_reach(degrees, largest_degrees):
        return Levelled(
            part.angle_rad,
            lambda error: part.angle_rad + error,
            1.0,
            part.slant,
            "the part on its base",
            ("size",),
        )
    if beyond_reach(90.0 - degrees, largest_degrees):
        return OutOfReach(
            "sine-plate",
            f"The face asks for a plate angle of {plain(degrees)}°, turned a quarter for "
            f"{plain(90.0 - degrees)}°; the plate reaches {plain(largest_degrees or 0.0)}°.",
            "plate/largest_angle",
            f"A plate that reaches {plain(min(degrees, 90.0 - degrees))}°.",
        )
    return Levelled(
        math.pi / 2.0 - part.angle_rad,
        lambda error: math.pi / 2.0 - part.angle_rad - error,
        -1.0,
        part.slant,
        "the part turned a quarter, its base square to the plate's top",
        ("size", "error-of-the-setting"),
    )


@dataclass(frozen=True, slots=True)
class PlateSet:
    """A plate as it is set: the stack's height, its budget, and the indicator's travel and error.

    `budget` is of the plate's angle; its offset is what the plate is known to be off.
    """

    height: float
    budget: Budget
    travel: float | None
    indicating_error: float | None


def inspected_on_plate(
    level: Levelled, plate: PlateSet, tolerance: Tolerance, units: Units, rule: DecisionRule
) -> Inspected:
    """What an indicator should rise along the surface, and what that proves of the angle."""
    travel = plate.travel or TRAVEL_SHARE * level.slant
    as_set = level.plate_rad + plate.budget.mean
    proof = proof_of("angle", tolerance, _own_budget(level, plate, travel), rule)
    return Inspected(
        "sine-plate",
        f"Set the plate on {figure(plate.height, units)}, {level.held}, and run an indicator "
        f"{figure(travel, units)} {level.where}; a rise is toward the low roll.",
        (
            Setting("plate_angle", math.degrees(level.plate_rad), "degree"),
            Setting("height", plate.height),
            Setting("indicator_travel", travel),
        ),
        (
            reading_of(
                "indicator_rise",
                lambda error: travel * math.tan(level.lean_of(error) - as_set),
                proof,
            ),
        ),
        (proof,),
        level.unseen,
    )


def _own_budget(level: Levelled, plate: PlateSet, travel: float) -> Budget:
    """Budget of the part's angle: a plate that stands steeper makes the part seem blunter."""
    turned = tuple(part.times(-level.per_lean) for part in plate.budget.contributions)
    not_stated = plate.budget.not_stated
    if plate.indicating_error is None:
        return Budget(turned, not_stated=(*not_stated, "indicating_error_limit"))
    read = Contribution(
        "indicating_error_limit",
        plate.indicating_error,
        sensitivity=level.per_lean / travel,
        unit="length",
    )
    return Budget((*turned, read), not_stated=not_stated)
