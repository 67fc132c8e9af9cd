"""Errors of dressing: models to maths and back."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from halfangle_service.cautions import DRESSED_ANGLE_UNPROVED, DRESSING_SAFETY
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    angle_from_radians,
    from_mm,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.cones import half_angle_degrees
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.wheels.models_errors import (
    DressedStation,
    DressingError,
    DressingErrorsRequest,
    DressingErrorsResult,
    WheelConeFields,
    WheelInspection,
    WornWheelErrors,
)
from halfangle_service.trade.wheel.dressing_errors import (
    DressedCone,
    angle_from_wear,
    hyperbola,
    hyperbolic_radii,
    local_half_angle,
    nose_displacement,
    small_end_diameter_change,
)
from halfangle_service.trade.wheel.flank import require_length
from halfangle_service.trade.wording import plain

#: Fields that may hold the cone's angle.
ANGLES = ("included_angle", "half_angle")
#: Stations listed along the cone.
STATIONS = 11


@dataclass(frozen=True, slots=True)
class _Effect:
    """What one error does: to the half angle, to the straightness, to the surface (outward)."""

    name: str
    angle_rad: float = 0.0
    departure: float = 0.0
    outward: float = 0.0
    seen_by_stack: bool = False


def dressing_errors(request: DressingErrorsRequest) -> Outcome[DressingErrorsResult]:
    """What errors of dressing do to the ground cone."""
    cone = cone_of(request, request.wheel_diameter)
    cone.require_room(request.diamond_height)
    effects = [*_effects(request, cone)]
    effects.append(_together(effects))
    inspections = request.inspections or _usual_inspections(request)
    errors = [_error(request, cone, effect, inspections) for effect in effects]
    total = errors[-1].included_angle_error_arcsec
    within = None
    if request.tolerance_arcsec is not None:
        within = abs(total) <= request.tolerance_arcsec
    result = DressingErrorsResult(
        half_angle=angle_from_radians(cone.angle_rad),
        slant=cone.slant,
        errors=errors,
        stations=_stations(request, cone),
        worn=_worn(request),
        within_tolerance=within,
        unseen=[error.name for error in errors[:-1] if _present(error) and not error.seen_by],
    )
    return Outcome(result, tuple(_advisories(request, result)))


def cone_of(request: WheelConeFields, wheel_diameter: float) -> DressedCone:
    """The cone wanted under a wheel of this diameter; refuses diameters in the wrong order."""
    if request.small_diameter >= request.large_diameter:
        raise Impossible(
            f"The smaller diameter {plain(request.small_diameter)} is not below the larger one, "
            f"{plain(request.large_diameter)}.",
            fields={"small_diameter": "should be less than large_diameter"},
        )
    degrees = half_angle_degrees(request.included_angle, request.half_angle)
    cone = DressedCone(
        math.radians(degrees),
        request.small_diameter / 2.0,
        request.large_diameter / 2.0,
        wheel_diameter / 2.0,
    )
    require_length(cone.slant, [name for name in ANGLES if getattr(request, name) is not None])
    return cone


def _effects(request: DressingErrorsRequest, cone: DressedCone) -> Iterator[_Effect]:
    curve = hyperbola(cone, request.diamond_height)
    yield _Effect("diamond height", curve.mean_angle_error_rad, curve.departure)
    nose = nose_displacement(cone.angle_rad, request.nose_radius)
    yield _Effect("diamond nose radius", outward=nose)
    error = request.dresser_angle_error_arcsec / ARCSEC_PER_RADIAN
    yield _Effect("dresser angle", error, seen_by_stack=True)
    small, large = request.wheel_wear_small_end, request.wheel_wear_large_end
    yield _Effect("wheel wear", angle_from_wear(cone.slant, small, large), outward=small)
    # The shorter diamond leaves the flank proud at the end of its way: wear of the other sign.
    at_small = -request.diamond_wear if request.dressed_toward == "small end" else 0.0
    at_large = -request.diamond_wear if request.dressed_toward == "large end" else 0.0
    turned = angle_from_wear(cone.slant, at_small, at_large)
    yield _Effect("diamond wear", turned, outward=at_small)


def _together(effects: Sequence[_Effect]) -> _Effect:
    """All effects at once: they are small, so that angles and displacements add."""
    return _Effect(
        "all together",
        sum(effect.angle_rad for effect in effects),
        sum(effect.departure for effect in effects),
        sum(effect.outward for effect in effects),
    )


def _usual_inspections(request: DressingErrorsRequest) -> list[WheelInspection]:
    units = request.units
    return [
        WheelInspection(name="optical projector", angle_arcsec=60.0, form=from_mm(0.01, units)),
        WheelInspection(
            name="indicator along the cone on a sine bar",
            angle_arcsec=10.0,
            form=from_mm(0.001, units),
        ),
    ]


def _error(
    request: DressingErrorsRequest,
    cone: DressedCone,
    effect: _Effect,
    inspections: Sequence[WheelInspection],
) -> DressingError:
    arcsec = effect.angle_rad * ARCSEC_PER_RADIAN
    return DressingError(
        name=effect.name,
        half_angle_error_arcsec=arcsec,
        included_angle_error_arcsec=2.0 * arcsec,
        included_angle_error_arcmin=arcsec / 30.0,
        end_to_end_um=1000.0 * to_mm(effect.angle_rad * cone.slant, request.units),
        departure=effect.departure,
        departure_um=1000.0 * to_mm(effect.departure, request.units),
        diameter_change=small_end_diameter_change(cone.angle_rad, effect.outward),
        seen_by=[i.name for i in inspections if _sees(i, abs(arcsec), effect.departure)],
        seen_by_stack=effect.seen_by_stack and effect.angle_rad != 0.0,
    )


def _sees(inspection: WheelInspection, arcsec: float, departure: float) -> bool:
    """True where angle or form is out by at least the least that the inspection shows."""
    by_angle = inspection.angle_arcsec is not None and arcsec >= inspection.angle_arcsec > 0.0
    by_form = inspection.form is not None and departure >= inspection.form > 0.0
    return by_angle or by_form


def _present(error: DressingError) -> bool:
    return error.half_angle_error_arcsec != 0.0 or error.departure > 0.0


def _stations(request: DressingErrorsRequest, cone: DressedCone) -> list[DressedStation]:
    along = np.linspace(0.0, cone.length, STATIONS)
    radii = hyperbolic_radii(cone, request.diamond_height, along)
    found = []
    for radius in radii.tolist():
        half = local_half_angle(cone.angle_rad, request.diamond_height, radius)
        found.append(
            DressedStation(
                work_diameter=2.0 * (cone.small_radius + cone.wheel_radius - radius),
                wheel_radius=radius,
                half_angle=angle_from_radians(half),
                error_arcsec=(half - cone.angle_rad) * ARCSEC_PER_RADIAN,
            )
        )
    return found


def _worn(request: DressingErrorsRequest) -> WornWheelErrors | None:
    if request.worn_diameter is None:
        return None
    if request.worn_diameter > request.wheel_diameter:
        raise Impossible(
            f"A wheel of {plain(request.wheel_diameter)} does not wear to "
            f"{plain(request.worn_diameter)}.",
            fields={"worn_diameter": "should be no more than wheel_diameter"},
        )
    cone = cone_of(request, request.worn_diameter)
    cone.require_room(request.diamond_height)
    curve = hyperbola(cone, request.diamond_height)
    return WornWheelErrors(
        wheel_diameter=request.worn_diameter,
        half_angle_error_arcsec=curve.mean_angle_error_rad * ARCSEC_PER_RADIAN,
        departure=curve.departure,
        departure_um=1000.0 * to_mm(curve.departure, request.units),
    )


def _advisories(request: DressingErrorsRequest, result: DressingErrorsResult) -> Iterator[Advisory]:
    if result.within_tolerance is False:
        total = result.errors[-1].included_angle_error_arcsec
        yield caution(
            "beyond-tolerance",
            f"Together these errors turn the included angle by {plain(total, 4)}″; the tolerance "
            f"is ±{plain(request.tolerance_arcsec)}″.",
        )
    if result.unseen:
        yield caution(
            "unseen-errors",
            f"No inspection named would show: {', '.join(result.unseen)}.",
        )
    if request.diamond_height != 0.0:
        yield note(
            "diamond-height-is-a-form-error",
            "A diamond off the wheel's axis dresses a hyperbola, which grinds a crowned cone: set "
            "the diamond to the axis height. It grows as the wheel wears.",
        )
    yield DRESSED_ANGLE_UNPROVED
    yield DRESSING_SAFETY


OPERATION = Operation(
    topic="wheels",
    verb="dressing-errors",
    title="What errors of dressing do to the cone",
    summary="Diamond above or below the wheel's axis (a hyperbolic flank), nose radius, dresser "
    "angle, wear of wheel and diamond: their effect on the cone's angle, form and size, and which "
    "inspection would show them.",
    request=DressingErrorsRequest,
    result=DressingErrorsResult,
    calculate=dressing_errors,
    relations=(
        "tan β′ = tan β · √(1 − (e/r)²), e the diamond's height, r the wheel's radius there",
        "r = √(q² + e²), q falling by tan β along the axis",
        "flank behind a round nose lies deeper by ρ (1 − cos β)",
        "Δα = atan((wear at large end − wear at small end) / slant)",
        "included angle changes by twice the half angle's change",
    ),
    sources=(
        Source(
            citation="Derived here: section of the wheel by the diamond's plane; checked by "
            "rotating the diamond's path.",
            standing="derived",
        ),
        Source(
            citation="Least errors that usual inspections show, where the request names none.",
            standing="common-practice-no-source",
        ),
    ),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "small_diameter": 0.05,
        "wheel_diameter": 7,
        "worn_diameter": 5,
        "diamond_height": 0.1,
        "nose_radius": 0.01,
        "dresser_angle_error_arcsec": 5,
        "wheel_wear_small_end": 0.0001,
    },
)
