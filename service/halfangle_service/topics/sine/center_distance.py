"""The center distance of a sine bar, calibrated from angle blocks."""

import math
from collections.abc import Iterator, Sequence
from typing import Annotated

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    FINITE,
    AngleInput,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    ResultModel,
    SignedLength,
    Unit,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.estimate import ArcsecEstimate, LengthEstimate, estimate
from halfangle_service.fields.plates import BaseStep
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.sine.sources import SINE_RELATION
from halfangle_service.trade.measuring.center_distance import center_distance_of, largest_residual
from halfangle_service.trade.uncertainty import LargestError, Measured, budget_of
from halfangle_service.trade.unit_slips import require_center_distance
from halfangle_service.trade.wording import figure, of_any_unit, plain

#: Below this angle an error of it counts more than 3.7 times in the center distance.
_FLAT_DEGREES = 15.0

#: A rise of more than a fiftieth of the travel is no residual of a setting.
_STEEPEST = 0.02
#: Settings nearer to one another hardly tell the center distance from the lean of the face.
_APART_DEGREES = 10.0

_FIT = Source(
    citation="Derived here: least squares of the angles in center distance and lean of the face.",
    standing="derived",
)


class SineCalibrationSetting(RequestModel):
    """One setting: a stack, angle blocks on the face, what the indicator still read."""

    angle: Annotated[float, AngleInput(gt=0, lt=90)] = Field(
        description="Angle of the angle blocks, in degrees, as calibrated.", examples=[30.0]
    )
    height: Length = Field(
        description="Stack under the high roll over that under the low one, in `units`.",
        examples=[2.5],
    )
    indicator_rise: SignedLength = Field(
        0.0,
        description="Rise that the indicator read along the top of the angle blocks, toward the "
        "low roll, over `indicator_travel`.",
        examples=[0.00005],
    )


class SineCenterDistanceRequest(RequestModel):
    """A sine bar set under angle blocks that are indicated level."""

    units: UnitsField
    settings: list[SineCalibrationSetting] = Field(
        min_length=1,
        max_length=12,
        description="Settings; from two different angles on the lean of the face is told apart.",
    )
    indicator_travel: Length = Field(
        description="Travel of the indicator, in `units`.", examples=[2.0]
    )
    base_step: BaseStep = 0.0
    nominal_center_distance: Length | None = Field(
        None, description="Center distance as engraved, in `units`.", examples=[5.0]
    )
    angle_error_limit_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=3600), Unit("arcsecond")] | None
    ) = Field(None, description="Largest error ± of each angle of the blocks, in arc-seconds.")
    stack_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each stack's height, in `units`."
    )
    indicating_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each rise that the indicator reads, in `units`."
    )
    face_lean_error_limit_arcsec: (
        Annotated[float, FINITE, Field(ge=0, le=3600), Unit("arcsecond")] | None
    ) = Field(
        None,
        description="Limit ± of the lean of the face to the line of the rolls, in arc-seconds; "
        "counts with one setting, from several it is found.",
    )


class SineCenterDistanceResult(ResultModel):
    """The center distance as calibrated."""

    center_distance: LengthEstimate = Field(description="Distance of the centers of the rolls.")
    center_distance_error: LengthOut | None = Field(
        description="That less the nominal one; null without it."
    )
    face_lean_arcsec: ArcsecEstimate | None = Field(
        description="Lean of the face to the line of the rolls, steeper is positive; null from one "
        "setting."
    )
    largest_residual_arcsec: ArcsecOut | None = Field(
        description="Most that an angle differs from what follows; null up to two settings."
    )


@operation(
    "sine.center-distance",
    relations=(
        "face angle = angle of the blocks − atan(rise / travel)",
        "L = (height − base_step) / sin(face angle)",
        "several: angle = asin(height / L) + lean, least squares in L and lean",
    ),
    sources=(SINE_RELATION, _FIT),
    example={
        "units": "in",
        "settings": [
            {"angle": 15, "height": 1.29415, "indicator_rise": -0.00002},
            {"angle": 30, "height": 2.5001, "indicator_rise": 0.00001},
            {"angle": 45, "height": 3.5357},
        ],
        "indicator_travel": 2,
        "nominal_center_distance": 5,
        "angle_error_limit_arcsec": 1,
        "stack_error_limit": 0.00001,
        "indicating_error_limit": 0.00001,
    },
    largest_request="12 settings",
    heavy=True,
)
def center_distance(request: SineCenterDistanceRequest) -> Outcome[SineCenterDistanceResult]:
    """Center distance from angle blocks.

    Calibrates a sine bar: the center distance, and from several settings the lean of its face, by
    angle blocks that an indicator shows level on it.
    """
    _require_angles(request)
    if request.nominal_center_distance is not None:
        require_center_distance(
            request.nominal_center_distance, request.units, "nominal_center_distance"
        )
    several, inputs = len(request.settings) > 1, _inputs(request)
    values = [i.value for i in inputs]

    def fitted(*figures: float) -> tuple[float, float]:
        return center_distance_of(_found(request, figures))

    distance, lean = fitted(*values)
    require_center_distance(distance, request.units, "settings")
    nominal = request.nominal_center_distance
    result = SineCenterDistanceResult(
        center_distance=estimate(
            LengthEstimate, budget_of(lambda *f: fitted(*f)[0], *inputs), distance
        ),
        center_distance_error=None if nominal is None else distance - nominal,
        face_lean_arcsec=estimate(
            ArcsecEstimate,
            budget_of(lambda *f: fitted(*f)[1], *inputs),
            lean * ARCSEC_PER_RADIAN,
            per_unit=ARCSEC_PER_RADIAN,
        )
        if several
        else None,
        largest_residual_arcsec=largest_residual(_found(request, values), distance, lean)
        * ARCSEC_PER_RADIAN
        if len(request.settings) > 2
        else None,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _require_angles(request: SineCenterDistanceRequest) -> None:
    for place, setting in enumerate(request.settings):
        lift = setting.height - request.base_step
        if lift <= 0.0:
            raise Impossible(
                "A stack that leaves the plate level says nothing of its center distance.",
                fields={f"settings/{place}/height": "should be more than base_step"},
            )
        most = _STEEPEST * request.indicator_travel
        if abs(setting.indicator_rise) > most:
            raise Impossible(
                f"A rise of {of_any_unit(setting.indicator_rise)} is none of angle blocks set "
                "level.",
                fields={
                    f"settings/{place}/indicator_rise": f"should be within ±{of_any_unit(most)}"
                },
            )
        if _face(setting.angle * 3600.0, setting.indicator_rise, request.indicator_travel) <= 0.0:
            raise Impossible(
                "The rise is more than the angle blocks' own.",
                fields={f"settings/{place}/indicator_rise": "should be a small residual"},
            )


def _face(angle_arcsec: float, rise: float, travel: float) -> float:
    """Angle at which the face stands, in radians."""
    return angle_arcsec / ARCSEC_PER_RADIAN - math.atan(rise / travel)


def _inputs(request: SineCenterDistanceRequest) -> tuple[Measured, ...]:
    """Angle, height and rise of each setting; of a single one the face's lean too."""
    angles = LargestError("angle_error_limit_arcsec", request.angle_error_limit_arcsec)
    stacks = LargestError("stack_error_limit", request.stack_error_limit)
    rises = LargestError("indicating_error_limit", request.indicating_error_limit)
    found = [
        measured
        for place, setting in enumerate(request.settings)
        for measured in (
            Measured(
                f"settings/{place}/angle", setting.angle * 3600.0, angles, "arcsecond", above=0.0
            ),
            Measured(f"settings/{place}/height", setting.height, stacks),
            Measured(f"settings/{place}/indicator_rise", setting.indicator_rise, rises),
        )
    ]
    if len(request.settings) == 1:
        lean = LargestError("face_lean_error_limit_arcsec", request.face_lean_error_limit_arcsec)
        found.append(Measured("face_lean", 0.0, lean, "arcsecond"))
    return tuple(found)


def _found(
    request: SineCenterDistanceRequest, figures: Sequence[float]
) -> list[tuple[float, float]]:
    """Height and face angle of each setting, from the figures in the order of `_inputs`."""
    count = 3 * len(request.settings)
    lean = figures[count] / ARCSEC_PER_RADIAN if len(figures) > count else 0.0
    return [
        (
            figures[place + 1] - request.base_step,
            _face(figures[place], figures[place + 2], request.indicator_travel) - lean,
        )
        for place in range(0, count, 3)
    ]


def _advisories(
    request: SineCenterDistanceRequest, result: SineCenterDistanceResult
) -> Iterator[Advisory]:
    steepest = max(setting.angle for setting in request.settings)
    if steepest < _FLAT_DEGREES:
        per_arcsec = (result.center_distance.value or 0.0) / math.tan(math.radians(steepest))
        yield caution(
            "ill-conditioned",
            f"At {plain(steepest)}° an error of 1″ of the angle blocks counts "
            f"{figure(per_arcsec / ARCSEC_PER_RADIAN, request.units)} in the center distance: "
            "calibrate at 30° to 45°.",
        )
    apart = steepest - min(setting.angle for setting in request.settings)
    if len(request.settings) > 1 and apart < _APART_DEGREES:
        yield caution(
            "ill-conditioned",
            f"The settings lie within {plain(apart, 4)}° of one another, so that the center "
            "distance is hardly told from the lean of the face: add one further off.",
        )
    if len(request.settings) == 1:
        yield note(
            "face-lean-not-told",
            "With one setting a lean of the face to the rolls is taken for center distance: add a "
            "setting at another angle.",
        )
