"""The sides that both plates of a compound sine plate raise: those away from their hinges."""

from typing import Annotated, Literal

from pydantic import Field

from halfangle_service.errors import Disagreement, Unreachable
from halfangle_service.fields.base import PLATE
from halfangle_service.fields.compound.hinges import WHICH
from halfangle_service.fields.compound.plates import CompoundPlateFields, CompoundSizes
from halfangle_service.trade.sine.compound import SIDES_OF_HINGE, Vector, other_axis
from halfangle_service.trade.sine.compound_layings import RaisedSides, plate_turned

_RaisedSide = Annotated[
    Literal["right", "left", "back", "front"] | None,
    Field(
        description="Side that this plate raises, away from its hinge: `right` or `left` where the "
        "hinge lies along Y, `back` or `front` where it lies along X. The work is then turned in "
        "plan so that no other side is raised. Absent: either side may be."
    ),
]


class RaisedSizes(CompoundSizes):
    """A compound sine plate, and the sides that its plates raise, without its unit."""

    group = PLATE

    base_raised_side: _RaisedSide = None
    upper_raised_side: _RaisedSide = None


class RaisedSideFields(RaisedSizes, CompoundPlateFields):
    """A compound sine plate, and the sides that its plates raise."""


def sides_of(request: RaisedSizes) -> RaisedSides:
    """The sides that the plates raise; refuses one at which a plate's hinge ends, not swings."""
    axes = request.base_axis, other_axis(request.base_axis)
    sides = request.base_raised_side, request.upper_raised_side
    for which, axis, side in zip(WHICH, axes, sides, strict=True):
        if side is not None and side not in SIDES_OF_HINGE[axis]:
            one, other = SIDES_OF_HINGE[axis]
            raise Disagreement(
                f"The {which} plate's hinge lies along {axis.upper()}: it raises the {one} or the "
                f"{other}, not the {side}.",
                fields={f"{which}_raised_side": f"should be {one} or {other}"},
            )
    return RaisedSides(*sides)


def other_way_round(request: RaisedSizes, normal: Vector) -> Unreachable:
    """The refusal where the plate's face can stand so only with the whole plate turned."""
    turned = plate_turned(normal, request.base_axis, sides_of(request))
    fields = [name for name in ("base_raised_side", "upper_raised_side") if getattr(request, name)]
    how, more = "", None
    if turned is not None:
        stands = {
            "base_axis": turned.base_axis,
            "base_raised_side": turned.sides.base,
            "upper_raised_side": turned.sides.upper,
        }
        more = {"plate_turned": stands}
        sides = [f"{name} {value}" for name, value in stands.items() if value is not None]
        how = (
            f" Turn the whole plate by {90 * turned.turns}° in plan, from +X toward +Y: "
            f"{', '.join(sides)}."
        )
    return Unreachable(
        "To stand so, a plate would have to raise the side where it is hinged; turning the work on "
        f"it changes nothing in the machine's frame.{how}",
        fields=dict.fromkeys(fields, "should be raised by this orientation"),
        more=more,
    )
