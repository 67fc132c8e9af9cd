"""The wheels topic's operations: models to maths and back."""

import math

from halfangle_service.errors import Impossible
from halfangle_service.operation import Advisory, Operation, Outcome, Source, caution
from halfangle_service.quantities import angle_from_radians, bench_step
from halfangle_service.quantities.cones import half_angle_degrees
from halfangle_service.topics.sine.geometry import arcsec_per_height, height_for_angle
from halfangle_service.topics.wheels.flank import dressing_passes, flank_for_rise, require_fits
from halfangle_service.topics.wheels.models import (
    ConeWork,
    FaceWork,
    WheelFlankRequest,
    WheelFlankResult,
)

_DERIVED = Source(
    citation="Derived here: with parallel axes the flank lies along the ground surface.",
    standing="derived",
)
_OPTICAL = Source(
    citation="A dressed angle is checked optically, since neither the blocks nor the dresser show "
    "how the wheel came out.",
    standing="common practice, no source",
)

_CAUTIONS: tuple[Advisory, ...] = (
    caution(
        "dressed-angle-unproved",
        "The stack proves the dresser's setting, not the wheel: diamond height, diamond wear and "
        "wheel wear all turn the flank. Check the ground angle by itself, optically or over rolls.",
    ),
    caution(
        "dressing-safety",
        "Guard closed, eye protection on, coolant or dust extraction running. Stay at or below the "
        "speed marked on the wheel; the wheel's and the machine's markings, local codes and "
        "qualified people come first.",
    ),
)


def flank(request: WheelFlankRequest) -> Outcome[WheelFlankResult]:
    """Angle to dress on the wheel, and the dresser's setting."""
    angle_rad, rise = surface_of(request.work)
    shape = flank_for_rise(angle_rad, rise, request.overrun)
    require_fits(shape, request.wheel_width, request.edge_flat)
    dresser_rad = angle_rad if request.dresser_zero == "wheel axis" else math.pi / 2.0 - angle_rad
    per_height = arcsec_per_height(request.dresser_center_distance, dresser_rad)
    result = WheelFlankResult(
        angle_from_axis=angle_from_radians(angle_rad),
        angle_from_side=angle_from_radians(math.pi / 2.0 - angle_rad),
        dresser_angle=angle_from_radians(dresser_rad),
        dresser_height=height_for_angle(request.dresser_center_distance, dresser_rad),
        dresser_arcsec_per_step=per_height * bench_step(request.units),
        flank_width=shape.width,
        flank_slant=shape.slant,
        depth_to_dress=shape.depth,
        passes=dressing_passes(shape.depth, request.depth_per_pass),
        flat_left=request.wheel_width - shape.width,
    )
    return Outcome(result, _CAUTIONS)


def surface_of(work: ConeWork | FaceWork) -> tuple[float, float]:
    """Angle in radians of the surface to the wheel's axis, and its rise in the request's unit."""
    if isinstance(work, FaceWork):
        return math.radians(work.face_angle), work.rise
    if work.small_diameter >= work.large_diameter:
        raise Impossible(
            f"The smaller diameter {work.small_diameter:.6g} is not below the larger one, "
            f"{work.large_diameter:.6g}.",
            fields={"work/small_diameter": "should be less than large_diameter"},
        )
    degrees = half_angle_degrees(work.included_angle, work.half_angle, prefix="work/")
    return math.radians(degrees), (work.large_diameter - work.small_diameter) / 2.0


OPERATIONS = (
    Operation(
        topic="wheels",
        verb="flank",
        title="Angle to dress on the wheel",
        summary="The flank to dress on the wheel for a cone or an angled face: its angle, the "
        "dresser's sine setting, its width on the wheel and the depth to dress away.",
        request=WheelFlankRequest,
        result=WheelFlankResult,
        calculate=flank,
        relations=(
            "flank angle from the wheel's axis = half angle of the cone, or face angle",
            "slant = rise / sin(angle) + 2 × overrun",
            "width = slant × cos(angle), depth = slant × sin(angle)",
            "dresser height = dresser_center_distance × sin(dresser angle)",
        ),
        sources=(_DERIVED, _OPTICAL),
        example={
            "units": "in",
            "work": {
                "kind": "cone",
                "included_angle": 60,
                "large_diameter": 0.75,
                "small_diameter": 0.05,
            },
            "wheel_width": 0.75,
            "overrun": 0.02,
            "dresser_center_distance": 2,
            "depth_per_pass": 0.0005,
        },
    ),
)
