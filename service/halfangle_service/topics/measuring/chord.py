"""An angle past what a sine bar does well, by the chord over or between two rolls."""

import math
from collections.abc import Callable, Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    AngleInput,
    ArcsecOut,
    DegreesOut,
    Length,
    LengthOut,
    NonNegativeLength,
    UnitsField,
    bench_step,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import one_of
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.estimate import AngleEstimate, LengthEstimate, estimate
from halfangle_service.fields.gauging.measured import (
    MeasureErrorLimit,
    RollErrorLimit,
    as_measured,
    measured_angle,
    measured_length,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.measuring.chord import (
    angle_of_chord,
    angle_per_chord,
    chord_of,
    lean_of_chord,
)
from halfangle_service.trade.measuring.drawing import ArmsWithRolls, chord_svg
from halfangle_service.trade.uncertainty import Budget, LargestError, Measured
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wording import arcsec, of_any_unit, plain

#: What states the angle, of which one is sent.
SENT = ("angle", "measure")
#: Arms that stand nearer to one another than this enclose no angle that a measure tells.
_LEAST_DEGREES = 1e-6
#: A chord that leans less to the shorter arm moves less than half as much as it could.
_FLAT_DEGREES = 30.0

_COSINES = Source(
    citation="Derived here: law of cosines between the pivot and the centers of the two rolls.",
    standing="derived",
)


class MeasuringChordRequest(DrawnFields):
    """Two arms on one pivot, each with a roll, and the angle or the measure with the rolls."""

    rules = (Rule("one-of", SENT),)

    units: UnitsField
    first_center_distance: Length = Field(
        description="Pivot's center to the center of the first arm's roll, in `units`.",
        examples=[5.0],
    )
    second_center_distance: Length = Field(
        description="The same of the second arm, in `units`.", examples=[5.0]
    )
    first_roll_diameter: Length = Field(
        description="Diameter of the first arm's roll.", examples=[1.0]
    )
    second_roll_diameter: Length = Field(
        description="Diameter of the second arm's roll.", examples=[1.0]
    )
    measure_is: Literal["over-both-rolls", "between-rolls"] = Field(
        description="`over-both-rolls`: outside; `between-rolls`: the gap, as blocks fill it.",
        examples=["between-rolls"],
    )
    angle: Annotated[float, AngleInput(gt=0, lt=180)] | None = Field(
        None,
        description="Angle between the arms, in degrees. Either this or `measure`.",
        examples=[75.0],
    )
    measure: Length | None = Field(None, description="Measure with the rolls, in `units`.")
    measure_error_limit: MeasureErrorLimit = None
    roll_error_limit: RollErrorLimit = None
    center_distance_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each center distance, in `units`."
    )


class MeasuringChordResult(DrawnResult):
    """The angle and its measure; from an angle alone, taken as exact, the measure to set."""

    angle: AngleEstimate = Field(description="Angle between the arms.")
    measure: LengthEstimate = Field(description="Measure over or between the rolls.")
    chord: LengthOut = Field(description="Distance of the centers of the rolls.")
    lean_of_chord: DegreesOut = Field(
        description="Lean of the chord to the shorter arm: 90 is surest."
    )
    arcsec_per_measure_step: ArcsecOut = Field(
        description="Angle that one bench step of the measure stands for (0.0001 in or 0.001 mm)."
    )
    sine_arcsec_per_step: ArcsecOut | None = Field(
        description="The same of a sine bar of the shorter center distance at this angle; null "
        "from 90° on."
    )


@operation(
    "measuring.chord",
    relations=(
        "c² = p² + q² − 2 p q cos θ",
        "equal arms: c = 2 L sin(θ / 2)",
        "measure = c ± (d1 + d2) / 2",
        "dθ/dc = c / (p q sin θ); equal arms: 1 / (L cos(θ / 2))",
    ),
    sources=(_COSINES,),
    example={
        "units": "in",
        "first_center_distance": 5,
        "second_center_distance": 5,
        "first_roll_diameter": 1,
        "second_roll_diameter": 1,
        "measure_is": "between-rolls",
        "angle": 75,
        "roll_error_limit": 0.00005,
        "center_distance_error_limit": 0.0002,
        "formats": ["svg"],
    },
    heavy=is_drawn,
)
def chord(request: MeasuringChordRequest) -> Outcome[MeasuringChordResult]:
    """Angle by the chord over rolls.

    Angle between two arms from the measure over or between their rolls, or the measure to set;
    past 45°, where a sine bar loses its edge, a chord still turns little for an error.
    """
    one_of(request, *SENT)
    for name in ("first_center_distance", "second_center_distance"):
        require_center_distance(getattr(request, name), request.units, name)
    if request.measure is None:
        angle_rad = elementary.radians(_stated_angle(request))
    else:
        angle_rad = _angle(request)(*(i.value for i in (_measure(request), *_arms(request))))
    arms = request.first_center_distance, request.second_center_distance
    lean = elementary.degrees(lean_of_chord(angle_rad, *arms))
    step = bench_step(request.units) * ARCSEC_PER_RADIAN
    upright = angle_rad >= math.pi / 2.0
    result = MeasuringChordResult(
        **_estimates(request, angle_rad),
        chord=chord_of(angle_rad, *arms),
        lean_of_chord=lean,
        arcsec_per_measure_step=angle_per_chord(angle_rad, *arms) * step,
        sine_arcsec_per_step=None if upright else step / (min(arms) * elementary.cos(angle_rad)),
        svg=_drawing(request, angle_rad, chord_of(angle_rad, *arms)),
    )
    return Outcome(result, tuple(_advisories(lean, result)))


def _stated_angle(request: MeasuringChordRequest) -> float:
    """Angle stated, in degrees; refuses none."""
    angle = request.angle or 0.0
    if angle < _LEAST_DEGREES:
        raise Impossible(
            "Arms that stand so near to one another enclose no angle.",
            fields={"angle": f"should be at least {plain(_LEAST_DEGREES)}°"},
        )
    return angle


def _drawing(request: MeasuringChordRequest, angle_rad: float, chord_length: float) -> str | None:
    """The arms with their rolls, where a drawing is asked for."""
    if not is_drawn(request):
        return None
    rolls = request.first_roll_diameter, request.second_roll_diameter
    arms = request.first_center_distance, request.second_center_distance
    measure = chord_length + _sign(request) * sum(rolls) / 2.0
    over = request.measure_is == "over-both-rolls"
    return chord_svg(ArmsWithRolls(angle_rad, arms, rolls, measure, over), request.units)


def _sign(request: MeasuringChordRequest) -> float:
    return 1.0 if request.measure_is == "over-both-rolls" else -1.0


def _measure(request: MeasuringChordRequest) -> Measured:
    limit = LargestError("measure_error_limit", request.measure_error_limit)
    return Measured("measure", request.measure or 0.0, limit, above=0.0)


def _arms(request: MeasuringChordRequest) -> tuple[Measured, ...]:
    """Center distances and rolls, as measured."""
    arms = LargestError("center_distance_error_limit", request.center_distance_error_limit)
    rolls = LargestError("roll_error_limit", request.roll_error_limit)
    return (
        Measured("first_center_distance", request.first_center_distance, arms, above=0.0),
        Measured("second_center_distance", request.second_center_distance, arms, above=0.0),
        Measured("first_roll_diameter", request.first_roll_diameter, rolls, above=0.0),
        Measured("second_roll_diameter", request.second_roll_diameter, rolls, above=0.0),
    )


def _angle(request: MeasuringChordRequest) -> Callable[..., float]:
    """Angle in radians of a measure, center distances and rolls."""
    sign = _sign(request)
    return lambda m, p, q, d1, d2: angle_of_chord(m - sign * (d1 + d2) / 2.0, p, q)


def _estimates(
    request: MeasuringChordRequest, angle_rad: float
) -> dict[str, AngleEstimate | LengthEstimate]:
    """Angle and measure: from the measure, or else from the angle, which is then exact."""
    sign = _sign(request)
    if request.measure is not None:
        measure = _measure(request)
        return {
            "angle": measured_angle(_angle(request), measure, *_arms(request)),
            "measure": as_measured(measure),
        }

    def measure_of(p: float, q: float, d1: float, d2: float) -> float:
        return chord_of(angle_rad, p, q) + sign * (d1 + d2) / 2.0

    to_set = measure_of(*(i.value for i in _arms(request)))
    if to_set <= 0.0:
        raise Impossible(
            f"At this angle the rolls would cut into one another by {of_any_unit(-to_set)}.",
            fields={"measure_is": "should be over-both-rolls, or the rolls smaller or further out"},
        )
    return {
        "angle": estimate(AngleEstimate, Budget(()), Angle.of(request.angle or 0.0)),
        "measure": measured_length(measure_of, *_arms(request)),
    }


def _advisories(lean_degrees: float, result: MeasuringChordResult) -> Iterator[Advisory]:
    if lean_degrees < _FLAT_DEGREES:
        yield caution(
            "ill-conditioned",
            f"The chord lies nearly along the shorter arm, {plain(lean_degrees, 4)}° off it: one "
            f"bench step of the measure stands for {arcsec(result.arcsec_per_measure_step)}. "
            "Measure the supplement, or an angle between other faces.",
        )
    sine = result.sine_arcsec_per_step
    if sine is not None and sine < result.arcsec_per_measure_step:
        yield note(
            "sine-bar-surer",
            f"Here a sine bar of the shorter center distance turns only {arcsec(sine)} for a bench "
            f"step, the chord {arcsec(result.arcsec_per_measure_step)}.",
        )
