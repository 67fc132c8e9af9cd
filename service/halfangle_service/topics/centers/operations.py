"""The centers topic's operations: models to maths and back."""

import cmath
import math

from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, Angle
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.centers.models import (
    CenterContactRequest,
    CenterContactResult,
    CenterEffectAt,
    CenterEffectRequest,
    CenterEffectResult,
    CenterError,
    CenterLimit,
    CenterLimitsRequest,
    CenterLimitsResult,
)
from halfangle_service.topics.centers.operations_adapter import ADAPTER
from halfangle_service.topics.centers.operations_hole import HOLE
from halfangle_service.trade.centers import contact as bearing
from halfangle_service.trade.centers import effect as lift
from halfangle_service.trade.centers.limits import (
    center_weight,
    eccentricity_limit,
    tir_on_cone,
)
from halfangle_service.trade.wording import plain

#: Below this a length is rounding of the arithmetic, in inches or in millimetres.
ROUNDING = 1e-14
_DERIVED = Source(
    citation="Derived here: the work's axis is the straight line through the two centers.",
    standing="derived",
)
_ZONE = Source(
    citation="ISO 1101:2017, coaxiality: the zone is a cylinder whose diameter is the tolerance.",
    standing="published",
)


def limits(request: CenterLimitsRequest) -> Outcome[CenterLimitsResult]:
    """Concentricity limits of a center."""
    if request.runout_allowed_tir is None and request.position_allowed is None:
        message = "send this, or the other, or both"
        raise Disagreement(
            "What the work may see is missing: send runout_allowed_tir or position_allowed.",
            fields={"runout_allowed_tir": message, "position_allowed": message},
        )
    weight = center_weight(request.distance_between_centers, request.station)
    position = request.position_allowed
    # A live center's eccentricity is seen as runout of twice its size, and as position.
    as_offset = [
        offset
        for offset in (
            request.runout_allowed_tir / 2.0 if request.runout_allowed_tir is not None else None,
            position,
        )
        if offset is not None
    ]
    result = CenterLimitsResult(
        part_seen=weight,
        live=_limit(request, min(as_offset), weight),
        dead=None if position is None else _limit(request, position, weight),
        dead_reseated=None if position is None else _limit(request, position / 2.0, weight),
    )
    if position is not None:
        return Outcome(result)
    return Outcome(
        result,
        (
            note(
                "dead-center-no-runout",
                "A dead center makes no runout: its eccentricity moves the work's axis and shows "
                "as taper or position. Send position_allowed for its limit.",
            ),
        ),
    )


def _limit(request: CenterLimitsRequest, allowed_offset: float, weight: float) -> CenterLimit:
    """One limit in every form."""
    eccentricity = eccentricity_limit(
        allowed_offset * request.share,
        weight,
        request.other_eccentricity,
        both_alike=request.both_alike,
    )
    half_angle_rad = math.radians(request.included_angle) / 2.0
    return CenterLimit(
        eccentricity=eccentricity,
        tir=2.0 * eccentricity,
        zone_diameter=2.0 * eccentricity,
        tir_on_cone=tir_on_cone(eccentricity, half_angle_rad),
    )


def contact(request: CenterContactRequest) -> Outcome[CenterContactResult]:
    """Where a center bears in a hole."""
    if request.pilot_diameter >= request.mouth_diameter:
        raise Impossible(
            f"The pilot, {plain(request.pilot_diameter)}, leaves no cone under the mouth diameter "
            f"{plain(request.mouth_diameter)}.",
            fields={"pilot_diameter": "should be less than mouth_diameter"},
        )
    center_rad = math.radians(request.center_included_angle) / 2.0
    found = bearing.contact(
        center_rad,
        math.radians(request.hole_included_angle) / 2.0,
        request.mouth_diameter,
        request.pilot_diameter,
    )
    result = CenterContactResult(
        bearing=found.bearing,
        contact_diameter=found.diameter,
        gap_at_other_end=found.gap_at_other_end,
        point_from_mouth=found.point_from_mouth,
        axial_shift=request.diameter_error / (2.0 * math.tan(center_rad)),
    )
    if found.bearing == "whole cone":
        return Outcome(result)
    message = f"The center bears on the edge at the {found.bearing} only: the edge wears and beds."
    return Outcome(result, (caution("edge-bearing", message),))


def effect(request: CenterEffectRequest) -> Outcome[CenterEffectResult]:
    """Runout and offset that eccentric centers give the work."""
    length = request.distance_between_centers
    for i, station in enumerate(request.stations):
        if station > length:
            raise Impossible(
                f"Station {plain(station)} is outside the part, which ends at {plain(length)}.",
                fields={f"stations/{i}": "should be distance_between_centers or less"},
            )
    first, second = request.first, request.second
    slope = abs(_offset(second) - _offset(first)) / length
    worst = lift.worst_tilt(first.eccentricity, second.eccentricity, length)
    result = CenterEffectResult(
        at_stations=[_effect_at(request, z) for z in request.stations],
        tilt_arcsec=math.atan(slope) * ARCSEC_PER_RADIAN,
        worst_tilt_arcsec=math.atan(worst) * ARCSEC_PER_RADIAN,
        bench_height_tilt_arcsec=math.atan(request.second_height / length) * ARCSEC_PER_RADIAN,
        bench_line_tilt_arcsec=math.atan(request.second_line / length) * ARCSEC_PER_RADIAN,
    )
    return Outcome(result, _effect_advice(request))


def _effect_advice(request: CenterEffectRequest) -> tuple[Advisory, ...]:
    given: list[Advisory] = []
    if request.part_at_first is not None or request.part_at_second is not None:
        message = (
            "Turning end for end leaves part of both errors mixed. To tell them apart turn the "
            "part by 180° on the centers and send both readings to runout/reversal."
        )
        given.append(note("told-apart-by-clocking", message))
    if request.second_height or request.second_line:
        message = (
            "Bench centers off in height or line read as taper of a straight part: turn the part "
            "end for end and take half the difference of the two tapers read."
        )
        given.append(caution("bench-centers-off", message))
    return tuple(given)


def _offset(center: CenterError) -> complex:
    return cmath.rect(center.eccentricity, math.radians(center.high_spot))


def _part(request: CenterEffectRequest, station: float) -> complex:
    """The part's own eccentricity vector at a station."""
    ends = [
        cmath.rect(end.tir / 2.0, math.radians(end.high_spot)) if end is not None else 0j
        for end in (request.part_at_first, request.part_at_second)
    ]
    return lift.axis_offset(ends[0], ends[1], request.distance_between_centers, station)


def _nothing_to_zero(vector: complex) -> complex:
    """A vector that is rounding alone has no direction."""
    return vector if abs(vector) > ROUNDING else 0j


def _effect_at(request: CenterEffectRequest, station: float) -> CenterEffectAt:
    length, pair = request.distance_between_centers, (request.first, request.second)
    turning = [_offset(c) if c.turns else 0j for c in pair]
    standing = [0j if c.turns else _offset(c) for c in pair]
    seen = lift.axis_offset(turning[0], turning[1], length, station)
    still = lift.axis_offset(standing[0], standing[1], length, station)
    worst = lift.worst_offset(abs(turning[0]), abs(turning[1]), length, station)
    part = _part(request, station)
    other_place = lift.axis_offset(turning[0], turning[1], length, length - station)
    shown = _nothing_to_zero(seen + part)
    seen = _nothing_to_zero(seen)
    return CenterEffectAt(
        station=station,
        apparent_tir=2.0 * abs(seen),
        high_spot=Angle.of(math.degrees(cmath.phase(seen)) % 360.0),
        standing_offset=abs(still),
        worst_tir=2.0 * worst,
        part_tir=2.0 * abs(part),
        seen_tir=2.0 * abs(shown),
        seen_high_spot=Angle.of(math.degrees(cmath.phase(shown)) % 360.0),
        seen_tir_end_for_end=2.0
        * abs(_nothing_to_zero(other_place + lift.turned_end_for_end(part))),
        height_offset=request.second_height * station / length,
        line_offset=request.second_line * station / length,
    )


OPERATIONS = (
    Operation(
        topic="centers",
        verb="effect",
        title="What eccentric centers do to the work",
        summary="Runout, standing offset and tilt of a part between two centers, one or both of "
        "which turn.",
        request=CenterEffectRequest,
        result=CenterEffectResult,
        calculate=effect,
        relations=(
            "e(z) = e1 (1 - z/L) + e2 z/L",
            "TIR = 2 |e| of the centers that turn",
            "seen = 2 |e(z) + part(z)|; end for end 2 |e(L - z) + conjugate of part(z)|",
        ),
        sources=(_DERIVED,),
        example={
            "units": "in",
            "first": {"eccentricity": 0.0002, "high_spot": 0, "turns": True},
            "second": {"eccentricity": 0.0002, "high_spot": 180, "turns": True},
            "distance_between_centers": 6,
            "stations": [0, 3, 6],
        },
    ),
    Operation(
        topic="centers",
        verb="contact",
        title="Where a center bears in its hole",
        summary="A center of one angle in a hole of another: where it bears, the gap at the other "
        "end, and the axial shift of the work for an error of diameter.",
        request=CenterContactRequest,
        result=CenterContactResult,
        calculate=contact,
        relations=(
            "gap = depth × |tan α_hole - tan α_center|",
            "axial shift = diameter error / (2 tan α_center)",
        ),
        sources=(
            Source(
                citation="Derived here: two coaxial cones of unlike angle touch on one circle.",
                standing="derived",
            ),
        ),
        example={
            "units": "mm",
            "center_included_angle": 60,
            "hole_included_angle": 59,
            "mouth_diameter": 8.5,
            "pilot_diameter": 4,
            "diameter_error": 0.1,
        },
    ),
    Operation(
        topic="centers",
        verb="limits",
        title="How true a center must be",
        summary="From the runout or the position error that the work may see at a station between "
        "two centers: the limit of the center as eccentricity, as TIR and as a coaxiality zone.",
        request=CenterLimitsRequest,
        result=CenterLimitsResult,
        calculate=limits,
        relations=(
            "e(z) = e1 (1 - z/L) + e2 z/L",
            "TIR = 2 e, zone diameter = 2 e",
            "TIR square to the cone's surface = 2 e cos α",
        ),
        sources=(_DERIVED, _ZONE),
        example={
            "units": "in",
            "runout_allowed_tir": 0.0005,
            "position_allowed": 0.0002,
            "share": 0.25,
            "distance_between_centers": 6,
            "station": 1,
        },
    ),
    HOLE,
    ADAPTER,
)
