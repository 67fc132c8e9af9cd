"""A small angle as an autocollimator or a level reads it."""

from collections.abc import Callable, Iterator
from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    Length,
    RequestModel,
    ResultModel,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, note
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import all_or_none
from halfangle_service.fields.estimate import ArcsecEstimate, LengthEstimate, estimate
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade import elementary
from halfangle_service.trade.measuring.small_angles import TiltUnit, apart, tilt_of
from halfangle_service.trade.uncertainty import LargestError, Measured, budget_of

#: What one division of the scale stands for, sent together.
DIVISION = ("division_value", "division_unit")
#: Past ten degrees no level or autocollimator reads.
_LARGEST_RAD = elementary.radians(10.0)

_TiltReading = Annotated[float, FINITE, Field(ge=-1e6, le=1e6), Unit("stated")]
_DERIVED = Source(
    citation="Derived here: mm/m is a tangent; 1″ is π/648000 rad (SI Brochure, 9th edition, "
    "table 8). Turned by half a turn a level reads the tilt the other way, its zero the same.",
    standing="derived",
)


class MeasuringSmallAngleRequest(RequestModel):
    """A reading, what it is in, and what is known of it."""

    rules = (Rule("all-or-none", DIVISION),)

    units: UnitsField
    tilt_reading: _TiltReading = Field(
        description="Reading, in what `tilt_reading_in` says; up toward the base's far end is "
        "positive.",
        examples=[2.5],
    )
    tilt_reading_in: Literal["arcsecond", "microradian", "mm-per-m", "divisions"] = Field(
        description="What the reading is in. Of an autocollimator the angle of the mirror.",
        examples=["divisions"],
    )
    division_value: Annotated[float, FINITE, Field(ge=1e-6, le=1e5), Unit("stated")] | None = Field(
        None,
        description="What one division stands for, in `division_unit`: the sensitivity of a level.",
        examples=[0.02],
    )
    division_unit: TiltUnit | None = Field(None, description="Unit of `division_value`.")
    turned_tilt_reading: _TiltReading | None = Field(
        None,
        description="Reading with the level turned end for end on the same place, signed as seen "
        "on the level: its own zero error is then taken out.",
    )
    tilt_reading_error_limit: (
        Annotated[float, FINITE, Field(ge=0, le=1e6), Unit("stated")] | None
    ) = Field(None, description="Largest error ± of each reading, in what it is in.")
    base_length: Length | None = Field(
        None,
        description="Length over which the height is wanted, in `units`: between the feet.",
        examples=[200.0],
    )


class MeasuringSmallAngleResult(ResultModel):
    """The angle in every form, and the height that it makes over a base."""

    tilt_arcsec: ArcsecEstimate = Field(description="The angle.")
    tilt_microradian: Annotated[float, Unit("microradian")] = Field(description="The same.")
    rise_per_metre_mm: Annotated[float, Unit("millimetre")] = Field(
        description="Rise in millimetres over a metre: 1000 tan."
    )
    height_over_base: LengthEstimate | None = Field(
        description="Height of the base's far end; null without `base_length`."
    )
    zero_error_arcsec: ArcsecEstimate | None = Field(
        description="What the level reads on a level place; null without a turned reading."
    )


@operation(
    "measuring.small-angle",
    relations=(
        "1 mm/m = atan(1/1000) = 206.26″; 1″ = 4.848 µrad",
        "turned end for end: tilt = (m − m_turned) / 2, zero error = (m + m_turned) / 2",
        "height = base × tan(tilt)",
    ),
    sources=(_DERIVED,),
    example={
        "units": "mm",
        "tilt_reading": 2.5,
        "tilt_reading_in": "divisions",
        "division_value": 0.02,
        "division_unit": "mm-per-m",
        "tilt_reading_error_limit": 0.5,
        "base_length": 200,
    },
    columns=True,
)
def small_angle(request: MeasuringSmallAngleRequest) -> Outcome[MeasuringSmallAngleResult]:
    """Small angle by autocollimator or level.

    A reading in arc-seconds, mm/m, microradians or divisions as an angle, and the height that it
    makes over a base; a level turned end for end tells its own zero error.
    """
    scale, unit = _scale(request)
    names = ("tilt_reading", "turned_tilt_reading")
    error = LargestError("tilt_reading_error_limit", request.tilt_reading_error_limit)
    for name in names:
        value = getattr(request, name)
        if value is not None and abs(tilt_of(value * scale, unit)) > _LARGEST_RAD:
            raise Impossible(
                "No level or autocollimator reads past 10°.",
                fields={name: "should be a reading of a small angle in what tilt_reading_in says"},
            )
    inputs = tuple(
        Measured(name, value, error, unit="stated")
        for name in names
        if (value := getattr(request, name)) is not None
    )

    def tilt(*readings: float) -> float:
        return _parts(readings, scale, unit)[0]

    values = [i.value for i in inputs]
    angle = tilt(*values)
    base = request.base_length
    result = MeasuringSmallAngleResult(
        tilt_arcsec=_angle(tilt, inputs),
        tilt_microradian=angle * 1e6,
        rise_per_metre_mm=1000.0 * elementary.tan(angle),
        height_over_base=None
        if base is None
        else estimate(
            LengthEstimate,
            budget_of(lambda *r: base * elementary.tan(tilt(*r)), *inputs),
            base * elementary.tan(angle),
        ),
        zero_error_arcsec=None
        if len(inputs) == 1
        else _angle(lambda *r: _parts(r, scale, unit)[1], inputs),
    )
    return Outcome(result, tuple(_advisories(request)))


def _scale(request: MeasuringSmallAngleRequest) -> tuple[float, TiltUnit]:
    """What one unit of the reading stands for, and in what."""
    stated = all_or_none(request, *DIVISION, why="A division is a number of a unit.")
    wanted = request.tilt_reading_in == "divisions"
    if stated != wanted:
        raise Disagreement(
            "Readings in divisions need what one stands for; others have no division.",
            fields=dict.fromkeys(DIVISION, "goes with divisions, and only with them"),
        )
    if request.tilt_reading_in == "divisions":
        return request.division_value or 0.0, request.division_unit or "arcsecond"
    return 1.0, request.tilt_reading_in


def _parts(readings: tuple[float, ...], scale: float, unit: TiltUnit) -> tuple[float, float]:
    """Tilt and zero error in radians; without a turned reading the zero is taken as right."""
    scaled = [reading * scale for reading in readings]
    return (
        (tilt_of(scaled[0], unit), 0.0) if len(scaled) == 1 else apart(scaled[0], scaled[1], unit)
    )


def _angle(function: Callable[..., float], inputs: tuple[Measured, ...]) -> ArcsecEstimate:
    value = function(*(i.value for i in inputs)) * ARCSEC_PER_RADIAN
    return estimate(ArcsecEstimate, budget_of(function, *inputs), value, per_unit=ARCSEC_PER_RADIAN)


def _advisories(request: MeasuringSmallAngleRequest) -> Iterator[Advisory]:
    if request.turned_tilt_reading is None:
        yield note(
            "zero-not-told",
            "The instrument's own zero is taken as right. Turn a level end for end on the same "
            "place and send both readings, or read an autocollimator against a reference.",
        )
