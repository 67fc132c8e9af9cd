"""The sine topic's operations: models to maths and back."""

import math

from halfangle_service.operation import Advisory, Operation, Outcome, Source, caution
from halfangle_service.quantities import Angle, angle_from_radians, bench_step
from halfangle_service.topics.sine.geometry import (
    angle_for_height,
    arcsec_per_height,
    height_for_angle,
)
from halfangle_service.topics.sine.models import (
    SineAngleRequest,
    SineAngleResult,
    SineSettingRequest,
    SineSettingResult,
)

#: Past this angle one step of height turns the plate 1.4 times as far as it does near zero.
STEEP_DEGREES = 45.0

_DERIVED = Source(
    citation="Derived here: the centers of the rolls are the ends of the hypotenuse, the "
    "difference of their heights is the side opposite to the angle.",
    standing="derived",
)
_STEEP = Source(
    citation="A sine bar is not set past 45 degrees if it can be helped.",
    standing="common practice, no source",
)


def setting(request: SineSettingRequest) -> Outcome[SineSettingResult]:
    """Height of the stack for an angle."""
    angle_rad = math.radians(request.angle)
    arcsec = arcsec_per_height(request.center_distance, angle_rad)
    step = bench_step(request.units)
    result = SineSettingResult(
        height=height_for_angle(request.center_distance, angle_rad),
        arcsec_per_unit=arcsec,
        step=step,
        arcsec_per_step=arcsec * step,
        angle=Angle.of(request.angle),
    )
    return Outcome(result, _steepness(request.angle, arcsec * step))


def angle(request: SineAngleRequest) -> Outcome[SineAngleResult]:
    """Angle that a stack gives."""
    angle_rad = angle_for_height(request.center_distance, request.height)
    per_step = arcsec_per_height(request.center_distance, angle_rad) * bench_step(request.units)
    result = SineAngleResult(angle=angle_from_radians(angle_rad), arcsec_per_step=per_step)
    return Outcome(result, _steepness(result.angle.degrees, per_step))


def _steepness(angle_degrees: float, arcsec_per_step: float) -> tuple[Advisory, ...]:
    """Warn where the angle is steep, and say what one bench step does there."""
    if angle_degrees <= STEEP_DEGREES:
        return ()
    complement = 90.0 - angle_degrees
    return (
        caution(
            "steep-angle",
            f"Past {STEEP_DEGREES:g}° a sine setting loses its edge: here one bench step of height "
            f"turns the plate {arcsec_per_step:.1f}″. Where the work can be turned by 90°, set the "
            f"complement, {complement:.4f}°.",
        ),
    )


OPERATIONS = (
    Operation(
        topic="sine",
        verb="setting",
        title="Sine setting",
        summary="The height of the stack that sets a sine bar or plate to an angle.",
        request=SineSettingRequest,
        result=SineSettingResult,
        calculate=setting,
        relations=("height = center_distance × sin(angle)", "dθ/dh = 1 / (L cos θ)"),
        sources=(_DERIVED, _STEEP),
        example={"units": "in", "center_distance": 5, "angle": 30},
    ),
    Operation(
        topic="sine",
        verb="angle",
        title="Angle of a stack",
        summary="The angle that a stack gives on a sine bar or plate.",
        request=SineAngleRequest,
        result=SineAngleResult,
        calculate=angle,
        relations=("angle = asin(height / center_distance)",),
        sources=(_DERIVED, _STEEP),
        example={"units": "in", "center_distance": 5, "height": 2.5},
    ),
)
