"""Errors of the set-up: models to maths and back."""

import math
from collections.abc import Iterator

import numpy as np

from halfangle_service.cautions import DEFERENCE, MAGNETIC_HOLDING
from halfangle_service.errors import Impossible
from halfangle_service.fields import ARCSEC_PER_RADIAN, angle_from_radians, from_mm, to_mm
from halfangle_service.fields.advisories import Advisory, caution, note, stop
from halfangle_service.operation import Operation, Outcome, Source
from halfangle_service.topics.wheels.models_errors import (
    SetupError,
    SetupErrorsRequest,
    SetupErrorsResult,
    SetupStation,
)
from halfangle_service.topics.wheels.operations_errors import cone_of
from halfangle_service.trade.wheel.setup_errors import (
    Errors,
    Ground,
    Setup,
    ground_by_plunge,
    ground_by_traverse,
)
from halfangle_service.trade.wording import plain

#: Stations computed for the fit, and the ones of them that are listed.
STATIONS, LISTED = 101, 10
#: Below this a surface is a true cone: the smallest length that this service speaks of.
TRUE_CONE_MM = 1e-7


def setup_errors(request: SetupErrorsRequest) -> Outcome[SetupErrorsResult]:
    """What set-up errors do to the ground cone."""
    setup = _setup(request)
    every = _errors(request, setup)
    singles = {
        "axis offset": Errors(axis_offset=every.axis_offset),
        "tilt": Errors(tilt_rad=every.tilt_rad),
        "yaw": Errors(yaw_rad=every.yaw_rad),
        "all together": every,
    }
    ground = {name: _ground(request, setup, errors) for name, errors in singles.items()}
    whole = ground["all together"]
    result = SetupErrorsResult(
        half_angle=angle_from_radians(setup.half_angle),
        as_ground=angle_from_radians(whole.half_angle),
        errors=[_error(request, setup, name, surface) for name, surface in ground.items()],
        stations=_stations(setup, whole),
        shape="cone" if whole.form_error <= from_mm(TRUE_CONE_MM, request.units) else "hyperboloid",
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _setup(request: SetupErrorsRequest) -> Setup:
    cone = cone_of(request, request.wheel_diameter)
    wheel_angle = {
        "flat wheel on a sine plate": 0.0,
        "dressed wheel": cone.angle_rad,
        "wheel side": math.pi / 2.0,
    }[request.way]
    radius = cone.wheel_radius
    if request.contact_radius is not None:
        if request.way != "wheel side" or request.contact_radius > radius:
            raise Impossible(
                "contact_radius is a place on the wheel's side, within its radius.",
                fields={"contact_radius": f"should be absent, or at most {plain(radius)}"},
            )
        radius = request.contact_radius
    setup = Setup(cone.angle_rad, wheel_angle, cone.small_radius, cone.length, radius)
    setup.require_wheel(request.axis_offset)
    return setup


def _errors(request: SetupErrorsRequest, setup: Setup) -> Errors:
    """The errors in radians; refuses those that turn the axis out of any sensible set-up."""
    tilt = request.tilt_error_arcsec / ARCSEC_PER_RADIAN
    yaw = request.yaw_arcsec / ARCSEC_PER_RADIAN
    if not 0.0 < setup.half_angle + tilt < math.pi / 2.0:
        raise Impossible(
            "With this tilt error the axis would stand at no angle, or upright, to the surface.",
            fields={"tilt_error_arcsec": "should leave the half angle between 0° and 90°"},
        )
    if abs(yaw) > MOST_YAW_RAD:
        raise Impossible(
            f"A yaw of {plain(math.degrees(yaw))}° is no set-up error.",
            fields={"yaw_arcsec": f"should be between ±{MOST_YAW_RAD * ARCSEC_PER_RADIAN:.0f}"},
        )
    return Errors(request.axis_offset, tilt, yaw)


#: A surface bent by less than this is straight for any inspection of the shop.
BENT_UM = 0.1
#: A yaw past this is another set-up, not an error of one.
MOST_YAW_RAD = math.radians(10.0)


def _ground(request: SetupErrorsRequest, setup: Setup, errors: Errors) -> Ground:
    stations = np.linspace(0.0, setup.length, STATIONS)
    if request.feed == "traversed":
        return ground_by_traverse(setup, errors, stations)
    return ground_by_plunge(setup, errors, stations)


def _error(request: SetupErrorsRequest, setup: Setup, name: str, ground: Ground) -> SetupError:
    arcsec = (ground.half_angle - setup.half_angle) * ARCSEC_PER_RADIAN
    return SetupError(
        name=name,
        half_angle_error_arcsec=arcsec,
        included_angle_error_arcsec=2.0 * arcsec,
        included_angle_error_arcmin=arcsec / 30.0,
        form_error=ground.form_error,
        form_error_um=1000.0 * to_mm(ground.form_error, request.units),
        diameter_change=2.0 * (ground.small_radius - setup.small_radius),
    )


def _stations(setup: Setup, ground: Ground) -> list[SetupStation]:
    wanted = setup.small_radius + ground.stations * math.tan(setup.half_angle)
    rows = zip(ground.stations.tolist(), ground.radii.tolist(), wanted.tolist(), strict=True)
    return [
        SetupStation(along_axis=z, diameter=2.0 * r, wanted_diameter=2.0 * w)
        for index, (z, r, w) in enumerate(rows)
        if index % LISTED == 0
    ]


def _advisories(request: SetupErrorsRequest, result: SetupErrorsResult) -> Iterator[Advisory]:
    if request.way == "wheel side" and not request.rated_for_side:
        what = "not known" if request.rated_for_side is None else "stated not"
        yield stop(
            "side-not-rated",
            f"This wheel is {what} to be rated for grinding with its side; only a wheel stated to "
            "be is used so.",
        )
    if request.feed == "traversed" and request.axis_offset != 0.0:
        yield note(
            "offset-harmless-when-traversed",
            "A traversed wheel sweeps a plane: the offset matters only if the stroke ends before "
            "the line of contact is passed. Let it run past on both sides.",
        )
    form = result.errors[-1].form_error_um
    if form > BENT_UM:
        yield caution(
            "surface-not-straight",
            f"The surface comes out bent by {plain(form, 3)} µm. An angle measured between two "
            "stations does not show it; an indicator along the surface does.",
        )
    if request.way != "wheel side":
        yield MAGNETIC_HOLDING
    yield caution(
        "wheel-safety",
        f"Guard closed, speed at or below the wheel's mark, eye protection on. {DEFERENCE}",
    )


OPERATION = Operation(
    topic="wheels",
    verb="setup-errors",
    title="What errors of the set-up do to the cone",
    summary="Work axis off the wheel's plane, tilt and yaw, for a flat wheel on a sine plate, a "
    "dressed wheel or the wheel's side, traversed or plunged: the cone's angle, form and size.",
    request=SetupErrorsRequest,
    result=SetupErrorsResult,
    calculate=setup_errors,
    relations=(
        "traversed: sin α′ = sin(α + tilt) cos(yaw), a true cone whatever the offset",
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
        "way": "flat wheel on a sine plate",
        "feed": "plunge",
        "axis_offset": 0.1,
        "tilt_error_arcsec": 5,
        "yaw_arcsec": 600,
    },
    largest_request="101 stations of the surface",
    heavy=True,
)
