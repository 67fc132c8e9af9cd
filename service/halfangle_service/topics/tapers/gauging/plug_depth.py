"""A taper gauged by depth: a plug in a socket, a ring over a plug; measured, and to expect.

Depths run from the part's large end (a socket's mouth, a plug's large end) toward the small end.
"""

from collections.abc import Callable
from dataclasses import dataclass

from pydantic import Field

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import note
from halfangle_service.fields.choice import all_or_none, not_sent
from halfangle_service.fields.estimate import LengthEstimate, NotStated
from halfangle_service.fields.gauging.measured import (
    IncludedAngleErrorLimit,
    MeasuredTaper,
    half_of,
    measured_angle,
    measured_length,
    reading_slack,
    stated_slope,
)
from halfangle_service.fields.slopes import (
    SlopeFields,
    SlopeForms,
    slope_forms,
    slope_if_stated,
    slope_of,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.trade.cone import require_before_point
from halfangle_service.trade.tapers.contact import require_contact
from halfangle_service.trade.tapers.plugs import (
    depth_of_gauge,
    diameter_by_depth,
    engaged_length,
    half_angle_by_depths,
)
from halfangle_service.trade.tapers.tolerance import require_size_left
from halfangle_service.trade.uncertainty import LargestError, Measured
from halfangle_service.trade.wording import of_any_unit

_SHARED_DIAMETER = Source(
    citation="Derived here: where gauge and part touch they share the diameter, and a cone's "
    "diameter changes by 2 tan α for one unit of length; checked against intersected lines.",
    standing="derived",
)
_SAME_SLOPE = note(
    "gauge-slope-assumed",
    "The gauge's cone is taken to have the part's slope. Where bluing shows contact at one end "
    "only, the depth speaks of that end's diameter: see `tapers.standoff`.",
)
_DEPTH = (
    "from the part's large end (a socket's mouth, a plug's large end) toward the small end to the "
    "gauge's line or sharp edge; negative where it stands out"
)


class TaperPlugDepthRequest(SlopeFields):
    """A plug gauge in a socket, or a ring gauge over a plug, at a measured depth.

    State the slope, or a second gauge of another diameter that gives it; with both, the slope
    stated is compared.
    """

    units: UnitsField
    gauge_diameter: Length = Field(
        description="The gauge's diameter at its line or sharp edge.", examples=[17.78]
    )
    gauge_depth: SignedLength = Field(description=f"Distance {_DEPTH}.", examples=[0.5])
    gauge_length: NonNegativeLength = Field(
        0.0,
        description="How far the gauge's cone runs from its line toward the small end; 0 for a "
        "sharp edge, such as a disc's or a straight ring's.",
    )
    second_gauge_diameter: Length | None = Field(
        None, description="Diameter of a second gauge, at a sharp edge."
    )
    second_gauge_depth: SignedLength | None = Field(None, description=f"Its distance {_DEPTH}.")
    length: Length = Field(description="Length of the part's cone.", examples=[64.0])
    gauge_line: NonNegativeLength = Field(
        0.0, description="Distance of the part's own gauge line from its large end."
    )
    depth_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error of each depth, plus or minus."
    )
    gauge_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error of each gauge's diameter, plus or minus."
    )
    included_angle_error_limit_arcsec: IncludedAngleErrorLimit = None


class TaperPlugDepthResult(MeasuredTaper):
    """The part as gauged by depth; its half angle is the one found, else the one stated."""

    gauge_line_diameter: LengthEstimate = Field(
        description="Diameter at the part's gauge line, with its uncertainty."
    )
    included_angle_off_stated_arcsec: ArcsecOut | None = Field(
        description="Included angle found less the one stated; null without both."
    )
    engaged_length: LengthOut = Field(
        description="Length over which the first gauge touches; 0 for a sharp edge."
    )


@operation(
    "tapers.plug-depth",
    relations=("D = D_g + 2 (p − s) tan α", "tan α = (D1 − D2) / (2 (p2 − p1))"),
    sources=(_SHARED_DIAMETER,),
    example={
        "units": "mm",
        "one_in_x": 20.02,
        "gauge_diameter": 17.78,
        "gauge_depth": 0.5,
        "gauge_length": 60,
        "length": 64,
        "depth_error_limit": 0.02,
        "gauge_error_limit": 0.001,
    },
    columns=True,
)
def plug_depth(request: TaperPlugDepthRequest) -> Outcome[TaperPlugDepthResult]:
    """Taper gauged by depth.

    Diameter at the gauge line from how deep a plug enters a socket or a ring goes over a plug; the
    taper too, from two gauges.
    """
    stated = slope_if_stated(request)
    gauges = _gauges(request)
    half = gauges.half_angle_rad
    engaged = engaged_length(request.gauge_depth, request.gauge_length, request.length)
    small = gauges.diameter(request.length)
    _require_cone(request, half, reading_slack(request.units, small))
    off = None if stated is None else 2.0 * (half - stated.half_angle_rad) * ARCSEC_PER_RADIAN
    return Outcome(
        TaperPlugDepthResult(
            half_angle=measured_angle(gauges.slope, *gauges.of_slope),
            large_diameter=gauges.diameter(0.0),
            small_diameter=small,
            gauge_line_diameter=gauges.diameter(request.gauge_line),
            included_angle_off_stated_arcsec=off if len(gauges.inputs) == _TWO_GAUGES else None,
            engaged_length=engaged,
            **slope_forms(half),
        ),
        (_SAME_SLOPE,) if request.gauge_length else (),
    )


#: Inputs of two gauges: diameter and depth of each.
_TWO_GAUGES = 4


@dataclass(frozen=True, slots=True)
class _Gauges:
    """Diameter and depth of the first gauge, then what gives the slope.

    `slope` gives the half angle in radians from the inputs from `slope_from` on.
    """

    inputs: tuple[Measured, ...]
    slope_from: int
    slope: Callable[..., float]

    @property
    def of_slope(self) -> tuple[Measured, ...]:
        """The inputs that the slope follows from."""
        return self.inputs[self.slope_from :]

    @property
    def half_angle_rad(self) -> float:
        """Half angle in radians."""
        return self.slope(*(i.value for i in self.of_slope))

    def diameter(self, station: float) -> LengthEstimate:
        """Part's diameter at a distance from its large end."""

        def at(*values: float) -> float:
            half = self.slope(*values[self.slope_from :])
            return diameter_by_depth(values[0], values[1], half, station)

        return measured_length(at, *self.inputs)


def _gauges(request: TaperPlugDepthRequest) -> _Gauges:
    """Two gauges that give the slope, or one and the slope stated."""
    gauges = LargestError("gauge_error_limit", request.gauge_error_limit)
    depths = LargestError("depth_error_limit", request.depth_error_limit)
    first = (
        Measured("gauge_diameter", request.gauge_diameter, gauges, above=0.0),
        Measured("gauge_depth", request.gauge_depth, depths),
    )
    second = _second_gauge(request)
    if second is None:
        half = slope_of(request).half_angle_rad
        slope = stated_slope(half, request.included_angle_error_limit_arcsec)
        return _Gauges((*first, slope), len(first), half_of)
    second_gauge = (
        Measured("second_gauge_diameter", second[0], gauges, above=0.0),
        Measured("second_gauge_depth", second[1], depths),
    )
    return _Gauges((*first, *second_gauge), 0, half_angle_by_depths)


def _second_gauge(request: TaperPlugDepthRequest) -> tuple[float, float] | None:
    """Diameter and depth of a second gauge; refuses half of one, and edges off the cone."""
    all_or_none(
        request,
        "second_gauge_diameter",
        "second_gauge_depth",
        why="A second gauge needs its diameter and its depth.",
    )
    diameter, depth = request.second_gauge_diameter, request.second_gauge_depth
    if diameter is None or depth is None:
        return None
    if request.gauge_length:
        raise Disagreement(
            "Two gauges give the taper only at sharp edges: a gauge with a cone of its own touches "
            "where its angle lets it.",
            fields={"gauge_length": "should be 0, or leave the second gauge out"},
        )
    require_contact(request.gauge_depth, request.length, "gauge", "gauge_depth")
    require_contact(depth, request.length, "second gauge", "second_gauge_depth")
    return diameter, depth


def _require_cone(request: TaperPlugDepthRequest, half: float, slack: float) -> None:
    """Refuse a cone without a large end, one that ends early, and a gauge line off it.

    `slack` is how far the small end's diameter may be off.
    """
    large = diameter_by_depth(request.gauge_diameter, request.gauge_depth, half, 0.0)
    if large <= 0.0:
        raise Impossible(
            f"At this depth the part's large end would have a diameter of {of_any_unit(large)}.",
            fields={"gauge_depth": "should leave the part's large end a diameter"},
        )
    require_before_point(large, request.length, half, slack=slack)
    require_contact(request.gauge_line, request.length, "gauge line", "gauge_line")


class TaperPlugDepthNominalRequest(SlopeFields):
    """A nominal taper that is to be gauged by depth."""

    units: UnitsField
    large_diameter: Length = Field(description="Diameter at the large end.", examples=[17.8])
    length: Length = Field(description="Length of the part's cone.", examples=[64.0])
    gauge_diameter: Length = Field(
        description="The gauge's diameter at its line or sharp edge.", examples=[17.78]
    )
    gauge_length: NonNegativeLength = Field(
        0.0, description="How far the gauge's cone runs from its line toward the small end."
    )
    large_diameter_tolerance: NonNegativeLength | None = Field(
        None, description="Tolerance of the large diameter, plus and minus."
    )


class TaperPlugDepthNominalResult(SlopeForms):
    """The depth to expect, and its limits."""

    gauge_depth: LengthOut = Field(description=f"Distance {_DEPTH}.")
    smallest_gauge_depth: LengthOut | None = Field(
        description="Depth at the smallest large diameter, the shallow limit; null where its "
        "tolerance was not stated."
    )
    largest_gauge_depth: LengthOut | None = Field(
        description="Depth at the largest large diameter, the deep limit; null where its tolerance "
        "was not stated."
    )
    engaged_length: LengthOut = Field(
        description="Length over which the gauge touches; 0 for a sharp edge."
    )
    half_angle: Angle = Field(description="Half angle.")
    not_stated: NotStated


@operation(
    "tapers.plug-depth-nominal",
    relations=("p = (D − D_g) / (2 tan α)",),
    sources=(_SHARED_DIAMETER,),
    example={
        "units": "mm",
        "one_in_x": 20.02,
        "large_diameter": 17.8,
        "length": 64,
        "gauge_diameter": 17.78,
        "gauge_length": 60,
        "large_diameter_tolerance": 0.01,
    },
    columns=True,
)
def plug_depth_nominal(
    request: TaperPlugDepthNominalRequest,
) -> Outcome[TaperPlugDepthNominalResult]:
    """Depth to expect of a gauge.

    How deep a plug enters a nominal socket, or a ring goes over a nominal plug, with limits for a
    tolerance of the diameter.
    """
    slope = slope_of(request)
    half = slope.half_angle_rad
    require_before_point(request.large_diameter, request.length, half)
    require_size_left(request.large_diameter, request.large_diameter_tolerance)
    depth = depth_of_gauge(request.large_diameter, request.gauge_diameter, half)
    return Outcome(
        TaperPlugDepthNominalResult(
            gauge_depth=depth,
            engaged_length=_engaged(request, depth),
            half_angle=Angle.of(slope.half_angle_degrees),
            not_stated=not_sent(request, "large_diameter_tolerance"),
            **_limits(request, half),
            **slope_forms(half),
        )
    )


def _limits(request: TaperPlugDepthNominalRequest, half: float) -> dict[str, float | None]:
    """Depths at the limits of the large diameter; None where its tolerance was not stated."""
    tolerance = request.large_diameter_tolerance
    if tolerance is None:
        return {"smallest_gauge_depth": None, "largest_gauge_depth": None}
    shallow, deep = (
        depth_of_gauge(request.large_diameter + error, request.gauge_diameter, half)
        for error in (-tolerance, tolerance)
    )
    return {"smallest_gauge_depth": shallow, "largest_gauge_depth": deep}


def _engaged(request: TaperPlugDepthNominalRequest, depth: float) -> float:
    """Length over which the gauge touches; where it misses, its diameter is the field to mend."""
    try:
        return engaged_length(depth, request.gauge_length, request.length)
    except Impossible as missed:
        raise Impossible(
            missed.detail,
            fields={"gauge_diameter": "should be a diameter that the part's cone has"},
        ) from missed
