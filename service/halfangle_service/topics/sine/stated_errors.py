"""How far each part of a sine set-up may be off, as `uncertainty` and `requirements` are told."""

import math
from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.cautions import stack_far_off, unusual_stack
from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    AngleInput,
    Length,
    Unit,
)
from halfangle_service.fields.advisories import Advisory
from halfangle_service.fields.base import ERRORS, Group
from halfangle_service.fields.choice import at_most_one_of, needs
from halfangle_service.fields.estimate import DECISION_RULE, DecisionRuleField
from halfangle_service.fields.plates import PlateFields, offset_of
from halfangle_service.fields.set_up_errors import (
    SET_UP_TERMS,
    Limit,
    SetUpErrorFields,
    not_stated_of,
    stated_terms,
    temperature_offset,
)
from halfangle_service.operation import Source
from halfangle_service.trade.sine.angle_error import ErrorInputs
from halfangle_service.trade.sine.angle_model import TERMS, SetUp, Term, stack_shift
from halfangle_service.trade.sine.geometry import height_for_angle
from halfangle_service.trade.tables.materials.expansion import MaterialName, materials
from halfangle_service.trade.uncertainty import (
    Budget,
    Distribution,
    Forecast,
    forecast_of,
    smallest_limit,
)
from halfangle_service.trade.unit_slips import require_resolution

#: Terms that a request states, in the order of the budget; the expansions come with the materials.
_STATED: tuple[Term, ...] = tuple(
    term
    for term in TERMS
    if term in {*SET_UP_TERMS, "stack_error_limit", "resolution", "wheel_breakdown"}
)

SENSITIVITIES = Source(
    citation="Derived here: each sensitivity is the derivative of sin θ = (H − o + d/2)/L with "
    "expansion, face, yaw (second order), pitch and wheel; checked against numeric derivatives.",
    standing="derived",
)
BUDGET = Source(
    citation="JCGM 100:2008, 5.1.2 (law of propagation) and 6.2 (expanded uncertainty); 4.3 for "
    "the divisors of the distributions.",
    standing="from-memory",
)
DECISION = Source(
    citation="ISO 14253-1:2017: what conforms does so with a probability of at least 95 %; 2013: "
    "the acceptance zone is the specification less a guard band of 2 u on either side.",
    standing="from-memory",
)
EXPANSION = Source(
    citation="ISO 3650:1998 for steel blocks; NIST Monograph 180 for the other materials.",
    standing="from-memory",
)
RELATIONS = (
    "dθ = dH/(L cos θ) − tan θ dL/L + d(roll difference)/(2 L cos θ) + face + pitch + wheel",
    "thermal: dθ = H/(L cos θ) (α_blocks − α_plate) ΔT, which is tan θ (α_blocks − α_plate) ΔT "
    "without an offset",
    "the stack as built: dθ = asin((height − offset)/L) − θ; else its rounding within ± half the "
    "resolution",
    "yaw: sin α = sin θ cos ψ; for ψ anywhere within ±a: at the limit y = asin(sin θ cos a) − θ, "
    "mean y/3, standard deviation 2 |y|/√45",
    "u² = Σ (sensitivity × standard uncertainty)²; holds where |error| ≤ tolerance with a "
    "probability of 95 % (2013: |mean| + 2 u ≤ tolerance)",
)
EXAMPLE = {
    "units": "in",
    "center_distance": 5,
    "angle": 30,
    "center_distance_error_limit": 0.0002,
    "roll_difference": 0.00005,
    "roll_parallelism": 0.00005,
    "face_parallelism": 0.0001,
    "face_flatness": 0.00005,
    "stack_error_limit": 0.00002,
    "resolution": 0.0001,
    "table_flatness": 0.00005,
    "particle": 0.00002,
    "temperature_celsius": 22,
    "temperature_error_limit_celsius": 1,
    "temperature_difference_celsius": 0.5,
    "axis_yaw_error_limit_arcsec": 900,
    "axis_pitch_error_limit_arcsec": 5,
    "wheel_breakdown": 0,
    "tolerance_arcsec": 20,
}

_Terms = Annotated[list[Term], Field(max_length=16)]
#: Terms whose distribution is known, and so is not to be stated.
_RECTANGULAR: dict[Term, str] = {
    "axis_yaw_error_limit_arcsec": "yaw is rectangular",
    "resolution": "rounding is rectangular",
}


class SineErrorFields(PlateFields, SetUpErrorFields):
    """A sine set-up and how far each of its parts may be off, each as ± a limit.

    A limit that is not sent is not stated: nothing counts for it, and the answer names it. 0 says
    that there is no such error.
    """

    group = Group(
        ERRORS.title,
        advanced=True,
        fields=(
            "stack_error_limit",
            "block_material",
            "wheel_breakdown",
            "wheel_contact_length",
            "normal_terms",
            "triangular_terms",
            "u_shaped_terms",
            "coverage_factor",
        ),
    )

    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle to set, in degrees.", examples=[30.0]
    )
    stack_error_limit: Limit = Field(
        None,
        description="Largest error ± of the block stack's height, in `units`.",
        examples=[0.00005],
    )
    height: Length | None = Field(
        None,
        description="Difference of the stacks as they are built, high less low, in `units`: what "
        "it is off from the angle's own height then counts as a known shift. Either this or "
        "`resolution`.",
    )
    resolution: Limit = Field(
        None,
        description="Step to which the stack is built, in `units`: it is then off by up to half of "
        "it. 0: built exactly. Absent, and without `height`: not stated.",
        examples=[0.0001],
    )
    block_material: MaterialName = Field("steel", description="Material of the blocks.")
    wheel_breakdown: Limit = Field(
        None,
        description="Limit ± by which the wheel's face is off over `wheel_contact_length`, in "
        "`units`.",
    )
    wheel_contact_length: Length | None = Field(
        None, description="Length of the slant that the wheel's face grinds, in `units`."
    )
    normal_terms: _Terms = Field(
        [],
        description="Terms whose number is a standard deviation of a normal distribution, not a "
        "limit. All other terms are rectangular, unless listed below; yaw and the stack's rounding "
        "always are.",
    )
    triangular_terms: _Terms = Field([], description="Terms with a triangular distribution.")
    u_shaped_terms: _Terms = Field(
        [], description="Terms with a U-shaped distribution, such as a cycling temperature."
    )
    coverage_factor: Annotated[float, Field(ge=1, le=4), Unit("1")] | None = Field(
        None,
        description="Coverage factor k of the expanded uncertainty. Absent: what covers 95 % by "
        "the distributions themselves. The forecast goes by `decision_rule`, whatever k is.",
    )
    decision_rule: DecisionRuleField = DECISION_RULE
    tolerance_on: Literal["plate-angle", "included-angle"] = Field(
        "plate-angle",
        description="What the tolerance belongs to: a cone's half angle follows the plate's angle, "
        "so that its error counts twice on the `included-angle`.",
    )


def error_inputs(request: SineErrorFields) -> ErrorInputs:
    """Read a set-up with its errors; refuses distributions that contradict one another."""
    set_up = _set_up(request)
    values = stated_terms(request, _STATED)
    values["plate_expansion"] = materials()[request.plate_material].spread
    return ErrorInputs(
        set_up,
        values,
        _distributions(request),
        not_stated_of(request, _STATED, set_up),
        {request.block_material: 1.0},
    )


def _set_up(request: SineErrorFields) -> SetUp:
    if request.wheel_breakdown:
        why = "The wheel's breakdown makes an angle only over a length of slant."
        needs(request, "wheel_breakdown", "wheel_contact_length", why=why)
    at_most_one_of(request, "height", "resolution")
    require_resolution(request.resolution, request.units)
    known, offset = materials(), offset_of(request)
    angle_rad = math.radians(request.angle)
    stack = height_for_angle(request.center_distance, angle_rad, offset)
    return SetUp(
        center_distance=request.center_distance,
        angle_rad=angle_rad,
        face_length=request.face_length or request.center_distance,
        wheel_contact_length=request.wheel_contact_length or math.inf,
        temperature_offset=temperature_offset(request),
        block_expansion=known[request.block_material].coefficient,
        plate_expansion=known[request.plate_material].coefficient,
        parallelism_on_rolls=request.face_parallelism_on_rolls,
        stack_offset=offset,
        stack_deviation=None if request.height is None else request.height - stack,
    )


def _distributions(request: SineErrorFields) -> dict[Term, Distribution]:
    lists: dict[Distribution, list[Term]] = {
        "normal": request.normal_terms,
        "triangular": request.triangular_terms,
        "u-shaped": request.u_shaped_terms,
    }
    shapes: dict[Term, Distribution] = {}
    for shape, terms in lists.items():
        field = f"{shape.replace('-', '_')}_terms"
        for position, term in enumerate(terms):
            if term in _RECTANGULAR or shapes.get(term, shape) != shape:
                raise Disagreement(
                    f"{term} cannot be {shape}: {_RECTANGULAR.get(term, 'it is listed twice')}.",
                    fields={
                        f"{field}/{position}": "should be listed once, and not be "
                        f"{' or '.join(_RECTANGULAR)}"
                    },
                )
            shapes[term] = shape
    return shapes


def _times_counted(request: SineErrorFields) -> float:
    """How often the plate's error counts on what the tolerance belongs to."""
    return 2.0 if request.tolerance_on == "included-angle" else 1.0


def tolerance_rad(request: SineErrorFields, tolerance_arcsec: float) -> float:
    """A tolerance, on what it belongs to, as a limit of the plate's angle in radians."""
    return tolerance_arcsec / _times_counted(request) / ARCSEC_PER_RADIAN


def smallest_tolerance_arcsec(request: SineErrorFields, budget: Budget) -> float | None:
    """Tightest tolerance that the errors stated leave room for, None where none was."""
    if not budget.contributions:
        return None
    limit = smallest_limit(budget, request.decision_rule)
    return limit * _times_counted(request) * ARCSEC_PER_RADIAN


def angle_forecast(request: SineErrorFields, budget: Budget, limit_rad: float) -> Forecast:
    """Say whether the plate's angle will keep a limit, with what was stated of its errors."""
    return forecast_of(budget, -limit_rad, limit_rad, request.decision_rule)


def stack_advisories(request: SineErrorFields, set_up: SetUp) -> Iterator[Advisory]:
    """What a careful hand says of the stack itself."""
    stack = request.height
    if stack is None:
        stack = height_for_angle(set_up.center_distance, set_up.angle_rad, set_up.stack_offset)
    yield from unusual_stack(stack, request.center_distance, request.units)
    yield from stack_far_off(stack_shift(set_up) * ARCSEC_PER_RADIAN)
