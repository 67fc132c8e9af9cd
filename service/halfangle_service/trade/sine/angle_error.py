"""The error of a sine set-up's angle: its one budget, and its simulation. Angles in radians.

Yaw acts by its square, so it is a one-sided contribution, whose mean joins the expected error.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from halfangle_service.errors import Impossible
from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.angle_model import (
    TERMS,
    SetUp,
    Term,
    Values,
    realised_angle,
    sensitivity,
    stack_shift,
    thermal_shift,
    unit_of,
)
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    Distribution,
    Sample,
    draw,
    summarise,
)
from halfangle_service.trade.uncertainty.monte_carlo import SEED

#: The yaw up to which the second-order term is good to 1 % of itself: 5°.
LARGEST_YAW_ARCSEC = 18_000.0


@dataclass(frozen=True, slots=True)
class ErrorInputs:
    """A set-up, how far each term may be off (its unit: `unit_of`), and each distribution.

    A term without a value was not stated; `not_stated` names those as the request calls them. A
    missing distribution is rectangular; yaw's always is.
    """

    set_up: SetUp
    values: Mapping[Term, float]
    distributions: Mapping[Term, Distribution] = field(default_factory=dict)
    not_stated: tuple[str, ...] = ()

    def with_value(self, term: Term, value: float) -> "ErrorInputs":
        """The same inputs with another value of one term."""
        return replace(self, values={**self.values, term: value})


def contribution(inputs: ErrorInputs, term: Term) -> Contribution:
    """One term's contribution to the plate's angle, in radians; of one not stated, none."""
    value = inputs.values.get(term, 0.0)
    slope = sensitivity(inputs.set_up, term)
    unit = unit_of(term)
    if term == "axis_yaw_error_limit_arcsec":
        # −tan θ ψ²/2 at the limit, over the limit.
        at_limit = slope * value / (2.0 * ARCSEC_PER_RADIAN**2)
        return Contribution(term, value, sensitivity=at_limit, one_sided=True, unit=unit)
    shape = inputs.distributions.get(term, "rectangular")
    return Contribution(term, value, shape, slope, unit=unit)


def budget(inputs: ErrorInputs) -> Budget:
    """The budget of the plate's angle over the terms stated, in radians.

    Its offset is what the temperature and the stack as built do. At 20 °C the materials' expansion
    contributes nothing, and is left out.
    """
    stated = tuple(contribution(inputs, term) for term in TERMS if _counts(inputs, term))
    offset = thermal_shift(inputs.set_up) + stack_shift(inputs.set_up)
    return Budget(stated, offset, inputs.not_stated)


def _counts(inputs: ErrorInputs, term: Term) -> bool:
    if term.endswith("_expansion") and not inputs.set_up.temperature_offset:
        return False
    return term in inputs.values


def of_included_angle(plate_angle: Budget) -> Budget:
    """The budget of a cone's included angle, from that of the plate's angle: twice.

    The half angle follows the plate one to one, and both sides of the cone have it.
    """
    doubled = tuple(
        replace(part, sensitivity=2.0 * part.sensitivity) for part in plate_angle.contributions
    )
    return replace(plate_angle, contributions=doubled, offset=2.0 * plate_angle.offset)


def simulate(inputs: ErrorInputs, trials: int, probability: float) -> Sample:
    """Draw the set-up so many times through the whole model; angle errors in radians.

    Raises Impossible where the errors are so large that some trial has no angle at all.
    """
    generator = np.random.default_rng(SEED)
    off: dict[Term, Values] = {
        term: draw(
            generator, inputs.distributions.get(term, "rectangular"), inputs.values[term], trials
        )
        for term in TERMS
        if inputs.values.get(term)
    }
    with np.errstate(invalid="ignore", divide="ignore"):
        errors = realised_angle(inputs.set_up, off) - inputs.set_up.angle_rad
    if not np.all(np.isfinite(errors)):
        raise Impossible(
            "The errors are so large that the rolls would rise by more than the center distance.",
            fields={"angle": "should leave room for the errors stated below 90°"},
        )
    return summarise(np.broadcast_to(np.asarray(errors), (trials,)), probability)
