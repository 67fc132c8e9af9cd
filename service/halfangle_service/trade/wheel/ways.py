"""Four ways to grind one cone: the budget of the included angle that each makes, in arc-seconds.

Every error is a limit (±), rectangular, and acts on the included angle by twice what it does to the
half angle; an error that was not stated is None, and is named in the budget. Derived here: a
setting by a sine base errs by the stack's tolerance over L cos θ, a scale by half of its
graduation, wear and breakdown by their depth over the slant. A diamond off the wheel's
axis, and a work axis off its height, act by their square and always the same way: they are
one-sided. Contributions have the names of the request's fields.
"""

import numpy as np

from halfangle_service.trade.angles import ARCSEC_PER_RADIAN
from halfangle_service.trade.sine.geometry import arcsec_per_height, turned_by_yaw
from halfangle_service.trade.uncertainty import Budget, Contribution
from halfangle_service.trade.wheel.dressing_errors import DressedCone, hyperbola
from halfangle_service.trade.wheel.setup_errors import Errors, Setup, ground_by_plunge

#: What turns the half angle turns the included angle by twice as much.
HALF_TO_INCLUDED = 2.0
#: Stations for the fit of a plunged surface.
_STATIONS = 21

#: A contribution, or the name of one that was not stated.
Stated = Contribution | str


def budget_of(*stated: Stated) -> Budget:
    """Budget of what was stated, with the names of what was not."""
    return Budget(
        tuple(entry for entry in stated if isinstance(entry, Contribution)),
        not_stated=tuple(entry for entry in stated if isinstance(entry, str)),
    )


def by_angle(name: str, half_angle_arcsec: float | None) -> Stated:
    """An error that turns the half angle one to one, in arc-seconds."""
    if half_angle_arcsec is None:
        return name
    return Contribution(name, half_angle_arcsec, sensitivity=HALF_TO_INCLUDED)


def by_sine_base(
    name: str, center_distance: float, angle_rad: float, height_error_limit: float | None
) -> Stated:
    """The stack under a sine base (or plate) at an angle."""
    if height_error_limit is None:
        return name
    per_height = HALF_TO_INCLUDED * arcsec_per_height(center_distance, angle_rad)
    return Contribution(name, height_error_limit, sensitivity=per_height, unit="length")


def by_scale(name: str, graduation_degrees: float) -> Stated:
    """A scale, set to half of its graduation."""
    per_degree = HALF_TO_INCLUDED * 3600.0
    return Contribution(name, graduation_degrees / 2.0, sensitivity=per_degree, unit="degree")


def by_wear(name: str, slant: float, wear: float | None) -> Stated:
    """Wear or breakdown of so much, square to the surface, at one end of it."""
    if wear is None:
        return name
    per_length = HALF_TO_INCLUDED * ARCSEC_PER_RADIAN / slant
    return Contribution(name, wear, sensitivity=per_length, unit="length")


def by_yaw(
    name: str, cone: DressedCone, yaw_arcsec: float | None, *, flank_rad: float | None = None
) -> Stated:
    """A work axis out of the plane of setting by so much, either way alike.

    Under a plane that the wheel sweeps, or its side; or plunged by a wheel whose generator makes
    `flank_rad` with its axis.
    """
    if yaw_arcsec is None:
        return name
    yaw = yaw_arcsec / ARCSEC_PER_RADIAN
    turned = turned_by_yaw(cone.angle_rad, yaw)
    if flank_rad is not None and yaw:
        turned = _plunged(cone, flank_rad, Errors(yaw_rad=yaw)) - cone.angle_rad
    return _one_sided(name, yaw_arcsec, turned, unit="arcsecond")


def by_diamond_height(name: str, cone: DressedCone, height: float | None) -> Stated:
    """A diamond off the wheel's axis by so much, above or below alike."""
    if height is None:
        return name
    return _one_sided(name, height, hyperbola(cone, height).angle_rad)


def by_axis_offset(name: str, cone: DressedCone, offset: float | None) -> Stated:
    """A swivelled work axis that is high or low by so much under a flat wheel, plunged.

    Raises Impossible where the axis misses the wheel.
    """
    if offset is None:
        return name
    half = _plunged(cone, 0.0, Errors(axis_offset=offset))
    return _one_sided(name, offset, half - cone.angle_rad)


def _plunged(cone: DressedCone, flank_rad: float, errors: Errors) -> float:
    """Half angle that a wheel grinds which stands still."""
    setup = Setup(cone.angle_rad, flank_rad, cone.small_radius, cone.length, cone.wheel_radius)
    setup.require_wheel(errors.axis_offset)
    return ground_by_plunge(setup, errors, np.linspace(0.0, cone.length, _STATIONS)).half_angle


def _one_sided(
    name: str, limit: float, half_angle_rad: float, unit: str = "length"
) -> Contribution:
    """An error that at its limit turns the half angle by so much, whichever its own sign."""
    included = HALF_TO_INCLUDED * half_angle_rad * ARCSEC_PER_RADIAN
    per_unit = included / limit if limit else 0.0
    return Contribution(name, limit, sensitivity=per_unit, one_sided=True, unit=unit)
