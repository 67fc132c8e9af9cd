"""The drawings of set-up sheets: what a plan sets, as the drawings to scale take it."""

import math
import re
from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

from halfangle_service.fields import Units
from halfangle_service.fields.clearance.set_up import fixture_of, heads_of, plate_of
from halfangle_service.fields.glossary import option_labels
from halfangle_service.sheets.model import Drawing
from halfangle_service.topics.jobs.plan.features import wanted_of
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
from halfangle_service.trade.clearance.assembly import Assembly, Stroke
from halfangle_service.trade.clearance.case import Case
from halfangle_service.trade.clearance.turned import Cone
from halfangle_service.trade.drawing.scales import scale_words
from halfangle_service.trade.set_up_drawing.plate import PlateOnStacks
from halfangle_service.trade.set_up_drawing.setting import SetUpView, set_up_svg
from halfangle_service.trade.set_up_drawing.under_wheel import UnderWheel, under_wheel_svg
from halfangle_service.trade.set_up_drawing.work import ConeOnPlate, FaceOnPlate, Work

PlateT = TypeVar("PlateT", PlanSinePlate, PlanCompoundPlate)

#: Ways with the work's axis along the plate.
_ALONG = frozenset({"sine-plate", "stacks-under-both-rolls"})
#: Width of a drawing as it is drawn, how much smaller it is shown; most height on the sheet, and
#: what words usually take of a drawing's height; millimetres.
DRAWN, _SHOWN, TALLEST, _WORDS = 144.0, 0.75, 74.0, 34.0
_SIZE = re.compile(r'width="([0-9.]+)mm" height="([0-9.]+)mm"')
_SCALE = re.compile(r"Scale ([0-9.]+) : ([0-9.]+) printed [0-9.]+ mm wide<")
_AS_USUAL = "What was not stated of plate and work is drawn as usual."
_RAISED = re.compile(r"under the (\w+) roll")


def set_up_drawing(
    request: JobPlanRequest, result: JobPlanResult, way: PlannedWay, shop: PlanEquipment
) -> Drawing | None:
    """The set-up of one way to scale; None of a way whose set-up is no plate on its stacks."""
    under = _under_wheel(request, way, shop)
    if under is not None:
        return fitting(
            lambda tallest: under_wheel_svg(
                under, request.units, width=DRAWN, tallest=tallest, headed=False
            )
        )
    views = [*_views(request, result, way, shop)]
    return drawn(views, request.units) if views else None


def drawn(views: Sequence[SetUpView], units: Units) -> Drawing:
    """Views of plates on their stacks."""
    usual = "" if all(view.plate.sizes_stated for view in views) else _AS_USUAL
    return fitting(
        lambda tallest: set_up_svg(
            views, units, width=DRAWN, tallest=tallest / len(views), headed=False
        ),
        usual,
    )


def fitting(draw: Callable[[float], str], caption: str = "") -> Drawing:
    """A drawing that is no taller on the sheet than it may be, with the scale that it has there.

    It is drawn larger than it is shown, for its type is that of a page by itself. How much its
    words take over and under what is drawn is seen when they are set.
    """
    most = TALLEST / _SHOWN
    svg = draw(most - _WORDS)
    past = height_of(svg) - most
    if past > 0.0:
        svg = draw(most - _WORDS - past)
    return shown_at(svg, _SHOWN, caption)


def within(svg: str, tallest: float) -> Drawing:
    """A drawing as it is, shown as large as the sheet has room for; smaller than it was drawn."""
    found = _SIZE.search(svg)
    if found is None:
        return Drawing(svg, tallest)
    width, height = float(found[1]), float(found[2])
    return shown_at(svg, min(_SHOWN * DRAWN / width, tallest / height, 1.0))


def shown_at(svg: str, share: float, caption: str = "") -> Drawing:
    """A drawing so much smaller than it was drawn, and the scale that it names with it."""
    found = _SIZE.search(svg)
    width, height = (share * float(found[1]), share * float(found[2])) if found else (0.0, 0.0)
    smaller = _SIZE.sub(f'width="{width:.3f}mm" height="{height:.3f}mm"', svg, count=1)

    def as_shown(scale: re.Match[str]) -> str:
        return f"Scale {scale_words(share * float(scale[1]) / float(scale[2]))}<"

    return Drawing(_SCALE.sub(as_shown, smaller), height, caption)


def height_of(svg: str) -> float:
    """Height that a drawing says it has, in millimetres; 0 where it says none."""
    found = _SIZE.search(svg)
    return float(found[2]) if found else 0.0


def _under_wheel(
    request: JobPlanRequest, way: PlannedWay, shop: PlanEquipment
) -> UnderWheel | None:
    """The set-up under the wheel, where enough was stated to work out its clearance."""
    case = None
    if way.clearance is not None and way.clearance.smallest_gap is not None:
        case = _case(request, way, shop)
    if case is None:
        return None
    work = option_labels().get(request.feature.kind, request.feature.kind)
    return UnderWheel(
        case, case.gaps()[0][1], _blocks(way, "high"), _blocks(way, "low"), work.lower()
    )


def _case(request: JobPlanRequest, way: PlannedWay, shop: PlanEquipment) -> Case | None:
    """A cone along a plate with the wheel over it, as its clearance was worked out."""
    wanted, room, feeding = wanted_of(request.feature, request.units), request.room, request.feeding
    plate, wheel, fixture = _named(shop.sine_plates, way), shop.wheel, shop.spin_fixture
    body = None if plate is None else plate.plate_body
    head = None if wheel is None else wheel.head
    large, small, gap = feeding.past_large_end, feeding.past_small_end, room.gap_wanted
    along = way.way in _ALONG and wanted.turned and not wanted.internal
    if not along or plate is None or body is None or fixture is None or wheel is None:
        return None
    if head is None or wheel.width is None or large is None or small is None or gap is None:
        return None
    cone = Cone(wanted.angle_rad, wanted.large_diameter / 2.0, wanted.small_diameter / 2.0)
    stands = Assembly(cone, fixture_of(fixture), plate_of(body, plate.center_distance))
    heads = heads_of(head, wheel.diameter, wheel.width)
    return Case(stands, heads, Stroke(large, small), plate.tilt_direction, gap)


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


def _named(plates: Sequence[PlateT] | None, way: PlannedWay) -> PlateT | None:
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
        mark = None if hand is None else hand_in_words(hand)
        return FaceOnPlate(feature.slant_length, quarter, mark, name)
    return ConeOnPlate(
        math.radians(feature.half_angle.degrees),
        feature.large_diameter or 0.0,
        feature.small_diameter or 0.0,
        quarter,
        name=name,
    )


def hand_in_words(hand: str) -> str:
    """Which hand the work is of.

    >>> hand_in_words("as-drawn"), hand_in_words("opposite")
    ('hand as drawn', 'opposite hand')
    """
    label = option_labels().get(hand, hand).lower()
    return label if label.endswith("hand") else f"hand {label}"
