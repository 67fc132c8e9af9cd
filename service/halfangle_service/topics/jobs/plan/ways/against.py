"""What stands against a way whatever its figures: a socket, a second angle, no blocks."""

import math

from halfangle_service.topics.jobs.plan.features import Wanted
from halfangle_service.topics.jobs.plan.result import PlanWayName
from halfangle_service.topics.jobs.plan.shop.equipment import PlanInternalSpindle
from halfangle_service.topics.jobs.plan.ways.way import RuledOut
from halfangle_service.trade.sine.compound import tilt_of_normal
from halfangle_service.trade.wording import figure, plain

_FIELD, _BLOCKS = "equipment/internal_spindle", "equipment/block_sets"


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


def grinds_a_socket(wanted: Wanted, spindle: PlanInternalSpindle | None) -> str | None:
    """What grinds a socket in place of a wheel that stays outside; None of any other work."""
    if not wanted.internal:
        return None
    why = against_internal(wanted, spindle)
    return "A sine plate under the internal spindle grinds it." if why is None else why[2]


def one_angle_only(wanted: Wanted, name: PlanWayName, equipment: str, path: str) -> RuledOut:
    """A way that sets one angle, for a face that slopes in two views."""
    instead = None
    if name == "sine-plate" and wanted.normal is not None:
        tilt, direction = (math.degrees(angle) for angle in tilt_of_normal(wanted.normal))
        instead = (
            f"Turned in plan, so that what lies at {plain(direction)}° from right toward back is "
            f"square to its hinge, the work asks one plate for {plain(tilt)}°: state a swivelling "
            "base on the plate, and it is planned so."
        )
    return RuledOut(
        name, (equipment,), "It sets one angle, and the face slopes in two views.", path, instead
    )


def one_view_only(equipment: str, path: str, *, base_alone: bool) -> RuledOut:
    """A compound plate for what has one angle; its base alone is named where no plate is."""
    return RuledOut(
        "compound-sine-plate",
        (equipment,),
        "A compound plate is planned for a face that slopes in two views.",
        path,
        "Its base plate, named among the sine plates, sets one angle." if base_alone else None,
    )


def no_blocks(name: PlanWayName, equipment: str) -> RuledOut:
    """A plate for which the shop names no blocks."""
    return RuledOut(
        name, (equipment,), "It is set by gauge blocks, and the shop names none.", _BLOCKS
    )
