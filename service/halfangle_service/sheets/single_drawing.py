"""The drawing of one answer: its plate on its stacks, else the drawing that the answer carries."""

import math
from typing import Any

from halfangle_service.fields.plates import PlateFields
from halfangle_service.sheets.drawing import drawn, within
from halfangle_service.sheets.model import Drawing
from halfangle_service.topics.sine.compound.setting import SineCompoundRequest, SineCompoundResult
from halfangle_service.topics.sine.low_stack import SineLowStackRequest, SineLowStackResult
from halfangle_service.topics.sine.setting import SineSettingRequest, SineSettingResult
from halfangle_service.topics.sine.taper import SineTaperSettingRequest, SineTaperSettingResult
from halfangle_service.trade.set_up_drawing.plate import PlateOnStacks
from halfangle_service.trade.set_up_drawing.setting import SetUpView

#: Most height of a drawing that an answer carries: the sheet of one answer has room.
_TALLEST = 130.0


def single_drawing(request: Any, result: Any) -> Drawing | None:
    """The drawing of one answer; None of one that sets nothing and carries none."""
    views = _views(request, result)
    if views:
        return drawn(views, request.units)
    svg: str | None = getattr(result, "svg", None)
    return within(svg, _TALLEST) if svg else None


def _views(request: Any, result: Any) -> list[SetUpView]:
    match request, result:
        case SineSettingRequest(), SineSettingResult():
            return [_on_one_height(request, result.angle.degrees, result.height_to_set)]
        case SineTaperSettingRequest(), SineTaperSettingResult():
            return [_on_one_height(request, result.plate_angle.degrees, result.height_to_set)]
        case SineLowStackRequest(), SineLowStackResult():
            high, low = tuple(result.high.blocks), tuple(result.low.blocks)
            return [_plate(request, result.angle_as_set.degrees, high, low)]
        case SineCompoundRequest(), SineCompoundResult():
            return _compound(request, result)
    return []


def _on_one_height(request: PlateFields, degrees: float, height: float) -> SetUpView:
    """A plate whose blocks are not chosen yet: what stands under it is drawn as one."""
    return _plate(request, degrees, (height,) if height > 0.0 else (), ())


def _plate(
    request: PlateFields, degrees: float, high: tuple[float, ...], low: tuple[float, ...]
) -> SetUpView:
    return SetUpView(
        PlateOnStacks(request.center_distance, math.radians(degrees), high, low, request.base_step)
    )


def _compound(request: SineCompoundRequest, result: SineCompoundResult) -> list[SetUpView]:
    """Both tilts, the base plate's first."""
    stacks = result.stacks
    both = (
        (request.base_center_distance, request.base_step, result.base, "Base plate"),
        (
            request.upper_center_distance,
            request.upper_step,
            result.upper,
            "Upper plate, riding on it",
        ),
    )
    chosen = ((), ()) if stacks is None else (stacks.base_blocks, stacks.upper_blocks)
    views = []
    for (distance, step, hinge, title), blocks in zip(both, chosen, strict=True):
        height = (hinge.height_to_set,) if hinge.height_to_set > 0.0 else ()
        plate = PlateOnStacks(
            distance,
            math.radians(abs(hinge.angle.degrees)),
            tuple(blocks) or height,
            base_step=step,
            raised=None if hinge.raised_side == "neither" else hinge.raised_side,
            hinged=True,
        )
        views.append(SetUpView(plate, title=title))
    return views
