"""The drawings of set-up sheets: what a plan sets, as the drawings to scale take it."""

import math
import re
from collections.abc import Iterator, Sequence

from halfangle_service.fields import Units
from halfangle_service.fields.glossary import option_labels
from halfangle_service.sheets.model import Drawing
from halfangle_service.topics.jobs.plan.plan import JobPlanRequest
from halfangle_service.topics.jobs.plan.result import (
    JobPlanResult,
    PlannedWay,
    PlanSetting,
    StackRole,
)
from halfangle_service.topics.jobs.plan.shop.equipment import (
    PlanCompoundPlate,
    PlanEquipment,
    PlanSinePlate,
)
from halfangle_service.trade.set_up_drawing.plate import PlateOnStacks
from halfangle_service.trade.set_up_drawing.setting import SetUpView, set_up_svg
from halfangle_service.trade.set_up_drawing.work import ConeOnPlate, FaceOnPlate, Work

#: Width on the sheet in millimetres, and the most height, of which narrower ones are tried.
_WIDTHS, TALLEST = (108.0, 94.0, 80.0), 72.0
_HEIGHT = re.compile(r'height="([0-9.]+)mm"')
_RAISED = re.compile(r"under the (\w+) roll")


def set_up_drawing(
    request: JobPlanRequest, result: JobPlanResult, way: PlannedWay, shop: PlanEquipment
) -> Drawing | None:
    """The set-up of one way to scale; None of a way whose set-up is no plate on its stacks."""
    views = [*_views(request, result, way, shop)]
    return drawn(views, request.units) if views else None


def drawn(views: Sequence[SetUpView], units: Units) -> Drawing:
    """Views of plates on their stacks, as wide as they may be for their height."""
    for width in _WIDTHS:
        svg = set_up_svg(views, units, width=width, headed=False)
        if _height(svg) <= TALLEST:
            break
    return Drawing(svg, _height(svg))


def _height(svg: str) -> float:
    found = _HEIGHT.search(svg)
    return float(found[1]) if found else 0.0


def _views(
    request: JobPlanRequest, result: JobPlanResult, way: PlannedWay, shop: PlanEquipment
) -> Iterator[SetUpView]:
    work = _work(request, result, way)
    tolerance = min(angle.tolerance_arcsec for angle in way.angles)
    if way.way == "compound-sine-plate":
        compound = _named(shop.compound_plates, way)
        if compound is not None:
            yield from _compound(compound, way, work, tolerance)
        return
    plate = _named(shop.sine_plates, way)
    if plate is not None:
        on_stacks = _plate(plate, way, way.settings[0])
        yield SetUpView(on_stacks, work, tolerance_arcsec=tolerance)


def _named(
    plates: Sequence[PlanSinePlate] | Sequence[PlanCompoundPlate] | None, way: PlannedWay
) -> PlanSinePlate | PlanCompoundPlate | None:
    return next((plate for plate in plates or () if plate.name in way.equipment), None)


def _blocks(way: PlannedWay, role: StackRole) -> tuple[float, ...]:
    return next((tuple(stack.blocks) for stack in way.stacks if stack.role == role), ())


def _plate(plate: PlanSinePlate, way: PlannedWay, setting: PlanSetting) -> PlateOnStacks:
    body = plate.plate_body
    return PlateOnStacks(
        plate.center_distance,
        math.radians(setting.angle.degrees),
        _blocks(way, "high"),
        _blocks(way, "low"),
        plate.base_step,
        high_roll_diameter=None if body is None else body.roll_diameter,
        low_roll_diameter=None if body is None else body.roll_diameter,
        length=None if body is None else body.length,
        thickness=None if body is None else body.thickness,
        hinged=plate.low_roll_hinged,
    )


def _compound(
    plate: PlanCompoundPlate, way: PlannedWay, work: Work, tolerance: float
) -> Iterator[SetUpView]:
    """Both tilts, the base plate's first; the work lies on the upper one."""
    sizes = {
        "base": (plate.base_center_distance, plate.base_step, plate.base_raised_side),
        "upper": (plate.upper_center_distance, plate.upper_step, plate.upper_raised_side),
    }
    for setting in way.settings:
        role: StackRole = "base" if setting.part == "base" else "upper"
        distance, step, side = sizes[role]
        found = _RAISED.search(setting.action)
        on_stacks = PlateOnStacks(
            distance,
            math.radians(setting.angle.degrees),
            _blocks(way, role),
            base_step=step,
            raised=found[1] if found else side,
            hinged=True,
        )
        title = "Base plate" if role == "base" else "Upper plate, on the base plate"
        yield SetUpView(on_stacks, work if role == "upper" else None, title, tolerance)


def _work(request: JobPlanRequest, result: JobPlanResult, way: PlannedWay) -> Work:
    """The work as the way lays it, its hand marked."""
    feature, quarter = result.feature, way.way == "quarter-turn"
    name = option_labels().get(feature.kind, feature.kind)
    if feature.half_angle is None:
        hand = getattr(request.feature, "hand", None)
        mark = None if hand is None else f"hand: {option_labels().get(hand, hand).lower()}"
        return FaceOnPlate(feature.slant_length, quarter, mark, name)
    return ConeOnPlate(
        math.radians(feature.half_angle.degrees),
        feature.large_diameter or 0.0,
        feature.small_diameter or 0.0,
        quarter,
        name=name,
    )
