"""What turns a sine set-up's angle away from the wanted one, and how far. Angles in radians.

The model, derived here. Rolls' centers: sin θ = (H − o + d/2) / L with the stack H, the offset o
at which the plate stands at zero, and the rolls' difference d (high less low); H expands as the
blocks do, L and o as the plate. The stack may be off by what it was rounded to. The face adds its
own lean to the line of centers. Work whose axis is held at a yaw ψ to the tilt plane sees only
sin α = sin θ cos ψ. The axis' pitch and the wheel's own slope add to that one to one.

Each sensitivity is the model's derivative at the nominal set-up. Yaw has none there (cos ψ is flat
at 0): its own is that of the second-order term −tan θ ψ²/2, and what it does at a limit is exact.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, get_args

import numpy as np
from numpy.typing import NDArray

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.geometry import angle_for_height

Term = Literal[
    "center_distance_error_limit",
    "roll_difference",
    "roll_parallelism",
    "face_parallelism",
    "face_flatness",
    "stack_error_limit",
    "resolution",
    "table_flatness",
    "particle",
    "temperature_error_limit_celsius",
    "temperature_difference_celsius",
    "block_expansion",
    "plate_expansion",
    "axis_yaw_error_limit_arcsec",
    "axis_pitch_error_limit_arcsec",
    "wheel_breakdown",
]
TERMS: tuple[Term, ...] = get_args(Term)
TermUnit = Literal["length", "celsius", "per_kelvin", "arcsecond"]

#: Terms whose values are lengths; the others' units are named one by one.
_UNITS: dict[Term, TermUnit] = {
    "temperature_error_limit_celsius": "celsius",
    "temperature_difference_celsius": "celsius",
    "block_expansion": "per_kelvin",
    "plate_expansion": "per_kelvin",
    "axis_yaw_error_limit_arcsec": "arcsecond",
    "axis_pitch_error_limit_arcsec": "arcsecond",
}

Values = float | NDArray[np.float64]


@dataclass(frozen=True)
class SetUp:
    """A sine set-up as nominally made: lengths in one unit, expansions per kelvin.

    `face_length` is the length over which the face's flatness and parallelism act,
    `wheel_contact_length` that of the slant which the wheel's face grinds; without a limit, what
    acts over them makes no angle.
    `stack_offset` is the difference of the stacks at which the plate stands at zero,
    `stack_deviation` the stack as built less the one that the angle asks for; None where it is not
    known, and then the stack may be off by its rounding.
    `temperature_offset` is in kelvins from 20 °C; None where no temperature was stated, and then
    nothing counts for it.
    `parallelism_on_rolls`: the face's parallelism was measured with the plate resting on its rolls,
    so that it holds their difference already.
    """

    center_distance: float
    angle_rad: float
    face_length: float = math.inf
    wheel_contact_length: float = math.inf
    temperature_offset: float | None = 0.0
    block_expansion: float = 0.0
    plate_expansion: float = 0.0
    parallelism_on_rolls: bool = False
    stack_offset: float = 0.0
    stack_deviation: float | None = None

    @property
    def stack(self) -> float:
        """Difference of the stacks that the angle asks for, at 20 °C.

        Not rounded, as `height_for_angle` is: what turns the angle back must meet it.
        """
        return self.center_distance * math.sin(self.angle_rad) + self.stack_offset

    @property
    def warm(self) -> float:
        """Kelvins from 20 °C as far as is known."""
        return self.temperature_offset or 0.0

    @cached_property
    def sensitivities(self) -> Mapping[Term, float]:
        """Change of the angle for one unit of each term, as `sensitivity` gives it."""
        tangent = math.tan(self.angle_rad)
        by_height = 1.0 / (self.center_distance * math.cos(self.angle_rad))
        by_stack = tangent + self.stack_offset * by_height  # H / (L cos θ)
        on_rolls = 1.0 / self.center_distance if self.parallelism_on_rolls else 0.0
        return {
            "center_distance_error_limit": -tangent / self.center_distance,
            "roll_difference": (by_height - on_rolls) / 2.0,
            "roll_parallelism": by_height / 2.0,
            "face_parallelism": 1.0 / self.face_length,
            "face_flatness": 1.0 / self.face_length,
            "stack_error_limit": by_height,
            "resolution": by_height / 2.0 if self.stack_deviation is None else 0.0,
            "table_flatness": by_height,
            "particle": by_height,
            "temperature_error_limit_celsius": by_stack
            * (self.block_expansion - self.plate_expansion),
            "temperature_difference_celsius": by_stack * self.block_expansion,
            "block_expansion": by_stack * self.warm,
            "plate_expansion": -by_stack * self.warm,
            "axis_yaw_error_limit_arcsec": -tangent,
            "axis_pitch_error_limit_arcsec": 1.0 / ARCSEC_PER_RADIAN,
            "wheel_breakdown": 1.0 / self.wheel_contact_length,
        }


def unit_of(term: Term) -> TermUnit:
    """Unit of a term's value."""
    return _UNITS.get(term, "length")


def realised_angle(set_up: SetUp, off: Mapping[Term, Values]) -> Values:
    """Angle in radians that a set-up really gives when its terms are off by so much.

    Terms in their units (see `unit_of`), missing ones are not off; arrays broadcast.
    """

    def by(term: Term) -> Values:
        return off.get(term, 0.0)

    warm = set_up.warm + by("temperature_error_limit_celsius")
    blocks = set_up.block_expansion + by("block_expansion")
    plate = set_up.plate_expansion + by("plate_expansion")
    built = set_up.stack + (set_up.stack_deviation or 0.0)
    stack = built + by("stack_error_limit") + by("resolution") / 2.0
    height = stack * (1.0 + blocks * (warm + by("temperature_difference_celsius")))
    height = height - set_up.stack_offset * (1.0 + plate * warm)
    height = height + by("particle") + by("table_flatness") + by("roll_parallelism") / 2.0
    centers = (set_up.center_distance + by("center_distance_error_limit")) * (1.0 + plate * warm)
    face = np.arcsin((height + by("roll_difference") / 2.0) / centers) + _face_lean(set_up, off)
    seen = np.arcsin(np.sin(face) * np.cos(by("axis_yaw_error_limit_arcsec") / ARCSEC_PER_RADIAN))
    pitch = by("axis_pitch_error_limit_arcsec") / ARCSEC_PER_RADIAN
    slope: Values = seen + pitch + by("wheel_breakdown") / set_up.wheel_contact_length
    return slope


def _face_lean(set_up: SetUp, off: Mapping[Term, Values]) -> Values:
    """Lean of the face to the line of centers, in radians."""
    lean = (off.get("face_parallelism", 0.0) + off.get("face_flatness", 0.0)) / set_up.face_length
    if set_up.parallelism_on_rolls:
        lean = lean - off.get("roll_difference", 0.0) / (2.0 * set_up.center_distance)
    return lean


def sensitivity(set_up: SetUp, term: Term) -> float:
    """Change of the angle in radians for one unit of a term; for yaw, for one of ψ²/2."""
    return set_up.sensitivities[term]


def acts(set_up: SetUp, term: Term) -> bool:
    """False where a set-up makes a term harmless, as equal materials do the temperature's.

    What acts over the wheel's contact may do so though its length was not stated.
    """
    return term == "wheel_breakdown" or sensitivity(set_up, term) != 0.0


def thermal_shift(set_up: SetUp) -> float:
    """Change of the angle in radians off 20 °C: H / (L cos θ) · (α_blocks − α_plate) · ΔT.

    That is tan θ · (α_blocks − α_plate) · ΔT on a plate without an offset; 0 where the temperature
    is not known.
    """
    return sensitivity(set_up, "temperature_error_limit_celsius") * set_up.warm


def known_thermal_shift(set_up: SetUp) -> float | None:
    """The same, None where it is not known; like materials make none at any temperature."""
    unlike = set_up.block_expansion != set_up.plate_expansion
    return None if unlike and set_up.temperature_offset is None else thermal_shift(set_up)


def stack_shift(set_up: SetUp) -> float:
    """Change of the angle in radians by the stack's deviation, without any approximation.

    Raises Impossible where the plate cannot stand on that stack.
    """
    if not set_up.stack_deviation:
        return 0.0
    stack = set_up.stack + set_up.stack_deviation
    as_built = angle_for_height(set_up.center_distance, stack, set_up.stack_offset)
    return as_built - set_up.angle_rad
