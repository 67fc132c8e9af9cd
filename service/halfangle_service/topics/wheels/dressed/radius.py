"""A wheel dressed to a radius: its sagitta, how to check it, what the diamond's height does."""

from collections.abc import Callable, Iterator
from typing import Any, Literal

from pydantic import Field

from halfangle_service.cautions import DRESSING_SAFETY
from halfangle_service.errors import Disagreement
from halfangle_service.fields import (
    Length,
    LengthOut,
    NonNegativeLength,
    NumberOut,
    RequestModel,
    ResultModel,
    SignedLength,
    UnitsField,
)
from halfangle_service.fields.advisories import Advisory, caution
from halfangle_service.fields.base import Rule
from halfangle_service.fields.choice import all_or_none, not_sent
from halfangle_service.fields.estimate import LengthEstimate
from halfangle_service.fields.gauging.measured import as_measured, measured_length
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade.uncertainty import LargestError, Measured
from halfangle_service.trade.unit_slips import require_any_wheel_diameter
from halfangle_service.trade.wheel.dressed_radius import (
    as_dressed,
    pin_over_face,
    radius_of,
    require_room,
    sagitta_of,
    width_of,
)
from halfangle_service.trade.wording import figure

#: What states the arc, of which two are sent.
ARC = ("radius", "arc_width", "sagitta")
#: The wheel and the diamond's place at it, sent together.
DIAMOND_PLACE = ("wheel_diameter", "diamond_height")

_SAGITTA = Source(
    citation="Sagitta of a radius-dressed wheel, r − √(r² − c²/4): geometry of the circle.",
    standing="derived",
)
_HEIGHT = Source(
    citation="Derived here: a diamond's arc in a plane beside the wheel's axis, turned round it.",
    standing="derived",
)
#: Each of the three from the other two, in the order of `ARC`.
_FROM: dict[str, Callable[[float, float], float]] = {
    "radius": radius_of,
    "arc_width": width_of,
    "sagitta": sagitta_of,
}


class WheelRadiusRequest(RequestModel):
    """Two of an arc's radius, width and sagitta, and what it is checked by."""

    rules = (Rule("at-least-one-of", ARC), Rule("all-or-none", DIAMOND_PLACE))

    units: UnitsField
    arc_form: Literal["convex", "concave"] = Field(
        description="`convex`: the wheel stands out and grinds a groove; `concave`: it grinds a "
        "ridge.",
        examples=["convex"],
    )
    radius: Length | None = Field(
        None, description="Radius of the arc. Two of `radius`, `arc_width`, `sagitta`."
    )
    arc_width: Length | None = Field(
        None, description="Width of the arc, its chord.", examples=[0.5]
    )
    sagitta: Length | None = Field(
        None, description="Height of the arc's middle over its chord.", examples=[0.03]
    )
    arc_width_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the width as measured, in `units`."
    )
    sagitta_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the sagitta as measured, in `units`."
    )
    radius_error_limit: NonNegativeLength | None = Field(
        None, description="Largest error ± of the radius as set, in `units`."
    )
    pin_diameter: Length | None = Field(
        None, description="Pin to lay into a groove ground by the wheel, in `units`."
    )
    gauge_radius: Length | None = Field(
        None, description="Radius gauge to hold against what the wheel ground, in `units`."
    )
    wheel_diameter: Length | None = Field(
        None, description="Diameter of the wheel at the middle of the arc, in `units`."
    )
    diamond_height: SignedLength | None = Field(
        None,
        description="Distance of the plane in which the diamond swings from the wheel's axis, in "
        "`units`. Together with `wheel_diameter`.",
    )


class WheelRadiusResult(ResultModel):
    """The arc, and what a check of it reads."""

    radius: LengthEstimate = Field(description="Radius of the arc.")
    arc_width: LengthEstimate = Field(description="Width of the arc.")
    sagitta: LengthEstimate = Field(description="Sagitta of the arc.")
    pin_over_face: LengthOut | None = Field(
        description="Top of the pin over the face of the groove; null without a pin."
    )
    pin_rests_on: Literal["bottom", "edges"] | None = Field(
        description="Where the pin rests; on the edges it tells the width only."
    )
    gap_at_edges: LengthOut | None = Field(
        description="Light under the radius gauge at the arc's ends, where it touches the middle; "
        "negative where it touches the ends, and the light is in the middle."
    )
    radius_as_dressed: LengthOut | None = Field(
        description="Radius, through middle and ends, that comes out by the diamond's height; null "
        "without it."
    )
    radius_ratio: NumberOut | None = Field(description="That over the radius set; never below 1.")


@operation(
    "wheels.radius",
    relations=(
        "sagitta = r − √(r² − c² / 4); r = c² / (8 s) + s / 2; c = 2 √(2 r s − s²)",
        "pin in a groove: d − s(r) on the bottom, d − s(d / 2) on the edges",
        "diamond e off the axis: wheel radius √(q² + e²); at the middle r / √(1 − (e / R)²)",
    ),
    sources=(_SAGITTA, _HEIGHT),
    example={
        "units": "in",
        "arc_form": "convex",
        "radius": 0.5,
        "arc_width": 0.6,
        "radius_error_limit": 0.0005,
        "arc_width_error_limit": 0.001,
        "pin_diameter": 0.75,
        "gauge_radius": 0.495,
        "wheel_diameter": 7,
        "diamond_height": 0.1,
    },
    columns=True,
)
def radius(request: WheelRadiusRequest) -> Outcome[WheelRadiusResult]:
    """Wheel dressed to a radius.

    Radius, width and sagitta of the arc, each from the other two; what a pin in the ground groove
    or a radius gauge shows; the radius that a diamond beside the wheel's center leaves.
    """
    arc = _arc(request)
    r, width, depth = (arc[name].value or 0.0 for name in ARC)
    pin = None if request.pin_diameter is None else _pin(request, r, width)
    dressed = _as_dressed(request, r, width, depth)
    gap = None
    if request.gauge_radius is not None:
        gauge = _with_field("gauge_radius", request.gauge_radius, width)
        gap = gauge - depth if request.arc_form == "convex" else depth - gauge
    result = WheelRadiusResult(
        **arc,
        pin_over_face=None if pin is None else pin[0],
        pin_rests_on=None if pin is None else ("bottom" if pin[1] else "edges"),
        gap_at_edges=gap,
        radius_as_dressed=dressed,
        radius_ratio=None if dressed is None else dressed / r,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _arc(request: WheelRadiusRequest) -> dict[str, Any]:
    """Radius, width and sagitta with their uncertainty, from the two that were sent."""
    missing = not_sent(request, *ARC)
    if len(missing) != 1:
        raise Disagreement(
            "Of `radius`, `arc_width` and `sagitta` two are needed, from which the third follows.",
            fields=dict.fromkeys(missing or ARC, "send two of radius, arc_width and sagitta"),
        )
    sent = tuple(
        Measured(
            name,
            getattr(request, name),
            LargestError(f"{name}_error_limit", getattr(request, f"{name}_error_limit")),
            above=0.0,
        )
        for name in ARC
        if name not in missing
    )
    third = _FROM[missing[0]]
    third(*(i.value for i in sent))
    own = {i.name: as_measured(i) for i in sent}
    return own | {missing[0]: measured_length(third, *sent)}


def _pin(request: WheelRadiusRequest, r: float, width: float) -> tuple[float, bool]:
    if request.arc_form == "concave":
        raise Disagreement(
            "A pin lies in a groove, which a convex wheel grinds; hold a radius gauge against a "
            "ridge.",
            fields={"pin_diameter": "should be left out with a concave arc"},
        )
    pin = request.pin_diameter or 0.0
    if pin > 2.0 * r:
        _with_field("pin_diameter", pin / 2.0, width)
    return pin_over_face(r, width, pin)


def _with_field(field: str, of_radius: float, width: float) -> float:
    """Sagitta of a pin or gauge over the arc's width; refuses one that falls into it."""
    if width > 2.0 * of_radius:
        raise Disagreement(
            "It is narrower than the arc: its ends do not reach the arc's ends.",
            fields={field: "should span the arc's width"},
        )
    return sagitta_of(of_radius, width)


def _as_dressed(request: WheelRadiusRequest, r: float, width: float, depth: float) -> float | None:
    if not all_or_none(request, *DIAMOND_PLACE, why="The height acts by the wheel's diameter."):
        return None
    wheel, height = request.wheel_diameter or 0.0, request.diamond_height or 0.0
    require_any_wheel_diameter(wheel, request.units, "wheel_diameter")
    require_room(wheel / 2.0, height, depth, request.arc_form)
    return as_dressed(r, width, request.arc_form, wheel / 2.0, height)


def _advisories(request: WheelRadiusRequest, result: WheelRadiusResult) -> Iterator[Advisory]:
    if result.pin_rests_on == "edges":
        yield caution(
            "pin-on-edges",
            "The pin is larger than the arc and rests on the groove's edges: it says nothing of "
            "the radius. Take a smaller one.",
        )
    if result.radius_ratio is not None and result.radius_as_dressed is not None:
        more = result.radius_as_dressed - (result.radius.value or 0.0)
        limit = request.radius_error_limit
        if limit is not None and more > limit:
            yield caution(
                "diamond-off-height",
                f"By its height the diamond leaves a radius {figure(more, request.units)} larger, "
                "more than the error stated of it: set it to the wheel's center.",
            )
    yield from unusual_sizes(request, request.units)
    yield DRESSING_SAFETY
