"""A section indicated true: eccentricity, what to tap, and what no tapping removes."""

import math
from typing import Annotated

import numpy as np
from pydantic import Field

from halfangle_service.fields import (
    Angle,
    AngleInput,
    Count,
    CountOut,
    Length,
    LengthOut,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.estimate import LengthEstimate, estimate
from halfangle_service.fields.runout import HighSpot
from halfangle_service.fields.slopes import SlopeFields, slope_if_stated
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.runout.sources import VECTORS
from halfangle_service.trade.runout import harmonics
from halfangle_service.trade.runout.vectors import high_spot

#: Spare readings from which on one stray reading stands out.
STRAY_NEEDS_SPARE = 2
_LEVER = Source(
    citation="Cosine correction of a lever indicator: true = reading × cos(tip angle).",
    standing="common-practice-no-source",
)


class RunoutReading(RequestModel):
    """One reading of the indicator."""

    angular_position: HighSpot = Field(
        description="Angle of the part under the indicator, in degrees.", examples=[90]
    )
    reading: SignedLength = Field(
        description="Indicator reading in `units`; more is a higher surface.", examples=[0.0004]
    )


class RunoutIndicateRequest(SlopeFields):
    """Readings round one section.

    The slope is that of a cone indicated square to its surface; without one the indicator is square
    to the axis.
    """

    units: UnitsField
    readings: list[RunoutReading] = Field(
        min_length=3, max_length=720, description="Readings at any angles, each angle once."
    )
    harmonics: Annotated[int, Count(ge=1, le=15)] = Field(
        1, description="Harmonics to fit: 1 eccentricity, 2 ovality, 3 and more lobes."
    )
    indicator_resolution: Length = Field(
        description="Resolution of the indicator, in `units`.", examples=[0.0001]
    )
    tip_angle: Annotated[float, AngleInput(ge=0, le=75)] = Field(
        0.0,
        description="Angle of a lever indicator's tip to the surface, in degrees; 0 for a plunger "
        "or a tip that corrects itself.",
    )
    station_from_apex: Length | None = Field(
        None, description="Distance along the axis of the reading from the cone's apex, in `units`."
    )


class RunoutFormHarmonic(ResultModel):
    """One harmonic beyond the first."""

    lobes: CountOut = Field(description="Lobes a turn.")
    amplitude: LengthOut = Field(description="Amplitude, half of its own full movement.")
    high_spot: Angle = Field(description="Angle of its first high spot.")


class RunoutIndicateResult(ResultModel):
    """Eccentricity, what to tap, and what no tapping removes."""

    eccentricity: LengthEstimate = Field(
        description="Offset of the section's center from the axis. Its uncertainty is the larger "
        "of those by resolution and by scatter, since scatter holds the resolution already."
    )
    tir_from_eccentricity: LengthOut = Field(description="Twice the eccentricity.")
    high_spot: Angle = Field(description="Direction of the eccentricity, 0 to 360 degrees.")
    tap_from: Angle = Field(description="Side to tap from, toward the axis: the high spot.")
    tap_distance: LengthOut = Field(description="How far the part has to move: the eccentricity.")
    uncertainty_by_resolution: LengthOut = Field(
        description="Standard uncertainty of the eccentricity by the indicator's resolution alone "
        "(half-width: half a step)."
    )
    uncertainty_by_scatter: LengthOut | None = Field(
        description="By the scatter of the readings about the fit; null without a spare reading."
    )
    tir_of_readings: LengthOut = Field(
        description="Highest less lowest reading, corrected for the tip, as the indicator swung."
    )
    form: list[RunoutFormHarmonic] = Field(description="Ovality and lobes; tapping leaves them.")
    residual_rms: LengthOut = Field(description="Root mean square of what the fit leaves.")
    tir_left_after_tapping: LengthOut = Field(
        description="Highest less lowest of the readings, square to the axis, less eccentricity."
    )
    sensed_station_from_apex: LengthOut | None = Field(
        description="Where the indicator senses the axis: z / cos² α. Null without a station."
    )


@operation(
    "runout.indicate",
    relations=(
        "reading(φ) = mean + Σ (a_k cos kφ + b_k sin kφ), least squares",
        "eccentricity = √(a_1² + b_1²); true = reading × cos(tip angle)",
        "square to a cone: eccentricity = amplitude / cos α, sensed at z / cos² α",
    ),
    sources=(VECTORS, _LEVER),
    largest_request="720 readings, 15 harmonics",
    example={
        "units": "in",
        "indicator_resolution": 0.0001,
        "readings": [
            {"angular_position": 0, "reading": 0.0003},
            {"angular_position": 90, "reading": 0.0004},
            {"angular_position": 180, "reading": -0.0003},
            {"angular_position": 270, "reading": -0.0004},
        ],
    },
)
def indicate(request: RunoutIndicateRequest) -> Outcome[RunoutIndicateResult]:
    """Indicate a section true.

    Readings round one section: eccentricity, high spot, how far to tap, from which side, and the
    ovality and lobes that no tapping removes.
    """
    slope = slope_if_stated(request)
    half_rad = 0.0 if slope is None else slope.half_angle_rad
    to_tip = math.cos(math.radians(request.tip_angle))
    to_axis = to_tip / math.cos(half_rad)
    angles = np.radians([r.angular_position for r in request.readings])
    read = np.array([r.reading for r in request.readings])
    fit = harmonics.fit_harmonics(angles, read * to_axis, request.harmonics)
    noise = to_axis * request.indicator_resolution / math.sqrt(12.0)
    harmonics.require_no_stray(angles, read * to_axis, fit, noise)
    by_scatter = harmonics.scatter_effect(fit)
    offset, direction = abs(fit.eccentricity), Angle.of(high_spot(fit.eccentricity))
    station = request.station_from_apex
    result = RunoutIndicateResult(
        eccentricity=estimate(
            LengthEstimate,
            harmonics.eccentricity_budget(fit, request.indicator_resolution, to_axis),
            offset,
        ),
        tir_from_eccentricity=2.0 * offset,
        high_spot=direction,
        tap_from=direction,
        tap_distance=offset,
        uncertainty_by_resolution=harmonics.resolution_effect(
            fit, request.indicator_resolution, to_axis
        ).in_result,
        uncertainty_by_scatter=None if by_scatter is None else by_scatter.in_result,
        tir_of_readings=float(np.ptp(read)) * to_tip,
        form=[_form(k, v) for k, v in enumerate(fit.amplitudes[1:], start=2)],
        residual_rms=float(np.sqrt(np.mean(fit.residuals**2))),
        tir_left_after_tapping=harmonics.left_after_tapping(angles, read * to_axis, fit),
        sensed_station_from_apex=None
        if station is None
        else harmonics.sensed_station(station, half_rad),
    )
    return Outcome(result, _advice(result, harmonics.spare_readings(fit)))


def _form(lobes: int, amplitude: complex) -> RunoutFormHarmonic:
    return RunoutFormHarmonic(
        lobes=lobes, amplitude=abs(amplitude), high_spot=Angle.of(high_spot(amplitude) / lobes)
    )


def _advice(result: RunoutIndicateResult, spare: int) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if result.tap_distance < (result.eccentricity.expanded_uncertainty or 0.0):
        message = "The eccentricity is within twice its uncertainty: its direction means little."
        given.append(caution("eccentricity-below-resolution", message))
    if spare < STRAY_NEEDS_SPARE:
        message = (
            f"With {spare} reading(s) to spare a stray reading cannot be told from form: read "
            f"at {STRAY_NEEDS_SPARE - spare} more angle(s)."
        )
        given.append(note("stray-not-told", message))
    return tuple(given)
