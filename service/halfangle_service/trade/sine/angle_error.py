"""The error of a sine set-up's angle: its one budget, and its simulation. Angles in radians.

Yaw acts by its square, so it is a one-sided contribution, whose mean joins the expected error: a
third of what it does at its limit, which is exact.
"""

from collections.abc import Iterator, Mapping
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
from halfangle_service.trade.sine.geometry import turned_by_yaw
from halfangle_service.trade.tables.materials.expansion import materials
from halfangle_service.trade.uncertainty import (
    Budget,
    Contribution,
    Distribution,
    Sample,
    draw,
    summarise,
)
from halfangle_service.trade.uncertainty.monte_carlo import SEED

#: The largest yaw that is taken: 5°. Up to it the square is good to 1 % of itself at 45°, so that
#: its mean and spread are a square's, of what is exact at the limit.
LARGEST_YAW_ARCSEC = 18_000.0


@dataclass(frozen=True, slots=True)
class ErrorInputs:
    """A set-up, how far each term may be off (its unit: `unit_of`), and each distribution.

    A term without a value was not stated; `not_stated` names those as the request calls them. A
    missing distribution is rectangular; yaw's always is. `block_materials` has the part of the
    stack's height that is of each material, in all 1: what `block_expansion` may be off is known of
    each, so that it has no value of its own.
    """

    set_up: SetUp
    values: Mapping[Term, float]
    distributions: Mapping[Term, Distribution] = field(default_factory=dict)
    not_stated: tuple[str, ...] = ()
    block_materials: Mapping[str, float] = field(default_factory=dict)

    def with_value(self, term: Term, value: float) -> "ErrorInputs":
        """The same inputs with another value of one term."""
        return replace(self, values={**self.values, term: value})


def contribution(inputs: ErrorInputs, term: Term) -> Contribution:
    """One term's contribution to the plate's angle, in radians; of one not stated, none."""
    value = inputs.values.get(term, 0.0)
    unit = unit_of(term)
    if term == "axis_yaw_error_limit_arcsec":
        at_limit = turned_by_yaw(inputs.set_up.angle_rad, value / ARCSEC_PER_RADIAN)
        per_unit = at_limit / value if value else 0.0
        return Contribution(term, value, sensitivity=per_unit, one_sided=True, unit=unit)
    shape = inputs.distributions.get(term, "rectangular")
    return Contribution(term, value, shape, sensitivity(inputs.set_up, term), unit=unit)


def budget(inputs: ErrorInputs) -> Budget:
    """The budget of the plate's angle over the terms stated, in radians.

    Its offset is what the temperature and the stack as built do. At 20 °C the materials' expansion
    contributes nothing, and is left out.
    """
    stated = tuple(part for term in TERMS for part in _contributions(inputs, term))
    offset = thermal_shift(inputs.set_up) + stack_shift(inputs.set_up)
    return Budget(stated, offset, inputs.not_stated)


def _contributions(inputs: ErrorInputs, term: Term) -> Iterator[Contribution]:
    """What one term contributes: of the blocks' expansion one for each material."""
    if term.endswith("_expansion") and not inputs.set_up.warm:
        return
    if term in inputs.values:
        yield contribution(inputs, term)
    elif term == "block_expansion":
        for name, part in inputs.block_materials.items():
            spread = inputs.with_value(term, materials()[name].spread)
            whole = contribution(spread, term)
            yield replace(whole.times(part), of=name)


def of_included_angle(plate_angle: Budget) -> Budget:
    """The budget of a cone's included angle, from that of the plate's angle: twice.

    The half angle follows the plate one to one, and both sides of the cone have it.
    """
    doubled = tuple(part.times(2.0) for part in plate_angle.contributions)
    return replace(plate_angle, contributions=doubled, offset=2.0 * plate_angle.offset)


def _drawn(inputs: ErrorInputs, term: Term) -> Iterator[tuple[float, float]]:
    """The values of a term that are drawn, each with the part that it has in the term."""
    if inputs.values.get(term):
        yield inputs.values[term], 1.0
    elif term == "block_expansion":
        yield from ((materials()[n].spread, part) for n, part in inputs.block_materials.items())


def simulate(inputs: ErrorInputs, trials: int, probability: float) -> Sample:
    """Draw the set-up so many times through the whole model; angle errors in radians.

    Raises Impossible where the errors are so large that some trial has no angle at all.
    """
    generator = np.random.default_rng(SEED)
    off: dict[Term, Values] = {
        term: sum(
            part * draw(generator, inputs.distributions.get(term, "rectangular"), value, trials)
            for value, part in _drawn(inputs, term)
        )
        for term in TERMS
    }
    with np.errstate(invalid="ignore", divide="ignore"):
        errors = realised_angle(inputs.set_up, off) - inputs.set_up.angle_rad
    if not np.all(np.isfinite(errors)):
        raise Impossible(
            "The errors are so large that the rolls would rise by more than the center distance.",
            fields={"angle": "should leave room for the errors stated below 90°"},
        )
    return summarise(np.broadcast_to(np.asarray(errors), (trials,)), probability)
