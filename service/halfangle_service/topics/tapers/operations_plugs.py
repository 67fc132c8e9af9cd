"""Tapers gauged by depth: models to maths and back."""

import math
from collections.abc import Callable, Sequence

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians
from halfangle_service.fields.advisories import note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.tapers.models_plugs import (
    TaperPlugDepthNominalRequest,
    TaperPlugDepthNominalResult,
    TaperPlugDepthRequest,
    TaperPlugDepthResult,
)
from halfangle_service.topics.tapers.models_slope import half_angle_rad_of, stated_half_angles
from halfangle_service.topics.tapers.operations_contact import budget_of
from halfangle_service.trade.tapers.contact import require_contact
from halfangle_service.trade.tapers.plugs import (
    depth_of_gauge,
    diameter_by_depth,
    engaged_length,
    half_angle_by_depths,
)
from halfangle_service.trade.uncertainty import Budget
from halfangle_service.trade.wording import plain

_SHARED_DIAMETER = Source(
    citation="Derived here: where gauge and part touch they share the diameter, and a cone's "
    "diameter changes by 2 tan α for one unit of length; checked against intersected lines.",
    standing="derived",
)
_SAME_SLOPE = note(
    "gauge-slope-assumed",
    "The gauge's cone is taken to have the part's slope. Where bluing shows contact at one end "
    "only, the depth speaks of that end's diameter: see tapers/standoff.",
)
_Function = Callable[[Sequence[float]], float]


def plug_depth(request: TaperPlugDepthRequest) -> Outcome[TaperPlugDepthResult]:
    """Diameters of a part from a gauge's depth, its slope stated or found by a second gauge."""
    stated = half_angle_rad_of(request) if stated_half_angles(request) else None
    found = _by_second_gauge(request)
    if found is None and stated is None:
        raise Disagreement(
            "The taper's slope is missing.",
            fields={"included_angle": "send a slope, or a second gauge and its depth"},
        )
    half = found if found is not None else stated or 0.0
    engaged = engaged_length(request.depth, request.gauge_length, request.length)
    large, line, small = (
        diameter_by_depth(request.gauge_diameter, request.depth, half, station)
        for station in (0.0, request.gauge_line, request.length)
    )
    _require_cone(request, small)
    budgets = _budgets(request, found, stated)
    off = None if found is None or stated is None else 2.0 * (found - stated) * ARCSEC_PER_RADIAN
    return Outcome(
        TaperPlugDepthResult(
            gauge_line_diameter=line,
            gauge_line_diameter_expanded=budgets[1].expanded(),
            gauge_line_diameter_worst=budgets[1].worst_case,
            large_diameter=large,
            small_diameter=small,
            half_angle=angle_from_radians(half),
            included_angle=angle_from_radians(2.0 * half),
            taper_per_foot=24.0 * math.tan(half),
            half_angle_expanded_arcsec=budgets[0].expanded() * ARCSEC_PER_RADIAN,
            included_angle_off_stated_arcsec=off,
            engaged_length=engaged,
            diameter_per_depth=2.0 * math.tan(half),
        ),
        (_SAME_SLOPE,) if request.gauge_length else (),
    )


def _require_cone(request: TaperPlugDepthRequest, small: float) -> None:
    """Refuse a cone that ends before its length, and a gauge line off it."""
    if small <= 0:
        raise Impossible(
            f"The taper would end before the length: its small diameter would be {plain(small)}.",
            fields={"length": "should end before the cone's point"},
        )
    require_contact(request.gauge_line, request.length, "gauge line", "gauge_line")


def _second(request: TaperPlugDepthRequest) -> tuple[float, float] | None:
    """Diameter and depth of the second gauge; one without the other is refused."""
    diameter, depth = request.second_gauge_diameter, request.second_depth
    if diameter is None and depth is None:
        return None
    if diameter is None or depth is None:
        missing = "second_gauge_diameter" if diameter is None else "second_depth"
        raise Disagreement(
            "A second gauge needs its diameter and its depth.",
            fields={missing: "send this too, or leave the second gauge out"},
        )
    return diameter, depth


def _by_second_gauge(request: TaperPlugDepthRequest) -> float | None:
    """Half angle from two gauges at sharp edges; None without a second one."""
    second = _second(request)
    if second is None:
        return None
    if request.gauge_length:
        raise Disagreement(
            "Two gauges give the taper only at sharp edges: a gauge with a cone of its own touches "
            "where its angle lets it.",
            fields={"gauge_length": "should be 0, or leave the second gauge out"},
        )
    require_contact(request.depth, request.length, "gauge", "depth")
    require_contact(second[1], request.length, "second gauge", "second_depth")
    return half_angle_by_depths(request.gauge_diameter, second[0], request.depth, second[1])


def _budgets(
    request: TaperPlugDepthRequest, found: float | None, stated: float | None
) -> tuple[Budget, Budget]:
    """Budgets of the half angle and of the diameter at the gauge line."""
    second = _second(request)
    values: tuple[float, ...] = (request.gauge_diameter, request.depth)
    tolerances = {0: request.gauge_tolerance, 1: request.depth_tolerance}
    if found is None or second is None:
        half = stated or 0.0
        values += (half,)
        wanted = request.included_angle_tolerance_arcsec / 2.0 / ARCSEC_PER_RADIAN
        tolerances[2] = min(wanted, half / 2.0, (math.pi / 2.0 - half) / 2.0)
        return _both(lambda v: v[2], request.gauge_line, values, tolerances)
    values += second
    tolerances |= {2: request.gauge_tolerance, 3: request.depth_tolerance}
    try:
        return _both(
            lambda v: half_angle_by_depths(v[0], v[2], v[1], v[3]),
            request.gauge_line,
            values,
            tolerances,
        )
    except Impossible as swallowed:
        raise Impossible(
            "The tolerances swallow the difference of the gauges: no taper can be had from these.",
            fields={
                "depth_tolerance": "should be less than the difference of the depths",
                "gauge_tolerance": "should be less than the difference of the diameters",
            },
        ) from swallowed


def _both(
    angle: _Function, line: float, values: Sequence[float], tolerances: dict[int, float]
) -> tuple[Budget, Budget]:
    def diameter(v: Sequence[float]) -> float:
        return diameter_by_depth(v[0], v[1], angle(v), line)

    return budget_of(angle, values, tolerances), budget_of(diameter, values, tolerances)


def plug_depth_nominal(
    request: TaperPlugDepthNominalRequest,
) -> Outcome[TaperPlugDepthNominalResult]:
    """Depth to expect for a nominal taper, and its limits."""
    half = half_angle_rad_of(request)
    if request.large_diameter <= 2.0 * request.length * math.tan(half):
        raise Impossible(
            "The taper comes to its point before the length.",
            fields={"length": "should end before the cone's point"},
        )
    tolerance = request.diameter_tolerance
    shallow, depth, deep = (
        depth_of_gauge(request.large_diameter + error, request.gauge_diameter, half)
        for error in (-tolerance, 0.0, tolerance)
    )
    try:
        engaged = engaged_length(depth, request.gauge_length, request.length)
    except Impossible as missed:
        raise Impossible(
            missed.detail,
            fields={"gauge_diameter": "should be a diameter that the part's cone has"},
        ) from missed
    return Outcome(
        TaperPlugDepthNominalResult(
            depth=depth,
            smallest_depth=shallow,
            largest_depth=deep,
            depth_per_diameter=1.0 / (2.0 * math.tan(half)),
            diameter_per_depth=2.0 * math.tan(half),
            engaged_length=engaged,
            half_angle=angle_from_radians(half),
        )
    )


PLUG_DEPTH = Operation(
    topic="tapers",
    verb="plug-depth",
    title="Taper gauged by depth",
    summary="Diameter at the gauge line from how deep a plug enters a socket or a ring goes over a "
    "plug; the taper too, from two gauges.",
    request=TaperPlugDepthRequest,
    result=TaperPlugDepthResult,
    calculate=plug_depth,
    relations=("D = D_g + 2 (p − s) tan α", "tan α = (D1 − D2) / (2 (p2 − p1))"),
    sources=(_SHARED_DIAMETER,),
    example={
        "units": "mm",
        "one_in_x": 20.02,
        "gauge_diameter": 17.78,
        "depth": 0.5,
        "gauge_length": 60,
        "length": 64,
        "depth_tolerance": 0.02,
        "gauge_tolerance": 0.001,
    },
)
PLUG_DEPTH_NOMINAL = Operation(
    topic="tapers",
    verb="plug-depth-nominal",
    title="Depth to expect of a gauge",
    summary="How deep a plug enters a nominal socket, or a ring goes over a nominal plug, with "
    "limits for a tolerance of the diameter.",
    request=TaperPlugDepthNominalRequest,
    result=TaperPlugDepthNominalResult,
    calculate=plug_depth_nominal,
    relations=("p = (D − D_g) / (2 tan α)",),
    sources=(_SHARED_DIAMETER,),
    example={
        "units": "mm",
        "one_in_x": 20.02,
        "large_diameter": 17.8,
        "length": 64,
        "gauge_diameter": 17.78,
        "gauge_length": 60,
        "diameter_tolerance": 0.01,
    },
)
