"""The error of the included angle to expect from a set-up, in arc-seconds."""

import math
from dataclasses import dataclass

from halfangle_service.trade.sine.cone_errors import (
    included_arcsec_from_yaw,
    included_arcsec_per_center_distance,
    included_arcsec_per_height,
)
from halfangle_service.trade.uncertainty.budget import Budget, Contribution

#: The half angle's error counts twice on the included angle.
HALF_TO_INCLUDED = 2.0

#: Names of the contributions as the plan shows them, by field of the request.
NAMES = {
    "center_distance_tolerance": "center distance of the plate",
    "axis_pitch_arcsec": "pitch of the fixture's axis",
    "axis_yaw_arcsec": "yaw of the fixture's axis",
    "wheel_face_arcsec": "breakdown of the wheel's face",
}
STACK = "gauge blocks, by their grade"


@dataclass(frozen=True, slots=True)
class SetupErrors:
    """Errors of the set-up, each ± its value; None where it was not stated.

    `center_distance_tolerance` in the unit of the center distance, the angles as named.
    """

    center_distance_tolerance: float | None
    axis_pitch_arcsec: float | None
    axis_yaw_rad: float | None
    wheel_face_arcsec: float | None


def included_angle_budget(
    plate_angle_rad: float,
    center_distance: float,
    block_tolerances: tuple[float, ...],
    errors: SetupErrors,
) -> Budget:
    """Give the budget of the included angle in arc-seconds.

    `block_tolerances` are the limit deviations of the blocks, in the unit of `center_distance`;
    each block errs independently of the others.
    """
    per_height = included_arcsec_per_height(center_distance, plate_angle_rad)
    contributions = [
        Contribution(STACK, tolerance, "rectangular", per_height) for tolerance in block_tolerances
    ]
    stated = (
        (
            "center_distance_tolerance",
            errors.center_distance_tolerance,
            included_arcsec_per_center_distance(center_distance, plate_angle_rad),
        ),
        ("axis_pitch_arcsec", errors.axis_pitch_arcsec, HALF_TO_INCLUDED),
        ("wheel_face_arcsec", errors.wheel_face_arcsec, HALF_TO_INCLUDED),
    )
    for field, value, sensitivity in stated:
        if value is not None:
            contributions.append(Contribution(NAMES[field], value, "rectangular", sensitivity))
    if errors.axis_yaw_rad is not None:
        # Second order: either sense of yaw makes the cone more slender, by at most this.
        yaw = included_arcsec_from_yaw(plate_angle_rad, errors.axis_yaw_rad)
        contributions.append(Contribution(NAMES["axis_yaw_arcsec"], yaw, "rectangular", 1.0))
    return Budget(tuple(contributions))


@dataclass(frozen=True, slots=True)
class Line:
    """One line of the budget, on the included angle; the share is of the combined variance."""

    worst_case: float
    standard_uncertainty: float
    share_percent: float


def joined_lines(budget: Budget) -> dict[str, Line]:
    """Give one line a name, in arc-seconds.

    The blocks of the stack share a name: their worst cases add, their variances add.
    """
    joined: dict[str, Line] = {}
    for contribution, share in zip(budget.contributions, budget.shares(), strict=True):
        line = joined.get(contribution.name, Line(0.0, 0.0, 0.0))
        joined[contribution.name] = Line(
            line.worst_case + contribution.worst_case,
            math.hypot(line.standard_uncertainty, contribution.in_result),
            line.share_percent + share,
        )
    return joined
