"""Tapers on a sine plate: models to maths and back."""

import math
from collections.abc import Iterator

from halfangle_service.cautions import STEEP_DEGREES, steep_angle
from halfangle_service.errors import Disagreement, Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.plates import arcsec_per_step, offset_of, to_set
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.sine.models_taper import (
    SineTaperAngleRequest,
    SineTaperAngleResult,
    SineTaperFields,
    SineTaperSettingRequest,
    SineTaperSettingResult,
    SineTaperSlip,
)
from halfangle_service.topics.sine.plate import SINE_RELATION, bulk
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    height_for_angle,
    require_reach,
)
from halfangle_service.trade.sine.taper_use import (
    Holding,
    agreed_half_angle,
    half_angle_from_plate,
    half_angle_from_taper,
    half_angle_sensitivity,
    mistaken_plate_angles,
    plate_angle,
    taper_from_half_angle,
)
from halfangle_service.trade.wording import plain

#: A slip that sets the plate less than this off cannot be told from the right setting.
TELLING_ARCSEC = 0.5

_GEOMETRY = Source(
    citation="Derived here: two planes of a vee touch a cone where their normals make 90° less the "
    "half angle with its axis; a flat is a vee opened to 180°. Checked against rotated cones.",
    standing="derived",
)
_MISTAKES = {
    "included-for-half": "the included angle set where the half angle was due",
    "half-for-included": "the half angle set where the included angle was due",
    "taper-ratio-as-sine": "the taper (a tangent of two halves) taken for the sine of the angle",
    "half-taper-ratio-as-sine": "half the taper (the half angle's tangent) taken for its sine",
    "half-of-atan-of-whole-taper": "half of atan(taper) taken for atan(taper / 2)",
    "atan-of-whole-taper": "atan(taper) taken for 2 atan(taper / 2)",
}
_LYING = {
    "between centers": "Lay the taper's axis parallel to the plate's top",
    "on its generator": "Lay the taper on its generator on the plate's top",
    "in a vee": "Lay the taper in the vee along the plate",
}


def stated_half_angles(taper: SineTaperFields) -> dict[str, float]:
    """Half angle in radians from each statement that a request makes, by its field."""
    stated: dict[str, float] = {}
    if taper.included_angle is not None:
        stated["included_angle"] = math.radians(taper.included_angle) / 2.0
    if taper.half_angle is not None:
        stated["half_angle"] = math.radians(taper.half_angle)
    if taper.taper_per_foot is not None:
        stated["taper_per_foot"] = half_angle_from_taper(taper.taper_per_foot / 12.0)
    if taper.taper_ratio is not None:
        stated["taper_ratio"] = half_angle_from_taper(1.0 / taper.taper_ratio)
    if taper.taper_per_length is not None:
        stated["taper_per_length"] = half_angle_from_taper(taper.taper_per_length)
    return stated


def taper_setting(request: SineTaperSettingRequest) -> Outcome[SineTaperSettingResult]:
    """Setting for a taper."""
    half = agreed_half_angle(stated_half_angles(request))
    vee = math.radians(request.vee_angle) / 2.0
    angle_rad = plate_angle(half, request.holding, vee)
    require_reach(math.degrees(angle_rad), request.largest_angle, "holding")
    offset = offset_of(request)
    height = height_for_angle(request.center_distance, angle_rad, offset)
    built = to_set(height, request.units)
    as_set = angle_for_height(request.center_distance, built, offset, "holding")
    per_step = arcsec_per_step(request.center_distance, angle_rad, request.units)
    result = SineTaperSettingResult(
        plate_angle=angle_from_radians(angle_rad),
        height=height,
        height_to_set=built,
        rounding_error_arcsec=(as_set - angle_rad) * ARCSEC_PER_RADIAN,
        half_angle=angle_from_radians(half),
        included_angle=angle_from_radians(2.0 * half),
        axis_tilt=angle_from_radians(angle_rad - half),
        arcsec_per_step=per_step,
        included_arcsec_per_step=2.0
        * per_step
        * half_angle_sensitivity(angle_rad, request.holding, vee),
        instruction=_instruction(request, height),
        usual_mistakes=_slips(request, half, angle_rad, offset),
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _instruction(request: SineTaperSettingRequest, height: float) -> str:
    return (
        f"{_LYING[request.holding]}, its small end toward the high roll, and put "
        f"{plain(height, 7)} {request.units} under the high roll over the low roll's stack: the "
        "top generator then lies parallel to the surface plate."
    )


def _slips(
    request: SineTaperSettingRequest, half: float, right: float, offset: float
) -> list[SineTaperSlip]:
    """The usual mistakes that would give another setting than the right one."""
    return [
        SineTaperSlip(
            mistake=_MISTAKES[name],
            height=height_for_angle(request.center_distance, wrong, offset),
            plate_angle=angle_from_radians(wrong),
            plate_angle_error_arcsec=(wrong - right) * ARCSEC_PER_RADIAN,
        )
        for name, wrong in mistaken_plate_angles(half).items()
        if _fits(name, request.holding) and abs(wrong - right) * ARCSEC_PER_RADIAN > TELLING_ARCSEC
    ]


def _fits(name: str, holding: Holding) -> bool:
    """True where a slip belongs to the angle that this way of holding sets."""
    of_included = {"half-for-included", "taper-ratio-as-sine", "atan-of-whole-taper"}
    if holding == "in a vee":
        return name == "half-for-included"
    return (name in of_included) == (holding == "on its generator")


def _advisories(
    request: SineTaperSettingRequest, result: SineTaperSettingResult
) -> Iterator[Advisory]:
    yield from steep_angle(result.plate_angle.degrees, result.arcsec_per_step, STEEP_DEGREES)
    yield from bulk(result.height, request.center_distance)
    if request.holding == "in a vee":
        yield caution(
            "vee-along-the-plate",
            "The vee must lie along the plate and its own angle counts: 1° of vee angle matters "
            "most for blunt cones. Prove the vee with a known plug.",
        )


def taper_angle(request: SineTaperAngleRequest) -> Outcome[SineTaperAngleResult]:
    """Taper that a setting stands for."""
    vee = math.radians(request.vee_angle) / 2.0
    plate = angle_for_height(request.center_distance, request.height, offset_of(request))
    lean = plate + _residual_lean(request)
    if not 0.0 < lean < math.pi / 2:
        raise Impossible(
            f"The top generator would lean {plain(math.degrees(lean))}° to the plate's top; a "
            "taper held so leans by more than 0° and less than 90°.",
            fields={"height": "should stand for a lean between 0° and 90°"},
        )
    half = half_angle_from_plate(lean, request.holding, vee)
    taper = taper_from_half_angle(half)
    slope = half_angle_sensitivity(lean, request.holding, vee)
    per_step = arcsec_per_step(request.center_distance, plate, request.units)
    result = SineTaperAngleResult(
        plate_angle=angle_from_radians(plate),
        generator_lean=angle_from_radians(lean),
        half_angle=angle_from_radians(half),
        included_angle=angle_from_radians(2.0 * half),
        taper_per_foot=12.0 * taper,
        taper_ratio=1.0 / taper,
        taper_per_length=taper,
        included_arcsec_per_step=2.0 * slope * per_step,
    )
    return Outcome(result, tuple(steep_angle(math.degrees(plate), per_step, STEEP_DEGREES)))


def _residual_lean(request: SineTaperAngleRequest) -> float:
    """Lean in radians that the indicator read along the top generator; rise over travel along
    the surface plate.
    """  # noqa: D205
    if request.indicator_travel is None:
        if request.indicator_rise:
            raise Disagreement(
                "A rise without its travel has no angle.",
                fields={"indicator_travel": "should be sent together with indicator_rise"},
            )
        return 0.0
    return math.atan(request.indicator_rise / request.indicator_travel)


TAPER_SETTING = Operation(
    topic="sine",
    verb="taper-setting",
    title="Sine setting for a taper",
    summary="The setting that brings a taper's top generator parallel to the surface plate: held "
    "between centers, lying on its generator, or in a vee; with the heights that the usual "
    "mistakes would give.",
    request=SineTaperSettingRequest,
    result=SineTaperSettingResult,
    calculate=taper_setting,
    relations=(
        "tan α = taper / 2",
        "between centers θ = α; on its generator θ = 2α; in a vee θ = α + asin(sin α / sin(vee / "
        "2))",
        "height = center_distance × sin θ + offset",
    ),
    sources=(_GEOMETRY, SINE_RELATION),
    example={
        "units": "in",
        "center_distance": 5,
        "taper_per_foot": 3.5,
        "holding": "between centers",
    },
)
TAPER_ANGLE = Operation(
    topic="sine",
    verb="taper-angle",
    title="Taper of a sine setting",
    summary="The taper that a sine setting stands for, with what the indicator still read along "
    "its top generator.",
    request=SineTaperAngleRequest,
    result=SineTaperAngleResult,
    calculate=taper_angle,
    relations=(
        "lean = asin((height − offset) / center_distance) + atan(rise / travel)",
        "between centers α = lean; on its generator α = lean / 2; in a vee tan α = sin(lean) / "
        "(cos(lean) + 1 / sin(vee / 2))",
    ),
    sources=(_GEOMETRY, SINE_RELATION),
    example={
        "units": "in",
        "center_distance": 5,
        "height": 0.7219,
        "holding": "between centers",
    },
)
