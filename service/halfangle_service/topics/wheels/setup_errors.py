"""What errors of the set-up do to the cone."""

import math
from collections.abc import Iterator
from typing import Literal, get_args

import numpy as np
from pydantic import Field

from halfangle_service.cautions import MAGNETIC_HOLDING, WHEEL_SAFETY, side_not_rated
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    ARCSEC_PER_RADIAN,
    Angle,
    ArcsecOut,
    Length,
    LengthOut,
    ResultModel,
    SignedArcsec,
    SignedLength,
    angle_from_radians,
    from_mm,
    to_mm,
)
from halfangle_service.fields.advisories import Advisory, caution, note
from halfangle_service.fields.wheel.grinder import (
    Grinder,
    WayName,
    error_on_the_grinder,
    require_cone,
    require_feed,
)
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.cone import WheelConeFields, cone_of
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade import elementary
from halfangle_service.trade.wheel.setup_errors import (
    Errors,
    Ground,
    Setup,
    ground_by_plunge,
    ground_by_traverse,
)
from halfangle_service.trade.wording import degrees, of_any_unit, plain

#: Stations computed for the fit, and the ones of them that are listed.
STATIONS, LISTED = 101, 10
#: Below this a surface is a true cone: the smallest length that this service speaks of.
TRUE_CONE_MM = 1e-7
#: A surface bent by less than this is straight for any inspection of the shop.
BENT_UM = 0.1
#: Between these lies the half angle of a cone.
ENDS_RAD = (0.0, math.pi / 2.0)
#: A yaw past this is another set-up, not an error of one.
MOST_YAW_RAD = elementary.radians(10.0)

SetupErrorName = Literal["axis-offset", "axis-pitch", "axis-yaw", "all-together"]
#: The request's fields that state an error; an error that was not stated is not known to be none.
_ERROR_FIELDS = ("axis_offset", "axis_pitch_arcsec", "axis_yaw_arcsec")


class SetupErrorsRequest(WheelConeFields):
    """A cone, the way it is ground, and what was out in the set-up.

    In a perfect set-up one plane holds the wheel's axis, the work's axis and the generator that is
    ground: vertical where the wheel stands above the work, horizontal where it stands beside it or
    grinds with its side. Pitch turns the work's axis in that plane, yaw out of it: a workhead
    swivelled wrong about the vertical is pitch beside the wheel or under its side, and yaw under a
    dressed wheel above it. An error that is absent is not stated; 0 states that there is none.
    """

    grinder: Grinder = Field(examples=["surface"])
    way: WayName = Field(
        description="`sine-plate`: the periphery of a flat wheel, work tilted by a plate or a head "
        "until its generator is level (surface grinder). `swivelled-workhead`: the same, swivelled "
        "about the vertical to a wheel beside it (cylindrical). `dressed-wheel`: a flank of the "
        "half angle, axes parallel. `wheel-side`: the wheel's side, work swivelled about the "
        "vertical.",
        examples=["sine-plate"],
    )
    feed: Literal["traversed", "plunge"] = Field(
        description="`traversed`: the table carries the work past the wheel, so that the wheel "
        "sweeps a plane. `plunge`: it stands still, or moves along the wheel's axis.",
        examples=["plunge"],
    )
    contact_radius: Length | None = Field(
        None,
        description="Wheel side only: radius of the wheel at which the small end is ground, in "
        "`units`. Absent: the wheel's own radius.",
    )
    rated_for_side: bool | None = Field(
        None,
        strict=True,
        description="Wheel side only: whether the wheel is stated to be rated for grinding with "
        "its side. Absent where it is not known, which is not a permission.",
    )
    axis_offset: SignedLength | None = Field(
        None,
        description="Distance of the work's axis, at the small end, from the plane through the "
        "wheel's axis in which the angle is set, in `units`: to one side under a wheel above it, "
        "high or low beside a wheel or its side.",
        examples=[0.1],
    )
    axis_pitch_arcsec: SignedArcsec | None = Field(
        None,
        description="Turn of the work's axis in the plane that holds it and the wanted generator, "
        "in arc-seconds; one to one on the half angle. With a wheel above: one end of the axis "
        "high, the plate's error included. Beside a wheel or its side: the swivel's error.",
    )
    axis_yaw_arcsec: SignedArcsec | None = Field(
        None,
        description="Turn of the work's axis out of that plane, in arc-seconds; by its square on "
        "the half angle. With a wheel above: the fixture turned on the plate, or a head swivelled "
        "about the vertical. Beside a wheel or its side: one end of the axis high.",
    )


class SetupError(ResultModel):
    """What one set-up error does to the cone; null, all of it, where it was not stated."""

    name: SetupErrorName = Field(description="Which error.")
    on_the_grinder: str | None = Field(
        description="What this error is on this grinder, as it can be indicated there; null for "
        "all together."
    )
    half_angle_error_arcsec: ArcsecOut | None = Field(
        description="Half angle of the straight line fitted to the surface (least squares), less "
        "the one wanted."
    )
    included_angle_error_arcsec: ArcsecOut | None = Field(description="Twice as much.")
    straightness: LengthOut | None = Field(
        description="Departure of the surface from straight: peak to valley about that line, "
        "square to it."
    )
    diameter_change: LengthOut | None = Field(
        description="Change of the diameter at the small end for the same infeed."
    )


class SetupStation(ResultModel):
    """The cone as ground at one station, all errors together."""

    station_from_small_end: LengthOut = Field(
        description="Distance from the small end along the work's axis."
    )
    diameter: LengthOut = Field(description="Diameter ground.")
    wanted_diameter: LengthOut = Field(description="Diameter of the wanted cone.")


class SetupErrorsResult(ResultModel):
    """What the errors of the set-up do to the ground cone."""

    half_angle: Angle = Field(description="Half angle wanted.")
    as_ground: Angle | None = Field(
        description="Half angle ground, all stated errors together; null where none was stated."
    )
    errors: list[SetupError] = Field(
        description="One by one in a fixed order, and all that were stated together."
    )
    not_stated: list[str] = Field(
        description="Errors that were not stated: nothing is known of them, and nothing counted."
    )
    at_stations: list[SetupStation] | None = Field(
        description="The surface, small end to large end; null where no error was stated."
    )
    shape: Literal["cone", "hyperboloid"] | None = Field(
        description="What the surface is: a true cone, or bent by more than 0.1 nm; null where no "
        "error was stated."
    )


@operation(
    "wheels.setup-errors",
    relations=(
        "traversed: sin α′ = sin(α + pitch) cos(yaw), a true cone whatever the offset",
        "swivelled about the vertical under the periphery above: α = 0 at every swivel",
        "plunge: radius at a station = least distance of the wheel's points there from the axis",
        "plunge with a flat wheel, nearly: Δα = −½ sin α cos α (offset / (r + R cos α))²",
        "plunge with parallel axes: r = √(C² + offset²) − wheel radius, angle unchanged",
    ),
    sources=(
        Source(
            citation="Derived here: envelope of the wheel about the work's axis; checked by "
            "rotating the wheel's surface point by point.",
            standing="derived",
        ),
    ),
    example={
        "units": "in",
        "included_angle": 60,
        "large_diameter": 0.75,
        "small_diameter": 0.5,
        "wheel_diameter": 12,
        "grinder": "surface",
        "way": "sine-plate",
        "feed": "plunge",
        "axis_offset": 0.1,
        "axis_pitch_arcsec": 5,
        "axis_yaw_arcsec": 600,
    },
    largest_request="101 stations of the surface",
    heavy=True,
)
def setup_errors(request: SetupErrorsRequest) -> Outcome[SetupErrorsResult]:
    """What errors of the set-up do to the cone.

    Work axis off the wheel's plane, its pitch and its yaw, for a flat wheel with the work on a sine
    plate or a workhead, a dressed wheel or the wheel's side, traversed or plunged: the cone's
    angle, form and size.
    """
    require_cone(request.grinder, request.way)
    require_feed(request.grinder, request.way, request.feed)
    setup = _setup(request)
    grounds = {
        name: None if errors is None else _ground(request, setup, errors)
        for name, errors in _errors(request, setup).items()
    }
    whole = grounds["all-together"]
    result = SetupErrorsResult(
        half_angle=angle_from_radians(setup.half_angle),
        as_ground=None if whole is None else angle_from_radians(whole.half_angle),
        errors=[_error(request, setup, name, ground) for name, ground in grounds.items()],
        not_stated=[name for name in _ERROR_FIELDS if getattr(request, name) is None],
        at_stations=None if whole is None else _stations(setup, whole),
        shape=None if whole is None else _shape(request, whole),
    )
    return Outcome(result, tuple(_advisories(request, whole)))


def _setup(request: SetupErrorsRequest) -> Setup:
    cone = cone_of(request, request.wheel_diameter)
    wheel_angle = {
        "sine-plate": 0.0,
        "swivelled-workhead": 0.0,
        "dressed-wheel": cone.angle_rad,
        "wheel-side": math.pi / 2.0,
    }[request.way]
    radius = cone.wheel_radius
    if request.contact_radius is not None:
        if request.way != "wheel-side" or request.contact_radius > radius:
            raise Impossible(
                "contact_radius is a place on the wheel's side, within its radius.",
                fields={"contact_radius": f"should be absent, or at most {of_any_unit(radius)}"},
            )
        radius = request.contact_radius
    setup = Setup(cone.angle_rad, wheel_angle, cone.small_radius, cone.length, radius)
    setup.require_wheel(request.axis_offset or 0.0)
    return setup


def _errors(request: SetupErrorsRequest, setup: Setup) -> dict[SetupErrorName, Errors | None]:
    """The errors in radians one by one, None where not stated, and all that were together.

    Refuses those that turn the axis out of any sensible set-up.
    """
    offset = request.axis_offset or 0.0
    pitch = (request.axis_pitch_arcsec or 0.0) / ARCSEC_PER_RADIAN
    yaw = (request.axis_yaw_arcsec or 0.0) / ARCSEC_PER_RADIAN
    if not ENDS_RAD[0] < setup.half_angle + pitch < ENDS_RAD[1]:
        least, most = (plain((limit - setup.half_angle) * ARCSEC_PER_RADIAN) for limit in ENDS_RAD)
        raise Impossible(
            "With this pitch the axis would stand at no angle, or upright, to the surface.",
            fields={"axis_pitch_arcsec": f"should be between {least} and {most}"},
        )
    if abs(yaw) > MOST_YAW_RAD:
        most = plain(MOST_YAW_RAD * ARCSEC_PER_RADIAN)
        raise Impossible(
            f"A yaw of {degrees(elementary.degrees(yaw))} is no set-up error.",
            fields={"axis_yaw_arcsec": f"should be between ±{most}"},
        )
    every = Errors(offset, pitch, yaw)
    singles = (Errors(axis_offset=offset), Errors(pitch_rad=pitch), Errors(yaw_rad=yaw))
    stated = [getattr(request, name) is not None for name in _ERROR_FIELDS]
    rows = zip((*singles, every), (*stated, any(stated)), strict=True)
    found = [errors if is_stated else None for errors, is_stated in rows]
    return dict(zip(get_args(SetupErrorName), found, strict=True))


def _ground(request: SetupErrorsRequest, setup: Setup, errors: Errors) -> Ground:
    stations = np.linspace(0.0, setup.length, STATIONS)
    if request.feed == "traversed":
        return ground_by_traverse(setup, errors, stations)
    return ground_by_plunge(setup, errors, stations)


def _error(
    request: SetupErrorsRequest, setup: Setup, name: SetupErrorName, ground: Ground | None
) -> SetupError:
    what = None
    if name != "all-together":
        what = error_on_the_grinder(request.grinder, request.way, name)
    if ground is None:
        return SetupError(
            name=name,
            on_the_grinder=what,
            half_angle_error_arcsec=None,
            included_angle_error_arcsec=None,
            straightness=None,
            diameter_change=None,
        )
    arcseconds = (ground.half_angle - setup.half_angle) * ARCSEC_PER_RADIAN
    return SetupError(
        name=name,
        on_the_grinder=what,
        half_angle_error_arcsec=arcseconds,
        included_angle_error_arcsec=2.0 * arcseconds,
        straightness=ground.straightness,
        diameter_change=2.0 * (ground.small_radius - setup.small_radius),
    )


def _shape(request: SetupErrorsRequest, ground: Ground) -> Literal["cone", "hyperboloid"]:
    limit = from_mm(TRUE_CONE_MM, request.units)
    return "cone" if ground.straightness <= limit else "hyperboloid"


def _stations(setup: Setup, ground: Ground) -> list[SetupStation]:
    wanted = setup.small_radius + ground.stations * elementary.tan(setup.half_angle)
    rows = zip(ground.stations.tolist(), ground.radii.tolist(), wanted.tolist(), strict=True)
    return [
        SetupStation(station_from_small_end=z, diameter=2.0 * r, wanted_diameter=2.0 * w)
        for index, (z, r, w) in enumerate(rows)
        if index % LISTED == 0
    ]


def _advisories(request: SetupErrorsRequest, whole: Ground | None) -> Iterator[Advisory]:
    if request.way == "wheel-side" and not request.rated_for_side:
        yield side_not_rated(request.rated_for_side)
    if request.feed == "traversed" and request.axis_offset:
        yield note(
            "offset-harmless-when-traversed",
            "A traversed wheel sweeps a plane: the offset matters only if the stroke ends before "
            "the line of contact is passed. Let it run past on both sides.",
        )
    bent = 0.0 if whole is None else 1000.0 * to_mm(whole.straightness, request.units)
    if bent > BENT_UM:
        yield caution(
            "surface-not-straight",
            f"The surface comes out bent by {plain(bent, 3)} µm. An angle measured between two "
            "stations does not show it; an indicator along the surface does.",
        )
    yield from unusual_sizes(request, request.units)
    if request.grinder == "surface":
        yield MAGNETIC_HOLDING
    yield WHEEL_SAFETY
