"""Whether a wheel goes into a socket."""

from halfangle_service.topics.jobs.plan.equipment import PlanInternalSpindle
from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.trade.wording import figure

_FIELD = "equipment/internal_spindle"


def against_internal(
    wanted: Wanted, spindle: PlanInternalSpindle | None
) -> tuple[str, str, str] | None:
    """Why no wheel grinds a socket, the field, and what would; None where one does."""
    if not wanted.internal:
        return None
    small, length = wanted.small_diameter, wanted.length
    instead = (
        f"A wheel below {figure(small, wanted.units)} on a quill that goes in "
        f"{figure(length, wanted.units)} grinds it."
    )
    if spindle is None:
        return "A flat wheel does not go into a socket.", _FIELD, instead
    if spindle.wheel_diameter >= small:
        wheel = figure(spindle.wheel_diameter, wanted.units)
        reason = f"The wheel of {wheel} does not go into a bore of {figure(small, wanted.units)}."
        return reason, f"{_FIELD}/wheel_diameter", instead
    if spindle.reach < length:
        reach = figure(spindle.reach, wanted.units)
        reason = f"The quill goes in {reach}, the socket is {figure(length, wanted.units)} deep."
        return reason, f"{_FIELD}/reach", instead
    return None
