"""A taper on a sine plate: the setting that levels its top generator, and the taper of a setting.

The same relations hold for a bar laid over the taper.
"""

import math
from collections.abc import Iterator

from pydantic import Field

from halfangle_service.cautions import STEEP_DEGREES, steep_angle, unusual_stack
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    ResultModel,
    SignedLength,
    VeeAngle,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.base import Group
from halfangle_service.fields.choice import needs
from halfangle_service.fields.plates import (
    ArcsecPerStep,
    PlateFields,
    ReachField,
    arcsec_per_step,
    offset_of,
    plate_setting,
)
from halfangle_service.fields.slopes import SlopeFields, SlopeForms, slope_forms, slope_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.sine.sources import SINE_RELATION
from halfangle_service.trade import elementary
from halfangle_service.trade.sine.geometry import (
    angle_for_height,
    beyond_reach,
    height_for_angle,
    require_reach,
)
from halfangle_service.trade.sine.taper_holding import (
    Holding,
    half_angle_from_plate,
    half_angle_sensitivity,
    plate_angle,
    usual_mistakes,
)
from halfangle_service.trade.wording import figure, plain

#: A mistake that sets the plate less than this off cannot be told from the right setting.
TELLING_ARCSEC = 0.5

_GEOMETRY = Source(
    citation="Derived here: two planes of a vee touch a cone where their normals make 90° less the "
    "half angle with its axis; a flat is a vee opened to 180°. Checked against rotated cones.",
    standing="derived",
)
_LYING: dict[Holding, str] = {
    "between-centers": "Lay the taper's axis parallel to the plate's top",
    "on-its-generator": "Lay the taper on its generator on the plate's top",
    "in-a-vee": "Lay the taper in the vee along the plate",
}


class HeldFields(PlateFields):
    """A sine bar or plate, and how a taper is held on it."""

    group = Group("How the taper is held")

    holding: Holding = Field(
        description="How the taper is held. `between-centers`: its axis parallel to the plate's "
        "top, also a bar laid over a taper whose axis is level; `on-its-generator`: lying on the "
        "plate's flat top, also a bar laid over a taper that lies on the surface plate; "
        "`in-a-vee`: lying in a vee along the plate."
    )
    vee_angle: VeeAngle = Field(
        90.0, description="Included angle of the vee, in degrees; counts for `in-a-vee` only."
    )


class SineTaperSettingRequest(HeldFields, SlopeFields):
    """A taper, and how it is held on a sine plate."""

    largest_angle: ReachField = None


class SineTaperMistake(ResultModel):
    """A usual mistake, and what it would do."""

    mistake: str = Field(description="What is mistaken for what.")
    height: LengthOut = Field(description="Height that the mistake would set.")
    plate_angle: Angle = Field(description="Plate's angle at that height.")
    plate_angle_error_arcsec: ArcsecOut = Field(
        description="That angle less the right one, in arc-seconds."
    )


class SineTaperSettingResult(ResultModel):
    """The setting that brings the taper's top generator parallel to the surface plate."""

    plate_angle: Angle = Field(description="Angle to set on the plate.")
    height: LengthOut = Field(description="Difference of the stacks, high less low.")
    height_to_set: LengthOut = Field(description="The same, rounded to 0.0001 in or 0.001 mm.")
    deviation_arcsec: ArcsecOut = Field(
        description="Plate's angle at `height_to_set` less the right one."
    )
    half_angle: Angle = Field(description="The cone's half angle.")
    included_angle: Angle = Field(description="The cone's included angle.")
    axis_tilt: Angle = Field(description="Lean of the cone's axis to the plate's top.")
    arcsec_per_step: ArcsecPerStep
    included_angle_arcsec_per_step: ArcsecOut = Field(
        description="Change of the included angle that one bench step of height stands for."
    )
    action: str = Field(description="Which way round, in plain words.")
    usual_mistakes: list[SineTaperMistake] = Field(
        description="Heights that the usual mistakes give: none of them should be on the bench."
    )


class SineTaperAngleRequest(HeldFields):
    """The stack at which a taper's top generator is parallel, or nearly so."""

    height: Length = Field(
        description="Height of the stack under the high roll over that under the low roll.",
        examples=[0.7219],
    )
    indicator_rise: SignedLength = Field(
        0.0,
        description="Rise of the top generator along `indicator_travel`, in `units`: positive "
        "where it rises toward the low roll, so that the taper is larger than the plate's setting.",
    )
    indicator_travel: Length | None = Field(
        None, description="Travel of the indicator along the top generator, in `units`."
    )


class SineTaperAngleResult(SlopeForms):
    """The taper that a setting stands for."""

    plate_angle: Angle = Field(description="Angle of the plate as set.")
    generator_lean: Angle = Field(
        description="Lean of the top generator to the plate's top: the plate's angle, and what the "
        "indicator read."
    )
    half_angle: Angle = Field(description="The cone's half angle.")
    included_angle_arcsec_per_step: ArcsecOut = Field(
        description="Change of the included angle for one bench step of height."
    )


@operation(
    "sine.taper-setting",
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
        "holding": "between-centers",
    },
    columns=True,
)
def taper_setting(request: SineTaperSettingRequest) -> Outcome[SineTaperSettingResult]:
    """Sine setting for a taper.

    The setting that brings a taper's top generator parallel to the surface plate: held between
    centers, lying on its generator, or in a vee; with the heights that the usual mistakes would
    give.
    """
    half = slope_of(request).half_angle_rad
    vee = elementary.radians(request.vee_angle) / 2.0
    angle_rad = plate_angle(half, request.holding, vee)
    _require_reach(request, elementary.degrees(angle_rad), elementary.degrees(half))
    made = plate_setting(request, angle_rad, field="holding")
    per_step = arcsec_per_step(request.center_distance, angle_rad, request.units)
    slope = half_angle_sensitivity(angle_rad, request.holding, vee)
    result = SineTaperSettingResult(
        plate_angle=angle_from_radians(angle_rad),
        height=made.height,
        height_to_set=made.height_to_set,
        deviation_arcsec=made.deviation_arcsec,
        half_angle=angle_from_radians(half),
        included_angle=angle_from_radians(2.0 * half),
        axis_tilt=angle_from_radians(angle_rad - half),
        arcsec_per_step=per_step,
        included_angle_arcsec_per_step=2.0 * per_step * slope,
        action=_action(request, made.height),
        usual_mistakes=list(_mistakes(request, half, angle_rad)),
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _require_reach(
    request: SineTaperSettingRequest, plate_degrees: float, half_degrees: float
) -> None:
    """Refuse an angle past the plate's reach; between centers the half angle alone is asked."""
    largest = request.largest_angle
    if request.holding == "between-centers" or beyond_reach(half_degrees, largest):
        require_reach(plate_degrees, largest, "holding")
    require_reach(
        plate_degrees,
        largest,
        "holding",
        instead=f"Held between centers the same cone asks for {plain(half_degrees)}°.",
        more={
            "holding": "between-centers",
            "plate_angle": Angle.of(half_degrees).model_dump(warnings=False),
        },
    )


def _action(request: SineTaperSettingRequest, height: float) -> str:
    return (
        f"{_LYING[request.holding]}, its small end toward the high roll, and put "
        f"{figure(height, request.units)} under the high roll over the low roll's stack: the "
        "top generator then lies parallel to the surface plate."
    )


def _mistakes(
    request: SineTaperSettingRequest, half: float, right: float
) -> Iterator[SineTaperMistake]:
    """The usual mistakes that would give another setting than the right one."""
    for mistake, wrong in usual_mistakes(half, request.holding).items():
        off_arcsec = (wrong - right) * ARCSEC_PER_RADIAN
        if abs(off_arcsec) > TELLING_ARCSEC:
            yield SineTaperMistake(
                mistake=mistake,
                height=height_for_angle(request.center_distance, wrong, offset_of(request)),
                plate_angle=angle_from_radians(wrong),
                plate_angle_error_arcsec=off_arcsec,
            )


def _advisories(
    request: SineTaperSettingRequest, result: SineTaperSettingResult
) -> Iterator[Advisory]:
    yield from steep_angle(result.plate_angle.degrees, result.arcsec_per_step, STEEP_DEGREES)
    yield from unusual_stack(
        result.height, request.center_distance, request.units, result.height_to_set
    )
    if request.holding == "in-a-vee":
        yield caution(
            "vee-along-the-plate",
            "The vee must lie along the plate and its own angle counts: 1° of vee angle matters "
            "most for blunt cones. Prove the vee with a known plug.",
        )


@operation(
    "sine.taper-angle",
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
        "holding": "between-centers",
    },
    columns=True,
)
def taper_angle(request: SineTaperAngleRequest) -> Outcome[SineTaperAngleResult]:
    """Taper of a sine setting.

    The taper that a sine setting stands for, with what the indicator still read along its top
    generator.
    """
    vee = elementary.radians(request.vee_angle) / 2.0
    plate = angle_for_height(request.center_distance, request.height, offset_of(request))
    lean = plate + _residual_lean(request)
    if not 0.0 < lean < math.pi / 2:
        raise Impossible(
            f"The top generator would lean {plain(elementary.degrees(lean))}° to the plate's top; "
            "a taper held so leans by more than 0° and less than 90°.",
            fields={"height": "should stand for a lean between 0° and 90°"},
        )
    half = half_angle_from_plate(lean, request.holding, vee)
    slope = half_angle_sensitivity(lean, request.holding, vee)
    per_step = arcsec_per_step(request.center_distance, plate, request.units)
    result = SineTaperAngleResult(
        plate_angle=angle_from_radians(plate),
        generator_lean=angle_from_radians(lean),
        half_angle=angle_from_radians(half),
        included_angle_arcsec_per_step=2.0 * slope * per_step,
        **slope_forms(half),
    )
    return Outcome(result, tuple(steep_angle(elementary.degrees(plate), per_step, STEEP_DEGREES)))


def _residual_lean(request: SineTaperAngleRequest) -> float:
    """Lean in radians that the indicator read: its rise over its travel along the surface plate."""
    if request.indicator_travel is not None:
        return elementary.atan(request.indicator_rise / request.indicator_travel)
    if request.indicator_rise:
        why = "A rise without its travel has no angle."
        needs(request, "indicator_rise", "indicator_travel", why=why)
    return 0.0
