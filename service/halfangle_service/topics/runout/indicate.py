"""A section indicated true: eccentricity, what to tap, and what no tapping removes."""

import math
from collections.abc import Iterator

import numpy as np
from pydantic import Field

from halfangle_service.fields import (
    CountOut,
    Direction,
    Length,
    LengthOut,
    ResultModel,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.estimate import DirectionEstimate, LengthEstimate
from halfangle_service.fields.runout import direction_estimate, length_estimate
from halfangle_service.fields.slopes import slope_if_stated
from halfangle_service.operation import Outcome, operation
from halfangle_service.topics.runout.readings import (
    DOUBT,
    LEVER,
    MANY_READINGS,
    THREE_READINGS,
    RunoutIndicatorFields,
    RunoutReadingsFields,
    section_of,
    steps_taken,
    stray_not_told,
)
from halfangle_service.topics.runout.sources import VECTORS
from halfangle_service.trade.runout import doubt, harmonics
from halfangle_service.trade.runout.drawing import SectionRead, runout_svg
from halfangle_service.trade.runout.harmonics import HarmonicFit
from halfangle_service.trade.runout.section import Section
from halfangle_service.trade.runout.vectors import center_of, direction


class RunoutIndicateRequest(RunoutReadingsFields, RunoutIndicatorFields, DrawnFields):
    """Readings round one section.

    The slope is that of a cone indicated square to its surface; without one the indicator is square
    to the axis.
    """

    station_from_apex: Length | None = Field(
        None, description="Distance along the axis of the reading from the cone's apex, in `units`."
    )


class RunoutFormHarmonic(ResultModel):
    """One harmonic beyond the first."""

    lobes: CountOut = Field(description="Lobes a turn.")
    amplitude: LengthOut = Field(description="Amplitude, half of its own full movement.")
    high_spot: Direction | None = Field(
        description="Angle at which it first reads highest; null where there is none of it."
    )


class RunoutIndicateResult(DrawnResult):
    """Eccentricity, what to tap, and what no tapping removes."""

    eccentricity: LengthEstimate = Field(
        description="Offset of the section's center from the axis. Its uncertainty is by rounding "
        "or by scatter, whichever reaches further, since scatter holds rounding already, and by "
        "form that was not fitted; what the indicator and the spindle err by themselves is not "
        "in it. Near zero it reaches down to none."
    )
    tir_from_eccentricity: LengthOut = Field(description="Twice the eccentricity.")
    high_spot: DirectionEstimate | None = Field(
        description="Angle at which the eccentricity reads highest; null where there is none."
    )
    tap_from: Direction | None = Field(
        description="Side to tap from, toward the axis: where the center lies, which in a bore is "
        "opposite to the high spot; as well known as that. Null without eccentricity."
    )
    tap_distance: LengthOut = Field(description="How far the part has to move: the eccentricity.")
    uncertainty_by_resolution: LengthOut = Field(
        description="Standard uncertainty of the eccentricity by the indicator's resolution alone: "
        "half a step either way at each reading, opposed readings rounded alike."
    )
    uncertainty_by_scatter: LengthOut | None = Field(
        description="By the repeatability stated, or by the scatter of the readings about the "
        "fullest fit; null without a spare reading."
    )
    tir_of_readings: LengthOut = Field(
        description="Highest less lowest reading, corrected for the tip, as the indicator swung."
    )
    form: list[RunoutFormHarmonic] = Field(description="Ovality and lobes; tapping leaves them.")
    residual_rms: LengthOut | None = Field(
        description="Root mean square of what the fit leaves; null without a spare reading."
    )
    tir_left_after_tapping: LengthOut | None = Field(
        description="Highest less lowest of the readings, square to the axis, less eccentricity; "
        "null of three readings, which any eccentricity fits whatever the form."
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
        "in a bore the center lies opposite to the high spot",
        "direction ± asin(U/e)",
    ),
    sources=(VECTORS, LEVER, DOUBT),
    largest_request="720 readings, 15 harmonics",
    heavy=lambda request: len(request.readings) > MANY_READINGS or is_drawn(request),
    example={
        "units": "in",
        "surface": "external",
        "indicator_resolution": 0.0001,
        "readings": [
            {"angular_position": 0, "reading": 0.0003},
            {"angular_position": 90, "reading": 0.0004},
            {"angular_position": 180, "reading": -0.0003},
            {"angular_position": 270, "reading": -0.0004},
        ],
        "formats": ["svg"],
    },
)
def indicate(request: RunoutIndicateRequest) -> Outcome[RunoutIndicateResult]:
    """Indicate a section true.

    Readings round one section of a shaft or a bore: eccentricity, high spot, how far to tap, from
    which side, and the ovality and lobes that no tapping removes.
    """
    slope = slope_if_stated(request)
    half_rad = 0.0 if slope is None else slope.half_angle_rad
    section = section_of(request, request)
    fit, known, offset = section.fit, section.known, section.eccentricity
    along, across = section.budgets()
    by_scatter = doubt.scatter_effect(known, fit, section.fullest)
    station = request.station_from_apex
    read = [r.reading for r in request.readings]
    result = RunoutIndicateResult(
        eccentricity=length_estimate(offset, along),
        tir_from_eccentricity=2.0 * abs(offset),
        high_spot=direction_estimate(offset, across),
        tap_from=Direction.of(direction(center_of(offset, request.surface))),
        tap_distance=abs(offset),
        uncertainty_by_resolution=doubt.rounding_effect(known, fit).in_result,
        uncertainty_by_scatter=None if by_scatter is None else by_scatter.in_result,
        tir_of_readings=float(np.ptp(read)) * math.cos(math.radians(request.tip_angle)),
        form=form_of(fit),
        residual_rms=float(np.sqrt(np.mean(fit.residuals**2))) if fit.spare else None,
        tir_left_after_tapping=section.left_after_tapping if len(read) > THREE_READINGS else None,
        sensed_station_from_apex=None
        if station is None
        else harmonics.sensed_station(station, half_rad),
        svg=runout_svg([_drawn(request, section)], request.units) if is_drawn(request) else None,
    )
    return Outcome(result, tuple(_advice(request, result, fit.spare)))


def _drawn(request: RunoutIndicateRequest, section: Section) -> SectionRead:
    """The section as it is drawn, with the side to tap from."""
    tap = direction(center_of(section.eccentricity, request.surface))
    return SectionRead(
        "",
        request.angular_positions(),
        section.from_mean,
        section.eccentricity,
        request.surface,
        () if tap is None else (("tap here", tap),),
    )


def form_of(fit: HarmonicFit) -> list[RunoutFormHarmonic]:
    """Each harmonic beyond the first, as an answer gives it."""
    return [_form(k, v) for k, v in enumerate(fit.amplitudes[1:], start=2)]


def _form(lobes: int, amplitude: complex) -> RunoutFormHarmonic:
    turned = direction(amplitude)
    return RunoutFormHarmonic(
        lobes=lobes,
        amplitude=abs(amplitude),
        high_spot=None if turned is None else Direction.of(turned / lobes),
    )


def _advice(
    request: RunoutIndicateRequest, result: RunoutIndicateResult, spare: int
) -> Iterator[Advisory]:
    if result.tap_distance <= (result.eccentricity.expanded_uncertainty or 0.0):
        yield caution(
            "eccentricity-below-resolution",
            "The eccentricity is within its uncertainty: its direction means little. Read at more "
            "angles, or read one place several times and send the repeatability.",
        )
    yield from steps_taken(request)
    yield from stray_not_told(spare)
