"""How a single-point diamond stands at the wheel: drag angle and height."""

from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from halfangle_service.cautions import DRESSING_SAFETY
from halfangle_service.errors import Impossible
from halfangle_service.fields import (
    Angle,
    AngleInput,
    Length,
    LengthOut,
    NumberOut,
    SignedLength,
    UnitsField,
    angle_from_radians,
)
from halfangle_service.fields.advisories import Advisory, caution, stop
from halfangle_service.fields.drawings.asked import DrawnFields, DrawnResult, is_drawn
from halfangle_service.fields.wheel.passes import unusual_passes
from halfangle_service.operation import Outcome, Source, operation
from halfangle_service.topics.wheels.sizes import unusual_sizes
from halfangle_service.trade import elementary
from halfangle_service.trade.unit_slips import require_any_wheel_diameter
from halfangle_service.trade.wheel.diamond import (
    below_crest,
    depth_of_feed,
    drag_angle,
    slope_ratio,
)
from halfangle_service.trade.wheel.diamond_drawing import diamond_svg
from halfangle_service.trade.wording import degrees, of_any_unit, plain

#: Usual drag of a single-point diamond.
USUAL_DRAG_DEGREES = (10.0, 15.0)

#: Past it the side of the nib, not its point, would meet the wheel.
_LARGEST_DRAG = elementary.radians(80.0)

_PRACTICE = Source(
    citation="A single-point diamond is dragged at 10° to 15° and turned in its holder by an "
    "eighth to a quarter of a turn: shop texts.",
    standing="common-practice-no-source",
)
_DERIVED = Source(
    citation="Derived here: circle of the wheel, the diamond's point on it beside the center.",
    standing="derived",
)


class WheelDiamondRequest(DrawnFields):
    """A wheel, and a diamond beside its center, its nib leaning or upright."""

    units: UnitsField
    wheel_diameter: Length = Field(description="Diameter of the wheel, in `units`.", examples=[7.0])
    diamond_height: SignedLength = Field(
        description="Distance of the diamond's point from the plane through the wheel's axis along "
        "which it is fed, in `units`; positive on the side to which the wheel's surface moves. On "
        "a surface grinder: how far beside the wheel's lowest line.",
        examples=[0.25],
    )
    nib_lean: Annotated[float, AngleInput(ge=-60, le=60, measured=True)] = Field(
        description="Lean of the nib to the direction of feed, in degrees; positive where its "
        "point leans the way in which the wheel's surface moves.",
        examples=[8.0],
    )
    worn_diameter: Length | None = Field(
        None, description="Diameter that the wheel will wear to, in `units`."
    )
    feed_per_pass: Length | None = Field(
        None, description="Feed of the diamond toward the wheel's axis, in `units`."
    )


class WheelDiamondResult(DrawnResult):
    """How the diamond stands to the wheel's surface, and what its height does."""

    drag_angle: Angle = Field(
        description="Lean of the nib to the wheel's radius at the point; positive where the wheel "
        "drags it."
    )
    drag_angle_worn: Angle | None = Field(
        description="The same of the worn wheel, the diamond left where it is; null without its "
        "diameter."
    )
    behind_crest: LengthOut = Field(
        description="How much lower the wheel's foremost line stands than the point touches it."
    )
    depth_per_pass: LengthOut | None = Field(
        description="Radial depth that a feed dresses away; null without a feed."
    )
    slope_ratio: NumberOut = Field(
        description="What the tangent of an angle dressed at this height is multiplied by, at this "
        "diameter; the radius of a dressed arc is divided by it."
    )


@operation(
    "wheels.diamond",
    relations=(
        "drag = nib's lean + asin(e / R)",
        "behind the crest = R − √(R² − e²)",
        "depth = R − √(e² + (√(R² − e²) − feed)²)",
        "tan β′ = tan β √(1 − (e / R)²)",
    ),
    sources=(_PRACTICE, _DERIVED),
    example={
        "units": "in",
        "wheel_diameter": 7,
        "diamond_height": 0.25,
        "nib_lean": 8,
        "worn_diameter": 5,
        "feed_per_pass": 0.0005,
        "formats": ["svg"],
    },
    heavy=is_drawn,
    columns=True,
)
def diamond(request: WheelDiamondRequest) -> Outcome[WheelDiamondResult]:
    """Drag and height of the diamond.

    Whether the wheel drags a single-point diamond or runs into it, by the lean of its nib and its
    place beside the wheel's center, and what that place does to depth, angle and radius.
    """
    for name in ("wheel_diameter", "worn_diameter"):
        _require_reached(request, name)
    lean, height = elementary.radians(request.nib_lean), request.diamond_height
    wheel, worn = request.wheel_diameter / 2.0, request.worn_diameter
    _require_outside(request)
    feed = request.feed_per_pass
    if feed is not None and feed >= wheel * slope_ratio(wheel, height):
        raise Impossible(
            "Such a feed takes the diamond past the wheel's axis.",
            fields={"feed_per_pass": "should be a small part of the wheel's radius"},
        )
    result = WheelDiamondResult(
        drag_angle=angle_from_radians(drag_angle(wheel, height, lean)),
        drag_angle_worn=None
        if worn is None
        else angle_from_radians(drag_angle(worn / 2.0, height, lean)),
        behind_crest=below_crest(wheel, height),
        depth_per_pass=None if feed is None else depth_of_feed(wheel, height, feed),
        slope_ratio=slope_ratio(wheel, height),
        svg=diamond_svg(2.0 * wheel, height, lean, request.units) if is_drawn(request) else None,
    )
    return Outcome(result, tuple(_advisories(request, result)))


def _require_reached(request: WheelDiamondRequest, name: str) -> None:
    """Refuse a wheel that there is not, or one that the diamond stands beside."""
    diameter = getattr(request, name)
    if diameter is None:
        return
    require_any_wheel_diameter(diameter, request.units, name)
    if abs(request.diamond_height) >= diameter / 2.0:
        raise Impossible(
            f"A diamond {of_any_unit(abs(request.diamond_height))} beside the center does not "
            f"reach a wheel of {of_any_unit(diameter)}.",
            fields={"diamond_height": f"should be within ±{of_any_unit(diameter / 2.0)}"},
        )


def _require_outside(request: WheelDiamondRequest) -> None:
    """Refuse a nib that would lie along the wheel's surface, or reach through it."""
    lean = elementary.radians(request.nib_lean)
    for diameter in (request.wheel_diameter, request.worn_diameter):
        if diameter is None:
            continue
        drag = drag_angle(diameter / 2.0, request.diamond_height, lean)
        if abs(drag) >= _LARGEST_DRAG:
            raise Impossible(
                f"On a wheel of {of_any_unit(diameter)} the nib would lean "
                f"{degrees(abs(elementary.degrees(drag)), 120.0)} to the radius: it would lie "
                "along the wheel, not point at it.",
                fields={"nib_lean": "should leave the nib less than 80° to the radius"},
            )


def _advisories(request: WheelDiamondRequest, result: WheelDiamondResult) -> Iterator[Advisory]:
    drags = [result.drag_angle.degrees]
    if result.drag_angle_worn is not None:
        drags.append(result.drag_angle_worn.degrees)
    low, high = USUAL_DRAG_DEGREES
    worst = min(drags)
    if worst < 0.0:
        yield stop(
            "diamond-digs-in",
            f"The nib leans {degrees(-worst, 120.0)} against the wheel's rotation, less than 0° of "
            "drag: the wheel pulls the point in. Turn the holder round, or set the diamond on the "
            "side to which the wheel's surface moves.",
        )
    elif not all(low <= drag <= high for drag in drags):
        yield caution(
            "unusual-drag",
            f"Usual is a drag of {plain(low)}° to {plain(high)}° (common practice, no source); "
            f"here it is {' and, the wheel worn, '.join(degrees(d, 120.0) for d in drags)}.",
        )
    yield caution(
        "see-the-rotation",
        "All signs go by the way the wheel turns: see the arrow on the guard, and jog the spindle "
        "with nothing near the wheel, before the diamond is set.",
    )
    yield from unusual_sizes(request, request.units)
    if request.feed_per_pass is not None:
        yield from unusual_passes(request.feed_per_pass, 1, request.feed_per_pass, request.units)
    yield DRESSING_SAFETY
