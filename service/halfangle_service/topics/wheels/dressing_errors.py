"""What errors of dressing do to the cone."""

from collections.abc import Iterator, Sequence
from typing import Annotated, Literal

import numpy as np
from pydantic import Field

from halfangle_service.cautions import DRESSED_ANGLE_UNPROVED, DRESSING_SAFETY
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    Arcsec,
    ArcsecOut,
    Length,
    LengthOut,
    NonNegativeLength,
    ResultModel,
    SignedArcsec,
    SignedLength,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.fields.choice import all_or_none, not_sent, sent_of
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.cone import WheelConeFields, cone_of
from halfangle_service.topics.wheels.inspection import WheelInspection, seen_by, usual_inspections
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade.decimals import tidy
from halfangle_service.trade.uncertainty import Forecast, budget_as_stated, forecast_of
from halfangle_service.trade.wheel.dressing_errors import (
    DressedCone,
    Effect,
    ErrorName,
    effects_of,
    hyperbola,
    hyperbolic_radii,
    local_half_angle,
    small_end_diameter_change,
)
from halfangle_service.trade.wording import arcsec, of_any_unit, plain

#: Stations listed along the cone.
STATIONS = 11

#: The request's fields that state an error; an error that was not stated is not known to be none.
_ERROR_FIELDS = (
    "diamond_height",
    "nose_radius",
    "dresser_angle_error_arcsec",
    "wheel_wear_small_end",
    "wheel_wear_large_end",
    "diamond_wear",
)


class DressingErrorsRequest(WheelConeFields):
    """A cone ground by a dressed flank, and what was out when it was dressed.

    An error that is absent is not stated; 0 states that there is none.
    """

    worn_diameter: Length | None = Field(
        None, description="Diameter that the wheel will wear to, in `units`."
    )
    diamond_height: SignedLength | None = Field(
        None,
        description="Distance of the diamond's path from the plane through the wheel's axis "
        "parallel to it (above or below the center), in `units`.",
        examples=[0.05],
    )
    nose_radius: NonNegativeLength | None = Field(
        None, description="Radius of the diamond's nose, in `units`; 0 for a sharp one."
    )
    dresser_angle_error_arcsec: SignedArcsec | None = Field(
        None,
        description="Error of the dressed angle from the wheel's axis, in arc-seconds: in the "
        "plane of that axis and the generator, so one to one on the half angle.",
    )
    wheel_wear_small_end: NonNegativeLength | None = Field(
        None,
        description="Wear of the flank, square to it, where it grinds the cone's small end, in "
        "`units`. Only together with `wheel_wear_large_end`: their difference turns the flank.",
    )
    wheel_wear_large_end: NonNegativeLength | None = Field(
        None, description="The same where it grinds the large end; 0 where it has not worn."
    )
    diamond_wear: NonNegativeLength | None = Field(
        None,
        description="Length that the diamond loses in the last traverse of the flank, square to "
        "it, in `units`.",
    )
    dressed_toward: Literal["small-end", "large-end"] = Field(
        "large-end",
        description="End of the cone toward whose part of the flank the last traverse ran: it is "
        "dressed less deep there by the diamond's wear.",
    )
    included_angle_tolerance_arcsec: Arcsec | None = Field(
        None, description="Tolerance ± on the included angle, in arc-seconds."
    )
    inspections: Annotated[list[WheelInspection], Field(min_length=1, max_length=12)] | None = (
        Field(
            None,
            description="Ways to inspect the cone. Absent: an optical projector that shows 60″ and "
            "0.01 mm, and an indicator run along the cone on a sine bar that shows 10″ and "
            "0.001 mm (common practice, no source).",
        )
    )


class DressingError(ResultModel):
    """What one error does to the cone; null, all of it, where the error was not stated."""

    name: ErrorName = Field(description="Which error.")
    half_angle_error_arcsec: ArcsecOut | None = Field(
        description="Mean half angle over the length, less the one wanted."
    )
    included_angle_error_arcsec: ArcsecOut | None = Field(description="Twice as much.")
    end_to_end: LengthOut | None = Field(
        description="What the angle error comes to over the slant, square to the surface."
    )
    straightness: LengthOut | None = Field(
        description="Departure of the surface from straight: the least distance of two parallel "
        "lines that hold it."
    )
    diameter_change: LengthOut | None = Field(
        description="Change of the diameter at the small end, with the wheel set by touching its "
        "periphery."
    )
    seen_by: list[str] = Field(description="Inspections of the cone that would show it.")
    seen_by_stack: bool = Field(
        description="True where checking the dresser's stack for a wrong block can show it."
    )


class DressedStation(ResultModel):
    """The cone at one station."""

    work_diameter: LengthOut = Field(description="Diameter of the cone.")
    wheel_radius: LengthOut = Field(description="Radius of the wheel that grinds it.")
    half_angle: Angle = Field(description="Half angle there, from the diamond's height alone.")
    half_angle_error_arcsec: ArcsecOut = Field(description="It, less the one wanted.")


class WornWheelErrors(ResultModel):
    """The diamond's height on the worn wheel."""

    worn_diameter: LengthOut = Field(description="Worn diameter.")
    half_angle_error_arcsec: ArcsecOut = Field(description="Mean half angle error.")
    straightness: LengthOut = Field(description="Departure from straight.")


class DressingErrorsResult(ResultModel):
    """What the errors of dressing do to the ground cone."""

    half_angle: Angle = Field(description="Half angle wanted.")
    slant_length: LengthOut = Field(description="Length of the surface along its slope.")
    errors: list[DressingError] = Field(
        description="One by one in a fixed order, and all that were stated together."
    )
    not_stated: list[str] = Field(
        description="Errors that were not stated: nothing is known of them, and nothing counted."
    )
    at_stations: list[DressedStation] | None = Field(
        description="Angle at each radius, from the small end to the large one; null where "
        "`diamond_height` was not stated."
    )
    worn: WornWheelErrors | None = Field(
        description="Null without `worn_diameter`, or where `diamond_height` was not stated."
    )
    forecast: Forecast = Field(
        description="Whether the included angle keeps its tolerance with all stated errors "
        "together; `not-stated` without a tolerance."
    )
    unseen: list[ErrorName] = Field(
        description="Errors present that no inspection named would show."
    )


@operation(
    "wheels.dressing-errors",
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
        "wheel_wear_large_end": 0,
    },
)
def dressing_errors(request: DressingErrorsRequest) -> Outcome[DressingErrorsResult]:
    """What errors of dressing do to the cone.

    Diamond above or below the wheel's axis (a hyperbolic flank), nose radius, dresser angle, wear
    of wheel and diamond: their effect on the cone's angle, form and size, and which inspection
    would show them.
    """
    cone = cone_of(request, request.wheel_diameter)
    cone.require_room(request.diamond_height or 0.0)
    all_or_none(
        request,
        "wheel_wear_small_end",
        "wheel_wear_large_end",
        why="Wear at one end alone does not say how far the flank turns; an end without is 0.",
    )
    not_stated = not_sent(request, *_ERROR_FIELDS)
    effects = _effects(request, cone)
    inspections = request.inspections or usual_inspections(request.units)
    errors = [_error(cone, name, effect, inspections) for name, effect in effects.items()]
    result = DressingErrorsResult(
        half_angle=angle_from_radians(cone.angle_rad),
        slant_length=cone.slant,
        errors=errors,
        not_stated=not_stated,
        at_stations=_stations(request, cone),
        worn=_worn(request),
        forecast=_forecast(request, errors[-1]),
        unseen=[
            row.name
            for row, effect in zip(errors[:-1], effects.values(), strict=False)
            if effect is not None and effect.present and not row.seen_by
        ],
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _effects(request: DressingErrorsRequest, cone: DressedCone) -> dict[ErrorName, Effect | None]:
    """The effect of each error, None where it was not stated, and of all together."""
    dresser = request.dresser_angle_error_arcsec
    return effects_of(
        cone,
        diamond_height=request.diamond_height,
        nose_radius=request.nose_radius,
        dresser_angle_rad=None if dresser is None else dresser / ARCSEC_PER_RADIAN,
        wear_small_end=request.wheel_wear_small_end,
        wear_large_end=request.wheel_wear_large_end,
        diamond_wear=request.diamond_wear,
        toward_small_end=request.dressed_toward == "small-end",
    )


def _error(
    cone: DressedCone,
    name: ErrorName,
    effect: Effect | None,
    inspections: Sequence[WheelInspection],
) -> DressingError:
    if effect is None:
        return DressingError(
            name=name,
            half_angle_error_arcsec=None,
            included_angle_error_arcsec=None,
            end_to_end=None,
            straightness=None,
            diameter_change=None,
            seen_by=[],
            seen_by_stack=False,
        )
    arcseconds = effect.angle_rad * ARCSEC_PER_RADIAN
    return DressingError(
        name=name,
        half_angle_error_arcsec=arcseconds,
        included_angle_error_arcsec=2.0 * arcseconds,
        end_to_end=effect.angle_rad * cone.slant,
        straightness=effect.straightness,
        diameter_change=small_end_diameter_change(cone.angle_rad, effect.outward),
        seen_by=seen_by(inspections, arcseconds, effect.straightness),
        seen_by_stack=name == "dresser-angle" and effect.angle_rad != 0.0,
    )


def _forecast(request: DressingErrorsRequest, total: DressingError) -> Forecast:
    """Whether the tolerance is kept; the errors are stated as they are, so with no spread."""
    tolerance, error = request.included_angle_tolerance_arcsec, total.included_angle_error_arcsec
    if tolerance is None or error is None:
        return "not-stated"
    budget = budget_as_stated(
        error, sent_of(request, *_ERROR_FIELDS), not_sent(request, *_ERROR_FIELDS)
    )
    return forecast_of(budget, -tolerance, tolerance)


def _stations(request: DressingErrorsRequest, cone: DressedCone) -> list[DressedStation] | None:
    height = request.diamond_height
    if height is None:
        return None
    along = np.linspace(0.0, cone.length, STATIONS)
    found = []
    for radius in hyperbolic_radii(cone, height, along).tolist():
        half = local_half_angle(cone.angle_rad, height, radius)
        found.append(
            DressedStation(
                work_diameter=tidy(
                    2.0 * (cone.small_radius + cone.wheel_radius - radius), cone.wheel_radius
                ),
                wheel_radius=radius,
                half_angle=angle_from_radians(half),
                half_angle_error_arcsec=(half - cone.angle_rad) * ARCSEC_PER_RADIAN,
            )
        )
    return found


def _worn(request: DressingErrorsRequest) -> WornWheelErrors | None:
    if request.worn_diameter is None:
        return None
    if request.worn_diameter > request.wheel_diameter:
        raise Impossible(
            f"A wheel of {of_any_unit(request.wheel_diameter)} does not wear to "
            f"{of_any_unit(request.worn_diameter)}.",
            fields={"worn_diameter": "should be no more than wheel_diameter"},
        )
    cone = cone_of(request, request.worn_diameter)
    cone.require_room(request.diamond_height or 0.0)
    if request.diamond_height is None:
        return None
    curve = hyperbola(cone, request.diamond_height)
    return WornWheelErrors(
        worn_diameter=request.worn_diameter,
        half_angle_error_arcsec=curve.angle_rad * ARCSEC_PER_RADIAN,
        straightness=curve.straightness,
    )


def _advisories(request: DressingErrorsRequest, result: DressingErrorsResult) -> Iterator[Advisory]:
    total = result.errors[-1].included_angle_error_arcsec
    if result.forecast == "does-not-hold" and total is not None:
        yield stop(
            "beyond-tolerance",
            f"Together these errors turn the included angle by {arcsec(total)}; the tolerance is "
            f"±{plain(request.included_angle_tolerance_arcsec or 0.0)}″. Do not grind to size with "
            "this flank.",
        )
    if result.unseen:
        yield caution(
            "unseen-errors",
            f"No inspection named would show: {', '.join(result.unseen)}.",
        )
    if request.diamond_height:
        yield note(
            "diamond-height-is-a-form-error",
            "A diamond off the wheel's axis dresses a hyperbola, which grinds a crowned cone: set "
            "the diamond to the axis height. It grows as the wheel wears.",
        )
    yield from unusual_sizes(request, request.units)
    yield DRESSED_ANGLE_UNPROVED
    yield DRESSING_SAFETY
