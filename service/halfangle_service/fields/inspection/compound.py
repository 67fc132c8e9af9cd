"""A compound face against each means at hand that its views can be measured by."""

import math
from collections.abc import Iterator

from halfangle_service.fields import Units
from halfangle_service.fields.choice import sent_of
from halfangle_service.fields.inspection.against import OF_A_CONE
from halfangle_service.fields.inspection.at_hand import MeansAtHandFields
from halfangle_service.fields.inspection.plate import InspectionPlate, plate_set
from halfangle_service.trade.inspection.compound_face import (
    VIEWS,
    InspectedCompound,
    at_true_tilt,
    by_plate,
    level_view,
    on_screen,
)
from halfangle_service.trade.inspection.means import Inspected, OutOfReach
from halfangle_service.trade.sine.compound import tilt_of_normal
from halfangle_service.trade.sine.geometry import beyond_reach, height_for_angle
from halfangle_service.trade.uncertainty import DecisionRule


def against_compound(
    at_hand: MeansAtHandFields,
    plate: InspectionPlate | None,
    part: InspectedCompound,
    units: Units,
    rule: DecisionRule,
) -> Iterator[Inspected | OutOfReach]:
    """Each means that was sent, in a fixed order, view by view."""
    for field in sent_of(at_hand, *OF_A_CONE):
        means, reason = OF_A_CONE[field]
        yield OutOfReach(means, reason, field, "A sine plate, or a comparator.")
    if at_hand.comparator is not None:
        error = at_hand.comparator.instrument_angle_error_limit_arcsec
        yield from on_screen(part, error, rule)
    if plate is not None:
        yield from _on_plate(plate, part, units, rule)


def _on_plate(
    plate: InspectionPlate, part: InspectedCompound, units: Units, rule: DecisionRule
) -> Iterator[Inspected | OutOfReach]:
    for view in VIEWS:
        level = level_view(part, view, plate.indicator_travel, plate.largest_angle)
        if isinstance(level, OutOfReach):
            yield level
            continue
        made = plate_set(level, plate, None, units)
        if isinstance(made, OutOfReach):
            yield made
            continue
        yaw = plate.axis_yaw_error_limit_arcsec
        yield by_plate(part, view, level, made, yaw, units, rule)
    tilt, _ = tilt_of_normal(part.normal)
    if not beyond_reach(math.degrees(tilt), plate.largest_angle):
        yield at_true_tilt(part, height_for_angle(plate.center_distance, tilt, plate.base_step))
