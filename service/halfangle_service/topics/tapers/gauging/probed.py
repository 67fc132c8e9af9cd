"""A taper by a probe or a height gauge: travel across it at depths, the tip's size taken off."""

import math
from collections.abc import Iterator, Sequence

from pydantic import Field

from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    Length,
    LengthOut,
    NonNegativeLength,
    RequestModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.estimate import AngleEstimate, LengthEstimate
from halfangle_service.fields.gauging.measured import measured_angle, measured_length
from halfangle_service.fields.runout import SurfaceField
from halfangle_service.fields.slopes import SlopeForms, slope_forms
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.tapers.sources import TANGENT_CIRCLES
from halfangle_service.trade.tapers.probed import (
    face_diameter_probed,
    half_angle_probed,
    largest_residual,
)
from halfangle_service.trade.uncertainty import LargestError, Measured
from halfangle_service.trade.wording import figure, of_any_unit

#: A lean that is the rounding of figures, no taper.
_NOISE_RAD = 1e-12
#: So many readings fit a line whatever the form.
_TWO = 2

_FIT = Source(
    citation="Derived here: straight line of least squares through travel and depth.",
    standing="derived",
)


class TaperProbedReading(RequestModel):
    """One depth and the travel there."""

    depth: SignedLength = Field(
        description="Depth of the tip's center below the face, in `units`.", examples=[0.5]
    )
    tip_travel: NonNegativeLength = Field(
        description="Travel of the tip's center from wall to wall across the axis, in `units`: on "
        "a height gauge the high reading less the low one, the tip not taken off.",
        examples=[0.8],
    )


class TaperProbedRequest(RequestModel):
    """Readings across a taper at two depths or more."""

    units: UnitsField
    surface: SurfaceField
    tip_diameter: Length = Field(description="Diameter of the probe's tip.", examples=[2.0])
    readings: list[TaperProbedReading] = Field(
        min_length=2, max_length=24, description="Readings, each of a depth."
    )
    measure_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each travel, in `units`."
    )
    depth_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of each depth, in `units`."
    )
    tip_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the tip's diameter, in `units`."
    )


class TaperProbedResult(SlopeForms):
    """The taper as probed."""

    half_angle: AngleEstimate = Field(description="Half angle, with its uncertainty.")
    face_diameter: LengthEstimate = Field(
        description="Diameter at the face that depths run from: of a socket its mouth."
    )
    widens_with_depth: bool = Field(description="True where the far end is the large one.")
    largest_residual: LengthOut | None = Field(
        description="Most that a travel lies off the straight line; null of two readings."
    )


@operation(
    "tapers.probed",
    relations=(
        "tan α = |Δtravel| / (2 Δdepth)",
        "bore: D = travel + d / cos α at the depth of the tip's center; outside: D = travel − "
        "d / cos α",
    ),
    sources=(TANGENT_CIRCLES, _FIT),
    example={
        "units": "mm",
        "surface": "internal",
        "tip_diameter": 2,
        "readings": [{"depth": 10, "tip_travel": 20}, {"depth": 40, "tip_travel": 40}],
        "measure_error_limit": 0.002,
        "depth_error_limit": 0.005,
        "tip_error_limit": 0.001,
    },
    largest_request="24 readings",
    heavy=True,
)
def probed(request: TaperProbedRequest) -> Outcome[TaperProbedResult]:
    """Taper probed at depths.

    Half angle and diameter at the face of a tapered hole, or an outer taper, from the travel of a
    probe or a height gauge across it at depths, the tip's size taken off square to the surface.
    """
    internal = request.surface == "internal"
    sign = 1.0 if internal else -1.0
    count = len(request.readings)
    inputs = _inputs(request)
    depths, travels = _split([i.value for i in inputs], count)
    lean = half_angle_probed(depths, travels)
    if abs(lean) < _NOISE_RAD:
        raise Impossible(
            "The travel is the same at every depth: this is no taper.",
            fields={"readings": "should differ from depth to depth"},
        )
    face = measured_length(
        lambda *figures: face_diameter_probed(*_split(figures, count), figures[-1], sign), *inputs
    )
    if not face.value:
        raise Impossible(
            f"The taper would end before the face: a tip of {of_any_unit(request.tip_diameter)} "
            "takes all of it.",
            fields={"readings": "should be of a taper that reaches its face"},
        )
    result = TaperProbedResult(
        half_angle=measured_angle(
            lambda *figures: abs(half_angle_probed(*_split(figures, count))), *inputs[:-1]
        ),
        face_diameter=face,
        widens_with_depth=lean > 0.0,
        largest_residual=largest_residual(depths, travels) if count > _TWO else None,
        **slope_forms(abs(lean)),
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _inputs(request: TaperProbedRequest) -> tuple[Measured, ...]:
    """Depth and travel of each reading, then the tip's diameter."""
    depths = LargestError("depth_error_limit", request.depth_error_limit)
    travels = LargestError("measure_error_limit", request.measure_error_limit)
    tip = LargestError("tip_error_limit", request.tip_error_limit)
    every = [reading.depth for reading in request.readings]
    # An error that takes the shallowest past the deepest, or back, leaves no slope.
    shallowest, deepest = min(every), max(every)
    read = [
        measured
        for place, reading in enumerate(request.readings)
        for measured in (
            Measured(
                f"readings/{place}/depth",
                reading.depth,
                depths,
                above=shallowest if reading.depth == deepest else -math.inf,
                below=deepest if reading.depth == shallowest else math.inf,
            ),
            Measured(f"readings/{place}/tip_travel", reading.tip_travel, travels),
        )
    ]
    return (*read, Measured("tip_diameter", request.tip_diameter, tip, above=0.0))


def _split(figures: Sequence[float], count: int) -> tuple[Sequence[float], Sequence[float]]:
    """Depths and travels from figures in the order of `_inputs`."""
    return figures[: 2 * count : 2], figures[1 : 2 * count : 2]


def _advisories(request: TaperProbedRequest, result: TaperProbedResult) -> Iterator[Advisory]:
    residual, limit = result.largest_residual, request.measure_error_limit
    if residual is None:
        yield note(
            "straightness-not-told",
            "Two depths fit any line: a third shows whether the taper is straight.",
        )
    elif limit is not None and residual > 2.0 * limit:
        yield caution(
            "off-the-line",
            f"A travel lies {figure(residual, request.units)} off the straight line, more than "
            "twice the error stated of it: a stray reading, or a taper that is not straight.",
        )
    yield note(
        "across-the-axis",
        "Travel is taken square to the axis and through it: find the turning point, and set the "
        "axis along the depth.",
    )
